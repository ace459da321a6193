// SPDX-License-Identifier: GPL-3.0-or-later
// The whole assessment as text and JSON: each figure in its place, the schema holds.
#include "report/assess_report.h"

#include <fstream>
#include <nlohmann/json.hpp>

#include "report/study_report.h"
#include "review/coach.h"
#include "support/catch.h"
#include "support/json_schema.h"
#include "support/says.h"

using namespace tapward;
using test::Coach;
using test::says;

namespace {

/// Three presses drawn, a fourth found hotter by the search, and a fault case.
struct Assessed {
    Coach coach;
    study::Assessment assessment;
    study::SafeSet needed;

    Assessed()
    {
        coach.addCase("Three", 3, {{"hottest_heater_outlet", 47.0}, {"hottest_tap", 46.0}});
        coach.addCase("Stuck", 0).hottest.push_back({study::HeatPlace::OutletCold, coach.id("F1"), 50, 9});
        document::Action fault;
        fault.kind = document::ActionKind::StartFault;
        coach.drawing.cases.back().actions.push_back(fault);
        auto heats = std::make_shared<study::PressesStudy>();
        heats->cases = 9;
        heats->worst.push_back({study::HeatPlace::OutletHot, coach.id("F1"), 60, 400, 4, {}});
        heats->worst.back().script.name = "Hottest at F1 hot: 4 presses";
        assessment = study::assess(coach.drawing, coach.prediction, heats, {}, nullptr, "No stop.");
        needed.changes = {
            {coach.id("C1"), "cool_down_wait_s", 600.0, {"Wait {0} between runs.", {Measure{600, Quantity::Time}}}}};
    }
};

}  // namespace

TEST_CASE("the assessment's text has every place with its limit and what shows it", "[report][assessment]")
{
    const Assessed one;
    const std::string text =
        report::assessText(one.coach.drawing, one.coach.prediction, one.assessment, one.needed, UnitSystem::Metric);
    CAPTURE(text);
    // 60 °C burns in three seconds: Moritz & Henriques (1947).
    CHECK(
        says(text, "Hottest at a tap                 60.0 °C  F1: over 4 presses, the hottest of 9 scripts tried.\n"));
    CHECK(says(text, "\nHow hot it gets, nothing broken\n"));
    CHECK(says(text,
               "  F1, hot              60.0 °C  over 48.9 °C    found by the search: Hottest at F1 hot: 4 presses\n"));
    CHECK(says(text, "  WH1, outlet          47.0 °C  within 48.9 °C  case: Three\n"));
    CHECK(says(text, "\nWith the faults of the drawing's own cases\n"));
    CHECK(says(text, "  F1, cold  50.0 °C  over 40.0 °C  case: Stuck\n"));
    CHECK(says(text, "whoever presses how often:\n  Wait 10 min between runs.\n"));
    CHECK(says(text, "Never rely on one"));
    const auto none = report::assessText(one.coach.drawing, one.coach.prediction, one.assessment,
                                         problem("No controller is drawn.", "Draw one."), UnitSystem::Metric);
    CHECK(says(none, "\nProtections needed\n------------------\n  No controller is drawn.\n"));
}

TEST_CASE("the assessment's JSON holds its schema, in SI", "[report][assessment]")
{
    std::ifstream file(TAPWARD_SOURCE_DIR "/resources/schema/assessment-1.schema.json");
    REQUIRE(file);
    const test::JsonSchema schema(nlohmann::json::parse(file));
    const Assessed one;
    const nlohmann::json out = nlohmann::json::parse(
        report::assessJson(one.coach.drawing, one.coach.prediction, one.assessment, one.needed, "coach.tapward"));
    for (const std::string& fault : schema.faults(out)) {
        FAIL_CHECK(fault);
    }
    CHECK(out.at("complete") == true);
    CHECK(out.at("file") == "coach.tapward");
    REQUIRE(out.at("places").size() == 3);  // heater, tap, and where the loop leaves the hot line
    CHECK(out.at("places")[0]
          == nlohmann::json::parse(
              R"({"place": "outlet_hot", "part": "F1", "hottest_C": 60.0, "limit_C": 48.888888888888886,
                             "severity": "danger", "burn_adult_s": 3.0, "presses": 4, "searched": true,
                             "shown_by": "Hottest at F1 hot: 4 presses"})"));
    REQUIRE(out.at("places_with_faults").size() == 1);
    CHECK(out.at("places_with_faults")[0].at("part") == "F1");
    CHECK(out.at("places_with_faults")[0].at("limit_C") == 40.0);
    CHECK(out.at("places_with_faults")[0].at("searched") == false);
    CHECK(out.at("protections").at("changes")
          == nlohmann::json::parse(R"([{"part": "C1", "field": "cool_down_wait_s", "value": 600.0}])"));
    for (const nlohmann::json& answer : out.at("answers")) {
        if (answer.at("id") == "hottest_tap") {
            CHECK(answer.at("value") == 60.0);
            CHECK(answer.at("at_least") == false);
        }
    }
    const nlohmann::json drawn = nlohmann::json::parse(report::assessJson(
        one.coach.drawing, one.coach.prediction, one.coach.drawn(), problem("None.", "Draw one."), "x"));
    CHECK(schema.faults(drawn).empty());
    CHECK(drawn.at("complete") == false);
    CHECK(drawn.at("protections").at("keeps_as_drawn").is_null());
    CHECK(drawn.at("protections").at("reason") == "None.");
}

TEST_CASE("the JSON of the protections needed holds the studies' schema", "[report][assessment]")
{
    std::ifstream file(TAPWARD_SOURCE_DIR "/resources/schema/study-1.schema.json");
    REQUIRE(file);
    const test::JsonSchema schema(nlohmann::json::parse(file));
    const Assessed one;
    for (const std::string& fault :
         schema.faults(nlohmann::json::parse(report::safeSetJson(one.coach.drawing, one.needed, "coach.tapward")))) {
        FAIL_CHECK(fault);
    }
}
