// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstddef>
#include <cstdint>
#include <vector>

#include "network/inner.h"
#include "network/network.h"
#include "network/ready_law.h"
#include "network/sparse_ldlt.h"

namespace tapward::network {

/// The solver's arrays and steps. Junction `outside` (the last one) stands for the open air.
///
/// A one-way link carries flow of one sign only; at zero it may be *held*: it then carries exactly
/// nothing and leaves the system until the pressure across it would push it open. Held and shut links
/// may cut the network into groups of junctions; each group without the open air has one junction
/// whose pressure is fixed for the time being.
struct Network::Work {
    enum class State : std::uint8_t { Open, Held, Shut };

    struct Branch {
        int from = 0, to = 0;  ///< junctions, `outside` included
        int slot = -1;         ///< entry in the matrix, -1 for none
        std::size_t first = 0, end = 0;  ///< its elements in `ready`
        State state = State::Open;
        bool resting = false;  ///< held only for the report, open again in the next solve
        int bound = 0;         ///< +1 never backward, -1 never forward, 0 either way
        double rest_Pa = 0;    ///< hydrostatic part of the loss
        double flow = 0, loss = 0, slope = 1, step = 0;
        double ease = 1;       ///< 1 / slope as factorized
    };

    std::vector<Link> links;
    std::vector<Branch> branches;
    std::vector<ReadyLaw> ready;
    std::vector<std::uint8_t> reversed;
    int junctions = 0;
    int outside = 0;
    bool cold = true;
    double massAllowed = 0;  // kg/s
    double rounding = 0;     // Pa

    std::vector<double> pressure, change, right;  // junctions and the outside; Pa
    std::vector<int> group;                       // junctions and the outside: smallest member
    std::vector<std::uint8_t> grounded;           // junctions whose pressure is held
    std::vector<double> lift;                     // groups: pressure to add
    std::vector<int> lifter;                      // groups: link that asks for it
    std::vector<std::uint8_t> fed;                // junctions and the outside: water can get there from the air
    SparseLdlt matrix;
    Solution solution;

    void prepare();
    const Solution& solve();

    bool refresh();                    ///< laws, states; true when the groups may have changed
    void findGroups();
    void findFed();
    bool leavesUnfed(const Branch& branch) const;  ///< one-way out of what nothing feeds: surely carries nothing
    LawValue valueAt(const Branch& branch, double flow) const;
    void evaluateAt(double share);     ///< loss and slope at flow + share * step
    void direction();                  ///< step and change of pressure; holds links pushed shut
    void solveStep();                  ///< step and change with the matrix as factorized
    double along() const;              ///< slope of the content along the step, per unit share
    bool advance(bool strict);         ///< one step, true when taken in full; strict: never past the lowest
                                       ///< content
    bool polish();                     ///< one more step without new laws, if that is surely enough
    double pushTolerance(const LawValue& value) const;
    bool balanced();                   ///< open links meet their pressure differences
    double reported(const Branch& branch) const;  ///< its flow, what is no flow cut to zero
    double massResidual();             ///< kg/s; also sets massAllowed
    bool release();                    ///< opens held links that are pushed open; true if any
    bool releaseRound();               ///< the same for rounds of held links through several groups
    void settlePressures();            ///< pressures of groups cut off from the air
    void report(Outcome outcome, int iterations);

    double across(const Branch& b) const
    {
        return pressure[static_cast<std::size_t>(b.from)] - pressure[static_cast<std::size_t>(b.to)];
    }
};

}  // namespace tapward::network
