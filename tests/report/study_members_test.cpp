// SPDX-License-Identifier: GPL-3.0-or-later
// Studies filled in by hand, no two figures alike: every member of the JSON and every cell of the tables is held
// against what was filled in, by its name.

#include <limits>
#include <nlohmann/json.hpp>
#include <sstream>

#include "report/stop_report.h"
#include "report/study_report.h"
#include "review/coach.h"
#include "support/catch.h"
#include "support/says.h"

using namespace tapward;
using test::Coach;
using test::says;

namespace {

using Cells = std::vector<std::string>;

/// The cells of the line that begins with `start` after the heading: what two or more blanks part.
Cells row(const std::string& text, const std::string& heading, const std::string& start)
{
    std::istringstream lines(text.substr(std::min(text.size(), text.find('\n' + heading + '\n') + 1)));
    for (std::string line; std::getline(lines, line);) {
        const std::size_t from = line.find_first_not_of(' ');
        if (from == std::string::npos || line.compare(from, start.size(), start) != 0) {
            continue;
        }
        Cells cells;
        for (std::size_t at = from; at < line.size();) {
            const std::size_t end = std::min(line.find("  ", at), line.size());
            cells.push_back(line.substr(at, end - at));
            at = std::min(line.find_first_not_of(' ', end), line.size());
        }
        return cells;
    }
    return {};
}

Coach madeCoach()
{
    Coach made;
    made.drawing.job.title = "Loop for a test coach";
    return made;
}

study::StopStudy stopStudy()
{
    study::StopStudy study;
    study.caseName = "Cold run";
    study.target_C = 41;
    study.limits = {48, 39};
    study.byColdLine = true;
    study.heaterOutletLimit_C = 71;
    study.pumpLimit_C = 66;
    study.samples = 64;
    study.lights = 0.97;
    study::StopChoice& volume = study.choices[0];
    volume.kind = study::StopKind::Volume;
    volume.volume_m3 = 2.5e-3;
    volume.least = 2.25e-3;
    volume.most = 2.75e-3;
    volume.reaches = 0.93;
    volume.keeps = 0.96;
    volume.comes = 0.98;
    volume.both = 0.91;
    volume.bothError = 0.04;
    volume.bothIfLit = 0.94;
    volume.tapLow_C = 40;
    volume.tapMiddle_C = 42;
    volume.tapHigh_C = 44;
    volume.worstTap_C = 46.5;
    volume.worstOvershoot_K = 5.5;
    volume.longestRun_s = 133;
    study::StopChoice& time = study.choices[1];
    time.kind = study::StopKind::Time;
    time.time_s = 90;
    time.least = 80;
    time.most = 100;
    time.reaches = 0.71;
    time.keeps = 0.72;
    time.both = 0.70;
    time.tapLow_C = 31;
    time.tapMiddle_C = 32;
    time.tapHigh_C = 33;
    time.worstTap_C = 34;
    study::StopChoice& temperature = study.choices[2];
    temperature.kind = study::StopKind::Temperature;
    temperature.notPossible = "There is no sensor.";
    study::StopChoice& either = study.choices[3];
    either.kind = study::StopKind::VolumeOrTemperature;
    either.volume_m3 = 3e-3;
    either.temperature_C = 43;
    either.least = 2.9e-3;
    either.most = 3.1e-3;
    study.suggested = 0;
    study.byVolume = {{1e-3, 2e-3}, {20, 21}, {22, 23}, {24, 25}};
    study.byTime = {{10, 20}, {30, 31}, {32, 33}, {34, 35}};
    study::Influence influence;
    influence.range.id = "pipe_lengths";
    influence.range.label = "Pipe lengths";
    influence.range.quantity = Quantity::Percent;
    influence.range.least = 0.8;
    influence.range.most = 1.25;
    influence.range.source = "estimated";
    influence.coefficient = -0.42;
    study.influences = {influence};
    study.rankFit = 0.83;
    study.confirmed = 12;
    study.confirmedReaches = 0.61;
    study.confirmedKeeps = 0.62;
    study.confirmedBoth = 0.58;
    study.confirmedWorstTap_C = 45.5;
    study.resolutionError_K = 0.3;
    return study;
}

}  // namespace

TEST_CASE("every member of the stop study's JSON is what its name says", "[report][stop]")
{
    Coach made = madeCoach();
    made.drawing.job.sampleFigures = true;
    const nlohmann::json out = nlohmann::json::parse(report::stopJson(made.drawing, stopStudy(), "coach.tapward"));
    CHECK(out.at("format") == "tapward-study");
    CHECK(out.at("version") == 1);
    CHECK(out.at("study") == "stop");
    CHECK(out.at("file") == "coach.tapward");
    CHECK(out.at("sample_figures") == true);
    CHECK(out.at("case") == "Cold run");
    CHECK(out.at("target_C") == 41);
    CHECK(
        out.at("limits")
        == nlohmann::json::parse(R"({"tap_C": 48.0, "cold_entry_C": 39.0, "heater_outlet_C": 71.0, "pump_C": 66.0})"));
    CHECK(out.at("samples") == 64);
    CHECK(out.at("heater_lights") == 0.97);
    CHECK(out.at("suggested") == "volume");
    CHECK(out.at("reason").is_null());
    CHECK(out.at("choices").at(0)
          == nlohmann::json::parse(R"({"kind": "volume", "not_possible": null, "volume_m3": 0.0025,
        "time_s": null, "temperature_C": null, "window": [0.00225, 0.00275], "reaches": 0.93, "keeps": 0.96,
        "both": 0.91, "both_error": 0.04, "both_if_lit": 0.94, "comes_if_lit": 0.98,
        "tap_10_50_90_C": [40.0, 42.0, 44.0], "worst_tap_C": 46.5, "worst_overshoot_K": 5.5,
        "longest_run_s": 133.0})"));
    CHECK(out.at("choices").at(1).at("kind") == "time");
    CHECK(out.at("choices").at(1).at("time_s") == 90);
    CHECK(out.at("choices").at(1).at("volume_m3").is_null());
    CHECK(out.at("choices").at(2).at("kind") == "temperature");
    CHECK(out.at("choices").at(2).at("not_possible") == "There is no sensor.");
    CHECK(out.at("choices").at(3).at("kind") == "volume_or_temperature");
    CHECK(out.at("choices").at(3).at("temperature_C") == 43);
    CHECK(out.at("inputs") == nlohmann::json::parse(R"([{"id": "pipe_lengths", "label": "Pipe lengths", "unit": "",
        "least": 0.8, "most": 1.25, "source": "estimated", "rank_coefficient": -0.42}])"));
    CHECK(out.at("rank_fit") == 0.83);
    CHECK(out.at("confirmed")
          == nlohmann::json::parse(
              R"({"samples": 12, "reaches": 0.61, "keeps": 0.62, "both": 0.58, "worst_tap_C": 45.5})"));
    CHECK(out.at("resolution_error_K") == 0.3);
    CHECK(out.at("by_volume") == nlohmann::json::parse(R"({"pumped_m3": [0.001, 0.002], "tap_10_C": [20.0, 21.0],
        "tap_50_C": [22.0, 23.0], "tap_90_C": [24.0, 25.0]})"));
    CHECK(out.at("by_time") == nlohmann::json::parse(R"({"time_s": [10.0, 20.0], "tap_10_C": [30.0, 31.0],
        "tap_50_C": [32.0, 33.0], "tap_90_C": [34.0, 35.0]})"));
}

