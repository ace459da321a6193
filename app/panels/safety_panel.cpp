// SPDX-License-Identifier: GPL-3.0-or-later
#include "panels/safety_panel.h"

#include <algorithm>
#include <QEvent>
#include <QHBoxLayout>
#include <QLabel>
#include <QProgressBar>
#include <QPushButton>
#include <QStackedWidget>
#include <QVBoxLayout>

#include "look/spacing.h"
#include "panels/fire_map_page.h"
#include "panels/icons.h"
#include "panels/loop_chart.h"
#include "panels/question_list.h"
#include "panels/safety_faults.h"
#include "panels/safety_page.h"
#include "panels/safety_protections.h"
#include "panels/safety_worst.h"
#include "panels/say.h"
#include "panels/stop_page.h"
#include "panels/winter_page.h"
#include "panels/wiring_page.h"

namespace tapward::app {

SafetyPanel::SafetyPanel(Session& session, StudyWorker& studies, QWidget* parent)
    : QWidget(parent), m_session(session), m_worker(studies), m_run(new QPushButton(tr("Run Studies"))),
      m_cancel(new QPushButton(tr("Cancel"))), m_progress(new QProgressBar), m_doing(new QLabel),
      m_staleIcon(new QLabel), m_stale(new QLabel), m_empty(new QLabel), m_staleBar(new QWidget),
      m_stack(new QStackedWidget), m_questions(new QuestionList), m_worst(new SafetyWorstPage(session, m_worker)),
      m_faults(new SafetyFaultsPage(session, m_worker)), m_protections(new SafetyProtectionsPage(session, m_worker)),
      m_loop(new LoopChartPage(session, m_worker)), m_stop(new StopPage(session, m_worker)),
      m_bands(new StopBandsPage(session, m_worker)), m_ranking(new StopRankingPage(session, m_worker)),
      m_wiring(new WiringPage(session, m_worker)), m_fire(new FireMapPage(session, m_worker)),
      m_winter(new WinterPage(session, m_worker)), m_catchUp(new CatchUp(*this, [this] { refresh(); }))
{
    setAccessibleName(tr("Safety"));
    m_run->setToolTip(tr("Ask the studies about the drawing as it stands"));
    m_cancel->setToolTip(tr("Stop; answers that are finished stay"));
    m_progress->setRange(0, 100);
    m_progress->setAccessibleName(tr("Progress of the studies"));
    m_progress->setMaximumWidth(fontMetrics().averageCharWidth() * 30);
    for (QWidget* widget : std::initializer_list<QWidget*>{m_run, m_cancel, m_progress})
        widget->setMinimumHeight(std::max(24, widget->sizeHint().height()));
    auto* bar = new QHBoxLayout;
    bar->setContentsMargins(look::kNext, look::kNear, look::kNext, 0);
    bar->addWidget(m_run);
    bar->addWidget(m_cancel);
    bar->addWidget(m_progress);
    bar->addWidget(m_doing, 1);

    auto* line = new QHBoxLayout(m_staleBar);
    line->setContentsMargins(look::kNext, 0, look::kNext, 0);
    line->addWidget(m_staleIcon, 0, Qt::AlignTop);
    line->addWidget(m_stale, 1);
    m_stale->setWordWrap(true);
    m_empty->setWordWrap(true);
    m_empty->setAlignment(Qt::AlignTop | Qt::AlignLeft);
    m_empty->setContentsMargins(look::kNext, look::kNext, look::kNext, look::kNext);
    m_empty->setText(tr("The studies look for the hottest water and the weakest points that this drawing allows. They "
                        "take from seconds to minutes; you can go on drawing meanwhile."));
    m_questions->list().setAccessibleName(tr("Studies"));
    m_stack->addWidget(m_empty);
    m_stack->addWidget(m_questions);
    auto* all = new QVBoxLayout(this);
    all->setContentsMargins(0, 0, 0, 0);
    all->setSpacing(look::kNear);
    all->addLayout(bar);
    all->addWidget(m_staleBar);
    all->addWidget(m_stack, 1);

    addPage(m_worst, tr("Hottest Water"));
    addPage(m_protections, tr("Protections"));
    addPage(m_faults, tr("Faults"));
    addPage(m_stop, tr("Stop"));
    addPage(m_bands, tr("Warm-Up Bands"));
    addPage(m_ranking, tr("Measure First"));
    addPage(m_loop, tr("Loop Curve"));
    addPage(m_fire, tr("Fire Map"));
    addPage(m_wiring, tr("12 V"));
    addPage(m_winter, tr("Winter and Cautions"));
    connect(m_protections, &SafetyProtectionsPage::studiesWanted, this, &SafetyPanel::runStudies);

    connect(m_run, &QPushButton::clicked, this, &SafetyPanel::runStudies);
    connect(m_cancel, &QPushButton::clicked, &m_worker, &StudyWorker::callOff);
    connect(&m_worker, &StudyWorker::progressed, this, &SafetyPanel::refreshProgress);
    connect(&m_worker, &StudyWorker::answersChanged, this, &SafetyPanel::takeAnswers);
    connect(&m_worker, &StudyWorker::agesChanged, m_catchUp, &CatchUp::later);
    connect(&session, &Session::viewChanged, m_catchUp, &CatchUp::later);
    connect(m_questions, &QuestionList::currentChanged, this, [this] {
        m_chosen = m_chosen || !m_arranging;
        refreshStale();
    });
    refreshProgress();
    refresh();
}

void SafetyPanel::addPage(SafetyPage* page, const QString& title)
{
    page->setAccessibleName(title);
    page->setParent(this);  // until it has an answer
    page->hide();
    m_pages.push_back({page, title});
    connect(page, &SafetyPage::scriptWanted, this,
            [this](const document::Case& script, double at_s) { openScript(script, at_s); });
    connect(page, &SafetyPage::playWanted, this, [this](const document::Case& script) { openScript(script, 0, true); });
}

void SafetyPanel::focusFirst()
{
    m_catchUp->now();
    QWidget* target = m_worker.isRunning() ? m_cancel : m_run;
    if (m_stack->currentIndex() == 1)
        target = &m_questions->list();
    target->setFocus(Qt::ShortcutFocusReason);
}

template <class Page>
Page& SafetyPanel::current(Page& page)
{
    m_catchUp->now();
    page.catchUp().now();
    return page;
}

StopPage& SafetyPanel::stop() { return current(*m_stop); }
StopBandsPage& SafetyPanel::bands() { return current(*m_bands); }
StopRankingPage& SafetyPanel::ranking() { return current(*m_ranking); }
WiringPage& SafetyPanel::wiring() { return current(*m_wiring); }
FireMapPage& SafetyPanel::fire() { return current(*m_fire); }
WinterPage& SafetyPanel::winter() { return current(*m_winter); }
LoopChartPage& SafetyPanel::loop() { return current(*m_loop); }
SafetyWorstPage& SafetyPanel::worst() { return current(*m_worst); }
SafetyFaultsPage& SafetyPanel::faults() { return current(*m_faults); }
SafetyProtectionsPage& SafetyPanel::protections() { return current(*m_protections); }

QuestionList& SafetyPanel::questions()
{
    m_catchUp->now();
    return *m_questions;
}

QStringList SafetyPanel::titles()
{
    m_catchUp->now();
    QStringList titles;
    for (int i = 0; i < m_questions->count(); ++i)
        titles << m_questions->title(i);
    return titles;
}

QString SafetyPanel::staleText()
{
    m_catchUp->now();
    return m_staleBar->isHidden() ? QString() : m_stale->text();
}

void SafetyPanel::takeAnswers()
{
    refresh();
    // What is seen is never behind the answers: its rows can be acted upon.
    if (auto* page = qobject_cast<SafetyPage*>(m_questions->currentPage()); page && CatchUp::isSeen(*page))
        page->catchUp().now();
}

void SafetyPanel::refresh()
{
    // Questions come in their own order, whichever study is finished first; the first of them, the hottest water, is
    // shown until the person has picked another.
    m_arranging = true;
    int at = 0;
    for (const auto& [page, title] : m_pages) {
        const int there = m_questions->indexOf(page);
        if (!page->hasAnswer()) {
            if (there >= 0) {
                m_questions->removePage(there);
                page->setParent(this);
                page->hide();
            }
            continue;
        }
        if (there < 0)
            m_questions->insertPage(at, page, title);
        page->catchUp().later();
        m_questions->setMark(at, page->isStale() ? look::severityIcon(review::Severity::Caution) : QIcon(),
                             page->isStale() ? tr("%1: out of date").arg(title) : QString());
        ++at;
    }
    if (!m_chosen && at > 0)
        m_questions->setCurrentIndex(0);
    m_arranging = false;
    m_stack->setCurrentIndex(at > 0 ? 1 : 0);
    refreshStale();
}

void SafetyPanel::refreshStale()
{
    const auto* page = qobject_cast<SafetyPage*>(m_questions->currentPage());
    const bool stale = page && m_stack->currentIndex() == 1 && page->isStale();
    m_staleBar->setVisible(stale);
    m_stale->setText(tr("Out of date: the drawing has changed since. Run the studies again."));
    const int side = fontMetrics().height();
    m_staleIcon->setPixmap(look::severityIcon(review::Severity::Caution).pixmap(side, side));
}

void SafetyPanel::refreshProgress()
{
    const bool running = m_worker.isRunning();
    const bool hadFocus = m_run->hasFocus() || m_cancel->hasFocus();
    m_run->setVisible(!running);
    m_cancel->setVisible(running);
    m_progress->setVisible(running);
    m_progress->setValue(static_cast<int>(m_worker.share() * 100));
    m_doing->setText(m_worker.doing());
    if (hadFocus)
        (running ? m_cancel : m_run)->setFocus(Qt::OtherFocusReason);
}

void SafetyPanel::openScript(const document::Case& script, double at_s, bool play)
{
    m_session.play(script);
    const QString name = m_session.caseName();
    m_session.setShowsMoment(true);
    // The slider can go there only when the case has been predicted.
    auto* once = new QObject(this);
    const auto go = [this, once, name, at_s, play] {
        if (m_session.isStale() || m_session.isWorking())
            return;
        if (m_session.caseName() == name) {
            m_session.setTime(at_s);
            if (play)
                Q_EMIT readyToPlay();
        }
        once->deleteLater();
        once->disconnect();
        m_session.disconnect(once);
    };
    connect(&m_session, &Session::predictionChanged, once, go);
    go();
}

void SafetyPanel::changeEvent(QEvent* event)
{
    QWidget::changeEvent(event);
    if (event->type() == QEvent::PaletteChange || event->type() == QEvent::FontChange)
        m_catchUp->later();
}

}  // namespace tapward::app
