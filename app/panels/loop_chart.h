// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "panels/chart_page.h"

namespace tapward::app {

/// The loop's curve with the pump sets that could drive it, their working points, and the flows the heater
/// needs to light and to stay lit.
class LoopChartPage final : public ChartPage {
    Q_OBJECT
public:
    LoopChartPage(Session& session, const StudyWorker& worker);
    bool hasAnswer() const override { return m_worker.answers().loop != nullptr; }
    bool isStale() const override { return m_worker.isStale(m_worker.answers().loop); }
    void refresh() override;
};

}  // namespace tapward::app
