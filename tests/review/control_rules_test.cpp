// SPDX-License-Identifier: GPL-3.0-or-later
// Rules about sensors and protections: each with a coach that raises it and its twin that does not.
#include "base/units.h"
#include "review/coach.h"
#include "review/finding.h"
#include "support/catch.h"

using namespace tapward;
using document::PartId;
using review::Severity;
using test::Coach;

namespace {

/// A temperature sensor in the hot branch to the tap; the controller's field names it.
PartId addSensor(Coach& coach, const std::string& tag, const std::string& field)
{
    const PartId sensor = coach.add("temperature_sensor", tag);
    const document::Part* branch = coach.drawing.pipeAt(coach.id("F1"), "hot");
    REQUIRE(branch);
    coach.drawing.find(branch->id)->ends[1] = {sensor, "inlet", {}};
    coach.pipe(sensor, "outlet", coach.id("F1"), "hot");
    coach.set("C1", field, std::to_string(sensor));
    return sensor;
}

}  // namespace

TEST_CASE("a high limit on the stop's own sensor is not independent", "[review]")
{
    Coach coach;
    coach.set("C1", "high_limit", true);
    const PartId sensor = addSensor(coach, "TE1", "stop_sensor");
    coach.set("C1", "limit_sensor", std::to_string(sensor));
    REQUIRE(coach.finds("limit_shares_sensor"));
    addSensor(coach, "TE2", "limit_sensor");
    CHECK_FALSE(coach.finds("limit_shares_sensor"));
}

TEST_CASE("a protection without its sensor is on paper only", "[review]")
{
    Coach coach;
    coach.set("C1", "stop_by_volume", false);
    coach.set("C1", "stop_by_time", true);
    CHECK_FALSE(coach.finds("protection_without_sensor"));
    struct Row {
        const char *flag, *sensor;
    };
    const auto row = GENERATE(Row{"high_limit", "limit_sensor"}, Row{"stop_by_temperature", "stop_sensor"},
                              Row{"refuse_when_warm", "stop_sensor"}, Row{"inlet_lockout", "inlet_sensor"});
    CAPTURE(row.flag);
    coach.set("C1", row.flag, true);
    CHECK(coach.found("protection_without_sensor").size() == 1);
    addSensor(coach, "TE1", row.sensor);
    CHECK_FALSE(coach.finds("protection_without_sensor"));
    coach.set("C1", "stop_by_volume", true);  // and nothing counts the volume
    CHECK(coach.found("protection_without_sensor").size() == 1);
}

TEST_CASE("a clipped-on sensor is found, with a hopeful lag as a caution that its fix puts right", "[review]")
{
    Coach coach;
    coach.set("C1", "stop_by_temperature", true);
    addSensor(coach, "TE1", "stop_sensor");
    CHECK_FALSE(coach.finds("clipped_on_sensor"));
    coach.set("TE1", "mounting", std::string("clipped"));
    coach.set("TE1", "lag_s", 2.0);
    auto found = coach.found("clipped_on_sensor");
    REQUIRE(found.size() == 1);
    CHECK(found[0].severity == Severity::Caution);
    REQUIRE(found[0].fix);
    document::apply(coach.drawing, *found[0].fix);
    found = coach.found("clipped_on_sensor");
    REQUIRE(found.size() == 1);
    CHECK(found[0].severity == Severity::Note);
    coach.set("C1", "stop_by_temperature", false);  // nothing hangs on it
    CHECK_FALSE(coach.finds("clipped_on_sensor"));
}
