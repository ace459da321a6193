// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "parts/part_kind.h"

namespace tapward::parts {

/// A lead battery off the charger, three quarters full (12.4 V at rest) and under a coach's lights and fans: the middle
/// of 11.8 to 12.6 V. Common practice, no published source.
inline constexpr double kBattery_V = 12.2;

/// Battery that feeds the loop.
const PartKind& battery();

}  // namespace tapward::parts
