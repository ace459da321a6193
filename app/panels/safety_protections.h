// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "panels/safety_page.h"

class QLabel;
class QPushButton;

namespace tapward::app {

class SafetyTable;

/// What each protection does to the hottest water: as drawn against switched the other way, with a button
/// that switches it in the drawing.
class SafetyProtectionsPage final : public SafetyPage {
    Q_OBJECT
public:
    SafetyProtectionsPage(Session& session, const StudyWorker& worker);
    bool hasAnswer() const override;
    bool isStale() const override { return m_worker.isStale(m_worker.answers().presses); }
    void refresh() override;

    SafetyTable& table() { return *m_table; }
    QPushButton& switchButton() { return *m_switch; }

Q_SIGNALS:
    void studiesWanted();  ///< the drawing has a protection more or less: ask again

private:
    void showChosen();
    void switchChosen();
    const study::ProtectionEffect* chosen() const;

    QLabel* m_why;
    QPushButton* m_switch;
    SafetyTable* m_table;
};

}  // namespace tapward::app
