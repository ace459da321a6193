// SPDX-License-Identifier: GPL-3.0-or-later
// How large the fire is, by arithmetic on the specification: feed-forward behind a lagging sensor, a rating plate that
// contradicts itself, tries after a reset.
#include <cmath>
#include <numbers>

#include "heater/tankless.h"
#include "support/catch.h"
#include "water/water.h"

using namespace tapward;
using namespace tapward::heater;

namespace {

constexpr double kFlow_m3s = 4e-5;

/// So large an exchanger that neither the outlet nor what the control expects of it moves: feed-forward only.
TanklessSpec feedForward()
{
    TanklessSpec spec;
    spec.exchanger_J_K = 1e12;
    spec.controlTime_s = spec.fireTravel_s = 1e-3;
    spec.sensorLag_s = 2;
    spec.minimumInput_W = 500;
    spec.ignitionTries = 2;
    return spec;
}

TanklessInputs flowing(double inlet_C)
{
    TanklessInputs in;
    in.flow_m3s = kFlow_m3s;
    in.inlet_C = inlet_C;
    in.outlet_C = in.exchanger_C = 20;
    return in;
}

/// Steps of a second until the control is in this state.
double until(Tankless& control, TanklessState state, const TanklessInputs& in, double now)
{
    for (int guard = 0; control.state() != state && guard < 100; ++guard) {
        const auto change = control.advance(now, 1, in);
        now = change ? change->at_s : now + 1;
    }
    REQUIRE(control.state() == state);
    return now;
}

}  // namespace

TEST_CASE("the fire follows the inlet through its sensor's lag, and begins without a trim", "[heater]")
{
    const TanklessSpec spec = feedForward();
    const double flowHeat = kFlow_m3s * water::referenceVolumeHeat();  // W/K
    Tankless control{spec};
    double now = until(control, TanklessState::Burning, flowing(20), 0);
    REQUIRE_FALSE(control.advance(now, 2, flowing(20)));
    REQUIRE_FALSE(control.advance(now += 2, 2, flowing(20)));
    CHECK_THAT(control.meanPower_W(), WithinRel(flowHeat * (spec.setpoint_C - 20), 1e-3));
    // The inlet jumps to 30 °C; 2 s of a sensor whose lag is 2 s, taken in the middle: 1 - exp(-1/2) of the way.
    REQUIRE_FALSE(control.advance(now += 2, 2, flowing(30), true));
    const double read_C = 20 + 10 * (1 - 1 / std::sqrt(std::numbers::e));
    CHECK_THAT(control.meanPower_W(), WithinRel(flowHeat * (spec.setpoint_C - read_C), 2e-3));
    CHECK_THAT(control.deliveredPower_W(), WithinRel(flowHeat * (spec.setpoint_C - read_C), 1e-3));
}

TEST_CASE("a rating plate whose largest fire is under its smallest burns the smallest", "[heater]")
{
    TanklessSpec spec = feedForward();
    spec.minimumInput_W = 8000;
    spec.maximumInput_W = 5000;
    spec.efficiency = 0.8;
    Tankless control{spec};
    const double now = until(control, TanklessState::Burning, flowing(20), 0);
    control.advance(now, 5, flowing(20));
    CHECK_THAT(control.deliveredPower_W(), WithinRel(0.8 * 8000, 1e-9));
}

TEST_CASE("no heater turns less than half of its gas into heat", "[heater]")
{
    TanklessSpec spec = feedForward();
    spec.efficiency = 0.2;
    Tankless control{spec};
    const double now = until(control, TanklessState::Burning, flowing(20), 0);
    control.advance(now, 5, flowing(20));
    CHECK_THAT(control.gasInput_W(), WithinRel(control.deliveredPower_W() / 0.5, 1e-9));
}

TEST_CASE("a lockout that was cleared gives the burner all its tries again", "[heater]")
{
    TanklessInputs noGas = flowing(20);
    noGas.gasFails = true;
    Tankless control{feedForward()};
    double now = until(control, TanklessState::Lockout, noGas, 0);
    CHECK(control.ignitionFailures() == 2);
    control.reset();
    CHECK(control.state() == TanklessState::Idle);
    CHECK(control.ignitionFailures() == 0);
    until(control, TanklessState::RetryPurge, noGas, now);
    CHECK(control.ignitionFailures() == 1);
}
