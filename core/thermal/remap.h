// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstddef>

/// The flow-form semi-Lagrangian shift of one run, in flow order (cell 0 at the inlet). Temperatures are
/// means over the cells' volumes; the profile inside a cell is a straight line limited so that it makes no
/// value its neighbours do not have (monotonized central, van Leer 1977, J. Comput. Phys. 23, 276; after
/// Lin & Rood 1996, Mon. Weather Rev. 124, 2046 for shifts of more than a cell).
namespace tapward::thermal::remap {

/// Water next to the first or the last cell: its mean and its volume.
struct Beyond {
    double celsius;
    double volume_m3;
};

/// Water that comes in within a step: its mean, and the slope (K/m³) towards what came in before.
struct Inflow {
    double celsius;
    double slope;
};

/// Slopes (K/m³) of cells 1..n-2 from their neighbours; those at the ends by `firstSlope` and `lastSlope`.
void innerSlopes(const double* t, const double* v, std::size_t n, double* slope);
/// Slope of a cell between water on both sides.
double slopeBetween(const Beyond& before, const Beyond& cell, const Beyond& after);

/// Slope of a cell at the end of a run from the two before it: their difference, with no more change of it than there is
/// between those two.
double slopeAtEnd(const Beyond& first, const Beyond& before, const Beyond& cell);

/// Heat (K m³) of the last `shift` of the run, inlet water counted where it reaches through.
/// @param back  the last of it
double outflow(const double* t, const double* v, const double* slope, std::size_t n, double shift_m3,
               double inletCelsius, double& back);

/// Shifts the run by `shift`; `scratch` holds n values.
/// @param smallest  the smallest cell volume, picks the quick way when no shift passes a whole cell.
void shift(double* t, const double* v, const double* inverseV, const double* slope, std::size_t n, double smallest,
           double shift_m3, const Inflow& inlet, double* scratch);

/// Axial dispersion between the cells of a run: conductance[i] (m³/s) between i and i + 1. Explicit where
/// that keeps every weight positive, else implicit (backward Euler): conservative and monotone either way.
/// @param largest  largest of (conductance sum of a cell) / volume, 1/s
void disperse(double* t, const double* v, const double* conductance, std::size_t n, double largest, double dt_s,
              double* scratch);

}  // namespace tapward::thermal::remap
