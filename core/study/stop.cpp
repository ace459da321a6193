// SPDX-License-Identifier: GPL-3.0-or-later
#include "study/stop.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <mutex>

#include "study/in_parallel.h"
#include "study/loop.h"
#include "study/simulate.h"
#include "study/stop_runs.h"
#include "study/stop_weigh.h"

namespace tapward::study {
namespace {

constexpr double kAsGood = 0.01;  ///< one percent of samples: no difference worth having
constexpr double kNan = std::numeric_limits<double>::quiet_NaN();
constexpr std::uint64_t kFreshSeed = 0x9E3779B97F4A7C15;  ///< any other number than 0 would do

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

/// The best of one family: among those that keep the limits often enough the one that most often does both,
/// in the middle of the stretch that does as well.
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

/// Temperature with a volume behind it: the temperature does the work, the volume ends the run when the
/// sensor does not. Of the pairs that do as well within one percent: the temperature farthest from where it
/// would do worse, with the smallest volume that still leaves a few steps to where it would.
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

/// Runs the suggestion itself on fresh samples, as a prediction would.
Result<void> confirm(const StopQuestion& question, const StopOptions& options, StopStudy& study,
                     const std::function<void()>& oneDone)
{
    const StopChoice& choice = *study.best();
    const int count = std::max(0, options.confirmations);
    const std::vector<double> points = latinHypercube(question.ranges, count, options.seed ^ kFreshSeed);
    struct Slot {
        std::optional<Problem> problem;
        bool done = false, reaches = false, keeps = false;
        double tap_C = kNan;
    };
    std::vector<Slot> slots(static_cast<std::size_t>(count));
    const std::size_t width = question.ranges.size();
    std::mutex told;
    inParallel(
        slots.size(),
        [&](std::size_t i) {
            Slot& slot = slots[i];
            if (options.stop.stop_requested()) {
                return;
            }
            Sample sample = withValues(*question.drawing, question.script, question.ranges,
                                       std::span(points).subspan(i * width, width));
            sample.drawing = withStop(sample.drawing, choice);
            bareStop(sample.drawing);
            sample.script.duration_s = std::clamp(1.5 * choice.longestRun_s + 30, 60.0, 7200.0);
            const auto plant = makePlant(sample.drawing, document::View::After);
            if (!plant) {
                slot.problem = plant.error();
                return;
            }
            Options own;
            own.stop = options.stop;
            const auto result = simulate(sample.drawing, *plant,
                                         findLoop(sample.drawing, *plant, sample.script.start_C), sample.script, own);
            if (!result) {
                slot.problem = result.error();
                return;
            }
            const auto value = [&](const char* id) {
                const Scalar* scalar = result->scalar(id);
                return scalar && scalar->value ? *scalar->value : kNan;
            };
            slot.tap_C = value("hottest_tap");
            const Verdict verdict =
                judge(question, slot.tap_C, value("hottest_heater_inlet"), value("hottest_heater_outlet"));
            slot.reaches = verdict.reaches;
            slot.keeps = verdict.keeps;
            slot.done = true;
            const std::scoped_lock lock(told);
            oneDone();
        },
        options.threads);
    int reaches = 0, keeps = 0, both = 0;
    double worst = kNan;
    for (const Slot& slot : slots) {
        if (slot.problem) {
            return tl::unexpected(*slot.problem);
        }
        if (!slot.done) {
            return problem("The study was stopped.", "Start it again.");
        }
        reaches += slot.reaches;
        keeps += slot.keeps;
        both += slot.reaches && slot.keeps;
        worst = std::isnan(worst) ? slot.tap_C : std::max(worst, slot.tap_C);
    }
    study.confirmed = count;
    if (count > 0) {
        study.confirmedReaches = static_cast<double>(reaches) / count;
        study.confirmedKeeps = static_cast<double>(keeps) / count;
        study.confirmedBoth = static_cast<double>(both) / count;
        study.confirmedWorstTap_C = worst;
    }
    return {};
}

}  // namespace

Result<StopStudy> suggestStop(const document::Drawing& drawing, const StopOptions& options)
{
    const auto question = stopQuestion(drawing, options);
    if (!question) {
        return tl::unexpected(question.error());
    }
    const int samples = std::max(16, options.samples);
    const int all = samples + std::max(0, options.confirmations);
    int done = 0;
    const auto oneDone = [&] {
        ++done;
        if (options.progress) {
            options.progress(done, all);
        }
    };
    const auto runs = stopRuns(*question, options, samples, options.seed, oneDone);
    if (!runs) {
        return tl::unexpected(runs.error());
    }
    StopStudy study;
    study.caseName = question->script.name;
    study.target_C = question->target_C;
    study.limits = question->limits;
    study.heaterOutletLimit_C = question->outletLimit_C;
    study.pumpLimit_C = question->pumpLimit_C;
    study.samples = samples;
    study.ranges = question->ranges;
    study.lights =
        static_cast<double>(std::count_if(runs->begin(), runs->end(), [](const StopRun& r) { return r.lit; }))
        / samples;
    study.choices = {bestOf(StopKind::Volume, *question, *runs, options.keepAtLeast),
                     bestOf(StopKind::Time, *question, *runs, options.keepAtLeast),
                     bestOf(StopKind::Temperature, *question, *runs, options.keepAtLeast),
                     bestPair(*question, *runs, options.keepAtLeast)};
    // Two means are better than one that does as well; time knows least about the water.
    for (const StopKind kind :
         {StopKind::VolumeOrTemperature, StopKind::Volume, StopKind::Temperature, StopKind::Time}) {
        const StopChoice& choice = study.choices[static_cast<std::size_t>(kind)];
        if (choice.notPossible.empty() && (!study.best() || choice.both > study.best()->both + 0.01)) {
            study.suggested = static_cast<int>(kind);
        }
    }
    addBands(*question, *runs, study);
    addInfluences(*question, *runs, latinHypercube(question->ranges, samples, options.seed), study);
    if (!study.best()) {
        study.reason = study.lights < 0.05 ? Message("The heater lights in {0} of the samples only.",
                                                     {Measure{study.lights, Quantity::Percent}})
                                           : Message("No stop reaches the target and keeps every limit often enough; "
                                                     "each kind says what it misses.");
        return study;
    }
    if (const auto confirmed = confirm(*question, options, study, oneDone); !confirmed) {
        return tl::unexpected(confirmed.error());
    }
    const auto coarse = nominalRun(*question, options.cell_m, options.step_s, options.stop);
    const Options usual;
    const auto fine = nominalRun(*question, usual.cell_m, usual.step_s, options.stop);
    if (!coarse || !fine) {
        return tl::unexpected(coarse ? fine.error() : coarse.error());
    }
    const auto tapAt = [&](const StopRun& run) {
        return valueAt(run, run.tap_C, stopTime(run, *study.best()).value_or(run.time_s.back()));
    };
    study.resolutionError_K = tapAt(*coarse) - tapAt(*fine);
    return study;
}

Result<StopChoice> tryStop(const document::Drawing& drawing, StopChoice choice, const StopOptions& options)
{
    const auto question = stopQuestion(drawing, options);
    if (!question) {
        return tl::unexpected(question.error());
    }
    int done = 0;
    const int samples = std::max(16, options.samples);
    const auto runs = stopRuns(*question, options, samples, options.seed, [&] {
        ++done;
        if (options.progress) {
            options.progress(done, samples);
        }
    });
    if (!runs) {
        return tl::unexpected(runs.error());
    }
    choice.notPossible = {};
    weigh(*question, *runs, choice);
    return choice;
}

document::Drawing withStop(const document::Drawing& drawing, const StopChoice& choice)
{
    document::Drawing set = drawing;
    document::Part* box = set.find(loopParts(drawing).controller);
    if (!box) {
        return set;
    }
    const auto put = [&](const char* key, parts::Value value) {
        box->entries[key] = {std::move(value), parts::Basis::Estimated};
    };
    put("stop_by_volume", choice.volume_m3.has_value());
    put("stop_by_time", choice.time_s.has_value());
    put("stop_by_temperature", choice.temperature_C.has_value());
    if (choice.volume_m3) {
        put("stop_volume_m3", std::clamp(*choice.volume_m3, 1e-5, 1.0));
    }
    if (choice.time_s) {
        put("stop_time_s", std::clamp(*choice.time_s, 0.0, 7200.0));
    }
    if (choice.temperature_C) {
        put("stop_temperature_C", std::clamp(*choice.temperature_C, 5.0, 95.0));
    }
    const double longest = document::values(*box).number("longest_run_s");
    if (longest > 0 && longest < choice.longestRun_s) {
        put("longest_run_s", std::min(7200.0, std::ceil(1.1 * choice.longestRun_s)));
    }
    return set;
}

}  // namespace tapward::study