TEST_CASE("a stop study without a suggestion says null and why, and no limit is not a limit of 0", "[report][stop]")
{
    study::StopStudy study = stopStudy();
    study.suggested = -1;
    study.reason = "The heater does not light.";
    study.heaterOutletLimit_C = study.pumpLimit_C = 0;
    study.choices[0].worstTap_C = std::numeric_limits<double>::quiet_NaN();
    const Coach made = madeCoach();
    const nlohmann::json out = nlohmann::json::parse(report::stopJson(made.drawing, study, ""));
    CHECK(out.at("suggested").is_null());
    CHECK(out.at("reason") == "The heater does not light.");
    CHECK(out.at("limits").at("heater_outlet_C").is_null());
    CHECK(out.at("limits").at("pump_C").is_null());
    CHECK(out.at("sample_figures") == false);
    CHECK(out.at("choices").at(0).at("worst_tap_C").is_null());
    const std::string text = report::stopText(made.drawing, study, UnitSystem::Metric);
    CHECK(says(text, "\nSuggested: none. The heater does not light.\n"));
    CHECK_FALSE(says(text, "Run itself"));
}

TEST_CASE("every cell of the stop study's text is what its column says", "[report][stop]")
{
    const Coach made = madeCoach();
    study::StopStudy study = stopStudy();
    const std::string text = report::stopText(made.drawing, study, UnitSystem::Metric);
    CAPTURE(text);
    CHECK(text.rfind("Loop for a test coach\nSuggested stop for 'Cold run': 41.0 °C at the tap.\n"
                     "Limits: tap 48.0 °C, water into the cold line 39.0 °C.\n"
                     "64 samples of what is not known; the heater lights in 97 % of them.\n\n"
                     "Suggested: 2.50 L (Volume).\n",
                     0)
          == 0);
    CHECK(says(text, "target and keeps every limit in 91 % of the samples (standard error 4 %)"));
    CHECK(says(text, "Hottest at the tap in any sample: 46.5 °C. Set the run timer above 133 s."));
    CHECK(says(text, "Run itself on 12 fresh samples: both in 58 %, hottest 45.5 °C."));
    CHECK(says(text, "off by 0.3 K at the tap"));
    const char* kinds = "Kinds of stop";
    CHECK(row(text, kinds, "Kind ")
          == Cells{"Kind", "Stop at", "from", "to", "Reaches", "Keeps", "Both", "Tap 10 %", "50 %", "90 %", "Hottest"});
    CHECK(row(text, kinds, "Volume ")
          == Cells{"Volume", "2.50 L", "2.25 L", "2.75 L", "93 %", "96 %", "91 %", "40.0 °C", "42.0 °C", "44.0 °C",
                   "46.5 °C"});
    CHECK(
        row(text, kinds, "Time ")
        == Cells{"Time", "90 s", "80 s", "100 s", "71 %", "72 %", "70 %", "31.0 °C", "32.0 °C", "33.0 °C", "34.0 °C"});
    const Cells either = row(text, kinds, "Volume or temperature, whichever is first");
    REQUIRE(either.size() > 3);
    CHECK(either[1] == "3.00 L or 43.0 °C");
    CHECK(either[2] == "2.90 L");  // the window is of the first of them
    CHECK(says(text, "\n  Temperature: There is no sensor.\n"));
    const char* inputs = "Measure this first";
    CHECK(row(text, inputs, "Input") == Cells{"Input", "from", "to", "Rank weight", "Range"});
    CHECK(row(text, inputs, "Pipe lengths") == Cells{"Pipe lengths", "80 %", "125 %", "-0.42", "estimated"});
    CHECK(says(text, "fit 0.83."));
    // Below 0.7 the order is a hint only (StopStudy::rankFit).
    study.rankFit = 0.69;
    CHECK(says(report::stopText(made.drawing, study, UnitSystem::Metric), "fit 0.69, so the order is a hint only."));
    study.rankFit = 0.70;
    CHECK_FALSE(says(report::stopText(made.drawing, study, UnitSystem::Metric), "hint only"));
    study.confirmed = 0;
    CHECK_FALSE(says(report::stopText(made.drawing, study, UnitSystem::Metric), "Run itself"));
    study.confirmed = 1;
    CHECK(says(report::stopText(made.drawing, study, UnitSystem::Metric), "Run itself on 1 fresh"));
    // A stop by temperature alone has its window in degrees.
    study.choices[2].notPossible = {};
    study.choices[2].temperature_C = 38;
    study.choices[2].least = 37;
    study.choices[2].most = 39;
    const Cells only = row(report::stopText(made.drawing, study, UnitSystem::Metric), kinds, "Temperature ");
    REQUIRE(only.size() == 11);
    CHECK(Cells(only.begin() + 1, only.begin() + 4) == Cells{"38.0 °C", "37.0 °C", "39.0 °C"});
}

