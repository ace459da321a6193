// SPDX-License-Identifier: GPL-3.0-or-later
#include "thermal/cells.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "thermal/film.h"
#include "water/water.h"

namespace tapward::thermal {

namespace {

using std::numbers::pi;
constexpr double kLeastVolume_m3 = 10e-6;
constexpr double kNoTube_m = 1e-6;            // shorter is none ...
constexpr double kNoWater_m3 = 1e-9;          // ... as is less water than this, and less metal: a cell's heat
constexpr double kNoMetal_J_K = 1e-3;         // capacities are divided by
constexpr double kMostCellsTogether = 8;      // so that the film follows the temperature along a long tube
constexpr double kTightCoupling_s = 0.01;     // time constant of a body with "no" film
constexpr double kLayerGrowth = 1.6;          // each layer this much thicker than the one inside it
constexpr double kOneLayerResistance = 2e-5;  // m² K/W; a film is 2e-4 and more, so metal needs no layers
constexpr double kNoVolume = 1e-3;            // of a cell: too little to be a cell of its own

struct Part {
    int stretch;
    double share;
    bool operator==(const Part&) const = default;
};
using CellParts = std::vector<Part>;

constexpr int kMostCoilCells = 128;
constexpr double kCoilCell = 0.4;  // of a tube's: a coil has no wall to reckon, and all the heat goes in there

bool isTube(const Stretch& s) { return s.length_m >= kNoTube_m; }
bool hasMetal(const Stretch& s) { return s.body_J_K >= kNoMetal_J_K; }
bool isTank(const Stretch& s) { return !isTube(s) && s.layerLink_W_K > 0; }
bool isCoil(const Stretch& s) { return !isTube(s) && s.bodyBore_m > 0; }
/// Metal that is as warm as its water and moves no heat of its own: it counts as more water.
bool isOneWithWater(const Stretch& s) { return isCoil(s) && s.bodyFilm_W_K <= 0; }
double boreArea(double bore) { return 0.25 * pi * bore * bore; }
double coilLength(const Stretch& s, double volume_m3) { return volume_m3 / boreArea(s.bodyBore_m); }

/// Lays the stretches out as cells, short pieces joined to their neighbours.
std::vector<CellParts> layOut(const RunCells& run, const Grid& grid)
{
    double area = 0, longest = 0;
    for (const Stretch& s : run.stretches)
        if (s.length_m > longest) {
            longest = s.length_m;
            area = boreArea(s.bore_m);
        }
    if (!(area > 0))
        area = boreArea(run.stretches.front().bore_m);
    const double cellVolume = grid.cell_m * area;

    std::vector<CellParts> cells;
    bool lastIsTube = false;
    CellParts waiting;
    double waitingVolume = 0;
    const auto close = [&] {
        if (waiting.empty())
            return;
        const bool joins = lastIsTube ? waitingVolume < 0.5 * cellVolume : waitingVolume < kNoVolume * cellVolume;
        if (joins && !cells.empty())
            cells.back().insert(cells.back().end(), waiting.begin(), waiting.end());
        else {
            cells.push_back(waiting);
            lastIsTube = false;
        }
        waiting.clear();
        waitingVolume = 0;
    };
    for (int k = 0; k < static_cast<int>(run.stretches.size()); ++k) {
        const Stretch& s = run.stretches[k];
        const double volume = run.stretchVolume_m3[k];
        const bool littleMetal = isTube(s) || s.body_J_K <= water::referenceVolumeHeat() * cellVolume;
        if (volume == 0 || (volume < 0.5 * cellVolume && littleMetal && s.bodyCells <= 1 && !isCoil(s))) {
            waiting.push_back({k, 1.0});
            waitingVolume += volume;
            if (waitingVolume >= 0.5 * cellVolume) {
                cells.push_back(waiting);
                lastIsTube = false;
                waiting.clear();
                waitingVolume = 0;
            }
            continue;
        }
        const int count =
            isTube(s)   ? std::max(1, static_cast<int>(std::lround(s.length_m / grid.cell_m)))
            : isCoil(s) ? static_cast<int>(std::clamp(std::round(coilLength(s, volume) / (kCoilCell * grid.cell_m)),
                                                      1.0, static_cast<double>(kMostCoilCells)))
                        : std::max(1, s.bodyCells);
        CellParts first;
        if (isTube(s) || waitingVolume < kNoVolume * cellVolume)
            first.swap(waiting);
        else
            close();
        waitingVolume = 0;
        for (int c = 0; c < count; ++c) {
            CellParts parts;
            if (c == 0)
                parts.swap(first);
            parts.push_back({k, 1.0 / count});
            cells.push_back(std::move(parts));
        }
        lastIsTube = isTube(s);
    }
    close();
    return cells;
}

/// Thickness of each layer, thin ones near the water where the first seconds of a front are decided.
std::vector<double> layerThickness(double wall, int layers)
{
    std::vector<double> thickness(layers);
    double sum = 0, next = 1;
    for (double& t : thickness) {
        t = next;
        sum += next;
        next *= kLayerGrowth;
    }
    for (double& t : thickness)
        t *= wall / sum;
    return thickness;
}

/// Radial profile in a tube wall that warms at an even rate with its outside closed: depth of temperature
/// ro² ln(r/ri) - (r² - ri²)/2, times heat rate / (2 pi k (ro² - ri²) L), below the inner surface.
/// This is its mean over the shell from a to b.
double meanDepth(double ri, double ro, double a, double b)
{
    const auto integral = [&](double r) {
        return ro * ro * (0.5 * r * r * std::log(r / ri) - 0.25 * r * r) - 0.125 * r * r * r * r
               + 0.25 * ri * ri * r * r;
    };
    return 2.0 * (integral(b) - integral(a)) / (b * b - a * a);
}

/// Adds a tube of this length to the ladder. Resistances between the layers' means are those of a wall that
/// warms at an even rate, so slow changes are exact for any number of layers (one layer has film and about
/// thickness/(3 k) before it); the steady loss is exact too.
Piece addTube(const Stretch& s, double length, int layers, bool filmOnly, Ladder& ladder)
{
    Piece piece;
    piece.tube = true;
    piece.bore_m = s.bore_m;
    piece.filmArea_m2 = pi * s.bore_m * length;
    const double outer = s.bore_m + 2.0 * s.wall_m;
    const double whole = s.wall_m > 0 && s.wallConductivity > 0 && !filmOnly
                             ? shellResistance(s.bore_m, outer, s.wallConductivity, length)
                             : 0.0;
    double inner = 0;
    if (layers > 0) {
        const std::vector<double> dx = layerThickness(s.wall_m, layers);
        const double ri = 0.5 * s.bore_m, ro = 0.5 * outer;
        const double perK = filmOnly ? 0.0 : 1.0 / (2.0 * pi * s.wallConductivity * length);
        double radius = ri, depthBefore = 0, inside = 0;
        for (int i = 0; i < layers; ++i) {
            const double next = i + 1 < layers ? radius + dx[i] : ro;
            ladder.capacity[i + 1] += pi * (next * next - radius * radius) * length * s.wallVolumeHeat;
            // Heat through the surface at this radius warms all that lies outside it.
            const double depth = meanDepth(ri, ro, radius, next);
            const double resistance = perK * (depth - depthBefore) / (ro * ro - radius * radius);
            if (i == 0)
                inner = resistance;
            else
                ladder.link[i] += 1.0 / std::max(resistance, 1e-12);
            inside += resistance;
            depthBefore = depth;
            radius = next;
        }
        piece.outerResistance = std::max(0.0, whole - inside);
    } else {
        inner = whole;  // only on the way of the loss
    }
    piece.innerResistance = inner;
    piece.skinDiameter_m = outer;
    if (s.loss_W_mK > 0) {
        const double standing = insideFilm(0, s.bore_m, 40);
        const double wallAndFilm =
            layers > 0 ? whole - piece.outerResistance + 1.0 / (standing * piece.filmArea_m2) : 0.0;
        const double all = 1.0 / (s.loss_W_mK * length);
        piece.givenLoss_W_K = 1.0 / std::max(all - wallAndFilm, 0.01 * all);
    } else if (s.insulation_m > 0) {
        piece.skinDiameter_m = outer + 2.0 * s.insulation_m;
        piece.outerResistance += shellResistance(outer, piece.skinDiameter_m, s.insulationConductivity, length);
    }
    piece.skinArea_m2 = pi * piece.skinDiameter_m * length;
    return piece;
}

Piece addBody(const Stretch& s, double share, Ladder& ladder)
{
    Piece piece;
    if (hasMetal(s) && !isOneWithWater(s)) {
        const double metal = s.body_J_K * share;
        ladder.capacity[1] += metal;
        piece.bodyFilm_W_K = s.bodyFilm_W_K > 0 ? s.bodyFilm_W_K * share : metal / kTightCoupling_s;
    }
    piece.givenLoss_W_K = std::max(0.0, s.loss_W_K) * share;
    return piece;
}

/// Layers worth having: one where the wall's resistance does not matter.
int layersOf(const Stretch& s, const Grid& grid)
{
    const int layers = std::clamp(grid.wallLayers, 0, kMostLayers);
    if (layers == 0 || !(s.wall_m > 0) || !(s.wallVolumeHeat > 0))
        return 0;
    if (grid.filmOnlyWall || s.wall_m < kOneLayerResistance * s.wallConductivity)
        return 1;
    return layers;
}

}  // namespace

void cutIntoCells(RunCells& run, int index, const Grid& grid, std::size_t firstCell, std::vector<Group>& groups,
                  std::vector<Piece>& pieces)
{
    const std::size_t count = run.stretches.size();
    run.stretchVolume_m3.assign(count, 0);
    run.stretchStart.assign(count + 1, 0);
    run.volume_m3 = 0;
    run.tubeLength_m = 0;
    for (std::size_t k = 0; k < count; ++k) {
        const Stretch& s = run.stretches[k];
        run.stretchVolume_m3[k] = isTube(s)                    ? boreArea(s.bore_m) * s.length_m
                                  : s.volume_m3 >= kNoWater_m3 ? s.volume_m3
                                                               : 0;
        run.volume_m3 += run.stretchVolume_m3[k];
        if (isTube(s))
            run.tubeLength_m += s.length_m;
        else if (isCoil(s))
            run.tubeLength_m += coilLength(s, run.stretchVolume_m3[k]);
    }
    if (run.volume_m3 < kNoWater_m3) {
        run.stretchVolume_m3[0] = kLeastVolume_m3;
        run.volume_m3 = kLeastVolume_m3;
    }
    for (std::size_t k = 0; k < count; ++k)
        run.stretchStart[k + 1] = run.stretchStart[k] + run.stretchVolume_m3[k] / run.volume_m3;
    run.stretchStart[count] = 1;

    const std::vector<CellParts> layout = layOut(run, grid);
    run.firstCell = firstCell;
    run.cells = layout.size();
    run.firstGroup = groups.size();
    for (std::size_t c = 0; c < layout.size(); ++c) {
        const CellParts& parts = layout[c];
        // A coil that is one with its water has no film to follow.
        const double most = isOneWithWater(run.stretches[parts.front().stretch]) ? kMostCoilCells : kMostCellsTogether;
        if (c > 0 && parts == layout[c - 1] && static_cast<double>(groups.back().cells) < most
            && !isTank(run.stretches[parts.back().stretch])) {
            ++groups.back().cells;
            continue;
        }
        Group group;
        group.run = index;
        group.firstCell = firstCell + c;
        group.cells = 1;
        group.firstPiece = pieces.size();
        group.pieces = parts.size();
        int layers = 0;
        for (const Part& part : parts) {
            const Stretch& s = run.stretches[part.stretch];
            layers = std::max(layers, isTube(s) ? layersOf(s, grid) : (hasMetal(s) && !isOneWithWater(s) ? 1 : 0));
        }
        group.ladder.nodes = 1 + layers;
        for (const Part& part : parts) {
            const Stretch& s = run.stretches[part.stretch];
            group.volume_m3 += run.stretchVolume_m3[part.stretch] * part.share;
            const double metal_m3 =
                isOneWithWater(s) ? std::max(0.0, s.body_J_K) * part.share / water::referenceVolumeHeat() : 0.0;
            group.volume_m3 += metal_m3;
            // All tubes of a joined cell share its layers; a wall without heat lies between water and bay.
            const bool heatInWall = isTube(s) && layersOf(s, grid) > 0;
            Piece piece = isTube(s) ? addTube(s, s.length_m * part.share, heatInWall ? layers : 0, grid.filmOnlyWall,
                                              group.ladder)
                                    : addBody(s, part.share, group.ladder);
            piece.stretch = part.stretch;
            piece.share = part.share;
            piece.heatShare = part.share;
            if (isTank(s)) {
                const bool first = c == 0 || layout[c - 1].back().stretch != part.stretch;
                const bool last = c + 1 == layout.size() || layout[c + 1].back().stretch != part.stretch;
                piece.heatShare = (s.topFirst ? last : first) ? 1 : 0;
            }
            piece.heldMetal_m3 = metal_m3;
            if (isTube(s)) {
                piece.length_m = s.length_m * part.share;
            } else if (isCoil(s)) {
                piece.bore_m = s.bodyBore_m;
                piece.length_m = coilLength(s, run.stretchVolume_m3[part.stretch]) * part.share;
            }
            pieces.push_back(piece);
        }
        group.ladder.capacity[0] = water::referenceVolumeHeat() * group.volume_m3;
        group.mixed = std::none_of(parts.begin(), parts.end(), [&](const Part& part) {
            return isTube(run.stretches[part.stretch]) || isCoil(run.stretches[part.stretch]);
        });
        groups.push_back(group);
    }
    run.heldVolume_m3 = 0;
    for (std::size_t g = run.firstGroup; g < groups.size(); ++g)
        run.heldVolume_m3 += groups[g].volume_m3 * static_cast<double>(groups[g].cells);
    run.groups = groups.size() - run.firstGroup;
}

std::vector<Layers> layersIn(const RunCells& run, int index, const std::vector<Group>& groups,
                             const std::vector<Piece>& pieces)
{
    std::vector<Layers> found;
    for (std::size_t k = 0; k < run.stretches.size(); ++k) {
        if (!isTank(run.stretches[k]))
            continue;
        Layers tank{index, static_cast<int>(k), 0, 0, run.stretches[k].topFirst, run.stretches[k].layerLink_W_K};
        for (std::size_t g = run.firstGroup; g < run.firstGroup + run.groups; ++g) {
            const Piece* own = pieces.data() + groups[g].firstPiece;
            if (std::none_of(own, own + groups[g].pieces, [&](const Piece& p) { return p.stretch == tank.stretch; }))
                continue;
            if (tank.cells == 0)
                tank.firstCell = groups[g].firstCell;
            tank.cells += groups[g].cells;
        }
        if (tank.cells > 1)
            found.push_back(tank);
    }
    return found;
}

void cutIntoLanes(RunCells& run, int index, const std::vector<Group>& groups, std::vector<Lane>& lanes, int& junctions)
{
    run.firstLane = lanes.size();
    for (std::size_t g = run.firstGroup; g < run.firstGroup + run.groups; ++g) {
        const Group& group = groups[g];
        const bool tubeGoesOn = lanes.size() > run.firstLane && !lanes.back().mixed && !group.mixed;
        if (tubeGoesOn) {
            lanes.back().cells += group.cells;
            lanes.back().volume_m3 += static_cast<double>(group.cells) * group.volume_m3;
            lanes.back().smallest_m3 = std::min(lanes.back().smallest_m3, group.volume_m3);
            continue;
        }
        const std::size_t each = group.mixed ? 1 : group.cells;
        for (std::size_t c = 0; c < group.cells; c += each) {
            Lane lane;
            lane.run = index;
            lane.firstCell = group.firstCell + c;
            lane.cells = each;
            lane.volume_m3 = static_cast<double>(each) * group.volume_m3;
            lane.smallest_m3 = group.volume_m3;
            lane.mixed = group.mixed;
            lanes.push_back(lane);
        }
    }
    run.lanes = lanes.size() - run.firstLane;
    int from = run.from;
    for (std::size_t l = run.firstLane; l < lanes.size(); ++l) {
        lanes[l].from = from;
        from = l + 1 < lanes.size() ? junctions++ : run.to;
        lanes[l].to = from;
    }
}

}  // namespace tapward::thermal
