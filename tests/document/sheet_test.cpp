// SPDX-License-Identifier: GPL-3.0-or-later
// Where a proposed loop finds room and which way its pipes take: places and costs worked out by hand on drawings of
// a few lines. Costs in modules: 1 a step, 3 a corner, 4 a crossing, 5 beside another pipe's corner, 20 a step along
// a pipe, 200 a step through a symbol (the declarations at the head of sheet.cpp).
#include "document/sheet.h"

#include <cmath>
#include <set>

#include "base/units.h"
#include "document/edit.h"
#include "document/loop_plan.h"
#include "document/route.h"
#include "document/sides.h"
#include "parts/tubing.h"
#include "support/catch.h"

using namespace tapward;
using namespace tapward::document;

namespace {

PartId place(Drawing& drawing, const char* kind, Point at, int turn = 0)
{
    const PartId id = drawing.nextId;
    auto edit = placePart(drawing, kind, at, Stage::Existing, turn);
    REQUIRE(edit);
    apply(drawing, std::move(*edit));
    return id;
}

PartId pipe(Drawing& drawing, PipeEnd from, PipeEnd to, double length_m = 1)
{
    const PartId id = drawing.nextId;
    auto edit = connect(drawing, std::move(from), std::move(to), Stage::Existing);
    REQUIRE(edit);
    apply(drawing, std::move(*edit));
    drawing.find(id)->entries["length_m"] = {length_m, parts::Basis::Measured};
    return id;
}

PartId line(Drawing& drawing, Point from, Point to) { return pipe(drawing, {kNoPart, {}, from}, {kNoPart, {}, to}); }

const parts::Port& port(const Drawing& drawing, PartId id, const char* name)
{
    return *kindOf(*drawing.find(id)).port(name);
}

}  // namespace

TEST_CASE("a box is as wide as its symbol, across when it is turned", "[document][sheet]")
{
    Drawing drawing;
    const Box level = boxOf(*drawing.find(place(drawing, "note", {10, 20})));  // 8 by 2
    CHECK(level.left == 6);
    CHECK(level.right == 14);
    CHECK(level.top == 19);
    CHECK(level.bottom == 21);
    const Box upright = boxOf(*drawing.find(place(drawing, "note", {10, 20}, 1)));
    CHECK(upright.left == 9);
    CHECK(upright.right == 11);
    CHECK(upright.top == 16);
    CHECK(upright.bottom == 24);
    // Boxes that touch do not overlap.
    const Box box{0, 0, 4, 4};
    CHECK_FALSE(box.overlaps({4, 0, 8, 4}));
    CHECK_FALSE(box.overlaps({-4, 0, 0, 4}));
    CHECK_FALSE(box.overlaps({0, 4, 4, 8}));
    CHECK_FALSE(box.overlaps({0, -4, 4, 0}));
    CHECK(box.overlaps({3.9, 3.9, 8, 8}));
    CHECK(box.overlaps({-4, -4, 0.1, 0.1}));
    CHECK(box.grown(1).overlaps({4.5, 1, 8, 2}));
    CHECK_FALSE(box.grown(0.5).overlaps({4.5, 1, 8, 2}));
}

