// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <vector>

#include "review/finding.h"
#include "study/faults.h"

namespace tapward::review {

/// Whether the fault brings harm, or more of it, that the sound coach does not: an outlet above its limit that
/// is below it without the fault, or an outlet or the heater's outlet more than 0.5 K hotter.
bool worseThanSound(const study::FaultRow& row);

/// How much a fault matters. Danger: it makes water hotter that burns where people touch it. Caution: it warms
/// cold drinking water above the limit of the cold line. Note: nobody comes off worse than in the sound coach,
/// which may burn people all the same. Empty when the fault was not run.
std::optional<Severity> faultSeverity(const study::FaultRow& row);

/// Indices of the rows: by severity, then the hottest change first; those not run last. Equal rows keep the
/// study's order.
std::vector<std::size_t> worstFirst(const study::FaultsStudy& study);

}  // namespace tapward::review
