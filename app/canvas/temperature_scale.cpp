// SPDX-License-Identifier: GPL-3.0-or-later
#include "canvas/temperature_scale.h"

#include <algorithm>
#include <array>

#include "review/scald.h"

namespace tapward::app {

QColor temperatureColour(double celsius)
{
    // Red and blue by eye, green so that CIE L* rises evenly from 18 to 91 (sRGB, IEC 61966-2-1).
    static constexpr std::array<std::array<double, 3>, 9> kStops{{{13, 37, 110},
                                                                  {62, 49, 140},
                                                                  {112, 62, 152},
                                                                  {158, 78, 146},
                                                                  {198, 99, 126},
                                                                  {228, 126, 100},
                                                                  {246, 159, 74},
                                                                  {253, 195, 58},
                                                                  {250, 232, 70}}};
    const double share = std::clamp((celsius - kScaleCold_C) / (kScaleHot_C - kScaleCold_C), 0.0, 1.0);
    const double place = share * (kStops.size() - 1);
    const auto i = std::min(static_cast<std::size_t>(place), kStops.size() - 2);
    const double rest = place - static_cast<double>(i);
    const auto mix = [&](std::size_t channel) {
        return static_cast<int>(kStops[i][channel] + rest * (kStops[i + 1][channel] - kStops[i][channel]) + 0.5);
    };
    return {mix(0), mix(1), mix(2)};
}

HeatBand heatBand(double celsius)
{
    if (celsius > review::kScaldGuidance_C)
        return HeatBand::Scalding;
    return celsius > review::kColdLineLimit_C ? HeatBand::Warm : HeatBand::Cool;
}

}  // namespace tapward::app
