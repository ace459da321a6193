// SPDX-License-Identifier: GPL-3.0-or-later
// A proposed loop on a coach of two taps, held part by part and pipe by pipe against its plan; where it begins and
// ends against lengths set by hand.
#include "document/proposal.h"

#include <cmath>

#include "document/loop_plan.h"
#include "document/sheet.h"
#include "document/sides.h"
#include "support/catch.h"

using namespace tapward;
using namespace tapward::document;

namespace {

/// CW1 - cold tees T1 and T3 - heater WH1 - hot tee T2 - taps F1 and F2, and a fresh tank. The hot pipes to the taps
/// are 10 m and 2 m long.
struct Coach {
    Drawing drawing;
    PartId city, coldTee, heater, hotTee, far, near, farTee, tank, heaterCold, heaterHot, toFar, toNear, coldFar,
        coldNear;

    Coach()
    {
        city = place("city_inlet", {0, 40});
        coldTee = place("tee", {20, 40});
        heater = place("tankless_heater", {50, 40});
        hotTee = place("tee", {80, 40});
        far = place("faucet", {140, 10});
        near = place("faucet", {100, 10});
        farTee = place("tee", {20, 70});
        tank = place("fresh_tank", {0, 100});
        pipe({city, "outlet", {}}, {coldTee, "run_a", {}}, 1);
        heaterCold = pipe({coldTee, "run_b", {}}, {heater, "cold", {}}, 3);
        heaterHot = pipe({heater, "hot", {}}, {hotTee, "run_a", {}}, 4);
        toFar = pipe({hotTee, "run_b", {}}, {far, "hot", {}}, 10);
        toNear = pipe({hotTee, "branch", {}}, {near, "hot", {}}, 2);
        pipe({coldTee, "branch", {}}, {farTee, "run_a", {}}, 1);
        coldFar = pipe({farTee, "run_b", {}}, {far, "cold", {}}, 6);
        coldNear = pipe({farTee, "branch", {}}, {near, "cold", {}}, 5);
    }
    PartId place(const char* kind, Point at)
    {
        const PartId id = drawing.nextId;
        auto edit = placePart(drawing, kind, at, Stage::Existing);
        REQUIRE(edit);
        apply(drawing, std::move(*edit));
        return id;
    }
    PartId pipe(PipeEnd from, PipeEnd to, double length_m)
    {
        const PartId id = drawing.nextId;
        auto edit = connect(drawing, std::move(from), std::move(to), Stage::Existing);
        REQUIRE(edit);
        apply(drawing, std::move(*edit));
        drawing.find(id)->entries["length_m"] = {length_m, parts::Basis::Measured};
        return id;
    }
    Place hot(double share = 0.9) const { return {toFar, share, {}}; }
};

const Part* role(const Drawing& drawing, std::string_view wanted)
{
    for (const Part& part : drawing.parts) {
        if (part.mark && part.mark->role == wanted) {
            return &part;
        }
    }
    return nullptr;
}

/// What the drawing shows of a variant is what its plan says, from `begin` to `end`.
/// @param anew  a swap leaves the lengths of pipes that were there as they were
void holdsPlan(const Drawing& drawing, Variant variant, const PipeEnd& begin, const PipeEnd& end, bool anew)
{
    Survey survey;
    survey.sensorInBlock = false;
    survey.inletSensed = role(drawing, kInletSensor) != nullptr;
    const Plan plan = planFor(variant, survey);
    const Part* first = role(drawing, kStopSensor);
    REQUIRE(first);
    const bool mirrored = first->flipped;
    const Plan shown = mirrored ? plan.mirrored() : plan;
    for (const PlanItem& item : shown.items) {
        CAPTURE(item.role);
        const Part* part = role(drawing, item.role);
        REQUIRE(part);
        CHECK(part->kind == item.kind);
        CHECK(part->at == Point{first->at.x + item.at.x, first->at.y + item.at.y});
        CHECK(part->turn == item.turn);
        CHECK(part->flipped == item.flipped);
        CHECK(part->stage == Stage::Added);
        CHECK(part->height_m == 0.3);  // in a cabinet, an estimate
        CHECK(part->mark->variant == idOf(variant));
    }
    std::size_t runs = 0;
    for (const PlanRun& run : shown.runs) {
        CAPTURE(run.role);
        const Part* pipe = role(drawing, run.role);
        REQUIRE(pipe);
        ++runs;
        CHECK(pipe->stage == Stage::Added);
        CHECK(pipe->mark->variant == idOf(variant));
        CHECK(pipe->ends[0] == (run.from.empty() ? begin : PipeEnd{role(drawing, run.from)->id, run.fromPort, {}}));
        CHECK(pipe->ends[1] == (run.to.empty() ? end : PipeEnd{role(drawing, run.to)->id, run.toPort, {}}));
        if (!run.to.empty() && anew) {
            CHECK(values(*pipe).number("length_m") == run.length_m);
            CHECK(values(*pipe).number("elbows") == run.elbows);
        }
        CHECK(values(*pipe).number("couplings") == 1);
        CHECK(values(*pipe).text("carries") == "return");
    }
    CHECK(runs == plan.runs.size());
}

PipeEnd branchOf(const Drawing& drawing, std::string_view tee)
{
    const Part* part = role(drawing, tee);
    REQUIRE(part);
    return {part->id, "branch", {}};
}

std::string text(const Drawing& drawing, std::string_view holder, const char* key)
{
    return values(*role(drawing, holder)).text(key);
}

std::string numberOf(const Drawing& drawing, std::string_view wanted)
{
    return std::to_string(role(drawing, wanted)->id);
}

Drawing made(const Drawing& before, const Place& hot, const Place& cold, Variant variant)
{
    auto edit = propose(before, hot, cold, variant);
    if (!edit) {
        FAIL(render(edit.error().what, UnitSystem::Metric));
    }
    Drawing drawing = before;
    apply(drawing, std::move(*edit));
    return drawing;
}

}  // namespace

