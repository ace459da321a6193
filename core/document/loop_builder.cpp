// SPDX-License-Identifier: GPL-3.0-or-later
#include "document/loop_builder.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <set>

#include "document/references.h"
#include "document/sides.h"

namespace tapward::document {
namespace {

constexpr double kSensor = 4;  ///< modules

bool isCutIn(std::string_view role) { return role == kHotTee || role == kColdTee || role == kInletTee; }

std::size_t pipesOn(const Drawing& drawing, PartId part, bool markedToo)
{
    std::size_t count = 0;
    for (const Part& pipe : drawing.parts) {
        for (const PipeEnd& end : pipe.ends) {
            count += end.part == part && part != kNoPart && (markedToo || !pipe.mark) ? 1 : 0;
        }
    }
    return count;
}

double heightOf(const Drawing& drawing, const PipeEnd& end)
{
    const Part* part = drawing.find(end.part);
    return part ? part->height_m : 0;
}

}  // namespace

PartId freeTank(const Drawing& drawing)
{
    for (const Part& part : drawing.parts) {
        if (part.kind == "fresh_tank" && isPresent(part.stage, View::After) && !drawing.pipeAt(part.id, "return")) {
            return part.id;
        }
    }
    return kNoPart;
}

PartId LoopBuilder::old(std::string_view role) const
{
    const auto at = m_old.find(role);
    return at == m_old.end() ? kNoPart : at->second;
}

PartId LoopBuilder::id(std::string_view role) const
{
    const auto at = m_ids.find(role);
    return at == m_ids.end() ? kNoPart : at->second;
}

Mark LoopBuilder::markFor(std::string_view role) const
{
    Mark mark;
    mark.variant = idOf(m_variant);
    mark.role = role;
    if (role == kStopSensor) {
        mark.coldPipe = m_coldPipe;
        mark.coldShare = m_coldShare;
    }
    return mark;
}

Result<PartId> LoopBuilder::cutIn(std::string_view role, PartId pipeId, std::string_view kind, double share,
                                  double width)
{
    const Part* pipe = now().find(pipeId);
    const auto spot = Sheet(now()).room(pipeId, share, width);
    if (!pipe || !spot) {
        return problem({"There is no room on {0} for a tee.", {pipe ? pipe->tag : std::string{}}},
                       "Move the parts at its ends further apart, or choose another pipe.", pipe ? pipe->tag : "");
    }
    const double height_m =
        heightOf(now(), pipe->ends[0]) * (1 - spot->share) + heightOf(now(), pipe->ends[1]) * spot->share;
    auto split = splitPipe(now(), pipeId, kind, spot->at, spot->share, Stage::Added);
    if (!split) {
        return tl::unexpected(split.error());
    }
    const PartId made = now().nextId;
    for (Step& step : split->steps) {
        m_gesture.make(std::move(step));
    }
    if (const Part* part = now().find(made)) {
        Part marked = *part;
        marked.height_m = height_m;
        marked.mark = markFor(role);
        m_gesture.make(ChangePart{std::move(marked)});
    }
    m_ids[std::string(role)] = made;
    return made;
}

Result<Edit> LoopBuilder::draw(const Place& hot, const Place& cold)
{
    if (cold.pipe != kNoPart && m_before.find(cold.pipe)) {
        m_coldPipe = cold.pipe;
        m_coldShare = std::isfinite(cold.share) ? std::clamp(cold.share, 0.0, 1.0) : 0.5;
    }
    m_hot = hot.port;
    if (hot.pipe != kNoPart) {
        const auto tee = cutIn(kHotTee, hot.pipe, "tee", hot.share, kTee);
        if (!tee) {
            return tl::unexpected(tee.error());
        }
        m_newHotTee = *tee;
        m_hot = {*tee, "branch", {}};
    }
    if (auto why = findEnd(cold)) {
        return tl::unexpected(*why);
    }
    return build({"Propose a loop: {0}, {1}", {title(m_variant.way), title(m_variant.pumps)}});
}

std::optional<Problem> LoopBuilder::foreignPipe() const
{
    for (const auto& [role, part] : m_old) {
        const Part* held = m_before.find(part);
        if (!held || kindOf(*held).isPipe || isCutIn(role)) {
            continue;
        }
        const std::size_t foreign = pipesOn(m_before, part, false);
        if (foreign > 0 && !(role == kInletSensor && foreign == 2)) {
            return Problem{{"Something was joined to {0} by hand.", {held->tag}},
                           "Take it off the proposed loop first.",
                           held->tag};
        }
    }
    return std::nullopt;
}

std::optional<Problem> LoopBuilder::takeApart(ReturnWay before)
{
    for (const Part& part : m_before.parts) {
        if (part.mark) {
            m_old.emplace(part.mark->role, part.id);
        }
    }
    if (auto why = foreignPipe()) {
        return why;
    }
    const Part* first = m_before.find(old(kFirstRun));
    const Part* back = m_before.find(old(returnRole(before)));
    const Part* sensor = m_before.find(old(kStopSensor));
    if (!first || !back || first->ends[0].part == kNoPart || back->ends[1].part == kNoPart) {
        return Problem{
            "The proposed loop has lost the pipe it begins or ends with.", "Remove it and propose a loop again.", {}};
    }
    m_hot = first->ends[0];
    m_origin = sensor->at;
    m_wasMirrored = sensor->flipped;
    m_coldPipe = sensor->mark->coldPipe;
    m_coldShare = sensor->mark->coldShare;
    const bool sameWay = before == m_variant.way;
    if (sameWay) {
        m_back = back->ends[1];
    }
    // What the new variant has too stays; where it stands is settled below. A sensor at the heater stays there.
    const bool sensorCutIn = pipesOn(m_before, old(kInletSensor), false) == 2;
    m_survey.sensorInBlock = !sensorCutIn && m_variant.way != ReturnWay::Tank;
    m_survey.inletSensed = sensorCutIn || m_survey.sensorInBlock;
    const Plan plan = planFor(m_variant, m_survey);
    std::set<std::string, std::less<>> kept{std::string(kHotTee)};
    for (const PlanItem& item : plan.items) {
        kept.insert(item.role);
    }
    for (const PlanRun& run : plan.runs) {
        kept.insert(run.role);
    }
    if (sensorCutIn) {
        kept.emplace(kInletSensor);
    }
    if (sameWay) {
        kept.emplace(kColdTee);
        kept.emplace(kInletTee);
    }
    for (const auto& [role, part] : m_old) {
        const Part* held = now().find(part);
        if (!held || !kindOf(*held).isPipe) {
            continue;
        }
        if (kept.contains(role)) {
            Part loose = *held;
            loose.ends = {};
            loose.bends.clear();
            m_gesture.make(ChangePart{std::move(loose)});
            m_ids.emplace(role, part);
        } else {
            for (Step& step : releaseReferences(now(), part, kNoPart)) {
                m_gesture.make(std::move(step));
            }
            m_gesture.make(RemovePart{part});
        }
    }
    for (const auto& [role, part] : m_old) {
        const Part* held = now().find(part);
        if (!held || kindOf(*held).isPipe) {
            continue;
        }
        if (kept.contains(role)) {
            m_ids.emplace(role, part);
            continue;
        }
        auto removal = removeParts(now(), {part}, true);
        if (!removal) {
            return removal.error();
        }
        for (Step& step : removal->steps) {
            m_gesture.make(std::move(step));
        }
    }
    return std::nullopt;
}

Result<Edit> LoopBuilder::swap(ReturnWay before)
{
    if (auto why = takeApart(before)) {
        return tl::unexpected(*why);
    }
    if (m_back.part == kNoPart) {
        Place cold{m_coldPipe, m_coldShare, {}};
        const bool fits = m_coldPipe != kNoPart && !endRefusal(now(), {}, cold, m_variant.way);
        if (!fits) {
            const auto usual = usualEnd(now(), {kNoPart, 0, m_hot}, m_variant.way);
            if (!usual) {
                return problem("There is no place where this return could end.",
                               "Draw the cold side, or choose another return.");
            }
            cold = *usual;
        }
        if (auto why = findEnd(cold)) {
            return tl::unexpected(*why);
        }
    }
    return build({"Swap the loop for: {0}, {1}", {title(m_variant.way), title(m_variant.pumps)}});
}

std::optional<Problem> LoopBuilder::findEnd(const Place& cold)
{
    if (m_variant.way == ReturnWay::Tank) {
        m_back = {freeTank(now()), "return", {}};
        return m_back.part != kNoPart ? std::nullopt
                                      : std::optional(Problem{"There is no fresh tank with a free return port.",
                                                              "Draw the tank, or choose another return.",
                                                              {}});
    }
    if (m_variant.way == ReturnWay::ColdLine) {
        if (cold.pipe == kNoPart) {
            m_back = cold.port;
            return std::nullopt;
        }
        const auto tee = cutIn(kColdTee, cold.pipe, "tee", cold.share, kTee);
        if (!tee) {
            return tee.error();
        }
        m_newEndTee = *tee;
        m_back = {*tee, "branch", {}};
        return std::nullopt;
    }
    // As near to the heater's inlet as there is room, ahead of a sensor that is there.
    const Sides sides(now());
    const PartId sensor = id(kInletSensor);
    const Walk behindSensor = sensor != kNoPart ? walkFrom(now(), sides.heater, "cold", sensor) : Walk{};
    const Sheet sheet(now());
    for (const PartId pipe : Sides::inOrder(sides.cold)) {
        if ((behindSensor.contains(pipe) && behindSensor.size() < sides.cold.size())
            || sides.of(pipe) != WaterSide::Cold) {
            continue;
        }
        // The far end first: the sensor comes between the join and the heater.
        const double far = sides.cold.at(pipe).end == 0 ? 1 : 0;
        const double wanted = pipe == cold.pipe ? cold.share : far;
        if (sheet.room(pipe, wanted, kTee)) {
            const auto tee = cutIn(kInletTee, pipe, "tee", wanted, kTee);
            if (!tee) {
                return tee.error();
            }
            m_newEndTee = *tee;
            m_back = {*tee, "branch", {}};
            return std::nullopt;
        }
    }
    return Problem{
        "There is no room for a tee in the cold pipe to the heater.", "Move the parts at its ends further apart.", {}};
}

void LoopBuilder::cutInletSensor()
{
    if (id(kInletSensor) != kNoPart || !m_old.empty()) {
        return;
    }
    // Between the heater and the first join.
    const Sides sides(now());
    std::vector<PartId> chain;
    for (PartId at = sides.heater, pipe = now().pipeAt(at, "cold")->id; pipe != kNoPart;) {
        chain.push_back(pipe);
        const Part& held = *now().find(pipe);
        const PartId next = held.ends[held.ends[0].part == at ? 1 : 0].part;
        const Part* part = now().find(next);
        pipe = kNoPart;
        if (part && pipesOn(now(), next, true) == 2 && kindOf(*part).goesInLine() && chain.size() < 50) {
            for (const parts::Port& port : kindOf(*part).ports) {
                const Part* other = now().pipeAt(next, port.id);
                pipe = other && other->id != held.id ? other->id : pipe;
            }
            at = next;
        }
    }
    const Sheet sheet(now());
    for (const PartId pipe : chain) {
        const auto met = sides.cold.find(pipe);
        if (met == sides.cold.end() || now().find(pipe)->mark) {
            continue;
        }
        const double near = met->second.end == 0 ? 0 : 1;
        if (sheet.room(pipe, near, kSensor) && cutIn(kInletSensor, pipe, "temperature_sensor", near, kSensor)) {
            Part named = *now().find(id(kInletSensor));
            named.entries["name"] = {std::string("Heater inlet"), parts::Basis::Estimated};
            m_gesture.make(ChangePart{std::move(named)});
            return;
        }
    }
}

void LoopBuilder::survey()
{
    const Sides sides(now());
    for (const auto& [pipe, met] : sides.hot) {
        const Part& held = *now().find(pipe);
        if (held.ends[1 - met.end].part == m_hot.part) {
            m_survey.hotLength_m = met.length_m + tubeLength_m(held);
            m_survey.hotVolume_m3 = met.volume_m3 + tubeVolume_m3(held);
            return;
        }
    }
}

Point LoopBuilder::place(const Plan& rightward, Plan& chosen) const
{
    constexpr double kRound = 28;  // modules of pipe that a way round the block is worth
    // What is about to be moved is in nobody's way.
    Drawing standing = now();
    std::erase_if(standing.parts, [](const Part& part) {
        return part.mark && !isCutIn(part.mark->role) && (part.mark->role != kInletSensor || kindOf(part).isPipe);
    });
    std::erase_if(standing.parts,
                  [&](const Part& part) { return part.id == id(kInletSensor) && pipesOn(now(), part.id, false) != 2; });
    const Sheet sheet(standing);
    const Part* first = now().find(m_hot.part);
    const Part* last = now().find(m_back.part);
    const Point in = first ? first->at : Point{};
    const Point out = last ? last->at : Point{};
    const Box& all = sheet.bounds();
    const double width = rightward.box.right - rightward.box.left;
    const double height = rightward.box.bottom - rightward.box.top;
    // Near the two places, or just outside everything drawn, which is always free.
    const double reach = 150;
    const double left = std::max(all.left - width - 2, std::min(in.x, out.x) - reach);
    const double right = std::min(all.right + width + 2, std::max(in.x, out.x) + reach);
    const double top = std::max(all.top - height - 2, std::min(in.y, out.y) - reach);
    const double bottom = std::min(all.bottom + height + 2, std::max(in.y, out.y) + reach);
    double least = std::numeric_limits<double>::infinity();
    Point best{std::round(all.right) + width + 2, std::round(in.y)};
    for (const bool mirrored : {false, true}) {
        if (m_origin && mirrored != m_wasMirrored) {
            continue;
        }
        const Plan plan = mirrored ? rightward.mirrored() : rightward;
        for (double y = std::ceil(top); y <= bottom; y += 1) {
            for (double x = std::ceil(left); x <= right; x += 1) {
                const auto away = [&](const Point& from, const Point& to) {
                    return std::abs(x + from.x - to.x) + std::abs(y + from.y - to.y);
                };
                // The first row runs one way and the last comes back: a pipe to the other side goes round the block or
                // through it, and so does one to a place above the row that it has to pass.
                const double ahead = mirrored ? -1 : 1;
                const bool roundIn = (x + plan.in.x - in.x) * ahead < 0;
                const bool roundOut = (x + plan.out.x - out.x) * ahead < 0;
                const bool past = out.y < y + plan.in.y && plan.in.y < plan.out.y;
                const double cost = m_origin ? std::abs(x - m_origin->x) + std::abs(y - m_origin->y)
                                             : away(plan.in, in) + 0.7 * away(plan.out, out) + (mirrored ? 0.5 : 0)
                                                   + kRound * (roundIn + roundOut + past);
                if (cost >= least) {
                    continue;
                }
                const Box box{x + plan.box.left, y + plan.box.top, x + plan.box.right, y + plan.box.bottom};
                if (sheet.isFree(box)) {
                    least = cost;
                    best = {x, y};
                    chosen = plan;
                }
            }
        }
    }
    return best;
}

}  // namespace tapward::document
