// SPDX-License-Identifier: GPL-3.0-or-later
#include "heater/storage.h"

#include <algorithm>
#include <limits>

namespace tapward::heater {

Storage::Storage(const StorageSpec& spec) : m_spec(spec) {}

void Storage::enter(State state, bool powered)
{
    m_state = state;
    m_wanted = state;
    m_inState_s = 0;
    m_stood_s = 0;
    const bool calls = state == State::Lighting || state == State::Heating;
    m_burner_W = state == State::Heating && powered ? m_spec.burnerInput_W : 0.0;
    m_power_W = (calls ? m_spec.element_W : 0.0) + m_burner_W * m_spec.efficiency;
}

void Storage::look(double tank_C, bool powered)
{
    if (m_sinceSeen_s > 0)
        m_rate_K_s = (tank_C - m_seen_C) / m_sinceSeen_s;
    m_sinceSeen_s = 0;
    m_seen_C = tank_C;
    const bool burner = m_spec.burnerInput_W > 0;
    // The state the tank and the supply ask for; a burner without power leaves the element alone at work.
    State wanted = m_state;
    m_needed_s = kThermostatScan_s;
    m_byTimer = false;
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
                m_needed_s = m_spec.ignition_s;
                m_byTimer = true;
            }
        } else if (burner && powered && m_burner_W == 0) {
            wanted = State::Lighting;
        } else if (m_burner_W > 0 && !powered) {
            m_burner_W = 0;  // the gas valve closes by itself; the element goes on
            m_power_W = m_spec.element_W;
        }
    }
    if (wanted != m_wanted || wanted == m_state)
        m_stood_s = 0;
    m_wanted = wanted;
}

std::optional<Storage::Change> Storage::advance(double t_s, double dt_s, double tank_C, bool powered)
{
    look(tank_C, powered);
    const bool changes = m_wanted != m_state;
    const double until = changes ? std::max(0.0, m_needed_s - (m_byTimer ? m_inState_s : m_stood_s))
                                 : std::numeric_limits<double>::infinity();
    const bool now = until <= dt_s * (1.0 + 1e-12) + 1e-12;
    const double passed = now ? std::min(until, dt_s) : dt_s;
    m_inState_s += passed;
    m_sinceSeen_s += passed;
    if (changes)
        m_stood_s += passed;
    m_mean_W = m_power_W;
    m_gas_J += m_burner_W * passed;
    if (!now)
        return {};
    enter(m_wanted, powered);
    return Change{m_state, t_s + passed};
}

/// Until the tank meets the thermostat's next mark, by its rate of late.
double Storage::timeToMark_s() const
{
    double next = std::numeric_limits<double>::infinity();
    const double on_C = m_spec.setpoint_C - m_spec.differential_K;
    if (m_state == State::Lockout)
        return next;
    if (m_rate_K_s > 0)
        for (const double mark : {m_spec.setpoint_C, m_spec.ecoLimit_C})
            if (m_seen_C < mark && (mark != m_spec.setpoint_C || m_state != State::Satisfied))
                next = std::min(next, (mark - m_seen_C) / m_rate_K_s);
    if (m_rate_K_s < 0 && m_state == State::Satisfied && m_seen_C > on_C)
        next = std::min(next, (on_C - m_seen_C) / m_rate_K_s);
    return std::max(next, kThermostatScan_s);
}

double Storage::timeToNextEvent_s() const
{
    if (m_wanted == m_state)
        return timeToMark_s();
    return std::min(timeToMark_s(), std::max(0.0, m_needed_s - (m_byTimer ? m_inState_s : m_stood_s)));
}

void Storage::reset()
{
    if (m_state == State::Lockout)
        enter(State::Satisfied, false);
}

}  // namespace tapward::heater
