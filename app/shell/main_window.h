// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <functional>
#include <memory>
#include <QMainWindow>
#include <QMap>
#include <QPointer>
#include <vector>

#include "session/desk.h"
#include "shell/autosave.h"
#include "shell/exports.h"
#include "shell/places.h"
#include "shell/work_area.h"

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
class FirstJob;
class FocusRing;
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
    MainWindow() : MainWindow(std::make_shared<Desk>()) {}
    /// Stands in for another window, with its drawing, undo steps, answers, moment and panes; that one gives all of it up
    /// and is to be closed. For a change of language: texts are made with the window.
    explicit MainWindow(MainWindow& before);
    ~MainWindow() override;

    Session& session() { return furnish(), m_session; }
    EditingCanvas& canvas() { return furnish(), *m_canvas; }
    AnswersPanel& answers() { return furnish(), *m_answers; }
    FindingsPanel& findings() { return furnish(), *m_findings; }
    DetailsPanel& details() { return furnish(), *m_details; }
    SafetyPanel& safety() { return furnish(), *m_safety; }
    WarmUpChart& chart() { return furnish(), *m_chart; }
    FirstJob& firstJob() { return furnish(), *m_firstJob; }
    SurveyPanel& survey() { return furnish(), *m_survey; }
    Autosave& autosave() { return furnish(), *m_autosave; }

    /// The studies run without being asked, a moment after each change: what the program does, and most tests need not.
    void studyByItself();

    /// Builds the drawing's panes and the menus, if they are not there yet. The window shows its start page without
    /// them and calls this after its first frame; whatever needs them earlier calls it too.
    void furnish();
    void setVisible(bool visible) override;
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
    /// The part of the job that is shown, and all there are, in order.
    QString area() const { return m_areas[m_area]->id(); }
    QStringList areaIds() const;
    void showArea(const QString& id);
    /// Shows a pane that this area may not have, in an area of its own where there is one.
    QDockWidget& showPane(const char* name);
    /// A new drawing as it starts: empty, with one case to write into.
    static document::Drawing emptyDrawing();

Q_SIGNALS:
    void languageChosen();  ///< in the settings already; whoever keeps the windows makes this one anew

protected:
    bool event(QEvent* event) override;
    void closeEvent(QCloseEvent* event) override;
    void changeEvent(QEvent* event) override;
    void dragEnterEvent(QDragEnterEvent* event) override;
    void dropEvent(QDropEvent* event) override;

private:
    explicit MainWindow(std::shared_ptr<Desk> desk);
    // main_window.cpp
    void welcome();  ///< start page and top menus, if they are not there yet
    void buildPanes();
    QDockWidget* addDock(const QString& name, const QString& title, QWidget* content);
    void restoreLook();
    void fitScreen();  ///< no larger than the screen and, once it is shown, all of it on it
    void saveLook();
    void showDrawing(bool on);
    void refreshTitle();
    void refreshState();
    void cyclePane(int direction);
    // main_window_areas.cpp
    void buildAreas();
    void buildAreaStrip();
    void keepArea();  ///< how its panes stand now
    void standArea();  ///< as it comes
    void showArea(std::size_t at);
    void toggleSides();
    void restoreLooks();
    void saveLooks();
    // main_window_menus.cpp
    void addTopMenus();
    void buildMenus();
    void buildToolBar();
    QAction* command(const QString& text, const QKeySequence& key, std::function<void()> run,
                     const char* icon = nullptr);
    void fillRecentMenu();
    void openStock();
    void beginFirstJob();
    void scalePlan(document::PartId plan);
    // main_window_assemblies.cpp
    void buildAssemblies();
    void addAssemblyMenus(QMenu* menu);
    void keepAssembly();
    // main_window_files.cpp
    void complain(const QString& title, const Problem& problem);
    bool restore(const Leftover& leftover);
    void offerUnreadable(const Leftover& leftover);
    void buildKeeping();  ///< copies of unsaved work, and the word when none can be written
    void openDialog();
    void exportTo(ExportKind kind);
    void opened();

    std::shared_ptr<Desk> m_desk;
    Session& m_session;  ///< of the desk
    std::unique_ptr<Autosave> m_autosave;
    std::unique_ptr<FocusRing> m_ring;
    FileGuard m_guard;
    FileStamp m_stamp;
    QString m_suggestedPath;  ///< for the first save of a restored drawing
    bool m_hasDrawing = false;
    std::vector<std::unique_ptr<WorkArea>> m_areas = workAreas();
    std::size_t m_area = 0;
    QMap<QString, QByteArray> m_looks;  ///< how the panes stand, by area
    QList<QDockWidget*> m_hiddenSides;  ///< by the command that brings them back

    QStackedWidget* m_stack;
    StartPage* m_start = nullptr;
    EditingCanvas* m_canvas = nullptr;
    Tray* m_tray = nullptr;
    AssemblyHand* m_hand = nullptr;
    CaseBar* m_caseBar = nullptr;
    TimeBar* m_timeBar = nullptr;
    DetailsPanel* m_details = nullptr;
    AnswersPanel* m_answers = nullptr;
    WarmUpChart* m_chart = nullptr;
    FindingsPanel* m_findings = nullptr;
    OutlinePanel* m_outline = nullptr;
    SurveyPanel* m_survey = nullptr;
    SafetyPanel* m_safety = nullptr;
    FirstJob* m_firstJob = nullptr;
    QPointer<CaseEditor> m_caseEditor;
    QPointer<StockDialog> m_stock;
    std::unique_ptr<ScaleTool> m_scaleTool;
    HelpWindow* m_help = nullptr;
    QLabel *m_state = nullptr, *m_unkept = nullptr;
    QPushButton* m_findingCount = nullptr;
    QComboBox* m_zoom = nullptr;
    QMenu* m_recentMenu = nullptr;
    QToolBar *m_toolBar = nullptr, *m_areaStrip = nullptr;
    QMenu* m_areaMenu = nullptr;
    QList<QAction*> m_areaActions;
    QMenu *m_fileMenu, *m_editMenu, *m_drawMenu, *m_viewMenu, *m_resultMenu, *m_helpMenu;
    std::vector<QDockWidget*> m_docks;
    QList<QAction*> m_needDrawing;
};

}  // namespace tapward::app
