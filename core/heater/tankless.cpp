// SPDX-License-Identifier: GPL-3.0-or-later
#include "heater/tankless.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include "water/water.h"

namespace tapward::heater {

namespace {

constexpr double kThousandFeet_m = 304.8;
constexpr double kStanding_m3s = 1e-7;   // water that creeps less than this tells the control nothing
constexpr double kTrimTurnovers = 0.6;   // with an exchanger twice as large as assumed the loop gain stays under one
constexpr double kLeastFireShare = 0.01; // of the range: what the valve's seat does not tell apart
constexpr double kShortestLook_s = 0.05;
constexpr double kRounding_s = 1e-9;  // times are sums of steps
constexpr double kNever_s = std::numeric_limits<double>::infinity();

double hottest(const TanklessInputs& in) { return std::max(in.exchanger_C, in.outlet_C); }

}  // namespace

double altitudeFactor(double altitude_m, TanklessSpec::Derate reading)
{
    const double thousands = altitude_m / kThousandFeet_m;
    if (thousands <= 2.0 + 1e-12)
        return 1.0;
    const double counted = reading == TanklessSpec::Derate::AboveSeaLevel ? thousands : thousands - 2.0;
    return std::max(0.0, 1.0 - 0.04 * counted);
}

Tankless::Tankless(const TanklessSpec& spec) : m_spec(spec), m_coil(std::max(spec.exchanger_J_K, 1.0))
{
    m_spec.efficiency = std::clamp(m_spec.efficiency, 0.5, 1.0);
    m_spec.maximumInput_W = std::max(m_spec.maximumInput_W, m_spec.minimumInput_W);
    m_spec.holdFlow_m3s = std::min(m_spec.holdFlow_m3s, m_spec.activationFlow_m3s);
    m_spec.ignitionTries = std::max(1, m_spec.ignitionTries);
}

/// Heat into the water from this gas input at sea level.
double Tankless::deliverable(double input_W) const
{
    return input_W * altitudeFactor(m_spec.altitude_m, m_spec.derate) * m_spec.efficiency;
}

double Tankless::fireShare() const
{
    const double most = deliverable(m_spec.maximumInput_W);
    return most > 0 ? m_power_W / most : 0.0;
}

bool Tankless::atLeastFire() const
{
    const double least = deliverable(m_spec.minimumInput_W);
    return m_power_W <= least + kLeastFireShare * (deliverable(m_spec.maximumInput_W) - least);
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
    if (hottest(in) >= m_spec.ecoLimit_C)
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
    if (lit && m_spec.shutsOffWhenTooHot && in.outlet_C > tooHot_C() && atLeastFire())
        return Wish{OverTemperature, Cause::TooHotAtMinimumFire, std::max(kControlScan_s, m_spec.tooHotFor_s), false};
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

void Tankless::enter(TanklessState state, TanklessCause cause)
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
        m_coolTo_C = m_coolInlet                           ? m_spec.inletLimit_C - m_spec.inletHysteresis_K
                     : cause == Cause::TooHotAtMinimumFire ? m_spec.setpoint_C - m_spec.relightBelow_K
                                                           : m_spec.outletLimit_C - m_spec.outletHysteresis_K;
    }
    // The flow stood while the control made sure of it: that counts to the proof.
    m_inState_s = state == ProvingFlow ? std::min(m_stood_s, m_spec.flowProof_s) : 0.0;
    m_standing = Cause::None;
    m_stood_s = 0;
    m_state = state;
    m_power_W = 0;
    if (state == Burning) {
        m_power_W = deliverable(m_spec.minimumInput_W);  // it lights at its smallest fire
        m_gap_K = 0;
    }
}

double Tankless::wantedPower_W(double flow_m3s, double inlet_C, double gap_K) const
{
    const double flowHeat = std::max(flow_m3s, kStanding_m3s) * water::referenceVolumeHeat();  // W/K
    return std::clamp(flowHeat * (m_spec.setpoint_C - inlet_C - gap_K), deliverable(m_spec.minimumInput_W),
                      deliverable(m_spec.maximumInput_W));
}

