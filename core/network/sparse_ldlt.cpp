// SPDX-License-Identifier: GPL-3.0-or-later
#include "network/sparse_ldlt.h"

#include <algorithm>
#include <cstddef>
#include <numeric>

#include <Eigen/OrderingMethods>
#include <Eigen/SparseCore>

#include "network/inner.h"

namespace tapward::network {
namespace {

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
    m_tie.assign(n, 0.0);

    // The lower triangle of the reordered matrix, by rows for the analysis, by columns for the numbers.
    std::vector<std::vector<int>> rows(n);
    m_entryStart.assign(n + 1, 0);
    for (const auto& [i, j] : pairs) {
        const auto [column, row] = std::minmax(m_place[at(i)], m_place[at(j)]);
        rows[at(row)].push_back(column);
        ++m_entryStart[at(column) + 1];
    }
    std::partial_sum(m_entryStart.begin(), m_entryStart.end(), m_entryStart.begin());
    std::vector<int> next(m_entryStart.begin(), m_entryStart.end() - 1);
    m_entryRow.assign(pairs.size(), 0);
    m_between.assign(pairs.size(), 0.0);
    m_slot.assign(pairs.size(), 0);
    for (std::size_t s = 0; s < pairs.size(); ++s) {
        const auto [column, row] = std::minmax(m_place[at(pairs[s].first)], m_place[at(pairs[s].second)]);
        m_slot[s] = next[at(column)]++;
        m_entryRow[at(m_slot[s])] = row;
    }

    // Row k of L reaches every column on the tree paths that start at the entries of row k.
    std::vector<int> parent(n, -1), mark(n, -1);
    m_reach.clear();
    m_reachStart.assign(1, 0);
    m_columnStart.assign(n + 1, 0);
    for (int k = 0; k < size; ++k) {
        mark[at(k)] = k;
        for (int j : rows[at(k)])
            for (; mark[at(j)] != k; j = parent[at(j)]) {
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
    next.assign(m_columnStart.begin(), m_columnStart.end() - 1);
    for (int k = 0; k < size; ++k)
        for (int r = m_reachStart[at(k)]; r < m_reachStart[at(k) + 1]; ++r)
            m_columnRow[at(next[at(m_reach[at(r)])]++)] = k;
    m_next.assign(n, 0);
    m_pivot.assign(n, 1.0);
    m_left.assign(n, 0.0);
    m_work.assign(n, 0.0);
}

void SparseLdlt::setZero()
{
    std::fill(m_tie.begin(), m_tie.end(), 0.0);
    std::fill(m_between.begin(), m_between.end(), 0.0);
}

void SparseLdlt::factorize()
{
    const std::size_t n = m_tie.size();
    for (std::size_t k = 0; k < n; ++k) {
        for (int e = m_entryStart[k]; e < m_entryStart[k + 1]; ++e)
            m_work[at(m_entryRow[at(e)])] = m_between[at(e)];
        double tie = m_tie[k];
        for (int r = m_reachStart[k]; r < m_reachStart[k + 1]; ++r) {
            const std::size_t j = at(m_reach[at(r)]);
            int p = m_next[j]++;
            const double share = m_columnValue[at(p)];  // of junction j's ties that fall to junction k
            tie += share * m_left[j];
            const double weight = share * m_pivot[j];
            const int end = m_columnStart[j + 1];
            for (++p; p < end; ++p)
                m_work[at(m_columnRow[at(p)])] += weight * m_columnValue[at(p)];
        }
        const int begin = m_columnStart[k];
        const int end = m_columnStart[k + 1];
        double pivot = tie;
        for (int p = begin; p < end; ++p)
            pivot += m_work[at(m_columnRow[at(p)])];
        const double inverse = 1 / pivot;
        for (int p = begin; p < end; ++p) {
            double& entry = m_work[at(m_columnRow[at(p)])];
            m_columnValue[at(p)] = entry * inverse;
            entry = 0;
        }
        m_pivot[k] = pivot;
        m_left[k] = tie;
        m_next[k] = begin;
    }
}

void SparseLdlt::solve(std::span<double> b)
{
    const std::size_t n = m_tie.size();
    for (std::size_t i = 0; i < n; ++i)
        m_work[at(m_place[i])] = b[i];
    for (std::size_t j = 0; j < n; ++j) {
        const double y = m_work[j];
        for (int p = m_columnStart[j]; p < m_columnStart[j + 1]; ++p)
            m_work[at(m_columnRow[at(p)])] += m_columnValue[at(p)] * y;
    }
    for (std::size_t j = n; j-- > 0;) {
        double y = m_work[j] / m_pivot[j];
        for (int p = m_columnStart[j]; p < m_columnStart[j + 1]; ++p)
            y += m_columnValue[at(p)] * m_work[at(m_columnRow[at(p)])];
        m_work[j] = y;
    }
    for (std::size_t i = 0; i < n; ++i)
        b[i] = m_work[at(m_place[i])];
    std::fill(m_work.begin(), m_work.end(), 0.0);
}

}  // namespace tapward::network
