// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <vector>

#include "review/seen.h"

namespace tapward::review {

/// Water in a closed section, and what holds it.
struct Held {
    double volume_m3 = 0;
    double from_C = 20, to_C = 20;  ///< before and after heating
    double bore_m = 0;              ///< of the tube that holds it
    double wall_m = 0;
    double elasticity_Pa = 0;       ///< of the wall; 0 = held by something rigid
    double expansion_1_K = 0;       ///< linear, of the wall
};

/// Free growth of water, a share of its volume, at 0.4 MPa (IAPWS-IF97 densities).
double waterGrowth(double from_C, double to_C);

/// Rise of pressure when closed-in water is heated, Pa; negative when the tube grows more than the water.
///
///   dp = sum V (growth - 3 alpha dT) / (sum V (kappa + D / (e E)) + give)
///
/// kappa is water's isothermal compressibility half way up (IAPWS-IF97), D/(e E) the stretch of a thin wall
/// of bore D with its ends free. A bound: air, hoses, fittings and seals give too, and are not counted.
/// @param give_m3_Pa  what else gives, volume per Pa.
double trappedRise_Pa(const std::vector<Held>& section, double give_m3_Pa = 0);

/// A section that is heated with every tap shut and every valve at rest.
struct ClosedSection {
    const study::PlantPart* heater = nullptr;
    double from_C = 0, to_C = 0;
    double heated_m3 = 0;                     ///< water that gets warm: the heater's, and the loop's hot way
    double rise_Pa = 0;
    std::vector<document::PartId> closedBy;   ///< checks, pumps and valves around it, in id order
};

/// The closed section of each heater that has no accumulator and no open tank within its water's reach.
std::vector<ClosedSection> closedSections(const Seen& seen);

}  // namespace tapward::review
