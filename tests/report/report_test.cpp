// SPDX-License-Identifier: GPL-3.0-or-later
#include "report/report.h"

#include <algorithm>
#include <fstream>
#include <limits>
#include <nlohmann/json.hpp>

#include "report/csv.h"
#include "review/coach.h"
#include "support/catch.h"
#include "support/says.h"

using namespace tapward;
using document::ActionKind;
using test::Coach;
using test::line;
using test::says;

namespace {

study::Scalar scalar(std::string id, Quantity quantity, std::optional<double> value, Message reason = {})
{
    study::Scalar made;
    made.id = id;
    made.label = std::move(id);
    made.quantity = quantity;
    made.value = value;
    made.reason = std::move(reason);
    return made;
}

/// A coach with a cold run, three presses, and a draw as it is today.
Coach coachWithCases()
{
    Coach coach;
    coach.drawing.job.title = "Loop for a test coach";
    study::CaseResult& cold = coach.addCase("Cold run", 1, {{"hottest_heater_outlet", 52.0}, {"hottest_tap", 41.0}});
    cold.target_C = 40.0;
    cold.scalars.push_back(scalar("volume_to_target", Quantity::Volume, 2.6e-3));
    cold.scalars.push_back(scalar("time_to_target", Quantity::Time, 85.0));
    cold.scalars.push_back(scalar("purge_volume", Quantity::Volume, 1.7e-3));
    cold.scalars.push_back(scalar("wait", Quantity::Time, std::nullopt, "No tap was opened."));
    cold.events.push_back({12.5, "burner_lit", Message("Burner lit at {0}.", {Measure{2.9e-5, Quantity::Flow}}),
                           coach.id("WH1"), study::Event::Weight::Info});
    cold.events.push_back({60, "note", "Nothing of a part.", document::kNoPart, study::Event::Weight::Info});
    cold.time_s = {0, 1, 2};
    cold.series.push_back({"loop_flow", "Loop flow", Quantity::Flow, document::kNoPart, {0, us::kGpm, us::kGpm}});
    cold.series.push_back({"tap.F1",
                           "Tap F1, hot",
                           Quantity::Temperature,
                           coach.id("F1"),
                           {std::numeric_limits<double>::quiet_NaN(), 20, 40}});
    coach.addCase("Three presses", 3, {{"hottest_heater_outlet", 60.0}, {"hottest_tap", 49.0}});
    study::CaseResult& today = coach.addCase("Draw today", 0);
    today.view = document::View::Before;
    document::Action open;
    open.kind = ActionKind::OpenOutlet;
    open.part = coach.id("F1");
    coach.drawing.cases.back().actions.push_back(open);
    coach.drawing.cases.back().view = document::View::Before;
    today.scalars.push_back(scalar("wait", Quantity::Time, 74.0));
    today.scalars.push_back(scalar("wasted_volume", Quantity::Volume, 4.5e-3));
    return coach;
}

const report::PartLine* item(const report::PartsList& list, const std::string& start)
{
    const auto at = std::find_if(list.lines.begin(), list.lines.end(),
                                 [&](const auto& one) { return inEnglish(one.item).starts_with(start); });
    return at == list.lines.end() ? nullptr : &*at;
}

}  // namespace

TEST_CASE("the parts list holds what is added, sums identical items and names their tags", "[report]")
{
    Coach coach;
    for (document::Part& part : coach.drawing.parts) {
        part.stage = document::Stage::Existing;
    }
    for (const char* tag : {"P1", "CV1", "MV1"}) {
        coach.drawing.find(coach.id(tag))->stage = document::Stage::Added;
        coach.set(tag, "price", 50.0);
    }
    const document::PartId second = coach.add("check_valve", "CV2");
    coach.drawing.find(second)->entries["price"] = {50.0, parts::Basis::Measured};
    coach.drawing.job.hours = 3;
    coach.drawing.job.hourlyRate = 90;

    const report::PartsList list = report::partsList(coach.drawing);
    REQUIRE(list.lines.size() == 3);
    const report::PartLine* checks = item(list, "Check valve");
    REQUIRE(checks);
    CHECK(checks->quantity == 2);
    CHECK(checks->price() == 100);
    CHECK(checks->tags == std::vector<std::string>{"CV1", "CV2"});
    CHECK(list.partsTotal == 200);
    CHECK(list.allPriced);
    CHECK(list.labour == 270);
    // Tray order: valves before pumps.
    CHECK(list.lines.front().item == "Check valve");
}

