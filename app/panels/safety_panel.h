// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QWidget>
#include <vector>

#include "panels/catch_up.h"
#include "session/study_worker.h"

class QLabel;
class QProgressBar;
class QPushButton;
class QStackedWidget;

namespace tapward::app {

class FireMapPage;
class LoopChartPage;
class QuestionList;
class SafetyFaultsPage;
class SafetyProtectionsPage;
class SafetyWorstPage;
class StopBandsPage;
class StopPage;
class StopRankingPage;
class WinterPage;
class WiringPage;
class SafetyPage;

/// Beside the drawing: what could hurt somebody, found by the studies of the drawing as it stands.
class SafetyPanel final : public QWidget {
    Q_OBJECT
public:
    SafetyPanel(Session& session, StudyWorker& studies, QWidget* parent = nullptr);

    StudyWorker& worker() { return m_worker; }
    void runStudies() { m_worker.start(); }
    void focusFirst();  ///< the keyboard goes to the answers, or to the button that asks for them
    /// Titles of the questions that have an answer, in order.
    QStringList titles();
    /// What stands above the answers when the answers are of an older drawing; empty when they are current.
    QString staleText();
    StopPage& stop();
    StopBandsPage& bands();
    StopRankingPage& ranking();
    WiringPage& wiring();
    FireMapPage& fire();
    WinterPage& winter();
    LoopChartPage& loop();
    SafetyWorstPage& worst();
    SafetyFaultsPage& faults();
    SafetyProtectionsPage& protections();
    QuestionList& questions();

    /// Shows the script on the drawing at a moment; it enters no file, see Session::play(). `play`: readyToPlay() follows
    /// when it has been predicted.
    void openScript(const document::Case& script, double at_s, bool play = false);

Q_SIGNALS:
    /// The script that is to be seen running is there and stands at its beginning.
    void readyToPlay();

protected:
    void changeEvent(QEvent* event) override;

private:
    void addPage(SafetyPage* page, const QString& title);
    template <class Page>
    Page& current(Page& page);  ///< caught up
    void takeAnswers();
    void refresh();
    void refreshProgress();
    void refreshStale();

    Session& m_session;
    StudyWorker& m_worker;
    QPushButton *m_run, *m_cancel;
    QProgressBar* m_progress;
    QLabel *m_doing, *m_staleIcon, *m_stale, *m_empty;
    QWidget* m_staleBar;
    QStackedWidget* m_stack;
    QuestionList* m_questions;
    struct Place {
        SafetyPage* page;
        QString title;
    };
    std::vector<Place> m_pages;
    bool m_arranging = false;
    bool m_chosen = false;  ///< the person has picked a question
    SafetyWorstPage* m_worst;
    SafetyFaultsPage* m_faults;
    SafetyProtectionsPage* m_protections;
    LoopChartPage* m_loop;
    StopPage* m_stop;
    StopBandsPage* m_bands;
    StopRankingPage* m_ranking;
    WiringPage* m_wiring;
    FireMapPage* m_fire;
    WinterPage* m_winter;
    CatchUp* m_catchUp;
};

}  // namespace tapward::app
