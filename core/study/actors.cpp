// SPDX-License-Identifier: GPL-3.0-or-later
#include <charconv>
#include <cmath>

#include "study/simulation.h"
#include "water/water.h"

namespace tapward::study {
namespace {

using document::ActionKind;
using document::PartId;

template <class LawKind, class Change>
void changeLaws(network::Network& network, const Place& place, Change change)
{
    if (place.link < 0) {
        return;
    }
    const auto elements = network.elements(place.link);
    for (int e = 0; e < place.elementCount; ++e) {
        if (auto* law = std::get_if<LawKind>(&elements[place.firstElement + e].law)) {
            change(*law);
        }
    }
}

template <class LawKind, class Change>
void changeLaws(network::Network& network, const PlantPart& part, Change change)
{
    for (const Place& place : part.places) {
        changeLaws<LawKind>(network, place, change);
    }
}

PartId idFromText(const std::string& text)
{
    PartId id = document::kNoPart;
    std::from_chars(text.data(), text.data() + text.size(), id);
    return id;
}

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
    const PartId id = idFromText(partId);
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
    const PartId id = idFromText(partId);
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

double Simulation::volts() const
{
    if (m_powerCut) {
        return 0;
    }
    return m_wiring.posts_V();
}

double Simulation::voltsAt(const PlantPart& part) const
{
    const int load = m_powerCut ? -1 : m_wiring.indexOf(part.id);
    return load < 0 ? volts() : m_wiring.volts(load);
}

void Simulation::solveWiring()
{
    for (std::size_t i = 0; i < m_wiring.loads().size(); ++i) {
        const Load& load = m_wiring.loads()[i];
        WiringNet::Draw& draw = m_wiring.draws()[i];
        draw.on = false;
        switch (load.kind) {
        case Load::Kind::Circulator:
            for (const PumpActor& pump : m_pumps) {
                if (pump.part->id == load.part) {
                    draw.on = pump.on && pump.share > 0;
                    draw.flow_m3s = flowOf(*pump.part);
                }
            }
            break;
        case Load::Kind::Valve:
            for (const ValveActor& valve : m_valves) {
                draw.on = draw.on || (valve.part->id == load.part && valve.moves);
            }
            break;
        case Load::Kind::Controller:
            for (const ControlActor& actor : m_controls) {
                draw.on = draw.on || (actor.part->id == load.part && actor.control.state() != control::RunState::Idle);
            }
            break;
        case Load::Kind::Heater:
            for (const HeaterActor& heater : m_heaters) {
                draw.on = draw.on || (heater.part->id == load.part && heater.control.fanRuns());
            }
            break;
        }
    }
    m_wiring.solve(std::isfinite(m_lowVolts) ? Supply{m_lowVolts, 0} : m_power);
}

double Simulation::flowOf(const PlantPart& part, int path) const
{
    const Place& place = part.places[path];
    if (place.link < 0) {
        return 0;
    }
    return place.reversed ? -m_flows[place.link] : m_flows[place.link];
}

void Simulation::applySupply()
{
    for (const PlantPart& part : m_plant.parts) {
        if (part.model.role == parts::Role::CitySupply && part.model.supply) {
            // An in-line regulator behind the inlet clips the pressure.
            double pressure = part.model.supply->pressure_Pa;
            for (const PartId id : m_plant.chains[std::max(0, part.places[0].link)].partsInOrder) {
                if (const auto set = m_plant.find(id)->model.regulatedPressure_Pa) {
                    pressure = std::min(pressure, *set);
                }
            }
            changeLaws<network::SourceLaw>(m_network, part, [&](auto& law) {
                law.connected = m_supply == ActionKind::UseCity;
                law.pressure_Pa = pressure;
            });
        }
    }
    if (m_demandPump) {
        if (m_supply != ActionKind::UsePump) {
            m_demandPumpOn = false;
        } else if (m_accumulator.present() && m_accumulator.pressure_Pa < m_demandPump->model.supply->cutIn_Pa) {
            m_demandPumpOn = true;
        }
    }
    m_dirty = true;
}

void Simulation::applyAction(const document::Action& action)
{
    const document::Part* part = m_drawing.find(action.part);
    const std::string tag = part ? part->tag : std::string();
    const auto outlet = std::find_if(m_outlets.begin(), m_outlets.end(),
                                     [&](const OutletActor& o) { return o.part->id == action.part; });
    m_dirty = true;
    switch (action.kind) {
    case ActionKind::OpenOutlet:
        if (outlet == m_outlets.end()) {
            addEvent("action_without_part", Message("{0} is not there to be opened.", {tag}), action.part,
                     Event::Weight::Caution);
            return;
        }
        outlet->opening = std::clamp(action.value, 0.0, 1.0);
        outlet->hotShare =
            action.second < 0 ? outlet->part->model.outlet->defaultHotShare : std::min(action.second, 1.0);
        outlet->drawn_m3 = 0;
        outlet->opened_s = m_time;
        if (m_waitOutlet < 0 && outlet->hotShare > 0) {
            m_waitOutlet = static_cast<int>(outlet - m_outlets.begin());
        }
        addEvent("tap_opened", Message("{0} opened.", {tag}), action.part);
        return;
    case ActionKind::CloseOutlet:
        if (outlet != m_outlets.end()) {
            outlet->opening = 0;
            addEvent("tap_closed", Message("{0} closed after {1}.", {tag, Measure{outlet->drawn_m3, Quantity::Volume}}),
                     action.part);
        }
        return;
    case ActionKind::PressButton: {
            // A button's own controller, a controller named directly, or the only one.
        int controller = -1;
        if (const PlantPart* pressed = m_plant.find(action.part)) {
            controller = pressed->model.controller ? controllerOf(std::to_string(action.part))
                                                   : controllerOf(pressed->model.buttonFor);
        } else if (m_controls.size() == 1) {
            controller = 0;
        }
        if (controller < 0) {
            addEvent("action_without_part", Message("The button was pressed, but no controller answers it."),
                     action.part, Event::Weight::Caution);
            return;
        }
        press(static_cast<std::size_t>(controller));
        return;
    }
    case ActionKind::SetValve:
        if (const PlantPart* valve = m_plant.find(action.part)) {
            changeLaws<network::ResistanceLaw>(m_network, *valve,
                                               [&](auto& law) { law.opening = std::clamp(action.value, 0.0, 1.0); });
            addEvent("valve_set", Message(action.value > 0 ? "{0} opened by hand." : "{0} shut by hand.", {tag}),
                     action.part);
        }
        return;
    case ActionKind::UseCity:
    case ActionKind::UsePump:
    case ActionKind::UseNothing:
        m_supply = action.kind;
        applySupply();
        addEvent("supply",
                 Message(action.kind == ActionKind::UseCity   ? "City water connected."
                         : action.kind == ActionKind::UsePump ? "The coach's pump supplies."
                                                              : "No supply."),
                 document::kNoPart);
        return;
    case ActionKind::SetVoltage:
        m_power = {action.value, 0};  // read at the posts
        solveWiring();
        addEvent("voltage", Message("Battery at {0}.", {Measure{action.value, Quantity::Voltage}}), document::kNoPart);
        return;
    case ActionKind::StartFault:
        applyFault(action, true);
        return;
    case ActionKind::EndFault:
        applyFault(action, false);
        return;
    }
}

void Simulation::applyFault(const document::Action& action, bool begins)
{
    const PlantPart* part = m_plant.find(action.part);
    if (!part) {
        return;
    }
    const auto& faults = document::kindOf(*part->part).faults;
    const auto fault =
        std::find_if(faults.begin(), faults.end(), [&](const parts::Fault& f) { return f.id == action.fault; });
    if (fault == faults.end()) {
        addEvent("fault_unknown", Message("{0} has no fault called {1}.", {part->part->tag, action.fault}), part->id,
                 Event::Weight::Caution);
        return;
    }
    addEvent(begins ? "fault" : "fault_ended",
             Message(begins ? "Fault: {0} {1}." : "{0} is sound again (was {1}).",
                     {part->part->tag, std::string(fault->title)}),
             part->id, begins ? Event::Weight::Caution : Event::Weight::Info);

    const auto eachOf = [&](auto& actors, auto change) {
        for (auto& actor : actors) {
            if (actor.part == part) {
                change(actor);
            }
        }
    };
    using enum parts::FaultEffect;
    using Condition = network::CheckLaw::Condition;
    const auto check = [&](Condition condition, double leak) {
        changeLaws<network::CheckLaw>(m_network, *part, [&](auto& law) {
            law.condition = begins ? condition : Condition::Sound;
            law.leak_m3s_per_Pa = begins ? leak : 0;
        });
    };
    switch (fault->effect) {
    case HoldOpening: {
        const double held = begins ? fault->amount : -1;
        eachOf(m_valves, [&](ValveActor& a) { a.held = held; });
        eachOf(m_outlets, [&](OutletActor& a) { a.held = held; });
        if (part->model.role == parts::Role::HandValve) {
            changeLaws<network::ResistanceLaw>(m_network, *part, [&](auto& law) {
                law.opening = begins ? fault->amount : part->model.startingOpening;
            });
        }
        break;
    }
    case SlowTravel:
        eachOf(m_valves, [&](ValveActor& a) { a.slowness = begins ? fault->amount : 1; });
        break;
    case CheckStuckOpen:
        check(Condition::StuckOpen, 0);
        break;
    case CheckStuckShut:
        check(Condition::StuckShut, 0);
        break;
    case CheckLeaks:
        check(Condition::Sound, fault->amount);
        break;
    case DriveShare:
        eachOf(m_pumps, [&](PumpActor& a) { a.share = begins ? fault->amount : 1; });
        if (part == m_demandPump) {
            m_demandPumpShare = begins ? fault->amount : 1;
        }
        break;
    case DriveAlwaysOn:
        eachOf(m_pumps, [&](PumpActor& a) { a.welded = begins; });
        eachOf(m_valves, [&](ValveActor& a) { a.welded = begins; });
        eachOf(m_controls, [&](ControlActor& a) { a.welded = begins; });
        if (part == m_demandPump) {
            m_demandPumpWelded = begins;
            applySupply();
        }
        break;
    case SensorOffset:
        eachOf(m_sensors, [&](SensorActor& a) { a.offset_K = begins ? fault->amount : 0; });
        break;
    case SensorFrozen:
        eachOf(m_sensors, [&](SensorActor& a) { a.frozen = begins; });
        break;
    case SensorFails:
    case FlowSensorDead:
        eachOf(m_sensors, [&](SensorActor& a) { a.failed = begins; });
        break;
    case StopFails:
        eachOf(m_controls, [&](ControlActor& a) { a.stopFails = begins; });
        break;
    case LimitFails:
        eachOf(m_controls, [&](ControlActor& a) { a.limitFails = begins; });
        break;
    case ButtonStuck: {
        const int controller =
            part->model.controller ? controllerOf(std::to_string(part->id)) : controllerOf(part->model.buttonFor);
        if (controller >= 0) {
            m_controls[controller].buttonStuck = begins;
        }
        break;
    }
    case Clogged: {
        const double factor = begins ? fault->amount : 1 / fault->amount;
        changeLaws<network::ResistanceLaw>(m_network, *part, [&](auto& law) { law.R *= factor; });
        // Debris left the amount-th part of the bore's area open: about its square in velocity heads.
        const double added = (begins ? 1 : -1) * fault->amount * fault->amount;
        changeLaws<network::PipeLaw>(m_network, *part, [&](auto& law) { law.minorK += added; });
        break;
    }
    case GasFails:
        eachOf(m_heaters, [&](HeaterActor& a) { a.gasFails = begins; });
        eachOf(m_storages, [&](StorageActor& a) { a.gasFails = begins; });
        break;
    case PowerCut:
        m_powerCut = begins;
        break;
    case LowVoltage:
        m_lowVolts = begins ? fault->amount : kNan;
        solveWiring();
        break;
    case NotSimulated:
        addEvent("fault_not_run", Message("This fault is listed but not run."), part->id, Event::Weight::Caution);
        break;
    }
}

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
        changeLaws<network::ResistanceLaw>(m_network, *valve.part, [&](auto& law) { law.opening = valve.position; });
    }
    for (const PumpActor& pump : m_pumps) {
        changeLaws<network::PumpLaw>(m_network, *pump.part, [&](auto& law) { law.speed = pump.speed; });
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

namespace {

struct HeaterReadings {
    double flow, inlet, outlet;
};

HeaterReadings readingsOf(const thermal::Field& field, std::span<const double> flows, int link, bool forward,
                          int inletJunction)
{
    HeaterReadings r{};
    r.flow = forward ? flows[link] : -flows[link];
    const bool moving = std::abs(r.flow) > 1e-7;
    r.inlet = moving && r.flow > 0 && inletJunction >= 0 ? field.junctionTemperature(inletJunction)
                                                         : field.at(link, forward ? 0.0 : 1.0);
    r.outlet = moving ? field.outletTemperature(link) : field.at(link, forward ? 1.0 : 0.0);
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
        const HeaterReadings r = readingsOf(m_field, m_flows, heater.link, heater.forward, heater.inletJunction);
        heater.inlet_C = r.inlet;
        heater.outlet_C = r.outlet;
        if (r.flow > 1e-7) {  // only water that enters counts
            keepHottest(heater.hottestInlet_C, heater.hottestInlet_s, r.inlet, m_time);
        }
        keepHottest(heater.hottestOutlet_C, heater.hottestOutlet_s, r.outlet, m_time);
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
        const HeaterReadings r = readingsOf(m_field, m_flows, heater.link, heater.forward, heater.inletJunction);
        heater.inlet_C = r.inlet;
        heater.outlet_C = r.outlet;
        if (r.flow > 1e-7) {  // only water that enters counts
            keepHottest(heater.hottestInlet_C, heater.hottestInlet_s, r.inlet, m_time);
        }
        keepHottest(heater.hottestOutlet_C, heater.hottestOutlet_s, r.outlet, m_time);
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

void Simulation::watchLimit(ControlActor& actor)
{
    // A snap switch closes again this far below (common practice, no published source).
    constexpr double kReset_K = 5;
    if (!actor.spec.highLimit || actor.limitFails) {
        actor.limitOpen = false;
        return;
    }
    const double reading = inputsOf(actor).limitSensor_C;
    const bool was = actor.limitOpen;
    actor.limitOpen = was ? !(reading < actor.spec.highLimit_C - kReset_K) : reading >= actor.spec.highLimit_C;
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
    if (m_demandPump && m_supply == document::ActionKind::UsePump) {
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
