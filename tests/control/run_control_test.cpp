// SPDX-License-Identifier: GPL-3.0-or-later
#include <cmath>
#include <limits>

#include "control/run_control.h"
#include "support/catch.h"

using namespace tapward::control;

namespace {

constexpr double kNone = std::numeric_limits<double>::quiet_NaN();

RunInputs readings(double pumped_m3, double stop_C = kNone, double limit_C = kNone, double inlet_C = kNone)
{
    RunInputs inputs{};
    inputs.pumped_m3 = pumped_m3;
    inputs.flow_m3s = 3e-5;
    inputs.stopSensor_C = stop_C;
    inputs.limitSensor_C = limit_C;
    inputs.inletSensor_C = inlet_C;
    inputs.valveOpen = true;
    return inputs;
}

}  // namespace

TEST_CASE("a run stops at the exact instant its volume is reached", "[control]")
{
    RunSpec spec;
    spec.stopVolume_m3 = 1e-3;
    RunControl control(spec);
    CHECK(control.press(0, readings(5e-3)).cause == RunCause::ButtonPressed);
    REQUIRE(control.stopAtTotal_m3().has_value());
    CHECK(*control.stopAtTotal_m3() == Approx(6e-3));
    CHECK_FALSE(control.advance(10, 1, readings(5.0e-3), readings(5.9e-3)).has_value());
    const auto change = control.advance(11, 1, readings(5.9e-3), readings(6.1e-3));
    REQUIRE(change.has_value());
    CHECK(change->cause == RunCause::VolumeReached);
    CHECK(change->at_s == Approx(10.5));
    CHECK(control.state() == RunState::Idle);
    CHECK_FALSE(control.pumpsCommandedOn());
}

TEST_CASE("whichever stop comes first ends the run", "[control]")
{
    RunSpec spec;
    spec.stopVolume_m3 = 1e-3;
    spec.stopByTemperature = true;
    spec.stopTemperature_C = 40;
    RunControl control(spec);
    control.press(0, readings(0, 20));
    // Both are met in this step: temperature at a quarter, volume at three quarters of it.
    const auto change = control.advance(2, 2, readings(0.25e-3, 38), readings(1.25e-3, 46));
    REQUIRE(change.has_value());
    CHECK(change->cause == RunCause::TemperatureReached);
    CHECK(change->at_s == Approx(0.5));
}

TEST_CASE("the high limit ends a run whose main stop has failed, unless it failed too", "[control]")
{
    RunSpec spec;
    spec.highLimit = true;
    spec.highLimit_C = 48;
    spec.longestRun_s = 0;
    for (const bool limitFails : {false, true}) {
        RunControl control(spec);
        control.press(0, readings(0, 20, 20));
        RunInputs late = readings(1, 60, 60);
        late.stopFails = true;
        late.limitFails = limitFails;
        const auto change = control.advance(60, 1, readings(0.9, 40, 40), late);
        CHECK(change.has_value() == !limitFails);
        if (change) {
            CHECK(change->cause == RunCause::HighLimit);
        }
    }
}

TEST_CASE("a press is refused while the wait lasts, the inlet is warm or the limit is open", "[control]")
{
    RunSpec spec;
    spec.coolDownWait_s = 60;
    spec.inletLockout = true;
    spec.inletLockout_C = 40;
    spec.highLimit = true;
    RunControl control(spec);
    CHECK(control.press(0, readings(0, 20, 20, 41)).cause == RunCause::RefusedInlet);
    CHECK(control.press(0, readings(0, 20, 55, 20)).cause == RunCause::RefusedLimit);
    CHECK(control.press(0, readings(0, 20, 20, 20)).cause == RunCause::ButtonPressed);
    CHECK(control.press(5, readings(0, 20, 20, 20)).cause == RunCause::ButtonPressedAgain);
    CHECK(control.press(64, readings(0, 20, 20, 20)).cause == RunCause::RefusedWait);
    CHECK(control.press(66, readings(0, 20, 20, 20)).cause == RunCause::ButtonPressed);
    CHECK(isRefusal(RunCause::RefusedWait));
    CHECK_FALSE(isRefusal(RunCause::ButtonPressed));
}

