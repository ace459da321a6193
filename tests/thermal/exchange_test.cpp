// SPDX-License-Identifier: GPL-3.0-or-later
#include "thermal/exchange.h"

#include <cmath>
#include <cstring>
#include <vector>

#include "support/catch.h"
#include "thermal/exchange_variants.h"

using namespace tapward::thermal;

namespace {

Ladder pexCell()
{
    Ladder ladder;
    ladder.nodes = 5;
    ladder.capacity = {141, 5, 9, 14, 22};
    ladder.link = {25, 30, 20, 12};
    ladder.loss = 0.15;
    return ladder;
}

/// Classical Runge-Kutta with very small steps, as a judge that knows nothing of exponentials.
std::vector<double> rungeKutta(const Ladder& l, std::vector<double> y, double water_W, double body_W, double time,
                               int steps, double& lost)
{
    const int n = l.nodes;
    const auto rate = [&](const std::vector<double>& x) {
        std::vector<double> d(n + 1, 0.0);
        d[0] += water_W / l.capacity[0];
        d[n > 1 ? 1 : 0] += body_W / l.capacity[n > 1 ? 1 : 0];
        for (int i = 0; i + 1 < n; ++i) {
            const double q = l.link[i] * (x[i] - x[i + 1]);
            d[i] -= q / l.capacity[i];
            d[i + 1] += q / l.capacity[i + 1];
        }
        d[n - 1] -= l.loss * x[n - 1] / l.capacity[n - 1];
        d[n] = l.loss * x[n - 1];
        return d;
    };
    y.resize(n + 1, 0.0);
    const double h = time / steps;
    for (int s = 0; s < steps; ++s) {
        const auto add = [&](const std::vector<double>& k, double f) {
            std::vector<double> z = y;
            for (int i = 0; i <= n; ++i)
                z[i] += f * k[i];
            return z;
        };
        const auto k1 = rate(y), k2 = rate(add(k1, h / 2)), k3 = rate(add(k2, h / 2)), k4 = rate(add(k3, h));
        for (int i = 0; i <= n; ++i)
            y[i] += h / 6 * (k1[i] + 2 * k2[i] + 2 * k3[i] + k4[i]);
    }
    lost = y[n];
    return y;
}

}  // namespace

TEST_CASE("one node cools by Newton's law", "[exchange]")
{
    Ladder ladder;
    ladder.capacity = {1000};
    ladder.loss = 2;
    Propagator half, p;
    for (const double time : {0.01, 1.0, 500.0, 2e4}) {
        solveLadder(ladder, time, true, half, p);
        CHECK_THAT(p.e[0], WithinRel(std::exp(-time * 2e-3), 1e-12));
        CHECK_THAT(p.lossRow[0], WithinRel(-1000 * std::expm1(-time * 2e-3), 1e-12));
        CHECK_THAT(p.waterSource[0], WithinRel(-0.5 * std::expm1(-time * 2e-3), 1e-12));
        CHECK_THAT(p.waterSourceLoss, WithinRel(time + 500 * std::expm1(-time * 2e-3), 1e-9));
    }
}

TEST_CASE("a ladder's propagator agrees with small Runge-Kutta steps", "[exchange]")
{
    const Ladder ladder = pexCell();
    const double time = GENERATE(0.05, 0.5, 7.0);
    CAPTURE(time);
    Propagator half, p;
    solveLadder(ladder, time, true, half, p);
    const std::vector<double> start{30, 20, -5, 3, 1};
    double lost = 0;
    const auto judge = rungeKutta(ladder, start, 50, 200, time, 20000, lost);

    double nodes[kMostNodes][1];
    double* at[kMostNodes];
    for (int i = 0; i < 5; ++i) {
        nodes[i][0] = start[i] + 21;  // surroundings at 21 °C
        at[i] = nodes[i];
    }
    double sums[kMostNodes];
    const double ours = exchange(p, 5, at, 1, 21, 50, 200, sums);
    for (int i = 0; i < 5; ++i)
        CHECK_THAT(nodes[i][0] - 21, WithinAbs(judge[i], 1e-9));
    CHECK_THAT(ours, WithinAbs(lost, 1e-8));
}