TEST_CASE("a tee finds the place on a pipe nearest to the one wanted, with a module of pipe to each side",
          "[document][sheet]")
{
    Drawing drawing;
    const PartId run = line(drawing, {0, 0}, {20, 0});
    const auto at = [&](double share) {
        const auto spot = Sheet(drawing).room(run, share, 2);
        return spot ? spot->at : Point{-99, -99};
    };
    CHECK(at(0.5) == Point{10, 0});
    CHECK(at(0) == Point{2, 0});   // half a tee and a module
    CHECK(at(1) == Point{18, 0});
    CHECK(at(0.26) == Point{5, 0});
    CHECK(Sheet(drawing).room(run, 0.26, 2)->share == 0.25);
    CHECK(Sheet(drawing).room(run, 0, 4)->at == Point{3, 0});  // a symbol of four
    CHECK_FALSE(Sheet(drawing).room(99, 0.5, 2));
    // A symbol on the line takes its own room, a pipe across it a little more than its own.
    Drawing taken = drawing;
    place(taken, "hand_valve", {10, 2.5});  // from 8 to 12, half a module beside the pipe
    CHECK(Sheet(taken).room(run, 0.5, 2)->at == Point{7, 0});
    Drawing crossed = drawing;
    line(crossed, {10, -5}, {10, 5});
    CHECK(Sheet(crossed).room(run, 0.5, 2)->at == Point{8, 0});
    CHECK(Sheet(crossed).room(run, 0.55, 2)->at == Point{12, 0});
    // Four modules are just enough.
    Drawing small;
    const PartId four = line(small, {0, 3}, {0, 7});
    REQUIRE(Sheet(small).room(four, 0.5, 2));
    CHECK(Sheet(small).room(four, 0.5, 2)->at == Point{0, 5});
    small.find(four)->ends[1].loose = {0, 6.9};
    CHECK_FALSE(Sheet(small).room(four, 0.5, 2));
    small.find(four)->ends[1].loose = {0, 3};
    CHECK_FALSE(Sheet(small).room(four, 0.5, 2));
}

TEST_CASE("the share of a place counts the pipe's whole drawn length, round its corners", "[document][sheet]")
{
    Drawing drawing;
    const PartId run = line(drawing, {0, 0}, {20, 30});
    drawing.find(run)->bends = {{20, 0}};  // 20 along, 30 down
    const auto late = Sheet(drawing).room(run, 0.9, 2);
    REQUIRE(late);
    CHECK(late->at == Point{20, 25});
    CHECK(late->share == 0.9);  // 45 of 50
    const auto early = Sheet(drawing).room(run, 0.2, 2);
    REQUIRE(early);
    CHECK(early->at == Point{10, 0});
    // The same pipe from its other end.
    Part& turned = *drawing.find(run);
    std::swap(turned.ends[0], turned.ends[1]);
    CHECK(Sheet(drawing).room(run, 0.1, 2)->at == Point{20, 25});
}

TEST_CASE("a box is free when no symbol and no pipe is in it", "[document][sheet]")
{
    Drawing drawing;
    place(drawing, "hand_valve", {0, 0});  // from -2 to 2
    line(drawing, {10, -5}, {10, 5});
    const Sheet sheet(drawing);
    CHECK(sheet.isFree({2, -1, 9, 1}));
    CHECK_FALSE(sheet.isFree({1.9, -1, 9, 1}));
    CHECK_FALSE(sheet.isFree({2, -1, 10.1, 1}));
    CHECK_FALSE(sheet.isFree({2, -1, 10, 1}));  // a pipe along its edge is in it
    CHECK(sheet.isFree({10.1, -1, 20, 1}));
    CHECK(sheet.isFree({9, 5.1, 11, 7}));
    CHECK(sheet.bounds().left == -2);
    CHECK(sheet.bounds().top == -5);
    CHECK(sheet.bounds().right == 10);
    CHECK(sheet.bounds().bottom == 5);
    const Sheet nothing{Drawing{}};
    CHECK(nothing.bounds().left == 0);
    CHECK(nothing.bounds().right == 0);
    CHECK(nothing.isFree({0, 0, 100, 100}));
}

TEST_CASE("a line is charged for what it crosses, follows, touches and goes through", "[document][sheet]")
{
    Drawing drawing;
    line(drawing, {5, 0}, {15, 0});
    place(drawing, "hand_valve", {30, 0});
    line(drawing, {30, 20}, {31, 20});  // makes the sheet reach down
    const Sheet sheet(drawing);
    // Ten steps down across the pipe's middle: 10 + 4.
    CHECK(sheet.cost({{8, 5}, {8, -5}}) == 14);
    CHECK(sheet.cost({{8, -5}, {8, 5}}) == 14);
    // Twenty steps along it: eleven places of it at 20, its neighbours at 5: beyond both ends and inside both.
    CHECK(sheet.cost({{0, 0}, {20, 0}}) == 20 + 11 * 20 + 4 * 5);
    // Across its end, which is a corner to others: 10, the end 20 and 4, above and below it 5 each.
    CHECK(sheet.cost({{5, 5}, {5, -5}}) == 10 + 24 + 10);
    // Through a symbol of four modules, its edges included: five places.
    CHECK(sheet.cost({{30, 5}, {30, -5}}) == 10 + 5 * 200);
    // A corner in the open 3; one on a pipe 20 more.
    CHECK(sheet.cost({{0, 8}, {20, 8}, {20, 4}}) == 24 + 3);
    CHECK(sheet.cost({{10, 5}, {10, 0}, {10, -5}}) == 10 + 4 + 3 + 20);
    // The last place is a port: not charged for.
    CHECK(sheet.cost({{8, 5}, {8, 0}}) == 5);
}

