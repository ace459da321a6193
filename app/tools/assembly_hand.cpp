// SPDX-License-Identifier: GPL-3.0-or-later
#include "tools/assembly_hand.h"

#include <QDragEnterEvent>
#include <QDropEvent>
#include <QKeyEvent>
#include <QMimeData>
#include <utility>

#include "session/assembly_text.h"
#include "session/message_text.h"
#include "session/mime_types.h"
#include "session/own_assemblies.h"

namespace tapward::app {

void OwnAssemblyTool::setParts(std::vector<document::Part> parts)
{
    m_parts = std::move(parts);
    m_at.reset();
    QRectF box;
    for (const auto& part : m_parts)
        if (!document::kindOf(part).isPipe)
            box |= QRectF(toCanvas(part.at), QSizeF(1, 1));
        else
            for (const auto& end : part.ends)
                if (end.part == document::kNoPart)
                    box |= QRectF(toCanvas(end.loose), QSizeF(1, 1));
    m_middle = box.center();
}

Result<document::Edit> OwnAssemblyTool::editFor(const QPointF& at) const
{
    const QPointF by = (at - m_middle) / kModule;
    return document::pasteParts(m_view.session().drawing(), m_parts, std::round(by.x()), std::round(by.y()));
}

bool OwnAssemblyTool::follow(const QPointF& at)
{
    m_at = at;
    const auto edit = editFor(at);
    std::optional<Problem> why;
    if (!edit)
        why = edit.error();
    else
        why = document::refusal(m_view.session().drawing(), *edit);
    if (why) {
        m_view.clearPreview();
        Q_EMIT m_view.message(problemText(*why, m_view.session().units()));
        return false;
    }
    m_view.preview(*edit);
    return true;
}

bool OwnAssemblyTool::finish(const QPointF& at)
{
    auto& session = m_view.session();
    auto edit = editFor(at);
    cancel();
    if (const auto problem = session.perform(std::move(edit))) {
        Q_EMIT m_view.message(problemText(*problem, session.units()));
        return false;
    }
    session.select(session.lastAdded());
    if (done)
        done();
    return true;
}

bool OwnAssemblyTool::key(const QKeyEvent& event)
{
    switch (event.key()) {
    case Qt::Key_Escape:
        cancel();
        if (done)
            done();
        return true;
    case Qt::Key_Return:
    case Qt::Key_Enter:
        finish(m_at.value_or(m_view.snapped(m_view.mapToScene(m_view.viewport()->rect().center()), Qt::NoModifier)));
        return true;
    case Qt::Key_Left:
    case Qt::Key_Right:
    case Qt::Key_Up:
    case Qt::Key_Down: {
        const double step = 2 * kModule;
        QPointF at =
            m_at.value_or(m_view.snapped(m_view.mapToScene(m_view.viewport()->rect().center()), Qt::NoModifier));
        at += event.key() == Qt::Key_Left    ? QPointF(-step, 0)
              : event.key() == Qt::Key_Right ? QPointF(step, 0)
              : event.key() == Qt::Key_Up    ? QPointF(0, -step)
                                             : QPointF(0, step);
        follow(at);
        return true;
    }
    default:
        return false;
    }
}

bool OwnAssemblyTool::cancel()
{
    m_at.reset();
    m_view.clearPreview();
    Q_EMIT m_view.message({});
    return true;
}

AssemblyHand::AssemblyHand(CanvasView& view, std::function<void()> rest)
    : QObject(&view), m_view(view), m_rest(std::move(rest)), m_propose(view), m_own(view)
{
    m_propose.done = m_rest;
    m_own.done = m_rest;
    view.viewport()->installEventFilter(this);
}

bool AssemblyHand::takeUp(const QString& what)
{
    if (what.startsWith(QLatin1String("variant:"))) {
        const auto variant = document::variantNamed(what.mid(8).toStdString());
        if (!variant)
            return false;
        m_dragsOwn = false;
        m_rest();
        m_propose.setVariant(*variant);
        m_propose.begin();
        return true;
    }
    if (!what.startsWith(QLatin1String("own:")))
        return false;
    auto parts = OwnAssemblies().parts(what.mid(4));
    if (!parts) {
        Q_EMIT m_view.message(problemText(parts.error(), m_view.session().units()));
        return false;
    }
    m_dragsOwn = true;
    m_rest();
    m_own.setParts(std::move(*parts));
    return true;
}

void AssemblyHand::startVariant(const QString& id)
{
    if (!takeUp(QStringLiteral("variant:") + id))
        return;
    m_view.setTool(&m_propose);
    m_view.setFocus();
    m_propose.begin();
}

void AssemblyHand::startOwn(const QString& file)
{
    if (!takeUp(QStringLiteral("own:") + file))
        return;
    m_view.setTool(&m_own);
    m_view.setFocus();
    Q_EMIT m_view.message(tr("Click where it goes, or move it with the arrows and press Enter. Esc gives up."));
}

void AssemblyHand::swapFor(const document::Variant& variant)
{
    m_rest();
    auto& session = m_view.session();
    if (const auto problem = session.perform(document::swapVariant(session.drawing(), variant))) {
        Q_EMIT m_view.message(problemText(*problem, session.units()));
        return;
    }
    session.select(document::proposalParts(session.drawing()));
    m_view.showSelectionToo();
    Q_EMIT m_view.message(tr("Swapped for: %1.").arg(variantTitle(variant)));
}

bool AssemblyHand::eventFilter(QObject* watched, QEvent* event)
{
    const auto dragged = [](const QDropEvent* drop) {
        return drop->mimeData() != nullptr && drop->mimeData()->hasFormat(QLatin1String(kAssemblyMime));
    };
    const auto pointer = [this](const QDropEvent* drop) {
        return m_view.pointerAt(drop->position().toPoint(), drop->modifiers());
    };
    const auto answer = [](QDropEvent* drop, bool possible) {
        drop->setDropAction(Qt::CopyAction);
        drop->setAccepted(possible);
        return true;
    };
    switch (event->type()) {
    case QEvent::DragEnter: {
        auto* enter = static_cast<QDragEnterEvent*>(event);
        if (dragged(enter))
            return answer(enter, takeUp(QString::fromUtf8(enter->mimeData()->data(QLatin1String(kAssemblyMime)))));
        break;
    }
    case QEvent::DragMove: {
        auto* move = static_cast<QDragMoveEvent*>(event);
        if (dragged(move)) {
            const Pointer at = pointer(move);
            return answer(move, m_dragsOwn ? m_own.follow(m_view.snapped(at.at, at.keys)) : m_propose.hover(at));
        }
        break;
    }
    case QEvent::DragLeave:
        // Which drag leaves is not said; giving up what is not in hand does nothing.
        if (m_view.tool() != &m_propose)
            m_propose.cancel();
        break;
    case QEvent::Drop: {
        auto* drop = static_cast<QDropEvent*>(event);
        if (dragged(drop)) {
            const Pointer at = pointer(drop);
            if (m_dragsOwn)
                return answer(drop, m_own.finish(m_view.snapped(at.at, at.keys)));
            // Dropped on the hot side: the line now follows the mouse to the cold side.
            m_view.setTool(&m_propose);
            m_view.setFocus();
            const bool begun = m_propose.startAt(at);
            if (!begun)
                m_rest();
            return answer(drop, begun);
        }
        break;
    }
    default:
        break;
    }
    return QObject::eventFilter(watched, event);
}

}  // namespace tapward::app
