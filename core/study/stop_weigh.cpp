// SPDX-License-Identifier: GPL-3.0-or-later
#include "study/stop_weigh.h"

#include <algorithm>
#include <cmath>
#include <numeric>

namespace tapward::study {
namespace {

/// 1 ... n, equals sharing their mean; then mean 0 and standard deviation 1. All zero when all are equal.
std::vector<double> standardRanks(const std::vector<double>& values)
{
    const std::size_t n = values.size();
    std::vector<std::size_t> order(n);
    std::iota(order.begin(), order.end(), std::size_t{0});
    std::stable_sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) { return values[a] < values[b]; });
    std::vector<double> ranks(n);
    for (std::size_t i = 0; i < n;) {
        std::size_t j = i;
        while (j < n && values[order[j]] == values[order[i]]) {
            ++j;
        }
        for (std::size_t k = i; k < j; ++k) {
            ranks[order[k]] = 0.5 * static_cast<double>(i + j - 1);
        }
        i = j;
    }
    const double mean = std::accumulate(ranks.begin(), ranks.end(), 0.0) / static_cast<double>(n);
    double square = 0;
    for (double& rank : ranks) {
        rank -= mean;
        square += rank * rank;
    }
    const double spread = std::sqrt(square / static_cast<double>(n));
    for (double& rank : ranks) {
        rank = spread > 0 ? rank / spread : 0;
    }
    return ranks;
}

double product(const std::vector<double>& a, const std::vector<double>& b)
{
    return std::inner_product(a.begin(), a.end(), b.begin(), 0.0) / static_cast<double>(a.size());
}

/// Solves a symmetric positive system by Gauss with pivots; a handful of unknowns. Zero where it is singular.
std::vector<double> solved(std::vector<std::vector<double>> a, std::vector<double> b)
{
    const std::size_t n = b.size();
    for (std::size_t c = 0; c < n; ++c) {
        std::size_t pivot = c;
        for (std::size_t r = c + 1; r < n; ++r) {
            pivot = std::abs(a[r][c]) > std::abs(a[pivot][c]) ? r : pivot;
        }
        std::swap(a[c], a[pivot]);
        std::swap(b[c], b[pivot]);
        if (std::abs(a[c][c]) < 1e-12) {
            a[c][c] = 1;
            b[c] = 0;
        }
        for (std::size_t r = c + 1; r < n; ++r) {
            const double share = a[r][c] / a[c][c];
            for (std::size_t k = c; k < n; ++k) {
                a[r][k] -= share * a[c][k];
            }
            b[r] -= share * b[c];
        }
    }
    for (std::size_t c = n; c-- > 0;) {
        for (std::size_t k = c + 1; k < n; ++k) {
            b[c] -= a[c][k] * b[k];
        }
        b[c] /= a[c][c];
    }
    return b;
}

template <class TimeOf>
Band bandOver(const std::vector<StopRun>& runs, double most, TimeOf timeOf)
{
    constexpr int kPoints = 80;
    Band band;
    std::vector<double> here;
    for (int i = 0; i <= kPoints; ++i) {
        const double x = most * i / kPoints;
        here.clear();
        for (const StopRun& run : runs) {
            here.push_back(valueAt(run, run.tap_C, timeOf(run, x)));
        }
        band.x.push_back(x);
        band.low.push_back(quantile(here, 0.1));
        band.middle.push_back(quantile(here, 0.5));
        band.high.push_back(quantile(here, 0.9));
    }
    return band;
}

}  // namespace

double quantile(std::vector<double>& values, double share)
{
    std::sort(values.begin(), values.end());
    const double place = share * static_cast<double>(values.size() - 1);
    const auto low = static_cast<std::size_t>(place);
    const std::size_t high = std::min(low + 1, values.size() - 1);
    return values[low] + (place - static_cast<double>(low)) * (values[high] - values[low]);
}

Verdict judge(const StopQuestion& question, double tapMost_C, double enteringMost_C, double outletMost_C)
{
    Verdict verdict;
    verdict.reaches = tapMost_C >= question.target_C;
    verdict.keeps = !(tapMost_C > question.limits.tap_C) && !(enteringMost_C > question.limits.coldEntry_C)
                    && !(question.pumpLimit_C > 0 && tapMost_C > question.pumpLimit_C)
                    && !(question.outletLimit_C > 0 && outletMost_C > question.outletLimit_C);
    return verdict;
}

Verdict judge(const StopQuestion& question, const StopRun& run, double time_s)
{
    return judge(question, valueAt(run, run.tapMost_C, time_s), valueAt(run, run.enteringMost_C, time_s),
                 valueAt(run, run.outletMost_C, time_s));
}

