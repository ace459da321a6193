// SPDX-License-Identifier: GPL-3.0-or-later
#include "parts/wire_gauge.h"

#include <charconv>
#include <cmath>
#include <numbers>

namespace tapward::parts {

double wireArea_mm2(int awg)
{
    const double diameter_mm = 0.005 * 25.4 * std::pow(92.0, (36.0 - awg) / 39.0);
    return std::numbers::pi / 4 * diameter_mm * diameter_mm;
}

double wireResistance_ohm_m(int awg) { return 0.017241 / wireArea_mm2(awg); }

std::vector<Choice> wireGaugeChoices()
{
    return {{"18", "AWG 18"}, {"16", "AWG 16"}, {"14", "AWG 14"}, {"12", "AWG 12"}, {"10", "AWG 10"}, {"8", "AWG 8"}};
}

int wireGauge(std::string_view choice)
{
    int awg = 14;
    std::from_chars(choice.data(), choice.data() + choice.size(), awg);
    return awg;
}

}  // namespace tapward::parts
