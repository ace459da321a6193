// SPDX-License-Identifier: GPL-3.0-or-later
#include "thermal/exchange.h"

#include <algorithm>
#include <cmath>

namespace tapward::thermal {

namespace {

using Row = std::array<double, kMostNodes>;

/// One step of the ladder's embedded chain, P = I + A/rate: all entries positive.
struct Chain {
    int n;
    Row down{}, stay{}, up{};  ///< entry (i, i-1), (i, i), (i, i+1)

    void timesColumn(const Row& x, Row& y) const
    {
        for (int i = 0; i < n; ++i) {
            double sum = stay[i] * x[i];
            if (i > 0)
                sum += down[i] * x[i - 1];
            if (i + 1 < n)
                sum += up[i] * x[i + 1];
            y[i] = sum;
        }
    }
    void rowTimes(const Row& x, Row& y) const
    {
        for (int j = 0; j < n; ++j) {
            double sum = stay[j] * x[j];
            if (j > 0)
                sum += up[j - 1] * x[j - 1];
            if (j + 1 < n)
                sum += down[j + 1] * x[j + 1];
            y[j] = sum;
        }
    }
};

constexpr int kMostTerms = 24;

template <int N>
double exchangeFixed(const Propagator& p, double* const* temperature, std::size_t cells, double surroundings,
                     double waterWatts, double bodyWatts, double* sums)
{
    double e[N][N];
    double add[N];
    double* t[N];
    double sum[N];
    for (int i = 0; i < N; ++i) {
        for (int j = 0; j < N; ++j)
            e[i][j] = p.e[i * N + j];
        add[i] = surroundings * p.leak[i] + waterWatts * p.waterSource[i] + bodyWatts * p.bodySource[i];
        t[i] = temperature[i];
        sum[i] = 0;
    }
    for (std::size_t c = 0; c < cells; ++c) {
        double x[N];
        for (int i = 0; i < N; ++i) {
            x[i] = t[i][c];
            sum[i] += x[i];
        }
        for (int i = 0; i < N; ++i) {
            double y = add[i];
            for (int j = 0; j < N; ++j)
                y += e[i][j] * x[j];
            t[i][c] = y;
        }
    }
    const double count = static_cast<double>(cells);
    double lost = count * (waterWatts * p.waterSourceLoss + bodyWatts * p.bodySourceLoss);
    for (int i = 0; i < N; ++i) {
        lost += p.lossRow[i] * (sum[i] - count * surroundings);
        sums[i] = sum[i];
    }
    return lost;
}

}  // namespace

void solveLadder(const Ladder& ladder, double time_s, bool withSources, Propagator& out)
{
    const int n = ladder.nodes;
    Chain chain{n};
    double rate = 0;
    for (int i = 0; i < n; ++i) {
        const double before = i > 0 ? ladder.link[i - 1] : 0.0;
        const double after = i + 1 < n ? ladder.link[i] : ladder.loss;
        rate = std::max(rate, (before + after) / ladder.capacity[i]);
    }
    int doublings = 0;
    double part = time_s;
    while (rate * part > 1.0) {
        part *= 0.5;
        ++doublings;
    }
    const double scale = rate > 0 ? 1.0 / rate : 0.0;
    for (int i = 0; i < n; ++i) {
        const double before = i > 0 ? ladder.link[i - 1] : 0.0;
        const double after = i + 1 < n ? ladder.link[i] : ladder.loss;
        chain.down[i] = scale * before / ladder.capacity[i];
        chain.up[i] = i + 1 < n ? scale * after / ladder.capacity[i] : 0.0;
        chain.stay[i] = 1.0 - scale * (before + after) / ladder.capacity[i];
    }

    // Poisson weights of the number of chain steps in `part`, their tails (for the time integral) and the
    // tails of the tails (for the integral of the integral).
    const double mean = rate * part;
    double weight[kMostTerms], tail[kMostTerms + 1], tail2[kMostTerms + 1];
    int terms = 1;
    weight[0] = std::exp(-mean);
    while (terms < kMostTerms && weight[terms - 1] > 1e-19 * weight[0]) {
        weight[terms] = weight[terms - 1] * mean / terms;
        ++terms;
    }
    tail[terms - 1] = 0;
    tail2[terms - 1] = 0;
    for (int k = terms - 2; k >= 0; --k) {
        tail[k] = tail[k + 1] + weight[k + 1];
        tail2[k] = tail2[k + 1] + tail[k + 1];
    }

    // One column of the exponential at a time: column j is the response to node j.
    for (int j = 0; j < n; ++j) {
        Row x{}, y{}, total{};
        x[j] = 1;
        for (int i = 0; i < n; ++i)
            total[i] = weight[0] * x[i];
        for (int k = 1; k < terms; ++k) {
            chain.timesColumn(x, y);
            x = y;
            for (int i = 0; i < n; ++i)
                total[i] += weight[k] * x[i];
        }
        for (int i = 0; i < n; ++i)
            out.e[i * n + j] = total[i];
    }

    const auto integrate = [&](Row x, bool asRow, Row& integral, Row& second) {
        integral = {};
        second = {};
        Row y{};
        for (int k = 0; k < terms; ++k) {
            for (int i = 0; i < n; ++i) {
                integral[i] += tail[k] * scale * x[i];
                second[i] += tail2[k] * scale * scale * x[i];
            }
            asRow ? chain.rowTimes(x, y) : chain.timesColumn(x, y);
            x = y;
        }
    };
    const int last = n - 1;
    const int body = n > 1 ? 1 : 0;
    Row unit{}, lossRow{}, ignored{};
    unit[last] = ladder.loss;
    if (rate > 0)
        integrate(unit, true, lossRow, ignored);
    Row water{}, metal{}, water2{}, metal2{};
    if (withSources) {
        Row start{};
        start[0] = 1.0 / ladder.capacity[0];
        if (rate > 0)
            integrate(start, false, water, water2);
        else
            water[0] = part * start[0];
        start = {};
        start[body] = 1.0 / ladder.capacity[body];
        if (rate > 0)
            integrate(start, false, metal, metal2);
        else
            metal[body] = part * start[body];
    }
    double waterLoss = ladder.loss * water2[last];
    double metalLoss = ladder.loss * metal2[last];

    for (int d = 0; d < doublings; ++d) {
        if (withSources) {
            const auto more = [&](Row& x, double& lost) {
                double lostLater = 0;
                for (int i = 0; i < n; ++i)
                    lostLater += lossRow[i] * x[i];
                lost = 2.0 * lost + lostLater;
                Row y = x;
                for (int i = 0; i < n; ++i)
                    for (int j = 0; j < n; ++j)
                        y[i] += out.e[i * n + j] * x[j];
                x = y;
            };
            more(water, waterLoss);
            more(metal, metalLoss);
        }
        Row row = lossRow;
        for (int i = 0; i < n; ++i)
            for (int j = 0; j < n; ++j)
                row[j] += lossRow[i] * out.e[i * n + j];
        lossRow = row;
        std::array<double, kMostNodes * kMostNodes> square;
        for (int i = 0; i < n; ++i)
            for (int j = 0; j < n; ++j) {
                double sum = 0;
                for (int k = 0; k < n; ++k)
                    sum += out.e[i * n + k] * out.e[k * n + j];
                square[i * n + j] = sum;
            }
        std::copy_n(square.begin(), n * n, out.e.begin());
    }

    for (int i = 0; i < n; ++i) {
        double sum = 0;
        for (int j = 0; j < n; ++j)
            sum += out.e[i * n + j];
        out.leak[i] = 1.0 - sum;
        out.lossRow[i] = lossRow[i];
        out.waterSource[i] = water[i];
        out.bodySource[i] = metal[i];
    }
    out.waterSourceLoss = waterLoss;
    out.bodySourceLoss = metalLoss;
}

double exchange(const Propagator& p, int nodes, double* const* temperature, std::size_t cells, double surroundings,
                double waterWatts, double bodyWatts, double* sums)
{
    switch (nodes) {
    case 1: return exchangeFixed<1>(p, temperature, cells, surroundings, waterWatts, bodyWatts, sums);
    case 2: return exchangeFixed<2>(p, temperature, cells, surroundings, waterWatts, bodyWatts, sums);
    case 3: return exchangeFixed<3>(p, temperature, cells, surroundings, waterWatts, bodyWatts, sums);
    case 4: return exchangeFixed<4>(p, temperature, cells, surroundings, waterWatts, bodyWatts, sums);
    case 5: return exchangeFixed<5>(p, temperature, cells, surroundings, waterWatts, bodyWatts, sums);
    case 6: return exchangeFixed<6>(p, temperature, cells, surroundings, waterWatts, bodyWatts, sums);
    case 7: return exchangeFixed<7>(p, temperature, cells, surroundings, waterWatts, bodyWatts, sums);
    case 8: return exchangeFixed<8>(p, temperature, cells, surroundings, waterWatts, bodyWatts, sums);
    default: return exchangeFixed<9>(p, temperature, cells, surroundings, waterWatts, bodyWatts, sums);
    }
}

}  // namespace tapward::thermal