void weigh(const StopQuestion& question, const std::vector<StopRun>& runs, StopChoice& choice)
{
    int reaches = 0, keeps = 0, both = 0, lit = 0, comes = 0;
    std::vector<double> taps;
    choice.longestRun_s = 0;
    for (const StopRun& run : runs) {
        const auto stops = stopTime(run, choice);
        const double at = stops.value_or(run.time_s.back());
        const Verdict verdict = judge(question, run, at);
        reaches += verdict.reaches;
        keeps += verdict.keeps;
        both += verdict.reaches && verdict.keeps;
        lit += run.lit;
        comes += run.lit && stops;
        taps.push_back(valueAt(run, run.tapMost_C, at));
        if (run.lit && stops) {
            choice.longestRun_s = std::max(choice.longestRun_s, at);
        }
    }
    const auto count = static_cast<double>(runs.size());
    choice.reaches = reaches / count;
    choice.keeps = keeps / count;
    choice.both = both / count;
    choice.comes = lit > 0 ? comes / static_cast<double>(lit) : 1;
    choice.bothError = std::sqrt(choice.both * (1 - choice.both) / count);
    choice.bothIfLit = lit > 0 ? both / static_cast<double>(lit) : 0;
    choice.tapLow_C = quantile(taps, 0.1);
    choice.tapMiddle_C = quantile(taps, 0.5);
    choice.tapHigh_C = quantile(taps, 0.9);
    choice.worstTap_C = taps.back();
    choice.worstOvershoot_K = choice.worstTap_C - question.target_C;
}

void addBands(const StopQuestion& question, const std::vector<StopRun>& runs, StopStudy& study)
{
    (void)question;
    std::vector<double> volumes, times;
    for (const StopRun& run : runs) {
        volumes.push_back(run.pumped_m3.back());
        times.push_back(run.time_s.back());
    }
    study.byVolume = bandOver(runs, quantile(volumes, 0.5), [](const StopRun& run, double x) {
        const auto at = std::lower_bound(run.pumped_m3.begin(), run.pumped_m3.end(), x);
        const auto i = static_cast<std::size_t>(at - run.pumped_m3.begin());
        if (at == run.pumped_m3.end() || i == 0 || run.pumped_m3[i] <= run.pumped_m3[i - 1]) {
            return at == run.pumped_m3.end() ? run.time_s.back() : run.time_s[i];
        }
        const double share = (x - run.pumped_m3[i - 1]) / (run.pumped_m3[i] - run.pumped_m3[i - 1]);
        return run.time_s[i - 1] + share * (run.time_s[i] - run.time_s[i - 1]);
    });
    study.byTime = bandOver(runs, quantile(times, 0.5), [](const StopRun&, double x) { return x; });
}

RankFit rankRegression(const std::vector<std::vector<double>>& columns, const std::vector<double>& y)
{
    std::vector<std::vector<double>> ranks;
    for (const std::vector<double>& column : columns) {
        ranks.push_back(standardRanks(column));
    }
    const std::vector<double> wanted = standardRanks(y);
    std::vector<std::vector<double>> matrix(columns.size(), std::vector<double>(columns.size()));
    std::vector<double> right(columns.size());
    for (std::size_t i = 0; i < columns.size(); ++i) {
        right[i] = product(ranks[i], wanted);
        for (std::size_t j = 0; j < columns.size(); ++j) {
            matrix[i][j] = product(ranks[i], ranks[j]);
        }
    }
    RankFit fit;
    fit.coefficients = solved(std::move(matrix), right);
    for (std::size_t i = 0; i < columns.size(); ++i) {
        fit.rSquared += fit.coefficients[i] * right[i];
    }
    return fit;
}

void addInfluences(const StopQuestion& question, const std::vector<StopRun>& runs, const std::vector<double>& points,
                   StopStudy& study)
{
    const std::size_t width = question.ranges.size();
    std::vector<std::size_t> open;
    std::vector<std::vector<double>> columns;
    for (std::size_t r = 0; r < width; ++r) {
        if (question.ranges[r].isOpen()) {
            open.push_back(r);
            columns.emplace_back();
            for (std::size_t i = 0; i < runs.size(); ++i) {
                columns.back().push_back(points[i * width + r]);
            }
        }
    }
    // With no stop to suggest: how warm the tap gets at all.
    std::vector<double> taps;
    for (const StopRun& run : runs) {
        const auto at = study.best() ? stopTime(run, *study.best()) : std::nullopt;
        taps.push_back(valueAt(run, run.tapMost_C, at.value_or(run.time_s.back())));
    }
    const RankFit fit = rankRegression(columns, taps);
    for (std::size_t k = 0; k < open.size(); ++k) {
        study.influences.push_back({question.ranges[open[k]], fit.coefficients[k]});
    }
    std::stable_sort(study.influences.begin(), study.influences.end(), [](const Influence& a, const Influence& b) {
        return std::abs(a.coefficient) > std::abs(b.coefficient);
    });
    study.rankFit = fit.rSquared;
}

void bareStop(document::Drawing& drawing)
{
    if (document::Part* box = drawing.find(loopParts(drawing).controller)) {
        for (const char* key : {"refuse_when_warm", "high_limit", "inlet_lockout"}) {
            box->entries[key] = {false, parts::Basis::Measured};
        }
        box->entries["longest_run_s"] = {0.0, parts::Basis::Measured};
        box->entries["no_flow_s"] = {0.0, parts::Basis::Measured};
    }
}

}  // namespace tapward::study
