// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <functional>

#include "study/press_search.h"

namespace tapward::study {

inline constexpr double kNoColdEntry_C = -1e9;  ///< the loop returns by a line of its own

/// What presses with one wait between them lead to: the hottest hot outlet, and the hottest water entering the
/// cold line.
struct WaitHeat {
    double outlets_C = -1e9;
    double coldEntry_C = kNoColdEntry_C;
};

/// Runs this many presses with each of these waits between them, `fine` as reported, else as searched.
/// @return one per wait, or a Problem when stopped
using HeatAfterWaits =
    std::function<Result<std::vector<WaitHeat>>(const std::vector<double>& waits_s, std::size_t presses, bool fine)>;

/// The shortest waits that keep the limits of `options`, of what presses lead to.
Result<SafeWait> safeWait(const PressesOptions& options, const HeatAfterWaits& heatAfter);

/// The days a wait is asked about. `worst`: those of the hottest outlet and of the hottest water entering the cold
/// line or the heater that the search found, each once; else the day as drawn.
std::vector<PressPoint> waitDays(const PressSearch& found, bool worst);

/// The cool-down wait. `worstDays`: on the worst days the search found, else on the day as drawn.
Result<SafeWait> findSafeWait(const Trials& trials, const PressesOptions& options, const PressSearch& found,
                              bool worstDays, const std::function<void(int)>& counted);

}  // namespace tapward::study
