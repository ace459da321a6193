// SPDX-License-Identifier: GPL-3.0-or-later
#include "tools/pipe_gesture.h"

#include <utility>

#include "session/message_text.h"

namespace tapward::app {

Anchor PipeGesture::anchorAt(const Pointer& pointer) const
{
    const auto hits = m_view.hits();
    Anchor anchor;
    anchor.at = m_view.snapped(pointer.at, pointer.keys);
    const double reach = m_view.toUnits(kPortReach);
    const auto here = m_held ? m_held->pipe : document::kNoPart;
    // The end in hand may go back to where it came from.
    if (m_held && hits.pipeEndAt(here, pointer.at, reach) == m_held->end) {
        anchor.at = m_from->at;
        anchor.port = m_from->port;
    } else if ((anchor.port = hits.portAt(pointer.at, reach)) && !(m_held && anchor.port->pipe == here)) {
        anchor.at = anchor.port->at;
    } else if (const auto near = hits.pipeAt(pointer.at, m_view.toUnits(kPipeReach), here)) {
        anchor.port.reset();
        const bool snaps = m_view.snaps() && pointer.snaps();
        anchor.pipe = hits.spotOn(near->pipe, pointer.at, snaps ? kModule : 0);
        if (anchor.pipe)
            anchor.at = anchor.pipe->at;
    } else {
        anchor.port.reset();
    }
    return anchor;
}

void PipeGesture::start(Anchor from)
{
    m_held.reset();
    m_from = std::move(from);
    showTargets(*m_from);
}

void PipeGesture::startWithEnd(document::PartId pipe, int end)
{
    const auto* part = m_view.session().drawing().find(pipe);
    const auto* shape = m_view.layoutOfDrawing().pipe(pipe);
    if (part == nullptr || shape == nullptr)
        return;
    Anchor from;
    from.at = end == 0 ? shape->corners.front() : shape->corners.back();
    from.port = PortSpot{part->ends[static_cast<std::size_t>(end)], document::kNoPart, 0, from.at};
    m_held = Held{pipe, end};
    m_from = std::move(from);
    showTargets(*m_from);
}

Result<document::Edit> PipeGesture::editTo(const Anchor& to) const
{
    const auto& session = m_view.session();
    return m_held ? moveEnd(session.drawing(), m_held->pipe, m_held->end, to, session.newStage())
                  : connectAnchors(session.drawing(), *m_from, to, session.newStage());
}

void PipeGesture::showTargets(const Anchor& to)
{
    Overlay overlay;
    for (const auto& port : m_view.hits().openPorts())
        if (!m_from->port || !(port == *m_from->port))
            overlay.ports.push_back(port.at);
    if (to.port)
        overlay.port = to.at;
    if (to.pipe)
        overlay.joinTargets.insert(to.pipe->pipe);
    m_view.setOverlay(std::move(overlay));
}

void PipeGesture::follow(const Pointer& pointer)
{
    if (!m_from)
        return;
    const Anchor to = anchorAt(pointer);
    showTargets(to);
    const auto edit = editTo(to);
    if (edit) {
        m_view.preview(*edit);
        Q_EMIT m_view.message(to.port   ? CanvasView::tr("Release to connect.")
                              : to.pipe ? CanvasView::tr("Release to join with a tee.")
                                        : CanvasView::tr("Release to leave a loose end here. Esc cancels."));
    } else {
        m_view.clearPreview();
        Q_EMIT m_view.message(problemText(edit.error(), m_view.session().units()));
    }
}

bool PipeGesture::finish(const Pointer& pointer) { return finishAt(anchorAt(pointer)); }

bool PipeGesture::finishAt(const Anchor& to)
{
    if (!m_from)
        return false;
    const bool atHome = m_held && to.port && m_from->port && to.port->end == m_from->port->end;
    auto edit = editTo(to);
    m_from.reset();
    const auto held = std::exchange(m_held, std::nullopt);
    m_view.setOverlay({});
    m_view.clearPreview();
    if (atHome) {
        Q_EMIT m_view.message({});
        return false;
    }
    auto& session = m_view.session();
    const auto problem = session.perform(std::move(edit));
    if (problem) {
        Q_EMIT m_view.message(problemText(*problem, session.units()));
        return false;
    }
    Q_EMIT m_view.message({});
    if (held) {
        session.select({held->pipe});
        return true;
    }
    // The pipe is the newest part; a tee that came with it is older.
    if (!session.lastAdded().empty()) {
        const auto pipe = session.lastAdded().back();
        session.select({pipe});
        if (to.isEmpty())
            Q_EMIT m_view.looseEndMade(pipe, 1);
    }
    return true;
}

void PipeGesture::cancel()
{
    m_from.reset();
    m_held.reset();
    m_view.setOverlay({});
    m_view.clearPreview();
    Q_EMIT m_view.message({});
}

}  // namespace tapward::app
