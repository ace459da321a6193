// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "panels/safety_page.h"

class QLabel;
class QPushButton;

namespace tapward::app {

class SafetyTable;

/// The hottest water the control allows at every place, and how long to wait so that it does not come.
class SafetyWorstPage final : public SafetyPage {
    Q_OBJECT
public:
    SafetyWorstPage(Session& session, const StudyWorker& worker);
    bool hasAnswer() const override { return m_worker.answers().presses != nullptr; }
    bool isStale() const override { return m_worker.isStale(m_worker.answers().presses); }
    void refresh() override;

    SafetyTable& table() { return *m_table; }
    QString waitText() const;

private:
    void open(int row);

    QLabel* m_wait;
    QPushButton* m_show;
    SafetyTable* m_table;
};

}  // namespace tapward::app
