// SPDX-License-Identifier: GPL-3.0-or-later
// Valves, pumps, mixing valves and supply from one step to the next, and their settings in the network.
#include <algorithm>
#include <cmath>

#include "study/change_laws.h"
#include "study/simulation.h"

namespace tapward::study {
namespace {

/// Where something on its way to a goal at an even pace is in the middle of the coming step.
double halfway(double now, double goal, double wholeWay_s, double step_s)
{
    const double reach = 0.5 * std::min(step_s / std::max(wholeWay_s, 1e-3), std::abs(goal - now));
    return goal > now ? now + reach : now - reach;
}

}  // namespace

double Simulation::flowOf(const PlantPart& part, int path) const
{
    const Place& place = part.places[path];
    if (place.link < 0) {
        return 0;
    }
    return place.reversed ? -m_flows[place.link] : m_flows[place.link];
}

void Simulation::moveActors(double dt_s)
{
    solveWiring();
    for (ValveActor& valve : m_valves) {
        const parts::MotorValveModel& model = *valve.part->model.motorValve;
        const bool rest = model.restOpening > 0.5;
        bool open = rest;
        if (valve.controller >= 0) {
            const ControlActor& actor = m_controls[valve.controller];
            const bool running =
                (actor.control.valveCommandedOpen() || actor.welded || valve.welded) && !actor.limitOpen;
            open = running != rest;
        } else if (valve.welded) {
            open = !rest;
        }
        valve.commanded = open;
        double goal = open ? 1.0 : 0.0;
        if (voltsAt(*valve.part) < model.minimumVolts) {
            using OnPowerLoss = parts::MotorValveModel::OnPowerLoss;
            goal = model.onPowerLoss == OnPowerLoss::Opens    ? 1.0
                   : model.onPowerLoss == OnPowerLoss::Closes ? 0.0
                                                              : valve.position;
        }
        if (valve.held >= 0) {
            goal = valve.held;
        }
        valve.goal = goal;
        valve.moves = valve.position != goal && valve.held < 0;
        if (valve.position != goal) {
            const double move = dt_s / std::max(model.travel_s * valve.slowness, 1e-3);
            valve.position = valve.held >= 0         ? goal
                             : valve.position < goal ? std::min(goal, valve.position + move)
                                                     : std::max(goal, valve.position - move);
            // Sums of steps must end on the stop, not a rounding beside it.
            if (std::abs(valve.position - goal) < 1e-9) {
                valve.position = goal;
            }
            m_dirty = true;
        }
    }
    for (PumpActor& pump : m_pumps) {
        bool on = pump.welded;
        if (pump.controller >= 0) {
            const ControlActor& actor = m_controls[pump.controller];
            on = (on || actor.control.pumpsCommandedOn() || actor.welded) && !actor.limitOpen;
        }
        if (on != pump.on) {
            pump.on = on;
            solveWiring();
        }
        pump.target = 0;
    }
    for (PumpActor& pump : m_pumps) {
        const parts::CirculatorModel& model = *pump.part->model.circulator;
        if (const int load = m_wiring.indexOf(pump.part->id); pump.on && load >= 0 && !m_powerCut) {
            pump.target = m_wiring.speed(load) * pump.share;
            if (std::abs(pump.target - pump.speed) < 1e-6) {
                pump.target = pump.speed;  // current that follows the flow never quite settles
            }
        }
        if (pump.speed != pump.target) {
            const double move = dt_s / std::max(model.spinUp_s, 1e-3);
            pump.speed = pump.speed < pump.target ? std::min(pump.target, pump.speed + move)
                                                  : std::max(pump.target, pump.speed - move);
            if (std::abs(pump.speed - pump.target) < 1e-9) {
                pump.speed = pump.target;
            }
            m_dirty = true;
        }
    }
    for (MixingActor& mixer : m_mixers) {
        const parts::MixingValveModel& model = *mixer.part->model.mixing;
        if (model.hotPath < 0 || model.coldPath < 0) {
            continue;
        }
        // A thermostatic element follows with about a second of lag (common practice, no published source).
        const auto inlet = [&](int path) {
            const Place& place = mixer.part->places[path];
            return m_field.at(place.link, place.reversed ? 0.0 : 1.0);
        };
        const double hot = inlet(model.hotPath), cold = inlet(model.coldPath);
        const double setpoint_C = m_trial ? m_trial->mixingSetpoint_C.value_or(model.setpoint_C) : model.setpoint_C;
        const double wanted =
            hot - cold > 0.5 ? std::clamp((setpoint_C - cold) / (hot - cold), 0.0, 1.0) : mixer.hotShare;
        const double before = mixer.hotShare;
        mixer.hotShare += (wanted - mixer.hotShare) * (1 - std::exp(-dt_s));
        m_dirty = m_dirty || (m_moving && std::abs(mixer.hotShare - before) > 1e-3);
    }
}

void Simulation::applySettings()
{
    for (const OutletActor& outlet : m_outlets) {
        const parts::OutletModel& model = *outlet.part->model.outlet;
        const double opening = outlet.held >= 0 ? outlet.held : outlet.opening;
        const auto set = [&](int path, double share) {
            if (path >= 0) {
                changeLaws<network::ResistanceLaw>(m_network, outlet.part->places[path],
                                                   [&](auto& law) { law.opening = opening * share; });
            }
        };
        set(model.hotPath, model.coldPath >= 0 ? outlet.hotShare : 1);
        set(model.coldPath, model.hotPath >= 0 ? 1 - outlet.hotShare : 1);
    }
    for (const ValveActor& valve : m_valves) {
        changeLaws<network::ResistanceLaw>(m_network, *valve.part, [&](auto& law) {
            law.opening = valve.moves ? halfway(valve.position, valve.goal,
                                                valve.part->model.motorValve->travel_s * valve.slowness,
                                                travelStep_s(m_options.step_s))
                                      : valve.position;
        });
    }
    for (const PumpActor& pump : m_pumps) {
        changeLaws<network::PumpLaw>(m_network, *pump.part, [&](auto& law) {
            law.speed =
                halfway(pump.speed, pump.target, pump.part->model.circulator->spinUp_s, spinStep_s(m_options.step_s));
        });
    }
    for (const MixingActor& mixer : m_mixers) {
        const parts::MixingValveModel& model = *mixer.part->model.mixing;
        if (model.hotPath >= 0 && model.coldPath >= 0) {
            changeLaws<network::ResistanceLaw>(m_network, mixer.part->places[model.hotPath],
                                               [&](auto& law) { law.opening = std::max(mixer.hotShare, 0.01); });
            changeLaws<network::ResistanceLaw>(m_network, mixer.part->places[model.coldPath],
                                               [&](auto& law) { law.opening = std::max(1 - mixer.hotShare, 0.01); });
        }
    }
    if (m_demandPump) {
        // The pump's motor slows with its supply; below about 9 V it stalls (common practice).
        changeLaws<network::PumpLaw>(m_network, *m_demandPump, [&](auto& law) {
            law.speed = m_demandPumpOn && volts() > 9 ? m_demandPumpShare : 0;
        });
    }
    if (m_accumulator.present()) {
        changeLaws<network::SourceLaw>(m_network, m_accumulator.place, [&](auto& law) {
            law.connected = true;
            law.oneWay = false;
            law.pressure_Pa = m_accumulator.pressure_Pa;
            // Implicit in the coming step: what flows out lowers the pressure within it.
            law.slope_Pa_per_m3s = 0.25 / m_accumulator.complianceNow();
        });
    }
}

void Simulation::advanceSupply(double dt_s)
{
    if (!m_accumulator.present()) {
        return;
    }
    const Place& place = m_accumulator.place;
    const double out = place.reversed ? -m_flows[place.link] : m_flows[place.link];
    if (std::abs(out) > 1e-8) {
        m_accumulator.water_m3 -= out * dt_s;
        m_accumulator.pressure_Pa = m_accumulator.pressureAt(m_accumulator.water_m3);
        m_dirty = true;
    }
    switchDemandPump();
}

void Simulation::switchDemandPump()
{
    if (m_accumulator.present() && m_demandPump && m_supply == document::ActionKind::UsePump) {
        const parts::SupplyModel& supply = *m_demandPump->model.supply;
        if (m_demandPumpWelded) {
            m_dirty = m_dirty || !m_demandPumpOn;
            m_demandPumpOn = true;
        } else if (!m_demandPumpOn && m_accumulator.pressure_Pa <= supply.cutIn_Pa + 1) {
            m_demandPumpOn = true;
            m_dirty = true;
            if (++m_demandPumpStarts <= 20) {
                addEvent("demand_pump_on", Message("{0} starts.", {m_demandPump->part->tag}), m_demandPump->id);
            }
        } else if (m_demandPumpOn && m_accumulator.pressure_Pa >= supply.cutOut_Pa - 1) {
            m_demandPumpOn = false;
            m_dirty = true;
            if (m_demandPumpStarts <= 20) {
                addEvent("demand_pump_off", Message("{0} stops.", {m_demandPump->part->tag}), m_demandPump->id);
            }
        }
    }
}

}  // namespace tapward::study
