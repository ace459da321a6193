// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>

#include "base/units.h"
#include "review/coach.h"
#include "review/finding.h"
#include "review/scald.h"
#include "support/catch.h"

using namespace tapward;
using document::ActionKind;
using review::Severity;
using test::Coach;

// Every rule: a coach that raises it and a twin, different in the one thing it is about, that does not.

TEST_CASE("a flow less than 10 % above activation is found thin, one below it is found too small", "[review]")
{
    Coach coach;
    coach.prediction.loop.activationFlow_m3s = 0.45 * us::kGpm;

    coach.prediction.loop.flow_m3s = 0.50 * us::kGpm;  // 11 %
    CHECK_FALSE(coach.finds("flow_margin_thin"));
    coach.prediction.loop.flow_m3s = 0.48 * us::kGpm;  // 7 %
    REQUIRE(coach.finds("flow_margin_thin"));
    CHECK(render(coach.found("flow_margin_thin")[0].what, UnitSystem::Us)
          == "The loop's 0.48 gpm is only 7 % above the 0.45 gpm at which WH1 lights.");
    coach.prediction.loop.flow_m3s = 0.40 * us::kGpm;
    REQUIRE(coach.finds("flow_margin_thin"));
    CHECK(render(coach.found("flow_margin_thin")[0].what, UnitSystem::Us)
          == "The loop's 0.40 gpm is below the 0.45 gpm at which WH1 lights.");
    coach.prediction.loop.activationFlow_m3s.reset();  // a storage heater
    CHECK_FALSE(coach.finds("flow_margin_thin"));
}

TEST_CASE("a low battery that loses the heater is a note, not a caution", "[review]")
{
    Coach coach;
    coach.prediction.loop.flowLowVolts_m3s = 0.44 * us::kGpm;
    REQUIRE(coach.finds("flow_margin_thin"));
    CHECK(coach.found("flow_margin_thin")[0].severity == Severity::Note);
    coach.prediction.loop.flowLowVolts_m3s = 0.46 * us::kGpm;
    CHECK_FALSE(coach.finds("flow_margin_thin"));
}

TEST_CASE("a blocked loop names the part in the way", "[review]")
{
    Coach coach;
    CHECK_FALSE(coach.finds("loop_blocked"));
    coach.prediction.loop.flow_m3s = 0;
    coach.prediction.loop.blockedBy = coach.id("MV1");
    coach.prediction.loop.reason = "MV1 blocks the loop.";  // whoever finds a part in the way says so
    const auto found = coach.found("loop_blocked");
    REQUIRE(found.size() == 1);
    CHECK(found[0].part == coach.id("MV1"));
    CHECK(render(found[0].what, UnitSystem::Us) == "No water goes round the loop: MV1 blocks it.");
}

TEST_CASE("a check valve that takes more than the pumps give is named, and not said to face backward", "[review]")
{
    Coach coach;
    coach.prediction.loop.flow_m3s = 0;
    coach.prediction.loop.blockedBy = coach.id("CV1");
    coach.prediction.loop.headUsedUp = true;
    coach.prediction.loop.reason = "CV1 opens at 8.7 psi: the pumps do not give that much.";
    const auto found = coach.found("loop_blocked");
    REQUIRE(found.size() == 1);
    CHECK(found[0].part == coach.id("CV1"));
    CHECK(found[0].what.text == coach.prediction.loop.reason.text);
    CHECK(found[0].remedy.text.find("opens more easily") != std::string::npos);
    CHECK_FALSE(coach.finds("check_valve_backward"));
    coach.prediction.loop.headUsedUp = false;  // shut against the pumps for another reason: it faces them
    CHECK_FALSE(coach.finds("loop_blocked"));
    CHECK(coach.finds("check_valve_backward"));
}

TEST_CASE("a circulator whose way is broken is found with the reason, a coach without one is not", "[review]")
{
    Coach coach;
    coach.prediction.loop.exists = false;
    coach.prediction.loop.flow_m3s.reset();
    coach.prediction.loop.reason = "No unbroken way leads from the heater and back.";
    REQUIRE(coach.finds("loop_blocked"));
    CHECK(coach.found("loop_blocked")[0].what.text == "No unbroken way leads from the heater and back.");
    coach.prediction.loop.circulators.clear();
    CHECK_FALSE(coach.finds("loop_blocked"));
}

