// SPDX-License-Identifier: GPL-3.0-or-later
// Ways through the coach: where water could go, what bars it, how much it holds.
#include <algorithm>
#include <cmath>
#include <deque>

#include "study/loop_ways.h"

namespace tapward::study {
namespace {

using document::PartId;

}  // namespace

bool hasRole(const Plant& plant, const Plant::Chain& chain, parts::Role role)
{
    return std::any_of(chain.partsInOrder.begin(), chain.partsInOrder.end(),
                       [&](PartId id) { return plant.find(id)->model.role == role; });
}

std::vector<Hop> anyWay(const Plant& plant, int from, int to, const std::vector<int>& without)
{
    std::vector<Hop> by(static_cast<std::size_t>(plant.junctions), Hop{-1, true});
    std::vector<char> seen(static_cast<std::size_t>(plant.junctions), 0);
    std::deque<int> open{from};
    seen[from] = 1;
    while (!open.empty() && !seen[to]) {
        const int at = open.front();
        open.pop_front();
        for (std::size_t l = 0; l < plant.chains.size(); ++l) {
            const Plant::Chain& chain = plant.chains[l];
            const bool leftOut = std::find(without.begin(), without.end(), static_cast<int>(l)) != without.end();
            if (leftOut || chain.from < 0 || chain.to < 0) {
                continue;
            }
            for (const bool forward : {true, false}) {
                if (startJunction(chain, forward) == at && !seen[endJunction(chain, forward)]) {
                    seen[endJunction(chain, forward)] = 1;
                    by[endJunction(chain, forward)] = {static_cast<int>(l), forward};
                    open.push_back(endJunction(chain, forward));
                }
            }
        }
    }
    std::vector<Hop> way;
    if (!seen[to]) {
        return way;
    }
    for (int at = to; at != from;) {
        way.push_back(by[at]);
        at = startJunction(plant.chains[by[at].link], by[at].forward);
    }
    std::reverse(way.begin(), way.end());
    return way;
}

double pumpedFlow(const Plant& plant, std::span<const double> flows)
{
    std::vector<double> delivered(static_cast<std::size_t>(plant.junctions), 0.0);
    double straightOut = 0;  // into the open: a chain that ends in a tank
    for (std::size_t l = 0; l < plant.chains.size(); ++l) {
        const Plant::Chain& chain = plant.chains[l];
        const auto pump = std::find_if(plant.parts.begin(), plant.parts.end(), [&](const PlantPart& part) {
            return part.model.role == parts::Role::Circulator && !part.places.empty()
                   && part.places[0].link == static_cast<int>(l);
        });
        if (pump == plant.parts.end()) {
            continue;
        }
        const bool forward = !pump->places[0].reversed;
        const double flow = forward ? flows[l] : -flows[l];
        const int to = endJunction(chain, forward), from = startJunction(chain, forward);
        (to >= 0 ? delivered[static_cast<std::size_t>(to)] : straightOut) += flow;
        if (from >= 0) {
            delivered[static_cast<std::size_t>(from)] -= flow;
        }
    }
    double sum = std::max(0.0, straightOut);
    for (const double flow : delivered) {
        sum += std::max(0.0, flow);
    }
    return sum;
}

int bypassLink(const Plant& plant, const network::Network& network, std::span<const double> flows, int heaterLink,
               int hot, int cold)
{
    std::vector<int> without{heaterLink};
    for (std::size_t l = 0; l < plant.chains.size(); ++l) {
        using parts::Role;
        for (const Role role : {Role::Circulator, Role::MotorValve, Role::MixingValve, Role::Outlet}) {
            if (hasRole(plant, plant.chains[l], role)) {
                without.push_back(static_cast<int>(l));
                break;
            }
        }
        const auto elements = network.elements(static_cast<int>(l));
        if (std::any_of(elements.begin(), elements.end(),
                        [](const network::Element& element) { return network::isShut(element.law); })) {
            without.push_back(static_cast<int>(l));
        }
    }
    int found = -1;
    double least = -kNothing_m3s;
    for (const Hop& hop : anyWay(plant, hot, cold, without)) {
        const double along = hop.forward ? flows[hop.link] : -flows[hop.link];
        if (along < least) {
            found = hop.link;
            least = along;
        }
    }
    return found;
}

PartId blockedPart(const Plant& plant, const network::Network& network, const std::vector<Hop>& way)
{
    for (const Hop& hop : way) {
        const Plant::Chain& chain = plant.chains[hop.link];
        const auto elements = network.elements(hop.link);
        for (std::size_t i = 0; i < elements.size(); ++i) {
            const std::size_t e = hop.forward ? i : elements.size() - 1 - i;
            const auto* check = std::get_if<network::CheckLaw>(&elements[e].law);
            const bool against = elements[e].reversed == hop.forward;
            if ((check && against) || network::isShut(elements[e].law)) {
                return chain.elementParts[e];
            }
        }
    }
    return document::kNoPart;
}

std::pair<PartId, double> stiffestCheck(const Plant& plant, const network::Network& network,
                                        const std::vector<Hop>& way)
{
    std::pair<PartId, double> stiffest{document::kNoPart, 0};
    for (const Hop& hop : way) {
        const auto elements = network.elements(hop.link);
        for (std::size_t e = 0; e < elements.size(); ++e) {
            const auto* check = std::get_if<network::CheckLaw>(&elements[e].law);
            if (check && check->crack_Pa > stiffest.second) {
                stiffest = {plant.chains[hop.link].elementParts[e], check->crack_Pa};
            }
        }
    }
    return stiffest;
}

Message whyNoWater(const Plant& plant, const network::Network& network, const PlantPart& outlet)
{
    const auto inner = [&](int link) {
        const Plant::Chain& chain = plant.chains[link];
        return chain.from >= 0 ? chain.from : chain.to;
    };
    // A loop is no way to a tap: it would be its check valve that is named, which is meant to hold.
    std::vector<int> loops;
    for (std::size_t l = 0; l < plant.chains.size(); ++l) {
        if (hasRole(plant, plant.chains[l], parts::Role::Circulator)) {
            loops.push_back(static_cast<int>(l));
        }
    }
    // Its cold side may well be fed: the question is about the hot one.
    const int hotPath = outlet.model.outlet ? outlet.model.outlet->hotPath : -1;
    const Place& place = outlet.places[static_cast<std::size_t>(std::max(hotPath, 0))];
    bool anySupply = false;
    PartId blocking = document::kNoPart;
    for (const PlantPart& supply : plant.parts) {
        const parts::Role role = supply.model.role;
        if ((role != parts::Role::CitySupply && role != parts::Role::FreshTank) || supply.places.empty()) {
            continue;
        }
        anySupply = true;
        const int supplyLink = supply.places[0].link;
        if (place.link < 0 || inner(place.link) < 0 || supplyLink < 0 || inner(supplyLink) < 0) {
            continue;
        }
        // From the supply's own link through the joins to the outlet's link.
        std::vector<Hop> way{{supplyLink, plant.chains[supplyLink].from < 0}};
        std::vector<Hop> middle = anyWay(plant, inner(supplyLink), inner(place.link), loops);
        if (middle.empty()) {
            middle = anyWay(plant, inner(supplyLink), inner(place.link));
        }
        if (middle.empty() && inner(supplyLink) != inner(place.link)) {
            continue;
        }
        way.insert(way.end(), middle.begin(), middle.end());
        way.push_back({place.link, plant.chains[place.link].to < 0});
        const PartId here = blockedPart(plant, network, way);
        if (here == document::kNoPart || here == outlet.id) {
            return {};  // its own valve being shut (again) is no news
        }
        blocking = here;
    }
    if (blocking != document::kNoPart) {
        return Message("No water comes: {0} lets none through.", {plant.find(blocking)->part->tag});
    }
    return anySupply ? Message("No water comes: no supply is joined to this outlet.")
                     : Message("No water comes: no supply is drawn.");
}

std::optional<double> volumeOnTheWay(const Plant& plant, const thermal::Field& field, std::span<const double> flows,
                                     int fromJunction, int toLink, double toFraction)
{
    std::vector<double> held(static_cast<std::size_t>(plant.junctions), -1);
    std::deque<int> open{fromJunction};
    held[fromJunction] = 0;
    while (!open.empty()) {
        const int at = open.front();
        open.pop_front();
        for (std::size_t l = 0; l < plant.chains.size(); ++l) {
            const Plant::Chain& chain = plant.chains[l];
            for (const bool forward : {true, false}) {
                if (startJunction(chain, forward) != at) {
                    continue;
                }
                if (static_cast<int>(l) == toLink) {
                    return held[at] + field.volume(toLink) * (forward ? toFraction : 1 - toFraction);
                }
                const double leaving = forward ? flows[l] : -flows[l];
                const int to = endJunction(chain, forward);
                if (leaving > kNothing_m3s && to >= 0 && held[to] < 0) {
                    held[to] = held[at] + field.volume(static_cast<int>(l));
                    open.push_back(to);
                }
            }
        }
    }
    return std::nullopt;
}

}  // namespace tapward::study
