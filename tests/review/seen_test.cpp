// SPDX-License-Identifier: GPL-3.0-or-later
// What the rules look with: cases, ways of the water, pieces with heights, supplies, quick fixes.
#include <algorithm>
#include <cmath>
#include <set>

#include "base/units.h"
#include "review/coach.h"
#include "review/fix.h"
#include "review/seen.h"
#include "review/steady.h"
#include "review/tap_flow.h"
#include "study/cold_return.h"
#include "support/catch.h"

using namespace tapward;
using document::PartId;
using review::Pipes;
using review::Supply;
using test::Coach;

namespace {

/// A coach with its plant, as the rules see it.
struct Look {
    Coach coach;
    study::Plant plant;
    Pipes pipes;
    study::Assessment assessment;

    explicit Look(Coach built)
        : coach(std::move(built)), plant(make(coach)), pipes(review::pipesOf(coach.drawing, plant)),
          assessment(coach.drawn())
    {
    }
    static study::Plant make(const Coach& coach)
    {
        auto plant = study::makePlant(coach.drawing, document::View::After);
        REQUIRE(plant.has_value());
        return std::move(*plant);
    }
    review::Seen seen() const { return {coach.drawing, coach.prediction, plant, pipes, assessment}; }
    const study::PlantPart& part(const char* tag) const
    {
        const study::PlantPart* found = plant.find(coach.id(tag));
        REQUIRE(found);
        return *found;
    }
    const Pipes::Piece& piece(PartId id) const
    {
        const Pipes::Piece* found = pipes.find(id);
        REQUIRE(found);
        return *found;
    }
    double heightOf(int place) const { return pipes.height_m.at(static_cast<std::size_t>(place)); }
};

}  // namespace

TEST_CASE("the hottest of a place is that of the finished coach, faults included, with what shows it", "[review]")
{
    using enum study::HeatPlace;
    Coach coach;
    coach.addCase("Once", 1, {{"hottest_tap", 45.0}, {"hottest_heater_inlet", 30.0}});
    coach.addCase("Twice", 2, {{"hottest_tap", 48.0}});
    coach.addCase("Broken", 1, {{"hottest_tap", 52.0}});
    document::Action fault;
    fault.kind = document::ActionKind::StartFault;
    coach.drawing.cases.back().actions.push_back(fault);
    coach.addCase("Today", 3, {{"hottest_tap", 70.0}}).view = document::View::Before;
    const Look look(coach);
    REQUIRE(review::hottest(look.seen(), {OutletHot}));
    CHECK(review::hottest(look.seen(), {OutletHot})->hottest_C == 52);
    CHECK(review::hottest(look.seen(), {OutletHot})->faulty);
    CHECK(review::hottest(look.seen(), {OutletHot}, coach.id("F1"))->script.name == "Broken");
    CHECK_FALSE(review::hottest(look.seen(), {OutletHot}, coach.id("WH1")));
    CHECK(look.assessment.hottest({OutletHot})->hottest_C == 48);  // nothing broken
    CHECK(look.assessment.hottest({OutletHot})->presses == 2);
    CHECK(review::hottest(look.seen(), {OutletHot, HeaterInlet})->hottest_C == 52);
    CHECK(review::hottest(look.seen(), {HeaterInlet})->hottest_C == 30);
    CHECK_FALSE(review::hottest(look.seen(), {Sensor}));

    review::Finding finding;
    study::HotPlace heat = *review::hottest(look.seen(), {OutletHot});
    review::shownBy(finding, heat);
    CHECK(finding.caseName == "Broken");
    CHECK_FALSE(finding.script.has_value());  // the drawing has it
    heat.searched = true;
    review::shownBy(finding, heat);
    CHECK(finding.script == heat.script);
}

TEST_CASE("a part is called by its number and nothing else", "[review]")
{
    const Look look{Coach()};
    const PartId pump = look.coach.id("P1");
    CHECK(review::partCalled(look.seen(), std::to_string(pump)) == look.plant.find(pump));
    for (const std::string& bad : {std::string(), std::string("P1"), std::to_string(pump) + "x", std::string("9999")}) {
        CHECK(review::partCalled(look.seen(), bad) == nullptr);
    }
    CHECK(review::tagOf(look.seen(), pump) == "P1");
    CHECK(review::tagOf(look.seen(), 9999) == "?");
}

