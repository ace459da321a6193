// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>

#include "study/in_parallel.h"
#include "study/prediction.h"
#include "study/simulate.h"
#include "study/work.h"

namespace tapward::study {

std::size_t Snapshot::momentAt(double t_s) const
{
    const auto after = std::upper_bound(time_s.begin(), time_s.end(), t_s + 1e-9);
    return after == time_s.begin() ? 0 : static_cast<std::size_t>(after - time_s.begin()) - 1;
}

const Scalar* CaseResult::scalar(std::string_view id) const
{
    const auto at = std::find_if(scalars.begin(), scalars.end(), [&](const Scalar& s) { return s.id == id; });
    return at == scalars.end() ? nullptr : &*at;
}

const Series* CaseResult::find(std::string_view id) const
{
    const auto at = std::find_if(series.begin(), series.end(), [&](const Series& s) { return s.id == id; });
    return at == series.end() ? nullptr : &*at;
}

const CaseResult* Prediction::find(std::string_view name) const
{
    const auto at = std::find_if(cases.begin(), cases.end(), [&](const CaseResult& c) { return c.name == name; });
    return at == cases.end() ? nullptr : &*at;
}

namespace {

CaseResult noAnswer(const document::Case& script, Problem why)
{
    CaseResult result;
    result.name = script.name;
    result.view = script.view;
    result.duration_s = script.duration_s;
    result.target_C = script.target_C;
    result.noAnswer = std::move(why);
    return result;
}

}  // namespace

Result<Prediction> predict(const document::Drawing& drawing, const Options& options)
{
    Prediction prediction;
    auto after = makePlant(drawing, document::View::After);
    if (!after) {
        return tl::unexpected(after.error());
    }
    LoopMap afterLoop = findLoop(drawing, *after, coldStart(drawing));
    afterLoop.answer.purgeVolume_m3 = std::nullopt;
    prediction.loop = afterLoop.answer;

    std::optional<Result<Plant>> before;
    LoopMap beforeLoop;
    std::vector<const document::Case*> scripts;
    for (const document::Case& script : drawing.cases) {
        if (!options.onlyCase.empty() && script.name != options.onlyCase) {
            continue;
        }
        scripts.push_back(&script);
        if (script.view == document::View::Before && !before) {
            before = makePlant(drawing, document::View::Before);
            if (*before) {
                beforeLoop = findLoop(drawing, **before, script.start_C);
            }
        }
    }
    // What would take too long is said before anything is run.
    std::vector<char> tooMuch(scripts.size(), false);
    double work = 0;
    for (std::size_t i = 0; i < scripts.size(); ++i) {
        const bool isBefore = scripts[i]->view == document::View::Before;
        work += isBefore && !*before ? 0 : workOf(isBefore ? **before : *after, *scripts[i], options);
        tooMuch[i] = work > kMostWork;
    }
    // Cases share nothing but what none of them changes, so they run side by side; each has its own slot.
    std::vector<std::optional<Result<CaseResult>>> slots(scripts.size());
    inParallel(scripts.size(), [&](std::size_t i) {
        const document::Case& script = *scripts[i];
        const bool isBefore = script.view == document::View::Before;
        if (isBefore && !*before) {
            slots[i] = noAnswer(script, before->error());
            return;
        }
        const Plant& plant = isBefore ? **before : *after;
        if (plant.chains.empty()) {
            slots[i] =
                noAnswer(script, Problem{"Nothing in this view of the drawing holds water.",
                                         "Draw at least a supply, a heater and a tap, joined by pipes.", script.name});
            return;
        }
        if (tooMuch[i]) {
            slots[i] = noAnswer(
                script,
                Problem{"The cases of this coach are too long and too many to be predicted together.",
                        "Ask for this case alone, shorten it or those before it, or keep some in another drawing.",
                        script.name});
            return;
        }
        Options own = options;
        own.snapshots = options.snapshots && (options.snapshotCase.empty() || options.snapshotCase == script.name);
        slots[i] = simulate(drawing, plant, isBefore ? beforeLoop : afterLoop, script, own);
    });
    for (auto& slot : slots) {
        if (!*slot) {
            return tl::unexpected(slot->error());
        }
        prediction.cases.push_back(std::move(**slot));
    }
    if (!options.onlyCase.empty() && prediction.cases.empty()) {
        return problem(Message("There is no case called {0}.", {options.onlyCase}),
                       "Choose one of the cases in the drawing.");
    }
    // The loop's own purge volume: to the sensor or join of the first case that ran it.
    for (const CaseResult& result : prediction.cases) {
        const Scalar* purge = result.scalar("purge_volume");
        if (result.view == document::View::After && purge && purge->value && !prediction.loop.purgeVolume_m3) {
            prediction.loop.purgeVolume_m3 = purge->value;
        }
    }
    return prediction;
}

LoopAnswer loopAnswer(const document::Drawing& drawing)
{
    const auto plant = makePlant(drawing, document::View::After);
    if (!plant) {
        LoopAnswer answer;
        answer.reason = plant.error().what;
        return answer;
    }
    return findLoop(drawing, *plant, coldStart(drawing)).answer;
}

}  // namespace tapward::study
