// SPDX-License-Identifier: GPL-3.0-or-later
#include "session/message_text.h"

#include <QCoreApplication>

namespace tapward::app {

QString messageText(const Message& message, UnitSystem units)
{
    const QString translated = QCoreApplication::translate("core", message.text.c_str());
    return QString::fromStdString(render(message, units, translated.toStdString()));
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
