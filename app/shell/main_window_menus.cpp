// SPDX-License-Identifier: GPL-3.0-or-later
// The window's menus and its tool bar. Commands of the drawing are the canvas's own actions.
#include <QActionGroup>
#include <QApplication>
#include <QDockWidget>
#include <QFileInfo>
#include <QMenu>
#include <QMenuBar>
#include <QTimer>
#include <QToolBar>

#include "panels/answers_panel.h"
#include "panels/case_bar.h"
#include "panels/details_panel.h"
#include "panels/findings_panel.h"
#include "panels/icons.h"
#include "panels/outline_panel.h"
#include "panels/safety_panel.h"
#include "panels/say.h"
#include "panels/survey_panel.h"
#include "panels/survey_table.h"
#include "panels/time_bar.h"
#include "panels/trace_dialog.h"
#include "shell/first_job.h"
#include "shell/help_window.h"
#include "shell/language.h"
#include "shell/main_window.h"
#include "shell/menu_letters.h"
#include "shell/start_page.h"
#include "tools/editing_canvas.h"
#include "tray/tray.h"

namespace tapward::app {

QAction* MainWindow::command(const QString& text, const QKeySequence& key, std::function<void()> run, const char* icon)
{
    auto* action = new QAction(text, this);
    if (!key.isEmpty())
        action->setShortcut(key);
    if (icon)
        action->setIcon(look::icon(QString::fromLatin1(icon)));
    connect(action, &QAction::triggered, this, [run = std::move(run)] { run(); });
    addAction(action);
    return action;
}

void MainWindow::addTopMenus()
{
    m_fileMenu = menuBar()->addMenu(tr("&File"));
    m_editMenu = menuBar()->addMenu(tr("&Edit"));
    m_drawMenu = menuBar()->addMenu(tr("&Drawing"));
    m_viewMenu = menuBar()->addMenu(tr("&View"));
    m_resultMenu = menuBar()->addMenu(tr("&Results"));
    m_helpMenu = menuBar()->addMenu(tr("&Help"));
}

void MainWindow::buildMenus()
{
    using C = EditingCanvas::Command;
    const auto needs = [this](QAction* action) {
        m_needDrawing << action;
        return action;
    };
    const auto drawing = [&](QMenu* menu, std::initializer_list<C> commands) {
        for (const auto one : commands)
            menu->addAction(m_canvas->action(one));
    };
    const auto dress = [this](C one, const char* icon) {
        m_canvas->action(one)->setIcon(look::icon(QString::fromLatin1(icon)));
    };
    dress(C::Cut, "cut");
    dress(C::Copy, "copy");
    dress(C::Paste, "paste");
    dress(C::Duplicate, "duplicate");
    dress(C::Delete, "delete");
    dress(C::RotateRight, "rotate");
    dress(C::Flip, "flip");
    dress(C::Insert, "add");
    dress(C::Connect, "pipe");
    dress(C::ZoomIn, "zoom-in");
    dress(C::ZoomOut, "zoom-out");
    dress(C::FitDrawing, "fit");
    // Zooming is wanted wherever the keyboard is; the editing keys stay the canvas's own.
    for (const auto one : {C::ZoomIn, C::ZoomOut, C::ZoomReset, C::FitDrawing, C::FitSelection, C::Details})
        m_canvas->action(one)->setShortcutContext(Qt::WindowShortcut);

    QMenu* file = m_fileMenu;
    file->addAction(command(tr("&New Drawing"), QKeySequence::New, [this] { newDrawing(); }, "new"));
    file->addAction(command(tr("&Open\u2026"), QKeySequence::Open, [this] { openDialog(); }, "open"));
    m_recentMenu = file->addMenu(tr("Open &Recent"));
    connect(m_recentMenu, &QMenu::aboutToShow, this, &MainWindow::fillRecentMenu);
    fillRecentMenu();
    QMenu* sampleMenu = file->addMenu(tr("Open Sa&mple"));
    for (const auto& sample : samples())
        sampleMenu->addAction(sample.shown(), this, [this, resource = sample.resource] { openSample(resource); });
    sampleMenu->setEnabled(!sampleMenu->isEmpty());
    QMenu* templateMenu = file->addMenu(tr("New from &Template"));
    for (const auto& one : templates())
        templateMenu->addAction(one.shown(), this, [this, resource = one.resource] { openSample(resource); });
    templateMenu->setEnabled(!templateMenu->isEmpty());
    file->addSeparator();
    file->addAction(needs(command(tr("&Save Drawing"), QKeySequence::Save, [this] { save(); }, "save")));
    file->addAction(
        needs(command(tr("Save &As\u2026"), QKeySequence(Qt::CTRL | Qt::SHIFT | Qt::Key_S), [this] { saveAs(); })));
    file->addSeparator();
    QMenu* exports = file->addMenu(look::icon(QStringLiteral("export")), tr("&Export"));
    for (const auto kind : {ExportKind::PagePdf, ExportKind::DrawingSvg, ExportKind::DrawingPng, ExportKind::PartsCsv,
                            ExportKind::SeriesCsv, ExportKind::SurveyPdf})
        exports->addAction(needs(command(tr("%1\u2026").arg(exportTitle(kind)), {}, [this, kind] { exportTo(kind); })));
    file->addAction(needs(command(
        tr("Print Pre&view\u2026"), QKeySequence(Qt::CTRL | Qt::SHIFT | Qt::Key_P),
        [this] {
            previewPage(m_session, this);
            m_firstJob->sawPage();
        },
        "preview")));
    file->addAction(needs(command(
        tr("&Print\u2026"), QKeySequence::Print,
        [this] {
            printPage(m_session, this);
            m_firstJob->sawPage();
        },
        "print")));
    file->addAction(command(tr("&Blank Survey Sheet\u2026"), {}, [this] { previewSurveySheet(m_session, this); }));
    file->addSeparator();
    file->addAction(needs(command(tr("&Close Drawing"), QKeySequence(Qt::CTRL | Qt::Key_W), [this] {
        if (!mayClose())
            return;
        m_autosave->forget();
        m_guard.release();
        m_suggestedPath.clear();
        showDrawing(false);
        m_session.startNew({});
        refreshTitle();
    })));
    file->addAction(command(tr("&Quit"), QKeySequence(Qt::CTRL | Qt::Key_Q), [this] { close(); }));

    QMenu* edit = m_editMenu;
    QAction* undo = m_session.undoStack().createUndoAction(this, tr("&Undo"));
    undo->setShortcut(QKeySequence(Qt::CTRL | Qt::Key_Z));
    undo->setIcon(look::icon(QStringLiteral("undo")));
    undo->setObjectName(QStringLiteral("undo"));
    QAction* redo = m_session.undoStack().createRedoAction(this, tr("&Redo"));
    redo->setShortcuts({QKeySequence(Qt::CTRL | Qt::SHIFT | Qt::Key_Z), QKeySequence(Qt::CTRL | Qt::Key_Y)});
    redo->setIcon(look::icon(QStringLiteral("redo")));
    redo->setObjectName(QStringLiteral("redo"));
    edit->addActions({undo, redo});
    addActions({undo, redo});
    edit->addSeparator();
    drawing(edit,
            {C::Cut, C::Copy, C::Paste, C::PasteBeside, C::PasteInPlace, C::Duplicate, C::Delete, C::DeleteLoose});
    edit->addSeparator();
    drawing(edit, {C::SelectAll, C::SelectNone});
    edit->addSeparator();
    edit->addAction(needs(command(tr("&Find Part\u2026"), QKeySequence::Find, [this] {
        showPane("outline");
        m_outline->focusFilter();
    })));
    edit->addAction(
        needs(command(tr("Find Ne&xt"), QKeySequence(Qt::CTRL | Qt::Key_G), [this] { m_outline->findNext(); })));
    edit->addSeparator();
    edit->addAction(needs(command(tr("Rena&me Part"), QKeySequence(Qt::Key_F2), [this] {
        showPane("details");
        m_details->focusTag();
    })));
    drawing(edit, {C::Details});
    edit->addSeparator();
    edit->addAction(needs(command(tr("Cop&y Predictions"), {}, [this] { m_answers->copy(); })));

    QMenu* draw = m_drawMenu;
    drawing(draw, {C::Insert, C::InsertAgain, C::Connect, C::Dimension});
    addAssemblyMenus(draw);
    draw->addSeparator();
    drawing(draw, {C::RotateRight, C::RotateLeft, C::Flip, C::TakeOut, C::Reroute, C::ResetLabel});
    draw->addSeparator();
    QMenu* lineUp = draw->addMenu(tr("Line &Up"));
    drawing(lineUp, {C::AlignLeft, C::AlignCentre, C::AlignRight});
    lineUp->addSeparator();
    drawing(lineUp, {C::AlignTop, C::AlignMiddle, C::AlignBottom});
    lineUp->addSeparator();
    drawing(lineUp, {C::SpreadAcross, C::SpreadDown});
    drawing(draw, {C::TidyUp, C::TwoRows});
    draw->addSeparator();
    drawing(draw, {C::StageExisting, C::StageAdded, C::StageRemoved});
    draw->addSeparator();
    draw->addAction(needs(command(tr("Survey &Table"), QKeySequence(Qt::CTRL | Qt::Key_T), [this] {
        showPane("survey");
        m_survey->shownTable().setFocus(Qt::ShortcutFocusReason);
    })));
    draw->addAction(needs(command(tr("Stock &List\u2026"), {}, [this] { openStock(); })));
    draw->addAction(needs(command(tr("Le&ngths from Floor Plan\u2026"), {}, [this] {
        auto* dialog = new TraceDialog(m_session, this);
        dialog->setAttribute(Qt::WA_DeleteOnClose);
        dialog->open();
    })));
    draw->addAction(
        needs(command(tr("Edit Ca&ses\u2026"), {}, [this] { Q_EMIT m_caseBar->editCasesRequested(); }, "edit")));
    draw->addAction(needs(command(tr("&Job Details"), {}, [this] {
        m_session.select({});
        showPane("details");
        m_details->focusFirstField();
    })));

    QMenu* view = m_viewMenu;
    drawing(view, {C::ZoomIn, C::ZoomOut, C::ZoomReset, C::FitDrawing, C::FitSelection});
    view->addSeparator();
    drawing(view, {C::ShowGrid, C::SnapToGrid});
    view->addSeparator();
    const auto choice = [&](QMenu* menu, QActionGroup* group, const QString& text, std::function<void()> run) {
        QAction* action = menu->addAction(text, this, [run = std::move(run)] { run(); });
        action->setCheckable(true);
        group->addAction(action);
        needs(action);
        return action;
    };
    QMenu* show = view->addMenu(tr("Sho&w"));
    auto* viewGroup = new QActionGroup(this);
    QList<QAction*> views;
    for (const auto one : {document::View::Before, document::View::After, document::View::Both})
        views << choice(show, viewGroup, sayView(one), [this, one] { m_session.setView(one); });
    QMenu* unitMenu = view->addMenu(tr("&Units"));
    auto* unitGroup = new QActionGroup(this);
    QList<QAction*> unitChoices{
        choice(unitMenu, unitGroup, tr("US"), [this] { m_session.setUnits(UnitSystem::Us); }),
        choice(unitMenu, unitGroup, tr("Metric"), [this] { m_session.setUnits(UnitSystem::Metric); })};
    QMenu* languageMenu = view->addMenu(tr("Lan&guage"));
    auto* languageGroup = new QActionGroup(this);
    for (const auto& language : languages()) {
        QAction* action = languageMenu->addAction(language.name, this, [this, id = language.id] {
            chooseLanguage(id);
            Q_EMIT languageChosen();
        });
        action->setCheckable(true);
        action->setChecked(language.id == chosenLanguage());
        languageGroup->addAction(action);
    }
    const auto check = [this, views, unitChoices] {
        views[int(m_session.view())]->setChecked(true);
        unitChoices[int(m_session.units())]->setChecked(true);
    };
    connect(&m_session, &Session::viewChanged, this, check);
    check();
    view->addSeparator();
    view->addMenu(m_areaMenu);
    QMenu* panes = view->addMenu(tr("&Panes"));
    for (auto* dock : m_docks)
        panes->addAction(needs(dock->toggleViewAction()));
    panes->addSeparator();
    panes->addAction(needs(command(tr("Default &Layout"), {}, [this] {
        standArea();
        QTimer::singleShot(0, this, &MainWindow::fitScreen);  // when the panes have their places
    })));
    view->addAction(needs(command(tr("S&ide Panes"), QKeySequence(Qt::Key_F9), [this] { toggleSides(); })));

    QMenu* result = m_resultMenu;
    result->addAction(needs(command(tr("&Next Finding"), QKeySequence(Qt::Key_F8), [this] { m_findings->step(1); })));
    result->addAction(needs(
        command(tr("&Previous Finding"), QKeySequence(Qt::SHIFT | Qt::Key_F8), [this] { m_findings->step(-1); })));
    result->addSeparator();
    result->addAction(needs(command(tr("&Safety"), {}, [this] {
        showPane("safety");
        m_safety->focusFirst();
    })));
    result->addAction(needs(command(tr("&Run Safety Studies"), {}, [this] {
        showPane("safety");
        m_safety->runStudies();
    })));
    result->addSeparator();
    result->addAction(needs(command(tr("Pla&y or Pause"), {}, [this] { m_timeBar->togglePlay(); }, "play")));
    result->addAction(needs(command(tr("N&ext Event"), {}, [this] { m_timeBar->stepEvent(1); }, "step-forward")));
    result->addAction(needs(command(tr("Pre&vious Event"), {}, [this] { m_timeBar->stepEvent(-1); }, "step-back")));

    QMenu* help = m_helpMenu;
    help->addAction(command(
        tr("&Help"), QKeySequence(Qt::Key_F1),
        [this] {
            if (!m_help)
                m_help = new HelpWindow(this);
            m_help->showFor(QApplication::focusWidget());
        },
        "help"));
    help->addAction(command(tr("&First Job, Step by Step"), {}, [this] { beginFirstJob(); }));
    help->addAction(command(tr("&Keyboard Shortcuts"), QKeySequence(QStringLiteral("Ctrl+?")), [this] {
        QList<QAction*> all;
        for (const QAction* top : menuBar()->actions()) {
            const std::function<void(const QMenu*)> collect = [&](const QMenu* menu) {
                for (QAction* action : menu->actions())
                    if (action->menu())
                        collect(action->menu());
                    else
                        all << action;
            };
            if (top->menu())
                collect(top->menu());
        }
        ShortcutList(all, this).exec();
    }));
    help->addSeparator();
    help->addAction(command(tr("&About Tapward"), {}, [this] { showAbout(this); }));
    settleMenuLetters(menuBar()->actions());
}

void MainWindow::buildToolBar()
{
    using C = EditingCanvas::Command;
    m_toolBar = addToolBar(tr("Tools"));
    m_toolBar->setObjectName(QStringLiteral("tools"));
    m_toolBar->setMovable(false);
    m_toolBar->setIconSize(QSize(20, 20));
    const auto named = [this](const char* text) -> QAction* {
        for (QAction* action : actions())
            if (action->text() == tr(text))
                return action;
        return nullptr;
    };
    for (const char* text : {"&New Drawing", "&Open\u2026", "&Save Drawing"})
        if (auto* action = named(text))
            m_toolBar->addAction(action);
    m_toolBar->addSeparator();
    m_toolBar->addActions({findChild<QAction*>(QStringLiteral("undo")), findChild<QAction*>(QStringLiteral("redo"))});
    m_toolBar->addSeparator();
    for (const auto one : {C::Insert, C::Connect, C::RotateRight, C::Flip, C::Duplicate, C::Delete})
        m_toolBar->addAction(m_canvas->action(one));
    m_toolBar->addSeparator();
    for (const auto one : {C::ZoomOut, C::ZoomIn, C::FitDrawing})
        m_toolBar->addAction(m_canvas->action(one));
    m_toolBar->addSeparator();
    for (const char* text : {"Print Pre&view\u2026", "&Print\u2026"})
        if (auto* action = named(text))
            m_toolBar->addAction(action);
}

void MainWindow::fillRecentMenu()
{
    m_recentMenu->clear();
    const QStringList files = RecentFiles().list();
    bool missing = false;
    for (const QString& path : files) {
        const QFileInfo info(path);
        QAction* action =
            m_recentMenu->addAction(info.exists() ? info.fileName() : tr("%1 (missing)").arg(info.fileName()), this,
                                    [this, path] { openFile(path); });
        action->setToolTip(path);
        action->setStatusTip(path);
        action->setEnabled(info.exists());
        missing = missing || !info.exists();
    }
    if (files.isEmpty()) {
        m_recentMenu->addAction(tr("None yet"))->setEnabled(false);
        return;
    }
    m_recentMenu->addSeparator();
    if (missing)
        m_recentMenu->addAction(tr("Remove Missing Ones"), this, [files] {
            for (const QString& path : files)
                if (!QFileInfo::exists(path))
                    RecentFiles().remove(path);
        });
    m_recentMenu->addAction(tr("Clear List"), this, [] { RecentFiles().clear(); });
}

}  // namespace tapward::app
