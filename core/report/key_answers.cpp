// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>

#include "report/report.h"
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

/// The hottest run of presses without a fault; a single run when nothing else is there.
const study::CaseResult* repeatedCase(const document::Drawing& drawing, const study::Prediction& prediction)
{
    const study::CaseResult* best = nullptr;
    int most = 0;
    double hottest = 0;
    for (const study::CaseResult& result : prediction.cases) {
        const document::Case* script = scriptOf(drawing, result);
        const study::Scalar* outlet = result.scalar("hottest_heater_outlet");
        if (!script || result.view != document::View::After || !outlet || !outlet->value
            || count(*script, ActionKind::StartFault) > 0) {
            continue;
        }
        const int pressed = count(*script, ActionKind::PressButton);
        if (pressed > most || (pressed == most && pressed > 0 && *outlet->value > hottest)) {
            best = &result;
            most = pressed;
            hottest = *outlet->value;
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

AnswerLine line(std::string id, std::string label)
{
    AnswerLine made;
    made.id = std::move(id);
    made.label = std::move(label);
    return made;
}

AnswerLine known(std::string id, std::string label, double si, Quantity quantity, Message note = {})
{
    AnswerLine made = line(std::move(id), std::move(label));
    made.value = {si, quantity};
    made.has = true;
    made.note = std::move(note);
    return made;
}

AnswerLine unknown(std::string id, std::string label, Message reason)
{
    AnswerLine made = line(std::move(id), std::move(label));
    made.reason = std::move(reason);
    return made;
}

AnswerLine fromOptional(std::string id, std::string label, std::optional<double> si, Quantity quantity, Message reason,
                        Message note = {})
{
    return si ? known(std::move(id), std::move(label), *si, quantity, std::move(note))
              : unknown(std::move(id), std::move(label), std::move(reason));
}

AnswerLine fromCase(const study::CaseResult* result, std::string_view scalarId, std::string id, std::string label,
                    const Message& noCase, Message note = {})
{
    if (!result) {
        return unknown(std::move(id), std::move(label), noCase);
    }
    const study::Scalar* scalar = result->scalar(scalarId);
    if (!scalar) {
        return unknown(std::move(id), std::move(label), {"The case '{0}' has no such answer.", {result->name}});
    }
    if (!scalar->value) {
        return unknown(std::move(id), std::move(label), scalar->reason);
    }
    return known(std::move(id), std::move(label), *scalar->value, scalar->quantity,
                 note.empty() ? scalar->note : std::move(note));
}

}  // namespace

std::vector<AnswerLine> keyAnswers(const document::Drawing& drawing, const study::Prediction& prediction)
{
    const study::LoopAnswer& loop = prediction.loop;
    const study::CaseResult* preheat = preheatCase(drawing, prediction);
    const study::CaseResult* repeated = repeatedCase(drawing, prediction);
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
    lines.push_back(fromOptional("activation_flow", "Heater lights at", loop.activationFlow_m3s, Quantity::Flow,
                                 "No heater that lights by flow is drawn."));
    if (loop.flow_m3s && loop.activationFlow_m3s && *loop.activationFlow_m3s > 0) {
        const double margin = *loop.flow_m3s / *loop.activationFlow_m3s - 1;
        lines.push_back(known("flow_margin", "Margin over that", margin, Quantity::Percent,
                              margin < 0 ? Message("The heater does not light.") : Message()));
    } else {
        lines.push_back(unknown("flow_margin", "Margin over that",
                                loop.flow_m3s ? Message("No heater that lights by flow is drawn.") : noLoop));
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
    lines.push_back(fromCase(preheat, "volume_to_target", "suggested_stop", "Suggested stop", noPress,
                             "By volume, from the prediction alone. Set it anew from the first measured runs."));
    const std::int64_t times = repeated ? count(*scriptOf(drawing, *repeated), ActionKind::PressButton) : 0;
    const Message presses = times > 1    ? Message("Over {0} presses: case '{1}'.", {times, repeated->name})
                            : times == 1 ? Message("In one press: case '{0}'.", {repeated->name})
                                         : Message();
    lines.push_back(fromCase(repeated, "hottest_heater_outlet", "hottest_heater_outlet", "Hottest at the heater",
                             noPress, presses));
    lines.push_back(fromCase(repeated, "hottest_tap", "hottest_tap", "Hottest at the tap", noPress, presses));
    double hottest = -1e9;
    for (const AnswerLine& one : lines) {
        if (one.has && (one.id == "hottest_heater_outlet" || one.id == "hottest_tap")) {
            hottest = std::max(hottest, one.value.si);
        }
    }
    if (const auto seconds = review::wholeBurnSeconds(hottest)) {
        lines.push_back(
            known("burn_time", "Time to a burn", *seconds, Quantity::Time,
                  {"At {0}, adult skin; children and elders sooner.", {Measure{hottest, Quantity::Temperature}}}));
    } else {
        lines.push_back(unknown("burn_time", "Time to a burn",
                                repeated ? Message("The published tables begin at {0}; cooler is not the same as safe.",
                                                   {Measure{44, Quantity::Temperature}})
                                         : noPress));
    }
    const Message ofCase = draw ? Message("Case '{0}'.", {draw->name}) : Message();
    const bool before = draw && draw->view == document::View::Before;
    lines.push_back(fromCase(draw, "wait", "wait", before || !draw ? "Wait before the loop" : "Wait without a run",
                             noDraw, ofCase));
    lines.push_back(fromCase(draw, "wasted_volume", "wasted_volume",
                             before || !draw ? "Wasted water before the loop" : "Wasted water without a run", noDraw,
                             ofCase));
    return lines;
}

}  // namespace tapward::report
