// SPDX-License-Identifier: GPL-3.0-or-later
#include "heater/coil.h"

#include <algorithm>
#include <cmath>

#include "water/water.h"

namespace tapward::heater {

Coil::Coil(double capacity_J_K) : m_capacity_J_K(capacity_J_K) { fill(20); }

void Coil::fill(double celsius) { m_celsius.fill(celsius); }

double Coil::turnover_s(double flow_m3s) const { return m_capacity_J_K / (flow_m3s * water::referenceVolumeHeat()); }

void Coil::pass(double dt_s, double flow_m3s, double inlet_C, double heat_W)
{
    if (!(dt_s > 0))
        return;
    const double moved = dt_s / turnover_s(flow_m3s);  // share of the coil
    const double warmed_K = heat_W * dt_s / m_capacity_J_K;
    // From the outlet back, so that each place still finds the water that comes to it.
    for (int i = kCells; i >= 0; --i) {
        const double place = static_cast<double>(i) / kCells;
        const double before = place - moved;
        if (before < 0) {  // it came in within the step
            m_celsius[static_cast<std::size_t>(i)] = inlet_C + warmed_K * place / moved;
            continue;
        }
        const auto left = static_cast<std::size_t>(before * kCells);
        const double share = before * kCells - static_cast<double>(left);
        const double after = left < kCells ? m_celsius[left + 1] : m_celsius[left];
        m_celsius[static_cast<std::size_t>(i)] = m_celsius[left] + share * (after - m_celsius[left]) + warmed_K;
    }
}

void Coil::rest(double outlet_C)
{
    const double shift_K = outlet_C - m_celsius.back();
    for (double& celsius : m_celsius)
        celsius += shift_K;
}

}  // namespace tapward::heater
