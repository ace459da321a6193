// SPDX-License-Identifier: GPL-3.0-or-later
// The canvas's zoom and pan.
#include <algorithm>
#include <cmath>
#include <QScrollBar>

#include "canvas/canvas_view.h"

namespace tapward::app {

namespace {

constexpr double kLeastZoom = 0.1, kMostZoom = 8.0;

}  // namespace

void CanvasView::zoomAbout(const QPointF& fixed, double newZoom)
{
    m_fitted = false;
    newZoom = std::clamp(newZoom, kLeastZoom, kMostZoom);
    const bool goesOn = fixed == m_zoomFixed && viewportTransform() == m_zoomedTo;
    const QPointF point = goesOn ? m_zoomPoint : viewportTransform().inverted().map(fixed);
    setTransform(QTransform::fromScale(newZoom, newZoom));
    pan(fixed - viewportTransform().map(point));
    m_zoomFixed = fixed;
    m_zoomPoint = point;
    m_zoomedTo = viewportTransform();
    const double size = m_options.labelSize;
    refreshOptions();
    if (size != m_options.labelSize)
        relabelAll();
    viewport()->update();
    Q_EMIT zoomChanged(zoom());
}

void CanvasView::pan(const QPointF& pixels)
{
    m_fitted = false;
    horizontalScrollBar()->setValue(horizontalScrollBar()->value() - static_cast<int>(std::lround(pixels.x())));
    verticalScrollBar()->setValue(verticalScrollBar()->value() - static_cast<int>(std::lround(pixels.y())));
}

void CanvasView::setZoom(double zoom) { zoomAbout(QRectF(viewport()->rect()).center(), zoom); }

void CanvasView::zoomIn() { setZoom(zoom() * kZoomStep * kZoomStep); }

void CanvasView::zoomOut() { setZoom(zoom() / (kZoomStep * kZoomStep)); }

void CanvasView::resetZoom() { setZoom(1.0); }

// Not larger than 200 %: three parts on a big screen should not turn into posters.
void CanvasView::fitDrawing() { fitWithin(2.0); }

void CanvasView::fitWithin(double most)
{
    // Letters keep their size on screen, so labels reach further out on the drawing the smaller it gets: what fits
    // is looked at again at its own zoom.
    for (int look = 0; look < 3; ++look) {
        QRectF area = m_layout.bounds;
        if (area.isNull()) {  // room for a coach
            area = QRectF(-200, -150, 400, 300);
            most = 1.0;
        }
        area.adjust(-20, -20, 20, 20);
        const QSizeF view = viewport()->size();
        setZoom(std::min({view.width() / area.width(), view.height() / area.height(), most}));
        centerOn(area.center());
        const QRectF shown = viewportTransform().inverted().mapRect(QRectF(viewport()->rect()));
        if (m_layout.bounds.isNull() || shown.contains(m_layout.bounds))
            break;
    }
    m_fitted = true;
}

void CanvasView::resizeEvent(QResizeEvent* event)
{
    QGraphicsView::resizeEvent(event);
    if (m_fitted)  // a drawing just begun is not blown up to its first part
        fitWithin(std::max(1.0, zoom()));
}

QRectF CanvasView::selectionBox() const
{
    QRectF area;
    for (const auto id : m_session.selection())
        area |= boxOf(id);
    return area;
}

void CanvasView::showSelectionToo()
{
    const QRectF seen = viewportTransform().inverted().mapRect(QRectF(viewport()->rect()));
    QRectF area = selectionBox();
    if (area.isNull() || seen.contains(area))
        return;
    area.adjust(-40, -40, 40, 40);  // with its labels
    area |= seen & m_layout.bounds;
    if (area.adjusted(-60, -60, 60, 60).contains(m_layout.bounds))
        return fitDrawing();  // nearly all of it: then whole, labels and all
    const QSizeF view = viewport()->size();
    setZoom(std::min({view.width() / area.width(), view.height() / area.height(), zoom()}));
    centerOn(area.center());
}

void CanvasView::fitSelection()
{
    QRectF area = selectionBox();
    if (area.isNull())
        return fitDrawing();
    area.adjust(-60, -60, 60, 60);
    const QSizeF view = viewport()->size();
    setZoom(std::min({view.width() / area.width(), view.height() / area.height(), 3.0}));
    centerOn(area.center());
}

void CanvasView::showPart(document::PartId id)
{
    QPointF at;
    if (const auto* symbol = m_layout.symbol(id))
        at = symbol->at;
    else if (const auto* pipe = m_layout.pipe(id))
        at = pipe->path.pointAtPercent(0.5);
    else if (m_session.drawing().find(id) != nullptr) {
        Q_EMIT message(tr("This part is not in the view shown. Switch the stage to Both to see it."));
        return;
    } else
        return;
    if (zoom() < 0.8)
        setZoom(1.0);
    centerOn(at);
    m_session.select({id});
    m_pointedOut = id;
    m_pointOutTimer.start(2500, this);
    viewport()->update();
}

}  // namespace tapward::app
