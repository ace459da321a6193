// SPDX-License-Identifier: GPL-3.0-or-later
#include "study/reach.h"

#include <utility>
#include <vector>

namespace tapward::study {

using document::PartId;

Reach reach(const Plant& plant, const PlantPart& from, std::size_t path,
            const std::function<bool(const PlantPart&)>& stops)
{
    Reach found;
    std::vector<int> waiting;
    std::set<std::pair<int, bool>> entered;

    // Along a chain from the part at `at` (exclusive) to one of its ends.
    const auto along = [&](int link, std::ptrdiff_t at, bool forward) {
        const Plant::Chain& chain = plant.chains[static_cast<std::size_t>(link)];
        const auto count = static_cast<std::ptrdiff_t>(chain.partsInOrder.size());
        for (at += forward ? 1 : -1; at >= 0 && at < count; at += forward ? 1 : -1) {
            const PartId id = chain.partsInOrder[static_cast<std::size_t>(at)];
            found.parts.insert(id);
            const PlantPart* part = plant.find(id);
            if (part && stops(*part)) {
                return;
            }
        }
        const int junction = forward ? chain.to : chain.from;
        if (junction >= 0 && found.junctions.insert(junction).second) {
            waiting.push_back(junction);
        }
    };

    const int start = from.places.at(path).link;
    if (start < 0) {
        return found;
    }
    const auto& order = plant.chains[static_cast<std::size_t>(start)].partsInOrder;
    for (std::size_t i = 0; i < order.size(); ++i) {
        if (order[i] == from.id) {
            along(start, static_cast<std::ptrdiff_t>(i), true);
            along(start, static_cast<std::ptrdiff_t>(i), false);
        }
    }
    std::vector<std::vector<int>> meeting(static_cast<std::size_t>(plant.junctions));  // chains, by junction
    for (int link = 0; link < static_cast<int>(plant.chains.size()); ++link) {
        const Plant::Chain& chain = plant.chains[static_cast<std::size_t>(link)];
        for (const int end : {chain.from, chain.to}) {
            if (end >= 0) {
                meeting[static_cast<std::size_t>(end)].push_back(link);
            }
        }
    }
    while (!waiting.empty()) {
        const int junction = waiting.back();
        waiting.pop_back();
        for (const int link : meeting[static_cast<std::size_t>(junction)]) {
            const Plant::Chain& chain = plant.chains[static_cast<std::size_t>(link)];
            if (chain.from == junction && entered.insert({link, true}).second) {
                along(link, -1, true);
            }
            if (chain.to == junction && entered.insert({link, false}).second) {
                along(link, static_cast<std::ptrdiff_t>(chain.partsInOrder.size()), false);
            }
        }
    }
    found.parts.erase(from.id);
    return found;
}

}  // namespace tapward::study
