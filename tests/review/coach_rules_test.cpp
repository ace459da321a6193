// SPDX-License-Identifier: GPL-3.0-or-later
// Rules about supply, ratings and standing water: each with a coach that raises it and its twin that does not.
#include <algorithm>

#include "base/units.h"
#include "review/coach.h"
#include "review/finding.h"
#include "study/prediction.h"
#include "support/catch.h"

using namespace tapward;
using document::PartId;
using review::Severity;
using test::Coach;

namespace {

/// A tee in the pipe at this port; its branch is free.
PartId teeAt(Coach& coach, const std::string& tag, const std::string& port, const std::string& teeTag)
{
    const document::Part* pipe = coach.drawing.pipeAt(coach.id(tag), port);
    REQUIRE(pipe);
    const PartId line = pipe->id;  // adding a part moves them all
    const PartId tee = coach.add("tee", teeTag);
    document::Part& cut = *coach.drawing.find(line);
    cut.ends[cut.ends[0].part == coach.id(tag) ? 0 : 1] = {tee, "run_a", {}};
    coach.pipe(tee, "run_b", coach.id(tag), port);
    return tee;
}

/// The coach on a demand pump and a tank instead of city water.
Coach onPump()
{
    Coach coach;
    coach.drawing.find(coach.id("CW1"))->kind = "fresh_tank";
    coach.drawing.find(coach.id("PR1"))->kind = "demand_pump";
    return coach;
}

}  // namespace

TEST_CASE("a storage heater closed in without an accumulator is found, plastic tube alone is not", "[review]")
{
    Coach coach;
    CHECK_FALSE(coach.finds("trapped_expansion"));  // a tankless heater holds little, tube grows with the water
    coach.drawing.find(coach.id("WH1"))->kind = "storage_heater";
    const auto found = coach.found("trapped_expansion");
    REQUIRE(found.size() == 1);
    CHECK(found[0].part == coach.id("WH1"));
    CHECK(render(found[0].what, UnitSystem::Us).find("CW1") != std::string::npos);

    Coach withVessel = coach;
    const PartId tee = teeAt(withVessel, "T2", "run_a", "T7");
    const PartId vessel = withVessel.add("accumulator", "AC1");
    withVessel.pipe(tee, "branch", vessel, "port");
    CHECK_FALSE(withVessel.finds("trapped_expansion"));

    // A check valve between the vessel and the heater: it can give nothing any more.
    Coach checked = withVessel;
    const PartId check = checked.add("check_valve", "CV9");
    const document::Part* cold = checked.drawing.pipeAt(checked.id("WH1"), "cold");
    checked.drawing.find(cold->id)->ends[1] = {check, "inlet", {}};
    checked.pipe(check, "outlet", checked.id("WH1"), "cold");
    REQUIRE(checked.finds("trapped_expansion"));
    CHECK(render(checked.found("trapped_expansion")[0].what, UnitSystem::Us).find("CV9") != std::string::npos);
}

TEST_CASE("a supply above what tube or a part is rated for is a danger", "[review]")
{
    Coach coach;
    coach.set("CW1", "pressure_Pa", 130 * us::kPsi);
    CHECK_FALSE(coach.finds("part_over_pressure"));  // PR1 clips it
    Coach bare = coach;
    bare.drawing.find(bare.id("PR1"))->kind = "hand_valve";
    const auto found = bare.found("part_over_pressure");
    REQUIRE(found.size() == 1);  // all tube in one finding: 100 psi at 180 °F, ASTM F876
    CHECK(found[0].severity == Severity::Danger);
    bare.set("CW1", "pressure_Pa", 95 * us::kPsi);
    CHECK_FALSE(bare.finds("part_over_pressure"));
    bare.set("P1", "pressure_limit_Pa", 90 * us::kPsi);
    REQUIRE(bare.found("part_over_pressure").size() == 1);
    CHECK(bare.found("part_over_pressure")[0].part == bare.id("P1"));
}

TEST_CASE("water hotter than tube or a part is rated for is found where it goes", "[review]")
{
    Coach coach;
    coach.addCase("One press", 1, {{"hottest_heater_outlet", 80.0}, {"hottest_tap", 60.0}});
    CHECK_FALSE(coach.finds("part_too_hot"));  // PEX: 180 °F at 100 psi, ASTM F876
    coach.addCase("Three presses", 3, {{"hottest_heater_outlet", 86.0}, {"hottest_tap", 60.0}});
    REQUIRE(coach.found("part_too_hot").size() == 1);
    CHECK(coach.found("part_too_hot")[0].severity == Severity::Danger);
    CHECK(coach.found("part_too_hot")[0].caseName == "Three presses");
    coach.prediction.cases.pop_back();
    coach.set("CV1", "temperature_limit_C", 55.0);
    REQUIRE(coach.found("part_too_hot").size() == 1);
    CHECK(coach.found("part_too_hot")[0].part == coach.id("CV1"));
}