namespace {

/// Two loads, one fused branch and one without a fuse, and a row of voltages; the charges in whole Ah.
study::WiringStudy wiringStudy(const Coach& coach)
{
    study::WiringStudy study;
    study.battery_V = 12.6;
    study.internal_ohm = 0.02;
    study.posts_V = 12.5;
    study.total_A = 3.25;
    study::LoadAnswer pump;
    pump.part = coach.id("P1");
    pump.kind = study::Load::Kind::Circulator;
    pump.volts = 12.1;
    pump.current_A = 1.75;
    pump.works = true;
    pump.startVolts = 11.4;
    pump.starts = false;
    pump.lowVolts = 9.8;
    pump.worksLow = true;
    pump.gauge = 16;
    pump.length_m = 6.5;
    pump.warmDrop_V = 0.6;
    pump.warmDropShare = 0.05;
    pump.gaugeFor3Percent = 12;
    pump.gaugeFor10Percent = 18;
    pump.gaugeForHeat = 15;
    pump.perPress_J = 720;
    pump.perPress_C = 3600;  // 1 Ah
    study::LoadAnswer valve;
    valve.part = coach.id("MV1");
    valve.kind = study::Load::Kind::Valve;
    valve.volts = 12.2;
    valve.current_A = 0.25;
    valve.works = false;
    valve.startVolts = 11.5;
    valve.starts = true;
    valve.lowVolts = 9.9;
    valve.worksLow = false;
    valve.gauge = 17;
    valve.perPress_C = 7200;  // 2 Ah
    study.loads = {pump, valve};
    study::BranchAnswer fused;
    fused.fuse = coach.id("C1");  // any tag does
    fused.loads = {coach.id("P1"), coach.id("MV1")};
    fused.rating_A = 7.5;
    fused.steady_A = 2.1;
    fused.other_A = 0.4;
    fused.inrush_A = 4.2;
    fused.thinnestGauge = 13;
    fused.wireLimit_A = 15;
    fused.fuseAboveWire = true;
    fused.spare_A = 3.5;
    fused.socketExceeded = false;
    fused.fuseBelowLoad = false;
    study::BranchAnswer bare;
    bare.loads = {coach.id("MV1")};
    bare.steady_A = 0.3;
    bare.fuseBelowLoad = true;
    bare.socketExceeded = true;
    study.branches = {fused, bare};
    study::VoltageAnswer low;
    low.battery_V = 10.5;
    low.pump_V = {9.8, 9.7};
    low.heaterWorks = false;
    study::VoltageAnswer full;
    full.battery_V = 13.2;
    full.pump_V = {12.9};
    full.flow_m3s = 2.5e-5;  // 1.50 L/min
    full.margin = 1.2;
    study.voltages = {low, full};
    study.press_s = 80;
    study.pressNote = "The drawing's first run.";
    study.perPress_J = 5400;    // 1.50 Wh
    study.perPress_C = 10800;   // 3 Ah
    study.pressesPerDay = 4;
    study.perDay_J = 36000;     // 10 Wh
    study.perDay_C = 18000;     // 5 Ah
    study.restPerDay_C = 25200; // 7 Ah
    study.capacityShare = 0.25;
    study.cautions = {"Fit a larger wire."};
    return study;
}

study::LoopCurves curvesOf(const Coach& coach)
{
    study::LoopCurves curves;
    curves.pump = coach.id("P1");
    curves.water_C = 18;
    curves.activationFlow_m3s = 2.4e-5;
    curves.holdFlow_m3s = 1.9e-5;
    curves.system = {{0, 0.5}, {1e-5, 0.75}};
    study::PumpSet one;
    one.arrangement = study::PumpArrangement::One;
    one.battery_V = 12;
    one.pump_V = 11.5;
    one.curve = {{0, 3}, {2e-5, 2}};
    one.working = study::LoopPoint{3e-5, 1.25};
    one.heaterFlow_m3s = 2.5e-5;  // 1.50 L/min
    one.lights = true;
    study::PumpSet series = one;
    series.arrangement = study::PumpArrangement::TwoInSeries;
    series.battery_V = 13.2;
    series.pump_V = 12.5;
    series.working.reset();
    series.lights = false;
    series.reason = "It stalls.";
    study::PumpSet parallel = one;
    parallel.arrangement = study::PumpArrangement::TwoInParallel;
    parallel.lights = false;
    curves.sets = {one, parallel, series};
    return curves;
}

study::HeadBudget budgetOf(const Coach& coach)
{
    study::HeadBudget budget;
    budget.flow_m3s = 2.6e-5;
    budget.pumpHead_Pa = 9000;
    budget.sum_Pa = 8900;
    budget.items = {{coach.id("CV1"), 5000, 0.56}};
    return budget;
}

}  // namespace

