// SPDX-License-Identifier: GPL-3.0-or-later
#include "thermal/run.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdint>

#include "thermal/cells.h"
#include "thermal/exchange.h"
#include "thermal/film.h"
#include "thermal/remap.h"
#include "water/water.h"

namespace tapward::thermal {

namespace {

constexpr double kRestShare = 1e-9;          // of a run's volume per step: below it the water stands
constexpr double kFilmFlowTolerance = 0.005; // films are reckoned again when the flow has changed by this,
constexpr double kFilmWaterTolerance_K = 0.5;  // ... the water's mean by this (about half a per cent of film),
constexpr double kFilmSkinTolerance_K = 1.0;   // ... or the wall's by this
constexpr double kBodyFilmFullFlow_m3s = 2e-5;
constexpr double kBodyFilmAtRest = 0.3;
constexpr int kSlots = 3;                    // propagators kept per group: whole step, half step, an odd one
constexpr int kMostParts = 1 << 20;

/// What a group remembers between steps.
struct GroupState {
    double ambient = 21;
    double waterWatts = 0, bodyWatts = 0;    // per cell
    bool hasSource = false;                  // ever
    double flow = -1, water = 0, skin = 0;   // at the last reckoning of the films
    std::array<double, kMostNodes> mean{};   // of each node at the last exchange
    std::array<double, kSlots> time{};       // of each propagator; 0 = empty
    int nextSlot = 0;
};

struct RunState {
    double supply = 20;
    bool moving = false, forward = true;
    double filmFlow = -1, filmMean = 0;
    double largest = 0;         // of dispersion, 1/s
};

struct LaneState {
    bool moving = false, forward = true;
    double shift = 0;           // m³ in this step or part of it
    double outHeat = 0;         // K m³ that left in this step or part of it
    double left = 0;            // K m³ that left in the whole step
    double leaving = 20;        // mean of it
    double outflow = 20;        // mean of what left last
    double inflow = 20;         // what came in last
    double beyondVolume = 0;    // m³ that left last, while the flow keeps its direction
    bool beyondForward = true;
    bool evaluated = false;
    bool explicitly = false;    // a mixed cell that broke a ring: what leaves is what was in it
};

struct StretchState {
    double watts = 0;
    double ambient = 21;
};

}  // namespace

struct Field::Work {
    struct Junction {
        double temperature = 20;           // of the last part of a step
        double shown = 20;                 // mean of the last step with flow
        double mixedVolume = 0, mixedHeat = 0;
        double volumeIn = 0, heatIn = 0, volumeOut = 0;
        int pending = 0;
    };

    Grid grid;
    double rhoC = water::referenceVolumeHeat();
    std::vector<RunCells> runs;
    std::vector<RunState> runState;
    std::size_t seenJunctions = 0;       // those after are hidden, between lanes of a run
    std::vector<Junction> junctions;
    std::vector<Lane> lanes;
    std::vector<LaneState> state;
    std::vector<std::size_t> lanesAt;    // lanes with an end at junction j: lanesAt[lanesAtStart[j] ...]
    std::vector<std::size_t> lanesAtStart;
    std::vector<Group> groups;
    std::vector<GroupState> groupState;
    std::vector<Piece> pieces;
    std::vector<Propagator> propagators;  // kSlots per group
    std::vector<std::vector<StretchState>> stretchState;
    int nodes = 1;                        // most of any group
    std::size_t cells = 0;
    std::vector<double> temperature;      // nodes x cells: water, then the layers
    std::vector<double> volume, inverseVolume;
    std::vector<double> dispersion;       // m³/s between cell i and i + 1
    std::vector<double> slope, turned, turnedVolume, turnedInverse, scratch;
    std::vector<std::size_t> ready;
    std::vector<char> mixedCell;
    Ledger ledger;

    double* node(int n) { return temperature.data() + static_cast<std::size_t>(n) * cells; }
    const double* node(int n) const { return temperature.data() + static_cast<std::size_t>(n) * cells; }

