// SPDX-License-Identifier: GPL-3.0-or-later
#include "shell/main_window.h"

#include <algorithm>
#include <cmath>
#include <QApplication>
#include <QCloseEvent>
#include <QComboBox>
#include <QDockWidget>
#include <QFileInfo>
#include <QLabel>
#include <QLineEdit>
#include <QMenuBar>
#include <QMimeData>
#include <QPushButton>
#include <QScreen>
#include <QSettings>
#include <QShortcut>
#include <QStackedWidget>
#include <QStatusBar>
#include <QTimer>
#include <QToolBar>
#include <QTreeWidget>
#include <QUrl>
#include <QVBoxLayout>

#include "panels/answers_panel.h"
#include "panels/case_bar.h"
#include "panels/case_editor.h"
#include "panels/catch_up.h"
#include "panels/chart_view.h"
#include "panels/details_panel.h"
#include "panels/findings_panel.h"
#include "panels/floor_plan_box.h"
#include "panels/icons.h"
#include "panels/outline_panel.h"
#include "panels/safety_panel.h"
#include "panels/say.h"
#include "panels/stock_dialog.h"
#include "panels/survey_panel.h"
#include "panels/survey_table.h"
#include "panels/time_bar.h"
#include "panels/warm_up_chart.h"
#include "shell/start_page.h"
#include "tools/assembly_hand.h"
#include "tools/editing_canvas.h"
#include "tools/scale_tool.h"
#include "tray/tray.h"

