// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <span>
#include <utility>
#include <vector>

namespace tapward::network {

/// L D L^T of a symmetric positive definite matrix whose pattern is fixed. The order that keeps the fill
/// small and the pattern of L are found once; factorize() and solve() allocate nothing (which Eigen's own
/// factorization does each time, hence this one).
/// Method: up-looking, Davis (2005), ACM Trans. Math. Softw. 31(4), 587-591; order by Eigen's AMD.
class SparseLdlt {
public:
    /// @param pairs  the off-diagonal entries, each pair once, no (i, i). Their index is their slot.
    void analyse(int size, std::span<const std::pair<int, int>> pairs);

    int size() const { return static_cast<int>(m_diagonal.size()); }
    void setZero();
    double& diagonal(int i) { return m_diagonal[static_cast<std::size_t>(m_place[static_cast<std::size_t>(i)])]; }
    double& pair(int slot) { return m_entries[static_cast<std::size_t>(m_slot[static_cast<std::size_t>(slot)])]; }

    void factorize();
    void solve(std::span<double> rhsToSolution);  ///< in the caller's order

private:
    std::vector<int> m_place;      // caller's index -> place in the elimination order
    std::vector<int> m_slot;       // caller's pair -> entry of the lower triangle
    std::vector<double> m_diagonal;
    std::vector<int> m_entryStart, m_entryColumn;  // lower triangle of A by rows
    std::vector<double> m_entries;
    std::vector<int> m_reachStart, m_reach;        // columns of each row of L, rising
    std::vector<int> m_columnStart, m_columnRow;   // L by columns
    std::vector<double> m_columnValue;
    std::vector<int> m_filled;
    std::vector<double> m_pivot, m_work;
};

}  // namespace tapward::network
