// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <memory>
#include <span>
#include <vector>

#include "base/phase_times.h"

namespace tapward::thermal {

/// A stretch of one kind in a run: a tube, or a part's body of water and metal.
struct Stretch {
    double length_m = 0;            ///< > 0 for a tube; 0 for a part's body
    double bore_m = 0.012065;
    double wall_m = 0.0019;         ///< tube wall thickness
    double wallConductivity = 0.4;  ///< W/(m K)
    double wallVolumeHeat = 2.16e6; ///< J/(m³ K), rho c of the wall
    double insulation_m = 0;        ///< thickness; 0 bare
    double insulationConductivity = 0.038;
    double loss_W_mK = 0;           ///< > 0: heat loss of the tube, standing water to bay, per metre, as measured
                                    ///< by a cool-down; replaces the reckoned insulation and outside film
    double ambient = 21;            ///< °C of the bay
    // A part's body (length_m == 0):
    double volume_m3 = 0;           ///< water in it
    double body_J_K = 0;            ///< metal in contact with the water
    double bodyFilm_W_K = 0;        ///< conductance water-body at 2e-5 m³/s and above, falling to 0.3 of it at
                                    ///< rest; 0 = tight coupling
    double loss_W_K = 0;            ///< body to surroundings
    int bodyCells = 1;              ///< well-mixed cells in series; of a coil the grid says how many
    double layerLink_W_K = 0;  ///< > 0: a tank, its cells layers one above the other, the `from` end's the lowest;
        ///< between neighbours this conductance; what is warmer than the water above it rises
        ///< and mixes with it; heat put in goes into the lowest. Such a stretch stands free
    bool topFirst = false;  ///< ... the `from` end's layer is the highest
    double bodyBore_m = 0;  ///< > 0: a coil of this bore, as long as its volume; water disperses
        ///< in it as in a tube; metal in tight coupling is one with its water.
        ///< Such a stretch is alone in its run
};

/// Options for the grid.
///
/// Pieces smaller than half a cell (short tubes; bodies with little metal) join the next tube cell, or each
/// other: that cell has the sum of their water and of their walls' heat layer by layer, their conductances
/// side by side; a body's metal counts to the innermost layer. Volume and heat capacity stay exact. A metal
/// wall, whose radial resistance is small against its film, has one layer whatever wallLayers says.
struct Grid {
    double cell_m = 0.30;  ///< about; tubes are cut into equal cells, short pieces join their neighbours
    int wallLayers = 4;  ///< 0..8 radial layers, thin near the water; 0 = no wall heat (for checks only)
    bool filmOnlyWall = false;  ///< no resistance inside the wall (for checks only; with one layer this is the
        ///< lumped wall of Anzelius and Schumann; one layer without it is the lumped
        ///< wall behind film and thickness/(3 k) in series)
    bool dispersion = true;  ///< false: plug flow (for checks only)
};

/// Water on its way through the runs of a drawing: advection, axial dispersion, film, wall with radial
/// conduction, loss to the surroundings, mixing at junctions; standing and reversing flow.
///
/// Runs are the same chains as the network's links (same indexes, same junctions). Flow is volume flow;
/// heat is counted with the constant water::referenceVolumeHeat(), so it balances to rounding.
/// Scheme: flux-form semi-Lagrangian advection with monotone piecewise-linear reconstruction (van Leer
/// 1977; unconditionally stable, no new extremes, conservative for any Courant number), split (Strang)
/// from the exact solution of the linear exchange water-wall-surroundings in each cell. Second order in the step: water
/// that comes in within a step is a straight line, readings are of the step's end.
class Field {
public:
    Field();
    ~Field();
    Field(Field&&) noexcept;
    Field& operator=(Field&&) noexcept;

    int addJunction();
    /// @param from,to  junction index or -1 for the outside (an outlet or a supply).
    /// @return run index. `stretches` not empty; a run with no volume at all is given a small one (10 mL).
    int addRun(int from, int to, std::vector<Stretch> stretches);
    void prepare(const Grid& grid = {});

    int runCount() const;
    int cellCount() const;

    void fill(double celsius);  ///< everything, walls included
    void fillRun(int run, double celsius);
    void setAmbient(int run, int stretch, double celsius);
    void setSupply(int run, double celsius);  ///< water entering from the outside end of this run
    void setSource(int run, int stretch, double watts);  ///< heat put into the body of that stretch (or its water)
    void setExtraLoss(int run, int stretch, double watts_K);  ///< of a body to its surroundings, beside its own

    /// One step of dt_s with flows per run (m³/s, positive from -> to). Any dt; accuracy wants dt small
    /// against changes at the inlets: 0.5 s while water moves. No allocation. Flows should balance at each
    /// junction; a surplus or lack is counted in the ledger as out or in at the junction's temperature.
    void step(double dt_s, std::span<const double> flow_m3s);

    /// Adds the time of each part of a step to these; null = looks at no clock.
    void timeInto(PhaseTimes* phases);

    // --- reading, °C ---
    double outletTemperature(int run) const;  ///< mean of what left it in the last step at its downstream end;
        ///< at rest the end cell
    double leavingTemperature(int run) const;  ///< what leaves it at the end of the last step; at rest the end cell
    double junctionTemperature(int junction) const;  ///< mixed inflow at the end of the last step; kept at rest
    double at(int run, double volumeFraction) const;  ///< reconstructed water temperature 0 (from) .. 1 (to)
    /// Volume mean as of the last exchange with the walls: half a step old, five seconds where water stands. For density
    /// and viscosity.
    double roughMean(int run) const;
    void roughMeans(int run, std::span<double> stretches) const;  ///< the same of each stretch
    double meanTemperature(int run) const;  ///< volume mean
    double meanTemperature(int run, int stretch) const;
    double bodyTemperature(int run, int stretch) const;
    /// Water of a tank's layer at this share of its height, 0 (lowest) .. 1; of any other stretch its mean.
    double layerTemperature(int run, int stretch, double height) const;
    /// Volume fraction (0..1 along the run) of the `from` end of stretch k; stretch count gives 1.
    double stretchStart(int run, int stretch) const;
    std::span<const double> cells(int run) const;  ///< water temperature per cell, from -> to
    std::span<const double> cellVolumes(int run) const;
    double volume(int run) const;  ///< m³

    /// Heat ledger since prepare()/fill(), J, relative to 0 °C: closes as
    /// stored(now) - stored(start) = in - out + sources - lost.
    struct Ledger {
        double in = 0, out = 0, sources = 0, lost = 0, stored = 0, storedAtStart = 0;
        double residual() const { return (stored - storedAtStart) - (in - out + sources - lost); }
    };
    Ledger ledger() const;

private:
    struct Work;
    std::unique_ptr<Work> m;
};

}  // namespace tapward::thermal
