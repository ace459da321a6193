// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <span>
#include <string>
#include <vector>

#include "base/result.h"
#include "document/drawing.h"
#include "network/network.h"
#include "thermal/run.h"

namespace tapward::study {

/// Where one path of one part ended up in the chains.
struct Place {
    int link = -1;
    int firstElement = 0;    ///< of its laws in the link; meaningless when elementCount is 0
    int elementCount = 0;
    int stretch = -1;        ///< in the thermal run; -1 when the path holds no water
    int stretchesBefore = 0; ///< stretches ahead of it, seen from the link's `from` end
    bool reversed = false;   ///< the path's from-to runs against the link's
};

/// One present part with its model and the places of its paths.
struct PlantPart {
    document::PartId id = document::kNoPart;
    const document::Part* part = nullptr;   ///< into the drawing the plant was made from
    parts::PartModel model;
    std::vector<Place> places;              ///< one per model.paths
    std::vector<int> portJunction;          ///< per port: junction index, -1 inside a chain or unconnected
    int hubJunction = -1;                   ///< of a tee or mixer, -1 where the kind has no hub
};

/// Bound on the cells of water in a coach's tubes: six kilometres of tube at the default resolution.
inline constexpr double kMostCells = 40'000;

/// A drawing in one view, as chains of elements between junctions: the network and the thermal field are
/// built from the same chains, with the same indexes. Heaters stand alone in their link so that what
/// enters and leaves them is known.
struct Plant {
    struct Chain {
        int from = network::kOutside;       ///< junction or outside
        int to = network::kOutside;
        std::vector<network::Element> elements;
        std::vector<document::PartId> elementParts;     ///< the part each element belongs to
        std::vector<thermal::Stretch> stretches;
        std::vector<document::PartId> stretchParts;
        std::vector<document::PartId> partsInOrder;     ///< from -> to
    };

    int junctions = 0;
    std::vector<Chain> chains;
    std::vector<PlantPart> parts;           ///< sorted by id
    std::vector<document::PartId> openEnds; ///< parts with a port or pipe end that leads nowhere

    PlantPart* find(document::PartId id);
    const PlantPart* find(document::PartId id) const;
    /// Parts with this role, in id order.
    std::vector<const PlantPart*> withRole(parts::Role role) const;

    network::Network makeNetwork() const;
    /// On the grid asked for, coarser where that would be more than kMostCells.
    thermal::Field makeField(const thermal::Grid& grid) const;
    double tubeLength_m() const;  ///< of all tubes together
};

/// @return the plant, or a Problem when a part's own values make no model.
/// The drawing must outlive the plant.
Result<Plant> makePlant(const document::Drawing& drawing, document::View view);

}  // namespace tapward::study
