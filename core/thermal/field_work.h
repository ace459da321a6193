// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <array>
#include <cstddef>
#include <cstdint>
#include <vector>

#include "thermal/cells.h"
#include "thermal/exchange.h"
#include "thermal/run.h"
#include "water/water.h"

namespace tapward::thermal {

inline constexpr double kSettled_s = 20;  ///< tubes that have stood this long change by less than 0.05 K/s:
inline constexpr double kSettledStep_s = 5;  ///< their exchange is taken this much at a time
inline constexpr double kLargeBody_m3 = 1e-3;  ///< whose temperature is asked for at each step
inline constexpr int kSlots = 2;  ///< times a group keeps its propagators for: the usual step and an odd one

/// How much of a step an exchange is over.
enum class Span { Half, Whole };

/// What a group remembers between steps.
struct GroupState {
    double ambient = 21;
    double waterWatts = 0, bodyWatts = 0;    // per cell
    bool hasSource = false;                  // ever
    double flow = -1, water = 0;             // at the last reckoning of the inside films
    double axial = 0;                        // axial dispersion, m²/s
    double skin = -1e9;                      // at that of the outside films
    std::array<double, kMostNodes> mean{};   // of each node at the last exchange
    std::array<double, kSlots> time{};       // of each pair of propagators; 0 = empty
    int nextSlot = 0;
    int slot = 0;                            // used last
};

/// ... a run
struct RunState {
    double supply = 20;
    bool moving = false, forward = true;
    bool defers = false;        // no coil, no tank and no heat put in: its exchange may wait
    bool coil = false;
    bool heated = false;        // a coil with its heat on: what left it tells nothing of the slope at its end
    bool asleep = false;        // all of it as warm as its bay: standing changes nothing
    double stood = 0;           // s since the water moved
    double owed = 0;            // s of exchange not done yet while it stands
    double owedHalf = 0;        // length of the last step, if the second half of its exchange is not done yet
    double filmsAt = 0;         // flow of that step
    double filmFlow = -1, filmMean = 0;
    double dispersionStep = 0;  // the step it was reckoned for
    double largest = 0;         // of dispersion, 1/s
};

/// ... a lane
struct LaneState {
    bool moving = false, forward = true;
    double shift = 0;           // m³ in this step or part of it
    double outHeat = 0;         // K m³ that left in this step or part of it
    double left = 0;            // K m³ that left in the whole step
    double leaving = 20;        // mean of it
    double outflow = 20;        // mean of what left last
    double face = 20;           // what leaves at the end of the step
    double end = 20;            // water of its last cell then
    double back = 20;           // the same before the second half of the exchange: last of what left
    double inletBack = 20;      // last of what came in
    double inflow = 20;         // what came in last
    double beyondVolume = 0;    // m³ that left last, while the flow keeps its direction
    double outflowBefore = 20;  // the same of the step before
    double beyondBefore = 0;
    bool beyondForward = true;
    bool evaluated = false;
    bool explicitly = false;    // a mixed cell that broke a ring: what leaves is what was in it
};

/// What is set from outside for a stretch.
struct StretchState {
    double watts = 0;
    double ambient = 21;
    double extraLoss_W_K = 0;
};

/// All of a Field: flat arrays over cells, groups, lanes, junctions; nothing grows after prepare().
struct Field::Work {
    struct Junction {
        double temperature = 20;           // of the last part of a step
        double now = 20;                   // at the end of the last step with flow
        double nowVolume = 0, nowHeat = 0;
        double volumeIn = 0, heatIn = 0, volumeOut = 0;
        double backHeat = 0;               // of the last water that came in, as if it were all
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
    std::vector<Propagator> propagators;  // of each group and slot: half, whole
    std::vector<std::uint32_t> groupOf;   // of each cell
    std::vector<std::vector<StretchState>> stretchState;
    int nodes = 1;                        // most of any group
    std::size_t cells = 0;
    std::vector<double> temperature;      // nodes x cells: water, then the layers
    std::vector<double> volume, inverseVolume;
    std::vector<double> dispersion;       // m³/s between cell i and i + 1
    std::vector<double> slope, turned, turnedVolume, turnedInverse, scratch;
    std::vector<std::size_t> ready;
    std::vector<char> mixedCell;
    std::vector<Layers> tanks;
    std::vector<double> poolHeat, poolVolume;  // of layers that mix, as many as the most of any tank
    std::vector<std::size_t> poolEnd;
    Ledger ledger;
    PhaseTimes* phases = nullptr;

    double* node(int n) { return temperature.data() + static_cast<std::size_t>(n) * cells; }
    const double* node(int n) const { return temperature.data() + static_cast<std::size_t>(n) * cells; }

    void startLedger();
    double stored() const;
    void fill(std::size_t run, double celsius);
    void noteSleep(std::size_t run);
    void reckonSources(std::size_t run);
    void reckonFilms(std::size_t group, double flow);
    void reckonDispersion(std::size_t run, double flow, double dt_s);
    double splitDispersion(std::size_t group, double speed_m_s, double dt_s) const;
    void exchangeRun(std::size_t run, double flow, double step_s, Span span);
    void startMoving(std::size_t run, double flow, double dt_s);
    void endMoving(std::size_t run, double flow, double dt_s);
    const Propagator& propagator(std::size_t group, int slot, Span span) const
    {
        return propagators[(group * kSlots + static_cast<std::size_t>(slot)) * 2 + (span == Span::Whole ? 1 : 0)];
    }
    double waterNow(std::size_t cell) const;
    double faceNow(std::size_t lane);
    void readFaces();
    void stand(std::size_t run, double dt_s);
    void layTanks(double dt_s);
    void settle(std::size_t run);
    void advect(double dt_s);
    bool orderExists(double share);
    void prepareSlopes(std::size_t lane);
    void evaluate(std::size_t lane, double inletCelsius);
    void move(std::size_t lane, double dt_s);
    double inletOf(std::size_t lane) const;
    double inletSlope(std::size_t lane, double inletCelsius);
    bool dependsOnInlet(std::size_t lane) const;
    int upstream(std::size_t lane) const { return state[lane].forward ? lanes[lane].from : lanes[lane].to; }
    int downstream(std::size_t lane) const { return state[lane].forward ? lanes[lane].to : lanes[lane].from; }
    double* flowOrder(std::vector<double>& turnedOnes, std::vector<double>& straight, std::size_t lane)
    {
        return (state[lane].forward ? straight : turnedOnes).data() + lanes[lane].firstCell;
    }
    std::size_t lastLane(std::size_t run) const  ///< where water leaves the run
    {
        return runState[run].forward ? runs[run].firstLane + runs[run].lanes - 1 : runs[run].firstLane;
    }
    std::size_t firstLane(std::size_t run) const
    {
        return runState[run].forward ? runs[run].firstLane : runs[run].firstLane + runs[run].lanes - 1;
    }
};

}  // namespace tapward::thermal
