// SPDX-License-Identifier: GPL-3.0-or-later
#include "document/sheet.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <functional>
#include <limits>
#include <queue>
#include <tuple>

namespace tapward::document {
namespace {

constexpr double kAround = 8;          ///< modules beyond everything drawn that a way may take
constexpr std::size_t kMostPlaces = 400'000;
// Costs in modules of detour.
constexpr double kCorner = 3, kCross = 4, kClose = 5, kAlong = 20, kThrough = 200;
constexpr std::array<std::array<int, 2>, 4> kSteps{{{1, 0}, {0, 1}, {-1, 0}, {0, -1}}};

Box lineBox(const Point& a, const Point& b)
{
    return {std::min(a.x, b.x), std::min(a.y, b.y), std::max(a.x, b.x), std::max(a.y, b.y)};
}

/// 0 right, 1 down, 2 left, 3 up: the index into kSteps of a side's outward way.
int outward(parts::Side side)
{
    switch (side) {
    case parts::Side::Right:
        return 0;
    case parts::Side::Bottom:
        return 1;
    case parts::Side::Left:
        return 2;
    case parts::Side::Top:
        return 3;
    }
    return 0;
}

bool whole(const Point& point) { return point.x == std::round(point.x) && point.y == std::round(point.y); }

}  // namespace

Box boxOf(const Part& part)
{
    const parts::PartKind& kind = kindOf(part);
    const bool across = part.turn % 2 != 0;
    const double width = (across ? kind.height : kind.width) / 2;
    const double height = (across ? kind.width : kind.height) / 2;
    return {part.at.x - width, part.at.y - height, part.at.x + width, part.at.y + height};
}

Sheet::Sheet(const Drawing& drawing) : m_drawing(drawing)
{
    constexpr double kFar = std::numeric_limits<double>::infinity();
    m_bounds = {kFar, kFar, -kFar, -kFar};
    const auto reach = [this](const Box& box) {
        m_bounds = {std::min(m_bounds.left, box.left), std::min(m_bounds.top, box.top),
                    std::max(m_bounds.right, box.right), std::max(m_bounds.bottom, box.bottom)};
    };
    for (const Part& part : drawing.parts) {
        if (!kindOf(part).isPipe) {
            m_boxes.push_back(boxOf(part));
            reach(m_boxes.back());
            continue;
        }
        const std::vector<Point> corners = route(drawing, part);
        for (std::size_t i = 0; i + 1 < corners.size(); ++i) {
            m_lines.push_back({part.id, corners[i], corners[i + 1]});
            reach(lineBox(corners[i], corners[i + 1]));
        }
    }
    if (m_bounds.left > m_bounds.right) {
        m_bounds = {};
    }
}

double Sheet::onPipes(const std::vector<Point>& corners) const
{
    double sum = 0;
    for (std::size_t i = 0; i + 1 < corners.size(); ++i) {
        const Box mine = lineBox(corners[i], corners[i + 1]);
        for (const Line& line : m_lines) {
            const Box other = lineBox(line.a, line.b);
            const double wide = std::min(mine.right, other.right) - std::max(mine.left, other.left);
            const double high = std::min(mine.bottom, other.bottom) - std::max(mine.top, other.top);
            const bool level = mine.top == mine.bottom && other.top == other.bottom && mine.top == other.top;
            const bool upright = mine.left == mine.right && other.left == other.right && mine.left == other.left;
            sum += std::max(0.0, level ? wide : upright ? high : 0.0);
        }
    }
    return sum;
}

std::optional<Spot> Sheet::room(PartId pipeId, double share, double width) const
{
    const Part* pipe = m_drawing.find(pipeId);
    if (!pipe) {
        return std::nullopt;
    }
    const std::vector<Point> corners = route(m_drawing, *pipe);
    double whole_modules = 0;
    for (std::size_t i = 0; i + 1 < corners.size(); ++i) {
        whole_modules += std::hypot(corners[i + 1].x - corners[i].x, corners[i + 1].y - corners[i].y);
    }
    if (whole_modules <= 0) {
        return std::nullopt;
    }
    const double half = width / 2;
    std::optional<Spot> best;
    double before = 0;
    for (std::size_t i = 0; i + 1 < corners.size(); ++i) {
        const Point& a = corners[i];
        const Point& b = corners[i + 1];
        const double length = std::hypot(b.x - a.x, b.y - a.y);
        const bool level = a.y == b.y;
        if ((!level && a.x != b.x) || length > 20'000) {
            before += length;
            continue;  // loose ends off the grid, or a line nobody sees whole
        }
        const double from = level ? std::min(a.x, b.x) : std::min(a.y, b.y);
        for (double along = std::ceil(from + half + 1); along <= from + length - half - 1; along += 1) {
            const Point at = level ? Point{along, a.y} : Point{a.x, along};
            const double here = (before + std::hypot(at.x - a.x, at.y - a.y)) / whole_modules;
            if (best && std::abs(here - share) >= std::abs(best->share - share)) {
                continue;
            }
            const Box box{at.x - half, at.y - half, at.x + half, at.y + half};
            const bool taken =
                std::any_of(m_boxes.begin(), m_boxes.end(), [&](const Box& one) { return box.overlaps(one); })
                || std::any_of(m_lines.begin(), m_lines.end(), [&](const Line& line) {
                       const bool own = line.pipe == pipeId && line.a == a && line.b == b;
                       return !own && box.grown(0.5).overlaps(lineBox(line.a, line.b).grown(0.25));
                   });
            if (!taken) {
                best = Spot{at, here};
            }
        }
        before += length;
    }
    return best;
}

bool Sheet::isFree(const Box& box) const
{
    return std::none_of(m_boxes.begin(), m_boxes.end(), [&](const Box& one) { return box.overlaps(one); })
           && std::none_of(m_lines.begin(), m_lines.end(),
                           [&](const Line& line) { return box.overlaps(lineBox(line.a, line.b).grown(0.01)); });
}

/// The sheet as lattice points, one module apart.
struct Sheet::Grid {
    int left = 0, top = 0, columns = 0, rows = 0;
    enum : unsigned char { Symbol = 1, Level = 2, Upright = 4, Turn = 8, Close = 16 };
    std::vector<unsigned char> marks;

