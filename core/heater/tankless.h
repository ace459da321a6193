// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>

namespace tapward::heater {

/// A tankless gas heater as its control sees it. Water and metal of the exchanger live in the thermal
/// field; this decides the heat put into it.
struct TanklessSpec {
    double setpoint_C = 51.1;
    double activationFlow_m3s = 2.84e-5;   ///< lights at or above it
    double holdFlow_m3s = 2.21e-5;         ///< goes out below it (hysteresis)
    double flowProof_s = 1.0;              ///< flow must stand this long
    double prePurge_s = 1.5;
    double ignition_s = 1.5;               ///< spark to proven flame
    double minimumInput_W = 4400;          ///< gas input at minimum fire
    double maximumInput_W = 17600;
    double efficiency = 0.82;              ///< delivered / input, 0.5..1
    double altitude_m = 0;
    enum class Derate { AboveSeaLevel, Above2000ft } derate = Derate::Above2000ft;
    double outletLimit_C = 85;             ///< burner off above it; lights again after cooling by 10 K
    double inletLimit_C = 99;              ///< refuses to light / goes out above this inlet; again 5 K below it
    double ecoLimit_C = 93;                ///< over-temperature switch: lockout
    int ignitionTries = 3;
    double retryPurge_s = 15;
    double restartDelay_s = 2;             ///< shortest time from flame out to the next try
    double postPurge_s = 20;
    double controlTime_s = 3;              ///< closed-loop time constant of the trim on outlet temperature
    double exchanger_J_K = 2500;           ///< water and metal as the control's designer knew them: give the true
                                           ///< figure where known. Half to twice of it still settles, with an
                                           ///< overshoot of some K while it warms up
    double minimumVolts = 10.5;            ///< ignition boards do nothing below about this
    bool shutsOffWhenTooHot = false;       ///< some controls stop the burner when minimum fire overshoots
    double tooHotAbove_K = 10;             ///< ... by more than this above the setpoint; again at the setpoint
};

/// A condition (flow, limit, voltage) must stand this long before the control acts on it; timers are exact.
inline constexpr double kControlScan_s = 0.1;

/// Factor on gas input at this altitude. Above 2,000 ft 4 % less per 1,000 ft, counted from sea level or
/// from 2,000 ft: both readings of NFPA 54 / ANSI Z223.1 are in use; the maker's instructions override.
double altitudeFactor(double altitude_m, TanklessSpec::Derate reading);

enum class TanklessState {
    Idle,
    ProvingFlow,
    PrePurge,
    Igniting,
    Burning,
    RetryPurge,
    RestartDelay,
    OverTemperature,
    Lockout
};
enum class TanklessCause {
    None,
    FlowProved,
    FlowTooLow,
    PurgeDone,
    FlameProved,
    IgnitionFailed,
    OutletLimit,
    InletLimit,
    EcoOpen,
    TooHotAtMinimumFire,
    Cooled,
    DelayOver,
    NoPower,
    Reset
};

struct TanklessChange {
    TanklessState state;
    TanklessCause cause;
    double at_s;
};

/// What the control reads at one instant.
struct TanklessInputs {
    double flow_m3s = 0;
    double inlet_C = 20;
    double outlet_C = 20;
    double exchanger_C = 20;   ///< body, for the over-temperature switch
    double volts = 12.6;       ///< at its board; below minimumVolts it does nothing
    bool gasFails = false;     ///< fault: burner never lights
};

/// Advances in time by events; between events its power is constant or follows the control.
///
/// Control: feed-forward flow * rho c * (setpoint - inlet), less the gap between the outlet and what the
/// control's own model of its exchanger (one mixed volume fed with the heat really delivered) expects, that
/// gap low-passed. The model knows the clamps of the burner, so nothing winds up; with a faulty feed-forward
/// (losses, a wrong efficiency) the outlet still settles at the setpoint. Internal model control: Garcia &
/// Morari (1982), Ind. Eng. Chem. Process Des. Dev. 21, 308 (memory).
class Tankless {
public:
    explicit Tankless(const TanklessSpec& spec);

    /// Advance from t_s by dt_s with the inputs of this step. Reports at most one state change per call
    /// with its exact instant inside the step; the caller repeats the rest of the step from there.
    /// @return the change, if any, at t_s < at <= t_s + dt_s (== t_s only where a time in the spec is 0).
    std::optional<TanklessChange> advance(double t_s, double dt_s, const TanklessInputs& inputs);

    TanklessState state() const { return m_state; }
    double deliveredPower_W() const { return m_power_W; }   ///< heat into the exchanger now
    double meanPower_W() const { return m_mean_W; }  ///< ... as a mean over the time the last advance() covered
    double fireShare() const;          ///< input / maximum input, 0 when out
    double gasInput_W() const { return m_power_W / m_spec.efficiency; }
    double gasEnergy_J() const { return m_gas_J; }   ///< since start
    bool fanRuns() const;              ///< pre-, post-purge and burning
    int ignitionFailures() const { return m_tries; }  ///< since the flow was last proved
    /// Longest step that passes no timed event (end of purge, ignition, post-purge, ...). Infinite when
    /// nothing is timed.
    double timeToNextEvent_s() const;
    void reset();                      ///< clears a lockout

private:
    struct Wish {
        TanklessState state;
        TanklessCause cause;
        double after_s;   ///< from the start of the state or of the condition
        bool timed;       ///< a timer of the state; else a condition that must stand
    };
    std::optional<Wish> condition(const TanklessInputs& inputs) const;
    std::optional<Wish> timer(bool gasFails) const;
    void enter(TanklessState state, TanklessCause cause, const TanklessInputs& inputs);
    void pass(double dt_s, const TanklessInputs& inputs);
    void control(double dt_s, const TanklessInputs& inputs);

    TanklessSpec m_spec;
    TanklessState m_state = TanklessState::Idle;
    TanklessCause m_standing = TanklessCause::None;  ///< condition that stands ...
    double m_stood_s = 0;                            ///< ... for this long
    double m_inState_s = 0;
    double m_postPurge_s = 0;
    double m_power_W = 0;
    double m_mean_W = 0;
    double m_model_C = 20;      ///< outlet the control's model expects
    double m_gap_K = 0;         ///< outlet less model, low-passed
    double m_coolTo_C = 0;      ///< leave OverTemperature below it ...
    bool m_coolInlet = false;   ///< ... at the inlet, not the outlet
    double m_gas_J = 0;
    int m_tries = 0;
};

}  // namespace tapward::heater