TEST_CASE("a reach goes along every join until something stops it", "[review]")
{
    const Look look{Coach()};
    const auto never = [](const study::PlantPart&) { return false; };
    const auto everywhere = review::reach(look.plant, look.part("P1"), 0, never);
    for (const char* tag : {"CW1", "PR1", "T1", "T2", "WH1", "T3", "F1", "CV1", "MV1"}) {
        CAPTURE(tag);
        CHECK(everywhere.has(look.coach.id(tag)));
    }
    CHECK_FALSE(everywhere.has(look.coach.id("P1")));  // the start is left out
    CHECK_FALSE(everywhere.has(look.coach.id("C1")));  // no water in it
    // What stops is met, but not passed: the check to one side, the tee to the other.
    const auto some = review::reach(look.plant, look.part("P1"), 0, [&](const study::PlantPart& part) {
        return part.part->tag == "CV1" || part.part->tag == "T3";
    });
    CHECK(some.has(look.coach.id("CV1")));
    CHECK(some.has(look.coach.id("T3")));
    CHECK_FALSE(some.has(look.coach.id("MV1")));
    CHECK_FALSE(some.has(look.coach.id("WH1")));
    CHECK(some.junctions.empty());
}

TEST_CASE("water leaves a heater where its hot port is, whichever way it was drawn", "[review]")
{
    const Look look{Coach()};
    const int hot = review::outletJunction(look.plant, look.part("WH1"));
    REQUIRE(hot >= 0);
    // The hot pipe's chain leads from there to the first tee, T3.
    const auto way = review::reach(look.plant, look.part("F1"), 0, [](const study::PlantPart& part) {
        return part.model.tankless.has_value() || part.model.circulator.has_value();
    });
    CHECK(way.junctions.contains(hot));
    const auto cold = review::reach(look.plant, look.part("CW1"), 0, [](const study::PlantPart& part) {
        return part.model.tankless.has_value() || part.model.circulator.has_value() || part.model.outlet.has_value()
               || part.model.motorValve.has_value();
    });
    CHECK_FALSE(cold.junctions.contains(hot));
    REQUIRE(review::heaters(look.plant).size() == 1);
    CHECK(review::heaters(look.plant)[0]->id == look.coach.id("WH1"));
    Coach two;
    two.add("storage_heater", "WH2");
    CHECK(review::heaters(Look(two).plant).size() == 2);
}

TEST_CASE("pieces know their heights, their water and which way they let it", "[review]")
{
    Coach coach;
    coach.drawing.find(coach.id("T3"))->height_m = 0.4;
    coach.drawing.find(coach.id("P1"))->height_m = 0.1;
    coach.drawing.find(coach.id("CV1"))->height_m = 0.2;
    const PartId pipe = coach.drawing.pipeAt(coach.id("P1"), "inlet")->id;
    coach.drawing.find(pipe)->entries["length_m"] = {3.0, parts::Basis::Measured};
    const Look look(coach);
    // 3 m of 1/2 in PEX at 1.18 fl oz a foot: 2009 International Plumbing Code, table E202.1.
    const Pipes::Piece& tube = look.piece(pipe);
    CHECK(tube.isPipe);
    CHECK_THAT(tube.volume_m3, WithinRel(3 / us::kFoot * 1.18 * us::kGallon / 128, 0.01));
    CHECK((tube.uToV && tube.vToU));
    CHECK_FALSE(tube.shut);
    const std::set<double> ends{look.heightOf(tube.u), look.heightOf(tube.v)};
    CHECK(ends == std::set<double>{0.4, 0.1});
    CHECK(tube.other(tube.u) == tube.v);
    CHECK(tube.other(tube.v) == tube.u);
    // The check lets water one way: away from the pump.
    const Pipes::Piece& check = look.piece(coach.id("CV1"));
    CHECK(check.uToV != check.vToU);
    const Pipes::Piece& behind = look.piece(coach.drawing.pipeAt(coach.id("P1"), "outlet")->id);
    const int toPump = check.u == behind.u || check.u == behind.v ? check.u : check.v;
    CHECK(check.leads(toPump));
    CHECK_FALSE(check.leads(check.other(toPump)));
    CHECK_FALSE(check.isPipe);
    // The loop's valve rests shut, the tap too.
    CHECK(look.piece(coach.id("MV1")).shut);
    CHECK(look.piece(coach.id("F1")).shut);
    CHECK_FALSE(look.piece(coach.id("WH1")).shut);
    CHECK(look.piece(coach.id("WH1")).volume_m3 > 1e-4);
    CHECK(look.pipes.find(coach.id("C1")) == nullptr);
    CHECK(look.pipes.find(9999) == nullptr);
    // Drawn from the other end a check points the other way on the same line.
    Coach turned = coach;
    for (document::Part& one : turned.drawing.parts) {
        for (document::PipeEnd& end : one.ends) {
            if (end.part == turned.id("CV1")) {
                end.port = end.port == "inlet" ? "outlet" : "inlet";
            }
        }
    }
    const Look back(turned);
    const Pipes::Piece& against = back.piece(turned.id("CV1"));
    const Pipes::Piece& after = back.piece(turned.drawing.pipeAt(turned.id("P1"), "outlet")->id);
    const int fromPump = against.u == after.u || against.u == after.v ? against.u : against.v;
    CHECK_FALSE(against.leads(fromPump));
    CHECK(against.leads(against.other(fromPump)));
}

