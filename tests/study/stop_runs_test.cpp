// SPDX-License-Identifier: GPL-3.0-or-later
#include "study/stop_runs.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include "study/loop.h"
#include "study/trade_coach.h"
#include "support/catch.h"

using namespace tapward;
using document::ActionKind;
using test::set;
using test::tradeCoach;

namespace {

document::Action act(double at_s, ActionKind kind, document::PartId part = document::kNoPart)
{
    document::Action action;
    action.at_s = at_s;
    action.kind = kind;
    action.part = part;
    return action;
}

study::StopQuestion asked(const document::Drawing& drawing, const study::StopOptions& options = {})
{
    const auto question = study::stopQuestion(drawing, options);
    REQUIRE(question.has_value());
    return *question;
}

study::StopRun plainRun(const document::Drawing& drawing)
{
    const auto run = study::nominalRun(asked(drawing), 0.3, 1, {});
    REQUIRE(run.has_value());
    return *run;
}

bool neverFalls(const std::vector<double>& column) { return std::is_sorted(column.begin(), column.end()); }

}  // namespace

TEST_CASE("a stop is asked of the first case that presses, with what was set up before the press", "[study][stop]")
{
    document::Drawing drawing = tradeCoach();
    const document::PartId button = drawing.findTag("PB1")->id, tap = drawing.findTag("F1")->id;
    document::Case press = drawing.cases[0];
    press.name = "Press";
    press.start_C = 12;
    press.target_C = 39;
    press.targetPart = tap;
    press.actions = {act(5, ActionKind::UseCity),         act(0, ActionKind::SetValve, 99),
                     act(2, ActionKind::OpenOutlet, tap), act(30, ActionKind::PressButton, button),
                     act(20, ActionKind::UsePump),        act(31, ActionKind::UseNothing),
                     act(0, ActionKind::SetVoltage),      act(60, ActionKind::PressButton, button)};
    document::Case today = press, second = press, still = press;
    today.name = "Today";
    today.view = document::View::Before;
    today.start_C = 1;
    still.name = "Nothing pressed";
    still.actions = {act(0, ActionKind::UseCity)};
    second.name = "Second";
    second.start_C = 25;
    second.target_C = 42;
    drawing.cases = {today, still, press, second};
    const study::StopQuestion question = asked(drawing);
    CHECK(question.drawing == &drawing);
    CHECK(question.script.name == "Press");
    CHECK(question.script.start_C == 12);
    CHECK(question.target_C == 39);
    CHECK(question.script.targetPart == document::kNoPart);
    const auto& actions = question.script.actions;
    REQUIRE(actions.size() == 4);  // supply, valve, supply, and one press; nothing drawn, nothing after the press
    CHECK(actions[0].kind == ActionKind::UseCity);
    CHECK(actions[1].kind == ActionKind::SetValve);
    CHECK(actions[2].kind == ActionKind::UsePump);
    for (int i = 0; i < 3; ++i) {
        CHECK(actions[static_cast<std::size_t>(i)].at_s == 0);
    }
    CHECK(actions[3].kind == ActionKind::PressButton);
    CHECK(actions[3].part == button);
    CHECK(actions[3].at_s == 1);
    CHECK(question.hasFlowSensor);
    CHECK(question.hasStopSensor);
    CHECK(question.limits.tap_C == study::kOutletLimit_C);        // 120 °F
    CHECK(question.limits.coldEntry_C == 40);  // 104 °F

    study::StopOptions options;
    options.caseName = "Second";
    options.target_C = 45;
    options.limits = {47, 38};
    options.ranges = std::vector<study::Range>(1);
    const study::StopQuestion other = asked(drawing, options);
    CHECK(other.script.start_C == 25);
    CHECK(other.target_C == 45);
    CHECK(other.limits.tap_C == 47);
    CHECK(other.ranges.size() == 1);
    options.caseName = "Nothing pressed";
    CHECK_FALSE(study::stopQuestion(drawing, options).has_value());
    options.caseName = "No such case";
    CHECK_FALSE(study::stopQuestion(drawing, options).has_value());
}

