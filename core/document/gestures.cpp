// SPDX-License-Identifier: GPL-3.0-or-later
// Gestures that place, join, move and copy parts. Cutting into pipes and healing: gestures_split.cpp.
#include <algorithm>
#include <cmath>
#include <map>
#include <set>
#include <string>

#include "document/check.h"
#include "document/edit.h"
#include "document/gesture.h"
#include "document/sheet.h"

namespace tapward::document {
namespace {

using IdSet = std::set<PartId>;

Text kindTitle(const Part& part) { return kindOf(part).title; }

/// The first kind that is drawn as a line.
const parts::PartKind& pipeKind()
{
    const auto& kinds = parts::catalogue();
    return **std::find_if(kinds.begin(), kinds.end(), [](const parts::PartKind* kind) { return kind->isPipe; });
}

/// "Move P1" or "Move 4 parts".
Message titleFor(const Drawing& drawing, const std::vector<PartId>& ids, const char* one, const char* many)
{
    const Part* part = ids.size() == 1 ? drawing.find(ids.front()) : nullptr;
    return part ? Message{one, {part->tag}} : Message{many, {static_cast<std::int64_t>(ids.size())}};
}

std::optional<Problem> selectionFlaw(const Drawing& drawing, const std::vector<PartId>& ids)
{
    if (ids.empty()) {
        return Problem{"Nothing is selected.", "Select a part first.", {}};
    }
    for (const PartId id : ids) {
        if (!drawing.find(id)) {
            return Problem{{"Part {0} is not in the drawing any more.", {static_cast<std::int64_t>(id)}},
                           "Select another part.",
                           {}};
        }
    }
    return std::nullopt;
}

/// Moves, turns or mirrors: `place` maps canvas places, `symbol` changes a part's turn and flip.
template <class Place, class Symbol>
Result<Edit> transform(const Drawing& drawing, const std::vector<PartId>& ids, Message title, Place place,
                       Symbol symbol)
{
    const IdSet chosen(ids.begin(), ids.end());
    Gesture gesture(drawing);
    for (const Part& part : drawing.parts) {
        Part changed = part;
        if (!kindOf(part).isPipe) {
            if (!chosen.contains(part.id)) {
                continue;
            }
            changed.at = place(part.at);
            symbol(changed);
        } else {
            bool bothMove = true;
            for (PipeEnd& end : changed.ends) {
                const bool looseMoves = end.part == kNoPart && chosen.contains(part.id);
                if (looseMoves) {
                    end.loose = place(end.loose);
                }
                bothMove = bothMove && (looseMoves || chosen.contains(end.part));
            }
            if (bothMove) {
                std::transform(part.bends.begin(), part.bends.end(), changed.bends.begin(), place);
            }
        }
        if (!(changed == part)) {
            gesture.make(ChangePart{std::move(changed)});
        }
    }
    return gesture.finish(std::move(title));
}

/// The one symbol chosen, or null when there are several (pipes do not count).
const Part* onlySymbol(const Drawing& drawing, const std::vector<PartId>& ids)
{
    const Part* only = nullptr;
    for (const PartId id : ids) {
        const Part* part = drawing.find(id);
        if (part && !kindOf(*part).isPipe) {
            if (only && only->id != id) {
                return nullptr;
            }
            only = part;
        }
    }
    return only;
}

/// Middle of the chosen symbols and loose ends, on a whole module so that everything stays on the grid.
Point middle(const Drawing& drawing, const std::vector<PartId>& ids)
{
    std::vector<Point> places;
    for (const PartId id : ids) {
        const Part* part = drawing.find(id);
        if (!part) {
            continue;
        }
        if (!kindOf(*part).isPipe) {
            places.push_back(part->at);
            continue;
        }
        for (const PipeEnd& end : part->ends) {
            if (end.part == kNoPart) {
                places.push_back(end.loose);
            }
        }
    }
    if (places.empty()) {
        return {};
    }
    const auto [left, right] =
        std::minmax_element(places.begin(), places.end(), [](Point a, Point b) { return a.x < b.x; });
    const auto [top, bottom] =
        std::minmax_element(places.begin(), places.end(), [](Point a, Point b) { return a.y < b.y; });
    return {std::round((left->x + right->x) / 2), std::round((top->y + bottom->y) / 2)};
}

/// Bends of its own for a new pipe whose usual way would lie on another one: two lines on top of each other read as
/// one. None where there is no better way, or too much is drawn to look for one.
std::vector<Point> bendsBeside(const Drawing& drawing, const Part& pipe)
{
    constexpr std::size_t kMostParts = 600;
    constexpr double kTouch = 1;  // modules: side by side at a port, say
    const Part* from = drawing.find(pipe.ends[0].part);
    const Part* to = drawing.find(pipe.ends[1].part);
    const parts::Port* fromPort = from ? kindOf(*from).port(pipe.ends[0].port) : nullptr;
    const parts::Port* toPort = to ? kindOf(*to).port(pipe.ends[1].port) : nullptr;
    if (!fromPort || !toPort || drawing.parts.size() > kMostParts) {
        return {};
    }
    const Sheet sheet(drawing);
    const double usual = sheet.onPipes(route(drawing, pipe));
    if (usual <= kTouch) {
        return {};
    }
    const auto way = sheet.way(*from, *fromPort, *to, *toPort);
    if (!way || way->corners.size() < 3 || sheet.onPipes(way->corners) >= usual) {
        return {};
    }
    return {way->corners.begin() + 1, way->corners.end() - 1};
}

}  // namespace

Result<Edit> placePart(const Drawing& drawing, std::string_view kindId, Point at, Stage stage, int turn)
{
    const parts::PartKind* kind = parts::find(kindId);
    if (!kind) {
        return problem({"There is no kind of part called \"{0}\".", {std::string(kindId)}},
                       "Choose one from the tray.");
    }
    if (kind->isPipe) {
        return problem("A pipe goes from one port to another.", "Draw it from port to port.");
    }
    Part part;
    part.id = drawing.nextId;
    part.kind = kind->id;
    part.tag = drawing.freeTag(*kind);
    part.stage = stage;
    part.at = at;
    part.turn = turn & 3;
    Gesture gesture(drawing);
    gesture.make(AddPart{std::move(part)});
    return gesture.finish({"Place {0}", {kind->title}});
}

Result<Edit> connect(const Drawing& drawing, PipeEnd from, PipeEnd to, Stage stage)
{
    const parts::PartKind& kind = pipeKind();
    Part pipe;
    pipe.id = drawing.nextId;
    pipe.kind = kind.id;
    pipe.tag = drawing.freeTag(kind);
    pipe.stage = stage;
    for (PipeEnd* end : {&from, &to}) {
        if (end->part != kNoPart) {
            end->loose = {};
        } else {
            end->port.clear();
        }
    }
    pipe.ends = {std::move(from), std::move(to)};
    pipe.bends = bendsBeside(drawing, pipe);
    Gesture gesture(drawing);
    gesture.make(AddPart{std::move(pipe)});
    return gesture.finish("Draw pipe");
}

Result<Edit> moveParts(const Drawing& drawing, const std::vector<PartId>& ids, double dx, double dy)
{
    if (auto why = selectionFlaw(drawing, ids)) {
        return tl::unexpected(*why);
    }
    return transform(
        drawing, ids, titleFor(drawing, ids, "Move {0}", "Move {0} parts"),
        [dx, dy](Point point) { return Point{point.x + dx, point.y + dy}; }, [](Part&) {});
}

Result<Edit> turnParts(const Drawing& drawing, const std::vector<PartId>& ids, int quarterTurns)
{
    if (auto why = selectionFlaw(drawing, ids)) {
        return tl::unexpected(*why);
    }
    const int quarters = quarterTurns & 3;
    const Part* only = onlySymbol(drawing, ids);
    const Point centre = only ? only->at : middle(drawing, ids);
    const auto turned = [quarters, centre](Point point) {
        for (int i = 0; i < quarters; ++i) {
            point = {centre.x - (point.y - centre.y), centre.y + (point.x - centre.x)};
        }
        return point;
    };
    return transform(drawing, ids, titleFor(drawing, ids, "Turn {0}", "Turn {0} parts"), turned,
                     [quarters](Part& part) { part.turn = (part.turn + quarters) & 3; });
}

Result<Edit> flipParts(const Drawing& drawing, const std::vector<PartId>& ids)
{
    if (auto why = selectionFlaw(drawing, ids)) {
        return tl::unexpected(*why);
    }
    Message title = titleFor(drawing, ids, "Flip {0}", "Flip {0} parts");
    if (onlySymbol(drawing, ids)) {
        // One symbol: its own left and right change places, whichever way it is turned, so that the flow turns round.
        return transform(
            drawing, ids, std::move(title), [](Point point) { return point; },
            [](Part& part) { part.flipped = !part.flipped; });
    }
    const double axis = middle(drawing, ids).x;
    return transform(
        drawing, ids, std::move(title), [axis](Point point) { return Point{2 * axis - point.x, point.y}; },
        [](Part& part) {
            part.flipped = !part.flipped;
            part.turn = (4 - part.turn) & 3;
        });
}

Result<Edit> setStage(const Drawing& drawing, const std::vector<PartId>& ids, Stage stage)
{
    if (auto why = selectionFlaw(drawing, ids)) {
        return tl::unexpected(*why);
    }
    Gesture gesture(drawing);
    for (const PartId id : ids) {
        Part part = *gesture.now().find(id);
        if (part.stage != stage) {
            part.stage = stage;
            gesture.make(ChangePart{std::move(part)});
        }
    }
    return gesture.finish(titleFor(drawing, ids, "Change stage of {0}", "Change stage of {0} parts"));
}

Result<Edit> pasteParts(const Drawing& drawing, const std::vector<Part>& copied, double dx, double dy)
{
    Gesture gesture(drawing);
    std::map<PartId, PartId> newIds;
    for (const Part& part : copied) {
        if (!parts::find(part.kind)) {
            return problem({"There is no kind of part called \"{0}\".", {part.kind}}, "Copy the parts again.");
        }
    }
    // Symbols first, then the pipes between them, then who refers to whom.
    for (const bool pipes : {false, true}) {
        for (const Part& original : copied) {
            const parts::PartKind& kind = kindOf(original);
            if (kind.isPipe != pipes) {
                continue;
            }
            Part part = original;
            part.id = gesture.now().nextId;
            part.tag = gesture.now().freeTag(kind);
            part.mark.reset();
            part.at = pipes ? original.at : Point{original.at.x + dx, original.at.y + dy};
            for (Point& bend : part.bends) {
                bend = {bend.x + dx, bend.y + dy};
            }
            for (PipeEnd& end : part.ends) {
                if (!pipes) {
                    continue;
                }
                const auto joined = newIds.find(end.part);
                if (joined != newIds.end()) {
                    end.part = joined->second;
                } else {
                    end = {kNoPart, {}, {end.loose.x + dx, end.loose.y + dy}};
                }
            }
            for (const parts::Field& field : kind.fields) {
                if (field.type == parts::FieldType::PartRef) {
                    if (const auto held = part.entries.find(field.key); held != part.entries.end()) {
                        part.entries.erase(held);
                    }
                }
            }
            newIds[original.id] = part.id;
            gesture.make(AddPart{std::move(part)});
        }
    }
    for (const Part& original : copied) {
        for (const parts::Field& field : kindOf(original).fields) {
            const auto held = original.entries.find(field.key);
            if (field.type != parts::FieldType::PartRef || held == original.entries.end()) {
                continue;
            }
            for (const auto& [oldId, newId] : newIds) {
                if (const auto* text = std::get_if<std::string>(&held->second.value);
                    text && *text == std::to_string(oldId)) {
                    gesture.make(SetField{newIds[original.id], std::string(field.key),
                                          parts::Entry{std::to_string(newId), held->second.basis}});
                }
            }
        }
    }
    return gesture.finish(copied.size() == 1 ? Message{"Paste {0}", {kindTitle(copied.front())}}
                                             : Message{"Paste {0} parts", {static_cast<std::int64_t>(copied.size())}});
}

}  // namespace tapward::document
