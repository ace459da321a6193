// SPDX-License-Identifier: GPL-3.0-or-later
#include "base/monotone_curve.h"

#include <algorithm>
#include <cassert>
#include <cmath>
#include <cstddef>
#include <utility>

namespace tapward {
namespace {

// Slope of the parabola through three points, from its two chords; `at` counts from the middle of the
// first chord, where the parabola has just the chord's slope.
double parabolaSlope(double at, double h0, double chord0, double h1, double chord1)
{
    return chord0 + 2 * at * (chord1 - chord0) / (h0 + h1);
}

}  // namespace

MonotoneCurve::MonotoneCurve(std::vector<Point> points) : m_points(std::move(points))
{
    assert(!m_points.empty());
    const std::size_t n = m_points.size();
    m_slopes.assign(n, 0.0);
    m_areas.assign(n, 0.0);
    if (n < 2)
        return;

    std::vector<double> h(n - 1), chord(n - 1);
    for (std::size_t k = 0; k + 1 < n; ++k) {
        h[k] = m_points[k + 1].x - m_points[k].x;
        assert(h[k] > 0);
        chord[k] = (m_points[k + 1].y - m_points[k].y) / h[k];
    }
    if (n == 2) {
        m_slopes[0] = m_slopes[1] = chord[0];
    } else {
        m_slopes[0] = parabolaSlope(-0.5 * h[0], h[0], chord[0], h[1], chord[1]);
        m_slopes[n - 1] = parabolaSlope(0.5 * h[n - 3] + h[n - 2], h[n - 3], chord[n - 3], h[n - 2], chord[n - 2]);
        for (std::size_t k = 1; k + 1 < n; ++k)
            m_slopes[k] = parabolaSlope(0.5 * h[k - 1], h[k - 1], chord[k - 1], h[k], chord[k]);
        // Fritsch & Carlson: slopes agree in sign with both chords and stay in the circle of radius 3.
        for (std::size_t k = 0; k + 1 < n; ++k) {
            if (chord[k] == 0) {
                m_slopes[k] = m_slopes[k + 1] = 0;
                continue;
            }
            double a = std::max(0.0, m_slopes[k] / chord[k]);
            double b = std::max(0.0, m_slopes[k + 1] / chord[k]);
            const double radius = std::hypot(a, b);
            if (radius > 3) {
                a *= 3 / radius;
                b *= 3 / radius;
            }
            m_slopes[k] = a * chord[k];
            m_slopes[k + 1] = b * chord[k];
        }
    }
    for (std::size_t k = 0; k + 1 < n; ++k)
        m_areas[k + 1] = m_areas[k] + 0.5 * h[k] * (m_points[k].y + m_points[k + 1].y)
                         + h[k] * h[k] / 12 * (m_slopes[k] - m_slopes[k + 1]);
}

namespace {

std::size_t pieceBelow(const std::vector<MonotoneCurve::Point>& points, double x)
{
    const auto above = std::upper_bound(points.begin() + 1, points.end() - 1, x,
                                        [](double v, const MonotoneCurve::Point& p) { return v < p.x; });
    return static_cast<std::size_t>(above - points.begin()) - 1;
}

}  // namespace

double MonotoneCurve::at(double x) const
{
    if (x <= m_points.front().x)
        return m_points.front().y + m_slopes.front() * (x - m_points.front().x);
    if (x >= m_points.back().x)
        return m_points.back().y + m_slopes.back() * (x - m_points.back().x);
    const std::size_t k = pieceBelow(m_points, x);
    const double h = m_points[k + 1].x - m_points[k].x;
    const double t = (x - m_points[k].x) / h;
    const double rise = m_points[k + 1].y - m_points[k].y;
    const double a = m_slopes[k] * h - rise;
    const double b = rise - m_slopes[k + 1] * h;
    return m_points[k].y + t * (rise + (1 - t) * (a * (1 - t) + b * t));
}

double MonotoneCurve::slopeAt(double x) const
{
    if (x <= m_points.front().x)
        return m_slopes.front();
    if (x >= m_points.back().x)
        return m_slopes.back();
    const std::size_t k = pieceBelow(m_points, x);
    const double h = m_points[k + 1].x - m_points[k].x;
    const double t = (x - m_points[k].x) / h;
    const double rise = m_points[k + 1].y - m_points[k].y;
    const double a = m_slopes[k] * h - rise;
    const double b = rise - m_slopes[k + 1] * h;
    return (rise + (1 - 2 * t) * (a * (1 - t) + b * t) + t * (1 - t) * (b - a)) / h;
}

double MonotoneCurve::integralTo(double x) const
{
    if (x <= m_points.front().x) {
        const double d = x - m_points.front().x;
        return d * (m_points.front().y + 0.5 * m_slopes.front() * d);
    }
    if (x >= m_points.back().x) {
        const double d = x - m_points.back().x;
        return m_areas.back() + d * (m_points.back().y + 0.5 * m_slopes.back() * d);
    }
    const std::size_t k = pieceBelow(m_points, x);
    const double h = m_points[k + 1].x - m_points[k].x;
    const double t = (x - m_points[k].x) / h;
    const double rise = m_points[k + 1].y - m_points[k].y;
    const double a = m_slopes[k] * h - rise;
    const double b = rise - m_slopes[k + 1] * h;
    // y = y0 + rise t + a (t - 2t² + t³) + b (t² - t³)
    return m_areas[k] + h * t * (m_points[k].y + t * (0.5 * rise + a * 0.5 + t * ((b - 2 * a) / 3 + t * (a - b) / 4)));
}

}  // namespace tapward
