// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "parts/part_kind.h"

namespace tapward::parts {

/// Thermometer in the water or clipped to the tube.
const PartKind& temperatureSensor();

}  // namespace tapward::parts
