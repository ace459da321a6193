// SPDX-License-Identifier: GPL-3.0-or-later
#include "panels/chart_page.h"

#include <QLabel>
#include <QVBoxLayout>
#include <utility>

#include "panels/say.h"

namespace tapward::app {

ChartPage::ChartPage(Session& session, const StudyWorker& worker, const QString& name)
    : SafetyPage(session, worker), m_summary(new QLabel), m_chart(nullptr)
{
    m_summary->setWordWrap(true);
    m_summary->setTextInteractionFlags(Qt::TextSelectableByMouse);
    m_chart = new ChartAndTable(name, m_summary);
    auto* all = new QVBoxLayout(this);
    all->setContentsMargins(0, 0, 0, 0);
    all->addWidget(m_chart);
}

void ChartPage::show(Shown shown)
{
    m_summary->setText(shown.summary);
    m_chart->table().fill(shown.heads, shown.rows);
    shown.picture.description = shown.summary;
    shown.picture.stale = isStale();
    m_chart->plot().show(std::move(shown.picture));
}

void ChartPage::showProblem(const Problem& problem)
{
    m_summary->setText(sayProblem(problem, m_session.units()));
    m_chart->table().fill({}, {});
}

}  // namespace tapward::app
