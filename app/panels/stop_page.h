// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "panels/chart_page.h"

class QLabel;
class QPushButton;
class QToolButton;

namespace tapward::app {

class ChartAndTable;
class SafetyTable;

/// The stops that were weighed, and a button that sets the chosen one in the drawing.
class StopPage final : public SafetyPage {
    Q_OBJECT
public:
    StopPage(Session& session, const StudyWorker& worker);
    bool hasAnswer() const override { return m_worker.answers().stop != nullptr; }
    bool isStale() const override { return m_worker.isStale(m_worker.answers().stop); }
    void refresh() override;

    SafetyTable& table() { return *m_table; }
    QPushButton& useButton() { return *m_use; }

private:
    const study::StopChoice* chosen() const;
    void use();

    QLabel* m_summary;
    QPushButton* m_use;
    SafetyTable* m_table;
};

/// Water at the tap while it warms up, over everything that is not known.
class StopBandsPage final : public SafetyPage {
    Q_OBJECT
public:
    StopBandsPage(Session& session, const StudyWorker& worker);
    bool hasAnswer() const override { return m_worker.answers().stop && m_worker.answers().stop->answer; }
    bool isStale() const override { return m_worker.isStale(m_worker.answers().stop); }
    void refresh() override;
    ChartAndTable& chart() { return *m_chart; }

private:
    QLabel* m_summary;
    QToolButton *m_byVolume, *m_byTime;
    ChartAndTable* m_chart;
};

/// Which of the things that are not known matters most: measure this first.
class StopRankingPage final : public ChartPage {
    Q_OBJECT
public:
    StopRankingPage(Session& session, const StudyWorker& worker);
    bool hasAnswer() const override;
    bool isStale() const override { return m_worker.isStale(m_worker.answers().stop); }
    void refresh() override;
};

/// "Stop at 0.55 gal or 107 °F"; the reason where there is no such stop.
QString sayStop(const study::StopChoice& choice, UnitSystem units);

}  // namespace tapward::app
