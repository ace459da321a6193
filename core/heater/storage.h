// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>

namespace tapward::heater {

/// A storage heater: a mixed tank (its water lives in the thermal field) with a thermostat and a gas
/// burner, an electric element, or both.
struct StorageSpec {
    double setpoint_C = 54.4;
    double differential_K = 5.5;      ///< lights again this far below
    double burnerInput_W = 3500;
    double efficiency = 0.75;
    double element_W = 0;
    double ecoLimit_C = 87.8;         ///< over-temperature switch, hand reset
    double ignition_s = 5;            ///< burner only; an element heats at once
};

/// Advances in time by events, as Tankless does. The burner and the element follow the one thermostat;
/// the burner's board needs power, the element has its own supply and heats whenever the thermostat calls.
class Storage {
public:
    explicit Storage(const StorageSpec& spec);
    enum class State { Satisfied, Lighting, Heating, Lockout };
    struct Change {
        State state;
        double at_s;
    };
    /// Sees the tank and the supply as they are now; call it before a step is chosen, as Tankless::look.
    void look(double tank_C, bool powered);
    /// The inputs hold from t_s on.
    /// @return the change, if any, at t_s < at <= t_s + dt_s (== t_s only for an ignition time of 0); the
    /// caller repeats the rest of the step from there. The thermostat acts kThermostatScan_s after its
    /// temperature is passed.
    std::optional<Change> advance(double t_s, double dt_s, double tank_C, bool powered);
    State state() const { return m_state; }
    double deliveredPower_W() const { return m_power_W; }  ///< heat into the water now
    double meanPower_W() const { return m_mean_W; }  ///< ... as a mean over the time the last advance() covered
    double gasEnergy_J() const { return m_gas_J; }   ///< since start
    /// Longest step that passes no timer nor, as far as the last two looks tell, a mark of the thermostat.
    double timeToNextEvent_s() const;
    void reset();  ///< presses the over-temperature switch in again

private:
    void enter(State state, bool powered);
    double timeToMark_s() const;

    StorageSpec m_spec;
    State m_state = State::Satisfied;
    double m_inState_s = 0;
    State m_wanted = State::Satisfied;  ///< what the last look asks for ...
    double m_needed_s = 0;              ///< ... once this has passed
    bool m_byTimer = false;             ///< ... from the start of the state, not since it was first wanted
    double m_stood_s = 0;
    double m_seen_C = 0, m_rate_K_s = 0;
    double m_sinceSeen_s = -1;  ///< negative before the first look
    double m_power_W = 0;
    double m_mean_W = 0;
    double m_burner_W = 0;   ///< gas input now
    double m_gas_J = 0;
};

inline constexpr double kThermostatScan_s = 0.1;

}  // namespace tapward::heater
