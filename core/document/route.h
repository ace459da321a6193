// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <map>
#include <utility>
#include <vector>

#include "document/drawing.h"

namespace tapward::document {

/// A symbol's box on the canvas, in modules.
struct Box {
    double left = 0, top = 0, right = 0, bottom = 0;

    Box grown(double by) const { return {left - by, top - by, right + by, bottom + by}; }
    bool overlaps(const Box& other) const
    {
        return left < other.right && other.left < right && top < other.bottom && other.top < bottom;
    }
};

/// What the ways found so far were asked for, so that the same question need not be answered twice. The answer to
/// a question never depends on what is remembered.
class RouteMemory {
public:
    /// A new drawing, or the same after a change. Forgets what was not asked since the last call.
    void begin();
    std::size_t answered() const { return m_answered; }  ///< questions that were new since begin()

private:
    friend class Router;
    struct Entry {
        std::vector<double> question;  ///< both ends, and every box near them
        std::vector<Point> answer;
        bool asked = true;             ///< since begin()
    };
    std::map<std::pair<PartId, int>, Entry> m_entries;  ///< by pipe and end
    std::size_t m_answered = 0;
};

/// Finds the corners of pipes among the symbols of one drawing. Making it looks at every part once: make one
/// for many pipes. The way depends on the drawing alone, never on what was routed before.
class Router {
public:
    /// `drawing` outlives the router and does not change meanwhile; so does `memory`, if there is one.
    explicit Router(const Drawing& drawing, RouteMemory* memory = nullptr);

    /// As document::route(). @param pipe  of the drawing, or one like it that is not in it yet
    std::vector<Point> route(const Part& pipe) const;

private:
    struct Obstacle {
        PartId part;
        Box box;
    };

    const Drawing& m_drawing;
    RouteMemory* m_memory;
    std::vector<Obstacle> m_obstacles;
};

}  // namespace tapward::document
