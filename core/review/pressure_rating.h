// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "base/units.h"

namespace tapward::review {

/// What coach tube is marked for, hot: 100 psi at 180 °F (ASTM F876).
inline constexpr double kTubeRating_Pa = 100 * us::kPsi;

}  // namespace tapward::review
