// SPDX-License-Identifier: GPL-3.0-or-later
// Heaters from one step to the next.
#include <algorithm>
#include <cmath>

#include "study/simulation.h"

namespace tapward::study {

namespace {

constexpr double kThermostatHeight = 0.25;  // of a tank; with its over-temperature switch (from memory)

/// What the heater's water is now, kept with the hottest it has been.
template <typename Actor>
void takeReadings(Actor& heater, const thermal::Field& field, std::span<const double> flows, double now_s)
{
    const double flow = heater.forward ? flows[heater.link] : -flows[heater.link];
    const bool moving = std::abs(flow) > 1e-7;
    // At the port where water comes in: what comes; where it goes out: what leaves; at rest what stands there.
    const auto entering = [&](int junction, double end) {
        return junction >= 0 ? field.junctionTemperature(junction) : field.at(heater.link, end);
    };
    const double coldEnd = heater.forward ? 0.0 : 1.0;
    const double leaving_C = moving ? field.leavingTemperature(heater.link) : 0.0;
    if (!moving) {
        heater.inlet_C = field.at(heater.link, coldEnd);
        heater.outlet_C = field.at(heater.link, 1.0 - coldEnd);
    } else if (flow > 0) {
        heater.inlet_C = entering(heater.inletJunction, coldEnd);
        heater.outlet_C = leaving_C;
        keepHottest(heater.hottestInlet_C, heater.hottestInlet_s, heater.inlet_C, now_s);  // only water that enters
    } else {
        heater.inlet_C = leaving_C;
        heater.outlet_C = entering(heater.outletJunction, 1.0 - coldEnd);
    }
    keepHottest(heater.hottestOutlet_C, heater.hottestOutlet_s, heater.outlet_C, now_s);
}

Text causeText(heater::TanklessCause cause)
{
    using enum heater::TanklessCause;
    switch (cause) {
    case FlowProved:
        return "flow proved";
    case FlowTooLow:
        return "flow too low";
    case PurgeDone:
        return "purge done";
    case FlameProved:
        return "flame proved";
    case IgnitionFailed:
        return "ignition failed";
    case OutletLimit:
        return "outlet limit";
    case InletLimit:
        return "inlet limit";
    case EcoOpen:
        return "over-temperature switch open";
    case TooHotAtMinimumFire:
        return "too hot at minimum fire";
    case Cooled:
        return "cooled";
    case DelayOver:
        return "delay over";
    case NoPower:
        return "no power";
    case Reset:
        return "reset";
    case None:
        return "";
    }
    return "";
}

}  // namespace

void Simulation::lookAtHeaters()
{
    for (HeaterActor& heater : m_heaters) {
        const double flow = heater.forward ? m_flows[heater.link] : -m_flows[heater.link];
        const double body =
            heater.stretch >= 0 ? m_field.bodyTemperature(heater.link, heater.stretch) : heater.outlet_C;
        heater.seen = {std::max(0.0, flow),   heater.inlet_C, heater.outlet_C, body,
                       voltsAt(*heater.part), heater.gasFails};
        heater.control.look(heater.seen);
    }
    for (StorageActor& heater : m_storages) {
        heater.tank_C = heater.stretch >= 0 ? m_field.layerTemperature(heater.link, heater.stretch, kThermostatHeight)
                                            : m_field.meanTemperature(heater.link);
        heater.powered = volts() > 6 && !heater.gasFails;
        heater.control.look(heater.tank_C, heater.powered);
    }
}

/// Runs the controls over the step that ends now, on what they saw at its start. The field gets what they deliver in
/// it, so that heat and state are of the same instants.
void Simulation::runHeaters(double dt_s)
{
    for (HeaterActor& heater : m_heaters) {
        double at = m_time - dt_s, heat_J = 0;
        if (heater.stretch >= 0) {
            m_field.setExtraLoss(heater.link, heater.stretch,
                                 heater.control.purges() ? heater.part->model.tankless->purgeLoss_W_K : 0);
        }
        for (int guard = 0; guard < 16 && at < m_time - 1e-12; ++guard) {
            const auto change = heater.control.advance(at, m_time - at, heater.seen, guard > 0);
            const double until = change ? change->at_s : m_time;
            heat_J += heater.control.meanPower_W() * (until - at);
            at = until;
            if (change) {
                tellTankless(heater, *change);
            }
        }
        if (heater.stretch >= 0) {
            m_field.setSource(heater.link, heater.stretch, heat_J / dt_s);
        }
    }
    for (StorageActor& heater : m_storages) {
        double at = m_time - dt_s, heat_J = 0;
        for (int guard = 0; guard < 16 && at < m_time - 1e-12; ++guard) {
            const auto change = heater.control.advance(at, m_time - at, heater.tank_C, heater.powered);
            const double until = change ? change->at_s : m_time;
            heat_J += heater.control.meanPower_W() * (until - at);
            at = until;
            if (change) {
                tellStorage(heater, *change);
            }
        }
        if (heater.stretch >= 0) {
            m_field.setSource(heater.link, heater.stretch, heat_J / dt_s);
        }
    }
}

void Simulation::readHeaters()
{
    for (HeaterActor& heater : m_heaters) {
        takeReadings(heater, m_field, m_flows, m_time);
    }
    for (StorageActor& heater : m_storages) {
        takeReadings(heater, m_field, m_flows, m_time);
    }
}

void Simulation::tellTankless(const HeaterActor& heater, const heater::TanklessChange& change)
{
    using enum heater::TanklessState;
    const std::string& tag = heater.part->part->tag;
    const document::PartId id = heater.part->id;
    const Text cause = causeText(change.cause);
    switch (change.state) {
    case Burning:
        addEvent("burner_lit", Message("{0} lit.", {tag}), id);
        break;
    case Lockout:
        addEvent("heater_lockout", Message("{0} locked out: {1}.", {tag, cause}), id, Event::Weight::Danger);
        break;
    case OverTemperature:
        addEvent("heater_limit", Message("{0} stopped its burner: {1}.", {tag, cause}), id, Event::Weight::Danger);
        break;
    case RetryPurge:
        addEvent("ignition_failed", Message("{0} did not light and purges again.", {tag}), id, Event::Weight::Caution);
        break;
    case ProvingFlow:
        addEvent("flow_seen", Message("{0} sees enough flow.", {tag}), id);
        break;
    case PrePurge:
        addEvent("pre_purge", Message("{0} purges.", {tag}), id);
        break;
    case Igniting:
        addEvent("ignition", Message("{0} sparks.", {tag}), id);
        break;
    case RestartDelay:
        addEvent("burner_out", Message("{0} went out: {1}.", {tag, cause}), id);
        break;
    case Idle:
        addEvent("heater_idle", Message("{0} is at rest: {1}.", {tag, cause}), id);
        break;
    }
}

void Simulation::tellStorage(const StorageActor& heater, const heater::Storage::Change& change)
{
    using State = heater::Storage::State;
    const std::string& tag = heater.part->part->tag;
    const document::PartId id = heater.part->id;
    switch (change.state) {
    case State::Heating:
        addEvent("burner_lit", Message("{0} heats.", {tag}), id);
        break;
    case State::Satisfied:
        addEvent("burner_out", Message("{0} is up to temperature.", {tag}), id);
        break;
    case State::Lockout:
        addEvent("heater_lockout", Message("{0} locked out: over-temperature switch open.", {tag}), id,
                 Event::Weight::Danger);
        break;
    case State::Lighting:
        break;
    }
}

}  // namespace tapward::study
