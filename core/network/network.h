// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstdint>
#include <memory>
#include <span>
#include <vector>

#include "network/law.h"

namespace tapward::network {

inline constexpr int kOutside = -1;  ///< the open air, 0 Pa gauge: every outlet and supply ends here

/// One element inside a link, with the water in it. The simulation writes density, viscosity and the
/// law's setting between solves.
struct Element {
    Law law;
    double rise_m = 0;       ///< height of the link-wise `to` end above the `from` end
    double density = 998.2;  ///< kg/m³
    double viscosity = 1e-3; ///< Pa s
    bool reversed = false;   ///< the law faces against the link: its own forward is to -> from
};

/// A chain of elements in series between two junctions (or the outside): one flow.
struct Link {
    int from = kOutside;
    int to = kOutside;
    std::vector<Element> elements;
};

enum class Outcome {
    Solved,      ///< residual below 1e-9 kg/s at every junction (or 1e-14 of flows beyond 100 m³/s)
    NotSettled,  ///< iterations ran out; flows are the best found, residual says how far
};

struct Solution {
    Outcome outcome = Outcome::Solved;
    std::vector<double> flow_m3s;     ///< per link, positive from -> to; exactly 0 through a shut one
    std::vector<double> pressure_Pa;  ///< per junction, gauge; NaN where `isolated`
    std::vector<std::uint8_t> isolated;  ///< junctions with no open way to any fixed pressure and no one-way
                                         ///< inlet at rest from where there is one (trapped or closed loop)
    double massResidual_kgs = 0;      ///< largest over junctions
    double energyResidual_Pa = 0;     ///< largest mismatch between link loss and pressure difference; what
                                      ///< is left moves flows by less than about 1e-8 m³/s, as a rule 1e-10
    int iterations = 0;
};

/// Flows in a looped network: the minimum of the strictly convex content function
/// sum over links of the integral of loss dq (Cherry 1951; Millar 1951; Birkhoff & Diaz 1956), found by
/// Newton's method on mass-balanced flows, sparse LDL^T on the junction matrix. The line search looks for
/// where the content's slope along the step crosses zero; that slope is a sum of losses, so it is exact and
/// no integral of a friction formula is needed. One-way links are bounds on the flow: held at exactly zero
/// until the pressure across them says otherwise, never a steep law or a guess that flips. The search is on
/// a strictly convex function, so it settles for every drawing, the senseless ones included. It starts from
/// the last solution and, after prepare(), makes no allocation. At rest, a part cut off by one-way links
/// stands at the lowest pressure its inlets allow.
class Network {
public:
    Network();
    ~Network();
    Network(Network&&) noexcept;
    Network& operator=(Network&&) noexcept;

    int addJunction();
    int addLink(Link link);
    /// Builds index arrays, the matrix pattern and work arrays. Call once after the last add.
    void prepare();

    int junctionCount() const;
    int linkCount() const;
    std::span<Element> elements(int link);              ///< settings may be changed between solves
    std::span<const Element> elements(int link) const;

    /// Flows now. The reference stays valid until the next solve.
    const Solution& solve();
    void forgetStart();  ///< next solve starts from rest

    /// Pressure lost in each element of a link at the solved flow, Pa, hydrostatic part excluded.
    void elementLosses(int link, std::span<double> losses) const;

private:
    struct Work;
    std::unique_ptr<Work> m;
};

}  // namespace tapward::network
