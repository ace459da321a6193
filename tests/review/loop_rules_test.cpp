// SPDX-License-Identifier: GPL-3.0-or-later
// Rules about how the loop is piped: each with a coach that raises it and its twin that does not.
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

/// What the loop is in the drawing itself, the way a prediction sees it.
void look(Coach& coach) { coach.prediction.loop = study::loopAnswer(coach.drawing); }

void applyFix(Coach& coach, const std::string& rule)
{
    const auto found = coach.found(rule);
    REQUIRE_FALSE(found.empty());
    REQUIRE(found[0].fix);
    REQUIRE_FALSE(document::refusal(coach.drawing, *found[0].fix));
    document::apply(coach.drawing, *found[0].fix);
}

void turn(Coach& coach, const std::string& tag)
{
    for (document::Part& pipe : coach.drawing.parts) {
        for (document::PipeEnd& end : pipe.ends) {
            if (end.part == coach.id(tag)) {
                end.port = end.port == "inlet" ? "outlet" : "inlet";
            }
        }
    }
}

/// A second pump between the joins before and behind the first, with or without a check of its own.
Coach twoPumps(bool secondCheck)
{
    Coach coach;
    const PartId before = coach.add("tee", "T8"), behind = coach.add("tee", "T9"),
                 second = coach.add("circulator", "P2");
    // T3 - P1 - CV1 - MV1 becomes T3 - T8 - (P1 - CV1 | P2) - T9 - MV1.
    const document::Part* suction = coach.drawing.pipeAt(coach.id("P1"), "inlet");
    coach.drawing.find(suction->id)->ends[1] = {before, "run_a", {}};
    coach.pipe(before, "run_b", coach.id("P1"), "inlet");
    const document::Part* delivery = coach.drawing.pipeAt(coach.id("MV1"), "inlet");
    coach.drawing.find(delivery->id)->ends[1] = {behind, "run_a", {}};
    coach.pipe(behind, "run_b", coach.id("MV1"), "inlet");
    coach.pipe(before, "branch", second, "inlet");
    if (secondCheck) {
        const PartId check = coach.add("check_valve", "CV2");
        coach.pipe(second, "outlet", check, "inlet");
        coach.pipe(check, "outlet", behind, "branch");
    } else {
        coach.pipe(second, "outlet", behind, "branch");
    }
    look(coach);
    return coach;
}

/// The coach with a bypass round the heater, as for winterizing, its valve shut or open.
Coach withBypass(double opening)
{
    Coach coach;
    const PartId cold = coach.add("tee", "T5"), hot = coach.add("tee", "T6"), valve = coach.add("hand_valve", "V1");
    const document::Part* in = coach.drawing.pipeAt(coach.id("WH1"), "cold");
    coach.drawing.find(in->id)->ends[1] = {cold, "run_a", {}};
    coach.pipe(cold, "run_b", coach.id("WH1"), "cold");
    const document::Part* out = coach.drawing.pipeAt(coach.id("WH1"), "hot");
    coach.drawing.find(out->id)->ends[0] = {hot, "run_b", {}};
    coach.pipe(coach.id("WH1"), "hot", hot, "run_a");
    coach.pipe(cold, "branch", valve, "inlet");
    coach.pipe(valve, "outlet", hot, "branch");
    coach.set("V1", "opening", opening);
    return coach;
}

}  // namespace

TEST_CASE("a check valve that faces the pump is found and turned by its fix in one step", "[review]")
{
    Coach coach;
    CHECK_FALSE(coach.finds("check_valve_backward"));
    turn(coach, "CV1");
    look(coach);
    CHECK(coach.prediction.loop.flow_m3s == 0);
    const auto found = coach.found("check_valve_backward");
    REQUIRE(found.size() == 1);
    CHECK(found[0].part == coach.id("CV1"));
    CHECK_FALSE(coach.finds("loop_blocked"));  // said once
    applyFix(coach, "check_valve_backward");
    look(coach);
    CHECK(coach.prediction.loop.flow_m3s.value_or(0) > 0);
    CHECK_FALSE(coach.finds("check_valve_backward"));
}

TEST_CASE("a backward check valve beside a pump that runs is found too", "[review]")
{
    Coach coach = twoPumps(true);
    CHECK_FALSE(coach.finds("check_valve_backward"));
    turn(coach, "CV2");
    look(coach);
    CHECK(coach.prediction.loop.flow_m3s.value_or(0) > 0);  // the other pump keeps it going
    const auto found = coach.found("check_valve_backward");
    REQUIRE(found.size() == 1);
    CHECK(found[0].part == coach.id("CV2"));
}

TEST_CASE("a check valve between the supply and the taps is found when it faces the supply", "[review]")
{
    Coach coach;
    coach.drawing.find(coach.id("PR1"))->kind = "check_valve";
    CHECK_FALSE(coach.finds("check_valve_backward"));
    turn(coach, "PR1");
    const auto found = coach.found("check_valve_backward");
    REQUIRE(found.size() == 1);
    CHECK(found[0].part == coach.id("PR1"));
}