TEST_CASE("water above 120 °F at a tap is a danger with its time to a burn", "[review]")
{
    Coach coach;
    coach.addCase("Mild", 1, {{"hottest_tap", us::celsius(119)}});
    CHECK_FALSE(coach.finds("scald_at_tap"));
    coach.addCase("Hot", 1, {{"hottest_tap", 60.0}});
    const auto found = coach.found("scald_at_tap");
    REQUIRE(found.size() == 1);
    CHECK(found[0].severity == Severity::Danger);
    CHECK(found[0].caseName == "Hot");
    // 3 s at 60 °C: Moritz & Henriques (1947) table, onset of a second-degree burn.
    CHECK(std::get<Measure>(found[0].what.arguments.at(2)) == Measure{3, Quantity::Time});
}

TEST_CASE("the danger points at the hottest outlet and names it", "[review]")
{
    Coach coach;
    coach.add("shower", "SH1");
    study::CaseResult& result = coach.addCase("Shower", 1, {{"hottest_tap", 55.2}});
    REQUIRE(coach.finds("scald_at_tap"));
    CHECK(coach.found("scald_at_tap")[0].part == coach.id("F1"));
    result.hottest.push_back({study::HeatPlace::OutletHot, coach.id("SH1"), 56, 20});
    CHECK(coach.found("scald_at_tap")[0].part == coach.id("SH1"));
    CHECK(coach.found("scald_at_tap")[0].what.arguments.at(0) == Argument(std::string("SH1")));
}

TEST_CASE("what the search found is found, and its script comes with the finding", "[review]")
{
    Coach coach;
    coach.addCase("Three presses", 3, {{"hottest_heater_outlet", 48.0}, {"hottest_tap", 45.0}});
    CHECK_FALSE(coach.finds("scald_at_tap"));
    CHECK_FALSE(coach.finds("repeated_presses_unprotected"));
    auto heats = std::make_shared<study::PressesStudy>();
    study::WorstHeat worst;
    worst.place = study::HeatPlace::OutletHot;
    worst.part = coach.id("F1");
    worst.hottest_C = 58;
    worst.presses = 4;
    worst.script.name = "Hottest at F1 hot: 4 presses";
    heats->worst.push_back(worst);
    const auto all = review::review(coach.drawing, coach.prediction,
                                    study::assess(coach.drawing, coach.prediction, heats, {}, nullptr, "None."));
    int told = 0;
    for (const review::Finding& finding : all) {
        if (finding.rule == "scald_at_tap" || finding.rule == "repeated_presses_unprotected") {
            ++told;
            CHECK(finding.caseName == worst.script.name);
            CHECK(finding.script == worst.script);
            CHECK(finding.severity == Severity::Danger);
        }
    }
    CHECK(told == 2);
    const auto cautions = review::cautions(coach.drawing, coach.prediction,
                                           study::assess(coach.drawing, coach.prediction, heats, {}, nullptr, "None."));
    CHECK(cautions.front().arguments.at(0) == Argument(Measure{58, Quantity::Temperature}));
}

TEST_CASE("until the search is done a finding and a caution say 'at least', then they do not", "[review]")
{
    Coach coach;
    coach.addCase("Three presses", 3, {{"hottest_heater_outlet", 60.0}, {"hottest_tap", 58.0}});
    const auto told = [&](const study::Assessment& assessment) {
        std::string text;
        for (const review::Finding& finding : review::review(coach.drawing, coach.prediction, assessment))
            if (finding.rule == "scald_at_tap") {
                text += render(finding.what, UnitSystem::Metric);
            }
        return text + render(review::cautions(coach.drawing, coach.prediction, assessment).front(), UnitSystem::Metric);
    };
    const study::Assessment drawn = coach.drawn();
    REQUIRE(drawn.isAtLeast());
    CHECK(told(drawn).find("Water at F1 reaches at least 58") == 0);
    CHECK(told(drawn).find("The hottest predicted at a tap is at least 58") != std::string::npos);
    auto heats = std::make_shared<study::PressesStudy>();
    study::WorstHeat worst;
    worst.place = study::HeatPlace::OutletHot;
    worst.part = coach.id("F1");
    worst.hottest_C = 58;
    heats->worst.push_back(worst);
    const std::string known = told(study::assess(coach.drawing, coach.prediction, heats, {}, nullptr, "None."));
    CHECK(known.find("Water at F1 reaches 58") == 0);
    CHECK(known.find("at least") == std::string::npos);
}

