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
#include <QMenuBar>
#include <QMimeData>
#include <QPushButton>
#include <QSettings>
#include <QShortcut>
#include <QStackedWidget>
#include <QStatusBar>
#include <QTimer>
#include <QUrl>
#include <utility>

#include "panels/answers_panel.h"
#include "panels/case_bar.h"
#include "panels/case_editor.h"
#include "panels/details_panel.h"
#include "panels/findings_panel.h"
#include "panels/floor_plan_box.h"
#include "panels/icons.h"
#include "panels/outline_panel.h"
#include "panels/safety_panel.h"
#include "panels/say.h"
#include "panels/stock_dialog.h"
#include "panels/survey_panel.h"
#include "panels/time_bar.h"
#include "panels/warm_up_chart.h"
#include "shell/first_job.h"
#include "shell/focus_ring.h"
#include "shell/start_page.h"
#include "tools/assembly_hand.h"
#include "tools/editing_canvas.h"
#include "tools/scale_tool.h"
#include "tray/tray.h"

namespace tapward::app {

MainWindow::MainWindow(std::shared_ptr<Desk> desk)
    : m_desk(std::move(desk)), m_session(m_desk->session), m_stack(new QStackedWidget)
{
    setObjectName(QStringLiteral("MainWindow"));
    setAcceptDrops(true);
    setCentralWidget(m_stack);
    restoreLook();
    refreshTitle();
}

MainWindow::MainWindow(MainWindow& before) : MainWindow(before.m_desk)
{
    before.furnish();
    furnish();
    before.saveLook();
    restoreLook();
    setVisible(before.isVisible());
    if (!std::exchange(before.m_hasDrawing, false))
        return;
    m_guard = std::move(before.m_guard);
    m_stamp = before.m_stamp;
    m_suggestedPath = before.m_suggestedPath;
    opened();
    m_session.announce();
    m_firstJob->carryOn(*before.m_firstJob);
    before.m_autosave->forget();
    m_autosave->saveNow();
}

// The desktop takes as long to put up a window as the window to make its first page: both at once.
void MainWindow::setVisible(bool visible)
{
    QMainWindow::setVisible(visible);
    if (visible)
        welcome();
}

void MainWindow::welcome()
{
    if (m_start)
        return;
    addTopMenus();
    statusBar();
    m_start = new StartPage;
    m_stack->insertWidget(0, m_start);
    m_start->takeFocus();
    connect(m_start, &StartPage::newRequested, this, &MainWindow::newDrawing);
    connect(m_start, &StartPage::firstJobRequested, this, &MainWindow::beginFirstJob);
    connect(m_start, &StartPage::openRequested, this, &MainWindow::openDialog);
    connect(m_start, &StartPage::sampleRequested, this, &MainWindow::openSample);
    connect(m_start, &StartPage::fileRequested, this, &MainWindow::openFile);
}

void MainWindow::studyByItself() { m_desk->studies.setByItself(true); }

void MainWindow::furnish()
{
    if (m_canvas)
        return;
    setWindowIcon(look::icon(QStringLiteral("tapward")));
    welcome();
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
    m_safety = new SafetyPanel(m_session, m_desk->studies);
    m_firstJob = new FirstJob(m_session);
    m_state = new QLabel;
    m_findingCount = new QPushButton;
    m_zoom = new QComboBox;
    m_ring = std::make_unique<FocusRing>();
    m_autosave = std::make_unique<Autosave>(m_session, stateFolder() + QStringLiteral("/autosave"));
    m_scaleTool = std::make_unique<ScaleTool>(*m_canvas);
    m_scaleTool->done = [this] { m_canvas->cancelTool(); };
    buildPanes();
    buildKeeping();
    buildAreas();
    buildMenus();
    buildAreaStrip();
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
    connect(m_canvas, &CanvasView::detailsRequested, this, [this] {
        showPane("details");
        m_details->focusFirstField();
    });
    connect(m_canvas, &CanvasView::zoomChanged, this,
            [this](double zoom) { m_zoom->setEditText(tr("%1 %").arg(std::lround(zoom * 100))); });
    connect(m_details, &DetailsPanel::scaleRequested, this, &MainWindow::scalePlan);
    connect(m_details, &DetailsPanel::stockRequested, this, &MainWindow::openStock);
    connect(m_safety, &SafetyPanel::readyToPlay, m_timeBar, &TimeBar::play);
    connect(m_canvas, &CanvasView::toolLaidDown, m_tray, &Tray::layDown);
    connect(m_tray, &Tray::kindPicked, m_canvas, &EditingCanvas::startPlacing);
    connect(m_firstJob, &FirstJob::paneWanted, this,
            [this](const QString& pane) { showPane(pane.toLatin1().constData()); });
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
    m_ring.reset();
    delete m_caseEditor;
    delete m_stock;
    m_canvas->cancelTool();  // before the tool of this window goes
    for (auto* dock : m_docks)
        delete dock;
    delete takeCentralWidget();
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

void MainWindow::beginFirstJob()
{
    furnish();
    if (!m_hasDrawing || m_session.drawing().job.sampleFigures)
        newDrawing();
    if (m_hasDrawing && !m_session.drawing().job.sampleFigures)  // not when somebody stays with what is open
        m_firstJob->begin();
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
