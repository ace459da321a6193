// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <functional>

#include "study/press_search.h"

namespace tapward::study {

/// The cool-down wait. `worstDays`: on the worst days the search found, else on the day as drawn.
Result<SafeWait> findSafeWait(const Trials& trials, const PressesOptions& options, const PressSearch& found,
                              bool worstDays, const std::function<void(int)>& counted);

}  // namespace tapward::study
