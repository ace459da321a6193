// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <vector>

#include "review/steady.h"

namespace tapward::review {

/// What one tap, fully open and alone, draws through a tankless heater on one supply (the pump at its
/// cut-in, its lowest). Taps are taken all hot, showers at their usual share; taps behind a mixing valve are
/// left out: their share hangs on temperatures.
struct TapFlow {
    const study::PlantPart* outlet;
    const study::PlantPart* heater;
    Supply supply;
    double throughHeater_m3s;
    double activation_m3s;
};
/// Per tap the supply that gives least, in id order.
std::vector<TapFlow> tapFlows(const study::Plant& plant);

/// A tap that draws less than the demand pump gives at its cut-out, so that the pump cycles, with the heater
/// lighting at one end of the swing and going out at the other.
struct CyclingTap {
    const study::PlantPart* outlet;
    const study::PlantPart* heater;
    double least_m3s, most_m3s;  ///< through the heater, at cut-in and at cut-out
    double activation_m3s;
};
std::vector<CyclingTap> cyclingTaps(const study::Plant& plant);

}  // namespace tapward::review
