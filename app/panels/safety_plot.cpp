// SPDX-License-Identifier: GPL-3.0-or-later
#include "panels/safety_plot.h"

#include <algorithm>
#include <cmath>
#include <QPainter>

#include "look/theme.h"
#include "panels/chart_data.h"
#include "panels/say.h"

namespace tapward::app {

namespace {

void paintMark(QPainter& painter, QPointF at, PlotContent::Shape shape, bool hollow, const QColor& colour,
               const QColor& ground, double size)
{
    painter.setPen(QPen(colour, 1.8));
    painter.setBrush(hollow ? ground : colour);
    switch (shape) {
    case PlotContent::Shape::Circle:
        painter.drawEllipse(at, size / 2, size / 2);
        break;
    case PlotContent::Shape::Square:
        painter.drawRect(QRectF(at.x() - size / 2, at.y() - size / 2, size, size));
        break;
    case PlotContent::Shape::Triangle:
        painter.drawPolygon(QPolygonF{{at.x(), at.y() - size * 0.6},
                                      {at.x() + size * 0.58, at.y() + size * 0.45},
                                      {at.x() - size * 0.58, at.y() + size * 0.45}});
        break;
    }
    painter.setBrush(Qt::NoBrush);
}

}  // namespace

SafetyPlot::SafetyPlot(const QString& accessibleName, QWidget* parent) : QWidget(parent)
{
    setAccessibleName(accessibleName);
    setFocusPolicy(Qt::StrongFocus);
    setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Expanding);
}

void SafetyPlot::show(PlotContent content)
{
    m_content = std::move(content);
    setAccessibleDescription(m_content.description);
    QStringList tip{m_content.description, quantityHead(m_content.leftName, m_content.left, m_content.units)
                                               + QStringLiteral(" \u00B7 ")
                                               + quantityHead(m_content.bottomName, m_content.bottom, m_content.units)};
    tip << keyNames().join(QStringLiteral(" \u00B7 "));
    setToolTip(tip.join(QLatin1Char('\n')));
    update();
}

QRectF SafetyPlot::plotArea() const
{
    const QFontMetricsF metrics(font());
    double numbers = metrics.horizontalAdvance(QStringLiteral("0000.0"));
    for (const QString& name : m_content.rowNames)
        numbers = std::max(numbers, metrics.horizontalAdvance(name) + 6);
    numbers = std::min(numbers, width() * 0.45);
    return QRectF(rect()).adjusted(metrics.height() * 1.3 + numbers, metrics.height() * 0.6,
                                   -metrics.height() * 0.8 - keyWidth(), -metrics.height() * 2.6);
}

QPointF SafetyPlot::place(QPointF shown, const QRectF& area) const
{
    const double width = std::max(m_content.toX - m_content.fromX, 1e-12);
    const double height = std::max(m_content.toY - m_content.fromY, 1e-12);
    return {area.left() + (shown.x() - m_content.fromX) / width * area.width(),
            area.bottom() - (shown.y() - m_content.fromY) / height * area.height()};
}

