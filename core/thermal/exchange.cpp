// SPDX-License-Identifier: GPL-3.0-or-later
#include "thermal/exchange.h"

#include <algorithm>
#include <cmath>
#include <cstring>
#include <type_traits>

namespace tapward::thermal {

namespace {

/// Two cells side by side (vector types of GCC and Clang); the compilers do not find this by themselves.
using Pair = double __attribute__((vector_size(16), may_alias));

constexpr int kMostTerms = 16;
constexpr double kMostSteps = 0.25;  // of the chain before doubling: fewer terms cost more doublings

/// The ladder as a chain: P = I + A / rate has only positive entries and exp(A t) is the mean of P^k over a
/// Poisson number k of steps.
template <int N>
struct Solver {
    static constexpr int W = (N + 1) / 2;  // pairs in a row, the last half empty for odd N
    double down[N], stay[N], up[N];        // entries (i, i-1), (i, i), (i, i+1) of P
    Pair rows[N][W];                       // of the exponential

    double& e(int i, int j) { return reinterpret_cast<double*>(rows[i])[j]; }

    void timesColumn(const double (&x)[N], double (&y)[N]) const
    {
        for (int i = 0; i < N; ++i)
            y[i] = stay[i] * x[i] + (i > 0 ? down[i] * x[i - 1] : 0.0) + (i + 1 < N ? up[i] * x[i + 1] : 0.0);
    }
    void rowTimes(const double (&x)[N], double (&y)[N]) const
    {
        for (int j = 0; j < N; ++j)
            y[j] = stay[j] * x[j] + (j > 0 ? up[j - 1] * x[j - 1] : 0.0) + (j + 1 < N ? down[j + 1] * x[j + 1] : 0.0);
    }