TEST_CASE("a loop usually ends in the cold pipe of the tap nearest to where it begins", "[document][proposal]")
{
    const Coach coach;
    // From nine tenths of the ten metres the far tap is 1 m away; from one tenth it is 9 m, the near one 1 + 2 m.
    const auto far = usualEnd(coach.drawing, coach.hot(0.9), ReturnWay::ColdLine);
    REQUIRE(far);
    CHECK(far->pipe == coach.coldFar);
    CHECK(far->share == Approx(0.5).margin(0.05));
    const auto near = usualEnd(coach.drawing, coach.hot(0.1), ReturnWay::ColdLine);
    REQUIRE(near);
    CHECK(near->pipe == coach.coldNear);
    // A return of its own ends in the cold pipe at the heater, one into the tank on its return port.
    CHECK(usualEnd(coach.drawing, coach.hot(), ReturnWay::OwnLine)->pipe == coach.heaterCold);
    const auto tank = usualEnd(coach.drawing, coach.hot(), ReturnWay::Tank);
    REQUIRE(tank);
    CHECK(tank->pipe == kNoPart);
    CHECK(tank->port == PipeEnd{coach.tank, "return", {}});
    Coach without;
    without.drawing.find(without.tank)->stage = Stage::Removed;
    CHECK_FALSE(usualEnd(without.drawing, without.hot(), ReturnWay::Tank));
    CHECK(endRefusal(without.drawing, without.hot(), {}, ReturnWay::Tank));
    CHECK_FALSE(endRefusal(coach.drawing, coach.hot(), {}, ReturnWay::Tank));
}

