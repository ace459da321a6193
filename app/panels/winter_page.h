// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "panels/safety_page.h"

class QLabel;

namespace tapward::app {

class SafetyTable;

/// Winterizing as drawn: the steps in their order, what empties and what stays full, and the standing cautions.
/// Every line selects the parts it is about.
class WinterPage final : public SafetyPage {
    Q_OBJECT
public:
    WinterPage(Session& session, const StudyWorker& worker);
    bool hasAnswer() const override { return m_worker.answers().winter != nullptr; }
    bool isStale() const override { return m_worker.isStale(m_worker.answers().winter); }
    void refresh() override;

    SafetyTable& steps() { return *m_steps; }
    SafetyTable& places() { return *m_places; }
    QString cautions();

private:
    void showParts(const std::vector<document::PartId>& parts);

    QLabel *m_problem, *m_cautions;
    SafetyTable *m_steps, *m_places;
    std::vector<std::vector<document::PartId>> m_stepParts, m_placeParts;
};

}  // namespace tapward::app
