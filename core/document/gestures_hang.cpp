// SPDX-License-Identifier: GPL-3.0-or-later
// A part with one port dropped on a pipe: a tee in the pipe, the part beside it, a pipe between.
#include <optional>

#include "document/gesture.h"
#include "document/sheet.h"

namespace tapward::document {
namespace {

using parts::Side;

constexpr double kBetween = 3;  ///< modules of pipe from the tee's branch to the part

Side across(Side side)
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

Point toward(Side side)
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

}  // namespace

Result<Edit> hangOnPipe(const Drawing& drawing, PartId pipeId, std::string_view kindId, Point at, double share,
                        Stage stage)
{
    const parts::PartKind* kind = parts::find(kindId);
    if (!kind || kind->ports.size() != 1) {
        return splitPipe(drawing, pipeId, kindId, at, share, stage);  // which says why it cannot be
    }
    auto split = teeOff(drawing, pipeId, at, share, stage);
    if (!split) {
        return split;
    }
    Gesture gesture(drawing);
    for (Step& step : split->steps) {
        gesture.make(std::move(step));
    }
    if (gesture.failed()) {
        return gesture.finish({});
    }
    const Part tee = *gesture.now().find(drawing.nextId);
    const parts::Port& branch = *kindOf(tee).port("branch");
    const Sheet sheet(drawing);
    // Either side of the pipe, the part turned to it: as it stands upright and on free ground, if there is such a place.
    struct Choice {
        Part tee, part;
        int cost;
    };
    std::optional<Choice> best;
    for (const bool otherSide : {false, true}) {
        Choice choice{tee, {}, 0};
        if (otherSide) {  // mirrored and turned by half: its run stays where it is
            choice.tee.turn = (tee.turn + 2) & 3;
            choice.tee.flipped = !tee.flipped;
        }
        const Side out = portSide(choice.tee, branch);
        const Point from = portPlace(choice.tee, branch), way = toward(out);
        choice.part.kind = kind->id;
        choice.part.stage = stage;
        while (choice.part.turn < 3 && portSide(choice.part, kind->ports[0]) != across(out)) {
            ++choice.part.turn;
        }
        const Point port = portPlace(choice.part, kind->ports[0]);
        choice.part.at = {from.x + kBetween * way.x - port.x, from.y + kBetween * way.y - port.y};
        choice.cost = (choice.part.turn ? 1 : 0) + (sheet.isFree(boxOf(choice.part).grown(0.5)) ? 0 : 2);
        if (!best || choice.cost < best->cost) {
            best = std::move(choice);
        }
    }
    Part part = std::move(best->part);
    part.id = gesture.now().nextId;
    part.tag = gesture.now().freeTag(*kind);
    const PartId hung = part.id;
    if (!(best->tee == tee)) {
        gesture.make(ChangePart{std::move(best->tee)});
    }
    gesture.make(AddPart{std::move(part)});
    if (!gesture.failed()) {
        auto joined = connect(gesture.now(), {tee.id, "branch", {}}, {hung, std::string(kind->ports[0].id), {}}, stage);
        if (!joined) {
            return joined;
        }
        for (Step& step : joined->steps) {
            gesture.make(std::move(step));
        }
    }
    return gesture.finish({"Hang {0} on {1}", {kind->title, drawing.find(pipeId)->tag}});
}

}  // namespace tapward::document