TEST_CASE("a demand pump that cuts out above a part's rating is found like city water", "[review]")
{
    Coach coach = onPump();
    coach.set("PR1", "cut_out_Pa", 60 * us::kPsi);
    coach.set("F1", "rated_pressure_Pa", 60 * us::kPsi);
    coach.set("P1", "pressure_limit_Pa", 70 * us::kPsi);
    CHECK_FALSE(coach.finds("part_over_pressure"));
    coach.set("P1", "pressure_limit_Pa", 50 * us::kPsi);
    CHECK(coach.finds("part_over_pressure"));
}

TEST_CASE("a pump that a charging battery overfeeds is found, one a low battery stops is a note", "[review]")
{
    Coach coach;
    CHECK_FALSE(coach.finds("part_volts_exceeded"));
    coach.set("P1", "maximum_V", 13.2);
    REQUIRE(coach.finds("part_volts_exceeded"));
    CHECK(coach.found("part_volts_exceeded")[0].severity == Severity::Caution);
    coach.set("P1", "maximum_V", 15.0);
    coach.set("P1", "minimum_V", 11.0);
    REQUIRE(coach.finds("part_volts_exceeded"));
    CHECK(coach.found("part_volts_exceeded")[0].severity == Severity::Note);
}

TEST_CASE("parts without a drinking-water listing are found, unknown ones in one note", "[review]")
{
    Coach coach;
    const auto unknown = coach.found("part_not_listed");
    REQUIRE(unknown.size() == 1);
    CHECK(unknown[0].severity == Severity::Note);
    for (const document::Part& part : std::vector<document::Part>(coach.drawing.parts)) {
        if (document::kindOf(part).field("drinking_water")) {
            coach.set(part.tag, "drinking_water", std::string("listed"));
        }
    }
    CHECK_FALSE(coach.finds("part_not_listed"));
    coach.set("CV1", "drinking_water", std::string("not_listed"));
    REQUIRE(coach.found("part_not_listed").size() == 1);
    CHECK(coach.found("part_not_listed")[0].severity == Severity::Danger);
    CHECK(coach.found("part_not_listed")[0].part == coach.id("CV1"));
}

TEST_CASE("a demand pump without a tank and a loop no supply fills run dry", "[review]")
{
    CHECK_FALSE(onPump().finds("pump_sucks_dry"));
    Coach noTank = onPump();
    noTank.drawing.find(noTank.id("CW1"))->kind = "hand_valve";
    auto found = noTank.found("pump_sucks_dry");
    REQUIRE_FALSE(found.empty());
    CHECK(std::any_of(found.begin(), found.end(), [&](const auto& one) { return one.part == noTank.id("PR1"); }));

    Coach coach;
    CHECK_FALSE(coach.finds("pump_sucks_dry"));
    const document::Part* pipe = coach.drawing.pipeAt(coach.id("PR1"), "inlet");
    coach.drawing.find(pipe->id)->ends[0] = {};
    found = coach.found("pump_sucks_dry");
    REQUIRE(found.size() == 1);
    CHECK(found[0].part == coach.id("P1"));
}

TEST_CASE("a branch that ends in nothing is found, one that ends in a tap or a drain is not", "[review]")
{
    Coach coach;
    CHECK_FALSE(coach.finds("dead_end"));
    const PartId tee = teeAt(coach, "T2", "run_a", "T7");
    const PartId valve = coach.add("hand_valve", "V9");
    const PartId stub = coach.pipe(tee, "branch", valve, "inlet");
    coach.drawing.find(stub)->entries["length_m"] = {1.0, parts::Basis::Measured};
    const auto found = coach.found("dead_end");
    REQUIRE(found.size() == 1);
    CHECK(found[0].part == stub);

    Coach withTap = coach;
    withTap.pipe(valve, "outlet", withTap.add("faucet", "F9"), "cold");
    CHECK_FALSE(withTap.finds("dead_end"));
    Coach withDrain = coach;
    withDrain.pipe(valve, "outlet", withDrain.add("drain_valve", "DV1"), "port");
    CHECK_FALSE(withDrain.finds("dead_end"));
    coach.drawing.find(stub)->entries["length_m"] = {0.1, parts::Basis::Measured};
    CHECK_FALSE(coach.finds("dead_end"));  // no more than a fitting
}

