// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "parts/part_kind.h"

namespace tapward::parts {

/// Turbine that counts the water passing.
const PartKind& flowSensor();

}  // namespace tapward::parts