    void run(const Ladder& ladder, double time_s, bool withSources, Propagator& out)
    {
        double rate = 0;
        double flux[N];
        for (int i = 0; i < N; ++i) {
            flux[i] = (i > 0 ? ladder.link[i - 1] : 0.0) + (i + 1 < N ? ladder.link[i] : ladder.loss);
            rate = std::max(rate, flux[i] / ladder.capacity[i]);
        }
        rate = std::max(rate, 1e-12);
        const double scale = 1.0 / rate;
        for (int i = 0; i < N; ++i) {
            const double share = scale / ladder.capacity[i];
            down[i] = i > 0 ? share * ladder.link[i - 1] : 0.0;
            up[i] = i + 1 < N ? share * ladder.link[i] : 0.0;
            stay[i] = 1.0 - share * flux[i];
        }
        int doublings = 0;
        double part = time_s;
        while (rate * part > kMostSteps) {
            part *= 0.5;
            ++doublings;
        }
        // Poisson weights, their tails (for the time integral), and the tails' tails (for its integral).
        const double mean = rate * part;
        double weight[kMostTerms], tail[kMostTerms], tail2[kMostTerms];
        int terms = 1;
        weight[0] = std::exp(-mean);
        while (terms < kMostTerms && weight[terms - 1] > 1e-17) {
            weight[terms] = weight[terms - 1] * mean / terms;
            ++terms;
        }
        tail[terms - 1] = tail2[terms - 1] = 0;
        for (int k = terms - 2; k >= 0; --k) {
            tail[k] = tail[k + 1] + weight[k + 1];
            tail2[k] = tail2[k + 1] + tail[k + 1];
        }

        // Horner: E = w0 + P (w1 + P (w2 + ...)).
        const Pair none{};
        Pair next[N][W];
        for (int i = 0; i < N; ++i)
            for (int j = 0; j < W; ++j)
                rows[i][j] = none;
        for (int i = 0; i < N; ++i)
            e(i, i) = weight[terms - 1];
        for (int k = terms - 2; k >= 0; --k) {
            for (int i = 0; i < N; ++i)
                for (int j = 0; j < W; ++j) {
                    Pair sum = stay[i] * rows[i][j];
                    if (i > 0)
                        sum += down[i] * rows[i - 1][j];
                    if (i + 1 < N)
                        sum += up[i] * rows[i + 1][j];
                    next[i][j] = sum;
                }
            std::memcpy(rows, next, sizeof(rows));
            for (int i = 0; i < N; ++i)
                e(i, i) += weight[k];
        }

        constexpr int last = N - 1;
        constexpr int body = N > 1 ? 1 : 0;
        double lossRow[N] = {}, water[N] = {}, metal[N] = {};
        double waterLoss = 0, metalLoss = 0;
        {
            double row[N] = {}, after[N];
            row[last] = ladder.loss * scale;
            for (int k = 0; k < terms; ++k) {
                for (int i = 0; i < N; ++i)
                    lossRow[i] += tail[k] * row[i];
                rowTimes(row, after);
                std::copy_n(after, N, row);
            }
        }
        const auto source = [&](int at, double(&sum)[N], double& lost) {
            double column[N] = {}, after[N];
            column[at] = scale / ladder.capacity[at];
            for (int k = 0; k < terms; ++k) {
                for (int i = 0; i < N; ++i)
                    sum[i] += tail[k] * column[i];
                lost += ladder.loss * scale * tail2[k] * column[last];
                timesColumn(column, after);
                std::copy_n(after, N, column);
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
                lost += lossRow[i] * sum[i];
                later[i] = sum[i];
                for (int j = 0; j < N; ++j)
                    later[i] += e(i, j) * sum[j];
            }
            std::copy_n(later, N, sum);
        };
        for (int d = 0; d < doublings; ++d) {
            if (withSources) {
                doubleSource(water, waterLoss);
                doubleSource(metal, metalLoss);
            }
            double row[N];
            for (int j = 0; j < N; ++j)
                row[j] = lossRow[j];
            for (int i = 0; i < N; ++i)
                for (int j = 0; j < N; ++j)
                    row[j] += lossRow[i] * e(i, j);
            std::copy_n(row, N, lossRow);
            for (int i = 0; i < N; ++i) {
                Pair sum[W];
                for (int j = 0; j < W; ++j)
                    sum[j] = e(i, 0) * rows[0][j];
                for (int k = 1; k < N; ++k)
                    for (int j = 0; j < W; ++j)
                        sum[j] += e(i, k) * rows[k][j];
                for (int j = 0; j < W; ++j)
                    next[i][j] = sum[j];
            }
            std::memcpy(rows, next, sizeof(rows));
        }

        for (int i = 0; i < N; ++i) {
            double sum = 0;
            for (int j = 0; j < N; ++j) {
                out.e[i * N + j] = e(i, j);
                sum += e(i, j);
            }
            out.leak[i] = 1.0 - sum;
            out.lossRow[i] = lossRow[i];
            out.waterSource[i] = water[i];
            out.bodySource[i] = metal[i];
        }
        out.waterSourceLoss = waterLoss;
        out.bodySourceLoss = metalLoss;
    }
};

/// Calls f with the number of nodes as a constant.
template <class F>
auto withNodes(int nodes, F&& f)
{
    switch (nodes) {
    case 1:
        return f(std::integral_constant<int, 1>{});
    case 2:
        return f(std::integral_constant<int, 2>{});
    case 3:
        return f(std::integral_constant<int, 3>{});
    case 4:
        return f(std::integral_constant<int, 4>{});
    case 5:
        return f(std::integral_constant<int, 5>{});
    case 6:
        return f(std::integral_constant<int, 6>{});
    case 7:
        return f(std::integral_constant<int, 7>{});
    case 8:
        return f(std::integral_constant<int, 8>{});
    default:
        return f(std::integral_constant<int, kMostNodes>{});
    }
}

/// P pairs of cells at a time, so that each entry of the exponential is fetched once for all of them.
template <int N, int P>
void exchangePairs(const Propagator& p, const double (&add)[N], double* const* temperature, std::size_t at,
                   bool halfLast, Pair (&sum)[N])
{
    Pair x[N][P];
    for (int i = 0; i < N; ++i) {
        for (int k = 0; k + 1 < P; ++k)
            std::memcpy(&x[i][k], temperature[i] + at + 2 * k, sizeof(Pair));
        const double* last = temperature[i] + at + 2 * (P - 1);
        x[i][P - 1] = Pair{last[0], halfLast ? 0.0 : last[1]};
        for (int k = 0; k < P; ++k)
            sum[i] += x[i][k];
    }
    for (int i = 0; i < N; ++i) {
        Pair y[P];
        for (int k = 0; k < P; ++k)
            y[k] = Pair{add[i], add[i]};
        for (int j = 0; j < N; ++j) {
            const double e = p.e[i * N + j];
            for (int k = 0; k < P; ++k)
                y[k] += e * x[j][k];
        }
        for (int k = 0; k + 1 < P; ++k)
            std::memcpy(temperature[i] + at + 2 * k, &y[k], sizeof(Pair));
        double* last = temperature[i] + at + 2 * (P - 1);
        last[0] = y[P - 1][0];
        if (!halfLast)
            last[1] = y[P - 1][1];
    }
}

template <int N>
double exchangeFixed(const Propagator& p, double* const* temperature, std::size_t cells, double surroundings,
                     double waterWatts, double bodyWatts, double* sums)
{
    double add[N];
    Pair sum[N] = {};
    for (int i = 0; i < N; ++i)
        add[i] = surroundings * p.leak[i] + waterWatts * p.waterSource[i] + bodyWatts * p.bodySource[i];
    for (std::size_t c = 0; c < cells; c += 8) {
        const std::size_t here = std::min<std::size_t>(8, cells - c);
        const bool half = here % 2 != 0;
        switch ((here + 1) / 2) {
        case 1:
            exchangePairs<N, 1>(p, add, temperature, c, half, sum);
            break;
        case 2:
            exchangePairs<N, 2>(p, add, temperature, c, half, sum);
            break;
        case 3:
            exchangePairs<N, 3>(p, add, temperature, c, half, sum);
            break;
        default:
            exchangePairs<N, 4>(p, add, temperature, c, half, sum);
            break;
        }
    }
    const double count = static_cast<double>(cells);
    double lost = count * (waterWatts * p.waterSourceLoss + bodyWatts * p.bodySourceLoss);
    for (int i = 0; i < N; ++i) {
        sums[i] = sum[i][0] + sum[i][1];
        lost += p.lossRow[i] * (sums[i] - count * surroundings);
    }
    return lost;
}

}  // namespace

void solveLadder(const Ladder& ladder, double time_s, bool withSources, Propagator& out)
{
    withNodes(ladder.nodes, [&](auto n) { Solver<n()>{}.run(ladder, time_s, withSources, out); });
}

double exchange(const Propagator& p, int nodes, double* const* temperature, std::size_t cells, double surroundings,
                double waterWatts, double bodyWatts, double* sums)
{
    return withNodes(nodes, [&](auto n) {
        return exchangeFixed<n()>(p, temperature, cells, surroundings, waterWatts, bodyWatts, sums);
    });
}

}  // namespace tapward::thermal
