// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstddef>
#include <vector>

#include "thermal/exchange.h"
#include "thermal/run.h"

namespace tapward::thermal {

/// What one stretch brings into each cell of a group.
struct Piece {
    int stretch = 0;         ///< of its run
    double share = 0;        ///< of the stretch, per cell
    double heatShare = 0;    ///< of the heat put into it: the same, but of a tank all in its lowest layer
    bool tube = false;
    double bore_m = 0;            ///< of a tube or a coil
    double length_m = 0;          ///< its length on the water's way; 0 for a mixed body
    double heldMetal_m3 = 0;      ///< of the cell's volume: metal counted as water
    double filmArea_m2 = 0;  ///< inside
    double innerResistance = 0;   ///< K/W, from the inner surface to the first layer's mean
    double outerResistance = 0;   ///< K/W, from the last layer's mean through wall and insulation to the skin
    double skinDiameter_m = 0;
    double skinArea_m2 = 0;
    double givenLoss_W_K = 0;     ///< body loss, or a tube's measured loss from its last node; replaces the skin
    double bodyFilm_W_K = 0;      ///< body: water to metal; 0 for no metal
};

/// Cells side by side with the same contents: one exchange matrix.
struct Group {
    int run = 0;
    std::size_t firstCell = 0, cells = 0;
    std::size_t firstPiece = 0, pieces = 0;
    Ladder ladder;           ///< per cell; link[0] and loss follow the flow and the temperatures
    double volume_m3 = 0;    ///< per cell; with the water's worth of the metal that is one with it
    bool mixed = false;      ///< a part's body: its water is one temperature
};

/// Cells of a run through which water is shifted as one: a length of tube with what joined it, or one mixed
/// cell of a part's body. Between two lanes of a run lies a junction that nobody outside sees.
struct Lane {
    int run = 0;
    std::size_t firstCell = 0, cells = 0;
    int from = -1, to = -1;  ///< junctions, hidden ones included
    double volume_m3 = 0;
    double smallest_m3 = 0;
    bool mixed = false;
};

/// Cells of a tank that lie one above the other.
struct Layers {
    int run = 0, stretch = 0;
    std::size_t firstCell = 0, cells = 0;
    bool topFirst = false;
    double link_W_K = 0;  ///< between neighbours
    std::size_t cellAt(std::size_t up) const { return topFirst ? firstCell + cells - 1 - up : firstCell + up; }
};

struct RunCells {
    int from = -1, to = -1;
    std::vector<Stretch> stretches;
    std::vector<double> stretchVolume_m3;
    std::vector<double> stretchStart;  ///< volume fraction, stretch count + 1 values
    std::size_t firstCell = 0, cells = 0;
    std::size_t firstGroup = 0, groups = 0;
    std::size_t firstLane = 0, lanes = 0;
    double volume_m3 = 0;
    double tubeLength_m = 0;  ///< coils included
    double heldVolume_m3 = 0; ///< sum of the cells' volumes
};

/// Cuts the stretches of one run into cells; appends to groups and pieces.
void cutIntoCells(RunCells& run, int index, const Grid& grid, std::size_t firstCell, std::vector<Group>& groups,
                  std::vector<Piece>& pieces);

/// The tanks of a run that has its cells: stretches with a layerLink_W_K and two layers or more.
std::vector<Layers> layersIn(const RunCells& run, int index, const std::vector<Group>& groups,
                             const std::vector<Piece>& pieces);

/// Cuts a run that has its cells into lanes; `junctions` grows by the hidden ones.
void cutIntoLanes(RunCells& run, int index, const std::vector<Group>& groups, std::vector<Lane>& lanes, int& junctions);

}  // namespace tapward::thermal
