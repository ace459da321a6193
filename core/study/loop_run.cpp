// SPDX-License-Identifier: GPL-3.0-or-later
// Settings of a coach at rest and of one whose loop runs.
#include <algorithm>
#include <cmath>

#include "study/change_laws.h"
#include "study/loop.h"
#include "water/water.h"

namespace tapward::study {
namespace {

using document::PartId;

/// A return is piped to a fresh tank (its second path is the way in), and pumps to send water there are drawn.
bool returnsToTank(const Plant& plant)
{
    const auto tanks = plant.withRole(parts::Role::FreshTank);
    return !plant.withRole(parts::Role::Circulator).empty()
           && std::any_of(tanks.begin(), tanks.end(), [&](const PlantPart* tank) {
                  const int link = tank->places.size() > 1 ? tank->places[1].link : -1;
                  return link >= 0 && plant.chains[link].partsInOrder.size() > 1;
              });
}

}  // namespace

void setWater(network::Network& network, double celsius)
{
    const water::Properties properties = water::at(celsius);
    for (int l = 0; l < network.linkCount(); ++l) {
        for (network::Element& element : network.elements(l)) {
            element.density = properties.density;
            element.viscosity = properties.viscosity;
        }
    }
}

void setAtRest(const Plant& plant, network::Network& network)
{
    bool city = false;
    for (const PlantPart& part : plant.parts) {
        city = city || part.model.role == parts::Role::CitySupply;
    }
    for (const PlantPart& part : plant.parts) {
        for (const Place& place : part.places) {
            switch (part.model.role) {
            case parts::Role::Outlet:
                changeLaws<network::ResistanceLaw>(network, place, [](auto& law) { law.opening = 0; });
                break;
            case parts::Role::HandValve:
                changeLaws<network::ResistanceLaw>(network, place,
                                                   [&](auto& law) { law.opening = part.model.startingOpening; });
                break;
            case parts::Role::MotorValve:
                changeLaws<network::ResistanceLaw>(
                    network, place, [&](auto& law) { law.opening = part.model.motorValve->restOpening; });
                break;
            case parts::Role::Circulator:
                changeLaws<network::PumpLaw>(network, place, [](auto& law) { law.speed = 0; });
                break;
            case parts::Role::DemandPump:
                changeLaws<network::PumpLaw>(network, place, [](auto& law) { law.speed = 0; });
                changeLaws<network::SourceLaw>(network, place, [&](auto& law) {
                    law.connected = !city;
                    law.pressure_Pa = part.model.supply ? part.model.supply->cutOut_Pa : 0;
                });
                break;
            case parts::Role::CitySupply:
                changeLaws<network::SourceLaw>(network, place, [](auto& law) { law.connected = true; });
                break;
            default:
                break;
            }
        }
    }
}

const network::Solution& runLoop(const Plant& plant, network::Network& network, Supply supply, WiringNet* solved)
{
    // With its return open to the tank the coach is fed by the demand pump; city water would only fill the tank.
    if (returnsToTank(plant) && !plant.withRole(parts::Role::DemandPump).empty()) {
        for (const PlantPart& part : plant.parts) {
            for (const Place& place : part.places) {
                if (part.model.role == parts::Role::DemandPump) {
                    changeLaws<network::PumpLaw>(network, place, [](auto& law) { law.speed = 1; });
                } else if (part.model.role == parts::Role::CitySupply) {
                    changeLaws<network::SourceLaw>(network, place, [](auto& law) { law.connected = false; });
                }
            }
        }
    }
    WiringNet wiring(plant);
    bool followsFlow = false;
    for (std::size_t i = 0; i < wiring.loads().size(); ++i) {
        const Load& load = wiring.loads()[i];
        wiring.draws()[i].on = load.kind != Load::Kind::Valve;  // a valve draws while it moves only
        followsFlow = followsFlow || (load.kind == Load::Kind::Circulator && load.noFlow_A > 0);
    }
    for (const PlantPart& part : plant.parts) {
        for (const Place& place : part.places) {
            if (part.model.motorValve) {
                changeLaws<network::ResistanceLaw>(network, place, [](auto& law) { law.opening = 1; });
            }
        }
    }
    // Flow moves the current a little and the current the flow a little: a few rounds settle both.
    const network::Solution* solution = nullptr;
    for (int round = 0; round < 30; ++round) {
        wiring.solve(supply);
        double moved = 0;
        for (std::size_t i = 0; i < wiring.loads().size(); ++i) {
            if (wiring.loads()[i].kind != Load::Kind::Circulator) {
                continue;
            }
            const double speed = wiring.speed(static_cast<int>(i));
            for (const Place& place : plant.find(wiring.loads()[i].part)->places) {
                changeLaws<network::PumpLaw>(network, place, [&](auto& law) {
                    moved = std::max(moved, std::abs(law.speed - speed));
                    law.speed = speed;
                });
            }
        }
        if (solution && moved < 1e-10) {
            break;
        }
        solution = &network.solve();
        if (!followsFlow) {
            break;
        }
        for (std::size_t i = 0; i < wiring.loads().size(); ++i) {
            const PlantPart* part = plant.find(wiring.loads()[i].part);
            if (part->model.circulator && part->places[0].link >= 0) {
                const double flow = solution->flow_m3s[part->places[0].link];
                wiring.draws()[i].flow_m3s = part->places[0].reversed ? -flow : flow;
            }
        }
    }
    if (solved) {
        *solved = std::move(wiring);
    }
    return *solution;
}

}  // namespace tapward::study
