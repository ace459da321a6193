// SPDX-License-Identifier: GPL-3.0-or-later
// Which case an answer comes from, and where each figure stands on page, table, list and JSON. Every figure is filled
// in by hand; conversions are written out beside them.

#include <algorithm>
#include <limits>
#include <nlohmann/json.hpp>

#include "document/survey.h"
#include "report/csv.h"
#include "report/report.h"
#include "report/survey_sheet.h"
#include "report/text.h"
#include "review/coach.h"
#include "review/winter.h"
#include "support/catch.h"
#include "support/says.h"

using namespace tapward;
using document::ActionKind;
using test::Coach;
using test::line;
using test::says;

namespace {

std::string note(const std::vector<report::AnswerLine>& lines, const std::string& id)
{
    const report::AnswerLine& one = line(lines, id);
    const Message& said = one.has ? one.note : one.reason;
    return said.empty() ? std::string() : render(said, UnitSystem::Metric);
}

void act(Coach& coach, ActionKind kind, int times = 1)
{
    for (int i = 0; i < times; ++i) {
        document::Action action;
        action.kind = kind;
        coach.drawing.cases.back().actions.push_back(action);
    }
}

study::Scalar scalar(const char* id, double value, Quantity quantity)
{
    study::Scalar made;
    made.id = id;
    made.label = id;
    made.quantity = quantity;
    made.value = value;
    return made;
}

/// A case with presses, draws and faults whose time to warm is `seconds`.
study::CaseResult& addRun(Coach& coach, const char* name, int presses, int draws, int faults, double seconds)
{
    study::CaseResult& made = coach.addCase(name, presses);
    made.scalars.push_back(scalar("time_to_target", seconds, Quantity::Time));
    act(coach, ActionKind::OpenOutlet, draws);
    act(coach, ActionKind::StartFault, faults);
    return made;
}

double timeToWarm(const Coach& coach)
{
    return line(report::keyAnswers(coach.drawing, coach.prediction, coach.drawn()), "time_to_target").value.si;
}

study::CaseResult& addHeat(Coach& coach, const char* name, int presses, double outlet_C)
{
    return coach.addCase(name, presses, {{"hottest_heater_outlet", outlet_C}, {"hottest_tap", outlet_C - 10}});
}

double hottest(const Coach& coach)
{
    return line(report::keyAnswers(coach.drawing, coach.prediction, coach.drawn()), "hottest_heater_outlet").value.si;
}

study::CaseResult& addDraw(Coach& coach, const char* name, document::View view, std::optional<double> wait)
{
    study::CaseResult& made = coach.addCase(name, 0);
    made.view = view;
    made.scalars.push_back(scalar("wait", 0, Quantity::Time));
    made.scalars.back().value = wait;
    made.scalars.back().reason = "It stays cold.";
    made.scalars.push_back(scalar("wasted_volume", 0.004, Quantity::Volume));
    act(coach, ActionKind::OpenOutlet);
    return made;
}

}  // namespace

TEST_CASE("the preheat answers come from the case nearest to one press alone", "[report][answers]")
{
    // A press beyond the first counts least, then an opened outlet, then a fault.
    Coach coach;
    addRun(coach, "Fault", 1, 0, 1, 1);
    CHECK(timeToWarm(coach) == 1);
    addRun(coach, "Nine draws", 1, 9, 0, 2);
    CHECK(timeToWarm(coach) == 2);
    addRun(coach, "One draw", 1, 1, 0, 3);
    CHECK(timeToWarm(coach) == 3);
    addRun(coach, "Nine presses", 9, 0, 0, 4);
    CHECK(timeToWarm(coach) == 4);
    addRun(coach, "Two presses", 2, 0, 0, 5);
    CHECK(timeToWarm(coach) == 5);
    addRun(coach, "One press", 1, 0, 0, 6);
    CHECK(timeToWarm(coach) == 6);
    addRun(coach, "Another press", 1, 0, 0, 7);
    CHECK(timeToWarm(coach) == 6);  // the first of equals
    addRun(coach, "No press", 0, 0, 0, 8);
    CHECK(timeToWarm(coach) == 6);
    coach.prediction.cases[5].noAnswer = Problem{"It cannot run.", "Mend it.", {}};
    CHECK(timeToWarm(coach) == 7);
    coach.prediction.cases[6].view = document::View::Before;
    CHECK(timeToWarm(coach) == 5);
    coach.prediction.cases[4].name = "not in the drawing";
    CHECK(timeToWarm(coach) == 4);
}

TEST_CASE("the hottest water is the hottest of all cases of the finished coach, nothing broken", "[report][answers]")
{
    Coach coach;
    const auto answers = [&] { return report::keyAnswers(coach.drawing, coach.prediction, coach.drawn()); };
    CHECK_FALSE(line(answers(), "hottest_tap").has);
    CHECK(note(answers(), "burn_time") == note(answers(), "hottest_tap"));
    addHeat(coach, "One", 1, 50);
    CHECK(hottest(coach) == 50);
    CHECK(note(answers(), "hottest_tap") == "F1: in one press, case 'One'.");
    CHECK(note(answers(), "hottest_heater_outlet") == "WH1: in one press, case 'One'.");
    addHeat(coach, "Three", 3, 60);
    CHECK(hottest(coach) == 60);
    CHECK(note(answers(), "hottest_tap") == "F1: over 3 presses, case 'Three'.");
    addHeat(coach, "None", 0, 65);
    CHECK(hottest(coach) == 65);
    CHECK(note(answers(), "hottest_tap") == "F1: case 'None'.");
    addHeat(coach, "Three cooler", 3, 64);
    CHECK(hottest(coach) == 65);
    addHeat(coach, "Fault", 3, 80);
    act(coach, ActionKind::StartFault);
    CHECK(hottest(coach) == 65);
    addHeat(coach, "Before", 3, 81).view = document::View::Before;
    CHECK(hottest(coach) == 65);
    addHeat(coach, "Impossible", 3, 82).noAnswer = Problem{"It cannot run.", "Mend it.", {}};
    CHECK(hottest(coach) == 65);
}

