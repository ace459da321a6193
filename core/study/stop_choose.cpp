// SPDX-License-Identifier: GPL-3.0-or-later
#include "study/stop_choose.h"

#include <algorithm>

namespace tapward::study {
namespace {

constexpr double kAsGood = 0.01;  ///< one percent of samples: no difference worth having

StopChoice choiceOf(StopKind kind, double value)
{
    StopChoice choice;
    choice.kind = kind;
    (kind == StopKind::Volume ? choice.volume_m3
     : kind == StopKind::Time ? choice.time_s
                              : choice.temperature_C) = value;
    return choice;
}

/// Even steps over what the samples reach.
std::vector<double> grid(StopKind kind, const StopQuestion& question, const std::vector<StopRun>& runs, int points)
{
    double least = 0, most = 0;
    for (const StopRun& run : runs) {
        if (kind == StopKind::Volume && !run.sensed_m3.empty()) {
            most = std::max(most, run.sensed_m3.back());
        } else if (kind == StopKind::Time) {
            most = std::max(most, run.time_s.back());
        }
    }
    if (kind == StopKind::Temperature) {
        least = std::min(question.script.start_C + 2, question.target_C - 5);
        most = std::max(question.limits.tap_C, question.target_C) + 8;
    }
    std::vector<double> values;
    for (int i = 1; i <= points; ++i) {
        values.push_back(least + (most - least) * i / points);
    }
    return values;
}

bool isEligible(const StopChoice& choice, double keepAtLeast)
{
    return choice.keeps >= keepAtLeast && choice.comes >= keepAtLeast;
}

/// Why none of these choices will do, with the one that came nearest.
StopChoice nearest(const std::vector<StopChoice>& choices, double keepAtLeast)
{
    const auto score = [](const StopChoice& choice) { return std::min(choice.keeps, choice.comes) + choice.both; };
    StopChoice best = *std::max_element(choices.begin(), choices.end(),
                                        [&](const StopChoice& a, const StopChoice& b) { return score(a) < score(b); });
    best.notPossible =
        isEligible(best, keepAtLeast)
            ? Message("The target is reached in no sample.")
            : Message("No such stop keeps every limit in {0} of the samples; the nearest does in {1} and reaches the "
                      "target in {2}.",
                      {Measure{keepAtLeast, Quantity::Percent}, Measure{best.keeps, Quantity::Percent},
                       Measure{best.reaches, Quantity::Percent}});
    return best;
}

}  // namespace

StopChoice bestOf(StopKind kind, const StopQuestion& question, const std::vector<StopRun>& runs, double keepAtLeast)
{
    StopChoice best = choiceOf(kind, 0);
    if (kind == StopKind::Volume && !question.hasFlowSensor) {
        best.notPossible = "The controller has no flow sensor, so it cannot count volume.";
        return best;
    }
    if (kind == StopKind::Temperature && !question.hasStopSensor) {
        best.notPossible = "The controller has no stop sensor.";
        return best;
    }
    std::vector<StopChoice> choices;
    for (const double value : grid(kind, question, runs, 160)) {
        choices.push_back(choiceOf(kind, value));
        weigh(question, runs, choices.back());
    }
    const auto worth = [&](std::size_t i) { return isEligible(choices[i], keepAtLeast) ? choices[i].both : -1; };
    std::size_t top = 0;
    for (std::size_t i = 1; i < choices.size(); ++i) {
        top = worth(i) > worth(top) ? i : top;
    }
    if (worth(top) <= 0) {
        return nearest(choices, keepAtLeast);
    }
    const double enough = worth(top) - kAsGood - 1e-9;
    std::size_t first = top, last = top;
    while (first > 0 && worth(first - 1) >= enough) {
        --first;
    }
    while (last + 1 < choices.size() && worth(last + 1) >= enough) {
        ++last;
    }
    const auto value = [](const StopChoice& choice) {
        return choice.volume_m3.value_or(0) + choice.time_s.value_or(0) + choice.temperature_C.value_or(0);
    };
    best = choiceOf(kind, 0.5 * (value(choices[first]) + value(choices[last])));
    weigh(question, runs, best);
    best.least = value(choices[first]);
    best.most = value(choices[last]);
    return best;
}

StopChoice bestPair(const StopQuestion& question, const std::vector<StopRun>& runs, double keepAtLeast)
{
    StopChoice best;
    best.kind = StopKind::VolumeOrTemperature;
    if (!question.hasFlowSensor || !question.hasStopSensor) {
        best.notPossible = "It needs a flow sensor and a stop sensor.";
        return best;
    }
    const std::vector<double> volumes = grid(StopKind::Volume, question, runs, 60);
    const std::vector<double> temperatures = grid(StopKind::Temperature, question, runs, 48);
    const int columns = static_cast<int>(volumes.size()), rows = static_cast<int>(temperatures.size());
    std::vector<StopChoice> pairs;
    for (const double temperature : temperatures) {
        for (const double volume : volumes) {
            StopChoice pair = choiceOf(StopKind::VolumeOrTemperature, temperature);
            pair.volume_m3 = volume;
            weigh(question, runs, pair);
            pairs.push_back(pair);
        }
    }
    const auto pairAt = [&](int t, int v) -> StopChoice& { return pairs[static_cast<std::size_t>(t * columns + v)]; };
    double top = 0;
    for (const StopChoice& pair : pairs) {
        top = isEligible(pair, keepAtLeast) ? std::max(top, pair.both) : top;
    }
    if (top <= 0) {
        return nearest(pairs, keepAtLeast);
    }
    const auto good = [&](int t, int v) {
        return t >= 0 && t < rows && v >= 0 && v < columns && isEligible(pairAt(t, v), keepAtLeast)
               && pairAt(t, v).both >= top - kAsGood - 1e-9;
    };
    // Rows where the temperature needs no help, where there are any: the volume is the second means.
    const auto alone = [&](int t) { return good(t, columns - 1); };
    bool anyAlone = false;
    for (int t = 0; t < rows; ++t) {
        anyAlone = anyAlone || alone(t);
    }
    constexpr int kVolumeSteps = 3;
    int bestClearance = -1, bestT = 0, bestV = 0;
    for (int v = 0; v < columns; ++v) {
        for (int t = 0; t < rows; ++t) {
            if (!good(t, v) || (anyAlone && !alone(t))) {
                continue;
            }
            int steps = 0, down = 0;
            const auto same = [&](int row) { return good(row, v) && (!anyAlone || alone(row)); };
            while (same(t - steps - 1) && same(t + steps + 1)) {
                ++steps;
            }
            while (down < kVolumeSteps && good(t, v - down - 1)) {
                ++down;
            }
            const int clearance = 1000 * down + steps;
            if (clearance > bestClearance) {
                bestClearance = clearance;
                bestT = t;
                bestV = v;
            }
        }
    }
    best = pairAt(bestT, bestV);
    int first = bestV, last = bestV;
    while (good(bestT, first - 1)) {
        --first;
    }
    while (good(bestT, last + 1)) {
        ++last;
    }
    best.least = volumes[static_cast<std::size_t>(first)];
    best.most = volumes[static_cast<std::size_t>(last)];
    return best;
}

int suggestedOf(const std::array<StopChoice, 4>& choices)
{
    int best = -1;
    for (const StopKind kind :
         {StopKind::VolumeOrTemperature, StopKind::Volume, StopKind::Temperature, StopKind::Time}) {
        const StopChoice& choice = choices[static_cast<std::size_t>(kind)];
        if (choice.notPossible.empty()
            && (best < 0 || choice.both > choices[static_cast<std::size_t>(best)].both + kAsGood)) {
            best = static_cast<int>(kind);
        }
    }
    return best;
}

}  // namespace tapward::study
