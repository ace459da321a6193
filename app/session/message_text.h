// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QString>
#include <string_view>

#include "base/message.h"
#include "base/result.h"

namespace tapward::app {

/// A fixed text of the core (a label, a title, a word of advice) in the reader's language.
///
/// The English text is the key. Where the core adds to a fixed text, it follows one of two forms, and each
/// fixed piece is a key of its own: pieces joined by ", ", "; " or ": " ("Elbow, PEX 1/2 in, Cold expansion"), or
/// fixed words before a tag or number ("Sensor TE1"). What has no translation stays as it is.
QString coreText(std::string_view english);

/// A core message in the reader's language and units. The English sentence is the translation key. Arguments that are
/// words of ours are translated too; what somebody typed is shown as typed.
QString messageText(const Message& message, UnitSystem units);

/// What is wrong and what to try, as two sentences of plain text.
QString problemText(const Problem& problem, UnitSystem units);

}  // namespace tapward::app
