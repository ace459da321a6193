// SPDX-License-Identifier: GPL-3.0-or-later
// What a proposal may join, and what is known of one that is drawn. Building it: loop_builder.cpp.
#include "document/proposal.h"

#include <algorithm>

#include "document/loop_builder.h"
#include "document/loop_plan.h"
#include "document/sheet.h"
#include "document/sides.h"

namespace tapward::document {
namespace {

constexpr std::array<std::string_view, 9> kIds{"cold_line.one", "cold_line.two_parallel", "cold_line.two_series",
                                               "own_line.one",  "own_line.two_parallel",  "own_line.two_series",
                                               "tank.one",      "tank.two_parallel",      "tank.two_series"};

/// The pipe or the part at a place, for messages.
std::string tagAt(const Drawing& drawing, const Place& place)
{
    const Part* part = drawing.find(place.pipe != kNoPart ? place.pipe : place.port.part);
    return part ? part->tag : std::string{};
}

/// A pipe, or a port that its part has; nothing is said about whether a loop could be joined to it.
bool isThere(const Drawing& drawing, const Place& place)
{
    const Part* part = drawing.find(place.pipe != kNoPart ? place.pipe : place.port.part);
    return part && (place.pipe != kNoPart ? kindOf(*part).isPipe : kindOf(*part).port(place.port.port) != nullptr);
}

std::optional<Problem> placeFlaw(const Drawing& drawing, const Sides& sides, const Place& place, WaterSide wanted)
{
    const Part* part = drawing.find(place.pipe != kNoPart ? place.pipe : place.port.part);
    const bool canBeJoined = isThere(drawing, place) && isPresent(part->stage, View::After)
                             && (place.pipe != kNoPart || !drawing.pipeAt(place.port.part, place.port.port));
    if (!canBeJoined) {
        return Problem{"There is no pipe and no free port there.", "Choose a place on a pipe.", {}};
    }
    if (sides.heater == kNoPart) {
        return Problem{"No water heater with both its pipes connected is drawn.",
                       "Draw the heater with its cold and its hot pipe first.",
                       {}};
    }
    const WaterSide side = sideOf(drawing, place);
    if (side == WaterSide::None) {
        return Problem{{"{0} is not joined to the heater.", {part->tag}}, "Choose a pipe that is.", part->tag};
    }
    if (side != wanted) {
        return wanted == WaterSide::Hot
                   ? Problem{{"{0} carries cold water.", {part->tag}},
                             "Begin on the hot side, near the tap.",
                             part->tag}
                   : Problem{{"{0} carries hot water.", {part->tag}}, "End on the cold side.", part->tag};
    }
    if (place.pipe != kNoPart && !Sheet(drawing).room(place.pipe, place.share, kTee)) {
        return Problem{{"There is no room on {0} for a tee.", {part->tag}},
                       "Move the parts at its ends further apart, or choose another pipe.",
                       part->tag};
    }
    return std::nullopt;
}

/// What moves the water round a loop, proposed or drawn by hand.
const Part* circulatorOf(const Drawing& drawing)
{
    for (const Part& part : drawing.parts) {
        if (part.kind == "circulator" && isPresent(part.stage, View::After)) {
            return &part;
        }
    }
    return nullptr;
}

std::optional<Problem> loopThere(const Drawing& drawing)
{
    if (const Part* pump = circulatorOf(drawing)) {
        return Problem{
            {"There already is a loop, with {0}.", {pump->tag}}, "Swap its variant, or remove it first.", pump->tag};
    }
    return std::nullopt;
}

}  // namespace

std::array<Variant, 9> variants()
{
    std::array<Variant, 9> all;
    for (std::size_t i = 0; i < all.size(); ++i) {
        all[i] = {static_cast<ReturnWay>(i / 3), static_cast<PumpSet>(i % 3)};
    }
    return all;
}

std::string_view idOf(const Variant& variant)
{
    return kIds[static_cast<std::size_t>(variant.way) * 3 + static_cast<std::size_t>(variant.pumps)];
}

std::optional<Variant> variantNamed(std::string_view id)
{
    const auto at = std::find(kIds.begin(), kIds.end(), id);
    return at == kIds.end() ? std::nullopt : std::optional(variants()[static_cast<std::size_t>(at - kIds.begin())]);
}

Text title(ReturnWay way)
{
    switch (way) {
    case ReturnWay::ColdLine:
        return "Return by the cold line";
    case ReturnWay::OwnLine:
        return "Own return line";
    case ReturnWay::Tank:
        return "Return to the fresh tank";
    }
    return {};
}

Text title(PumpSet pumps)
{
    switch (pumps) {
    case PumpSet::One:
        return "one circulator";
    case PumpSet::TwoInParallel:
        return "two circulators in parallel";
    case PumpSet::TwoInSeries:
        return "two circulators in series";
    }
    return {};
}

WaterSide sideOf(const Drawing& drawing, const Place& place)
{
    const Sides sides(drawing);
    if (place.pipe != kNoPart) {
        return sides.of(place.pipe);
    }
    // A free port: of the side its part's other pipes are on; a tap's ports say themselves.
    const Part* part = drawing.find(place.port.part);
    if (!part || sides.heater == kNoPart) {
        return WaterSide::None;
    }
    if (place.port.port == "hot" || place.port.port == "cold") {
        return place.port.port == "hot" ? WaterSide::Hot : WaterSide::Cold;
    }
    for (const parts::Port& port : kindOf(*part).ports) {
        const Part* pipe = drawing.pipeAt(part->id, port.id);
        if (pipe && sides.of(pipe->id) != WaterSide::None) {
            return sides.of(pipe->id);
        }
    }
    return WaterSide::None;
}

std::optional<Problem> beginRefusal(const Drawing& drawing, const Place& hot)
{
    if (auto why = loopThere(drawing)) {
        return why;
    }
    return placeFlaw(drawing, Sides(drawing), hot, WaterSide::Hot);
}

std::optional<Problem> endRefusal(const Drawing& drawing, const Place& hot, const Place& cold, ReturnWay way)
{
    if (way == ReturnWay::Tank) {
        if (freeTank(drawing) == kNoPart) {
            return Problem{
                "There is no fresh tank with a free return port.", "Draw the tank, or choose another return.", {}};
        }
        return std::nullopt;
    }
    if (auto why = placeFlaw(drawing, Sides(drawing), cold, WaterSide::Cold)) {
        return why;
    }
    if (hot.pipe != kNoPart && hot.pipe == cold.pipe) {
        return Problem{{"{0} cannot be both ends of the loop.", {tagAt(drawing, hot)}},
                       "End on the cold side.",
                       tagAt(drawing, hot)};
    }
    return std::nullopt;
}

std::optional<Place> usualEnd(const Drawing& drawing, const Place& hot, ReturnWay way)
{
    if (!isThere(drawing, hot)) {
        return std::nullopt;
    }
    const Sheet sheet(drawing);
    const Sides sides(drawing);
    const auto withRoom = [&](const Walk& walk) -> std::optional<Place> {
        for (const PartId pipe : Sides::inOrder(walk)) {
            if (sides.of(pipe) == WaterSide::Cold) {
                if (const auto spot = sheet.room(pipe, 0.5, kTee)) {
                    return Place{pipe, spot->share, {}};
                }
            }
        }
        return std::nullopt;
    };
    if (way == ReturnWay::Tank) {
        const PartId tank = freeTank(drawing);
        return tank == kNoPart ? std::nullopt : std::optional(Place{kNoPart, 0, {tank, "return", {}}});
    }
    if (way == ReturnWay::ColdLine) {
        // The tap nearest to the place on the hot side, and the pipes nearest to its cold port.
        std::vector<std::pair<double, PartId>> taps;
        const auto count = [&](PartId part, double length_m) {
            const Part* tap = drawing.find(part);
            if (tap && kindOf(*tap).group == parts::TrayGroup::Outlets && drawing.pipeAt(tap->id, "cold")) {
                taps.emplace_back(length_m, tap->id);
                return true;
            }
            return false;
        };
        const Part* pipe = drawing.find(hot.pipe);
        for (const std::size_t end : {std::size_t{0}, std::size_t{1}}) {
            const PartId start = pipe ? pipe->ends[end].part : hot.port.part;
            const double before_m = pipe ? tubeLength_m(*pipe) * (end == 0 ? hot.share : 1 - hot.share) : 0;
            if (start == kNoPart || count(start, before_m)) {
                continue;
            }
            for (const auto& [id, met] : walkFrom(drawing, start, {})) {
                const Part& next = *drawing.find(id);
                if (id != hot.pipe && sides.of(id) == WaterSide::Hot) {
                    count(next.ends[1 - met.end].part, before_m + met.length_m + tubeLength_m(next));
                }
            }
        }
        std::sort(taps.begin(), taps.end());
        for (const auto& [length_m, tap] : taps) {
            if (const auto place = withRoom(walkFrom(drawing, tap, "cold"))) {
                return place;
            }
        }
    }
    return withRoom(sides.cold);
}

Result<Edit> propose(const Drawing& drawing, const Place& hot, const Place& cold, Variant variant)
{
    if (auto why = beginRefusal(drawing, hot)) {
        return tl::unexpected(*why);
    }
    if (auto why = endRefusal(drawing, hot, cold, variant.way)) {
        return tl::unexpected(*why);
    }
    return LoopBuilder(drawing, variant).draw(hot, cold);
}

std::optional<Variant> proposed(const Drawing& drawing)
{
    for (const Part& part : drawing.parts) {
        if (part.mark && part.mark->role == kStopSensor) {
            return variantNamed(part.mark->variant);
        }
    }
    return std::nullopt;
}

bool hasLoop(const Drawing& drawing) { return circulatorOf(drawing) != nullptr; }

std::vector<PartId> proposalParts(const Drawing& drawing)
{
    std::vector<PartId> ids;
    for (const Part& part : drawing.parts) {
        if (part.mark) {
            ids.push_back(part.id);
        }
    }
    return ids;
}

Result<Edit> swapVariant(const Drawing& drawing, Variant variant)
{
    const auto now = proposed(drawing);
    if (const Part* pump = circulatorOf(drawing); !now && pump) {
        return problem({"The loop with {0} was drawn part by part, so it is not known which of its parts and lengths "
                        "another variant would keep.",
                        {pump->tag}},
                       "Note its lengths, delete its added parts, then propose the variant between the same places.");
    }
    if (!now) {
        return problem("No proposed loop is drawn.", "Propose one first: from the hot side to the cold side.");
    }
    if (*now == variant) {
        return problem({"The loop already is that variant: {0}, {1}.", {title(variant.way), title(variant.pumps)}},
                       "Choose another one.");
    }
    return LoopBuilder(drawing, variant).swap(now->way);
}

}  // namespace tapward::document