TEST_CASE("every member of the wiring study's JSON is what its name says", "[report][wiring]")
{
    const Coach made = madeCoach();
    const study::WiringStudy study = wiringStudy(made);
    const study::LoopCurves curves = curvesOf(made);
    const study::HeadBudget budget = budgetOf(made);
    const nlohmann::json out = nlohmann::json::parse(report::wiringJson(made.drawing, study, &curves, &budget, "x"));
    CHECK(out.at("study") == "wiring");
    CHECK(out.at("battery")
          == nlohmann::json::parse(R"({"open_V": 12.6, "internal_ohm": 0.02, "posts_V": 12.5, "current_A": 3.25})"));
    CHECK(out.at("loads").at(0)
          == nlohmann::json::parse(R"({"part": "P1", "kind": "pump", "volts_V": 12.1, "current_A": 1.75,
        "works": true, "start_V": 11.4, "starts": false, "low_battery_V": 9.8, "works_low": true, "wire_awg": 16,
        "wire_m": 6.5, "warm_drop_V": 0.6, "awg_3_percent": 12, "awg_10_percent": 18, "awg_heat": 15,
        "per_run_J": 720.0, "per_run_C": 3600.0})"));
    const nlohmann::json& valve = out.at("loads").at(1);
    CHECK(valve.at("kind") == "valve");
    for (const char* unknown : {"wire_m", "warm_drop_V", "awg_3_percent", "awg_10_percent", "awg_heat"}) {
        CAPTURE(unknown);
        CHECK(valve.at(unknown).is_null());  // no length, nothing said of drop or gauge
    }
    CHECK(out.at("branches").at(0) == nlohmann::json::parse(R"({"fuse": "C1", "loads": ["P1", "MV1"], "rating_A": 7.5,
        "steady_A": 2.1, "other_A": 0.4, "inrush_A": 4.2, "thinnest_awg": 13, "wire_limit_A": 15.0, "spare_A": 3.5,
        "fuse_above_wire": true, "fuse_below_load": false, "socket_exceeded": false})"));
    const nlohmann::json& bare = out.at("branches").at(1);
    CHECK(bare.at("fuse").is_null());
    CHECK(bare.at("rating_A").is_null());
    CHECK(bare.at("spare_A").is_null());
    CHECK(bare.at("wire_limit_A").is_null());
    CHECK(bare.at("fuse_above_wire") == false);
    CHECK(bare.at("fuse_below_load") == true);
    CHECK(bare.at("socket_exceeded") == true);
    CHECK(out.at("voltages") == nlohmann::json::parse(R"([
        {"battery_V": 10.5, "pump_V": [9.8, 9.7], "flow_m3s": null, "flow_margin": null, "heater_works": false},
        {"battery_V": 13.2, "pump_V": [12.9], "flow_m3s": 2.5e-5, "flow_margin": 1.2, "heater_works": true}])"));
    CHECK(out.at("energy")
          == nlohmann::json::parse(R"({"run_s": 80.0, "run_J": 5400.0, "run_C": 10800.0, "runs_per_day": 4,
        "day_J": 36000.0, "day_C": 18000.0, "rest_per_day_C": 25200.0, "battery_share_per_day": 0.25,
        "note": "The drawing's first run."})"));
    const nlohmann::json& loop = out.at("loop_curves");
    CHECK(loop.at("pump") == "P1");
    CHECK(loop.at("water_C") == 18);
    CHECK(loop.at("activation_flow_m3s") == 2.4e-5);
    CHECK(loop.at("hold_flow_m3s") == 1.9e-5);
    CHECK(loop.at("system") == nlohmann::json::parse("[[0.0, 0.5], [1e-5, 0.75]]"));
    CHECK(loop.at("sets").at(0) == nlohmann::json::parse(R"({"arrangement": "one", "battery_V": 12.0, "pump_V": 11.5,
        "working": [3e-5, 1.25], "heater_flow_m3s": 2.5e-5, "lights": true, "reason": null,
        "curve": [[0.0, 3.0], [2e-5, 2.0]]})"));
    CHECK(loop.at("sets").at(1).at("arrangement") == "two_in_parallel");
    CHECK(loop.at("sets").at(1).at("lights") == false);
    CHECK(loop.at("sets").at(2).at("arrangement") == "two_in_series");
    CHECK(loop.at("sets").at(2).at("working").is_null());
    CHECK(loop.at("sets").at(2).at("reason") == "It stalls.");
    CHECK(out.at("head_budget")
          == nlohmann::json::parse(R"({"flow_m3s": 2.6e-5, "pump_head_Pa": 9000.0, "sum_Pa": 8900.0,
        "items": [{"part": "CV1", "loss_Pa": 5000.0, "share": 0.56}]})"));
    CHECK(out.at("cautions") == nlohmann::json{"Fit a larger wire."});
}