TEST_CASE("the limits of a stop are those of the weakest pump and of the loop's heater", "[study][stop]")
{
    document::Drawing drawing = tradeCoach();
    set(drawing, "WH1", "outlet_limit_C", 77.0);
    set(drawing, "P1", "temperature_limit_C", 70.0);
    set(drawing, "P2", "temperature_limit_C", 62.0);
    CHECK(asked(drawing).pumpLimit_C == 62);
    CHECK(asked(drawing).outletLimit_C == 77);
    set(drawing, "P1", "temperature_limit_C", 55.0);
    CHECK(asked(drawing).pumpLimit_C == 55);
    set(drawing, "P1", "temperature_limit_C", 0.0);  // not known
    CHECK(asked(drawing).pumpLimit_C == 62);
    set(drawing, "P2", "temperature_limit_C", 0.0);
    CHECK(asked(drawing).pumpLimit_C == 0);
    // A pump or a heater beside the loop is none of it.
    document::Part loose;
    loose.id = drawing.nextId++;
    loose.kind = "circulator";
    loose.tag = "P9";
    loose.stage = document::Stage::Removed;
    loose.entries["temperature_limit_C"] = {30.0, parts::Basis::Measured};
    drawing.parts.push_back(loose);
    document::Part second;
    second.id = drawing.nextId++;
    second.kind = "tankless_heater";
    second.tag = "WH2";
    second.entries["outlet_limit_C"] = {60.0, parts::Basis::Measured};
    drawing.parts.push_back(second);
    CHECK(asked(drawing).pumpLimit_C == 0);
    CHECK(asked(drawing).outletLimit_C == 77);
    set(drawing, "C1", "stop_sensor", std::string());
    CHECK_FALSE(asked(drawing).hasStopSensor);
    CHECK(asked(drawing).hasFlowSensor);
    set(drawing, "C1", "flow_sensor", std::string());
    CHECK_FALSE(asked(drawing).hasFlowSensor);
}

TEST_CASE("without a controller or a loop nothing can be stopped, and it says so", "[study][stop]")
{
    document::Drawing drawing = tradeCoach();
    const auto why = [&](const char* kind) {
        document::Drawing without = drawing;
        for (document::Part& part : without.parts) {
            part.stage = part.kind == kind ? document::Stage::Removed : part.stage;
        }
        const auto question = study::stopQuestion(without, {});
        return question ? std::string() : question.error().what.text;
    };
    CHECK(why("controller").starts_with("No controller"));
    CHECK_FALSE(why("circulator").empty());
    CHECK_FALSE(why("tankless_heater").empty());
    CHECK(why("fuse").empty());
}

