// SPDX-License-Identifier: GPL-3.0-or-later
#include "heater/coil.h"

#include "support/catch.h"
#include "water/water.h"

using namespace tapward;
using heater::Coil;

TEST_CASE("a coil in steady flow shows power over flow at its outlet, at once exact for any step", "[heater][coil]")
{
    const double dt_s = GENERATE(0.01, 0.37, 3.0, 60.0);
    const double flow = 4e-5, capacity = 2400;
    Coil coil(capacity);
    coil.fill(15);
    const double turnover_s = capacity / (flow * water::referenceVolumeHeat());
    CHECK_THAT(coil.turnover_s(flow), WithinRel(turnover_s, 1e-12));
    for (double t = 0; t < 2 * turnover_s; t += dt_s)
        coil.pass(dt_s, flow, 15, 5000);
    CHECK_THAT(coil.outlet_C(), WithinAbs(15 + 5000 / (flow * water::referenceVolumeHeat()), 0.15));
    for (double t = 0; t < 3 * turnover_s; t += dt_s)
        coil.pass(dt_s, flow, 15, 5000);
    CHECK_THAT(coil.outlet_C(), WithinAbs(15 + 5000 / (flow * water::referenceVolumeHeat()), 1e-6));
}

TEST_CASE("before the new water has come through, a coil's outlet warms by power over capacity", "[heater][coil]")
{
    Coil coil(2400);
    coil.fill(15);
    const double turnover_s = coil.turnover_s(4e-5);
    for (int k = 0; k < 20; ++k)
        coil.pass(0.04 * turnover_s, 4e-5, 40, 3000);  // to 0.8 of a turnover: the warm front is still inside
    CHECK_THAT(coil.outlet_C(), WithinAbs(15 + 0.8 * turnover_s * 3000 / 2400, 0.6));
    for (int k = 0; k < 15; ++k)
        coil.pass(0.04 * turnover_s, 4e-5, 40, 0);
    CHECK_THAT(coil.outlet_C(), WithinAbs(40 + 0.4 * turnover_s * 3000 / 2400, 4));
}

TEST_CASE("a standing coil follows the reading at its outlet and keeps its profile", "[heater][coil]")
{
    Coil coil(2400);
    coil.fill(15);
    for (int k = 0; k < 100; ++k)
        coil.pass(0.5, 4e-5, 15, 5000);
    const double hot_C = coil.outlet_C();
    coil.rest(hot_C - 4);
    CHECK_THAT(coil.outlet_C(), WithinAbs(hot_C - 4, 1e-12));
    coil.pass(0.5 * coil.turnover_s(4e-5), 4e-5, 15, 0);  // what was half way is at the outlet now
    CHECK_THAT(coil.outlet_C(), WithinAbs(0.5 * (15 + hot_C) - 4, 1e-6));
    coil.pass(0, 4e-5, 90, 5000);
    CHECK_THAT(coil.outlet_C(), WithinAbs(0.5 * (15 + hot_C) - 4, 1e-6));
}
