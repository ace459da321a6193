// SPDX-License-Identifier: GPL-3.0-or-later
#include "document/edit.h"

#include <algorithm>
#include <cassert>
#include <utility>

#include <fmt/format.h>

#include "document/check.h"
#include "document/file.h"
#include "document/gesture.h"
#include "document/references.h"
#include "document/written_size.h"

namespace tapward::document {
namespace {

Problem gone(PartId id)
{
    return {{"Part {0} is not in the drawing any more.", {static_cast<std::int64_t>(id)}}, "Select another part.", {}};
}

std::vector<Part>::iterator placeOf(Drawing& drawing, PartId id)
{
    return std::lower_bound(drawing.parts.begin(), drawing.parts.end(), id,
                            [](const Part& part, PartId wanted) { return part.id < wanted; });
}

PartId highestId(const Drawing& drawing, PartId leftOut = kNoPart)
{
    for (auto part = drawing.parts.rbegin(); part != drawing.parts.rend(); ++part) {
        if (part->id != leftOut) {
            return part->id;
        }
    }
    return kNoPart;
}

/// A tag or a port that another part already has.
std::optional<Problem> takenTwice(const Drawing& drawing, const Part& part)
{
    for (const Part& other : drawing.parts) {
        if (other.id == part.id) {
            continue;
        }
        if (other.tag == part.tag) {
            return Problem{{"There already is a part with the tag {0}.", {part.tag}}, "Give it another tag.", part.tag};
        }
        for (const PipeEnd& end : part.ends) {
            if (end.part == kNoPart) {
                continue;
            }
            for (const PipeEnd& otherEnd : other.ends) {
                if (otherEnd.part == end.part && otherEnd.port == end.port) {
                    const Part* holder = drawing.find(end.part);
                    return Problem{
                        {"Pipe {0} already ends on that port of {1}.", {other.tag, holder ? holder->tag : ""}},
                        "Put a tee into the pipe to branch off, or choose another port.",
                        holder ? holder->tag : ""};
                }
            }
        }
    }
    return std::nullopt;
}

/// Problems of parts are placed by tag here; pointers are for files.
std::optional<Problem> at(std::optional<Problem> problem, std::string tag)
{
    if (problem) {
        problem->where = std::move(tag);
    }
    return problem;
}

std::optional<Problem> refusal(const Drawing& drawing, const AddPart& step)
{
    Part part = step.part;
    if (part.id == kNoPart) {
        part.id = drawing.nextId;
    }
    if (drawing.parts.size() >= Limits{}.parts) {
        return Problem{{"The drawing already has {0} parts.", {static_cast<std::int64_t>(drawing.parts.size())}},
                       "Draw the rest in another drawing.",
                       {}};
    }
    if (drawing.find(part.id)) {
        return Problem{
            {"There already is a part number {0}.", {static_cast<std::int64_t>(part.id)}}, "Place it again.", part.tag};
    }
    if (step.nextId != kNoPart && step.nextId <= std::max(part.id, highestId(drawing))) {
        return Problem{"The next part number is already taken.", "Place it again.", part.tag};
    }
    if (auto why = partFlaw(drawing, part)) {
        return at(std::move(why), part.tag);
    }
    return takenTwice(drawing, part);
}

std::optional<Problem> refusal(const Drawing& drawing, const RemovePart& step)
{
    const Part* part = drawing.find(step.id);
    if (!part) {
        return gone(step.id);
    }
    if (step.nextId != kNoPart && step.nextId <= highestId(drawing, step.id)) {
        return Problem{"The next part number is already taken.", "Remove it again.", part->tag};
    }
    for (const Part& pipe : drawing.parts) {
        if (pipe.ends[0].part == step.id || pipe.ends[1].part == step.id) {
            return Problem{
                {"Pipe {0} still ends on {1}.", {pipe.tag, part->tag}}, "Take the pipe off first.", part->tag};
        }
    }
    if (refersTo(drawing, step.id)) {
        return Problem{{"A controller, case or dismissed finding still names {0}.", {part->tag}},
                       "Choose another part there first.",
                       part->tag};
    }
    return std::nullopt;
}

std::optional<Problem> refusal(const Drawing& drawing, const ChangePart& step)
{
    const Part* part = drawing.find(step.part.id);
    if (!part) {
        return gone(step.part.id);
    }
    if (part->kind != step.part.kind) {
        return Problem{
            {"{0} cannot become another kind of part.", {part->tag}}, "Remove it and place the other one.", part->tag};
    }
    if (auto why = partFlaw(drawing, step.part)) {
        return at(std::move(why), step.part.tag);
    }
    return takenTwice(drawing, step.part);
}

std::optional<Problem> refusal(const Drawing& drawing, const SetField& step)
{
    const Part* part = drawing.find(step.id);
    if (!part) {
        return gone(step.id);
    }
    const parts::PartKind& kind = kindOf(*part);
    if (!step.entry) {
        return kind.field(step.key) ? std::nullopt : at(fieldFlaw(drawing, kind, step.key, 0.0), part->tag);
    }
    return at(fieldFlaw(drawing, kind, step.key, step.entry->value), part->tag);
}

std::optional<Problem> refusal(const Drawing&, const SetJob& step) { return jobFlaw(step.job); }

std::optional<Problem> refusal(const Drawing& drawing, const SetCases& step) { return casesFlaw(drawing, step.cases); }

std::optional<Problem> refusal(const Drawing& drawing, const SetDismissals& step)
{
    return dismissalsFlaw(drawing, step.dismissals);
}

Step apply(Drawing& drawing, AddPart step)
{
    const PartId before = drawing.nextId;
    if (step.part.id == kNoPart) {
        step.part.id = drawing.nextId;
    }
    const PartId id = step.part.id;
    drawing.nextId = step.nextId != kNoPart ? step.nextId : std::max(drawing.nextId, id + 1);
    drawing.parts.insert(placeOf(drawing, id), std::move(step.part));
    return RemovePart{id, before};
}

Step apply(Drawing& drawing, const RemovePart& step)
{
    const auto place = placeOf(drawing, step.id);
    assert(place != drawing.parts.end() && place->id == step.id);
    AddPart inverse{std::move(*place), drawing.nextId};
    drawing.parts.erase(place);
    if (step.nextId != kNoPart) {
        drawing.nextId = step.nextId;
    }
    return inverse;
}

Step apply(Drawing& drawing, ChangePart step)
{
    Part* part = drawing.find(step.part.id);
    assert(part);
    std::swap(*part, step.part);
    return step;
}

Step apply(Drawing& drawing, SetField step)
{
    Part* part = drawing.find(step.id);
    assert(part);
    const auto held = part->entries.find(step.key);
    SetField inverse{step.id, step.key, std::nullopt};
    if (held != part->entries.end()) {
        inverse.entry = std::move(held->second);
        part->entries.erase(held);
    }
    if (step.entry) {
        part->entries.emplace(std::move(step.key), std::move(*step.entry));
    }
    return inverse;
}

Step apply(Drawing& drawing, SetJob step)
{
    std::swap(drawing.job, step.job);
    return step;
}

Step apply(Drawing& drawing, SetCases step)
{
    std::swap(drawing.cases, step.cases);
    return step;
}

Step apply(Drawing& drawing, SetDismissals step)
{
    std::swap(drawing.dismissals, step.dismissals);
    return step;
}

}  // namespace

std::optional<Problem> stepRefusal(const Drawing& drawing, const Step& step)
{
    return std::visit([&drawing](const auto& one) { return refusal(drawing, one); }, step);
}

std::optional<Problem> refusal(const Drawing& drawing, const Edit& edit)
{
    if (edit.steps.empty()) {
        return Problem{"Nothing would change.", "Change something first.", {}};
    }
    if (edit.steps.size() == 1) {
        const Step& step = edit.steps.front();
        if (auto why = stepRefusal(drawing, step)) {
            return why;
        }
        if (mostBytes(drawing, step) <= Limits{}.bytes) {
            return std::nullopt;  // the usual case: nothing needs to be copied
        }
    }
    // Each step has to be possible after the ones before it.
    Drawing tried = drawing;
    for (const Step& step : edit.steps) {
        if (auto why = stepRefusal(tried, step)) {
            return why;
        }
        std::visit([&tried](auto one) { apply(tried, std::move(one)); }, Step{step});
    }
    return lengthFlaw(drawing, tried);
}

Edit apply(Drawing& drawing, Edit edit)
{
    Edit inverse{std::move(edit.title), {}};
    inverse.steps.reserve(edit.steps.size());
    for (Step& step : edit.steps) {
        inverse.steps.push_back(std::visit([&drawing](auto& one) { return apply(drawing, std::move(one)); }, step));
    }
    std::reverse(inverse.steps.begin(), inverse.steps.end());
    return inverse;
}

}  // namespace tapward::document
