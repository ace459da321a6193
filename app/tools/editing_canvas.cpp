// SPDX-License-Identifier: GPL-3.0-or-later
#include "tools/editing_canvas.h"

#include <QApplication>
#include <QDragEnterEvent>
#include <QDropEvent>
#include <QMimeData>
#include <QTimer>
#include <utility>

#include "document/rearrange.h"
#include "look/kind_text.h"
#include "session/message_text.h"
#include "session/mime_types.h"
#include "tools/kind_picker.h"
#include "tools/rows.h"

namespace tapward::app {

namespace {

std::string draggedKind(const QMimeData* data)
{
    if (data == nullptr || !data->hasFormat(QLatin1String(kKindMime)))
        return {};
    const std::string kind = data->data(QLatin1String(kKindMime)).toStdString();
    return parts::find(kind) != nullptr ? kind : std::string();
}

}  // namespace

EditingCanvas::EditingCanvas(Session& session, QWidget* parent)
    : CanvasView(session, parent), m_select(*this), m_place(*this), m_pipe(*this), m_drop(*this)
{
    m_place.done = [this] { cancelTool(); };
    m_pipe.done = [this] { cancelTool(); };
    setAcceptDrops(true);
    setContextMenuPolicy(Qt::DefaultContextMenu);
    addActions();
    setTool(&m_select);
    connect(this, &CanvasView::looseEndMade, this, [this](document::PartId pipe, int end) {
        // Not before the mouse has let go: the list opens at the end that hangs there.
        QTimer::singleShot(0, this, [this, pipe, end] { offerPart(pipe, end); });
    });
    connect(&session, &Session::selectionChanged, this, &EditingCanvas::updateActions);
    connect(&session, &Session::changed, this, &EditingCanvas::updateActions);
    updateActions();
}

EditingCanvas::~EditingCanvas() = default;

void EditingCanvas::perform(Result<document::Edit> edit, int burst)
{
    if (const auto problem = session().perform(std::move(edit), burst))
        Q_EMIT message(problemText(*problem, session().units()));
}

void EditingCanvas::tidyUp()
{
    std::vector<document::PartId> ids = session().selection();
    bool laid = false;
    if (ids.empty()) {
        laid = !layRows(*this);
        for (const auto& part : session().drawing().parts)
            ids.push_back(part.id);
    }
    const auto problem = session().perform(document::tidyParts(session().drawing(), ids));
    if (laid)
        Q_EMIT message(tr("Laid in two rows, which takes an Undo of its own, and tidied."));
    else if (problem)
        Q_EMIT message(problemText(*problem, session().units()));
}

void EditingCanvas::remove(bool heal)
{
    perform(document::removeParts(session().drawing(), session().selection(), heal));
}

// --- tools ---

void EditingCanvas::startPlacing(const QString& kind)
{
    const auto* what = parts::find(kind.toStdString());
    if (what == nullptr)
        return;
    if (what->isPipe) {
        startConnecting();
        return;
    }
    m_lastKind = kind;
    updateActions();
    m_place.setKind(kind.toStdString());
    setTool(&m_place);
    setFocus();
    Q_EMIT message(tr("Click where the %1 goes, or on a pipe to put it in. R turns it, Esc gives up.")
                       .arg(kindTitle(*what).toLower()));
}

void EditingCanvas::startConnecting()
{
    setTool(&m_pipe);
    setFocus();
    const auto chosen = session().selection();
    m_pipe.begin(chosen.size() == 1 ? chosen.front() : document::kNoPart);
}

void EditingCanvas::cancelTool()
{
    setTool(&m_select);
    Q_EMIT toolLaidDown();
}

void EditingCanvas::insertKind(const QString& kind)
{
    const auto chosen = session().selection();
    const auto id = kind.toStdString();
    const auto* what = parts::find(id);
    if (what == nullptr)
        return;
    m_lastKind = kind;
    if (chosen.size() == 1)
        perform(putAfter(session().drawing(), layoutOfDrawing(), chosen.front(), id, session().newStage()));
    else
        perform(putDown(session().drawing(), id, snapped(mapToScene(viewport()->rect().center()), Qt::NoModifier),
                        std::nullopt, session().newStage(), 0));
    for (const auto added : session().lastAdded())
        if (const auto* part = session().drawing().find(added); part != nullptr && part->kind == id)
            focusPart(added);
}

void EditingCanvas::insertAgain()
{
    if (m_lastKind.isEmpty())
        return;
    if (session().selection().size() == 1 || !mouseOnView())
        insertKind(m_lastKind);
    else
        startPlacing(m_lastKind);
}

KindPicker* EditingCanvas::openPicker(const QPoint& at)
{
    auto* picker = new KindPicker(this);
    picker->popup(viewport()->mapToGlobal(at));
    return picker;
}

void EditingCanvas::showPicker()
{
    QPoint at = viewport()->rect().center();
    if (const auto chosen = session().selection(); chosen.size() == 1) {
        if (const auto* symbol = layoutShown().symbol(chosen.front()))
            at = mapFromScene(symbol->box().bottomRight());
        else if (const auto* pipe = layoutShown().pipe(chosen.front()))
            at = mapFromScene(pipe->path.pointAtPercent(0.5));
    }
    connect(openPicker(at), &KindPicker::chosen, this, &EditingCanvas::insertKind);
}

void EditingCanvas::offerPart(document::PartId pipe, int end)
{
    const auto* shape = layoutShown().pipe(pipe);
    if (shape == nullptr || shape->corners.empty() || hasPreview() || !isVisible())
        return;
    const QPoint at = mapFromScene(end == 0 ? shape->corners.front() : shape->corners.back());
    connect(openPicker(at + QPoint(12, 12)), &KindPicker::chosen, this, [this, pipe, end](const QString& kind) {
        m_lastKind = kind;
        perform(putAtEnd(session().drawing(), pipe, end, kind.toStdString(), session().newStage()));
        for (const auto added : session().lastAdded())
            if (const auto* part = session().drawing().find(added); part && !document::kindOf(*part).isPipe)
                focusPart(added);
    });
    Q_EMIT message(tr("Choose what comes at the end of this pipe, or press Esc to leave it loose."));
}

// --- drag and drop from the tray ---

void EditingCanvas::dragEnterEvent(QDragEnterEvent* event)
{
    const std::string kind = draggedKind(event->mimeData());
    if (kind.empty()) {
        event->ignore();
        return;
    }
    cancelTool();
    m_drop.setKind(kind);
    event->setDropAction(Qt::CopyAction);
    event->accept();
}

void EditingCanvas::dragMoveEvent(QDragMoveEvent* event)
{
    if (draggedKind(event->mimeData()).empty()) {
        event->ignore();
        return;
    }
    const bool possible = m_drop.follow(pointerAt(event->position().toPoint(), event->modifiers()));
    event->setDropAction(Qt::CopyAction);
    event->setAccepted(possible);
}

void EditingCanvas::dragLeaveEvent(QDragLeaveEvent* event)
{
    m_drop.cancel();
    event->accept();
}

void EditingCanvas::dropEvent(QDropEvent* event)
{
    const std::string kind = draggedKind(event->mimeData());
    if (kind.empty()) {
        event->ignore();
        return;
    }
    m_drop.setKind(kind);
    if (m_drop.finish(pointerAt(event->position().toPoint(), event->modifiers()))) {
        event->setDropAction(Qt::CopyAction);
        event->accept();
        setFocus();
    } else {
        event->ignore();
    }
}

}  // namespace tapward::app