TEST_CASE("the cheapest way goes straight, across a pipe, beside it, and round a symbol", "[document][sheet]")
{
    Drawing drawing;
    const PartId from = place(drawing, "hand_valve", {0, 0}), to = place(drawing, "hand_valve", {20, 0});
    const auto way = [&] {
        auto found = Sheet(drawing).way(*drawing.find(from), port(drawing, from, "outlet"), *drawing.find(to),
                                        port(drawing, to, "inlet"));
        REQUIRE(found);
        return *found;
    };
    const Drawing bare = drawing;
    // From (2, 0) to (18, 0).
    CHECK(way().cost == 16);
    CHECK(way().corners == std::vector<Point>{{2, 0}, {18, 0}});
    line(drawing, {10, -30}, {10, 30});
    CHECK(way().cost == 16 + 4);
    CHECK(way().corners.size() == 2);
    drawing = bare;
    // Two modules beside a pipe that lies in the way: one module would touch both its corners.
    line(drawing, {5, 0}, {15, 0});
    CHECK(way().cost == 16 + 4 + 4 * 3);
    CHECK(way().corners.size() == 6);
    drawing = bare;
    // A symbol of four: three modules up or down.
    place(drawing, "check_valve", {10, 0});
    CHECK(way().cost == 16 + 6 + 4 * 3);
    // Ways leave and enter their ports straight.
    CHECK(way().corners[1].y == 0);
    CHECK(way().corners[4].y == 0);
    drawing = bare;
    drawing.find(to)->turn = 2;  // its inlet is at (22, 0) and faces right: once round the symbol
    // Along 20, down 3 and up 3 beside the valve, one beyond and one back.
    CHECK(way().cost == 20 + 6 + 2 + 4 * 3);
    CHECK(way().corners.back() == Point{22, 0});
    CHECK(way().corners[way().corners.size() - 2] == Point{23, 0});
    drawing.find(to)->at = {20.5, 0};  // off the grid
    CHECK_FALSE(Sheet(drawing).way(*drawing.find(from), port(drawing, from, "outlet"), *drawing.find(to),
                                   port(drawing, to, "inlet")));
    drawing.find(to)->at = {2000, 2000};  // a sheet of 400,000 places at most
    CHECK_FALSE(Sheet(drawing).way(*drawing.find(from), port(drawing, from, "outlet"), *drawing.find(to),
                                   port(drawing, to, "inlet")));
}

TEST_CASE("many pipes are crossed until the way round them is cheaper", "[document][sheet]")
{
    Drawing drawing;
    const PartId from = place(drawing, "hand_valve", {0, 0}), to = place(drawing, "hand_valve", {20, 0});
    for (const double x : {6, 8, 10, 12, 14}) {
        line(drawing, {x, -3}, {x, 3});
    }
    const auto way = Sheet(drawing).way(*drawing.find(from), port(drawing, from, "outlet"), *drawing.find(to),
                                        port(drawing, to, "inlet"));
    REQUIRE(way);
    // Five crossings cost 20; round them 2 * 5 steps and four corners 22.
    CHECK(way->cost == 16 + 5 * 4);
    line(drawing, {15, -3}, {15, 3});
    const auto around = Sheet(drawing).way(*drawing.find(from), port(drawing, from, "outlet"), *drawing.find(to),
                                           port(drawing, to, "inlet"));
    REQUIRE(around);
    CHECK(around->cost == 16 + 22);
}

