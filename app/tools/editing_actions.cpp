// SPDX-License-Identifier: GPL-3.0-or-later
// The canvas's commands: their actions and the context menu. What they do to the clipboard: editing_clipboard.cpp.
#include <algorithm>
#include <QAction>
#include <QContextMenuEvent>
#include <QMenu>
#include <utility>

#include "document/dimension.h"
#include "document/rearrange.h"
#include "session/message_text.h"
#include "tools/editing_canvas.h"
#include "tools/rows.h"

namespace tapward::app {

using document::PartId;

QAction* EditingCanvas::add(Command command, const QString& text, const QList<QKeySequence>& keys,
                            std::function<void()> run)
{
    auto* action = new QAction(text, this);
    action->setShortcuts(keys);
    // Single letters and Ctrl+C belong to the text field as soon as one has the focus.
    action->setShortcutContext(Qt::WidgetShortcut);
    connect(action, &QAction::triggered, this, [run = std::move(run)] { run(); });
    addAction(action);
    m_actions.insert(static_cast<int>(command), action);
    return action;
}

void EditingCanvas::addActions()
{
    using C = Command;
    const auto turn = [this](int quarters) {
        perform(document::turnParts(session().drawing(), session().selection(), quarters));
    };
    const auto stage = [this](document::Stage to) {
        perform(document::setStage(session().drawing(), session().selection(), to));
    };
    add(C::Cut, tr("Cu&t"), {QKeySequence::Cut}, [this] {
        copy();
        remove(true);
    });
    add(C::Copy, tr("&Copy"), {QKeySequence::Copy}, [this] { copy(); });
    add(C::Paste, tr("&Paste"), {QKeySequence::Paste}, [this] { paste(false, true); });
    add(C::PasteBeside, tr("Paste &Beside the Original"), {}, [this] { paste(false, false); });
    add(C::PasteInPlace, tr("Paste &in Place"), {QKeySequence(Qt::CTRL | Qt::SHIFT | Qt::Key_V)},
        [this] { paste(true, false); });
    add(C::Duplicate, tr("D&uplicate"), {QKeySequence(Qt::CTRL | Qt::Key_D)}, [this] { duplicate(); });
    add(C::Delete, tr("&Delete and Join Pipes"), {QKeySequence(Qt::Key_Delete), QKeySequence(Qt::Key_Backspace)},
        [this] { remove(true); });
    add(C::DeleteLoose, tr("Delete with Its &Pipes"), {QKeySequence(Qt::SHIFT | Qt::Key_Delete)},
        [this] { remove(false); });
    add(C::SelectAll, tr("Select &All"), {QKeySequence::SelectAll}, [this] {
        std::vector<PartId> all;
        for (const auto& symbol : layoutShown().symbols)
            all.push_back(symbol.id);
        for (const auto& pipe : layoutShown().pipes)
            all.push_back(pipe.id);
        std::ranges::sort(all);
        session().select(std::move(all));
    });
    add(C::SelectNone, tr("Select &None"), {QKeySequence(Qt::CTRL | Qt::SHIFT | Qt::Key_A)},
        [this] { session().select({}); });
    add(C::RotateRight, tr("&Rotate Right"), {QKeySequence(Qt::Key_R)}, [turn] { turn(1); });
    add(C::RotateLeft, tr("Rotate &Left"), {QKeySequence(Qt::SHIFT | Qt::Key_R)}, [turn] { turn(3); });
    add(C::Flip, tr("&Flip"), {QKeySequence(Qt::Key_F)},
        [this] { perform(document::flipParts(session().drawing(), session().selection())); });
    add(C::Reroute, tr("R&e-route Pipes"), {},
        [this] { perform(rerouted(session().drawing(), session().selection())); });
    const auto align = [this](document::Alignment way) {
        return [this, way] { perform(document::alignParts(session().drawing(), session().selection(), way)); };
    };
    add(C::AlignLeft, tr("Align &Left Edges"), {}, align(document::Alignment::Left));
    add(C::AlignCentre, tr("Align &Centers"), {}, align(document::Alignment::Centre));
    add(C::AlignRight, tr("Align &Right Edges"), {}, align(document::Alignment::Right));
    add(C::AlignTop, tr("Align &Top Edges"), {}, align(document::Alignment::Top));
    add(C::AlignMiddle, tr("Align &Middles"), {}, align(document::Alignment::Middle));
    add(C::AlignBottom, tr("Align &Bottom Edges"), {}, align(document::Alignment::Bottom));
    add(C::SpreadAcross, tr("Spread &Across"), {},
        [this] { perform(document::distributeParts(session().drawing(), session().selection(), true)); });
    add(C::SpreadDown, tr("Spread &Down"), {},
        [this] { perform(document::distributeParts(session().drawing(), session().selection(), false)); });
    add(C::TidyUp, tr("Tid&y Up"), {QKeySequence(Qt::CTRL | Qt::SHIFT | Qt::Key_T)}, [this] { tidyUp(); });
    add(C::TwoRows, tr("Lay in T&wo Rows"), {}, [this] {
        if (const auto problem = layRows(*this))
            Q_EMIT message(problemText(*problem, session().units()));
    });
    add(C::TakeOut, tr("Take &Out of Pipe"), {QKeySequence(Qt::Key_O)}, [this] {
        if (session().selection().size() == 1)
            perform(document::takeOutOfPipe(session().drawing(), session().selection().front(), 0, 6));
    });
    add(C::ResetLabel, tr("Place La&bel Automatically"), {}, [this] {
        if (session().selection().size() == 1)
            perform(labelMoved(session().drawing(), session().selection().front(), std::nullopt));
    });
    add(C::StageExisting, tr("Mark as E&xisting"), {}, [stage] { stage(document::Stage::Existing); });
    add(C::StageAdded, tr("Mark as A&dded"), {}, [stage] { stage(document::Stage::Added); });
    add(C::StageRemoved, tr("Mark as Re&moved"), {}, [stage] { stage(document::Stage::Removed); });
    add(C::Insert, tr("&Insert Part..."), {QKeySequence(Qt::Key_Insert)}, [this] { showPicker(); });
    add(C::InsertAgain, tr("Insert A&gain"), {QKeySequence(Qt::Key_A)}, [this] { insertAgain(); });
    add(C::Connect, tr("&Connect..."), {QKeySequence(Qt::Key_C)}, [this] { startConnecting(); });
    add(C::Dimension, tr("Add Di&mension"), {QKeySequence(Qt::Key_M)}, [this] {
        perform(document::dimensionBetween(session().drawing(), session().selection()));
        if (const auto& fresh = session().lastAdded(); fresh.size() == 1)
            session().select(fresh);
    });
    add(C::Details, tr("Detail&s"), {QKeySequence(Qt::ALT | Qt::Key_Return)}, [this] {
        if (session().selection().size() == 1)
            Q_EMIT detailsRequested(session().selection().front());
    });
    add(C::ZoomIn, tr("Zoom &In"), {QKeySequence::ZoomIn, QKeySequence(Qt::CTRL | Qt::Key_Equal)},
        [this] { zoomIn(); });
    add(C::ZoomOut, tr("Zoom &Out"), {QKeySequence::ZoomOut}, [this] { zoomOut(); });
    add(C::ZoomReset, tr("&Original Size"), {QKeySequence(Qt::CTRL | Qt::Key_0)}, [this] { resetZoom(); });
    add(C::FitDrawing, tr("&Fit Drawing"), {QKeySequence(Qt::CTRL | Qt::Key_1)}, [this] { fitDrawing(); });
    add(C::FitSelection, tr("Fit &Selection"), {QKeySequence(Qt::CTRL | Qt::Key_2)}, [this] { fitSelection(); });
    auto* grid = add(C::ShowGrid, tr("Show &Grid"), {}, [] {});
    grid->setCheckable(true);
    grid->setChecked(gridShown());
    connect(grid, &QAction::toggled, this, &EditingCanvas::setGridShown);
    auto* snap = add(C::SnapToGrid, tr("S&nap to Grid"), {}, [] {});
    snap->setCheckable(true);
    snap->setChecked(snaps());
    snap->setToolTip(tr("Hold Alt to move freely."));
    connect(snap, &QAction::toggled, this, &EditingCanvas::setSnaps);
}

void EditingCanvas::updateActions()
{
    using C = Command;
    const auto& chosen = session().selection();
    const auto& drawing = session().drawing();
    int symbols = 0;
    bool bent = false, labelled = false;
    for (const auto id : chosen)
        if (const auto* part = drawing.find(id)) {
            symbols += !document::kindOf(*part).isPipe;
            bent |= !part->bends.empty();
            labelled |= part->label.has_value();
        }
    for (const auto command : {C::Cut, C::Copy, C::Duplicate, C::Delete, C::DeleteLoose, C::SelectNone,
                               C::StageExisting, C::StageAdded, C::StageRemoved, C::FitSelection})
        action(command)->setEnabled(!chosen.empty());
    for (const auto command : {C::RotateRight, C::RotateLeft, C::Flip})
        action(command)->setEnabled(symbols > 0);
    for (const auto command :
         {C::AlignLeft, C::AlignCentre, C::AlignRight, C::AlignTop, C::AlignMiddle, C::AlignBottom})
        action(command)->setEnabled(symbols > 1);
    for (const auto command : {C::SpreadAcross, C::SpreadDown})
        action(command)->setEnabled(symbols > 2);
    action(C::Dimension)->setEnabled(document::givesDimension(drawing, chosen));
    action(C::TidyUp)->setEnabled(symbols > 0 || (chosen.empty() && !drawing.parts.empty()));
    action(C::TakeOut)->setEnabled(symbols == 1 && chosen.size() == 1);
    action(C::InsertAgain)->setEnabled(!m_lastKind.isEmpty());
    action(C::Reroute)->setEnabled(bent);
    action(C::ResetLabel)->setEnabled(labelled && chosen.size() == 1);
    action(C::Details)->setEnabled(chosen.size() == 1);
    action(C::SelectAll)->setEnabled(!drawing.parts.empty());
    action(C::FitDrawing)->setEnabled(!drawing.parts.empty());
}

void EditingCanvas::contextMenuEvent(QContextMenuEvent* event)
{
    using C = Command;
    QPoint at = event->pos();
    if (event->reason() == QContextMenuEvent::Mouse) {
        const auto under = hits().allAt(mapToScene(at), toUnits(kPipeReach), toUnits(kLeastTarget));
        const auto& chosen = session().selection();
        if (!under.empty() && std::ranges::find(chosen, under.front()) == chosen.end())
            session().select({under.front()});
        else if (under.empty())
            session().select({});
    } else if (!session().selection().empty()) {
        if (const auto* symbol = layoutShown().symbol(session().selection().front()))
            at = mapFromScene(symbol->box().bottomRight());
        else if (const auto* pipe = layoutShown().pipe(session().selection().front()))
            at = mapFromScene(pipe->path.pointAtPercent(0.5));
    }
    auto* menu = new QMenu(this);
    menu->setAttribute(Qt::WA_DeleteOnClose);
    const auto put = [&](std::initializer_list<C> commands) {
        for (const auto command : commands)
            menu->addAction(action(command));
        menu->addSeparator();
    };
    if (session().selection().empty()) {
        put({C::Insert, C::Connect});
        put({C::Paste, C::SelectAll});
        put({C::FitDrawing, C::ShowGrid, C::SnapToGrid});
    } else {
        put({C::Details, C::Insert, C::Connect, C::Dimension});
        put({C::RotateRight, C::RotateLeft, C::Flip, C::TakeOut, C::Reroute, C::ResetLabel, C::TidyUp});
        put({C::StageExisting, C::StageAdded, C::StageRemoved});
        put({C::Cut, C::Copy, C::Paste, C::Duplicate});
        put({C::Delete, C::DeleteLoose});
    }
    menu->addActions(m_contextActions);
    menu->popup(viewport()->mapToGlobal(at));
    event->accept();
}

}  // namespace tapward::app