TEST_CASE("lengths of one tube are summed and an unknown price is not counted as nothing", "[report]")
{
    Coach coach;
    for (document::Part& part : coach.drawing.parts) {
        part.stage = document::Stage::Existing;
    }
    const document::PartId one = coach.add("pipe_run", "L91"), two = coach.add("pipe_run", "L92");
    coach.drawing.find(one)->entries["length_m"] = {3.0, parts::Basis::Measured};
    coach.drawing.find(two)->entries["length_m"] = {1.5, parts::Basis::Measured};
    const report::PartsList list = report::partsList(coach.drawing);
    REQUIRE(list.lines.size() == 1);
    CHECK(list.lines[0].metres);
    CHECK(list.lines[0].quantity == Approx(4.5));
    CHECK_FALSE(list.allPriced);
    CHECK(list.partsTotal == 0);
}

TEST_CASE("CSV fields are quoted as RFC 4180 asks", "[report]")
{
    // RFC 4180, section 2: quotes doubled, fields with comma, quote or line break quoted, CRLF ends a line.
    CHECK(report::csvRow({"plain", "a,b", "say \"hot\"", "two\nlines", ""})
          == "plain,\"a,b\",\"say \"\"hot\"\"\",\"two\nlines\",\r\n");
}

TEST_CASE("no cell of a CSV is run as a formula, and numbers stay numbers", "[report]")
{
    // A spreadsheet runs a cell that begins with one of these, quoted or not; an apostrophe makes it a text.
    CHECK(report::csvField("@SUM(1)") == "\"'@SUM(1)\"");
    for (const char* text : {"=1+1", "+cmd|' /C calc'!A0", "-2+3", "-A1", "@x", "\t=1", "\r=1", "-", "+"}) {
        CAPTURE(text);
        const std::string field = report::csvField(text);
        CHECK(field.starts_with("\"'"));
        CHECK(field.ends_with('"'));
    }
    for (const char* text : {"-3.50", "+4", "12", "-40 °F", "", "P-1", "a=b"}) {
        CHECK(report::csvField(text) == text);
    }
    CHECK(report::csvField("a;=1") == "\"a;=1\"");  // a comma is not everybody's separator

    Coach coach;
    coach.drawing.parts.front().tag = "@SUM(1)";
    coach.drawing.parts.front().stage = document::Stage::Added;
    study::CaseResult result;
    result.time_s = {0};
    result.series = {{"tap.=1", "=HYPERLINK(\"x\")", Quantity::Temperature, document::kNoPart, {-1.0}}};
    for (const std::string& csv :
         {report::partsCsv(coach.drawing, UnitSystem::Us), report::seriesCsv(result, UnitSystem::Metric)}) {
        CAPTURE(csv);
        CHECK(csv.find(",@") == std::string::npos);
        CHECK(csv.find(",\"@") == std::string::npos);
        CHECK(csv.find(",=") == std::string::npos);
        CHECK(csv.find(",\"=") == std::string::npos);
    }
    CHECK(report::seriesCsv(result, UnitSystem::Metric).ends_with(",-1.000\r\n"));
}