namespace {

/// City CW1 - cold pipe 3 m - heater - hot pipe 2 m - tee - 1 m to tap F1, 4 m of 3/4 in to tap F2.
struct Sided {
    Drawing drawing;
    PartId city, heater, tee, near, far, cold, hot, toNear, toFar;
    Sided()
    {
        city = place(drawing, "city_inlet", {0, 0});
        heater = place(drawing, "tankless_heater", {20, 0});
        tee = place(drawing, "tee", {40, 0});
        near = place(drawing, "faucet", {40, 20});
        far = place(drawing, "faucet", {60, 20});
        cold = pipe(drawing, {city, "outlet", {}}, {heater, "cold", {}}, 3);
        hot = pipe(drawing, {heater, "hot", {}}, {tee, "run_a", {}}, 2);
        toNear = pipe(drawing, {near, "hot", {}}, {tee, "branch", {}}, 1);  // drawn against the flow
        toFar = pipe(drawing, {tee, "run_b", {}}, {far, "hot", {}}, 4);
        drawing.find(toFar)->entries["tube"] = {std::string("pex_3_4"), parts::Basis::Measured};
    }
};

}  // namespace

TEST_CASE("a walk from the heater meets pipes in order of the tube before them and ends at taps", "[document][sides]")
{
    Sided coach;
    const Sides sides(coach.drawing);
    CHECK(sides.heater == coach.heater);
    CHECK(Sides::inOrder(sides.hot) == std::vector<PartId>{coach.hot, coach.toNear, coach.toFar});
    CHECK(sides.hot.at(coach.hot).length_m == 0);
    CHECK(sides.hot.at(coach.toNear).length_m == 2);
    CHECK(sides.hot.at(coach.toFar).length_m == 2);
    CHECK(sides.hot.at(coach.hot).end == 0);
    CHECK(sides.hot.at(coach.toNear).end == 1);
    const double litre_m = parts::tube("pex_1_2").volume_m3_m();
    CHECK_THAT(sides.hot.at(coach.toFar).volume_m3, WithinRel(2 * litre_m, 1e-12));
    CHECK_THAT(tubeVolume_m3(*coach.drawing.find(coach.toFar)),
               WithinRel(4 * parts::tube("pex_3_4").volume_m3_m(), 1e-12));
    CHECK(tubeLength_m(*coach.drawing.find(coach.toFar)) == 4);
    CHECK(Sides::inOrder(sides.cold) == std::vector<PartId>{coach.cold});
    CHECK(sides.of(coach.hot) == WaterSide::Hot);
    CHECK(sides.of(coach.toFar) == WaterSide::Hot);
    CHECK(sides.of(coach.cold) == WaterSide::Cold);
    CHECK(sides.of(99) == WaterSide::None);
    // From the far tap back: the tee is met after 4 m, the other branch too; the heater ends it.
    const Walk back = walkFrom(coach.drawing, coach.far, "hot");
    CHECK(back.at(coach.toFar).length_m == 0);
    CHECK(back.at(coach.hot).length_m == 4);
    CHECK(back.at(coach.hot).end == 1);
    CHECK(back.count(coach.cold) == 0);
    CHECK(walkFrom(coach.drawing, coach.far, "cold").empty());
    // A part to stop at.
    CHECK(walkFrom(coach.drawing, coach.far, "hot", coach.tee).size() == 1);
}

