// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <vector>

#include "control/run_control.h"
#include "document/drawing.h"
#include "study/prediction.h"

namespace tapward::study {

/// Presses by rule instead of by the clock: the next press comes a gap after the last run really ended. Who
/// is refused presses again until the control allows it. Becomes a plain script of a case when it has run.
struct PressPlan {
    document::PartId pressed = document::kNoPart;  ///< push button or controller; none = the only controller
    std::vector<double> gaps_s;  ///< one per press, >= 0; the first from the case's start
    double mostRun_s = 600;      ///< a run that nothing ends is stopped at the button after this
    double retry_s = 5;          ///< after a refusal
    double settle_s = 15;        ///< watched after the last run
    /// Opened when a run ends and shut after drawFor_s, between presses; none = nothing is drawn.
    document::PartId drawAt = document::kNoPart;
    double drawHotShare = 1;
    double drawFor_s = 15;
    /// Opened at the end: `openDelay_s` after the last press or after the last run ended.
    document::PartId openAt = document::kNoPart;
    double openHotShare = 1;
    bool openFromPress = false;
    double openDelay_s = 0;
    double openFor_s = 40;
};

/// Settings of one controller in place of the drawing's.
struct ControlChange {
    document::PartId controller = document::kNoPart;
    control::RunSpec spec;
    bool lockoutAtHeater = false;   ///< the inlet lockout reads the heater's inlet itself: no sensor is drawn
    bool limitAtStopSensor = false; ///< the high limit reads where the stop sensor sits (else the heater outlet)
};

/// A variation of a case that a case alone cannot say.
struct Trial {
    document::Case script;
    std::optional<PressPlan> plan;
    std::vector<ControlChange> controls;
    std::optional<double> mixingSetpoint_C;  ///< of every mixing valve
};

struct TrialResult {
    CaseResult result;
    document::Case asRun;  ///< the script with the plan's presses and draws at the times they came
    int presses = 0;       ///< of the plan that were accepted
};

}  // namespace tapward::study