TEST_CASE("places on either side are told from each other and from what is joined to neither", "[document][proposal]")
{
    Coach coach;
    CHECK(sideOf(coach.drawing, coach.hot()) == WaterSide::Hot);
    CHECK(sideOf(coach.drawing, {coach.coldFar, 0.5, {}}) == WaterSide::Cold);
    const PartId lonely = coach.pipe({kNoPart, {}, {0, 200}}, {kNoPart, {}, {30, 200}}, 1);
    CHECK(sideOf(coach.drawing, {lonely, 0.5, {}}) == WaterSide::None);
    CHECK(beginRefusal(coach.drawing, {lonely, 0.5, {}})->what.text == "{0} is not joined to the heater.");
    CHECK(beginRefusal(coach.drawing, {coach.coldFar, 0.5, {}})->what.text == "{0} carries cold water.");
    CHECK(endRefusal(coach.drawing, {}, coach.hot(), ReturnWay::OwnLine)->what.text == "{0} carries hot water.");
    // Free ports: a tap's say themselves, a tee's are of the side of its other pipes.
    const PartId tap = coach.place("faucet", {200, 10}), tee = coach.place("tee", {200, 60});
    CHECK(sideOf(coach.drawing, {kNoPart, 0, {tap, "hot", {}}}) == WaterSide::Hot);
    CHECK(sideOf(coach.drawing, {kNoPart, 0, {tap, "cold", {}}}) == WaterSide::Cold);
    CHECK(sideOf(coach.drawing, {kNoPart, 0, {tee, "branch", {}}}) == WaterSide::None);
    coach.drawing.find(coach.toFar)->ends[1] = {tee, "run_a", {}};
    CHECK(sideOf(coach.drawing, {kNoPart, 0, {tee, "branch", {}}}) == WaterSide::Hot);
    CHECK_FALSE(beginRefusal(coach.drawing, {kNoPart, 0, {tee, "branch", {}}}));
    CHECK(beginRefusal(coach.drawing, {kNoPart, 0, {tee, "run_a", {}}}));  // a pipe is there
    CHECK(beginRefusal(coach.drawing, {kNoPart, 0, {tee, "spout", {}}}));
    CHECK(beginRefusal(coach.drawing, {tee, 0.5, {}}));  // no pipe
    coach.drawing.find(coach.toFar)->stage = Stage::Removed;
    CHECK(beginRefusal(coach.drawing, coach.hot()));
}

