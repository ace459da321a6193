// SPDX-License-Identifier: GPL-3.0-or-later
#include "parts/tubing.h"

#include "base/units.h"
#include "support/catch.h"

using namespace tapward;

TEST_CASE("tube volumes agree with the model-code table", "[parts][published]")
{
    struct Row {
        const char* id;
        double ounces_per_foot;
    };
    // 2009 International Plumbing Code, Table E202.1, fluid ounces per foot, as printed in Table 1 of a US
    // Department of Energy building-science problem set. (The label of its first row is missing in the stored
    // text; 0.64 is known for 3/8 in by its value.) The table has no PEX 5/8 in.
    const Row row = GENERATE(Row{"pex_3_8", 0.64}, Row{"pex_1_2", 1.18}, Row{"pex_3_4", 2.35}, Row{"pex_1", 3.91},
                             Row{"copper_m_3_8", 1.06}, Row{"copper_m_1_2", 1.69}, Row{"copper_m_3_4", 3.43},
                             Row{"copper_m_1", 5.81}, Row{"copper_l_3_8", 0.97}, Row{"copper_l_1_2", 1.55},
                             Row{"copper_l_3_4", 3.22}, Row{"copper_l_1", 5.49}, Row{"cpvc_1_2", 1.25},
                             Row{"cpvc_3_4", 2.67}, Row{"cpvc_1", 4.43});
    CAPTURE(row.id);
    const parts::Tube& tube = parts::tube(row.id);
    REQUIRE(tube.id == row.id);
    const double ounces = tube.volume_m3_m() * us::kFoot / (us::kGallon / 128);
    // The dimensions come from other tables than the volumes, which are printed to two decimals: 0.55 % holds
    // for all fifteen, half a unit of the last decimal (0.8 % of 0.64) included.
    CHECK_THAT(ounces, WithinRel(row.ounces_per_foot, 0.0055));
}

TEST_CASE("PEX 5/8 in holds what its makers print", "[parts][published]")
{
    // 1.34 gal per 100 ft, from makers' volume tables.
    CHECK_THAT(parts::tube("pex_5_8").volume_m3_m() * 100 * us::kFoot / us::kGallon, WithinAbs(1.34, 0.005));
}

TEST_CASE("every tube has a wall and a bore", "[parts]")
{
    for (const parts::Tube& tube : parts::tubes()) {
        CAPTURE(tube.id);
        CHECK(tube.wall_m() > 0.5e-3);
        CHECK(tube.bore_m > 0.008);
        CHECK(&parts::tube(tube.id) == &tube);
    }
}

TEST_CASE("half-inch PEX stores about a third as much heat in its wall as in its water", "[parts]")
{
    // The design's own statement of the trade; common practice, no published source. Wall heat from the
    // material figures in tubing.cpp, water at 4.14 MJ/(m³ K).
    const parts::Tube& tube = parts::tube("pex_1_2");
    const double wallArea = 3.14159265 / 4 * (tube.outside_m * tube.outside_m - tube.bore_m * tube.bore_m);
    const double ratio = wallArea * tube.volumeHeat_J_m3K / (tube.volume_m3_m() * 4.14e6);
    CHECK_THAT(ratio, WithinAbs(0.36, 0.05));
}
