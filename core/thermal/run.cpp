// SPDX-License-Identifier: GPL-3.0-or-later
#include "thermal/run.h"

#include <algorithm>
#include <cmath>

#include "thermal/field_work.h"
#include "thermal/remap.h"

namespace tapward::thermal {

Field::Field() : m(std::make_unique<Work>()) {}
Field::~Field() = default;
Field::Field(Field&&) noexcept = default;
Field& Field::operator=(Field&&) noexcept = default;

int Field::addJunction() { return static_cast<int>(m->seenJunctions++); }

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
    w.tanks.clear();
    w.cells = 0;
    int junctions = static_cast<int>(w.seenJunctions);
    for (std::size_t r = 0; r < w.runs.size(); ++r) {
        cutIntoCells(w.runs[r], static_cast<int>(r), grid, w.cells, w.groups, w.pieces);
        w.cells += w.runs[r].cells;
        cutIntoLanes(w.runs[r], static_cast<int>(r), w.groups, w.lanes, junctions);
        const auto tanks = layersIn(w.runs[r], static_cast<int>(r), w.groups, w.pieces);
        w.tanks.insert(w.tanks.end(), tanks.begin(), tanks.end());
    }
    std::size_t mostLayers = 0;
    for (const Layers& tank : w.tanks)
        mostLayers = std::max(mostLayers, tank.cells);
    w.poolHeat.assign(mostLayers, 0);
    w.poolVolume.assign(mostLayers, 0);
    w.poolEnd.assign(mostLayers, 0);
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
    for (std::size_t r = 0; r < w.runs.size(); ++r) {
        const std::vector<Stretch>& stretches = w.runs[r].stretches;
        w.runState[r].coil =
            std::any_of(stretches.begin(), stretches.end(), [](const Stretch& s) { return s.bodyBore_m > 0; });
        w.runState[r].defers =
            !w.runState[r].coil && std::none_of(stretches.begin(), stretches.end(), [](const Stretch& s) {
                return s.volume_m3 > kLargeBody_m3 || s.layerLink_W_K > 0;
            });
    }
    w.state.assign(w.lanes.size(), {});
    w.ready.assign(w.lanes.size(), 0);
    w.groupState.assign(w.groups.size(), {});
    w.propagators.assign(w.groups.size() * kSlots * 2, {});
    w.groupOf.assign(w.cells, 0);
    for (std::size_t g = 0; g < w.groups.size(); ++g)
        std::fill_n(w.groupOf.begin() + static_cast<std::ptrdiff_t>(w.groups[g].firstCell), w.groups[g].cells,
                    static_cast<std::uint32_t>(g));
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

void Field::timeInto(PhaseTimes* phases) { m->phases = phases; }

int Field::runCount() const { return static_cast<int>(m->runs.size()); }
int Field::cellCount() const { return static_cast<int>(m->cells); }

void Field::fill(double celsius)
{
    std::fill(m->temperature.begin(), m->temperature.end(), celsius);
    for (auto& junction : m->junctions)
        junction.temperature = junction.now = celsius;
    for (std::size_t r = 0; r < m->runs.size(); ++r)
        m->fill(r, celsius);
    m->startLedger();
}

void Field::fillRun(int run, double celsius)
{
    m->fill(static_cast<std::size_t>(run), celsius);
    m->startLedger();
}

void Field::Work::fill(std::size_t run, double celsius)
{
    const RunCells& cellsOf = runs[run];
    for (int n = 0; n < nodes; ++n)
        std::fill_n(node(n) + cellsOf.firstCell, cellsOf.cells, celsius);
    for (std::size_t l = cellsOf.firstLane; l < cellsOf.firstLane + cellsOf.lanes; ++l) {
        state[l].outflow = state[l].inflow = state[l].leaving = state[l].face = celsius;
        state[l].beyondVolume = state[l].beyondBefore = 0;
        if (l > cellsOf.firstLane)
            junctions[lanes[l].from].temperature = celsius;
    }
    for (std::size_t g = cellsOf.firstGroup; g < cellsOf.firstGroup + cellsOf.groups; ++g)
        std::fill_n(groupState[g].mean.begin(), groups[g].ladder.nodes, celsius);
    runState[run].owed = runState[run].owedHalf = 0;
    runState[run].stood = kSettled_s;  // water and wall are at one temperature
    noteSleep(run);
}

/// Whether standing changes nothing: water, wall and bay are at one temperature, and no heat is put in.
void Field::Work::noteSleep(std::size_t run)
{
    const RunCells& r = runs[run];
    RunState& s = runState[run];
    s.asleep = s.defers;
    for (std::size_t g = r.firstGroup; g < r.firstGroup + r.groups && s.asleep; ++g)
        for (int n = 0; n < groups[g].ladder.nodes; ++n)
            for (std::size_t c = groups[g].firstCell; c < groups[g].firstCell + groups[g].cells; ++c)
                s.asleep = s.asleep && node(n)[c] == groupState[g].ambient;
}

void Field::setAmbient(int run, int stretch, double celsius)
{
    if (m->stretchState[run][stretch].ambient == celsius)
        return;
    m->settle(run);
    m->stretchState[run][stretch].ambient = celsius;
    m->reckonSources(run);
    m->noteSleep(static_cast<std::size_t>(run));
}

void Field::setSupply(int run, double celsius) { m->runState[run].supply = celsius; }

void Field::setSource(int run, int stretch, double watts)
{
    if (m->stretchState[run][stretch].watts == watts)
        return;
    m->settle(run);
    m->stretchState[run][stretch].watts = watts;
    m->runState[run].defers = m->runState[run].asleep = false;  // with heat of its own it never settles
    m->reckonSources(run);
}

void Field::setExtraLoss(int run, int stretch, double watts_K)
{
    if (m->stretchState[run][stretch].extraLoss_W_K == watts_K)
        return;
    m->settle(run);
    m->stretchState[run][stretch].extraLoss_W_K = watts_K;
    for (std::size_t g = m->runs[run].firstGroup; g < m->runs[run].firstGroup + m->runs[run].groups; ++g)
        m->groupState[g].skin = -1e9;  // the loss is reckoned again
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

double Field::outletTemperature(int run) const
{
    const RunState& s = m->runState[run];
    if (s.moving)
        return m->state[m->lastLane(run)].leaving;
    const RunCells& r = m->runs[run];
    return m->waterNow(r.firstCell + (s.forward ? r.cells - 1 : 0));
}

double Field::leavingTemperature(int run) const
{
    const RunState& s = m->runState[run];
    const RunCells& r = m->runs[run];
    return s.moving ? m->state[m->lastLane(run)].face : m->waterNow(r.firstCell + (s.forward ? r.cells - 1 : 0));
}

double Field::junctionTemperature(int junction) const { return m->junctions[junction].now; }

std::span<const double> Field::cells(int run) const
{
    m->settle(static_cast<std::size_t>(run));
    return {m->node(0) + m->runs[run].firstCell, m->runs[run].cells};
}
std::span<const double> Field::cellVolumes(int run) const
{
    return {m->volume.data() + m->runs[run].firstCell, m->runs[run].cells};
}
double Field::volume(int run) const { return m->runs[run].volume_m3; }
double Field::stretchStart(int run, int stretch) const { return m->runs[run].stretchStart[stretch]; }

double Field::at(int run, double volumeFraction) const
{
    const Work& w = *m;
    const RunCells& r = w.runs[run];
    const double* v = w.volume.data() + r.firstCell;
    double place = std::clamp(volumeFraction, 0.0, 1.0) * r.heldVolume_m3;
    std::size_t c = 0;
    while (c + 1 < r.cells && place > v[c])
        place -= v[c++];
    const double own = w.waterNow(r.firstCell + c);
    if (w.mixedCell[r.firstCell + c])
        return own;
    // Beyond the run's end: where water comes in, what stands at that face; where it goes out, what left last.
    const auto beyond = [&](bool atFrom) -> remap::Beyond {
        const RunState& s = w.runState[run];
        if (!s.moving)
            return {own, v[c]};
        const std::size_t lane = s.forward == atFrom ? w.firstLane(run) : w.lastLane(run);
        if (s.forward != atFrom)
            return {w.state[lane].outflow, w.state[lane].beyondVolume};
        const int j = w.upstream(lane);
        return {j < 0 ? s.supply : w.junctions[j].now, 0};
    };
    const remap::Beyond before = c > 0 ? remap::Beyond{w.waterNow(r.firstCell + c - 1), v[c - 1]} : beyond(true);
    if (!w.runState[run].moving && w.runState[run].heated && r.cells > 2 && (c == 0 || c + 1 == r.cells)) {
        const std::size_t first = r.firstCell + (c == 0 ? 2 : c - 2), next = r.firstCell + (c == 0 ? 1 : c - 1);
        const double outward =
            remap::slopeAtEnd({w.waterNow(first), w.volume[first]}, {w.waterNow(next), w.volume[next]}, {own, v[c]});
        return own + (c == 0 ? -outward : outward) * (std::min(place, v[c]) - 0.5 * v[c]);
    }
    const remap::Beyond after =
        c + 1 < r.cells ? remap::Beyond{w.waterNow(r.firstCell + c + 1), v[c + 1]} : beyond(false);
    const double slope = remap::slopeBetween(before, {own, v[c]}, after);
    return own + slope * (std::min(place, v[c]) - 0.5 * v[c]);
}

double Field::roughMean(int run) const
{
    const RunCells& r = m->runs[run];
    const double* t = m->node(0) + r.firstCell;
    const double* v = m->volume.data() + r.firstCell;
    double heat = 0;
    for (std::size_t c = 0; c < r.cells; ++c)
        heat += t[c] * v[c];
    return heat / r.heldVolume_m3;
}

void Field::roughMeans(int run, std::span<double> stretches) const
{
    std::fill(stretches.begin(), stretches.end(), 0.0);
    const RunCells& r = m->runs[run];
    for (std::size_t g = r.firstGroup; g < r.firstGroup + r.groups; ++g) {
        const Group& group = m->groups[g];
        double sum = 0;
        for (std::size_t c = group.firstCell; c < group.firstCell + group.cells; ++c)
            sum += m->node(0)[c];
        for (std::size_t p = group.firstPiece; p < group.firstPiece + group.pieces; ++p)
            stretches[static_cast<std::size_t>(m->pieces[p].stretch)] += m->pieces[p].share * sum;
    }
}

double Field::meanTemperature(int run) const
{
    const auto t = cells(run);
    const auto v = cellVolumes(run);
    double heat = 0;
    for (std::size_t c = 0; c < t.size(); ++c)
        heat += t[c] * v[c];
    return heat / m->runs[run].heldVolume_m3;
}

double Field::meanTemperature(int run, int stretch) const
{
    m->settle(static_cast<std::size_t>(run));
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
    m->settle(static_cast<std::size_t>(run));
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

double Field::layerTemperature(int run, int stretch, double height) const
{
    for (const Layers& tank : m->tanks)
        if (tank.run == run && tank.stretch == stretch) {
            m->settle(static_cast<std::size_t>(run));
            const double place = std::floor(std::clamp(height, 0.0, 1.0) * static_cast<double>(tank.cells));
            return m->node(0)[tank.cellAt(std::min(static_cast<std::size_t>(place), tank.cells - 1))];
        }
    return meanTemperature(run, stretch);
}

Field::Ledger Field::ledger() const
{
    for (std::size_t r = 0; r < m->runs.size(); ++r)
        m->settle(r);
    Ledger ledger = m->ledger;
    ledger.stored = m->stored();
    return ledger;
}

}  // namespace tapward::thermal
