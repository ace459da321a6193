// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "study/stop_runs.h"

namespace tapward::study {

/// What one run came to when it was stopped.
struct Verdict {
    bool reaches = false, keeps = false;
};
Verdict judge(const StopQuestion& question, double tapMost_C, double enteringMost_C, double outletMost_C);
Verdict judge(const StopQuestion& question, const StopRun& run, double time_s);

/// Fills in how a choice does over the runs: shares, temperatures at the stop, longest run.
void weigh(const StopQuestion& question, const std::vector<StopRun>& runs, StopChoice& choice);

void addBands(const StopQuestion& question, const std::vector<StopRun>& runs, StopStudy& study);
/// @param points  the samples' values, point-major, as latinHypercube() gave them
void addInfluences(const StopQuestion& question, const std::vector<StopRun>& runs, const std::vector<double>& points,
                   StopStudy& study);

/// Standardized rank regression: coefficients of the ranks of y on the ranks of each column of x.
/// Iman & Conover (1979), Technometrics 21(4), 499-509.
struct RankFit {
    std::vector<double> coefficients;
    double rSquared = 0;
};
RankFit rankRegression(const std::vector<std::vector<double>>& columns, const std::vector<double>& y);

/// Turns off what would end or refuse a run besides its stop.
void bareStop(document::Drawing& drawing);

/// The value below which this share of `values` lies, between neighbours in a straight line. Sorts them.
double quantile(std::vector<double>& values, double share);

}  // namespace tapward::study