TEST_CASE("a pipe's loose end has the height of its other end; where a part is gone its height counts", "[review]")
{
    Coach coach;
    const PartId tee = coach.add("tee", "T7");
    coach.drawing.find(tee)->height_m = 0.7;
    const PartId stub = coach.pipe(tee, "run_a", document::kNoPart, "");
    coach.pipe(coach.id("F1"), "spare", document::kNoPart, "");
    const Look look(coach);
    const Pipes::Piece& piece = look.piece(stub);
    for (const int place : {piece.u, piece.v}) {
        if (place != Pipes::kOutside) {
            CHECK(look.heightOf(place) == 0.7);
        }
    }
    // MV1 taken out and bridged: its two pipes meet at its height.
    Coach bridged;
    bridged.drawing.find(bridged.id("CV1"))->height_m = 0.3;
    bridged.drawing.find(bridged.id("MV1"))->height_m = 0.9;
    bridged.drawing.find(bridged.id("T2"))->height_m = 0.2;
    const PartId before = bridged.drawing.pipeAt(bridged.id("MV1"), "inlet")->id;
    bridged.drawing.find(bridged.id("MV1"))->stage = document::Stage::Removed;
    const Look joined(bridged);
    const Pipes::Piece& pipe = joined.piece(before);
    CHECK((std::set<double>{joined.heightOf(pipe.u), joined.heightOf(pipe.v)} == std::set<double>{0.3, 0.9}));
}

TEST_CASE("supplies are where water enters, and reached is what no bar keeps it from", "[review]")
{
    const Look look{Coach()};
    REQUIRE(look.pipes.supplies().size() == 1);
    const auto none = [](const Pipes::Piece&) { return false; };
    const auto shut = [](const Pipes::Piece& piece) { return piece.shut; };
    const auto isAt = [&](const std::vector<char>& reached, PartId part) {
        const Pipes::Piece& piece = look.piece(part);
        return (piece.u != Pipes::kOutside && reached[static_cast<std::size_t>(piece.u)])
               || (piece.v != Pipes::kOutside && reached[static_cast<std::size_t>(piece.v)]);
    };
    const auto all = look.pipes.reached(look.pipes.supplies(), none);
    CHECK(isAt(all, look.coach.id("CV1")));
    const auto some = look.pipes.reached(look.pipes.supplies(), shut);
    CHECK(isAt(some, look.coach.id("P1")));  // through the heater and the hot line
    CHECK(isAt(some, look.coach.id("F1")));
    // Against the check and through the shut valve nothing comes to the pipe between them.
    Coach cut;
    cut.drawing.find(cut.drawing.pipeAt(cut.id("T3"), "branch")->id)->ends[1] = {};
    const Look parted(cut);
    const auto left = parted.pipes.reached(parted.pipes.supplies(), shut);
    const Pipes::Piece& between = parted.piece(cut.drawing.pipeAt(cut.id("P1"), "outlet")->id);
    CHECK_FALSE((left[static_cast<std::size_t>(between.u)] || left[static_cast<std::size_t>(between.v)]));
    // A tank feeds by its outlet.
    Coach tank;
    tank.drawing.find(tank.id("CW1"))->kind = "fresh_tank";
    CHECK(Look(tank).pipes.supplies().size() == 1);
}