void SafetyPlot::paintAxes(QPainter& painter, const QRectF& area) const
{
    const QFontMetricsF metrics(font());
    const QColor text = palette().color(QPalette::WindowText);
    const QPen grid(Theme::of(palette()).grid, 1);
    const auto number = [](double value, double step) {
        const int decimals = std::clamp(static_cast<int>(std::ceil(-std::log10(step) - 1e-9)), 0, 4);
        return QString::number(std::abs(value) < step / 1e3 ? 0 : value, 'f', decimals);
    };
    const double stepX =
        niceStep(m_content.toX - m_content.fromX,
                 std::clamp(static_cast<int>(area.width() / (metrics.averageCharWidth() * 11)), 2, 10));
    for (double x = std::ceil(m_content.fromX / stepX - 1e-9) * stepX; x <= m_content.toX + stepX * 1e-6; x += stepX) {
        const double at = place({x, 0}, area).x();
        painter.setPen(grid);
        painter.drawLine(QPointF(at, area.top()), QPointF(at, area.bottom()));
        painter.setPen(text);
        painter.drawText(QRectF(at - 60, area.bottom() + 3, 120, metrics.height()), Qt::AlignCenter, number(x, stepX));
    }
    for (std::size_t i = 0; i < m_content.rowNames.size(); ++i) {
        const double at = place({0, static_cast<double>(i) + 0.5}, area).y();
        painter.setPen(text);
        const QRectF box(metrics.height() * 1.3, at - metrics.height() / 2, area.left() - metrics.height() * 1.3 - 6,
                         metrics.height());
        painter.drawText(box, Qt::AlignRight | Qt::AlignVCenter,
                         metrics.elidedText(m_content.rowNames[i], Qt::ElideRight, box.width()));
    }
    const double stepY = niceStep(m_content.toY - m_content.fromY,
                                  std::clamp(static_cast<int>(area.height() / (metrics.height() * 2.2)), 2, 8));
    for (double y = !m_content.rowNames.empty() ? m_content.toY + stepY
                                                : std::ceil(m_content.fromY / stepY - 1e-9) * stepY;
         y <= m_content.toY + stepY * 1e-6; y += stepY) {
        const double at = place({0, y}, area).y();
        painter.setPen(grid);
        painter.drawLine(QPointF(area.left(), at), QPointF(area.right(), at));
        painter.setPen(text);
        painter.drawText(QRectF(area.left() - 106, at - metrics.height() / 2, 100, metrics.height()),
                         Qt::AlignRight | Qt::AlignVCenter, number(y, stepY));
    }
    painter.setPen(QPen(palette().color(QPalette::Mid), 1));
    painter.drawRect(area);
    painter.setPen(text);
    // As long as the widget at most: a longer title is read in the tip.
    const double row = metrics.height() * 1.2, across = area.center().x();
    const double half = std::min(across, width() - across) - 2;
    painter.drawText(QRectF(across - half, area.bottom() + row, 2 * half, row), Qt::AlignCenter,
                     metrics.elidedText(quantityHead(m_content.bottomName, m_content.bottom, m_content.units),
                                        Qt::ElideRight, 2 * half));
    painter.save();
    painter.translate(metrics.height() * 0.75, height() / 2.0);
    painter.rotate(-90);
    painter.drawText(QRectF(-height() / 2.0, -row / 2, height(), row), Qt::AlignCenter,
                     metrics.elidedText(quantityHead(m_content.leftName, m_content.left, m_content.units),
                                        Qt::ElideRight, height() - 4.0));
    painter.restore();
}

void SafetyPlot::paintLevels(QPainter& painter, const QRectF& area) const
{
    for (const auto& level : m_content.levels) {
        const QPointF at = place({level.at, level.at}, area);
        const QLineF line = level.upright ? QLineF(at.x(), area.top(), at.x(), area.bottom())
                                          : QLineF(area.left(), at.y(), area.right(), at.y());
        if (!area.adjusted(-0.5, -0.5, 0.5, 0.5).contains(line.center()))
            continue;
        painter.setPen(levelPen(level.danger));
        painter.drawLine(line);
    }
}

/// Over the lines and beside the marks; names of lines close together stand one under the other.
void SafetyPlot::paintLevelNames(QPainter& painter, const QRectF& area)
{
    const QFontMetricsF metrics(font());
    for (const auto& level : m_content.levels) {
        const QPointF at = place({level.at, level.at}, area);
        const QSizeF size(metrics.horizontalAdvance(level.text) + 6, metrics.height());
        std::vector<QRectF> places;
        if (level.upright && at.x() >= area.left() - 0.5 && at.x() <= area.right() + 0.5) {
            for (const double left : {at.x() + 3, at.x() - 3 - size.width()})
                for (double up = area.bottom() - 1.15 * size.height(); up > area.top(); up -= size.height() * 0.5)
                    places.emplace_back(QPointF(left, up), size);
        } else if (!level.upright && at.y() >= area.top() - 0.5 && at.y() <= area.bottom() + 0.5) {
            places.emplace_back(QPointF(area.right() - size.width() - 4, at.y() - size.height()), size);
        }
        painter.setPen(levelPen(level.danger).color());
        paintText(painter, places, area, level.text);
    }
}