TEST_CASE("every outlet counts for the hottest tap, hot side and cold, and is named", "[report][answers]")
{
    Coach coach;
    study::CaseResult& result = coach.addCase("One", 1, {{"hottest_tap", 44.0}});
    const auto answers = [&] { return report::keyAnswers(coach.drawing, coach.prediction, coach.drawn()); };
    CHECK(line(answers(), "hottest_tap").value.si == 44);
    const document::PartId other = coach.add("shower", "SH9");
    result.hottest.push_back({study::HeatPlace::OutletCold, other, 46, 20});
    CHECK(line(answers(), "hottest_tap").value.si == 46);
    CHECK(note(answers(), "hottest_tap") == "SH9: in one press, case 'One'.");
    result.hottest.push_back({study::HeatPlace::OutletHot, other, 47, 20});
    CHECK(line(answers(), "hottest_tap").value.si == 47);
    // What no outlet gives is not the tap's.
    result.hottest.push_back({study::HeatPlace::HeaterOutlet, coach.id("WH1"), 70, 20});
    result.hottest.push_back({study::HeatPlace::Sensor, other, 71, 20});
    CHECK(line(answers(), "hottest_tap").value.si == 47);
    CHECK(line(answers(), "burn_time").value.si == 1);  // of the heater's 70 °C: Moritz & Henriques (1947)
}

namespace {

/// What a search would have found, and samples told.
study::Assessment searched(const Coach& coach, double tap_C, int presses)
{
    auto heats = std::make_shared<study::PressesStudy>();
    heats->cases = 321;
    heats->worst.push_back({study::HeatPlace::OutletHot, coach.id("F1"), tap_C, 400, presses, {}});
    heats->worst.back().script.name = "Hottest at F1 hot";
    return study::assess(coach.drawing, coach.prediction, heats, {}, nullptr, "No case presses a button.");
}

}  // namespace

TEST_CASE("figures are told as 'at least' until the search is done, and then as what it found", "[report][answers]")
{
    Coach coach;
    addHeat(coach, "Three", 3, 60);
    const auto drawn = report::keyAnswers(coach.drawing, coach.prediction, coach.drawn());
    CHECK(line(drawn, "hottest_tap").atLeast);
    CHECK(line(drawn, "hottest_heater_outlet").atLeast);
    CHECK_FALSE(line(drawn, "loop_flow").atLeast);
    CHECK_FALSE(line(drawn, "suggested_stop").has);
    CHECK(says(report::table(coach.drawing, coach.prediction, coach.drawn(), UnitSystem::Metric), "at least 50.0 °C"));

    const auto full = report::keyAnswers(coach.drawing, coach.prediction, searched(coach, 66, 4));
    CHECK_FALSE(line(full, "hottest_tap").atLeast);
    CHECK(line(full, "hottest_tap").value.si == 66);
    CHECK(note(full, "hottest_tap") == "F1: over 4 presses, the hottest of 321 scripts tried.");
    CHECK(note(report::keyAnswers(coach.drawing, coach.prediction, searched(coach, 66, 1)), "hottest_tap")
          == "F1: in one press, the hottest of 321 scripts tried.");
    CHECK(note(full, "suggested_stop") == "No case presses a button.");
    // What a drawn case shows is never taken back.
    CHECK(line(report::keyAnswers(coach.drawing, coach.prediction, searched(coach, 45, 4)), "hottest_tap").value.si
          == 50);

    Coach fixed;  // nothing to press: its cases are all there is to know
    fixed.prediction.loop.exists = false;
    addHeat(fixed, "Draw", 0, 60);
    CHECK_FALSE(line(report::keyAnswers(fixed.drawing, fixed.prediction, fixed.drawn()), "hottest_tap").atLeast);
}

TEST_CASE("the suggested stop is the study's, with the odds that were verified, or its reason", "[report][answers]")
{
    Coach coach;
    auto study = std::make_shared<study::StopStudy>();
    study->target_C = 41;
    study->samples = 256;
    study->lights = 0.94;
    study->reason = "Nothing is good enough.";
    const auto stop = [&] {
        return report::keyAnswers(
            coach.drawing, coach.prediction,
            study::assess(coach.drawing, coach.prediction, nullptr, "Nothing to press.", study, {}));
    };
    CHECK(line(stop(), "lights").value.si == 0.94);
    CHECK(note(stop(), "lights") == "Of 256 samples of what is not known: volts, water, flows.");
    CHECK_FALSE(line(stop(), "suggested_stop").has);
    CHECK(note(stop(), "suggested_stop") == "Nothing is good enough.");
    study->suggested = 0;
    study->choices[0].volume_m3 = 0.003;
    study->choices[0].both = 0.97;
    CHECK(line(stop(), "suggested_stop").value.si == 0.003);
    CHECK(line(stop(), "suggested_stop").value.quantity == Quantity::Volume);
    CHECK(note(stop(), "suggested_stop") == "Brings 41.0 °C and keeps every limit in 97 % of 256 samples.");
    study->confirmed = 48;
    study->confirmedBoth = 0.9;
    CHECK(note(stop(), "suggested_stop") == "Brings 41.0 °C and keeps every limit in 90 % of 48 samples.");
    study->choices[0].temperature_C = 39;
    CHECK(line(stop(), "suggested_stop").value.si == 0.003);
    CHECK(note(stop(), "suggested_stop")
          == "Or 39.0 °C, whichever is first. Brings 41.0 °C and keeps every limit in 90 % of 48 samples.");
    study->choices[0].volume_m3.reset();
    CHECK(line(stop(), "suggested_stop").value.si == 39);
    CHECK(line(stop(), "suggested_stop").value.quantity == Quantity::Temperature);
    study->choices[0].temperature_C.reset();
    study->choices[0].time_s = 90;
    CHECK(line(stop(), "suggested_stop").value.si == 90);
    CHECK(line(stop(), "suggested_stop").value.quantity == Quantity::Time);
}

