// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <array>
#include <vector>

#include "study/stop_weigh.h"

namespace tapward::study {

/// The best of one family: among those that keep the limits often enough the one that most often does both,
/// in the middle of the stretch that does as well.
StopChoice bestOf(StopKind kind, const StopQuestion& question, const std::vector<StopRun>& runs, double keepAtLeast);

/// Temperature with a volume behind it: the temperature does the work, the volume ends the run when the
/// sensor does not. Of the pairs that do as well within one percent: the temperature farthest from where it
/// would do worse, with the smallest volume that still leaves a few steps to where it would.
StopChoice bestPair(const StopQuestion& question, const std::vector<StopRun>& runs, double keepAtLeast);

/// Index of the choice to suggest, -1 = none is possible. Two means are better than one that does as well within one
/// percent; time knows least about the water, so it comes last.
int suggestedOf(const std::array<StopChoice, 4>& choices);

}  // namespace tapward::study
