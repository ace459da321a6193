// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "study/faults.h"

namespace tapward::study {

/// A case every fault goes through.
struct StandardCase {
    Trial trial;
    bool pressesOnly = false;  ///< nothing is drawn: presses and nothing else
    bool own = false;          ///< of the drawing; else built
};

/// The drawing's own cases of the finished job that draw water and start no fault; then, on the day of the first of
/// its cases, a cold press and three presses in a row, and a hot and a cold draw at each outlet in turn.
std::vector<StandardCase> standardCases(const Trials& trials);

struct OneFault {
    document::PartId part = document::kNoPart;
    const parts::Fault* fault = nullptr;
    Message cannotRun;  ///< empty = it can
};

/// Every fault of every part of the finished job, in part order, then as the kind lists them.
std::vector<OneFault> declaredFaults(const Trials& trials);

/// What is run for one row.
struct FaultJob {
    std::size_t row;
    std::vector<Trial> trials;
    std::vector<std::size_t> standard;  ///< which case each trial is
};

/// Which faults are run through which cases. Faults that are the same to the model share a job.
struct FaultPlan {
    static constexpr std::size_t kNotRun = std::string::npos;
    std::vector<std::pair<OneFault, std::optional<OneFault>>> rows;  ///< singles, then pairs
    std::vector<FaultJob> jobs;
    std::vector<std::size_t> jobOf;  ///< per row, kNotRun where it cannot be run
};

/// @param pairs  also each way the main stop or the high limit fails together with any other fault but a pipe's
FaultPlan faultPlan(const Trials& trials, const std::vector<StandardCase>& cases, bool pairs);

}  // namespace tapward::study
