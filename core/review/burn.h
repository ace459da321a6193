// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string_view>

#include "base/message.h"

namespace tapward::review {

/// How bad touching water is; the window chooses a symbol for it.
enum class BurnHazard {
    BelowTables,  ///< no published time: not the same as safe
    Slow,         ///< minutes: above the tables' coolest point, at or below the 120 °F guidance
    Burns,        ///< above the guidance: a minute or more
    Quick,        ///< seconds
    AtOnce        ///< 5 s or less
};
std::string_view id(BurnHazard hazard);     ///< "quick"; stable, used in JSON
Text title(BurnHazard hazard);  ///< "Burns in seconds"

/// Time to a serious burn in water of one temperature.
struct BurnTime {
    std::optional<double> adult_s;  ///< whole seconds, see wholeBurnSeconds()
    /// The tables in use print no figures for children: always empty until one with a source is added. It
    /// is less than the adult's; never read as safe.
    std::optional<double> child_s;
    BurnHazard hazard = BurnHazard::BelowTables;
    Message words;                  ///< one sentence with the number, for a row
};
BurnTime burnTime(double celsius);

}  // namespace tapward::review
