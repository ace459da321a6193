// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <map>
#include <vector>

#include "document/drawing.h"
#include "document/proposal.h"

// Hot and cold side of a coach, by walking its pipes; private to this room.
namespace tapward::document {

/// A pipe as it was met on a walk away from the heater.
struct Met {
    double length_m = 0;   ///< of tube before it
    double volume_m3 = 0;  ///< of water before it
    std::size_t end = 0;   ///< by which it was entered
    int order = 0;         ///< 0 = at the heater
};
using Walk = std::map<PartId, Met>;

/// The pipes reached from a port, nearest first in tube; taps, heaters, circulators and motorized valves end it, and
/// `stop` too.
Walk walkFrom(const Drawing& drawing, PartId part, std::string_view port, PartId stop = kNoPart);

struct Sides {
    PartId heater = kNoPart;
    Walk hot, cold;
    explicit Sides(const Drawing& drawing);
    WaterSide of(PartId pipe) const;
    /// The pipe ids of a walk, in the order they were met.
    static std::vector<PartId> inOrder(const Walk& walk);
};

/// Real length and water of a pipe.
double tubeLength_m(const Part& pipe);
double tubeVolume_m3(const Part& pipe);

}  // namespace tapward::document
