// SPDX-License-Identifier: GPL-3.0-or-later
#include "panels/case_words.h"

#include <algorithm>
#include <QCoreApplication>

namespace tapward::app {

using document::ActionKind;

namespace {

constexpr ActionKind kActions[] = {ActionKind::OpenOutlet, ActionKind::CloseOutlet, ActionKind::PressButton,
                                   ActionKind::SetValve,   ActionKind::UseCity,     ActionKind::UsePump,
                                   ActionKind::UseNothing, ActionKind::SetVoltage,  ActionKind::StartFault,
                                   ActionKind::EndFault};

QString tr(const char* text) { return QCoreApplication::translate("tapward::app", text); }

}  // namespace

std::span<const ActionKind> actionKinds() { return kActions; }

QString sayAction(ActionKind kind)
{
    switch (kind) {
    case ActionKind::OpenOutlet:
        return tr("Open outlet");
    case ActionKind::CloseOutlet:
        return tr("Close outlet");
    case ActionKind::PressButton:
        return tr("Press button");
    case ActionKind::SetValve:
        return tr("Set hand valve");
    case ActionKind::UseCity:
        return tr("Use city water");
    case ActionKind::UsePump:
        return tr("Use demand pump");
    case ActionKind::UseNothing:
        return tr("Turn supply off");
    case ActionKind::SetVoltage:
        return tr("Set battery voltage");
    case ActionKind::StartFault:
        return tr("Start fault");
    case ActionKind::EndFault:
        return tr("End fault");
    }
    return {};
}

bool hasPart(ActionKind kind)
{
    return kind == ActionKind::OpenOutlet || kind == ActionKind::CloseOutlet || kind == ActionKind::PressButton
           || kind == ActionKind::SetValve || kind == ActionKind::StartFault || kind == ActionKind::EndFault;
}

std::optional<Quantity> valueOf(ActionKind kind)
{
    if (kind == ActionKind::OpenOutlet || kind == ActionKind::SetValve)
        return Quantity::Percent;
    if (kind == ActionKind::SetVoltage)
        return Quantity::Voltage;
    return std::nullopt;
}

parts::Role roleOf(const document::Part& part)
{
    const auto& kind = document::kindOf(part);
    if (!kind.model)
        return parts::Role::None;
    const auto model = kind.model(document::values(part));
    return model ? model->role : parts::Role::None;
}

std::vector<document::PartId> fittingParts(const document::Drawing& drawing, ActionKind kind)
{
    std::vector<document::PartId> ids;
    for (const auto& part : drawing.parts) {
        const auto role = roleOf(part);
        const bool fits = kind == ActionKind::PressButton
                              ? role == parts::Role::Button || role == parts::Role::Controller
                          : kind == ActionKind::SetValve ? role == parts::Role::HandValve
                          : kind == ActionKind::OpenOutlet || kind == ActionKind::CloseOutlet
                              ? role == parts::Role::Outlet
                              : !document::kindOf(part).faults.empty();
        if (fits)
            ids.push_back(part.id);
    }
    return ids;
}

ValueEdit::Check inRange(double least, double most, Quantity quantity)
{
    return [=](double si) -> std::optional<Problem> {
        if (si >= least && si <= most)
            return std::nullopt;
        return Problem{Message("{0} is outside {1} to {2}.",
                               {Measure{si, quantity}, Measure{least, quantity}, Measure{most, quantity}}),
                       Message("Type a value in that range."),
                       {}};
    };
}

document::Action nextAction(const document::Drawing& drawing, const document::Case& script)
{
    using document::ActionKind;
    document::Action next;
    const auto last = std::ranges::max_element(script.actions, {}, &document::Action::at_s);
    const bool any = last != script.actions.end();
    next.at_s = any ? last->at_s + 10 : 1;
    if (any && last->kind == ActionKind::OpenOutlet) {
        next.kind = ActionKind::CloseOutlet;
        next.part = last->part;
        next.at_s = last->at_s + 60;
        return next;
    }
    for (const auto kind : {ActionKind::PressButton, ActionKind::OpenOutlet}) {
        const auto parts = fittingParts(drawing, kind);
        if (parts.empty() || (kind == ActionKind::PressButton && script.view == document::View::Before))
            continue;
        next.kind = kind;
        next.part = std::ranges::count(parts, script.targetPart) ? script.targetPart : parts.front();
        return next;
    }
    next.kind = ActionKind::UseCity;
    return next;
}

}  // namespace tapward::app
