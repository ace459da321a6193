// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <optional>
#include <string_view>

#include "report/report.h"
#include "review/heat_weight.h"
#include "review/scald.h"

namespace tapward::report {
namespace {

using document::ActionKind;

int count(const document::Case& script, ActionKind kind)
{
    return static_cast<int>(std::count_if(script.actions.begin(), script.actions.end(),
                                          [&](const document::Action& action) { return action.kind == kind; }));
}

const document::Case* scriptOf(const document::Drawing& drawing, const study::CaseResult& result)
{
    return drawing.findCase(result.name);
}

/// The plain preheat run: one press, nothing drawn, nothing broken; else the nearest to it.
const study::CaseResult* preheatCase(const document::Drawing& drawing, const study::Prediction& prediction)
{
    const study::CaseResult* best = nullptr;
    int least = 0;
    for (const study::CaseResult& result : prediction.cases) {
        const document::Case* script = scriptOf(drawing, result);
        if (!script || result.view != document::View::After || result.noAnswer) {
            continue;
        }
        const int pressed = count(*script, ActionKind::PressButton);
        if (pressed == 0) {
            continue;
        }
        const int off =
            100 * count(*script, ActionKind::StartFault) + 10 * count(*script, ActionKind::OpenOutlet) + pressed - 1;
        if (!best || off < least) {
            best = &result;
            least = off;
        }
    }
    return best;
}

/// A hot draw as the coach is today; else any hot draw that no run helps.
const study::CaseResult* drawCase(const document::Drawing& drawing, const study::Prediction& prediction)
{
    const study::CaseResult* fallback = nullptr;
    for (const study::CaseResult& result : prediction.cases) {
        const document::Case* script = scriptOf(drawing, result);
        if (!script || count(*script, ActionKind::OpenOutlet) == 0 || count(*script, ActionKind::PressButton) > 0
            || count(*script, ActionKind::StartFault) > 0 || result.noAnswer) {
            continue;
        }
        const study::Scalar* wait = result.scalar("wait");
        if (result.view == document::View::Before) {
            if (wait && wait->value) {
                return &result;
            }
            fallback = fallback ? fallback : &result;
        } else if (wait && wait->value && !fallback) {
            fallback = &result;
        }
    }
    return fallback;
}

/// A tap opened warm after a run, nothing broken.
const study::CaseResult* preheatedDraw(const document::Drawing& drawing, const study::Prediction& prediction)
{
    for (const study::CaseResult& result : prediction.cases) {
        const document::Case* script = scriptOf(drawing, result);
        if (!script || result.view != document::View::After || result.noAnswer
            || count(*script, ActionKind::StartFault) > 0) {
            continue;
        }
        double pressed_s = 1e9, opened_s = -1e9;
        for (const document::Action& action : script->actions) {
            if (action.kind == ActionKind::PressButton) {
                pressed_s = std::min(pressed_s, action.at_s);
            } else if (action.kind == ActionKind::OpenOutlet && action.second != 0) {
                opened_s = std::max(opened_s, action.at_s);
            }
        }
        if (opened_s > pressed_s) {
            return &result;
        }
    }
    return nullptr;
}

AnswerLine line(std::string id, Text label)
{
    AnswerLine made;
    made.id = std::move(id);
    made.label = label;
    return made;
}

AnswerLine known(std::string id, Text label, double si, Quantity quantity, Message note = {})
{
    AnswerLine made = line(std::move(id), label);
    made.value = {si, quantity};
    made.has = true;
    made.note = std::move(note);
    return made;
}

AnswerLine unknown(std::string id, Text label, Message reason)
{
    AnswerLine made = line(std::move(id), label);
    made.reason = std::move(reason);
    return made;
}

AnswerLine fromOptional(std::string id, Text label, std::optional<double> si, Quantity quantity, Message reason,
                        Message note = {})
{
    return si ? known(std::move(id), label, *si, quantity, std::move(note))
              : unknown(std::move(id), label, std::move(reason));
}

AnswerLine fromCase(const study::CaseResult* result, std::string_view scalarId, std::string id, Text label,
                    const Message& noCase, Message note = {})
{
    if (!result) {
        return unknown(std::move(id), label, noCase);
    }
    const study::Scalar* scalar = result->scalar(scalarId);
    if (!scalar) {
        return unknown(std::move(id), label, {"The case '{0}' has no such answer.", {result->name}});
    }
    if (!scalar->value) {
        return unknown(std::move(id), label, scalar->reason);
    }
    return known(std::move(id), label, *scalar->value, scalar->quantity, note.empty() ? scalar->note : std::move(note));
}

constexpr const char* kNoCase = "No case shows the finished coach. Add one that opens a tap or presses the button.";

/// The hottest of some places, with where and by what.
AnswerLine howHot(const char* id, Text label, const document::Drawing& drawing, const study::Assessment& assessment,
                  const study::HotPlace* heat)
{
    if (!heat) {
        return unknown(id, label, kNoCase);
    }
    const document::Part* part = drawing.find(heat->part);
    const std::string tag = part ? part->tag : "?";
    const std::int64_t presses = heat->presses;
    const std::int64_t tried = assessment.presses ? assessment.presses->cases : 0;
    const Message note =
        heat->searched && presses > 1
            ? Message("{0}: over {1} presses, the hottest of {2} scripts tried.", {tag, presses, tried})
        : heat->searched ? Message("{0}: in one press, the hottest of {1} scripts tried.", {tag, tried})
        : presses > 1    ? Message("{0}: over {1} presses, case '{2}'.", {tag, presses, heat->script.name})
        : presses == 1   ? Message("{0}: in one press, case '{1}'.", {tag, heat->script.name})
                         : Message("{0}: case '{1}'.", {tag, heat->script.name});
    AnswerLine made = known(id, label, heat->hottest_C, Quantity::Temperature, note);
    made.atLeast = assessment.isAtLeast();
    made.heat = review::heatSeverity(heat->place, heat->hottest_C);
    return made;
}

AnswerLine suggestedStop(const study::Assessment& assessment, const Message& noLoop)
{
    constexpr const char* kId = "suggested_stop";
    constexpr const char* kLabel = "Suggested stop";
    if (!assessment.searchable) {
        return unknown(kId, kLabel, noLoop);
    }
    if (assessment.isAtLeast()) {
        return unknown(kId, kLabel, "Not worked out yet: it takes the full assessment.");
    }
    if (!assessment.stop) {
        return unknown(kId, kLabel, assessment.noStop);
    }
    const study::StopStudy& study = *assessment.stop;
    const study::StopChoice* best = study.best();
    if (!best) {
        return unknown(kId, kLabel, study.reason);
    }
    // The odds that were verified, where they were.
    const Measure odds{study.confirmed > 0 ? study.confirmedBoth : best->both, Quantity::Percent};
    const std::int64_t samples = study.confirmed > 0 ? study.confirmed : study.samples;
    const Measure target{study.target_C, Quantity::Temperature};
    if (best->volume_m3 && best->temperature_C) {
        return known(kId, kLabel, *best->volume_m3, Quantity::Volume,
                     {"Or {0}, whichever is first. Brings {1} and keeps every limit in {2} of {3} samples.",
                      {Measure{*best->temperature_C, Quantity::Temperature}, target, odds, samples}});
    }
    const Message note("Brings {0} and keeps every limit in {1} of {2} samples.", {target, odds, samples});
    return best->volume_m3       ? known(kId, kLabel, *best->volume_m3, Quantity::Volume, note)
           : best->temperature_C ? known(kId, kLabel, *best->temperature_C, Quantity::Temperature, note)
                                 : known(kId, kLabel, best->time_s.value_or(0), Quantity::Time, note);
}

std::optional<double> valueOf(const study::CaseResult* result, std::string_view id)
{
    const study::Scalar* scalar = result ? result->scalar(id) : nullptr;
    return scalar ? scalar->value : std::nullopt;
}

/// What a preheat saves whoever opens the tap then, against the coach as it is.
AnswerLine saving(const study::CaseResult* before, const study::CaseResult* after, const study::CaseResult* run,
                  const Message& noAfter)
{
    constexpr const char* kId = "saved_volume";
    constexpr const char* kLabel = "Water saved at a draw";
    const auto wait = valueOf(before, "wait"), wasted = valueOf(before, "wasted_volume");
    const auto less = valueOf(after, "wait"), least = valueOf(after, "wasted_volume");
    if (!after) {
        return unknown(kId, kLabel, noAfter);
    }
    if (!wait || !wasted || !less || !least) {
        return unknown(kId, kLabel, "It takes a draw before the loop and one after a run, both of which get warm.");
    }
    const Measure waited{*wait, Quantity::Time}, waits{*less, Quantity::Time};
    if (*less >= *wait) {
        return unknown(kId, kLabel,
                       {"None: the tap is warm after {0} with the loop and after {1} without.", {waits, waited}});
    }
    const auto takes = valueOf(run, "time_to_target");
    return known(kId, kLabel, *wasted - *least, Quantity::Volume,
                 takes ? Message("The wait at the tap falls from {0} to {1}; the run before it takes {2}.",
                                 {waited, waits, Measure{*takes, Quantity::Time}})
                       : Message("The wait at the tap falls from {0} to {1}.", {waited, waits}));
}

}  // namespace

std::vector<AnswerLine> keyAnswers(const document::Drawing& drawing, const study::Prediction& prediction,
                                   const study::Assessment& assessment)
{
    const study::LoopAnswer& loop = prediction.loop;
    const study::CaseResult* preheat = preheatCase(drawing, prediction);
    const study::CaseResult* draw = drawCase(drawing, prediction);
    const Message noLoop = loop.reason.empty() ? Message("No loop is drawn.") : loop.reason;
    const Message noPress("No case presses the button. Add one to see the run.");
    const Message noDraw("No case opens a tap before the loop is in. Add one to compare.");

    std::vector<AnswerLine> lines;
    lines.push_back(fromOptional("loop_flow", "Loop flow", loop.flow_m3s, Quantity::Flow, noLoop,
                                 loop.blockedBy != document::kNoPart ? loop.reason : Message()));
    if (loop.bypass != document::kNoPart) {
        lines.push_back(
            fromOptional("pumped_flow", "Flow of the pumps", loop.pumpFlow_m3s, Quantity::Flow, noLoop,
                         Message("{0} lets part of it back past the heater.", {drawing.find(loop.bypass)->tag})));
    }
    // A storage heater keeps its water hot whatever flows: there is nothing to light.
    if (loop.heater == document::kNoPart || loop.activationFlow_m3s) {
        lines.push_back(fromOptional("activation_flow", "Heater lights at", loop.activationFlow_m3s, Quantity::Flow,
                                     "No heater that lights by flow is drawn."));
        if (loop.flow_m3s && loop.activationFlow_m3s && *loop.activationFlow_m3s > 0) {
            const double margin = *loop.flow_m3s / *loop.activationFlow_m3s - 1;
            const bool lostLow = loop.flowLowVolts_m3s && *loop.flowLowVolts_m3s < *loop.activationFlow_m3s;
            lines.push_back(known("flow_margin", "Margin over that", margin, Quantity::Percent,
                                  margin < 0 ? Message("The heater does not light.")
                                  : lostLow  ? Message("At {0} the loop moves {1}: the heater does not light.",
                                                       {Measure{study::kLowVolts, Quantity::Voltage},
                                                        Measure{*loop.flowLowVolts_m3s, Quantity::Flow}})
                                             : Message()));
        } else {
            lines.push_back(unknown("flow_margin", "Margin over that",
                                    loop.flow_m3s ? Message("No heater that lights by flow is drawn.") : noLoop));
        }
    }
    if (assessment.stop && loop.activationFlow_m3s) {
        lines.push_back(known("lights", "Heater lights in", assessment.stop->lights, Quantity::Percent,
                              {"Of {0} samples of what is not known: volts, water, flows.",
                               {static_cast<std::int64_t>(assessment.stop->samples)}}));
    }
    if (loop.purgeVolume_m3) {
        lines.push_back(known("purge_volume", "Purge volume", *loop.purgeVolume_m3, Quantity::Volume,
                              "Water held in the hot pipe between heater and tap."));
    } else {
        lines.push_back(fromCase(preheat ? preheat : draw, "purge_volume", "purge_volume", "Purge volume", noLoop));
    }
    const Message target =
        preheat ? Message("To {0}, from {1}: case '{2}'.",
                          {Measure{preheat->target_C, Quantity::Temperature},
                           Measure{scriptOf(drawing, *preheat)->start_C, Quantity::Temperature}, preheat->name})
                : Message();
    lines.push_back(fromCase(preheat, "volume_to_target", "volume_to_target", "Volume to warm", noPress, target));
    lines.push_back(fromCase(preheat, "time_to_target", "time_to_target", "Time to warm", noPress, target));
    lines.push_back(suggestedStop(assessment, noLoop));
    const study::HotPlace* atHeater = assessment.hottest({study::HeatPlace::HeaterOutlet});
    const study::HotPlace* atTap = assessment.hottest({study::HeatPlace::OutletHot, study::HeatPlace::OutletCold});
    lines.push_back(howHot("hottest_heater_outlet", "Hottest at the heater", drawing, assessment, atHeater));
    lines.push_back(howHot("hottest_tap", "Hottest at a tap", drawing, assessment, atTap));
    const double hottest = std::max(atHeater ? atHeater->hottest_C : -1e9, atTap ? atTap->hottest_C : -1e9);
    if (const auto seconds = review::wholeBurnSeconds(hottest)) {
        lines.push_back(
            known("burn_time", "Time to a burn", *seconds, Quantity::Time,
                  {"At {0}, adult skin; children and elders sooner.", {Measure{hottest, Quantity::Temperature}}}));
    } else {
        lines.push_back(unknown("burn_time", "Time to a burn",
                                atHeater || atTap
                                    ? Message("The published tables begin at {0}; cooler is not the same as safe.",
                                              {Measure{44, Quantity::Temperature}})
                                    : Message(kNoCase)));
    }
    const Message ofCase = draw ? Message("Case '{0}'.", {draw->name}) : Message();
    const bool before = draw && draw->view == document::View::Before;
    lines.push_back(fromCase(draw, "wait", "wait",
                             before || !draw ? Text("Wait before the loop") : Text("Wait without a run"), noDraw,
                             ofCase));
    lines.push_back(fromCase(
        draw, "wasted_volume", "wasted_volume",
        before || !draw ? Text("Wasted water before the loop") : Text("Wasted water without a run"), noDraw, ofCase));
    const study::CaseResult* preheated = preheatedDraw(drawing, prediction);
    const Message noAfter("No case opens a tap after a run. Add one to compare.");
    lines.push_back(fromCase(preheated, "wait", "wait_after", "Wait after a preheat", noAfter,
                             preheated ? Message("Case '{0}'.", {preheated->name}) : Message()));
    lines.push_back(saving(before ? draw : nullptr, preheated, preheat, noAfter));
    return lines;
}

}  // namespace tapward::report
