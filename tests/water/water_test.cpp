// SPDX-License-Identifier: GPL-3.0-or-later
#include "water/water.h"

#include <cmath>
#include <limits>
#include <thread>
#include <vector>

#include "support/catch.h"
#include "water/iapws.h"

using namespace tapward;

namespace {

struct Row {
    double celsius, density, heatCapacity, viscosity_uPas, conductivity_mW;
};

// Liquid water at 0.3 MPa by IAPWS-IF97, R12-08 and R15-11. Computed with the library iapws 1.5.3, which
// also gives IAPWS-95 within 1.5e-5 (density), 5.2e-4 (heat capacity), 2.2e-5 and 2.7e-5 of these.
const Row kGrid[] = {
    {4, 1000.0737, 4206.49, 1566.979, 565.608}, {5, 1000.0646, 4204.09, 1517.888, 567.933},
    {10, 999.7964, 4194.69, 1305.722, 578.906}, {15, 999.1938, 4188.42, 1137.460, 588.922},
    {20, 998.2970, 4184.18, 1001.536, 598.128}, {25, 997.1375, 4181.32, 889.995, 606.629},
    {30, 995.7404, 4179.48, 797.218, 614.505},  {35, 994.1260, 4178.44, 719.139, 621.814},
    {40, 992.3112, 4178.06, 652.756, 628.600},  {45, 990.3098, 4178.29, 595.807, 634.900},
    {50, 988.1339, 4179.09, 546.562, 640.740},  {55, 985.7934, 4180.44, 503.676, 646.141},
    {60, 983.2972, 4182.32, 466.091, 651.121},  {65, 980.6528, 4184.73, 432.962, 655.697},
    {70, 977.8667, 4187.66, 403.608, 659.881},  {75, 974.9447, 4191.11, 377.477, 663.683},
    {80, 971.8917, 4195.08, 354.111, 667.116},  {85, 968.7120, 4199.57, 333.136, 670.188},
    {90, 965.4094, 4204.58, 314.234, 672.909},  {95, 961.9869, 4210.12, 297.143, 675.287},
};

}  // namespace

TEST_CASE("The table of water follows the published formulations from 4 to 95 C", "[water][published]")
{
    for (const Row& row : kGrid) {
        CAPTURE(row.celsius);
        const auto w = water::at(row.celsius);
        CHECK_THAT(w.density, WithinRel(row.density, 2e-4));
        CHECK_THAT(w.heatCapacity, WithinRel(row.heatCapacity, 2e-4));
        CHECK_THAT(w.viscosity, WithinRel(row.viscosity_uPas * 1e-6, 1e-3));
        CHECK_THAT(w.conductivity, WithinRel(row.conductivity_mW * 1e-3, 1e-3));
    }
}

TEST_CASE("Between its nodes the table stays as near to the formulations as it says", "[water]")
{
    for (double t = 0.5; t <= 99.0; t += 0.0917) {
        CAPTURE(t);
        const auto exact = water::iapws::region1(273.15 + t, 0.3e6);
        const auto w = water::at(t);
        CHECK_THAT(w.density, WithinRel(1 / exact.volume, 2e-4));
        CHECK_THAT(w.heatCapacity, WithinRel(exact.heatCapacity, 2e-4));
        CHECK_THAT(w.viscosity, WithinRel(water::iapws::viscosity(273.15 + t, 1 / exact.volume), 1e-3));
        CHECK_THAT(w.conductivity, WithinRel(water::iapws::conductivity(273.15 + t, 1 / exact.volume), 1e-3));
        CHECK(w.density == water::density(t));
        CHECK(w.heatCapacity == water::heatCapacity(t));
        CHECK(w.viscosity == water::viscosity(t));
        CHECK(w.conductivity == water::conductivity(t));
    }
}

TEST_CASE("Handbook figures of water are met", "[water][published]")
{
    // ISO/TR 3666: 1.0016 mPa s at 20 C and 1 atm (memory; computed with iapws 1.5.3: 1.00160).
    CHECK_THAT(water::viscosity(20), WithinRel(1.0016e-3, 5e-4));
    // IAPWS-95 at 1 atm (computed with iapws 1.5.3); 0.2 MPa more adds 0.009 %.
    CHECK_THAT(water::density(20), WithinRel(998.2072, 2e-4));
    CHECK_THAT(water::density(15.5556), WithinRel(999.0171, 2e-4));
    // Enthalpy differences of the same grid at 0.3 MPa, kJ/kg: 42.3125 at 10 C, 251.3896 at 60 C.
    CHECK_THAT(water::enthalpy(60) - water::enthalpy(10), WithinRel((251.3896 - 42.3125) * 1e3, 1e-4));
}

TEST_CASE("Outside its range water is that of the nearest end", "[water]")
{
    CHECK(water::density(-40) == water::density(0.5));
    CHECK(water::viscosity(150) == water::viscosity(99));
    CHECK(water::at(1e300).heatCapacity == water::heatCapacity(99));
    CHECK(std::isfinite(water::density(std::numeric_limits<double>::quiet_NaN())));
    CHECK(std::isfinite(water::at(-std::numeric_limits<double>::infinity()).viscosity));
}

TEST_CASE("Enthalpy and temperature turn into each other", "[water]")
{
    for (double t = -20; t < 130; t += 0.37) {
        CAPTURE(t);
        CHECK_THAT(water::celsiusFromEnthalpy(water::enthalpy(t)), WithinAbs(t, 1e-9));
    }
    CHECK(water::enthalpy(0) == 0);
    // the derivative of enthalpy is the heat capacity
    for (double t = 3; t < 98; t += 4.3)
        CHECK_THAT((water::enthalpy(t + 1e-3) - water::enthalpy(t - 1e-3)) / 2e-3,
                   WithinRel(water::heatCapacity(t), 1e-6));
}

TEST_CASE("The reference volume heat is within 2 % of the true one from 5 to 80 C", "[water]")
{
    for (double t = 5; t <= 80; t += 2.5) {
        CAPTURE(t);
        CHECK_THAT(water::density(t) * water::heatCapacity(t), WithinRel(water::referenceVolumeHeat(), 0.02));
    }
}

TEST_CASE("Many threads see the same water", "[water]")
{
    std::vector<double> sums(8, 0.0);
    std::vector<std::thread> threads;
    for (double& sum : sums)
        threads.emplace_back([&sum] {
            for (double t = 1; t < 99; t += 0.1)
                sum += water::at(t).viscosity + water::enthalpy(t);
        });
    for (auto& thread : threads)
        thread.join();
    for (double sum : sums)
        CHECK(sum == sums.front());
}
