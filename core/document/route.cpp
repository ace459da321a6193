// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <array>
#include <cmath>
#include <initializer_list>
#include <limits>
#include <optional>
#include <span>

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

/// A way between two terminals: a handful of points, so that trying many costs no memory.
class Way {
public:
    /// Leaves out repeated points and those in the middle of a straight stretch.
    void add(const Point& point)
    {
        if (m_count > 0 && samePlace(m_points[m_count - 1], point)) {
            return;
        }
        if (m_count >= 2) {
            const Point& a = m_points[m_count - 2];
            const Point& b = m_points[m_count - 1];
            const bool straight = (same(a.x, b.x) && same(b.x, point.x) && (b.y - a.y) * (point.y - b.y) > 0)
                                  || (same(a.y, b.y) && same(b.y, point.y) && (b.x - a.x) * (point.x - b.x) > 0);
            if (straight) {
                --m_count;
            }
        }
        m_points[m_count++] = point;
    }
    std::span<const Point> points() const { return {m_points.data(), m_count}; }

private:
    std::array<Point, 7> m_points{};
    std::size_t m_count = 0;
};

bool crosses(const Point& a, const Point& b, const Box& box)
{
    const double slack = 1e-6;
    return std::max(a.x, b.x) > box.left + slack && std::min(a.x, b.x) < box.right - slack
           && std::max(a.y, b.y) > box.top + slack && std::min(a.y, b.y) < box.bottom - slack;
}

