// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <cmath>
#include <numbers>
#include <vector>

#include <rapidcheck.h>

#include "support/catch.h"
#include "thermal/run.h"
#include "water/water.h"

using namespace tapward;
using namespace tapward::thermal;

namespace {

Stretch tubeOf(double length_m)
{
    Stretch s;
    s.length_m = length_m;
    return s;
}

Stretch bodyOf(double volume_m3, double body_J_K, int cells = 1)
{
    Stretch s;
    s.volume_m3 = volume_m3;
    s.body_J_K = body_J_K;
    s.bodyCells = cells;
    return s;
}

double number(double from, double to) { return from + (to - from) * *rc::gen::inRange(0, 100001) / 100000.0; }

double heatPassed(const Field::Ledger& l)
{
    return std::abs(l.in) + std::abs(l.out) + std::abs(l.sources) + std::abs(l.lost);
}

/// Runs in series, parallel and back to the start, two ends to the outside; any flows that balance.
struct Net {
    Field field;
    int runs = 0;
    std::vector<double> coldest, hottest;

    Net()
    {
        for (int j = 0; j < 4; ++j)
            field.addJunction();
        const auto stretches = [] {
            std::vector<Stretch> all;
            const int count = *rc::gen::inRange(1, 5);
            for (int k = 0; k < count; ++k) {
                Stretch s = *rc::gen::inRange(0, 3) == 0
                                ? bodyOf(number(0, 4e-4), number(0, 900), *rc::gen::inRange(1, 4))
                                : tubeOf(number(0.01, 3));
                s.bodyFilm_W_K = *rc::gen::inRange(0, 2) == 0 ? 0 : number(5, 500);
                s.bodyBore_m = *rc::gen::inRange(0, 2) == 0 ? 0 : number(0.004, 0.02);
                s.loss_W_K = number(0, 3);
                s.ambient = number(5, 30);
                if (*rc::gen::inRange(0, 3) == 0)
                    s.insulation_m = 0.01;
                if (*rc::gen::inRange(0, 4) == 0) {
                    s.wallConductivity = 390;
                    s.wallVolumeHeat = 3.44e6;
                    s.wall_m = 0.0007;
                }
                all.push_back(s);
            }
            return all;
        };
        field.addRun(-1, 0, stretches());  // 0: supply
        field.addRun(0, 1, stretches());
        field.addRun(1, 2, stretches());
        field.addRun(1, 3, stretches());
        field.addRun(3, 2, stretches());
        field.addRun(2, 0, stretches());   // back
        field.addRun(2, -1, stretches());  // 6: outlet
        runs = 7;
        Grid grid;
        grid.cell_m = number(0.1, 0.6);
        grid.wallLayers = *rc::gen::inRange(0, 6);
        grid.dispersion = *rc::gen::inRange(0, 2) == 0;
        field.prepare(grid);
    }

    std::vector<double> flows() const
    {
        const double through = *rc::gen::inRange(0, 3) == 0 ? 0.0 : number(-1e-4, 1e-4);
        const double back = *rc::gen::inRange(0, 3) == 0 ? 0.0 : number(-1e-4, 1e-4);
        const double branch = number(-5e-5, 5e-5);
        const double around = through + back;
        return {through, around, around - branch, branch, branch, back, through};
    }
};

}  // namespace

TEST_CASE("standing water cools by the exact exponential, however long the steps", "[field]")
{
    Stretch s = tubeOf(5);
    s.loss_W_mK = 0.5;
    s.ambient = 20;
    for (const double dt : {0.5, 10.0, 600.0}) {
        Field field;
        field.addRun(-1, -1, {s});
        Grid grid;
        grid.wallLayers = 0;
        field.prepare(grid);
        field.fill(50);
        const double perSecond = 0.5 * 5 / (water::referenceVolumeHeat() * field.volume(0));
        for (double t = dt; t <= 1200; t += dt) {
            field.step(dt, std::vector<double>{0.0});
            if (std::fmod(t, 600) < 1e-9)
                CHECK_THAT(field.meanTemperature(0), WithinAbs(20 + 30 * std::exp(-perSecond * t), 1e-9));
        }
    }
}

