// SPDX-License-Identifier: GPL-3.0-or-later
#include "network/sparse_ldlt.h"

#include <algorithm>
#include <cstddef>
#include <limits>
#include <numeric>

#include <Eigen/OrderingMethods>
#include <Eigen/SparseCore>

namespace tapward::network {
namespace {

std::size_t at(int i) { return static_cast<std::size_t>(i); }

// place[i] of each row in an order of small fill
std::vector<int> eliminationOrder(int size, std::span<const std::pair<int, int>> pairs)
{
    std::vector<int> place(at(size));
    std::iota(place.begin(), place.end(), 0);
    if (size < 3)
        return place;
    std::vector<Eigen::Triplet<double>> triplets;
    triplets.reserve(2 * pairs.size() + at(size));
    for (const auto& [i, j] : pairs) {
        triplets.emplace_back(i, j, 1.0);
        triplets.emplace_back(j, i, 1.0);
    }
    for (int i = 0; i < size; ++i)
        triplets.emplace_back(i, i, 1.0);
    Eigen::SparseMatrix<double> pattern(size, size);
    pattern.setFromTriplets(triplets.begin(), triplets.end());
    Eigen::AMDOrdering<int> amd;
    Eigen::PermutationMatrix<Eigen::Dynamic, Eigen::Dynamic, int> order;
    amd(pattern, order);  // order.indices()[k] is the row eliminated k-th
    for (int k = 0; k < size; ++k)
        place[at(order.indices()[k])] = k;
    return place;
}

}  // namespace

void SparseLdlt::analyse(int size, std::span<const std::pair<int, int>> pairs)
{
    const std::size_t n = at(size);
    m_place = eliminationOrder(size, pairs);
    m_diagonal.assign(n, 0.0);

    // lower triangle of the reordered matrix, by rows
    m_entryStart.assign(n + 1, 0);
    for (const auto& [i, j] : pairs)
        ++m_entryStart[at(std::max(m_place[at(i)], m_place[at(j)])) + 1];
    std::partial_sum(m_entryStart.begin(), m_entryStart.end(), m_entryStart.begin());
    std::vector<int> next(m_entryStart.begin(), m_entryStart.end() - 1);
    m_entryColumn.assign(pairs.size(), 0);
    m_entries.assign(pairs.size(), 0.0);
    m_slot.assign(pairs.size(), 0);
    for (std::size_t s = 0; s < pairs.size(); ++s) {
        const int row = std::max(m_place[at(pairs[s].first)], m_place[at(pairs[s].second)]);
        const int column = std::min(m_place[at(pairs[s].first)], m_place[at(pairs[s].second)]);
        m_slot[s] = next[at(row)]++;
        m_entryColumn[at(m_slot[s])] = column;
    }

    // row k of L reaches every column on the tree paths that start at the entries of row k of A
    std::vector<int> parent(n, -1), mark(n, -1);
    m_reach.clear();
    m_reachStart.assign(1, 0);
    m_columnStart.assign(n + 1, 0);
    for (int k = 0; k < size; ++k) {
        mark[at(k)] = k;
        for (int e = m_entryStart[at(k)]; e < m_entryStart[at(k) + 1]; ++e)
            for (int j = m_entryColumn[at(e)]; mark[at(j)] != k; j = parent[at(j)]) {
                if (parent[at(j)] < 0)
                    parent[at(j)] = k;
                mark[at(j)] = k;
                m_reach.push_back(j);
                ++m_columnStart[at(j) + 1];
            }
        std::sort(m_reach.begin() + m_reachStart.back(), m_reach.end());
        m_reachStart.push_back(static_cast<int>(m_reach.size()));
    }
    std::partial_sum(m_columnStart.begin(), m_columnStart.end(), m_columnStart.begin());
    m_columnRow.assign(m_reach.size(), 0);
    m_columnValue.assign(m_reach.size(), 0.0);
    m_filled.assign(n, 0);
    m_pivot.assign(n, 1.0);
    m_work.assign(n, 0.0);
}

void SparseLdlt::setZero()
{
    std::fill(m_diagonal.begin(), m_diagonal.end(), 0.0);
    std::fill(m_entries.begin(), m_entries.end(), 0.0);
}

void SparseLdlt::factorize()
{
    const std::size_t n = m_diagonal.size();
    std::fill(m_filled.begin(), m_filled.end(), 0);
    for (std::size_t k = 0; k < n; ++k) {
        for (int e = m_entryStart[k]; e < m_entryStart[k + 1]; ++e)
            m_work[at(m_entryColumn[at(e)])] = m_entries[at(e)];
        double pivot = m_diagonal[k];
        for (int r = m_reachStart[k]; r < m_reachStart[k + 1]; ++r) {
            const std::size_t j = at(m_reach[at(r)]);
            const double y = m_work[j];
            m_work[j] = 0;
            const int begin = m_columnStart[j];
            const int end = begin + m_filled[j]++;
            for (int p = begin; p < end; ++p)
                m_work[at(m_columnRow[at(p)])] -= m_columnValue[at(p)] * y;
            const double l = y / m_pivot[j];
            pivot -= l * y;
            m_columnRow[at(end)] = static_cast<int>(k);
            m_columnValue[at(end)] = l;
        }
        // Rounding may eat the pivot of a part held to the rest by a mere leak; the step is then short of
        // exact there, which the line search and the next step make good.
        m_pivot[k] = std::max(pivot, 1e-15 * m_diagonal[k] + std::numeric_limits<double>::min());
    }
}

void SparseLdlt::solve(std::span<double> b)
{
    const std::size_t n = m_diagonal.size();
    for (std::size_t i = 0; i < n; ++i)
        m_work[at(m_place[i])] = b[i];
    for (std::size_t j = 0; j < n; ++j) {
        const double y = m_work[j];
        for (int p = m_columnStart[j]; p < m_columnStart[j + 1]; ++p)
            m_work[at(m_columnRow[at(p)])] -= m_columnValue[at(p)] * y;
    }
    for (std::size_t j = n; j-- > 0;) {
        double y = m_work[j] / m_pivot[j];
        for (int p = m_columnStart[j]; p < m_columnStart[j + 1]; ++p)
            y -= m_columnValue[at(p)] * m_work[at(m_columnRow[at(p)])];
        m_work[j] = y;
    }
    for (std::size_t i = 0; i < n; ++i)
        b[i] = m_work[at(m_place[i])];
    std::fill(m_work.begin(), m_work.end(), 0.0);
}

}  // namespace tapward::network
