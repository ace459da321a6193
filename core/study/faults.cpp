// SPDX-License-Identifier: GPL-3.0-or-later
#include "study/faults.h"

#include <algorithm>
#include <map>
#include <set>

#include <fmt/format.h>

#include "study/fault_words.h"
#include "study/protections.h"

namespace tapward::study {
namespace {

using document::Action;
using document::ActionKind;
using document::PartId;
using parts::FaultEffect;

/// A case every fault goes through.
struct Standard {
    Trial trial;
    bool pressesOnly = false;
    bool own = false;
};

constexpr double kMidRun_s = 30;  ///< after the first press: a run is under way

bool startsFault(const document::Case& script)
{
    return std::any_of(script.actions.begin(), script.actions.end(),
                       [](const Action& action) { return action.kind == ActionKind::StartFault; });
}

bool draws(const document::Case& script)
{
    return std::any_of(script.actions.begin(), script.actions.end(),
                       [](const Action& action) { return action.kind == ActionKind::OpenOutlet; });
}

/// Each outlet opened for a while, one after the other, all hot or all cold.
document::Case drawInTurn(const Plant& plant, const document::Case& day, bool hot)
{
    constexpr double kOpen_s = 15, kPause_s = 5;
    document::Case script = day;
    script.name = hot ? "Hot draw at each outlet in turn" : "Cold draw at each outlet in turn";
    script.actions.clear();
    double at_s = 3;
    for (const PlantPart& part : plant.parts) {
        if (!part.model.outlet || (hot ? part.model.outlet->hotPath : part.model.outlet->coldPath) < 0) {
            continue;
        }
        Action action;
        action.at_s = at_s;
        action.kind = ActionKind::OpenOutlet;
        action.part = part.id;
        action.second = hot ? 1 : 0;
        script.actions.push_back(action);
        action.at_s = at_s + kOpen_s;
        action.kind = ActionKind::CloseOutlet;
        script.actions.push_back(action);
        at_s += kOpen_s + kPause_s;
    }
    script.duration_s = at_s + 10;
    return script;
}

std::vector<Standard> standards(const Trials& trials)
{
    std::vector<Standard> list;
    document::Case day;
    day.start_C = 15;
    bool found = false;
    for (const document::Case& script : trials.drawing().cases) {
        if (script.view != document::View::After || startsFault(script)) {
            continue;
        }
        if (!found) {
            day = script;
            found = true;
        }
        if (draws(script)) {  // cases of presses alone are covered by the built ones
            list.push_back({{script, std::nullopt, {}, std::nullopt}, false, true});
        }
    }
    day.targetPart = document::kNoPart;
    const auto controllers = trials.plant().withRole(parts::Role::Controller);
    if (!controllers.empty()) {
        PartId pressed = controllers.front()->id;
        const auto buttons = trials.plant().withRole(parts::Role::Button);
        pressed = buttons.empty() ? pressed : buttons.front()->id;
        for (const int presses : {1, 3}) {
            Standard built;
            built.pressesOnly = true;
            built.trial.script = day;
            built.trial.script.name = presses == 1 ? "Cold press" : "Three presses in a row";
            built.trial.script.actions.clear();
            built.trial.script.duration_s = 2400;
            PressPlan plan;
            plan.pressed = pressed;
            plan.gaps_s.assign(static_cast<std::size_t>(presses), 20.0);
            plan.gaps_s.front() = 2;
            built.trial.plan = plan;
            list.push_back(std::move(built));
        }
    }
    for (const bool hot : {true, false}) {
        Standard built;
        built.trial.script = drawInTurn(trials.plant(), day, hot);
        if (!built.trial.script.actions.empty()) {
            list.push_back(std::move(built));
        }
    }
    return list;
}

struct OneFault {
    PartId part = document::kNoPart;
    const parts::Fault* fault = nullptr;
    Message cannotRun;  ///< empty = it can
};

Message whyNot(const PlantPart* part, const parts::Fault& fault)
{
    if (fault.effect == FaultEffect::NotSimulated) {
        return Message(std::string(fault.title));
    }
    if (!part) {
        return Message("Not run: this kind of part is no part of the model.");
    }
    const bool waterPart = !part->places.empty();
    if (waterPart && part->places[0].link < 0) {
        return Message("Not run: the part is not joined to the coach's pipes.");
    }
    if (part->model.controller && fault.effect == FaultEffect::LimitFails && !part->model.controller->spec.highLimit) {
        return Message("Not run: the high limit is switched off in the drawing, so it cannot fail.");
    }
    const control::RunSpec* spec = part->model.controller ? &part->model.controller->spec : nullptr;
    if (spec && fault.effect == FaultEffect::StopFails && !spec->stopByVolume && !spec->stopByTime
        && !spec->stopByTemperature) {
        return Message("Not run: no main stop is switched on in the drawing.");
    }
    return {};
}

std::vector<OneFault> listFaults(const Trials& trials)
{
    std::vector<OneFault> list;
    for (const document::Part& part : trials.drawing().parts) {
        if (!document::isPresent(part.stage, document::View::After)) {
            continue;
        }
        for (const parts::Fault& fault : document::kindOf(part).faults) {
            list.push_back({part.id, &fault, whyNot(trials.plant().find(part.id), fault)});
        }
    }
    return list;
}

Action start(PartId part, const parts::Fault& fault, double at_s)
{
    Action action;
    action.at_s = at_s;
    action.kind = ActionKind::StartFault;
    action.part = part;
    action.fault = std::string(fault.id);
    return action;
}

/// Two faults that are the same to the model: same change to the same chain of parts.
using Same = std::tuple<int, FaultEffect, double, double>;
Same sameness(const Plant& plant, const OneFault& one)
{
    const PlantPart* part = plant.find(one.part);
    if (one.fault->effect != FaultEffect::Clogged || !part || part->places.empty()) {
        return {-one.part, one.fault->effect, one.fault->amount, 0};
    }
    // A blockage anywhere in a chain takes the same pressure at the same flow.
    for (const network::Law& law : part->model.paths[0].laws) {
        if (const auto* pipe = std::get_if<network::PipeLaw>(&law)) {
            return {part->places[0].link, one.fault->effect, one.fault->amount, pipe->bore_m};
        }
    }
    return {-one.part, one.fault->effect, one.fault->amount, 0};
}

/// The row's cases run and read.
struct Job {
    std::size_t row;
    std::vector<Trial> trials;
    std::vector<std::size_t> standard;  ///< which case each trial is
};

void keep(FaultRow& row, const PlaceHeat& heat)
{
    take(row.hottest, heat);
    if (!isOutlet(heat.place)) {
        return;
    }
    for (PlaceHeat& known : row.outlets) {
        if (known.place == heat.place && known.part == heat.part) {
            known = heat.hottest_C > known.hottest_C ? heat : known;
            return;
        }
    }
    row.outlets.push_back(heat);
}

}  // namespace

Result<FaultsStudy> studyFaults(const document::Drawing& drawing, const FaultsOptions& options)
{
    const auto trials = Trials::make(drawing, options.hands);
    if (!trials) {
        return tl::unexpected(trials.error());
    }
    const Plant& plant = trials->plant();
    const std::vector<Standard> cases = standards(*trials);
    FaultsStudy study;
    for (const Standard& one : cases) {
        study.cases.push_back(one.trial.script.name);
    }
    Options quick = searchOptions();
    quick.stop = options.stop;
    std::vector<Trial> soundTrials;
    for (const Standard& one : cases) {
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

    // Rows: singles, then pairs with what a protection hides.
    std::vector<std::pair<OneFault, std::optional<OneFault>>> rows;
    const std::vector<OneFault> singles = listFaults(*trials);
    for (const OneFault& one : singles) {
        rows.emplace_back(one, std::nullopt);
    }
    for (const OneFault& first : singles) {
        const bool protection =
            first.fault->effect == FaultEffect::StopFails || first.fault->effect == FaultEffect::LimitFails;
        if (!options.pairs || !protection || !first.cannotRun.empty()) {
            continue;
        }
        for (const OneFault& other : singles) {
            const bool same = other.part == first.part && other.fault->id == first.fault->id;
            const bool pipe = document::kindOf(*drawing.find(other.part)).isPipe;
            if (!same && !pipe && other.cannotRun.empty()) {
                rows.emplace_back(first, other);
            }
        }
    }

    std::vector<Job> jobs;
    std::map<Same, std::size_t> done;          // job of a fault like it
    std::vector<std::size_t> jobOf(rows.size(), std::string::npos);
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
        if (!one.cannotRun.empty()) {
            row.consequence = one.cannotRun;
            continue;
        }
        if (!second) {
            const auto [at, fresh] = done.emplace(sameness(plant, one), jobs.size());
            if (!fresh) {
                jobOf[r] = at->second;
                continue;
            }
        }
        jobOf[r] = jobs.size();
        Job job{r, {}, {}};
        const bool pipe = document::kindOf(*drawing.find(one.part)).isPipe;
        const bool control = one.fault->effect == FaultEffect::StopFails || one.fault->effect == FaultEffect::LimitFails
                             || one.fault->effect == FaultEffect::ButtonStuck;
        for (std::size_t c = 0; c < cases.size(); ++c) {
            if ((pipe && cases[c].own) || ((control || second) && !cases[c].pressesOnly)) {
                continue;  // a blocked pipe shows in the built cases; a stop only matters when something runs
            }
            Trial trial = cases[c].trial;
            trial.script.actions.insert(trial.script.actions.begin(), start(one.part, *one.fault, 0));
            if (second) {
                trial.script.actions.insert(trial.script.actions.begin() + 1, start(second->part, *second->fault, 0));
            }
            job.trials.push_back(trial);
            job.standard.push_back(c);
            const FaultEffect effect = second ? second->fault->effect : one.fault->effect;
            if ((effect == FaultEffect::PowerCut || effect == FaultEffect::LowVoltage) && cases[c].pressesOnly) {
                trial.script.actions.back().at_s = 2 + kMidRun_s;
                job.trials.push_back(std::move(trial));
                job.standard.push_back(c);
            }
        }
        jobs.push_back(std::move(job));
    }

    std::vector<Trial> all;
    for (const Job& job : jobs) {
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
            double case_K = -1e9;
            for (const PlaceHeat& heat : outcome.hottest) {
                keep(into.row, heat);
                if (heat.place == HeatPlace::HeaterOutlet || isOutlet(heat.place)) {
                    // What burns counts before what is merely warmer than usual.
                    const double burns = isOutlet(heat.place) ? heat.hottest_C - options.outletLimit_C : -50;
                    const double warmer = heat.hottest_C - hottestAt(sane, heat.place, heat.part);
                    case_K = std::max(case_K, std::max(burns, 0.0) + warmer);
                }
            }
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
        if (jobOf[r] == std::string::npos) {
            continue;
        }
        FaultRow own = study.rows[r];
        FaultRow row = reads[jobOf[r]].row;
        row.part = own.part;
        row.fault = own.fault;
        row.withPart = own.withPart;
        row.withFault = own.withFault;
        row.run = true;
        const document::Part* part = drawing.find(own.part);
        const document::Part* with = drawing.find(own.withPart);
        for (Action& action : row.worst.actions) {  // a like fault's script is told with this part
            if (action.kind == ActionKind::StartFault && action.part != own.withPart) {
                action.part = own.part;
                action.fault = own.fault;
            }
        }
        row.worst.name =
            with ? fmt::format("{} {}, {} {}: {}", part->tag, own.fault, with->tag, own.withFault, row.worst.name)
                 : fmt::format("{} {}: {}", part->tag, own.fault, row.worst.name);
        study.rows[r] = std::move(row);
    }
    if (options.progress) {
        options.progress(1);
    }
    return study;
}

}  // namespace tapward::study