TEST_CASE("a heater just put down is said to lack its pipes, no more", "[review]")
{
    for (const char* const kind : {"tankless_heater", "storage_heater"}) {
        Coach coach;
        const PartId heater = coach.add(kind, "WH9");
        const auto about = [&](const char* rule) {
            return std::ranges::count(coach.found(rule), heater, &review::Finding::part);
        };
        CHECK(about("open_end") > 0);
        CHECK(about("dead_end") == 0);
        CHECK(about("trapped_expansion") == 0);
    }
}

TEST_CASE("a tap that cannot light the heater even fully open is found with its supply", "[review]")
{
    Coach coach;
    CHECK_FALSE(coach.finds("tap_flow_margin"));
    // A flow given at 60 psi is at most 0.30 gpm at any lower pressure (square root law, common practice).
    coach.set("F1", "rated_flow_m3s", 0.30 * us::kGpm);
    const auto found = coach.found("tap_flow_margin");
    REQUIRE(found.size() == 1);
    CHECK(found[0].severity == Severity::Caution);
    CHECK(found[0].what.text.find("city") != std::string::npos);
    Coach pump = onPump();
    CHECK_FALSE(pump.finds("tap_flow_margin"));
    pump.set("F1", "rated_flow_m3s", 0.30 * us::kGpm);
    REQUIRE(pump.finds("tap_flow_margin"));
    CHECK(pump.found("tap_flow_margin")[0].what.text.find("demand pump") != std::string::npos);
}

TEST_CASE("a tap at which the demand pump swings the flow across activation is found", "[review]")
{
    // 0.50 gpm at 60 psi is 0.41 at the cut-in of 40 psi and 0.48 at the cut-out of 55 psi (square root law): it
    // lights at 0.45 and, with a hold flow of 0.44, goes out again.
    Coach coach = onPump();
    coach.set("PR1", "open_flow_m3s", 6 * us::kGpm);  // strong enough to reach its cut-out on this tap
    coach.set("PR1", "cut_in_Pa", 40 * us::kPsi);
    coach.set("PR1", "cut_out_Pa", 55 * us::kPsi);
    coach.set("F1", "rated_flow_m3s", 0.50 * us::kGpm);
    coach.set("F1", "rated_pressure_Pa", 60 * us::kPsi);
    coach.set("WH1", "activation_flow_m3s", 0.45 * us::kGpm);
    coach.set("WH1", "hold_flow_m3s", 0.44 * us::kGpm);
    const auto found = coach.found("demand_pump_cycling");
    REQUIRE(found.size() == 1);
    CHECK_THAT(std::get<Measure>(found[0].what.arguments.at(1)).si, WithinRel(0.408 * us::kGpm, 0.03));
    CHECK_THAT(std::get<Measure>(found[0].what.arguments.at(2)).si, WithinRel(0.479 * us::kGpm, 0.03));
    Coach weak = coach;
    weak.set("PR1", "open_flow_m3s", 3 * us::kGpm);  // the tap takes all it gives short of the cut-out: no swing
    CHECK_FALSE(weak.finds("demand_pump_cycling"));
    coach.set("WH1", "hold_flow_m3s", 0.35 * us::kGpm);  // stays lit over the whole swing
    CHECK_FALSE(coach.finds("demand_pump_cycling"));
}

TEST_CASE("a stop sensor far down the return is found late with what it lets through", "[review]")
{
    const auto withSensor = [](double metres, double tap_C) {
        Coach coach;
        const PartId sensor = coach.add("temperature_sensor", "TE1");
        const document::Part* pipe = coach.drawing.pipeAt(coach.id("P1"), "inlet");
        document::Part& way = *coach.drawing.find(pipe->id);
        way.ends[1] = {sensor, "inlet", {}};
        way.entries["length_m"] = {metres, parts::Basis::Measured};
        coach.pipe(sensor, "outlet", coach.id("P1"), "inlet");
        coach.set("C1", "stop_by_temperature", true);
        coach.set("C1", "stop_temperature_C", 42.0);
        coach.set("C1", "stop_sensor", std::to_string(sensor));
        coach.prediction.loop = study::loopAnswer(coach.drawing);
        study::CaseResult& result = coach.addCase("One press", 1, {{"hottest_tap", tap_C}});
        study::Event stop;
        stop.id = "stop_temperature";
        result.events.push_back(stop);
        return coach;
    };
    const Coach late = withSensor(5, 47);
    const auto found = late.found("sensor_late");
    REQUIRE(found.size() == 1);
    CHECK(found[0].part == late.id("TE1"));
    // 5 m of 1/2 in tube at 1.18 fl oz/ft (2009 International Plumbing Code, table E202.1), over the loop's flow.
    const double way_s = 5 / us::kFoot * 1.18 * us::kGallon / 128 / *late.prediction.loop.flow_m3s;
    CHECK_THAT(std::get<Measure>(found[0].what.arguments.at(1)).si, WithinRel(way_s, 0.02));
    CHECK_FALSE(withSensor(0.2, 47).finds("sensor_late"));  // at the join
    CHECK_FALSE(withSensor(5, 43).finds("sensor_late"));    // it does not matter
    Coach drawn = withSensor(5, 47);  // what the heater gives to an open tap is no overshoot
    document::Action tap;
    tap.kind = document::ActionKind::OpenOutlet;
    tap.part = drawn.id("F1");
    drawn.drawing.cases.back().actions.push_back(tap);
    CHECK_FALSE(drawn.finds("sensor_late"));
}

