// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstdint>
#include <limits>
#include <span>
#include <unordered_map>
#include <vector>

#include "canvas/drawing_layout.h"

// What stands on the canvas already when labels look for their places.
namespace tapward::app {

/// What a label should keep clear of, with how much it hurts to cover it.
struct Obstacle {
    QRectF box;
    double weight;
};

/// Whether two boxes, neither of them empty, have a place in common; Qt's own question is a call into a library.
inline bool overlap(const QRectF& a, const QRectF& b)
{
    return a.left() < b.right() && b.left() < a.right() && a.top() < b.bottom() && b.top() < a.bottom();
}

/// The obstacles, filed by squares of the canvas, so that a label asks only those near it.
class Crowd {
public:
    /// Pipes with their hops and arrowheads, symbols, dimensions.
    Crowd(const DrawingLayout& layout, const PaintOptions& options);

    std::size_t add(const QRectF& box, double weight);
    void remove(std::size_t added) { m_obstacles[added].weight = 0; }
    /// What reaches into the area. Good until the next call.
    std::span<const Obstacle> in(const QRectF& area);

    static constexpr double kSymbolWeight = 3.5, kPipeWeight = 3.0, kLabelWeight = 6.0;

private:
    std::vector<Obstacle> m_obstacles, m_near;
    std::unordered_map<std::int64_t, std::vector<std::size_t>> m_squares;
    std::vector<int> m_asked;  ///< the last question that saw each obstacle
    int m_question = 0;
};

/// What a symbol really covers of its box. Words fill theirs.
QRectF inkOf(const SymbolShape& symbol);

/// How much of these the box would cover, and how badly. `onPipe`: a place on its own pipe, which does not count.
/// @param enough  it is not counted further than this
double covered(std::span<const Obstacle> obstacles, const QRectF& box, const QPointF* onPipe = nullptr,
               double enough = std::numeric_limits<double>::infinity());

}  // namespace tapward::app
