// SPDX-License-Identifier: GPL-3.0-or-later
// The canvas's commands: their actions, the clipboard and the context menu.
#include <algorithm>
#include <QAction>
#include <QApplication>
#include <QClipboard>
#include <QContextMenuEvent>
#include <QMenu>
#include <QMimeData>
#include <utility>

#include "document/file.h"
#include "look/kind_text.h"
#include "session/message_text.h"
#include "session/mime_types.h"
#include "tools/editing_canvas.h"

namespace tapward::app {

namespace {

using document::PartId;

/// The middle of a group of parts and pipes, in modules.
document::Point middleOf(const std::vector<document::Part>& copied)
{
    QRectF box;
    for (const auto& part : copied) {
        if (!document::kindOf(part).isPipe) {
            box |= QRectF(part.at.x - 1, part.at.y - 1, 2, 2);
            continue;
        }
        for (const auto& end : part.ends)
            if (end.part == document::kNoPart)
                box |= QRectF(end.loose.x - 0.5, end.loose.y - 0.5, 1, 1);
    }
    return {box.center().x(), box.center().y()};
}

std::optional<std::vector<document::Part>> clipboardParts(std::optional<Problem>* why)
{
    const auto* data = QApplication::clipboard()->mimeData();
    if (data == nullptr || !data->hasFormat(QLatin1String(kPartsMime)))
        return std::nullopt;
    const QByteArray json = data->data(QLatin1String(kPartsMime));
    auto copied = document::readParts({json.constData(), static_cast<std::size_t>(json.size())});
    if (copied)
        return std::move(*copied);
    *why = copied.error();
    return std::nullopt;
}

}  // namespace

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
    add(C::ResetLabel, tr("Place La&bel Automatically"), {}, [this] {
        if (session().selection().size() == 1)
            perform(labelMoved(session().drawing(), session().selection().front(), std::nullopt));
    });
    add(C::StageExisting, tr("Mark as E&xisting"), {}, [stage] { stage(document::Stage::Existing); });
    add(C::StageAdded, tr("Mark as A&dded"), {}, [stage] { stage(document::Stage::Added); });
    add(C::StageRemoved, tr("Mark as Re&moved"), {}, [stage] { stage(document::Stage::Removed); });
    add(C::Insert, tr("&Insert Part..."), {QKeySequence(Qt::Key_Insert)}, [this] { showPicker(); });
    add(C::Connect, tr("&Connect..."), {QKeySequence(Qt::Key_C)}, [this] { startConnecting(); });
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
    bool symbols = false, bent = false, labelled = false;
    for (const auto id : chosen)
        if (const auto* part = drawing.find(id)) {
            symbols |= !document::kindOf(*part).isPipe;
            bent |= !part->bends.empty();
            labelled |= part->label.has_value();
        }
    for (const auto command : {C::Cut, C::Copy, C::Duplicate, C::Delete, C::DeleteLoose, C::SelectNone,
                               C::StageExisting, C::StageAdded, C::StageRemoved, C::FitSelection})
        action(command)->setEnabled(!chosen.empty());
    for (const auto command : {C::RotateRight, C::RotateLeft, C::Flip})
        action(command)->setEnabled(symbols);
    action(C::Reroute)->setEnabled(bent);
    action(C::ResetLabel)->setEnabled(labelled && chosen.size() == 1);
    action(C::Details)->setEnabled(chosen.size() == 1);
    action(C::SelectAll)->setEnabled(!drawing.parts.empty());
    action(C::FitDrawing)->setEnabled(!drawing.parts.empty());
}

void EditingCanvas::copy()
{
    const auto& drawing = session().drawing();
    const auto& chosen = session().selection();
    if (chosen.empty())
        return;
    QStringList lines;
    for (const auto id : chosen)
        if (const auto* part = drawing.find(id))
            lines << (QStringList{toText(part->tag), kindTitle(document::kindOf(*part))}
                      + shownValues(*part, session().units()))
                         .join(QLatin1Char('\t'));
    auto* mime = new QMimeData;
    mime->setData(QLatin1String(kPartsMime), QByteArray::fromStdString(document::writeParts(drawing, chosen)));
    mime->setText(lines.join(QLatin1Char('\n')));
    QApplication::clipboard()->setMimeData(mime);
    m_pasteCount = 0;
}

void EditingCanvas::insertCopies(const std::vector<document::Part>& copied, double dx, double dy)
{
    auto edit = document::pasteParts(session().drawing(), copied, dx, dy);
    const bool made = edit.has_value();
    perform(std::move(edit));
    if (made)
        session().select(session().lastAdded());
}

void EditingCanvas::paste(bool inPlace, bool atPointer)
{
    std::optional<Problem> why;
    const auto copied = clipboardParts(&why);
    if (!copied) {
        Q_EMIT message(why ? problemText(*why, session().units())
                           : tr("There are no parts on the clipboard. Copy some first."));
        return;
    }
    if (inPlace) {
        insertCopies(*copied, 0, 0);
        return;
    }
    const auto mouse = mouseOnView();
    if (atPointer && mouse) {
        // Again at the same place: step aside, never exactly on top of the last copy.
        m_pasteCount = *mouse == m_lastPaste ? m_pasteCount + 1 : 0;
        m_lastPaste = *mouse;
        const auto to = toDrawing(snapped(mapToScene(*mouse), Qt::NoModifier));
        const auto from = middleOf(*copied);
        insertCopies(*copied, std::round(to.x - from.x) + 2 * m_pasteCount,
                     std::round(to.y - from.y) + 2 * m_pasteCount);
        return;
    }
    ++m_pasteCount;
    insertCopies(*copied, 2 * m_pasteCount, 2 * m_pasteCount);
}

void EditingCanvas::duplicate()
{
    const auto json = document::writeParts(session().drawing(), session().selection());
    if (const auto copied = document::readParts(json))
        insertCopies(*copied, 2, 2);
}

void EditingCanvas::contextMenuEvent(QContextMenuEvent* event)
{
    using C = Command;
    QPoint at = event->pos();
    if (event->reason() == QContextMenuEvent::Mouse) {
        const auto under = hits().allAt(mapToScene(at), toUnits(kPipeReach));
        const auto& chosen = session().selection();
        if (!under.empty() && std::ranges::find(chosen, under.front()) == chosen.end())
            session().select({under.front()});
        else if (under.empty())
            session().select({});
    } else if (!session().selection().empty()) {
        if (const auto* symbol = layoutShown().symbol(session().selection().front()))
            at = mapFromScene(symbol->box().bottomRight());
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
        put({C::Details, C::Insert, C::Connect});
        put({C::RotateRight, C::RotateLeft, C::Flip, C::Reroute, C::ResetLabel});
        put({C::StageExisting, C::StageAdded, C::StageRemoved});
        put({C::Cut, C::Copy, C::Paste, C::Duplicate});
        put({C::Delete, C::DeleteLoose});
    }
    menu->addActions(m_contextActions);
    menu->popup(viewport()->mapToGlobal(at));
    event->accept();
}

}  // namespace tapward::app
