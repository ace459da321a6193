// SPDX-License-Identifier: GPL-3.0-or-later
// Heaters from one step to the next.
#include <algorithm>
#include <cmath>

#include "study/simulation.h"

namespace tapward::study {

namespace {

struct HeaterReadings {
    double flow, inlet, outlet;
};

/// What the heater's water is now, kept with the hottest it has been.
template <typename Actor>
HeaterReadings takeReadings(Actor& heater, const thermal::Field& field, std::span<const double> flows, double now_s)
{
    HeaterReadings r{};
    r.flow = heater.forward ? flows[heater.link] : -flows[heater.link];
    const bool moving = std::abs(r.flow) > 1e-7;
    r.inlet = moving && r.flow > 0 && heater.inletJunction >= 0 ? field.junctionTemperature(heater.inletJunction)
                                                                : field.at(heater.link, heater.forward ? 0.0 : 1.0);
    r.outlet = moving ? field.outletTemperature(heater.link) : field.at(heater.link, heater.forward ? 1.0 : 0.0);
    heater.inlet_C = r.inlet;
    heater.outlet_C = r.outlet;
    if (r.flow > 1e-7) {  // only water that enters counts
        keepHottest(heater.hottestInlet_C, heater.hottestInlet_s, r.inlet, now_s);
    }
    keepHottest(heater.hottestOutlet_C, heater.hottestOutlet_s, r.outlet, now_s);
    return r;
}

const char* causeText(heater::TanklessCause cause)
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

void Simulation::advanceHeaters(double dt_s)
{
    for (HeaterActor& heater : m_heaters) {
        const HeaterReadings r = takeReadings(heater, m_field, m_flows, m_time);
        const double body = heater.stretch >= 0 ? m_field.bodyTemperature(heater.link, heater.stretch) : r.outlet;
        const heater::TanklessInputs inputs{std::max(0.0, r.flow), r.inlet,        r.outlet, body,
                                            voltsAt(*heater.part), heater.gasFails};
        double at = m_time - dt_s;
        for (int guard = 0; guard < 16 && at < m_time - 1e-12; ++guard) {
            const auto change = heater.control.advance(at, m_time - at, inputs);
            if (!change) {
                break;
            }
            using enum heater::TanklessState;
            const std::string& tag = heater.part->part->tag;
            const std::string cause = causeText(change->cause);
            switch (change->state) {
            case Burning:
                addEvent("burner_lit", Message("{0} lit.", {tag}), heater.part->id);
                break;
            case Lockout:
                addEvent("heater_lockout", Message("{0} locked out: {1}.", {tag, cause}), heater.part->id,
                         Event::Weight::Danger);
                break;
            case OverTemperature:
                addEvent("heater_limit", Message("{0} stopped its burner: {1}.", {tag, cause}), heater.part->id,
                         Event::Weight::Danger);
                break;
            case RetryPurge:
                addEvent("ignition_failed", Message("{0} did not light and purges again.", {tag}), heater.part->id,
                         Event::Weight::Caution);
                break;
            case ProvingFlow:
                addEvent("flow_seen", Message("{0} sees enough flow.", {tag}), heater.part->id);
                break;
            case PrePurge:
                addEvent("pre_purge", Message("{0} purges.", {tag}), heater.part->id);
                break;
            case Igniting:
                addEvent("ignition", Message("{0} sparks.", {tag}), heater.part->id);
                break;
            case RestartDelay:
                addEvent("burner_out", Message("{0} went out: {1}.", {tag, cause}), heater.part->id);
                break;
            case Idle:
                addEvent("heater_idle", Message("{0} is at rest: {1}.", {tag, cause}), heater.part->id);
                break;
            }
            at = change->at_s;
        }
        if (heater.stretch >= 0) {
            m_field.setSource(heater.link, heater.stretch, heater.control.deliveredPower_W());
        }
    }
    for (StorageActor& heater : m_storages) {
        takeReadings(heater, m_field, m_flows, m_time);
        const double tank = m_field.meanTemperature(heater.link);
        if (const auto change = heater.control.advance(m_time - dt_s, dt_s, tank, volts() > 6 && !heater.gasFails)) {
            using State = heater::Storage::State;
            const std::string& tag = heater.part->part->tag;
            switch (change->state) {
            case State::Heating:
                addEvent("burner_lit", Message("{0} heats.", {tag}), heater.part->id);
                break;
            case State::Satisfied:
                addEvent("burner_out", Message("{0} is up to temperature.", {tag}), heater.part->id);
                break;
            case State::Lockout:
                addEvent("heater_lockout", Message("{0} locked out: over-temperature switch open.", {tag}),
                         heater.part->id, Event::Weight::Danger);
                break;
            case State::Lighting:
                break;
            }
        }
        if (heater.stretch >= 0) {
            m_field.setSource(heater.link, heater.stretch, heater.control.deliveredPower_W());
        }
    }
}

}  // namespace tapward::study
