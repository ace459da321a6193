// SPDX-License-Identifier: GPL-3.0-or-later
#include "look/kind_text.h"

#include <QCoreApplication>
#include <QStringList>

namespace tapward::app {

namespace {

QString translated(std::string_view english)
{
    return QCoreApplication::translate("core", std::string(english).c_str());
}

}  // namespace

QString toText(std::string_view text) { return QString::fromUtf8(text.data(), static_cast<qsizetype>(text.size())); }

QString kindId(const parts::PartKind& kind) { return toText(kind.id); }

QString kindTitle(const parts::PartKind& kind) { return translated(kind.title); }

QString groupTitle(parts::TrayGroup group) { return translated(parts::title(group)); }

QString kindSearchText(const parts::PartKind& kind)
{
    return QStringList{kindTitle(kind), toText(kind.title), groupTitle(kind.group), toText(kind.searchWords),
                       translated(kind.searchWords)}
        .join(QLatin1Char(' '))
        .toCaseFolded();
}

bool matchesWords(const QString& text, const QString& typed)
{
    const auto words = text.split(QLatin1Char(' '), Qt::SkipEmptyParts);
    for (const auto& wanted : typed.toCaseFolded().split(QLatin1Char(' '), Qt::SkipEmptyParts)) {
        bool found = false;
        for (const auto& word : words)
            found |= word.startsWith(wanted);
        if (!found)
            return false;
    }
    return true;
}

}  // namespace tapward::app
