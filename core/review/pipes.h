// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstddef>
#include <functional>
#include <vector>

#include "document/drawing.h"
#include "study/plant.h"

namespace tapward::review {

/// The coach's plumbing piece by piece, with heights: what water, air or antifreeze can do where.
struct Pipes {
    static constexpr int kOutside = -1;

    /// One part between two places of the plumbing (a tee or a mixer is one piece per leg).
    struct Piece {
        int u, v;                       ///< places; kOutside for the open air or a supply
        const study::PlantPart* part;
        int link = -1;                  ///< chain of the plant
        std::size_t path = 0;           ///< of the part's model
        double volume_m3 = 0;           ///< water in it
        bool isPipe = false;
        bool shut = false;              ///< as it stands at rest: a shut valve, a closed tap
        bool uToV = true, vToU = true;  ///< what check valves and pump valves let pass; shut ones count as open
        int other(int place) const { return place == u ? v : u; }
        bool leads(int from) const { return from == u ? uToV : vToU; }
    };

    std::vector<Piece> pieces;
    std::vector<double> height_m;       ///< per place
    std::vector<std::vector<int>> at;   ///< pieces at a place

    /// Places reached from some, along the way water may take. `bars` keeps a piece out.
    std::vector<char> reached(const std::vector<int>& from, const std::function<bool(const Piece&)>& bars) const;
    /// Places where a supply enters: city inlet, fresh tank.
    std::vector<int> supplies() const;
    /// The first piece of a part, nullptr when it holds no water path.
    const Piece* find(document::PartId id) const;
};

/// Motorized valves and hand valves as they stand when no run is on, taps and drains shut.
Pipes pipesOf(const document::Drawing& drawing, const study::Plant& plant);

}  // namespace tapward::review