TEST_CASE("the parts CSV shows lengths and their unit price in the chosen units", "[report]")
{
    Coach coach;
    for (document::Part& part : coach.drawing.parts) {
        part.stage = document::Stage::Existing;
    }
    const document::PartId pipe = coach.add("pipe_run", "L91");
    coach.drawing.find(pipe)->entries["length_m"] = {3.048, parts::Basis::Measured};  // 10 ft
    coach.drawing.find(pipe)->entries["price_per_m"] = {5.0, parts::Basis::Measured};
    const std::string us = report::partsCsv(coach.drawing, UnitSystem::Us);
    CHECK(us.find(",10,ft,L91,1.52,15.24\r\n") != std::string::npos);
    const std::string metric = report::partsCsv(coach.drawing, UnitSystem::Metric);
    CHECK(metric.find(",3.048,m,L91,5.00,15.24\r\n") != std::string::npos);
    CHECK(us.compare(0, 5, "Item,") == 0);
    CHECK(report::partsText(coach.drawing, UnitSystem::Us).find("10.0 ft") != std::string::npos);
}

TEST_CASE("the key answers come from the cases that ask for them", "[report]")
{
    const Coach coach = coachWithCases();
    const auto lines = report::keyAnswers(coach.drawing, coach.prediction, coach.drawn());
    CHECK(line(lines, "loop_flow").value.si == 0.60 * us::kGpm);
    CHECK(show(line(lines, "flow_margin").value, UnitSystem::Us) == "33 %");
    CHECK(line(lines, "purge_volume").value.si == 1.7e-3);
    CHECK(line(lines, "volume_to_target").value.si == 2.6e-3);
    CHECK(line(lines, "time_to_target").value.si == 85);
    CHECK(line(lines, "hottest_heater_outlet").value.si == 60);  // three presses, not the cold run's 52
    CHECK(line(lines, "hottest_tap").value.si == 49);
    CHECK(line(lines, "wait").value.si == 74);
    CHECK(line(lines, "wasted_volume").value.si == 4.5e-3);
    // Burn time at the hottest of both, 60 °C: 3 s, Moritz & Henriques (1947) table.
    CHECK_THAT(line(lines, "burn_time").value.si, WithinRel(3.0, 1e-9));
}

TEST_CASE("an answer that does not exist says why and is never a number", "[report]")
{
    Coach coach;
    coach.prediction = {};
    coach.prediction.loop.reason = "No circulator is drawn.";
    const auto lines = report::keyAnswers(coach.drawing, coach.prediction, coach.drawn());
    CHECK(lines.size() >= 11);
    for (const report::AnswerLine& one : lines) {
        CAPTURE(one.id);
        CHECK_FALSE(one.has);
        CHECK_FALSE(one.reason.empty());
    }
}

TEST_CASE("a fault case is not mistaken for the cold run", "[report]")
{
    Coach coach = coachWithCases();
    study::CaseResult& faulty = coach.addCase("A fault", 1, {{"hottest_heater_outlet", 90.0}});
    faulty.scalars.push_back(scalar("volume_to_target", Quantity::Volume, 9e-3));
    document::Action fault;
    fault.kind = ActionKind::StartFault;
    coach.drawing.cases.back().actions.push_back(fault);
    std::rotate(coach.prediction.cases.begin(), coach.prediction.cases.end() - 1, coach.prediction.cases.end());
    const auto lines = report::keyAnswers(coach.drawing, coach.prediction, coach.drawn());
    CHECK(line(lines, "volume_to_target").value.si == 2.6e-3);
    CHECK(line(lines, "hottest_heater_outlet").value.si == 60);
}

