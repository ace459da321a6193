// SPDX-License-Identifier: GPL-3.0-or-later
#include "control/run_control.h"

#include <algorithm>
#include <cmath>

namespace tapward::control {
namespace {

constexpr double kNever = 1e9;
constexpr double kRounding_s = 1e-6;  // times are sums of steps

/// Where between two readings a rising (or falling) value met its mark: 0 start .. 1 end.
double crossing(double before, double after, double mark)
{
    if (!std::isfinite(before) || after == before) {
        return 1;
    }
    return std::clamp((mark - before) / (after - before), 0.0, 1.0);
}

}  // namespace

bool isRefusal(RunCause cause)
{
    switch (cause) {
    case RunCause::RefusedWarm:
    case RunCause::RefusedWait:
    case RunCause::RefusedInlet:
    case RunCause::RefusedLimit:
    case RunCause::RefusedNoPower:
        return true;
    default:
        return false;
    }
}

RunControl::RunControl(const RunSpec& spec) : m_spec(spec) {}

bool RunControl::valveCommandedOpen() const { return m_state != RunState::Idle; }

double RunControl::pumpedThisRun_m3(double pumpedTotal_m3) const
{
    return m_state == RunState::Idle ? 0 : pumpedTotal_m3 - m_startTotal_m3;
}

std::optional<double> RunControl::stopAtTotal_m3() const
{
    if (m_state == RunState::Idle || !m_spec.stopByVolume) {
        return std::nullopt;
    }
    return m_startTotal_m3 + m_spec.stopVolume_m3;
}

RunChange RunControl::stop(RunCause cause, double at_s)
{
    m_state = RunState::Idle;
    m_pumps = false;
    m_ended_s = at_s;
    m_noFlowSince_s = -1;
    return {m_state, cause, at_s};
}

RunChange RunControl::press(double t_s, const RunInputs& inputs)
{
    if (m_state != RunState::Idle) {
        return stop(RunCause::ButtonPressedAgain, t_s);
    }
    // A refusal leaves everything as it is. Comparisons with a missing sensor are false: a controller
    // cannot refuse on what it does not see.
    if (!inputs.powered) {
        return {m_state, RunCause::RefusedNoPower, t_s};
    }
    if (t_s - m_ended_s < m_spec.coolDownWait_s - kRounding_s) {
        return {m_state, RunCause::RefusedWait, t_s};
    }
    if (m_spec.highLimit && !inputs.limitFails && inputs.limitSensor_C >= m_spec.highLimit_C) {
        return {m_state, RunCause::RefusedLimit, t_s};
    }
    if (m_spec.inletLockout && inputs.inletSensor_C >= m_spec.inletLockout_C) {
        return {m_state, RunCause::RefusedInlet, t_s};
    }
    if (m_spec.refuseWhenWarm && inputs.stopSensor_C >= m_spec.stopTemperature_C) {
        return {m_state, RunCause::RefusedWarm, t_s};
    }
    m_state = RunState::OpeningValve;
    m_start_s = t_s;
    m_startTotal_m3 = inputs.pumped_m3;
    m_noFlowSince_s = -1;
    m_pumpStart_s = t_s + m_spec.pumpDelay_s;
    m_pumps = !m_spec.pumpAfterValve && m_spec.pumpDelay_s <= 0;
    if (inputs.valveOpen) {
        m_pumps = true;
        m_state = RunState::Running;
    }
    return {m_state, RunCause::ButtonPressed, t_s};
}

void RunControl::look(double t_s, const RunInputs& inputs)
{
    if (m_spec.noFlow_s <= 0 || !m_pumps) {
        return;
    }
    if (inputs.flow_m3s >= m_spec.noFlowBelow_m3s) {
        m_noFlowSince_s = -1;
    } else if (m_noFlowSince_s < 0) {
        m_noFlowSince_s = t_s;
    }
}

std::optional<RunChange> RunControl::advance(double t_s, double dt_s, const RunInputs& before, const RunInputs& inputs)
{
    if (m_state == RunState::Idle) {
        return std::nullopt;
    }
    if (!inputs.powered) {
        return stop(RunCause::PowerLost, t_s);
    }
    const double begin_s = t_s - dt_s;
    const auto instant = [&](double share) { return begin_s + share * dt_s; };

    // Every stop that was met in this step competes; the earliest wins, ties go to the protections.
    struct Met {
        double at_s;
        RunCause cause;
    };
    Met first{kNever, RunCause::LongestRun};
    const auto meet = [&first](double at_s, RunCause cause) {
        if (at_s < first.at_s) {
            first = {at_s, cause};
        }
    };
    if (m_spec.highLimit && !inputs.limitFails && inputs.limitSensor_C >= m_spec.highLimit_C) {
        meet(instant(crossing(before.limitSensor_C, inputs.limitSensor_C, m_spec.highLimit_C)), RunCause::HighLimit);
    }
    if (m_spec.inletLockout && inputs.inletSensor_C >= m_spec.inletLockout_C) {
        meet(instant(crossing(before.inletSensor_C, inputs.inletSensor_C, m_spec.inletLockout_C)),
             RunCause::InletTooWarm);
    }
    if (m_spec.longestRun_s > 0 && t_s - m_start_s >= m_spec.longestRun_s - kRounding_s) {
        meet(std::max(begin_s, m_start_s + m_spec.longestRun_s), RunCause::LongestRun);
    }
    if (!inputs.stopFails) {
        if (m_spec.stopByVolume && inputs.pumped_m3 - m_startTotal_m3 >= m_spec.stopVolume_m3) {
            meet(instant(crossing(before.pumped_m3, inputs.pumped_m3, m_startTotal_m3 + m_spec.stopVolume_m3)),
                 RunCause::VolumeReached);
        }
        if (m_spec.stopByTime && t_s - m_start_s >= m_spec.stopTime_s - kRounding_s) {
            meet(std::max(begin_s, m_start_s + m_spec.stopTime_s), RunCause::TimeReached);
        }
        if (m_spec.stopByTemperature && m_state == RunState::Running
            && inputs.stopSensor_C >= m_spec.stopTemperature_C) {
            meet(instant(crossing(before.stopSensor_C, inputs.stopSensor_C, m_spec.stopTemperature_C)),
                 RunCause::TemperatureReached);
        }
    }
    if (m_spec.noFlow_s > 0 && m_pumps) {
        look(begin_s, inputs);
        if (m_noFlowSince_s >= 0 && t_s - m_noFlowSince_s >= m_spec.noFlow_s - kRounding_s) {
            meet(std::max(begin_s, m_noFlowSince_s + m_spec.noFlow_s), RunCause::NoFlow);
        }
    }
    if (first.at_s < kNever) {
        // The relay lets go at the step's end, and the wait counts from there, as it does for a hand at the button.
        const RunChange ended = stop(first.cause, first.at_s);
        m_ended_s = t_s;
        return ended;
    }

    if (!m_pumps && !m_spec.pumpAfterValve && t_s >= m_pumpStart_s - kRounding_s) {
        m_pumps = true;
    }
    if (m_state == RunState::OpeningValve && inputs.valveOpen) {
        m_state = RunState::Running;
        m_pumps = true;
        return RunChange{m_state, RunCause::ValveOpen, t_s};
    }
    return std::nullopt;
}

double RunControl::timeToNextEvent_s(double t_s) const
{
    if (m_state == RunState::Idle) {
        return kNever;
    }
    double next = kNever;
    const auto timer = [&](double at_s) {
        if (at_s > t_s) {
            next = std::min(next, at_s - t_s);
        }
    };
    if (m_spec.stopByTime) {
        timer(m_start_s + m_spec.stopTime_s);
    }
    if (m_spec.longestRun_s > 0) {
        timer(m_start_s + m_spec.longestRun_s);
    }
    if (!m_pumps && !m_spec.pumpAfterValve) {
        timer(m_pumpStart_s);
    }
    if (m_spec.noFlow_s > 0 && m_noFlowSince_s >= 0) {
        timer(m_noFlowSince_s + m_spec.noFlow_s);
    }
    return next;
}

}  // namespace tapward::control
