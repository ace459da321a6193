// SPDX-License-Identifier: GPL-3.0-or-later
// The fewest protections that keep the limits: held against a fresh search of the drawing they are set in.
#include <algorithm>
#include <cmath>

#include "document/file.h"
#include "study/safe_set.h"
#include "study/trade_coach.h"
#include "support/catch.h"

using namespace tapward;
using study::HeatPlace;

namespace {

/// Presses only, on one day: quick.
study::PressesOptions quick()
{
    study::PressesOptions options = test::oneDay(test::tradeCoach(), 12.6);
    options.mostPresses = 3;
    options.draws = false;
    return options;
}

}  // namespace

TEST_CASE("what is set keeps the limits in a search of its own, and one change less does not", "[study][safe]")
{
    // Limits between what one cold run gives and what the third press does, so that something is needed and helps.
    const document::Drawing drawing = test::tradeCoach();
    study::PressesOptions options = quick();
    options.protections = options.safeWait = false;
    const auto asDrawn = study::studyPresses(drawing, options);
    REQUIRE(asDrawn.has_value());
    options.outletLimit_C = *asDrawn->asDrawn.outlets_C - 4;
    options.coldEntryLimit_C = 90;
    const auto set = study::findSafeSet(drawing, options);
    REQUIRE(set.has_value());
    CHECK_FALSE(set->keepsAsDrawn);
    REQUIRE_FALSE(set->changes.empty());
    CHECK(set->tried >= 2);
    CHECK(*set->with.outlets_C <= options.outletLimit_C);
    // A word for each setting that is one; a temperature goes with the switch before it.
    CHECK(std::any_of(set->changes.begin(), set->changes.end(),
                      [](const study::SafeChange& change) { return !change.words.empty(); }));

    document::Drawing changed = drawing;
    const document::Edit edit = set->edit();
    REQUIRE_FALSE(document::refusal(changed, edit));
    const document::Edit back = document::apply(changed, edit);
    const auto fresh = study::studyPresses(changed, options);
    REQUIRE(fresh.has_value());
    CHECK(*fresh->asDrawn.outlets_C <= options.outletLimit_C + 0.5);  // the search's cells against the reported ones
    const auto again = study::findSafeSet(changed, options);
    REQUIRE(again.has_value());
    CHECK(again->keepsAsDrawn);
    CHECK(again->changes.empty());
    document::apply(changed, back);
    CHECK(changed == drawing);
}

TEST_CASE("where one press is too hot already no control helps, and that is said", "[study][safe]")
{
    study::PressesOptions options = quick();
    options.outletLimit_C = 25;
    options.coldEntryLimit_C = 90;
    const auto set = study::findSafeSet(test::tradeCoach(), options);
    REQUIRE(set.has_value());
    CHECK_FALSE(set->isFound());
    CHECK(set->changes.empty());
    CHECK(set->reason.text.find("mixing valve") != std::string::npos);
    // Cold water passes 25 °C in the first run: how often one presses does not matter.
    CHECK(set->reason.text.find("one press") != std::string::npos);
    CHECK(*set->with.outlets_C > 25);
}

TEST_CASE("limits nobody passes need nothing; no loop, no set", "[study][safe]")
{
    study::PressesOptions options = quick();
    options.outletLimit_C = options.coldEntryLimit_C = 99;
    const auto set = study::findSafeSet(test::tradeCoach(), options);
    REQUIRE(set.has_value());
    CHECK(set->keepsAsDrawn);
    CHECK(set->isFound());
    CHECK(set->tried == 0);
    auto plain = document::load(TAPWARD_SOURCE_DIR "/resources/templates/small_travel_trailer.tapward");
    REQUIRE(plain);
    CHECK_FALSE(study::findSafeSet(*plain, options).has_value());
}

TEST_CASE("a protection is only proposed where its sensor is drawn", "[study][safe]")
{
    // Without any sensor the wait and the heater's setting are all there is.
    document::Drawing drawing = test::tradeCoach();
    for (document::Part& part : drawing.parts) {
        if (part.kind == "controller") {
            for (const char* key : {"stop_sensor", "inlet_sensor", "limit_sensor"}) {
                part.entries[key] = {std::string(), parts::Basis::Measured};
            }
        }
    }
    study::PressesOptions options = quick();
    options.coldEntryLimit_C = 90;
    options.outletLimit_C = 44;
    const auto set = study::findSafeSet(drawing, options);
    REQUIRE(set.has_value());
    for (const study::SafeChange& change : set->changes) {
        CHECK((change.key == "cool_down_wait_s" || change.key == "setpoint_C"));
    }
}