/// What a way costs; once that is not less than `limit` the rest is not looked at.
double cost(std::span<const Point> points, const Terminal& from, const Terminal& to, std::span<const Box> boxes,
            double limit)
{
    double sum = 0;
    for (std::size_t i = 1; i < points.size() && sum < limit; ++i) {
        const Point& a = points[i - 1];
        const Point& b = points[i];
        sum += std::abs(a.x - b.x) + std::abs(a.y - b.y);
        if (i >= 2) {
            sum += kCornerCost;
            const Point& before = points[i - 2];
            const double along = (a.x - before.x) * (b.x - a.x) + (a.y - before.y) * (b.y - a.y);
            if (along < -1e-9) {
                sum += kBackCost;
            }
        }
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

/// The cheapest of a fixed list of right-angled ways, with up to two turns in the lanes between the stubs `a` and
/// `b`; the first of equals, so the answer is stable.
std::vector<Point> cheapest(const Terminal& from, const Terminal& to, const Point& a, const Point& b,
                            const Lanes& lanes, std::span<const Box> boxes)
{
    Way best;
    double least = std::numeric_limits<double>::infinity();
    const auto consider = [&](std::initializer_list<Point> turns) {
        Way way;
        way.add(from.at);
        way.add(a);
        for (const Point& turn : turns) {
            way.add(turn);
        }
        way.add(b);
        way.add(to.at);
        const double price = cost(way.points(), from, to, boxes, least - 1e-9);
        if (price < least - 1e-9) {
            least = price;
            best = way;
        }
    };
    if (same(a.x, b.x) || same(a.y, b.y)) {
        consider({});
    }
    consider({{b.x, a.y}});
    consider({{a.x, b.y}});
    for (const double x : lanes.columns) {
        consider({{x, a.y}, {x, b.y}});
    }
    for (const double y : lanes.rows) {
        consider({{a.x, y}, {b.x, y}});
    }
    for (const double x : lanes.columns) {
        for (const double y : lanes.rows) {
            consider({{x, a.y}, {x, y}, {b.x, y}});
            consider({{a.x, y}, {x, y}, {x, b.y}});
        }
    }
    return {best.points().begin(), best.points().end()};
}

bool near(const Box& a, const Box& b)
{
    return a.left < b.right + kNear && b.left < a.right + kNear && a.top < b.bottom + kNear && b.top < a.bottom + kNear;
}

bool meets(std::span<const Point> points, const Box& box)
{
    for (std::size_t i = 1; i < points.size(); ++i) {
        if (crosses(points[i - 1], points[i], box)) {
            return true;
        }
    }
    return false;
}

/// @param boxes  of the symbols near the two ends
std::vector<Point> leg(const Terminal& from, const Terminal& to, std::span<const Box> boxes)
{
    // Ports that face each other nearer than their two stubs: straight across, no way round.
    if (straightOut(from, to.at) && straightOut(to, from.at)
        && std::none_of(boxes.begin(), boxes.end(), [&](const Box& b) { return crosses(from.at, to.at, b); })) {
        return {from.at, to.at};
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

/// @param legOf  the way between two terminals, with 0 for the first end and 1 for the last
template <class LegOf>
std::vector<Point> throughBends(const Terminal& from, const Terminal& to, const std::vector<Point>& bends, LegOf legOf)
{
    // From each port to its nearest bend as any pipe, unless the bend lies straight ahead of the port.
    std::vector<Point> points = liesAhead(from, bends.front())
                                    ? std::vector<Point>{from.at, bends.front()}
                                    : legOf(0, from, Terminal{bends.front(), std::nullopt, std::nullopt});
    for (std::size_t i = 1; i < bends.size(); ++i) {
        const bool wasHorizontal = points.size() >= 2 && same(points[points.size() - 2].y, points.back().y);
        append(points, bends[i], !wasHorizontal);
    }
    std::vector<Point> last = liesAhead(to, bends.back())
                                  ? std::vector<Point>{bends.back(), to.at}
                                  : legOf(1, Terminal{bends.back(), std::nullopt, std::nullopt}, to);
    points.insert(points.end(), last.begin(), last.end());

    // Only repeated points go: a hand-made bend stays a corner that can be taken hold of.
    points.erase(std::unique(points.begin(), points.end(), samePlace), points.end());
    return points;
}

}  // namespace

void RouteMemory::begin()
{
    std::erase_if(m_entries, [](const auto& entry) { return !entry.second.asked; });
    for (auto& [place, entry] : m_entries) {
        entry.asked = false;
    }
    m_answered = 0;
}

Router::Router(const Drawing& drawing, RouteMemory* memory) : m_drawing(drawing), m_memory(memory)
{
    if (m_memory) {
        m_memory->begin();
    }
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
    const auto legOf = [&](int end, const Terminal& from, const Terminal& to) {
        const Box room{std::min(from.at.x, to.at.x) - kLook, std::min(from.at.y, to.at.y) - kLook,
                       std::max(from.at.x, to.at.x) + kLook, std::max(from.at.y, to.at.y) + kLook};
        std::vector<Box> boxes;
        for (const auto& [part, box] : m_obstacles) {
            if (box.right > room.left && box.left < room.right && box.bottom > room.top && box.top < room.bottom
                && part != pipe.ends[0].part && part != pipe.ends[1].part) {
                boxes.push_back(box);
            }
        }
        if (!m_memory) {
            return leg(from, to, boxes);
        }
        std::vector<double> question;
        question.reserve(16 + 4 * boxes.size());
        for (const Terminal* terminal : {&from, &to}) {
            const Point facing = terminal->facing.value_or(Point{0, 0});  // a unit vector when there is one
            const Box box = terminal->box.value_or(Box{0, 0, 0, 0});      // there when `facing` is
            question.insert(question.end(), {terminal->at.x, terminal->at.y, facing.x, facing.y, box.left, box.top,
                                             box.right, box.bottom});
        }
        for (const Box& box : boxes) {
            question.insert(question.end(), {box.left, box.top, box.right, box.bottom});
        }
        auto& entry = m_memory->m_entries[{pipe.id, end}];
        entry.asked = true;
        if (entry.question != question) {
            entry.answer = leg(from, to, boxes);
            entry.question = std::move(question);
            ++m_memory->m_answered;
        }
        return entry.answer;
    };
    const Terminal from = terminal(m_drawing, pipe.ends[0]);
    const Terminal to = terminal(m_drawing, pipe.ends[1]);
    std::vector<Point> points = pipe.bends.empty() ? legOf(0, from, to) : throughBends(from, to, pipe.bends, legOf);
    if (points.size() == 1) {
        points.push_back(points.front());  // both ends in one place
    }
    return points;
}

std::vector<Point> route(const Drawing& drawing, const Part& pipe) { return Router(drawing).route(pipe); }

}  // namespace tapward::document
