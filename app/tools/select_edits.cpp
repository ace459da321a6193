// SPDX-License-Identifier: GPL-3.0-or-later
// What a drag of parts, of a piece of pipe or of a label would do to the drawing.
#include <algorithm>
#include <cmath>

#include "document/rearrange.h"
#include "tools/select_tool.h"
#include "tools/snap.h"

namespace tapward::app {

document::PartId SelectTool::freeSymbol() const
{
    const auto& drawing = m_view.session().drawing();
    const auto* part = drawing.find(m_grabbed);
    if (part == nullptr || m_view.session().selection().size() != 1 || !document::kindOf(*part).goesInLine())
        return document::kNoPart;
    for (const auto& port : document::kindOf(*part).ports)
        if (drawing.pipeAt(part->id, port.id) != nullptr)
            return document::kNoPart;
    return part->id;
}

Result<document::Edit> SelectTool::moveFor(const Pointer& pointer, Overlay* overlay) const
{
    const auto& session = m_view.session();
    const auto& drawing = session.drawing();
    const auto hits = m_view.hits();
    const auto chosen = session.selection();
    const QPointF way = pointer.at - m_start.at;
    const auto* symbol = m_view.layoutOfDrawing().symbol(m_grabbed);
    if (symbol == nullptr) {
        const QPointF middle = m_view.snapped(m_start.at, Qt::NoModifier);
        const QPointF by = m_view.snapped(middle + way, pointer.keys) - middle;
        return document::moveParts(drawing, chosen, by.x() / kModule, by.y() / kModule);
    }
    if (const auto id = freeSymbol(); id != document::kNoPart)
        if (const auto near = hits.pipeAt(symbol->at + way, m_view.toUnits(kPipeReach))) {
            const auto spot =
                hits.spotOn(near->pipe, symbol->at + way, m_view.snaps() && pointer.snaps() ? kModule : 0);
            auto edit = document::putIntoPipe(drawing, id, near->pipe, toDrawing(spot->at), spot->share);
            if (overlay != nullptr && edit)
                overlay->joinTargets.insert(near->pipe);
            return edit;
        }
    // The grabbed part comes to rest; the others keep their distance to it.
    document::Part part = *drawing.find(m_grabbed);
    part.at = toDrawing(symbol->at + way);
    const Rest rest = restFor(m_view, part, chosen, pointer.keys);
    const QPointF by = rest.at - symbol->at;
    auto edit = document::moveParts(drawing, chosen, by.x() / kModule, by.y() / kModule);
    if (overlay != nullptr)
        overlay->guides = rest.guides;
    if (!rest.partner || chosen.size() != 1)
        return edit;
    if (overlay != nullptr)
        overlay->port = rest.partner->at;
    return joinedTo(drawing, std::move(edit), m_grabbed, rest.port, *rest.partner, session.newStage());
}

Result<document::Edit> SelectTool::editFor(const Pointer& pointer, Overlay* overlay) const
{
    const auto& drawing = m_view.session().drawing();
    const QPointF way = pointer.at - m_start.at;
    if (m_gesture == Gesture::Parts)
        return moveFor(pointer, overlay);
    if (m_gesture == Gesture::Segment) {
        const QPointF a = m_shape.corners[m_segment];
        const bool level = std::abs(a.y() - m_shape.corners[m_segment + 1].y()) < 0.01;
        const QPointF to = m_view.snapped(a + way, pointer.keys);
        return shiftSegment(drawing, m_shape, m_segment, level ? to.y() - a.y() : to.x() - a.x());
    }
    const auto& layout = m_view.layoutOfDrawing();
    const auto label = std::ranges::find(layout.labels, m_grabbed, &LabelShape::id);
    if (label == layout.labels.end())
        return problem("That label is gone.", "Start again.");
    const auto* symbol = layout.symbol(m_grabbed);
    const auto* pipe = layout.pipe(m_grabbed);
    const QPointF origin = symbol != nullptr ? symbol->at
                           : pipe != nullptr ? pipe->path.pointAtPercent(0.5)
                                             : QPointF();
    return labelMoved(drawing, m_grabbed, toDrawing(label->box.center() + way - origin));
}

}  // namespace tapward::app
