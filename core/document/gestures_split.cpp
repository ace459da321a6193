// SPDX-License-Identifier: GPL-3.0-or-later
// Cutting a part into a pipe. Healing the pipe when the part goes: gestures_heal.cpp.
#include <algorithm>
#include <cmath>
#include <limits>
#include <optional>
#include <string>
#include <tuple>
#include <utility>

#include "document/edit.h"
#include "document/gesture.h"
#include "document/rearrange.h"

namespace tapward::document {
namespace {

/// A place on a pipe's line.
struct OnLine {
    std::size_t segment = 0;  ///< between corners segment and segment + 1
    Point at;
    int turn = 0;             ///< quarter turns clockwise from rightward of the line's direction there
};

OnLine nearest(const std::vector<Point>& corners, Point wanted)
{
    OnLine best;
    double least = std::numeric_limits<double>::infinity();
    for (std::size_t i = 0; i + 1 < corners.size(); ++i) {
        const Point& a = corners[i];
        const Point& b = corners[i + 1];
        const double dx = b.x - a.x;
        const double dy = b.y - a.y;
        const double length = std::hypot(dx, dy);
        if (length <= 0 && corners.size() > 2) {
            continue;
        }
        const double along =
            length > 0 ? std::clamp(((wanted.x - a.x) * dx + (wanted.y - a.y) * dy) / (length * length), 0.0, 1.0)
                       : 0.0;
        const Point foot{a.x + along * dx, a.y + along * dy};
        const double distance = std::hypot(wanted.x - foot.x, wanted.y - foot.y);
        if (distance < least - 1e-9) {
            least = distance;
            const int turn = std::abs(dx) >= std::abs(dy) ? (dx >= 0 ? 0 : 2) : (dy >= 0 ? 1 : 3);
            best = {i, foot, turn};
        }
    }
    // On the grid along the line; across it the line decides.
    if (best.turn % 2 == 0) {
        best.at.x = std::round(best.at.x);
    } else {
        best.at.y = std::round(best.at.y);
    }
    return best;
}

/// The hand-made bends on either side of a place. Corners made by route() are not bends.
std::pair<std::vector<Point>, std::vector<Point>> divideBends(const std::vector<Point>& corners,
                                                              const std::vector<Point>& bends, const OnLine& place)
{
    std::pair<std::vector<Point>, std::vector<Point>> divided;
    std::size_t corner = 0;
    for (const Point& bend : bends) {
        while (corner < corners.size() && !(corners[corner] == bend)) {
            ++corner;
        }
        (corner <= place.segment ? divided.first : divided.second).push_back(bend);
    }
    return divided;
}

/// Splits the fields that divide. Of a length l the first part is rounded to a step of l's own last binary
/// digit; then both parts are exact and their sum is l again to the last bit.
void divideFields(const parts::PartKind& kind, const Part& whole, double share, Part& first, Part& second)
{
    for (const parts::Field& field : kind.fields) {
        if (!field.divides) {
            continue;
        }
        const parts::Values held = values(whole);
        const double all = held.number(field.key);
        const double part = field.type == parts::FieldType::Count ? std::round(share * all) : (all + share * all) - all;
        const std::string key(field.key);
        if (!held.isSet(field.key) && all == 0) {
            continue;
        }
        const parts::Basis basis = held.basis(field.key);
        first.entries[key] = {std::min(part, all), basis};
        second.entries[key] = {all - std::min(part, all), basis};
    }
}

/// What the pipe and the part dropped on it both have (tube size, kind of fittings) goes over to the part.
void inheritChoices(const Part& pipe, Part& part)
{
    const parts::PartKind& pipeKind = kindOf(pipe);
    for (const parts::Field& field : kindOf(part).fields) {
        const parts::Field* same = pipeKind.field(field.key);
        const auto held = pipe.entries.find(field.key);
        if (same && field.type == parts::FieldType::Choice && same->choices.size() == field.choices.size()
            && held != pipe.entries.end()) {
            part.entries.insert(*held);
        }
    }
}

/// The two halves of a pipe with this part between them; the second one still wants an id and a tag.
std::pair<Part, Part> halves(const Part& pipe, const std::vector<Point>& corners, const OnLine& place, double share,
                             const Part& between)
{
    const parts::PartKind& kind = kindOf(between);
    Part first = pipe;
    Part second = pipe;
    first.ends[1] = {between.id, std::string(kind.inLine[0]), {}};
    second.ends[0] = {between.id, std::string(kind.inLine[1]), {}};
    std::tie(first.bends, second.bends) = divideBends(corners, pipe.bends, place);
    divideFields(kindOf(pipe), pipe, std::isfinite(share) ? std::clamp(share, 0.0, 1.0) : 0.5, first, second);
    return {std::move(first), std::move(second)};
}

std::optional<Problem> lineFlaw(const Part* pipe, const parts::PartKind& kind)
{
    if (!pipe || !kindOf(*pipe).isPipe) {
        return Problem{"There is no pipe there any more.", "Drop the part on a pipe.", {}};
    }
    if (!kind.goesInLine()) {
        return Problem{{"{0} does not go into a line.", {kind.title}},
                       "Place it beside the pipe and join it with a pipe of its own.",
                       pipe->tag};
    }
    return std::nullopt;
}

}  // namespace

Result<Edit> splitPipe(const Drawing& drawing, PartId pipeId, std::string_view kindId, Point at, double share,
                       Stage stage)
{
    const Part* pipe = drawing.find(pipeId);
    const parts::PartKind* kind = parts::find(kindId);
    if (!kind) {
        return problem({"There is no kind of part called \"{0}\".", {std::string(kindId)}},
                       "Choose one from the tray.");
    }
    if (auto why = lineFlaw(pipe, *kind)) {
        return tl::unexpected(*why);
    }
    const std::vector<Point> corners = route(drawing, *pipe);
    const OnLine place = nearest(corners, at);

    Part part;
    part.id = drawing.nextId;
    part.kind = kind->id;
    part.tag = drawing.freeTag(*kind);
    part.stage = stage;
    part.at = place.at;
    part.turn = place.turn;
    inheritChoices(*pipe, part);

    auto [first, second] = halves(*pipe, corners, place, share, part);
    second.id = part.id + 1;
    second.mark.reset();  // a role is held once

    Gesture gesture(drawing);
    gesture.make(AddPart{std::move(part)});
    second.tag = gesture.now().freeTag(kindOf(second));
    gesture.make(ChangePart{std::move(first)});
    gesture.make(AddPart{std::move(second)});
    return gesture.finish({"Put {0} into {1}", {kind->title, pipe->tag}});
}

Result<Edit> teeOff(const Drawing& drawing, PartId pipeId, Point at, double share, Stage stage)
{
    auto edit = splitPipe(drawing, pipeId, "tee", at, share, stage);
    if (edit) {
        edit->title = {"Tee off {0}", {drawing.find(pipeId)->tag}};
    }
    return edit;
}

Result<Edit> putIntoPipe(const Drawing& drawing, PartId partId, PartId pipeId, Point at, double share)
{
    const Part* pipe = drawing.find(pipeId);
    const Part* held = drawing.find(partId);
    if (!held || kindOf(*held).isPipe) {
        return problem("That part is gone.", "Start again.");
    }
    if (auto why = lineFlaw(pipe, kindOf(*held))) {
        return tl::unexpected(*why);
    }
    for (const std::string_view port : kindOf(*held).inLine) {
        if (const Part* taken = drawing.pipeAt(partId, port)) {
            return problem({"Pipe {0} already ends on that port of {1}.", {taken->tag, held->tag}},
                           "Take the part out of its pipe first.", held->tag);
        }
    }
    const std::vector<Point> corners = route(drawing, *pipe);
    const OnLine place = nearest(corners, at);
    Part part = *held;
    part.at = place.at;
    part.turn = place.turn;
    part.flipped = false;
    auto [first, second] = halves(*pipe, corners, place, share, part);
    second.id = drawing.nextId;
    second.tag = drawing.freeTag(kindOf(second));
    Message title{"Put {0} into {1}", {held->tag, pipe->tag}};

    Gesture gesture(drawing);
    gesture.make(ChangePart{std::move(part)});
    gesture.make(ChangePart{std::move(first)});
    gesture.make(AddPart{std::move(second)});
    return gesture.finish(std::move(title));
}

}  // namespace tapward::document