TEST_CASE("a pump beside another needs a check valve of its own, and the fix puts one in", "[review]")
{
    CHECK_FALSE(twoPumps(true).finds("pump_without_own_check"));
    CHECK_FALSE(Coach(Coach::Return::Own, false).finds("pump_without_own_check"));  // alone: another rule's
    Coach coach = twoPumps(false);
    const auto found = coach.found("pump_without_own_check");
    REQUIRE(found.size() == 1);
    CHECK(found[0].part == coach.id("P2"));
    applyFix(coach, "pump_without_own_check");
    look(coach);
    CHECK_FALSE(coach.finds("pump_without_own_check"));
    CHECK_FALSE(coach.finds("check_valve_backward"));  // it faces with the pump
}

TEST_CASE("a pipe that joins hot and cold is named first of all, with what it takes from the heater", "[review]")
{
    // The bypass valve's place taken by a bare pipe.
    Coach coach = withBypass(1);
    const PartId valve = coach.id("V1"), hot = coach.id("T6");
    PartId joint = document::kNoPart;
    std::erase_if(coach.drawing.parts, [&](document::Part& part) {
        if (part.ends[1].part == valve) {
            part.ends[1] = {hot, "branch", {}};
            joint = part.id;
        }
        return part.id == valve || part.ends[0].part == valve;
    });
    look(coach);
    const study::LoopAnswer& loop = coach.prediction.loop;
    REQUIRE(loop.bypass == joint);
    CHECK(*loop.flow_m3s < 0.9 * *loop.pumpFlow_m3s);
    const auto all = review::review(coach.drawing, coach.prediction, coach.drawn());
    REQUIRE_FALSE(all.empty());
    CHECK(all.front().rule == "crossover_open");
    CHECK(all.front().part == joint);
    const std::string tag = coach.drawing.find(joint)->tag;
    CHECK(render(all.front().what, UnitSystem::Us).find(tag) != std::string::npos);
    CHECK(render(all.front().remedy, UnitSystem::Us).find(tag) != std::string::npos);
    CHECK_FALSE(coach.finds("loop_blocked"));
}

TEST_CASE("hot and cold joined through a check valve that opens toward the cold line are found too", "[review]")
{
    Coach coach = withBypass(1);
    coach.drawing.find(coach.id("V1"))->kind = "check_valve";
    coach.drawing.find(coach.id("V1"))->entries.clear();
    turn(coach, "V1");  // now from the hot tee to the cold one
    look(coach);
    CHECK(coach.prediction.loop.bypass == document::kNoPart);  // the pumps hold it shut
    const auto found = coach.found("crossover_open");
    REQUIRE(found.size() == 1);
    CHECK(found[0].part == coach.id("V1"));
    turn(coach, "V1");  // toward the hot line it takes from the heater
    look(coach);
    CHECK(coach.prediction.loop.bypass != document::kNoPart);
    CHECK(coach.found("crossover_open").size() == 1);
}

TEST_CASE("an open bypass round the heater is found with its valve, a shut one is not", "[review]")
{
    CHECK_FALSE(withBypass(0).finds("crossover_open"));
    CHECK_FALSE(Coach().finds("crossover_open"));
    Coach coach = withBypass(1);
    const auto found = coach.found("crossover_open");
    REQUIRE(found.size() == 1);
    CHECK(found[0].part == coach.id("V1"));
    applyFix(coach, "crossover_open");
    CHECK_FALSE(coach.finds("crossover_open"));
}

TEST_CASE("a loop by the cold line that no valve shuts at rest is found", "[review]")
{
    CHECK_FALSE(Coach(Coach::Return::ByColdLine).finds("loop_open_at_rest"));
    Coach open(Coach::Return::ByColdLine);
    open.set("MV1", "rest", std::string("open"));
    REQUIRE(open.finds("loop_open_at_rest"));
    CHECK(open.found("loop_open_at_rest")[0].part == open.id("MV1"));
    applyFix(open, "loop_open_at_rest");
    CHECK_FALSE(open.finds("loop_open_at_rest"));

    Coach own(Coach::Return::Own);
    own.set("MV1", "rest", std::string("open"));
    CHECK_FALSE(own.finds("loop_open_at_rest"));
}

TEST_CASE("a loop valve that does not close without power is found", "[review]")
{
    Coach coach;
    CHECK_FALSE(coach.finds("valve_power_loss_unsafe"));
    for (const char* onLoss : {"stays", "opens"}) {
        coach.set("MV1", "on_power_loss", std::string(onLoss));
        REQUIRE(coach.finds("valve_power_loss_unsafe"));
        CHECK(coach.found("valve_power_loss_unsafe")[0].part == coach.id("MV1"));
    }
    applyFix(coach, "valve_power_loss_unsafe");
    CHECK_FALSE(coach.finds("valve_power_loss_unsafe"));
}