TEST_CASE("pumps wait for the valve when told to, and no flow ends the run", "[control]")
{
    RunSpec spec;
    spec.noFlow_s = 5;
    RunControl control(spec);
    RunInputs closed = readings(0);
    closed.valveOpen = false;
    control.press(0, closed);
    CHECK(control.state() == RunState::OpeningValve);
    CHECK_FALSE(control.pumpsCommandedOn());
    const auto open = control.advance(5, 1, closed, readings(0));
    REQUIRE(open.has_value());
    CHECK(open->cause == RunCause::ValveOpen);
    CHECK(control.pumpsCommandedOn());
    RunInputs still = readings(0);
    still.flow_m3s = 0;
    CHECK_FALSE(control.advance(6, 1, still, still).has_value());
    CHECK(control.timeToNextEvent_s(6) == Approx(4));
    const auto stop = control.advance(10, 4, still, still);
    REQUIRE(stop.has_value());
    CHECK(stop->cause == RunCause::NoFlow);
    CHECK(stop->at_s == Approx(10));
}

TEST_CASE("a look is enough to know when the watch for no flow will act", "[control]")
{
    RunSpec spec;
    spec.noFlow_s = 5;
    RunControl control(spec);
    RunInputs still = readings(0);
    still.flow_m3s = 0;
    control.look(3, still);  // at rest there is nothing to watch
    CHECK(control.timeToNextEvent_s(3) > 1e6);
    control.press(10, still);
    REQUIRE(control.pumpsCommandedOn());
    control.look(10, still);
    CHECK(control.timeToNextEvent_s(10) == Approx(5));
    control.look(12, still);  // looking again does not begin it anew
    CHECK(control.timeToNextEvent_s(12) == Approx(3));
    control.look(12, readings(0));
    CHECK(control.timeToNextEvent_s(12) > 100);
}

TEST_CASE("timers end a run at their own instant inside a long step", "[control]")
{
    RunSpec spec;
    spec.stopByVolume = false;
    spec.stopByTime = true;
    spec.stopTime_s = 22;
    spec.longestRun_s = 180;
    RunControl control(spec);
    control.press(3, readings(0));
    CHECK(control.timeToNextEvent_s(3) == Approx(22));
    const auto change = control.advance(30, 10, readings(0), readings(0));
    REQUIRE(change.has_value());
    CHECK(change->cause == RunCause::TimeReached);
    CHECK(change->at_s == Approx(25));
}

TEST_CASE("a refusal is every cause that starts no run, and no other", "[control]")
{
    for (const RunCause cause : {RunCause::RefusedWarm, RunCause::RefusedWait, RunCause::RefusedInlet,
                                 RunCause::RefusedLimit, RunCause::RefusedNoPower}) {
        CHECK(isRefusal(cause));
    }
    for (const RunCause cause :
         {RunCause::ButtonPressed, RunCause::ValveOpen, RunCause::VolumeReached, RunCause::TimeReached,
          RunCause::TemperatureReached, RunCause::HighLimit, RunCause::InletTooWarm, RunCause::LongestRun,
          RunCause::NoFlow, RunCause::ButtonPressedAgain, RunCause::PowerLost}) {
        CHECK_FALSE(isRefusal(cause));
    }
}

TEST_CASE("the longest run ends a run at its instant, unless it is set to none", "[control]")
{
    RunSpec spec;
    spec.stopByVolume = false;
    spec.longestRun_s = 180;
    RunControl control(spec);
    control.press(3, readings(0));
    CHECK(control.runStarted_s() == 3);
    CHECK(control.timeToNextEvent_s(3) == Approx(180));
    CHECK(control.timeToNextEvent_s(182) == Approx(1));  // 3 + 180 - 182
    CHECK_FALSE(control.advance(182.9, 1, readings(0), readings(0)).has_value());
    const auto change = control.advance(185, 2.1, readings(0), readings(0));
    REQUIRE(change.has_value());
    CHECK(change->cause == RunCause::LongestRun);
    CHECK(change->state == RunState::Idle);
    CHECK(change->at_s == Approx(183));

    RunControl met(spec);  // the step that ends at that very instant is enough
    met.press(3, readings(0));
    CHECK(met.advance(183, 1, readings(0), readings(0)).has_value());

    spec.longestRun_s = 0;
    RunControl endless(spec);
    endless.press(3, readings(0));
    CHECK(endless.timeToNextEvent_s(3) > 1e8);
    CHECK_FALSE(endless.advance(7200, 1, readings(0), readings(0)).has_value());
}