TEST_CASE("two half steps are one whole step", "[exchange]")
{
    Propagator quarter, alone, half, whole;
    solveLadder(pexCell(), 0.3, true, quarter, alone);
    solveLadder(pexCell(), 0.6, true, half, whole);
    for (int i = 0; i < 5; ++i) {
        CHECK_THAT(half.lossRow[i], WithinRel(alone.lossRow[i], 1e-12));
        CHECK_THAT(half.bodySource[i], WithinRel(alone.bodySource[i], 1e-12));
        for (int j = 0; j < 5; ++j)
            CHECK_THAT(half.e[i * 5 + j], WithinAbs(alone.e[i * 5 + j], 1e-14));
    }
    for (int i = 0; i < 5; ++i)
        for (int j = 0; j < 5; ++j) {
            double sum = 0;
            for (int k = 0; k < 5; ++k)
                sum += half.e[i * 5 + k] * half.e[k * 5 + j];
            CHECK_THAT(whole.e[i * 5 + j], WithinAbs(sum, 1e-14));
        }
}

// Rounding grows with the doublings, so with stiffness times time: 1e-8 stands for steps of an hour.
TEST_CASE("heat that leaves a ladder is heat it lost, however stiff it is", "[exchange]")
{
    Ladder ladder = pexCell();
    const double stiffness = GENERATE(1.0, 10.0, 100.0);
    const double time = GENERATE(0.01, 0.5, 3600.0);
    CAPTURE(stiffness, time);
    ladder.link[1] *= stiffness;
    Propagator half, p;
    solveLadder(ladder, time, true, half, p);
    for (int j = 0; j < 5; ++j) {
        double kept = 0;
        for (int i = 0; i < 5; ++i) {
            CHECK(p.e[i * 5 + j] >= 0);  // so that no temperature passes its neighbours
            kept += ladder.capacity[i] * p.e[i * 5 + j];
        }
        CHECK_THAT((kept + p.lossRow[j]) / ladder.capacity[j], WithinAbs(1.0, 1e-8));
    }
    double fromSource = 0;
    for (int i = 0; i < 5; ++i)
        fromSource += ladder.capacity[i] * p.bodySource[i];
    CHECK_THAT((fromSource + p.bodySourceLoss) / time, WithinAbs(1.0, 1e-8));
}

TEST_CASE("many cells side by side change like one", "[exchange]")
{
    Propagator half, p;
    solveLadder(pexCell(), 0.5, false, half, p);
    constexpr int kCells = 7;
    double together[5][kCells], alone[5][kCells];
    for (int i = 0; i < 5; ++i)
        for (int c = 0; c < kCells; ++c)
            together[i][c] = alone[i][c] = 20 + 3 * i - c;
    double sums[kMostNodes];
    double* at[5];
    for (int i = 0; i < 5; ++i)
        at[i] = together[i];
    const double lost = exchange(p, 5, at, kCells, 18, 0, 0, sums);
    CHECK_THAT(sums[2], WithinAbs(7 * 26.0 - 21, 1e-12));
    double lostAlone = 0;
    for (int c = 0; c < kCells; ++c) {
        for (int i = 0; i < 5; ++i)
            at[i] = alone[i] + c;
        lostAlone += exchange(p, 5, at, 1, 18, 0, 0, sums);
    }
    CHECK_THAT(lost, WithinAbs(lostAlone, 1e-12));
    for (int i = 0; i < 5; ++i)
        for (int c = 0; c < kCells; ++c)
            CHECK_THAT(together[i][c], WithinAbs(alone[i][c], 1e-12));
}

TEST_CASE("the exchange compiled for wide vectors gives the same bytes as the plain one", "[exchange]")
{
    if (!hasWideExchange()) {
        WARN("This machine has no wide vectors: nothing to compare.");
        return;
    }
    const double time = GENERATE(0.05, 0.5, 7.0);
    Propagator half, plain, wide;
    kPlainExchange.solveLadder(pexCell(), time, true, half, plain);
    kWideExchange.solveLadder(pexCell(), time, true, half, wide);
    CHECK(plain.e == wide.e);
    CHECK(plain.lossRow == wide.lossRow);
    CHECK(plain.bodySource == wide.bodySource);
    constexpr int kCells = 11;
    double a[5][kCells], b[5][kCells];
    double *atA[5], *atB[5];
    for (int i = 0; i < 5; ++i) {
        atA[i] = a[i];
        atB[i] = b[i];
        for (int c = 0; c < kCells; ++c)
            a[i][c] = b[i][c] = 20 + 3.7 * i - 1.3 * c;
    }
    double sumsA[kMostNodes] = {}, sumsB[kMostNodes] = {};
    CHECK(kPlainExchange.exchange(plain, 5, atA, kCells, 18, 50, 200, sumsA)
          == kWideExchange.exchange(wide, 5, atB, kCells, 18, 50, 200, sumsB));
    CHECK(std::memcmp(a, b, sizeof(a)) == 0);
    CHECK(std::memcmp(sumsA, sumsB, sizeof(sumsA)) == 0);
}