/// Moves the fire toward the wanted one for dt_s. @return its mean, W
double Tankless::burn(double dt_s, double wanted_W)
{
    const double range = deliverable(m_spec.maximumInput_W) - deliverable(m_spec.minimumInput_W);
    const double pace = range / std::max(m_spec.fireTravel_s, 1e-3);  // W/s
    const double time_s = std::max(m_spec.controlTime_s, 1e-3);
    double gap = std::abs(wanted_W - m_power_W), area = 0, left_s = dt_s;
    if (gap > pace * time_s && pace > 0) {  // as fast as the valve goes
        const double ramp_s = std::min(left_s, gap / pace - time_s);
        area += ramp_s * (gap - 0.5 * pace * ramp_s);
        gap -= pace * ramp_s;
        left_s -= ramp_s;
    }
    const double gone = -std::expm1(-left_s / time_s);
    area += gap * time_s * gone;
    gap *= 1.0 - gone;
    const double side = wanted_W >= m_power_W ? 1.0 : -1.0;
    m_power_W = wanted_W - side * gap;
    return dt_s > 0 ? wanted_W - side * area / dt_s : m_power_W;
}

void Tankless::pass(double dt_s, const TanklessInputs& in)
{
    // A temperature seen last, in the middle of this time by its rate of late; never further on than it came of late.
    const auto ahead = [this](double celsius, double rate_K_s, double time_s) {
        return celsius + rate_K_s * std::min(m_sinceSeen_s + 0.5 * time_s, m_lookedFor_s);
    };
    m_inState_s += dt_s;
    // A rounding left over would be a step of its own.
    m_postPurge_s = in.volts < m_spec.minimumVolts || m_postPurge_s - dt_s < kRounding_s ? 0.0 : m_postPurge_s - dt_s;
    const bool burns = m_state == TanklessState::Burning;
    // What it reads and wants is taken in the middle of the time, so that the answer hardly depends on its length.
    const double lag_s = std::max(m_spec.sensorLag_s, 1e-3);
    const double trim_s =
        m_spec.controlTime_s + kTrimTurnovers * m_coil.turnover_s(std::max(in.flow_m3s, kStanding_m3s));
    const double inletNow_C = ahead(in.inlet_C, m_inletRate_K_s, dt_s),
                 outletNow_C = ahead(in.outlet_C, m_outletRate_K_s, dt_s);
    const double halfway_C = m_inletRead_C + (inletNow_C - m_inletRead_C) * -std::expm1(-0.5 * dt_s / lag_s);
    const double gap_K = m_gap_K + (m_outletRead_C - m_expected_C - m_gap_K) * -std::expm1(-0.5 * dt_s / trim_s);
    m_mean_W = burns ? burn(dt_s, wantedPower_W(in.flow_m3s, halfway_C, gap_K)) : 0.0;
    m_gas_J += m_mean_W / m_spec.efficiency * dt_s;
    m_sinceSeen_s += dt_s;
    if (!(dt_s > 0))
        return;
    const double follows = -std::expm1(-dt_s / lag_s);
    const double differs_K = m_outletRead_C - m_expected_C;
    const double inletBefore_C = m_inletRead_C;
    m_inletRead_C += (inletNow_C - m_inletRead_C) * follows;
    m_outletRead_C += (outletNow_C - m_outletRead_C) * follows;
    if (in.flow_m3s <= kStanding_m3s) {
        m_coil.rest(m_outletRead_C);
        m_expected_C = m_outletRead_C;
        return;
    }
    const double modelBefore_C = m_coil.outlet_C();
    m_coil.pass(dt_s, in.flow_m3s, 0.5 * (inletBefore_C + m_inletRead_C), m_mean_W);
    m_expected_C += (0.5 * (modelBefore_C + m_coil.outlet_C()) - m_expected_C) * follows;
    if (burns) {
        const double mean_K = 0.5 * (differs_K + m_outletRead_C - m_expected_C);
        m_gap_K += (mean_K - m_gap_K) * -std::expm1(-dt_s / trim_s);
    }
}