TEST_CASE("a pipe that both sides reach counts to the nearer one; what is taken out counts to none",
          "[document][sides]")
{
    Sided coach;
    // A crossover from the near tap's hot tee to the city: its hot side end is 2 m from the heater, the cold one 3 m.
    const PartId hotJoin = place(coach.drawing, "tee", {70, 0}), coldJoin = place(coach.drawing, "tee", {80, 0});
    Drawing& drawing = coach.drawing;
    drawing.find(coach.toFar)->ends[1] = {hotJoin, "run_a", {}};
    const PartId crossover = pipe(drawing, {hotJoin, "run_b", {}}, {coldJoin, "run_a", {}}, 1);
    drawing.find(coach.cold)->ends[0] = {coldJoin, "run_b", {}};
    CHECK(Sides(drawing).of(crossover) == WaterSide::Cold);  // 3 m from the heater's cold port, 6 m from its hot one
    drawing.find(coach.cold)->entries["length_m"] = {7.0, parts::Basis::Measured};
    CHECK(Sides(drawing).of(crossover) == WaterSide::Hot);
    drawing.find(coach.cold)->entries["length_m"] = {6.0, parts::Basis::Measured};
    CHECK(Sides(drawing).of(crossover) == WaterSide::Hot);  // equally far
    drawing.find(crossover)->stage = Stage::Removed;
    CHECK(Sides(drawing).of(crossover) == WaterSide::None);
    drawing.find(crossover)->stage = Stage::Added;
    CHECK(Sides(drawing).of(crossover) == WaterSide::Hot);
}

TEST_CASE("the heater of the sides is a tankless one first, present and joined on both ports", "[document][sides]")
{
    Sided coach;
    Drawing drawing = coach.drawing;
    drawing.find(coach.heater)->stage = Stage::Removed;
    CHECK(Sides(drawing).heater == kNoPart);
    CHECK(Sides(drawing).hot.empty());
    drawing = coach.drawing;
    drawing.find(coach.hot)->ends[0] = {};
    CHECK(Sides(drawing).heater == kNoPart);
    drawing = coach.drawing;
    drawing.find(coach.cold)->ends[1] = {};
    CHECK(Sides(drawing).heater == kNoPart);
    // A storage heater, drawn first, is taken only when there is no tankless one.
    Drawing both;
    const PartId tank = place(both, "storage_heater", {0, 0}), tankless = place(both, "tankless_heater", {20, 0});
    for (const PartId heater : {tank, tankless}) {
        pipe(both, {heater, "cold", {}}, {kNoPart, {}, {0, 30}});
        pipe(both, {heater, "hot", {}}, {kNoPart, {}, {30, 30}});
    }
    CHECK(Sides(both).heater == tankless);
    both.find(tankless)->stage = Stage::Removed;
    CHECK(Sides(both).heater == tank);
}

TEST_CASE("walks end at what holds or drives water, and go on through what lets it by", "[document][sides]")
{
    const auto passes = [](const char* kind, const char* in, const char* out) {
        Drawing drawing;
        const PartId start = place(drawing, "tee", {0, 0});
        const PartId between = place(drawing, kind, {20, 0});
        pipe(drawing, {start, "run_b", {}}, {between, in, {}}, 1);
        pipe(drawing, {between, out, {}}, {kNoPart, {}, {40, 0}}, 1);
        return walkFrom(drawing, start, "run_b").size() == 2;
    };
    for (const char* kind : {"hand_valve", "check_valve", "filter", "flow_sensor", "temperature_sensor", "regulator"}) {
        CAPTURE(kind);
        CHECK(passes(kind, "inlet", "outlet"));
    }
    for (const char* kind : {"circulator", "motor_valve", "demand_pump"}) {
        CAPTURE(kind);
        CHECK_FALSE(passes(kind, "inlet", "outlet"));
    }
    CHECK_FALSE(passes("tankless_heater", "cold", "hot"));
    CHECK_FALSE(passes("storage_heater", "cold", "hot"));
    CHECK_FALSE(passes("mixing_valve", "cold", "mixed"));
    CHECK_FALSE(passes("fresh_tank", "return", "outlet"));
    CHECK_FALSE(passes("faucet", "cold", "hot"));
}