    std::size_t index(int x, int y) const
    {
        return static_cast<std::size_t>(y - top) * static_cast<std::size_t>(columns)
               + static_cast<std::size_t>(x - left);
    }
    bool holds(int x, int y) const { return x >= left && y >= top && x < left + columns && y < top + rows; }
    void mark(const Box& box, unsigned char what)
    {
        for (int y = static_cast<int>(std::ceil(box.top)); y <= std::floor(box.bottom); ++y) {
            for (int x = static_cast<int>(std::ceil(box.left)); x <= std::floor(box.right); ++x) {
                if (holds(x, y)) {
                    marks[index(x, y)] |= what;
                }
            }
        }
    }
    /// Of a step onto this place.
    double cost(int x, int y, bool level) const
    {
        if (!holds(x, y)) {
            return 1;
        }
        const unsigned char here = marks[index(x, y)];
        double sum = 1;
        sum += (here & Symbol) ? kThrough : 0;
        sum += (here & Turn) || (here & (level ? Level : Upright)) ? kAlong : 0;
        sum += (here & (level ? Upright : Level)) ? kCross : 0;
        sum += (here & Close) ? kClose : 0;  // one module from another pipe's corner they read as one pipe
        return sum;
    }
    double turnCost(int x, int y) const
    {
        return kCorner + (holds(x, y) && (marks[index(x, y)] & (Level | Upright)) ? kAlong : 0);
    }
};

Sheet::Grid Sheet::grid() const
{
    Grid grid;
    const double width = m_bounds.right - m_bounds.left + 2 * kAround;
    const double height = m_bounds.bottom - m_bounds.top + 2 * kAround;
    if (width * height > static_cast<double>(kMostPlaces)) {
        return grid;
    }
    grid.left = static_cast<int>(std::floor(m_bounds.left - kAround));
    grid.top = static_cast<int>(std::floor(m_bounds.top - kAround));
    grid.columns = static_cast<int>(width) + 2;
    grid.rows = static_cast<int>(height) + 2;
    grid.marks.assign(static_cast<std::size_t>(grid.columns) * static_cast<std::size_t>(grid.rows), 0);
    for (const Box& box : m_boxes) {
        grid.mark(box, Grid::Symbol);
    }
    for (const Line& line : m_lines) {
        const Box box = lineBox(line.a, line.b);
        grid.mark(box, line.a.y == line.b.y ? Grid::Level : Grid::Upright);
        grid.mark(lineBox(line.a, line.a), Grid::Turn);
        grid.mark(lineBox(line.b, line.b), Grid::Turn);
        for (const auto& step : kSteps) {
            const Point a{line.a.x + step[0], line.a.y + step[1]}, b{line.b.x + step[0], line.b.y + step[1]};
            grid.mark(lineBox(a, a), Grid::Close);
            grid.mark(lineBox(b, b), Grid::Close);
        }
    }
    return grid;
}

double Sheet::cost(const std::vector<Point>& corners) const
{
    const Grid grid = this->grid();
    double sum = 0;
    for (std::size_t i = 0; i + 1 < corners.size(); ++i) {
        const Point& a = corners[i];
        const Point& b = corners[i + 1];
        const double length = std::hypot(b.x - a.x, b.y - a.y);
        const double most = i + 2 == corners.size() ? length - 1 : length;  // the port itself is no obstacle
        for (double along = 1; along <= most; along += 1) {
            sum += grid.cost(static_cast<int>(std::lround(a.x + (b.x - a.x) * along / length)),
                             static_cast<int>(std::lround(a.y + (b.y - a.y) * along / length)), a.y == b.y);
        }
        if (i > 0) {
            sum += grid.turnCost(static_cast<int>(std::lround(a.x)), static_cast<int>(std::lround(a.y)));
        }
    }
    return sum + 1;
}

std::optional<Sheet::Way> Sheet::way(const Part& from, const parts::Port& fromPort, const Part& to,
                                     const parts::Port& toPort) const
{
    const Grid grid = this->grid();
    const Point start = portPlace(from, fromPort);
    const Point goal = portPlace(to, toPort);
    if (grid.marks.empty() || !whole(start) || !whole(goal)) {
        return std::nullopt;
    }
    const int gx = static_cast<int>(goal.x), gy = static_cast<int>(goal.y);
    const int first = outward(portSide(from, fromPort));
    const int last = (outward(portSide(to, toPort)) + 2) % 4;
    if (!grid.holds(static_cast<int>(start.x), static_cast<int>(start.y)) || !grid.holds(gx, gy)) {
        return std::nullopt;
    }
    // Dijkstra over places and directions; equal costs go by number, so the answer is the same on every run.
    const auto number = [&](int x, int y, int direction) {
        return grid.index(x, y) * 4 + static_cast<std::size_t>(direction);
    };
    std::vector<double> least(grid.marks.size() * 4, std::numeric_limits<double>::infinity());
    std::vector<std::size_t> by(least.size(), least.size());
    using Item = std::pair<double, std::size_t>;
    std::priority_queue<Item, std::vector<Item>, std::greater<>> open;
    const std::size_t begin = number(static_cast<int>(start.x), static_cast<int>(start.y), first);
    const std::size_t end = number(gx, gy, last);
    least[begin] = 0;
    open.emplace(0, begin);
    while (!open.empty()) {
        const auto [cost, at] = open.top();
        open.pop();
        if (cost > least[at]) {
            continue;
        }
        if (at == end) {
            break;
        }
        const int direction = static_cast<int>(at % 4);
        const int x = grid.left + static_cast<int>((at / 4) % static_cast<std::size_t>(grid.columns));
        const int y = grid.top + static_cast<int>((at / 4) / static_cast<std::size_t>(grid.columns));
        for (int turned = 0; turned < 4; ++turned) {
            if ((turned + 2) % 4 == direction || (at == begin && turned != direction)) {
                continue;
            }
            const int nx = x + kSteps[static_cast<std::size_t>(turned)][0];
            const int ny = y + kSteps[static_cast<std::size_t>(turned)][1];
            if (!grid.holds(nx, ny) || (nx == gx && ny == gy && turned != last)) {
                continue;
            }
            double next = cost + (turned == direction ? 0 : grid.turnCost(x, y));
            next += nx == gx && ny == gy ? 1 : grid.cost(nx, ny, turned % 2 == 0);
            const std::size_t to_ = number(nx, ny, turned);
            if (next < least[to_]) {
                least[to_] = next;
                by[to_] = at;
                open.emplace(next, to_);
            }
        }
    }
    if (!std::isfinite(least[end])) {
        return std::nullopt;
    }
    Way way;
    way.cost = least[end];
    std::vector<Point> places;
    for (std::size_t at = end; at != by.size(); at = by[at]) {
        places.push_back(
            {static_cast<double>(grid.left + static_cast<int>((at / 4) % static_cast<std::size_t>(grid.columns))),
             static_cast<double>(grid.top + static_cast<int>((at / 4) / static_cast<std::size_t>(grid.columns)))});
    }
    std::reverse(places.begin(), places.end());
    for (std::size_t i = 0; i < places.size(); ++i) {
        const bool straight = i > 0 && i + 1 < places.size()
                              && ((places[i - 1].x == places[i].x && places[i].x == places[i + 1].x)
                                  || (places[i - 1].y == places[i].y && places[i].y == places[i + 1].y));
        if (!straight) {
            way.corners.push_back(places[i]);
        }
    }
    return way;
}

}  // namespace tapward::document
