// SPDX-License-Identifier: GPL-3.0-or-later
#include "document/drawing.h"

#include <algorithm>
#include <cassert>
#include <set>

#include <fmt/format.h>

namespace tapward::document {

bool isPresent(Stage stage, View view)
{
    switch (view) {
    case View::Before:
        return stage != Stage::Added;
    case View::After:
        return stage != Stage::Removed;
    case View::Both:
        return true;
    }
    return true;
}

const Part* Drawing::find(PartId id) const
{
    const auto at = std::lower_bound(parts.begin(), parts.end(), id,
                                     [](const Part& part, PartId wanted) { return part.id < wanted; });
    return at != parts.end() && at->id == id ? &*at : nullptr;
}

Part* Drawing::find(PartId id) { return const_cast<Part*>(std::as_const(*this).find(id)); }

const Part* Drawing::findTag(std::string_view tag) const
{
    const auto at = std::find_if(parts.begin(), parts.end(), [tag](const Part& part) { return part.tag == tag; });
    return at == parts.end() ? nullptr : &*at;
}

const Case* Drawing::findCase(std::string_view name) const
{
    const auto at = std::find_if(cases.begin(), cases.end(), [name](const Case& one) { return one.name == name; });
    return at == cases.end() ? nullptr : &*at;
}

const Part* Drawing::pipeAt(PartId part, std::string_view port) const
{
    if (part == kNoPart) {
        return nullptr;
    }
    for (const Part& pipe : parts) {
        for (const PipeEnd& end : pipe.ends) {
            if (end.part == part && end.port == port) {
                return &pipe;
            }
        }
    }
    return nullptr;
}

std::string Drawing::freeTag(const parts::PartKind& kind) const
{
    std::set<std::string_view> taken;
    for (const Part& part : parts) {
        taken.insert(part.tag);
    }
    for (int number = 1;; ++number) {
        std::string tag = fmt::format("{}{}", kind.tagLetter, number);
        if (!taken.contains(tag)) {
            return tag;
        }
    }
}

const parts::PartKind& kindOf(const Part& part)
{
    const parts::PartKind* kind = parts::find(part.kind);
    assert(kind && "documents are checked on load");
    return *kind;
}

parts::Values values(const Part& part) { return {kindOf(part), part.entries}; }

Point portPlace(const Part& part, const parts::Port& port)
{
    double x = part.flipped ? -port.x : port.x;
    double y = port.y;
    for (int i = 0; i < (part.turn & 3); ++i) {  // clockwise, y down
        const double turned = -y;
        y = x;
        x = turned;
    }
    return {part.at.x + x, part.at.y + y};
}

parts::Side portSide(const Part& part, const parts::Port& port)
{
    // Clockwise order, so that a quarter turn is one step.
    static constexpr parts::Side kClockwise[] = {parts::Side::Right, parts::Side::Bottom, parts::Side::Left,
                                                 parts::Side::Top};
    parts::Side side = port.side;
    if (part.flipped && (side == parts::Side::Left || side == parts::Side::Right)) {
        side = side == parts::Side::Left ? parts::Side::Right : parts::Side::Left;
    }
    const auto at = std::find(std::begin(kClockwise), std::end(kClockwise), side) - std::begin(kClockwise);
    return kClockwise[(at + (part.turn & 3)) % 4];
}

}  // namespace tapward::document