TEST_CASE("the wait is that of the coach as it is, else of a draw no run helps, and says which", "[report][answers]")
{
    Coach coach;
    CHECK(note(report::keyAnswers(coach.drawing, coach.prediction, coach.drawn()), "wait")
          == "No case opens a tap before the loop is in. Add one to compare.");
    CHECK(line(report::keyAnswers(coach.drawing, coach.prediction, coach.drawn()), "wait").label
          == "Wait before the loop");
    const auto answer = [&] { return report::keyAnswers(coach.drawing, coach.prediction, coach.drawn()); };
    addDraw(coach, "Pressed", document::View::After, 1);
    act(coach, ActionKind::PressButton);
    addDraw(coach, "Broken", document::View::After, 2);
    act(coach, ActionKind::StartFault);
    addDraw(coach, "Impossible", document::View::Before, 3).noAnswer = Problem{"No.", "Mend.", {}};
    addDraw(coach, "Cold after", document::View::After, {});
    CHECK_FALSE(line(answer(), "wait").has);
    addDraw(coach, "After", document::View::After, 60);
    addDraw(coach, "After too", document::View::After, 61);
    CHECK(line(answer(), "wait").value.si == 60);
    CHECK(line(answer(), "wait").label == "Wait without a run");
    CHECK(line(answer(), "wasted_volume").label == "Wasted water without a run");
    CHECK(note(answer(), "wait") == "Case 'After'.");
    addDraw(coach, "Cold before", document::View::Before, {});
    CHECK(line(answer(), "wait").value.si == 60);
    addDraw(coach, "Before", document::View::Before, 70);
    addDraw(coach, "Before too", document::View::Before, 71);
    CHECK(line(answer(), "wait").value.si == 70);
    CHECK(line(answer(), "wait").label == "Wait before the loop");
    CHECK(line(answer(), "wasted_volume").label == "Wasted water before the loop");

    Coach cold;  // a draw today that stays cold: the reason is given, not another case's figure
    addDraw(cold, "Cold before", document::View::Before, {});
    addDraw(cold, "After", document::View::After, 60);
    CHECK(note(report::keyAnswers(cold.drawing, cold.prediction, cold.drawn()), "wait") == "It stays cold.");
}

TEST_CASE("flow, margin and purge volume come from the loop, with what is the matter", "[report][answers]")
{
    Coach coach;
    study::LoopAnswer& loop = coach.prediction.loop;
    const auto answers = [&] { return report::keyAnswers(coach.drawing, coach.prediction, coach.drawn()); };
    loop.flow_m3s = 3e-5;
    loop.activationFlow_m3s = 2e-5;
    loop.flowLowVolts_m3s = 2e-5;
    CHECK(line(answers(), "activation_flow").value.si == 2e-5);
    CHECK_THAT(line(answers(), "flow_margin").value.si, WithinAbs(0.5, 1e-12));  // 3 / 2 - 1
    CHECK(note(answers(), "flow_margin").empty());
    loop.flowLowVolts_m3s = 1.9e-5;  // not on a battery nearly empty
    CHECK(note(answers(), "flow_margin") == "At 10.5 V the loop moves 1.14 L/min: the heater does not light.");
    loop.flowLowVolts_m3s.reset();
    loop.activationFlow_m3s = 3e-5;  // lights exactly at its activation flow
    CHECK(note(answers(), "flow_margin").empty());
    loop.activationFlow_m3s = 6e-5;
    CHECK_THAT(line(answers(), "flow_margin").value.si, WithinAbs(-0.5, 1e-12));
    CHECK(note(answers(), "flow_margin") == "The heater does not light.");
    loop.activationFlow_m3s = 0;  // lights at any flow: a margin over nothing is no number
    CHECK_FALSE(line(answers(), "flow_margin").has);
    loop.activationFlow_m3s.reset();  // a storage heater: nothing to light
    const auto has = [](const std::vector<report::AnswerLine>& lines, const char* id) {
        return std::any_of(lines.begin(), lines.end(), [id](const auto& one) { return one.id == id; });
    };
    CHECK_FALSE(has(answers(), "flow_margin"));
    CHECK_FALSE(has(answers(), "activation_flow"));
    loop.heater = document::kNoPart;
    CHECK(note(answers(), "flow_margin") == "No heater that lights by flow is drawn.");
    CHECK(note(answers(), "activation_flow") == "No heater that lights by flow is drawn.");
    loop.reason = "A hand valve is shut.";
    CHECK(note(answers(), "loop_flow").empty());
    loop.blockedBy = coach.id("CV1");
    CHECK(note(answers(), "loop_flow") == "A hand valve is shut.");
    loop.flow_m3s.reset();
    CHECK(note(answers(), "flow_margin") == "A hand valve is shut.");

    CHECK_FALSE(line(answers(), "purge_volume").has);
    study::CaseResult& draw = addDraw(coach, "Draw", document::View::Before, 70);
    draw.scalars.push_back(scalar("purge_volume", 0.0015, Quantity::Volume));
    CHECK(line(answers(), "purge_volume").value.si == 0.0015);
    addRun(coach, "Press", 1, 0, 0, 1).scalars.push_back(scalar("purge_volume", 0.0016, Quantity::Volume));
    CHECK(line(answers(), "purge_volume").value.si == 0.0016);
    loop.purgeVolume_m3 = 0.0017;
    CHECK(line(answers(), "purge_volume").value.si == 0.0017);
    CHECK(note(answers(), "purge_volume") == "Water held in the hot pipe between heater and tap.");
}

