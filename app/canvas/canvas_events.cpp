// SPDX-License-Identifier: GPL-3.0-or-later
// What the canvas does with mouse, wheel, fingers and keys.
#include <cmath>
#include <QEvent>
#include <QGuiApplication>
#include <QKeyEvent>
#include <QMouseEvent>
#include <QNativeGestureEvent>
#include <QTimerEvent>
#include <QWheelEvent>
#include <utility>

#include "canvas/canvas_view.h"

namespace tapward::app {

namespace {

constexpr int kEdge = 18;  // pixels from the edge where a drag scrolls

}  // namespace

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
        m_tool->move(pointerAt(m_lastMouse, QGuiApplication::keyboardModifiers()), m_pressed);
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

}  // namespace tapward::app
