// SPDX-License-Identifier: GPL-3.0-or-later
#include "thermal/remap.h"

#include <algorithm>
#include <cmath>

namespace tapward::thermal::remap {

namespace {

/// Limited slope from the differences to both neighbours; h = distance of the centres, v = the cell's volume.
inline double limited(double left, double right, double hLeft, double hRight, double inverseHalfV)
{
    // Slope of the parabola through the three means' centres, kept within reach of both neighbours.
    const double central = (left * hRight * hRight + right * hLeft * hLeft) / (hLeft * hRight * (hLeft + hRight));
    const double most = std::min(std::abs(left), std::abs(right)) * inverseHalfV;
    const double size = std::min(std::abs(central), most);
    return left * right > 0 ? std::copysign(size, left) : 0.0;
}

}  // namespace

void innerSlopes(const double* t, const double* v, std::size_t n, double* slope)
{
    for (std::size_t i = 1; i + 1 < n; ++i)
        slope[i] =
            limited(t[i] - t[i - 1], t[i + 1] - t[i], 0.5 * (v[i - 1] + v[i]), 0.5 * (v[i] + v[i + 1]), 2.0 / v[i]);
}

double slopeBetween(const Beyond& before, const Beyond& cell, const Beyond& after)
{
    return limited(cell.celsius - before.celsius, after.celsius - cell.celsius,
                   0.5 * (before.volume_m3 + cell.volume_m3), 0.5 * (cell.volume_m3 + after.volume_m3),
                   2.0 / cell.volume_m3);
}

double slopeAtEnd(const Beyond& first, const Beyond& before, const Beyond& cell)
{
    const double near = (cell.celsius - before.celsius) / (0.5 * (before.volume_m3 + cell.volume_m3));
    const double far = (before.celsius - first.celsius) / (0.5 * (first.volume_m3 + before.volume_m3));
    return near * far > 0 ? std::copysign(std::min(std::abs(near), 2 * std::abs(far)), near) : 0.0;
}

double outflow(const double* t, const double* v, const double* slope, std::size_t n, double shift_m3,
               double inletCelsius, double& back)
{
    double heat = 0;
    double rest = shift_m3;
    back = inletCelsius;
    for (std::size_t i = n; i-- > 0;) {
        if (rest <= v[i])
            back = t[i] + slope[i] * (0.5 * v[i] - rest);
        if (rest <= v[i])
            return heat + rest * (t[i] + 0.5 * slope[i] * (v[i] - rest));
        heat += v[i] * t[i];
        rest -= v[i];
    }
    return heat + rest * inletCelsius;
}

void shift(double* t, const double* v, const double* inverseV, const double* slope, std::size_t n, double smallest,
           double shift_m3, const Inflow& inlet, double* scratch)
{
    if (shift_m3 <= smallest) {
        for (std::size_t i = 0; i < n; ++i)
            scratch[i] = shift_m3 * (t[i] + 0.5 * slope[i] * (v[i] - shift_m3));
        double before = shift_m3 * inlet.celsius;
        for (std::size_t i = 0; i < n; ++i) {
            t[i] += (before - scratch[i]) * inverseV[i];
            before = scratch[i];
        }
        return;
    }
    // Each cell takes its volume from the stream of inlet water followed by the old cells.
    double rest = shift_m3;  // of the inlet water
    std::size_t from = 0;    // source cell once the inlet water is used up
    double used = 0;         // of that source cell
    for (std::size_t i = 0; i < n; ++i) {
        double need = v[i];
        double heat = 0;
        if (rest > 0) {
            const double take = std::min(rest, need);
            heat += take * (inlet.celsius + inlet.slope * (0.5 * (shift_m3 + take) - rest));
            rest -= take;
            need -= take;
        }
        while (need > 0 && from < n) {
            const double left = v[from] - used;
            const double take = std::min(left, need);
            heat += take * (t[from] + slope[from] * (used + 0.5 * take - 0.5 * v[from]));
            need -= take;
            if (take < left) {
                used += take;
            } else {
                ++from;
                used = 0;
            }
        }
        scratch[i] = heat * inverseV[i];
    }
    std::copy_n(scratch, n, t);
}

void disperse(double* t, const double* v, const double* conductance, std::size_t n, double largest, double dt_s,
              double* scratch)
{
    if (n < 2)
        return;
    if (largest * dt_s <= 0.5) {
        double before = 0;
        for (std::size_t i = 0; i < n; ++i) {
            const double after = i + 1 < n ? dt_s * conductance[i] * (t[i + 1] - t[i]) : 0.0;
            t[i] += (after - before) / v[i];
            before = after;
        }
        return;
    }
    // (V_i + dt (K_{i-1} + K_i)) T_i - dt K_{i-1} T_{i-1} - dt K_i T_{i+1} = V_i T_i(old)
    double below = 0;      // dt K_{i-1}
    double ratio = 0;      // eliminated upper entry of the row before
    for (std::size_t i = 0; i < n; ++i) {
        const double above = i + 1 < n ? dt_s * conductance[i] : 0.0;
        const double pivot = v[i] + above + below * (1.0 - ratio);
        const double carried = i > 0 ? below * t[i - 1] : 0.0;
        t[i] = (v[i] * t[i] + carried) / pivot;
        ratio = above / pivot;
        scratch[i] = ratio;
        below = above;
    }
    for (std::size_t i = n - 1; i-- > 0;)
        t[i] += scratch[i] * t[i + 1];
}

}  // namespace tapward::thermal::remap
