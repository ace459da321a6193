// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string_view>
#include <vector>

#include "study/presses.h"

namespace tapward::study {

/// What a tankless heater does with water of one flow and one inlet temperature, both held; in rising order of
/// what it can do to people and to itself.
enum class FireOutcome {
    DoesNotLight,        ///< flow below what it lights at
    Holds,               ///< stays lit near its setpoint
    OvershootsSetpoint,  ///< minimum fire lifts the outlet above the setpoint
    OverOutletLimit,     ///< ... and above the limit at the outlets
    Cycles,              ///< its own limit puts the burner out and lets it light again
    LocksOut             ///< its over-temperature switch opens
};
std::string_view id(FireOutcome outcome);     ///< "overshoots"; stable
Text title(FireOutcome outcome);  ///< "Overshoots its setpoint"

/// Least possible outlet temperature of a lit burner: inlet + minimum fire delivered / (flow rho c), the
/// heating identity. @pre flow above 0
double leastOutlet_C(const heater::TanklessSpec& spec, double flow_m3s, double inlet_C);

struct FireMapOptions {
    int flows = 48, inlets = 36;      ///< cells of the map, 2..400 each
    double mostFlow_m3s = 0;          ///< 0 = as the loop and the heater need
    double leastInlet_C = 5, mostInlet_C = 80;
    double outletLimit_C = kOutletLimit_C;
    double overshoot_K = 3;           ///< above the setpoint counts as overshoot
    int presses = 3;                  ///< of the path; 0 = no path
    std::stop_token stop = {};
};

/// The loop on its way over the map.
struct FirePathPoint {
    double t_s, flow_m3s, inlet_C, outlet_C;
    int press;  ///< 1 ...
};

struct FireMap {
    document::PartId heater = document::kNoPart;
    std::vector<double> flow_m3s, inlet_C;  ///< cell centres, rising
    std::vector<FireOutcome> outcomes;      ///< [inlet * flows + flow]
    std::vector<double> outlet_C;           ///< settled outlet there (mean of the last half minute)
    double activationFlow_m3s = 0, holdFlow_m3s = 0, setpoint_C = 0, heaterLimit_C = 0, outletLimit_C = 0;
    /// Per flow: the inlet at which minimum fire alone lifts the outlet to the setpoint. Above it a lit burner
    /// overshoots, whatever it modulates to.
    std::vector<double> setpointInlet_C;
    std::vector<FirePathPoint> path;
    FireOutcome at(std::size_t inlet, std::size_t flow) const { return outcomes[inlet * flow_m3s.size() + flow]; }
    /// Outcome of the cell nearest to this water. @pre the map has cells
    FireOutcome nearest(double flow_m3s, double inlet_C) const;
};

/// How bad, rising: 0 where it does not light or holds, highest where it locks out.
int rank(FireOutcome outcome);

/// The map of the first tankless heater, from its own model: exchanger as one mixed volume, two minutes at
/// each flow and inlet. @return a Problem without a tankless heater, or when stopped.
Result<FireMap> fireMap(const document::Drawing& drawing, const FireMapOptions& options = {});

}  // namespace tapward::study
