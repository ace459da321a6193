// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QString>
#include <string_view>

#include "base/message.h"
#include "base/result.h"
#include "base/units.h"
#include "document/drawing.h"

namespace tapward::app {

/// UTF-8 text of the core as a QString, untranslated (tags, names a person typed).
QString plain(std::string_view text);

/// A fixed text of the core (a label, a title), in the reader's language.
QString say(std::string_view english);

/// A core message in the reader's language and units.
QString sayMessage(const Message& message, UnitSystem units);

/// What went wrong and what to do next, in one line of text.
QString sayProblem(const Problem& problem, UnitSystem units);

/// "0.48 gpm", or an en dash when the number does not exist.
QString sayMeasure(double si, Quantity quantity, UnitSystem units);

/// "gpm", "°F", "" for a plain number.
QString unitSymbol(Quantity quantity, UnitSystem units);

/// "Flow", "Temperature": for table heads and axis titles.
QString quantityName(Quantity quantity);

/// "Flow (gpm)".
QString quantityHead(const QString& name, Quantity quantity, UnitSystem units);

/// A number to type over: more digits than a readout, no trailing zeros, '.' as the decimal sign.
/// It is still rounded; an editor keeps the SI value and never reads this text back unless it was edited.
QString editableNumber(double si, Quantity quantity, UnitSystem units);

/// "0:42" or "1:02:05".
QString sayClock(double seconds);

QString sayBasis(parts::Basis basis);
QString sayStage(document::Stage stage);
QString sayView(document::View view);

/// "P1, Circulator pump".
QString sayPart(const document::Part& part);
/// "F2, Galley sink": where it is, for a part that has been given a name; else as sayPart().
QString sayWhere(const document::Part& part);
/// Tag only, or an empty text when there is no such part.
QString sayTag(const document::Drawing& drawing, document::PartId id);

}  // namespace tapward::app
