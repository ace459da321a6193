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
constexpr double kSameLink = 0.002;  // what changes a conductance by less than this changes no propagator
constexpr double kSameLoss = 0.005;
constexpr double kLeastDispersion = 0.01;  // of the axial one, where a step spreads more than the tube does
constexpr double kBodyFilmFullFlow_m3s = 2e-5;
constexpr double kBodyFilmAtRest = 0.3;

}  // namespace

/// Shares the watts and the surroundings of the stretches out to the groups of a run.
void Field::Work::reckonSources(std::size_t run)
{
    const RunCells& cellsOf = runs[run];
    runState[run].heated = runState[run].coil
                           && std::any_of(stretchState[run].begin(), stretchState[run].end(),
                                          [](const StretchState& s) { return s.watts != 0; });
    for (std::size_t g = cellsOf.firstGroup; g < cellsOf.firstGroup + cellsOf.groups; ++g) {
        GroupState& s = groupState[g];
        s.waterWatts = s.bodyWatts = 0;
        double weight = 0, weighted = 0;
        for (std::size_t p = groups[g].firstPiece; p < groups[g].firstPiece + groups[g].pieces; ++p) {
            const Piece& piece = pieces[p];
            const StretchState& stretch = stretchState[run][piece.stretch];
            (piece.bodyFilm_W_K > 0 ? s.bodyWatts : s.waterWatts) += stretch.watts * piece.heatShare;
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
            if (std::abs(link - ladder.link[0]) > kSameLink * ladder.link[0]) {
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
    if (std::abs(loss - ladder.loss) > kSameLoss * ladder.loss) {
        ladder.loss = loss;
        s.time.fill(0);
    }
}

/// Heat that waits in the wall while its water goes on is spread along the tube. Taken in steps, water and wall by turns,
/// that spread is the trapezoidal sum over steps of how much of the water's heat is in the water still (the propagator's
/// first entry, E(t)), where the integral over time is meant: so much is known to be too much, m²/s. From E at half a
/// step and a whole one, by Simpson's rule, the later steps as a geometric series.
double Field::Work::splitDispersion(std::size_t group, double speed_m_s, double dt_s) const
{
    const GroupState& s = groupState[group];
    if (groups[group].ladder.nodes < 2 || s.time[s.slot] != dt_s)
        return 0;
    const double half = propagator(group, s.slot, Span::Half).e[0], whole = propagator(group, s.slot, Span::Whole).e[0];
    const double first = 1.0 - half, second = half - whole;
    if (!(first > 1e-9) || !(second < first))
        return 0;
    const double ratio = second / first;
    return speed_m_s * speed_m_s * dt_s / 3.0 * (first - second) / (1.0 - ratio * ratio);
}

void Field::Work::reckonDispersion(std::size_t run, double flow, double dt_s)
{
    const RunCells& r = runs[run];
    RunState& s = runState[run];
    double mean = 0;
    for (std::size_t g = r.firstGroup; g < r.firstGroup + r.groups; ++g)
        mean += groupState[g].mean[0] * groups[g].volume_m3 * static_cast<double>(groups[g].cells);
    mean /= r.heldVolume_m3;
    const bool sameWater = std::abs(flow - s.filmFlow) <= 0.02 * s.filmFlow && std::abs(mean - s.filmMean) <= 3.0;
    if (sameWater && s.dispersionStep == dt_s)
        return;
    s.dispersionStep = dt_s;
    if (!sameWater) {
        s.filmFlow = flow;
        s.filmMean = mean;
    }
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
        double half = 0;
        if (length > 0) {
            const double area = (groups[g].volume_m3 - held) / length;
            if (!sameWater)
                groupState[g].axial = axialDispersion(flow, bore, r.tubeLength_m, mean);
            const double coefficient = std::max(groupState[g].axial - splitDispersion(g, flow / area, dt_s),
                                                kLeastDispersion * groupState[g].axial);
            half = coefficient > 0 ? 0.5 * length / (area * coefficient) : 0.0;
        }
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

void Field::Work::exchangeRun(std::size_t run, double flow, double step_s, Span span)
{
    const RunCells& r = runs[run];
    const double time_s = span == Span::Half ? 0.5 * step_s : step_s;
    for (std::size_t g = r.firstGroup; g < r.firstGroup + r.groups; ++g) {
        reckonFilms(g, flow);
        Group& group = groups[g];
        GroupState& s = groupState[g];
        int slot = 0;
        while (slot < kSlots && s.time[slot] != step_s)
            ++slot;
        if (slot < kSlots) {
            if (slot == s.nextSlot)  // used again: the next one goes first
                s.nextSlot = (slot + 1) % kSlots;
        } else {
            slot = s.nextSlot;
            s.nextSlot = (s.nextSlot + 1) % kSlots;
            s.time[slot] = step_s;
            Propagator* pair = propagators.data() + (g * kSlots + static_cast<std::size_t>(slot)) * 2;
            solveLadder(group.ladder, step_s, s.hasSource, pair[0], pair[1]);
        }
        s.slot = slot;
        double* nodesAt[kMostNodes];
        for (int n = 0; n < group.ladder.nodes; ++n)
            nodesAt[n] = node(n) + group.firstCell;
        double sums[kMostNodes];
        ledger.lost += exchange(propagator(g, slot, span), group.ladder.nodes, nodesAt, group.cells, s.ambient,
                                s.waterWatts, s.bodyWatts, sums);
        ledger.sources += static_cast<double>(group.cells) * (s.waterWatts + s.bodyWatts) * time_s;
        const double share = 1.0 / static_cast<double>(group.cells);
        for (int n = 0; n < group.ladder.nodes; ++n)
            s.mean[n] = sums[n] * share;
    }
}

/// The half of a step's exchange before its water is moved. Tubes keep the half after it for the next step, so that
/// two halves become one whole; whoever reads in between sees it done (waterNow(), settle()).
void Field::Work::startMoving(std::size_t run, double flow, double dt_s)
{
    RunState& s = runState[run];
    s.stood = 0;
    s.asleep = false;
    if (s.owedHalf == dt_s && s.owed == 0) {
        exchangeRun(run, flow, dt_s, Span::Whole);
    } else {
        settle(run);
        exchangeRun(run, flow, dt_s, Span::Half);
    }
    s.owedHalf = 0;
}

void Field::Work::endMoving(std::size_t run, double flow, double dt_s)
{
    if (runState[run].defers) {
        runState[run].owedHalf = dt_s;
        runState[run].filmsAt = flow;
    } else {
        exchangeRun(run, flow, dt_s, Span::Half);
    }
}

void Field::Work::stand(std::size_t run, double dt_s)
{
    RunState& s = runState[run];
    if (s.asleep)
        return;
    if (s.owedHalf > 0)
        settle(run);
    const bool settled = s.defers && s.stood >= kSettled_s;
    s.stood += dt_s;
    if (!settled) {
        exchangeRun(run, 0, dt_s, Span::Whole);
        return;
    }
    s.owed += dt_s;
    if (s.owed >= 2.0 * kSettledStep_s) {
        // A long step at once; the odd rest of it is owed on.
        const double whole = std::floor(s.owed / kSettledStep_s) * kSettledStep_s;
        exchangeRun(run, 0, whole, Span::Whole);
        s.owed -= whole;
    } else if (s.owed >= kSettledStep_s) {
        exchangeRun(run, 0, kSettledStep_s, Span::Whole);
        s.owed -= kSettledStep_s;
    }
}

/// Layers of a tank: heat goes from each to its neighbours, then what is warmer than the water above it rises and mixes
/// with it, until no layer is. Both keep the heat there is.
void Field::Work::layTanks(double dt_s)
{
    double* t = node(0);
    for (const Layers& tank : tanks) {
        const double most = tank.link_W_K / (rhoC * volume[tank.firstCell]);  // layers of a tank are alike
        const int parts = std::max(1, static_cast<int>(std::ceil(4.0 * most * dt_s)));
        const double share = most * dt_s / parts;
        for (int p = 0; p < parts; ++p) {
            double below = 0;  // K that came up into the layer at hand
            for (std::size_t up = 0; up < tank.cells; ++up) {
                double& own = t[tank.cellAt(up)];
                const double rises = up + 1 < tank.cells ? share * (own - t[tank.cellAt(up + 1)]) : 0;
                own += below - rises;
                below = rises;
            }
        }
        std::size_t pools = 0;
        for (std::size_t up = 0; up < tank.cells; ++up) {
            const std::size_t c = tank.cellAt(up);
            poolHeat[pools] = t[c] * volume[c];
            poolVolume[pools] = volume[c];
            poolEnd[pools] = up + 1;
            while (pools > 0 && poolHeat[pools - 1] * poolVolume[pools] > poolHeat[pools] * poolVolume[pools - 1]) {
                poolHeat[pools - 1] += poolHeat[pools];
                poolVolume[pools - 1] += poolVolume[pools];
                poolEnd[pools - 1] = poolEnd[pools];
                --pools;
            }
            ++pools;
        }
        std::size_t up = 0;
        for (std::size_t p = 0; p < pools; ++p) {
            const bool alone = poolEnd[p] == up + 1;
            for (; up < poolEnd[p]; ++up)
                if (!alone)
                    t[tank.cellAt(up)] = poolHeat[p] / poolVolume[p];
        }
    }
}

/// Does the exchange a run is owed.
void Field::Work::settle(std::size_t run)
{
    RunState& s = runState[run];
    const double half = s.owedHalf, rest = s.owed;
    s.owed = s.owedHalf = 0;
    if (half > 0)
        exchangeRun(run, s.filmsAt, half, Span::Half);
    if (rest > 0)
        exchangeRun(run, 0, rest, Span::Whole);
}

/// A cell's water with the exchange it is owed: of half a step exactly, of standing water evenly over the time.
double Field::Work::waterNow(std::size_t cell) const
{
    const std::size_t g = groupOf[cell];
    const Group& group = groups[g];
    const GroupState& s = groupState[g];
    const RunState& run = runState[group.run];
    const double now = node(0)[cell];
    if (run.owedHalf <= 0 && run.owed <= 0)
        return now;
    const bool half = run.owedHalf > 0;
    const Propagator& p = propagator(g, s.slot, half ? Span::Half : Span::Whole);
    double after = p.leak[0] * s.ambient;
    for (int n = 0; n < group.ladder.nodes; ++n)
        after += p.e[static_cast<std::size_t>(n)] * node(n)[cell];
    if (half)
        return after;
    return s.time[s.slot] > 0 ? now + std::min(run.owed / s.time[s.slot], 1.0) * (after - now) : now;
}

}  // namespace tapward::thermal
