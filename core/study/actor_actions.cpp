// SPDX-License-Identifier: GPL-3.0-or-later
// What the script asks for.
#include <algorithm>

#include "study/change_laws.h"
#include "study/simulation.h"

namespace tapward::study {
namespace {

using document::ActionKind;
using document::PartId;

}  // namespace

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
    m_dirty = m_acted = true;
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

}  // namespace tapward::study
