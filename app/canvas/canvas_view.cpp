// SPDX-License-Identifier: GPL-3.0-or-later
#include "canvas/canvas_view.h"

#include <algorithm>
#include <cmath>
#include <QEvent>
#include <QKeyEvent>
#include <QMouseEvent>
#include <QNativeGestureEvent>
#include <QPainter>
#include <QScrollBar>
#include <QTimerEvent>
#include <QWheelEvent>
#include <utility>

#include "canvas/floor_plan_painter.h"
#include "canvas/heat_painter.h"
#include "canvas/shape_painter.h"

namespace tapward::app {

namespace {

constexpr double kLeastZoom = 0.1, kMostZoom = 8.0, kZoomStep = 1.189207115;  // fourth root of two
constexpr double kWorld = 60000;  // canvas units each way: room to pan without end stops in sight
constexpr int kEdge = 18;         // pixels from the edge where a drag scrolls

}  // namespace

CanvasView::CanvasView(Session& session, QWidget* parent)
    : QGraphicsView(parent), m_session(session), m_tool(&m_idleTool)
{
    setScene(&m_scene);
    m_scene.setSceneRect(-kWorld, -kWorld, 2 * kWorld, 2 * kWorld);
    // The items are few and change together: an index costs more than it saves, and previews would
    // leave it stale.
    m_scene.setItemIndexMethod(QGraphicsScene::NoIndex);
    setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    setVerticalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    setTransformationAnchor(NoAnchor);
    setResizeAnchor(NoAnchor);
    setViewportUpdateMode(FullViewportUpdate);
    setOptimizationFlag(DontSavePainterState);
    setRenderHint(QPainter::Antialiasing);
    setFrameShape(NoFrame);
    setMouseTracking(true);
    viewport()->setMouseTracking(true);
    setFocusPolicy(Qt::StrongFocus);
    setAccessibleName(tr("Drawing"));
    setAccessibleDescription(tr("The coach's plumbing. Tab walks through the parts, Insert adds one, C connects, "
                                "the Menu key lists what can be done. The outline pane says the same in words."));
    setMinimumSize(240, 180);
    centerOn(0, 0);

    connect(&session, &Session::changed, this, [this] {
        m_preview.reset();
        rebuild();
    });
    connect(&session, &Session::viewChanged, this, [this] {
        refreshOptions();
        showMoment();
        rebuild();
    });
    connect(&session, &Session::predictionChanged, this, &CanvasView::showMoment);
    connect(&session, &Session::caseChanged, this, &CanvasView::showMoment);
    connect(&session, &Session::timeChanged, this, &CanvasView::showMoment);
    connect(&session, &Session::selectionChanged, this, [this] { viewport()->update(); });
    connect(&session, &Session::jumpTo, this, &CanvasView::showPart);
    refreshOptions();
    rebuild();
}

CanvasView::~CanvasView() = default;

void CanvasView::refreshOptions()
{
    m_options.view = m_session.view();
    m_options.units = m_session.units();
    m_options.theme = Theme::of(palette());
    m_options.openPortMarks = true;
    // Letters keep their size on screen between limits; in steps, so that a zoom rarely moves a label.
    const double factor = std::clamp(1.0 / zoom(), 0.6, 1.5);
    m_options.labelSize = std::round(10.0 * factor * 4) / 4;
}

void CanvasView::showMoment()
{
    const study::Snapshot* snapshot = nullptr;
    m_heatSource = m_session.sharedPrediction();
    if (m_session.showsMoment() && !m_session.isStale())
        if (const auto* now = m_session.currentCase(); now != nullptr && !now->snapshot.empty())
            snapshot = &now->snapshot;
    const bool switched = (snapshot == nullptr) != (m_options.snapshot == nullptr);
    m_options.snapshot = snapshot;
    m_options.time_s = m_session.time();
    if (switched)
        rebuild();  // pipes give up their labels to the temperatures
    viewport()->update();
}

void CanvasView::rebuild()
{
    // The drawing just changed, so what was predicted for it is no longer shown as current.
    if (m_session.isStale() || m_preview)
        m_options.snapshot = nullptr;
    m_layout = layoutOf(shown(), m_options);
    std::map<document::PartId, const LabelShape*> labels;
    for (const auto& label : m_layout.labels)
        labels[label.id] = &label;
    const auto labelOf = [&](document::PartId id) {
        const auto found = labels.find(id);
        return found == labels.end() ? std::optional<LabelShape>() : std::optional<LabelShape>(*found->second);
    };
    std::set<document::PartId> alive;
    for (const auto& symbol : m_layout.symbols) {
        auto& item = m_parts[symbol.id];
        if (!item) {
            item = std::make_unique<PartItem>(m_options);
            m_scene.addItem(item.get());
        }
        item->show(symbol, labelOf(symbol.id));
        alive.insert(symbol.id);
    }
    for (const auto& pipe : m_layout.pipes) {
        auto& item = m_pipes[pipe.id];
        if (!item) {
            item = std::make_unique<PipeItem>(m_options);
            m_scene.addItem(item.get());
        }
        item->show(pipe, labelOf(pipe.id));
        alive.insert(pipe.id);
    }
    std::erase_if(m_parts, [&](const auto& item) { return alive.count(item.first) == 0; });
    std::erase_if(m_pipes, [&](const auto& item) { return alive.count(item.first) == 0; });
    viewport()->update();
}

void CanvasView::preview(const document::Edit& edit)
{
    if (document::refusal(m_session.drawing(), edit)) {
        clearPreview();
        return;
    }
    auto copy = std::make_unique<document::Drawing>(m_session.drawing());
    document::apply(*copy, edit);
    if (!m_preview)
        m_base = std::move(m_layout);
    m_preview = std::move(copy);
    rebuild();
}

void CanvasView::clearPreview()
{
    if (!m_preview)
        return;
    m_preview.reset();
    rebuild();
    showMoment();
}

void CanvasView::setOverlay(Overlay overlay)
{
    m_overlay = std::move(overlay);
    viewport()->update();
}

void CanvasView::setTool(CanvasTool* tool)
{
    if (tool == m_tool)
        return;
    m_tool->cancel();
    m_tool = tool;
    m_pressed = false;
    setOverlay({});
    updateCursor();
}

void CanvasView::updateCursor()
{
    viewport()->setCursor(m_panning ? Qt::ClosedHandCursor : m_spaceHeld ? Qt::OpenHandCursor : m_tool->cursor());
}

QPointF CanvasView::snapped(const QPointF& at, Qt::KeyboardModifiers keys) const
{
    if (!m_snaps || (keys & Qt::AltModifier))
        return at;
    return {std::round(at.x() / kModule) * kModule, std::round(at.y() / kModule) * kModule};
}

Pointer CanvasView::pointerAt(const QPoint& onScreen, Qt::KeyboardModifiers keys) const
{
    return {mapToScene(onScreen), onScreen, keys};
}

std::optional<QPoint> CanvasView::mouseOnView() const
{
    const QPoint at = viewport()->mapFromGlobal(QCursor::pos());
    return viewport()->rect().contains(at) ? std::optional(at) : std::nullopt;
}

// --- zoom and pan ---

void CanvasView::zoomAbout(const QPointF& fixed, double newZoom)
{
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
        rebuild();
    viewport()->update();
    Q_EMIT zoomChanged(zoom());
}

void CanvasView::pan(const QPointF& pixels)
{
    horizontalScrollBar()->setValue(horizontalScrollBar()->value() - static_cast<int>(std::lround(pixels.x())));
    verticalScrollBar()->setValue(verticalScrollBar()->value() - static_cast<int>(std::lround(pixels.y())));
}

void CanvasView::setZoom(double zoom) { zoomAbout(QRectF(viewport()->rect()).center(), zoom); }

void CanvasView::zoomIn() { setZoom(zoom() * kZoomStep * kZoomStep); }

void CanvasView::zoomOut() { setZoom(zoom() / (kZoomStep * kZoomStep)); }

void CanvasView::resetZoom() { setZoom(1.0); }

void CanvasView::fitDrawing()
{
    QRectF area = m_layout.bounds;
    if (area.isNull())
        area = QRectF(-200, -150, 400, 300);
    area.adjust(-20, -20, 20, 20);
    const QSizeF view = viewport()->size();
    // Not larger than 200 %: three parts on a big screen should not turn into posters.
    setZoom(std::min({view.width() / area.width(), view.height() / area.height(), 2.0}));
    centerOn(area.center());
}

void CanvasView::fitSelection()
{
    QRectF area;
    for (const auto id : m_session.selection()) {
        if (const auto* symbol = m_layout.symbol(id))
            area |= symbol->box();
        else if (const auto* pipe = m_layout.pipe(id))
            area |= pipe->path.controlPointRect().adjusted(-1, -1, 1, 1);
    }
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

void CanvasView::setGridShown(bool on)
{
    m_gridShown = on;
    viewport()->update();
}

void CanvasView::setSnaps(bool on) { m_snaps = on; }

// --- events ---

void CanvasView::wheelEvent(QWheelEvent* event)
{
    if (event->modifiers() & Qt::ControlModifier) {
        const double steps = event->angleDelta().y() / 120.0;
        zoomAbout(event->position(), zoom() * std::pow(kZoomStep, steps));
    } else {
        QPointF way = event->pixelDelta().isNull() ? QPointF(event->angleDelta()) * 0.5 : QPointF(event->pixelDelta());
        if ((event->modifiers() & Qt::ShiftModifier) && way.x() == 0)
            way = {way.y(), 0};
        pan(way);
    }
    event->accept();
    // What is under the mouse has moved.
    m_tool->move(pointerAt(event->position().toPoint(), event->modifiers()), m_pressed);
}

bool CanvasView::viewportEvent(QEvent* event)
{
    if (event->type() == QEvent::NativeGesture) {
        auto* gesture = static_cast<QNativeGestureEvent*>(event);
        if (gesture->gestureType() == Qt::ZoomNativeGesture) {
            zoomAbout(gesture->position(), zoom() * (1.0 + gesture->value()));
            return true;
        }
    }
    return QGraphicsView::viewportEvent(event);
}

void CanvasView::mousePressEvent(QMouseEvent* event)
{
    m_lastMouse = event->position().toPoint();
    if (event->button() == Qt::MiddleButton || (event->button() == Qt::LeftButton && m_spaceHeld)) {
        m_panning = true;
        updateCursor();
    } else if (event->button() == Qt::LeftButton) {
        m_pressed = true;
        m_tool->press(pointerAt(m_lastMouse, event->modifiers()));
    } else {
        event->ignore();
        return;
    }
    event->accept();
}

void CanvasView::mouseMoveEvent(QMouseEvent* event)
{
    const QPoint now = event->position().toPoint();
    if (m_panning)
        pan(now - m_lastMouse);
    m_lastMouse = now;
    // A pipe being drawn follows the mouse while the view is panned, too.
    m_tool->move(pointerAt(now, event->modifiers()), m_pressed);
    updateCursor();
    if (m_pressed && !m_panning && !viewport()->rect().adjusted(kEdge, kEdge, -kEdge, -kEdge).contains(now))
        m_edgeTimer.start(30, this);
    else
        m_edgeTimer.stop();
    event->accept();
}

void CanvasView::mouseReleaseEvent(QMouseEvent* event)
{
    m_edgeTimer.stop();
    if (m_panning && (event->button() == Qt::MiddleButton || event->button() == Qt::LeftButton)) {
        m_panning = false;
    } else if (event->button() == Qt::LeftButton && std::exchange(m_pressed, false)) {
        m_tool->release(pointerAt(event->position().toPoint(), event->modifiers()));
    }
    updateCursor();
    event->accept();
}

void CanvasView::mouseDoubleClickEvent(QMouseEvent* event)
{
    if (event->button() == Qt::LeftButton && !m_spaceHeld) {
        m_pressed = true;
        m_tool->doubleClick(pointerAt(event->position().toPoint(), event->modifiers()));
        event->accept();
    }
}

void CanvasView::keyPressEvent(QKeyEvent* event)
{
    if (m_tool->key(*event)) {
        event->accept();
        return;
    }
    if (event->key() == Qt::Key_Space && !event->isAutoRepeat()) {
        m_spaceHeld = true;
        updateCursor();
        return;
    }
    // The base class would scroll by the arrow keys.
    event->ignore();
}

void CanvasView::keyReleaseEvent(QKeyEvent* event)
{
    if (event->key() == Qt::Key_Space && !event->isAutoRepeat()) {
        m_spaceHeld = false;
        updateCursor();
    }
    event->ignore();
}

void CanvasView::focusOutEvent(QFocusEvent* event)
{
    m_spaceHeld = false;
    QGraphicsView::focusOutEvent(event);
    viewport()->update();
}

void CanvasView::leaveEvent(QEvent* event)
{
    QGraphicsView::leaveEvent(event);
    viewport()->update();
}

void CanvasView::timerEvent(QTimerEvent* event)
{
    if (event->timerId() == m_pointOutTimer.timerId()) {
        m_pointOutTimer.stop();
        m_pointedOut = document::kNoPart;
        viewport()->update();
        return;
    }
    if (event->timerId() == m_edgeTimer.timerId()) {
        const QRect inner = viewport()->rect().adjusted(kEdge, kEdge, -kEdge, -kEdge);
        QPointF way;
        way.setX(m_lastMouse.x() < inner.left() ? 12 : m_lastMouse.x() > inner.right() ? -12 : 0);
        way.setY(m_lastMouse.y() < inner.top() ? 12 : m_lastMouse.y() > inner.bottom() ? -12 : 0);
        pan(way);
        m_tool->move(pointerAt(m_lastMouse, Qt::NoModifier), m_pressed);
        return;
    }
    QGraphicsView::timerEvent(event);
}

void CanvasView::changeEvent(QEvent* event)
{
    QGraphicsView::changeEvent(event);
    if (event->type() == QEvent::PaletteChange || event->type() == QEvent::FontChange) {
        refreshOptions();
        rebuild();
    }
}

// --- what lies under and over the items ---

void CanvasView::drawBackground(QPainter* painter, const QRectF& rect)
{
    painter->fillRect(rect, m_options.theme.paper);
    paintFloorPlans(*painter, shown());
    if (m_gridShown)
        paintGrid(*painter, rect);
    for (const auto& bridge : m_layout.bridges)
        paintBridge(*painter, bridge, m_options);
}

void CanvasView::paintGrid(QPainter& painter, const QRectF& rect) const
{
    double step = kModule;
    while (step * zoom() < 9)
        step *= 5;
    QList<QPointF> dots;
    for (double x = std::floor(rect.left() / step) * step; x <= rect.right(); x += step)
        for (double y = std::floor(rect.top() / step) * step; y <= rect.bottom(); y += step)
            dots << QPointF(x, y);
    QPen pen(m_options.theme.grid, zoom() >= 1.5 ? 2.0 : 1.6);
    pen.setCosmetic(true);
    painter.setRenderHint(QPainter::Antialiasing, false);
    painter.setPen(pen);
    painter.drawPoints(dots.constData(), static_cast<int>(dots.size()));
    painter.setRenderHint(QPainter::Antialiasing, true);
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
        painter.drawRoundedRect(symbol->box().adjusted(-off, -off, off, off), toUnits(4), toUnits(4));
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

void CanvasView::drawForeground(QPainter* painter, const QRectF&)
{
    const Theme& theme = m_options.theme;
    painter->save();
    for (const auto& number : m_layout.numbers)
        paintNumber(*painter, number, m_options);
    for (const auto id : m_session.selection())
        paintSelection(*painter, id, theme.selection, hasFocus() ? 2.0 : 1.2, m_layout);
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
    if (m_overlay.line.size() > 1) {
        QPen pen(theme.target, toUnits(2.5));
        pen.setJoinStyle(Qt::MiterJoin);
        painter->setPen(pen);
        painter->setBrush(Qt::NoBrush);
        painter->drawPolyline(QPolygonF(QList<QPointF>(m_overlay.line.begin(), m_overlay.line.end())));
    }
    painter->setBrush(theme.paper);
    painter->setPen(QPen(theme.target, toUnits(2)));
    for (const auto& port : m_overlay.ports)
        painter->drawEllipse(port, toUnits(5), toUnits(5));
    if (m_overlay.port) {
        painter->setBrush(theme.target);
        painter->drawEllipse(*m_overlay.port, toUnits(8), toUnits(8));
    }
    if (m_overlay.band) {
        QColor fill = theme.selection;
        fill.setAlpha(36);
        painter->setBrush(fill);
        painter->setPen(QPen(theme.selection, toUnits(1)));
        painter->drawRect(*m_overlay.band);
    }
    painter->resetTransform();
    if (shown().parts.empty()) {
        painter->setPen(theme.quietText);
        QFont words = font();
        words.setPointSizeF(words.pointSizeF() * 1.15);
        painter->setFont(words);
        painter->drawText(viewport()->rect(), Qt::AlignCenter,
                          tr("Drag a part from the list onto the canvas, or press Insert.\n"
                             "Drag from port to port to draw a pipe."));
    }
    if (m_options.snapshot != nullptr) {
        const QRectF box(16, viewport()->height() - 52, 300, 36);
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