TEST_CASE("each variant is drawn as its plan says, in free room, from the hot tee to where it ends",
          "[document][proposal]")
{
    const Coach coach;
    const Place hot = coach.hot();
    for (const Variant& variant : variants()) {
        CAPTURE(std::string(idOf(variant)));
        const auto cold = usualEnd(coach.drawing, hot, variant.way);
        REQUIRE(cold);
        const Drawing drawing = made(coach.drawing, hot, *cold, variant);
        const PipeEnd end = variant.way == ReturnWay::ColdLine  ? branchOf(drawing, kColdTee)
                            : variant.way == ReturnWay::OwnLine ? branchOf(drawing, kInletTee)
                                                                : PipeEnd{coach.tank, "return", {}};
        holdsPlan(drawing, variant, branchOf(drawing, kHotTee), end, true);
        // The tees sit where they were asked for; the inlet sensor between the join and the heater.
        CHECK(drawing.pipeAt(role(drawing, kHotTee)->id, "run_a")->id == coach.toFar);
        const Part* sensor = role(drawing, kInletSensor);
        REQUIRE(sensor);
        CHECK(text(drawing, kInletSensor, "name") == "Heater inlet");
        const Part* toHeater = drawing.pipeAt(coach.heater, "cold");
        CHECK((toHeater->ends[0].part == sensor->id || toHeater->ends[1].part == sensor->id));
        if (variant.way == ReturnWay::OwnLine) {
            // As long as the hot way, to a tenth of a metre.
            CHECK_THAT(values(*role(drawing, "return_own")).number("length_m"),
                       WithinAbs(4 + values(*drawing.find(coach.toFar)).number("length_m"), 0.05));
        }
        // On nothing that was there.
        const Sheet before(coach.drawing);
        for (const Part& part : drawing.parts) {
            if (part.mark && !kindOf(part).isPipe && part.mark->role != kHotTee && part.mark->role != kColdTee
                && part.mark->role != kInletTee && part.mark->role != kInletSensor) {
                CAPTURE(part.mark->role);
                CHECK(before.isFree(boxOf(part)));
            }
        }
        // Who names whom.
        for (const auto& [key, to] : {std::pair<const char*, std::string_view>{"stop_sensor", kStopSensor},
                                      {"limit_sensor", kLimitSensor},
                                      {"inlet_sensor", kInletSensor},
                                      {"flow_sensor", kFlowSensor},
                                      {"button", kButton}}) {
            CAPTURE(key);
            CHECK(text(drawing, kController, key) == numberOf(drawing, to));
        }
        for (const char* driven : {"pump_1", "pump_2", "loop_valve", "push_button"}) {
            if (role(drawing, driven)) {
                CHECK(text(drawing, driven, "controller") == numberOf(drawing, kController));
            }
        }
        for (const char* fed : {"pump_1", "pump_2", "loop_valve", "controller"}) {
            if (role(drawing, fed)) {
                CHECK(text(drawing, fed, "fuse") == numberOf(drawing, "fuse"));
            }
        }
        // A case that presses the button, about the stop sensor.
        REQUIRE(drawing.cases.size() == 2);
        const Case& run = drawing.cases[0];
        CHECK(run.name == "Preheat run");
        CHECK(run.view == View::After);
        CHECK(run.duration_s == 300);
        CHECK(run.targetPart == role(drawing, kStopSensor)->id);
        REQUIRE(run.actions.size() == 1);
        CHECK(run.actions[0].kind == ActionKind::PressButton);
        CHECK(run.actions[0].at_s == 2);
        CHECK(run.actions[0].part == role(drawing, kButton)->id);
        // Three in a row; no case of the drawing opens a tap, so none is known to open.
        REQUIRE(drawing.cases[1].actions.size() == 3);
        for (const Action& press : drawing.cases[1].actions) {
            CHECK(press.kind == ActionKind::PressButton);
            CHECK(press.part == role(drawing, kButton)->id);
        }
        CHECK(drawing.cases[1].duration_s > drawing.cases[1].actions[2].at_s + 200);
        CHECK(proposed(drawing) == variant);
        CHECK(hasLoop(drawing));
        CHECK(beginRefusal(drawing, hot)->what.text == "There already is a loop, with {0}.");
        // The place asked for is remembered with the stop sensor alone.
        CHECK(role(drawing, kStopSensor)->mark->coldPipe == cold->pipe);
        CHECK(role(drawing, kValve)->mark->coldPipe == kNoPart);
    }
    CHECK_FALSE(hasLoop(coach.drawing));
    CHECK_FALSE(proposed(coach.drawing));
    CHECK(proposalParts(coach.drawing).empty());
}

TEST_CASE("a plan's symbols lie apart, and a check valve stands after its pump on the same row", "[document][proposal]")
{
    for (const Variant& variant : variants()) {
        CAPTURE(std::string(idOf(variant)));
        const Plan plan = planFor(variant, Survey{});
        const auto at = [&](std::string_view wanted) {
            for (const PlanItem& item : plan.items) {
                if (item.role == wanted) {
                    return item.at;
                }
            }
            FAIL(std::string(wanted));
            return Point{};
        };
        if (variant.pumps == PumpSet::TwoInParallel) {
            for (const auto& [pump, check] : {std::pair{"pump_1", "check_1"}, {"pump_2", "check_2"}}) {
                CHECK(at(pump).y == at(check).y);
                CHECK(at(check).x < at(pump).x);  // water runs to the left there
            }
            CHECK(at("pump_1").y != at("pump_2").y);
        }
        for (const PlanItem& one : plan.items) {
            // In the lower rows water runs to the left: through pumps and check valves alike.
            CHECK((one.flipped || (one.kind != "circulator" && one.kind != "check_valve")));
            for (const PlanItem& other : plan.items) {
                CAPTURE(one.role, other.role);
                CHECK((&one == &other || std::abs(one.at.x - other.at.x) >= 6 || std::abs(one.at.y - other.at.y) >= 6));
            }
        }
    }
}

