// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "panels/chart_page.h"

namespace tapward::app {

/// What the heater does at every flow (across) and inlet temperature (up), with the loop's own way over it in
/// three presses.
class FireMapPage final : public ChartPage {
    Q_OBJECT
public:
    FireMapPage(Session& session, const StudyWorker& worker);
    bool hasAnswer() const override { return m_worker.answers().fire != nullptr; }
    bool isStale() const override { return m_worker.isStale(m_worker.answers().fire); }
    void refresh() override;
};

}  // namespace tapward::app
