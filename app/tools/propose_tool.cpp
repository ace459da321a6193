// SPDX-License-Identifier: GPL-3.0-or-later
#include "tools/propose_tool.h"

#include <algorithm>
#include <QApplication>
#include <QKeyEvent>
#include <utility>

#include "session/assembly_text.h"
#include "session/message_text.h"
#include "tools/arrow_keys.h"
#include "tools/pipe_gesture.h"
#include "tools/rows.h"

namespace tapward::app {

void ProposeTool::say(const Problem& problem) { Q_EMIT m_view.message(problemText(problem, m_view.session().units())); }

void ProposeTool::begin()
{
    cancel();
    m_allowed = true;
    Q_EMIT m_view.message(
        CanvasView::tr("%1: drag from the hot side near the tap to where the water goes back. By keyboard: arrows "
                       "choose a place, Enter takes it. Esc gives up.")
            .arg(variantTitle(m_variant)));
}

std::optional<ProposeTool::Spot> ProposeTool::spotAt(const Pointer& pointer) const
{
    const auto hits = m_view.hits();
    if (const auto near = hits.pipeAt(pointer.at, m_view.toUnits(kPortReach))) {
        if (const auto spot = hits.spotOn(near->pipe, pointer.at, kModule))
            return Spot{{spot->pipe, spot->share, {}}, spot->at};
    }
    const auto port = hits.portAt(pointer.at, m_view.toUnits(kPortReach));
    if (port && port->end.part != document::kNoPart)
        return Spot{{document::kNoPart, 0, port->end}, port->at};
    // Anywhere on the tank is the tank.
    const auto* part = m_view.session().drawing().find(hits.symbolAt(pointer.at, m_view.toUnits(4)));
    if (m_hot && m_variant.way == document::ReturnWay::Tank && part != nullptr && part->kind == "fresh_tank")
        return Spot{{document::kNoPart, 0, {part->id, "return", {}}}, pointer.at};
    return std::nullopt;
}

std::optional<Problem> ProposeTool::why(const std::optional<Spot>& spot) const
{
    const auto& drawing = m_view.session().drawing();
    if (!m_hot) {
        return spot ? document::beginRefusal(drawing, spot->place)
                    : std::optional(Problem{"A loop begins on a hot pipe.", "Press on one, near the tap.", {}});
    }
    if (m_variant.way == document::ReturnWay::Tank) {
        const auto* part = spot ? drawing.find(spot->place.port.part) : nullptr;
        if (part == nullptr || part->kind != "fresh_tank")
            return Problem{"This loop ends in the fresh tank.", "Release on the tank.", {}};
    } else if (!spot) {
        return Problem{"A loop ends on a cold pipe.", "Release on one.", {}};
    }
    return document::endRefusal(drawing, m_hot->place, spot->place, m_variant.way);
}

void ProposeTool::show(const std::optional<Spot>& spot, bool allowed)
{
    Overlay overlay;
    if (m_hot) {
        overlay.line = {m_hot->at};
        if (spot)
            overlay.line.push_back(spot->at);
        if (m_hot->place.pipe != document::kNoPart)
            overlay.joinTargets.insert(m_hot->place.pipe);
    }
    if (spot && allowed) {
        if (spot->place.pipe != document::kNoPart)
            overlay.joinTargets.insert(spot->place.pipe);
        overlay.port = spot->at;
    }
    m_view.setOverlay(std::move(overlay));
}

bool ProposeTool::hover(const Pointer& pointer)
{
    const auto spot = spotAt(pointer);
    const auto problem = why(spot);
    m_allowed = !problem;
    show(spot, m_allowed);
    if (problem)
        say(*problem);
    else
        Q_EMIT m_view.message(m_hot ? CanvasView::tr("Release to propose the loop.")
                                    : CanvasView::tr("Press here to begin the loop, and drag to where it ends."));
    return m_allowed;
}

void ProposeTool::follow(const Pointer& pointer)
{
    hover(pointer);
    if (m_hot && !spotAt(pointer)) {
        // The line goes to the pointer even where it cannot end.
        show(Spot{{}, pointer.at}, false);
    }
}

void ProposeTool::take(const Spot& hot)
{
    m_hot = hot;
    m_picked.reset();
    show(std::nullopt, true);
    Q_EMIT m_view.message(m_variant.way == document::ReturnWay::Tank
                              ? CanvasView::tr("Now the fresh tank. Esc gives up.")
                              : CanvasView::tr("Now a place on the cold side. Esc gives up."));
}

bool ProposeTool::startAt(const Pointer& pointer)
{
    const auto spot = spotAt(pointer);
    if (const auto problem = why(spot)) {
        say(*problem);
        return false;
    }
    take(*spot);
    return true;
}

bool ProposeTool::finish(const std::optional<Spot>& cold)
{
    auto& session = m_view.session();
    if (const auto problem = why(cold)) {
        say(*problem);
        return false;
    }
    const document::Place hot = m_hot->place, end = cold->place;  // `cold` may be what cancel() forgets
    cancel();
    if (const auto problem = session.perform(document::propose(session.drawing(), hot, end, m_variant))) {
        say(*problem);
        return false;
    }
    const bool laid = !layRows(m_view);
    session.select(document::proposalParts(session.drawing()));
    m_view.showSelectionToo();
    // Its own case shows what it does.
    const auto& cases = session.drawing().cases;
    const auto run = std::ranges::find_if(cases, [](const document::Case& one) {
        return one.view == document::View::After
               && std::ranges::find(one.actions, document::ActionKind::PressButton, &document::Action::kind)
                      != one.actions.end();
    });
    if (run != cases.end())
        session.setCaseName(QString::fromStdString(run->name));
    QString told = CanvasView::tr("Proposed: %1. Lengths are estimates: measure them. Swap Variant in the "
                                  "Drawing menu tries another one.")
                       .arg(variantTitle(m_variant));
    if (laid)
        told += QLatin1Char(' ') + CanvasView::tr("The coach is laid in two rows; Undo goes back to one.");
    Q_EMIT m_view.message(told);
    if (done)
        done();
    return true;
}

void ProposeTool::press(const Pointer& pointer)
{
    m_picked.reset();
    m_dragged = false;
    m_start = pointer;
    m_second = m_hot.has_value();
    if (!m_second)
        startAt(pointer);
}

void ProposeTool::move(const Pointer& pointer, bool pressed)
{
    m_dragged |=
        pressed && (pointer.onScreen - m_start.onScreen).manhattanLength() >= QApplication::startDragDistance() / 2;
    if (pressed && !m_hot)
        return;  // why it could not begin stays to be read
    follow(pointer);
}

void ProposeTool::release(const Pointer& pointer)
{
    if (!m_hot || (!m_dragged && !m_second))
        return;  // a first click: the line follows the mouse until the next one
    // A drop that is refused gives the gesture up, a refused second click does not.
    if (!finish(spotAt(pointer)) && m_dragged && !m_second) {
        m_hot.reset();
        m_view.setOverlay({});
    }
    m_second = false;
}

// --- by keyboard ---

ProposeTool::Spot ProposeTool::middleOf(const document::Place& place) const
{
    const auto& layout = m_view.layoutOfDrawing();
    if (const auto* pipe = layout.pipe(place.pipe))
        return {place, pipe->path.pointAtPercent(std::clamp(place.share, 0.0, 1.0))};
    const auto* symbol = layout.symbol(place.port.part);
    return {place, symbol != nullptr ? symbol->at : QPointF()};
}

std::vector<ProposeTool::Spot> ProposeTool::choices() const
{
    std::vector<Spot> all;
    const auto& drawing = m_view.session().drawing();
    if (m_hot && m_variant.way == document::ReturnWay::Tank) {
        if (const auto tank = document::usualEnd(drawing, m_hot->place, m_variant.way))
            all.push_back(middleOf(*tank));
        return all;
    }
    for (const auto& part : drawing.parts) {
        const document::Place place{part.id, 0.5, {}};
        if (document::kindOf(part).isPipe
            && !(m_hot ? document::endRefusal(drawing, m_hot->place, place, m_variant.way)
                       : document::beginRefusal(drawing, place)))
            all.push_back(middleOf(place));
    }
    return all;
}

void ProposeTool::showPicked()
{
    show(m_picked, true);
    if (!m_view.mapToScene(m_view.viewport()->rect()).boundingRect().contains(m_picked->at))
        m_view.centerOn(m_picked->at);
    const auto& drawing = m_view.session().drawing();
    const auto* part =
        drawing.find(m_picked->place.pipe != document::kNoPart ? m_picked->place.pipe : m_picked->place.port.part);
    const QString tag = part != nullptr ? QString::fromStdString(part->tag) : QString();
    Q_EMIT m_view.message(
        m_hot ? CanvasView::tr("To %1? Enter proposes the loop, arrows choose another place, Esc cancels.").arg(tag)
              : CanvasView::tr("From %1? Enter takes it, arrows choose another place, Esc cancels.").arg(tag));
}

void ProposeTool::step(int key)
{
    const auto all = choices();
    if (all.empty()) {
        const auto& drawing = m_view.session().drawing();
        for (const auto& part : drawing.parts)
            if (document::kindOf(part).isPipe)
                if (const auto problem = why(middleOf({part.id, 0.5, {}}))) {
                    say(*problem);
                    return;
                }
        say({"There is no place where a loop could go.", "Draw the heater and its pipes first.", {}});
        return;
    }
    if (!m_picked) {
        // The first choice: on the hot side the farthest from the heater by drawing order, then the usual end.
        m_picked = all.back();
        if (m_hot)
            if (const auto usual = document::usualEnd(m_view.session().drawing(), m_hot->place, m_variant.way))
                m_picked = middleOf(*usual);
        showPicked();
        return;
    }
    const auto same = [this](const Spot& one) { return one.place.pipe == m_picked->place.pipe; };
    if (isTab(key))
        m_picked = nextByTab(all, std::ranges::find_if(all, same), key);
    else if (const auto* best = nearestAhead(all, m_picked->at, key))
        m_picked = *best;
    showPicked();
}

bool ProposeTool::key(const QKeyEvent& event)
{
    const auto giveUp = [this] {
        if (!cancel() && done)
            done();
    };
    const auto enter = [this] {
        if (!m_picked) {
            step(Qt::Key_Tab);
        } else if (m_hot) {
            finish(m_picked);
        } else if (const auto problem = why(m_picked)) {
            say(*problem);
        } else {
            take(*std::exchange(m_picked, std::nullopt));
            step(Qt::Key_Tab);
        }
    };
    return walkByKey(event, giveUp, [this](int key) { step(key); }, enter);
}

bool ProposeTool::cancel()
{
    const bool had = m_hot.has_value();
    m_hot.reset();
    m_picked.reset();
    m_second = m_dragged = false;
    m_allowed = true;
    m_view.setOverlay({});
    Q_EMIT m_view.message({});
    return had;
}

}  // namespace tapward::app
