// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <functional>
#include <QElapsedTimer>
#include <QHash>

#include "canvas/canvas_view.h"
#include "tools/pipe_tool.h"
#include "tools/place_tool.h"
#include "tools/select_tool.h"

class QAction;
class QMenu;

namespace tapward::app {

class KindPicker;

/// The canvas one edits on: the tools, the commands as actions, drag and drop, clipboard, keyboard and
/// the context menu. The window puts the same actions into its menus.
class EditingCanvas final : public CanvasView {
    Q_OBJECT
public:
    explicit EditingCanvas(Session& session, QWidget* parent = nullptr);
    ~EditingCanvas() override;

    enum class Command {
        Cut,
        Copy,
        Paste,
        PasteBeside,
        PasteInPlace,
        Duplicate,
        Delete,
        DeleteLoose,
        SelectAll,
        SelectNone,
        RotateRight,
        RotateLeft,
        Flip,
        AlignLeft,
        AlignCentre,
        AlignRight,
        AlignTop,
        AlignMiddle,
        AlignBottom,
        SpreadAcross,
        SpreadDown,
        TidyUp,
        TwoRows,
        TakeOut,
        Reroute,
        ResetLabel,
        StageExisting,
        StageAdded,
        StageRemoved,
        Insert,
        InsertAgain,
        Connect,
        Dimension,
        Details,
        ZoomIn,
        ZoomOut,
        ZoomReset,
        FitDrawing,
        FitSelection,
        ShowGrid,
        SnapToGrid
    };
    /// The one action for a command, with text, shortcut and enabled state kept up to date.
    QAction* action(Command command) const { return m_actions.value(static_cast<int>(command)); }

    /// Commands of others for the context menu of a selection; one that is hidden is left out.
    void addContextAction(QAction* action) { m_contextActions << action; }

public Q_SLOTS:
    void startPlacing(const QString& kind);  ///< from the tray: the next click puts it down
    void insertKind(const QString& kind);    ///< at once, after the focused part
    void startConnecting();
    void cancelTool();                       ///< back to selecting
    void remove(bool heal);

protected:
    void dragEnterEvent(QDragEnterEvent* event) override;
    void dragMoveEvent(QDragMoveEvent* event) override;
    void dragLeaveEvent(QDragLeaveEvent* event) override;
    void dropEvent(QDropEvent* event) override;
    void contextMenuEvent(QContextMenuEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;
    void mousePressEvent(QMouseEvent* event) override;
    bool focusNextPrevChild(bool next) override;

private:
    QAction* add(Command command, const QString& text, const QList<QKeySequence>& keys, std::function<void()> run);
    void addActions();
    void updateActions();
    void perform(Result<document::Edit> edit, int burst = 0);
    void tidyUp();  ///< what is chosen, or the whole drawing, in two rows where it is long
    void copy();
    void paste(bool inPlace, bool atPointer);
    void duplicate();
    void insertCopies(const std::vector<document::Part>& copied, double dx, double dy);
    void nudge(int key, Qt::KeyboardModifiers keys);
    void walk(int key);
    void insertAgain();
    KindPicker* openPicker(const QPoint& at);  // viewport pixels
    void showPicker();
    void offerPart(document::PartId pipe, int end);
    bool cycleUnderPointer(bool next);
    void focusPart(document::PartId id);

    SelectTool m_select;
    PlaceTool m_place;
    PipeTool m_pipe;
    PlaceGesture m_drop;
    QHash<int, QAction*> m_actions;
    QList<QAction*> m_contextActions;
    QElapsedTimer m_lastNudge;
    int m_nudgeBurst = 0;
    std::vector<document::PartId> m_nudged;
    QPoint m_lastPaste;
    int m_pasteCount = 0;
    QString m_lastKind;             // for Insert Again
    std::optional<QPoint> m_clicked;  // where Tab goes round among what lies on top of each other
};

}  // namespace tapward::app
