// SPDX-License-Identifier: GPL-3.0-or-later
#include "tools/place_tool.h"

#include <QKeyEvent>
#include <utility>

#include "session/message_text.h"
#include "tools/pipe_gesture.h"

namespace tapward::app {

void PlaceGesture::setKind(std::string kind)
{
    m_kind = std::move(kind);
    m_turn = 0;
}

void PlaceGesture::turn(int quarterTurns) { m_turn = (m_turn + quarterTurns + 4) % 4; }

std::optional<PipeSpot> PlaceGesture::targetAt(const Pointer& pointer) const
{
    const auto* kind = parts::find(m_kind);
    // Only what water flows into can land in a pipe; a note or a battery may lie anywhere.
    if (kind == nullptr || kind->isPipe || kind->ports.empty())
        return std::nullopt;
    const auto hits = m_view.hits();
    const auto near = hits.pipeAt(pointer.at, m_view.toUnits(kPipeReach + 3));
    if (!near)
        return std::nullopt;
    return hits.spotOn(near->pipe, pointer.at, m_view.snaps() && pointer.snaps() ? kModule : 0);
}

Result<document::Edit> PlaceGesture::editFor(const Pointer& pointer) const
{
    const auto& session = m_view.session();
    return putDown(session.drawing(), m_kind, m_view.snapped(pointer.at, pointer.keys), targetAt(pointer),
                   session.newStage(), m_turn);
}

bool PlaceGesture::follow(const Pointer& pointer)
{
    const auto& session = m_view.session();
    const auto target = targetAt(pointer);
    auto edit = editFor(pointer);
    std::optional<Problem> why;
    if (!edit)
        why = edit.error();
    else
        why = document::refusal(session.drawing(), *edit);
    Overlay overlay;
    if (target && !why)
        overlay.joinTargets.insert(target->pipe);
    m_view.setOverlay(std::move(overlay));
    if (why) {
        m_view.clearPreview();
        Q_EMIT m_view.message(problemText(*why, session.units()));
        return false;
    }
    m_view.preview(*edit);
    Q_EMIT m_view.message(target ? CanvasView::tr("Release to put it into this pipe.") : QString());
    return true;
}

bool PlaceGesture::finish(const Pointer& pointer)
{
    auto& session = m_view.session();
    auto edit = editFor(pointer);
    cancel();
    if (const auto problem = session.perform(std::move(edit))) {
        Q_EMIT m_view.message(problemText(*problem, session.units()));
        return false;
    }
    std::vector<document::PartId> chosen;
    for (const auto id : session.lastAdded())
        if (const auto* part = session.drawing().find(id); part != nullptr && part->kind == m_kind)
            chosen.push_back(id);
    session.select(std::move(chosen));
    return true;
}

void PlaceGesture::cancel()
{
    m_view.setOverlay({});
    m_view.clearPreview();
    Q_EMIT m_view.message({});
}

void PlaceTool::move(const Pointer& pointer, bool)
{
    m_last = pointer;
    m_allowed = m_gesture.follow(pointer);
}

void PlaceTool::release(const Pointer& pointer)
{
    const bool placed = m_gesture.finish(pointer);
    if (placed && !(pointer.keys & Qt::ShiftModifier) && done)
        done();
}

bool PlaceTool::key(const QKeyEvent& event)
{
    if (event.key() == Qt::Key_Escape) {
        cancel();
        if (done)
            done();
        return true;
    }
    if (event.key() == Qt::Key_R) {
        m_gesture.turn(event.modifiers() & Qt::ShiftModifier ? -1 : 1);
        if (m_last)
            m_gesture.follow(*m_last);
        return true;
    }
    return false;
}

bool PlaceTool::cancel()
{
    m_last.reset();
    m_gesture.cancel();
    return true;
}

}  // namespace tapward::app
