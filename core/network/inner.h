// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstddef>

// What the laws and the solver share; private to this room.
namespace tapward::network {

inline constexpr double kGravity = 9.80665;  ///< m/s², standard
inline constexpr double kLeastSlope = 100;   ///< Pa/(m³/s): 0.01 Pa at 1.6 gpm, unseen and never zero

inline std::size_t at(int i) { return static_cast<std::size_t>(i); }

}  // namespace tapward::network
