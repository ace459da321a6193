// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <vector>

#include "study/loop.h"

namespace tapward::study {

/// @param around  every link of the ring once, in the water's direction, the heater's included.
/// @pre the network is solved
HeadBudget headBudget(const Plant& plant, const network::Network& network, std::span<const Hop> around);

/// The budget of the drawing as it will be, at the loop's cold start.
/// @return the reason when the loop does not run.
Result<HeadBudget> headBudget(const document::Drawing& drawing);

}  // namespace tapward::study
