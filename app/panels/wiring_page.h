// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "panels/safety_page.h"

class QLabel;

namespace tapward::app {

class SafetyTable;

/// The 12 V side: volts at every load, the wire and fuse it needs, what is left.
class WiringPage final : public SafetyPage {
    Q_OBJECT
public:
    WiringPage(Session& session, const StudyWorker& worker);
    bool hasAnswer() const override { return m_worker.answers().wiring != nullptr; }
    bool isStale() const override { return m_worker.isStale(m_worker.answers().wiring); }
    void refresh() override;

    SafetyTable& loads() { return *m_loads; }
    SafetyTable& branches() { return *m_branches; }

private:
    QLabel* m_summary;
    SafetyTable *m_loads, *m_branches;
};

}  // namespace tapward::app
