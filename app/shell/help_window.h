// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QDialog>

class QAction;
class QTextBrowser;

namespace tapward::app {

/// Help that works offline: what the focused thing is, how the window works, and the words of the trade.
class HelpWindow final : public QDialog {
    Q_OBJECT
public:
    explicit HelpWindow(QWidget* parent = nullptr);
    /// Opens on what is known about this widget, then the rest.
    void showFor(QWidget* focused);

private:
    QTextBrowser* m_text;
};

/// Every shortcut of the window, read from its actions.
class ShortcutList final : public QDialog {
    Q_OBJECT
public:
    ShortcutList(const QList<QAction*>& actions, QWidget* parent = nullptr);
};

QString glossaryHtml();
void showAbout(QWidget* parent);

}  // namespace tapward::app
