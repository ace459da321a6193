// SPDX-License-Identifier: GPL-3.0-or-later
#include "heater/coil.h"

#include <algorithm>
#include <cmath>

#include "water/water.h"

namespace tapward::heater {

namespace {

/// Cubic through the four places around, kept between the two next to it, so that many short steps blur no more than a
/// few long ones.
double between(const std::array<double, Coil::kCells + 1>& celsius, double place)
{
    const auto left = std::min(static_cast<std::size_t>(place), static_cast<std::size_t>(Coil::kCells - 1));
    const double w = place - static_cast<double>(left);
    const double a = celsius[left], b = celsius[left + 1];
    const double before = left > 0 ? celsius[left - 1] : 2 * a - b;
    const double after = left + 2 <= Coil::kCells ? celsius[left + 2] : 2 * b - a;
    const double cubic =
        w * (w - 1) / 6 * ((w + 1) * after - (w - 2) * before) + (w + 1) * (w - 2) / 2 * ((w - 1) * a - w * b);
    return std::clamp(cubic, std::min(a, b), std::max(a, b));
}

}  // namespace

Coil::Coil(double capacity_J_K) : m_capacity_J_K(capacity_J_K) { fill(20); }

void Coil::fill(double celsius) { m_celsius.fill(celsius); }

double Coil::turnover_s(double flow_m3s) const { return m_capacity_J_K / (flow_m3s * water::referenceVolumeHeat()); }

void Coil::pass(double dt_s, double flow_m3s, double inlet_C, double heat_W)
{
    if (!(dt_s > 0))
        return;
    const double moved = dt_s / turnover_s(flow_m3s);  // share of the coil
    const double warmed_K = heat_W * dt_s / m_capacity_J_K;
    const std::array<double, kCells + 1> was = m_celsius;
    for (int i = 0; i <= kCells; ++i) {
        const double place = static_cast<double>(i) / kCells;
        const double before = place - moved;
        m_celsius[static_cast<std::size_t>(i)] = before < 0 ? inlet_C + warmed_K * place / moved  // it came in just now
                                                            : between(was, before * kCells) + warmed_K;
    }
}

void Coil::rest(double outlet_C)
{
    const double shift_K = outlet_C - m_celsius.back();
    for (double& celsius : m_celsius)
        celsius += shift_K;
}

}  // namespace tapward::heater
