// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <vector>

#include "study/plant.h"
#include "study/prediction.h"

namespace tapward::study {

/// How the loop's water gets back to the heater.
struct ColdReturn {
    bool byColdLine = false;                  ///< a stretch that cold outlets also draw from carries it
    document::PartId entry = document::kNoPart;  ///< the join by which its water enters the cold line
    std::vector<document::PartId> outlets;    ///< that draw cold water from this stretch, in id order
    std::vector<document::PartId> filters;    ///< in the branches to them
};

/// A return of its own meets the cold line once, at the heater; a return by the cold line meets it at the
/// fixture and leaves it at the supply, so at least two joins on its way lead to cold water.
ColdReturn coldReturn(const Plant& plant, const LoopAnswer& loop);

}  // namespace tapward::study
