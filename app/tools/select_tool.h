// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>

#include "canvas/canvas_view.h"
#include "tools/pipe_gesture.h"

namespace tapward::app {

/// The resting tool: selects, moves parts with their pipes, bends pipes, moves labels, and draws a pipe
/// when the press is on a port.
class SelectTool final : public CanvasTool {
public:
    explicit SelectTool(CanvasView& view) : m_view(view), m_pipe(view) {}

    void press(const Pointer& pointer) override;
    void move(const Pointer& pointer, bool pressed) override;
    void release(const Pointer& pointer) override;
    void doubleClick(const Pointer& pointer) override;
    bool key(const QKeyEvent& event) override;
    bool cancel() override;
    Qt::CursorShape cursor() const override { return m_cursor; }

private:
    enum class Gesture { None, Parts, Segment, Label, Port, End, Band, ClickedPipe };

    void choose(document::PartId id, Qt::KeyboardModifiers keys);
    void hover(const Pointer& pointer);
    void follow(const Pointer& pointer);
    Result<document::Edit> editFor(const Pointer& pointer, Overlay* overlay = nullptr) const;
    Result<document::Edit> moveFor(const Pointer& pointer, Overlay* overlay) const;
    /// The one symbol being moved when it hangs on no pipe and could go into one.
    document::PartId freeSymbol() const;
    void finishBand(const Pointer& pointer);
    void say(const QString& text) { Q_EMIT m_view.message(text); }

    CanvasView& m_view;
    PipeGesture m_pipe;
    Gesture m_gesture = Gesture::None;
    bool m_dragging = false, m_wasSelected = false;
    document::PartId m_grabbed = document::kNoPart;
    std::size_t m_segment = 0;
    PipeShape m_shape;
    Pointer m_start{};
    std::vector<document::PartId> m_selectionBefore;
    Qt::CursorShape m_cursor = Qt::ArrowCursor;
};

}  // namespace tapward::app
