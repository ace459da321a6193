// SPDX-License-Identifier: GPL-3.0-or-later
// The arithmetic of exchange.h. Included by one .cpp for any machine and by one for AVX2: the same operations in
// the same order on four numbers side by side, so both give the same bytes (neither may fuse a product with a sum).
// No function of the standard library is instantiated here: the linker would keep one copy of it for both.
#pragma once

#include <cmath>
#include <cstring>

#include "thermal/exchange.h"
#include "thermal/exchange_variants.h"

namespace tapward::thermal {
namespace {

/// Four numbers side by side (vector types of GCC and Clang); the compilers do not find this by themselves.
using Quad = double __attribute__((vector_size(32), may_alias));

constexpr int kMostTerms = 16;
constexpr double kMostSteps = 0.25;  // of the chain before doubling: fewer terms cost more doublings
constexpr double kLeastWeight = 1e-17;

/// The ladder as a chain: P = I + A / rate has only positive entries and exp(A t) is the mean of P^k over a
/// Poisson number k of steps.
template <int N>
struct Chain {
    double rate, scale;
    double down[N], stay[N], up[N];  // entries (i, i-1), (i, i), (i, i+1) of P

    explicit Chain(const Ladder& ladder)
    {
        const double* capacity = ladder.capacity.data();
        const double* link = ladder.link.data();
        double flux[N];
        rate = 1e-12;
        for (int i = 0; i < N; ++i) {
            flux[i] = (i > 0 ? link[i - 1] : 0.0) + (i + 1 < N ? link[i] : ladder.loss);
            const double own = flux[i] / capacity[i];
            rate = own > rate ? own : rate;
        }
        scale = 1.0 / rate;
        for (int i = 0; i < N; ++i) {
            const double share = scale / capacity[i];
            down[i] = i > 0 ? share * link[i - 1] : 0.0;
            up[i] = i + 1 < N ? share * link[i] : 0.0;
            stay[i] = 1.0 - share * flux[i];
        }
    }

    void timesColumn(const double (&x)[N], double (&y)[N]) const
    {
        for (int i = 0; i < N; ++i)
            y[i] = stay[i] * x[i] + (i > 0 ? down[i] * x[i - 1] : 0.0) + (i + 1 < N ? up[i] * x[i + 1] : 0.0);
    }
};

/// Poisson weights, their tails (for the time integral), and the tails' tails (for its integral).
struct Poisson {
    int terms = 1;
    double weight[kMostTerms], tail[kMostTerms], tail2[kMostTerms];

    explicit Poisson(double mean)
    {
        static constexpr double kInverse[kMostTerms] = {0,        1.0,      1.0 / 2,  1.0 / 3, 1.0 / 4,  1.0 / 5,
                                                        1.0 / 6,  1.0 / 7,  1.0 / 8,  1.0 / 9, 1.0 / 10, 1.0 / 11,
                                                        1.0 / 12, 1.0 / 13, 1.0 / 14, 1.0 / 15};
        weight[0] = std::exp(-mean);
        while (terms < kMostTerms && weight[terms - 1] > kLeastWeight) {
            weight[terms] = weight[terms - 1] * (mean * kInverse[terms]);
            ++terms;
        }
        tail[terms - 1] = tail2[terms - 1] = 0;
        for (int k = terms - 2; k >= 0; --k) {
            tail[k] = tail[k + 1] + weight[k + 1];
            tail2[k] = tail2[k + 1] + tail[k + 1];
        }
    }
};

template <int N>
struct Solver {
    static constexpr int W = (N + 3) / 4;  // quads in a row, the last not filled whole
    Quad rows[N + 1][W];  // of the exponential; the last one is the heat lost per kelvin of each node at the start

    double& e(int i, int j) { return reinterpret_cast<double*>(rows[i])[j]; }

