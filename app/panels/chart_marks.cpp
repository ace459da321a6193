// SPDX-License-Identifier: GPL-3.0-or-later
// What is painted over the chart's lines: crosshair, named levels, events.
#include <algorithm>
#include <cmath>
#include <QtCharts/QValueAxis>

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

double ChartView::yOf(double shown, const QRectF& area) const
{
    return area.bottom() - (shown - m_left->min()) / (m_left->max() - m_left->min()) * area.height();
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
    paintEvents(*painter, area);
    paintLevels(*painter, area);
    // The crosshair stands on a sample, and the readout beside the chart names its values.
    const double x = xOf(m_x[m_crosshair], area);
    painter->setPen(QPen(palette().color(QPalette::WindowText), m_hovering ? 1.0 : 1.6));
    painter->drawLine(QPointF(x, area.top()), QPointF(x, area.bottom()));
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

void ChartView::paintLevels(QPainter& painter, const QRectF& area) const
{
    const Theme theme = Theme::of(palette());
    const QFontMetricsF metrics(font());
    int row = 0;
    for (const auto& level : chartLevels(*m_content.result, m_content.units)) {
        const double y = yOf(level.shown, area);
        // The target and the cold-line limit lie a degree apart: their names stand at different ends.
        const bool left = row++ == 0;
        if (y < area.top() || y > area.bottom())
            continue;
        const QColor colour = level.danger ? theme.danger : palette().color(QPalette::WindowText);
        QPen pen(colour, 1.2);
        pen.setDashPattern(level.danger ? QList<qreal>{8, 4} : QList<qreal>{3, 3});
        painter.setPen(pen);
        painter.drawLine(QPointF(area.left(), y), QPointF(area.right(), y));
        const QString text = level.danger ? QStringLiteral("\u25B2 ") + level.text : level.text;
        const double wide = metrics.horizontalAdvance(text) + 8;
        QRectF box(left ? area.left() + 6 : area.right() - wide - 6, y - metrics.height() / 2, wide, metrics.height());
        box.translate(0, left ? -metrics.height() / 2 - 2
                              : (level.danger ? -metrics.height() / 2 - 2 : metrics.height() / 2 + 2));
        QColor ground = palette().color(QPalette::Base);
        ground.setAlpha(225);
        painter.fillRect(box, ground);
        painter.setPen(palette().color(QPalette::WindowText));
        painter.drawText(box, Qt::AlignCenter, text);
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