TEST_CASE("a standing pipe passes 105 °F when Newton's law says", "[field][published]")
{
    struct Row {
        double heat, wall, minutes;
    };

    // Lumped cooling from 50 °C to 40.56 °C, UA 0.5 W/(m K), 20 °C around: exact, plain arithmetic. Heat per
    // metre of PEX 1/2, PEX 3/4 and copper M 1/2 with its water.
    const auto row = GENERATE(Row{652.87, 180.6, 493.37}, Row{1287.61, 342.5, 973.05}, Row{794.07, 116.6, 600.08});
    // Water and metal of one temperature are a part's body with no film between.
    Stretch s = bodyOf((row.heat - row.wall) / water::referenceVolumeHeat(), row.wall);
    s.loss_W_K = 0.5;
    s.ambient = 20;
    Field field;
    field.addRun(-1, -1, {s});
    field.prepare();
    field.fill(50);
    double time = 0, before = 50;
    while (field.meanTemperature(0) > 40.56) {
        before = field.meanTemperature(0);
        field.step(1, std::vector<double>{0.0});
        time += 1;
    }
    time -= (40.56 - field.meanTemperature(0)) / (before - field.meanTemperature(0));
    // The close coupling of metal and water (0.01 s, 0.03 s at rest) is worth 3e-4; the row's 105 °F is 40.556 °C.
    CHECK_THAT(time, WithinRel(row.minutes, 5e-4));
}

TEST_CASE("a tube that loses as measured cools at that rate, wall and all", "[field]")
{
    Stretch s = tubeOf(4);
    s.loss_W_mK = 0.5;
    s.ambient = 20;
    Field field;
    field.addRun(-1, -1, {s});
    field.prepare();
    field.fill(50);
    const auto start = field.ledger();
    std::vector<double> still{0.0};
    for (int k = 0; k < 60; ++k)
        field.step(5, still);
    const auto first = field.ledger();
    const double middle = field.meanTemperature(0);
    field.step(1, still);
    const double lostInSecond = field.ledger().lost - first.lost;
    // Told as standing water to bay; the wall also gives back its own heat, a few per cent of it.
    CHECK_THAT(lostInSecond / 4 / (middle - 20), WithinRel(0.5, 0.04));
    CHECK(start.lost == 0);
}

TEST_CASE("no temperature leaves the range of what came in, was there, or lies around", "[field][property]")
{
    CHECK(rc::check("no new extremes", [] {
        Net net;
        double low = 15, high = 60;
        for (int r = 0; r < net.runs; ++r)
            net.field.fillRun(r, number(low, high));
        low = std::min(low, 5.0);  // the bays
        const int steps = *rc::gen::inRange(5, 40);
        for (int k = 0; k < steps; ++k) {
            net.field.setSupply(0, number(low, high));
            net.field.setSupply(6, number(low, high));
            net.field.step(number(0.01, *rc::gen::inRange(0, 4) == 0 ? 30 : 1.5), net.flows());
            for (int r = 0; r < net.runs; ++r) {
                for (const double t : net.field.cells(r)) {
                    RC_ASSERT(t >= low - 1e-9);
                    RC_ASSERT(t <= high + 1e-9);
                }
                RC_ASSERT(net.field.outletTemperature(r) >= low - 1e-9);
                RC_ASSERT(net.field.outletTemperature(r) <= high + 1e-9);
                RC_ASSERT(net.field.at(r, number(0, 1)) <= high + 1e-9);
            }
        }
    }));
}