TEST_CASE("a run ends when water to the heater reaches the inlet lockout", "[control]")
{
    RunSpec spec;
    spec.inletLockout = true;
    spec.inletLockout_C = 40;
    for (const bool on : {true, false}) {
        spec.inletLockout = on;
        RunControl control(spec);
        control.press(0, readings(0, 20, 20, 20));
        CHECK_FALSE(control.advance(10, 1, readings(0, 20, 20, 20), readings(0, 20, 20, 39.9)).has_value());
        // From 36 to 44 in this step: 40 half way through it.
        const auto change = control.advance(12, 2, readings(0, 20, 20, 36), readings(0, 20, 20, 44));
        REQUIRE(change.has_value() == on);
        if (on) {
            CHECK(change->cause == RunCause::InletTooWarm);
            CHECK(change->at_s == Approx(11));
        }
    }
    spec.inletLockout = true;
    RunControl exactly(spec);
    exactly.press(0, readings(0, 20, 20, 20));
    CHECK(exactly.advance(1, 1, readings(0, 20, 20, 30), readings(0, 20, 20, 40)).has_value());
    RunControl blind(spec);  // without the sensor nothing is seen
    blind.press(0, readings(0, 20, 20));
    CHECK_FALSE(blind.advance(1, 1, readings(0), readings(0)).has_value());
}

TEST_CASE("the high limit ends a run at the instant it is met, and not where it is switched off", "[control]")
{
    RunSpec spec;
    spec.highLimit_C = 48;
    for (const bool on : {true, false}) {
        spec.highLimit = on;
        RunControl control(spec);
        control.press(0, readings(0, 20, 20));
        CHECK_FALSE(control.advance(5, 1, readings(0, 20, 46), readings(0, 20, 47.9)).has_value());
        // From 47 to 51: 48 a quarter of the way into two seconds that begin at 5 s.
        const auto change = control.advance(7, 2, readings(0, 20, 47), readings(0, 20, 51));
        REQUIRE(change.has_value() == on);
        if (on) {
            CHECK(change->cause == RunCause::HighLimit);
            CHECK(change->at_s == Approx(5.5));
        }
    }
    spec.highLimit = true;
    RunControl exactly(spec);
    exactly.press(0, readings(0, 20, 20));
    CHECK(exactly.advance(1, 1, readings(0, 20, 47), readings(0, 20, 48)).has_value());
}

TEST_CASE("a stop that was past its mark all along ends the run at the step's beginning, one unseen at its end",
          "[control]")
{
    RunSpec spec;
    spec.stopByVolume = false;
    spec.stopByTemperature = true;
    spec.stopTemperature_C = 40;
    RunControl before(spec);
    before.press(0, readings(0, 20));
    const auto past = before.advance(10, 4, readings(0, 45), readings(0, 50));  // the mark lies before the step
    REQUIRE(past.has_value());
    CHECK(past->at_s == Approx(6));
    for (const double first : {kNone, 40.0}) {  // no reading yet; or one that stands on its mark
        RunControl unseen(spec);
        unseen.press(0, readings(0, 20));
        const auto seen = unseen.advance(10, 4, readings(0, first), readings(0, 40));
        REQUIRE(seen.has_value());
        CHECK(seen->at_s == Approx(10));
    }
}

TEST_CASE("volume, time and temperature each stop a run only where they are switched on and sound", "[control]")
{
    for (const bool sound : {true, false}) {
        for (const RunCause wanted :
             {RunCause::VolumeReached, RunCause::TimeReached, RunCause::TemperatureReached, RunCause::LongestRun}) {
            CAPTURE(sound, static_cast<int>(wanted));
            RunSpec spec;
            spec.longestRun_s = 0;
            spec.stopByVolume = wanted == RunCause::VolumeReached;
            spec.stopByTime = wanted == RunCause::TimeReached;
            spec.stopByTemperature = wanted == RunCause::TemperatureReached;
            spec.stopVolume_m3 = 2e-3;
            spec.stopTime_s = 30;
            spec.stopTemperature_C = 40;
            RunControl control(spec);
            control.press(0, readings(1e-3, 20));
            CHECK(control.stopAtTotal_m3().has_value() == spec.stopByVolume);
            CHECK(control.timeToNextEvent_s(10) == Approx(spec.stopByTime ? 20 : 1e9));
            RunInputs now = readings(3e-3, 40);  // each exactly at its mark
            now.stopFails = !sound;
            const auto change = control.advance(30, 10, readings(2e-3, 39), now);
            REQUIRE(change.has_value() == (sound && wanted != RunCause::LongestRun));
            if (change) {
                CHECK(change->cause == wanted);
                CHECK(change->at_s == Approx(30));
            }
        }
    }
}

