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

void shownBy(Finding& finding, const study::HotPlace& heat)
{
    finding.caseName = heat.script.name;
    if (heat.searched) {
        finding.script = heat.script;
    }
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
