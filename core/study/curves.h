// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <vector>

#include "study/prediction.h"

namespace tapward::study {

/// A point of a head-by-flow chart; head in metres of the water at the loop's cold start.
struct LoopPoint {
    double flow_m3s = 0;
    double head_m = 0;
};

/// How circulators are joined. Each pump in parallel has its own check valve, as the drawn one has (and its
/// own branch, where two are drawn side by side); two in series share the drawn one.
enum class PumpArrangement { One, TwoInParallel, TwoInSeries };

/// One arrangement of the drawing's circulator at one battery voltage.
struct PumpSet {
    PumpArrangement arrangement = PumpArrangement::One;
    double battery_V = 12;             ///< at the posts
    double pump_V = 0;                 ///< at the pump's terminals, at the working point (no flow: stalled)
    double speed = 0;                  ///< share of rated
    std::vector<LoopPoint> curve;  ///< head the set gives behind its check valves, by the set's flow; rising flow
    std::optional<LoopPoint> working;  ///< found by solving the whole network with the set in it, not by reading
        ///< the two curves
    double heaterFlow_m3s = 0;  ///< there; what the activation and hold flows are held against
    bool lights = false;  ///< heaterFlow >= activation flow; true where the heater has none
    Message reason;  ///< why there is no working point
};

/// The loop's curve and the sets that could drive it: data for a chart.
struct LoopCurves {
    document::PartId pump = document::kNoPart;  ///< whose sheet is used: the first circulator on the loop
    double water_C = 0;
    std::vector<LoopPoint> system;  ///< head the rest of the loop takes, by flow; valve open, taps shut
    std::vector<PumpSet> sets;  ///< by arrangement, then by voltage
    std::optional<double> activationFlow_m3s, holdFlow_m3s;
    std::optional<double> drawnFlow_m3s;  ///< of the loop as drawn, on its own battery

    const PumpSet* find(PumpArrangement arrangement, double battery_V) const;
};

/// Battery voltages the sets are worked out at: nearly empty, 12 V, full, on the charger.
inline constexpr double kStudyVolts[] = {10.5, 12.0, 13.2, 14.4};

/// @return the reason when no circulator, heater or unbroken loop is drawn. Takes a few milliseconds.
Result<LoopCurves> loopCurves(const document::Drawing& drawing);

}  // namespace tapward::study
