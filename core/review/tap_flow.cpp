// SPDX-License-Identifier: GPL-3.0-or-later
#include "review/tap_flow.h"

#include <algorithm>
#include <cmath>

namespace tapward::review {
namespace {

using parts::Role;

struct Drawn {
    double throughHeater_m3s = 0, tap_m3s = 0;
};

const study::PlantPart* tanklessOf(const study::Plant& plant)
{
    for (const study::PlantPart* heater : plant.withRole(Role::Tankless)) {
        if (!heater->places.empty() && heater->places.front().link >= 0) {
            return heater;
        }
    }
    return nullptr;
}

Drawn draw(const study::Plant& plant, const study::PlantPart& heater, const study::PlantPart& outlet, Supply supply,
           double pump_Pa)
{
    network::Network network = onSupply(plant, supply, pump_Pa);
    open(network, outlet, outlet.model.outlet->shower ? outlet.model.outlet->defaultHotShare : 1);
    const auto& flows = network.solve().flow_m3s;
    Drawn drawn;
    drawn.throughHeater_m3s = std::abs(flows[static_cast<std::size_t>(heater.places.front().link)]);
    for (const study::Place& place : outlet.places) {
        drawn.tap_m3s += place.link < 0 ? 0 : std::abs(flows[static_cast<std::size_t>(place.link)]);
    }
    return drawn;
}

/// Outlets with a hot side that the heater feeds without a mixing valve anywhere.
std::vector<const study::PlantPart*> hotTaps(const study::Plant& plant)
{
    std::vector<const study::PlantPart*> taps;
    if (!plant.withRole(Role::MixingValve).empty()) {
        return taps;
    }
    for (const study::PlantPart* outlet : plant.withRole(Role::Outlet)) {
        if (outlet->model.outlet && outlet->model.outlet->hotPath >= 0
            && outlet->places[static_cast<std::size_t>(outlet->model.outlet->hotPath)].link >= 0) {
            taps.push_back(outlet);
        }
    }
    return taps;
}

}  // namespace

std::vector<TapFlow> tapFlows(const study::Plant& plant)
{
    std::vector<TapFlow> all;
    const study::PlantPart* heater = tanklessOf(plant);
    if (!heater) {
        return all;
    }
    const auto pumps = plant.withRole(Role::DemandPump);
    for (const study::PlantPart* outlet : hotTaps(plant)) {
        std::optional<TapFlow> least;
        for (const Supply supply : {Supply::City, Supply::Pump}) {
            if (!has(plant, supply)) {
                continue;
            }
            const double pump_Pa = pumps.empty() ? 0 : pumps.front()->model.supply->cutIn_Pa;
            const Drawn drawn = draw(plant, *heater, *outlet, supply, pump_Pa);
            // A tap no water of this heater reaches is another rule's.
            if (drawn.throughHeater_m3s > 1e-7 && (!least || drawn.throughHeater_m3s < least->throughHeater_m3s)) {
                least = TapFlow{outlet, heater, supply, drawn.throughHeater_m3s,
                                heater->model.tankless->activationFlow_m3s};
            }
        }
        if (least) {
            all.push_back(*least);
        }
    }
    return all;
}

std::vector<CyclingTap> cyclingTaps(const study::Plant& plant)
{
    std::vector<CyclingTap> all;
    const study::PlantPart* heater = tanklessOf(plant);
    const auto pumps = plant.withRole(Role::DemandPump);
    if (!heater || pumps.empty() || !pumps.front()->model.supply) {
        return all;
    }
    const parts::SupplyModel& pump = *pumps.front()->model.supply;
    network::Network running = onRunningPump(plant);
    for (const study::PlantPart* outlet : hotTaps(plant)) {
        const Drawn low = draw(plant, *heater, *outlet, Supply::Pump, pump.cutIn_Pa);
        const Drawn high = draw(plant, *heater, *outlet, Supply::Pump, pump.cutOut_Pa);
        // The pump alone, without the vessel: does it hold more than this tap takes at cut-out?
        open(running, *outlet, outlet->model.outlet->shower ? outlet->model.outlet->defaultHotShare : 1);
        double pumped_m3s = 0;
        const auto& flows = running.solve().flow_m3s;
        for (const study::Place& place : outlet->places) {
            pumped_m3s += place.link < 0 ? 0 : std::abs(flows[static_cast<std::size_t>(place.link)]);
        }
        close(running, *outlet);
        const heater::TanklessSpec& spec = *heater->model.tankless;
        if (pumped_m3s > high.tap_m3s && low.throughHeater_m3s < spec.holdFlow_m3s
            && high.throughHeater_m3s >= spec.activationFlow_m3s) {
            all.push_back({outlet, heater, low.throughHeater_m3s, high.throughHeater_m3s, spec.activationFlow_m3s});
        }
    }
    return all;
}

}  // namespace tapward::review
