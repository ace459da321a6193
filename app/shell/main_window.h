// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <functional>
#include <memory>
#include <QMainWindow>
#include <QPointer>
#include <vector>

#include "session/session.h"
#include "shell/autosave.h"
#include "shell/exports.h"
#include "shell/places.h"

class QComboBox;
class QDockWidget;
class QLabel;
class QMenu;
class QPushButton;
class QStackedWidget;
class QToolBar;

namespace tapward::app {

class AnswersPanel;
class AssemblyHand;
class CaseBar;
class CaseEditor;
class DetailsPanel;
class EditingCanvas;
class FindingsPanel;
class HelpWindow;
class OutlinePanel;
class SafetyPanel;
class ScaleTool;
class StartPage;
class StockDialog;
class SurveyPanel;
class TimeBar;
class Tray;
class WarmUpChart;

/// The window: menus, panes, files. What the drawing is and what it predicts is the session's affair.
class MainWindow final : public QMainWindow {
    Q_OBJECT
public:
    explicit MainWindow(QWidget* parent = nullptr);
    ~MainWindow() override;

    Session& session() { return m_session; }
    EditingCanvas& canvas() { return *m_canvas; }
    AnswersPanel& answers() { return *m_answers; }
    FindingsPanel& findings() { return *m_findings; }
    DetailsPanel& details() { return *m_details; }
    SafetyPanel& safety() { return *m_safety; }
    WarmUpChart& chart() { return *m_chart; }
    SurveyPanel& survey() { return *m_survey; }
    Autosave& autosave() { return *m_autosave; }

    bool openFile(const QString& path);
    bool openSample(const QString& resource);
    void newDrawing();
    bool save();
    bool saveAs();
    /// Saved, given up, or nothing to lose; false when the person stays.
    bool mayClose();
    /// Offers what windows that ended badly left behind.
    void offerRecovery();
    bool hasDrawing() const { return m_hasDrawing; }
    /// Shows what another window shows, unsaved changes with it (as one undo step); that one gives its file up.
    /// For a change of language: texts are made with the window.
    void continueFrom(MainWindow& other);
    /// A new drawing as it starts: empty, with one case to write into.
    static document::Drawing emptyDrawing();

Q_SIGNALS:
    void languageChosen();  ///< in the settings already; whoever keeps the windows makes this one anew

protected:
    void closeEvent(QCloseEvent* event) override;
    void changeEvent(QEvent* event) override;
    void dragEnterEvent(QDragEnterEvent* event) override;
    void dropEvent(QDropEvent* event) override;

private:
    // main_window.cpp
    void buildPanes();
    QDockWidget* addDock(Qt::DockWidgetArea area, const QString& name, const QString& title, QWidget* content);
    void arrange();
    void restoreLook();
    void saveLook() const;
    void showDrawing(bool on);
    void refreshTitle();
    void refreshState();
    void cyclePane(int direction);
    // main_window_menus.cpp
    void buildMenus();
    void buildToolBar();
    QAction* command(const QString& text, const QKeySequence& key, std::function<void()> run,
                     const char* icon = nullptr);
    void fillRecentMenu();
    void openStock();
    void scalePlan(document::PartId plan);
    // main_window_assemblies.cpp
    void buildAssemblies();
    void addAssemblyMenus(QMenu* menu);
    void keepAssembly();
    // main_window_files.cpp
    void complain(const QString& title, const Problem& problem);
    bool restore(const Leftover& leftover);
    void openDialog();
    void exportTo(ExportKind kind);
    void opened();

    Session m_session;
    std::unique_ptr<Autosave> m_autosave;
    FileGuard m_guard;
    FileStamp m_stamp;
    QString m_suggestedPath;  ///< for the first save of a restored drawing
    bool m_hasDrawing = false;
    QByteArray m_look;        ///< pane layout while the start page is shown

    QStackedWidget* m_stack;
    StartPage* m_start;
    EditingCanvas* m_canvas;
    Tray* m_tray;
    AssemblyHand* m_hand;
    CaseBar* m_caseBar;
    TimeBar* m_timeBar;
    DetailsPanel* m_details;
    AnswersPanel* m_answers;
    WarmUpChart* m_chart;
    FindingsPanel* m_findings;
    OutlinePanel* m_outline;
    SurveyPanel* m_survey;
    SafetyPanel* m_safety;
    QPointer<CaseEditor> m_caseEditor;
    QPointer<StockDialog> m_stock;
    std::unique_ptr<ScaleTool> m_scaleTool;
    HelpWindow* m_help = nullptr;
    QLabel *m_hint, *m_state;
    QPushButton* m_findingCount;
    QComboBox* m_zoom;
    QMenu* m_recentMenu = nullptr;
    QToolBar* m_toolBar = nullptr;
    std::vector<QDockWidget*> m_docks;
    QList<QAction*> m_needDrawing;
};

}  // namespace tapward::app
