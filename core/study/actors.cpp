// SPDX-License-Identifier: GPL-3.0-or-later
// Who takes part in a case, and how everything stands before it begins.
#include <algorithm>

#include "document/references.h"
#include "study/simulation.h"

namespace tapward::study {
namespace {

using document::ActionKind;
using document::PartId;

/// Volume fraction of a path's place in its run (of its middle when it holds water).
double fractionOf(const thermal::Field& field, const Place& place)
{
    if (place.stretch >= 0) {
        return 0.5
               * (field.stretchStart(place.link, place.stretch) + field.stretchStart(place.link, place.stretch + 1));
    }
    return field.stretchStart(place.link, place.stretchesBefore);
}

}  // namespace

int Simulation::sensorIndex(const std::string& partId) const
{
    const PartId id = document::namedPart(partId);
    for (std::size_t s = 0; s < m_sensors.size(); ++s) {
        if (m_sensors[s].part->id == id) {
            return static_cast<int>(s);
        }
    }
    return -1;
}

int Simulation::controllerOf(const std::string& partId) const
{
    if (partId.empty()) {
        return m_controls.size() == 1 ? 0 : -1;
    }
    const PartId id = document::namedPart(partId);
    for (std::size_t c = 0; c < m_controls.size(); ++c) {
        if (m_controls[c].part->id == id) {
            return static_cast<int>(c);
        }
    }
    return -1;
}

void Simulation::makeActors()
{
    m_power = batterySupply(m_plant);
    m_wiring = WiringNet(m_plant);
    bool city = false, pumpSupply = false;
    for (const PlantPart& part : m_plant.parts) {
        const parts::PartModel& model = part.model;
        const bool placed = !part.places.empty() && part.places[0].link >= 0;
        if (model.outlet && placed) {
            OutletActor outlet{&part};
            outlet.hotShare = model.outlet->defaultHotShare;
            const auto join = [&](int path) {
                const int link = path < 0 ? -1 : part.places[path].link;
                return link < 0 ? -1 : std::max(m_plant.chains[link].from, m_plant.chains[link].to);
            };
            outlet.hotJoin = join(model.outlet->hotPath);
            outlet.coldJoin = join(model.outlet->coldPath);
            m_outlets.push_back(outlet);
        }
        if (model.motorValve && placed) {
            ValveActor valve{&part};
            valve.position = model.motorValve->restOpening;
            valve.commanded = model.motorValve->restOpening > 0.5;
            m_valves.push_back(valve);
        }
        if (model.circulator && placed) {
            m_pumps.push_back(PumpActor{&part});
        }
        if (model.sensor && placed) {
            SensorActor sensor{&part};
            sensor.run = part.places[0].link;
            sensor.fraction = fractionOf(m_field, part.places[0]);
            sensor.forward = !part.places[0].reversed;
            sensor.reading_C = m_case.start_C;
            sensor.water_C = m_case.start_C;
            m_sensors.push_back(sensor);
        }
        if (model.tankless && placed) {
            heater::TanklessSpec spec = *model.tankless;
            spec.altitude_m = m_drawing.job.altitude_m;
            const Place& place = part.places[0];
            const Plant::Chain& chain = m_plant.chains[place.link];
            HeaterActor heater{&part,
                               place.link,
                               place.stretch,
                               !place.reversed,
                               place.reversed ? chain.to : chain.from,
                               place.reversed ? chain.from : chain.to,
                               heater::Tankless(spec)};
            heater.inlet_C = heater.outlet_C = m_case.start_C;
            m_heaters.push_back(std::move(heater));
        }
        if (model.storage && placed) {
            const Place& place = part.places[0];
            const Plant::Chain& chain = m_plant.chains[place.link];
            StorageActor heater{&part,
                                place.link,
                                place.stretch,
                                !place.reversed,
                                place.reversed ? chain.to : chain.from,
                                place.reversed ? chain.from : chain.to,
                                heater::Storage(*model.storage)};
            heater.inlet_C = m_case.start_C;
            heater.outlet_C = m_case.storedHeater_C.value_or(model.storage->setpoint_C);
            m_storages.push_back(std::move(heater));
            m_field.fillRun(place.link, m_case.storedHeater_C.value_or(model.storage->setpoint_C));
        }
        if (model.controller) {
            control::RunSpec spec = model.controller->spec;
            if (const ControlChange* change = changeOf(part.id)) {
                spec = change->spec;
            }
            m_controls.push_back(ControlActor{&part, spec});
        }
        if (model.mixing && placed) {
            m_mixers.push_back({&part, 0.5});
        }
        city = city || (model.role == parts::Role::CitySupply && placed);
        if (model.role == parts::Role::DemandPump && placed) {
            pumpSupply = true;
            m_demandPump = &part;
            if (!m_accumulator.present() && part.places.size() > 1) {  // the tubing's give, added by the plant
                m_accumulator.part = &part;
                m_accumulator.place = part.places.back();
                m_accumulator.compliance_m3_Pa = part.model.supply->compliance_m3_Pa;
            }
        }
        if (model.role == parts::Role::Accumulator && placed && model.supply) {
            m_accumulator = {};
            m_accumulator.part = &part;
            m_accumulator.place = part.places[0];
            m_accumulator.volume_m3 = model.supply->volume_m3;
            m_accumulator.precharge_Pa = model.supply->precharge_Pa;
        }
    }
    for (ControlActor& actor : m_controls) {
        const parts::ControllerModel& model = *actor.part->model.controller;
        actor.stopSensor = sensorIndex(model.stopSensor);
        actor.limitSensor = sensorIndex(model.limitSensor);
        actor.inletSensor = sensorIndex(model.inletSensor);
        actor.flowSensor = sensorIndex(model.flowSensor);
        if (const ControlChange* change = changeOf(actor.part->id)) {
            actor.lockoutAtHeater = change->lockoutAtHeater;
            if (change->limitAtStopSensor) {
                actor.limitSensor = actor.stopSensor;
                actor.limitAtHeater = actor.stopSensor < 0;
            }
        }
    }
    for (ValveActor& valve : m_valves) {
        valve.controller = controllerOf(valve.part->model.motorValve->controller);
    }
    for (PumpActor& pump : m_pumps) {
        pump.controller = controllerOf(pump.part->model.circulator->controller);
    }

    solveWiring();

    m_supply = city ? ActionKind::UseCity : (pumpSupply ? ActionKind::UsePump : ActionKind::UseNothing);
    setAtRest(m_plant, m_network);
    double start_Pa = m_demandPump ? m_demandPump->model.supply->cutOut_Pa : 3e5;
    for (const PlantPart& part : m_plant.parts) {
        if (city && part.model.role == parts::Role::CitySupply && part.model.supply) {
            start_Pa = part.model.supply->pressure_Pa;
        }
    }
    for (const PlantPart& part : m_plant.parts) {
        if (part.model.regulatedPressure_Pa && city) {
            start_Pa = std::min(start_Pa, *part.model.regulatedPressure_Pa);
        }
    }
    if (m_accumulator.present()) {
        m_accumulator.pressure_Pa = start_Pa;
        m_accumulator.water_m3 = m_accumulator.waterAt(start_Pa);
    }
    for (std::size_t l = 0; l < m_plant.chains.size(); ++l) {
        const Plant::Chain& chain = m_plant.chains[l];
        const int run = static_cast<int>(l);
        double supply = m_case.start_C;
        for (const PartId id : chain.partsInOrder) {
            const PlantPart* part = m_plant.find(id);
            if (part->model.supply && part->model.role != parts::Role::DemandPump
                && part->model.role != parts::Role::Accumulator) {
                supply = m_case.supply_C.value_or(part->model.supply->temperature_C);
            }
        }
        if (chain.from == network::kOutside || chain.to == network::kOutside) {
            m_field.setSupply(run, supply);
        }
        for (std::size_t k = 0; k < chain.stretches.size() && m_case.ambient_C; ++k) {
            m_field.setAmbient(run, static_cast<int>(k), *m_case.ambient_C);
        }
    }
    applySupply();
    if (m_trial && m_trial->plan) {
        const PressPlan& plan = *m_trial->plan;
        const PlantPart* pressed = m_plant.find(plan.pressed);
        m_plan.controller = pressed && !pressed->model.controller ? controllerOf(pressed->model.buttonFor)
                            : pressed                             ? controllerOf(std::to_string(plan.pressed))
                                                                  : controllerOf({});
        m_plan.nextTry_s = plan.gaps_s.empty() ? 0 : plan.gaps_s.front();
        m_plan.done = m_plan.controller < 0 || plan.gaps_s.empty();
    }
}

const ControlChange* Simulation::changeOf(PartId controller) const
{
    for (std::size_t c = 0; m_trial && c < m_trial->controls.size(); ++c) {
        if (m_trial->controls[c].controller == controller) {
            return &m_trial->controls[c];
        }
    }
    return nullptr;
}

}  // namespace tapward::study
