// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "panels/safety_page.h"

class QLabel;
class QPushButton;

namespace tapward::app {

class SafetyTable;

/// The fewest protections that keep the limits, with a button that sets them; and what each one does to the hottest water:
/// as drawn against switched the other way, with a button that switches it.
class SafetyProtectionsPage final : public SafetyPage {
    Q_OBJECT
public:
    SafetyProtectionsPage(Session& session, const StudyWorker& worker);
    bool hasAnswer() const override;
    bool isStale() const override;
    void refresh() override;

    SafetyTable& table() { return *m_table; }
    QPushButton& switchButton() { return *m_switch; }
    QPushButton& applyButton() { return *m_apply; }
    QString neededText() const;  ///< the fewest protections that keep the limits, or why none does

Q_SIGNALS:
    void studiesWanted();  ///< the drawing has a protection more or less: ask again

private:
    bool hasEffects() const;
    void showChosen();
    void switchChosen();
    void applyNeeded();
    const study::ProtectionEffect* chosen() const;

    QLabel* m_why;
    QPushButton *m_switch, *m_apply;
    QLabel* m_needed;
    SafetyTable* m_table;
};

}  // namespace tapward::app
