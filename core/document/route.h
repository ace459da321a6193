// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <vector>

#include "document/drawing.h"

namespace tapward::document {

/// A symbol's box on the canvas, in modules.
struct Box {
    double left, top, right, bottom;
};

/// Finds the corners of pipes among the symbols of one drawing. Making it looks at every part once: make one
/// for many pipes. The way depends on the drawing alone, never on what was routed before.
class Router {
public:
    /// `drawing` outlives the router and does not change meanwhile.
    explicit Router(const Drawing& drawing);

    /// As document::route(). @param pipe  of the drawing, or one like it that is not in it yet
    std::vector<Point> route(const Part& pipe) const;

private:
    struct Obstacle {
        PartId part;
        Box box;
    };
    const Drawing& m_drawing;
    std::vector<Obstacle> m_obstacles;
};

}  // namespace tapward::document
