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

/// The water that came in within the step, as a straight line: K per m³ of what came before. Its mean, its last and the
/// last of the step before are known; no end of the line passes the two lasts.
double Field::Work::inletSlope(std::size_t lane, double inletCelsius)
{
    LaneState& s = state[lane];
    const int j = upstream(lane);
    const double back =
        j < 0 || !(junctions[j].volumeIn > 0) ? inletCelsius : junctions[j].backHeat / junctions[j].volumeIn;
    const double front = s.beyondVolume > 0 && s.beyondForward == s.forward ? s.inletBack : inletCelsius;
    s.inletBack = back;
    if (s.shift > lanes[lane].volume_m3)
        return 0;  // some of it has passed through: outflow() counted that at its mean
    const double toBack = inletCelsius - back, toFront = front - inletCelsius;
    return toBack * toFront > 0 ? std::copysign(std::min(std::abs(toBack), std::abs(toFront)), toBack) / (0.5 * s.shift)
                                : 0.0;
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
    if (l.cells > 2 && runState[l.run].heated)
        slopes[last] = remap::slopeAtEnd({t[last - 2], v[last - 2]}, {t[last - 1], v[last - 1]}, {t[last], v[last]});
    else if (l.cells > 1)
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
        s.back = held + (s.shift * inletCelsius - s.outHeat) * inverseVolume[l.firstCell];
    } else {
        const bool known = s.beyondVolume > 0 && s.beyondForward == s.forward;
        const remap::Beyond inlet{inletCelsius, s.shift};
        if (l.cells > 1)
            slopes[0] = remap::slopeBetween(inlet, {t[0], v[0]}, {t[1], v[1]});
        else
            slopes[0] = known ? remap::slopeBetween(inlet, {t[0], v[0]}, {s.outflow, s.beyondVolume}) : 0.0;
        s.outHeat = remap::outflow(t, v, slopes, l.cells, s.shift, inletCelsius, s.back);
    }
    s.evaluated = true;
    const int j = downstream(lane);
    if (j >= 0) {
        junctions[j].volumeIn += s.shift;
        junctions[j].heatIn += s.outHeat;
        junctions[j].backHeat += s.shift * s.back;
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
        j.volumeIn = j.heatIn = j.volumeOut = j.backHeat = 0;
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
                     {inlet, inletSlope(lane, inlet)}, scratch.data());
        if (!s.forward)
            std::reverse_copy(t, t + l.cells, straight);
        if (grid.dispersion)
            remap::disperse(straight, volume.data() + l.firstCell, dispersion.data() + l.firstCell, l.cells,
                            runState[l.run].largest, dt_s, scratch.data());
    }
    s.inflow = inlet;
    s.beyondBefore = s.beyondForward == s.forward ? s.beyondVolume : 0;
    s.outflowBefore = s.outflow;
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
                s.beyondVolume = s.beyondBefore = 0;
        }
        anyMoves = anyMoves || moving;
        if (moving) {
            w.startMoving(r, std::abs(flow), dt_s);
            if (w.grid.dispersion)
                w.reckonDispersion(r, std::abs(flow), dt_s);
        } else {
            w.stand(r, dt_s);
        }
    }
    if (!anyMoves) {
        w.layTanks(dt_s);
        return;
    }
    timer.emplace(w.phases, &PhaseTimes::advection);
    // Water that goes round a ring in less than the step: in parts that do not.
    int parts = 1;
    while (parts < kMostParts && !w.orderExists(1.0 / parts))
        parts *= 2;
    for (LaneState& s : w.state) {
        s.shift /= parts;
        s.left = 0;
    }
    for (int p = 0; p < parts; ++p)
        w.advect(dt_s / parts);
    for (LaneState& s : w.state)
        if (s.moving)
            s.leaving = s.left / (s.shift * parts);
    timer.emplace(w.phases, &PhaseTimes::exchange);
    for (std::size_t r = 0; r < w.runs.size(); ++r)
        if (w.runState[r].moving)
            w.endMoving(r, std::abs(flowOf(r)), dt_s);
    w.layTanks(dt_s);
    w.readFaces();
}

/// Water that leaves a lane now: the mean of what left in the last step, drawn on by half a step. (The end cell itself is
/// no witness: where dispersion ends it holds back a little.)
double Field::Work::faceNow(std::size_t lane)
{
    const Lane& l = lanes[lane];
    LaneState& s = state[lane];
    const double own = waterNow(s.forward ? l.firstCell + l.cells - 1 : l.firstCell);
    const double wasThere = s.end;
    s.end = own;
    if (l.mixed || l.cells < 2 || !(s.beyondBefore > 0))
        return own;
    // A coil by the change of its end, which what heats it changes at once; a tube by that of the means.
    const double on =
        runState[l.run].coil
            ? s.outflow + 0.5 * (own - wasThere)
            : s.outflow + (s.outflow - s.outflowBefore) * s.beyondVolume / (s.beyondVolume + s.beyondBefore);
    if (runState[l.run].heated)
        return on;
    // No further than to the water that comes next.
    return std::clamp(on, std::min(s.outflow, own), std::max(s.outflow, own));
}

/// What leaves the lanes and stands at the junctions at the end of a step.
void Field::Work::readFaces()
{
    for (Junction& j : junctions)
        j.nowVolume = j.nowHeat = 0;
    for (std::size_t l = 0; l < lanes.size(); ++l) {
        LaneState& s = state[l];
        if (!s.moving)
            continue;
        s.face = faceNow(l);
        if (const int j = downstream(l); j >= 0) {
            junctions[j].nowVolume += s.shift;
            junctions[j].nowHeat += s.shift * s.face;
        }
    }
    for (Junction& j : junctions)
        if (j.nowVolume > 0)
            j.now = j.nowHeat / j.nowVolume;
}

}  // namespace tapward::thermal