TEST_CASE("the run's answers name target, start and case; a missing one says so", "[report][answers]")
{
    Coach coach;
    study::CaseResult& run = addRun(coach, "Cold", 1, 0, 0, 50);
    run.target_C = 41;
    coach.drawing.cases.back().start_C = 12;
    const auto lines = report::keyAnswers(coach.drawing, coach.prediction, coach.drawn());
    CHECK(note(lines, "time_to_target") == "To 41.0 °C, from 12.0 °C: case 'Cold'.");
    CHECK(note(lines, "volume_to_target") == "The case 'Cold' has no such answer.");
    // In the order of the page.
    const std::vector<std::string> order{
        "loop_flow",        "activation_flow", "flow_margin",    "purge_volume",
        "volume_to_target", "time_to_target",  "suggested_stop", "hottest_heater_outlet",
        "hottest_tap",      "burn_time",       "wait",           "wasted_volume",
        "wait_after",       "saved_volume"};
    REQUIRE(lines.size() == order.size());
    for (std::size_t i = 0; i < order.size(); ++i) {
        CHECK(lines[i].id == order[i]);
    }
}

TEST_CASE("what a preheat saves is the draw before the loop less the draw after a run", "[report][answers]")
{
    Coach coach;
    const auto answers = [&] { return report::keyAnswers(coach.drawing, coach.prediction, coach.drawn()); };
    CHECK(note(answers(), "wait_after") == "No case opens a tap after a run. Add one to compare.");
    CHECK(note(answers(), "saved_volume") == note(answers(), "wait_after"));
    addRun(coach, "Run", 1, 0, 0, 90);
    study::CaseResult& early = addDraw(coach, "Early", document::View::After, 5);  // opened before the press
    coach.drawing.cases.back().actions.back().at_s = 0.5;
    act(coach, ActionKind::PressButton);
    coach.drawing.cases.back().actions.back().at_s = 1;
    CHECK(early.scalars.size() == 2);
    CHECK_FALSE(line(answers(), "wait_after").has);
    study::CaseResult& after = addDraw(coach, "Preheated", document::View::After, 4);
    after.scalars.back().value = 0.0005;
    coach.drawing.cases.back().actions.back().at_s = 200;
    act(coach, ActionKind::PressButton);
    coach.drawing.cases.back().actions.back().at_s = 2;
    CHECK(line(answers(), "wait_after").value.si == 4);
    CHECK(note(answers(), "wait_after") == "Case 'Preheated'.");
    CHECK_FALSE(line(answers(), "saved_volume").has);  // nothing to hold it against
    addDraw(coach, "Today", document::View::Before, 84);
    CHECK_THAT(line(answers(), "saved_volume").value.si, WithinAbs(0.0035, 1e-12));
    CHECK(note(answers(), "saved_volume")
          == "The wait at the tap falls from 84 s to 4 s; the run before it takes 90 s.");
    coach.prediction.cases.back().scalars[0].value = 3;
    CHECK_FALSE(line(answers(), "saved_volume").has);
    CHECK(note(answers(), "saved_volume") == "None: the tap is warm after 4 s with the loop and after 3 s without.");
}

TEST_CASE("the burn time is that of the hottest water of both places", "[report][answers]")
{
    // Moritz & Henriques (1947): 60 °C 3 s (as rounded here), below 44 °C no time is printed.
    Coach tap;
    tap.addCase("Press", 1, {{"hottest_heater_outlet", 42.0}, {"hottest_tap", 60.0}});
    CHECK(line(report::keyAnswers(tap.drawing, tap.prediction, tap.drawn()), "burn_time").value.si == 3);
    CHECK(note(report::keyAnswers(tap.drawing, tap.prediction, tap.drawn()), "burn_time")
          == "At 60.0 °C, adult skin; children and elders sooner.");
    Coach heater;
    heater.addCase("Press", 1, {{"hottest_heater_outlet", 60.0}, {"hottest_tap", 42.0}});
    CHECK(line(report::keyAnswers(heater.drawing, heater.prediction, heater.drawn()), "burn_time").value.si == 3);
    Coach cool;
    cool.addCase("Press", 1, {{"hottest_heater_outlet", 43.0}, {"hottest_tap", 42.0}});
    CHECK(note(report::keyAnswers(cool.drawing, cool.prediction, cool.drawn()), "burn_time")
          == "The published tables begin at 44.0 °C; cooler is not the same as safe.");
}

TEST_CASE("each line of the title block holds its own text, an empty one is left out", "[report][page]")
{
    Coach coach;
    document::Job& job = coach.drawing.job;
    job.title.clear();
    report::PageContent page = report::page(coach.drawing, coach.prediction, coach.drawn(), {});
    CHECK(page.title == "Hot-water preheat loop");
    CHECK(page.subtitle == "Predicted before installation");
    CHECK(page.titleBlock.empty());
    job.customer = "a";
    job.coach = "b";
    job.technician = "c";
    job.date = "d";
    job.revision = "e";
    job.notes = "f";
    page = report::page(coach.drawing, coach.prediction, coach.drawn(), {});
    CHECK(
        page.titleBlock
        == std::vector<std::pair<std::string, std::string>>{
            {"Customer", "a"}, {"Coach", "b"}, {"Technician", "c"}, {"Date", "d"}, {"Revision", "e"}, {"Notes", "f"}});
}

