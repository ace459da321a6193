// SPDX-License-Identifier: GPL-3.0-or-later
// An exchanger's coil: water goes through it as through a tube, its metal is one with its water.
#include <cmath>
#include <numbers>
#include <vector>

#include "support/catch.h"
#include "thermal/run.h"
#include "water/water.h"

using namespace tapward;
using namespace tapward::thermal;

namespace {

constexpr double kBore_m = 0.0114;
constexpr double kVolume_m3 = 0.38e-3;

Stretch coilOf(double metal_J_K)
{
    Stretch s;
    s.volume_m3 = kVolume_m3;
    s.body_J_K = metal_J_K;
    s.bodyBore_m = kBore_m;
    return s;
}

struct One {
    Field field;
    One(const Stretch& stretch, const Grid& grid, double celsius)
    {
        field.addRun(-1, -1, {stretch});
        field.prepare(grid);
        field.fill(celsius);
        field.setSupply(0, celsius);
    }
    /// What leaves over the steps of dt_s, at this flow.
    std::vector<double> leaving(double seconds, double dt_s, double flow)
    {
        std::vector<double> out;
        for (double t = 0; t < seconds - 1e-9; t += dt_s) {
            field.step(dt_s, std::vector<double>{flow});
            out.push_back(field.outletTemperature(0));
        }
        return out;
    }
};

}  // namespace

TEST_CASE("a bare coil disperses a front as a straight tube of its bore and length does", "[field][coil]")
{
    const double flow = GENERATE(3e-5, 8e-5);
    Stretch tube;
    tube.bore_m = kBore_m;
    tube.length_m = kVolume_m3 / (0.25 * std::numbers::pi * kBore_m * kBore_m);
    tube.loss_W_mK = 1e-6;  // as good as none, as the coil
    // A coil's cells are finer than a tube's.
    One coil(coilOf(0), {.cell_m = 0.1, .wallLayers = 0}, 15), straight(tube, {.cell_m = 0.04, .wallLayers = 0}, 15);
    coil.field.setSupply(0, 50);
    straight.field.setSupply(0, 50);
    const auto a = coil.leaving(30, 0.25, flow), b = straight.leaving(30, 0.25, flow);
    for (std::size_t i = 0; i < a.size(); ++i) {
        CAPTURE(i);
        CHECK_THAT(a[i], WithinAbs(b[i], 0.01));
    }
}

TEST_CASE("the metal of a coil delays a front by its share of the water's heat, however the steps fall",
          "[field][coil]")
{
    // Heat that moves with the water over the heat there is: the front goes at 1 / (1 + metal / water) of its speed.
    const double metal_J_K = GENERATE(0.0, 870.0);
    const double dt_s = GENERATE(0.05, 0.5);
    const double flow = 4e-5;
    One coil(coilOf(metal_J_K), {.cell_m = 0.1}, 10);
    coil.field.setSupply(0, 60);
    const double turnover_s = (kVolume_m3 + metal_J_K / water::referenceVolumeHeat()) / flow;
    double first_s = 0, mean_s = 0, before = 10;
    const auto out = coil.leaving(60, dt_s, flow);
    for (std::size_t i = 0; i < out.size(); ++i) {
        const double at_s = dt_s * (static_cast<double>(i) + 0.5);
        first_s = out[i] < 11 ? at_s : first_s;
        mean_s += (out[i] - before) / 50 * at_s;
        before = out[i];
    }
    CAPTURE(metal_J_K, dt_s, turnover_s);
    CHECK_THAT(out.back(), WithinAbs(60, 1e-3));
    CHECK_THAT(mean_s, WithinAbs(turnover_s, 0.3 + dt_s));
    CHECK(first_s > 0.7 * turnover_s);  // a coil, not a stirred pot
}

TEST_CASE("a heated coil converges with its cells, and is near enough at the default ones",
          "[field][coil][convergence]")
{
    const auto answer = [](double cell_m, double dt_s) {
        One coil(coilOf(870), {.cell_m = cell_m}, 15);
        coil.leaving(5, dt_s, 4e-5);
        coil.field.setSource(0, 0, 6000);
        std::vector<double> at;
        for (int k = 0; k < 30; ++k) {
            coil.leaving(1, dt_s, 4e-5);
            at.push_back(coil.field.outletTemperature(0));
            if (k == 12)
                coil.field.setSupply(0, 35);
        }
        return at;
    };
    const auto fine = answer(0.058, 0.025), usual = answer(0.15, 0.025), coarse = answer(0.5, 0.025);
    const auto off = [&fine](const std::vector<double>& other) {
        double squares = 0;
        for (std::size_t i = 0; i < fine.size(); ++i)
            squares += (other[i] - fine[i]) * (other[i] - fine[i]);
        return std::sqrt(squares / static_cast<double>(fine.size()));
    };
    INFO(off(coarse) << " " << off(usual));
    CHECK(off(usual) < 0.6);
    CHECK(off(coarse) > 2.5 * off(usual));
    CHECK(One(coilOf(870), {.cell_m = 0.15}, 15).field.cellCount() >= 20);
}

TEST_CASE("a coil in steady flow warms its water by power over flow", "[field][coil]")
{
    const double flow = GENERATE(3e-5, -3e-5);
    One coil(coilOf(870), {}, 15);
    coil.field.setSource(0, 0, 5000);
    const auto out = coil.leaving(200, 0.5, flow);
    CHECK_THAT(out.back(), WithinAbs(15 + 5000 / (3e-5 * water::referenceVolumeHeat()), 1e-6));
    const auto ledger = coil.field.ledger();
    CHECK(std::abs(ledger.residual()) < 1e-9 * ledger.out);
}

TEST_CASE("an extra loss cools a standing coil by Newton's law while it lasts, and is in the ledger", "[field][coil]")
{
    Stretch stretch = coilOf(870);
    stretch.loss_W_K = 1;
    stretch.ambient = 20;
    One coil(stretch, {}, 50);
    const double capacity = kVolume_m3 * water::referenceVolumeHeat() + 870;
    coil.field.setExtraLoss(0, 0, 6);
    for (int k = 0; k < 40; ++k)
        coil.field.step(0.5, std::vector<double>{0.0});
    const double after = 20 + 30 * std::exp(-7 * 20 / capacity);
    CHECK_THAT(coil.field.meanTemperature(0), WithinAbs(after, 1e-9));
    CHECK_THAT(coil.field.ledger().lost, WithinRel(capacity * (50 - after), 1e-9));
    coil.field.setExtraLoss(0, 0, 0);
    coil.field.step(100, std::vector<double>{0.0});
    CHECK_THAT(coil.field.meanTemperature(0), WithinAbs(20 + (after - 20) * std::exp(-100 / capacity), 1e-9));
}
