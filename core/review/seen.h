// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "document/drawing.h"
#include "review/finding.h"
#include "review/pipes.h"
#include "study/assessment.h"
#include "study/plant.h"
#include "study/prediction.h"
#include "study/reach.h"

namespace tapward::review {

/// What every rule looks at. `after` is the coach with the job done, as the prediction sees it.
struct Seen {
    const document::Drawing& drawing;
    const study::Prediction& prediction;
    const study::Plant& after;
    const Pipes& pipes;          ///< of `after`
    const study::Assessment& assessment;  ///< how hot it gets, as far as is known

    /// A temperature out of it, for a message: 'at least' while hotter may be found.
    Measure heat(double celsius) const { return {celsius, Quantity::Temperature, assessment.isAtLeast()}; }
};

inline constexpr const char* kPractice = "common practice, no published source";

/// The part a field refers to by its id, nullptr when it names none that is present.
const study::PlantPart* partCalled(const Seen& seen, const std::string& reference);

/// "P1", or "?" for a part that is not in the drawing.
std::string tagOf(const Seen& seen, document::PartId id);

/// The hottest water known of at places of these kinds, faults of the drawn cases included; null where there is none.
inline const study::HotPlace* hottest(const Seen& seen, std::initializer_list<study::HeatPlace> places,
                                      document::PartId part = document::kNoPart)
{
    return seen.assessment.hottest(places, true, part);
}

/// Says by which script this is shown.
void shownBy(Finding& finding, const study::HotPlace& heat);

using study::Reach;
using study::reach;

/// The junction where water leaves a heater; -1 when nothing is joined to it.
int outletJunction(const study::Plant& plant, const study::PlantPart& heater);

/// Tankless and storage heaters, in id order.
std::vector<const study::PlantPart*> heaters(const study::Plant& plant);

}  // namespace tapward::review
