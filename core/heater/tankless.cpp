// SPDX-License-Identifier: GPL-3.0-or-later
#include "heater/tankless.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include "water/water.h"

namespace tapward::heater {

namespace {

constexpr double kOutletCooling_K = 10;
constexpr double kInletCooling_K = 5;
constexpr double kThousandFeet_m = 304.8;

}  // namespace

double altitudeFactor(double altitude_m, TanklessSpec::Derate reading)
{
    const double thousands = altitude_m / kThousandFeet_m;
    if (thousands <= 2.0 + 1e-12)
        return 1.0;
    const double counted = reading == TanklessSpec::Derate::AboveSeaLevel ? thousands : thousands - 2.0;
    return std::max(0.0, 1.0 - 0.04 * counted);
}

Tankless::Tankless(const TanklessSpec& spec) : m_spec(spec)
{
    m_spec.efficiency = std::clamp(m_spec.efficiency, 0.5, 1.0);
    m_spec.maximumInput_W = std::max(m_spec.maximumInput_W, m_spec.minimumInput_W);
    m_spec.holdFlow_m3s = std::min(m_spec.holdFlow_m3s, m_spec.activationFlow_m3s);
    m_spec.ignitionTries = std::max(1, m_spec.ignitionTries);
}

double Tankless::fireShare() const
{
    const double most = m_spec.maximumInput_W * altitudeFactor(m_spec.altitude_m, m_spec.derate);
    return most > 0 ? gasInput_W() / most : 0.0;
}

bool Tankless::fanRuns() const
{
    using enum TanklessState;
    return m_state == PrePurge || m_state == Igniting || m_state == Burning || m_state == RetryPurge
           || m_postPurge_s > 0;
}

/// What the inputs ask for in this state, most urgent first.
std::optional<Tankless::Wish> Tankless::condition(const TanklessInputs& in) const
{
    using enum TanklessState;
    using Cause = TanklessCause;
    if (m_state == Lockout)
        return {};
    const auto wish = [](TanklessState state, Cause cause) { return Wish{state, cause, kControlScan_s, false}; };
    if (std::max(in.exchanger_C, in.outlet_C) >= m_spec.ecoLimit_C)
        return wish(Lockout, Cause::EcoOpen);
    if (in.volts < m_spec.minimumVolts)
        return m_state == Idle ? std::nullopt : std::optional(wish(Idle, Cause::NoPower));

    const bool lit = m_state == Burning;
    switch (m_state) {
    case Idle:
        if (in.flow_m3s >= m_spec.activationFlow_m3s)
            return in.inlet_C > m_spec.inletLimit_C ? wish(OverTemperature, Cause::InletLimit)
                                                    : wish(ProvingFlow, Cause::None);
        return {};
    case OverTemperature:
        if ((m_coolInlet ? in.inlet_C : in.outlet_C) <= m_coolTo_C)
            return wish(Idle, Cause::Cooled);
        return {};
    case RestartDelay:
        return {};
    default:
        break;
    }
    const double enough = m_state == ProvingFlow ? m_spec.activationFlow_m3s : m_spec.holdFlow_m3s;
    if (in.flow_m3s < enough)
        return wish(lit ? RestartDelay : Idle, Cause::FlowTooLow);
    if (in.inlet_C > m_spec.inletLimit_C)
        return wish(OverTemperature, Cause::InletLimit);
    if (in.outlet_C > m_spec.outletLimit_C)
        return wish(OverTemperature, Cause::OutletLimit);
    if (lit && m_spec.shutsOffWhenTooHot && in.outlet_C > m_spec.setpoint_C + m_spec.tooHotAbove_K
        && gasInput_W() <= m_spec.minimumInput_W * altitudeFactor(m_spec.altitude_m, m_spec.derate) * (1.0 + 1e-9))
        return wish(OverTemperature, Cause::TooHotAtMinimumFire);
    return {};
}

std::optional<Tankless::Wish> Tankless::timer(bool gasFails) const
{
    using enum TanklessState;
    using Cause = TanklessCause;
    switch (m_state) {
    case ProvingFlow:
        return Wish{PrePurge, Cause::FlowProved, m_spec.flowProof_s, true};
    case PrePurge:
        return Wish{Igniting, Cause::PurgeDone, m_spec.prePurge_s, true};
    case RetryPurge:
        return Wish{Igniting, Cause::PurgeDone, m_spec.retryPurge_s, true};
    case RestartDelay:
        return Wish{Idle, Cause::DelayOver, m_spec.restartDelay_s, true};
    case Igniting:
        if (!gasFails)
            return Wish{Burning, Cause::FlameProved, m_spec.ignition_s, true};
        return Wish{m_tries + 1 < m_spec.ignitionTries ? RetryPurge : Lockout, Cause::IgnitionFailed, m_spec.ignition_s,
                    true};
    default:
        return {};
    }
}

void Tankless::enter(TanklessState state, TanklessCause cause, const TanklessInputs& in)
{
    using enum TanklessState;
    using Cause = TanklessCause;
    if (m_state == Burning)
        m_postPurge_s = m_spec.postPurge_s;
    if (cause == Cause::NoPower)
        m_postPurge_s = 0;
    if (cause == Cause::IgnitionFailed)
        ++m_tries;
    if (state == Idle)
        m_tries = 0;
    if (state == OverTemperature) {
        m_coolInlet = cause == Cause::InletLimit;
        m_coolTo_C = m_coolInlet                           ? m_spec.inletLimit_C - kInletCooling_K
                     : cause == Cause::TooHotAtMinimumFire ? m_spec.setpoint_C
                                                           : m_spec.outletLimit_C - kOutletCooling_K;
    }
    // The flow stood while the control made sure of it: that counts to the proof.
    m_inState_s = state == ProvingFlow ? std::min(m_stood_s, m_spec.flowProof_s) : 0.0;
    m_standing = Cause::None;
    m_stood_s = 0;
    m_state = state;
    m_power_W = 0;
    if (state == Burning) {
        m_model_C = in.outlet_C;
        m_gap_K = 0;
        control(0, in);
    }
}

/// Power from now on, and the model over the dt gone with the power that was.
void Tankless::control(double dt_s, const TanklessInputs& in)
{
    const double flowHeat = std::max(in.flow_m3s, 1e-7) * water::referenceVolumeHeat();  // W/K
    const double lag = m_spec.exchanger_J_K / flowHeat;
    const double settled = in.inlet_C + m_power_W / flowHeat;
    m_model_C = settled + (m_model_C - settled) * std::exp(-dt_s / lag);
    const double gap = in.outlet_C - m_model_C;
    m_gap_K += (gap - m_gap_K) * -std::expm1(-dt_s / (m_spec.controlTime_s + 0.5 * lag));
    const double factor = altitudeFactor(m_spec.altitude_m, m_spec.derate) * m_spec.efficiency;
    m_power_W = std::clamp(flowHeat * (m_spec.setpoint_C - in.inlet_C - m_gap_K), m_spec.minimumInput_W * factor,
                           m_spec.maximumInput_W * factor);
}

void Tankless::pass(double dt_s, const TanklessInputs& in)
{
    m_inState_s += dt_s;
    m_postPurge_s = in.volts < m_spec.minimumVolts ? 0.0 : std::max(0.0, m_postPurge_s - dt_s);
    m_mean_W = m_power_W;
    m_gas_J += gasInput_W() * dt_s;
    if (m_state == TanklessState::Burning && dt_s > 0)
        control(dt_s, in);
}

std::optional<TanklessChange> Tankless::advance(double t_s, double dt_s, const TanklessInputs& in)
{
    const auto stands = condition(in);
    // A condition without a cause to tell (flow seen) is told apart by its state.
    const TanklessCause cause = !stands                                ? TanklessCause::None
                                : stands->cause == TanklessCause::None ? TanklessCause::FlowProved
                                                                       : stands->cause;
    if (cause != m_standing) {
        m_standing = cause;
        m_stood_s = 0;
    }
    const auto timed = timer(in.gasFails);
    const double untilTimer =
        timed ? std::max(0.0, timed->after_s - m_inState_s) : std::numeric_limits<double>::infinity();
    const double untilCondition =
        stands ? std::max(0.0, stands->after_s - m_stood_s) : std::numeric_limits<double>::infinity();
    const double until = std::min(untilTimer, untilCondition);
    // Rounding must not leave a sliver of a step before an event.
    if (until > dt_s * (1.0 + 1e-12) + 1e-12) {
        pass(dt_s, in);
        if (stands)
            m_stood_s += dt_s;
        return {};
    }
    const double passed = std::min(until, dt_s);
    pass(passed, in);
    if (stands)
        m_stood_s += passed;
    const Wish& wish = untilCondition <= untilTimer ? *stands : *timed;
    const TanklessChange change{wish.state, wish.cause, t_s + passed};
    enter(wish.state, wish.cause, in);
    return change;
}

double Tankless::timeToNextEvent_s() const
{
    double next = std::numeric_limits<double>::infinity();
    if (const auto timed = timer(false))
        next = std::max(0.0, timed->after_s - m_inState_s);
    if (m_standing != TanklessCause::None)
        next = std::min(next, std::max(0.0, kControlScan_s - m_stood_s));
    if (m_postPurge_s > 0)
        next = std::min(next, m_postPurge_s);
    return next;
}

void Tankless::reset()
{
    if (m_state != TanklessState::Lockout)
        return;
    m_state = TanklessState::Idle;
    m_inState_s = m_stood_s = 0;
    m_standing = TanklessCause::None;
    m_tries = 0;
}

}  // namespace tapward::heater
