// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>

#include "heater/coil.h"

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
    double outletLimit_C = 85;             ///< burner off above it
    double outletHysteresis_K = 10;        ///< ... lights again this far below it
    double inletLimit_C = 99;              ///< refuses to light / goes out above this inlet
    double inletHysteresis_K = 5;          ///< ... lights again this far below it
    double ecoLimit_C = 93;                ///< over-temperature switch: lockout
    int ignitionTries = 3;
    double retryPurge_s = 15;
    double restartDelay_s = 2;             ///< shortest time from flame out to the next try
    double postPurge_s = 20;
    double controlTime_s = 2;              ///< the fire moves to what is wanted with this time constant; its
                                           ///< trim with this and 0.6 turnovers of the exchanger
    double fireTravel_s = 2;               ///< gas valve and fan from smallest to largest fire at their fastest
    double sensorLag_s = 1.5;              ///< of its inlet and outlet sensors
    double exchanger_J_K = 2500;           ///< water and metal as the control's designer knew them: give the true
                                           ///< figure where known. Half to twice of it still settles
    double minimumVolts = 10.5;            ///< ignition boards do nothing below about this
    bool shutsOffWhenTooHot = false;       ///< some controls stop the burner when minimum fire overshoots
    double tooHotAbove_K = 10;             ///< ... by more than this above the setpoint
    double tooHotFor_s = 3;                ///< ... for this long
    double relightBelow_K = 0;             ///< ... and light again this far below the setpoint
    double purgeLoss_W_K = 6.5;            ///< exchanger to the fan's air without a flame
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
/// Control: feed-forward flow * rho c * (setpoint - inlet), less the gap between the outlet and what the control's own
/// model of its exchanger (a Coil fed with the heat really delivered, seen through the same sensor) expects, that gap
/// low-passed. The fire moves there with the control time, no faster than the gas valve. The model knows the fire's
/// ends and its pace, so nothing winds up; with a faulty feed-forward (losses, a wrong efficiency) the outlet still
/// settles at the setpoint. Feed-forward with feedback does nearly as well as a predictive control: Yuill, Coward &
/// Henze (2010), HVAC&R Research 16(5) (abstract). Internal model control: Garcia & Morari (1982), Ind. Eng. Chem.
/// Process Des. Dev. 21, 308 (memory).
class Tankless {
public:
    explicit Tankless(const TanklessSpec& spec);

    /// Sees the inputs as they are now. Call it after whatever may have changed them and before a step is chosen:
    /// timeToNextEvent_s() then knows of what has begun to stand.
    void look(const TanklessInputs& inputs);

    /// Advance from t_s by dt_s with inputs that hold from t_s on. Reports at most one state change per call
    /// with its exact instant inside the step; the caller repeats the rest of the step from there.
    /// @return the change, if any, at t_s < at <= t_s + dt_s (== t_s only where a time in the spec is 0).
    /// @param rest  of a step: the inputs were looked at when it began
    std::optional<TanklessChange> advance(double t_s, double dt_s, const TanklessInputs& inputs, bool rest = false);

    TanklessState state() const { return m_state; }
    double deliveredPower_W() const { return m_power_W; }   ///< heat into the exchanger now
    double meanPower_W() const { return m_mean_W; }  ///< ... as a mean over the time the last advance() covered
    double fireShare() const;          ///< input / maximum input, 0 when out
    double gasInput_W() const { return m_power_W / m_spec.efficiency; }
    double gasEnergy_J() const { return m_gas_J; }   ///< since start
    bool fanRuns() const;              ///< pre-, post-purge and burning; purges(): no flame
    bool purges() const { return fanRuns() && m_state != TanklessState::Burning; }
    int ignitionFailures() const { return m_tries; }  ///< since the flow was last proved
    /// Longest step that passes no timed event (end of purge, ignition, a condition that stands, ...) nor, as
    /// far as the last two looks tell, the instant at which a temperature meets its mark. Infinite without any.
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
    void heed(const TanklessInputs& inputs);
    void enter(TanklessState state, TanklessCause cause);
    void pass(double dt_s, const TanklessInputs& inputs);
    double wantedPower_W(double flow_m3s, double inlet_C, double gap_K) const;
    double burn(double dt_s, double wanted_W);
    double deliverable(double input_W) const;
    bool atLeastFire() const;
    double tooHot_C() const { return m_spec.setpoint_C + m_spec.tooHotAbove_K; }
    double timeToMark_s() const;

    TanklessSpec m_spec;
    TanklessState m_state = TanklessState::Idle;
    TanklessCause m_standing = TanklessCause::None;  ///< condition that stands ...
    double m_stood_s = 0;                            ///< ... for this long
    double m_standsFor_s = 0;                        ///< ... and acts after this
    double m_inState_s = 0;
    double m_postPurge_s = 0;
    double m_power_W = 0;
    double m_mean_W = 0;
    Coil m_coil;                ///< the control's own model of its exchanger
    double m_inletRead_C = 20, m_outletRead_C = 20;  ///< by its sensors
    double m_expected_C = 20;   ///< what the outlet's sensor should read by the model
    double m_gap_K = 0;         ///< what it reads above that, low-passed
    TanklessInputs m_seen;      ///< at the last look ...
    double m_sinceSeen_s = -1;  ///< ... and the time since; negative before the first
    double m_lookedFor_s = 0;   ///< time between the last two looks
    double m_inletRate_K_s = 0, m_outletRate_K_s = 0, m_hottestRate_K_s = 0;  ///< between the last two looks
    double m_coolTo_C = 0;      ///< leave OverTemperature below it ...
    bool m_coolInlet = false;   ///< ... at the inlet, not the outlet
    double m_gas_J = 0;
    int m_tries = 0;
};

}  // namespace tapward::heater
