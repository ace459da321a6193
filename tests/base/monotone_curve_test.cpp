// SPDX-License-Identifier: GPL-3.0-or-later
#include "base/monotone_curve.h"

#include <cmath>
#include <vector>

#include <rapidcheck.h>

#include "support/catch.h"

using tapward::MonotoneCurve;

TEST_CASE("A curve passes through its points", "[base]")
{
    const std::vector<MonotoneCurve::Point> points{{0, 3}, {1, 2.9}, {1.5, 1}, {4, 0.9}, {5, 0}};
    const MonotoneCurve curve(points);
    for (const auto& p : points)
        CHECK_THAT(curve.at(p.x), WithinAbs(p.y, 1e-14));
}

TEST_CASE("A curve through a parabola's points is that parabola where nothing had to be limited", "[base]")
{
    std::vector<MonotoneCurve::Point> points;
    auto y = [](double x) { return 20 - 0.3 * x - 0.05 * x * x; };
    for (double x : {0.0, 1.0, 2.5, 3.0, 5.0, 9.0})
        points.push_back({x, y(x)});
    const MonotoneCurve curve(points);
    for (double x = 0; x <= 9; x += 0.1) {
        CHECK_THAT(curve.at(x), WithinAbs(y(x), 1e-12));
        CHECK_THAT(curve.slopeAt(x), WithinAbs(-0.3 - 0.1 * x, 1e-12));
        CHECK_THAT(curve.integralTo(x), WithinAbs(20 * x - 0.15 * x * x - 0.05 / 3 * x * x * x, 1e-11));
    }
}

TEST_CASE("A monotone curve is met at the published test data", "[base][published]")
{
    // Fritsch & Carlson (1980), SIAM J. Numer. Anal. 17, 238, the data set RPN 14 (memory). It rises
    // everywhere; a plain cubic spline swings below zero between 7.99 and 8.19.
    const MonotoneCurve curve({{7.99, 0},
                               {8.09, 2.76429e-5},
                               {8.19, 4.37498e-2},
                               {8.7, 0.169183},
                               {9.2, 0.469428},
                               {10, 0.943740},
                               {12, 0.998636},
                               {15, 0.999919},
                               {20, 0.999994}});
    double before = curve.at(7.99);
    for (double x = 8.0; x <= 20; x += 0.01) {
        CHECK(curve.at(x) >= before);
        before = curve.at(x);
    }
    CHECK(before <= 0.999994 + 1e-12);
}

TEST_CASE("Outside its points a curve runs on along its end slopes", "[base]")
{
    const MonotoneCurve curve({{1, 5}, {2, 4}, {3, 1}});
    CHECK_THAT(curve.at(0), WithinAbs(5 - curve.slopeAt(1), 1e-12));
    CHECK_THAT(curve.at(5), WithinAbs(1 + 2 * curve.slopeAt(3), 1e-12));
    CHECK(curve.slopeAt(-7) == curve.slopeAt(1));
    CHECK(curve.slopeAt(70) == curve.slopeAt(3));
    CHECK_THAT(curve.integralTo(0), WithinAbs(-0.5 * (curve.at(0) + curve.at(1)), 1e-12));
}

TEST_CASE("One point is a level line, two points a straight one", "[base]")
{
    const MonotoneCurve level({{2, 7}});
    CHECK(level.at(-1) == 7);
    CHECK(level.at(9) == 7);
    CHECK_THAT(level.integralTo(5), WithinAbs(21, 1e-12));
    const MonotoneCurve line({{0, 1}, {2, 5}});
    CHECK_THAT(line.at(1.3), WithinAbs(3.6, 1e-12));
    CHECK_THAT(line.at(-1), WithinAbs(-1, 1e-12));
}

TEST_CASE("Between falling points a curve never bulges past its own data, and its slope and integral belong to it",
          "[base]")
{
    CHECK(rc::check("falling points", [] {
        std::vector<MonotoneCurve::Point> points{{0, 1000}};
        const int count = *rc::gen::inRange(2, 12);
        for (int i = 0; i < count; ++i)
            points.push_back(
                {points.back().x + *rc::gen::inRange(1, 1000), points.back().y - *rc::gen::inRange(0, 300)});
        const MonotoneCurve curve(points);
        for (std::size_t k = 0; k + 1 < points.size(); ++k) {
            const double h = points[k + 1].x - points[k].x;
            double before = points[k].y;
            for (int s = 1; s <= 20; ++s) {
                const double x = points[k].x + h * s / 20;
                const double y = curve.at(x);
                RC_ASSERT(y <= before + 1e-9);
                RC_ASSERT(y >= points[k + 1].y - 1e-9);
                before = y;
                const double d = 1e-5 * h;
                const double inside = std::min(x, points[k + 1].x - d);
                const double quotient = (curve.at(inside + d) - curve.at(inside - d)) / (2 * d);
                RC_ASSERT(std::abs(curve.slopeAt(inside) - quotient) < 1e-4 * (1 + std::abs(quotient)));
                const double area = (curve.integralTo(inside + d) - curve.integralTo(inside - d)) / (2 * d);
                RC_ASSERT(std::abs(area - curve.at(inside)) < 1e-3);
            }
        }
    }));
}
