// SPDX-License-Identifier: GPL-3.0-or-later
// The window's work areas: which is shown, how its panes stand, what is remembered of each.
#include <QAction>
#include <QActionGroup>
#include <QDockWidget>
#include <QMenu>
#include <QSettings>
#include <QToolBar>
#include <QToolButton>

#include "panels/case_bar.h"
#include "shell/first_job.h"
#include "shell/main_window.h"
#include "shell/work_area.h"
#include "tools/editing_canvas.h"

namespace tapward::app {

namespace {
constexpr int kLookVersion = 5;  // a pane more makes older layouts useless

QString lookKey(const WorkArea& area) { return QStringLiteral("panes/") + area.id(); }
}  // namespace

QStringList MainWindow::areaIds() const
{
    QStringList ids;
    for (const auto& area : m_areas)
        ids << area->id();
    return ids;
}

void MainWindow::buildAreas()
{
    auto* group = new QActionGroup(this);
    m_areaMenu = new QMenu(tr("&Part of the Job"), this);
    for (std::size_t i = 0; i < m_areas.size(); ++i) {
        const WorkArea& area = *m_areas[i];
        auto* action = new QAction(area.title(), this);
        action->setShortcut(QKeySequence(Qt::ALT | static_cast<Qt::Key>(Qt::Key_1 + static_cast<int>(i))));
        action->setToolTip(tr("%1 (Alt+%2)").arg(area.tip()).arg(i + 1));
        action->setCheckable(true);
        connect(action, &QAction::triggered, this, [this, i] { showArea(i); });
        addAction(action);
        group->addAction(action);
        m_needDrawing << action;
        m_areaActions << action;
    }
    m_areaMenu->addActions(m_areaActions);
}

void MainWindow::buildAreaStrip()
{
    m_areaStrip = addToolBar(tr("Parts of the Job"));
    m_areaStrip->setObjectName(QStringLiteral("areas"));
    m_areaStrip->setMovable(false);
    m_areaStrip->setToolButtonStyle(Qt::ToolButtonTextOnly);
    for (QAction* action : m_areaActions) {
        m_areaStrip->addAction(action);
        auto* button = m_areaStrip->widgetForAction(action);
        button->setMinimumHeight(28);
        button->setFocusPolicy(Qt::TabFocus);
        if (auto* tool = qobject_cast<QToolButton*>(button))
            tool->setAccessibleName(tr("Part of the job: %1").arg(action->text()));
    }
}

void MainWindow::keepArea()
{
    if (m_hasDrawing)
        m_looks[m_areas[m_area]->id()] = saveState(kLookVersion);
}

void MainWindow::standArea()
{
    m_hiddenSides.clear();
    PaneStand stand(*this);
    m_areas[m_area]->stand(stand);
}

void MainWindow::showArea(std::size_t at)
{
    furnish();
    if (m_hasDrawing && m_area != at)
        keepArea();
    m_area = at;
    m_areaActions[static_cast<qsizetype>(at)]->setChecked(true);
    m_caseBar->offerStage(m_areas[at]->isForDrawing());
    if (!m_hasDrawing)
        return;
    m_hiddenSides.clear();
    const QByteArray look = m_looks.value(m_areas[at]->id());
    if (look.isEmpty() || !restoreState(look, kLookVersion))
        standArea();
    m_firstJob->sawArea(m_areas[at]->id());
}

void MainWindow::showArea(const QString& id)
{
    if (const qsizetype at = areaIds().indexOf(id); at >= 0)
        showArea(static_cast<std::size_t>(at));
}

QDockWidget& MainWindow::showPane(const char* name)
{
    auto* pane = findChild<QDockWidget*>(QString::fromLatin1(name));
    if (pane->isHidden() && areaIds().contains(pane->objectName()))
        showArea(pane->objectName());  // it has an area of its own
    if (dockWidgetArea(pane) == Qt::NoDockWidgetArea)
        addDockWidget(Qt::RightDockWidgetArea, pane);
    pane->show();
    pane->raise();
    return *pane;
}

void MainWindow::toggleSides()
{
    QList<QDockWidget*> seen;
    for (auto* dock : m_docks)
        if (!dock->isHidden() && dockWidgetArea(dock) != Qt::BottomDockWidgetArea)
            seen << dock;
    for (auto* dock : seen.isEmpty() ? m_hiddenSides : seen)
        dock->setVisible(seen.isEmpty());
    m_hiddenSides = seen;
}

void MainWindow::restoreLooks()
{
    const QSettings settings;
    for (const auto& area : m_areas)
        m_looks[area->id()] = settings.value(lookKey(*area)).toByteArray();
    const qsizetype last = areaIds().indexOf(settings.value(QStringLiteral("area")).toString());
    m_area = static_cast<std::size_t>(last >= 0 ? last : areaIds().indexOf(QStringLiteral("loop")));
}

void MainWindow::saveLooks()
{
    keepArea();
    QSettings settings;
    settings.setValue(QStringLiteral("area"), m_areas[m_area]->id());
    for (const auto& area : m_areas)
        if (const QByteArray& look = m_looks[area->id()]; !look.isEmpty())
            settings.setValue(lookKey(*area), look);
}

}  // namespace tapward::app
