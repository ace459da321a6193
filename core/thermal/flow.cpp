// SPDX-License-Identifier: GPL-3.0-or-later
// The water's own way: order of the lanes, what leaves each, their shift; and the step as a whole.
#include <algorithm>
#include <cmath>
#include <optional>

#include "thermal/field_work.h"
#include "thermal/remap.h"

namespace tapward::thermal {

namespace {

constexpr double kRestShare = 1e-9;  // of a run's volume per step: below it the water stands
constexpr int kMostParts = 1 << 20;

}  // namespace

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
        slopes[last] =
            s.beyondVolume > 0 && s.beyondForward == s.forward
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
        remap::shift(t, v, flowOrder(turnedInverse, inverseVolume, lane), slopes, l.cells, l.smallest_m3, s.shift,
                     inlet, scratch.data());
        if (!s.forward)
            std::reverse_copy(t, t + l.cells, straight);
        if (grid.dispersion)
            remap::disperse(straight, volume.data() + l.firstCell, dispersion.data() + l.firstCell, l.cells,
                            runState[l.run].largest, dt_s, scratch.data());
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
    std::optional<PhaseTimer> timer(std::in_place, w.phases, &PhaseTimes::exchange);
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
        if (moving) {
            w.settle(r);
            w.runState[r].stood = 0;
            if (w.grid.dispersion)
                w.reckonDispersion(r, std::abs(flow));
            w.exchangeRun(r, std::abs(flow), 0.5 * dt_s);
        } else {
            w.stand(r, dt_s);
        }
    }
    if (!anyMoves)
        return;
    timer.emplace(w.phases, &PhaseTimes::advection);
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
    timer.emplace(w.phases, &PhaseTimes::exchange);
    for (std::size_t r = 0; r < w.runs.size(); ++r)
        if (w.runState[r].moving)
            w.exchangeRun(r, std::abs(flowOf(r)), 0.5 * dt_s);
}

}  // namespace tapward::thermal
