// SPDX-License-Identifier: GPL-3.0-or-later
#include "study/faults.h"

#include <algorithm>

#include "study/fault_plan.h"
#include "study/fault_words.h"
#include "study/protections.h"

namespace tapward::study {
namespace {

/// Most actions that the scripts of all runs may have together: they are held while the study runs, half a gigabyte.
/// A coach of a thousand parts has a fifth of it.
constexpr double kMostActions = 1e6;

double actionsOf(const Trials& trials, const std::vector<StandardCase>& cases)
{
    const std::vector<OneFault> faults = declaredFaults(trials);
    const auto run =
        std::count_if(faults.begin(), faults.end(), [](const OneFault& one) { return one.cannotRun.empty(); });
    double actions = 0;
    for (const StandardCase& one : cases) {
        actions += static_cast<double>(one.trial.script.actions.size() + 1);
    }
    return actions * static_cast<double>(run);
}

}  // namespace

Result<FaultsStudy> studyFaults(const document::Drawing& drawing, const FaultsOptions& options)
{
    const auto trials = Trials::make(drawing, options.hands);
    if (!trials) {
        return tl::unexpected(trials.error());
    }
    const std::vector<StandardCase> cases = standardCases(*trials);
    if (actionsOf(*trials, cases) > kMostActions) {
        return problem("This coach has too many parts, taps and cases for every fault to be tried on it.",
                       "Study a copy of the drawing with fewer cases, and without what is far from the loop.");
    }
    FaultsStudy study;
    for (const StandardCase& one : cases) {
        study.cases.push_back(one.trial.script.name);
    }
    Options quick = searchOptions();
    quick.stop = options.stop;
    std::vector<Trial> soundTrials;
    for (const StandardCase& one : cases) {
        soundTrials.push_back(one.trial);
    }
    const auto soundResults = trials->run(soundTrials, quick);
    if (!soundResults) {
        return tl::unexpected(soundResults.error());
    }
    std::vector<Outcome> sound;
    for (const TrialResult& result : *soundResults) {
        sound.push_back(outcomeOf(result));
        for (const PlaceHeat& heat : result.result.hottest) {
            take(study.sound, heat);
        }
    }
    study.simulated += static_cast<int>(soundTrials.size());

    const FaultPlan plan = faultPlan(*trials, cases, options.pairs);
    const auto& rows = plan.rows;
    const auto& jobs = plan.jobs;
    study.rows.resize(rows.size());
    for (std::size_t r = 0; r < rows.size(); ++r) {
        const auto& [one, second] = rows[r];
        FaultRow& row = study.rows[r];
        row.part = one.part;
        row.fault = std::string(one.fault->id);
        if (second) {
            row.withPart = second->part;
            row.withFault = std::string(second->fault->id);
        }
        row.consequence = one.cannotRun;
    }

    std::vector<Trial> all;
    for (const FaultJob& job : jobs) {
        all.insert(all.end(), job.trials.begin(), job.trials.end());
    }
    std::vector<TrialResult> results;
    results.reserve(all.size());
    constexpr std::size_t kBatch = 32;  // between two looks at the progress
    for (std::size_t begin = 0; begin < all.size(); begin += kBatch) {
        const std::span<const Trial> batch(all.data() + begin, std::min(kBatch, all.size() - begin));
        auto part = trials->run(batch, quick);
        if (!part) {
            return tl::unexpected(part.error());
        }
        std::move(part->begin(), part->end(), std::back_inserter(results));
        if (options.progress) {
            options.progress(0.8 * static_cast<double>(results.size()) / static_cast<double>(all.size()));
        }
    }
    study.simulated += static_cast<int>(all.size());

    // Read each job once, word each row.
    std::vector<std::size_t> firstOf(jobs.size(), 0);
    for (std::size_t j = 1; j < jobs.size(); ++j) {
        firstOf[j] = firstOf[j - 1] + jobs[j - 1].trials.size();
    }
    struct Read {
        FaultRow row;
        std::vector<Outcome> faulty, soundThere;
        std::size_t worst = 0;
    };
    std::vector<Read> reads(jobs.size());
    const auto read = [&](std::size_t j, std::span<const TrialResult> found, parts::FaultEffect effect) {
        Read& into = reads[j];
        into = {};
        double worst_K = -1e9;
        for (std::size_t t = 0; t < found.size(); ++t) {
            const Outcome outcome = outcomeOf(found[t]);
            const Outcome& sane = sound[jobs[j].standard[t]];
            for (const PlaceHeat& heat : outcome.hottest) {
                keepHottest(into.row, heat);
            }
            const double case_K = caseWeight_K(outcome, sane, options.outletLimit_C);
            if (case_K > worst_K) {
                worst_K = case_K;
                into.worst = t;
            }
            into.faulty.push_back(outcome);
            into.soundThere.push_back(sane);
        }
        if (!found.empty()) {
            into.row.worst = found[into.worst].asRun;
        }
        wordRow(drawing, into.row, into.faulty, into.soundThere, into.worst, options, effect);
    };
    // Those that can hurt more than the sound coach are told as the case opens: run again as reported.
    std::vector<Trial> again;
    std::vector<std::size_t> againOf;
    for (std::size_t j = 0; j < jobs.size(); ++j) {
        const auto& [one, second] = rows[jobs[j].row];
        read(j, std::span(results).subspan(firstOf[j], jobs[j].trials.size()), one.fault->effect);
        if (reads[j].row.harm != Harm::Nobody && reads[j].row.change_K.value_or(0) > 0.5) {
            Trial trial;
            trial.script = reads[j].row.worst;
            again.push_back(std::move(trial));
            againOf.push_back(j);
        }
    }
    Options fine = options.resolution;
    fine.stop = options.stop;
    const auto confirmed = trials->run(again, fine);
    if (!confirmed) {
        return tl::unexpected(confirmed.error());
    }
    study.simulated += static_cast<int>(again.size());
    for (std::size_t a = 0; a < again.size(); ++a) {
        const std::size_t j = againOf[a];
        results[firstOf[j] + reads[j].worst].result.hottest = (*confirmed)[a].result.hottest;
        const auto& [one, second] = rows[jobs[j].row];
        read(j, std::span(results).subspan(firstOf[j], jobs[j].trials.size()), one.fault->effect);
    }
    for (std::size_t r = 0; r < rows.size(); ++r) {
        if (plan.jobOf[r] == FaultPlan::kNotRun) {
            continue;
        }
        study.rows[r] = toldOf(drawing, reads[plan.jobOf[r]].row, study.rows[r]);
    }
    if (options.progress) {
        options.progress(1);
    }
    return study;
}

}  // namespace tapward::study
