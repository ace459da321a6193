// SPDX-License-Identifier: GPL-3.0-or-later
#include "tools/place_tool.h"

#include <QKeyEvent>
#include <utility>

#include "session/message_text.h"
#include "tools/pipe_gesture.h"
#include "tools/snap.h"

namespace tapward::app {

void PlaceGesture::setKind(std::string kind)
{
    m_kind = std::move(kind);
    m_turn = 0;
    m_turnedByHand = false;
}

void PlaceGesture::turn(int quarterTurns)
{
    m_turn = (m_turn + quarterTurns + 4) % 4;
    m_turnedByHand = true;
}

std::optional<PipeSpot> PlaceGesture::targetAt(const Pointer& pointer) const
{
    const auto* kind = parts::find(m_kind);
    // Only what water flows into can land in a pipe; a note or a battery may lie anywhere.
    if (kind == nullptr || kind->isPipe || kind->ports.empty())
        return std::nullopt;
    const auto hits = m_view.hits();
    const auto near = hits.pipeAt(pointer.at, m_view.toUnits(kPipeReach));
    if (!near)
        return std::nullopt;
    return hits.spotOn(near->pipe, pointer.at, m_view.snaps() && pointer.snaps() ? kModule : 0);
}

PlaceGesture::Plan PlaceGesture::planFor(const Pointer& pointer) const
{
    const auto& session = m_view.session();
    const auto& drawing = session.drawing();
    const auto* kind = parts::find(m_kind);
    const auto target = targetAt(pointer);
    if (kind == nullptr || kind->isPipe || target)
        return {putDown(drawing, m_kind, m_view.snapped(pointer.at, pointer.keys), target, session.newStage(), m_turn),
                target,
                {},
                {}};
    document::Part part;
    part.kind = m_kind;
    part.at = toDrawing(pointer.at);
    // As it was turned; a part nobody turned also turns to a port it comes near.
    Rest rest;
    int turn = m_turn;
    for (int more = 0; more < (m_turnedByHand ? 1 : 4); ++more) {
        part.turn = (m_turn + more) % 4;
        auto there = restFor(m_view, part, {}, pointer.keys);
        if (more != 0 && !there.partner)
            continue;
        rest = std::move(there);
        turn = part.turn;
        if (rest.partner)
            break;
    }
    auto edit = putDown(drawing, m_kind, rest.at, std::nullopt, session.newStage(), turn);
    if (rest.partner)
        edit = joinedTo(drawing, std::move(edit), drawing.nextId, rest.port, *rest.partner, session.newStage());
    return {std::move(edit), {}, rest.partner, rest.guides};
}

bool PlaceGesture::follow(const Pointer& pointer)
{
    const auto& session = m_view.session();
    const auto plan = planFor(pointer);
    std::optional<Problem> why;
    if (!plan.edit)
        why = plan.edit.error();
    else
        why = document::refusal(session.drawing(), *plan.edit);
    Overlay overlay;
    if (plan.target && !why)
        overlay.joinTargets.insert(plan.target->pipe);
    if (plan.partner && !why)
        overlay.port = plan.partner->at;
    overlay.guides = plan.guides;
    m_view.setOverlay(std::move(overlay));
    if (why) {
        m_view.clearPreview();
        Q_EMIT m_view.message(problemText(*why, session.units()));
        return false;
    }
    m_view.preview(*plan.edit);
    Q_EMIT m_view.message(plan.target    ? CanvasView::tr("Release to put it into this pipe.")
                          : plan.partner ? CanvasView::tr("Release to join it to this port.")
                                         : QString());
    return true;
}

bool PlaceGesture::finish(const Pointer& pointer)
{
    auto& session = m_view.session();
    auto plan = planFor(pointer);
    cancel();
    if (const auto problem = session.perform(std::move(plan.edit))) {
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
