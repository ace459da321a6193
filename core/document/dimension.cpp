// SPDX-License-Identifier: GPL-3.0-or-later
#include "document/dimension.h"

#include <algorithm>
#include <charconv>
#include <cmath>
#include <string>

#include "document/gesture.h"
#include "document/sheet.h"

namespace tapward::document {
namespace {

constexpr double kClear = 1.5;  ///< modules between a part's middle and the line that leads away from it
constexpr int kFurthest = 16;   ///< modules from the parts to their dimension at most

const Part* named(const Drawing& drawing, const std::string& number)
{
    PartId id = kNoPart;
    const auto [end, error] = std::from_chars(number.data(), number.data() + number.size(), id);
    return error == std::errc{} && end == number.data() + number.size() ? drawing.find(id) : nullptr;
}

struct Ends {
    const Part* from = nullptr;
    const Part* to = nullptr;
    const Part* pipe = nullptr;  ///< whose length it is
};

std::optional<Ends> endsOf(const Drawing& drawing, const std::vector<PartId>& selection)
{
    Ends ends;
    if (selection.size() == 1) {
        ends.pipe = drawing.find(selection.front());
        if (!ends.pipe || !kindOf(*ends.pipe).isPipe) {
            return std::nullopt;
        }
        ends.from = drawing.find(ends.pipe->ends[0].part);
        ends.to = drawing.find(ends.pipe->ends[1].part);
    } else if (selection.size() == 2) {
        ends.from = drawing.find(selection[0]);
        ends.to = drawing.find(selection[1]);
    }
    const std::string_view allowed = parts::find("dimension")->field("from")->refKinds;
    for (const Part* end : {ends.from, ends.to}) {
        if (!end || (' ' + std::string(allowed) + ' ').find(' ' + end->kind + ' ') == std::string::npos) {
            return std::nullopt;
        }
    }
    return ends.from == ends.to ? std::nullopt : std::optional(ends);
}

/// Beside the two parts where its text covers nothing: below first, then above.
Point freePlace(const Drawing& drawing, const Part& from, const Part& to, bool level)
{
    const Sheet sheet(drawing);
    const double middle = std::round(level ? (from.at.x + to.at.x) / 2 : (from.at.y + to.at.y) / 2);
    const double low = level ? std::min(from.at.y, to.at.y) : std::min(from.at.x, to.at.x);
    const double high = level ? std::max(from.at.y, to.at.y) : std::max(from.at.x, to.at.x);
    const parts::PartKind& kind = *parts::find("dimension");
    const double along = kind.width / 2, across = kind.height / 2 + 0.5;
    for (int off = 4; off <= kFurthest; ++off) {
        for (const double where : {std::round(high) + off, std::round(low) - off}) {
            const Point at = level ? Point{middle, where} : Point{where, middle};
            const double w = level ? along : across, h = level ? across : along;
            if (sheet.isFree({at.x - w, at.y - h, at.x + w, at.y + h})) {
                return at;
            }
        }
    }
    return level ? Point{middle, std::round(high) + 4} : Point{std::round(high) + 4, middle};
}

}  // namespace

std::optional<DimensionLine> dimensionLine(const Drawing& drawing, const Part& part)
{
    if (part.kind != "dimension") {
        return std::nullopt;
    }
    const bool level = part.turn % 2 == 0;
    const parts::Values held = values(part);
    const double half = held.number("width_modules") / 2;
    DimensionLine line;
    std::array<double, 2> ends{};
    for (const std::size_t end : {std::size_t{0}, std::size_t{1}}) {
        const Part* follows = named(drawing, held.text(end == 0 ? "from" : "to"));
        const double sign = end == 0 ? -1 : 1;
        const Point free =
            level ? Point{part.at.x + sign * half, part.at.y} : Point{part.at.x, part.at.y + sign * half};
        const Point at = follows ? follows->at : free;
        const Point foot = level ? Point{at.x, part.at.y} : Point{part.at.x, at.y};
        ends[end] = level ? foot.x : foot.y;
        // The leader starts clear of the symbol it comes from.
        const double away = level ? part.at.y - at.y : part.at.x - at.x;
        const double start = std::abs(away) > kClear ? std::copysign(kClear, away) : 0;
        line.reach[end] = {
            follows && start != 0 ? (level ? Point{at.x, at.y + start} : Point{at.x + start, at.y}) : foot, foot};
    }
    const double own = level ? part.at.x : part.at.y;
    const double least = std::min({ends[0], ends[1], own}), most = std::max({ends[0], ends[1], own});
    line.a = level ? Point{least, part.at.y} : Point{part.at.x, least};
    line.b = level ? Point{most, part.at.y} : Point{part.at.x, most};
    return line;
}

bool givesDimension(const Drawing& drawing, const std::vector<PartId>& selection)
{
    return endsOf(drawing, selection).has_value();
}

Result<Edit> dimensionBetween(const Drawing& drawing, const std::vector<PartId>& selection)
{
    const auto ends = endsOf(drawing, selection);
    if (!ends) {
        return problem("A dimension goes from one part to another.",
                       "Select two parts, or one pipe between two parts.");
    }
    const auto& [from, to, pipe] = *ends;
    const bool level = std::abs(from->at.x - to->at.x) >= std::abs(from->at.y - to->at.y);
    auto placed = placePart(drawing, "dimension", freePlace(drawing, *from, *to, level), from->stage, level ? 0 : 1);
    if (!placed) {
        return placed;
    }
    Part part = std::get<AddPart>(placed->steps.front()).part;
    part.entries["from"] = {std::to_string(from->id), parts::Basis::Estimated};
    part.entries["to"] = {std::to_string(to->id), parts::Basis::Estimated};
    if (pipe) {
        part.entries["length_m"] = {values(*pipe).number("length_m"), values(*pipe).basis("length_m")};
    }
    Gesture gesture(drawing);
    gesture.make(AddPart{std::move(part)});
    return gesture.finish({"Dimension from {0} to {1}", {from->tag, to->tag}});
}

}  // namespace tapward::document