TEST_CASE("a temperature stop waits for the valve: what stands at the sensor before it opens is old water", "[control]")
{
    RunSpec spec;
    spec.stopByVolume = false;
    spec.stopByTemperature = true;
    spec.stopTemperature_C = 40;
    RunInputs shut = readings(0, 50);
    shut.valveOpen = false;
    RunControl control(spec);
    CHECK(control.press(0, shut).cause == RunCause::ButtonPressed);
    CHECK_FALSE(control.advance(2, 1, shut, shut).has_value());
    CHECK(control.advance(5, 1, shut, readings(0, 50))->cause == RunCause::ValveOpen);
    CHECK(control.state() == RunState::Running);
    CHECK(control.advance(6, 1, readings(0, 50), readings(0, 50))->cause == RunCause::TemperatureReached);
}

TEST_CASE("of two stops in one step the earlier counts, and of two at one instant the protection", "[control]")
{
    RunSpec spec;
    spec.stopVolume_m3 = 1e-3;
    spec.highLimit = true;
    spec.highLimit_C = 48;
    RunControl control(spec);
    control.press(0, readings(0, 20, 20));
    // The limit at half of the step, the volume at a quarter of it.
    const auto change = control.advance(4, 4, readings(0.75e-3, 20, 46), readings(1.75e-3, 20, 50));
    REQUIRE(change.has_value());
    CHECK(change->cause == RunCause::VolumeReached);
    CHECK(change->at_s == Approx(1));
    RunControl tie(spec);
    tie.press(0, readings(0, 20, 20));
    CHECK(tie.advance(4, 4, readings(0.5e-3, 20, 46), readings(1.5e-3, 20, 50))->cause == RunCause::HighLimit);
}

TEST_CASE("a press is refused without power, with the line warm, and with each reading at its mark", "[control]")
{
    RunSpec spec;
    spec.refuseWhenWarm = true;
    spec.stopTemperature_C = 40;
    spec.inletLockout = true;
    spec.inletLockout_C = 41;
    spec.highLimit = true;
    spec.highLimit_C = 48;
    const auto pressed = [&](RunInputs inputs) {
        RunControl control(spec);
        const RunChange change = control.press(7, inputs);
        CHECK(change.at_s == 7);
        CHECK((change.state == RunState::Idle) == isRefusal(change.cause));
        CHECK(control.valveCommandedOpen() == !isRefusal(change.cause));
        CHECK(control.pumpsCommandedOn() == !isRefusal(change.cause));
        return change.cause;
    };
    CHECK(pressed(readings(0, 39.9, 47.9, 40.9)) == RunCause::ButtonPressed);
    CHECK(pressed(readings(0, 40, 20, 20)) == RunCause::RefusedWarm);
    CHECK(pressed(readings(0, 20, 48, 20)) == RunCause::RefusedLimit);
    CHECK(pressed(readings(0, 20, 20, 41)) == RunCause::RefusedInlet);
    RunInputs dark = readings(0, 20, 20, 20);
    dark.powered = false;
    CHECK(pressed(dark) == RunCause::RefusedNoPower);
    RunInputs failed = readings(0, 20, 60, 20);
    failed.limitFails = true;
    CHECK(pressed(failed) == RunCause::ButtonPressed);
    CHECK(pressed(readings(0)) == RunCause::ButtonPressed);  // it cannot refuse on what it does not see
    spec.refuseWhenWarm = spec.inletLockout = spec.highLimit = false;
    CHECK(pressed(readings(0, 90, 90, 90)) == RunCause::ButtonPressed);
}

TEST_CASE("a run ends when power is lost, at the step's end, and the next press counts anew", "[control]")
{
    RunSpec spec;
    spec.noFlow_s = 5;
    RunControl control(spec);
    control.press(0, readings(1e-3));
    RunInputs still = readings(1e-3);
    still.flow_m3s = 0;
    control.advance(2, 2, still, still);
    CHECK(control.timeToNextEvent_s(2) == Approx(3));  // no flow since 0
    RunInputs dark = readings(1.5e-3);
    dark.powered = false;
    const auto change = control.advance(4, 1, readings(1.5e-3), dark);
    REQUIRE(change.has_value());
    CHECK(change->cause == RunCause::PowerLost);
    CHECK(change->at_s == 4);
    CHECK_FALSE(control.pumpsCommandedOn());
    CHECK_FALSE(control.valveCommandedOpen());
    CHECK_FALSE(control.stopAtTotal_m3().has_value());
    CHECK(control.pumpedThisRun_m3(9e-3) == 0);
    CHECK(control.timeToNextEvent_s(4) > 1e8);
    CHECK_FALSE(control.advance(5, 1, readings(9), readings(9)).has_value());  // at rest nothing stops

    control.press(10, readings(2e-3));
    CHECK(control.pumpedThisRun_m3(2.5e-3) == Approx(0.5e-3));
    CHECK(*control.stopAtTotal_m3() == Approx(2e-3 + spec.stopVolume_m3));
    CHECK_FALSE(control.advance(12, 2, still, still).has_value());  // the 5 s without flow begin anew
}