TEST_CASE("heat balances over any network, flow, reversal and step", "[field][property]")
{
    CHECK(rc::check("the ledger closes", [] {
        Net net;
        net.field.fill(number(10, 50));
        const int steps = *rc::gen::inRange(5, 60);
        for (int k = 0; k < steps; ++k) {
            net.field.setSupply(0, number(5, 60));
            net.field.setSupply(6, number(5, 60));
            net.field.setSource(*rc::gen::inRange(0, net.runs), 0, number(0, 8000));
            net.field.step(number(0.01, *rc::gen::inRange(0, 4) == 0 ? 30 : 1.5), net.flows());
        }
        const auto ledger = net.field.ledger();
        RC_ASSERT(std::abs(ledger.residual()) < 1e-9 * (heatPassed(ledger) + std::abs(ledger.stored)));
    }));
}

TEST_CASE("flows that do not balance at a junction still close the ledger", "[field]")
{
    Field field;
    const int j = field.addJunction();
    field.addRun(-1, j, {tubeOf(2)});
    field.addRun(j, -1, {tubeOf(2)});
    field.prepare();
    field.fill(20);
    field.setSupply(0, 50);
    for (int k = 0; k < 400; ++k)
        field.step(0.5, std::vector<double>{3e-5, k % 2 == 0 ? 3.1e-5 : 2.9e-5});
    const auto ledger = field.ledger();
    CHECK(std::abs(ledger.residual()) < 1e-9 * heatPassed(ledger));
}

TEST_CASE("streams mix by their flows", "[field]")
{
    Field field;
    const int j = field.addJunction();
    field.addRun(-1, j, {tubeOf(1)});
    field.addRun(-1, j, {tubeOf(1)});
    field.addRun(j, -1, {tubeOf(1)});
    Grid grid;
    grid.wallLayers = 0;
    field.prepare(grid);
    field.fill(20);
    field.setSupply(0, 60);
    field.setSupply(1, 10);
    for (int k = 0; k < 200; ++k)
        field.step(0.5, std::vector<double>{2e-5, 6e-5, 8e-5});
    // The tubes lose a little on the way: measured against what arrives.
    const double mixed = (2 * field.leavingTemperature(0) + 6 * field.leavingTemperature(1)) / 8;
    CHECK_THAT(field.junctionTemperature(j), WithinAbs(mixed, 1e-12));
    CHECK_THAT(field.junctionTemperature(j), WithinAbs(22.5, 0.2));
    field.step(5, std::vector<double>{0.0, 0.0, 0.0});
    CHECK_THAT(field.junctionTemperature(j), WithinAbs(mixed, 1e-12));  // kept at rest
}

TEST_CASE("water drawn backwards comes out as it went in", "[field]")
{
    Stretch s = tubeOf(6);
    s.loss_W_mK = 1e-9;
    Field field;
    field.addRun(-1, -1, {s});
    Grid grid;
    grid.cell_m = 0.1;
    grid.wallLayers = 0;
    grid.dispersion = false;
    field.prepare(grid);
    field.fill(20);
    field.setSupply(0, 50);
    const double flow = 3e-5;
    const int steps = static_cast<int>(0.6 * field.volume(0) / flow / 0.5);
    for (int k = 0; k < steps; ++k)
        field.step(0.5, std::vector<double>{flow});
    CHECK(field.at(0, 0.5) > 49.5);
    CHECK(field.at(0, 0.7) < 20.5);
    field.setSupply(0, 20);
    double out = 0;
    for (int k = 0; k < steps; ++k) {
        field.step(0.5, std::vector<double>{-flow});
        out += 0.5 * flow * (field.outletTemperature(0) - 20);
    }
    CHECK_THAT(out / (steps * 0.5 * flow * 30), WithinAbs(1.0, 0.02));
    CHECK(field.at(0, 0.9) < 20.5);
}

