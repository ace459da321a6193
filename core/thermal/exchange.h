// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <array>
#include <cstddef>

namespace tapward::thermal {

inline constexpr int kMostLayers = 8;
inline constexpr int kMostNodes = kMostLayers + 1;  ///< the water and its wall layers

/// The exchange inside one cell: a ladder water - layer 1 - ... - layer n - surroundings.
/// capacity[i] dT_i/dt = link[i-1] (T_{i-1} - T_i) + link[i] (T_{i+1} - T_i) (+ sources), the last node
/// losing `loss` W/K to the surroundings.
struct Ladder {
    int nodes = 1;
    std::array<double, kMostNodes> capacity{};  ///< J/K, all > 0
    std::array<double, kMostNodes> link{};      ///< W/K, link[i] between node i and i + 1
    double loss = 0;                            ///< W/K, last node to surroundings
};

/// The exact solution of a ladder over a time: y(t) = E y(0) + response * watts, y = T - T_surroundings.
struct Propagator {
    std::array<double, kMostNodes * kMostNodes> e{};  ///< row-major, nodes x nodes
    std::array<double, kMostNodes> leak{};      ///< 1 - row sum: what of the surroundings comes in
    std::array<double, kMostNodes> lossRow{};   ///< J lost per K of each node at the start
    std::array<double, kMostNodes> waterSource{};  ///< K per W put into the water
    std::array<double, kMostNodes> bodySource{};   ///< K per W put into the first layer
    double waterSourceLoss = 0;                 ///< J lost per W put into the water
    double bodySourceLoss = 0;
};

/// Matrix exponential by uniformization (every term positive, so no cancellation and no overshoot), then
/// doubling of the time. Accurate to rounding for any stiffness.
/// The heat lost is integrated beside it, not taken from the balance, so that the ledger is a check.
/// @param half,whole  for half the time and for all of it.
void solveLadder(const Ladder& ladder, double time_s, bool withSources, Propagator& half, Propagator& whole);

/// Cells side by side that share one propagator. nodes[i] points at the temperatures of node i.
/// @return heat lost to the surroundings, J; sums[i] = sum of node i before the step.
double exchange(const Propagator& p, int nodes, double* const* temperature, std::size_t cells, double surroundings,
                double waterWatts, double bodyWatts, double* sums);

}  // namespace tapward::thermal