TEST_CASE("no flow counts from the step in which it fell, and flow in between begins it anew", "[control]")
{
    RunSpec spec;
    spec.stopByVolume = false;
    spec.noFlow_s = 5;
    spec.noFlowBelow_m3s = 6e-6;
    RunInputs still = readings(0), just = readings(0);
    still.flow_m3s = 5.9e-6;
    just.flow_m3s = 6e-6;  // as much as it asks for
    RunControl control(spec);
    control.press(0, readings(0));
    CHECK_FALSE(control.advance(3, 3, readings(0), still).has_value());
    CHECK(control.timeToNextEvent_s(3) == Approx(2));
    CHECK_FALSE(control.advance(4, 1, still, just).has_value());
    CHECK(control.timeToNextEvent_s(4) == Approx(spec.longestRun_s - 4));  // only the longest run is ahead
    CHECK_FALSE(control.advance(8.5, 4.5, just, still).has_value());       // since 4 s
    const auto change = control.advance(12, 3.5, still, still);
    REQUIRE(change.has_value());
    CHECK(change->cause == RunCause::NoFlow);
    CHECK(change->at_s == Approx(9));

    RunControl waits(spec);  // while the pumps wait for the valve there is no flow to be missed
    RunInputs shut = still;
    shut.valveOpen = false;
    waits.press(0, shut);
    CHECK_FALSE(waits.advance(10, 10, shut, shut).has_value());
    spec.noFlow_s = 0;
    RunControl unwatched(spec);
    unwatched.press(0, readings(0));
    CHECK_FALSE(unwatched.advance(60, 60, still, still).has_value());
}

TEST_CASE("pumps that do not wait for the valve start with it, or after their delay", "[control]")
{
    RunSpec spec;
    spec.pumpAfterValve = false;
    RunInputs shut = readings(0);
    shut.valveOpen = false;
    RunControl atOnce(spec);
    CHECK(atOnce.press(2, shut).state == RunState::OpeningValve);
    CHECK(atOnce.pumpsCommandedOn());
    CHECK(atOnce.valveCommandedOpen());

    spec.pumpDelay_s = 3;
    RunControl later(spec);
    later.press(2, shut);
    CHECK_FALSE(later.pumpsCommandedOn());
    CHECK(later.timeToNextEvent_s(2) == Approx(3));
    CHECK_FALSE(later.advance(4.9, 1, shut, shut).has_value());
    CHECK_FALSE(later.pumpsCommandedOn());
    CHECK_FALSE(later.advance(5, 0.1, shut, shut).has_value());
    CHECK(later.pumpsCommandedOn());
    CHECK(later.state() == RunState::OpeningValve);
    CHECK(later.timeToNextEvent_s(5) == Approx(spec.longestRun_s - 3));

    RunControl open(spec);  // a valve that stands open already: pumps at once, delay or not
    CHECK(open.press(2, readings(0)).state == RunState::Running);
    CHECK(open.pumpsCommandedOn());

    spec.pumpAfterValve = true;  // the delay is then of no account
    RunControl follows(spec);
    follows.press(2, shut);
    CHECK(follows.timeToNextEvent_s(2) == Approx(spec.longestRun_s));
    follows.advance(20, 1, shut, shut);
    CHECK_FALSE(follows.pumpsCommandedOn());
}

TEST_CASE("the wait counts from the end of the last run and is over on its instant", "[control]")
{
    RunSpec spec;
    spec.coolDownWait_s = 60;
    spec.stopVolume_m3 = 1e-3;
    RunControl control(spec);
    control.press(0, readings(0));
    // Stopped half way through a step that ends at 10 s: the relay lets go at the step's end.
    REQUIRE(control.advance(10, 2, readings(0.5e-3), readings(1.5e-3))->cause == RunCause::VolumeReached);
    CHECK(control.press(69.9, readings(0)).cause == RunCause::RefusedWait);
    CHECK(control.press(70, readings(0)).cause == RunCause::ButtonPressed);
    CHECK(control.press(80, readings(0)).cause == RunCause::ButtonPressedAgain);  // by hand
    CHECK(control.press(139.9, readings(0)).cause == RunCause::RefusedWait);
    CHECK(control.press(140, readings(0)).cause == RunCause::ButtonPressed);
}
