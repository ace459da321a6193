// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

namespace tapward::review {

/// Flow over activation flow below which a margin counts as thin: flow sensors and heaters differ by about a
/// tenth. Common practice, no published source.
inline constexpr double kSafeMargin = 1.10;

}  // namespace tapward::review
