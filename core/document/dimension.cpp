// SPDX-License-Identifier: GPL-3.0-or-later
#include "document/dimension.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <string>
#include <utility>
#include <vector>

#include "document/gesture.h"
#include "document/references.h"
#include "document/route.h"
#include "document/sheet.h"

namespace tapward::document {
namespace {

constexpr double kClear = 1.5;  ///< modules between a part's middle and the line that leads away from it
constexpr int kNearest = 4, kFurthest = 24;  ///< modules from the parts to their dimension
// What is in a dimension's way, in modules that it goes farther instead.
constexpr double kOnText = 30, kOnSymbol = 12, kOnLine = 12, kOnLabel = 6, kOffMiddle = 2;

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

/// Where a part's tag and values usually stand: above it.
Box labelOf(const Part& part)
{
    const Box box = boxOf(part);
    const bool values = !kindOf(part).shownFields.empty();
    const double half = values ? 4 : 2;
    return {part.at.x - half, box.top - (values ? 7 : 3), part.at.x + half, box.top};
}

/// Room for a dimension's text, which is never turned.
Box textOf(const Point& at)
{
    const parts::PartKind& kind = *parts::find("dimension");
    const double w = kind.width / 2, h = kind.height / 2 + 0.5;
    return {at.x - w, at.y - h, at.x + w, at.y + h};
}

/// Everything a dimension should keep clear of, seen with its line level.
class Surroundings {
public:
    Surroundings(const Drawing& drawing, const Part& from, const Part& to, bool level) : m_level(level)
    {
        for (const Part& part : drawing.parts) {
            if (kindOf(part).isPipe) {
                const auto corners = route(drawing, part);
                for (std::size_t i = 0; i + 1 < corners.size(); ++i) {
                    addLine(corners[i], corners[i + 1]);
                }
            } else if (const auto line = dimensionLine(drawing, part)) {
                addLine(line->a, line->b);
                m_boxes.emplace_back(turned(textOf(part.at)), kOnText);
                m_strokes.push_back(lineBox(line->a, line->b));
                for (const auto& [begin, end] : line->reach) {
                    m_strokes.push_back(lineBox(begin, end));
                }
            } else if (part.kind != "floor_plan") {
                if (part.id != from.id && part.id != to.id) {
                    m_boxes.emplace_back(turned(boxOf(part)), kOnSymbol);
                }
                if (kindOf(part).width * kindOf(part).height > 4) {  // a join has no label
                    m_boxes.emplace_back(turned(labelOf(part)), kOnLabel);
                }
            }
        }
    }

    /// Of a line `where` across and its leaders, from each part's place `from` across.
    double cost(double where, const Point& a, const Point& b) const
    {
        const double left = std::min(along(a), along(b)), right = std::max(along(a), along(b));
        const Box line{left, where - 0.5, right, where + 0.5};
        double sum = 0;
        for (const auto& [box, weight] : m_boxes) {
            sum += box.overlaps(line) ? weight : 0;
            for (const Point& end : {a, b}) {
                const Box leader{along(end) - 0.25, std::min(across(end), where), along(end) + 0.25,
                                 std::max(across(end), where)};
                sum += box.overlaps(leader) ? weight : 0;
            }
        }
        for (const Box& other : m_lines) {
            // A chain of dimensions shares a row and meets at its ends.
            sum += other.grown(1.5).overlaps({left + 2, where, right - 2, where}) ? kOnLine : 0;
        }
        return sum;
    }

    /// Whether another dimension's line or leader goes through the text.
    bool crosses(const Box& text) const
    {
        return std::ranges::any_of(m_strokes, [&](const Box& stroke) { return stroke.grown(0.25).overlaps(text); });
    }

private:
    static Box lineBox(const Point& a, const Point& b)
    {
        return {std::min(a.x, b.x), std::min(a.y, b.y), std::max(a.x, b.x), std::max(a.y, b.y)};
    }
    double along(const Point& point) const { return m_level ? point.x : point.y; }
    double across(const Point& point) const { return m_level ? point.y : point.x; }
    Box turned(const Box& box) const { return m_level ? box : Box{box.top, box.left, box.bottom, box.right}; }
    void addLine(const Point& a, const Point& b)
    {
        if (across(a) == across(b)) {  // only what runs along is in the way
            m_lines.push_back({std::min(along(a), along(b)), across(a), std::max(along(a), along(b)), across(a)});
        }
    }

    bool m_level;
    std::vector<std::pair<Box, double>> m_boxes;
    std::vector<Box> m_lines, m_strokes;
};

/// Beside the two parts where its text covers nothing and its line is in nobody's way; below rather than above.
Point freePlace(const Drawing& drawing, const Part& from, const Part& to, bool level)
{
    const Sheet sheet(drawing);
    const Surroundings around(drawing, from, to, level);
    const double low = level ? std::min(from.at.y, to.at.y) : std::min(from.at.x, to.at.x);
    const double high = level ? std::max(from.at.y, to.at.y) : std::max(from.at.x, to.at.x);
    const double begin = level ? from.at.x : from.at.y, end = level ? to.at.x : to.at.y;
    const double middle = std::round((begin + end) / 2);
    Point best = level ? Point{middle, std::round(high) + kNearest} : Point{std::round(high) + kNearest, middle};
    double least = std::numeric_limits<double>::infinity();
    for (int off = kNearest; off <= kFurthest; ++off) {
        for (const double where : {std::round(high) + off, std::round(low) - off}) {
            const double line = off + around.cost(where, from.at, to.at);
            for (const double share : {0.5, 0.35, 0.65}) {
                const double here = share == 0.5 ? middle : std::round(begin + share * (end - begin));
                const Point at = level ? Point{here, where} : Point{where, here};
                const Box text = textOf(at);
                const double cost = line + (share == 0.5 ? 0 : kOffMiddle) + (around.crosses(text) ? kOnLine : 0);
                if (cost < least && sheet.isFree(text)) {
                    least = cost;
                    best = at;
                }
            }
        }
    }
    return best;
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
        const Part* follows = drawing.find(namedPart(held.text(end == 0 ? "from" : "to")));
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
