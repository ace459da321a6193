// SPDX-License-Identifier: GPL-3.0-or-later
#include "parts/tubing.h"

#include <algorithm>
#include <numbers>

namespace tapward::parts {
namespace {

// Materials; the ranges found are wide, the middle is used.
struct Stuff {
    double conductivity_W_mK, volumeHeat_J_m3K, roughness_m, limit_C, limit_Pa, elasticity_Pa, expansion_1_K;
};
// PEX: 0.35..0.41 W/(m K) in European PE-X data sheets (memory), 0.461 on a trade page (3.2 Btu in/(h ft² F));
// 940 kg/m³ and 2,300 J/(kg K) from PE-X data sheets (memory). Rating 100 psi at 180 °F: ASTM F876.
constexpr Stuff kPex{0.40, 940.0 * 2300.0, 1.5e-6, 82.2, 100 * us::kPsi, 0.5e9, 1.4e-4};
// Copper: DHP copper 339 W/(m K), 8,940 kg/m³, 385 J/(kg K), copper handbooks (memory); no rating that
// would bind in a coach, the joints do.
constexpr Stuff kCopper{339.0, 8940.0 * 385.0, 1.5e-6, 0, 0, 117e9, 1.65e-5};
// CPVC: 0.14..0.16 W/(m K) (0.16 found in print, 0.137 from data sheets, memory); 1,550 kg/m³ and
// 900..1,050 J/(kg K) (memory). Rating 100 psi at 180 °F: ASTM D2846 (memory).
constexpr Stuff kCpvc{0.15, 1550.0 * 975.0, 1.5e-6, 82.2, 100 * us::kPsi, 2.9e9, 6.3e-5};
// Young's modulus and linear expansion: PEX 0.5 GPa warm and 1.4e-4 1/K, copper 117 GPa and 1.65e-5 1/K, CPVC
// 2.9 GPa and 6.3e-5 1/K (memory).
// Roughness 0.0015 mm, drawn tubing: Moody (1944), Trans. ASME 66, 671-684.

Tube make(std::string_view id, Text title, std::string_view standard, double outside_in, double bore_in,
          const Stuff& stuff)
{
    return {id,
            title,
            standard,
            outside_in * us::kInch,
            bore_in * us::kInch,
            stuff.conductivity_W_mK,
            stuff.volumeHeat_J_m3K,
            stuff.roughness_m,
            stuff.limit_C,
            stuff.limit_Pa,
            stuff.elasticity_Pa,
            stuff.expansion_1_K};
}

std::vector<Tube> makeTubes()
{
    // Outside diameter and average bore in inches. The average bores reproduce the volume table of the 2009
    // International Plumbing Code, Table E202.1, within 0.55 % (tests/parts/tubing_test.cpp).
    // PEX: CTS SDR-9, ASTM F876/F877; 3/8 and 1/2 in have the 0.070 in minimum wall; walls and tolerances as
    // printed in a PEX maker's design manual, form IM-PR 566442 (11/14), p. 137.
    constexpr std::string_view pex = "ASTM F876";
    // Copper: ASTM B88 size charts; type L also in the copper industry handbook, Table 14.2f.
    constexpr std::string_view copper = "ASTM B88";
    // CPVC: CTS SDR-11, ASTM D2846, average inside diameter as quoted in a maker's technical information.
    constexpr std::string_view cpvc = "ASTM D2846";
    return {
        make("pex_3_8", "PEX 3/8 in", pex, 0.500, 0.350, kPex),
        make("pex_1_2", "PEX 1/2 in", pex, 0.625, 0.475, kPex),
        make("pex_5_8", "PEX 5/8 in", pex, 0.750, 0.574, kPex),
        make("pex_3_4", "PEX 3/4 in", pex, 0.875, 0.671, kPex),
        make("pex_1", "PEX 1 in", pex, 1.125, 0.863, kPex),
        make("copper_m_3_8", "Copper M 3/8 in", copper, 0.500, 0.450, kCopper),
        make("copper_m_1_2", "Copper M 1/2 in", copper, 0.625, 0.569, kCopper),
        make("copper_m_3_4", "Copper M 3/4 in", copper, 0.875, 0.811, kCopper),
        make("copper_m_1", "Copper M 1 in", copper, 1.125, 1.055, kCopper),
        make("copper_l_3_8", "Copper L 3/8 in", copper, 0.500, 0.430, kCopper),
        make("copper_l_1_2", "Copper L 1/2 in", copper, 0.625, 0.545, kCopper),
        make("copper_l_3_4", "Copper L 3/4 in", copper, 0.875, 0.785, kCopper),
        make("copper_l_1", "Copper L 1 in", copper, 1.125, 1.025, kCopper),
        make("cpvc_1_2", "CPVC 1/2 in", cpvc, 0.625, 0.489, kCpvc),
        make("cpvc_3_4", "CPVC 3/4 in", cpvc, 0.875, 0.715, kCpvc),
        make("cpvc_1", "CPVC 1 in", cpvc, 1.125, 0.921, kCpvc),
    };
}

}  // namespace

double Tube::volume_m3_m() const { return std::numbers::pi / 4 * bore_m * bore_m; }

const std::vector<Tube>& tubes()
{
    static const std::vector<Tube> all = makeTubes();
    return all;
}

const Tube& tube(std::string_view id)
{
    const auto& all = tubes();
    const auto at = std::find_if(all.begin(), all.end(), [id](const Tube& tube) { return tube.id == id; });
    return at != all.end() ? *at : all[1];
}

Tube tubeOf(const Values& run)
{
    Tube own = tube(run.text("tube"));
    const auto measured = [&run](std::string_view key, double least, double table) {
        const double value = run.number(key);
        return value >= least ? value : table;
    };
    const double bore_m = measured("own_bore_m", 1e-3, own.bore_m);
    const double wall_m = measured("own_wall_m", 1e-4, own.wall_m());
    if (bore_m != own.bore_m || wall_m != own.wall_m()) {
        own.bore_m = bore_m;
        own.outside_m = bore_m + 2 * wall_m;
    }
    own.conductivity_W_mK = measured("own_conductivity_W_mK", 0.01, own.conductivity_W_mK);
    own.volumeHeat_J_m3K = measured("own_wall_heat_J_m3K", 1e4, own.volumeHeat_J_m3K);
    return own;
}

std::vector<Choice> tubeChoices()
{
    std::vector<Choice> choices;
    for (const Tube& tube : tubes()) {
        choices.push_back({tube.id, tube.title});
    }
    return choices;
}

}  // namespace tapward::parts
