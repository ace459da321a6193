// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <array>
#include <cstddef>
#include <vector>

#include "thermal/cells.h"
#include "thermal/exchange.h"
#include "thermal/run.h"
#include "water/water.h"

namespace tapward::thermal {

inline constexpr double kSettled_s = 20;  ///< tubes that have stood this long change by less than 0.05 K/s:
inline constexpr double kSettledStep_s = 1;  ///< their exchange is taken this much at a time
inline constexpr int kSlots = 3;  ///< propagators kept per group: whole step, half step, an odd one

/// What a group remembers between steps.
struct GroupState {
    double ambient = 21;
    double waterWatts = 0, bodyWatts = 0;    // per cell
    bool hasSource = false;                  // ever
    double flow = -1, water = 0;             // at the last reckoning of the inside films
    double skin = -1e9;                      // at that of the outside films
    std::array<double, kMostNodes> mean{};   // of each node at the last exchange
    std::array<double, kSlots> time{};       // of each propagator; 0 = empty
    int nextSlot = 0;
};

/// ... a run
struct RunState {
    double supply = 20;
    bool moving = false, forward = true;
    bool tubesOnly = false;     // and no heat put in
    double stood = 0;           // s since the water moved
    double owed = 0;            // s of exchange not done yet
    double filmFlow = -1, filmMean = 0;
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
    double inflow = 20;         // what came in last
    double beyondVolume = 0;    // m³ that left last, while the flow keeps its direction
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
    PhaseTimes* phases = nullptr;

    double* node(int n) { return temperature.data() + static_cast<std::size_t>(n) * cells; }
    const double* node(int n) const { return temperature.data() + static_cast<std::size_t>(n) * cells; }

    void startLedger();
    double stored() const;
    void noteMeans(std::size_t run);
    void reckonSources(std::size_t run);
    void reckonFilms(std::size_t group, double flow);
    void reckonDispersion(std::size_t run, double flow);
    void exchangeRun(std::size_t run, double flow, double time_s);
    void stand(std::size_t run, double dt_s);
    void settle(std::size_t run);
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

}  // namespace tapward::thermal
