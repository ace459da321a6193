// SPDX-License-Identifier: GPL-3.0-or-later
// What the mouse has in hand, from press to release. What that would do to the drawing: select_edits.cpp.
#include "tools/select_tool.h"

#include <algorithm>
#include <QApplication>
#include <QKeyEvent>
#include <utility>

#include "session/message_text.h"

namespace tapward::app {

namespace {

bool holds(const std::vector<document::PartId>& ids, document::PartId id)
{
    return std::ranges::find(ids, id) != ids.end();
}

}  // namespace

void SelectTool::choose(document::PartId id, Qt::KeyboardModifiers keys)
{
    auto chosen = m_view.session().selection();
    m_wasSelected = holds(chosen, id);
    if (keys & Qt::ControlModifier) {
        if (m_wasSelected)
            std::erase(chosen, id);
        else
            chosen.push_back(id);
    } else if (keys & Qt::ShiftModifier) {
        if (!m_wasSelected)
            chosen.push_back(id);
    } else if (!m_wasSelected) {
        chosen = {id};
    }
    m_view.session().select(std::move(chosen));
}

void SelectTool::press(const Pointer& pointer)
{
    if (m_gesture == Gesture::ClickedPipe)
        return;  // the second click of a pipe; its release ends it
    m_start = pointer;
    m_dragging = false;
    m_selectionBefore = m_view.session().selection();
    const auto hits = m_view.hits();
    const bool plain = !(pointer.keys & (Qt::ControlModifier | Qt::ShiftModifier));
    const double least = m_view.toUnits(kLeastTarget), reach = m_view.toUnits(kPortReach);
    if (plain && m_selectionBefore.size() == 1) {
        const auto* part = m_view.session().drawing().find(m_selectionBefore.front());
        const int end = hits.pipeEndAt(m_selectionBefore.front(), pointer.at, reach, least);
        if (end >= 0 && part->ends[static_cast<std::size_t>(end)].part != document::kNoPart) {
            m_gesture = Gesture::End;
            m_grabbed = part->id;
            m_pipe.startWithEnd(part->id, end);
            return;
        }
    }
    if (const auto port = hits.portAt(pointer.at, reach, least); port && plain) {
        m_gesture = Gesture::Port;
        Anchor from;
        from.at = port->at;
        from.port = port;
        m_pipe.start(std::move(from));
        return;
    }
    const auto spot = hits.pipeAt(pointer.at, m_view.toUnits(kPipeReach));
    if (const auto id = hits.symbolAt(pointer.at, least); id != document::kNoPart) {
        m_gesture = Gesture::Parts;
        m_grabbed = id;
        choose(id, pointer.keys);
        return;
    }
    if (const auto id = hits.labelAt(pointer.at); id != document::kNoPart) {
        m_gesture = Gesture::Label;
        m_grabbed = id;
        choose(id, pointer.keys);
        return;
    }
    if (spot) {
        m_grabbed = spot->pipe;
        m_segment = spot->segment;
        m_shape = *m_view.layoutOfDrawing().pipe(spot->pipe);
        choose(spot->pipe, pointer.keys);
        m_gesture = m_view.session().selection().size() > 1 ? Gesture::Parts : Gesture::Segment;
        return;
    }
    m_gesture = Gesture::Band;
    if (plain)
        m_view.session().select({});
}

void SelectTool::move(const Pointer& pointer, bool pressed)
{
    if (m_gesture == Gesture::ClickedPipe) {
        m_pipe.follow(pointer);
        return;
    }
    if (!pressed || m_gesture == Gesture::None) {
        hover(pointer);
        return;
    }
    if (!m_dragging && (pointer.onScreen - m_start.onScreen).manhattanLength() < QApplication::startDragDistance() / 2)
        return;
    m_dragging = true;
    follow(pointer);
}

void SelectTool::hover(const Pointer& pointer)
{
    const auto hits = m_view.hits();
    Overlay overlay;
    const double least = m_view.toUnits(kLeastTarget), reach = m_view.toUnits(kPortReach);
    const auto id = hits.symbolAt(pointer.at, least, m_view.toUnits(6));
    for (const auto& port : hits.openPorts())
        if (port.end.part == id && id != document::kNoPart)
            overlay.ports.push_back(port.at);
    m_cursor = Qt::ArrowCursor;
    const auto chosen = m_view.session().selection();
    if (chosen.size() == 1 && hits.pipeEndAt(chosen.front(), pointer.at, reach, least) >= 0) {
        m_cursor = Qt::CrossCursor;
    } else if (const auto port = hits.portAt(pointer.at, reach, least)) {
        overlay.port = port->at;
        m_cursor = Qt::CrossCursor;
    } else if (hits.symbolAt(pointer.at, least) != document::kNoPart || hits.labelAt(pointer.at) != document::kNoPart) {
        m_cursor = Qt::SizeAllCursor;
    } else if (const auto spot = hits.pipeAt(pointer.at, m_view.toUnits(kPipeReach))) {
        m_cursor = spot->level ? Qt::SizeVerCursor : Qt::SizeHorCursor;
    }
    m_view.setOverlay(std::move(overlay));
}

void SelectTool::follow(const Pointer& pointer)
{
    if (m_gesture == Gesture::Port || m_gesture == Gesture::End) {
        m_pipe.follow(pointer);
        return;
    }
    if (m_gesture == Gesture::Band) {
        Overlay overlay;
        overlay.band = QRectF(m_start.at, pointer.at).normalized();
        m_view.setOverlay(std::move(overlay));
        finishBand(pointer);
        return;
    }
    Overlay overlay;
    const auto edit = editFor(pointer, &overlay);
    const auto why = edit ? document::refusal(m_view.session().drawing(), *edit) : edit.error();
    if (!why) {
        m_view.preview(*edit);
        say(!overlay.joinTargets.empty() ? CanvasView::tr("Release to put it into this pipe.")
            : overlay.port               ? CanvasView::tr("Release to join it to this port.")
                                         : QString());
    } else {
        m_view.clearPreview();
        say(problemText(*why, m_view.session().units()));
        overlay = {};
    }
    m_view.setOverlay(std::move(overlay));
}

void SelectTool::finishBand(const Pointer& pointer)
{
    auto touched = m_view.hits().touching(QRectF(m_start.at, pointer.at).normalized());
    std::vector<document::PartId> chosen;
    if (pointer.keys & (Qt::ShiftModifier | Qt::ControlModifier))
        chosen = m_selectionBefore;
    for (const auto id : touched) {
        const bool had = holds(m_selectionBefore, id) && holds(chosen, id);
        if (had && (pointer.keys & Qt::ControlModifier))
            std::erase(chosen, id);
        else if (!holds(chosen, id))
            chosen.push_back(id);
    }
    m_view.session().select(std::move(chosen));
}

void SelectTool::release(const Pointer& pointer)
{
    if (m_gesture == Gesture::ClickedPipe) {
        m_gesture = Gesture::None;
        m_pipe.finish(pointer);
        return;
    }
    const Gesture gesture = std::exchange(m_gesture, Gesture::None);
    if (gesture == Gesture::End) {
        if (m_dragging)
            m_pipe.finish(pointer);
        else
            m_pipe.cancel();
        m_dragging = false;
        return;
    }
    if (gesture == Gesture::Port) {
        if (m_dragging) {
            m_pipe.finish(pointer);
        } else {
            // A click on a port starts a pipe that the next click ends: no dragging needed.
            m_gesture = Gesture::ClickedPipe;
            say(CanvasView::tr("Click where the pipe ends. Esc cancels."));
        }
        m_dragging = false;
        return;
    }
    if (gesture == Gesture::Band) {
        m_view.setOverlay({});
    } else if (gesture != Gesture::None && m_dragging) {
        m_gesture = gesture;
        auto edit = editFor(pointer);
        m_gesture = Gesture::None;
        m_view.clearPreview();
        // Back where it was: nothing to undo.
        document::Drawing trial = m_view.session().drawing();
        bool changes = false;
        if (edit && !document::refusal(trial, *edit)) {
            document::apply(trial, *edit);
            changes = !(trial == m_view.session().drawing());
        }
        if (changes || !edit)
            if (const auto problem = m_view.session().perform(std::move(edit)))
                say(problemText(*problem, m_view.session().units()));
    } else if (gesture != Gesture::None && m_wasSelected
               && !(pointer.keys & (Qt::ControlModifier | Qt::ShiftModifier))) {
        m_view.session().select({m_grabbed});
    }
    m_dragging = false;
    hover(pointer);
}

void SelectTool::doubleClick(const Pointer& pointer)
{
    const auto hits = m_view.hits();
    auto id = hits.symbolAt(pointer.at);
    if (id == document::kNoPart)
        id = hits.labelAt(pointer.at);
    if (id == document::kNoPart)
        if (const auto spot = hits.pipeAt(pointer.at, m_view.toUnits(kPipeReach)))
            id = spot->pipe;
    m_gesture = Gesture::None;
    if (id == document::kNoPart)
        return;
    m_view.session().select({id});
    Q_EMIT m_view.detailsRequested(id);
}

bool SelectTool::key(const QKeyEvent& event)
{
    if (event.key() != Qt::Key_Escape)
        return false;
    if (cancel())
        return true;
    if (m_view.session().selection().empty())
        return false;
    m_view.session().select({});
    return true;
}

bool SelectTool::cancel()
{
    const Gesture gesture = std::exchange(m_gesture, Gesture::None);
    m_dragging = false;
    if (m_pipe.isOn())
        m_pipe.cancel();
    m_view.clearPreview();
    m_view.setOverlay({});
    if (gesture == Gesture::Band)
        m_view.session().select(m_selectionBefore);
    return gesture != Gesture::None;
}

}  // namespace tapward::app
