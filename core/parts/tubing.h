// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string_view>
#include <vector>

#include "parts/part_kind.h"

namespace tapward::parts {

/// One tube size of the standards used in coaches.
struct Tube {
    std::string_view id;          ///< in files: "pex_1_2"
    Text title;                   ///< "PEX 1/2 in"
    std::string_view standard;    ///< "ASTM F876"
    double outside_m;             ///< outside diameter
    double bore_m;                ///< average inside diameter: minimum wall plus half the wall tolerance
    double conductivity_W_mK;     ///< of the wall
    double volumeHeat_J_m3K;      ///< rho c of the wall
    double roughness_m;
    double limit_C;               ///< marked rating, 0 = none stated here
    double limit_Pa;              ///< marked rating at limit_C, 0 = none stated here
    double elasticity_Pa;         ///< Young's modulus of the wall, warm
    double expansion_1_K;         ///< linear expansion of the wall

    double wall_m() const { return (outside_m - bore_m) / 2; }
    double volume_m3_m() const;   ///< water in one metre
};

/// All sizes, smallest first within a material.
const std::vector<Tube>& tubes();
/// The size with this id, or PEX 1/2 in for an id that is not in the table (fields are checked at the door).
const Tube& tube(std::string_view id);
/// The tube of a pipe run: the size it names, with the bore, wall, conductivity and heat of the wall that were measured on
/// it in place of the table's. 0 in such a field means not measured, and so does
/// what no tube has: a bore below 1 mm, a wall below 0.1 mm, 0.01 W/(m K), 1e4 J/(m³ K).
Tube tubeOf(const Values& run);
/// The table as choices of a field.
std::vector<Choice> tubeChoices();

}  // namespace tapward::parts
