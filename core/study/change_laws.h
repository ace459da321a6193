// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <variant>

#include "study/plant.h"

namespace tapward::study {

/// Changes the laws of one kind where a part stands in the network.
template <class LawKind, class Change>
inline void changeLaws(network::Network& network, const Place& place, Change change)
{
    if (place.link < 0) {
        return;
    }
    const auto elements = network.elements(place.link);
    for (int e = 0; e < place.elementCount; ++e) {
        if (auto* law = std::get_if<LawKind>(&elements[place.firstElement + e].law)) {
            change(*law);
        }
    }
}

template <class LawKind, class Change>
inline void changeLaws(network::Network& network, const PlantPart& part, Change change)
{
    for (const Place& place : part.places) {
        changeLaws<LawKind>(network, place, change);
    }
}

}  // namespace tapward::study