TEST_CASE("a run that is let go on lights the heater and carries hot water past the tap", "[study][stop]")
{
    document::Drawing drawing = tradeCoach();
    set(drawing, "FE1", "gain", 1.25);
    set(drawing, "TE1", "lag_s", 6.0);
    // None of this may end or refuse it.
    set(drawing, "C1", "stop_by_volume", true);
    set(drawing, "C1", "stop_volume_m3", 1e-4);
    set(drawing, "C1", "stop_by_time", true);
    set(drawing, "C1", "stop_time_s", 5.0);
    set(drawing, "C1", "stop_by_temperature", true);
    set(drawing, "C1", "stop_temperature_C", 23.0);
    set(drawing, "C1", "refuse_when_warm", true);
    set(drawing, "C1", "high_limit", true);
    set(drawing, "C1", "high_limit_C", 24.0);
    set(drawing, "C1", "limit_sensor", std::to_string(drawing.findTag("TE1")->id));
    set(drawing, "C1", "inlet_lockout", true);
    set(drawing, "C1", "inlet_lockout_C", 23.0);
    set(drawing, "C1", "inlet_sensor", std::to_string(drawing.findTag("TE1")->id));
    set(drawing, "C1", "longest_run_s", 10.0);
    const study::StopRun run = plainRun(drawing);
    const study::LoopAnswer loop = study::loopAnswer(drawing);
    CHECK(run.lit);
    REQUIRE(run.time_s.size() > 30);
    for (const auto* column : {&run.pumped_m3, &run.sensed_m3, &run.reading_C, &run.tap_C, &run.tapMost_C,
                               &run.enteringMost_C, &run.outletMost_C}) {
        CHECK(column->size() == run.time_s.size());
    }
    for (const auto* column : {&run.time_s, &run.pumped_m3, &run.sensed_m3, &run.reading_C, &run.tapMost_C}) {
        CHECK(neverFalls(*column));
    }
    CHECK(run.time_s.front() >= 0);
    CHECK(run.time_s.front() <= 5);  // the valve travels that long, nothing moves before
    // Water passes the tap more than twice: 11.43 m of 1/2 in PEX go by, 1.18 fl oz a foot (2009 International Plumbing
    // Code, table E202.1).
    REQUIRE(loop.flow_m3s.has_value());
    const double held_m3 = 11.43 / us::kFoot * 1.18 * us::kGallon / 128;
    CHECK(run.time_s.back() > 2 * held_m3 / *loop.flow_m3s);
    CHECK(run.time_s.back() <= 901);
    CHECK(run.pumped_m3.back() > 2 * held_m3);
    // Valve travel aside it is flow times time, and the sensor counts a quarter more.
    CHECK_THAT(run.pumped_m3.back(), WithinRel(*loop.flow_m3s * run.time_s.back(), 0.15));
    CHECK_THAT(run.sensed_m3.back(), WithinRel(1.25 * run.pumped_m3.back(), 0.02));
    // Cold at first, then near the heater's 51 °C; never more at the tap than at the heater.
    CHECK_THAT(run.tap_C.front(), WithinAbs(us::celsius(72), 0.5));
    CHECK(run.tapMost_C.back() > 40);
    CHECK(run.outletMost_C.back() >= run.tapMost_C.back() - 0.1);
    CHECK(run.enteringMost_C.back() < run.tapMost_C.back());
    for (std::size_t i = 0; i < run.time_s.size(); ++i) {
        CHECK(run.tapMost_C[i] >= run.tap_C[i]);
    }
    // The reading trails the water at the tap, by more than its lag (water's way to it comes on top).
    const double half_C = 0.5 * (run.tap_C.front() + run.tapMost_C.back());
    const auto when = [&](const std::vector<double>& column) {
        const auto at = std::find_if(column.begin(), column.end(), [&](double c) { return c >= half_C; });
        REQUIRE(at != column.end());
        return run.time_s[static_cast<std::size_t>(at - column.begin())];
    };
    CHECK(when(run.reading_C) >= when(run.tapMost_C) + 4);
    CHECK(when(run.reading_C) <= when(run.tapMost_C) + 20);

    // A sensor that reads nothing below a flow above the loop's counts nothing.
    set(drawing, "FE1", "low_cut_off_m3s", 2 * *loop.flow_m3s);
    CHECK(plainRun(drawing).sensed_m3.back() == 0);
    // Without sensors there are no such columns.
    set(drawing, "C1", "stop_sensor", std::string());
    set(drawing, "C1", "flow_sensor", std::string());
    const study::StopRun blind = plainRun(drawing);
    CHECK(blind.sensed_m3.empty());
    CHECK(blind.reading_C.empty());
}

TEST_CASE("a loop far too slow for the heater stays cold and is pumped all the same", "[study][stop]")
{
    document::Drawing drawing = tradeCoach();
    set(drawing, "FE1", "gain", 1.1);
    const double flow_m3s = study::loopAnswer(drawing).flow_m3s.value();
    set(drawing, "WH1", "activation_flow_m3s", 2 * flow_m3s);
    const study::StopRun run = plainRun(drawing);
    CHECK_FALSE(run.lit);
    REQUIRE(run.time_s.size() == run.tap_C.size());
    CHECK(run.time_s.back() > 60);
    CHECK_THAT(run.pumped_m3.back(), WithinRel(flow_m3s * run.time_s.back(), 1e-6));
    CHECK_THAT(run.sensed_m3.back(), WithinRel(1.1 * run.pumped_m3.back(), 1e-9));
    CHECK_THAT(run.tapMost_C.back(), WithinAbs(us::celsius(72), 1e-6));
    CHECK_THAT(run.reading_C.back(), WithinAbs(us::celsius(72), 1e-6));
    CHECK_THAT(run.enteringMost_C.back(), WithinAbs(us::celsius(72), 1e-6));
    CHECK_THAT(run.outletMost_C.back(), WithinAbs(us::celsius(72), 1e-6));
    // Just short of lighting it is run: currents and flows may bring it over.
    set(drawing, "WH1", "activation_flow_m3s", 1.05 * flow_m3s);
    CHECK(plainRun(drawing).time_s.size() > 2);
}