namespace {

const parts::Entries& controllerOf(const Plan& plan)
{
    for (const PlanItem& item : plan.items) {
        if (item.role == kController) {
            return item.entries;
        }
    }
    FAIL("no controller");
    return plan.items.front().entries;
}

/// The roles the water meets from where the loop begins to where it ends, by the first pipe out of each.
std::vector<std::string> chain(const Plan& plan)
{
    std::vector<std::string> roles;
    std::string at;
    for (std::size_t guard = 0; guard < 20; ++guard) {
        const auto next =
            std::find_if(plan.runs.begin(), plan.runs.end(), [&](const PlanRun& run) { return run.from == at; });
        REQUIRE(next != plan.runs.end());
        if (next->to.empty()) {
            roles.push_back(next->role);
            return roles;
        }
        roles.push_back(next->to);
        at = next->to;
    }
    FAIL("the loop never ends");
    return {};
}

const PlanItem& item(const Plan& plan, std::string_view role)
{
    const auto at =
        std::find_if(plan.items.begin(), plan.items.end(), [&](const auto& one) { return one.role == role; });
    REQUIRE(at != plan.items.end());
    return *at;
}

const PlanRun& run(const Plan& plan, std::string_view role)
{
    const auto at = std::find_if(plan.runs.begin(), plan.runs.end(), [&](const auto& one) { return one.role == role; });
    REQUIRE(at != plan.runs.end());
    return *at;
}

}  // namespace

TEST_CASE("the first settings of a proposed loop follow from the water in the hot way", "[document][proposal]")
{
    // Twice that water and 0.3 gal, from 0.4 to 5 gal; the longest run twice the time that takes at 0.4 gpm, from 2 to
    // 15 minutes. 1 gal = 3.785411784 L (NIST SP 811:2008).
    struct Set {
        double hot_gal, stop_L, longest_s;
    };
    for (const Set& set : {Set{1, 8.71, 690},  // 2.3 gal = 8.706 L; 11.5 min
                           Set{0, 1.51, 120},  // 0.3 -> 0.4 gal = 1.514 L; 2 min
                           Set{0.1, 1.89, 150},  // 0.5 gal = 1.893 L; 2.5 min
                           Set{1.45, 12.11, 900},  // 3.2 gal = 12.113 L; 16 -> 15 min
                           Set{9, 18.93, 900}}) {  // 18.3 -> 5 gal = 18.927 L
        CAPTURE(set.hot_gal);
        Survey survey;
        survey.hotVolume_m3 = set.hot_gal * 3.785411784e-3;
        const Plan plan = planFor({}, survey);
        const auto& entries = controllerOf(plan);
        CHECK_THAT(std::get<double>(entries.at("stop_volume_m3").value), WithinAbs(set.stop_L * 1e-3, 1e-9));
        CHECK(std::get<double>(entries.at("longest_run_s").value) == set.longest_s);
    }
    const Plan plan = planFor({}, {});
    const auto& entries = controllerOf(plan);
    const auto on = [&](const char* key) { return std::get<bool>(entries.at(key).value); };
    const auto fahrenheit = [&](const char* key) { return std::get<double>(entries.at(key).value) * 1.8 + 32; };
    CHECK(on("stop_by_volume"));
    CHECK(on("stop_by_temperature"));
    CHECK(on("refuse_when_warm"));
    CHECK(on("high_limit"));
    CHECK(on("inlet_lockout"));
    CHECK_THAT(fahrenheit("stop_temperature_C"), WithinAbs(104, 1e-9));  // IECC C404: it enters the cold line next
    const Plan own = planFor({.way = ReturnWay::OwnLine}, {});
    CHECK_THAT(std::get<double>(controllerOf(own).at("stop_temperature_C").value) * 1.8 + 32, WithinAbs(107, 1e-9));
    CHECK_THAT(fahrenheit("high_limit_C"), WithinAbs(120, 1e-9));  // the guidance for delivered water, ASSE 1070
    CHECK_THAT(fahrenheit("inlet_lockout_C"), WithinAbs(104, 1e-9));  // IECC C404, demand recirculation
    CHECK(std::get<double>(entries.at("cool_down_wait_s").value) == 300);
    CHECK(std::get<double>(entries.at("no_flow_s").value) == 20);
    for (const auto& [key, entry] : entries) {
        CHECK(entry.basis == parts::Basis::Estimated);
    }
    Survey blind;
    blind.inletSensed = false;
    const Plan without = planFor({}, blind);
    CHECK(controllerOf(without).count("inlet_lockout") == 0);
    // Cv 0.16: 0.16 gpm at 1 psi, about 1 gpm at a demand pump's 40 psi (0.16 * sqrt 40 = 1.01).
    const Plan tank = planFor({ReturnWay::Tank, PumpSet::One}, {});
    CHECK_THAT(std::get<double>(item(tank, "throttle").entries.at("flow_coefficient_m3s_sqrtPa").value)
                   * std::sqrt(40 * us::kPsi) / us::kGpm,
               WithinAbs(1.01, 0.01));
}

