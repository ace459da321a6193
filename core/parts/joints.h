// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string_view>

#include "network/fittings.h"
#include "parts/part_kind.h"

namespace tapward::parts {

/// The family chosen in the kind's "fittings" field, and its title as printed.
network::FittingFamily fittingFamily(const Values& values);
Text fittingsTitle(const Values& values);

}  // namespace tapward::parts