TEST_CASE("standing pressure is the supply's, clipped by a regulator, or the pump's cut-out", "[review]")
{
    Coach coach;
    coach.set("CW1", "pressure_Pa", 80 * us::kPsi);
    coach.set("PR1", "set_pressure_Pa", 50 * us::kPsi);
    const auto rest = [](const Coach& one) {
        const Look look(one);
        return review::highestAtRest_Pa(look.plant, review::outletJunction(look.plant, look.part("WH1")));
    };
    Coach bare = coach;
    bare.drawing.find(bare.id("PR1"))->kind = "hand_valve";
    CHECK_THAT(rest(bare).value_or(0), WithinRel(80 * us::kPsi, 1e-3));
    CHECK_THAT(rest(coach).value_or(0), WithinRel(50 * us::kPsi, 0.02));  // clipped
    Coach pumped;
    pumped.drawing.find(pumped.id("CW1"))->kind = "fresh_tank";
    pumped.drawing.find(pumped.id("PR1"))->kind = "demand_pump";
    pumped.set("PR1", "cut_out_Pa", 55 * us::kPsi);
    CHECK_THAT(rest(pumped).value_or(0), WithinRel(55 * us::kPsi, 1e-3));
    const Look look(bare);
    CHECK(review::has(look.plant, Supply::City));
    CHECK_FALSE(review::has(look.plant, Supply::Pump));
    CHECK_FALSE(review::highestAtRest_Pa(look.plant, -1).has_value());
    const Look both(pumped);
    CHECK(review::has(both.plant, Supply::Pump));
    CHECK_FALSE(review::has(both.plant, Supply::City));
}

TEST_CASE("a tap's draw: all from the hot side, a shower's at its share, the weaker supply, none behind a mixer",
          "[review]")
{
    const auto flows = [](const Coach& coach) {
        const Look look(coach);
        std::vector<double> all;
        for (const review::TapFlow& tap : review::tapFlows(look.plant)) {
            CHECK(tap.outlet->id == coach.id("F1"));
            CHECK(tap.heater->id == coach.id("WH1"));
            all.push_back(tap.throughHeater_m3s);
        }
        return all;
    };
    Coach coach;
    coach.set("CW1", "pressure_Pa", 40 * us::kPsi);
    coach.set("F1", "rated_pressure_Pa", 40 * us::kPsi);
    coach.set("F1", "rated_flow_m3s", 0.5 * us::kGpm);
    REQUIRE(flows(coach).size() == 1);
    CHECK_THAT(flows(coach)[0], WithinRel(0.5 * us::kGpm, 0.03));
    // A quarter of the pressure gives half the flow (square root law, common practice).
    Coach weak = coach;
    weak.set("CW1", "pressure_Pa", 10 * us::kPsi);
    CHECK_THAT(flows(weak)[0], WithinRel(0.25 * us::kGpm, 0.05));
    // A mixing valve anywhere: the share hangs on temperatures.
    Coach mixed = coach;
    mixed.add("mixing_valve", "MX1");
    CHECK(flows(mixed).empty());
    // A heater that nothing is joined to lights nothing.
    Coach none = coach;
    none.drawing.find(none.id("WH1"))->kind = "storage_heater";
    CHECK(flows(none).empty());
}

TEST_CASE("a quick fix sets one value and keeps its basis, or is none", "[review]")
{
    Coach coach;
    coach.set("MV1", "travel_s", 4.0, parts::Basis::DataSheet);
    const auto known = review::setValue(coach.drawing, coach.id("MV1"), "travel_s", 7.0, "Set it");
    REQUIRE(known.has_value());
    CHECK(known->title.text == "Set it");
    document::Drawing after = coach.drawing;
    document::apply(after, *known);
    CHECK(document::values(*after.findTag("MV1")).number("travel_s") == 7);
    CHECK(document::values(*after.findTag("MV1")).basis("travel_s") == parts::Basis::DataSheet);
    const auto fresh = review::setValue(coach.drawing, coach.id("MV1"), "rest", std::string("open"), "Set it");
    REQUIRE(fresh.has_value());
    document::apply(after, *fresh);
    CHECK(document::values(*after.findTag("MV1")).basis("rest") == parts::Basis::Estimated);
    CHECK_FALSE(review::setValue(coach.drawing, coach.id("MV1"), "no_such", 1.0, "").has_value());
    CHECK_FALSE(review::setValue(coach.drawing, 9999, "travel_s", 1.0, "").has_value());
    CHECK_FALSE(review::setValue(coach.drawing, coach.id("MV1"), "travel_s", -5.0, "").has_value());  // out of range
}

