// SPDX-License-Identifier: GPL-3.0-or-later
// Which way the loop takes, and what it does at rest.
#include <algorithm>
#include <cmath>
#include <queue>

#include "study/cold_return.h"
#include "study/head_budget.h"
#include "study/loop.h"
#include "study/loop_ways.h"
#include "water/water.h"

namespace tapward::study {
namespace {

using document::PartId;

double stretchVolume(const thermal::Stretch& stretch)
{
    return stretch.length_m > 0 ? stretch.length_m * M_PI / 4 * stretch.bore_m * stretch.bore_m : stretch.volume_m3;
}

struct HeaterPlace {
    const PlantPart* part = nullptr;
    int link = -1;
    int inlet = -1, outlet = -1;
    bool forward = true;  ///< cold to hot runs with the link
};

std::optional<HeaterPlace> heaterOf(const Plant& plant)
{
    for (const parts::Role role : {parts::Role::Tankless, parts::Role::StorageHeater}) {
        for (const PlantPart* part : plant.withRole(role)) {
            if (part->places.empty() || part->places[0].link < 0) {
                continue;
            }
            const Place& place = part->places[0];
            const Plant::Chain& chain = plant.chains[place.link];
            HeaterPlace heater{part, place.link, place.reversed ? chain.to : chain.from,
                               place.reversed ? chain.from : chain.to, !place.reversed};
            if (heater.inlet >= 0 && heater.outlet >= 0) {
                return heater;
            }
        }
    }
    return std::nullopt;
}

/// Follows the water from the heater's outlet back to its inlet, the largest flow first at every join; where that only
/// leads round past the heater, the next.
std::vector<Hop> followFlow(const Plant& plant, const HeaterPlace& heater, std::span<const double> flows)
{
    std::vector<Hop> way;
    std::vector<char> tried(plant.chains.size(), 0);
    std::vector<char> seen(static_cast<std::size_t>(plant.junctions), 0);
    int at = heater.outlet;
    seen[static_cast<std::size_t>(at)] = 1;
    while (at != heater.inlet) {
        Hop best{-1, true};
        double most = kNothing_m3s;
        for (std::size_t l = 0; l < plant.chains.size(); ++l) {
            const Plant::Chain& chain = plant.chains[l];
            if (static_cast<int>(l) == heater.link || tried[l]) {
                continue;
            }
            for (const bool forward : {true, false}) {
                const double leaving = forward ? flows[l] : -flows[l];
                const int to = endJunction(chain, forward);
                if (startJunction(chain, forward) == at && leaving > most
                    && (to < 0 || !seen[static_cast<std::size_t>(to)])) {
                    best = {static_cast<int>(l), forward};
                    most = leaving;
                }
            }
        }
        if (best.link < 0) {
            if (way.empty()) {
                return {};
            }
            at = startJunction(plant.chains[way.back().link], way.back().forward);
            way.pop_back();
            continue;
        }
        tried[static_cast<std::size_t>(best.link)] = 1;
        const int to = endJunction(plant.chains[best.link], best.forward);
        if (to < 0) {
            // Into the fresh tank: from there the supply brings it back.
            if (hasRole(plant, plant.chains[best.link], parts::Role::FreshTank)) {
                way.push_back(best);
                return way;
            }
            continue;
        }
        way.push_back(best);
        seen[static_cast<std::size_t>(to)] = 1;
        at = to;
    }
    return way;
}

bool startsReturn(const Plant& plant, const Plant::Chain& chain)
{
    return hasRole(plant, chain, parts::Role::Circulator) || hasRole(plant, chain, parts::Role::MotorValve);
}

void appendParts(const Plant& plant, const Hop& hop, std::vector<PartId>& ids)
{
    std::vector<PartId> in = plant.chains[hop.link].partsInOrder;
    if (!hop.forward) {
        std::reverse(in.begin(), in.end());
    }
    for (const PartId id : in) {
        if (ids.empty() || ids.back() != id) {  // a tee stands at the end of one link and the start of the next
            ids.push_back(id);
        }
    }
}

/// The outlet nearest (by water) to the join where the return leaves the hot line.
PartId nearestOutlet(const Plant& plant, int junction)
{
    std::vector<double> far(static_cast<std::size_t>(plant.junctions), 1e9);
    using Item = std::pair<double, int>;
    std::priority_queue<Item, std::vector<Item>, std::greater<>> open;
    far[junction] = 0;
    open.emplace(0, junction);
    PartId best = document::kNoPart;
    double bestVolume = 1e9;
    while (!open.empty()) {
        const auto [volume, at] = open.top();
        open.pop();
        if (volume > far[at] || volume > bestVolume) {
            continue;
        }
        for (const Plant::Chain& chain : plant.chains) {
            if (startsReturn(plant, chain)) {
                continue;
            }
            double held = 0;
            for (const thermal::Stretch& stretch : chain.stretches) {
                held += stretchVolume(stretch);
            }
            for (const bool forward : {true, false}) {
                if (startJunction(chain, forward) != at) {
                    continue;
                }
                const int to = endJunction(chain, forward);
                if (to >= 0) {
                    if (volume + held < far[to]) {
                        far[to] = volume + held;
                        open.emplace(far[to], to);
                    }
                    continue;
                }
                for (const PartId id : chain.partsInOrder) {
                    const PlantPart* part = plant.find(id);
                    if (part->model.outlet && part->model.outlet->hotPath >= 0
                        && part->places[part->model.outlet->hotPath].link
                               == static_cast<int>(&chain - plant.chains.data())
                        && volume + held < bestVolume) {
                        best = id;
                        bestVolume = volume + held;
                    }
                }
            }
        }
    }
    return best;
}

/// The part that is named for a way: the pipe on it, the longest.
PartId namedFor(const Plant& plant, const Plant::Chain& chain)
{
    PartId named = document::kNoPart;
    double longest = -1;
    for (std::size_t k = 0; k < chain.stretches.size(); ++k) {
        const PlantPart* part = plant.find(chain.stretchParts[k]);
        if (part->part->kind == "pipe_run" && chain.stretches[k].length_m > longest) {
            longest = chain.stretches[k].length_m;
            named = part->id;
        }
    }
    return named == document::kNoPart && !chain.partsInOrder.empty() ? chain.partsInOrder.front() : named;
}

/// What the control's flow sensor sees; the only one's, where none is named.
const PlantPart* meterOf(const Plant& plant)
{
    const auto sensors = plant.withRole(parts::Role::FlowSensor);
    for (const PlantPart* box : plant.withRole(parts::Role::Controller)) {
        for (const PlantPart* sensor : sensors) {
            if (box->model.controller && std::to_string(sensor->id) == box->model.controller->flowSensor) {
                return sensor;
            }
        }
    }
    return sensors.size() == 1 ? sensors.front() : nullptr;
}

/// Pumps, heater and meter told apart, and who lets water past the heater.
void tellFlowsApart(const Plant& plant, const network::Network& network, const HeaterPlace& heater,
                    std::span<const double> flows, LoopMap& map)
{
    constexpr double kSame = 1e-3;  // of the pumps' flow: the solver's own error
    LoopAnswer& answer = map.answer;
    const double throughHeater = std::max(0.0, heater.forward ? flows[heater.link] : -flows[heater.link]);
    const double pumped = pumpedFlow(plant, flows);
    answer.pumpFlow_m3s = pumped;
    const PlantPart* meter = meterOf(plant);
    const int metered = meter && !meter->places.empty() ? meter->places[0].link : -1;
    if (metered >= 0) {
        answer.meterFlow_m3s = std::abs(flows[metered]);
    }
    if (pumped <= kNothing_m3s || throughHeater >= (1 - kSame) * pumped) {
        return;
    }
    if (const int link = bypassLink(plant, network, flows, heater.link, heater.outlet, heater.inlet); link >= 0) {
        answer.bypass = namedFor(plant, plant.chains[link]);
        answer.bypassFlow_m3s = std::abs(flows[link]);
    }
    // Pumped water is counted where the meter is, else where all of it passes.
    map.countLink = metered;
    for (std::size_t l = 0; l < plant.chains.size() && map.countLink < 0; ++l) {
        if (std::abs(std::abs(flows[l]) - pumped) <= kSame * pumped) {
            map.countLink = static_cast<int>(l);
        }
    }
    if (map.countLink >= 0) {
        map.countForward = flows[map.countLink] >= 0;
    }
}

bool pumpStandsStill(const network::Network& network, const PlantPart& pump)
{
    const Place& place = pump.places[0];
    for (int e = 0; e < place.elementCount; ++e) {
        const auto* law = std::get_if<network::PumpLaw>(&network.elements(place.link)[place.firstElement + e].law);
        if (law && law->speed > 0) {
            return false;
        }
    }
    return true;
}

}  // namespace

double coldStart(const document::Drawing& drawing)
{
    for (const document::Case& script : drawing.cases) {
        for (const document::Action& action : script.actions) {
            if (action.kind == document::ActionKind::PressButton) {
                return script.start_C;
            }
        }
    }
    return drawing.cases.empty() ? 21.0 : drawing.cases.front().start_C;
}

LoopMap findLoop(const document::Drawing& drawing, const Plant& plant, double water_C)
{
    LoopMap map;
    LoopAnswer& answer = map.answer;
    answer.coldStart_C = water_C;
    for (const PlantPart* pump : plant.withRole(parts::Role::Circulator)) {
        answer.circulators.push_back(pump->id);
    }
    const auto heater = heaterOf(plant);
    if (heater) {
        answer.heater = heater->part->id;
        if (heater->part->model.tankless) {
            answer.activationFlow_m3s = heater->part->model.tankless->activationFlow_m3s;
            answer.holdFlow_m3s = heater->part->model.tankless->holdFlow_m3s;
        }
    }
    if (answer.circulators.empty()) {
        answer.reason = Message("No circulator is drawn, so there is no loop to run.");
        return map;
    }
    if (!heater) {
        answer.reason = Message("No water heater with both its pipes connected is drawn.");
        return map;
    }

    network::Network network = plant.makeNetwork();
    setAtRest(plant, network);
    const Supply supply = batterySupply(plant);
    setWater(network, water_C);
    WiringNet wiring;
    const network::Solution& solution = runLoop(plant, network, supply, &wiring);
    if (const int load = wiring.indexOf(answer.heater); load >= 0) {
        answer.heaterVolts = wiring.volts(load);
        answer.heaterLeastVolts = wiring.loads()[static_cast<std::size_t>(load)].minimumVolts;
    }
    const double throughHeater = heater->forward ? solution.flow_m3s[heater->link] : -solution.flow_m3s[heater->link];

    const std::vector<Hop> way =
        throughHeater > kNothing_m3s ? followFlow(plant, *heater, solution.flow_m3s) : std::vector<Hop>{};
    tellFlowsApart(plant, network, *heater, solution.flow_m3s, map);
    if (way.empty() && answer.bypass != document::kNoPart) {
        answer.exists = true;
        answer.flow_m3s = std::max(0.0, throughHeater);
        if (answer.activationFlow_m3s) {
            answer.flowMargin = *answer.flow_m3s / *answer.activationFlow_m3s;
        }
        answer.reason = Message(
            "The pumps move {0}, but it goes back through {1} and not through {2}.",
            {Measure{*answer.pumpFlow_m3s, Quantity::Flow}, drawing.find(answer.bypass)->tag, heater->part->part->tag});
        map.flowLink = heater->link;
        map.flowForward = heater->forward;
        map.countLink = map.countLink < 0 ? heater->link : map.countLink;
        return map;
    }
    if (way.empty()) {
        // Say what stands in the way: heater outlet -> pump, pump -> heater inlet.
        const PlantPart* pump = plant.find(answer.circulators.front());
        const Place& place = pump->places[0];
        const Plant::Chain& chain = plant.chains[place.link];
        const bool forward = !place.reversed;
        std::vector<Hop> full;
        const int suction = startJunction(chain, forward);
        const int delivery = endJunction(chain, forward);
        if (suction >= 0 && delivery >= 0) {
            const auto there = anyWay(plant, heater->outlet, suction, {heater->link});
            const auto back = anyWay(plant, delivery, heater->inlet, {heater->link});
            const bool reachesThere = !there.empty() || heater->outlet == suction;
            const bool reachesBack = !back.empty() || heater->inlet == delivery;
            if (reachesThere && reachesBack) {
                full = there;
                full.push_back({place.link, forward});
                full.insert(full.end(), back.begin(), back.end());
            }
        }
        answer.blockedBy = blockedPart(plant, network, full);
        const document::Part* blocking = drawing.find(answer.blockedBy);
        if (blocking) {
            answer.exists = true;
            answer.flow_m3s = 0;
            answer.reason = Message("{0} blocks the loop.", {blocking->tag});
            if (answer.activationFlow_m3s) {
                answer.flowMargin = 0;
            }
        } else if (full.empty()) {
            answer.reason =
                Message("No unbroken way leads from the heater through {0} and back to the heater.", {pump->part->tag});
        } else if (pumpStandsStill(network, *pump)) {
            answer.exists = true;
            answer.flow_m3s = 0;
            answer.blockedBy = pump->id;
            answer.reason = Message("{0} gets too little voltage to start ({1} at the battery).",
                                    {pump->part->tag, Measure{supply.volts, Quantity::Voltage}});
        } else {
            answer.exists = true;
            answer.flow_m3s = 0;
            answer.headUsedUp = true;
            const auto [check, opensAt_Pa] = stiffestCheck(plant, network, full);
            answer.blockedBy = check;
            answer.reason = check != document::kNoPart
                                ? Message("{0} opens at {1}: the pumps do not give that much.",
                                          {drawing.find(check)->tag, Measure{opensAt_Pa, Quantity::Pressure}})
                                : Message("The pumps' head is used up before water moves: check valves hold it back.");
        }
        return map;
    }

    answer.exists = true;
    answer.flow_m3s = throughHeater;
    if (answer.activationFlow_m3s) {
        answer.flowMargin = throughHeater / *answer.activationFlow_m3s;
    }

    // Hot way until the first link with a pump or a motorized valve; the rest is the return.
    bool returning = false;
    int at = heater->outlet;
    map.tapJunction = at;
    for (std::size_t i = 0; i < way.size(); ++i) {
        const Plant::Chain& chain = plant.chains[way[i].link];
        if (!returning && startsReturn(plant, chain)) {
            returning = true;
            map.tapJunction = at;
        }
        (returning ? map.returnWay : map.hotWay).push_back(way[i]);
        appendParts(plant, way[i], returning ? answer.returnPath : answer.hotPath);
        at = endJunction(chain, way[i].forward);
    }
    answer.returnTee = document::kNoPart;
    for (const PlantPart& part : plant.parts) {
        if (part.hubJunction == map.tapJunction
            || std::find(part.portJunction.begin(), part.portJunction.end(), map.tapJunction)
                   != part.portJunction.end()) {
            answer.returnTee = part.id;
            break;
        }
    }
    answer.tap = nearestOutlet(plant, map.tapJunction);
    answer.coldEntry = coldReturn(plant, answer).entry;
    if (const PlantPart* entry = plant.find(answer.coldEntry)) {
        map.coldJunction = entry->hubJunction;
    }

    // The link to read the loop's flow from: whole flow, on the return, best one with a flow sensor or valve.
    const auto rank = [&](const Plant::Chain& chain) {
        int score = 0;
        score += hasRole(plant, chain, parts::Role::FlowSensor) ? 8 : 0;
        score += hasRole(plant, chain, parts::Role::MotorValve) ? 4 : 0;
        score += hasRole(plant, chain, parts::Role::Circulator) ? 2 : 0;
        score += hasRole(plant, chain, parts::Role::CheckValve) ? 1 : 0;
        return score;
    };
    int bestScore = -1;
    for (const std::vector<Hop>* part : {&map.returnWay, &map.hotWay}) {
        for (const Hop& hop : *part) {
            const double flow = std::abs(solution.flow_m3s[hop.link]);
            const int score = rank(plant.chains[hop.link]);
            if (std::abs(flow - throughHeater) < 0.001 * throughHeater && score > bestScore) {
                bestScore = score;
                map.flowLink = hop.link;
                map.flowForward = hop.forward;
            }
        }
    }
    if (map.flowLink < 0) {
        map.flowLink = heater->link;
        map.flowForward = heater->forward;
    }
    if (map.countLink < 0) {
        map.countLink = map.flowLink;
        map.countForward = map.flowForward;
    }

    std::vector<Hop> around = way;
    around.push_back({heater->link, heater->forward});
    map.budget = headBudget(plant, network, around);
    map.budget.flow_m3s = throughHeater;
    answer.headBudget = map.budget.items;

    const auto flowAt = [&](double volt) {
        const network::Solution& there = runLoop(plant, network, {volt, 0});
        return std::max(0.0, heater->forward ? there.flow_m3s[heater->link] : -there.flow_m3s[heater->link]);
    };
    answer.flowLowVolts_m3s = flowAt(kLowVolts);
    answer.flowHighVolts_m3s = flowAt(kChargingVolts);
    return map;
}

}  // namespace tapward::study