TEST_CASE("in each variant the water meets sensors, valve, pumps and check valves in their order",
          "[document][proposal]")
{
    const auto roles = [](ReturnWay way, PumpSet pumps, bool sensorInBlock = false) {
        Survey survey;
        survey.sensorInBlock = sensorInBlock;
        return chain(planFor({way, pumps}, survey));
    };
    using Roles = std::vector<std::string>;
    CHECK(roles(ReturnWay::ColdLine, PumpSet::One)
          == Roles{"stop_sensor", "limit_sensor", "loop_valve", "flow_sensor", "pump_1", "check_1", "return_cold"});
    CHECK(roles(ReturnWay::OwnLine, PumpSet::TwoInSeries)
          == Roles{"stop_sensor", "limit_sensor", "loop_valve", "flow_sensor", "pump_1", "pump_2", "check_1",
                   "return_own"});
    CHECK(roles(ReturnWay::OwnLine, PumpSet::TwoInParallel)
          == Roles{"stop_sensor", "limit_sensor", "loop_valve", "flow_sensor", "split_tee", "pump_1", "check_1",
                   "join_tee", "return_own"});
    CHECK(roles(ReturnWay::Tank, PumpSet::One)
          == Roles{"stop_sensor", "limit_sensor", "loop_valve", "flow_sensor", "pump_1", "check_1", "throttle",
                   "return_tank"});
    CHECK(roles(ReturnWay::ColdLine, PumpSet::One, true)
          == Roles{"stop_sensor", "limit_sensor", "loop_valve", "flow_sensor", "pump_1", "check_1", "inlet_sensor",
                   "return_cold"});
    CHECK(roles(ReturnWay::Tank, PumpSet::TwoInParallel, true).back() == "return_tank");  // nothing to sense there
    const Plan parallel = planFor({ReturnWay::ColdLine, PumpSet::TwoInParallel}, {});
    CHECK(run(parallel, "to_pump_2").from == "split_tee");
    CHECK(run(parallel, "to_pump_2").to == "pump_2");
    CHECK(run(parallel, "to_check_2").from == "pump_2");
    CHECK(run(parallel, "to_check_2").to == "check_2");
    CHECK(run(parallel, "to_join_2").from == "check_2");
    CHECK(run(parallel, "to_join_2").to == "join_tee");
    // Every port of the plan holds one pipe; water enters at inlets.
    for (const Variant& variant : variants()) {
        const Plan plan = planFor(variant, {});
        std::set<std::pair<std::string, std::string>> taken;
        for (const PlanRun& one : plan.runs) {
            for (const auto& [role, name] : {std::pair{one.from, one.fromPort}, {one.to, one.toPort}}) {
                if (!role.empty()) {
                    CAPTURE(role, name);
                    CHECK(taken.insert({role, name}).second);
                    CHECK(parts::find(item(plan, role).kind)->port(name));
                }
            }
            CHECK(one.fromPort != "inlet");
            CHECK(one.toPort != "outlet");
            CHECK(one.couplings == 1);
        }
    }
}

TEST_CASE("a return of its own is as long as the hot way, in the cold line it is short", "[document][proposal]")
{
    Survey survey;
    survey.hotLength_m = 8.46;
    CHECK(run(planFor({ReturnWay::OwnLine, PumpSet::One}, survey), "return_own").length_m == 8.5);
    CHECK(run(planFor({ReturnWay::OwnLine, PumpSet::One}, survey), "return_own").elbows == 6);  // one in 5 ft
    CHECK(run(planFor({ReturnWay::Tank, PumpSet::One}, survey), "return_tank").length_m == 8.5);
    CHECK(run(planFor({ReturnWay::ColdLine, PumpSet::One}, survey), "return_cold").length_m == 0.5);
    CHECK(run(planFor({ReturnWay::ColdLine, PumpSet::One}, survey), "return_cold").elbows == 1);
    survey.hotLength_m = 0.2;
    CHECK(run(planFor({ReturnWay::OwnLine, PumpSet::One}, survey), "return_own").length_m == 1);
}

