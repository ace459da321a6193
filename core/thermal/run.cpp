// SPDX-License-Identifier: GPL-3.0-or-later
#include "thermal/run.h"

#include <algorithm>

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
    for (std::size_t r = 0; r < w.runs.size(); ++r) {
        const auto first = w.lanes.begin() + static_cast<std::ptrdiff_t>(w.runs[r].firstLane);
        w.runState[r].tubesOnly = std::none_of(first, first + static_cast<std::ptrdiff_t>(w.runs[r].lanes),
                                               [](const Lane& l) { return l.mixed; })
                                  && std::none_of(w.runs[r].stretches.begin(), w.runs[r].stretches.end(),
                                                  [](const Stretch& s) { return s.bodyBore_m > 0; });
    }
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

void Field::timeInto(PhaseTimes* phases) { m->phases = phases; }

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
    m->runState[run].owed = 0;
    m->runState[run].stood = kSettled_s;  // water and wall are at one temperature
    m->noteMeans(run);
    m->startLedger();
}

void Field::setAmbient(int run, int stretch, double celsius)
{
    if (m->stretchState[run][stretch].ambient == celsius)
        return;
    m->settle(run);
    m->stretchState[run][stretch].ambient = celsius;
    m->reckonSources(run);
}

void Field::setSupply(int run, double celsius) { m->runState[run].supply = celsius; }

void Field::setSource(int run, int stretch, double watts)
{
    if (m->stretchState[run][stretch].watts == watts)
        return;
    m->settle(run);
    m->stretchState[run][stretch].watts = watts;
    m->runState[run].tubesOnly = false;  // with heat of its own it never settles
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

double Field::outletTemperature(int run) const
{
    const RunState& s = m->runState[run];
    if (s.moving)
        return m->state[m->lastLane(run)].leaving;
    const RunCells& r = m->runs[run];
    return m->node(0)[r.firstCell + (s.forward ? r.cells - 1 : 0)];
}

double Field::junctionTemperature(int junction) const { return m->junctions[junction].shown; }

std::span<const double> Field::cells(int run) const
{
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
    const auto t = cells(run);
    const auto v = cellVolumes(run);
    double place = std::clamp(volumeFraction, 0.0, 1.0) * m->runs[run].heldVolume_m3;
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
    return heat / m->runs[run].heldVolume_m3;
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