TEST_CASE("the page's footnotes say what holds and nothing else", "[report][page]")
{
    Coach coach;
    const auto has = [&](const char* words, const std::vector<review::Finding>& findings = {}) {
        const report::PageContent page = report::page(coach.drawing, coach.prediction, coach.drawn(), findings);
        return std::any_of(page.footnotes.begin(), page.footnotes.end(),
                           [&](const std::string& one) { return says(one, words); });
    };
    review::Finding rests;
    rests.rule = "rests_on_estimates";
    CHECK_FALSE(has("are estimates"));
    CHECK(has("are estimates", {rests}));
    rests.dismissed = true;
    CHECK_FALSE(has("are estimates", {rests}));
    review::Finding other;
    other.rule = "loop_blocked";
    CHECK_FALSE(has("are estimates", {other}));

    const char* unpriced = "leaves out lines without a price";
    CHECK(has(unpriced));
    for (document::Part& part : coach.drawing.parts) {
        part.stage = document::Stage::Existing;
    }
    CHECK_FALSE(has(unpriced));  // nothing to buy, nothing left out
    coach.drawing.find(coach.id("CV1"))->stage = document::Stage::Added;
    CHECK(has(unpriced));
    coach.set("CV1", "price", 20.0);
    CHECK_FALSE(has(unpriced));
}

TEST_CASE("the parts are listed in tray order, then by name, one line a price; parts to take out are not bought",
          "[report][parts]")
{
    Coach coach;
    for (document::Part& part : coach.drawing.parts) {
        part.stage = document::Stage::Existing;
    }
    coach.drawing.find(coach.id("F1"))->stage = document::Stage::Removed;
    document::Part* pump = coach.drawing.find(coach.id("P1"));
    pump->stage = document::Stage::Added;
    pump->entries["price"] = {120.0, parts::Basis::Measured};
    const auto check = [&](const char* tag, double price) {
        coach.add("check_valve", tag);
        coach.set(tag, "price", price);
    };
    check("CV7", 30);
    check("CV8", 20);
    check("CV9", 30);
    const report::PartsList list = report::partsList(coach.drawing);
    REQUIRE(list.lines.size() == 3);
    // Valves stand before pumps in the tray; of two prices the lower first.
    CHECK(list.lines[0].unitPrice == 20);
    CHECK(list.lines[0].tags == std::vector<std::string>{"CV8"});
    CHECK(list.lines[1].unitPrice == 30);
    CHECK(list.lines[1].tags == std::vector<std::string>{"CV7", "CV9"});
    CHECK(list.lines[1].quantity == 2);
    CHECK(list.lines[2].unitPrice == 120);
    CHECK(list.partsTotal == 20 + 2 * 30 + 120);
    CHECK(list.allPriced);
    coach.set("P1", "price", 0.0);
    CHECK_FALSE(report::partsList(coach.drawing).allPriced);
}

TEST_CASE("a note is nothing to buy", "[report][parts]")
{
    Coach coach;
    for (document::Part& part : coach.drawing.parts) {
        part.stage = document::Stage::Existing;
    }
    coach.add("note", "N1");  // added by the job
    CHECK(report::partsList(coach.drawing).lines.empty());
    CHECK(report::partsText(coach.drawing, UnitSystem::Us) == "Nothing is added to this coach.\n");
}

TEST_CASE("a pipe of no length is nothing to buy", "[report][parts]")
{
    Coach coach;
    for (document::Part& part : coach.drawing.parts) {
        part.stage = document::Stage::Existing;
    }
    coach.add("pipe_run", "L91");
    coach.set("L91", "length_m", 0.0);
    for (const report::PartLine& one : report::partsList(coach.drawing).lines) {
        CHECK_FALSE(one.metres);
    }
}

TEST_CASE("every line of the parts text stands in its column, with its sums", "[report][parts]")
{
    Coach coach;
    for (document::Part& part : coach.drawing.parts) {
        part.stage = document::Stage::Existing;
    }
    CHECK(report::partsText(coach.drawing, UnitSystem::Us) == "Nothing is added to this coach.\n");
    coach.drawing.find(coach.id("CV1"))->stage = document::Stage::Added;
    coach.set("CV1", "price", 20.5);
    coach.add("check_valve", "CV2");
    coach.set("CV2", "price", 20.5);
    coach.drawing.job.currency = "EUR";
    // "Check valve (CV1 CV2)" is 21 letters, the sums' labels are shorter; two blanks, then ten for the money.
    CHECK(report::partsText(coach.drawing, UnitSystem::Us)
          == "2  Check valve (CV1 CV2)       41.00\n"
             "   Parts, EUR                  41.00\n"
             "   Total                       41.00\n");
    coach.drawing.job.hours = 2.5;
    coach.drawing.job.hourlyRate = 80;  // 200
    CHECK(says(report::partsText(coach.drawing, UnitSystem::Us), "   Labor, 2.5 h               200.00\n"
                                                                 "   Total                      241.00\n"));
    coach.set("CV2", "price", 0.0);
    const std::string text = report::partsText(coach.drawing, UnitSystem::Us);
    CHECK(says(text, "1  Check valve (CV2)  "));
    CHECK(says(text, "not priced\n"));
    CHECK(says(text, "   Parts with a price, EUR"));
    CHECK(says(text, "   Total without the unpriced parts"));
    CHECK(says(report::partsCsv(coach.drawing, UnitSystem::Us), "Check valve,1,pcs,CV2,,\r\n"));
    CHECK(report::partsCsv(coach.drawing, UnitSystem::Us)
              .rfind("Item,Quantity,Unit,Tags,Unit price (EUR),Price (EUR)\r\n", 0)
          == 0);
}

