// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>

namespace tapward::review {

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

}  // namespace tapward::review
