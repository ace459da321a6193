// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <vector>

namespace tapward {

/// A smooth curve through points that never bulges past its own data: a piecewise cubic whose slopes
/// are limited so that it is monotone where the points are.
/// Method: Fritsch & Carlson (1980), SIAM J. Numer. Anal. 17(2), 238-246.
class MonotoneCurve {
public:
    struct Point {
        double x;
        double y;
    };

    MonotoneCurve() = default;
    /// @param points  one or more, x strictly rising (asserted; check at the door).
    explicit MonotoneCurve(std::vector<Point> points);

    /// Outside the points the curve runs on along its end slopes.
    double at(double x) const;
    double slopeAt(double x) const;
    /// Integral from the first point's x to x.
    double integralTo(double x) const;

    const std::vector<Point>& points() const { return m_points; }

private:
    std::vector<Point> m_points;
    std::vector<double> m_slopes;
    std::vector<double> m_areas;  // integral from the first point to each point
};

}  // namespace tapward