TEST_CASE("the table of answers shows each figure in its place", "[report][table]")
{
    Coach coach;
    coach.drawing.job.title.clear();
    coach.drawing.job.sampleFigures = true;
    study::LoopAnswer& loop = coach.prediction.loop;
    loop.flow_m3s = 3e-5;            // 1.80 L/min
    loop.flowLowVolts_m3s = 2e-5;    // 1.20 L/min
    loop.flowHighVolts_m3s = 4e-5;   // 2.40 L/min
    const document::PartId p1 = coach.id("P1"), cv = coach.id("CV1");
    loop.headBudget = {{cv, 4000, 0.4}, {p1, 3000, 0.3}, {cv, 2900, 0.1}, {cv, 2800, 0.1},
                       {cv, 2700, 0.1}, {cv, 2600, 0.1}, {cv, 2500, 0.1}};
    loop.hotPath = {coach.id("WH1"), coach.id("T3"), coach.id("T3"), coach.id("F1")};
    loop.returnPath = {p1, cv};
    study::CaseResult& one = coach.addCase("One", 1);
    one.events.clear();
    one.duration_s = 90;
    one.scalars.push_back(scalar("Time", 75, Quantity::Time));
    one.scalars.back().note = "a note";
    one.scalars.push_back(scalar("Residual", 0.005, Quantity::None));
    one.scalars.push_back(scalar("Whole", 0.02, Quantity::None));
    one.scalars.push_back(scalar("Edge", 0.01, Quantity::None));
    one.scalars.push_back(scalar("Zero", 0, Quantity::None));
    one.scalars.push_back(scalar("Below", -0.005, Quantity::None));
    one.events.push_back({7.25, "x", "Burner lit.", document::kNoPart, study::Event::Weight::Info});
    study::CaseResult& two = coach.addCase("Two", 0);
    two.view = document::View::Before;
    two.noAnswer = Problem{"It cannot run.", "Mend it.", {}};
    const std::string text = report::table(coach.drawing, coach.prediction, coach.drawn(), UnitSystem::Metric);
    CAPTURE(text);
    CHECK(text.rfind("Prediction\nPredicted from the drawing; not measured. Sample figures: an invented coach.\n\n"
                     "Answers\n-------\n",
                     0)
          == 0);
    CHECK(says(text, "\n\nLoop\n----\n"
                     "  Flow at 10.5 V    1.20 L/min\n"
                     "  Flow at 14.4 V    2.40 L/min\n"
                     "  Head lost in CV1     4.0 kPa  40 %\n"
                     "  Head lost in P1      3.0 kPa  30 %\n"));
    CHECK(says(text, "2.6 kPa"));
    CHECK_FALSE(says(text, "2.5 kPa"));  // the six biggest are enough
    CHECK(says(text, "\n  Hot way: WH1 T3 F1\n  Return:  P1 CV1\n"));
    CHECK(says(text, "\nCase 'One' (after, 90 s)\n------------------------\n"
                     "  Time          75 s  a note\n"
                     "  Residual   5.0e-03\n"
                     "  Whole         0.02\n"
                     "  Edge          0.01\n"
                     "  Zero             0\n"
                     "  Below     -5.0e-03\n"
                     "  Events\n"
                     "       7.2 s    Burner lit.\n"));
    CHECK(
        says(text, "\nCase 'Two' (before, 180 s)\n--------------------------\n  No answer: It cannot run. Mend it.\n"));
    loop.exists = false;
    CHECK_FALSE(says(report::table(coach.drawing, coach.prediction, coach.drawn(), UnitSystem::Metric), "\nLoop\n"));
    loop.exists = true;
    loop.hotPath.clear();
    CHECK_FALSE(says(report::table(coach.drawing, coach.prediction, coach.drawn(), UnitSystem::Metric), "Hot way"));
}

TEST_CASE("a series shorter than its case has empty cells, and plain numbers no unit", "[report][table]")
{
    study::CaseResult result;
    result.time_s = {0, 0.5};
    result.series.push_back({"fire", "Fire", Quantity::None, document::kNoPart, {0.25}});
    // A plain number has 3 decimals in a readout, two more in the file.
    CHECK(report::seriesCsv(result, UnitSystem::Us) == "Time (s),Fire\r\n0.000,0.25000\r\n0.500,\r\n");
}

TEST_CASE("findings are told with all their lines, by severity", "[report][table]")
{
    Coach coach;
    review::Finding one;
    one.severity = review::Severity::Note;
    one.what = "What.";
    one.why = "Why so.";
    one.remedy = "Do this.";
    one.source = "A book";
    one.caseName = "Three presses";
    one.part = coach.id("P1");
    CHECK(report::findingsText(coach.drawing, {one}, UnitSystem::Us)
          == "Note P1: What.\n    In case: Three presses\n    Why: Why so.\n    Do: Do this.\n    From: A book\n");
    one.severity = review::Severity::Caution;
    one.part = document::kNoPart;
    one.caseName.clear();
    one.dismissed = true;
    one.dismissReason = "Seen.";
    CHECK(report::findingsText(coach.drawing, {one}, UnitSystem::Us)
          == "(set aside) Caution: What.\n    Why: Why so.\n    Do: Do this.\n    From: A book\n"
             "    Set aside because: Seen.\n");
}

