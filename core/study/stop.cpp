// SPDX-License-Identifier: GPL-3.0-or-later
#include "study/stop.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <mutex>

#include "study/in_parallel.h"
#include "study/loop.h"
#include "study/simulate.h"
#include "study/stop_choose.h"
#include "study/stop_runs.h"
#include "study/stop_weigh.h"

namespace tapward::study {
namespace {

constexpr double kNan = std::numeric_limits<double>::quiet_NaN();
constexpr std::uint64_t kFreshSeed = 0x9E3779B97F4A7C15;  ///< any other number than 0 would do

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
            double entering_C = kNan;
            for (const PlaceHeat& heat : result->hottest) {
                entering_C = heat.place == HeatPlace::ColdEntry ? heat.hottest_C : entering_C;
            }
            const Verdict verdict = judge(question, slot.tap_C, entering_C, value("hottest_heater_outlet"));
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

/// What keeps every stop from being good, of the samples whose heater lights, when the tap is first warm enough.
Message whyNone(const StopQuestion& question, const std::vector<StopRun>& runs, double lights)
{
    if (lights < 0.05) {
        return {"The heater lights in {0} of the samples only.", {Measure{lights, Quantity::Percent}}};
    }
    int lit = 0, entering = 0, outlet = 0, pump = 0;
    for (const StopRun& run : runs) {
        if (!run.lit) {
            continue;
        }
        ++lit;
        const auto at = std::lower_bound(run.tapMost_C.begin(), run.tapMost_C.end(), question.target_C);
        if (at == run.tapMost_C.end()) {
            continue;
        }
        const auto i = static_cast<std::size_t>(at - run.tapMost_C.begin());
        entering += run.enteringMost_C[i] > question.limits.coldEntry_C;
        outlet += question.outletLimit_C > 0 && run.outletMost_C[i] > question.outletLimit_C;
        pump += question.pumpLimit_C > 0 && run.tapMost_C[i] > question.pumpLimit_C;
    }
    const int most = std::max({entering, outlet, pump});
    const Measure share{lit > 0 ? static_cast<double>(most) / lit : 0, Quantity::Percent};
    const Measure target{question.target_C, Quantity::Temperature};
    if (most == 0) {
        return "No stop reaches the target and keeps every limit often enough; each kind says what it misses.";
    }
    if (most == entering) {
        return {"Before the tap has {0}, what enters the cold line has passed {1} in {2} of the samples that light.",
                {target, Measure{question.limits.coldEntry_C, Quantity::Temperature}, share}};
    }
    if (most == outlet) {
        return {"Before the tap has {0}, the heater has passed its limit of {1} in {2} of the samples that light.",
                {target, Measure{question.outletLimit_C, Quantity::Temperature}, share}};
    }
    return {"{0} at the tap is above the {1} the pumps are rated for.",
            {target, Measure{question.pumpLimit_C, Quantity::Temperature}}};
}

/// The highest target below the one asked for that some stop is good for; to half a kelvin.
std::optional<double> possibleTarget(const StopQuestion& question, const std::vector<StopRun>& runs,
                                     const StopOptions& options)
{
    constexpr double kWorthIt_K = 5;  // above the standing water
    constexpr double kWithin_K = 0.5;
    const auto isGood = [&](double target_C) {
        StopQuestion lower = question;
        lower.target_C = target_C;
        for (const StopKind kind : {StopKind::Volume, StopKind::Temperature, StopKind::Time}) {
            const StopChoice choice = bestOf(kind, lower, runs, options.keepAtLeast);
            if (choice.notPossible.empty() && choice.bothIfLit >= options.bothAtLeast) {
                return true;
            }
        }
        return false;
    };
    double good = question.script.start_C + kWorthIt_K, bad = question.target_C;
    if (good >= bad || !isGood(good)) {
        return std::nullopt;
    }
    while (bad - good > kWithin_K) {
        const double middle = 0.5 * (good + bad);
        (isGood(middle) ? good : bad) = middle;
    }
    return good;
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
    study.byColdLine = question->byColdLine;
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
    study.suggested = suggestedOf(study.choices);
    if (study.best() && study.best()->bothIfLit < options.bothAtLeast) {
        study.suggested = -1;
    }
    addBands(*question, *runs, study);
    addInfluences(*question, *runs, latinHypercube(question->ranges, samples, options.seed), study);
    if (!study.best()) {
        study.reason = whyNone(*question, *runs, study.lights);
        study.possibleTarget_C = possibleTarget(*question, *runs, options);
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
