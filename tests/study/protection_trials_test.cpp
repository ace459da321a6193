// SPDX-License-Identifier: GPL-3.0-or-later
#include "study/protection_trials.h"

#include <algorithm>

#include "study/protections.h"
#include "study/trade_coach.h"
#include "support/catch.h"

using namespace tapward;
using document::ActionKind;
using study::HeatPlace;
using study::Protection;
using test::set;
using test::tradeCoach;

namespace {

study::ProtectionVariant variantOf(const document::Drawing& drawing, Protection protection, double wait_s = 600)
{
    const auto trials = study::Trials::make(drawing);
    REQUIRE(trials.has_value());
    return study::makeVariant(*trials, protection, wait_s);
}

bool equal(const control::RunSpec& a, const control::RunSpec& b)
{
    return a.stopByVolume == b.stopByVolume && a.stopVolume_m3 == b.stopVolume_m3 && a.stopByTime == b.stopByTime
           && a.stopTime_s == b.stopTime_s && a.stopByTemperature == b.stopByTemperature
           && a.stopTemperature_C == b.stopTemperature_C && a.refuseWhenWarm == b.refuseWhenWarm
           && a.highLimit == b.highLimit && a.highLimit_C == b.highLimit_C && a.inletLockout == b.inletLockout
           && a.inletLockout_C == b.inletLockout_C && a.coolDownWait_s == b.coolDownWait_s
           && a.longestRun_s == b.longestRun_s && a.noFlow_s == b.noFlow_s && a.pumpDelay_s == b.pumpDelay_s;
}

control::RunSpec specOf(const document::Drawing& drawing)
{
    const auto trials = study::Trials::make(drawing);
    REQUIRE(trials.has_value());
    return trials->plant().withRole(parts::Role::Controller).front()->model.controller->spec;
}

/// Everything switched off, every value its own.
document::Drawing bareCoach()
{
    document::Drawing drawing = tradeCoach();
    for (const char* key : {"stop_by_temperature", "high_limit", "inlet_lockout", "refuse_when_warm"}) {
        set(drawing, "C1", key, false);
    }
    set(drawing, "C1", "cool_down_wait_s", 0.0);
    set(drawing, "C1", "longest_run_s", 0.0);
    set(drawing, "C1", "stop_temperature_C", 41.0);
    set(drawing, "C1", "high_limit_C", 47.0);
    set(drawing, "C1", "inlet_lockout_C", 38.0);
    return drawing;
}

document::Action press(double at_s, document::PartId part)
{
    document::Action action;
    action.at_s = at_s;
    action.kind = ActionKind::PressButton;
    action.part = part;
    return action;
}

study::Event event(double t_s, const char* id)
{
    study::Event one;
    one.t_s = t_s;
    one.id = id;
    return one;
}

}  // namespace