TEST_CASE("every cell of the wiring study's text is what its column says", "[report][wiring]")
{
    const Coach made = madeCoach();
    study::WiringStudy study = wiringStudy(made);
    study::LoopCurves curves = curvesOf(made);
    const study::HeadBudget budget = budgetOf(made);
    const std::string text = report::wiringText(made.drawing, study, &curves, &budget, UnitSystem::Metric);
    CAPTURE(text);
    CHECK(text.rfind("Loop for a test coach\n12 V side in a run: battery 12.6 V unloaded, 12.5 V at its posts, "
                     "3.25 A drawn.\n",
                     0)
          == 0);
    CHECK(row(text, "Loads", "Load ")
          == Cells{"Load", "Volts", "Current", "At start", "At 10.5 V", "Wire", "Length", "Warm drop", "3 %", "10 %",
                   "Heat", "Per run"});
    CHECK(row(text, "Loads", "P1")
          == Cells{"P1 pump", "12.1 V", "1.75 A", "11.4 V", "9.8 V", "AWG 16", "6.50 m", "5 %", "AWG 12", "AWG 18",
                   "AWG 15", "1.0 Ah"});
    CHECK(row(text, "Loads", "MV1")
          == Cells{"MV1 valve", "12.2 V", "0.25 A", "11.5 V", "9.9 V", "AWG 17", "not known", "–", "–", "–",
                   "over AWG 10", "2.0 Ah"});
    CHECK(row(text, "Branches", "Fuse")
          == Cells{"Fuse", "Rating", "Its loads", "Others", "Inrush", "Wire may carry", "Spare", "Loads"});
    CHECK(row(text, "Branches", "C1")
          == Cells{"C1", "7.50 A", "2.10 A", "0.40 A", "4.20 A", "15.00 A", "3.50 A", "P1 MV1"});
    CHECK(row(text, "Branches", "none drawn")
          == Cells{"none drawn", "–", "0.30 A", "0.00 A", "0.00 A", "look it up", "–", "MV1"});
    const char* flows = "Flow by battery voltage";
    CHECK(row(text, flows, "Battery") == Cells{"Battery", "Loop flow", "Over activation", "Heater's board"});
    CHECK(row(text, flows, "10.5") == Cells{"10.5 V", "–", "–", "too low"});
    CHECK(row(text, flows, "13.2") == Cells{"13.2 V", "1.50 L/min", "1.20", "works"});
    CHECK(says(text, "\n  One run of 80 s: 3.0 Ah, 1.50 Wh. The drawing's first run.\n"));
    CHECK(says(text, "\n  A day of 4 runs: 5.0 Ah, 10.00 Wh; 7.0 Ah of it drawn at rest, 25 % of the battery.\n"));
    CHECK(row(text, "Pumps", "Set") == Cells{"Set", "Battery", "At the pump", "Flow", "Head", "Heater"});
    CHECK(row(text, "Pumps", "One pump") == Cells{"One pump", "12.0 V", "11.5 V", "1.50 L/min", "1.25 m", "lights"});
    CHECK(row(text, "Pumps", "Two in parallel").back() == "does not light");
    CHECK(row(text, "Pumps", "Two in series")
          == Cells{"Two in series", "13.2 V", "12.5 V", "none", "–", "does not light"});
    CHECK(row(text, "Where the head goes", "Part") == Cells{"Part", "Loss", "Share"});
    CHECK(row(text, "Where the head goes", "CV1") == Cells{"CV1", "5.0 kPa", "56 %"});
    CHECK(row(text, "Where the head goes", "Pumps' head") == Cells{"Pumps' head", "9.0 kPa"});
    CHECK(says(text, "\nSee to\n------\n  Fit a larger wire.\n"));

    curves.activationFlow_m3s.reset();  // a storage heater lights at any flow
    study.loads[0].gaugeFor3Percent.reset();
    study.loads[0].gaugeFor10Percent.reset();
    study.capacityShare.reset();
    study.cautions.clear();
    const std::string other = report::wiringText(made.drawing, study, &curves, nullptr, UnitSystem::Metric);
    CHECK(row(other, "Pumps", "One pump").back() == "–");
    const Cells pump = row(other, "Loads", "P1");
    REQUIRE(pump.size() == 12);
    CHECK(pump[8] == "over AWG 2");
    CHECK(pump[9] == "over AWG 2");
    CHECK(says(other, "7.0 Ah of it drawn at rest.\n"));
    CHECK_FALSE(says(other, "See to"));
    CHECK_FALSE(says(other, "Where the head goes"));
    CHECK_FALSE(says(report::wiringText(made.drawing, study, nullptr, nullptr, UnitSystem::Metric), "\nPumps\n"));
}

TEST_CASE("each kind of load and stop has its own name", "[report]")
{
    using Kind = study::Load::Kind;
    CHECK(report::title(Kind::Circulator) == "pump");
    CHECK(report::title(Kind::Valve) == "valve");
    CHECK(report::title(Kind::Controller) == "controller");
    CHECK(report::title(Kind::Heater) == "heater");
}

TEST_CASE("columns of the wiring table stand below one another, the first to the left, the others to the right",
          "[report][wiring]")
{
    const Coach made = madeCoach();
    const std::string text = report::wiringText(made.drawing, wiringStudy(made), nullptr, nullptr, UnitSystem::Metric);
    const std::size_t at = text.find("  Battery  ");
    REQUIRE(at != std::string::npos);
    // Widths: "Battery" 7, "1.50 L/min" 10, "Over activation" 15, "Heater's board" 14; two blanks before each.
    CHECK(text.substr(at, text.find("\n\n", at) - at)
          == "  Battery   Loop flow  Over activation  Heater's board\n"
             "  10.5 V            –                –         too low\n"
             "  13.2 V   1.50 L/min             1.20           works");
    // The line under a heading is as long as the heading.
    CHECK(says(text, "\n\nFlow by battery voltage\n-----------------------\n"));
}

namespace {

study::PressesStudy pressesStudy(const Coach& coach)
{
    study::PressesStudy study;
    study::WorstHeat outlet;
    outlet.place = study::HeatPlace::HeaterOutlet;
    outlet.part = coach.id("WH1");
    outlet.hottest_C = 60;  // 3 s for an adult: Moritz & Henriques (1947)
    outlet.at_s = 99;
    outlet.presses = 3;
    outlet.script.name = "Worst";
    outlet.script.duration_s = 500;
    outlet.script.start_C = 21;
    outlet.script.supply_C = 22;
    const auto act = [&](double at, document::ActionKind kind, const char* tag, double value = 1, double second = -1) {
        document::Action action;
        action.at_s = at;
        action.kind = kind;
        action.part = tag ? coach.id(tag) : document::kNoPart;
        action.value = value;
        action.second = second;
        outlet.script.actions.push_back(action);
    };
    using enum document::ActionKind;
    act(1, PressButton, "PB1");
    act(2, OpenOutlet, "F1", 1, 0.75);
    act(3, OpenOutlet, "F1");
    act(4, CloseOutlet, "F1");
    act(5, SetValve, "MV1", 0.5);
    act(6, UseCity, nullptr);
    act(7, UsePump, nullptr);
    act(8, UseNothing, nullptr);
    act(9, SetVoltage, nullptr, 13.5);
    act(10, StartFault, "CV1");
    outlet.script.actions.back().fault = "stuck_open";
    act(11, EndFault, "CV1");
    study.worst = {outlet};
    using enum study::HeatPlace;
    for (const auto place : {HeaterInlet, Sensor, Join, OutletHot, OutletCold}) {
        study::WorstHeat cool;
        cool.place = place;
        cool.part = coach.id("F1");
        cool.hottest_C = 30;
        cool.presses = 1;
        study.worst.push_back(cool);
    }
    study.asDrawn.heaterOutlet_C = 61;
    study.asDrawn.heaterInlet_C = 38;
    study.asDrawn.outlets_C = 51;
    study.asDrawn.coldOutlets_C = 33;
    study::SafeWait wait;
    wait.outlets_s = 240;
    wait.coldEntry_s.reset();
    wait.coldEntryReason = "No wait is long enough.";
    wait.both_s = 250;
    wait.asTheFirst_s = 260;
    wait.firstOutlets_C = 47;
    wait.firstColdEntry_C = 37;
    study.wait = wait;
    study::ProtectionEffect limit;
    limit.protection = study::Protection::HighLimit;
    limit.counted = true;
    limit.tried = true;
    limit.note = "off";
    limit.other.outlets_C = 52;
    limit.other.coldOutlets_C = 34;
    limit.other.heaterOutlet_C = 62;
    limit.other.heaterInlet_C = 39;
    study::ProtectionEffect valve;
    valve.protection = study::Protection::MixingValve;
    valve.note = "There is none.";
    study.protections = {limit, valve};
    study.cases = 123;
    return study;
}

}  // namespace

