// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QColor>

namespace tapward::app {

/// A colour for a water temperature: dark blue at 10 °C through grey to light yellow at 70 °C and held
/// outside. Lightness rises evenly with temperature and no pair of hues is confused by the colour-blind.
/// Stops read off the cividis map: Nunez, Anderton & Renslow (2018), PLoS ONE 13(7), e0199239.
QColor temperatureColour(double celsius);

inline constexpr double kScaleCold_C = 10.0;
inline constexpr double kScaleHot_C = 70.0;

/// How much a stretch of water asks for care; shown by hatch, not by colour alone.
enum class HeatBand { Cool, Warm, Scalding };
HeatBand heatBand(double celsius);  ///< Warm above 104 °F (40 °C), Scalding above 120 °F (48.9 °C)

}  // namespace tapward::app
