// SPDX-License-Identifier: GPL-3.0-or-later
#include "review/scald.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <span>
#include <vector>

#include "base/units.h"

namespace tapward::review {
namespace {

struct Point {
    double celsius;
    double seconds;
};

// Adults in flowing water, onset of a second-degree burn. Moritz & Henriques (1947), Am. J. Pathol.
// 23, 695-720, as printed on an anti-scald device page; 44 °C is the coolest temperature at which they
// found injury at all, after six hours.
constexpr std::array kSkinTable{Point{44, 21600}, Point{45, 7200}, Point{47, 1200}, Point{48, 900},
                                Point{49, 480},   Point{51, 120},  Point{55, 17},   Point{60, 3}};

// US CPSC, tap-water scald safety alert (document 5098): third-degree burn, most adults.
constexpr std::array kTapTable{Point{us::celsius(120), 300}, Point{us::celsius(130), 30}, Point{us::celsius(140), 6},
                               Point{us::celsius(150), 2}};

// Hospital burn-prevention table: serious scald. Its 125 °F row is a range (90 to 120 s): the lower end
// stands here. Its rows at 140 and 145 °F are upper bounds ("under 5 s", "under 3 s").
constexpr std::array kHospitalTable{Point{us::celsius(120), 300}, Point{us::celsius(125), 90},
                                    Point{us::celsius(130), 30},  Point{us::celsius(135), 10},
                                    Point{us::celsius(140), 5},   Point{us::celsius(145), 3},
                                    Point{us::celsius(150), 1.5}, Point{us::celsius(155), 1}};

constexpr std::array<std::span<const Point>, 3> kTables{kSkinTable, kTapTable, kHospitalTable};

std::optional<double> fromTable(std::span<const Point> table, double celsius)
{
    // A temperature converted from whole °F may land a rounding error below its own row.
    constexpr double kRounding_K = 1e-9;
    if (celsius < table.front().celsius - kRounding_K) {
        return std::nullopt;
    }
    if (celsius >= table.back().celsius) {
        return table.back().seconds;  // the true time is shorter still; never extrapolated
    }
    const auto above = std::upper_bound(table.begin() + 1, table.end(), celsius,
                                        [](double value, const Point& point) { return value < point.celsius; });
    const Point& low = *(above - 1);
    const Point& high = *above;
    const double share = std::max(0.0, (celsius - low.celsius) / (high.celsius - low.celsius));
    return low.seconds * std::pow(high.seconds / low.seconds, share);
}

/// The lowest of the tables at one of their own points.
double lowestAt(double celsius)
{
    double lowest = std::numeric_limits<double>::infinity();
    for (const std::span<const Point> table : kTables) {
        lowest = std::min(lowest, fromTable(table, celsius).value_or(lowest));
    }
    return lowest;
}

/// The lowest of the tables at every temperature that any of them prints, coolest first.
std::vector<Point> lowestPoints()
{
    std::vector<Point> points;
    for (const std::span<const Point> table : kTables) {
        points.insert(points.end(), table.begin(), table.end());
    }
    std::sort(points.begin(), points.end(), [](const Point& a, const Point& b) { return a.celsius < b.celsius; });
    for (Point& point : points) {
        point.seconds = lowestAt(point.celsius);
    }
    return points;
}

}  // namespace

std::optional<double> burnSeconds(double celsius)
{
    // One line through the lowest points, not the lowest of three lines: a table that begins at 120 °F would else
    // halve the time from one tenth of a degree to the next.
    static const std::vector<Point> lowest = lowestPoints();
    return fromTable(lowest, celsius);
}

std::optional<double> wholeBurnSeconds(double celsius)
{
    const std::optional<double> seconds = burnSeconds(celsius);
    constexpr double kRounding_s = 1e-6;
    if (!seconds) {
        return std::nullopt;
    }
    const double step = *seconds + kRounding_s >= 600 ? 60 : *seconds + kRounding_s >= 120 ? 30 : 1;
    return std::max(1.0, std::floor((*seconds + kRounding_s) / step) * step);
}

}  // namespace tapward::review
