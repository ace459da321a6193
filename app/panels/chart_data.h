// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <QColor>
#include <QList>
#include <QPalette>
#include <QPen>
#include <QPointF>
#include <QString>
#include <vector>

#include "study/prediction.h"

namespace tapward::app {

/// What stands along the bottom of the warm-up chart.
enum class ChartAxis { Time, Volume };

/// One line of the chart: which series it is and how it is drawn, told apart by dashes as well as colour.
struct ChartLine {
    const study::Series* series = nullptr;
    QString name;
    int style = 0;
};

/// Temperature lines of a case in reading order: heater outlet, heater inlet, sensors, taps.
std::vector<ChartLine> chartLines(const study::CaseResult& result);

/// Pen of the n-th line on this palette; the patterns repeat later than the colours.
QPen chartPen(int style, const QPalette& palette, bool stale);

/// The bottom value of every sample (shown units): seconds, or volume pumped. Empty when there is no
/// volume to stand on.
std::vector<double> chartX(const study::CaseResult& result, ChartAxis axis, UnitSystem units);

/// Stretches of a series without gaps, in shown units. NaN (a closed tap) ends a stretch.
std::vector<QList<QPointF>> chartStretches(const study::Series& series, const std::vector<double>& x, UnitSystem units);

/// The last sample at or before a second; the same rule as the drawing's snapshot.
std::size_t sampleAt(const study::CaseResult& result, double t_s);
/// The first sample whose bottom value reaches x.
std::size_t sampleReaching(const std::vector<double>& x, double value);

/// A step of 1, 2 or 5 times a power of ten that divides a range into about `parts`.
double niceStep(double range, int parts);

/// A level drawn across the chart with its name in the line.
struct ChartLevel {
    double shown;
    QString text;
    bool danger = false;
};
/// @param intoColdLine  the loop's water goes into a line people drink from
std::vector<ChartLevel> chartLevels(const study::CaseResult& result, UnitSystem units, bool intoColdLine);

}  // namespace tapward::app