TEST_CASE("a run shorter than the step's water passes it on at once", "[field]")
{
    Field field;
    const int a = field.addJunction(), b = field.addJunction(), c = field.addJunction();
    // In the order that does not suit: each run comes before the one that feeds it.
    const int third = field.addRun(b, c, {bodyOf(2e-6, 0)});
    const int last = field.addRun(c, -1, {tubeOf(0.05)});
    const int second = field.addRun(a, b, {tubeOf(0.01)});
    const int first = field.addRun(-1, a, {tubeOf(0.02)});
    Grid grid;
    grid.wallLayers = 0;
    field.prepare(grid);
    field.fill(20);
    field.setSupply(first, 60);
    field.step(5, std::vector<double>(4, 1e-4));
    CHECK(field.outletTemperature(second) > 59);
    CHECK(field.outletTemperature(third) > 59);
    CHECK(field.outletTemperature(last) > 58);
}

TEST_CASE("water going round a ring many times in one step mixes and loses no heat", "[field]")
{
    Field field;
    const int a = field.addJunction(), b = field.addJunction();
    Stretch tube = tubeOf(0.3);
    tube.loss_W_mK = 1e-9;
    field.addRun(a, b, {tube});
    field.addRun(b, a, {tube});
    Grid grid;
    grid.wallLayers = 0;
    field.prepare(grid);
    field.fillRun(0, 20);
    field.fillRun(1, 60);
    field.step(20, std::vector<double>{1e-4, 1e-4});  // 2 L round 0.07 L
    CHECK_THAT(0.5 * (field.meanTemperature(0) + field.meanTemperature(1)), WithinAbs(40, 1e-6));
    const auto ledger = field.ledger();
    CHECK(std::abs(ledger.residual()) < 1e-9 * ledger.stored);
}

TEST_CASE("short pieces join their neighbours and no heat capacity is lost", "[field]")
{
    const std::vector<Stretch> pieces{tubeOf(0.04), bodyOf(8e-6, 40),       tubeOf(2.9), bodyOf(5e-6, 25),
                                      tubeOf(0.03), bodyOf(0.4e-3, 770, 2), tubeOf(0.05)};
    Field field;
    field.addRun(-1, -1, pieces);
    field.prepare();
    CHECK(field.cellCount() == 10 + 2 + 1);
    double heat = 0, volume = 0;
    for (const Stretch& s : pieces) {
        const double outer = s.bore_m + 2 * s.wall_m;
        const double water = s.length_m > 0 ? std::numbers::pi / 4 * s.bore_m * s.bore_m * s.length_m : s.volume_m3;
        volume += water;
        heat += water * water::referenceVolumeHeat()
                + (s.length_m > 0
                       ? std::numbers::pi / 4 * (outer * outer - s.bore_m * s.bore_m) * s.length_m * s.wallVolumeHeat
                       : s.body_J_K);
    }
    field.fill(10);
    const double cold = field.ledger().stored;
    field.fill(11);
    CHECK_THAT(field.ledger().stored - cold, WithinRel(heat, 1e-9));
    CHECK_THAT(field.volume(0), WithinRel(volume, 1e-12));

    CHECK(field.stretchStart(0, 0) == 0);
    CHECK(field.stretchStart(0, static_cast<int>(pieces.size())) == 1);
    CHECK_THAT(field.stretchStart(0, 2) * volume,
               WithinRel(std::numbers::pi / 4 * 0.012065 * 0.012065 * 0.04 + 8e-6, 1e-9));
    // Each piece can still be asked for its own temperatures.
    for (int k = 0; k < static_cast<int>(pieces.size()); ++k) {
        CHECK_THAT(field.meanTemperature(0, k), WithinAbs(11, 1e-12));
        CHECK_THAT(field.bodyTemperature(0, k), WithinAbs(11, 1e-12));
    }
    field.setSource(0, 5, 1000);
    field.step(2, std::vector<double>{0.0});
    CHECK(field.bodyTemperature(0, 5) > 11.5);
    CHECK_THAT(field.bodyTemperature(0, 2), WithinAbs(11, 0.1));
}

