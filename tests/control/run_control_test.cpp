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