TEST_CASE("a loop's pipe between its check and its shut valve freezes full unless a drain is there", "[review]")
{
    Coach coach;
    coach.drawing.find(coach.id("F1"))->height_m = 1;
    const auto found = coach.found("winter_trapped");
    REQUIRE(found.size() == 1);
    CHECK(render(found[0].what, UnitSystem::Us).find("Freeze") == 0);
    const std::string remedy = render(found[0].remedy, UnitSystem::Us);
    CHECK(remedy.find("MV1") != std::string::npos);
    CHECK(remedy.find("P1") != std::string::npos);

    // A drain on either side of the pump and the check, low enough for all of it.
    teeAt(coach, "MV1", "inlet", "T7");
    coach.pipe(coach.id("T7"), "branch", coach.add("drain_valve", "DV1"), "port");
    CHECK_FALSE(coach.finds("winter_trapped"));
}

TEST_CASE("a branch is full when its fuse has no quarter to spare or its socket is rated for less", "[review]")
{
    // 1.25 x the continuous load: general code practice, from memory.
    Coach coach;
    coach.add("fuse", "FU1");
    coach.set("P1", "current_A", 2.0);
    coach.set("MV1", "current_A", 0.0);
    coach.set("C1", "current_A", 0.0);
    coach.set("FU1", "rating_A", 7.5);
    coach.set("FU1", "other_load_A", 3.9);  // 1.25 x 5.9 is just under 7.5
    CHECK_FALSE(coach.finds("branch_overloaded"));
    coach.set("FU1", "other_load_A", 4.1);
    auto found = coach.found("branch_overloaded");
    REQUIRE(found.size() == 1);
    CHECK(found[0].part == coach.id("FU1"));
    CHECK_THAT(std::get<Measure>(found[0].remedy.arguments.at(0)).si, WithinRel(2.5, 1e-9));
    coach.set("FU1", "rating_A", 15.0);
    CHECK_FALSE(coach.finds("branch_overloaded"));
    coach.set("FU1", "socket_rating_A", 6.0);  // 6.1 A through it
    found = coach.found("branch_overloaded");
    REQUIRE(found.size() == 1);
    CHECK_THAT(std::get<Measure>(found[0].what.arguments.at(1)).si, WithinRel(6.0, 1e-9));
}

TEST_CASE("a load the job adds without a fuse is found, the coach's own is not", "[review]")
{
    Coach coach;
    const auto found = coach.found("load_without_fuse");
    REQUIRE_FALSE(found.empty());
    CHECK(std::ranges::any_of(found, [&](const auto& one) { return one.part == coach.id("P1"); }));
    Coach own = coach;
    for (document::Part& part : own.drawing.parts) {
        part.stage = document::Stage::Existing;
    }
    CHECK_FALSE(own.finds("load_without_fuse"));
    const PartId fuse = coach.add("fuse", "FU1");  // the only one is taken for the loop's, but not for a heater's
    CHECK(coach.found("load_without_fuse").size() == 1);
    coach.set("WH1", "fuse", std::to_string(fuse));
    CHECK_FALSE(coach.finds("load_without_fuse"));
}

TEST_CASE("a loop returned to the tank overfills it where there is city water", "[review]")
{
    Coach coach;
    CHECK_FALSE(coach.finds("tank_overfills"));
    const PartId tank = coach.add("fresh_tank", "FT1");
    CHECK_FALSE(coach.finds("tank_overfills"));  // it is there, but the loop does not lead into it
    coach.prediction.loop.returnPath.push_back(tank);
    const auto found = coach.found("tank_overfills");
    REQUIRE(found.size() == 1);
    CHECK(found[0].part == tank);
    coach.drawing.find(coach.id("CW1"))->stage = document::Stage::Removed;
    CHECK_FALSE(coach.finds("tank_overfills"));
}
