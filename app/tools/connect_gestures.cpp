// SPDX-License-Identifier: GPL-3.0-or-later
// Pipes between anchors, and pipe ends taken from one place to another.
#include <algorithm>
#include <utility>

#include "tools/after_edit.h"
#include "tools/gestures.h"
#include "tools/sides.h"

namespace tapward::app {

namespace {

using document::Drawing;
using document::Edit;
using document::Part;
using document::PartId;
using document::PipeEnd;

const parts::Port* freePort(const Drawing& drawing, const Part& part, std::optional<Side> side = std::nullopt)
{
    for (const auto& port : document::kindOf(part).ports)
        if (drawing.pipeAt(part.id, port.id) == nullptr && (!side || document::portSide(part, port) == *side))
            return &port;
    return nullptr;
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

/// The hand-made bends of two pipes that become one, from the first one's far end on.
std::vector<document::Point> bendsOf(const Part& mine, int myEnd, const Part& other, int otherEnd)
{
    std::vector<document::Point> more = other.bends;
    const bool first = myEnd == 0;
    if ((otherEnd == 0) == first)
        std::reverse(more.begin(), more.end());
    std::vector<document::Point> all = mine.bends;
    all.insert(first ? all.begin() : all.end(), more.begin(), more.end());
    return all;
}

/// One loose pipe carried on to `to`; what was bent by hand stays bent.
Result<Edit> carryOn(const Drawing& drawing, const PortSpot& loose, const Anchor& to)
{
    const Part* pipe = drawing.find(loose.pipe);
    if (pipe == nullptr)
        return problem("That pipe is gone.", "Start again.");
    Part longer = *pipe;
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
    longer.bends = bendsOf(*pipe, loose.pipeEnd, *other, to.port->pipeEnd);
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

Result<Edit> moveEnd(const Drawing& drawing, PartId pipeId, int end, const Anchor& to, document::Stage stage)
{
    const Part* pipe = drawing.find(pipeId);
    if (pipe == nullptr || !document::kindOf(*pipe).isPipe)
        return problem("That pipe is gone.", "Start again.");
    const auto index = static_cast<std::size_t>(end);
    if (to.pipe && to.pipe->pipe == pipeId)
        return problem("A pipe cannot be joined to itself.", "End it on another pipe or on a part.");
    if (to.port && to.port->end.part != document::kNoPart && to.port->end == pipe->ends[index])
        return problem("The end is there already.", "Drag it on to another port.");
    // Taken off first, then carried on as any loose end.
    Part off = *pipe;
    off.ends[index] = {document::kNoPart, {}, toDrawing(to.at)};
    Edit edit;
    edit.title = {"Move end of {0}", {pipe->tag}};
    edit.steps.push_back(document::ChangePart{off});
    if (to.isEmpty())
        return edit;
    if (auto refused = document::refusal(drawing, edit))
        return tl::unexpected(*refused);
    Anchor from;
    from.at = to.at;
    from.port = PortSpot{off.ends[index], pipeId, end, to.at};
    auto rest = connectAnchors(after(drawing, edit), from, to, stage);
    if (!rest)
        return rest;
    return joined(std::move(edit), std::move(*rest));
}

Result<Edit> joinedTo(const Drawing& drawing, Result<Edit> placed, PartId part, const std::string& port,
                      const PortSpot& partner, document::Stage stage)
{
    if (!placed)
        return placed;
    if (auto refused = document::refusal(drawing, *placed))
        return tl::unexpected(*refused);
    const Drawing now = after(drawing, *placed);
    const Part* there = now.find(part);
    const auto* place = there != nullptr ? document::kindOf(*there).port(port) : nullptr;
    if (place == nullptr)
        return placed;
    Anchor mine, other;
    mine.at = toCanvas(document::portPlace(*there, *place));
    mine.port = PortSpot{{part, port, {}}, document::kNoPart, 0, mine.at};
    other.at = partner.at;
    other.port = partner;
    auto pipe = connectAnchors(now, other, mine, stage);
    if (!pipe)
        return pipe;
    return joined(std::move(*placed), std::move(*pipe));
}

}  // namespace tapward::app
