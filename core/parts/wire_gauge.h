// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
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

/// Drop limits of 12 V practice, out and back, as a share of the battery's volts: ABYC E-11, critical and
/// other circuits. A marine standard, used here only as a yardstick; the code in force for the coach and
/// the maker's instructions govern.
inline constexpr double kCriticalDrop = 0.03;
inline constexpr double kOtherDrop = 0.10;

/// Stranded wire in a warm loom against solid wire at 20 °C: 21.6 % for 75 °C, 2 % for the lay of the
/// strands. With it the ASTM B258 formula meets NEC chapter 9 table 8 (75 °C, stranded) within 1 %.
inline constexpr double kWarmStranded = 1.216 * 1.02;

/// The smallest even gauge (18 ... 2) whose drop stays within `share` of `volts`.
/// CM = K I L / E with K = 10.75 ohm circular-mil/ft and L out and back (ABYC E-11), against the smallest
/// conductor areas of automotive wire (SAE J1127/J1128, from memory).
/// @param oneWay_m  from the battery to the device.
/// @return nothing when even gauge 2 is too thin.
std::optional<int> minimumGauge(double current_A, double oneWay_m, double share, double volts = 12.0);

/// Largest fuse for copper wire of this gauge in a coach's low-voltage circuits: NEC 551.10(E) / 552.10(E)
/// and ANSI/RVIA LV (18, 16; from memory), NEC 240.4(D) (14, 12, 10; published). Nothing for other gauges:
/// look them up in the code in force.
std::optional<double> largestFuse_A(int gauge);

/// A fuse is to be at least this much above the steady load; common practice of the codes, from memory.
inline constexpr double kFuseOverLoad = 1.25;

/// The smallest even gauge (18 ... 10) that a fuse of 1.25 times this current may protect.
/// @return nothing when AWG 10 is too thin: look the wire up in the code in force.
std::optional<int> gaugeForCurrent(double current_A);

}  // namespace tapward::parts
