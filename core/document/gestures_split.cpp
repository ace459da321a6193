// SPDX-License-Identifier: GPL-3.0-or-later
// Cutting a part into a pipe, and healing the pipe when the part goes.
#include <algorithm>
#include <cmath>
#include <limits>
#include <string>
#include <tuple>

#include "document/edit.h"
#include "document/gesture.h"
#include "document/references.h"

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

/// A pipe seen from one of its ends.
struct Hanging {
    PartId pipe;
    std::size_t end;
};

std::vector<Hanging> hangingOn(const Drawing& drawing, PartId part)
{
    std::vector<Hanging> hanging;
    for (const Part& pipe : drawing.parts) {
        for (std::size_t end = 0; end < 2; ++end) {
            if (pipe.ends[end].part == part) {
                hanging.push_back({pipe.id, end});
            }
        }
    }
    return hanging;
}

/// The length that decides which of two pipes lends its fields.
double measure(const Part& pipe)
{
    for (const parts::Field& field : kindOf(pipe).fields) {
        if (field.divides && field.quantity == Quantity::Length) {
            return values(pipe).number(field.key);
        }
    }
    return 0;
}

void turnRound(Part& pipe)
{
    std::swap(pipe.ends[0], pipe.ends[1]);
    std::reverse(pipe.bends.begin(), pipe.bends.end());
}

void addFields(const Part& first, const Part& second, Part& joined)
{
    const Part& longer = measure(second) > measure(first) ? second : first;
    joined.entries = longer.entries;
    for (const parts::Field& field : kindOf(first).fields) {
        if (!field.divides) {
            continue;
        }
        const parts::Values a = values(first);
        const parts::Values b = values(second);
        if (!a.isSet(field.key) && !b.isSet(field.key) && a.number(field.key) == 0 && b.number(field.key) == 0) {
            continue;
        }
        const double sum = std::min(a.number(field.key) + b.number(field.key), field.most);
        // A sum is known no better than its weaker part.
        joined.entries[std::string(field.key)] = {sum, std::max(a.basis(field.key), b.basis(field.key))};
    }
}

class Removal {
public:
    explicit Removal(const Drawing& drawing) : m_gesture(drawing) {}

    void remove(PartId id, PartId heir = kNoPart)
    {
        if (!m_gesture.now().find(id)) {
            return;  // went with another one
        }
        for (Step& step : releaseReferences(m_gesture.now(), id, heir)) {
            m_gesture.make(std::move(step));
        }
        m_gesture.make(RemovePart{id});
    }

    /// @param alsoGoing  pipes that are removed for themselves and so cannot be joined
    void removeSymbol(PartId id, bool heal, const std::vector<PartId>& alsoGoing)
    {
        std::vector<Hanging> hanging = hangingOn(m_gesture.now(), id);
        std::erase_if(hanging, [&](const Hanging& one) {
            const bool going = std::find(alsoGoing.begin(), alsoGoing.end(), one.pipe) != alsoGoing.end();
            if (going) {
                remove(one.pipe);
            }
            return going;
        });
        if (heal && hanging.size() == 2 && hanging[0].pipe != hanging[1].pipe) {
            join(hanging[0], hanging[1]);
        } else {
            for (const Hanging& one : hanging) {
                remove(one.pipe);
            }
        }
        remove(id);
    }

    Result<Edit> finish(Message title) { return m_gesture.finish(std::move(title)); }

private:
    /// Makes one pipe of two that hang on the same part. The one that comes first in flow keeps its name.
    void join(Hanging a, Hanging b)
    {
        if (a.end == 0 && b.end == 1) {
            std::swap(a, b);
        }
        const Part first = *m_gesture.now().find(a.pipe);
        Part second = *m_gesture.now().find(b.pipe);
        Part joined = first;
        if (a.end == 0) {
            turnRound(joined);  // both flow away from the part: the first one is turned
        }
        if (b.end == 1) {
            turnRound(second);
        }
        joined.ends[1] = second.ends[1];
        joined.bends.insert(joined.bends.end(), second.bends.begin(), second.bends.end());
        addFields(first, second, joined);
        for (const auto& [key, text] : second.unknown) {
            joined.unknown.emplace(key, text);
        }
        remove(b.pipe, a.pipe);
        m_gesture.make(ChangePart{std::move(joined)});
    }

    Gesture m_gesture;
};

}  // namespace

Result<Edit> splitPipe(const Drawing& drawing, PartId pipeId, std::string_view kindId, Point at, double share,
                       Stage stage)
{
    const Part* pipe = drawing.find(pipeId);
    if (!pipe || !kindOf(*pipe).isPipe) {
        return problem("There is no pipe there any more.", "Drop the part on a pipe.");
    }
    const parts::PartKind* kind = parts::find(kindId);
    if (!kind) {
        return problem({"There is no kind of part called \"{0}\".", {std::string(kindId)}},
                       "Choose one from the tray.");
    }
    if (!kind->goesInLine()) {
        return problem({"{0} does not go into a line.", {std::string(kind->title)}},
                       "Place it beside the pipe and join it with a pipe of its own.", pipe->tag);
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

    Part first = *pipe;
    Part second = *pipe;
    first.ends[1] = {part.id, std::string(kind->inLine[0]), {}};
    second.ends[0] = {part.id, std::string(kind->inLine[1]), {}};
    std::tie(first.bends, second.bends) = divideBends(corners, pipe->bends, place);
    divideFields(kindOf(*pipe), *pipe, std::isfinite(share) ? std::clamp(share, 0.0, 1.0) : 0.5, first, second);
    second.id = part.id + 1;
    second.mark.reset();  // a role is held once

    Gesture gesture(drawing);
    gesture.make(AddPart{std::move(part)});
    second.tag = gesture.now().freeTag(kindOf(second));
    gesture.make(ChangePart{std::move(first)});
    gesture.make(AddPart{std::move(second)});
    return gesture.finish({"Put {0} into {1}", {std::string(kind->title), pipe->tag}});
}

Result<Edit> teeOff(const Drawing& drawing, PartId pipeId, Point at, double share, Stage stage)
{
    auto edit = splitPipe(drawing, pipeId, "tee", at, share, stage);
    if (edit) {
        edit->title = {"Tee off {0}", {drawing.find(pipeId)->tag}};
    }
    return edit;
}

Result<Edit> removeParts(const Drawing& drawing, const std::vector<PartId>& ids, bool heal)
{
    std::vector<PartId> pipes;
    std::vector<PartId> symbols;
    for (const PartId id : ids) {
        if (const Part* part = drawing.find(id)) {
            (kindOf(*part).isPipe ? pipes : symbols).push_back(id);
        }
    }
    if (pipes.empty() && symbols.empty()) {
        return problem("Nothing is selected.", "Select a part first.");
    }
    Removal removal(drawing);
    for (const PartId id : symbols) {
        removal.removeSymbol(id, heal, pipes);
    }
    for (const PartId id : pipes) {
        removal.remove(id);
    }
    const Part* only = ids.size() == 1 ? drawing.find(ids.front()) : nullptr;
    return removal.finish(only ? Message{"Remove {0}", {only->tag}}
                               : Message{"Remove {0} parts", {static_cast<std::int64_t>(ids.size())}});
}

}  // namespace tapward::document
