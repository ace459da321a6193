// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>

namespace tapward::review {

inline constexpr double kScaldGuidance_C = 48.888888888888886;  ///< 120 °F
inline constexpr double kColdLineLimit_C = 40.0;                ///< 104 °F, water entering the cold line

/// Seconds of contact to a serious burn, adult skin: the lowest of the published tables at each temperature that one
/// of them prints, log(time) interpolated on temperature between those points, held at the shortest published time
/// above the hottest point. Below the coolest published point there is no figure: nullopt is not "safe", it is "not in the
/// tables". Children, elders and people with reduced feeling burn sooner.
std::optional<double> burnSeconds(double celsius);

/// As burnSeconds, for people to read: rounded down to whole seconds, from two minutes on to half minutes, from ten
/// on to whole ones; never below 1.
std::optional<double> wholeBurnSeconds(double celsius);

}  // namespace tapward::review
