// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <cmath>
#include <limits>
#include <optional>

#include "document/route.h"

namespace tapward::document {
namespace {

constexpr double kStub = 1;         ///< modules a pipe runs straight out of a port
constexpr double kCornerCost = 3;   ///< a corner is worth this many modules of detour
constexpr double kThroughCost = 50; ///< going through the symbol it comes from
constexpr double kBackCost = 100;   ///< turning back on itself
constexpr double kBlockedCost = 40; ///< going through a symbol it has nothing to do with
constexpr double kClear = 0.5;      ///< modules between a pipe and such a symbol
constexpr double kLook = 16;        ///< modules around a leg where symbols are minded
constexpr double kNear = 4;         ///< symbols nearer than this to each other close the way between them
constexpr std::size_t kMostRounded = 6;  ///< in one go
constexpr int kDetours = 4;         ///< how often ways around newly met symbols are tried

/// Where a route begins or ends.
struct Terminal {
    Point at;
    std::optional<Point> facing;  ///< unit vector out of the port; none for a loose end or a bend
    std::optional<Box> box;       ///< the symbol it belongs to
};

Point unit(parts::Side side)
{
    switch (side) {
    case parts::Side::Left:
        return {-1, 0};
    case parts::Side::Right:
        return {1, 0};
    case parts::Side::Top:
        return {0, -1};
    case parts::Side::Bottom:
        return {0, 1};
    }
    return {1, 0};
}

Box boxOf(const Part& part, const parts::PartKind& kind)
{
    const bool across = part.turn % 2 != 0;
    const double halfWidth = (across ? kind.height : kind.width) / 2;
    const double halfHeight = (across ? kind.width : kind.height) / 2;
    return {part.at.x - halfWidth, part.at.y - halfHeight, part.at.x + halfWidth, part.at.y + halfHeight};
}

Terminal terminal(const Drawing& drawing, const PipeEnd& end)
{
    const Part* part = drawing.find(end.part);
    const parts::PartKind* kind = part ? parts::find(part->kind) : nullptr;
    const parts::Port* port = kind ? kind->port(end.port) : nullptr;
    if (!port) {
        return {end.loose, std::nullopt, std::nullopt};
    }
    return {portPlace(*part, *port), unit(portSide(*part, *port)), boxOf(*part, *kind)};
}

bool same(double a, double b) { return std::abs(a - b) < 1e-9; }

bool samePlace(const Point& a, const Point& b) { return same(a.x, b.x) && same(a.y, b.y); }

/// Without repeated points and points in the middle of a straight stretch.
std::vector<Point> tidy(const std::vector<Point>& points)
{
    std::vector<Point> kept;
    for (const Point& point : points) {
        if (!kept.empty() && samePlace(kept.back(), point)) {
            continue;
        }
        if (kept.size() >= 2) {
            const Point& a = kept[kept.size() - 2];
            const Point& b = kept.back();
            const bool straight = (same(a.x, b.x) && same(b.x, point.x) && (b.y - a.y) * (point.y - b.y) > 0)
                                  || (same(a.y, b.y) && same(b.y, point.y) && (b.x - a.x) * (point.x - b.x) > 0);
            if (straight) {
                kept.pop_back();
            }
        }
        kept.push_back(point);
    }
    return kept;
}

bool crosses(const Point& a, const Point& b, const Box& box)
{
    const double slack = 1e-6;
    return std::max(a.x, b.x) > box.left + slack && std::min(a.x, b.x) < box.right - slack
           && std::max(a.y, b.y) > box.top + slack && std::min(a.y, b.y) < box.bottom - slack;
}

double cost(const std::vector<Point>& points, const Terminal& from, const Terminal& to, const std::vector<Box>& boxes)
{
    double sum = 0;
    for (std::size_t i = 1; i < points.size(); ++i) {
        const Point& a = points[i - 1];
        const Point& b = points[i];
        sum += std::abs(a.x - b.x) + std::abs(a.y - b.y);
        for (const Terminal* end : {&from, &to}) {
            if (end->box && crosses(a, b, *end->box)) {
                sum += kThroughCost;
            }
        }
        for (const Box& box : boxes) {
            if (crosses(a, b, box)) {
                sum += kBlockedCost;
            }
        }
        if (i >= 2) {
            sum += kCornerCost;
            const Point& before = points[i - 2];
            const double along = (a.x - before.x) * (b.x - a.x) + (a.y - before.y) * (b.y - a.y);
            if (along < -1e-9) {
                sum += kBackCost;
            }
        }
    }
    return sum;
}

/// Whether `there` lies straight out of the end, however near; anywhere in line with a loose one.
bool straightOut(const Terminal& end, const Point& there)
{
    const double dx = there.x - end.at.x;
    const double dy = there.y - end.at.y;
    if (!end.facing) {
        return same(dx, 0) != same(dy, 0);
    }
    return dx * end.facing->x + dy * end.facing->y > 0 && same(dx * end.facing->y, dy * end.facing->x);
}

/// Columns and rows a way may turn in.
struct Lanes {
    std::vector<double> columns, rows;

