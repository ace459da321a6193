// SPDX-License-Identifier: GPL-3.0-or-later
#include "session/message_text.h"

#include <cstring>
#include <QCoreApplication>

namespace tapward::app {

namespace {

QString lookedUp(const std::string& english) { return QCoreApplication::translate("core", english.c_str()); }

}  // namespace

QString coreText(std::string_view english)
{
    const std::string whole(english);
    const QString plain = QString::fromStdString(whole);
    const QString exact = lookedUp(whole);
    if (exact != plain)
        return exact;
    if (const auto space = whole.rfind(' '); space != std::string::npos) {
        const std::string head = whole.substr(0, space);
        if (const QString words = lookedUp(head); words != QString::fromStdString(head))
            return words + plain.mid(QString::fromStdString(head).size());
    }
    // Pieces: the longest first one that is a key, else the first.
    const auto split = [&](std::size_t at, const QString& first) {
        return first + plain.mid(QString::fromStdString(whole.substr(0, at)).size(), 2)
               + coreText(english.substr(at + 2));
    };
    const auto separatorBefore = [&](std::size_t end) {
        while (end > 0)
            if (end + 1 < whole.size() && whole[end + 1] == ' ' && std::strchr(",;:", whole[end]) != nullptr)
                return end;
            else
                --end;
        return std::size_t{0};
    };
    std::size_t first = 0;
    for (auto at = separatorBefore(whole.size()); at > 0; at = separatorBefore(at - 1)) {
        first = at;
        const std::string piece = whole.substr(0, at);
        if (const QString words = lookedUp(piece); words != QString::fromStdString(piece))
            return split(at, words);
    }
    return first > 0 ? split(first, QString::fromStdString(whole.substr(0, first))) : plain;
}

QString messageText(const Message& message, UnitSystem units)
{
    if (message.empty())
        return {};
    Message spoken = message;
    for (Argument& argument : spoken.arguments)
        if (const auto* ours = std::get_if<Text>(&argument)) {
            argument = lookedUp(std::string(*ours)).toStdString();
        } else if (const auto* list = std::get_if<std::vector<Text>>(&argument)) {
            QStringList words;
            for (const Text one : *list)
                words << lookedUp(std::string(one));
            argument = words.join(QStringLiteral(", ")).toStdString();
        } else if (const auto* measure = std::get_if<Measure>(&argument); measure != nullptr && measure->atLeast) {
            argument = lookedUp("at least").toStdString() + ' ' + show(*measure, units);
        }
    return QString::fromStdString(render(spoken, units, lookedUp(message.text).toStdString()));
}

QString problemText(const Problem& problem, UnitSystem units)
{
    QString text = messageText(problem.what, units);
    const QString remedy = messageText(problem.remedy, units);
    if (!remedy.isEmpty())
        text += QLatin1Char(' ') + remedy;
    return text;
}

}  // namespace tapward::app