TEST_CASE("the prediction JSON reads back with its values, nulls and reasons", "[report]")
{
    Coach coach = coachWithCases();
    coach.prediction.cases[1].noAnswer = Problem{"It cannot run.", "Repair it.", {}};
    const std::string text = report::predictionJson(coach.drawing, coach.prediction, "coach.tapward");
    const auto json = nlohmann::json::parse(text);
    CHECK(json["format"] == "tapward-prediction");
    CHECK(json["version"] == 1);
    CHECK(json["file"] == "coach.tapward");
    REQUIRE(json["cases"].size() == 3);
    const auto& cold = json["cases"][0];
    CHECK(cold["name"] == "Cold run");
    CHECK(cold["scalars"]["volume_to_target"]["value"] == 2.6e-3);  // to the last digit
    CHECK(cold["scalars"]["volume_to_target"]["unit"] == "m3");
    CHECK_FALSE(cold["scalars"]["volume_to_target"].contains("reason"));
    CHECK(cold["scalars"]["wait"]["value"].is_null());
    CHECK(cold["scalars"]["wait"]["reason"] == "No tap was opened.");
    CHECK(cold["events"][1] == nlohmann::json{{"t_s", 12.5}, {"what", "Burner lit at 1.74 L/min."}, {"part", "WH1"}});
    CHECK(cold["events"][2]["part"].is_null());
    CHECK(cold["series"]["time_s"] == nlohmann::json{0.0, 1.0, 2.0});
    CHECK(cold["series"]["tap.F1"][0].is_null());
    CHECK(cold["series"]["tap.F1"][2] == 40.0);
    CHECK(json["cases"][1]["no_answer"]["what"] == "It cannot run.");
    CHECK_FALSE(cold.contains("no_answer"));
    CHECK(json["loop"]["circulators"] == nlohmann::json{"P1"});
    CHECK(json["loop"]["scalars"]["loop_flow"]["value"] == 0.60 * us::kGpm);
    CHECK(json["loop"]["blocked_by"].is_null());
    CHECK(text == report::predictionJson(coach.drawing, coach.prediction, "coach.tapward"));
}

TEST_CASE("infinite and missing numbers become null in JSON and a file name of any bytes is survived", "[report]")
{
    Coach coach;
    study::CaseResult& odd = coach.addCase("Odd", 1);
    odd.scalars.push_back(scalar("x", Quantity::None, std::numeric_limits<double>::infinity()));
    const auto json = nlohmann::json::parse(report::predictionJson(coach.drawing, coach.prediction, "bad\xff name"));
    CHECK(json["cases"][0]["scalars"]["x"]["value"].is_null());
    CHECK_FALSE(json["cases"][0]["scalars"]["x"]["reason"].get<std::string>().empty());
}

TEST_CASE("the series CSV has units in its header and empty cells where nothing flows", "[report]")
{
    const Coach coach = coachWithCases();
    CHECK(report::seriesCsv(coach.prediction.cases[0], UnitSystem::Us)
          == "Time (s),Loop flow (gpm),\"Tap F1, hot (°F)\"\r\n"
             "0.000,0.0000,\r\n"
             "1.000,1.0000,68.00\r\n"
             "2.000,1.0000,104.00\r\n");
}

TEST_CASE("the table says every answer of every case and why one is missing", "[report]")
{
    const Coach coach = coachWithCases();
    const std::string text = report::table(coach.drawing, coach.prediction, coach.drawn(), UnitSystem::Us);
    CAPTURE(text);
    for (const char* words : {"Loop for a test coach", "Loop flow", "0.60 gpm", "Suggested stop", "0.69 gal",
                              "Cold run", "Three presses", "Draw today", "74 s", "No tap was opened.", "12.5 s"}) {
        CAPTURE(words);
        CHECK(text.find(words) != std::string::npos);
    }
    CHECK(report::table(coach.drawing, coach.prediction, coach.drawn(), UnitSystem::Metric).find("2.27 L/min")
          != std::string::npos);
}

TEST_CASE("a tiny residual is not printed as nothing", "[report]")
{
    Coach coach = coachWithCases();
    coach.prediction.cases[0].scalars.push_back(scalar("mass_residual", Quantity::None, 3.2e-12));
    CHECK(report::table(coach.drawing, coach.prediction, coach.drawn(), UnitSystem::Us).find("3.2e-12")
          != std::string::npos);
}

