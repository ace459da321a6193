// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>

#include "base/units.h"

namespace tapward {

/// A number to type over, without its unit: more digits than a readout, no trailing zeros, '.' as the decimal
/// sign, empty when it is not finite. It is rounded all the same: an editor keeps the SI value and never reads
/// this text back unless a person changed it.
std::string editableNumber(Measure measure, UnitSystem units);

}  // namespace tapward