TEST_CASE("a protection tried the other way is that one setting and no other", "[study][presses]")
{
    const document::Drawing off = bareCoach();
    document::Drawing on = off;
    for (const char* key : {"stop_by_temperature", "high_limit", "inlet_lockout", "refuse_when_warm"}) {
        set(on, "C1", key, true);
    }
    set(on, "C1", "limit_sensor", std::to_string(on.findTag("TE1")->id));
    set(on, "C1", "inlet_sensor", std::to_string(on.findTag("TE1")->id));
    set(on, "C1", "cool_down_wait_s", 300.0);
    set(on, "C1", "longest_run_s", 120.0);
    struct One {
        Protection protection;
        void (*turn)(control::RunSpec&, bool on);
    };
    const One all[] = {
        {Protection::TemperatureStop, [](control::RunSpec& s, bool v) { s.stopByTemperature = v; }},
        {Protection::HighLimit, [](control::RunSpec& s, bool v) { s.highLimit = v; }},
        {Protection::InletLockout, [](control::RunSpec& s, bool v) { s.inletLockout = v; }},
        {Protection::RefuseWhenWarm, [](control::RunSpec& s, bool v) { s.refuseWhenWarm = v; }},
        {Protection::WaitTimer, [](control::RunSpec& s, bool v) { s.coolDownWait_s = v ? 450 : 0; }},
        {Protection::LongestRun, [](control::RunSpec& s, bool v) { s.longestRun_s = v ? 180 : 0; }},
    };
    for (const One& one : all) {
        CAPTURE(study::id(one.protection));
        const auto added = variantOf(off, one.protection, 450);
        CHECK(added.effect.protection == one.protection);
        CHECK_FALSE(added.effect.counted);
        CHECK(added.effect.tried);
        CHECK(added.adds);
        CHECK_FALSE(added.effect.note.empty());
        CHECK(added.effect.note.text != "Without it.");
        REQUIRE(added.controls.size() == 1);
        CHECK(added.controls[0].controller == off.findTag("C1")->id);
        CHECK_FALSE(added.mixingSetpoint_C.has_value());
        control::RunSpec wanted = specOf(off);
        one.turn(wanted, true);
        CHECK(equal(added.controls[0].spec, wanted));

        const auto taken = variantOf(on, one.protection, 450);
        CHECK(taken.effect.counted);
        CHECK(taken.effect.tried);
        CHECK_FALSE(taken.adds);
        CHECK(taken.effect.note.text == "Without it.");
        wanted = specOf(on);
        one.turn(wanted, false);
        CHECK(equal(taken.controls[0].spec, wanted));
        CHECK_FALSE(taken.controls[0].limitAtStopSensor);
        CHECK_FALSE(taken.controls[0].lockoutAtHeater);
    }
    // What was tried is said with its value.
    const auto said = [&](Protection protection) {
        return variantOf(off, protection, 450).effect.note.arguments.at(0);
    };
    CHECK(said(Protection::TemperatureStop) == Argument(Measure{41, Quantity::Temperature}));
    CHECK(said(Protection::RefuseWhenWarm) == Argument(Measure{41, Quantity::Temperature}));
    CHECK(said(Protection::HighLimit) == Argument(Measure{47, Quantity::Temperature}));
    CHECK(said(Protection::InletLockout) == Argument(Measure{38, Quantity::Temperature}));
    CHECK(said(Protection::WaitTimer) == Argument(Measure{450, Quantity::Time}));
    CHECK(said(Protection::LongestRun) == Argument(Measure{180, Quantity::Time}));
}

TEST_CASE("a protection without its sensor is on paper only: it is tried with one", "[study][presses]")
{
    document::Drawing drawing = bareCoach();  // a stop sensor, no other
    set(drawing, "C1", "high_limit", true);
    set(drawing, "C1", "inlet_lockout", true);
    const auto limit = variantOf(drawing, Protection::HighLimit);
    CHECK_FALSE(limit.effect.counted);
    CHECK(limit.adds);
    CHECK(limit.controls[0].spec.highLimit);
    CHECK(limit.controls[0].limitAtStopSensor);
    CHECK_FALSE(limit.controls[0].lockoutAtHeater);
    CHECK(limit.effect.note.text == "With one at {0} beside the stop sensor.");
    const auto lockout = variantOf(drawing, Protection::InletLockout);
    CHECK_FALSE(lockout.effect.counted);
    CHECK(lockout.controls[0].lockoutAtHeater);
    CHECK_FALSE(lockout.controls[0].limitAtStopSensor);
    CHECK(lockout.effect.note.text.find("sensor at the heater's inlet") != std::string::npos);
    // With a sensor of its own it is that one.
    set(drawing, "C1", "high_limit", false);
    set(drawing, "C1", "inlet_lockout", false);
    set(drawing, "C1", "limit_sensor", std::to_string(drawing.findTag("TE1")->id));
    set(drawing, "C1", "inlet_sensor", std::to_string(drawing.findTag("TE1")->id));
    CHECK_FALSE(variantOf(drawing, Protection::HighLimit).controls[0].limitAtStopSensor);
    CHECK(variantOf(drawing, Protection::HighLimit).effect.note.text == "With one at {0}.");
    CHECK_FALSE(variantOf(drawing, Protection::InletLockout).controls[0].lockoutAtHeater);
    CHECK(variantOf(drawing, Protection::InletLockout).effect.note.text == "With one at {0}.");

    // No sensor at all: a stop and a refusal by temperature cannot be tried.
    document::Drawing blind = bareCoach();
    set(blind, "C1", "stop_sensor", std::string());
    for (const Protection protection : {Protection::TemperatureStop, Protection::RefuseWhenWarm}) {
        const auto none = variantOf(blind, protection);
        CHECK_FALSE(none.effect.tried);
        CHECK_FALSE(none.effect.counted);
        CHECK(none.effect.note.text == "The controller has no stop sensor.");
    }
    CHECK(variantOf(blind, Protection::HighLimit).effect.note.text == "With one at {0} at the heater's outlet.");
    CHECK(variantOf(blind, Protection::HighLimit).effect.tried);
    set(blind, "C1", "stop_by_temperature", true);
    set(blind, "C1", "refuse_when_warm", true);
    CHECK_FALSE(variantOf(blind, Protection::TemperatureStop).effect.counted);
    CHECK_FALSE(variantOf(blind, Protection::RefuseWhenWarm).effect.counted);
}

