// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <span>
#include <vector>

#include "study/plant.h"

namespace tapward::study {

/// What feeds the coach's 12 V side.
struct Supply {
    double volts = 12.6;      ///< behind the internal resistance
    double internal_ohm = 0;  ///< 0 when `volts` was read at the battery's posts under load
    friend bool operator==(const Supply&, const Supply&) = default;
};

/// The drawing's battery with nothing connected, and its internal resistance; the usual volts without one.
Supply batterySupply(const Plant& plant);

/// One consumer with its own wire.
struct Load {
    enum class Kind { Circulator, Valve, Controller, Heater };
    document::PartId part = document::kNoPart;
    Kind kind = Kind::Circulator;
    int branch = 0;
    double current_A = 0;        ///< rated (circulator: at rated volts and run-out flow), or while it works
    double rest_A = 0;           ///< drawn all day
    double start_A = 0;          ///< inrush
    double minimumVolts = 0;     ///< does not work below
    double length_m = 0;         ///< one way, 0 = not known
    int gauge = 14;
    double wire_ohm = 0;         ///< out and back, solid copper at 20 °C, with the relay contact in the way
    // circulator:
    double ratedVolts = 12;
    double maximumVolts = 60;    ///< its electronics hold the speed above
    double noFlow_A = 0;         ///< 0 = not known
    double runOut_m3s = 0;       ///< at rated volts
};

/// A fuse with what hangs on it; loads without a fuse have a branch of their own.
struct Branch {
    document::PartId fuse = document::kNoPart;
    double feed_ohm = 0;         ///< fuse and shared wire, out and back
    double rating_A = 0, other_A = 0, socket_A = 0;  ///< 0 = none
    double feed_m = 0;
    int gauge = 14;              ///< thinnest behind the fuse
};

/// Volts at every load, solved for all currents at once: battery, internal resistance, fuse and shared
/// wire, own wire and relay contact, load.
///
/// Current of a circulator: I = s² (I0 + (I1 - I0) q / (s Q)), s = volts / rated volts, Q its run-out flow,
/// I1 the sheet's current, I0 that against a shut valve. Basis: the affinity laws (shaft power with s³, so
/// current with s² where s goes with volts; White, Fluid Mechanics, ch. 11) and, for the flow, power of a
/// small radial pump rising in a straight line from shut-off (common practice, no published source). Without
/// I0 the current is the same at every flow. The other loads draw a constant current.
///
/// No current falls with rising volts, so there is one answer; a higher supply lowers the volts at no load,
/// and less resistance on a load's own way never those at that load (its greater current may take a little
/// from the others). No allocation after the constructor.
class WiringNet {
public:
    struct Draw {
        bool on = false;
        double flow_m3s = 0;  ///< through a circulator
        double share = 1;     ///< of its current, for a start or a fault
        friend bool operator==(const Draw&, const Draw&) = default;
    };

    WiringNet() = default;
    explicit WiringNet(const Plant& plant);
    /// For studies: the same wiring with other loads.
    WiringNet(std::vector<Load> loads, std::vector<Branch> branches);

    const std::vector<Load>& loads() const { return m_loads; }
    const std::vector<Branch>& branches() const { return m_branches; }
    int indexOf(document::PartId part) const;  ///< of the load, -1 = not a load

    std::vector<Draw>& draws() { return m_draws; }  ///< one per load, to be set before solve()
    void solve(const Supply& supply);

    double volts(int load) const { return m_volts[static_cast<std::size_t>(load)]; }
    double current_A(int load) const { return m_currents[static_cast<std::size_t>(load)]; }
    double posts_V() const { return m_posts_V; }  ///< at the battery
    double total_A() const { return m_total_A; }
    /// Speed share of a circulator at the volts found; 0 below its least.
    double speed(int load) const;

private:
    double take(std::size_t load, double branchVolts, bool keep);
    double takeBranch(std::size_t branch, double postVolts, bool keep);
    double takeAll(double postVolts, bool keep);

    std::vector<Load> m_loads;
    std::vector<Branch> m_branches;
    std::vector<Draw> m_draws, m_drawsSolved;
    Supply m_solvedFor{-1, 0};
    std::vector<double> m_volts, m_currents;
    std::vector<std::vector<std::size_t>> m_onBranch;
    double m_posts_V = 0, m_total_A = 0;
};

/// Speed share of a circulator with these volts at its terminals; 0 below its least.
double circulatorSpeed(const Load& pump, double volts);

}  // namespace tapward::study
