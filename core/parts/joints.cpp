// SPDX-License-Identifier: GPL-3.0-or-later
#include "parts/joints.h"

#include <algorithm>

namespace tapward::parts {

network::FittingFamily fittingFamily(const Values& values)
{
    const std::string& id = values.text("fittings");
    if (id == "polymer_insert") {
        return network::FittingFamily::PolymerInsert;
    }
    if (id == "expansion") {
        return network::FittingFamily::Expansion;
    }
    if (id == "soldered") {
        return network::FittingFamily::Soldered;
    }
    return network::FittingFamily::BrassInsert;
}

Text fittingsTitle(const Values& values)
{
    const std::string& id = values.text("fittings");
    for (const Choice& choice : values.kind().field("fittings")->choices) {
        if (choice.id == id) {
            return choice.title;
        }
    }
    return {};
}

}  // namespace tapward::parts