TEST_CASE("what happens before the job does not count against the loop", "[review]")
{
    Coach coach;
    coach.addCase("Today", 0, {{"hottest_tap", 60.0}}).view = document::View::Before;
    CHECK_FALSE(coach.finds("scald_at_tap"));
}

TEST_CASE("repeated presses are found by how hot they get, whatever protection is set", "[review]")
{
    Coach coach;
    coach.addCase("Three presses", 3, {{"hottest_heater_outlet", 70.0}, {"hottest_tap", 45.0}});
    REQUIRE(coach.finds("repeated_presses_unprotected"));
    CHECK(coach.found("repeated_presses_unprotected")[0].severity == Severity::Caution);

    Coach withWait = coach;
    withWait.set("C1", "cool_down_wait_s", 1.0);
    CHECK(withWait.finds("repeated_presses_unprotected"));
    Coach withLockout = coach;
    withLockout.set("C1", "inlet_lockout", true);
    CHECK(withLockout.finds("repeated_presses_unprotected"));
    Coach once = Coach();
    once.addCase("One press", 1, {{"hottest_heater_outlet", 70.0}});
    CHECK_FALSE(once.finds("repeated_presses_unprotected"));
    // The default setpoint is 51.1 °C: trim around it is no overheating.
    Coach atSetpoint = Coach();
    atSetpoint.addCase("Two presses", 2, {{"hottest_heater_outlet", 52.0}});
    CHECK_FALSE(atSetpoint.finds("repeated_presses_unprotected"));
}

TEST_CASE("a controller without an independent high limit is found", "[review]")
{
    Coach coach;
    REQUIRE(coach.finds("single_stop"));
    CHECK(coach.found("single_stop")[0].part == coach.id("C1"));
    coach.set("C1", "high_limit", true);
    CHECK_FALSE(coach.finds("single_stop"));
}

TEST_CASE("warm water in the cold line asks for an inlet lockout only when the return uses that line", "[review]")
{
    Coach cold(Coach::Return::ByColdLine);
    cold.addCase("Two presses", 2, {{"hottest_heater_inlet", 44.0}});
    REQUIRE(cold.finds("inlet_lockout_missing"));
    CHECK(cold.found("inlet_lockout_missing")[0].part == cold.id("C1"));

    Coach cool(Coach::Return::ByColdLine);
    cool.addCase("One press", 1, {{"hottest_heater_inlet", 39.0}});  // 40 °C is the limit: IECC C404
    CHECK_FALSE(cool.finds("inlet_lockout_missing"));

    Coach locked = cold;
    locked.set("C1", "inlet_lockout", true);
    REQUIRE(locked.finds("inlet_lockout_missing"));  // it does not keep the limit: told with its setting
    CHECK(locked.found("inlet_lockout_missing")[0].what.arguments.size() == 3);

    Coach own(Coach::Return::Own);
    own.addCase("Two presses", 2, {{"hottest_heater_inlet", 44.0}});
    CHECK_FALSE(own.finds("inlet_lockout_missing"));
}

TEST_CASE("a smallest fire above what the flow can carry is found", "[review]")
{
    Coach coach;
    // 500 x gpm x rise °F (8.33 lb/gal x 60 min): 15,000 Btu/h input at 82 % is 12,300 delivered; at
    // 0.60 gpm the rise is 41 °F, from 68 °F to 109 °F, under the 124 °F set.
    CHECK_FALSE(coach.finds("minimum_fire_too_strong"));
    // 24,000 Btu/h at 82 %: 19,680 delivered, rise 65.6 °F, 133.6 °F.
    coach.set("WH1", "minimum_input_W", 24000 * us::kBtuPerHour);
    const auto found = coach.found("minimum_fire_too_strong");
    REQUIRE(found.size() == 1);
    // The identity's 500 takes water near room temperature; 1 °F covers its rounding.
    CHECK_THAT(std::get<Measure>(found[0].what.arguments.at(3)).si, WithinAbs(us::celsius(133.6), 1 / 1.8));
}

