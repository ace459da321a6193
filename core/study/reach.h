// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <functional>
#include <set>

#include "study/plant.h"

namespace tapward::study {

/// Where water can go from one path of a part without passing a part that `stops`. Direction of flow and
/// shut valves do not matter here: this is about how the pipes are joined.
struct Reach {
    std::set<document::PartId> parts;  ///< passed or stopped at, the start left out
    std::set<int> junctions;           ///< of the plant
    bool has(document::PartId id) const { return parts.contains(id); }
};
Reach reach(const Plant& plant, const PlantPart& from, std::size_t path,
            const std::function<bool(const PlantPart&)>& stops);

}  // namespace tapward::study
