// SPDX-License-Identifier: GPL-3.0-or-later
#include "review/steady.h"

#include <algorithm>
#include <cmath>

#include "study/loop.h"

namespace tapward::review {
namespace {

using parts::Role;

template <class LawKind, class Change>
void change(network::Network& network, const study::PlantPart& part, Change make)
{
    for (const study::Place& place : part.places) {
        if (place.link < 0) {
            continue;
        }
        const auto elements = network.elements(place.link);
        for (int e = 0; e < place.elementCount; ++e) {
            if (auto* law = std::get_if<LawKind>(&elements[static_cast<std::size_t>(place.firstElement + e)].law)) {
                make(*law);
            }
        }
    }
}

void setOpening(network::Network& network, const study::PlantPart& part, std::size_t path, double opening)
{
    const study::Place& place = part.places[path];
    if (place.link < 0) {
        return;
    }
    const auto elements = network.elements(place.link);
    for (int e = 0; e < place.elementCount; ++e) {
        if (auto* law =
                std::get_if<network::ResistanceLaw>(&elements[static_cast<std::size_t>(place.firstElement + e)].law)) {
            law->opening = opening;
        }
    }
}

void setSupply(const study::Plant& plant, network::Network& network, Supply supply, bool vessels, double pump_Pa)
{
    for (const study::PlantPart& part : plant.parts) {
        const Role role = part.model.role;
        if (role == Role::CitySupply && part.model.supply && !part.places.empty()) {
            double pressure_Pa = part.model.supply->pressure_Pa;
            const auto& chain = plant.chains[static_cast<std::size_t>(std::max(0, part.places.front().link))];
            for (const document::PartId id : chain.partsInOrder) {
                if (const auto set = plant.find(id)->model.regulatedPressure_Pa) {
                    pressure_Pa = std::min(pressure_Pa, *set);
                }
            }
            change<network::SourceLaw>(network, part, [&](auto& law) {
                law.connected = supply == Supply::City;
                law.pressure_Pa = pressure_Pa;
            });
        } else if (role == Role::Accumulator || role == Role::DemandPump) {
            change<network::SourceLaw>(network, part, [&](auto& law) {
                law.connected = supply == Supply::Pump && vessels;
                law.pressure_Pa = pump_Pa;
            });
        }
    }
}

}  // namespace

network::Network onSupply(const study::Plant& plant, Supply supply, double pump_Pa)
{
    network::Network network = plant.makeNetwork();
    study::setAtRest(plant, network);
    setSupply(plant, network, supply, true, pump_Pa);
    return network;
}

network::Network onRunningPump(const study::Plant& plant)
{
    network::Network network = plant.makeNetwork();
    study::setAtRest(plant, network);
    setSupply(plant, network, Supply::Pump, false, 0);
    for (const study::PlantPart* pump : plant.withRole(Role::DemandPump)) {
        change<network::PumpLaw>(network, *pump, [](auto& law) { law.speed = 1; });
    }
    return network;
}

void open(network::Network& network, const study::PlantPart& part, double hotShare)
{
    if (!part.model.outlet) {
        for (std::size_t path = 0; path < part.places.size(); ++path) {
            setOpening(network, part, path, 1);
        }
        return;
    }
    const parts::OutletModel& outlet = *part.model.outlet;
    if (outlet.hotPath >= 0) {
        setOpening(network, part, static_cast<std::size_t>(outlet.hotPath), hotShare);
    }
    if (outlet.coldPath >= 0) {
        setOpening(network, part, static_cast<std::size_t>(outlet.coldPath), 1 - hotShare);
    }
}

void close(network::Network& network, const study::PlantPart& part)
{
    for (std::size_t path = 0; path < part.places.size(); ++path) {
        setOpening(network, part, path, 0);
    }
}

bool has(const study::Plant& plant, Supply supply)
{
    return !plant.withRole(supply == Supply::City ? Role::CitySupply : Role::DemandPump).empty();
}

std::optional<double> highestAtRest_Pa(const study::Plant& plant, int junction)
{
    std::optional<double> highest;
    for (const Supply supply : {Supply::City, Supply::Pump}) {
        if (!has(plant, supply) || junction < 0) {
            continue;
        }
        double cutOut_Pa = 0;
        for (const study::PlantPart* pump : plant.withRole(Role::DemandPump)) {
            cutOut_Pa = std::max(cutOut_Pa, pump->model.supply ? pump->model.supply->cutOut_Pa : 0);
        }
        network::Network network = onSupply(plant, supply, cutOut_Pa);
        const double pressure_Pa = network.solve().pressure_Pa[static_cast<std::size_t>(junction)];
        if (std::isfinite(pressure_Pa)) {
            highest = std::max(highest.value_or(pressure_Pa), pressure_Pa);
        }
    }
    return highest;
}

}  // namespace tapward::review