TEST_CASE("the page carries job, answers, cautions and parts, and marks invented figures", "[report]")
{
    Coach coach = coachWithCases();
    coach.drawing.job.customer = "An invented customer";
    const auto findings = review::review(coach.drawing, coach.prediction, coach.drawn());
    report::PageContent page = report::page(coach.drawing, coach.prediction, coach.drawn(), findings);
    CHECK(inEnglish(page.title) == "Loop for a test coach");
    CHECK(std::find(page.titleBlock.begin(), page.titleBlock.end(),
                    std::pair<std::string, std::string>("Customer", "An invented customer"))
          != page.titleBlock.end());
    CHECK_FALSE(page.answers.empty());
    CHECK_FALSE(page.cautions.empty());
    CHECK_FALSE(page.parts.lines.empty());
    const auto says = [](const report::PageContent& content, const std::string& words) {
        return std::any_of(content.footnotes.begin(), content.footnotes.end(),
                           [&](const std::string& note) { return note.find(words) != std::string::npos; });
    };
    CHECK(says(page, "predictions"));
    CHECK(says(page, "not a declaration of compliance"));
    CHECK(says(page, "estimates"));
    CHECK_FALSE(says(page, "Sample figures"));
    coach.drawing.job.sampleFigures = true;
    page = report::page(coach.drawing, coach.prediction, coach.drawn(), findings);
    CHECK(says(page, "Sample figures"));
    CHECK(page.subtitle.find("Sample figures") != std::string::npos);
}

TEST_CASE("findings are told with severity, tag, reason, remedy and source", "[report]")
{
    Coach coach = coachWithCases();
    coach.drawing.dismissals.push_back({"single_stop", coach.id("C1"), "A limiter is fitted later.", {}});
    const std::string text = report::findingsText(
        coach.drawing, review::review(coach.drawing, coach.prediction, coach.drawn()), UnitSystem::Us);
    CAPTURE(text);
    CHECK(text.find("DANGER F1: Water at F1 reaches at least 120 °F") != std::string::npos);
    CHECK(text.find("(set aside) Caution C1: C1 has no independent high limit.") != std::string::npos);
    CHECK(text.find("Set aside because: A limiter is fitted later.") != std::string::npos);
    CHECK(report::findingsText(coach.drawing, {}, UnitSystem::Us) == "Nothing found.\n");
}

TEST_CASE("the prediction JSON has the members its schema asks for and no others", "[report]")
{
    std::ifstream file(TAPWARD_SOURCE_DIR "/resources/schema/prediction-1.schema.json");
    REQUIRE(file);
    const auto schema = nlohmann::json::parse(file);
    Coach coach = coachWithCases();
    coach.prediction.cases[1].noAnswer = Problem{"It cannot run.", "Repair it.", {}};
    coach.prediction.loop.headBudget.push_back({coach.id("CV1"), 3000, 1});
    const auto json = nlohmann::json::parse(report::predictionJson(coach.drawing, coach.prediction, "coach.tapward"));

    const auto holds = [](const nlohmann::json& object, const nlohmann::json& rule) {
        for (const auto& key : rule["required"]) {
            CAPTURE(key);
            CHECK(object.contains(key.get<std::string>()));
        }
        for (const auto& member : object.items()) {
            CAPTURE(member.key());
            CHECK(rule["properties"].contains(member.key()));
        }
    };
    const auto& defs = schema["$defs"];
    holds(json, schema);
    holds(json["loop"], defs["loop"]);
    holds(json["loop"]["head_budget"][0], defs["loop"]["properties"]["head_budget"]["items"]);
    for (const auto& one : json["cases"]) {
        holds(one, defs["case"]);
        for (const auto& value : one["scalars"]) {
            holds(value, defs["scalar"]);
            CHECK(value["value"].is_null() == value.contains("reason"));
        }
        for (const auto& event : one["events"]) {
            holds(event, defs["case"]["properties"]["events"]["items"]);
        }
    }
    for (const auto& value : json["loop"]["scalars"]) {
        holds(value, defs["scalar"]);
    }
}
