// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QAction>
#include <QList>

namespace tapward::app {

/// Sees to it that no two entries of one menu answer to the same letter: a later one gets another letter of its
/// own text, or none. Translators need not know what else is in the menu. Walks into submenus.
void settleMenuLetters(const QList<QAction*>& actions);

}  // namespace tapward::app
