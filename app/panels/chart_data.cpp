// SPDX-License-Identifier: GPL-3.0-or-later
#include "panels/chart_data.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <QCoreApplication>

#include "look/theme.h"
#include "panels/say.h"
#include "review/scald.h"

namespace tapward::app {

namespace {
QString tr(const char* text) { return QCoreApplication::translate("tapward::app", text); }
}  // namespace

std::vector<ChartLine> chartLines(const study::CaseResult& result)
{
    std::vector<ChartLine> lines;
    const auto take = [&](const study::Series& series) {
        lines.push_back({&series, sayMessage(series.label, UnitSystem::Us), static_cast<int>(lines.size())});
    };
    for (const char* id : {"heater_outlet", "heater_inlet"})
        if (const auto* series = result.find(id))
            take(*series);
    for (const char* start : {"sensor.", "tap."})
        for (const auto& series : result.series)
            if (series.id.starts_with(start) && series.quantity == Quantity::Temperature)
                take(series);
    return lines;
}

QPen chartPen(int style, const QPalette& palette, bool stale)
{
    const Theme theme = Theme::of(palette);
    const bool dark = theme.dark;
    // Okabe & Ito (2008); the light ones are darkened on white so that each keeps 3:1.
    const std::array<QColor, 7> colours = {dark ? QColor(0xff, 0x8c, 0x42) : QColor(0xD5, 0x5E, 0x00),
                                           dark ? QColor(0x56, 0xB4, 0xE9) : QColor(0x00, 0x72, 0xB2),
                                           dark ? QColor(0x2f, 0xc9, 0x9b) : QColor(0x00, 0x8a, 0x64),
                                           dark ? QColor(0xe3, 0x9a, 0xc2) : QColor(0xa6, 0x4d, 0x82),
                                           dark ? QColor(0xF0, 0xE4, 0x42) : QColor(0x8a, 0x70, 0x00),
                                           palette.color(QPalette::WindowText),
                                           dark ? QColor(0xb0, 0xb5, 0xba) : QColor(0x6a, 0x6f, 0x74)};
    const std::array<QList<qreal>, 5> dashes = {
        QList<qreal>{}, {6, 3}, {1.5, 2}, {8, 3, 1.5, 3}, {8, 2.5, 1.5, 2.5, 1.5, 2.5}};
    QColor colour = colours[static_cast<std::size_t>(style) % colours.size()];
    if (stale)
        colour = palette.color(QPalette::Disabled, QPalette::WindowText);
    QPen pen(colour, 2.0);
    pen.setCapStyle(Qt::FlatCap);
    const auto& dash = dashes[static_cast<std::size_t>(style) % dashes.size()];
    if (!dash.isEmpty())
        pen.setDashPattern(dash);
    return pen;
}

std::vector<double> chartX(const study::CaseResult& result, ChartAxis axis, UnitSystem units)
{
    if (axis == ChartAxis::Time)
        return result.time_s;
    const auto* pumped = result.find("pumped_volume");
    if (!pumped)
        return {};
    std::vector<double> x;
    x.reserve(pumped->values.size());
    double last = 0;
    for (const double value : pumped->values) {
        if (std::isfinite(value))
            last = std::max(last, toDisplay({value, Quantity::Volume}, units));
        x.push_back(last);
    }
    return last > 0 ? x : std::vector<double>{};
}

std::vector<QList<QPointF>> chartStretches(const study::Series& series, const std::vector<double>& x, UnitSystem units)
{
    std::vector<QList<QPointF>> stretches(1);
    const std::size_t count = std::min(series.values.size(), x.size());
    for (std::size_t i = 0; i < count; ++i) {
        if (std::isfinite(series.values[i]))
            stretches.back().append({x[i], toDisplay({series.values[i], series.quantity}, units)});
        else if (!stretches.back().isEmpty())
            stretches.emplace_back();
    }
    if (stretches.back().isEmpty())
        stretches.pop_back();
    return stretches;
}

std::size_t sampleAt(const study::CaseResult& result, double t_s)
{
    const auto after = std::upper_bound(result.time_s.begin(), result.time_s.end(), t_s + 1e-9);
    return after == result.time_s.begin() ? 0 : static_cast<std::size_t>(after - result.time_s.begin() - 1);
}

std::size_t sampleReaching(const std::vector<double>& x, double value)
{
    if (x.empty())
        return 0;
    const auto at = std::lower_bound(x.begin(), x.end(), value);
    return at == x.end() ? x.size() - 1 : static_cast<std::size_t>(at - x.begin());
}

double niceStep(double range, int parts)
{
    if (!(range > 0))
        return 1;
    const double rough = range / std::max(1, parts);
    const double power = std::pow(10.0, std::floor(std::log10(rough)));
    for (const double factor : {1.0, 2.0, 5.0})
        if (factor * power >= rough * 0.999)
            return factor * power;
    return 10 * power;
}

std::vector<ChartLevel> chartLevels(const study::CaseResult& result, UnitSystem units, bool intoColdLine)
{
    const auto level = [units](double celsius) { return toDisplay({celsius, Quantity::Temperature}, units); };
    const auto name = [units](double celsius) {
        return QStringLiteral("%1 %2")
            .arg(std::lround(toDisplay({celsius, Quantity::Temperature}, units)))
            .arg(unitSymbol(Quantity::Temperature, units));
    };
    std::vector<ChartLevel> levels{
        {level(result.target_C), tr("Target %1").arg(sayMeasure(result.target_C, Quantity::Temperature, units)), false},
        {level(review::kScaldGuidance_C), tr("%1 scald guidance").arg(name(review::kScaldGuidance_C)), true}};
    if (intoColdLine)
        levels.insert(levels.begin() + 1, {level(review::kColdLineLimit_C),
                                           tr("%1 cold-line limit").arg(name(review::kColdLineLimit_C)), false});
    return levels;
}

}  // namespace tapward::app
