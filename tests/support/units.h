// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

namespace tapward::test {

inline constexpr double kGpm = 3.785411784e-3 / 60.0;  ///< m3/s, NIST SP 811:2008

}  // namespace tapward::test
