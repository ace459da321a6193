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
    double shift = 0;           // m³ in this step or part of it
    double outHeat = 0;         // K m³ that left in this step or part of it
    double left = 0;            // K m³ that left in the whole step
    double leaving = 20;        // mean of it
    double outflow = 20;        // mean of what left last
    double inflow = 20;         // what came in last
    double beyondVolume = 0;    // m³ that left last, while the flow keeps its direction
    bool beyondForward = true;
    double filmFlow = -1, filmMean = 0;
    double largest = 0;         // of dispersion, 1/s
    bool evaluated = false;
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
    std::vector<RunState> state;
    std::vector<Junction> junctions;
    std::vector<std::size_t> runsAt;     // runs with an end at junction j: runsAt[runsAtStart[j] ...]
    std::vector<std::size_t> runsAtStart;
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
    void prepareSlopes(std::size_t run);
    void evaluate(std::size_t run, double inletCelsius);
    double inletOf(std::size_t run) const;
    bool dependsOnInlet(std::size_t run) const;
    int upstream(std::size_t run) const { return state[run].forward ? runs[run].from : runs[run].to; }
    int downstream(std::size_t run) const { return state[run].forward ? runs[run].to : runs[run].from; }
    double* flowOrder(std::vector<double>& turnedOnes, double* straight, std::size_t run)
    {
        return state[run].forward ? straight : turnedOnes.data() + runs[run].firstCell;
    }
};

Field::Field() : m(std::make_unique<Work>()) {}
Field::~Field() = default;
Field::Field(Field&&) noexcept = default;
Field& Field::operator=(Field&&) noexcept = default;

int Field::addJunction()
{
    m->junctions.emplace_back();
    return static_cast<int>(m->junctions.size()) - 1;
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
    w.cells = 0;
    for (std::size_t r = 0; r < w.runs.size(); ++r) {
        cutIntoCells(w.runs[r], static_cast<int>(r), grid, w.cells, w.groups, w.pieces);
        w.cells += w.runs[r].cells;
    }
    w.nodes = 1;
    for (const Group& g : w.groups)
        w.nodes = std::max(w.nodes, g.ladder.nodes);
    w.temperature.assign(static_cast<std::size_t>(w.nodes) * w.cells, 20.0);
    w.volume.assign(w.cells, 0);
    w.inverseVolume.assign(w.cells, 0);
    for (const Group& g : w.groups)
        for (std::size_t c = g.firstCell; c < g.firstCell + g.cells; ++c) {
            w.volume[c] = g.volume_m3;
            w.inverseVolume[c] = 1.0 / g.volume_m3;
        }
    for (auto* values : {&w.dispersion, &w.slope, &w.turned, &w.turnedVolume, &w.turnedInverse, &w.scratch})
        values->assign(w.cells, 0);
    for (const RunCells& run : w.runs)
        for (std::size_t c = 0; c < run.cells; ++c) {
            w.turnedVolume[run.firstCell + c] = w.volume[run.firstCell + run.cells - 1 - c];
            w.turnedInverse[run.firstCell + c] = w.inverseVolume[run.firstCell + run.cells - 1 - c];
        }
    w.state.assign(w.runs.size(), {});
    w.groupState.assign(w.groups.size(), {});
    w.propagators.assign(w.groups.size() * kSlots, {});
    w.ready.assign(w.runs.size(), 0);
    w.stretchState.clear();
    for (std::size_t r = 0; r < w.runs.size(); ++r) {
        auto& states = w.stretchState.emplace_back(w.runs[r].stretches.size());
        for (std::size_t k = 0; k < states.size(); ++k)
            states[k].ambient = w.runs[r].stretches[k].ambient;
        w.reckonSources(r);
    }
    w.runsAtStart.assign(w.junctions.size() + 1, 0);
    const auto eachEnd = [&](auto&& visit) {
        for (std::size_t r = 0; r < w.runs.size(); ++r) {
            if (w.runs[r].from >= 0)
                visit(static_cast<std::size_t>(w.runs[r].from), r);
            if (w.runs[r].to >= 0)
                visit(static_cast<std::size_t>(w.runs[r].to), r);
        }
    };
    eachEnd([&](std::size_t j, std::size_t) { ++w.runsAtStart[j + 1]; });
    for (std::size_t j = 0; j < w.junctions.size(); ++j)
        w.runsAtStart[j + 1] += w.runsAtStart[j];
    w.runsAt.assign(w.runsAtStart.back(), 0);
    std::vector<std::size_t> next(w.runsAtStart.begin(), w.runsAtStart.end() - 1);
    eachEnd([&](std::size_t j, std::size_t r) { w.runsAt[next[j]++] = r; });
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
    RunState& state = m->state[run];
    state.outflow = state.inflow = state.leaving = celsius;
    state.beyondVolume = 0;
    m->noteMeans(run);
    m->startLedger();
}

