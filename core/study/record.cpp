// SPDX-License-Identifier: GPL-3.0-or-later
// What a case writes down as it goes.
#include <algorithm>
#include <cmath>

#include "study/simulation.h"

namespace tapward::study {
namespace {

using document::PartId;

constexpr double kFirstRise_K = 1;

const char* stopText(control::RunCause cause)
{
    using enum control::RunCause;
    switch (cause) {
    case VolumeReached:
        return "Run stopped by volume after {0}.";
    case TimeReached:
        return "Run stopped by time after {0}.";
    case TemperatureReached:
        return "Run stopped by temperature after {0}.";
    case HighLimit:
        return "Run ended by the high limit after {0}.";
    case InletTooWarm:
        return "Run ended after {0}: water to the heater is too warm.";
    case LongestRun:
        return "Run ended after {0}: longest run reached.";
    case NoFlow:
        return "Run ended after {0}: no flow seen.";
    case ButtonPressedAgain:
        return "Run stopped at the button after {0}.";
    case PowerLost:
        return "Run ended after {0}: power lost.";
    default:
        return "Run ended after {0}.";
    }
}

const char* stopId(control::RunCause cause)
{
    using enum control::RunCause;
    switch (cause) {
    case VolumeReached:
        return "stop_volume";
    case TimeReached:
        return "stop_time";
    case TemperatureReached:
        return "stop_temperature";
    case HighLimit:
        return "stop_high_limit";
    case InletTooWarm:
        return "stop_inlet_lockout";
    case LongestRun:
        return "stop_longest_run";
    case NoFlow:
        return "stop_no_flow";
    case ButtonPressedAgain:
        return "stop_button";
    default:
        return "stop_power_lost";
    }
}

}  // namespace

double Simulation::targetReading() const
{
    if (m_targetOutlet >= 0) {
        return m_outlets[m_targetOutlet].tap_C;
    }
    if (m_targetSensor >= 0) {
        return m_sensors[m_targetSensor].reading_C;
    }
    return m_loop.tapJunction >= 0 ? m_field.junctionTemperature(m_loop.tapJunction) : kNan;
}

Simulation::Leaving Simulation::leaving(const OutletActor& outlet) const
{
    double heat = 0, flow = 0;
    for (const Place& place : outlet.part->places) {
        const double out = place.link < 0 ? 0 : place.reversed ? -m_flows[place.link] : m_flows[place.link];
        if (out > 0) {
            heat += out * m_field.leavingTemperature(place.link);
            flow += out;
        }
    }
    return {flow, flow > 1e-8 ? heat / flow : kNan};
}

void Simulation::record()
{
    const PhaseTimer timer(m_options.phases, &PhaseTimes::record);
    // Temperatures at open taps, as of the step just made.
    for (OutletActor& outlet : m_outlets) {
        outlet.tap_C = outlet.isOpen() ? leaving(outlet).celsius : kNan;
    }
    if (!m_options.curves) {
        return;
    }
    if (m_time < m_nextRecord - 1e-9 && m_time < m_case.duration_s - 1e-9) {
        return;
    }
    m_result.time_s.push_back(m_time);
    for (const Column& column : m_columns) {
        m_result.series[column.series].values.push_back(column.read(*this, column.index));
    }
    // A curve follows the steps and never cuts one short: what happens does not depend on what is written down.
    m_nextRecord = m_time + recordEvery_s();

    if (m_options.snapshots && m_time >= m_nextSnapshot - 1e-9) {
        Snapshot& snapshot = m_result.snapshot;
        snapshot.time_s.push_back(m_time);
        for (std::size_t t = 0; t < m_tracks.size(); ++t) {
            const TrackPlace& place = m_tracks[t];
            const int points = snapshot.tracks[t].points;
            for (int i = 0; i < points; ++i) {
                const double share = (i + 0.5) / points;
                snapshot.celsius.push_back(
                    static_cast<float>(m_field.at(place.run, place.begin + share * (place.end - place.begin))));
            }
            const double flow = place.forward ? m_flows[place.run] : -m_flows[place.run];
            snapshot.flow_m3s.push_back(static_cast<float>(flow));
        }
        m_nextSnapshot = m_time + m_snapshotEvery_s;
    }
}

/// Curves show what was just done, and go on counting from there: the same whenever it is done.
void Simulation::recordSoon()
{
    if (!m_result.time_s.empty()) {
        m_nextRecord = std::min(m_nextRecord, std::max(m_time, m_result.time_s.back() + m_bounds.every_s));
    }
}

void Simulation::addEvent(std::string id, Message what, PartId part, Event::Weight weight)
{
    addEventAt(m_time, std::move(id), std::move(what), part, weight);
}

void Simulation::addEventAt(double t_s, std::string id, Message what, PartId part, Event::Weight weight)
{
    const std::size_t kept = m_result.events.size();
    if (kept + 1 < m_bounds.events) {
        m_result.events.push_back({t_s, std::move(id), std::move(what), part, weight});
    } else if (kept < m_bounds.events) {
        m_result.events.push_back({m_time, "events_left_out", "More happens from here on than is listed.",
                                   document::kNoPart, Event::Weight::Info});
    }
}

void Simulation::runStarted(std::size_t controller)
{
    addEvent("run_started", Message("Button pressed: the run starts."), m_controls[controller].part->id);
    m_controls[controller].startTotal_m3 = m_pumped_m3;
    RunLog log{m_time, m_pumped_m3};
    m_runs.push_back(log);
    m_runningNow = true;
}

void Simulation::runEnded(std::size_t controller, control::RunCause cause)
{
    const double pumped = m_pumped_m3 - m_controls[controller].startTotal_m3;
    const bool protection = cause == control::RunCause::HighLimit || cause == control::RunCause::InletTooWarm;
    addEvent(stopId(cause), Message(stopText(cause), {Measure{pumped, Quantity::Volume}}),
             m_controls[controller].part->id, protection ? Event::Weight::Caution : Event::Weight::Info);
    if (!m_runs.empty() && m_runningNow) {
        RunLog& log = m_runs.back();
        log.end_s = m_time;
        log.pumped_m3 = pumped;
        log.sensor_C = m_targetSensor >= 0 ? m_sensors[m_targetSensor].reading_C : targetReading();
        log.cause = cause;
    }
    m_runningNow = false;
}

void Simulation::watchTargets(double dt_s)
{
    // Hottest water at open taps, at the join where the loop leaves the hot line, and in cold branches.
    for (OutletActor& outlet : m_outlets) {
        if (!outlet.isOpen() || outlet.flow_m3s <= 0) {
            continue;
        }
        const auto [flow, celsius] = leaving(outlet);
        if (std::isnan(celsius)) {
            continue;
        }
        const double before_C = outlet.tap_C;
        const double before_m3 = outlet.drawn_m3;
        outlet.tap_C = celsius;
        outlet.drawn_m3 += flow * dt_s;
        outlet.hottest_C = hotter(outlet.hottest_C, outlet.tap_C);
        m_hottestTap_C = hotter(m_hottestTap_C, outlet.tap_C);
        if (outlet.hotShare <= 0) {
            m_hottestCold_C = hotter(m_hottestCold_C, outlet.tap_C);
        }
        const bool waits = m_waitOutlet >= 0 && &outlet == &m_outlets[m_waitOutlet] && std::isnan(m_wait_s);
        if (waits && outlet.hotShare > 0 && outlet.tap_C >= m_target_C) {
            const double share = before_C < m_target_C ? (m_target_C - before_C) / (outlet.tap_C - before_C) : 1.0;
            m_wait_s = m_time - dt_s * (1 - share) - outlet.opened_s;
            m_wasted_m3 = before_m3 + share * flow * dt_s;
            addEventAt(m_time - dt_s * (1 - share), "tap_warm",
                       Message("{0} is at {1} after {2} drawn.",
                               {outlet.part->part->tag, Measure{m_target_C, Quantity::Temperature},
                                Measure{m_wasted_m3, Quantity::Volume}}),
                       outlet.part->id);
        }
    }
    for (OutletActor& outlet : m_outlets) {
        if (outlet.hotJoin >= 0) {
            keepHottest(outlet.hotReady_C, outlet.hotReady_s, m_field.junctionTemperature(outlet.hotJoin), m_time);
        }
        if (outlet.coldJoin >= 0) {
            keepHottest(outlet.coldReady_C, outlet.coldReady_s, m_field.junctionTemperature(outlet.coldJoin), m_time);
        }
    }
    // What stands at the two ends of a loop that was never run has not come through it.
    const bool ran = !m_runs.empty() || std::abs(m_loopFlow) > kStill_m3s;
    if (ran && m_loop.tapJunction >= 0) {
        keepHottest(m_joinReady_C, m_joinReady_s, m_field.junctionTemperature(m_loop.tapJunction), m_time);
    }
    if (ran && m_loop.coldJunction >= 0) {
        keepHottest(m_coldEntry_C, m_coldEntry_s, m_field.junctionTemperature(m_loop.coldJunction), m_time);
    }
    if (m_loop.tapJunction >= 0 && !m_runs.empty()) {
        m_hottestJoin_C = hotter(m_hottestJoin_C, m_field.junctionTemperature(m_loop.tapJunction));
    }
    if (m_runs.empty()) {
        return;
    }
    RunLog& log = m_runs.back();
    for (const HeaterActor& heater : m_heaters) {
        log.hottestOutlet_C = hotter(log.hottestOutlet_C, heater.outlet_C);
    }
    if (m_targetSensor >= 0) {
        log.hottestSensor_C = hotter(log.hottestSensor_C, m_sensors[m_targetSensor].reading_C);
    }
    if (m_runningNow && m_countedFlow > 0) {
        bool steady = true;
        for (const ValveActor& valve : m_valves) {
            steady = steady && (valve.controller < 0 || valve.position >= 1);
        }
        for (const PumpActor& pump : m_pumps) {
            steady = steady && (pump.controller < 0 || pump.speed == pump.target);
        }
        if (steady) {
            log.flowSum_m3 += std::max(0.0, m_loopFlow) * dt_s;
            log.pumpedSum_m3 += m_countedFlow * dt_s;
            log.flowTime_s += dt_s;
        }
    }
    if (m_runs.size() > 1 || !m_runningNow || m_targetOutlet >= 0) {
        return;
    }
    // First run: when does the target place begin to warm, when is it warm.
    const double now_C = targetReading();
    double crossed_s = m_time;
    const auto crossed = [&](double mark, double& volume) {
        if (!std::isnan(volume) || !(now_C >= mark)) {
            return false;
        }
        const double share = m_before_C < mark && now_C > m_before_C ? (mark - m_before_C) / (now_C - m_before_C) : 1.0;
        volume = m_beforePumped_m3 + share * (m_pumped_m3 - m_beforePumped_m3) - log.startTotal_m3;
        crossed_s = m_time - dt_s * (1 - share);
        return true;
    };
    if (crossed(m_targetStart_C + kFirstRise_K, m_firstRise_m3)) {
        addEventAt(crossed_s, "first_rise",
                   Message("First rise at the sensor after {0} pumped.", {Measure{m_firstRise_m3, Quantity::Volume}}),
                   m_result.targetPart);
    }
    if (crossed(m_target_C, m_targetAt_m3)) {
        m_targetAt_s = crossed_s - log.start_s;
        addEventAt(crossed_s, "target_reached",
                   Message("{0} reached after {1} pumped.",
                           {Measure{m_target_C, Quantity::Temperature}, Measure{m_targetAt_m3, Quantity::Volume}}),
                   m_result.targetPart);
    }
}

}  // namespace tapward::study