TEST_CASE("a mixing valve that is drawn is tried as if it passed hot water only", "[study][presses]")
{
    document::Drawing drawing = bareCoach();
    const auto without = variantOf(drawing, Protection::MixingValve);
    CHECK_FALSE(without.effect.tried);
    CHECK_FALSE(without.effect.counted);
    CHECK_FALSE(without.mixingSetpoint_C.has_value());
    document::Part valve;
    valve.id = drawing.nextId++;
    valve.kind = "mixing_valve";
    valve.tag = "MX1";
    drawing.parts.push_back(valve);
    const auto with = variantOf(drawing, Protection::MixingValve);
    CHECK(with.effect.tried);
    CHECK(with.effect.counted);
    REQUIRE(with.mixingSetpoint_C.has_value());
    CHECK(*with.mixingSetpoint_C > 90);  // above any water there is
    CHECK(with.controls.empty());
}

TEST_CASE("each protection that ends a run is known by the end it writes down", "[study][presses]")
{
    using Ends = std::vector<std::string_view>;
    CHECK(study::endsOf(Protection::TemperatureStop) == Ends{"stop_temperature"});
    CHECK(study::endsOf(Protection::HighLimit) == Ends{"stop_high_limit"});
    CHECK(study::endsOf(Protection::InletLockout) == Ends{"stop_inlet_lockout"});
    CHECK(study::endsOf(Protection::LongestRun) == Ends{"stop_longest_run"});
    for (const Protection refuses : {Protection::WaitTimer, Protection::RefuseWhenWarm, Protection::MixingValve}) {
        CHECK(study::endsOf(refuses).empty());
    }
}

TEST_CASE("ends made by hand are presses at the same instants, before a press that starts the next run",
          "[study][presses]")
{
    study::TrialResult result;
    document::Action volts;
    volts.kind = ActionKind::SetVoltage;
    volts.part = 9;
    document::Action draw;
    draw.at_s = 60;
    draw.kind = ActionKind::OpenOutlet;
    draw.part = 8;
    result.asRun.actions = {volts, press(2, 27), press(40, 27), draw, press(90, 27)};
    result.result.events = {event(2, "run_started"),       event(25, "stop_temperature"), event(40, "run_started"),
                            event(55, "stop_volume"),      event(90, "stop_temperature"), event(90, "run_started"),
                            event(130, "stop_temperature")};
    const document::Case script = study::byHand(result, {"stop_temperature"});
    REQUIRE(script.actions.size() == 8);
    const double at_s[] = {0, 2, 25, 40, 60, 90, 90, 130};
    for (std::size_t i = 0; i < 8; ++i) {
        CAPTURE(i);
        CHECK(script.actions[i].at_s == at_s[i]);
        const bool pressed = i != 0 && i != 4;
        CHECK((script.actions[i].kind == ActionKind::PressButton) == pressed);
        CHECK(script.actions[i].part == (pressed ? 27 : i == 0 ? 9 : 8));
    }
    CHECK(study::byHand(result, {}).actions == result.asRun.actions);
    CHECK(study::byHand(result, {"stop_volume"}).actions.size() == 6);
}

