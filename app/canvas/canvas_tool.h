// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QPoint>
#include <QPointF>
#include <Qt>

class QKeyEvent;

namespace tapward::app {

/// Where the mouse is.
struct Pointer {
    QPointF at;        ///< canvas units
    QPoint onScreen;   ///< viewport pixels
    Qt::KeyboardModifiers keys;
    bool snaps() const { return !(keys & Qt::AltModifier); }
};

/// What the left button does now. A tool shows a preview while the gesture runs and performs one edit
/// at its end.
class CanvasTool {
public:
    virtual ~CanvasTool() = default;
    virtual void press(const Pointer&) {}
    virtual void move(const Pointer&, bool /*pressed*/) {}
    virtual void release(const Pointer&) {}
    virtual void doubleClick(const Pointer&) {}
    /// True when the key is used up.
    virtual bool key(const QKeyEvent&) { return false; }
    /// Gives up the gesture in hand; false when there was none.
    virtual bool cancel() { return false; }
    virtual Qt::CursorShape cursor() const { return Qt::ArrowCursor; }
};

}  // namespace tapward::app
