// SPDX-License-Identifier: GPL-3.0-or-later
#include "base/editable_number.h"

#include <cmath>

#include <fmt/format.h>

namespace tapward {

std::string editableNumber(Measure measure, UnitSystem units)
{
    if (!std::isfinite(measure.si)) {
        return {};
    }
    const double shown = toDisplay(measure, units);
    const int decimals = displayUnit(measure.quantity, units).decimals + 2;
    // Small values (leaks, gains) would lose their digits with a fixed number of decimals.
    std::string text = shown != 0 && std::abs(shown) < std::pow(10.0, 2 - decimals)
                           ? fmt::format("{:.4g}", shown)
                           : fmt::format("{:.{}f}", shown, decimals);
    if (text.find('e') == text.npos && text.find('.') != text.npos) {
        while (text.back() == '0') {
            text.pop_back();
        }
        if (text.back() == '.') {
            text.pop_back();
        }
    }
    return text == "-0" ? "0" : text;
}

}  // namespace tapward