TEST_CASE("every member of the repeated presses' JSON is what its name says", "[report][presses]")
{
    const Coach made = madeCoach();
    const nlohmann::json out = nlohmann::json::parse(report::pressesJson(made.drawing, pressesStudy(made), "x"));
    CHECK(out.at("study") == "presses");
    CHECK(out.at("as_drawn")
          == nlohmann::json::parse(R"({"outlets_C": 51.0, "cold_outlets_C": 33.0, "heater_outlet_C": 61.0,
        "heater_inlet_C": 38.0})"));
    const nlohmann::json& worst = out.at("worst").at(0);
    CHECK(worst.at("place") == "heater_outlet");
    CHECK(worst.at("part") == "WH1");
    CHECK(worst.at("hottest_C") == 60);
    CHECK(worst.at("at_s") == 99);
    CHECK(worst.at("presses") == 3);
    CHECK(worst.at("burn") == nlohmann::json::parse(R"({"adult_s": 3.0, "child_s": null, "hazard": "at_once"})"));
    CHECK(worst.at("script") == nlohmann::json::parse(R"({"name": "Worst", "duration_s": 500.0, "start_C": 21.0,
        "supply_C": 22.0, "ambient_C": null, "actions": [
        {"at_s": 1.0, "do": "press_button", "part": "PB1"},
        {"at_s": 2.0, "do": "open_outlet", "part": "F1", "hot_share": 0.75},
        {"at_s": 3.0, "do": "open_outlet", "part": "F1", "hot_share": null},
        {"at_s": 4.0, "do": "close_outlet", "part": "F1"},
        {"at_s": 5.0, "do": "set_valve", "part": "MV1"},
        {"at_s": 6.0, "do": "use_city"}, {"at_s": 7.0, "do": "use_pump"}, {"at_s": 8.0, "do": "use_nothing"},
        {"at_s": 9.0, "do": "set_voltage", "volts": 13.5},
        {"at_s": 10.0, "do": "start_fault", "part": "CV1", "fault": "stuck_open"},
        {"at_s": 11.0, "do": "end_fault", "part": "CV1"}]})"));
    const char* const places[] = {"heater_inlet", "sensor", "return_entry", "outlet_hot", "outlet_cold"};
    for (std::size_t i = 0; i < std::size(places); ++i) {
        CHECK(out.at("worst").at(i + 1).at("place") == places[i]);
    }
    CHECK(out.at("wait_worst_days") == nlohmann::json::parse(R"({"outlets_s": 240.0, "outlets_reason": null,
        "cold_entry_s": null, "cold_entry_reason": "No wait is long enough.", "both_s": 250.0,
        "as_the_first_s": 260.0, "first_outlets_C": 47.0, "first_cold_entry_C": 37.0})"));
    CHECK(out.at("wait_as_drawn").is_null());
    CHECK(out.at("protections")
          == nlohmann::json::parse(R"([{"id": "high_limit", "on": true, "tried": true, "note": "off",
        "switched": {"outlets_C": 52.0, "cold_outlets_C": 34.0, "heater_outlet_C": 62.0, "heater_inlet_C": 39.0}},
        {"id": "mixing_valve", "on": false, "tried": false, "note": "There is none.", "switched": null}])"));
    CHECK(out.at("cases_simulated") == 123);
}

