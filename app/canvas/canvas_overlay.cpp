// SPDX-License-Identifier: GPL-3.0-or-later
// What the canvas paints under and over its items: grid, selection, what a gesture shows.
#include <algorithm>
#include <cmath>
#include <limits>
#include <QImage>
#include <QPainter>

#include "canvas/canvas_view.h"
#include "canvas/floor_plan_painter.h"
#include "canvas/heat_painter.h"
#include "canvas/label_crowd.h"
#include "canvas/shape_painter.h"

namespace tapward::app {

void CanvasView::drawBackground(QPainter* painter, const QRectF& rect)
{
    painter->fillRect(rect, m_options.theme.paper);
    paintFloorPlans(*painter, shown(), m_options.theme, m_layout.labels);
    if (m_gridShown)
        paintGrid(*painter);
    for (const auto& bridge : m_layout.bridges)
        paintBridge(*painter, bridge, m_options);
    // Under what it marks, so that tags beside a selected symbol stay readable.
    for (const auto id : m_session.selection())
        paintSelection(*painter, id, m_options.theme.selection, hasFocus() ? 2.0 : 1.2, m_layout);
    // Letters stand close to the symbol: its frame leaves them out, as a group's frame does its title.
    const double off = toUnits(5.5);
    for (const auto id : m_session.selection())
        if (const auto* symbol = m_layout.symbol(id)) {
            const QRectF frame = inkOf(*symbol).adjusted(-off, -off, off, off);
            for (const auto& label : m_layout.labels)
                if (const QRectF letters = label.box.adjusted(-1, 0.15 * label.size, 1, 0); letters.intersects(frame))
                    painter->fillRect(letters & frame, m_options.theme.paper);
        }
}

void CanvasView::paintGrid(QPainter& painter) const
{
    double step = kModule;
    while (step * zoom() < 9)
        step *= 5;
    // One row of dots is painted into a picture, and that picture put down row by row: thousands of single
    // dots are the dearest thing in a frame.
    const double ratio = viewport()->devicePixelRatioF();
    const int dot = std::max(1, static_cast<int>(std::lround((zoom() >= 1.5 ? 2.0 : 1.6) * ratio)));
    const QRectF seen = viewportTransform().inverted().mapRect(QRectF(viewport()->rect()));
    const auto onScreen = [&](double x, double y) {
        const QPointF at = viewportTransform().map(QPointF(x, y)) * ratio;
        return QPoint(static_cast<int>(std::lround(at.x())) - dot / 2, static_cast<int>(std::lround(at.y())) - dot / 2);
    };
    QImage row(static_cast<int>(viewport()->width() * ratio) + 1, dot, QImage::Format_ARGB32_Premultiplied);
    row.fill(Qt::transparent);
    QPainter dots(&row);
    const double left = std::floor(seen.left() / step) * step, top = std::floor(seen.top() / step) * step;
    for (double x = left; x <= seen.right(); x += step)
        dots.fillRect(onScreen(x, 0).x(), 0, dot, dot, m_options.theme.grid);
    dots.end();
    row.setDevicePixelRatio(ratio);
    painter.save();
    painter.resetTransform();
    for (double y = top; y <= seen.bottom(); y += step)
        painter.drawImage(QPointF(0, onScreen(0, y).y() / ratio), row);
    painter.restore();
}

void CanvasView::paintSelection(QPainter& painter, document::PartId id, const QColor& colour, double pixels,
                                const DrawingLayout& layout) const
{
    if (const auto* symbol = layout.symbol(id)) {
        const double off = toUnits(4);
        QPen pen(colour, toUnits(pixels));
        painter.setPen(pen);
        QColor fill = colour;
        fill.setAlpha(28);
        painter.setBrush(fill);
        painter.drawRoundedRect(inkOf(*symbol).adjusted(-off, -off, off, off), toUnits(4), toUnits(4));
    } else if (const auto* pipe = layout.pipe(id)) {
        QColor halo = colour;
        halo.setAlpha(110);
        QPen pen(halo, std::max(toUnits(9), 6.0));
        pen.setCapStyle(Qt::RoundCap);
        pen.setJoinStyle(Qt::RoundJoin);
        painter.setPen(pen);
        painter.setBrush(Qt::NoBrush);
        painter.drawPath(pipe->path);
    }
}

void CanvasView::paintPipeEnds(QPainter& painter) const
{
    const auto chosen = m_session.selection();
    const auto* pipe = chosen.size() == 1 ? m_layout.pipe(chosen.front()) : nullptr;
    if (pipe == nullptr || pipe->corners.empty())
        return;
    painter.setBrush(m_options.theme.paper);
    painter.setPen(QPen(m_options.theme.selection, toUnits(2)));
    const double half = toUnits(5);
    for (const QPointF& end : {pipe->corners.front(), pipe->corners.back()})
        painter.drawRect(QRectF(end - QPointF(half, half), end + QPointF(half, half)));
}

void CanvasView::paintOverlay(QPainter& painter) const
{
    const Theme& theme = m_options.theme;
    if (!m_overlay.guides.empty()) {
        QPen pen(theme.target, toUnits(1));
        pen.setDashPattern({6, 4});
        painter.setPen(pen);
        for (const QLineF& guide : m_overlay.guides)
            painter.drawLine(guide);
    }
    if (m_overlay.line.size() > 1) {
        QPen pen(theme.target, toUnits(2.5));
        pen.setJoinStyle(Qt::MiterJoin);
        painter.setPen(pen);
        painter.setBrush(Qt::NoBrush);
        painter.drawPolyline(QPolygonF(QList<QPointF>(m_overlay.line.begin(), m_overlay.line.end())));
    }
    painter.setBrush(theme.paper);
    painter.setPen(QPen(theme.target, toUnits(2)));
    for (const auto& port : m_overlay.ports)
        painter.drawEllipse(port, toUnits(5), toUnits(5));
    if (m_overlay.port) {
        painter.setBrush(theme.target);
        painter.drawEllipse(*m_overlay.port, toUnits(8), toUnits(8));
    }
    if (m_overlay.band) {
        QColor fill = theme.selection;
        fill.setAlpha(36);
        painter.setBrush(fill);
        painter.setPen(QPen(theme.selection, toUnits(1)));
        painter.drawRect(*m_overlay.band);
    }
}

QRectF CanvasView::scaleBox() const
{
    const QSizeF size(300, 36);
    const double right = viewport()->width() - size.width() - 16, low = viewport()->height() - size.height() - 16;
    QRectF best;
    int least = std::numeric_limits<int>::max();
    for (const QPointF corner : {QPointF(16, low), QPointF(right, low), QPointF(16, 16), QPointF(right, 16)}) {
        const QRectF box(corner, size);
        const QRectF ground = mapToScene(box.adjusted(-8, -8, 8, 6).toAlignedRect()).boundingRect();
        const auto covered = [&ground](const auto& shapes, auto boxOf) {
            return std::ranges::count_if(shapes, [&](const auto& one) { return boxOf(one).intersects(ground); });
        };
        const auto cost = static_cast<int>(covered(m_layout.symbols, [](const auto& one) { return one.box(); })
                                           + covered(m_layout.labels, [](const auto& one) { return one.box; })
                                           + covered(m_layout.numbers, [](const auto& one) { return one.box; }));
        if (cost < least) {
            least = cost;
            best = box;
        }
    }
    return best;
}

void CanvasView::drawForeground(QPainter* painter, const QRectF&)
{
    const Theme& theme = m_options.theme;
    painter->save();
    for (const auto& number : m_layout.numbers)
        paintNumber(*painter, number, m_options);
    for (const auto id : m_overlay.joinTargets)
        paintSelection(*painter, id, theme.target, 3.0, layoutOfDrawing());  // the pipe as it is, whole
    if (m_pointedOut != document::kNoPart) {
        QPointF at;
        if (const auto* symbol = m_layout.symbol(m_pointedOut))
            at = symbol->at;
        else if (const auto* pipe = m_layout.pipe(m_pointedOut))
            at = pipe->path.pointAtPercent(0.5);
        painter->setBrush(Qt::NoBrush);
        painter->setPen(QPen(theme.caution, toUnits(4)));
        painter->drawEllipse(at, toUnits(48), toUnits(48));
    }
    paintPipeEnds(*painter);
    paintOverlay(*painter);
    painter->resetTransform();
    if (shown().parts.empty()) {
        painter->setPen(theme.quietText);
        painter->setFont(font());
        painter->drawText(viewport()->rect(), Qt::AlignCenter,
                          tr("Drag a part from the list onto the canvas, or press Insert.\n"
                             "Drag from port to port to draw a pipe."));
    }
    if (m_options.snapshot != nullptr) {
        const QRectF box = scaleBox();
        QColor ground = theme.paper;
        ground.setAlpha(225);
        painter->setPen(Qt::NoPen);
        painter->setBrush(ground);
        painter->drawRoundedRect(box.adjusted(-8, -8, 8, 6), 4, 4);
        paintTemperatureScale(*painter, box, m_options);
    }
    if (hasFocus()) {
        painter->setBrush(Qt::NoBrush);
        painter->setPen(QPen(theme.selection, 2));
        painter->drawRect(QRectF(viewport()->rect()).adjusted(1, 1, -1, -1));
    }
    painter->restore();
}

}  // namespace tapward::app
