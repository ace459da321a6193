// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <functional>
#include <vector>

#include "study/press_search.h"

namespace tapward::study {

/// Adds one place's heat to the group it belongs to.
void take(Hottest& into, const PlaceHeat& heat);
/// Makes what was found the worst of its place, its script cut to what it takes and named.
void setWorst(const document::Drawing& drawing, WorstHeat& heat, const PlaceHeat& found, const TrialResult& result);

/// Each protection switched the other way and searched. `worst` is what was found as drawn; where a script
/// found with a protection on is hotter when its stops are made by hand without it, `worst` is raised.
Result<std::vector<ProtectionEffect>> tryProtections(const Trials& trials, const PressesOptions& options,
                                                     const PressSearch& asDrawn, std::vector<WorstHeat>& worst,
                                                     const std::function<void(int)>& counted);

}  // namespace tapward::study
