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
    /// Takes one end of a pipe that is there already to another place.
    void startWithEnd(document::PartId pipe, int end);
    void follow(const Pointer& pointer);
    /// Makes the pipe, or says why not. True when one was made.
    bool finish(const Pointer& pointer);
    bool finishAt(const Anchor& to);
    void cancel();
    const Anchor& from() const { return *m_from; }

    /// The anchor under the mouse. A port first, then a pipe, else the empty canvas.
    Anchor anchorAt(const Pointer& pointer) const;

private:
    struct Held {
        document::PartId pipe;
        int end;
    };
    void showTargets(const Anchor& to);
    Result<document::Edit> editTo(const Anchor& to) const;
    CanvasView& m_view;
    std::optional<Anchor> m_from;
    std::optional<Held> m_held;  // the pipe whose end is in hand; none: a new pipe
};

// Pixels, for fingers as well: every target is 24 pixels across or more, whatever the zoom.
inline constexpr double kPortReach = 14.0;
inline constexpr double kPipeReach = 12.0;
inline constexpr double kLeastTarget = 24.0;

}  // namespace tapward::app
