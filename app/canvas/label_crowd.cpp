// SPDX-License-Identifier: GPL-3.0-or-later
#include "canvas/label_crowd.h"

#include <algorithm>
#include <cmath>
#include <QTransform>
#include <utility>

#include "canvas/canvas_text.h"
#include "canvas/shape_painter.h"
#include "look/symbols.h"

namespace tapward::app {

namespace {

constexpr double kTouch = 12;  // to touch is bad already, to cover worse
constexpr double kSquare = 64;

template <class Visit>
void eachSquare(const QRectF& box, Visit visit)
{
    const auto left = static_cast<std::int64_t>(std::floor(box.left() / kSquare));
    const auto right = static_cast<std::int64_t>(std::floor(box.right() / kSquare));
    const auto top = static_cast<std::int64_t>(std::floor(box.top() / kSquare));
    const auto bottom = static_cast<std::int64_t>(std::floor(box.bottom() / kSquare));
    for (auto y = top; y <= bottom; ++y)
        for (auto x = left; x <= right; ++x)
            visit(y * (std::int64_t{1} << 32) + x);
}

QRectF dimensionText(const SymbolShape& symbol, double letters)
{
    const double half = textWidth(symbol.text, letters) / 2 + 3;
    return {symbol.at.x() - half, symbol.at.y() - 0.65 * letters, 2 * half, 1.3 * letters};
}

}  // namespace

QRectF inkOf(const SymbolShape& symbol)
{
    if (!symbol.text.isEmpty() || !hasSymbol(symbol.kind->id))
        return symbol.box();
    QTransform turned;
    turned.rotate(90.0 * symbol.turn);
    if (symbol.flipped)
        turned.scale(-1, 1);
    const double heavy = symbol.stage == document::Stage::Added ? 0.7 : 0;  // half of what its lines are wider
    return turned.mapRect(symbolInk(symbol.kind->id)).translated(symbol.at).adjusted(-heavy, -heavy, heavy, heavy);
}

Crowd::Crowd(const DrawingLayout& layout, const PaintOptions& options)
{
    for (const auto& symbol : layout.symbols) {
        add(symbol.lines.empty() ? inkOf(symbol) : dimensionText(symbol, options.labelSize), kSymbolWeight);
        for (const auto& line : symbol.lines)
            add(QRectF(line.p1(), line.p2()).normalized().adjusted(-1.6, -1.6, 1.6, 1.6), kPipeWeight);
    }
    for (const auto& pipe : layout.pipes)
        for (std::size_t i = 0; i + 1 < pipe.corners.size(); ++i)
            add(QRectF(pipe.corners[i], pipe.corners[i + 1]).normalized().adjusted(-1.6, -1.6, 1.6, 1.6), kPipeWeight);
    for (const auto& pipe : layout.pipes) {
        for (const auto& hop : pipe.over)
            add({hop.x() - 5, hop.y() - 5, 10, 5}, kPipeWeight);
        if (const auto arrow = arrowOf(pipe, options.view);
            arrow && options.flowArrows && options.snapshot == nullptr) {
            const double half = 0.55 * arrow->size;
            add({arrow->at.x() - half, arrow->at.y() - half, 2 * half, 2 * half}, kPipeWeight);
        }
    }
}

std::size_t Crowd::add(const QRectF& box, double weight)
{
    const auto index = m_obstacles.size();
    m_obstacles.push_back({box, weight});
    m_asked.push_back(0);
    eachSquare(box, [&](std::int64_t square) { m_squares[square].push_back(index); });
    return index;
}

std::span<const Obstacle> Crowd::in(const QRectF& area)
{
    m_near.clear();
    ++m_question;
    eachSquare(area, [&](std::int64_t square) {
        const auto found = m_squares.find(square);
        if (found == m_squares.end())
            return;
        for (const auto index : found->second)
            if (std::exchange(m_asked[index], m_question) != m_question && overlap(m_obstacles[index].box, area))
                m_near.push_back(m_obstacles[index]);
    });
    return m_near;
}

double covered(std::span<const Obstacle> obstacles, const QRectF& box, const QPointF* onPipe, double enough)
{
    double sum = 0;
    bool own = onPipe != nullptr;
    for (const auto& obstacle : obstacles) {
        const double width = std::min(box.right(), obstacle.box.right()) - std::max(box.left(), obstacle.box.left());
        const double height = std::min(box.bottom(), obstacle.box.bottom()) - std::max(box.top(), obstacle.box.top());
        if (width <= 0 || height <= 0)
            continue;
        // Of two pipes that cross here only one is its own; as obstacles they are alike.
        if (own && obstacle.weight == Crowd::kPipeWeight && obstacle.box.contains(*onPipe)) {
            own = false;
            continue;
        }
        sum += obstacle.weight * (kTouch + width * height);
        if (sum >= enough)
            break;
    }
    return sum;
}

}  // namespace tapward::app