namespace tapward::app {

namespace {
constexpr int kLookVersion = 4;  // a pane more makes an older layout useless
}

MainWindow::MainWindow(QWidget* parent) : QMainWindow(parent), m_stack(new QStackedWidget), m_start(new StartPage)
{
    setObjectName(QStringLiteral("MainWindow"));
    setWindowIcon(look::icon(QStringLiteral("tapward")));
    setAcceptDrops(true);
    m_stack->addWidget(m_start);
    setCentralWidget(m_stack);
    addTopMenus();
    statusBar();
    connect(m_start, &StartPage::newRequested, this, &MainWindow::newDrawing);
    connect(m_start, &StartPage::openRequested, this, &MainWindow::openDialog);
    connect(m_start, &StartPage::sampleRequested, this, &MainWindow::openSample);
    connect(m_start, &StartPage::fileRequested, this, &MainWindow::openFile);
    restoreLook();
    refreshTitle();
}

void MainWindow::furnish()
{
    if (m_canvas)
        return;
    m_canvas = new EditingCanvas(m_session);
    m_tray = new Tray;
    m_hand = new AssemblyHand(*m_canvas, [this] { m_canvas->cancelTool(); });
    m_caseBar = new CaseBar(m_session);
    m_timeBar = new TimeBar(m_session);
    m_details = new DetailsPanel(m_session);
    m_answers = new AnswersPanel(m_session);
    m_chart = new WarmUpChart(m_session);
    m_findings = new FindingsPanel(m_session);
    m_outline = new OutlinePanel(m_session);
    m_survey = new SurveyPanel(m_session);
    m_safety = new SafetyPanel(m_session);
    m_hint = new QLabel;
    m_state = new QLabel;
    m_findingCount = new QPushButton;
    m_zoom = new QComboBox;
    m_autosave = std::make_unique<Autosave>(m_session, stateFolder() + QStringLiteral("/autosave"));
    m_scaleTool = std::make_unique<ScaleTool>(*m_canvas);
    m_scaleTool->done = [this] { m_canvas->cancelTool(); };
    buildPanes();
    buildMenus();
    buildToolBar();

    m_session.setUnits(QSettings().value(QStringLiteral("units")).toString() == QLatin1String("metric")
                           ? UnitSystem::Metric
                           : UnitSystem::Us);
    connect(&m_session, &Session::viewChanged, this, [this] {
        QSettings().setValue(QStringLiteral("units"),
                             m_session.units() == UnitSystem::Us ? QStringLiteral("us") : QStringLiteral("metric"));
    });
    connect(&m_session, &Session::fileChanged, this, &MainWindow::refreshTitle);
    connect(&m_session, &Session::changed, this, &MainWindow::refreshState);
    connect(&m_session, &Session::predictionChanged, this, &MainWindow::refreshState);
    connect(m_findings, &FindingsPanel::countChanged, this, &MainWindow::refreshState);
    connect(m_canvas, &CanvasView::message, this, [this](const QString& text) {
        if (text.isEmpty())
            statusBar()->clearMessage();
        else
            statusBar()->showMessage(text);
    });
    connect(m_canvas, &CanvasView::detailsRequested, this, [this] { m_details->focusFirstField(); });
    connect(m_canvas, &CanvasView::zoomChanged, this,
            [this](double zoom) { m_zoom->setEditText(tr("%1 %").arg(std::lround(zoom * 100))); });
    connect(m_details, &DetailsPanel::scaleRequested, this, &MainWindow::scalePlan);
    connect(m_details, &DetailsPanel::stockRequested, this, &MainWindow::openStock);
    connect(m_safety, &SafetyPanel::readyToPlay, m_timeBar, &TimeBar::play);
    connect(m_tray, &Tray::kindPicked, m_canvas, &EditingCanvas::startPlacing);
    buildAssemblies();
    connect(m_chart, &WarmUpChart::exportRequested, this, [this] { exportTo(ExportKind::SeriesCsv); });
    connect(m_caseBar, &CaseBar::editCasesRequested, this, [this] {
        if (!m_caseEditor) {
            m_caseEditor = new CaseEditor(m_session, this);
            m_caseEditor->setAttribute(Qt::WA_DeleteOnClose);
        }
        m_caseEditor->show();
        m_caseEditor->raise();
        m_caseEditor->activateWindow();
    });
    connect(new QShortcut(QKeySequence(Qt::Key_F6), this), &QShortcut::activated, this, [this] { cyclePane(1); });
    connect(new QShortcut(QKeySequence(Qt::SHIFT | Qt::Key_F6), this), &QShortcut::activated, this,
            [this] { cyclePane(-1); });
    connect(new QShortcut(QKeySequence(Qt::Key_F10), this), &QShortcut::activated, this, [this] {
        menuBar()->setFocus(Qt::MenuBarFocusReason);
        menuBar()->setActiveAction(menuBar()->actions().value(0));
    });
    showDrawing(false);
    refreshState();
}

MainWindow::~MainWindow()
{
    if (!m_canvas)
        return;
    // The panes look at the session while it goes down with the window: they go first.
    disconnect(&m_session, nullptr, this, nullptr);
    delete m_caseEditor;
    delete m_stock;
    m_canvas->cancelTool();  // before the tool of this window goes
    for (auto* dock : m_docks)
        delete dock;
    delete takeCentralWidget();
}

void MainWindow::buildPanes()
{
    auto* pane = new QWidget;
    auto* column = new QVBoxLayout(pane);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(0);
    column->addWidget(m_caseBar);
    m_hint->setText(
        tr("Drag a part from the list on the left, or press Insert. Lay pipes by dragging from port to port."));
    m_hint->setWordWrap(true);
    m_hint->setContentsMargins(10, 6, 10, 6);
    m_hint->hide();
    column->addWidget(m_hint);
    column->addWidget(m_canvas, 1);
    column->addWidget(m_timeBar);
    m_stack->addWidget(pane);
    m_canvas->setAccessibleName(tr("Drawing"));

    setDockOptions(QMainWindow::AllowNestedDocks | QMainWindow::AllowTabbedDocks | QMainWindow::AnimatedDocks);
    setCorner(Qt::BottomRightCorner, Qt::RightDockWidgetArea);
    setCorner(Qt::BottomLeftCorner, Qt::BottomDockWidgetArea);
    addDock(Qt::LeftDockWidgetArea, QStringLiteral("tray"), tr("Parts"), m_tray);
    addDock(Qt::LeftDockWidgetArea, QStringLiteral("outline"), tr("Outline"), m_outline);
    addDock(Qt::RightDockWidgetArea, QStringLiteral("predictions"), tr("Predictions"), m_answers);
    addDock(Qt::RightDockWidgetArea, QStringLiteral("details"), tr("Details"), m_details);
    addDock(Qt::BottomDockWidgetArea, QStringLiteral("warm-up"), tr("Warm-Up"), m_chart);
    addDock(Qt::BottomDockWidgetArea, QStringLiteral("findings"), tr("Findings"), m_findings);
    addDock(Qt::BottomDockWidgetArea, QStringLiteral("safety"), tr("Safety"), m_safety);
    addDock(Qt::BottomDockWidgetArea, QStringLiteral("survey"), tr("Survey"), m_survey);
    m_tray->setMinimumWidth(fontMetrics().averageCharWidth() * 24);
    arrange();

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
    statusBar()->addPermanentWidget(m_findingCount);
    statusBar()->addPermanentWidget(m_zoom);
    auto* unseen = new QLabel(tr("Zoom"), statusBar());
    unseen->setBuddy(m_zoom);
    unseen->hide();
}

QDockWidget* MainWindow::addDock(Qt::DockWidgetArea area, const QString& name, const QString& title, QWidget* content)
{
    auto* dock = new QDockWidget(title, this);
    dock->setObjectName(name);
    dock->setWidget(content);
    addDockWidget(area, dock);
    dock->setProperty("area", QVariant::fromValue(area));
    connect(dock, &QDockWidget::visibilityChanged, content, [dock](bool seen) {
        if (seen)
            CatchUp::cameToSight(*dock);  // what it missed behind another one's tab
    });
    m_docks.push_back(dock);
    return dock;
}

void MainWindow::arrange()
{
    const auto dock = [this](const char* name) { return findChild<QDockWidget*>(QString::fromLatin1(name)); };
    // Out of whatever they are tabbed with: a pane is not split off one that has tabs.
    for (auto* one : m_docks) {
        const bool seen = !one->isHidden();
        removeDockWidget(one);
        addDockWidget(one->property("area").value<Qt::DockWidgetArea>(), one);
        one->setVisible(seen);
    }
    tabifyDockWidget(dock("tray"), dock("outline"));
    dock("tray")->raise();
    splitDockWidget(dock("predictions"), dock("details"), Qt::Vertical);
    const int letter = fontMetrics().averageCharWidth();
    const bool beside = width() - letter * 60 >= letter * 130;
    if (beside)
        splitDockWidget(dock("warm-up"), dock("findings"), Qt::Horizontal);
    else
        tabifyDockWidget(dock("warm-up"), dock("findings"));
    tabifyDockWidget(dock("warm-up"), dock("survey"));
    tabifyDockWidget(dock("warm-up"), dock("safety"));
    dock("warm-up")->raise();
    resizeDocks({dock("tray"), dock("predictions")}, {letter * 34, letter * 60}, Qt::Horizontal);
    if (beside)
        resizeDocks({dock("warm-up"), dock("findings")}, {letter * 100, letter * 62}, Qt::Horizontal);
    resizeDocks({dock("warm-up")}, {fontMetrics().height() * 17}, Qt::Vertical);
    resizeDocks({dock("predictions"), dock("details")}, {500, 400}, Qt::Vertical);
}

void MainWindow::restoreLook()
{
    const QSettings settings;
    if (!restoreGeometry(settings.value(QStringLiteral("geometry")).toByteArray()))
        resize(1360, 860);
    fitScreen();
    m_look = settings.value(QStringLiteral("panes")).toByteArray();
}

void MainWindow::fitScreen()
{
    if (windowState() & (Qt::WindowMaximized | Qt::WindowFullScreen))
        return;
    // Before the window is shown nobody knows its frame: title bars of desktops are 20 to 40 high.
    resize(size().boundedTo(screen()->availableSize() - QSize(8, 40)));
}

void MainWindow::saveLook() const
{
    QSettings settings;
    settings.setValue(QStringLiteral("geometry"), saveGeometry());
    settings.setValue(QStringLiteral("panes"), m_hasDrawing ? saveState(kLookVersion) : m_look);
}

void MainWindow::showDrawing(bool on)
{
    if (!on && m_hasDrawing)
        m_look = saveState(kLookVersion);
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
        m_start->refresh();
    } else if (!was) {
        for (auto* dock : m_docks)
            dock->show();
        m_toolBar->show();
        if (m_look.isEmpty() || !restoreState(m_look, kLookVersion))
            arrange();
        m_canvas->setFocus();
    }
}

