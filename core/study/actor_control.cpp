// SPDX-License-Identifier: GPL-3.0-or-later
// Sensors, the control that reads them, and the button.
#include <algorithm>
#include <cmath>

#include "study/simulation.h"

namespace tapward::study {

double Simulation::heaterWater(bool outlet) const
{
    if (!m_heaters.empty()) {
        return outlet ? m_heaters[0].outlet_C : m_heaters[0].inlet_C;
    }
    return m_storages.empty() ? kNan : outlet ? m_storages[0].outlet_C : m_storages[0].inlet_C;
}

control::RunInputs Simulation::inputsOf(const ControlActor& actor) const
{
    const auto reading = [this](int sensor) {
        return sensor >= 0 && !m_sensors[sensor].failed ? m_sensors[sensor].reading_C : kNan;
    };
    control::RunInputs inputs{};
    // Without a flow sensor nothing counts volume: a controller set to stop by volume then never does.
    if (actor.flowSensor >= 0) {
        const SensorActor& sensor = m_sensors[actor.flowSensor];
        const double flow = std::abs(m_flows[sensor.run]) * sensor.part->model.sensor->gain;
        inputs.flow_m3s = sensor.failed || flow < sensor.part->model.sensor->lowCutOff_m3s ? 0 : flow;
        inputs.pumped_m3 = actor.pumpedSensed_m3;
    } else {
        inputs.flow_m3s = std::max(0.0, std::isfinite(m_loopFlow) ? m_loopFlow : 0);
        inputs.pumped_m3 = 0;
    }
    inputs.stopSensor_C = reading(actor.stopSensor);
    inputs.limitSensor_C = actor.limitAtHeater ? heaterWater(true) : reading(actor.limitSensor);
    inputs.inletSensor_C = actor.lockoutAtHeater ? heaterWater(false) : reading(actor.inletSensor);
    inputs.valveOpen = true;
    for (const ValveActor& valve : m_valves) {
        if (valve.controller >= 0 && &m_controls[valve.controller] == &actor) {
            // The controller trusts the travel time, or the valve's own end switch; a stuck valve never reports.
            inputs.valveOpen = inputs.valveOpen && valve.position >= 1 - 1e-9;
        }
    }
    inputs.powered = volts() > 6;
    inputs.stopFails = actor.stopFails || actor.welded;
    inputs.limitFails = actor.limitFails;
    return inputs;
}

void Simulation::press(std::size_t index)
{
    ControlActor& actor = m_controls[index];
    const control::RunState state = actor.control.state();
    // While the high limit is open the box may do what it likes: nothing moves.
    const bool cutOff = actor.limitOpen && state == control::RunState::Idle;
    const control::RunChange change = cutOff ? control::RunChange{state, control::RunCause::RefusedLimit, m_time}
                                             : actor.control.press(m_time, inputsOf(actor));
    m_dirty = true;
    if (control::isRefusal(change.cause)) {
        const char* why = "The run was refused.";
        switch (change.cause) {
        case control::RunCause::RefusedWarm:
            why = "The run was refused: the line is warm already.";
            break;
        case control::RunCause::RefusedWait:
            why = "The run was refused: the wait since the last run is not over.";
            break;
        case control::RunCause::RefusedInlet:
            why = "The run was refused: water to the heater is too warm.";
            break;
        case control::RunCause::RefusedLimit:
            why = "The run was refused: the high limit is open.";
            break;
        case control::RunCause::RefusedNoPower:
            why = "The run was refused: no power.";
            break;
        default:
            break;
        }
        if (!actor.buttonStuck) {
            addEvent("run_refused", Message(why), actor.part->id);
        }
        return;
    }
    if (state == control::RunState::Idle) {
        actor.start_s = m_time;
        runStarted(index);
    } else {
        runEnded(index, change.cause);
    }
    for (ValveActor& valve : m_valves) {
        if (valve.controller == static_cast<int>(index)) {
            valve.commanded = actor.control.valveCommandedOpen();
        }
    }
    moveActors(0);  // at once, as after a stop of the control's own
}

void Simulation::readSensors(double dt_s)
{
    for (SensorActor& sensor : m_sensors) {
        const parts::SensorModel& model = *sensor.part->model.sensor;
        if (model.measuresFlow) {
            continue;
        }
        const double water = m_field.at(sensor.run, sensor.fraction) + model.offset_K + sensor.offset_K;
        if (!sensor.frozen) {
            // Exact for water that changes evenly over the step; holding its end value would read early by half a step.
            const double lag_s = std::max(model.lag_s, 1e-3);
            const double rate = (water - sensor.water_C) / dt_s;
            sensor.reading_C =
                water - rate * lag_s + (sensor.reading_C - sensor.water_C + rate * lag_s) * std::exp(-dt_s / lag_s);
        }
        sensor.water_C = water;
        const double true_C = sensor.water_C - model.offset_K - sensor.offset_K;
        if (!(sensor.hottest_C >= true_C)) {
            sensor.hottest_C = true_C;
            sensor.hottest_s = m_time;
        }
    }
    for (ControlActor& actor : m_controls) {
        if (actor.flowSensor >= 0) {
            actor.pumpedSensed_m3 += inputsOf(actor).flow_m3s * dt_s;
        }
    }
}

void Simulation::watchLimit(ControlActor& actor)
{
    // A snap switch closes again this far below (common practice, no published source).
    constexpr double kReset_K = 5;
    if (!actor.spec.highLimit || actor.limitFails) {
        m_acted = m_acted || actor.limitOpen;
        actor.limitOpen = false;
        return;
    }
    const double reading = inputsOf(actor).limitSensor_C;
    const bool was = actor.limitOpen;
    actor.limitOpen = was ? !(reading < actor.spec.highLimit_C - kReset_K) : reading >= actor.spec.highLimit_C;
    m_acted = m_acted || actor.limitOpen != was;  // what it feeds stops or starts now, not after the next step
    if (actor.limitOpen && !was) {
        addEvent("limit_open",
                 Message("The high limit opened at {0} and cuts off valve and pumps.",
                         {Measure{reading, Quantity::Temperature}}),
                 actor.part->id, Event::Weight::Caution);
    }
}

void Simulation::advanceControls(double dt_s)
{
    for (std::size_t c = 0; c < m_controls.size(); ++c) {
        ControlActor& actor = m_controls[c];
        watchLimit(actor);
        const control::RunState before = actor.control.state();
        if (before == control::RunState::Idle) {
            continue;
        }
        const bool pumps = actor.control.pumpsCommandedOn();
        const auto change = actor.control.advance(m_time, dt_s, actor.before, inputsOf(actor));
        m_dirty = m_dirty || change || pumps != actor.control.pumpsCommandedOn();
        if (!change) {
            continue;
        }
        if (change->state == control::RunState::Idle) {
            runEnded(c, change->cause);
        } else {
            addEvent("valve_open", Message("The loop valve is open; pumps start."), actor.part->id);
        }
        moveActors(0);
    }
}

}  // namespace tapward::study
