// SPDX-License-Identifier: GPL-3.0-or-later
// Lining up, spreading and tidying symbols.
#include <algorithm>
#include <cmath>
#include <map>
#include <set>
#include <string>
#include <utility>

#include "document/gesture.h"
#include "document/rearrange.h"

namespace tapward::document {
namespace {

constexpr double kNearly = 2;  ///< modules: what is this near to one line is meant to be on it

struct Extent {
    PartId id;
    double left, top, right, bottom;
    double x() const { return (left + right) / 2; }
    double y() const { return (top + bottom) / 2; }
};

std::vector<Extent> symbolsOf(const Drawing& drawing, const std::vector<PartId>& ids)
{
    std::vector<Extent> extents;
    for (const PartId id : std::set<PartId>(ids.begin(), ids.end())) {
        const Part* part = drawing.find(id);
        if (!part || kindOf(*part).isPipe) {
            continue;
        }
        const parts::PartKind& kind = kindOf(*part);
        const bool across = part->turn % 2 != 0;
        const double halfWidth = (across ? kind.height : kind.width) / 2;
        const double halfHeight = (across ? kind.width : kind.height) / 2;
        extents.push_back(
            {id, part->at.x - halfWidth, part->at.y - halfHeight, part->at.x + halfWidth, part->at.y + halfHeight});
    }
    return extents;
}

/// Moves every symbol by its own way; bends between two that go the same way go along.
Result<Edit> moveEach(const Drawing& drawing, const std::map<PartId, Point>& ways, Message title)
{
    const auto wayOf = [&](PartId id) {
        const auto found = ways.find(id);
        return found == ways.end() ? Point{} : found->second;
    };
    Gesture gesture(drawing);
    for (const Part& part : drawing.parts) {
        Part moved = part;
        if (!kindOf(part).isPipe) {
            const Point way = wayOf(part.id);
            moved.at = {part.at.x + way.x, part.at.y + way.y};
        } else if (const Point way = wayOf(part.ends[0].part); way == wayOf(part.ends[1].part)) {
            for (Point& bend : moved.bends) {
                bend = {bend.x + way.x, bend.y + way.y};
            }
        }
        if (!(moved == part)) {
            gesture.make(ChangePart{std::move(moved)});
        }
    }
    return gesture.finish(std::move(title));
}

bool covers(const Extent& a, const Extent& b)
{
    return a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom;
}

Message counted(const char* text, std::size_t count) { return {text, {static_cast<std::int64_t>(count)}}; }

/// Values that lie nearly together, each with the whole number they are to share.
std::map<double, double> gathered(std::vector<double> values)
{
    std::sort(values.begin(), values.end());
    std::map<double, double> result;
    for (std::size_t first = 0; first < values.size();) {
        std::size_t end = first + 1;
        while (end < values.size() && values[end] - values[first] <= kNearly) {
            ++end;
        }
        const double shared = std::round(values[first + (end - first - 1) / 2]);
        for (; first < end; ++first) {
            result[values[first]] = shared;
        }
    }
    return result;
}

}  // namespace

Result<Edit> alignParts(const Drawing& drawing, const std::vector<PartId>& ids, Alignment alignment)
{
    const auto extents = symbolsOf(drawing, ids);
    if (extents.size() < 2) {
        return problem("There is nothing to line up with.", "Select two parts or more.");
    }
    Extent all = extents.front();
    for (const Extent& one : extents) {
        all = {kNoPart, std::min(all.left, one.left), std::min(all.top, one.top), std::max(all.right, one.right),
               std::max(all.bottom, one.bottom)};
    }
    std::map<PartId, Point> ways;
    for (const Extent& one : extents) {
        switch (alignment) {
        case Alignment::Left:
            ways[one.id].x = all.left - one.left;
            break;
        case Alignment::Centre:
            ways[one.id].x = std::round(all.x()) - one.x();
            break;
        case Alignment::Right:
            ways[one.id].x = all.right - one.right;
            break;
        case Alignment::Top:
            ways[one.id].y = all.top - one.top;
            break;
        case Alignment::Middle:
            ways[one.id].y = std::round(all.y()) - one.y();
            break;
        case Alignment::Bottom:
            ways[one.id].y = all.bottom - one.bottom;
            break;
        }
    }
    return moveEach(drawing, ways, counted("Align {0} parts", extents.size()));
}

Result<Edit> distributeParts(const Drawing& drawing, const std::vector<PartId>& ids, bool horizontally)
{
    auto extents = symbolsOf(drawing, ids);
    if (extents.size() < 3) {
        return problem("There is nothing to spread.", "Select three parts or more.");
    }
    const auto first = [&](const Extent& one) { return horizontally ? one.left : one.top; };
    const auto last = [&](const Extent& one) { return horizontally ? one.right : one.bottom; };
    std::stable_sort(extents.begin(), extents.end(),
                     [&](const Extent& a, const Extent& b) { return first(a) + last(a) < first(b) + last(b); });
    double taken = 0;
    for (const Extent& one : extents) {
        taken += last(one) - first(one);
    }
    const double gap =
        (last(extents.back()) - first(extents.front()) - taken) / static_cast<double>(extents.size() - 1);
    std::map<PartId, Point> ways;
    double at = last(extents.front());
    for (std::size_t i = 1; i + 1 < extents.size(); ++i) {
        at += gap;
        const double way = std::round(at - first(extents[i]));  // who was on the grid stays on it
        (horizontally ? ways[extents[i].id].x : ways[extents[i].id].y) = way;
        at += last(extents[i]) - first(extents[i]);
    }
    return moveEach(drawing, ways, counted("Spread {0} parts", extents.size()));
}

Result<Edit> tidyParts(const Drawing& drawing, const std::vector<PartId>& ids)
{
    const auto extents = symbolsOf(drawing, ids);
    std::vector<double> xs, ys;
    for (const Extent& one : extents) {
        xs.push_back(one.x());
        ys.push_back(one.y());
    }
    const auto columns = gathered(xs), rows = gathered(ys);
    // Never on top of each other: a symbol that would cover an earlier one only goes onto the grid.
    std::vector<Extent> placed;
    std::set<PartId> chosen(ids.begin(), ids.end());
    Gesture gesture(drawing);
    for (const Extent& one : extents) {
        const auto at = [&one](double x, double y) {
            const double w = (one.right - one.left) / 2, h = (one.bottom - one.top) / 2;
            return Extent{one.id, x - w, y - h, x + w, y + h};
        };
        Extent now = at(columns.at(one.x()), rows.at(one.y()));
        if (std::any_of(placed.begin(), placed.end(), [&](const Extent& other) { return covers(now, other); })) {
            now = at(std::round(one.x()), std::round(one.y()));
        }
        placed.push_back(now);
        Part moved = *drawing.find(one.id);
        moved.at = {now.x(), now.y()};
        if (!(moved == *drawing.find(one.id))) {
            gesture.make(ChangePart{std::move(moved)});
        }
        chosen.insert(one.id);
    }
    for (const Part& pipe : drawing.parts) {
        const bool between = chosen.contains(pipe.ends[0].part) && chosen.contains(pipe.ends[1].part);
        if (kindOf(pipe).isPipe && !pipe.bends.empty() && (between || chosen.contains(pipe.id))) {
            Part straight = pipe;
            straight.bends.clear();
            gesture.make(ChangePart{std::move(straight)});
        }
    }
    auto edit = gesture.finish(counted("Tidy up {0} parts", extents.size()));
    if (!edit && gesture.now() == drawing) {
        return problem("These parts are tidy already.", "Select more parts, or move them by hand.");
    }
    return edit;
}

}  // namespace tapward::document
