// SPDX-License-Identifier: GPL-3.0-or-later
// When a heater's control acts next, and what it forgets when it does: plain arithmetic on the specification.
#include "heater/storage.h"
#include "heater/tankless.h"
#include "support/catch.h"

using namespace tapward::heater;

namespace {

StorageSpec element()
{
    StorageSpec spec;  // 54.4 °C, on again 5.5 K below, over-temperature switch at 87.8 °C
    spec.burnerInput_W = 0;
    spec.element_W = 1000;
    return spec;
}

TanklessInputs heated(double outlet_C, double flow_m3s = 4e-5)
{
    TanklessInputs in;
    in.flow_m3s = flow_m3s;
    in.inlet_C = 20;
    in.outlet_C = in.exchanger_C = outlet_C;
    return in;
}

}  // namespace

TEST_CASE("a storage burner lights the ignition time after its thermostat calls, whatever the steps", "[storage]")
{
    const double step = GENERATE(0.05, 0.5, 20.0);
    CAPTURE(step);
    Storage control{StorageSpec{}};
    double now = 0, lighting_s = -1, heating_s = -1;
    while (now < 10) {
        const auto change = control.advance(now, step, 40, true);
        now = change ? change->at_s : now + step;
        if (change && change->state == Storage::State::Lighting)
            lighting_s = now;
        if (change && change->state == Storage::State::Heating)
            heating_s = now;
    }
    CHECK_THAT(lighting_s, WithinAbs(kThermostatScan_s, 1e-9));
    CHECK_THAT(heating_s - lighting_s, WithinAbs(StorageSpec{}.ignition_s, 1e-9));
}

TEST_CASE("a thermostat that has burned for long still takes its scan to see the setpoint", "[storage]")
{
    Storage control{StorageSpec{}};
    control.advance(0, 1, 40, true);
    control.advance(0.1, 10, 40, true);
    REQUIRE(control.state() == Storage::State::Heating);
    CHECK_FALSE(control.advance(5.1, 60, 50, true));
    const auto off = control.advance(65.1, 1, 54.4, true);
    REQUIRE(off);
    CHECK(off->state == Storage::State::Satisfied);
    CHECK_THAT(off->at_s, WithinAbs(65.1 + kThermostatScan_s, 1e-9));
}

TEST_CASE("a tank's next mark is as far off as its temperature of late says", "[storage]")
{
    Storage heating{element()};
    REQUIRE(heating.advance(0, 1, 40, true));
    heating.advance(0.1, 10, 53.2, true);
    heating.look(53.4, true);  // 0.02 K/s, 1 K under the setpoint
    CHECK_THAT(heating.timeToNextEvent_s(), WithinAbs(50, 1e-6));

    Storage warmed{StorageSpec{}};  // by others, while it does not call: the setpoint means nothing to it
    warmed.advance(0, 10, 53.2, true);
    warmed.look(53.4, true);
    CHECK_THAT(warmed.timeToNextEvent_s(), WithinAbs((87.8 - 53.4) / 0.02, 1e-6));

    Storage cooling{StorageSpec{}};
    cooling.advance(0, 10, 50.0, true);
    cooling.advance(10, 10, 49.9, true);
    CHECK_THAT(cooling.timeToNextEvent_s(), WithinAbs(100, 1e-6));  // 0.01 K/s to 48.9 °C
    cooling.look(49.8, true);
    CHECK_THAT(cooling.timeToNextEvent_s(), WithinAbs(90, 1e-6));
}

TEST_CASE("a storage heater's switch opens at its limit and is no mark any more", "[storage]")
{
    Storage control{element()};
    CHECK_FALSE(control.advance(0, 1, 87.7, true));
    const auto open = control.advance(1, 1, 87.8, true);
    REQUIRE(open);
    CHECK(open->state == Storage::State::Lockout);
    control.advance(2, 10, 87, true);
    control.look(87.2, true);
    CHECK(control.timeToNextEvent_s() > 1e6);
    control.reset();
    CHECK(control.state() == Storage::State::Satisfied);
}

TEST_CASE("an over-temperature switch opens at its limit, no sooner", "[heater]")
{
    Tankless control{TanklessSpec{}};  // 93 °C
    CHECK_FALSE(control.advance(0, 1, heated(92.99, 0)));
    const auto open = control.advance(1, 1, heated(93, 0));
    REQUIRE(open);
    CHECK(open->state == TanklessState::Lockout);
    CHECK(open->cause == TanklessCause::EcoOpen);
}

TEST_CASE("what stood before a change is forgotten after it", "[heater]")
{
    Tankless control{TanklessSpec{}};
    const auto proving = control.advance(0, 1, heated(20));
    REQUIRE(proving);
    REQUIRE(proving->state == TanklessState::ProvingFlow);
    CHECK_THAT(control.timeToNextEvent_s(), WithinAbs(TanklessSpec{}.flowProof_s - kControlScan_s, 1e-9));
}

TEST_CASE("a heater that stands asks for the over-temperature switch only", "[heater]")
{
    Tankless control{TanklessSpec{}};
    control.advance(0, 1, heated(80, 0));
    control.look(heated(81, 0));  // 1 K/s: 4 s to the outlet limit, 12 s to the switch
    CHECK_THAT(control.timeToNextEvent_s(), WithinAbs(12, 1e-6));
}

TEST_CASE("no power, no fan", "[heater]")
{
    Tankless control{TanklessSpec{}};
    double now = 0;
    while (control.state() != TanklessState::Burning && now < 10) {
        const auto change = control.advance(now, 1, heated(20));
        now = change ? change->at_s : now + 1;
    }
    REQUIRE(control.state() == TanklessState::Burning);
    TanklessInputs dead = heated(45);
    dead.volts = 9;
    const auto out = control.advance(now, 1, dead);
    REQUIRE(out);
    CHECK(out->cause == TanklessCause::NoPower);
    CHECK_FALSE(control.fanRuns());
}