    void startLedger();
    double stored() const;
    void noteMeans(std::size_t run);
    void reckonSources(std::size_t run);
    void reckonFilms(std::size_t group, double flow);
    void reckonDispersion(std::size_t run, double flow);
    void exchangeRun(std::size_t run, double flow, double time_s);
    void advect(double dt_s);
    bool orderExists(double share);
    void prepareSlopes(std::size_t lane);
    void evaluate(std::size_t lane, double inletCelsius);
    void move(std::size_t lane, double dt_s);
    double inletOf(std::size_t lane) const;
    bool dependsOnInlet(std::size_t lane) const;
    int upstream(std::size_t lane) const { return state[lane].forward ? lanes[lane].from : lanes[lane].to; }
    int downstream(std::size_t lane) const { return state[lane].forward ? lanes[lane].to : lanes[lane].from; }
    double* flowOrder(std::vector<double>& turnedOnes, std::vector<double>& straight, std::size_t lane)
    {
        return (state[lane].forward ? straight : turnedOnes).data() + lanes[lane].firstCell;
    }
    std::size_t lastLane(std::size_t run) const
    {
        return runState[run].forward ? runs[run].firstLane + runs[run].lanes - 1 : runs[run].firstLane;
    }
};

Field::Field() : m(std::make_unique<Work>()) {}
Field::~Field() = default;
Field::Field(Field&&) noexcept = default;
Field& Field::operator=(Field&&) noexcept = default;

int Field::addJunction()
{
    return static_cast<int>(m->seenJunctions++);
}

int Field::addRun(int from, int to, std::vector<Stretch> stretches)
{
    RunCells run;
    run.from = from;
    run.to = to;
    if (stretches.empty())
        stretches.emplace_back();
    run.stretches = std::move(stretches);
    m->runs.push_back(std::move(run));
    return static_cast<int>(m->runs.size()) - 1;
}

void Field::prepare(const Grid& grid)
{
    Work& w = *m;
    w.grid = grid;
    w.groups.clear();
    w.pieces.clear();
    w.lanes.clear();
    w.cells = 0;
    int junctions = static_cast<int>(w.seenJunctions);
    for (std::size_t r = 0; r < w.runs.size(); ++r) {
        cutIntoCells(w.runs[r], static_cast<int>(r), grid, w.cells, w.groups, w.pieces);
        w.cells += w.runs[r].cells;
        cutIntoLanes(w.runs[r], static_cast<int>(r), w.groups, w.lanes, junctions);
    }
    w.junctions.assign(static_cast<std::size_t>(junctions), {});
    w.nodes = 1;
    for (const Group& g : w.groups)
        w.nodes = std::max(w.nodes, g.ladder.nodes);
    w.temperature.assign(static_cast<std::size_t>(w.nodes) * w.cells, 20.0);
    w.volume.assign(w.cells, 0);
    w.mixedCell.assign(w.cells, 0);
    w.inverseVolume.assign(w.cells, 0);
    for (const Group& g : w.groups)
        for (std::size_t c = g.firstCell; c < g.firstCell + g.cells; ++c) {
            w.volume[c] = g.volume_m3;
            w.mixedCell[c] = g.mixed;
            w.inverseVolume[c] = 1.0 / g.volume_m3;
        }
    for (auto* values : {&w.dispersion, &w.slope, &w.turned, &w.turnedVolume, &w.turnedInverse, &w.scratch})
        values->assign(w.cells, 0);
    for (const Lane& lane : w.lanes)
        for (std::size_t c = 0; c < lane.cells; ++c) {
            w.turnedVolume[lane.firstCell + c] = w.volume[lane.firstCell + lane.cells - 1 - c];
            w.turnedInverse[lane.firstCell + c] = w.inverseVolume[lane.firstCell + lane.cells - 1 - c];
        }
    w.runState.assign(w.runs.size(), {});
    w.state.assign(w.lanes.size(), {});
    w.ready.assign(w.lanes.size(), 0);
    w.groupState.assign(w.groups.size(), {});
    w.propagators.assign(w.groups.size() * kSlots, {});
    w.stretchState.clear();
    for (std::size_t r = 0; r < w.runs.size(); ++r) {
        auto& states = w.stretchState.emplace_back(w.runs[r].stretches.size());
        for (std::size_t k = 0; k < states.size(); ++k)
            states[k].ambient = w.runs[r].stretches[k].ambient;
        w.reckonSources(r);
    }
    w.lanesAtStart.assign(w.junctions.size() + 1, 0);
    const auto eachEnd = [&](auto&& visit) {
        for (std::size_t l = 0; l < w.lanes.size(); ++l) {
            if (w.lanes[l].from >= 0)
                visit(static_cast<std::size_t>(w.lanes[l].from), l);
            if (w.lanes[l].to >= 0)
                visit(static_cast<std::size_t>(w.lanes[l].to), l);
        }
    };
    eachEnd([&](std::size_t j, std::size_t) { ++w.lanesAtStart[j + 1]; });
    for (std::size_t j = 0; j < w.junctions.size(); ++j)
        w.lanesAtStart[j + 1] += w.lanesAtStart[j];
    w.lanesAt.assign(w.lanesAtStart.back(), 0);
    std::vector<std::size_t> next(w.lanesAtStart.begin(), w.lanesAtStart.end() - 1);
    eachEnd([&](std::size_t j, std::size_t l) { w.lanesAt[next[j]++] = l; });
    fill(20);
}

int Field::runCount() const { return static_cast<int>(m->runs.size()); }
int Field::cellCount() const { return static_cast<int>(m->cells); }

void Field::fill(double celsius)
{
    std::fill(m->temperature.begin(), m->temperature.end(), celsius);
    for (auto& junction : m->junctions)
        junction.temperature = junction.shown = celsius;
    for (std::size_t r = 0; r < m->runs.size(); ++r)
        fillRun(static_cast<int>(r), celsius);
}

void Field::fillRun(int run, double celsius)
{
    const RunCells& cells = m->runs[run];
    for (int n = 0; n < m->nodes; ++n)
        std::fill_n(m->node(n) + cells.firstCell, cells.cells, celsius);
    for (std::size_t l = cells.firstLane; l < cells.firstLane + cells.lanes; ++l) {
        LaneState& state = m->state[l];
        state.outflow = state.inflow = state.leaving = celsius;
        state.beyondVolume = 0;
        if (l > cells.firstLane)
            m->junctions[m->lanes[l].from].temperature = celsius;
    }
    m->noteMeans(run);
    m->startLedger();
}

void Field::setAmbient(int run, int stretch, double celsius)
{
    m->stretchState[run][stretch].ambient = celsius;
    m->reckonSources(run);
}

void Field::setSupply(int run, double celsius) { m->runState[run].supply = celsius; }

void Field::setSource(int run, int stretch, double watts)
{
    m->stretchState[run][stretch].watts = watts;
    m->reckonSources(run);
}

void Field::Work::startLedger()
{
    ledger = {};
    ledger.storedAtStart = stored();
}

double Field::Work::stored() const
{
    double heat = 0;
    for (const Group& g : groups)
        for (int n = 0; n < g.ladder.nodes; ++n) {
            double sum = 0;
            for (std::size_t c = g.firstCell; c < g.firstCell + g.cells; ++c)
                sum += node(n)[c];
            heat += g.ladder.capacity[n] * sum;
        }
    return heat;
}

void Field::Work::noteMeans(std::size_t run)
{
    const RunCells& cellsOf = runs[run];
    for (std::size_t g = cellsOf.firstGroup; g < cellsOf.firstGroup + cellsOf.groups; ++g)
        for (int n = 0; n < groups[g].ladder.nodes; ++n) {
            double sum = 0;
            for (std::size_t c = groups[g].firstCell; c < groups[g].firstCell + groups[g].cells; ++c)
                sum += node(n)[c];
            groupState[g].mean[n] = sum / static_cast<double>(groups[g].cells);
        }
}

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
            const double loss = 1e-9 + (piece.givenLoss_W_K > 0 ? piece.givenLoss_W_K : piece.tube ? 10.0 * piece.skinArea_m2 : 0.0);
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
    const bool same = std::abs(flow - s.flow) <= kFilmFlowTolerance * s.flow
                      && std::abs(water - s.water) <= kFilmWaterTolerance_K
                      && std::abs(skin - s.skin) <= kFilmSkinTolerance_K;
    if (same)
        return;
    s.flow = flow;
    s.water = water;
    s.skin = skin;
    double link = 0, loss = 0;
    for (std::size_t p = group.firstPiece; p < group.firstPiece + group.pieces; ++p) {
        const Piece& piece = pieces[p];
        if (!piece.tube) {
            link += piece.bodyFilm_W_K * (kBodyFilmAtRest + (1.0 - kBodyFilmAtRest) * std::min(1.0, flow / kBodyFilmFullFlow_m3s));
            loss += piece.givenLoss_W_K;
            continue;
        }
        const double film = 1.0 / (insideFilm(flow, piece.bore_m, water) * piece.filmArea_m2);
        const bool walled = ladder.nodes > 1;
        if (walled)
            link += 1.0 / (film + piece.innerResistance);
        if (piece.givenLoss_W_K > 0) {
            loss += piece.givenLoss_W_K;
            continue;
        }
        // The skin is cooler than the wall by the drop through the insulation: two rounds settle it.
        const double before = piece.outerResistance + (walled ? 0.0 : film + piece.innerResistance);
        double skinCelsius = skin, outside = 0;
        for (int round = 0; round < 2; ++round) {
            outside = 1.0 / (outsideFilm(skinCelsius, s.ambient, piece.skinDiameter_m) * piece.skinArea_m2);
            skinCelsius = s.ambient + (skin - s.ambient) * outside / (before + outside);
        }
        loss += 1.0 / (before + outside);
    }
    if (link != ladder.link[0] || loss != ladder.loss) {
        ladder.link[0] = link;
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
    mean /= r.volume_m3;
    if (std::abs(flow - s.filmFlow) <= 0.02 * s.filmFlow && std::abs(mean - s.filmMean) <= 3.0)
        return;
    s.filmFlow = flow;
    s.filmMean = mean;
    // Half-cell resistances in series between the centres; a mixed body passes none.
    double lastHalf = 0;
    for (std::size_t g = r.firstGroup; g < r.firstGroup + r.groups; ++g) {
        double length = 0, bore = 0;
        for (std::size_t p = groups[g].firstPiece; p < groups[g].firstPiece + groups[g].pieces; ++p)
            if (pieces[p].tube) {
                length += r.stretches[pieces[p].stretch].length_m * pieces[p].share;
                bore = std::max(bore, pieces[p].bore_m);
            }
        const double area = length > 0 ? groups[g].volume_m3 / length : 0.0;
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

double Field::Work::inletOf(std::size_t lane) const
{
    const int j = upstream(lane);
    if (j < 0)
        return runState[lanes[lane].run].supply;
    return junctions[j].volumeIn > 0 ? junctions[j].heatIn / junctions[j].volumeIn : junctions[j].temperature;
}

/// The outflow needs the inlet's temperature when the water leaving reaches into the first cell.
bool Field::Work::dependsOnInlet(std::size_t lane) const
{
    const Lane& l = lanes[lane];
    const std::size_t first = state[lane].forward ? l.firstCell : l.firstCell + l.cells - 1;
    return l.mixed || state[lane].shift > l.volume_m3 - volume[first];
}

void Field::Work::prepareSlopes(std::size_t lane)
{
    const Lane& l = lanes[lane];
    LaneState& s = state[lane];
    if (l.mixed)
        return;
    double* t = node(0) + l.firstCell;
    if (!s.forward) {
        std::reverse_copy(t, t + l.cells, turned.data() + l.firstCell);
        t = turned.data() + l.firstCell;
    }
    const double* v = flowOrder(turnedVolume, volume, lane);
    double* slopes = slope.data() + l.firstCell;
    remap::innerSlopes(t, v, l.cells, slopes);
    const std::size_t last = l.cells - 1;
    if (l.cells > 1)
        slopes[last] = s.beyondVolume > 0 && s.beyondForward == s.forward
                           ? remap::slopeBetween({t[last - 1], v[last - 1]}, {t[last], v[last]}, {s.outflow, s.beyondVolume})
                           : 0.0;
}

/// What leaves the lane, into its junction.
void Field::Work::evaluate(std::size_t lane, double inletCelsius)
{
    const Lane& l = lanes[lane];
    LaneState& s = state[lane];
    const double* t = flowOrder(turned, temperature, lane);
    const double* v = flowOrder(turnedVolume, volume, lane);
    double* slopes = slope.data() + l.firstCell;
    if (l.mixed) {
        // A mixed volume fed at an even rate: its outflow over the step, exactly.
        const double turnover = s.shift * inverseVolume[l.firstCell];
        const double kept = s.explicitly ? 1.0 : -std::expm1(-turnover) / turnover;
        const double held = temperature[l.firstCell];
        s.outHeat = s.shift * (inletCelsius + (held - inletCelsius) * kept);
    } else {
        const bool known = s.beyondVolume > 0 && s.beyondForward == s.forward;
        const remap::Beyond inlet{inletCelsius, s.shift};
        if (l.cells > 1)
            slopes[0] = remap::slopeBetween(inlet, {t[0], v[0]}, {t[1], v[1]});
        else
            slopes[0] = known ? remap::slopeBetween(inlet, {t[0], v[0]}, {s.outflow, s.beyondVolume}) : 0.0;
        s.outHeat = remap::outflow(t, v, slopes, l.cells, s.shift, inletCelsius);
    }
    s.evaluated = true;
    const int j = downstream(lane);
    if (j >= 0) {
        junctions[j].volumeIn += s.shift;
        junctions[j].heatIn += s.outHeat;
        --junctions[j].pending;
    }
}

/// Whether the shifts, each cut to this share, have an order of evaluation.
bool Field::Work::orderExists(double share)
{
    std::size_t left = 0;
    for (std::size_t l = 0; l < lanes.size(); ++l) {
        state[l].evaluated = !state[l].moving || state[l].shift * share <= lanes[l].volume_m3;
        left += state[l].evaluated ? 0 : 1;
    }
    if (left == 0)
        return true;
    for (Junction& j : junctions)
        j.pending = 0;
    for (std::size_t l = 0; l < lanes.size(); ++l)
        if (!state[l].evaluated && downstream(l) >= 0)
            ++junctions[downstream(l)].pending;
    std::size_t count = 0;
    for (std::size_t l = 0; l < lanes.size(); ++l)
        if (!state[l].evaluated && (upstream(l) < 0 || junctions[upstream(l)].pending == 0))
            ready[count++] = l;
    std::size_t done = 0;
    while (done < count) {
        const std::size_t l = ready[done++];
        state[l].evaluated = true;
        const int j = downstream(l);
        if (j < 0 || --junctions[j].pending > 0)
            continue;
        for (std::size_t k = lanesAtStart[j]; k < lanesAtStart[j + 1]; ++k)
            if (!state[lanesAt[k]].evaluated && upstream(lanesAt[k]) == j)
                ready[count++] = lanesAt[k];
    }
    return done == left;
}

/// Moves the water of every lane by its shift.
void Field::Work::advect(double dt_s)
{
    for (Junction& j : junctions) {
        j.volumeIn = j.heatIn = j.volumeOut = 0;
        j.pending = 0;
    }
    for (std::size_t l = 0; l < lanes.size(); ++l) {
        LaneState& s = state[l];
        s.evaluated = !s.moving;
        s.explicitly = false;
        if (!s.moving)
            continue;
        if (downstream(l) >= 0)
            ++junctions[downstream(l)].pending;
        if (upstream(l) >= 0)
            junctions[upstream(l)].volumeOut += s.shift;
        prepareSlopes(l);
    }
    // 1. Lanes whose outflow is already in them: the slope of the first cell does not matter, it is set again.
    for (std::size_t l = 0; l < lanes.size(); ++l)
        if (state[l].moving && !dependsOnInlet(l))
            evaluate(l, state[l].inflow);
    // 2. The others as soon as all that flows into their inlet is known; where they form a ring, the first of
    //    them not flushed whole starts from the water that came in last.
    std::size_t done = 0, count = 0;
    const auto collect = [&](int j) {
        for (std::size_t k = lanesAtStart[j]; k < lanesAtStart[j + 1]; ++k)
            if (!state[lanesAt[k]].evaluated && upstream(lanesAt[k]) == j)
                ready[count++] = lanesAt[k];
    };
    for (std::size_t l = 0; l < lanes.size(); ++l)
        if (!state[l].evaluated && (upstream(l) < 0 || junctions[upstream(l)].pending == 0))
            ready[count++] = l;
    std::size_t scan = 0;
    for (;;) {
        while (done < count) {
            const std::size_t l = ready[done++];
            state[l].inflow = inletOf(l);
            evaluate(l, state[l].inflow);
            const int j = downstream(l);
            if (j >= 0 && junctions[j].pending == 0)
                collect(j);
        }
        while (scan < lanes.size() && (state[scan].evaluated || state[scan].shift > lanes[scan].volume_m3))
            ++scan;
        if (scan == lanes.size())
            break;
        state[scan].explicitly = lanes[scan].mixed;
        evaluate(scan, state[scan].inflow);
        done = count = 0;
        const int j = downstream(scan);
        if (j >= 0 && junctions[j].pending == 0)
            collect(j);
    }
    for (std::size_t l = 0; l < lanes.size(); ++l)
        if (state[l].moving)
            move(l, dt_s);
    for (Junction& j : junctions) {
        if (j.volumeIn > 0)
            j.temperature = j.heatIn / j.volumeIn;
        j.mixedVolume += j.volumeIn;
        j.mixedHeat += j.heatIn;
        const double lack = j.volumeOut - j.volumeIn;
        (lack > 0 ? ledger.in : ledger.out) += rhoC * std::abs(lack) * j.temperature;
    }
}

void Field::Work::move(std::size_t lane, double dt_s)
{
    const Lane& l = lanes[lane];
    LaneState& s = state[lane];
    const double inlet = inletOf(lane);
    if (l.mixed) {
        temperature[l.firstCell] += (s.shift * inlet - s.outHeat) * inverseVolume[l.firstCell];
    } else {
        double* straight = temperature.data() + l.firstCell;
        double* t = flowOrder(turned, temperature, lane);
        const double* v = flowOrder(turnedVolume, volume, lane);
        double* slopes = slope.data() + l.firstCell;
        if (!dependsOnInlet(lane))
            slopes[0] = remap::slopeBetween({inlet, s.shift}, {t[0], v[0]}, {t[1], v[1]});
        remap::shift(t, v, flowOrder(turnedInverse, inverseVolume, lane), slopes, l.cells, l.smallest_m3, s.shift, inlet, scratch.data());
        if (!s.forward)
            std::reverse_copy(t, t + l.cells, straight);
        if (grid.dispersion)
            remap::disperse(straight, volume.data() + l.firstCell, dispersion.data() + l.firstCell, l.cells, runState[l.run].largest, dt_s,
                            scratch.data());
    }
    s.inflow = inlet;
    s.outflow = s.outHeat / s.shift;
    s.left += s.outHeat;
    s.beyondVolume = s.shift;
    s.beyondForward = s.forward;
    if (upstream(lane) < 0)
        ledger.in += rhoC * s.shift * inlet;
    if (downstream(lane) < 0)
        ledger.out += rhoC * s.outHeat;
}

void Field::step(double dt_s, std::span<const double> flow_m3s)
{
    if (!(dt_s > 0))
        return;
    Work& w = *m;
    const auto flowOf = [&](std::size_t run) {
        return run < flow_m3s.size() && std::isfinite(flow_m3s[run]) ? flow_m3s[run] : 0.0;
    };
    bool anyMoves = false;
    for (std::size_t r = 0; r < w.runs.size(); ++r) {
        const double flow = flowOf(r);
        const double shift = std::abs(flow) * dt_s;
        const bool moving = shift > kRestShare * w.runs[r].volume_m3;
        w.runState[r].moving = moving;
        w.runState[r].forward = flow >= 0;
        for (std::size_t l = w.runs[r].firstLane; l < w.runs[r].firstLane + w.runs[r].lanes; ++l) {
            LaneState& s = w.state[l];
            s.moving = moving;
            s.forward = flow >= 0;
            s.shift = shift;
            if (!moving)
                s.beyondVolume = 0;
        }
        anyMoves = anyMoves || moving;
        if (moving && w.grid.dispersion)
            w.reckonDispersion(r, std::abs(flow));
        w.exchangeRun(r, moving ? std::abs(flow) : 0.0, moving ? 0.5 * dt_s : dt_s);
    }
    if (!anyMoves)
        return;
    // Water that goes round a ring in less than the step: in parts that do not.
    int parts = 1;
    while (parts < kMostParts && !w.orderExists(1.0 / parts))
        parts *= 2;
    for (LaneState& s : w.state) {
        s.shift /= parts;
        s.left = 0;
    }
    for (Work::Junction& j : w.junctions)
        j.mixedVolume = j.mixedHeat = 0;
    for (int p = 0; p < parts; ++p)
        w.advect(dt_s / parts);
    for (LaneState& s : w.state)
        if (s.moving)
            s.leaving = s.left / (s.shift * parts);
    for (Work::Junction& j : w.junctions)
        if (j.mixedVolume > 0)
            j.shown = j.mixedHeat / j.mixedVolume;
    for (std::size_t r = 0; r < w.runs.size(); ++r)
        if (w.runState[r].moving)
            w.exchangeRun(r, std::abs(flowOf(r)), 0.5 * dt_s);
}

double Field::outletTemperature(int run) const
{
    const RunState& s = m->runState[run];
    if (s.moving)
        return m->state[m->lastLane(run)].leaving;
    const RunCells& r = m->runs[run];
    return m->node(0)[r.firstCell + (s.forward ? r.cells - 1 : 0)];
}

double Field::junctionTemperature(int junction) const { return m->junctions[junction].shown; }

std::span<const double> Field::cells(int run) const { return {m->node(0) + m->runs[run].firstCell, m->runs[run].cells}; }
std::span<const double> Field::cellVolumes(int run) const { return {m->volume.data() + m->runs[run].firstCell, m->runs[run].cells}; }
double Field::volume(int run) const { return m->runs[run].volume_m3; }
double Field::stretchStart(int run, int stretch) const { return m->runs[run].stretchStart[stretch]; }

double Field::at(int run, double volumeFraction) const
{
    const auto t = cells(run);
    const auto v = cellVolumes(run);
    double place = std::clamp(volumeFraction, 0.0, 1.0) * m->runs[run].volume_m3;
    std::size_t c = 0;
    while (c + 1 < t.size() && place > v[c])
        place -= v[c++];
    if (c == 0 || c + 1 == t.size() || m->mixedCell[m->runs[run].firstCell + c])
        return t[c];
    const double slope = remap::slopeBetween({t[c - 1], v[c - 1]}, {t[c], v[c]}, {t[c + 1], v[c + 1]});
    return t[c] + slope * (std::min(place, v[c]) - 0.5 * v[c]);
}

double Field::meanTemperature(int run) const
{
    const auto t = cells(run);
    const auto v = cellVolumes(run);
    double heat = 0;
    for (std::size_t c = 0; c < t.size(); ++c)
        heat += t[c] * v[c];
    return heat / m->runs[run].volume_m3;
}

double Field::meanTemperature(int run, int stretch) const
{
    const RunCells& r = m->runs[run];
    double heat = 0, share = 0;
    for (std::size_t g = r.firstGroup; g < r.firstGroup + r.groups; ++g)
        for (std::size_t p = m->groups[g].firstPiece; p < m->groups[g].firstPiece + m->groups[g].pieces; ++p)
            if (m->pieces[p].stretch == stretch)
                for (std::size_t c = m->groups[g].firstCell; c < m->groups[g].firstCell + m->groups[g].cells; ++c) {
                    heat += m->pieces[p].share * m->node(0)[c];
                    share += m->pieces[p].share;
                }
    return heat / share;
}

double Field::bodyTemperature(int run, int stretch) const
{
    const RunCells& r = m->runs[run];
    double heat = 0, share = 0;
    for (std::size_t g = r.firstGroup; g < r.firstGroup + r.groups; ++g)
        for (std::size_t p = m->groups[g].firstPiece; p < m->groups[g].firstPiece + m->groups[g].pieces; ++p)
            if (m->pieces[p].stretch == stretch)
                for (std::size_t c = m->groups[g].firstCell; c < m->groups[g].firstCell + m->groups[g].cells; ++c) {
                    heat += m->pieces[p].share * m->node(m->groups[g].ladder.nodes > 1 ? 1 : 0)[c];
                    share += m->pieces[p].share;
                }
    return heat / share;
}

Field::Ledger Field::ledger() const
{
    Ledger ledger = m->ledger;
    ledger.stored = m->stored();
    return ledger;
}

}  // namespace tapward::thermal
