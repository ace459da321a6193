// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstdint>
#include <optional>

namespace tapward::control {

/// How one preheat run is started and stopped. Every "by" that is on counts; whichever comes first wins.
struct RunSpec {
    bool stopByVolume = true;
    double stopVolume_m3 = 2.84e-3;
    bool stopByTime = false;
    double stopTime_s = 90;
    bool stopByTemperature = false;
    double stopTemperature_C = 41.7;
    bool refuseWhenWarm = false;          ///< do not start when the stop sensor already reads above its stop
    bool highLimit = false;               ///< independent device
    double highLimit_C = 48.9;
    bool inletLockout = false;            ///< no start / no going on when water to the heater is above
    double inletLockout_C = 40;
    double coolDownWait_s = 0;            ///< shortest rest between runs
    double longestRun_s = 180;            ///< 0 = none
    double noFlow_s = 0;                  ///< stop when no flow is seen for this long; 0 = not watched
    double noFlowBelow_m3s = 6.3e-6;
    double pumpDelay_s = 0;               ///< pumps start this long after the valve began to open
    bool pumpAfterValve = true;           ///< ... or when the valve has finished its travel
};

enum class RunState : std::uint8_t { Idle, OpeningValve, Running };
enum class RunCause : std::uint8_t {
    ButtonPressed,
    ValveOpen,
    VolumeReached,
    TimeReached,
    TemperatureReached,
    HighLimit,
    InletTooWarm,
    LongestRun,
    NoFlow,
    ButtonPressedAgain,
    PowerLost,
    RefusedWarm,
    RefusedWait,
    RefusedInlet,
    RefusedLimit,
    RefusedNoPower
};
bool isRefusal(RunCause cause);

struct RunChange {
    RunState state;
    RunCause cause;
    double at_s;
};

/// What the controller sees; not-a-number = no such sensor or it failed.
struct RunInputs {
    double pumped_m3 = 0;        ///< total through the flow sensor (or the true loop volume without one)
    double flow_m3s = 0;
    double stopSensor_C;
    double limitSensor_C;
    double inletSensor_C;
    bool valveOpen = false;      ///< travel finished
    bool powered = true;
    bool stopFails = false;      ///< faults
    bool limitFails = false;
};

/// One controller in time. Commands are read after each call: valveOpen(), pumpsOn().
class RunControl {
public:
    explicit RunControl(const RunSpec& spec);

    /// A press at t_s: starts a run, stops the one that runs, or is refused (the change says why).
    RunChange press(double t_s, const RunInputs& inputs);

    /// Sees the inputs as they are now; call it before a step is chosen: timeToNextEvent_s() then knows of a flow that
    /// has gone.
    void look(double t_s, const RunInputs& inputs);

    /// Check the stops at the end of a step (t_s - dt_s, t_s]; inputs are those at t_s, `before` those at
    /// its start: the instant of a crossing is found by linear interpolation between them.
    std::optional<RunChange> advance(double t_s, double dt_s, const RunInputs& before, const RunInputs& inputs);

    RunState state() const { return m_state; }
    bool valveCommandedOpen() const;
    bool pumpsCommandedOn() const { return m_pumps; }
    double runStarted_s() const { return m_start_s; }
    double pumpedThisRun_m3(double pumpedTotal_m3) const;

    /// Longest step that passes no timer of this controller.
    double timeToNextEvent_s(double t_s) const;
    /// Pumped volume at which the volume stop trips, as a total; nullopt when not running or not used.
    std::optional<double> stopAtTotal_m3() const;

private:
    RunChange stop(RunCause cause, double at_s);
    RunSpec m_spec;
    RunState m_state = RunState::Idle;
    bool m_pumps = false;
    double m_start_s = 0;
    double m_ended_s = -1e9;
    double m_pumpStart_s = 0;
    double m_startTotal_m3 = 0;
    double m_noFlowSince_s = -1;
};

}  // namespace tapward::control
