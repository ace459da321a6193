// SPDX-License-Identifier: GPL-3.0-or-later
#include "heater/storage.h"

#include <algorithm>
#include <vector>

#include "support/catch.h"
#include "thermal/run.h"
#include "water/water.h"

using namespace tapward;
using namespace tapward::heater;

namespace {

struct Tank {
    thermal::Field field;
    Storage control;
    double now = 0;
    std::vector<Storage::Change> told;

    Tank(const StorageSpec& spec, double litres, double celsius) : control(spec)
    {
        thermal::Stretch body;
        body.volume_m3 = litres * 1e-3;
        body.loss_W_K = 3;
        field.addRun(-1, -1, {body});
        field.prepare();
        field.fill(celsius);
        field.setSupply(0, 15);
    }
    double celsius() const { return field.meanTemperature(0); }
    void go(double seconds, double flow = 0, bool powered = true)
    {
        const double end = now + seconds;
        while (now < end - 1e-9) {
            const double dt = std::min({5.0, end - now, std::max(1e-3, control.timeToNextEvent_s())});
            const auto change = control.advance(now, dt, celsius(), powered);
            const double used = change ? change->at_s - now : dt;
            field.setSource(0, 0, control.meanPower_W());
            field.step(used, std::vector<double>{flow});
            now += used;
            if (change)
                told.push_back(*change);
        }
    }
};

}  // namespace

TEST_CASE("a storage heater cycles between its setpoint and its differential", "[storage]")
{
    StorageSpec spec;
    Tank tank(spec, 22.7, 54);
    double low = 100, high = 0;
    int lit = 0;
    for (int k = 0; k < 1000; ++k) {
        tank.go(60);
        low = std::min(low, tank.celsius());
        high = std::max(high, tank.celsius());
    }
    for (const auto& change : tank.told)
        lit += change.state == Storage::State::Heating ? 1 : 0;
    CHECK(lit >= 2);
    CHECK(high <= spec.setpoint_C + 0.3);  // 5 s of fire are 0.14 K in this tank
    CHECK(high >= spec.setpoint_C - 0.3);
    CHECK(low >= spec.setpoint_C - spec.differential_K - 0.3);
    CHECK(low <= spec.setpoint_C - spec.differential_K + 0.3);
}

TEST_CASE("a tank recovers by the heat of its burner", "[storage]")
{
    StorageSpec spec;
    Tank tank(spec, 22.7, 20);
    tank.go(2000);
    REQUIRE(tank.told.size() >= 2);
    CHECK(tank.told[0].state == Storage::State::Lighting);
    CHECK(tank.told[1].state == Storage::State::Heating);
    CHECK_THAT(tank.told[1].at_s - tank.told[0].at_s, WithinAbs(spec.ignition_s, 1e-9));
    REQUIRE(tank.told.size() >= 3);
    CHECK(tank.told[2].state == Storage::State::Satisfied);
    // Energy balance: heat to warm it plus the loss, about 3 W/K over 17 K on the way.
    const double took = tank.told[2].at_s - tank.told[1].at_s;
    const double need = 22.7e-3 * water::referenceVolumeHeat() * (spec.setpoint_C - 20);
    CHECK_THAT(took * (spec.burnerInput_W * spec.efficiency - 3 * (37.2 - 21)), WithinRel(need, 0.01));
    CHECK_THAT(tank.control.gasEnergy_J(), WithinRel(took * spec.burnerInput_W, 1e-9));
}

TEST_CASE("an element heats without the gas board's power", "[storage]")
{
    StorageSpec spec;
    spec.element_W = 1400;
    Tank tank(spec, 22.7, 20);
    tank.go(60, 0, false);
    CHECK(tank.control.state() == Storage::State::Heating);
    CHECK_THAT(tank.control.deliveredPower_W(), WithinAbs(1400, 1e-9));
    CHECK(tank.control.gasEnergy_J() == 0);
    tank.go(60);  // power comes: the burner lights too, the element heating on
    CHECK_THAT(tank.control.deliveredPower_W(), WithinAbs(1400 + 3500 * 0.75, 1e-9));
    tank.go(60, 0, false);  // and goes
    CHECK_THAT(tank.control.deliveredPower_W(), WithinAbs(1400, 1e-9));

    spec.element_W = 0;
    Tank gasOnly(spec, 22.7, 20);
    gasOnly.go(60, 0, false);
    CHECK(gasOnly.told.empty());
    gasOnly.go(60);
    CHECK(gasOnly.control.state() == Storage::State::Heating);
    gasOnly.go(10, 0, false);
    CHECK(gasOnly.control.state() == Storage::State::Satisfied);
    CHECK(gasOnly.control.deliveredPower_W() == 0);
}

TEST_CASE("a tank that passes its over-temperature switch stays off until reset", "[storage]")
{
    StorageSpec spec;
    Tank tank(spec, 22.7, 88.5);
    tank.go(10);
    CHECK(tank.control.state() == Storage::State::Lockout);
    tank.go(20000, 2e-5);
    CHECK(tank.celsius() < 30);
    CHECK(tank.control.state() == Storage::State::Lockout);
    tank.control.reset();
    tank.go(30, 2e-5);
    CHECK(tank.control.state() == Storage::State::Heating);
}