TEST_CASE("one place hotter is hotter, whichever it is", "[study][presses]")
{
    const study::Hottest plain{60, 40, 45, 30};
    CHECK_FALSE(study::hotter(plain, plain));
    for (const auto place : {&study::Hottest::heaterOutlet_C, &study::Hottest::heaterInlet_C,
                             &study::Hottest::outlets_C, &study::Hottest::coldOutlets_C}) {
        study::Hottest up{59, 39, 44, 29};
        *(up.*place) += 2;
        CHECK(study::hotter(up, plain));
        CHECK(study::hotter(plain, up));
        study::Hottest down = plain;
        *(down.*place) -= 1;
        CHECK_FALSE(study::hotter(down, plain));
        CHECK(study::hotter(plain, down));
        (down.*place).reset();  // no such place
        CHECK(study::hotter(plain, down));
        CHECK_FALSE(study::hotter(down, plain));
    }
}

TEST_CASE("a hotter result becomes the worst of its own place, with a script cut to what it takes", "[study][presses]")
{
    const document::Drawing drawing = tradeCoach();
    const document::PartId tap = drawing.findTag("F1")->id, heater = drawing.findTag("WH1")->id,
                           sensor = drawing.findTag("TE1")->id, button = drawing.findTag("PB1")->id;
    const auto worst = [](HeatPlace place, document::PartId part, double celsius) {
        study::WorstHeat heat;
        heat.place = place;
        heat.part = part;
        heat.hottest_C = celsius;
        return heat;
    };
    std::vector<study::WorstHeat> known{worst(HeatPlace::HeaterOutlet, heater, 70),
                                        worst(HeatPlace::OutletHot, tap, 50), worst(HeatPlace::OutletCold, tap, 30),
                                        worst(HeatPlace::Sensor, sensor, 52),
                                        worst(HeatPlace::HeaterInlet, heater, 45)};
    study::TrialResult result;
    document::Action open;
    open.kind = ActionKind::OpenOutlet;
    open.part = tap;
    open.at_s = 300;
    document::Action shut = open;
    shut.kind = ActionKind::CloseOutlet;
    shut.at_s = 340;
    result.asRun.duration_s = 7200;
    result.asRun.actions = {press(2, button), press(100, button), press(200, button), open, shut};
    result.result.events = {event(2, "run_started"), event(80, "stop_volume"), event(100, "run_started"),
                            event(180, "stop_button"), event(200, "run_started")};
    result.result.hottest = {{HeatPlace::HeaterOutlet, heater, 75, 150.4},
                             {HeatPlace::OutletHot, tap, 55, 305},
                             {HeatPlace::OutletCold, tap, 30, 200},
                             {HeatPlace::Sensor, sensor, 53, 100},
                             {HeatPlace::HeaterInlet, heater, 44, 210}};
    study::raise(drawing, known, result);
    CHECK(known[0].hottest_C == 75);
    CHECK(known[0].at_s == 150.4);
    CHECK(known[0].presses == 2);
    CHECK(known[0].script.name == "Hottest at WH1 outlet: 2 presses");
    CHECK(known[0].script.targetPart == document::kNoPart);
    CHECK(known[0].script.actions == std::vector<document::Action>{press(2, button), press(100, button)});
    CHECK(known[0].script.duration_s == 181);  // half a minute on, whole seconds

    // At an outlet its own opening stays, whenever it came.
    CHECK(known[1].hottest_C == 55);
    CHECK(known[1].presses == 3);
    CHECK(known[1].script.name == "Hottest at F1 hot: 3 presses");
    CHECK(known[1].script.targetPart == tap);
    REQUIRE(known[1].script.actions.size() == 5);
    CHECK(known[1].script.duration_s >= 340);
    CHECK(known[1].script.duration_s < 400);
    CHECK_THAT(known[1].script.target_C, WithinAbs(us::celsius(120), 1e-9));  // scald guidance

    // No hotter, no change; a press at the very moment counts.
    CHECK(known[2].script.actions.empty());
    CHECK(known[3].presses == 2);
    CHECK(known[3].script.targetPart == sensor);
    CHECK(known[3].script.name == "Hottest at TE1: 2 presses");
    CHECK(known[4].hottest_C == 45);

    result.result.hottest = {{HeatPlace::HeaterInlet, heater, 46, 10}, {HeatPlace::OutletCold, tap, 33, 20}};
    study::raise(drawing, known, result);
    CHECK(known[4].script.name == "Hottest at WH1 inlet: 1 press");
    CHECK(known[4].script.actions.size() == 1);
    CHECK(known[2].script.name == "Hottest at F1 cold: 1 press");
    CHECK(known[2].script.duration_s >= 340);
    // A short case is not made longer.
    result.asRun.duration_s = 15;
    result.result.hottest = {{HeatPlace::HeaterInlet, heater, 47, 10}};
    study::raise(drawing, known, result);
    CHECK(known[4].script.duration_s == 15);
}