void Tankless::look(const TanklessInputs& in)
{
    if (m_sinceSeen_s < 0) {
        m_inletRead_C = in.inlet_C;
        m_outletRead_C = m_expected_C = in.outlet_C;
        m_coil.fill(in.outlet_C);
        m_sinceSeen_s = 0;
    } else if ((in.flow_m3s > kStanding_m3s) != (m_seen.flow_m3s > kStanding_m3s)) {
        // Water that begins to move shows its sensors another place: that is no rate.
        m_inletRate_K_s = m_outletRate_K_s = m_hottestRate_K_s = 0;
        m_sinceSeen_s = 0;
    } else if (m_sinceSeen_s > 0) {
        m_inletRate_K_s = (in.inlet_C - m_seen.inlet_C) / m_sinceSeen_s;
        m_outletRate_K_s = (in.outlet_C - m_seen.outlet_C) / m_sinceSeen_s;
        m_hottestRate_K_s = (hottest(in) - hottest(m_seen)) / m_sinceSeen_s;
        m_lookedFor_s = m_sinceSeen_s;
        m_sinceSeen_s = 0;
    }
    m_seen = in;
    heed(in);
}

/// Which condition stands.
void Tankless::heed(const TanklessInputs& in)
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
    m_standsFor_s = stands ? stands->after_s : 0.0;
}

std::optional<TanklessChange> Tankless::advance(double t_s, double dt_s, const TanklessInputs& in, bool rest)
{
    if (rest)
        heed(in);
    else if (m_sinceSeen_s != 0)
        look(in);
    const auto stands = condition(in);
    const auto timed = timer(in.gasFails);
    const double untilTimer = timed ? std::max(0.0, timed->after_s - m_inState_s) : kNever_s;
    const double untilCondition = stands ? std::max(0.0, stands->after_s - m_stood_s) : kNever_s;
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
    enter(wish.state, wish.cause);
    return change;
}

/// Until a temperature meets the mark that matters in this state, by its rate of late.
double Tankless::timeToMark_s() const
{
    using enum TanklessState;
    double next = kNever_s;
    const auto rises = [&next](double celsius, double rate, double mark) {
        if (rate > 0 && celsius < mark)
            next = std::min(next, (mark - celsius) / rate);
    };
    if (m_state == Lockout)
        return next;
    rises(hottest(m_seen), m_hottestRate_K_s, m_spec.ecoLimit_C);
    if (m_state == OverTemperature) {
        const double celsius = m_coolInlet ? m_seen.inlet_C : m_seen.outlet_C;
        const double rate = m_coolInlet ? m_inletRate_K_s : m_outletRate_K_s;
        if (rate < 0 && celsius > m_coolTo_C)
            next = std::min(next, (m_coolTo_C - celsius) / rate);
    } else if (m_state != Idle && m_state != RestartDelay) {
        rises(m_seen.inlet_C, m_inletRate_K_s, m_spec.inletLimit_C);
        rises(m_seen.outlet_C, m_outletRate_K_s, m_spec.outletLimit_C);
        if (m_spec.shutsOffWhenTooHot)
            rises(m_seen.outlet_C, m_outletRate_K_s, tooHot_C());
    }
    return std::max(next, kShortestLook_s);
}

double Tankless::timeToNextEvent_s() const
{
    double next = timeToMark_s();
    if (const auto timed = timer(false))
        next = std::min(next, std::max(0.0, timed->after_s - m_inState_s));
    if (m_standing != TanklessCause::None)
        next = std::min(next, std::max(0.0, m_standsFor_s - m_stood_s));
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
