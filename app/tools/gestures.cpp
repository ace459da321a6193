// SPDX-License-Identifier: GPL-3.0-or-later
#include "tools/gestures.h"

#include <algorithm>
#include <cmath>

namespace tapward::app {

namespace {

using document::Drawing;
using document::Edit;
using document::Part;
using document::PartId;
using document::PipeEnd;
using parts::Side;

Drawing after(const Drawing& drawing, const Edit& edit)
{
    Drawing copy = drawing;
    document::apply(copy, edit);
    return copy;
}

/// The new symbol in `now` that was not in `before`, if there is one.
const Part* newSymbol(const Drawing& before, const Drawing& now)
{
    for (const auto& part : now.parts)
        if (part.id >= before.nextId && !document::kindOf(part).isPipe)
            return &part;
    return nullptr;
}

const parts::Port* freePort(const Drawing& drawing, const Part& part, std::optional<Side> side = std::nullopt)
{
    for (const auto& port : document::kindOf(part).ports)
        if (drawing.pipeAt(part.id, port.id) == nullptr && (!side || document::portSide(part, port) == *side))
            return &port;
    return nullptr;
}

QPointF outward(Side side)
{
    switch (side) {
    case Side::Left:
        return {-1, 0};
    case Side::Right:
        return {1, 0};
    case Side::Top:
        return {0, -1};
    case Side::Bottom:
        break;
    }
    return {0, 1};
}

Side opposite(Side side)
{
    switch (side) {
    case Side::Left:
        return Side::Right;
    case Side::Right:
        return Side::Left;
    case Side::Top:
        return Side::Bottom;
    case Side::Bottom:
        break;
    }
    return Side::Top;
}

/// Turns the branch of a tee that was just put in toward `toward`: mirrored across its own run, so that
/// the two pipes of the run keep their ports.
Edit facing(const Drawing& drawing, const Part& tee, const parts::Port& branch, const QPointF& toward)
{
    const QPointF way = outward(document::portSide(tee, branch));
    const QPointF there = toward - toCanvas(tee.at);
    if (QPointF::dotProduct(way, there) >= 0)
        return {};
    Part turned = tee;
    turned.turn = (tee.turn + 2) % 4;
    turned.flipped = !tee.flipped;
    Edit edit;
    edit.steps.push_back(document::ChangePart{turned});
    return document::refusal(drawing, edit) ? Edit{} : edit;
}

/// The same anchor as a port: the tee that makes it one, and the drawing with that tee.
struct Prepared {
    Edit edit;
    Drawing drawing;
    Anchor anchor;
};

Result<Prepared> prepare(const Drawing& drawing, const Anchor& anchor, const QPointF& toward, document::Stage stage)
{
    if (!anchor.pipe)
        return Prepared{{}, drawing, anchor};
    auto tee = document::teeOff(drawing, anchor.pipe->pipe, toDrawing(anchor.pipe->at), anchor.pipe->share, stage);
    if (!tee)
        return tl::unexpected(tee.error());
    if (auto refused = document::refusal(drawing, *tee))
        return tl::unexpected(*refused);
    Drawing now = after(drawing, *tee);
    const Part* part = newSymbol(drawing, now);
    const parts::Port* branch = part != nullptr ? freePort(now, *part) : nullptr;
    if (branch == nullptr)
        return problem("No tee can be put in here.", "Choose another place on the pipe.");
    Edit edit = *tee;
    const PartId id = part->id;
    if (Edit turn = facing(now, *part, *branch, toward); !turn.steps.empty()) {
        document::apply(now, turn);
        edit = joined(std::move(edit), std::move(turn));
    }
    Anchor port;
    port.at = toCanvas(document::portPlace(*std::as_const(now).find(id), *branch));
    port.port = PortSpot{{id, std::string(branch->id), {}}, document::kNoPart, 0, port.at};
    return Prepared{std::move(edit), std::move(now), port};
}

PipeEnd endOf(const Anchor& anchor)
{
    if (anchor.port && anchor.port->pipe == document::kNoPart)
        return anchor.port->end;
    return {document::kNoPart, {}, toDrawing(anchor.at)};
}

/// One loose pipe carried on to `to`.
Result<Edit> carryOn(const Drawing& drawing, const PortSpot& loose, const Anchor& to)
{
    const Part* pipe = drawing.find(loose.pipe);
    if (pipe == nullptr)
        return problem("That pipe is gone.", "Start again.");
    Part longer = *pipe;
    longer.bends.clear();
    Edit edit;
    edit.title = {"Connect {0}", {pipe->tag}};
    auto& end = longer.ends[static_cast<std::size_t>(loose.pipeEnd)];
    if (!to.port || to.port->pipe == document::kNoPart) {
        end = endOf(to);
        edit.steps.push_back(document::ChangePart{longer});
        return edit;
    }
    const Part* other = drawing.find(to.port->pipe);
    if (other == nullptr || other->id == pipe->id)
        return problem("The two ends of one pipe cannot be joined to each other.",
                       "Connect the end to a part or to another pipe.");
    // Two loose pipes become one: what is counted along a pipe adds up.
    end = other->ends[static_cast<std::size_t>(1 - to.port->pipeEnd)];
    edit.steps.push_back(document::RemovePart{other->id});
    edit.steps.push_back(document::ChangePart{longer});
    const auto mine = document::values(*pipe), others = document::values(*other);
    for (const auto& field : document::kindOf(*pipe).fields)
        if (field.divides)
            edit.steps.push_back(document::SetField{
                pipe->id, std::string(field.key),
                parts::Entry{mine.number(field.key) + others.number(field.key), mine.basis(field.key)}});
    return edit;
}

Result<Edit> connectPrepared(const Drawing& drawing, const Anchor& from, const Anchor& to, document::Stage stage)
{
    if (from.port && from.port->pipe != document::kNoPart)
        return carryOn(drawing, *from.port, to);
    if (to.port && to.port->pipe != document::kNoPart)
        return carryOn(drawing, *to.port, from);
    return document::connect(drawing, endOf(from), endOf(to), stage);
}

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

Edit joined(Edit first, Edit second)
{
    if (first.title.empty())
        first.title = second.title;
    first.steps.insert(first.steps.end(), second.steps.begin(), second.steps.end());
    return first;
}

Result<Edit> connectAnchors(const Drawing& drawing, const Anchor& from, const Anchor& to, document::Stage stage)
{
    if (from.pipe && to.pipe && from.pipe->pipe == to.pipe->pipe)
        return problem("A pipe cannot be joined to itself.", "End the new pipe on another pipe or on a part.");
    if (from.port && to.port && from.port->end.part != document::kNoPart && from.port->end == to.port->end)
        return problem("A pipe needs two ends.", "Drag on to another port.");
    auto first = prepare(drawing, from, to.at, stage);
    if (!first)
        return tl::unexpected(first.error());
    auto second = prepare(first->drawing, to, first->anchor.at, stage);
    if (!second)
        return tl::unexpected(second.error());
    auto pipe = connectPrepared(second->drawing, first->anchor, second->anchor, stage);
    if (!pipe)
        return pipe;
    if (auto refused = document::refusal(second->drawing, *pipe))
        return tl::unexpected(*refused);
    Edit all;
    all.title = pipe->title;
    return joined(joined(joined(std::move(all), std::move(first->edit)), std::move(second->edit)), std::move(*pipe));
}

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
        return document::splitPipe(drawing, target->pipe, kind, toDrawing(target->at), target->share, stage);
    return document::placePart(drawing, kind, toDrawing(at), stage, turn);
}

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

Result<Edit> putAfter(const Drawing& drawing, const DrawingLayout& layout, PartId afterId, std::string_view kind,
                      document::Stage stage)
{
    const auto* what = parts::find(kind);
    const Part* before = drawing.find(afterId);
    if (what == nullptr || before == nullptr || what->isPipe)
        return putDown(drawing, kind, {0, 0}, std::nullopt, stage, 0);
    if (document::kindOf(*before).isPipe) {
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
