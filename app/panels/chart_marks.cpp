// SPDX-License-Identifier: GPL-3.0-or-later
// What is painted over the chart's lines: crosshair, named levels, events.
#include <algorithm>
#include <cmath>
#include <limits>
#include <QtCharts/QLineSeries>
#include <QtCharts/QValueAxis>
#include <ranges>

#include "look/theme.h"
#include "panels/chart_view.h"
#include "panels/say.h"

namespace tapward::app {

namespace {

/// The shortest word for what happened; empty for what is not worth a word in the chart.
QString eventWord(const std::string& id)
{
    if (id == "run_started")
        return ChartView::tr("start");
    if (id.starts_with("stop_"))
        return ChartView::tr("stop");
    if (id == "run_refused")
        return ChartView::tr("refused");
    if (id == "burner_lit")
        return ChartView::tr("lit");
    if (id == "burner_out")
        return ChartView::tr("out");
    if (id == "heater_lockout")
        return ChartView::tr("lockout");
    if (id == "tap_opened")
        return ChartView::tr("tap open");
    if (id == "tap_closed")
        return ChartView::tr("tap shut");
    return {};
}

}  // namespace

double ChartView::xOf(double shown, const QRectF& area) const
{
    return area.left() + (shown - m_bottom->min()) / (m_bottom->max() - m_bottom->min()) * area.width();
}

double ChartView::yOf(double shown, const QRectF& area, const QValueAxis& axis) const
{
    return area.bottom() - (shown - axis.min()) / (axis.max() - axis.min()) * area.height();
}

void ChartView::drawForeground(QPainter* painter, const QRectF&)
{
    if (!m_content.result || m_x.empty())
        return;
    const QRectF area = chart()->mapRectToScene(chart()->plotArea());
    if (area.width() < 20 || area.height() < 20)
        return;
    painter->save();
    painter->setFont(font());
    painter->setRenderHint(QPainter::Antialiasing);
    // The crosshair stands on a sample, and the readout beside the chart names its values. It runs under the words.
    const double x = xOf(m_x[m_crosshair], area);
    painter->setPen(QPen(palette().color(QPalette::WindowText), m_hovering ? 1.0 : 1.6));
    painter->drawLine(QPointF(x, area.top()), QPointF(x, area.bottom()));
    paintEvents(*painter, area);
    paintLevels(*painter, area);
    for (const auto& line : chartLines(*m_content.result)) {
        if (m_content.hidden.contains(line.series->id) || m_crosshair >= line.series->values.size())
            continue;
        const double value = line.series->values[m_crosshair];
        if (!std::isfinite(value))
            continue;
        painter->setPen(QPen(palette().color(QPalette::Base), 1));
        painter->setBrush(chartPen(line.style, palette(), m_content.stale).color());
        painter->drawEllipse(QPointF(x, yOf(toDisplay({value, Quantity::Temperature}, m_content.units), area)), 4, 4);
    }
    if (hasFocus()) {
        painter->setBrush(Qt::NoBrush);
        painter->setPen(QPen(palette().color(QPalette::Highlight), 2));
        painter->drawRect(area.adjusted(-1, -1, 1, 1));
    }
    painter->restore();
}

int ChartView::inTheWay(const QRectF& box, const QRectF& area) const
{
    int hits = 0;
    for (const auto& [line, vertical, style] : m_lines) {
        const auto place = [&, axis = vertical](const QPointF& p) {
            return QPointF(xOf(p.x(), area), yOf(p.y(), area, *axis));
        };
        const QList<QPointF> points = line->points();
        const double across = (m_bottom->max() - m_bottom->min()) / area.width();
        const double from = m_bottom->min() + (box.left() - area.left()) * across;
        auto at = std::ranges::lower_bound(points, from, {}, &QPointF::x);
        if (at != points.begin())
            --at;
        for (; at != points.end() && std::next(at) != points.end(); ++at) {
            const QPointF one = place(*at), other = place(*std::next(at));
            if (one.x() > box.right())
                break;
            hits += QRectF(one, other).normalized().adjusted(-1, -1, 1, 1).intersects(box);
        }
    }
    return hits;
}

void ChartView::paintLevels(QPainter& painter, const QRectF& area) const
{
    const Theme theme = Theme::of(palette());
    const QFontMetricsF metrics(font());
    const auto levels = chartLevels(*m_content.result, m_content.units, m_content.intoColdLine);
    std::vector<QRectF> taken;
    for (const auto& level : std::views::reverse(levels)) {
        const double y = yOf(level.shown, area);
        // The target and the cold-line limit lie a degree apart: their names stand at different ends if they can.
        const bool left = &level == &levels.front();
        if (y < area.top() || y > area.bottom())
            continue;
        const QColor colour = level.danger ? theme.danger : palette().color(QPalette::WindowText);
        QPen pen(colour, 1.2);
        pen.setDashPattern(level.danger ? QList<qreal>{8, 4} : QList<qreal>{3, 3});
        painter.setPen(pen);
        painter.drawLine(QPointF(area.left(), y), QPointF(area.right(), y));
        const QString text = level.danger ? QStringLiteral("\u25B2 ") + level.text : level.text;
        const QSizeF size(metrics.horizontalAdvance(text) + 8, metrics.height());
        // Along the line, over it or under it: where it hides least of what the chart is there for.
        QRectF best;
        int fewest = std::numeric_limits<int>::max();
        for (const int step : {0, 1, 2, 3, 4})
            for (const bool over : {left || level.danger, !(left || level.danger)}) {
                if (fewest == 0)
                    break;
                const double along = 6 + (area.width() - size.width() - 12) * step / 4;
                const QRectF box(QPointF(left ? area.left() + along : area.right() - along - size.width(),
                                         over ? y - size.height() - 2 : y + 2),
                                 size);
                int hidden = inTheWay(box, area);
                for (const QRectF& other : taken)
                    hidden += other.intersects(box) ? 1000 : 0;
                for (const auto& other : levels)
                    hidden +=
                        &other != &level && std::abs(yOf(other.shown, area) - box.center().y()) < size.height() / 2;
                hidden += area.contains(box) ? 0 : 10;
                if (hidden < fewest) {
                    fewest = hidden;
                    best = box;
                }
            }
        // In a chart of a few lines' height one name is all that can be read: the first, which is the danger's.
        constexpr double kLinesForTwo = 6;
        if (!taken.empty() && area.height() < kLinesForTwo * metrics.height())
            continue;
        taken.push_back(best);
        painter.fillRect(best, palette().color(QPalette::Base));
        painter.setPen(palette().color(QPalette::WindowText));
        painter.drawText(best, Qt::AlignCenter, text);
    }
}

void ChartView::paintEvents(QPainter& painter, const QRectF& area) const
{
    const Theme theme = Theme::of(palette());
    const QFontMetricsF metrics(font());
    using Weight = study::Event::Weight;
    const auto& events = m_content.result->events;
    const auto place = [&](const study::Event& event) {
        const std::size_t sample = std::min(sampleAt(*m_content.result, event.t_s), m_x.size() - 1);
        return xOf(m_content.axis == ChartAxis::Time ? event.t_s : m_x[sample], area);
    };
    for (const auto& event : events) {
        const QColor colour = event.weight == Weight::Danger    ? theme.danger
                              : event.weight == Weight::Caution ? theme.caution
                                                                : palette().color(QPalette::PlaceholderText);
        painter.setPen(QPen(colour, 1, Qt::DotLine));
        const double x = place(event);
        painter.drawLine(QPointF(x, area.top()), QPointF(x, area.bottom()));
    }
    // A word at the top of the line where there is room; starts and stops of runs first. Every event is
    // also a mark of the time slider, with its whole text.
    std::vector<QRectF> taken;
    for (const bool first : {true, false})
        for (const auto& event : events) {
            const bool run = event.id.starts_with("run_") || event.id.starts_with("stop_");
            const QString word = run == first ? eventWord(event.id) : QString();
            if (word.isEmpty())
                continue;
            const double wide = metrics.horizontalAdvance(word) + 4;
            QRectF box(place(event) - wide / 2, area.top() + 1, wide, metrics.height());
            box.moveLeft(std::clamp(box.left(), area.left() + 1, area.right() - wide));
            if (std::ranges::any_of(taken, [&](const QRectF& other) { return other.intersects(box); }))
                continue;
            taken.push_back(box);
            painter.fillRect(box, palette().color(QPalette::Base));
            painter.setPen(
                palette().color(m_content.stale ? QPalette::Disabled : QPalette::Active, QPalette::WindowText));
            painter.drawText(box, Qt::AlignCenter, word);
        }
}

}  // namespace tapward::app