TEST_CASE("a stretch too small to hold water or heat leaves every temperature a number", "[field]")
{
    for (const double least : {5e-324, 1e-300, 1e-30, 1e-12, 1e-7}) {
        CAPTURE(least);
        const std::vector<std::vector<Stretch>> runs{{tubeOf(least)},
                                                     {bodyOf(least, 0)},
                                                     {bodyOf(least, 5000, 2)},
                                                     {tubeOf(2), bodyOf(least, 5000, 3), tubeOf(least)},
                                                     {bodyOf(2e-3, least)},
                                                     {tubeOf(2), bodyOf(1e-4, least, 3)},
                                                     {bodyOf(least, 20), bodyOf(4e-4, 770, 2), tubeOf(least)}};
        for (const auto& stretches : runs) {
            Field field;
            const int run = field.addRun(-1, -1, stretches);
            field.prepare();
            field.fill(20);
            field.setSupply(run, 50);
            for (const double flow : {1e-4, -1e-4, 0.0, 1e-9}) {
                field.step(0.5, std::vector<double>{flow});
                for (const double celsius : field.cells(run)) {
                    CHECK(celsius > 19);
                    CHECK(celsius < 51);
                }
                for (int k = 0; k < static_cast<int>(stretches.size()); ++k)
                    CHECK(std::isfinite(field.bodyTemperature(run, k)));
            }
            CHECK(std::abs(field.ledger().residual()) <= 1e-9 * std::max(1.0, heatPassed(field.ledger())));
        }
    }
}

TEST_CASE("heat put into a closed body warms metal and water by power over capacity", "[field]")
{
    Stretch s = bodyOf(0.5e-3, 800);
    s.bodyFilm_W_K = 300;
    Field field;
    field.addRun(-1, -1, {s});
    field.prepare();
    field.fill(20);
    field.setSource(0, 0, 2000);
    for (int k = 0; k < 100; ++k)
        field.step(0.3, std::vector<double>{0.0});
    const double water = 0.5e-3 * water::referenceVolumeHeat();
    const double heat = 800 * (field.bodyTemperature(0, 0) - 20) + water * (field.meanTemperature(0) - 20);
    CHECK_THAT(heat, WithinRel(60000.0, 1e-10));
    // Both rise at the same rate once the film carries its share: a constant lag.
    const double film = 300 * 0.3;  // at rest
    CHECK_THAT(field.bodyTemperature(0, 0) - field.meanTemperature(0),
               WithinRel(2000 * water / (water + 800) / film, 0.01));
    CHECK_THAT(field.ledger().sources, WithinRel(60000.0, 1e-12));
}

TEST_CASE("a mixed tank answers a step of its inlet by the exact exponential", "[field]")
{
    Field field;
    field.addRun(-1, -1, {bodyOf(1e-3, 0)});
    field.prepare();
    for (const double dt : {0.5, 5.0, 100.0}) {
        field.fill(20);
        field.setSupply(0, 50);
        double t = 0;
        while (t < 100 - 1e-9) {
            field.step(dt, std::vector<double>{2e-5});
            t += dt;
        }
        CHECK_THAT(field.meanTemperature(0), WithinAbs(50 - 30 * std::exp(-2e-5 * 100 / 1e-3), 1e-9));
    }
}

TEST_CASE("drawing no water and asking for no time changes nothing", "[field]")
{
    Field field;
    field.addRun(-1, -1, {tubeOf(1)});
    field.prepare();
    field.fill(40);
    field.step(0, std::vector<double>{1e-4});
    CHECK(field.meanTemperature(0) == 40);
    field.step(1, std::vector<double>{std::nan("")});
    CHECK(field.meanTemperature(0) < 40);  // stood for a second in a cooler bay
    CHECK(field.meanTemperature(0) > 39.9);
}
