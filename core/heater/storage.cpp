// SPDX-License-Identifier: GPL-3.0-or-later
#include "heater/storage.h"

#include <algorithm>
#include <limits>

namespace tapward::heater {

Storage::Storage(const StorageSpec& spec) : m_spec(spec) {}

void Storage::enter(State state, bool powered)
{
    m_state = state;
    m_inState_s = 0;
    m_stood_s = 0;
    const bool calls = state == State::Lighting || state == State::Heating;
    m_burner_W = state == State::Heating && powered ? m_spec.burnerInput_W : 0.0;
    m_power_W = (calls ? m_spec.element_W : 0.0) + m_burner_W * m_spec.efficiency;
}

std::optional<Storage::Change> Storage::advance(double t_s, double dt_s, double tank_C, bool powered)
{
    const bool burner = m_spec.burnerInput_W > 0;
    // The state the tank and the supply ask for; a burner without power leaves the element alone at work.
    State wanted = m_state;
    double needed = kThermostatScan_s, since = m_stood_s;
    if (m_state != State::Lockout) {
        const bool canHeat = (burner && powered) || m_spec.element_W > 0;
        if (tank_C >= m_spec.ecoLimit_C) {
            wanted = State::Lockout;
        } else if (m_state == State::Satisfied) {
            if (canHeat && tank_C <= m_spec.setpoint_C - m_spec.differential_K)
                wanted = burner && powered ? State::Lighting : State::Heating;
        } else if (!canHeat || tank_C >= m_spec.setpoint_C) {
            wanted = State::Satisfied;
        } else if (m_state == State::Lighting) {
            wanted = State::Heating;
            if (powered) {
                needed = m_spec.ignition_s;
                since = m_inState_s;
            }
        } else if (burner && powered && m_burner_W == 0) {
            wanted = State::Lighting;
        } else if (m_burner_W > 0 && !powered) {
            m_burner_W = 0;  // the gas valve closes by itself; the element goes on
            m_power_W = m_spec.element_W;
        }
    }
    const bool changes = wanted != m_state;
    const double until = changes ? std::max(0.0, needed - since) : std::numeric_limits<double>::infinity();
    const bool now = until <= dt_s * (1.0 + 1e-12) + 1e-12;
    const double passed = now ? std::min(until, dt_s) : dt_s;
    m_inState_s += passed;
    m_stood_s = changes && needed == kThermostatScan_s ? m_stood_s + passed : 0.0;
    m_mean_W = m_power_W;
    m_gas_J += m_burner_W * passed;
    if (!now)
        return {};
    enter(wanted, powered);
    return Change{wanted, t_s + passed};
}

double Storage::timeToNextEvent_s() const
{
    double next = std::numeric_limits<double>::infinity();
    if (m_state == State::Lighting)
        next = std::max(0.0, m_spec.ignition_s - m_inState_s);
    if (m_stood_s > 0)
        next = std::min(next, std::max(0.0, kThermostatScan_s - m_stood_s));
    return next;
}

void Storage::reset()
{
    if (m_state == State::Lockout)
        enter(State::Satisfied, false);
}

}  // namespace tapward::heater