TEST_CASE("winterizing is told step by step from 1, cautions one a line", "[report][table]")
{
    const Coach coach;
    const auto plan = review::winterPlan(coach.drawing);
    REQUIRE(plan.steps.size() > 1);
    const std::string text = report::winterText(coach.drawing, UnitSystem::Us);
    CHECK(text.rfind("\nWinterizing, as drawn\n---------------------\n  1. "
                         + render(plan.steps[0].text, UnitSystem::Us) + "\n  2. ",
                     0)
          == 0);
    CHECK(report::winterText({}, UnitSystem::Us).empty());
    const auto cautions = review::cautionsBeside({}, coach.drawing, coach.prediction, coach.drawn());
    REQUIRE_FALSE(cautions.empty());
    CHECK(report::cautionsText(coach.drawing, coach.prediction, coach.drawn(), {}, UnitSystem::Us)
              .rfind("\nCautions\n--------\n  " + render(cautions[0], UnitSystem::Us) + '\n', 0)
          == 0);
}

TEST_CASE("every member of the loop in the prediction's JSON is what its name says", "[report][json]")
{
    Coach coach;
    study::LoopAnswer& loop = coach.prediction.loop;
    loop.flow_m3s = 1e-5;
    loop.activationFlow_m3s = 2e-5;
    loop.holdFlow_m3s = 3e-5;
    loop.flowMargin = 0.4;
    loop.flowLowVolts_m3s = 5e-5;
    loop.flowHighVolts_m3s = 6e-5;
    loop.purgeVolume_m3 = 7e-3;
    loop.coldStart_C = 8;
    loop.blockedBy = coach.id("MV1");
    loop.reason = "It is blocked.";
    loop.hotPath = {coach.id("WH1"), coach.id("T3"), coach.id("T3")};
    loop.returnPath = {coach.id("P1"), coach.id("P1"), coach.id("CV1")};
    loop.headBudget = {{coach.id("CV1"), 3000, 0.25}};
    const auto read = [&] {
        return nlohmann::json::parse(report::predictionJson(coach.drawing, coach.prediction, "f")).at("loop");
    };
    nlohmann::json out = read();
    CHECK(out.at("scalars") == nlohmann::json::parse(R"({
        "loop_flow": {"value": 1e-5, "unit": "m3/s", "label": "Loop flow"},
        "activation_flow": {"value": 2e-5, "unit": "m3/s", "label": "Activation flow"},
        "hold_flow": {"value": 3e-5, "unit": "m3/s", "label": "Hold flow"},
        "flow_margin": {"value": 0.4, "unit": "", "label": "Loop flow / activation flow"},
        "loop_flow_10_5_V": {"value": 5e-5, "unit": "m3/s", "label": "Loop flow at 10.5 V"},
        "loop_flow_14_4_V": {"value": 6e-5, "unit": "m3/s", "label": "Loop flow at 14.4 V"},
        "purge_volume": {"value": 7e-3, "unit": "m3", "label": "Purge volume"}})"));
    out.erase("scalars");
    CHECK(out == nlohmann::json::parse(R"({"exists": true, "reason": "It is blocked.", "blocked_by": "MV1",
        "circulators": ["P1"], "heater": "WH1", "tap": "F1", "return_tee": "T3", "cold_start_C": 8.0,
        "hot_path": ["WH1", "T3"], "return_path": ["P1", "CV1"],
        "head_budget": [{"part": "CV1", "loss_Pa": 3000.0, "share": 0.25}]})"));

    loop.activationFlow_m3s.reset();
    loop.flowMargin.reset();
    CHECK(read().at("scalars").at("flow_margin").at("reason") == "No heater that lights by flow is drawn.");
    CHECK(read().at("scalars").at("activation_flow").at("reason") == "No heater that lights by flow is drawn.");
    loop.flow_m3s.reset();
    CHECK(read().at("scalars").at("flow_margin").at("reason") == "It is blocked.");
    CHECK(read().at("scalars").at("loop_flow").at("reason") == "It is blocked.");
    loop.reason = {};
    CHECK(read().at("scalars").at("loop_flow").at("reason") == "No loop is drawn.");
    CHECK(read().at("reason").is_null());
}

TEST_CASE("CSV quotes each character that would be misread", "[report]")
{
    // RFC 4180, section 2, rules 5 to 7.
    CHECK(report::csvField("a,b") == "\"a,b\"");
    CHECK(report::csvField("a\"b") == "\"a\"\"b\"");
    CHECK(report::csvField("a\rb") == "\"a\rb\"");
    CHECK(report::csvField("a\nb") == "\"a\nb\"");
    CHECK(report::csvField("a;b") == "\"a;b\"");  // a separator too, to some programs
    CHECK(report::csvField("a\tb") == "\"a\tb\"");
    CHECK(report::csvField("a b.c") == "a b.c");
    CHECK(report::csvField("=a") == "\"'=a\"");
    CHECK(report::csvRow({}) == "\r\n");
}

TEST_CASE("letters are counted, not bytes, and a join a way enters and leaves is named once", "[report]")
{
    CHECK(report::codePoints("") == 0);
    CHECK(report::codePoints("40 °F") == 5);
    CHECK(report::codePoints("–") == 1);
    CHECK(report::withoutRepeats({3, 3, 4, 4, 4, 3}) == std::vector<document::PartId>{3, 4, 3});
}

