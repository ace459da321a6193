// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <vector>

#include "document/edit.h"
#include "study/presses.h"

namespace tapward::study {

/// One setting to change, of the controller or of the heater.
struct SafeChange {
    document::PartId part = document::kNoPart;
    std::string key;  ///< of its field
    parts::Value value;
    Message words;  ///< "End the run at {0} by the stop sensor."
};

/// The fewest settings that keep people and the cold line within their limits, whoever presses how often.
struct SafeSet {
    bool keepsAsDrawn = false;  ///< nothing needs to be changed
    std::vector<SafeChange> changes;  ///< empty when nothing needs to be changed, or nothing helps
    /// With the changes, or with all of them at their strictest where nothing helps: what a search of its own finds.
    Hottest with;
    std::optional<double> entering_C;  ///< into the cold line, the same way
    Message reason;  ///< where nothing helps: what stays too hot
    int tried = 0;  ///< sets
    bool isFound() const { return keepsAsDrawn || !changes.empty(); }
    /// The changes as one undo step. @pre !changes.empty()
    document::Edit edit() const;
};

/// Tries the controller's own protections at a few settings each (temperature stop, refusal, inlet lockout, wait, high
/// limit, where the sensors they need are drawn) and lower settings of the heater, fewest changes first, against what was
/// hottest as drawn, then each set that holds against a search of its own as thorough as studyPresses(). A set after which
/// the run of the drawing's own day no longer warms the tap to 3 K of the target does not count. Limits: options'
/// outletLimit_C at every outlet's hot side, coldEntryLimit_C where the loop enters the cold line and at cold sides.
/// @return a Problem when there is no loop or no controller, or when stopped.
Result<SafeSet> findSafeSet(const document::Drawing& drawing, const PressesOptions& options = {});

}  // namespace tapward::study
