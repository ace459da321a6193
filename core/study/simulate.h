// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "study/loop.h"
#include "study/plant.h"
#include "study/prediction.h"
#include "study/trial.h"

namespace tapward::study {

/// Runs one case on a plant, from its starting temperatures to its end.
/// Flows are re-solved when a setting changes and when the water's warmth has changed them enough, and follow that warmth
/// in between; timers, stops, switch points and actions are met at their exact instant; between them steps are at most
/// options.step_s.
/// @return a Problem only when stopped by options.stop.
Result<CaseResult> simulate(const document::Drawing& drawing, const Plant& plant, const LoopMap& loop,
                            const document::Case& script, const Options& options);

/// The same for a case with a plan of presses or changed settings of its controls.
Result<TrialResult> simulate(const document::Drawing& drawing, const Plant& plant, const LoopMap& loop,
                             const Trial& trial, const Options& options);

}  // namespace tapward::study