TEST_CASE("without a heater it is the heater that is missed, not a way to it", "[document][proposal]")
{
    Coach coach;
    std::erase_if(coach.drawing.parts, [&](const Part& part) { return part.id == coach.heater; });
    const auto why = beginRefusal(coach.drawing, coach.hot());
    REQUIRE(why);
    CHECK(why->what.text == "No water heater with both its pipes connected is drawn.");
}

TEST_CASE("a swapped loop is drawn as its new plan says, and what both have stays what it was", "[document][proposal]")
{
    const Coach coach;
    const Variant first{ReturnWay::ColdLine, PumpSet::One};
    Drawing start = made(coach.drawing, coach.hot(), *usualEnd(coach.drawing, coach.hot(), first.way), first);
    for (Part& part : start.parts) {
        if (part.mark && part.mark->role == "pump_1") {
            part.tag = "MINE";
        }
    }
    for (const Variant& variant : variants()) {
        if (variant == first) {
            CHECK_FALSE(swapVariant(start, variant));
            continue;
        }
        CAPTURE(std::string(idOf(variant)));
        auto edit = swapVariant(start, variant);
        REQUIRE(edit);
        Drawing drawing = start;
        apply(drawing, std::move(*edit));
        const PipeEnd end = variant.way == ReturnWay::ColdLine  ? branchOf(drawing, kColdTee)
                            : variant.way == ReturnWay::OwnLine ? branchOf(drawing, kInletTee)
                                                                : PipeEnd{coach.tank, "return", {}};
        holdsPlan(drawing, variant, branchOf(drawing, kHotTee), end, false);
        CHECK(role(drawing, "pump_1")->tag == "MINE");
        CHECK(role(drawing, kHotTee)->at == role(start, kHotTee)->at);
        CHECK(role(drawing, kInletSensor)->id == role(start, kInletSensor)->id);
        CHECK((role(drawing, kColdTee) != nullptr) == (variant.way == ReturnWay::ColdLine));
        CHECK((role(drawing, kInletTee) != nullptr) == (variant.way == ReturnWay::OwnLine));
        CHECK(drawing.cases == start.cases);
        // Two pumps are two, the second named to the controller and fed by the fuse.
        CHECK((role(drawing, "pump_2") != nullptr) == (variant.pumps != PumpSet::One));
        if (role(drawing, "pump_2")) {
            CHECK(text(drawing, "pump_2", "controller") == numberOf(drawing, kController));
            CHECK(text(drawing, "pump_2", "fuse") == numberOf(drawing, "fuse"));
        }
        for (const Part& part : drawing.parts) {
            CHECK((!kindOf(part).isPipe || (part.ends[0].part != kNoPart && part.ends[1].part != kNoPart)));
        }
        // And back: what only the other variant has is gone, what goes on is joined anew.
        auto back = swapVariant(drawing, first);
        REQUIRE(back);
        apply(drawing, std::move(*back));
        holdsPlan(drawing, first, branchOf(drawing, kHotTee), branchOf(drawing, kColdTee), false);
        CHECK(role(drawing, "pump_2") == nullptr);
        CHECK(role(drawing, "pump_1")->tag == "MINE");
        CHECK(drawing.parts.size() == start.parts.size());
        // Where it stood: what is moved is in nobody's way.
        CHECK(role(drawing, kStopSensor)->at == role(start, kStopSensor)->at);
    }
    // Something joined to it by hand is in the way, and so is a lost first pipe.
    Drawing joined = start;
    Part extra;
    extra.id = joined.nextId++;
    extra.kind = "pipe_run";
    extra.tag = "LX";
    extra.ends[0] = {role(joined, kValve)->id, "inlet", {}};
    joined.parts.push_back(extra);
    CHECK(swapVariant(joined, {ReturnWay::OwnLine, PumpSet::One}).error().what.text
          == "Something was joined to {0} by hand.");
    Drawing lost = start;
    std::erase_if(lost.parts, [](const Part& part) { return part.mark && part.mark->role == kFirstRun; });
    CHECK(swapVariant(lost, {ReturnWay::OwnLine, PumpSet::One}).error().what.text
          == "The proposed loop has lost the pipe it begins or ends with.");
}

