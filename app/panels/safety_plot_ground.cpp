// SPDX-License-Identifier: GPL-3.0-or-later
// What lies under the lines of a safety chart, and its key.
#include <algorithm>
#include <QPainter>

#include "panels/chart_data.h"
#include "panels/safety_plot.h"

namespace tapward::app {

namespace {

constexpr double kKeySample = 26;   // px at 1x: long enough to show the dashes
constexpr double kMostKey = 0.34;   // of the width

}  // namespace

/// A text with the chart's ground behind it, so that it is read over any line; at the first of these places
/// where no other text stands.
/// @return whether there was one; with `needed` it is written at the first place all the same
bool SafetyPlot::paintText(QPainter& painter, const std::vector<QRectF>& places, const QRectF& inside,
                           const QString& text, bool needed) const
{
    const auto within = [&](QRectF box) {
        box.moveLeft(std::clamp(box.left(), inside.left(), std::max(inside.left(), inside.right() - box.width())));
        box.moveTop(std::clamp(box.top(), inside.top(), std::max(inside.top(), inside.bottom() - box.height())));
        return box;
    };
    auto box = std::ranges::find_if(places, [&](const QRectF& one) {
        return std::ranges::none_of(m_taken, [&](const QRectF& other) { return other.intersects(within(one)); });
    });
    const bool free = box != places.end();
    if (places.empty() || (!free && !needed))
        return false;
    const QRectF at = within(free ? *box : places.front());
    m_taken.push_back(at);
    QColor behind = palette().color(QPalette::Base);
    behind.setAlphaF(0.82F);
    painter.fillRect(at, behind);
    painter.drawText(at, Qt::AlignCenter, text);
    return free;
}

void SafetyPlot::paintAreas(QPainter& painter, const QRectF& area) const
{
    painter.save();
    painter.setClipRect(area);
    for (const auto& region : m_content.areas) {
        QPolygonF outline;
        for (const QPointF& point : region.outline)
            outline << place(point, area);
        const QColor colour = areaColour(region);
        painter.setPen(region.faint ? QPen(colour, 1) : QPen(Qt::NoPen));
        painter.setBrush(QBrush(colour, region.hatch));
        painter.drawPolygon(outline);
    }
    painter.setBrush(Qt::NoBrush);
    painter.restore();
}

QColor SafetyPlot::areaColour(const PlotContent::Area& region) const
{
    QColor colour = chartPen(region.style, palette(), m_content.stale).color();
    if (region.faint)
        colour.setAlphaF(0.6F);
    return colour;
}

void SafetyPlot::paintNotes(QPainter& painter, const QRectF& area) const
{
    const QFontMetricsF metrics(font());
    painter.setPen(palette().color(QPalette::WindowText));
    for (const auto& note : m_content.notes) {
        const QRectF room =
            QRectF(place(note.place.topLeft(), area), place(note.place.bottomRight(), area)).normalized();
        const QSizeF size(metrics.horizontalAdvance(note.text) + 6, metrics.height());
        std::vector<QRectF> places;
        for (const double across : {0.5, 0.75, 0.25})
            for (const double down : {0.5, 0.2, 0.8}) {
                QRectF box(QPointF(), size);
                box.moveCenter({room.left() + across * room.width(), room.top() + down * room.height()});
                if (room.contains(box))
                    places.push_back(box);
            }
        paintText(painter, places, area, note.text, false);  // the key has it too
    }
}

double SafetyPlot::keyWidth() const
{
    const QFontMetricsF metrics(font());
    double widest = 0;
    for (const QString& name : keyNames())
        widest = std::max(widest, metrics.horizontalAdvance(name));
    return widest > 0 ? std::min(widest + kKeySample + 24, width() * kMostKey) : 0;
}

QStringList SafetyPlot::keyNames() const
{
    QStringList names;
    for (const auto& region : m_content.areas)
        if (!region.name.isEmpty())
            names << region.name;
    for (const auto& line : m_content.lines)
        if (!line.name.isEmpty())
            names << line.name;
    return names;
}

/// Beside the chart, where it hides nothing.
void SafetyPlot::paintKey(QPainter& painter, const QRectF& area) const
{
    if (keyWidth() <= 0)
        return;
    const QFontMetricsF metrics(font());
    const double left = width() - keyWidth() + 2, words = left + kKeySample + 8;
    const double row = std::min(metrics.height() * 1.3, (height() - 4.0) / static_cast<double>(keyNames().size()));
    double y = area.top();
    if (y + row * static_cast<double>(keyNames().size()) > height())
        y = 2;
    const auto write = [&](const QString& name) {
        painter.setPen(palette().color(QPalette::WindowText));
        painter.drawText(QRectF(words, y, width() - words - 4, row), Qt::AlignVCenter,
                         metrics.elidedText(name, Qt::ElideRight, width() - words - 4));
        y += row;
    };
    for (const auto& region : m_content.areas)
        if (!region.name.isEmpty()) {
            const QRectF sample(left, y + row * 0.15, kKeySample, row * 0.7);
            const QColor colour = areaColour(region);
            painter.fillRect(sample, QBrush(colour, region.hatch));
            painter.setPen(QPen(colour, 1));
            painter.drawRect(sample);
            write(region.name);
        }
    for (const auto& line : m_content.lines)
        if (!line.name.isEmpty()) {
            QPen pen = chartPen(line.style, palette(), m_content.stale);
            pen.setWidthF(line.heavy ? 3 : 1.8);
            painter.setPen(pen);
            painter.drawLine(QPointF(left, y + row / 2), QPointF(left + kKeySample, y + row / 2));
            write(line.name);
        }
}

}  // namespace tapward::app