TEST_CASE("the symbols of a plan stand apart and inside its box, mirrored too", "[document][proposal]")
{
    for (const Variant& variant : variants()) {
        for (const bool sensorInBlock : {false, true}) {
            Survey survey;
            survey.sensorInBlock = sensorInBlock;
            const Plan rightward = planFor(variant, survey);
            for (const Plan& plan : {rightward, rightward.mirrored()}) {
                CAPTURE(std::string(idOf(variant)), sensorInBlock);
                std::vector<Box> boxes;
                for (const PlanItem& one : plan.items) {
                    Part part;
                    part.kind = one.kind;
                    part.at = one.at;
                    part.turn = one.turn;
                    const Box box = boxOf(part);
                    CAPTURE(one.role);
                    CHECK(box.left >= plan.box.left);
                    CHECK(box.right <= plan.box.right);
                    CHECK(box.top >= plan.box.top);
                    CHECK(box.bottom <= plan.box.bottom);
                    for (const Box& other : boxes) {
                        CHECK_FALSE(box.grown(1).overlaps(other));  // room for the pipe between
                    }
                    boxes.push_back(box);
                }
            }
        }
    }
    // Symbols in line on a pitch of eight, water to the right above and to the left below.
    const Plan plan = planFor({ReturnWay::ColdLine, PumpSet::One}, {});
    CHECK(item(plan, kStopSensor).at == Point{0, 0});
    CHECK(item(plan, kFlowSensor).at == Point{24, 0});
    CHECK_FALSE(item(plan, kFlowSensor).flipped);
    CHECK(item(plan, "pump_1").at == Point{24, 8});
    CHECK(item(plan, "pump_1").flipped);
    CHECK(plan.in == Point{-2, 0});
    CHECK(plan.out == Point{14, 8});  // the outlet of the check valve at (16, 8), leftward
    const Plan mirror = plan.mirrored();
    CHECK(mirror.in == Point{2, 0});
    CHECK(mirror.out == Point{-14, 8});
    CHECK(item(mirror, kFlowSensor).at == Point{-24, 0});
    CHECK(item(mirror, kFlowSensor).flipped);
    CHECK_FALSE(item(mirror, "pump_1").flipped);
    CHECK_FALSE(item(mirror, kController).flipped);  // what has no ports is not turned over
    CHECK(mirror.box.left == -plan.box.right);
    CHECK(mirror.box.right == -plan.box.left);
    const Plan tees = planFor({ReturnWay::ColdLine, PumpSet::TwoInParallel}, {}).mirrored();
    CHECK(item(tees, "split_tee").turn == 3);
}

TEST_CASE("variants and their names belong together", "[document][proposal]")
{
    const auto all = variants();
    CHECK(all[0] == Variant{ReturnWay::ColdLine, PumpSet::One});
    CHECK(all[5] == Variant{ReturnWay::OwnLine, PumpSet::TwoInSeries});
    CHECK(all[7] == Variant{ReturnWay::Tank, PumpSet::TwoInParallel});
    CHECK(idOf(all[0]) == "cold_line.one");
    CHECK(idOf(all[5]) == "own_line.two_series");
    CHECK(idOf(all[7]) == "tank.two_parallel");
    for (const Variant& one : all) {
        CHECK(variantNamed(idOf(one)) == one);
    }
    CHECK_FALSE(variantNamed("cold_line"));
    CHECK(title(ReturnWay::ColdLine) == "Return by the cold line");
    CHECK(title(ReturnWay::OwnLine) == "Own return line");
    CHECK(title(ReturnWay::Tank) == "Return to the fresh tank");
    CHECK(title(PumpSet::One) == "one circulator");
    CHECK(title(PumpSet::TwoInParallel) == "two circulators in parallel");
    CHECK(title(PumpSet::TwoInSeries) == "two circulators in series");
}