void Field::setAmbient(int run, int stretch, double celsius)
{
    m->stretchState[run][stretch].ambient = celsius;
    m->reckonSources(run);
}

void Field::setSupply(int run, double celsius) { m->state[run].supply = celsius; }

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
    RunState& s = state[run];
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

double Field::Work::inletOf(std::size_t run) const
{
    const int j = upstream(run);
    if (j < 0)
        return state[run].supply;
    return junctions[j].volumeIn > 0 ? junctions[j].heatIn / junctions[j].volumeIn : junctions[j].temperature;
}

/// The outflow needs the inlet's temperature when the water leaving reaches into the first cell.
bool Field::Work::dependsOnInlet(std::size_t run) const
{
    const RunCells& r = runs[run];
    const std::size_t first = state[run].forward ? r.firstCell : r.firstCell + r.cells - 1;
    return state[run].shift > r.volume_m3 - volume[first];
}

void Field::Work::prepareSlopes(std::size_t run)
{
    const RunCells& r = runs[run];
    double* t = node(0) + r.firstCell;
    if (!state[run].forward) {
        std::reverse_copy(t, t + r.cells, turned.data() + r.firstCell);
        t = turned.data() + r.firstCell;
    }
    const double* v = flowOrder(turnedVolume, volume.data() + r.firstCell, run);
    remap::innerSlopes(t, v, r.cells, slope.data() + r.firstCell);
    RunState& s = state[run];
    const std::size_t last = r.cells - 1;
    if (r.cells > 1)
        slope[r.firstCell + last] = s.beyondVolume > 0 && s.beyondForward == s.forward
                                        ? remap::slopeBetween({t[last - 1], v[last - 1]}, {t[last], v[last]}, {s.outflow, s.beyondVolume})
                                        : 0.0;
}

/// Slope of the first cell, then what leaves the run, into its junction.
void Field::Work::evaluate(std::size_t run, double inletCelsius)
{
    const RunCells& r = runs[run];
    RunState& s = state[run];
    const double* t = flowOrder(turned, node(0) + r.firstCell, run);
    const double* v = flowOrder(turnedVolume, volume.data() + r.firstCell, run);
    const bool known = s.beyondVolume > 0 && s.beyondForward == s.forward;
    const remap::Beyond inlet{inletCelsius, s.shift};
    if (r.cells > 1)
        slope[r.firstCell] = remap::slopeBetween(inlet, {t[0], v[0]}, {t[1], v[1]});
    else
        slope[r.firstCell] = known && r.tubeLength_m > 0 ? remap::slopeBetween(inlet, {t[0], v[0]}, {s.outflow, s.beyondVolume}) : 0.0;
    const double heat = remap::outflow(t, v, slope.data() + r.firstCell, r.cells, s.shift, inletCelsius);
    s.outHeat = heat;
    s.evaluated = true;
    const int j = downstream(run);
    if (j >= 0) {
        junctions[j].volumeIn += s.shift;
        junctions[j].heatIn += heat;
        --junctions[j].pending;
    }
}

