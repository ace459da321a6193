// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstddef>
#include <span>
#include <utility>
#include <vector>

namespace tapward::network {

/// L D L^T of a network matrix: conductances between junctions and from junctions to fixed pressures. The
/// order that keeps the fill small and the pattern of L are found once; factorize() and solve() allocate
/// nothing (Eigen's own factorization does each time, hence this one).
///
/// A pivot is never found by subtraction: it is the junction's own tie to fixed pressure plus its
/// conductances to the junctions not yet eliminated, all above zero. So a part that hangs on the rest by a
/// mere leak, 1e20 times weaker than its own pipes, keeps full accuracy.
/// Method: Grassmann, Taksar & Heyman (1985), Oper. Res. 33(5), 1107-1116, in left-looking sparse form
/// (Davis 2006, Direct Methods for Sparse Linear Systems, ch. 4); order by Eigen's AMD.
class SparseLdlt {
public:
    /// @param pairs  junctions that may be joined, each pair once, no (i, i). Their index is their slot.
    void analyse(int size, std::span<const std::pair<int, int>> pairs);

    void setZero();
    double& tie(int i) { return m_tie[static_cast<std::size_t>(m_place[static_cast<std::size_t>(i)])]; }
    double& between(int slot) { return m_between[static_cast<std::size_t>(m_slot[static_cast<std::size_t>(slot)])]; }

    void factorize();
    void solve(std::span<double> rhsToSolution);  ///< in the caller's order

private:
    std::vector<int> m_place;  // caller's index -> place in the elimination order
    std::vector<int> m_slot;   // caller's pair -> entry in m_between
    std::vector<double> m_tie;
    std::vector<int> m_entryStart, m_entryRow;     // lower triangle by columns
    std::vector<double> m_between;
    std::vector<int> m_reachStart, m_reach;        // columns that reach into each row of L, rising
    std::vector<int> m_columnStart, m_columnRow;   // L by columns, rows rising
    std::vector<double> m_columnValue;             // minus L: zero or more
    std::vector<int> m_next;
    std::vector<double> m_pivot, m_left, m_work;
};

}  // namespace tapward::network
