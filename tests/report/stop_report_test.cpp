// SPDX-License-Identifier: GPL-3.0-or-later
#include "report/stop_report.h"

#include <fstream>
#include <nlohmann/json.hpp>

#include "document/file.h"
#include "support/catch.h"
#include "support/json_schema.h"

using namespace tapward;

namespace {

document::Drawing coach()
{
    auto drawing = document::load(TAPWARD_SOURCE_DIR "/samples/long_hall_coach.tapward");
    REQUIRE(drawing.has_value());
    return *drawing;
}

void checkSchema(const nlohmann::json& json)
{
    std::ifstream file(TAPWARD_SOURCE_DIR "/resources/schema/study-1.schema.json");
    REQUIRE(file);
    for (const std::string& fault : test::JsonSchema(nlohmann::json::parse(file)).faults(json)) {
        CAPTURE(fault);
        CHECK(false);
    }
}

}  // namespace

TEST_CASE("the stop study as text and JSON carries its suggestion, its chance and its ranking", "[report][stop]")
{
    const document::Drawing drawing = coach();
    study::StopOptions options;
    options.samples = 16;
    options.confirmations = 2;
    const auto study = study::suggestStop(drawing, options);
    REQUIRE(study.has_value());
    REQUIRE(study->best());
    const std::string text = report::stopText(drawing, *study, UnitSystem::Us);
    CHECK(text.find("Suggested: " + show({*study->best()->volume_m3, Quantity::Volume}, UnitSystem::Us))
          != std::string::npos);
    CHECK(text.find("Measure this first") != std::string::npos);
    CHECK(text.find("separate high limit") != std::string::npos);

    const auto json = nlohmann::json::parse(report::stopJson(drawing, *study, "coach.tapward"));
    checkSchema(json);
    CHECK(json.at("study") == "stop");
    CHECK(json.at("choices").size() == 4);
    CHECK(json.at("choices").at(0).at("volume_m3").get<double>() == *study->choices[0].volume_m3);
    CHECK(json.at("inputs").size() == study->influences.size());
    CHECK(json.at("by_volume").at("tap_50_C").size() == study->byVolume.x.size());
}

TEST_CASE("the wiring study as text and JSON carries loads, branches, working points and the budget",
          "[report][wiring]")
{
    const document::Drawing drawing = coach();
    const auto study = study::wiringStudy(drawing);
    const auto curves = study::loopCurves(drawing);
    const auto budget = study::headBudget(drawing);
    REQUIRE(study.has_value());
    REQUIRE(curves.has_value());
    REQUIRE(budget.has_value());
    const std::string text = report::wiringText(drawing, *study, &*curves, &*budget, UnitSystem::Us);
    for (const char* words :
         {"P1 pump", "FU1", "10.5", "Two in series", "Where the head goes", "isolate the battery"}) {
        CAPTURE(words);
        CHECK(text.find(words) != std::string::npos);
    }
    const auto json = nlohmann::json::parse(report::wiringJson(drawing, *study, &*curves, &*budget, "coach.tapward"));
    checkSchema(json);
    CHECK(json.at("loads").size() == study->loads.size());
    CHECK(json.at("voltages").size() == 4);
    CHECK(json.at("loop_curves").at("sets").size() == 12);
    CHECK(json.at("head_budget").at("pump_head_Pa").get<double>() == budget->pumpHead_Pa);
    const auto bare = nlohmann::json::parse(report::wiringJson(drawing, *study, nullptr, nullptr, "coach.tapward"));
    CHECK(bare.at("loop_curves").is_null());
    checkSchema(bare);
}
