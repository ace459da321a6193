// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "panels/safety_page.h"

class QLabel;

namespace tapward::app {

class ChartAndTable;

/// What the heater does at every flow (across) and inlet temperature (up), with the loop's own way over it in
/// three presses.
class FireMapPage final : public SafetyPage {
    Q_OBJECT
public:
    FireMapPage(Session& session, const StudyWorker& worker);
    bool hasAnswer() const override { return m_worker.answers().fire != nullptr; }
    bool isStale() const override { return m_worker.isStale(m_worker.answers().fire); }
    void refresh() override;

    ChartAndTable& chart() { return *m_chart; }

private:
    QLabel* m_summary;
    ChartAndTable* m_chart;
};

}  // namespace tapward::app
