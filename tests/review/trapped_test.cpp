// SPDX-License-Identifier: GPL-3.0-or-later
#include "review/trapped.h"

#include "base/units.h"
#include "parts/tubing.h"
#include "support/catch.h"

using namespace tapward;
using review::Held;
using review::trappedRise_Pa;
using review::waterGrowth;

TEST_CASE("water in a rigid closed volume raises its pressure as the steam tables say", "[review][published]")
{
    struct Row {
        double celsius, rise_Pa_K;
    };
    // Thermal pressure coefficient of water at constant volume, 0.4 MPa: IAPWS-95, computed with another
    // program (the rule uses the industrial formulation IAPWS-IF97).
    const auto row = GENERATE(Row{10, 1.8559e5}, Row{20, 4.5195e5}, Row{30, 6.787e5}, Row{40, 8.7226e5},
                              Row{50, 1.0371e6}, Row{60, 1.1765e6});
    CAPTURE(row.celsius);
    const Held water{1.0, row.celsius - 0.5, row.celsius + 0.5, 0, 0, 0, 0};
    CHECK_THAT(trappedRise_Pa({water}), WithinRel(row.rise_Pa_K, 0.005));
}

TEST_CASE("ten degrees Fahrenheit in closed rigid pipe rise by the steam tables' figure, real pipe by less",
          "[review][published]")
{
    // 75 to 85 °F from 0.4 MPa at constant density: 3.404 MPa, IAPWS-95, computed with another program; the
    // compressibility falls a little on the way up, which a straight line leaves out. A plumbing page on thermal
    // expansion observed 50 to 250 psi in real piping.
    const Held rigid{1.0, us::celsius(75), us::celsius(85), 0, 0, 0, 0};
    CHECK_THAT(trappedRise_Pa({rigid}), WithinRel(3.404e6, 0.03));
    const parts::Tube& copper = parts::tube("copper_l_1_2");
    const Held tube{1.0,
                    us::celsius(75),
                    us::celsius(85),
                    copper.bore_m,
                    copper.wall_m(),
                    copper.elasticity_Pa,
                    copper.expansion_1_K};
    CHECK(trappedRise_Pa({tube}) < trappedRise_Pa({rigid}));
}

TEST_CASE("free growth of a tankful is the one in the trade's pages and the steam tables", "[review][published]")
{
    // Two trade pages, recomputed with IAPWS-95 at 0.4 MPa: 30 gal from 60 to 140 °F grow 0.4829 gal, 40 gal from
    // 90 to 140 °F grow 0.4785 gal ("almost half a gallon" in print).
    CHECK_THAT(30 * waterGrowth(us::celsius(60), us::celsius(140)), WithinRel(0.4829, 0.005));
    CHECK_THAT(40 * waterGrowth(us::celsius(90), us::celsius(140)), WithinRel(0.4785, 0.005));
}

TEST_CASE("a tube's stretch is the one in the speed of a pressure wave", "[review][published]")
{
    // Korteweg (1878): a² = (K/rho) / (1 + K D/(E e)). PEX 1/2 in, E 0.8 GPa, 20 °C: 345.90 m/s with K 2.1946 GPa
    // and 998.298 kg/m³, plain arithmetic; so D/(E e) = 1/(rho a²) - 1/K.
    const double stretch = 1 / (998.298 * 345.90 * 345.90) - 1 / 2.1946e9;
    const parts::Tube& pex = parts::tube("pex_1_2");
    const Held tube{1.0, 19.5, 20.5, pex.bore_m, pex.wall_m(), 0.8e9, 0};
    // Expansion 2.0725e-4 1/K and compressibility 4.5856e-10 1/Pa at 20 °C, 0.4 MPa: IAPWS-95.
    CHECK_THAT(trappedRise_Pa({tube}), WithinRel(2.0725e-4 / (4.5856e-10 + stretch), 0.01));
}

TEST_CASE("plastic tube takes its own water's growth up, some give takes more", "[review]")
{
    // Thin-wall estimate for PEX 1/2 in at 45 °C with E 0.5 GPa and alpha 1.4e-4: 203 Pa/K, sign and order of
    // magnitude only (wall figures from memory).
    const parts::Tube& pex = parts::tube("pex_1_2");
    const Held tube{1.0, 44.5, 45.5, pex.bore_m, pex.wall_m(), pex.elasticity_Pa, pex.expansion_1_K};
    const double rise_Pa = trappedRise_Pa({tube});
    CHECK(rise_Pa > 20);
    CHECK(rise_Pa < 2000);
    const Held tank{0.02, 15, 54, 0, 0, 0, 0};
    CHECK(trappedRise_Pa({tank, tube}) < trappedRise_Pa({tank}));
    CHECK(trappedRise_Pa({tank}, 1e-9) < trappedRise_Pa({tank}));
}