TEST_CASE("a circulator that can meet hotter water than it is rated for is found", "[review]")
{
    Coach coach;
    coach.addCase("One press", 1, {{"hottest_heater_outlet", 52.0}, {"hottest_tap", 45.0}});
    CHECK_FALSE(coach.finds("circulator_too_hot"));  // rated for 60 °C by default
    coach.addCase("Two presses", 2, {{"hottest_heater_outlet", 72.0}, {"hottest_tap", 55.0}});
    REQUIRE(coach.finds("circulator_too_hot"));
    CHECK(coach.found("circulator_too_hot")[0].severity == Severity::Note);  // at the heater only
    coach.addCase("Three presses", 3, {{"hottest_heater_outlet", 72.0}, {"hottest_tap", 61.0}});
    REQUIRE(coach.finds("circulator_too_hot"));
    CHECK(coach.found("circulator_too_hot")[0].severity == Severity::Caution);
    CHECK(coach.found("circulator_too_hot")[0].part == coach.id("P1"));
    coach.set("P1", "temperature_limit_C", 100.0);
    CHECK_FALSE(coach.finds("circulator_too_hot"));
}

TEST_CASE("a loop without a check valve is found", "[review]")
{
    CHECK_FALSE(Coach(Coach::Return::Own, true).finds("loop_without_check"));
    CHECK(Coach(Coach::Return::Own, false).finds("loop_without_check"));
}

TEST_CASE("a loose pipe end and a port without a pipe are found, a closed coach has neither", "[review]")
{
    Coach coach;
    CHECK_FALSE(coach.finds("open_end"));
    Coach loose = coach;
    const document::PartId hung = loose.add("pipe_run", "L99");
    loose.drawing.find(hung)->ends[0] = {};
    loose.add("hand_valve", "V9");
    const auto found = loose.found("open_end");
    const auto about = [&](const std::string& tag) {
        return std::any_of(found.begin(), found.end(), [&](const auto& one) { return one.part == loose.id(tag); });
    };
    CHECK(about("L99"));
    CHECK(about("V9"));
}

TEST_CASE("an outlet no supply reaches is found", "[review]")
{
    Coach coach;
    CHECK_FALSE(coach.finds("outlet_without_supply"));
    coach.add("faucet", "F2");
    const auto found = coach.found("outlet_without_supply");
    REQUIRE(found.size() == 1);
    CHECK(found[0].part == coach.id("F2"));
}

TEST_CASE("city water above 60 psi without a regulator is found", "[review]")
{
    Coach coach;
    coach.set("CW1", "pressure_Pa", 80 * us::kPsi);
    CHECK_FALSE(coach.finds("regulator_missing"));  // PR1 stands in the way

    // The same coach with a plain valve in the regulator's place.
    Coach bare = coach;
    bare.drawing.find(bare.id("PR1"))->kind = "hand_valve";
    REQUIRE(bare.finds("regulator_missing"));
    CHECK(bare.found("regulator_missing")[0].part == bare.id("CW1"));
    bare.set("CW1", "pressure_Pa", 55 * us::kPsi);
    CHECK_FALSE(bare.finds("regulator_missing"));
}

TEST_CASE("a wire that loses more than 10 % of the volts is found with the gauge to take", "[review][published]")
{
    Coach coach;
    // NEC chapter 9 table 8, AWG 14 stranded at 75 °C: 3.14 ohm per 1,000 ft. V = 2 L I R at 12 V:
    // 7.5 A over 25 ft lose 1.178 V or 9.81 %; 10 A over 20 ft lose 1.256 V or 10.47 % (plain arithmetic).
    coach.set("P1", "wire_gauge", std::string("14"));
    coach.set("P1", "wire_length_m", 25 * us::kFoot);
    coach.set("P1", "current_A", 7.5);
    CHECK_FALSE(coach.finds("wire_drop"));
    coach.set("P1", "wire_length_m", 20 * us::kFoot);
    coach.set("P1", "current_A", 10.0);
    const auto found = coach.found("wire_drop");
    REQUIRE(found.size() == 1);
    CHECK_THAT(std::get<Measure>(found[0].what.arguments.at(1)).si, WithinRel(1.256, 0.01));
    // ABYC E-11 formula: 10.75 x 10 A x 40 ft is 4300; over 1.2 V 3583 circular mil (AWG 14: 3702), over
    // 0.36 V 11944 (AWG 8: 14810).
    CHECK(found[0].remedy.arguments.at(0) == Argument(std::int64_t{14}));
    CHECK(found[0].remedy.arguments.at(1) == Argument(std::int64_t{8}));
}

