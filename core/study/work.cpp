// SPDX-License-Identifier: GPL-3.0-or-later
#include "study/work.h"

#include <algorithm>

namespace tapward::study {

double workOf(const Plant& plant, const document::Case& script, const Options& options)
{
    constexpr double kChain = 30;  // finding the flow of a chain takes as long as moving so many cells
    const double tubes = plant.tubeLength_m();
    const double cells = std::min(tubes / options.cell_m, kMostCells);
    const double steps = script.duration_s / options.step_s + static_cast<double>(script.actions.size());
    return steps * (cells + kChain * static_cast<double>(plant.chains.size()));
}

}  // namespace tapward::study
