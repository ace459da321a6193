// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <QString>
#include <span>
#include <vector>

#include "document/drawing.h"
#include "panels/value_edit.h"

// What the case editor's table and form know about actions.
namespace tapward::app {

/// All kinds of action in the order they are offered.
std::span<const document::ActionKind> actionKinds();
QString sayAction(document::ActionKind kind);
/// Whether an action of this kind is about a part.
bool hasPart(document::ActionKind kind);
/// What its value measures; none when it has no value.
std::optional<Quantity> valueOf(document::ActionKind kind);
/// The role a part of this kind plays in a case; asked of the kind's own model, never of its name.
parts::Role roleOf(const document::Part& part);
std::vector<document::PartId> fittingParts(const document::Drawing& drawing, document::ActionKind kind);
/// What one would add next to this case: close the outlet that was opened last, else press the button, else, before there
/// is one, open an outlet (the one the case is about).
document::Action nextAction(const document::Drawing& drawing, const document::Case& script);

ValueEdit::Check inRange(double least, double most, Quantity quantity);

}  // namespace tapward::app
