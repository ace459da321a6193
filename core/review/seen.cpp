// SPDX-License-Identifier: GPL-3.0-or-later
#include "review/seen.h"

#include <algorithm>

#include "document/references.h"

namespace tapward::review {

using document::PartId;

std::string tagOf(const Seen& seen, PartId id)
{
    const document::Part* part = seen.drawing.find(id);
    return part ? part->tag : "?";
}

const study::PlantPart* partCalled(const Seen& seen, const std::string& reference)
{
    return seen.after.find(document::namedPart(reference));
}

int presses(const document::Drawing& drawing, const std::string& caseName)
{
    const document::Case* found = drawing.findCase(caseName);
    if (!found) {
        return 0;
    }
    return static_cast<int>(
        std::count_if(found->actions.begin(), found->actions.end(),
                      [](const document::Action& action) { return action.kind == document::ActionKind::PressButton; }));
}

bool hasFault(const document::Drawing& drawing, const std::string& caseName)
{
    const document::Case* found = drawing.findCase(caseName);
    return found && std::any_of(found->actions.begin(), found->actions.end(), [](const document::Action& action) {
               return action.kind == document::ActionKind::StartFault;
           });
}

std::optional<Highest> highest(const Seen& seen, std::string_view scalarId, int leastPresses)
{
    std::optional<Highest> found;
    for (const study::CaseResult& result : seen.prediction.cases) {
        if (result.view != document::View::After || presses(seen.drawing, result.name) < leastPresses) {
            continue;
        }
        const study::Scalar* scalar = result.scalar(scalarId);
        if (scalar && scalar->value && (!found || *scalar->value > found->value)) {
            found = Highest{*scalar->value, result.name};
        }
    }
    return found;
}

Reach reach(const study::Plant& plant, const study::PlantPart& from, std::size_t path,
            const std::function<bool(const study::PlantPart&)>& stops)
{
    Reach found;
    std::vector<int> waiting;
    std::set<std::pair<int, bool>> entered;

    // Along a chain from the part at `at` (exclusive) to one of its ends.
    const auto along = [&](int link, std::ptrdiff_t at, bool forward) {
        const study::Plant::Chain& chain = plant.chains[static_cast<std::size_t>(link)];
        const auto count = static_cast<std::ptrdiff_t>(chain.partsInOrder.size());
        for (at += forward ? 1 : -1; at >= 0 && at < count; at += forward ? 1 : -1) {
            const PartId id = chain.partsInOrder[static_cast<std::size_t>(at)];
            found.parts.insert(id);
            const study::PlantPart* part = plant.find(id);
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
    while (!waiting.empty()) {
        const int junction = waiting.back();
        waiting.pop_back();
        for (int link = 0; link < static_cast<int>(plant.chains.size()); ++link) {
            const study::Plant::Chain& chain = plant.chains[static_cast<std::size_t>(link)];
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

int outletJunction(const study::Plant& plant, const study::PlantPart& heater)
{
    if (heater.places.empty() || heater.places.front().link < 0) {
        return network::kOutside;
    }
    // A heater's first path runs from its inlet to its outlet, alone in its chain.
    const study::Place& place = heater.places.front();
    const study::Plant::Chain& chain = plant.chains[static_cast<std::size_t>(place.link)];
    return place.reversed ? chain.from : chain.to;
}

std::vector<const study::PlantPart*> heaters(const study::Plant& plant)
{
    std::vector<const study::PlantPart*> found;
    for (const study::PlantPart& part : plant.parts) {
        if (part.model.role == parts::Role::Tankless || part.model.role == parts::Role::StorageHeater) {
            found.push_back(&part);
        }
    }
    return found;
}

}  // namespace tapward::review
