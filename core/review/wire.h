// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "parts/wire_gauge.h"

namespace tapward::review {

using parts::kCriticalDrop;
using parts::kOtherDrop;
using parts::kWarmStranded;
using parts::largestFuse_A;
using parts::minimumGauge;

}  // namespace tapward::review