TEST_CASE("a fuse above what its wire may carry is a danger", "[review]")
{
    Coach coach;
    coach.add("fuse", "FU1");
    coach.set("FU1", "wire_gauge", std::string("14"));
    coach.set("FU1", "rating_A", 15.0);  // NEC 240.4(D): 15 A for AWG 14
    CHECK_FALSE(coach.finds("fuse_above_wire"));
    coach.set("FU1", "rating_A", 20.0);
    REQUIRE(coach.finds("fuse_above_wire"));
    CHECK(coach.found("fuse_above_wire")[0].severity == Severity::Danger);
}

TEST_CASE("a shower that gets scalding water without a mixing valve is found", "[review]")
{
    Coach coach;
    // The tap becomes a shower; the heater is set to 51.1 °C by default.
    coach.drawing.find(coach.id("F1"))->kind = "shower";
    REQUIRE(coach.finds("shower_without_mixing_valve"));
    CHECK(coach.found("shower_without_mixing_valve")[0].part == coach.id("F1"));

    Coach cooler = coach;
    cooler.set("WH1", "setpoint_C", 45.0);
    CHECK_FALSE(cooler.finds("shower_without_mixing_valve"));
    Coach limiting = coach;
    limiting.set("F1", "limits_temperature", true);
    CHECK_FALSE(limiting.finds("shower_without_mixing_valve"));

    // A mixing valve in the hot branch to the shower.
    Coach mixed = coach;
    const document::PartId valve = mixed.add("mixing_valve", "MX1");
    const document::Part* branch = mixed.drawing.pipeAt(mixed.id("F1"), "hot");
    REQUIRE(branch);
    mixed.drawing.find(branch->id)->ends[1] = {valve, "hot", {}};
    mixed.pipe(valve, "mixed", mixed.id("F1"), "hot");
    REQUIRE(parts::find("mixing_valve")->port("mixed"));
    REQUIRE(parts::find("mixing_valve")->port("hot"));
    CHECK_FALSE(mixed.finds("shower_without_mixing_valve"));
}

TEST_CASE("hot water at a cold tap is found, and a stuck valve is named as the reason", "[review]")
{
    Coach coach;
    study::CaseResult& result = coach.addCase("Cold draw", 0);
    result.hottest.push_back({study::HeatPlace::OutletCold, coach.id("F1"), 38, 20});
    CHECK_FALSE(coach.finds("cold_outlet_warm"));

    result.hottest.back().hottest_C = 45;
    REQUIRE(coach.finds("cold_outlet_warm"));
    CHECK(coach.found("cold_outlet_warm")[0].severity == Severity::Caution);
    CHECK(coach.found("cold_outlet_warm")[0].why.text.find("fault") == std::string::npos);

    result.hottest.back().hottest_C = 51;
    document::Action stuck;
    stuck.kind = ActionKind::StartFault;
    stuck.part = coach.id("MV1");
    stuck.fault = "stuck_open";
    coach.drawing.cases.back().actions.push_back(stuck);
    REQUIRE(coach.finds("cold_outlet_warm"));
    CHECK(coach.found("cold_outlet_warm")[0].severity == Severity::Danger);
    CHECK(coach.found("cold_outlet_warm")[0].why.text.find("fault") != std::string::npos);

    // The same water at the hot side is what the tap is for.
    result.hottest.back().place = study::HeatPlace::OutletHot;
    CHECK_FALSE(coach.finds("cold_outlet_warm"));
}

TEST_CASE("a case that cannot run is found with its reason", "[review]")
{
    Coach coach;
    study::CaseResult& result = coach.addCase("Odd", 1);
    CHECK_FALSE(coach.finds("case_without_answer"));
    result.noAnswer = Problem{"Nothing feeds the coach.", "Add a supply.", "CW1"};
    const auto found = coach.found("case_without_answer");
    REQUIRE(found.size() == 1);
    CHECK(found[0].what.text == "Nothing feeds the coach.");
    CHECK(found[0].part == coach.id("CW1"));
}