TEST_CASE("every cell of the repeated presses' text is what its column says", "[report][presses]")
{
    Coach made = madeCoach();
    study::PressesStudy study = pressesStudy(made);
    const std::string text = report::pressesText(made.drawing, study, UnitSystem::Metric);
    CAPTURE(text);
    CHECK(text.rfind("Loop for a test coach: Repeated presses\nPredicted from the drawing; not measured. Yardsticks, "
                     "not a declaration of compliance.\n",
                     0)
          == 0);
    const char* hottest = "Hottest the control allows";
    CHECK(row(text, hottest, "Where") == Cells{"Where", "Hottest", "Presses", "Adult burns in"});
    CHECK(row(text, hottest, "WH1, outlet") == Cells{"WH1, outlet", "60.0 °C", "3", "3 s", "Burns at once"});
    CHECK(row(text, hottest, "F1, inlet")
          == Cells{"F1, inlet", "30.0 °C", "1", "not in tables", "Below the burn tables"});
    for (const char* place : {"F1, sensor", "F1, into the return", "F1, hot", "F1, cold"}) {
        CAPTURE(place);
        CHECK(row(text, hottest, place).size() == 5);
    }
    const char* waits = "Wait between presses, on the worst days";
    CHECK(row(text, waits, "For the outlets") == Cells{"For the outlets", "240 s"});
    CHECK(row(text, waits, "For the cold line")
          == Cells{"For the cold line", "no wait is enough", "No wait is long enough."});
    CHECK(row(text, waits, "For both") == Cells{"For both", "250 s"});
    CHECK(row(text, waits, "No hotter") == Cells{"No hotter than the first press", "260 s"});
    CHECK_FALSE(says(text, "on the day of the drawing's case"));
    // The longest label has 30 letters; two blanks before it and two behind each cell.
    CHECK(says(text, "\n  For both" + std::string(22 + 2, ' ') + "250 s" + std::string(14, ' ') + "\n"));
    // "Now" of the row as drawn is empty: four cells are seen.
    CHECK(row(text, "Protections", "Now") == Cells{"Now", "Outlets", "Cold outlets", "Heater outlet"});
    CHECK(row(text, "Protections", "As drawn") == Cells{"As drawn", "51.0 °C", "33.0 °C", "61.0 °C"});
    CHECK(row(text, "Protections", "Independent high limit")
          == Cells{"Independent high limit", "on", "52.0 °C", "34.0 °C", "62.0 °C", "off"});
    const Cells none = row(text, "Protections", std::string(study::title(study::Protection::MixingValve)));
    REQUIRE(none.size() == 6);
    CHECK(Cells(none.begin() + 1, none.end()) == Cells{"off", "-", "-", "-", "There is none."});
    CHECK(says(text, "Hot water can burn"));

    // Columns stand below one another whatever the letters of the tags.
    const std::size_t degrees = text.find("60.0 °C"), line = text.rfind('\n', degrees);
    CHECK(degrees - line - 1 == text.find("Hottest", text.find("Where")) - text.rfind('\n', text.find("Where")) - 1);

    study.waitAsDrawn = study.wait;
    study.waitAsDrawn->outlets_s = 111;
    study.wait.reset();
    study.protections.clear();
    made.drawing.job.title.clear();
    made.drawing.job.sampleFigures = true;
    const std::string other = report::pressesText(made.drawing, study, UnitSystem::Metric);
    CHECK(other.rfind("Repeated presses\n", 0) == 0);
    CHECK(says(other, "Sample figures: an invented coach."));
    CHECK_FALSE(says(other, "on the worst days"));
    CHECK(row(other, "Wait between presses, on the day of the drawing's case", "For the outlets").at(1) == "111 s");
    CHECK_FALSE(says(other, "Protections"));
}

namespace {

study::FaultsStudy faultsStudy(const Coach& coach)
{
    study::FaultsStudy study;
    study.sound.outlets_C = 41;
    study.sound.coldOutlets_C = 21;
    study.sound.heaterOutlet_C = 51;
    study.sound.heaterInlet_C = 31;
    study.cases = {"Cold press", "Three presses"};
    study::FaultRow row;
    row.part = coach.id("CV1");
    row.fault = "stuck_open";
    row.run = true;
    row.consequence = "Hot water crosses.";
    row.hottest.outlets_C = 42;
    row.hottest.coldOutlets_C = 43;
    row.hottest.heaterOutlet_C = 53;
    row.hottest.heaterInlet_C = 32;
    row.outlets = {{study::HeatPlace::OutletHot, coach.id("F1"), 60, 9}};
    row.change_K = 22;
    row.harm = study::Harm::Drinking;
    row.harmsSoundToo = true;
    row.harmedAt = coach.id("F1");
    row.who = "Whoever drinks.";
    row.shows = "Warm cold tap.";
    row.stops = "The hand valve.";
    row.worst.name = "Worst of it";
    study::FaultRow user = row;
    user.part = coach.id("P1");
    user.fault = "no_such_fault";
    user.harm = study::Harm::User;
    user.harmsSoundToo = false;
    user.change_K.reset();
    study::FaultRow none = row;
    none.part = coach.id("MV1");
    none.harm = study::Harm::Nobody;
    study::FaultRow idle;
    idle.part = coach.id("WH1");
    idle.fault = "dead";
    idle.consequence = "It cannot be run.";
    study.rows = {row, user, none, idle};
    study.simulated = 77;
    return study;
}

}  // namespace

TEST_CASE("every member of the faults' JSON is what its name says", "[report][faults]")
{
    const Coach made = madeCoach();
    study::FaultsStudy study = faultsStudy(made);
    study.rows[1].withPart = made.id("C1");
    study.rows[1].withFault = "limit_dead";
    const nlohmann::json out = nlohmann::json::parse(report::faultsJson(made.drawing, study, "x"));
    CHECK(out.at("study") == "faults");
    CHECK(out.at("sound")
          == nlohmann::json::parse(R"({"outlets_C": 41.0, "cold_outlets_C": 21.0, "heater_outlet_C": 51.0,
        "heater_inlet_C": 31.0})"));
    CHECK(out.at("cases") == nlohmann::json{"Cold press", "Three presses"});
    CHECK(out.at("cases_simulated") == 77);
    nlohmann::json first = out.at("faults").at(0);
    CHECK(first.at("script").at("name") == "Worst of it");
    first.erase("script");
    CHECK(first == nlohmann::json::parse(R"({"part": "CV1", "fault": "stuck_open", "run": true,
        "consequence": "Hot water crosses.",
        "hottest": {"outlets_C": 42.0, "cold_outlets_C": 43.0, "heater_outlet_C": 53.0, "heater_inlet_C": 32.0},
        "change_K": 22.0, "harm": "drinking", "harms_sound_too": true, "at": "F1", "who": "Whoever drinks.",
        "shows": "Warm cold tap.", "stops": "The hand valve.",
        "outlets": [{"place": "outlet_hot", "part": "F1", "hottest_C": 60.0,
                     "burn": {"adult_s": 3.0, "child_s": null, "hazard": "at_once"}}]})"));
    const nlohmann::json& pair = out.at("faults").at(1);
    CHECK(pair.at("with_part") == "C1");
    CHECK(pair.at("with_fault") == "limit_dead");
    CHECK(pair.at("harm") == "user");
    CHECK(pair.at("harms_sound_too") == false);
    CHECK(pair.at("change_K").is_null());
    CHECK(out.at("faults").at(2).at("harm") == "nobody");
    CHECK_FALSE(out.at("faults").at(2).contains("with_part"));
    CHECK(out.at("faults").at(3)
          == nlohmann::json::parse(
              R"({"part": "WH1", "fault": "dead", "run": false, "consequence": "It cannot be run."})"));
}

