// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>

#include "canvas/canvas_view.h"
#include "tools/gestures.h"

namespace tapward::app {

/// Drawing one pipe: from an anchor, following the mouse, to whatever is under it at the end.
class PipeGesture {
public:
    explicit PipeGesture(CanvasView& view) : m_view(view) {}

    bool isOn() const { return m_from.has_value(); }
    void start(Anchor from);
    void follow(const Pointer& pointer);
    /// Makes the pipe, or says why not. True when one was made.
    bool finish(const Pointer& pointer);
    bool finishAt(const Anchor& to);
    void cancel();
    const Anchor& from() const { return *m_from; }

    /// The anchor under the mouse. A port first, then a pipe, else the empty canvas.
    Anchor anchorAt(const Pointer& pointer) const;

private:
    void showTargets(const Anchor& to);
    CanvasView& m_view;
    std::optional<Anchor> m_from;
};

inline constexpr double kPortReach = 14.0;  ///< pixels: a port is a target of 28 pixels across
inline constexpr double kPipeReach = 7.0;

}  // namespace tapward::app
