// SPDX-License-Identifier: GPL-3.0-or-later
#include "study/fault_plan.h"

#include <algorithm>
#include <map>
#include <tuple>

namespace tapward::study {
namespace {

using document::Action;
using document::ActionKind;
using document::PartId;
using parts::FaultEffect;

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

/// A pipe leads to it; a pipe is one.
bool isJoined(const document::Drawing& drawing, const PlantPart& part)
{
    const parts::PartKind& kind = document::kindOf(*part.part);
    return kind.isPipe || std::any_of(kind.ports.begin(), kind.ports.end(), [&](const parts::Port& port) {
               return drawing.pipeAt(part.id, port.id) != nullptr;
           });
}

Message whyNot(const document::Drawing& drawing, const PlantPart* part, const parts::Fault& fault)
{
    if (fault.effect == FaultEffect::NotSimulated) {
        return Message(fault.title);
    }
    if (!part) {
        return Message("Not run: this kind of part is no part of the model.");
    }
    const bool waterPart = !part->places.empty();
    if (waterPart && !isJoined(drawing, *part)) {
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

}  // namespace

std::vector<StandardCase> standardCases(const Trials& trials)
{
    std::vector<StandardCase> list;
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
            StandardCase built;
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
        StandardCase built;
        built.trial.script = drawInTurn(trials.plant(), day, hot);
        if (!built.trial.script.actions.empty()) {
            list.push_back(std::move(built));
        }
    }
    return list;
}

std::vector<OneFault> declaredFaults(const Trials& trials)
{
    std::vector<OneFault> list;
    for (const document::Part& part : trials.drawing().parts) {
        if (!document::isPresent(part.stage, document::View::After)) {
            continue;
        }
        for (const parts::Fault& fault : document::kindOf(part).faults) {
            list.push_back({part.id, &fault, whyNot(trials.drawing(), trials.plant().find(part.id), fault)});
        }
    }
    return list;
}

FaultPlan faultPlan(const Trials& trials, const std::vector<StandardCase>& cases, bool pairs)
{
    const document::Drawing& drawing = trials.drawing();
    FaultPlan plan;
    auto& rows = plan.rows;
    const std::vector<OneFault> singles = declaredFaults(trials);
    for (const OneFault& one : singles) {
        rows.emplace_back(one, std::nullopt);
    }
    for (const OneFault& first : singles) {
        const bool protection =
            first.fault->effect == FaultEffect::StopFails || first.fault->effect == FaultEffect::LimitFails;
        if (!pairs || !protection || !first.cannotRun.empty()) {
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

    auto& jobs = plan.jobs;
    std::map<Same, std::size_t> done;          // job of a fault like it
    auto& jobOf = plan.jobOf;
    jobOf.assign(rows.size(), FaultPlan::kNotRun);
    for (std::size_t r = 0; r < rows.size(); ++r) {
        const auto& [one, second] = rows[r];
        if (!one.cannotRun.empty()) {
            continue;
        }
        if (!second) {
            const auto [at, fresh] = done.emplace(sameness(trials.plant(), one), jobs.size());
            if (!fresh) {
                jobOf[r] = at->second;
                continue;
            }
        }
        jobOf[r] = jobs.size();
        FaultJob job{r, {}, {}};
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

    return plan;
}

}  // namespace tapward::study