/// Whether a shift of share * each run's shift has an order of evaluation.
bool Field::Work::orderExists(double share)
{
    for (Junction& j : junctions)
        j.pending = 0;
    std::size_t left = 0;
    for (std::size_t r = 0; r < runs.size(); ++r) {
        RunState& s = state[r];
        s.evaluated = !s.moving || s.shift * share <= runs[r].volume_m3;
        if (!s.evaluated) {
            ++left;
            if (downstream(r) >= 0)
                ++junctions[downstream(r)].pending;
        }
    }
    if (left == 0)
        return true;
    std::size_t count = 0;
    for (std::size_t r = 0; r < runs.size(); ++r)
        if (!state[r].evaluated && (upstream(r) < 0 || junctions[upstream(r)].pending == 0))
            ready[count++] = r;
    std::size_t done = 0;
    while (done < count) {
        const std::size_t r = ready[done++];
        state[r].evaluated = true;
        const int j = downstream(r);
        if (j < 0 || --junctions[j].pending > 0)
            continue;
        for (std::size_t k = runsAtStart[j]; k < runsAtStart[j + 1]; ++k) {
            const std::size_t other = runsAt[k];
            if (!state[other].evaluated && upstream(other) == j)
                ready[count++] = other;
        }
    }
    return done == left;
}

/// Moves the water of every run by state[].shift.
void Field::Work::advect(double dt_s)
{
    for (Junction& j : junctions) {
        j.volumeIn = j.heatIn = j.volumeOut = 0;
        j.pending = 0;
    }
    for (std::size_t r = 0; r < runs.size(); ++r) {
        RunState& s = state[r];
        s.evaluated = !s.moving;
        if (!s.moving)
            continue;
        if (downstream(r) >= 0)
            ++junctions[downstream(r)].pending;
        if (upstream(r) >= 0)
            junctions[upstream(r)].volumeOut += s.shift;
        prepareSlopes(r);
    }
    // 1. Runs whose outflow is already in them: the slope of the first cell does not matter and is set again.
    for (std::size_t r = 0; r < runs.size(); ++r)
        if (state[r].moving && !dependsOnInlet(r))
            evaluate(r, state[r].inflow);
    // 2. The others as soon as all that flows into their inlet is known; where they form a ring, the first of
    //    them not flushed whole starts from the water that came in last.
    std::size_t done = 0, count = 0;
    const auto collect = [&](int j) {
        for (std::size_t k = runsAtStart[j]; k < runsAtStart[j + 1]; ++k)
            if (!state[runsAt[k]].evaluated && upstream(runsAt[k]) == j)
                ready[count++] = runsAt[k];
    };
    for (std::size_t r = 0; r < runs.size(); ++r)
        if (!state[r].evaluated && (upstream(r) < 0 || junctions[upstream(r)].pending == 0))
            ready[count++] = r;
    std::size_t scan = 0;
    for (;;) {
        while (done < count) {
            const std::size_t r = ready[done++];
            if (state[r].evaluated)
                continue;
            const double inlet = inletOf(r);
            state[r].inflow = inlet;
            evaluate(r, inlet);
            const int j = downstream(r);
            if (j >= 0 && junctions[j].pending == 0)
                collect(j);
        }
        while (scan < runs.size() && (state[scan].evaluated || state[scan].shift > runs[scan].volume_m3))
            ++scan;
        if (scan == runs.size())
            break;
        evaluate(scan, state[scan].inflow);
        done = count = 0;
        const int j = downstream(scan);
        if (j >= 0 && junctions[j].pending == 0)
            collect(j);
    }
    // 3. Shift.
    for (std::size_t r = 0; r < runs.size(); ++r) {
        RunState& s = state[r];
        if (!s.moving)
            continue;
        const RunCells& run = runs[r];
        double* straight = node(0) + run.firstCell;
        double* t = flowOrder(turned, straight, r);
        const double* v = flowOrder(turnedVolume, volume.data() + run.firstCell, r);
        const double* inverse = flowOrder(turnedInverse, inverseVolume.data() + run.firstCell, r);
        double* slopes = slope.data() + run.firstCell;
        const double inlet = inletOf(r);
        if (!dependsOnInlet(r) && run.cells > 1)
            slopes[0] = remap::slopeBetween({inlet, s.shift}, {t[0], v[0]}, {t[1], v[1]});
        s.inflow = inlet;
        remap::shift(t, v, inverse, slopes, run.cells, run.smallest_m3, s.shift, inlet, scratch.data());
        if (!s.forward)
            std::reverse_copy(t, t + run.cells, straight);
        s.outflow = s.outHeat / s.shift;
        s.left += s.outHeat;
        s.beyondVolume = s.shift;
        s.beyondForward = s.forward;
        if (upstream(r) < 0)
            ledger.in += rhoC * s.shift * inlet;
        if (downstream(r) < 0)
            ledger.out += rhoC * s.outHeat;
        if (grid.dispersion && s.largest > 0)
            remap::disperse(straight, volume.data() + run.firstCell, dispersion.data() + run.firstCell, run.cells, s.largest, dt_s,
                            scratch.data());
    }
    for (Junction& j : junctions) {
        if (j.volumeIn > 0)
            j.temperature = j.heatIn / j.volumeIn;
        j.mixedVolume += j.volumeIn;
        j.mixedHeat += j.heatIn;
        const double lack = j.volumeOut - j.volumeIn;
        (lack > 0 ? ledger.in : ledger.out) += rhoC * std::abs(lack) * j.temperature;
    }
}

