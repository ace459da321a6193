// SPDX-License-Identifier: GPL-3.0-or-later
#include "water/iapws.h"

#include "support/catch.h"

using namespace tapward::water;

// The check values that the releases themselves print for programs. Read in several independent test
// suites that print the same digits; recomputed with the library iapws 1.5.3.

TEST_CASE("IF97 region 1 meets its verification points", "[water][published]")
{
    // IAPWS R7-97(2012), table 5; specific volume m³/kg, enthalpy kJ/kg, heat capacity kJ/(kg K), sound m/s
    struct Row {
        double kelvin, MPa, volume, enthalpy, heatCapacity, sound;
    };
    const auto row = GENERATE(Row{300, 3, 0.100215168e-2, 0.115331273e3, 0.417301218e1, 0.150773921e4},
                              Row{300, 80, 0.971180894e-3, 0.184142828e3, 0.401008987e1, 0.163469054e4},
                              Row{500, 3, 0.120241800e-2, 0.975542239e3, 0.465580682e1, 0.124071337e4});
    CAPTURE(row.kelvin, row.MPa);
    const auto r = iapws::region1(row.kelvin, row.MPa * 1e6);
    CHECK_THAT(r.volume, WithinRel(row.volume, 1e-8));
    CHECK_THAT(r.enthalpy, WithinRel(row.enthalpy * 1e3, 1e-8));
    CHECK_THAT(r.heatCapacity, WithinRel(row.heatCapacity * 1e3, 1e-8));
    CHECK_THAT(r.soundSpeed, WithinRel(row.sound, 1e-8));
}

TEST_CASE("Expansion and compressibility of region 1 meet the computed points", "[water][published]")
{
    // IAPWS-IF97 at 0.3 MPa, computed with iapws 1.5.3; expansion 1e-6/K, compressibility 1e-10/Pa
    struct Row {
        double celsius, expansion, compressibility;
    };
    const auto row =
        GENERATE(Row{4, 1.226, 4.9454}, Row{20, 206.913, 4.5802}, Row{50, 457.381, 4.3997}, Row{80, 641.431, 4.5983});
    CAPTURE(row.celsius);
    const auto r = iapws::region1(273.15 + row.celsius, 0.3e6);
    CHECK_THAT(r.expansion, WithinAbs(row.expansion * 1e-6, 1e-9));
    CHECK_THAT(r.compressibility, WithinRel(row.compressibility * 1e-10, 2e-5));
}

TEST_CASE("Saturation pressure meets its verification points", "[water][published]")
{
    // IAPWS R7-97(2012), table 35 (memory; iapws 1.5.3 prints the 500 K value 2.63889776 MPa)
    CHECK_THAT(iapws::saturationPressure(300), WithinRel(0.353658941e-2 * 1e6, 1e-8));
    CHECK_THAT(iapws::saturationPressure(500), WithinRel(0.263889776e1 * 1e6, 1e-8));
    CHECK_THAT(iapws::saturationPressure(600), WithinRel(0.123443146e2 * 1e6, 1e-8));
}

TEST_CASE("Viscosity meets the verification points of R12-08", "[water][published]")
{
    // IAPWS R12-08, table 4; µPa s, critical enhancement 1
    struct Row {
        double kelvin, density, viscosity;
    };
    const auto row = GENERATE(Row{298.15, 998, 889.735100}, Row{298.15, 1200, 1437.649467},
                              Row{373.15, 1000, 307.883622}, Row{433.15, 1, 14.538324}, Row{433.15, 1000, 217.685358});
    CAPTURE(row.kelvin, row.density);
    CHECK_THAT(iapws::viscosity(row.kelvin, row.density), WithinRel(row.viscosity * 1e-6, 5e-8));
}

TEST_CASE("Conductivity meets the verification points of R15-11", "[water][published]")
{
    // IAPWS R15-11, table 4; mW/(m K), no critical enhancement
    struct Row {
        double kelvin, density, conductivity;
    };
    const auto row = GENERATE(Row{298.15, 0, 18.4341883}, Row{298.15, 998, 607.712868}, Row{298.15, 1200, 799.038144},
                              Row{873.15, 0, 79.1034659});
    CAPTURE(row.kelvin, row.density);
    CHECK_THAT(iapws::conductivity(row.kelvin, row.density), WithinRel(row.conductivity * 1e-3, 5e-8));
}
