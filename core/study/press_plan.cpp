// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <cmath>
#include <limits>

#include "study/simulation.h"

namespace tapward::study {
namespace {

using document::ActionKind;

constexpr double kNever_s = std::numeric_limits<double>::infinity();
constexpr double kAtOnce_s = 1e-9;

}  // namespace

void Simulation::planAct(ActionKind kind, document::PartId part, double opening, double hotShare)
{
    document::Action action;
    action.at_s = m_time;
    action.kind = kind;
    action.part = part;
    action.value = opening;
    action.second = hotShare;
    m_plan.actions.push_back(action);
    if (kind != ActionKind::PressButton) {  // presses go to the controller themselves: their answer counts
        applyAction(m_plan.actions.back());
    }
}

void Simulation::followPlan()
{
    const PressPlan& plan = *m_trial->plan;
    PlanState& state = m_plan;
    if (state.controller < 0) {
        return;
    }
    ControlActor& actor = m_controls[state.controller];
    const auto due = [&](double at_s) { return m_time >= at_s - kAtOnce_s; };
    const bool allMade = state.made == static_cast<int>(plan.gaps_s.size());

    if (state.running && actor.control.state() == control::RunState::Idle) {
        state.running = false;
        state.ended_s = m_time;
        if (!allMade) {
            state.nextTry_s = m_time + plan.gaps_s[state.made];
            if (plan.drawAt != document::kNoPart) {
                planAct(ActionKind::OpenOutlet, plan.drawAt, 1, plan.drawHotShare);
                state.drawUntil_s = m_time + plan.drawFor_s;
            }
        }
    }
    if (state.drawUntil_s >= 0 && due(state.drawUntil_s)) {
        planAct(ActionKind::CloseOutlet, plan.drawAt, 1, -1);
        state.drawUntil_s = -1;
    }
    if (!state.running && !allMade && due(state.nextTry_s)) {
        press(static_cast<std::size_t>(state.controller));
        if (actor.control.state() != control::RunState::Idle) {
            planAct(ActionKind::PressButton, plan.pressed, 1, -1);
            ++state.made;
            state.running = true;
            state.pressed_s = m_time;
        } else {
            state.nextTry_s = m_time + std::max(plan.retry_s, 1.0);
        }
    } else if (state.running && due(state.pressed_s + plan.mostRun_s)) {
        planAct(ActionKind::PressButton, plan.pressed, 1, -1);
        press(static_cast<std::size_t>(state.controller));
        state.pressed_s = kNever_s;  // a stuck button may start it again at once: not the plan's run
    }
    if (state.made < static_cast<int>(plan.gaps_s.size())) {
        return;
    }
    using Last = PlanState::Last;
    if (plan.openAt != document::kNoPart) {
        const bool timeKnown = plan.openFromPress || !state.running;
        const double opens_s =
            plan.openFromPress ? state.pressed_s + plan.openDelay_s : state.ended_s + plan.openDelay_s;
        if (state.last == Last::Waits && timeKnown && due(opens_s)) {
            planAct(ActionKind::OpenOutlet, plan.openAt, 1, plan.openHotShare);
            state.last = Last::Open;
            state.lastOpened_s = m_time;
        } else if (state.last == Last::Open && due(state.lastOpened_s + plan.openFor_s)) {
            planAct(ActionKind::CloseOutlet, plan.openAt, 1, -1);
            state.last = Last::Over;
        }
    }
    const bool drawn = plan.openAt == document::kNoPart || state.last == Last::Over;
    state.done = drawn && !state.running && due(state.ended_s + plan.settle_s);
}

double Simulation::planDue_s() const
{
    const PressPlan& plan = *m_trial->plan;
    const PlanState& state = m_plan;
    double next = kNever_s;
    const auto at = [&](double t_s) {
        if (t_s > m_time + kAtOnce_s) {
            next = std::min(next, t_s);
        }
    };
    if (state.drawUntil_s >= 0) {
        at(state.drawUntil_s);
    }
    if (state.running) {
        at(state.pressed_s + plan.mostRun_s);
    }
    if (state.made < static_cast<int>(plan.gaps_s.size())) {
        if (!state.running) {
            at(state.nextTry_s);
        }
        return next;
    }
    if (plan.openAt != document::kNoPart) {
        if (state.last == PlanState::Last::Open) {
            at(state.lastOpened_s + plan.openFor_s);
        } else if (state.last == PlanState::Last::Waits) {
            at((plan.openFromPress ? state.pressed_s : state.running ? kNever_s : state.ended_s) + plan.openDelay_s);
        }
    }
    if (!state.running) {
        at(state.ended_s + plan.settle_s);
    }
    return next;
}

document::Case Simulation::asRun() const
{
    document::Case script = m_case;
    // Not rounded: a press at the very instant a run ends finds the valve still open, one a moment later
    // does not.
    script.actions.insert(script.actions.end(), m_plan.actions.begin(), m_plan.actions.end());
    if (m_trial && m_trial->plan) {
        script.duration_s = std::clamp(std::ceil(m_time), 1.0, 7200.0);
    }
    return script;
}

}  // namespace tapward::study
