// SPDX-License-Identifier: GPL-3.0-or-later
// What a cell exchanges with its wall and its bay: films, sources, and the exact step of each group of cells.
#include <algorithm>
#include <cmath>

#include "thermal/field_work.h"
#include "thermal/film.h"

namespace tapward::thermal {

namespace {

constexpr double kFilmFlowTolerance = 0.01;    // films are reckoned again when the flow has changed by this,
constexpr double kFilmWaterTolerance_K = 2.0;  // ... the water's mean by this (about two per cent of film),
constexpr double kFilmSkinTolerance_K = 3.0;   // ... or the wall's by this (three per cent of the outside film)
constexpr double kBodyFilmFullFlow_m3s = 2e-5;
constexpr double kBodyFilmAtRest = 0.3;

}  // namespace

/// Shares the watts and the surroundings of the stretches out to the groups of a run.
void Field::Work::reckonSources(std::size_t run)
{
    const RunCells& cellsOf = runs[run];
    for (std::size_t g = cellsOf.firstGroup; g < cellsOf.firstGroup + cellsOf.groups; ++g) {
        GroupState& s = groupState[g];
        s.waterWatts = s.bodyWatts = 0;
        double weight = 0, weighted = 0;
        for (std::size_t p = groups[g].firstPiece; p < groups[g].firstPiece + groups[g].pieces; ++p) {
            const Piece& piece = pieces[p];
            const StretchState& stretch = stretchState[run][piece.stretch];
            (piece.bodyFilm_W_K > 0 ? s.bodyWatts : s.waterWatts) += stretch.watts * piece.share;
            // Where joined pieces lie in different bays, each counts by about what it loses.
            const double loss = 1e-9
                                + (piece.givenLoss_W_K > 0 ? piece.givenLoss_W_K
                                   : piece.tube            ? 10.0 * piece.skinArea_m2
                                                           : 0.0);
            weight += loss;
            weighted += loss * stretch.ambient;
        }
        s.ambient = weighted / weight;
        if (!s.hasSource && (s.waterWatts != 0 || s.bodyWatts != 0)) {
            s.hasSource = true;
            s.time.fill(0);
        }
    }
}

/// Films of a group at this flow; its propagators are void when a conductance changed.
void Field::Work::reckonFilms(std::size_t index, double flow)
{
    Group& group = groups[index];
    GroupState& s = groupState[index];
    Ladder& ladder = group.ladder;
    const double water = s.mean[0];
    const double skin = s.mean[ladder.nodes - 1];
    const bool sameInside =
        std::abs(flow - s.flow) <= kFilmFlowTolerance * s.flow && std::abs(water - s.water) <= kFilmWaterTolerance_K;
    const bool sameOutside = std::abs(skin - s.skin) <= kFilmSkinTolerance_K;
    if (sameInside && sameOutside)
        return;
    const bool walled = ladder.nodes > 1;
    const std::size_t end = group.firstPiece + group.pieces;
    if (!sameInside) {
        s.flow = flow;
        s.water = water;
        if (walled) {
            double link = 0;
            for (std::size_t p = group.firstPiece; p < end; ++p) {
                const Piece& piece = pieces[p];
                link += piece.tube ? 1.0
                                         / (1.0 / (insideFilm(flow, piece.bore_m, water) * piece.filmArea_m2)
                                            + piece.innerResistance)
                                   : piece.bodyFilm_W_K
                                         * (kBodyFilmAtRest
                                            + (1.0 - kBodyFilmAtRest) * std::min(1.0, flow / kBodyFilmFullFlow_m3s));
            }
            if (link != ladder.link[0]) {
                ladder.link[0] = link;
                s.time.fill(0);
            }
        }
    }
    if (sameOutside && walled)
        return;
    s.skin = skin;
    double loss = 0;
    for (std::size_t p = group.firstPiece; p < end; ++p) {
        const Piece& piece = pieces[p];
        if (!piece.tube || piece.givenLoss_W_K > 0) {
            loss += piece.givenLoss_W_K;
            if (!piece.tube)
                loss += stretchState[group.run][piece.stretch].extraLoss_W_K * piece.share;
            continue;
        }
        double before = piece.outerResistance;
        if (!walled)
            before += piece.innerResistance + 1.0 / (insideFilm(flow, piece.bore_m, water) * piece.filmArea_m2);
        // The skin is cooler than the wall by the drop through the insulation: a second round settles it.
        double skinCelsius = skin, outside = 0;
        for (int round = 0; round < 2; ++round) {
            outside = 1.0 / (outsideFilm(skinCelsius, s.ambient, piece.skinDiameter_m) * piece.skinArea_m2);
            if (before < 0.05 * outside)
                break;
            skinCelsius = s.ambient + (skin - s.ambient) * outside / (before + outside);
        }
        loss += 1.0 / (before + outside);
    }
    if (loss != ladder.loss) {
        ladder.loss = loss;
        s.time.fill(0);
    }
}

void Field::Work::reckonDispersion(std::size_t run, double flow)
{
    const RunCells& r = runs[run];
    RunState& s = runState[run];
    double mean = 0;
    for (std::size_t g = r.firstGroup; g < r.firstGroup + r.groups; ++g)
        mean += groupState[g].mean[0] * groups[g].volume_m3 * static_cast<double>(groups[g].cells);
    mean /= r.heldVolume_m3;
    if (std::abs(flow - s.filmFlow) <= 0.02 * s.filmFlow && std::abs(mean - s.filmMean) <= 3.0)
        return;
    s.filmFlow = flow;
    s.filmMean = mean;
    // Half-cell resistances in series between the centres; a mixed body passes none.
    double lastHalf = 0;
    for (std::size_t g = r.firstGroup; g < r.firstGroup + r.groups; ++g) {
        double length = 0, bore = 0, held = 0;
        for (std::size_t p = groups[g].firstPiece; p < groups[g].firstPiece + groups[g].pieces; ++p)
            if (pieces[p].length_m > 0) {
                length += pieces[p].length_m;
                bore = std::max(bore, pieces[p].bore_m);
                held += pieces[p].heldMetal_m3;
            }
        const double area = length > 0 ? (groups[g].volume_m3 - held) / length : 0.0;
        const double coefficient = length > 0 ? axialDispersion(flow, bore, r.tubeLength_m, mean) : 0.0;
        const double half = coefficient > 0 ? 0.5 * length / (area * coefficient) : 0.0;
        for (std::size_t c = groups[g].firstCell; c < groups[g].firstCell + groups[g].cells; ++c) {
            if (c > r.firstCell)
                dispersion[c - 1] = half > 0 && lastHalf > 0 ? 1.0 / (half + lastHalf) : 0.0;
            lastHalf = half;
        }
    }
    s.largest = 0;
    for (std::size_t c = r.firstCell; c < r.firstCell + r.cells; ++c) {
        const double before = c > r.firstCell ? dispersion[c - 1] : 0.0;
        const double after = c + 1 < r.firstCell + r.cells ? dispersion[c] : 0.0;
        s.largest = std::max(s.largest, (before + after) * inverseVolume[c]);
    }
}

void Field::Work::exchangeRun(std::size_t run, double flow, double time_s)
{
    const RunCells& r = runs[run];
    for (std::size_t g = r.firstGroup; g < r.firstGroup + r.groups; ++g) {
        reckonFilms(g, flow);
        Group& group = groups[g];
        GroupState& s = groupState[g];
        int slot = 0;
        while (slot < kSlots && s.time[slot] != time_s)
            ++slot;
        if (slot < kSlots) {
            if (slot == s.nextSlot)  // used again: the next one goes first
                s.nextSlot = (slot + 1) % kSlots;
        } else {
            slot = s.nextSlot;
            s.nextSlot = (s.nextSlot + 1) % kSlots;
            s.time[slot] = time_s;
            solveLadder(group.ladder, time_s, s.hasSource, propagators[g * kSlots + slot]);
        }
        double* nodesAt[kMostNodes];
        for (int n = 0; n < group.ladder.nodes; ++n)
            nodesAt[n] = node(n) + group.firstCell;
        double sums[kMostNodes];
        ledger.lost += exchange(propagators[g * kSlots + slot], group.ladder.nodes, nodesAt, group.cells, s.ambient,
                                s.waterWatts, s.bodyWatts, sums);
        ledger.sources += static_cast<double>(group.cells) * (s.waterWatts + s.bodyWatts) * time_s;
        const double share = 1.0 / static_cast<double>(group.cells);
        for (int n = 0; n < group.ladder.nodes; ++n)
            s.mean[n] = sums[n] * share;
    }
}

void Field::Work::stand(std::size_t run, double dt_s)
{
    RunState& s = runState[run];
    const bool settled = s.tubesOnly && s.stood >= kSettled_s;
    s.stood += dt_s;
    if (!settled) {
        exchangeRun(run, 0, dt_s);
        return;
    }
    s.owed += dt_s;
    if (s.owed >= 2.0 * kSettledStep_s) {
        // A long step at once; the odd rest of it is owed on.
        const double whole = std::floor(s.owed / kSettledStep_s) * kSettledStep_s;
        exchangeRun(run, 0, whole);
        s.owed -= whole;
    } else if (s.owed >= kSettledStep_s) {
        exchangeRun(run, 0, kSettledStep_s);
        s.owed -= kSettledStep_s;
    }
}

/// Does the exchange a standing run is owed.
void Field::Work::settle(std::size_t run)
{
    RunState& s = runState[run];
    if (s.owed > 0)
        exchangeRun(run, 0, s.owed);
    s.owed = 0;
}

}  // namespace tapward::thermal
