// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <array>

namespace tapward::heater {

/// Water and metal of an exchanger as a control reckons with them: one coil, heated evenly along its length, its
/// metal as warm as its water, plug flow but for what an interpolation blurs. A straight profile, and with it
/// any steady state, is exact.
class Coil {
public:
    static constexpr int kCells = 20;

    /// @param capacity_J_K  water and metal together, > 0
    explicit Coil(double capacity_J_K);

    void fill(double celsius);
    /// Water passes for dt_s at flow_m3s > 0, coming in at inlet_C, with heat_W put in all along.
    void pass(double dt_s, double flow_m3s, double inlet_C, double heat_W);
    /// Water stands: what is not known of its cooling is taken from a reading at the outlet.
    void rest(double outlet_C);
    double outlet_C() const { return m_celsius.back(); }
    /// Time in which a change at the inlet comes through at this flow, > 0: water and metal over the water's heat.
    double turnover_s(double flow_m3s) const;

private:
    double m_capacity_J_K;
    std::array<double, kCells + 1> m_celsius{};  ///< at equal distances, from inlet to outlet
};

}  // namespace tapward::heater