TEST_CASE("answers that rest on estimates say what to measure first", "[review]")
{
    Coach coach;
    REQUIRE(coach.found("rests_on_estimates").size() == 2);  // all defaults are estimates
    const document::PartId hot = coach.prediction.loop.hotPath.front();
    coach.drawing.find(hot)->entries["length_m"] = {8.0, parts::Basis::Measured};
    coach.set("WH1", "activation_flow_m3s", 2.84e-5, parts::Basis::DataSheet);
    CHECK_FALSE(coach.finds("rests_on_estimates"));
    coach.drawing.find(hot)->entries["length_m"] = {8.0, parts::Basis::Estimated};
    const auto found = coach.found("rests_on_estimates");
    REQUIRE(found.size() == 1);
    CHECK(found[0].part == hot);
    CHECK(found[0].severity == Severity::Note);
}

TEST_CASE("dangers come first and a dismissed finding stays, with its reason", "[review]")
{
    Coach coach;
    coach.addCase("Hot", 1, {{"hottest_tap", 60.0}});
    coach.drawing.dismissals.push_back({"single_stop", coach.id("C1"), "A clip-on limiter is fitted later.", {}});
    const auto all = review::review(coach.drawing, coach.prediction, coach.drawn());
    REQUIRE(all.size() >= 3);
    CHECK(std::is_sorted(all.begin(), all.end(), [](const auto& a, const auto& b) { return a.severity > b.severity; }));
    const auto stop = std::find_if(all.begin(), all.end(), [](const auto& one) { return one.rule == "single_stop"; });
    REQUIRE(stop != all.end());
    CHECK(stop->dismissed);
    CHECK(stop->dismissReason == "A clip-on limiter is fitted later.");
    CHECK_FALSE(all.front().dismissed);
}

TEST_CASE("every finding names its rule, a reason, a remedy and a source", "[review]")
{
    Coach coach(Coach::Return::ByColdLine, false);
    coach.addCase("Hot", 3, {{"hottest_tap", 60.0}, {"hottest_heater_outlet", 72.0}, {"hottest_heater_inlet", 50.0}});
    const auto all = review::review(coach.drawing, coach.prediction, coach.drawn());
    CHECK(all.size() >= 6);
    for (const review::Finding& finding : all) {
        CAPTURE(finding.rule);
        const auto& rules = review::rules();
        CHECK(
            std::any_of(rules.begin(), rules.end(), [&](const review::Rule& rule) { return rule.id == finding.rule; }));
        for (const Message* message : {&finding.what, &finding.why, &finding.remedy}) {
            CHECK_FALSE(message->empty());
            CHECK(render(*message, UnitSystem::Us).find('{') == std::string::npos);
        }
        CHECK_FALSE(finding.source.empty());
    }
}

TEST_CASE("the standing cautions of a loop name gas, 12 V, pressure, drinking water and the makers' instructions",
          "[review]")
{
    Coach coach;
    std::string all;
    for (const Message& caution : review::cautions(coach.drawing, coach.prediction, coach.drawn())) {
        all += render(caution, UnitSystem::Us) + '\n';
    }
    CAPTURE(all);
    for (const char* word :
         {"burn", "Gas:", "12 V:", "Pressure:", "Drinking water:", "high limit", "instructions", "licensed"}) {
        CAPTURE(word);
        CHECK(all.find(word) != std::string::npos);
    }
    CHECK(all.find("kettle") == std::string::npos);  // its return has a line of its own
}

TEST_CASE("a return by the cold line warns of the cold taps on it by their tags", "[review]")
{
    Coach coach(Coach::Return::ByColdLine);
    const auto all = review::cautions(coach.drawing, coach.prediction, coach.drawn());
    const auto warned = std::find_if(all.begin(), all.end(),
                                     [](const Message& one) { return one.text.find("kettle") != std::string::npos; });
    REQUIRE(warned != all.end());
    CHECK(render(*warned, UnitSystem::Us).find("F1") != std::string::npos);
}

TEST_CASE("the hottest water of the cases is in the cautions with its time to a burn", "[review]")
{
    Coach coach;
    coach.addCase("Hot", 1, {{"hottest_tap", 55.0}});
    const Message first = review::cautions(coach.drawing, coach.prediction, coach.drawn()).front();
    REQUIRE(first.arguments.size() == 2);
    CHECK(std::get<Measure>(first.arguments[0]).si == 55.0);
    // Moritz & Henriques (1947) table: 17 s at 55 °C; CPSC's table is higher there.
    CHECK_THAT(std::get<Measure>(first.arguments[1]).si, WithinRel(17.0, 1e-9));
}
