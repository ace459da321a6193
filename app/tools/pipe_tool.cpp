// SPDX-License-Identifier: GPL-3.0-or-later
#include "tools/pipe_tool.h"

#include <algorithm>
#include <QApplication>
#include <QKeyEvent>
#include <utility>

#include "session/message_text.h"
#include "tools/arrow_keys.h"

namespace tapward::app {

void PipeTool::begin(document::PartId near)
{
    m_picked.reset();
    const auto ports = m_view.hits().openPorts();
    auto first = std::ranges::find_if(ports, [near](const PortSpot& p) {
        return near != document::kNoPart && (p.end.part == near || p.pipe == near);
    });
    if (first == ports.end() && near == document::kNoPart)
        first = ports.begin();
    if (first != ports.end())
        pick(*first);
    else
        Q_EMIT m_view.message(near == document::kNoPart
                                  ? CanvasView::tr("Press where the pipe starts: a port, a pipe or the empty canvas.")
                                  : CanvasView::tr("This part has no free port. Press where the pipe starts instead."));
}

QString PipeTool::nameOf(const PortSpot& port) const
{
    const auto& drawing = m_view.session().drawing();
    if (const auto* part = drawing.find(port.end.part)) {
        const auto* place = document::kindOf(*part).port(port.end.port);
        return CanvasView::tr("%1, %2").arg(QString::fromStdString(part->tag),
                                            place != nullptr ? coreText(place->title) : QString());
    }
    const auto* pipe = drawing.find(port.pipe);
    return CanvasView::tr("loose end of %1").arg(pipe != nullptr ? QString::fromStdString(pipe->tag) : QString());
}

std::vector<PortSpot> PipeTool::choices() const
{
    auto ports = m_view.hits().openPorts();
    if (m_pipe.isOn() && m_pipe.from().port)
        std::erase(ports, *m_pipe.from().port);
    return ports;
}

void PipeTool::pick(const PortSpot& port)
{
    m_picked = port;
    if (m_pipe.isOn()) {
        m_pipe.follow({port.at, m_view.mapFromScene(port.at), Qt::NoModifier});
        Q_EMIT m_view.message(
            CanvasView::tr("To %1? Enter connects, arrows choose another port, Esc cancels.").arg(nameOf(port)));
    } else {
        Overlay overlay;
        for (const auto& choice : choices())
            overlay.ports.push_back(choice.at);
        overlay.port = port.at;
        m_view.setOverlay(std::move(overlay));
        Q_EMIT m_view.message(
            CanvasView::tr("From %1? Enter takes it, arrows choose another port, Esc cancels.").arg(nameOf(port)));
    }
}

void PipeTool::step(int key)
{
    const auto ports = choices();
    if (ports.empty()) {
        Q_EMIT m_view.message(CanvasView::tr("There is no other free port. Insert a part first."));
        return;
    }
    if (isTab(key)) {
        pick(nextByTab(ports, m_picked ? std::ranges::find(ports, *m_picked) : ports.end(), key));
        return;
    }
    const QPointF at = m_picked ? m_picked->at : m_pipe.isOn() ? m_pipe.from().at : ports.front().at;
    const auto* best = nearestAhead(ports, at, key);
    if (best == nullptr && !m_picked)
        best = &ports.front();
    if (best != nullptr)
        pick(*best);
}

void PipeTool::press(const Pointer& pointer)
{
    m_picked.reset();
    m_dragged = false;
    m_start = pointer;
    m_second = m_pipe.isOn();
    if (!m_second)
        m_pipe.start(m_pipe.anchorAt(pointer));
}

void PipeTool::move(const Pointer& pointer, bool pressed)
{
    if (m_pipe.isOn() && !m_picked) {
        m_dragged |=
            pressed && (pointer.onScreen - m_start.onScreen).manhattanLength() >= QApplication::startDragDistance() / 2;
        m_pipe.follow(pointer);
        return;
    }
    if (m_picked)
        return;
    const Anchor here = m_pipe.anchorAt(pointer);
    Overlay overlay;
    for (const auto& port : choices())
        overlay.ports.push_back(port.at);
    if (here.port)
        overlay.port = here.at;
    if (here.pipe)
        overlay.joinTargets.insert(here.pipe->pipe);
    m_view.setOverlay(std::move(overlay));
}

void PipeTool::release(const Pointer& pointer)
{
    if (!m_pipe.isOn() || (!m_dragged && !m_second))
        return;  // a first click: the pipe follows the mouse until the next one
    m_pipe.finish(pointer);
    m_second = false;
}

bool PipeTool::key(const QKeyEvent& event)
{
    const auto giveUp = [this] {
        if (!cancel() && done)
            done();
    };
    const auto take = [this] {
        if (!m_picked)
            return;
        Anchor place;
        place.at = m_picked->at;
        place.port = std::exchange(m_picked, std::nullopt);
        if (!m_pipe.isOn()) {
            m_pipe.start(std::move(place));
            Q_EMIT m_view.message(CanvasView::tr("Choose the other end with the arrows or Tab, then press Enter."));
        } else if (m_pipe.finishAt(place) && done) {
            done();
        }
    };
    return walkByKey(event, giveUp, [this](int key) { step(key); }, take);
}

bool PipeTool::cancel()
{
    const bool had = m_pipe.isOn();
    m_picked.reset();
    m_second = false;
    m_pipe.cancel();
    return had;
}

}  // namespace tapward::app
