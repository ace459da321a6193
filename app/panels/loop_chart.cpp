// SPDX-License-Identifier: GPL-3.0-or-later
#include "panels/loop_chart.h"

#include <algorithm>
#include <utility>

#include "panels/say.h"

namespace tapward::app {

namespace {

QString sayArrangement(study::PumpArrangement arrangement)
{
    switch (arrangement) {
    case study::PumpArrangement::One:
        return LoopChartPage::tr("One pump");
    case study::PumpArrangement::TwoInParallel:
        return LoopChartPage::tr("Two in parallel");
    case study::PumpArrangement::TwoInSeries:
        return LoopChartPage::tr("Two in series");
    }
    return {};
}

PlotContent picture(const study::LoopCurves& curves, UnitSystem units)
{
    const auto point = [units](const study::LoopPoint& p) {
        return QPointF(toDisplay({p.flow_m3s, Quantity::Flow}, units), toDisplay({p.head_m, Quantity::Head}, units));
    };
    PlotContent content;
    content.units = units;
    content.bottom = Quantity::Flow;
    content.left = Quantity::Head;
    content.bottomName = LoopChartPage::tr("Flow");
    content.leftName = LoopChartPage::tr("Head");
    // To a little past the furthest working point: beyond it the curves say nothing about this loop.
    double flow_m3s = std::max(curves.activationFlow_m3s.value_or(0), curves.drawnFlow_m3s.value_or(0));
    double head_m = 0;
    for (const auto& set : curves.sets) {
        if (set.working)
            flow_m3s = std::max(flow_m3s, set.working->flow_m3s);
        for (const auto& p : set.curve)
            head_m = std::max(head_m, p.head_m);
    }
    if (flow_m3s <= 0 && !curves.system.empty())
        flow_m3s = curves.system.back().flow_m3s;
    content.toX = std::max(toDisplay({flow_m3s * 1.35, Quantity::Flow}, units), 1e-9);
    content.toY = std::max(toDisplay({head_m * 1.08, Quantity::Head}, units), 1e-9);

    PlotContent::Line loop;
    loop.name = LoopChartPage::tr("The loop");
    loop.style = 5;  // solid, in the colour of text
    loop.heavy = true;
    for (const auto& p : curves.system)
        loop.points << point(p);
    content.lines.push_back(std::move(loop));
    std::vector<study::PumpArrangement> named;
    for (const auto& set : curves.sets) {
        PlotContent::Line line;
        line.style = static_cast<int>(set.arrangement);
        if (std::ranges::find(named, set.arrangement) == named.end()) {
            named.push_back(set.arrangement);
            line.name = sayArrangement(set.arrangement);
        }
        for (const auto& p : set.curve)
            line.points << point(p);
        // In parallel the shut-off heads are those of one pump: the same words twice.
        if (set.arrangement != study::PumpArrangement::TwoInParallel)
            line.end = sayMeasure(set.battery_V, Quantity::Voltage, units);
        content.lines.push_back(std::move(line));
        if (!set.working)
            continue;
        PlotContent::Mark mark;
        mark.at = point(*set.working);
        mark.shape = static_cast<PlotContent::Shape>(static_cast<int>(set.arrangement));
        mark.style = line.style;
        mark.hollow = !set.lights;
        content.marks.push_back(std::move(mark));
    }
    const auto level = [&](std::optional<double> flow, const QString& text, bool danger) {
        if (flow)
            content.levels.push_back({toDisplay({*flow, Quantity::Flow}, units), true, text, danger});
    };
    level(curves.holdFlow_m3s, LoopChartPage::tr("stays lit above"), false);
    level(curves.activationFlow_m3s, LoopChartPage::tr("lights above"), true);
    return content;
}

/// The working points in a table, and how many of them light the heater.
ChartPage::Shown shown(const study::LoopCurves& curves, const document::Drawing& drawing, UnitSystem units)
{
    std::vector<std::vector<SafetyCell>> rows;
    int lit = 0;
    for (const auto& set : curves.sets) {
        lit += set.working && set.lights ? 1 : 0;
        SafetyCell lights(!set.working ? sayMessage(set.reason, units)
                          : set.lights ? LoopChartPage::tr("Lights")
                                       : LoopChartPage::tr("Does not light"));
        if (!set.working || !set.lights)
            lights.weight = review::Severity::Caution;
        rows.push_back(
            {sayArrangement(set.arrangement), SafetyCell::measure(set.battery_V, Quantity::Voltage, units),
             SafetyCell::measure(set.pump_V, Quantity::Voltage, units),
             SafetyCell::measure(set.speed, Quantity::Percent, units),
             SafetyCell::measure(set.working ? std::optional(set.working->flow_m3s) : std::nullopt, Quantity::Flow,
                                 units),
             SafetyCell::measure(set.working ? std::optional(set.working->head_m) : std::nullopt, Quantity::Head,
                                 units),
             SafetyCell::measure(set.working ? std::optional(set.heaterFlow_m3s) : std::nullopt, Quantity::Flow, units),
             lights});
    }
    const QString pump = sayTag(drawing, curves.pump);
    const QString summary =
        curves.activationFlow_m3s
            ? LoopChartPage::tr(
                  "With %1's curve. The heater lights above %2: %3 of %4 pump sets reach it. Hollow marks do not.")
                  .arg(pump, sayMeasure(*curves.activationFlow_m3s, Quantity::Flow, units))
                  .arg(lit)
                  .arg(curves.sets.size())
            : LoopChartPage::tr("With %1's curve. The heater needs no flow to light.").arg(pump);
    return {summary,
            {LoopChartPage::tr("Pumps"), LoopChartPage::tr("Battery"), LoopChartPage::tr("At the pump"),
             LoopChartPage::tr("Speed"), LoopChartPage::tr("Flow"), LoopChartPage::tr("Head"),
             LoopChartPage::tr("Through the heater"), LoopChartPage::tr("Heater")},
            std::move(rows),
            picture(curves, units)};
}

}  // namespace

LoopChartPage::LoopChartPage(Session& session, const StudyWorker& worker) : ChartPage(session, worker, tr("Loop curve"))
{
}

void LoopChartPage::refresh()
{
    showAnswer(m_worker.answers().loop, [this](const study::LoopCurves& curves, const document::Drawing& drawing) {
        return shown(curves, drawing, m_session.units());
    });
}

}  // namespace tapward::app
