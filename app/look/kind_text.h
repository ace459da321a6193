// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QString>
#include <string_view>

#include "parts/part_kind.h"

namespace tapward::app {

QString toText(std::string_view text);
QString kindId(const parts::PartKind& kind);
QString kindTitle(const parts::PartKind& kind);       ///< in the reader's language
QString groupTitle(parts::TrayGroup group);
/// What a search looks in: title, group and the kind's own search words in both languages, folded to lower case.
QString kindSearchText(const parts::PartKind& kind);
/// True when every word typed begins a word of the text.
bool matchesWords(const QString& text, const QString& typed);

}  // namespace tapward::app