    void around(const Box& box, double gap)
    {
        columns.insert(columns.end(), {box.left - gap, box.right + gap});
        rows.insert(rows.end(), {box.top - gap, box.bottom + gap});
    }
};

/// All ways from stub to stub with up to two turns in these lanes.
std::vector<std::vector<Point>> waysBetween(const Point& a, const Point& b, const Lanes& lanes)
{
    std::vector<std::vector<Point>> ways;
    if (same(a.x, b.x) || same(a.y, b.y)) {
        ways.push_back({a, b});
    }
    ways.push_back({a, {b.x, a.y}, b});
    ways.push_back({a, {a.x, b.y}, b});
    for (const double x : lanes.columns) {
        ways.push_back({a, {x, a.y}, {x, b.y}, b});
    }
    for (const double y : lanes.rows) {
        ways.push_back({a, {a.x, y}, {b.x, y}, b});
    }
    for (const double x : lanes.columns) {
        for (const double y : lanes.rows) {
            ways.push_back({a, {x, a.y}, {x, y}, {b.x, y}, b});
            ways.push_back({a, {a.x, y}, {x, y}, {x, b.y}, b});
        }
    }
    return ways;
}

/// The cheapest of a fixed list of right-angled ways; the first of equals, so the answer is stable.
std::vector<Point> cheapest(const Terminal& from, const Terminal& to, const Point& a, const Point& b,
                            const Lanes& lanes, const std::vector<Box>& boxes)
{
    std::vector<Point> best;
    double least = std::numeric_limits<double>::infinity();
    for (const std::vector<Point>& way : waysBetween(a, b, lanes)) {
        std::vector<Point> points{from.at};
        points.insert(points.end(), way.begin(), way.end());
        points.push_back(to.at);
        points = tidy(points);
        const double price = cost(points, from, to, boxes);
        if (price < least - 1e-9) {
            least = price;
            best = std::move(points);
        }
    }
    return best;
}

bool near(const Box& a, const Box& b)
{
    return a.left < b.right + kNear && b.left < a.right + kNear && a.top < b.bottom + kNear && b.top < a.bottom + kNear;
}

bool meets(const std::vector<Point>& points, const Box& box)
{
    for (std::size_t i = 1; i < points.size(); ++i) {
        if (crosses(points[i - 1], points[i], box)) {
            return true;
        }
    }
    return false;
}

std::vector<Point> leg(const Terminal& from, const Terminal& to, const std::vector<Box>& all)
{
    std::vector<Box> boxes;
    const Box room{std::min(from.at.x, to.at.x) - kLook, std::min(from.at.y, to.at.y) - kLook,
                   std::max(from.at.x, to.at.x) + kLook, std::max(from.at.y, to.at.y) + kLook};
    for (const Box& box : all) {
        if (box.right > room.left && box.left < room.right && box.bottom > room.top && box.top < room.bottom) {
            boxes.push_back(box);
        }
    }
    // Ports that face each other nearer than their two stubs: straight across, no way round.
    const std::vector<Point> across{from.at, to.at};
    if (straightOut(from, to.at) && straightOut(to, from.at)
        && std::none_of(boxes.begin(), boxes.end(), [&](const Box& box) { return meets(across, box); })) {
        return across;
    }
    const auto stub = [](const Terminal& end) {
        return end.facing ? Point{end.at.x + kStub * end.facing->x, end.at.y + kStub * end.facing->y} : end.at;
    };
    const Point a = stub(from);
    const Point b = stub(to);

    Lanes lanes{{std::round((a.x + b.x) / 2)}, {std::round((a.y + b.y) / 2)}};
    for (const Terminal* end : {&from, &to}) {
        if (end->box) {
            lanes.around(*end->box, kStub);
        }
    }
    std::vector<Point> best = cheapest(from, to, a, b, lanes, boxes);
    std::vector<bool> rounded(boxes.size());
    for (int i = 0; i < kDetours; ++i) {
        // Round what is in the way; when that is closed by others, round those as well.
        std::vector<std::size_t> more;
        bool blocked = false;
        for (std::size_t k = 0; k < boxes.size(); ++k) {
            if (meets(best, boxes[k])) {
                blocked = true;
                if (!rounded[k]) {
                    more.push_back(k);
                }
            }
        }
        for (std::size_t k = 0; blocked && more.empty() && k < boxes.size(); ++k) {
            for (std::size_t other = 0; !rounded[k] && other < boxes.size(); ++other) {
                if (rounded[other] && near(boxes[k], boxes[other])) {
                    more.push_back(k);
                    break;
                }
            }
        }
        if (more.empty()) {
            break;
        }
        more.resize(std::min(more.size(), kMostRounded));
        for (const std::size_t k : more) {
            lanes.around(boxes[k], kStub - kClear);
            rounded[k] = true;
        }
        best = cheapest(from, to, a, b, lanes, boxes);
    }
    return best;
}

bool liesAhead(const Terminal& end, const Point& bend)
{
    const double dx = bend.x - end.at.x;
    const double dy = bend.y - end.at.y;
    return end.facing && dx * end.facing->x + dy * end.facing->y >= kStub - 1e-9
           && same(dx * end.facing->y, dy * end.facing->x);
}

/// One right-angled step to the next hand-made corner, going on in the direction of the last one.
void append(std::vector<Point>& points, const Point& next, bool horizontalFirst)
{
    const Point last = points.back();
    if (!same(last.x, next.x) && !same(last.y, next.y)) {
        points.push_back(horizontalFirst ? Point{next.x, last.y} : Point{last.x, next.y});
    }
    points.push_back(next);
}

std::vector<Point> throughBends(const Terminal& from, const Terminal& to, const std::vector<Point>& bends,
                                const std::vector<Box>& boxes)
{
    // From each port to its nearest bend as any pipe, unless the bend lies straight ahead of the port.
    std::vector<Point> points = liesAhead(from, bends.front())
                                    ? std::vector<Point>{from.at, bends.front()}
                                    : leg(from, {bends.front(), std::nullopt, std::nullopt}, boxes);
    for (std::size_t i = 1; i < bends.size(); ++i) {
        const bool wasHorizontal = points.size() >= 2 && same(points[points.size() - 2].y, points.back().y);
        append(points, bends[i], !wasHorizontal);
    }
    std::vector<Point> last = liesAhead(to, bends.back()) ? std::vector<Point>{bends.back(), to.at}
                                                          : leg({bends.back(), std::nullopt, std::nullopt}, to, boxes);
    points.insert(points.end(), last.begin(), last.end());

    // Only repeated points go: a hand-made bend stays a corner that can be taken hold of.
    points.erase(std::unique(points.begin(), points.end(), samePlace), points.end());
    return points;
}

}  // namespace

Router::Router(const Drawing& drawing) : m_drawing(drawing)
{
    for (const Part& part : drawing.parts) {
        const parts::PartKind* kind = parts::find(part.kind);
        if (kind && !kind->isPipe) {
            Box box = boxOf(part, *kind);
            m_obstacles.push_back(
                {part.id, {box.left - kClear, box.top - kClear, box.right + kClear, box.bottom + kClear}});
        }
    }
}

std::vector<Point> Router::route(const Part& pipe) const
{
    const Terminal from = terminal(m_drawing, pipe.ends[0]);
    const Terminal to = terminal(m_drawing, pipe.ends[1]);
    std::vector<Box> boxes;
    for (const Obstacle& obstacle : m_obstacles) {
        if (obstacle.part != pipe.ends[0].part && obstacle.part != pipe.ends[1].part) {
            boxes.push_back(obstacle.box);
        }
    }
    std::vector<Point> points = pipe.bends.empty() ? leg(from, to, boxes) : throughBends(from, to, pipe.bends, boxes);
    if (points.size() == 1) {
        points.push_back(points.front());  // both ends in one place
    }
    return points;
}

std::vector<Point> route(const Drawing& drawing, const Part& pipe) { return Router(drawing).route(pipe); }

}  // namespace tapward::document
