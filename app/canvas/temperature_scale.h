// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QColor>

namespace tapward::app {

/// A colour for a water temperature: dark blue at 10 °C through violet, red at 40 °C and orange to yellow at 70 °C, held
/// outside. Lightness rises evenly with temperature, also for the color-blind (checked by canvas_colours_test).
QColor temperatureColour(double celsius);

inline constexpr double kScaleCold_C = 10.0;
inline constexpr double kScaleHot_C = 70.0;

/// How much a stretch of water asks for care; shown by hatch, not by colour alone.
enum class HeatBand { Cool, Warm, Scalding };
HeatBand heatBand(double celsius);  ///< Warm above 104 °F (40 °C), Scalding above 120 °F (48.9 °C)

}  // namespace tapward::app
