// SPDX-License-Identifier: GPL-3.0-or-later
// The window's panes: how they stand, what is remembered of it, and F6 from one to the next.
#include <algorithm>
#include <cmath>
#include <QApplication>
#include <QComboBox>
#include <QDockWidget>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QScreen>
#include <QSettings>
#include <QStackedWidget>
#include <QStatusBar>
#include <QToolBar>
#include <QTreeWidget>
#include <QVBoxLayout>

#include "panels/answers_panel.h"
#include "panels/case_bar.h"
#include "panels/catch_up.h"
#include "panels/chart_view.h"
#include "panels/details_panel.h"
#include "panels/findings_panel.h"
#include "panels/outline_panel.h"
#include "panels/safety_panel.h"
#include "panels/survey_panel.h"
#include "panels/survey_table.h"
#include "panels/time_bar.h"
#include "panels/warm_up_chart.h"
#include "shell/first_job.h"
#include "shell/main_window.h"
#include "shell/start_page.h"
#include "tools/editing_canvas.h"
#include "tray/tray.h"

namespace tapward::app {

void MainWindow::buildPanes()
{
    auto* pane = new QWidget;
    auto* column = new QVBoxLayout(pane);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(0);
    column->addWidget(m_firstJob);
    column->addWidget(m_caseBar);
    column->addWidget(m_canvas, 1);
    column->addWidget(m_timeBar);
    m_stack->addWidget(pane);
    m_canvas->setAccessibleName(tr("Drawing"));

    setDockOptions(QMainWindow::AllowNestedDocks | QMainWindow::AllowTabbedDocks | QMainWindow::AnimatedDocks);
    setCorner(Qt::BottomRightCorner, Qt::RightDockWidgetArea);
    setCorner(Qt::BottomLeftCorner, Qt::BottomDockWidgetArea);
    addDock(QStringLiteral("tray"), tr("Parts"), m_tray);
    addDock(QStringLiteral("outline"), tr("Outline"), m_outline);
    addDock(QStringLiteral("predictions"), tr("Predictions"), m_answers);
    addDock(QStringLiteral("details"), tr("Details"), m_details);
    addDock(QStringLiteral("warm-up"), tr("Warm-Up"), m_chart);
    addDock(QStringLiteral("findings"), tr("Findings"), m_findings);
    addDock(QStringLiteral("safety"), tr("Safety"), m_safety);
    addDock(QStringLiteral("survey"), tr("Survey"), m_survey);
    m_tray->setMinimumWidth(fontMetrics().averageCharWidth() * 24);

    m_findingCount->setFlat(true);
    m_findingCount->setToolTip(tr("Next finding (F8)"));
    connect(m_findingCount, &QPushButton::clicked, this, [this] { m_findings->step(1); });
    m_zoom->setEditable(true);
    m_zoom->setInsertPolicy(QComboBox::NoInsert);
    m_zoom->setAccessibleName(tr("Zoom"));
    m_zoom->setToolTip(tr("Zoom"));
    for (const int percent : {25, 50, 75, 100, 150, 200, 400})
        m_zoom->addItem(tr("%1 %").arg(percent));
    m_zoom->setEditText(tr("%1 %").arg(std::lround(m_canvas->zoom() * 100)));
    const auto zoomTyped = [this] {
        QString text = m_zoom->currentText();
        text.remove(QLatin1Char('%'));
        bool fine = false;
        const double percent = text.trimmed().replace(QLatin1Char(','), QLatin1Char('.')).toDouble(&fine);
        if (fine && percent > 0)
            m_canvas->setZoom(percent / 100);
        m_zoom->setEditText(tr("%1 %").arg(std::lround(m_canvas->zoom() * 100)));
    };
    connect(m_zoom, &QComboBox::activated, this, zoomTyped);
    connect(m_zoom->lineEdit(), &QLineEdit::returnPressed, this, zoomTyped);
    statusBar()->addPermanentWidget(m_state);
    statusBar()->addPermanentWidget(new UnitsSwitch(m_session));
    statusBar()->addPermanentWidget(m_findingCount);
    statusBar()->addPermanentWidget(m_zoom);
    auto* unseen = new QLabel(tr("Zoom"), statusBar());
    unseen->setBuddy(m_zoom);
    unseen->hide();
}

QDockWidget* MainWindow::addDock(const QString& name, const QString& title, QWidget* content)
{
    auto* dock = new QDockWidget(title, this);
    dock->setObjectName(name);
    dock->setWidget(content);
    addDockWidget(Qt::RightDockWidgetArea, dock);  // until an area says where
    dock->hide();
    connect(dock, &QDockWidget::visibilityChanged, content, [dock](bool seen) {
        if (seen)
            CatchUp::cameToSight(*dock);  // what it missed behind another one's tab
    });
    m_docks.push_back(dock);
    return dock;
}

void MainWindow::restoreLook()
{
    const QSettings settings;
    if (!restoreGeometry(settings.value(QStringLiteral("geometry")).toByteArray()))
        resize(1360, 860);
    fitScreen();
    restoreLooks();
}

void MainWindow::fitScreen()
{
    if (windowState() & (Qt::WindowMaximized | Qt::WindowFullScreen))
        return;
    // Before the window is shown nobody knows its frame: title bars of desktops are 20 to 40 high.
    const QRect room = screen()->availableGeometry();
    resize(size().boundedTo(room.size() - QSize(8, 40)));
    if (!isVisible())
        return;
    const QRect frame = frameGeometry();
    move(std::clamp(frame.left(), room.left(), std::max(room.left(), room.right() - frame.width() + 1)),
         std::clamp(frame.top(), room.top(), std::max(room.top(), room.bottom() - frame.height() + 1)));
}

void MainWindow::saveLook()
{
    QSettings().setValue(QStringLiteral("geometry"), saveGeometry());
    saveLooks();
}

void MainWindow::showDrawing(bool on)
{
    if (!on)
        keepArea();
    const bool was = m_hasDrawing;
    m_hasDrawing = on;
    m_stack->setCurrentIndex(on ? 1 : 0);
    for (auto* action : m_needDrawing)
        action->setEnabled(on);
    for (QWidget* widget : std::initializer_list<QWidget*>{m_state, m_findingCount, m_zoom})
        widget->setVisible(on);
    if (!on) {
        for (auto* dock : m_docks)
            dock->hide();
        m_toolBar->hide();
        m_areaStrip->hide();
        m_start->refresh();
        if (was)
            m_start->takeFocus();
    } else if (!was) {
        m_areaStrip->show();
        m_toolBar->show();
        showArea(m_area);
        m_canvas->setFocus();
    }
}

void MainWindow::cyclePane(int direction)
{
    std::vector<std::pair<QWidget*, QWidget*>> panes;  // the pane, and what gets the focus in it
    const auto add = [&](QWidget* pane, QWidget* focus) {
        // (Behind another one's tab a pane stands outside the window.)
        if (pane->isVisible() && QRect(pane->mapTo(this, QPoint()), pane->size()).intersects(rect()))
            panes.emplace_back(pane, focus);
    };
    if (!m_hasDrawing)
        return;
    add(m_canvas, m_canvas);
    add(m_timeBar, &m_timeBar->slider());
    add(m_chart, &m_chart->view());
    add(m_survey, &m_survey->shownTable());
    add(m_safety, nullptr);
    add(m_findings, nullptr);
    add(m_answers, m_answers);
    add(m_details, nullptr);
    add(m_tray, nullptr);
    add(m_outline, &m_outline->tree());
    add(m_caseBar, nullptr);
    const auto holdsFocus = [](const QWidget& pane) {
        const QWidget* focus = QApplication::focusWidget();
        return focus && (focus == &pane || pane.isAncestorOf(focus));
    };
    const auto enter = [&](QWidget& pane, QWidget* target) {
        if (target)
            target->setFocus(Qt::ShortcutFocusReason);
        for (QWidget* child : pane.findChildren<QWidget*>())
            if (!holdsFocus(pane) && child->isVisible() && child->isEnabled() && (child->focusPolicy() & Qt::TabFocus))
                child->setFocus(Qt::ShortcutFocusReason);
        return holdsFocus(pane);
    };
    const auto count = static_cast<int>(panes.size());
    int at = 0;
    for (int i = 0; i < count; ++i)
        if (holdsFocus(*panes[static_cast<std::size_t>(i)].first))
            at = i;
    // A pane with nothing to go to is passed over.
    for (int step = 1; step < count; ++step) {
        const auto [pane, target] = panes[static_cast<std::size_t>(((at + direction * step) % count + count) % count)];
        if (enter(*pane, target))
            return;
    }
}

}  // namespace tapward::app
