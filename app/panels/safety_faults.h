// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "panels/safety_page.h"

class QComboBox;
class QLabel;
class QPushButton;
class QToolButton;

namespace tapward::app {

class SafetyTable;

/// Every fault every part can have, worst first: what follows, who could be hurt, what shows it, what stops it.
class SafetyFaultsPage final : public SafetyPage {
    Q_OBJECT
public:
    SafetyFaultsPage(Session& session, StudyWorker& worker);
    bool hasAnswer() const override { return m_worker.answers().faults != nullptr; }
    bool isStale() const override { return m_worker.isStale(m_worker.answers().faults); }
    void refresh() override;

    SafetyTable& table() { return *m_table; }
    QComboBox& filterBox() { return *m_filter; }
    QToolButton& pairs() { return *m_pairs; }
    QString summary() const;
    /// The fault a row of the table is about (index as given to the table); null when there is none.
    const study::FaultRow* rowAt(int row) const;

private:
    enum Filter { All, Worse, NotRun };
    void open(int row);
    void filter();
    void refreshShow();

    QLabel* m_summary;
    QComboBox* m_filter;
    QToolButton* m_pairs;
    QPushButton* m_show;
    SafetyTable* m_table;
    std::vector<std::size_t> m_order;  ///< the study's rows as the table has them
};

}  // namespace tapward::app
