// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string_view>
#include <vector>

#include "parts/part_kind.h"

namespace tapward::parts {

/// Resistance of one metre of solid copper wire, ohm/m, at 20 °C.
/// Diameter 0.005 in x 92^((36 - gauge)/39) (ASTM B258); copper of 100 % IACS, 0.017241 ohm mm²/m.
/// Stranded wire in a warm loom has some 24 % more (75 °C and 2 % lay): NEC chapter 9, table 8.
/// @param awg  gauge number, 0 to 40
double wireResistance_ohm_m(int awg);

/// Copper area in mm² of a solid wire of this gauge.
double wireArea_mm2(int awg);

/// The gauges a 12 V branch is pulled with, thin to thick, as choices "18" ... "8".
std::vector<Choice> wireGaugeChoices();
/// Gauge number of such a choice.
int wireGauge(std::string_view choice);

}  // namespace tapward::parts
