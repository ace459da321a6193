// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <vector>

#include "study/stop.h"

namespace tapward::study {

/// One press of one sample, never stopped. Every column has a value per moment; the ones a stop looks at
/// never fall.
struct StopRun {
    bool lit = false;
    std::vector<double> time_s;      ///< since the press
    std::vector<double> pumped_m3;   ///< true
    std::vector<double> sensed_m3;   ///< as the flow sensor counts; empty without one
    std::vector<double> reading_C;   ///< hottest the stop sensor has shown; empty without one
    std::vector<double> tap_C;       ///< water where the loop leaves the hot line
    std::vector<double> tapMost_C;   ///< hottest so far
    std::vector<double> enteringMost_C;  ///< hottest so far to enter a line that cold outlets draw from; not numbers
                                           ///< where the loop returns by a line of its own
    std::vector<double> outletMost_C;  ///< of the heater
};

/// What all samples share.
struct StopQuestion {
    const document::Drawing* drawing = nullptr;
    document::Case script;           ///< one press at 1 s, the case's temperatures and supply
    std::vector<Range> ranges;
    StopLimits limits;
    double target_C = 0;
    double outletLimit_C = 0, pumpLimit_C = 0;
    bool hasFlowSensor = false, hasStopSensor = false, byColdLine = false;
};

Result<StopQuestion> stopQuestion(const document::Drawing& drawing, const StopOptions& options);

/// All runs, in sample order. @return a Problem when stopped.
Result<std::vector<StopRun>> stopRuns(const StopQuestion& question, const StopOptions& options, int samples,
                                      std::uint64_t seed, const std::function<void()>& oneDone);

/// The same question on the drawing as it is.
Result<StopRun> nominalRun(const StopQuestion& question, double cell_m, double step_s, std::stop_token stop);

/// The reading of a first-order sensor in water that changes in straight lines between moments.
std::vector<double> lagged(const std::vector<double>& time_s, const std::vector<double>& water_C, double lag_s);

/// When this stop ends this run; nothing when it does not within the run.
std::optional<double> stopTime(const StopRun& run, const StopChoice& choice);
/// A column of a run at a time, in a straight line between moments.
double valueAt(const StopRun& run, const std::vector<double>& column, double time_s);

}  // namespace tapward::study
