// SPDX-License-Identifier: GPL-3.0-or-later
// Water in layers: between the mixed tank and plug flow, warm on top, no heat lost between them.
#include <array>
#include <cmath>
#include <rapidcheck.h>

#include "support/catch.h"
#include "thermal/run.h"
#include "water/water.h"

using namespace tapward;
using namespace tapward::thermal;

namespace {

constexpr double kTank_m3 = 20e-3, kFlow_m3s = 1e-4;

struct Tank {
    Field field;
    int run;

    explicit Tank(int layers, double link_W_K = 1e-9, bool topFirst = false, double loss_W_K = 0)
    {
        Stretch body;
        body.volume_m3 = kTank_m3;
        body.bodyCells = layers;
        body.layerLink_W_K = link_W_K;
        body.topFirst = topFirst;
        body.loss_W_K = loss_W_K;
        run = field.addRun(-1, -1, {body});
        field.prepare();
        field.fill(60);
        field.setSupply(run, 10);
    }
    /// Draws this many tanks full of water. @return what leaves at the end
    double draw(double turnovers, double step_s = 0.25)
    {
        const int steps = static_cast<int>(std::lround(turnovers * kTank_m3 / (kFlow_m3s * step_s)));
        for (int i = 0; i < steps; ++i)
            field.step(step_s, std::array{kFlow_m3s});
        return field.outletTemperature(run);
    }
    double layer(double height) const { return field.layerTemperature(run, 0, height); }
};

/// Tanks in series, what is left of the first water after so many turnovers: Levenspiel, Chemical Reaction Engineering,
/// 3rd ed., ch. 14 (from memory); one tank is exp(-turnovers).
double tanksInSeries(int tanks, double turnovers)
{
    const double x = tanks * turnovers;
    double term = 1, sum = 0;
    for (int k = 0; k < tanks; ++k) {
        sum += term;
        term *= x / (k + 1);
    }
    return sum * std::exp(-x);
}

}  // namespace

TEST_CASE("a tank of one layer is the mixed tank, of many nearly plug flow, between them tanks in series", "[thermal]")
{
    for (const int layers : {1, 6, 20})
        for (const double turnovers : {0.3, 0.5, 0.7, 1.0, 1.3}) {
            CAPTURE(layers, turnovers);
            Tank tank(layers);
            CHECK_THAT(tank.draw(turnovers), WithinAbs(10 + 50 * tanksInSeries(layers, turnovers), 0.15));
        }
    // An upright tank gives some 70 % of its water near the setpoint (common practice, no published source).
    Tank upright(20);
    CHECK(upright.draw(0.7) > 55);
    Tank mixed(1);
    CHECK(mixed.draw(0.7) < 36);
    Tank plug(400);
    CHECK_THAT(plug.draw(0.85), WithinAbs(60, 0.5));
    CHECK_THAT(plug.draw(0.3), WithinAbs(10, 0.5));
}

TEST_CASE("heat goes in at the bottom and rises: above it all is as warm, below nothing is", "[thermal]")
{
    const bool topFirst = GENERATE(false, true);
    Tank tank(5, 1e-9, topFirst);
    tank.field.fill(20);
    tank.field.setSource(tank.run, 0, 2000);
    for (int i = 0; i < 120; ++i)
        tank.field.step(1, std::array{0.0});
    // 240 kJ into 20 L of one temperature: by the water's heat alone.
    const double all_C = 20 + 2000.0 * 120 / (kTank_m3 * water::referenceVolumeHeat());
    for (const double height : {0.0, 0.5, 1.0})
        CHECK_THAT(tank.layer(height), WithinAbs(all_C, 1e-6));
}

TEST_CASE("cold water that comes in below leaves the water above it warm, and comes in on top it sinks", "[thermal]")
{
    Tank upright(4), turned(4, 1e-9, true);  // of the second the inlet is the top
    upright.draw(0.25);
    CHECK(upright.layer(0) < 30);
    CHECK(upright.layer(1) > 59);
    turned.draw(0.25);
    // Mixed throughout by what sinks through it: the mixed tank.
    CHECK_THAT(turned.layer(1), WithinAbs(10 + 50 * std::exp(-0.25), 0.5));
    CHECK_THAT(turned.layer(1) - turned.layer(0), WithinAbs(0, 0.5));
}

TEST_CASE("two layers even out as conduction says", "[thermal]")
{
    // Two equal masses joined by a conductance: the difference falls as exp(-2 G t / C).
    Tank tank(2, 5);
    tank.draw(0.4);
    const double before = tank.layer(1) - tank.layer(0);
    REQUIRE(before > 10);
    for (int i = 0; i < 600; ++i)
        tank.field.step(5, std::array{0.0});
    const double perLayer_J_K = 0.5 * kTank_m3 * water::referenceVolumeHeat();
    CHECK_THAT(tank.layer(1) - tank.layer(0), WithinRel(before * std::exp(-2 * 5 * 3000 / perLayer_J_K), 0.002));
}

TEST_CASE("a tank's heat is all accounted for and no layer is warmer than the one above", "[thermal][property]")
{
    CHECK(rc::check("any tank", [] {
        const int layers = *rc::gen::inRange(1, 25);
        Tank tank(layers, *rc::gen::inRange(1, 40) / 4.0, *rc::gen::arbitrary<bool>(), 2);
        const auto acts = *rc::gen::container<std::vector<int>>(rc::gen::inRange(0, 100));
        for (const int act : acts) {
            tank.field.setSource(tank.run, 0, act % 3 == 0 ? 1500 : 0);
            tank.field.setSupply(tank.run, act % 50);
            for (int i = 0; i < 10; ++i)
                tank.field.step(0.1 + act / 20.0, std::array{act % 2 == 0 ? 0.0 : (act - 50) * 4e-6});
            for (int k = 1; k < layers; ++k)
                RC_ASSERT(tank.layer((k + 0.5) / layers) >= tank.layer((k - 0.5) / layers) - 1e-9);
        }
        const Field::Ledger ledger = tank.field.ledger();
        RC_ASSERT(std::abs(ledger.residual()) <= 1e-9 * std::max(1.0, std::abs(ledger.stored)));
    }));
}
