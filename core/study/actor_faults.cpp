// SPDX-License-Identifier: GPL-3.0-or-later
// What a fault changes, and changes back.
#include <algorithm>

#include "study/change_laws.h"
#include "study/simulation.h"

namespace tapward::study {

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
             Message(begins ? "Fault: {0} {1}." : "{0} is sound again (was {1}).", {part->part->tag, fault->title}),
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

}  // namespace tapward::study
