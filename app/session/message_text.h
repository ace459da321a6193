// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QString>

#include "base/message.h"
#include "base/result.h"

namespace tapward::app {

/// A core message in the reader's language and units. The English sentence is the translation key.
QString messageText(const Message& message, UnitSystem units);

/// What is wrong and what to try, as two sentences of plain text.
QString problemText(const Problem& problem, UnitSystem units);

}  // namespace tapward::app