TEST_CASE("turning a part swaps its two pipes and faces it the other way; it takes two pipes", "[review]")
{
    Coach coach;
    const PartId check = coach.id("CV1");
    const PartId before = coach.drawing.pipeAt(check, "inlet")->id, behind = coach.drawing.pipeAt(check, "outlet")->id;
    const auto edit = review::turnAround(coach.drawing, check, "Turn");
    REQUIRE(edit.has_value());
    document::Drawing after = coach.drawing;
    document::apply(after, *edit);
    CHECK(after.pipeAt(check, "outlet")->id == before);
    CHECK(after.pipeAt(check, "inlet")->id == behind);
    CHECK(after.find(check)->turn == 2);
    const auto again = review::turnAround(after, check, "Turn");
    REQUIRE(again.has_value());
    document::apply(after, *again);
    CHECK(after.find(check)->turn == 0);
    CHECK(after.pipeAt(check, "inlet")->id == before);
    CHECK_FALSE(review::turnAround(coach.drawing, coach.id("C1"), "").has_value());
    CHECK_FALSE(review::turnAround(coach.drawing, 9999, "").has_value());
    coach.drawing.find(before)->ends[1] = {};
    CHECK_FALSE(review::turnAround(coach.drawing, check, "").has_value());
}

TEST_CASE("a part put into a pipe stands in it, facing the way asked for", "[review]")
{
    Coach coach;
    coach.drawing.find(coach.id("P1"))->at = {10, 10};
    coach.drawing.find(coach.id("CV1"))->at = {40, 10};
    const PartId pipe = coach.drawing.pipeAt(coach.id("P1"), "outlet")->id;
    for (const bool reversed : {false, true}) {
        CAPTURE(reversed);
        const auto edit = review::putInto(coach.drawing, pipe, "check_valve", reversed, "Put in");
        REQUIRE(edit.has_value());
        CHECK(edit->title.text == "Put in");
        document::Drawing after = coach.drawing;
        document::apply(after, *edit);
        const auto made = std::find_if(after.parts.begin(), after.parts.end(), [&](const document::Part& part) {
            return part.kind == "check_valve" && !coach.drawing.find(part.id);
        });
        REQUIRE(made != after.parts.end());
        CHECK(made->stage == document::Stage::Added);
        // Its line on the pump's side.
        const document::Part* near = after.pipeAt(made->id, reversed ? "outlet" : "inlet");
        REQUIRE(near);
        CHECK((near->ends[0].part == coach.id("P1") || near->ends[1].part == coach.id("P1")));
        const document::Part* far = after.pipeAt(made->id, reversed ? "inlet" : "outlet");
        REQUIRE(far);
        CHECK((far->ends[0].part == coach.id("CV1") || far->ends[1].part == coach.id("CV1")));
        CHECK(made->at.x > 10);
        CHECK(made->at.x < 40);
    }
    CHECK_FALSE(review::putInto(coach.drawing, coach.id("P1"), "check_valve", false, "").has_value());
    CHECK_FALSE(review::putInto(coach.drawing, 9999, "check_valve", false, "").has_value());
}

TEST_CASE("a return by the cold line names the outlets and filters it can warm, one of its own none", "[review]")
{
    const Look own{Coach(Coach::Return::Own)};
    CHECK_FALSE(study::coldReturn(own.plant, own.coach.prediction.loop).byColdLine);
    CHECK(study::coldReturn(own.plant, own.coach.prediction.loop).outlets.empty());
    const Look shared{Coach(Coach::Return::ByColdLine)};
    const study::ColdReturn way = study::coldReturn(shared.plant, shared.coach.prediction.loop);
    CHECK(way.byColdLine);
    CHECK(way.outlets == std::vector<PartId>{shared.coach.id("F1")});
    CHECK(way.filters.empty());
    // A tap ahead of the loop, at the trunk, draws fresh water; one with hot water only draws none of it.
    Coach more(Coach::Return::ByColdLine);
    const PartId tee = more.add("tee", "T8"), hotOnly = more.add("tee", "T9");
    document::Part& cold = *more.drawing.find(more.drawing.pipeAt(more.id("F1"), "cold")->id);
    cold.ends[cold.ends[0].part == more.id("F1") ? 0 : 1] = {tee, "run_a", {}};
    more.pipe(tee, "run_b", more.id("F1"), "cold");
    const PartId bowl = more.add("toilet", "WC1");
    const PartId filter = more.add("filter", "FI1");
    more.pipe(tee, "branch", filter, "inlet");
    more.pipe(filter, "outlet", bowl, std::string(document::kindOf(*more.drawing.find(bowl)).ports.front().id));
    CHECK(hotOnly != document::kNoPart);
    const Look look(more);
    const study::ColdReturn wider = study::coldReturn(look.plant, look.coach.prediction.loop);
    CHECK(wider.byColdLine);
    CHECK(wider.outlets == std::vector<PartId>{more.id("F1"), bowl});
    CHECK(wider.filters == std::vector<PartId>{filter});
}
