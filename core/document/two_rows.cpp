// SPDX-License-Identifier: GPL-3.0-or-later
// A long drawing in two rows: what lies right of a cut turns back under what lies left of it.
#include <algorithm>
#include <cmath>
#include <limits>
#include <optional>
#include <set>

#include "document/gesture.h"
#include "document/rearrange.h"
#include "document/sheet.h"

namespace tapward::document {
namespace {

constexpr double kLong = 3.5;  ///< times as wide as high: shorter drawings gain nothing on screen or page
constexpr double kGap = 9;  ///< modules between the rows: tags and values of both
constexpr double kAbreast = 3;  ///< modules to either side in which the gap is kept
constexpr double kAside = 1.5;  ///< modules between the cut and the nearest symbol

struct Placed {
    PartId id;
    Box box;
};

std::vector<Placed> symbolsOf(const Drawing& drawing)
{
    std::vector<Placed> placed;
    for (const Part& part : drawing.parts) {
        if (!kindOf(part).isPipe) {
            placed.push_back({part.id, boxOf(part)});
        }
    }
    return placed;
}

Box around(const std::vector<Placed>& placed)
{
    Box all = placed.front().box;
    for (const Placed& one : placed) {
        all = {std::min(all.left, one.box.left), std::min(all.top, one.box.top), std::max(all.right, one.box.right),
               std::max(all.bottom, one.box.bottom)};
    }
    return all;
}

/// Where fewest pipes cross, in the middle third; near its middle where that leaves a choice.
std::optional<double> cutOf(const Drawing& drawing, const std::vector<Placed>& placed, const Box& all)
{
    const double middle = (all.left + all.right) / 2, third = (all.right - all.left) / 6;
    std::optional<double> best;
    double least = std::numeric_limits<double>::infinity();
    for (double x = std::ceil(middle - third); x <= middle + third; ++x) {
        if (std::any_of(placed.begin(), placed.end(),
                        [x](const Placed& one) { return one.box.left - kAside < x && x < one.box.right + kAside; })) {
            continue;
        }
        std::set<PartId> right;
        for (const Placed& one : placed) {
            if (one.box.left > x) {
                right.insert(one.id);
            }
        }
        const auto isRight = [&](const PipeEnd& end) {
            return end.part == kNoPart ? end.loose.x > x : right.contains(end.part);
        };
        const auto crossing = std::count_if(drawing.parts.begin(), drawing.parts.end(), [&](const Part& part) {
            return kindOf(part).isPipe && isRight(part.ends[0]) != isRight(part.ends[1]);
        });
        const double cost = static_cast<double>(crossing) * third + std::abs(x - middle);
        if (cost < least) {
            least = cost;
            best = x;
        }
    }
    return best;
}

/// What is drawn of one row: its symbols, and the pipes that stay in it.
std::vector<Box> inkOf(const Drawing& drawing, const std::set<PartId>& right, bool ofRight)
{
    std::vector<Box> ink;
    const Router router(drawing);
    for (const Part& part : drawing.parts) {
        if (!kindOf(part).isPipe) {
            if (right.contains(part.id) == ofRight) {
                ink.push_back(boxOf(part));
            }
        } else if (right.contains(part.ends[0].part) == ofRight && right.contains(part.ends[1].part) == ofRight) {
            const std::vector<Point> corners = router.route(part);
            for (std::size_t i = 1; i < corners.size(); ++i) {
                const auto [left, farRight] = std::minmax(corners[i - 1].x, corners[i].x);
                const auto [high, low] = std::minmax(corners[i - 1].y, corners[i].y);
                ink.push_back({left, high, farRight, low});
            }
        }
    }
    return ink;
}

/// How far the right part goes down, so that nothing of it comes near what then lies above.
double wayDown(const std::vector<Box>& upper, const std::vector<Box>& lower, double cut)
{
    double down = 0;
    for (const Box& above : upper) {
        for (const Box& under : lower) {
            if (above.left < 2 * cut - under.left + kAbreast && 2 * cut - under.right < above.right + kAbreast) {
                down = std::max(down, above.bottom - under.top + kGap);
            }
        }
    }
    return down;
}

}  // namespace

Result<Edit> layInTwoRows(const Drawing& drawing)
{
    const std::vector<Placed> placed = symbolsOf(drawing);
    const auto short_ = [] {
        return problem("This drawing is not long enough for two rows.",
                       "Two rows help where a drawing is more than three and a half times as wide as it is high.");
    };
    if (placed.empty()) {
        return short_();
    }
    const Box all = around(placed);
    if (all.right - all.left < kLong * (all.bottom - all.top)) {
        return short_();
    }
    if (std::any_of(drawing.parts.begin(), drawing.parts.end(),
                    [](const Part& part) { return part.kind == "floor_plan"; })) {
        return problem("The parts lie on a floor plan.", "Take the plan out first, or leave the drawing in one row.");
    }
    const auto cut = cutOf(drawing, placed, all);
    if (!cut) {
        return problem("Near its middle the drawing has no gap to divide it at.",
                       "Move the parts there a little apart.");
    }
    std::set<PartId> right;
    for (const Placed& one : placed) {
        if (one.box.left > *cut) {
            right.insert(one.id);
        }
    }
    const double down = std::round(wayDown(inkOf(drawing, right, false), inkOf(drawing, right, true), *cut));
    const auto turned = [&](Point point) { return Point{2 * *cut - point.x, point.y + down}; };
    Gesture gesture(drawing);
    for (const Part& part : drawing.parts) {
        Part moved = part;
        if (!kindOf(part).isPipe) {
            if (!right.contains(part.id)) {
                continue;
            }
            moved.at = turned(part.at);
            moved.flipped = !part.flipped;
            moved.turn = (4 - part.turn) & 3;
            if (part.label) {
                moved.label = Point{-part.label->x, part.label->y};
            }
        } else {
            const auto isRight = [&](const PipeEnd& end) {
                return end.part == kNoPart ? end.loose.x > *cut : right.contains(end.part);
            };
            const bool both = isRight(part.ends[0]) && isRight(part.ends[1]);
            for (PipeEnd& end : moved.ends) {
                if (end.part == kNoPart && isRight(end)) {
                    end.loose = turned(end.loose);
                }
            }
            if (both) {
                std::transform(moved.bends.begin(), moved.bends.end(), moved.bends.begin(), turned);
            } else if (isRight(part.ends[0]) != isRight(part.ends[1])) {
                moved.bends.clear();  // round the end of the rows: found anew
            }
        }
        if (!(moved == part)) {
            gesture.make(ChangePart{std::move(moved)});
        }
    }
    return gesture.finish("Lay in two rows");
}

}  // namespace tapward::document
