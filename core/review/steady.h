// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>

#include "network/network.h"
#include "review/pipes.h"

namespace tapward::review {

enum class Supply { City, Pump };

/// The coach at rest on one supply: taps and drains shut, valves as they stand, circulators stopped. City
/// water is clipped by a regulator behind the inlet. On the pump the coach hangs on its accumulator (or the
/// give of its tubing) at `pump_Pa`.
network::Network onSupply(const study::Plant& plant, Supply supply, double pump_Pa);

/// On the pump as it draws: running at its rated speed, city shut, accumulator left out.
network::Network onRunningPump(const study::Plant& plant);

/// Opens an outlet with this share from its hot side, or a drain valve.
void open(network::Network& network, const study::PlantPart& part, double hotShare = 1);
void close(network::Network& network, const study::PlantPart& part);

bool has(const study::Plant& plant, Supply supply);

/// Highest pressure with no water moving on any supply there is, Pa gauge: city static or pump cut-out.
std::optional<double> highestAtRest_Pa(const study::Plant& plant, int junction);

}  // namespace tapward::review
