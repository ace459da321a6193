// SPDX-License-Identifier: GPL-3.0-or-later
// Bending pipes by hand, forgetting the bends, moving labels.
#include <algorithm>
#include <cmath>

#include "tools/gestures.h"

namespace tapward::app {

namespace {

using document::Drawing;
using document::Edit;
using document::Part;
using document::PartId;

/// Corners without repeats and without those that lie in line with their neighbours.
std::vector<QPointF> tidied(const std::vector<QPointF>& corners)
{
    std::vector<QPointF> result;
    for (const auto& corner : corners) {
        if (!result.empty() && std::abs(result.back().x() - corner.x()) < 0.01
            && std::abs(result.back().y() - corner.y()) < 0.01)
            continue;
        while (result.size() >= 2) {
            const QPointF a = result[result.size() - 2], b = result.back();
            const double turn = (b.x() - a.x()) * (corner.y() - b.y()) - (b.y() - a.y()) * (corner.x() - b.x());
            if (std::abs(turn) > 0.01)
                break;
            result.pop_back();
        }
        result.push_back(corner);
    }
    return result;
}

}  // namespace

Result<Edit> shiftSegment(const Drawing& drawing, const PipeShape& shape, std::size_t segment, double by)
{
    const Part* pipe = drawing.find(shape.id);
    if (pipe == nullptr || segment + 1 >= shape.corners.size())
        return problem("That pipe is gone.", "Start again.");
    const QPointF a = shape.corners[segment], b = shape.corners[segment + 1];
    const bool level = std::abs(a.y() - b.y()) < 0.01;
    const QPointF shift = level ? QPointF(0, by) : QPointF(by, 0);
    const double length = std::abs(a.x() - b.x()) + std::abs(a.y() - b.y());
    const QPointF way = length > 0 ? (b - a) / length : QPointF(1, 0);
    const double stub = std::min(kModule, length / 3);

    std::vector<QPointF> corners(shape.corners.begin(), shape.corners.begin() + static_cast<std::ptrdiff_t>(segment));
    // A piece that ends on a port leaves a short straight stub there.
    if (segment == 0) {
        corners.push_back(a);
        corners.push_back(a + way * stub);
        corners.push_back(a + way * stub + shift);
    } else {
        corners.push_back(a + shift);
    }
    if (segment + 2 == shape.corners.size()) {
        corners.push_back(b - way * stub + shift);
        corners.push_back(b - way * stub);
        corners.push_back(b);
    } else {
        corners.push_back(b + shift);
        corners.insert(corners.end(), shape.corners.begin() + static_cast<std::ptrdiff_t>(segment) + 2,
                       shape.corners.end());
    }
    corners = tidied(corners);

    Part bent = *pipe;
    bent.bends.clear();
    std::vector<QPointF> own;
    for (const auto& corner : document::route(drawing, bent))
        own.push_back(toCanvas(corner));
    if (tidied(own) != corners)
        for (std::size_t i = 1; i + 1 < corners.size(); ++i)
            bent.bends.push_back(toDrawing(corners[i]));
    Edit edit;
    edit.title = {"Bend {0}", {pipe->tag}};
    edit.steps.push_back(document::ChangePart{bent});
    return edit;
}

Result<Edit> rerouted(const Drawing& drawing, const std::vector<PartId>& ids)
{
    Edit edit;
    edit.title = "Re-route pipes";
    for (const auto id : ids)
        if (const Part* pipe = drawing.find(id); pipe != nullptr && !pipe->bends.empty()) {
            Part straight = *pipe;
            straight.bends.clear();
            edit.steps.push_back(document::ChangePart{straight});
        }
    if (edit.steps.empty())
        return problem("No pipe with hand-made bends is selected.", "Select a pipe that you bent by hand.");
    return edit;
}

Result<Edit> labelMoved(const Drawing& drawing, PartId id, std::optional<document::Point> offset)
{
    const Part* part = drawing.find(id);
    if (part == nullptr)
        return problem("That part is gone.", "Start again.");
    Part moved = *part;
    moved.label = offset;
    Edit edit;
    edit.title = {"Move label of {0}", {part->tag}};
    edit.steps.push_back(document::ChangePart{moved});
    return edit;
}

}  // namespace tapward::app
