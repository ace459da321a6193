// SPDX-License-Identifier: GPL-3.0-or-later
// Parts put down: on the canvas, into a pipe, beside another part, at a loose end.
#include <algorithm>
#include <cmath>

#include "tools/after_edit.h"
#include "tools/gestures.h"
#include "tools/sides.h"

namespace tapward::app {

namespace {

using document::Drawing;
using document::Edit;
using document::Part;
using document::PartId;

}  // namespace

Result<Edit> putDown(const Drawing& drawing, std::string_view kind, const QPointF& at,
                     const std::optional<PipeSpot>& target, document::Stage stage, int turn)
{
    const auto* what = parts::find(kind);
    if (what == nullptr)
        return problem({"There is no part of the kind {0}.", {std::string(kind)}}, "Choose a part from the list.");
    if (what->isPipe) {
        const document::Point middle = toDrawing(at);
        return document::connect(drawing, {document::kNoPart, {}, {middle.x - 4, middle.y}},
                                 {document::kNoPart, {}, {middle.x + 4, middle.y}}, stage);
    }
    if (target)
        return document::hangOnPipe(drawing, target->pipe, kind, toDrawing(target->at), target->share, stage);
    return document::placePart(drawing, kind, toDrawing(at), stage, turn);
}

Result<Edit> putAtEnd(const Drawing& drawing, PartId pipeId, int end, std::string_view kind, document::Stage stage)
{
    const auto* what = parts::find(kind);
    const Part* pipe = drawing.find(pipeId);
    if (what == nullptr || pipe == nullptr || !document::kindOf(*pipe).isPipe)
        return problem("That pipe is gone.", "Start again.");
    const auto corners = document::route(drawing, *pipe);
    const document::Point at = end == 0 ? corners.front() : corners.back();
    const document::Point before = end == 0 ? corners[1] : corners[corners.size() - 2];
    const Side want = std::abs(at.x - before.x) >= std::abs(at.y - before.y)
                          ? (at.x >= before.x ? Side::Left : Side::Right)
                          : (at.y >= before.y ? Side::Top : Side::Bottom);
    // The port that lies on the pipe's way; the first turn at which there is one.
    Part trial;
    trial.kind = std::string(kind);
    for (trial.turn = 0; trial.turn < 4; ++trial.turn)
        for (const auto& port : what->ports) {
            if (document::portSide(trial, port) != want)
                continue;
            const auto off = document::portPlace(trial, port);
            const PortSpot loose{{document::kNoPart, {}, at}, pipeId, end, toCanvas(at)};
            return joinedTo(drawing,
                            document::placePart(drawing, kind, {at.x - off.x, at.y - off.y}, stage, trial.turn),
                            drawing.nextId, std::string(port.id), loose, stage);
        }
    return document::placePart(drawing, kind, at, stage, 0);
}

Result<Edit> putAfter(const Drawing& drawing, const DrawingLayout& layout, PartId afterId, std::string_view kind,
                      document::Stage stage)
{
    const auto* what = parts::find(kind);
    const Part* before = drawing.find(afterId);
    if (what == nullptr || before == nullptr || what->isPipe)
        return putDown(drawing, kind, {0, 0}, std::nullopt, stage, 0);
    if (document::kindOf(*before).isPipe) {
        for (const int end : {1, 0})
            if (before->ends[static_cast<std::size_t>(end)].part == document::kNoPart)
                return putAtEnd(drawing, afterId, end, kind, stage);
        const auto* shape = layout.pipe(afterId);
        if (shape == nullptr)
            return problem("That pipe is not in the view shown.", "Switch the stage to Both.");
        const auto spot = HitTest(drawing, layout).spotOn(afterId, shape->path.pointAtPercent(0.5), kModule);
        return putDown(drawing, kind, spot->at, spot, stage, 0);
    }
    // Beside the first free port that has a partner, else to the right; further out until nothing is covered.
    for (const auto& port : document::kindOf(*before).ports) {
        if (drawing.pipeAt(afterId, port.id) != nullptr)
            continue;
        const Side side = document::portSide(*before, port);
        Part trial;
        trial.kind = std::string(kind);
        const parts::Port* partner = nullptr;
        for (int turn = 0; turn < 4 && partner == nullptr; ++turn) {
            trial.turn = turn;
            for (const auto& candidate : what->ports)
                if (document::portSide(trial, candidate) == opposite(side)) {
                    partner = &candidate;
                    break;
                }
        }
        if (partner == nullptr)
            continue;
        const QPointF start = toCanvas(document::portPlace(*before, port));
        const QPointF toPartner = toCanvas(document::portPlace(trial, *partner));
        for (double gap = 4; gap < 40; gap += 2) {
            const QPointF at = start + outward(side) * gap * kModule - toPartner;
            const QRectF room(at.x() - what->width * kModule / 2, at.y() - what->height * kModule / 2,
                              what->width * kModule, what->height * kModule);
            if (std::ranges::any_of(layout.symbols, [&](const SymbolShape& s) { return s.box().intersects(room); }))
                continue;
            auto placed = document::placePart(drawing, kind, toDrawing(at), stage, trial.turn);
            if (!placed)
                return placed;
            const Drawing now = after(drawing, *placed);
            const Part* part = newSymbol(drawing, now);
            if (part == nullptr)
                return placed;
            auto pipe = document::connect(now, {afterId, std::string(port.id), {}},
                                          {part->id, std::string(partner->id), {}}, stage);
            if (!pipe || document::refusal(now, *pipe))
                return placed;
            return joined(std::move(*placed), std::move(*pipe));
        }
    }
    QPointF at = toCanvas(before->at);
    const auto covered = [&](const QPointF& middle) {
        const QRectF room(middle.x() - what->width * kModule / 2, middle.y() - what->height * kModule / 2,
                          what->width * kModule, what->height * kModule);
        return std::ranges::any_of(layout.symbols, [&](const SymbolShape& s) { return s.box().intersects(room); });
    };
    do
        at.rx() += 2 * kModule;
    while (covered(at));
    at.rx() += 2 * kModule;
    return document::placePart(drawing, kind, toDrawing(at), stage, 0);
}

}  // namespace tapward::app
