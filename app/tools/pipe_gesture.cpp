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
    if ((anchor.port = hits.portAt(pointer.at, m_view.toUnits(kPortReach)))) {
        anchor.at = anchor.port->at;
    } else if (const auto near = hits.pipeAt(pointer.at, m_view.toUnits(kPipeReach))) {
        const bool snaps = m_view.snaps() && pointer.snaps();
        anchor.pipe = hits.spotOn(near->pipe, pointer.at, snaps ? kModule : 0);
        if (anchor.pipe)
            anchor.at = anchor.pipe->at;
    }
    return anchor;
}

void PipeGesture::start(Anchor from)
{
    m_from = std::move(from);
    showTargets(*m_from);
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
    const auto edit = connectAnchors(m_view.session().drawing(), *m_from, to, m_view.session().newStage());
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
    const Anchor from = *std::exchange(m_from, std::nullopt);
    m_view.setOverlay({});
    m_view.clearPreview();
    auto& session = m_view.session();
    const auto problem = session.perform(connectAnchors(session.drawing(), from, to, session.newStage()));
    if (problem) {
        Q_EMIT m_view.message(problemText(*problem, session.units()));
        return false;
    }
    Q_EMIT m_view.message({});
    // The pipe is the newest part; a tee that came with it is older.
    if (!session.lastAdded().empty())
        session.select({session.lastAdded().back()});
    return true;
}

void PipeGesture::cancel()
{
    m_from.reset();
    m_view.setOverlay({});
    m_view.clearPreview();
    Q_EMIT m_view.message({});
}

}  // namespace tapward::app
