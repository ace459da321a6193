// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cmath>

#include "base/units.h"

// What reading and showing a measure share; private to this room.
namespace tapward {

inline constexpr double kMinute = 60.0;   ///< s
inline constexpr double kHour = 3600.0;   ///< s
inline constexpr double kLitre = 1e-3;    ///< m³
// Flow coefficients: Cv is gpm at 1 psi; Kv is m³/h at 1 bar. SI here: m³/s at 1 Pa (loss falls with flow²). Functions,
// since a table in another file may be filled from them before a variable with a root in it is.
inline double oneCv() { return us::kGpm / std::sqrt(us::kPsi); }
inline double oneKv() { return 1.0 / kHour / std::sqrt(1e5); }

}  // namespace tapward
