// SPDX-License-Identifier: GPL-3.0-or-later
#include "panels/fire_map_page.h"

#include <algorithm>
#include <QPainterPath>
#include <QRegion>

#include "panels/say.h"

namespace tapward::app {

namespace {

using study::FireMap;
using study::FireOutcome;

constexpr FireOutcome kOutcomes[] = {FireOutcome::DoesNotLight,    FireOutcome::Holds,  FireOutcome::OvershootsSetpoint,
                                     FireOutcome::OverOutletLimit, FireOutcome::Cycles, FireOutcome::LocksOut};

struct Look {
    Qt::BrushStyle hatch;
    int style;
};

/// The worse, the closer the hatching.
Look lookOf(FireOutcome outcome)
{
    switch (outcome) {
    case FireOutcome::DoesNotLight:
        return {Qt::HorPattern, 6};
    case FireOutcome::Holds:
        return {Qt::Dense7Pattern, 2};
    case FireOutcome::OvershootsSetpoint:
        return {Qt::BDiagPattern, 4};
    case FireOutcome::OverOutletLimit:
        return {Qt::DiagCrossPattern, 0};
    case FireOutcome::Cycles:
        return {Qt::FDiagPattern, 3};
    case FireOutcome::LocksOut:
        return {Qt::Dense4Pattern, 0};
    }
    return {Qt::NoBrush, 0};
}

/// A stretch of one row of the map with one outcome: cells [from, to).
struct Run {
    std::size_t inlet, from, to;
    FireOutcome outcome;
};

std::vector<Run> runs(const FireMap& map)
{
    std::vector<Run> all;
    for (std::size_t i = 0; i < map.inlet_C.size(); ++i)
        for (std::size_t f = 0; f < map.flow_m3s.size(); ++f) {
            if (f > 0 && all.back().outcome == map.at(i, f))
                all.back().to = f + 1;
            else
                all.push_back({i, f, f + 1, map.at(i, f)});
        }
    return all;
}

/// Where the cells' edges are: the centres are evenly spaced.
struct Grid {
    double from, step;
    explicit Grid(const std::vector<double>& centres)
        : from(centres.size() > 1 ? centres[0] - (centres[1] - centres[0]) / 2 : centres.at(0) - 0.5),
          step(centres.size() > 1 ? centres[1] - centres[0] : 1)
    {
    }
    double edge(double index) const { return from + index * step; }
};

PlotContent picture(const FireMap& map, UnitSystem units)
{
    PlotContent content;
    content.units = units;
    content.bottom = Quantity::Flow;
    content.left = Quantity::Temperature;
    content.bottomName = FireMapPage::tr("Flow through the heater");
    content.leftName = FireMapPage::tr("Heater inlet");
    const Grid flows(map.flow_m3s), inlets(map.inlet_C);
    const auto point = [units](double flow_m3s, double inlet_C) {
        return QPointF(toDisplay({flow_m3s, Quantity::Flow}, units),
                       toDisplay({inlet_C, Quantity::Temperature}, units));
    };
    const QPointF first = point(flows.edge(0), inlets.edge(0));
    const QPointF last = point(flows.edge(static_cast<double>(map.flow_m3s.size())),
                               inlets.edge(static_cast<double>(map.inlet_C.size())));
    content.fromX = first.x();
    content.toX = last.x();
    content.fromY = first.y();
    content.toY = last.y();
    const auto all = runs(map);
    for (const FireOutcome outcome : kOutcomes) {
        // Joined in whole cells, where the joining is exact, then put in place.
        QRegion region;
        for (const Run& run : all)
            if (run.outcome == outcome)
                region += QRect(static_cast<int>(run.from), static_cast<int>(run.inlet),
                                static_cast<int>(run.to - run.from), 1);
        if (region.isEmpty())
            continue;
        QPainterPath path;
        path.addRegion(region);
        PlotContent::Area area;
        area.name = say(study::title(outcome));
        area.hatch = lookOf(outcome).hatch;
        area.style = lookOf(outcome).style;
        area.faint = true;
        for (const QPointF& corner : path.simplified().toFillPolygon())
            area.outline << point(flows.edge(corner.x()), inlets.edge(corner.y()));
        content.areas.push_back(std::move(area));
        // Its name in its largest rectangle of whole cells.
        QRect widest;
        for (const QRect& rect : region)
            if (rect.width() * std::min(rect.height(), 4) > widest.width() * std::min(widest.height(), 4))
                widest = rect;
        const QPointF low = point(flows.edge(widest.left()), inlets.edge(widest.top()));
        const QPointF high = point(flows.edge(widest.right() + 1), inlets.edge(widest.bottom() + 1));
        content.notes.push_back({QRectF(low, high), say(study::title(outcome))});
    }
    PlotContent::Line fire;
    fire.name = FireMapPage::tr("Minimum fire alone gives the setpoint");
    fire.style = 1;
    for (std::size_t f = 0; f < map.flow_m3s.size(); ++f)
        if (map.setpointInlet_C[f] > map.inlet_C.front())
            fire.points << point(map.flow_m3s[f], map.setpointInlet_C[f]);
    content.lines.push_back(std::move(fire));
    for (std::size_t i = 0; i < map.path.size();) {
        const int press = map.path[i].press;
        PlotContent::Line line;
        line.style = 5;  // solid, in the colour of text: over every hatching
        line.heavy = true;
        if (i == 0)
            line.name = FireMapPage::tr("The loop, press after press");
        PlotContent::Mark end;
        end.style = 5;
        for (; i < map.path.size() && map.path[i].press == press; ++i) {
            end.at = point(map.path[i].flow_m3s, map.path[i].inlet_C);
            line.points << end.at;
        }
        end.text = FireMapPage::tr("end of press %1").arg(press);
        content.lines.push_back(std::move(line));
        content.marks.push_back(std::move(end));
    }
    const auto level = [&](double flow_m3s, const QString& text, bool danger) {
        content.levels.push_back({toDisplay({flow_m3s, Quantity::Flow}, units), true, text, danger});
    };
    level(map.holdFlow_m3s, FireMapPage::tr("stays lit above"), false);
    level(map.activationFlow_m3s, FireMapPage::tr("lights above"), true);
    return content;
}

SafetyCell whatHappens(FireOutcome outcome)
{
    SafetyCell cell(say(study::title(outcome)));
    if (const int rank = study::rank(outcome); rank > 0)
        cell.weight = rank > 1 ? review::Severity::Danger : review::Severity::Caution;
    return cell;
}

SafetyCell range(double from, double to, Quantity quantity, UnitSystem units)
{
    SafetyCell cell = SafetyCell::measure(from, quantity, units);
    const QString end = sayMeasure(to, quantity, units);
    if (cell.text != end)
        cell.text = FireMapPage::tr("%1 to %2").arg(cell.text, end);
    return cell;
}

/// The loop's way first, then the map from cold to warm inlets; neighbouring rows alike are one.
std::vector<std::vector<SafetyCell>> figures(const FireMap& map, UnitSystem units)
{
    std::vector<std::vector<SafetyCell>> rows;
    for (std::size_t i = 0; i < map.path.size(); ++i) {
        const auto& at = map.path[i];
        const FireOutcome outcome = map.nearest(at.flow_m3s, at.inlet_C);
        const bool starts = i == 0 || map.path[i - 1].press != at.press;
        const bool ends = i + 1 == map.path.size() || map.path[i + 1].press != at.press;
        if (!starts && !ends && map.nearest(map.path[i - 1].flow_m3s, map.path[i - 1].inlet_C) == outcome)
            continue;
        rows.push_back({FireMapPage::tr("Press %1 at %2").arg(at.press).arg(sayClock(at.t_s)),
                        SafetyCell::measure(at.inlet_C, Quantity::Temperature, units),
                        SafetyCell::measure(at.flow_m3s, Quantity::Flow, units), whatHappens(outcome),
                        SafetyCell::measure(at.outlet_C, Quantity::Temperature, units)});
    }
    const Grid flows(map.flow_m3s), inlets(map.inlet_C);
    const auto all = runs(map);
    std::vector<std::vector<Run>> byInlet(map.inlet_C.size());
    for (const Run& run : all)
        byInlet[run.inlet].push_back(run);
    const auto alike = [](const std::vector<Run>& a, const std::vector<Run>& b) {
        return std::ranges::equal(a, b, [](const Run& one, const Run& other) {
            return one.from == other.from && one.to == other.to && one.outcome == other.outcome;
        });
    };
    for (std::size_t i = 0; i < byInlet.size();) {
        std::size_t end = i + 1;
        while (end < byInlet.size() && alike(byInlet[i], byInlet[end]))
            ++end;
        for (const Run& run : byInlet[i]) {
            double coldest_C = 1e9, hottest_C = -1e9;
            for (std::size_t row = i; row < end; ++row)
                for (std::size_t f = run.from; f < run.to; ++f) {
                    coldest_C = std::min(coldest_C, map.outlet_C[row * map.flow_m3s.size() + f]);
                    hottest_C = std::max(hottest_C, map.outlet_C[row * map.flow_m3s.size() + f]);
                }
            rows.push_back({FireMapPage::tr("Map"),
                            range(inlets.edge(static_cast<double>(i)), inlets.edge(static_cast<double>(end)),
                                  Quantity::Temperature, units),
                            range(flows.edge(static_cast<double>(run.from)), flows.edge(static_cast<double>(run.to)),
                                  Quantity::Flow, units),
                            whatHappens(run.outcome), range(coldest_C, hottest_C, Quantity::Temperature, units)});
        }
        i = end;
    }
    return rows;
}

QString summaryOf(const FireMap& map, const document::Drawing& drawing, UnitSystem units)
{
    const auto warm = [units](double celsius) { return sayMeasure(celsius, Quantity::Temperature, units); };
    QStringList lines;
    lines << FireMapPage::tr("%1, set to %2: lights above %3, stays lit above %4, its own limit is %5. Steady water "
                             "of each flow and inlet, from the heater's data.")
                 .arg(sayTag(drawing, map.heater), warm(map.setpoint_C),
                      sayMeasure(map.activationFlow_m3s, Quantity::Flow, units),
                      sayMeasure(map.holdFlow_m3s, Quantity::Flow, units), warm(map.heaterLimit_C));
    for (std::size_t i = 0; i < map.path.size();) {
        const int press = map.path[i].press;
        FireOutcome worst = FireOutcome::DoesNotLight;
        double inlet_C = -1e9;
        for (; i < map.path.size() && map.path[i].press == press; ++i) {
            const FireOutcome here = map.nearest(map.path[i].flow_m3s, map.path[i].inlet_C);
            if (study::rank(here) > study::rank(worst) || worst == FireOutcome::DoesNotLight)
                worst = here;
            inlet_C = std::max(inlet_C, map.path[i].inlet_C);
        }
        lines
            << FireMapPage::tr("Press %1: %2; inlet up to %3.").arg(press).arg(say(study::title(worst)), warm(inlet_C));
    }
    if (map.path.empty())
        lines << FireMapPage::tr("No loop with a controller runs here, so there is no path over the map.");
    return lines.join(QLatin1Char(' '));
}

}  // namespace

FireMapPage::FireMapPage(Session& session, const StudyWorker& worker) : ChartPage(session, worker, tr("Fire map")) {}

void FireMapPage::refresh()
{
    const UnitSystem units = m_session.units();
    showAnswer(m_worker.answers().fire, [units](const FireMap& map, const document::Drawing& drawing) -> Shown {
        return {summaryOf(map, drawing, units),
                {tr("Where"), tr("Inlet"), tr("Flow"), tr("What happens"), tr("Outlet")},
                figures(map, units),
                picture(map, units)};
    });
}

}  // namespace tapward::app