TEST_CASE("the hottest script of each group is asked once", "[study][presses]")
{
    const auto worst = [](HeatPlace place, double celsius, double pressed_s) {
        study::WorstHeat heat;
        heat.place = place;
        heat.hottest_C = celsius;
        heat.script.actions = {press(pressed_s, 27)};
        return heat;
    };
    const auto scripts = study::hottestScripts(
        {worst(HeatPlace::OutletHot, 50, 1), worst(HeatPlace::OutletHot, 55, 2), worst(HeatPlace::OutletHot, 52, 3),
         worst(HeatPlace::HeaterOutlet, 70, 2), worst(HeatPlace::Sensor, 90, 5), worst(HeatPlace::HeaterInlet, 40, 4)});
    REQUIRE(scripts.size() == 2);  // heater outlet and hot outlet have one in common; a sensor is no such place
    CHECK(scripts[0].script.actions[0].at_s == 2);
    CHECK(scripts[1].script.actions[0].at_s == 4);
    CHECK_FALSE(scripts[0].plan.has_value());
    CHECK(scripts[0].controls.empty());
}

TEST_CASE("heat is taken into the group of its place", "[study][presses]")
{
    study::Hottest all;
    study::take(all, {HeatPlace::Sensor, 1, 90, 0});
    study::take(all, {HeatPlace::Join, 1, 90, 0});
    CHECK_FALSE((all.heaterOutlet_C || all.heaterInlet_C || all.outlets_C || all.coldOutlets_C));
    study::take(all, {HeatPlace::HeaterOutlet, 1, 60, 0});
    study::take(all, {HeatPlace::HeaterInlet, 1, 40, 0});
    study::take(all, {HeatPlace::OutletHot, 1, 45, 0});
    study::take(all, {HeatPlace::OutletHot, 2, 48, 0});
    study::take(all, {HeatPlace::OutletHot, 1, 46, 0});
    study::take(all, {HeatPlace::OutletCold, 1, 30, 0});
    CHECK(all.heaterOutlet_C == 60);
    CHECK(all.heaterInlet_C == 40);
    CHECK(all.outlets_C == 48);
    CHECK(all.coldOutlets_C == 30);
}

TEST_CASE("protections have ids that stay and titles that differ", "[study][presses]")
{
    CHECK(study::id(Protection::TemperatureStop) == "temperature_stop");
    CHECK(study::id(Protection::HighLimit) == "high_limit");
    CHECK(study::id(Protection::InletLockout) == "inlet_lockout");
    CHECK(study::id(Protection::WaitTimer) == "wait");
    CHECK(study::id(Protection::LongestRun) == "longest_run");
    CHECK(study::id(Protection::RefuseWhenWarm) == "refuse_when_warm");
    CHECK(study::id(Protection::MixingValve) == "mixing_valve");
    CHECK(study::title(Protection::WaitTimer) == "Cool-down wait");
    CHECK(study::title(Protection::LongestRun) == "Longest run");
    CHECK(study::title(Protection::HighLimit) == "Independent high limit");
    CHECK(study::title(Protection::RefuseWhenWarm) == "Refuse when already warm");
}
