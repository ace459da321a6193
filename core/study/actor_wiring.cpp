// SPDX-License-Identifier: GPL-3.0-or-later
// Volts of whoever draws current.
#include <cmath>

#include "study/simulation.h"

namespace tapward::study {

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
    bool same = m_wired;
    for (std::size_t i = 0; i < m_wiring.loads().size(); ++i) {
        const Load& load = m_wiring.loads()[i];
        WiringNet::Draw& draw = m_wiring.draws()[i];
        const WiringNet::Draw before = draw;
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
        // A current that follows the flow by less than this moves no speed by what anyone could see.
        constexpr double kSameFlow = 1e-3;
        if (draw.on == before.on
            && std::abs(draw.flow_m3s - before.flow_m3s) <= kSameFlow * std::abs(before.flow_m3s)) {
            draw.flow_m3s = before.flow_m3s;
        } else {
            same = false;
        }
    }
    const Supply supply = std::isfinite(m_lowVolts) ? Supply{m_lowVolts, 0} : m_power;
    if (same && supply == m_wiredTo) {
        return;
    }
    m_wired = true;
    m_wiredTo = supply;
    m_wiring.solve(supply);
}

}  // namespace tapward::study
