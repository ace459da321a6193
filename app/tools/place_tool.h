// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <functional>
#include <optional>
#include <string>

#include "canvas/canvas_view.h"
#include "tools/gestures.h"

namespace tapward::app {

/// A kind about to be put down: shows where it would go, and into which pipe.
class PlaceGesture {
public:
    explicit PlaceGesture(CanvasView& view) : m_view(view) {}
    void setKind(std::string kind);
    const std::string& kind() const { return m_kind; }
    void turn(int quarterTurns);
    /// False when it cannot be put down here; the status message says why.
    bool follow(const Pointer& pointer);
    bool finish(const Pointer& pointer);
    void cancel();

private:
    /// What letting go here would do, and what to show meanwhile.
    struct Plan {
        Result<document::Edit> edit;
        std::optional<PipeSpot> target;
        std::optional<PortSpot> partner;
        std::vector<QLineF> guides;
    };
    std::optional<PipeSpot> targetAt(const Pointer& pointer) const;
    Plan planFor(const Pointer& pointer) const;

    CanvasView& m_view;
    std::string m_kind;
    int m_turn = 0;
    bool m_turnedByHand = false;
};

/// Pick in the tray, click on the canvas. Shift keeps the kind in hand for the next one; R turns it.
class PlaceTool final : public CanvasTool {
public:
    explicit PlaceTool(CanvasView& view) : m_view(view), m_gesture(view) {}
    void setKind(std::string kind) { m_gesture.setKind(std::move(kind)); }
    std::function<void()> done;  ///< called when the tool has nothing in hand any more

    void move(const Pointer& pointer, bool pressed) override;
    void release(const Pointer& pointer) override;
    bool key(const QKeyEvent& event) override;
    bool cancel() override;
    Qt::CursorShape cursor() const override { return m_allowed ? Qt::CrossCursor : Qt::ForbiddenCursor; }

private:
    CanvasView& m_view;
    PlaceGesture m_gesture;
    std::optional<Pointer> m_last;
    bool m_allowed = true;
};

}  // namespace tapward::app