TEST_CASE("a loop stands near to where it begins, not beyond everything drawn", "[document][proposal]")
{
    const Coach coach;
    const Place hot = coach.hot(0.1);
    const Drawing drawing = made(coach.drawing, hot, *usualEnd(coach.drawing, hot, ReturnWay::ColdLine), {});
    const Point tee = role(drawing, kHotTee)->at, sensor = role(drawing, kStopSensor)->at;
    CAPTURE(tee.x, tee.y, sensor.x, sensor.y);
    // The drawing reaches from 0 to 142; a block beyond it would begin at least 97 modules from the tee.
    CHECK(tee.x < 100);
    CHECK(std::abs(tee.x - sensor.x) + std::abs(tee.y - sensor.y) < 30);
}

TEST_CASE("cases that press a button come with a loop, once; they begin as the first of the drawing",
          "[document][proposal]")
{
    Coach coach;
    Case draw;
    draw.name = "Preheat run";
    draw.start_C = 7;
    draw.duration_s = 500;
    draw.view = View::Before;
    coach.drawing.cases = {draw};
    const auto cold = usualEnd(coach.drawing, coach.hot(), ReturnWay::ColdLine);
    const Drawing added = made(coach.drawing, coach.hot(), *cold, {});
    REQUIRE(added.cases.size() == 3);
    CHECK(added.cases[1].name == "Preheat run 2");
    CHECK(added.cases[2].name == "Three presses in a row");
    for (std::size_t i = 1; i < 3; ++i) {
        CHECK(added.cases[i].start_C == 7);
        CHECK(added.cases[i].view == View::After);
    }
    CHECK(added.cases[1].start_C == 7);
    CHECK(added.cases[1].duration_s == 500);
    CHECK(added.cases[1].view == View::After);
    coach.drawing.cases[0].actions.resize(1);  // a press, but of the coach as it is
    CHECK(made(coach.drawing, coach.hot(), *cold, {}).cases.size() == 3);
    coach.drawing.cases[0].view = View::After;
    CHECK(made(coach.drawing, coach.hot(), *cold, {}).cases.size() == 1);

    // A tap that a case opens is opened after a run, and cold with the loop's valve stuck open.
    const Part& tap = *coach.drawing.findTag("F1");
    coach.drawing.cases[0].actions[0] = {};
    coach.drawing.cases[0].actions[0].kind = ActionKind::OpenOutlet;
    coach.drawing.cases[0].actions[0].part = tap.id;
    coach.drawing.cases[0].actions[0].second = 1;
    const Drawing four = made(coach.drawing, coach.hot(), *cold, {});
    REQUIRE(four.cases.size() == 5);
    const Case& after = four.cases[3];
    CHECK(after.targetPart == tap.id);
    REQUIRE(after.actions.size() == 2);
    CHECK(after.actions[0].kind == ActionKind::PressButton);
    CHECK(after.actions[1].kind == ActionKind::OpenOutlet);
    CHECK(after.actions[1].part == tap.id);
    CHECK(after.actions[1].second == 1);
    CHECK(after.actions[1].at_s > 200);
    const Case& stuck = four.cases[4];
    REQUIRE(stuck.actions.size() == 2);
    CHECK(stuck.actions[0].kind == ActionKind::StartFault);
    CHECK(stuck.actions[0].fault == "stuck_open");
    CHECK(stuck.actions[0].part == role(four, kValve)->id);
    CHECK(stuck.actions[1].part == tap.id);
    CHECK(stuck.actions[1].second == 0);
}