TEST_CASE("a blank survey has the drawing's rows in its tables, and spare ones", "[report][survey]")
{
    Coach coach;
    document::Job& job = coach.drawing.job;
    job.title = "Rear bath";
    job.customer = "a";
    job.coach = "b";
    job.revision = "c";
    coach.set("F1", "name", std::string("Galley"));
    const report::BlankSurvey sheet = report::blankSurvey(coach.drawing, UnitSystem::Us);
    CHECK(sheet.title == "Survey: Rear bath");
    CHECK(sheet.header
          == std::vector<std::pair<std::string, std::string>>{{"Customer", "a"},
                                                              {"Coach", "b"},
                                                              {"Surveyed by", ""},
                                                              {"Date", ""},
                                                              {"Drawing revision", "c"},
                                                              {"Water on: city or tank", ""}});
    CHECK(sheet.footnotes.empty());
    CHECK(sheet.measure.size() == 5);   // lengths, tube, heights, flows, what M, D and E mean
    CHECK(sheet.cautions.size() == 4);  // hot water, pressure, gas and 12 V, who decides
    REQUIRE(sheet.tables.size() == 4);
    const auto titles = [](const report::BlankTable& table) {
        std::vector<std::string> out;
        for (const auto& column : table.columns) {
            out.push_back(column.title + (column.unit.empty() ? "" : " " + column.unit));
        }
        return out;
    };
    const auto shown = [](const Message& cell) { return render(cell, UnitSystem::Us); };
    const report::BlankTable& runs = sheet.tables[0];
    CHECK(titles(runs)
          == std::vector<std::string>{"Tag", "From", "To", "Tube (print line)", "Real length ft", "Elbows", "Joints",
                                      "Insulation in", "Bay air °F", "M / D / E"});
    const auto pipes =
        static_cast<std::size_t>(std::count_if(coach.drawing.parts.begin(), coach.drawing.parts.end(),
                                               [](const document::Part& part) { return part.kind == "pipe_run"; }));
    REQUIRE(runs.rows.size() == pipes + 4);
    REQUIRE(runs.rows[0].size() == runs.columns.size());
    // The first pipe drawn joins the city inlet to the regulator.
    CHECK(says(shown(runs.rows[0][1]), "CW1"));
    CHECK(says(shown(runs.rows[0][2]), "PR1"));
    CHECK(shown(runs.rows[0][0])
          == coach.drawing.find(document::surveyRows(coach.drawing, document::SurveySheet::Runs)[0])->tag);
    CHECK(runs.rows[0][3].empty());
    CHECK(std::all_of(runs.rows.back().begin(), runs.rows.back().end(),
                      [](const Message& cell) { return cell.empty(); }));

    const report::BlankTable& heights = sheet.tables[1];
    CHECK(titles(heights)
          == std::vector<std::string>{"Tag", "Part", "Height above floor ft", "Rating plate, printed figures",
                                      "M / D / E"});
    const auto row = [&shown](const report::BlankTable& table, const std::string& tag) {
        const auto at =
            std::find_if(table.rows.begin(), table.rows.end(), [&](const auto& one) { return shown(one[0]) == tag; });
        return at == table.rows.end() ? std::string() : shown((*at)[1]);
    };
    CHECK(row(heights, "F1") == "Galley");
    CHECK(row(heights, "CW1") == "City water inlet");
    const report::BlankTable& flows = sheet.tables[2];
    CHECK(titles(flows)
          == std::vector<std::string>{"Tag", "Outlet", "Jug gal", "Try 1 s", "Try 2 s", "Try 3 s", "Pressure psi",
                                      "Wait until hot s"});
    REQUIRE(flows.rows.size() == 1 + 4);
    CHECK(shown(flows.rows[0][0]) == "F1");
    CHECK(shown(flows.rows[0][1]) == "Galley");
    coach.set("F1", "name", std::string());
    CHECK(row(report::blankSurvey(coach.drawing, UnitSystem::Us).tables[2], "F1") == "Faucet");
    CHECK(row(report::blankSurvey(coach.drawing, UnitSystem::Us).tables[1], "F1") == "Faucet");

    const report::BlankTable& supply = sheet.tables[3];
    const auto unit = [&](const std::string& what) {
        for (const auto& one : supply.rows) {
            if (says(shown(one[0]), what)) {
                return shown(one[1]);
            }
        }
        return std::string("no such row");
    };
    CHECK(unit("outlet setting") == "°F");
    CHECK(unit("at which it lights") == "gpm");
    CHECK(unit("least and most heat") == "BTU/h");
    CHECK(unit("Storage heater") == "gal");
    CHECK(unit("Cold supply") == "°F");
    CHECK(unit("City pressure") == "psi");
    CHECK(unit("cut-in and cut-out") == "psi");
    CHECK(unit("Battery at rest") == "V");
    CHECK(unit("Wire to the pump") == "ft");
    CHECK(supply.rows.size() == 9 + 2);
    for (const auto& table : sheet.tables) {
        for (const auto& one : table.rows) {
            CHECK(one.size() == table.columns.size());
        }
    }

    // Nothing drawn: lines to write on. 24 runs, 14 parts, 6 outlets fill a page by hand.
    document::Drawing empty;
    empty.job.sampleFigures = true;
    const report::BlankSurvey blank = report::blankSurvey(empty, UnitSystem::Metric);
    CHECK(blank.title == "Survey of the coach");
    CHECK(blank.footnotes.size() == 1);
    CHECK(blank.tables[0].rows.size() == 24);
    CHECK(blank.tables[1].rows.size() == 14);
    CHECK(blank.tables[2].rows.size() == 6);
    CHECK(titles(blank.tables[0])[4] == "Real length m");
}