void Field::step(double dt_s, std::span<const double> flow_m3s)
{
    if (!(dt_s > 0))
        return;
    Work& w = *m;
    const std::size_t runs = w.runs.size();
    bool anyMoves = false;
    for (std::size_t r = 0; r < runs; ++r) {
        const double flow = r < flow_m3s.size() && std::isfinite(flow_m3s[r]) ? flow_m3s[r] : 0.0;
        RunState& s = w.state[r];
        s.shift = std::abs(flow) * dt_s;
        s.moving = s.shift > kRestShare * w.runs[r].volume_m3;
        s.forward = flow >= 0;
        s.outHeat = 0;
        if (!s.moving)
            s.beyondVolume = 0;
        anyMoves = anyMoves || s.moving;
        const double speed = s.moving ? std::abs(flow) : 0.0;
        if (s.moving && w.grid.dispersion)
            w.reckonDispersion(r, speed);
        w.exchangeRun(r, speed, s.moving ? 0.5 * dt_s : dt_s);
    }
    if (!anyMoves)
        return;
    int parts = 1;
    while (parts < kMostParts && !w.orderExists(1.0 / parts))
        parts *= 2;
    for (RunState& s : w.state) {
        s.shift /= parts;
        s.left = 0;
    }
    for (Work::Junction& j : w.junctions)
        j.mixedVolume = j.mixedHeat = 0;
    for (int p = 0; p < parts; ++p)
        w.advect(dt_s / parts);
    for (RunState& s : w.state)
        if (s.moving)
            s.leaving = s.left / (s.shift * parts);
    for (Work::Junction& j : w.junctions)
        if (j.mixedVolume > 0)
            j.shown = j.mixedHeat / j.mixedVolume;
    for (std::size_t r = 0; r < runs; ++r)
        if (w.state[r].moving)
            w.exchangeRun(r, std::abs(flow_m3s[r]), 0.5 * dt_s);
}

double Field::outletTemperature(int run) const
{
    const RunState& s = m->state[run];
    if (s.moving)
        return s.leaving;
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
    if (c == 0 || c + 1 == t.size())
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
