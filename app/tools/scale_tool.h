// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <functional>
#include <optional>

#include "canvas/canvas_tool.h"
#include "canvas/canvas_view.h"

namespace tapward::app {

/// Two clicks on a floor plan whose distance in the coach is known; the window then asks for that length. Points
/// are taken where they are clicked, off the grid.
class ScaleTool final : public CanvasTool {
public:
    explicit ScaleTool(CanvasView& view) : m_view(view) {}

    void begin();                                                  ///< becomes the view's tool
    std::function<void(document::Point, document::Point)> picked;  ///< the two places, in modules
    std::function<void()> done;                                    ///< given up or finished: another tool's turn

    void press(const Pointer& pointer) override;
    void move(const Pointer& pointer, bool pressed) override;
    bool key(const QKeyEvent& event) override;
    bool cancel() override;
    Qt::CursorShape cursor() const override { return Qt::CrossCursor; }

private:
    CanvasView& m_view;
    std::optional<QPointF> m_first;
};

}  // namespace tapward::app