void MainWindow::refreshTitle()
{
    const QString path = m_session.path();
    QString name = tr("Untitled");
    if (!path.isEmpty())
        name = QFileInfo(path).fileName();
    else if (!m_suggestedPath.isEmpty())
        name = tr("%1 (restored)").arg(QFileInfo(m_suggestedPath).fileName());
    setWindowTitle(m_hasDrawing ? tr("%1[*] \u2013 Tapward").arg(name) : tr("Tapward"));
    setWindowModified(m_hasDrawing && m_session.isModified());
}

void MainWindow::refreshState()
{
    setWindowModified(m_hasDrawing && m_session.isModified());
    m_hint->setVisible(m_session.drawing().parts.empty());
    const bool sample = m_session.drawing().job.sampleFigures;
    m_state->setText(m_session.isStale() ? tr("Recalculating\u2026") : sample ? tr("Sample figures") : QString());
    m_findingCount->setText(m_findings->summary());
    m_findingCount->setAccessibleName(tr("Findings: %1").arg(m_findings->summary()));
    const int open = static_cast<int>(m_findings->openCount());
    m_findingCount->setEnabled(open > 0);
    if (auto* pane = findChild<QDockWidget*>(QStringLiteral("findings")))  // its tab may be all one sees of it
        pane->setWindowTitle(open > 0 ? tr("Findings (%1)").arg(open) : tr("Findings"));
    const auto& all = m_session.findings();
    const auto worst = std::ranges::find(all, false, &review::Finding::dismissed);
    m_findingCount->setIcon(worst == all.end() ? QIcon() : look::severityIcon(worst->severity));
}

