// SPDX-License-Identifier: GPL-3.0-or-later
// Repeated presses and faults as text and JSON: the schema holds, and the number of threads changes nothing.
#include "report/study_report.h"

#include <fstream>
#include <nlohmann/json.hpp>

#include "review/coach.h"
#include "support/catch.h"
#include "support/json_schema.h"

using namespace tapward;
using test::Coach;

namespace {

test::JsonSchema studySchema()
{
    std::ifstream file(TAPWARD_SOURCE_DIR "/resources/schema/study-1.schema.json");
    REQUIRE(file);
    return test::JsonSchema(nlohmann::json::parse(file));
}

/// A small coach whose loop runs: a dozen pipes, one tap, twenty or so faults.
Coach smallCoach()
{
    Coach coach;
    coach.set("C1", "stop_by_time", true);
    coach.set("C1", "stop_time_s", 60.0);
    return coach;
}

study::FaultsStudy faults(const Coach& coach, unsigned hands, bool pairs)
{
    study::FaultsOptions options;
    options.hands = hands;
    options.pairs = pairs;
    auto study = study::studyFaults(coach.drawing, options);
    REQUIRE(study.has_value());
    return *study;
}

study::PressesStudy presses(const Coach& coach, unsigned hands)
{
    study::PressesOptions options;
    options.hands = hands;
    options.mostPresses = 2;
    options.gaps_s = {0, 60};
    options.safeWait = false;
    auto study = study::studyPresses(coach.drawing, options);
    REQUIRE(study.has_value());
    return *study;
}

}  // namespace

TEST_CASE("the fault table with pairs is the same on one thread and on two, to the last digit", "[report][faults]")
{
    const Coach coach = smallCoach();
    const auto one = faults(coach, 1, true), two = faults(coach, 2, true);
    REQUIRE(one.rows.size() > 20);
    CHECK(one.simulated == two.simulated);
    const std::string json = report::faultsJson(coach.drawing, one, "coach.tapward");
    CHECK(json == report::faultsJson(coach.drawing, two, "coach.tapward"));
    CHECK(report::faultsText(coach.drawing, one, UnitSystem::Us)
          == report::faultsText(coach.drawing, two, UnitSystem::Us));
    int pairs = 0;
    const auto parsed = nlohmann::json::parse(json);
    for (const auto& row : parsed["faults"]) {
        pairs += row.contains("with_fault") ? 1 : 0;
    }
    CHECK(pairs > 0);
    for (const std::string& fault : studySchema().faults(parsed)) {
        CAPTURE(fault);
        CHECK(false);
    }
}

TEST_CASE("the repeated presses are the same on one thread and on two, to the last digit", "[report][presses]")
{
    const Coach coach = smallCoach();
    const auto one = presses(coach, 1), two = presses(coach, 2);
    REQUIRE_FALSE(one.worst.empty());
    CHECK(one.cases == two.cases);
    const std::string json = report::pressesJson(coach.drawing, one, "coach.tapward");
    CHECK(json == report::pressesJson(coach.drawing, two, "coach.tapward"));
    CHECK(report::pressesText(coach.drawing, one, UnitSystem::Us)
          == report::pressesText(coach.drawing, two, UnitSystem::Us));
    for (const std::string& fault : studySchema().faults(nlohmann::json::parse(json))) {
        CAPTURE(fault);
        CHECK(false);
    }
}

TEST_CASE("the check against a schema finds what is missing, wrong or not declared", "[report]")
{
    const auto schema = studySchema();
    const nlohmann::json empty{{"format", "tapward-study"}, {"version", 1}, {"study", "stop"}, {"file", "x"}};
    CHECK(schema.faults(empty).size() > 10);  // the note and what a stop study must have
    nlohmann::json odd = empty;
    odd["version"] = 2;
    odd["loose"] = true;
    CHECK(schema.faults(odd).size() == schema.faults(empty).size() + 2);
}
