// SPDX-License-Identifier: GPL-3.0-or-later
#include "shell/menu_letters.h"

#include <QMenu>
#include <QRegularExpression>
#include <set>

namespace tapward::app {

void settleMenuLetters(const QList<QAction*>& actions)
{
    static const QRegularExpression marked(QStringLiteral("&([^&])"));
    std::set<QChar> taken;
    for (QAction* action : actions) {
        if (action->menu())
            settleMenuLetters(action->menu()->actions());
        QString text = action->text();
        const auto found = marked.match(text);
        if (!found.hasMatch() || taken.insert(found.captured(1).at(0).toLower()).second)
            continue;
        text.remove(found.capturedStart(), 1);
        const auto place = [&](bool wordStart) {
            for (qsizetype i = 0; i < text.size(); ++i)
                if (text.at(i).isLetter() && (!wordStart || i == 0 || text.at(i - 1).isSpace())
                    && taken.insert(text.at(i).toLower()).second) {
                    text.insert(i, QLatin1Char('&'));
                    return true;
                }
            return false;
        };
        if (!place(true))
            place(false);
        action->setText(text);
    }
}

}  // namespace tapward::app