void MainWindow::cyclePane(int direction)
{
    std::vector<std::pair<QWidget*, QWidget*>> panes;  // the pane, and what gets the focus in it
    const auto add = [&](QWidget* pane, QWidget* focus) {
        if (pane->isVisible() && !pane->visibleRegion().isEmpty())
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
    const QWidget* focus = QApplication::focusWidget();
    std::size_t at = 0;
    for (std::size_t i = 0; i < panes.size(); ++i)
        if (focus && (panes[i].first == focus || panes[i].first->isAncestorOf(focus)))
            at = i;
    const auto [pane, target] =
        panes[(at + panes.size() + static_cast<std::size_t>(direction + static_cast<int>(panes.size())))
              % panes.size()];
    if (target) {
        target->setFocus(Qt::ShortcutFocusReason);
        return;
    }
    for (QWidget* child : pane->findChildren<QWidget*>())
        if (child->isVisible() && child->isEnabled() && (child->focusPolicy() & Qt::TabFocus)) {
            child->setFocus(Qt::ShortcutFocusReason);
            return;
        }
}

void MainWindow::openStock()
{
    if (!m_stock) {
        m_stock = new StockDialog(m_session, this);
        m_stock->setAttribute(Qt::WA_DeleteOnClose);
    }
    m_stock->show();
    m_stock->raise();
    m_stock->activateWindow();
}

void MainWindow::scalePlan(document::PartId plan)
{
    m_scaleTool->picked = [this, plan](document::Point a, document::Point b) {
        askPlanScale(m_session, plan, a, b, this);
    };
    m_scaleTool->begin();
}

bool MainWindow::event(QEvent* event)
{
    if (event->type() == QEvent::Paint && !m_canvas)
        QTimer::singleShot(0, this, &MainWindow::furnish);
    return QMainWindow::event(event);
}

void MainWindow::changeEvent(QEvent* event)
{
    QMainWindow::changeEvent(event);
    if (event->type() == QEvent::PaletteChange && m_findings)
        refreshState();
}

void MainWindow::closeEvent(QCloseEvent* event)
{
    if (!mayClose()) {
        event->ignore();
        return;
    }
    saveLook();
    if (m_autosave)
        m_autosave->forget();
    m_guard.release();
    event->accept();
}

void MainWindow::dragEnterEvent(QDragEnterEvent* event)
{
    const auto urls = event->mimeData()->urls();
    if (urls.size() == 1 && urls.constFirst().isLocalFile()
        && urls.constFirst().fileName().endsWith(QLatin1String(".tapward")))
        event->acceptProposedAction();
}

void MainWindow::dropEvent(QDropEvent* event)
{
    const QString path = event->mimeData()->urls().value(0).toLocalFile();
    if (!path.isEmpty())
        QMetaObject::invokeMethod(this, [this, path] { openFile(path); }, Qt::QueuedConnection);
}

}  // namespace tapward::app