TEST_CASE("a pump that starts before its valve is open is found", "[review]")
{
    Coach coach;
    CHECK_FALSE(coach.finds("pump_dead_headed"));
    coach.set("C1", "pump_after_valve", false);
    coach.set("C1", "pump_delay_s", 5.0);
    coach.set("MV1", "travel_s", 5.0);
    CHECK_FALSE(coach.finds("pump_dead_headed"));
    coach.set("C1", "pump_delay_s", 2.0);
    REQUIRE(coach.finds("pump_dead_headed"));
    applyFix(coach, "pump_dead_headed");
    CHECK_FALSE(coach.finds("pump_dead_headed"));
}

TEST_CASE("a heater whose maker's word on a loop is not known is found; no loop, no question", "[review]")
{
    Coach coach;
    REQUIRE(coach.finds("heater_recirculation_unknown"));
    coach.set("WH1", "recirculation", std::string("not_allowed"));
    REQUIRE(coach.finds("heater_recirculation_unknown"));
    CHECK(coach.found("heater_recirculation_unknown")[0].what.text.find("does not allow") != std::string::npos);
    coach.set("WH1", "recirculation", std::string("allowed"));
    CHECK_FALSE(coach.finds("heater_recirculation_unknown"));
    coach.set("WH1", "recirculation", std::string("unknown"));
    coach.prediction.loop.circulators.clear();
    CHECK_FALSE(coach.finds("heater_recirculation_unknown"));
}

TEST_CASE("warm return water in the line of a drinking tap is found", "[review]")
{
    Coach coach(Coach::Return::ByColdLine);
    coach.set("F1", "drinking", true);
    coach.addCase("Cool", 1, {{"hottest_heater_inlet", us::celsius(76)}});  // 77 °F: below it little grows
    CHECK_FALSE(coach.finds("drinking_branch_warm"));
    coach.addCase("Warm", 1, {{"hottest_heater_inlet", us::celsius(95)}});
    REQUIRE(coach.finds("drinking_branch_warm"));
    CHECK(coach.found("drinking_branch_warm")[0].caseName == "Warm");
    coach.set("F1", "drinking", false);
    CHECK_FALSE(coach.finds("drinking_branch_warm"));
    Coach own;
    own.set("F1", "drinking", true);
    own.addCase("Warm", 1, {{"hottest_heater_inlet", us::celsius(95)}});
    CHECK_FALSE(own.finds("drinking_branch_warm"));
}

TEST_CASE("a filter the loop's warm water reaches is found, one ahead of the loop is not", "[review]")
{
    const auto withFilterAt = [](const std::string& tag, const std::string& port) {
        Coach coach(Coach::Return::ByColdLine);
        const PartId filter = coach.add("filter", "FI1");
        const document::Part* pipe = coach.drawing.pipeAt(coach.id(tag), port);
        REQUIRE(pipe);
        document::Part& line = *coach.drawing.find(pipe->id);
        line.ends[line.ends[0].part == coach.id(tag) ? 0 : 1] = {filter, "inlet", {}};
        coach.pipe(filter, "outlet", coach.id(tag), port);
        return coach;
    };
    CHECK_FALSE(withFilterAt("PR1", "inlet").finds("filter_on_return"));
    Coach branch = withFilterAt("F1", "cold");
    REQUIRE(branch.finds("filter_on_return"));
    CHECK(branch.found("filter_on_return")[0].part == branch.id("FI1"));
    Coach inLoop = withFilterAt("MV1", "outlet");
    look(inLoop);
    REQUIRE(inLoop.finds("filter_on_return"));
    CHECK(inLoop.found("filter_on_return")[0].what.text.find("stands in the return") != std::string::npos);
}

TEST_CASE("a heater that gets too few volts for its board will not light, and that is said", "[review]")
{
    Coach coach;
    CHECK_FALSE(coach.finds("heater_low_volts"));  // no wire is known
    coach.prediction.loop.heaterVolts = 10.5;
    coach.prediction.loop.heaterLeastVolts = 10.5;
    CHECK_FALSE(coach.finds("heater_low_volts"));
    coach.prediction.loop.heaterVolts = 10.4;
    const auto found = coach.found("heater_low_volts");
    REQUIRE(found.size() == 1);
    CHECK(found[0].part == coach.id("WH1"));
    CHECK(found[0].what.arguments.at(1) == Argument(Measure{10.4, Quantity::Voltage}));
    CHECK(found[0].what.arguments.at(2) == Argument(Measure{10.5, Quantity::Voltage}));
}

TEST_CASE("a bay at or below freezing is found, with the coldest case", "[review]")
{
    Coach coach;
    coach.addCase("Mild", 1);
    coach.drawing.cases.back().ambient_C = 0.1;
    CHECK_FALSE(coach.finds("freeze_in_bay"));
    coach.addCase("Frost", 1);
    coach.drawing.cases.back().ambient_C = 0;
    CHECK(coach.found("freeze_in_bay").at(0).caseName == "Frost");
    coach.addCase("Winter", 1);
    coach.drawing.cases.back().ambient_C = -6;
    coach.addCase("Cold", 1);
    coach.drawing.cases.back().ambient_C = -3;
    CHECK(coach.found("freeze_in_bay").at(0).caseName == "Winter");
    CHECK(coach.found("freeze_in_bay").at(0).what.arguments.at(1) == Argument(Measure{-6, Quantity::Temperature}));
}