    void run(const Ladder& ladder, double time_s, bool withSources, Propagator& half, Propagator& whole)
    {
        const Chain<N> chain(ladder);
        const double scale = chain.scale;
        int doublings = 0;
        double part = time_s;
        do {  // once at least: the half is asked for too
            part *= 0.5;
            ++doublings;
        } while (chain.rate * part > kMostSteps);
        const Poisson poisson(chain.rate * part);
        const int terms = poisson.terms;

        // Horner: E = w0 + P (w1 + P (w2 + ...)).
        // What is lost gathers in a node of its own that gives nothing back: one more row, and no column.
        constexpr int last = N - 1;
        const double leaves = ladder.loss * scale;
        static constexpr Quad kUnit[4] = {{1, 0, 0, 0}, {0, 1, 0, 0}, {0, 0, 1, 0}, {0, 0, 0, 1}};
        for (int i = 0; i <= N; ++i)
            for (int j = 0; j < W; ++j)
                rows[i][j] = Quad{};
        for (int i = 0; i < N; ++i)
            rows[i][i / 4] = poisson.weight[terms - 1] * kUnit[i % 4];
        for (int k = terms - 2; k >= 0; --k)
            for (int j = 0; j < W; ++j) {
                Quad before{};  // the row above as it was
                rows[N][j] += leaves * rows[last][j];
                for (int i = 0; i < N; ++i) {
                    const Quad own = rows[i][j];
                    Quad sum = chain.stay[i] * own;
                    if (i > 0)
                        sum += chain.down[i] * before;
                    if (i + 1 < N)
                        sum += chain.up[i] * rows[i + 1][j];
                    if (i / 4 == j)
                        sum += poisson.weight[k] * kUnit[i % 4];
                    rows[i][j] = sum;
                    before = own;
                }
            }

        constexpr int body = N > 1 ? 1 : 0;
        double water[N] = {}, metal[N] = {};
        double waterLoss = 0, metalLoss = 0;
        const auto source = [&](int at, double(&sum)[N], double& lost) {
            double column[N] = {}, after[N];
            column[at] = scale / ladder.capacity.data()[at];
            for (int k = 0; k < terms; ++k) {
                for (int i = 0; i < N; ++i)
                    sum[i] += poisson.tail[k] * column[i];
                lost += leaves * poisson.tail2[k] * column[last];
                chain.timesColumn(column, after);
                std::memcpy(column, after, sizeof(column));
            }
        };
        if (withSources) {
            source(0, water, waterLoss);
            source(body, metal, metalLoss);
        }

        const auto doubleSource = [&](double(&sum)[N], double& lost) {
            double later[N];
            lost *= 2.0;
            for (int i = 0; i < N; ++i) {
                lost += e(N, i) * sum[i];
                later[i] = sum[i];
                for (int j = 0; j < N; ++j)
                    later[i] += e(i, j) * sum[j];
            }
            std::memcpy(sum, later, sizeof(later));
        };
        const auto write = [&](Propagator& out) {
            double* e_out = out.e.data();
            for (int i = 0; i < N; ++i) {
                double sum = 0;
                for (int j = 0; j < N; ++j) {
                    e_out[i * N + j] = e(i, j);
                    sum += e(i, j);
                }
                out.leak.data()[i] = 1.0 - sum;
                out.lossRow.data()[i] = e(N, i);
                out.waterSource.data()[i] = water[i];
                out.bodySource.data()[i] = metal[i];
            }
            out.waterSourceLoss = waterLoss;
            out.bodySourceLoss = metalLoss;
        };
        Quad next[N + 1][W];
        for (int d = 0; d < doublings; ++d) {
            if (d + 1 == doublings)
                write(half);
            if (withSources) {
                doubleSource(water, waterLoss);
                doubleSource(metal, metalLoss);
            }
            for (int i = 0; i <= N; ++i) {
                Quad sum[W];
                for (int j = 0; j < W; ++j)
                    sum[j] = i < N ? Quad{} : rows[N][j];
                for (int k = 0; k < N; ++k)
                    for (int j = 0; j < W; ++j)
                        sum[j] += e(i, k) * rows[k][j];
                for (int j = 0; j < W; ++j)
                    next[i][j] = sum[j];
            }
            std::memcpy(rows, next, sizeof(rows));
        }

        write(whole);
    }
};

/// Four cells of a node, those after the last one as zero.
inline void fetch(const double* from, std::size_t cells, Quad& into)
{
    if (cells >= 4)
        std::memcpy(&into, from, sizeof(Quad));
    else
        into = Quad{from[0], cells > 1 ? from[1] : 0.0, cells > 2 ? from[2] : 0.0, 0.0};
}

inline void put(const Quad& from, std::size_t cells, double* into)
{
    if (cells >= 4) {
        std::memcpy(into, &from, sizeof(Quad));
        return;
    }
    into[0] = from[0];
    if (cells > 1)
        into[1] = from[1];
    if (cells > 2)
        into[2] = from[2];
}

/// P quads of cells at a time, so that each entry of the exponential is fetched once for all of them.
template <int N, int P>
inline void exchangeQuads(const double* e, const double (&add)[N], double* const* temperature, std::size_t at,
                          std::size_t cells, Quad (&sum)[N])
{
    Quad x[N][P];
    for (int i = 0; i < N; ++i)
        for (int k = 0; k < P; ++k) {
            fetch(temperature[i] + at + 4 * k, cells - 4 * static_cast<std::size_t>(k), x[i][k]);
            sum[i] += x[i][k];
        }
    for (int i = 0; i < N; ++i) {
        Quad y[P];
        for (int k = 0; k < P; ++k)
            y[k] = Quad{add[i], add[i], add[i], add[i]};
        for (int j = 0; j < N; ++j)
            for (int k = 0; k < P; ++k)
                y[k] += e[i * N + j] * x[j][k];
        for (int k = 0; k < P; ++k)
            put(y[k], cells - 4 * static_cast<std::size_t>(k), temperature[i] + at + 4 * k);
    }
}

template <int N>
double exchangeFixed(const Propagator& p, double* const* temperature, std::size_t cells, double surroundings,
                     double waterWatts, double bodyWatts, double* sums)
{
    double add[N];
    Quad sum[N] = {};
    for (int i = 0; i < N; ++i)
        add[i] =
            surroundings * p.leak.data()[i] + waterWatts * p.waterSource.data()[i] + bodyWatts * p.bodySource.data()[i];
    std::size_t c = 0;
    for (; c + 4 < cells; c += 8)
        exchangeQuads<N, 2>(p.e.data(), add, temperature, c, cells - c, sum);
    if (c < cells)
        exchangeQuads<N, 1>(p.e.data(), add, temperature, c, cells - c, sum);
    const double count = static_cast<double>(cells);
    double lost = count * (waterWatts * p.waterSourceLoss + bodyWatts * p.bodySourceLoss);
    for (int i = 0; i < N; ++i) {
        sums[i] = (sum[i][0] + sum[i][1]) + (sum[i][2] + sum[i][3]);
        lost += p.lossRow.data()[i] * (sums[i] - count * surroundings);
    }
    return lost;
}

template <int N>
struct Nodes {
    static constexpr int count = N;
};

/// Calls f with the number of nodes as a constant.
template <class F>
auto withNodes(int nodes, F&& f)
{
    switch (nodes) {
    case 1:
        return f(Nodes<1>{});
    case 2:
        return f(Nodes<2>{});
    case 3:
        return f(Nodes<3>{});
    case 4:
        return f(Nodes<4>{});
    case 5:
        return f(Nodes<5>{});
    case 6:
        return f(Nodes<6>{});
    case 7:
        return f(Nodes<7>{});
    case 8:
        return f(Nodes<8>{});
    default:
        return f(Nodes<kMostNodes>{});
    }
}

constexpr ExchangeVariant kVariant{
    [](const Ladder& ladder, double time_s, bool withSources, Propagator& half, Propagator& whole) {
        withNodes(ladder.nodes, [&](auto n) { Solver<n.count>{}.run(ladder, time_s, withSources, half, whole); });
    },
    [](const Propagator& p, int nodes, double* const* temperature, std::size_t cells, double surroundings,
       double waterWatts, double bodyWatts, double* sums) {
        return withNodes(nodes, [&](auto n) {
            return exchangeFixed<n.count>(p, temperature, cells, surroundings, waterWatts, bodyWatts, sums);
        });
    }};

}  // namespace
}  // namespace tapward::thermal