TEST_CASE("every cell of the faults' text is what its column says", "[report][faults]")
{
    const Coach made = madeCoach();
    study::FaultsStudy study = faultsStudy(made);
    const std::string text = report::faultsText(made.drawing, study, UnitSystem::Metric);
    CAPTURE(text);
    CHECK(text.rfind("Loop for a test coach: Single faults\n", 0) == 0);
    CHECK(says(text, "\nSound: outlets 41.0 °C, cold outlets 21.0 °C, heater outlet 51.0 °C.\n"
                     "Through: 'Cold press' 'Three presses'.\n\n"));
    CHECK(row(text, "", "Part ")
          == Cells{"Part", "Fault", "Outlets", "Cold", "Heater", "Change", "Hurts", "Consequence"});
    const Cells first = row(text, "", "CV1");
    REQUIRE(first.size() == 8);
    // The name of the fault is what stands before the colon in its kind's title.
    std::string named;
    for (const parts::Fault& fault : document::kindOf(*made.drawing.findTag("CV1")).faults) {
        named = fault.id == "stuck_open" ? std::string(fault.title) : named;
    }
    REQUIRE_FALSE(named.empty());
    CHECK(first[1] == named.substr(0, named.find(':')));
    CHECK(Cells(first.begin() + 2, first.end())
          == Cells{"42.0 °C", "43.0 °C", "53.0 °C", "22.0 K", "F1",
                   "Hot water crosses. Who: Whoever drinks. Above the limit there in the sound coach too. Shows: Warm "
                   "cold tap. Ends it: The hand valve."});
    const Cells second = row(text, "", "P1");
    REQUIRE(second.size() == 8);
    CHECK(second[1] == "no_such_fault");
    CHECK(second[5] == "-");
    CHECK(second[6] == "F1");
    CHECK_FALSE(says(second[7], "sound coach"));
    CHECK(row(text, "", "MV1").at(6) == "nobody");
    CHECK(says(text, "\nHot water can burn; children, elders"));
    CHECK(says(text, "Never rely on one\nstop."));
    const Cells idle = row(text, "", "WH1");
    REQUIRE(idle.size() == 8);
    CHECK(Cells(idle.begin() + 2, idle.end()) == Cells{"-", "-", "-", "-", "not run", "It cannot be run."});

    study.rows[1].withPart = made.id("C1");
    study.rows[1].withFault = "limit_dead";
    const std::string pairs = report::faultsText(made.drawing, study, UnitSystem::Metric);
    CHECK(pairs.rfind("Loop for a test coach: Single faults and pairs\n", 0) == 0);
    const Cells both = row(pairs, "", "P1 and C1");
    REQUIRE(both.size() == 8);
    CHECK(both[1] == "no_such_fault and limit_dead");
}

TEST_CASE("the protections needed are told in words and as JSON, or why none helps", "[report][study]")
{
    Coach made = madeCoach();
    study::SafeSet set;
    set.changes = {{made.id("C1"),
                    "stop_by_temperature",
                    true,
                    {"End the run at {0} by the stop sensor.", {Measure{40, Quantity::Temperature}}}},
                   {made.id("C1"), "stop_temperature_C", 40.0, {}}};
    set.with.heaterOutlet_C = 49;
    set.with.outlets_C = 48;
    set.with.coldOutlets_C = 30;
    set.with.heaterInlet_C = 29;
    set.entering_C = 31;
    set.tried = 7;
    const std::string text = report::safeSetText(made.drawing, set, UnitSystem::Metric);
    CAPTURE(text);
    CHECK(says(text, "The fewest changes that keep every limit, whoever presses how often:\n"
                     "  End the run at 40.0 °C by the stop sensor.\n\n"));
    for (const char* row : {"Heater outlet       49.0 °C", "Outlets, hot        48.0 °C", "Outlets, cold       30.0 °C",
                            "Into the cold line  31.0 °C"}) {
        CHECK(says(text, row));
    }
    const nlohmann::json out = nlohmann::json::parse(report::safeSetJson(made.drawing, set, "coach.tapward"));
    CHECK(out.at("study") == "protections");
    CHECK(out.at("keeps_as_drawn") == false);
    CHECK(out.at("changes") == nlohmann::json::parse(R"([{"part": "C1", "field": "stop_by_temperature", "value": true},
                             {"part": "C1", "field": "stop_temperature_C", "value": 40.0}])"));
    CHECK(out.at("with")
          == nlohmann::json::parse(
              R"({"outlets_C": 48.0, "cold_outlets_C": 30.0, "heater_outlet_C": 49.0, "heater_inlet_C": 29.0})"));
    CHECK(out.at("entering_C") == 31);
    CHECK(out.at("reason").is_null());
    CHECK(out.at("sets_tried") == 7);

    set.changes.clear();
    set.reason = "It is too hot.";
    CHECK(says(report::safeSetText(made.drawing, set, UnitSystem::Metric), "None is enough. It is too hot.\n"));
    CHECK(nlohmann::json::parse(report::safeSetJson(made.drawing, set, "x")).at("reason") == "It is too hot.");
    set.keepsAsDrawn = true;
    CHECK(says(report::safeSetText(made.drawing, set, UnitSystem::Metric), "nothing needs to be changed.\n"));
}
