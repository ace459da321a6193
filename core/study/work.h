// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "study/plant.h"
#include "study/prediction.h"

namespace tapward::study {

/// What running a case costs, in cells moved by one step: an upper bound, from the drawing alone, so that a drawing is
/// always refused or never, whatever the machine.
double workOf(const Plant& plant, const document::Case& script, const Options& options);

/// Most that all cases of a prediction may cost together: twenty-five seconds of a processor core when this was measured.
/// The cases of an ordinary coach (a hundred parts, six cases of ten minutes) cost a sixtieth of it.
inline constexpr double kMostWork = 1.2e9;

}  // namespace tapward::study
