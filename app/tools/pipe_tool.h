// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <functional>
#include <vector>

#include "canvas/canvas_view.h"
#include "tools/pipe_gesture.h"

namespace tapward::app {

/// Drawing pipes one after the other: from a port, a pipe or the empty canvas. By keyboard: arrows pick a
/// port, Enter takes it, arrows pick the other one, Enter connects.
class PipeTool final : public CanvasTool {
public:
    explicit PipeTool(CanvasView& view) : m_view(view), m_pipe(view) {}
    /// Starts picking by keyboard at this part's free ports.
    void begin(document::PartId near);
    std::function<void()> done;

    void press(const Pointer& pointer) override;
    void move(const Pointer& pointer, bool pressed) override;
    void release(const Pointer& pointer) override;
    bool key(const QKeyEvent& event) override;
    bool cancel() override;
    Qt::CursorShape cursor() const override { return Qt::CrossCursor; }

private:
    std::vector<PortSpot> choices() const;
    void pick(const PortSpot& port);
    void step(int key);
    QString nameOf(const PortSpot& port) const;

    CanvasView& m_view;
    PipeGesture m_pipe;
    std::optional<PortSpot> m_picked;  // by keyboard
    Pointer m_start{};
    bool m_dragged = false, m_second = false;
};

}  // namespace tapward::app
