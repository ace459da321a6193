// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <functional>
#include <optional>
#include <set>
#include <string>
#include <string_view>
#include <vector>

#include "document/drawing.h"
#include "review/finding.h"
#include "review/pipes.h"
#include "study/plant.h"
#include "study/prediction.h"

namespace tapward::review {

/// What every rule looks at. `after` is the coach with the job done, as the prediction sees it.
struct Seen {
    const document::Drawing& drawing;
    const study::Prediction& prediction;
    const study::Plant& after;
    const Pipes& pipes;          ///< of `after`
};

inline constexpr const char* kPractice = "common practice, no published source";

/// The part a field refers to by its id, nullptr when it names none that is present.
const study::PlantPart* partCalled(const Seen& seen, const std::string& reference);

/// "P1", or "?" for a part that is not in the drawing.
std::string tagOf(const Seen& seen, document::PartId id);

/// The highest value a scalar reaches over all cases of the coach as it will be, and the case that shows it.
struct Highest {
    double value;
    std::string caseName;
};
std::optional<Highest> highest(const Seen& seen, std::string_view scalarId, int leastPresses = 0);

/// How often the button is pressed in a case; 0 for a case that is not in the drawing.
int presses(const document::Drawing& drawing, const std::string& caseName);
bool hasFault(const document::Drawing& drawing, const std::string& caseName);

/// Where water can go from one path of a part without passing a part that `stops`. Direction of flow and
/// shut valves do not matter here: this is about how the pipes are joined.
struct Reach {
    std::set<document::PartId> parts;  ///< passed or stopped at, the start left out
    std::set<int> junctions;           ///< of the plant
    bool has(document::PartId id) const { return parts.contains(id); }
};
Reach reach(const study::Plant& plant, const study::PlantPart& from, std::size_t path,
            const std::function<bool(const study::PlantPart&)>& stops);

/// The junction where water leaves a heater; -1 when nothing is joined to it.
int outletJunction(const study::Plant& plant, const study::PlantPart& heater);

/// Tankless and storage heaters, in id order.
std::vector<const study::PlantPart*> heaters(const study::Plant& plant);

}  // namespace tapward::review
