// SPDX-License-Identifier: GPL-3.0-or-later
#include "study/cold_return.h"

#include <algorithm>
#include <set>

#include "study/reach.h"

namespace tapward::study {
namespace {

using document::PartId;

/// The outlet would draw through this way: its cold side hangs on it.
bool drawsColdFrom(const Plant& plant, const PlantPart& outlet, const Reach& way)
{
    if (!outlet.model.outlet || outlet.model.outlet->coldPath < 0 || !way.has(outlet.id)) {
        return false;
    }
    const int link = outlet.places[static_cast<std::size_t>(outlet.model.outlet->coldPath)].link;
    if (link < 0) {
        return false;
    }
    const Plant::Chain& chain = plant.chains[static_cast<std::size_t>(link)];
    return way.junctions.contains(chain.from) || way.junctions.contains(chain.to)
           || std::any_of(chain.partsInOrder.begin(), chain.partsInOrder.end(),
                          [&](PartId id) { return id != outlet.id && way.has(id); });
}

std::vector<PartId> inOrder(const std::vector<std::vector<PartId>>& lists)
{
    std::set<PartId> all;
    for (const std::vector<PartId>& list : lists) {
        all.insert(list.begin(), list.end());
    }
    return {all.begin(), all.end()};
}

}  // namespace

ColdReturn coldReturn(const Plant& plant, const LoopAnswer& loop)
{
    ColdReturn answer;
    std::set<PartId> onLoop(loop.hotPath.begin(), loop.hotPath.end());
    onLoop.insert(loop.returnPath.begin(), loop.returnPath.end());
    onLoop.insert(loop.heater);
    const auto stops = [&](const PlantPart& part) {
        return onLoop.contains(part.id) || part.model.role == parts::Role::Outlet
               || part.model.role == parts::Role::CitySupply || part.model.role == parts::Role::DemandPump;
    };
    int joins = 0;
    PartId before = document::kNoPart;
    std::vector<std::vector<PartId>> outletsAt, filtersAt;
    for (const PartId id : loop.returnPath) {
        const PlantPart* part = plant.find(id);
        // A join shows up once for each of its two paths on the way.
        if (!part || id == before || part->places.size() < 3) {
            continue;
        }
        before = id;
        bool leadsToCold = false;
        std::vector<PartId> outlets, filters;
        for (std::size_t path = 0; path < part->places.size(); ++path) {
            if (part->places[path].link < 0) {
                continue;
            }
            const auto& order = plant.chains[static_cast<std::size_t>(part->places[path].link)].partsInOrder;
            if (std::any_of(order.begin(), order.end(),
                            [&](PartId other) { return other != id && onLoop.contains(other); })) {
                continue;  // the loop itself
            }
            const Reach way = reach(plant, *part, path, stops);
            const bool toSupply = std::any_of(way.parts.begin(), way.parts.end(), [&](PartId reached) {
                const PlantPart* other = plant.find(reached);
                return other
                       && (other->model.role == parts::Role::CitySupply
                           || other->model.role == parts::Role::DemandPump);
            });
            for (const PartId reached : way.parts) {
                const PlantPart* other = plant.find(reached);
                if (!other) {
                    continue;
                }
                if (drawsColdFrom(plant, *other, way)) {
                    leadsToCold = true;
                    outlets.push_back(reached);
                }
                // A filter on the way from the supply has fresh water only.
                if (!toSupply && document::kindOf(*other->part).field("cartridge")) {
                    filters.push_back(reached);
                }
            }
            leadsToCold = leadsToCold || toSupply;
        }
        if (leadsToCold) {
            answer.entry = joins == 0 ? id : answer.entry;
            ++joins;
            outletsAt.push_back(std::move(outlets));
            filtersAt.push_back(std::move(filters));
        }
    }
    answer.byColdLine = joins >= 2;
    if (!answer.byColdLine) {
        answer.entry = document::kNoPart;
    } else {
        answer.outlets = inOrder(outletsAt);
        answer.filters = inOrder(filtersAt);
    }
    return answer;
}

}  // namespace tapward::study
