// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <vector>

#include "document/drawing.h"
#include "document/route.h"

// Where something new finds room on the canvas; private to this room.
namespace tapward::document {

/// The symbol's box, turn applied.
Box boxOf(const Part& part);

/// A place on a pipe where a part can be cut in.
struct Spot {
    Point at;
    double share = 0.5;  ///< of the drawn length, from ends[0]
};

/// What is drawn, as boxes and lines, to find room and ways between.
class Sheet {
public:
    explicit Sheet(const Drawing& drawing);

    /// The place nearest to `share` where an in-line symbol `width` modules long (and as high) touches nothing and
    /// leaves both its neighbours a module of pipe.
    std::optional<Spot> room(PartId pipe, double share, double width) const;

    /// Whether nothing at all is drawn in the box.
    bool isFree(const Box& box) const;
    /// Everything drawn.
    const Box& bounds() const { return m_bounds; }

    struct Way {
        std::vector<Point> corners;  ///< ends included
        double cost = 0;
    };
    /// A right-angled way on the grid from a port to a port, round symbols, crossing pipes seldom and running along
    /// none. Nothing when a port is off the grid or the sheet is too large.
    std::optional<Way> way(const Part& from, const parts::Port& fromPort, const Part& to,
                           const parts::Port& toPort) const;
    /// The same measure for a given line.
    double cost(const std::vector<Point>& corners) const;
    /// Modules of the line that lie on lines of pipes.
    double onPipes(const std::vector<Point>& corners) const;

private:
    struct Line {
        PartId pipe;
        Point a, b;
    };
    struct Grid;
    Grid grid() const;

    const Drawing& m_drawing;
    std::vector<Box> m_boxes;
    std::vector<Line> m_lines;
    Box m_bounds;
};

}  // namespace tapward::document