QPen SafetyPlot::levelPen(bool danger) const
{
    const QColor colour = danger ? Theme::of(palette()).danger : palette().color(QPalette::WindowText);
    return {colour, 1.4, danger ? Qt::DashLine : Qt::DotLine};
}

void SafetyPlot::paintEvent(QPaintEvent*)
{
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    const QColor ground = palette().color(QPalette::Base);
    painter.fillRect(rect(), ground);
    const QRectF area = plotArea();
    if (area.width() < 40 || area.height() < 40)
        return;
    paintAreas(painter, area);
    paintAxes(painter, area);
    m_taken.clear();
    paintLevels(painter, area);
    const QFontMetricsF metrics(font());
    std::vector<QPolygonF> lines;
    for (const auto& line : m_content.lines) {
        QPolygonF& points = lines.emplace_back();
        for (const QPointF& point : line.points)
            points << place(point, area);
        painter.save();
        painter.setClipRect(area);
        QPen pen = chartPen(line.style, palette(), m_content.stale);
        pen.setWidthF(line.heavy ? 3 : 1.8);
        painter.setPen(pen);
        painter.drawPolyline(points);
        painter.restore();
    }
    painter.setPen(palette().color(QPalette::WindowText));
    for (std::size_t i = 0; i < lines.size(); ++i) {  // over all lines
        const auto& line = m_content.lines[i];
        if (line.end.isEmpty())
            continue;
        // Where another text stands already, further along the line.
        std::vector<QRectF> places;
        const QSizeF size(metrics.horizontalAdvance(line.end) + 4, metrics.height());
        for (const QPointF& at : lines[i])
            places.emplace_back(QPointF(at.x() + 4, at.y() - metrics.height() / 2), size);
        if (!line.nameAtStart)
            std::ranges::reverse(places);
        paintText(painter, places, area, line.end);
    }
    const double markSize = metrics.height() * 0.6;
    for (const auto& mark : m_content.marks)
        m_taken.push_back(QRectF(place(mark.at, area) - QPointF(markSize, markSize) / 2, QSizeF(markSize, markSize)));
    for (const auto& mark : m_content.marks) {
        const QPointF at = place(mark.at, area);
        if (!area.adjusted(-1, -1, 1, 1).contains(at))
            continue;
        paintMark(painter, at, mark.shape, mark.hollow, chartPen(mark.style, palette(), m_content.stale).color(),
                  ground, markSize);
        if (mark.text.isEmpty())
            continue;
        painter.setPen(palette().color(QPalette::WindowText));
        const QSizeF size(metrics.horizontalAdvance(mark.text) + 4, metrics.height());
        const double gap = metrics.height() * 0.5;
        paintText(painter,
                  {QRectF(QPointF(at.x() + gap, at.y() - 2.2 * gap), size),
                   QRectF(QPointF(at.x() + gap, at.y() + 0.2 * gap), size),
                   QRectF(QPointF(at.x() - gap - size.width(), at.y() - 2.2 * gap), size),
                   QRectF(QPointF(at.x() - gap - size.width(), at.y() + 0.2 * gap), size)},
                  area, mark.text);
    }
    paintLevelNames(painter, area);
    paintNotes(painter, area);
    paintKey(painter, area);
    if (hasFocus()) {
        painter.setPen(QPen(palette().color(QPalette::Highlight), 2));
        painter.setBrush(Qt::NoBrush);
        painter.drawRect(QRectF(rect()).adjusted(1, 1, -1, -1));
    }
}

}  // namespace tapward::app
