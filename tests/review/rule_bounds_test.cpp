// SPDX-License-Identifier: GPL-3.0-or-later
// Where each rule begins and ends: its bound from both sides, and which part, case and figures it names.
#include <algorithm>

#include "base/units.h"
#include "document/edit.h"
#include "review/coach.h"
#include "review/finding.h"
#include "study/loop.h"
#include "support/catch.h"

using namespace tapward;
using document::ActionKind;
using document::PartId;
using review::Finding;
using review::Severity;
using test::Coach;

namespace {

Finding only(const Coach& coach, const char* rule)
{
    const auto found = coach.found(rule);
    REQUIRE(found.size() == 1);
    return found[0];
}

double si(const Message& message, std::size_t argument) { return std::get<Measure>(message.arguments.at(argument)).si; }

study::Event event(const char* id)
{
    study::Event one;
    one.id = id;
    return one;
}

}  // namespace

TEST_CASE("margin: at activation it is thin, at a tenth more it is not", "[review]")
{
    Coach coach;
    auto& loop = coach.prediction.loop;
    loop.activationFlow_m3s = 1e-5;
    loop.flow_m3s = 1.1001e-5;
    CHECK_FALSE(coach.finds("flow_margin_thin"));
    loop.flow_m3s = 1.0999e-5;
    CHECK(only(coach, "flow_margin_thin").severity == Severity::Caution);
    CHECK(only(coach, "flow_margin_thin").part == coach.id("WH1"));
    loop.flow_m3s = 1e-5;
    CHECK_THAT(si(only(coach, "flow_margin_thin").what, 1), WithinAbs(0, 1e-12));
    loop.flow_m3s = 0.9999e-5;
    CHECK(only(coach, "flow_margin_thin").what.text.find("below") != std::string::npos);
    loop.flow_m3s = 0;  // does not run: another rule's
    CHECK_FALSE(coach.finds("flow_margin_thin"));
    loop.flow_m3s.reset();
    CHECK_FALSE(coach.finds("flow_margin_thin"));
    loop.flow_m3s = 1.2e-5;
    loop.flowLowVolts_m3s = 1e-5;
    CHECK_FALSE(coach.finds("flow_margin_thin"));
    loop.flowLowVolts_m3s = 0.99e-5;
    CHECK(si(only(coach, "flow_margin_thin").what, 0) == 0.99e-5);
    CHECK(si(only(coach, "flow_margin_thin").what, 1) == 1e-5);
    loop.flowLowVolts_m3s.reset();
    CHECK_FALSE(coach.finds("flow_margin_thin"));
}

TEST_CASE("scald: at 120 °F not yet; of several cases the hottest, at the outlet that shows it", "[review]")
{
    Coach coach;
    coach.addCase("At", 1, {{"hottest_tap", us::celsius(120)}});
    CHECK_FALSE(coach.finds("scald_at_tap"));
    coach.addCase("Hot", 1, {{"hottest_tap", 55.0}});
    coach.addCase("Hottest", 1, {{"hottest_tap", 56.0}});
    coach.addCase("Hot again", 1, {{"hottest_tap", 50.0}});
    CHECK(only(coach, "scald_at_tap").caseName == "Hottest");
    CHECK(si(only(coach, "scald_at_tap").what, 1) == 56);
    CHECK(si(only(coach, "scald_at_tap").why, 0) == us::celsius(120));
    study::CaseResult& result = coach.prediction.cases[2];
    CHECK(only(coach, "scald_at_tap").part == coach.id("F1"));
    const PartId first = coach.add("faucet", "F7"), second = coach.add("faucet", "F8");
    result.hottest.push_back({study::HeatPlace::OutletHot, first, 56.1, 9});
    result.hottest.push_back({study::HeatPlace::OutletCold, second, 55.9, 9});
    CHECK(only(coach, "scald_at_tap").part == first);
    result.hottest.back().hottest_C = 56.2;
    CHECK(only(coach, "scald_at_tap").part == second);
}

TEST_CASE("warm water at a cold outlet: above 104 °F, those people drink from told apart", "[review]")
{
    using enum study::HeatPlace;
    const auto with = [](double celsius) {
        Coach one;
        one.addCase("Draw", 0).hottest.push_back({OutletCold, one.id("F1"), celsius, 9});
        return one;
    };
    CHECK_FALSE(with(40).finds("cold_outlet_warm"));
    CHECK(only(with(40.1), "cold_outlet_warm").severity == Severity::Caution);
    CHECK(only(with(us::celsius(120)), "cold_outlet_warm").severity == Severity::Caution);
    CHECK(only(with(us::celsius(120.5)), "cold_outlet_warm").severity == Severity::Danger);
    Coach before = with(60);
    before.prediction.cases.back().view = document::View::Before;
    CHECK_FALSE(before.finds("cold_outlet_warm"));
    // The hottest of all cases counts, and of all outlets: one finding that names them.
    Coach two = with(45);
    const PartId bowl = two.add("toilet", "WC1");
    two.addCase("Second", 0).hottest = {{OutletCold, two.id("F1"), 47, 9}, {OutletCold, bowl, 46, 9}};
    two.set("F1", "drinking", false);
    const Finding both = only(two, "cold_outlet_warm");
    CHECK(both.caseName == "Second");
    CHECK(both.part == two.id("F1"));
    CHECK(both.what.arguments.at(0) == Argument(std::string("F1, WC1")));
    CHECK(si(both.what, 1) == 47);
    CHECK(both.what.text.find("drink") == std::string::npos);
    two.set("F1", "drinking", true);
    const auto apart = two.found("cold_outlet_warm");
    REQUIRE(apart.size() == 2);
    for (const Finding& finding : apart) {
        const bool drinking = finding.part == two.id("F1");
        CHECK((finding.what.text.find("drink") != std::string::npos) == drinking);
        CHECK(si(finding.what, 1) == (drinking ? 47 : 46));
    }
}

TEST_CASE("repeated presses: from two on, above 120 °F or 3 K over the setting, danger where a tap gets it", "[review]")
{
    const auto pressed = [](int times, double heater_C, double tap_C) {
        Coach coach;
        coach.set("WH1", "setpoint_C", 55.0);
        coach.addCase("Presses", times, {{"hottest_heater_outlet", heater_C}, {"hottest_tap", tap_C}});
        return coach;
    };
    CHECK_FALSE(pressed(2, 58, 40).finds("repeated_presses_unprotected"));
    CHECK(only(pressed(2, 58.1, 40), "repeated_presses_unprotected").severity == Severity::Caution);
    CHECK_FALSE(pressed(1, 80, 60).finds("repeated_presses_unprotected"));
    CHECK_FALSE(pressed(2, 58, us::celsius(120)).finds("repeated_presses_unprotected"));
    const Finding tap = only(pressed(2, 54, 50), "repeated_presses_unprotected");
    CHECK(tap.severity == Severity::Danger);
    CHECK(si(tap.what, 0) == 54);  // the hotter of the two
    CHECK(si(only(pressed(2, 50, 54), "repeated_presses_unprotected").what, 0) == 54);
    CHECK(si(only(pressed(3, 70, 45), "repeated_presses_unprotected").what, 0) == 70);
    CHECK(tap.part == pressed(2, 54, 50).id("C1"));
    // Three seconds at 60 °C: Moritz & Henriques (1947).
    CHECK(si(only(pressed(2, 60, 45), "repeated_presses_unprotected").what, 1) == 3);
    // A low setting is no reason to find 48 °C hot.
    Coach low = pressed(2, 48, 40);
    low.set("WH1", "setpoint_C", 40.0);
    CHECK_FALSE(low.finds("repeated_presses_unprotected"));
    // A setting is no proof: 70 °C was reached with it.
    Coach waits = pressed(3, 70, 55);
    waits.set("C1", "cool_down_wait_s", 1.0);
    CHECK(waits.finds("repeated_presses_unprotected"));
}

TEST_CASE("inlet lockout: water above 104 °F enters the cold line, without one or in spite of one", "[review]")
{
    const auto coach = [](double inlet_C) {
        Coach one(Coach::Return::ByColdLine);
        one.addCase("Press", 1, {{"hottest_heater_inlet", inlet_C}});
        return one;
    };
    CHECK_FALSE(coach(40).finds("inlet_lockout_missing"));
    CHECK(only(coach(40.1), "inlet_lockout_missing").caseName == "Press");
    CHECK(si(only(coach(44), "inlet_lockout_missing").what, 0) == 44);
    Coach high = coach(44);
    high.set("C1", "inlet_lockout", true);
    high.set("C1", "inlet_lockout_C", 41.0);
    CHECK(si(only(high, "inlet_lockout_missing").what, 0) == 44);
    CHECK(si(only(high, "inlet_lockout_missing").what, 2) == 41);
}

TEST_CASE("a circulator is too hot half a degree above its rating, in cases that press", "[review]")
{
    const auto coach = [](int presses, double heater_C, double tap_C) {
        Coach one;
        one.set("P1", "temperature_limit_C", 60.0);
        one.addCase("Press", presses, {{"hottest_heater_outlet", heater_C}, {"hottest_tap", tap_C}});
        return one;
    };
    CHECK_FALSE(coach(1, 60.5, 60.5).finds("circulator_too_hot"));
    const Finding note = only(coach(1, 60.6, 60.5), "circulator_too_hot");
    CHECK(note.severity == Severity::Note);
    CHECK(si(note.what, 0) == 60.6);
    CHECK(si(note.what, 2) == 60);
    const Finding caution = only(coach(1, 70, 60.6), "circulator_too_hot");
    CHECK(caution.severity == Severity::Caution);
    CHECK(si(caution.what, 0) == 60.6);
    CHECK(only(coach(0, 70, 65), "circulator_too_hot").severity == Severity::Note);  // no run took it there
    Coach unknown = coach(1, 70, 65);
    unknown.set("P1", "temperature_limit_C", 0.0);
    CHECK_FALSE(unknown.finds("circulator_too_hot"));
    // Each pump by its own rating.
    Coach two = coach(1, 70, 65);
    two.add("circulator", "P2");
    two.set("P2", "temperature_limit_C", 66.0);
    const auto both = two.found("circulator_too_hot");
    REQUIRE(both.size() == 2);
    CHECK(both[0].part == two.id("P1"));
    CHECK(both[0].severity == Severity::Caution);
    CHECK(both[1].part == two.id("P2"));
    CHECK(both[1].severity == Severity::Note);
}

TEST_CASE("parts too hot: the hot way by the heater's water, the return by the tap's, half a degree over", "[review]")
{
    Coach coach;
    coach.addCase("Press", 1, {{"hottest_heater_outlet", 70.0}, {"hottest_tap", 60.0}});
    CHECK_FALSE(coach.finds("part_too_hot"));
    for (const auto& [tag, water_C] : {std::pair{"CV1", 60.0}, {"MV1", 60.0}}) {
        Coach one = coach;
        one.set(tag, "temperature_limit_C", water_C - 0.5);
        CHECK_FALSE(one.finds("part_too_hot"));
        one.set(tag, "temperature_limit_C", water_C - 0.6);
        const Finding found = only(one, "part_too_hot");
        CHECK(found.part == one.id(tag));
        CHECK(found.severity == Severity::Caution);
        CHECK(si(found.what, 1) == water_C);
        CHECK_THAT(si(found.what, 2), WithinAbs(water_C - 0.6, 1e-12));
        CHECK(found.caseName == "Press");
    }
    // Not in the loop, or a pump (another rule's): nothing.
    Coach pump = coach;
    pump.set("P1", "temperature_limit_C", 50.0);
    CHECK_FALSE(pump.finds("part_too_hot"));
    // A draw says nothing of the return.
    Coach draw;
    draw.addCase("Draw", 0, {{"hottest_heater_outlet", 70.0}, {"hottest_tap", 60.0}});
    draw.set("CV1", "temperature_limit_C", 50.0);
    CHECK_FALSE(draw.finds("part_too_hot"));
    // Tube of the hot way: PEX to 180 °F (82.2 °C), all of it in one finding.
    Coach tube;
    tube.addCase("Press", 1, {{"hottest_heater_outlet", 83.0}, {"hottest_tap", 60.0}});
    const Finding hot = only(tube, "part_too_hot");
    CHECK(hot.severity == Severity::Danger);
    CHECK(hot.part == tube.prediction.loop.hotPath.front());
    CHECK(si(hot.what, 1) == 83);
    CHECK_THAT(si(hot.what, 2), WithinAbs(us::celsius(180), 0.1));
    CHECK(std::get<std::string>(hot.what.arguments.at(0)) == tube.drawing.find(hot.part)->tag);
    // Tube of both ways: the hottest water in it is told.
    Coach both;
    both.set("CV1", "temperature_limit_C", 99.0);
    both.set("MV1", "temperature_limit_C", 99.0);
    both.addCase("Hot", 1, {{"hottest_heater_outlet", 95.0}, {"hottest_tap", 80.0}});
    both.addCase("Press", 1, {{"hottest_heater_outlet", 85.0}, {"hottest_tap", 84.0}});
    const Finding worst = only(both, "part_too_hot");
    CHECK(si(worst.what, 1) == 95);
    CHECK(worst.caseName == "Hot");
    Coach back;
    back.set("CV1", "temperature_limit_C", 99.0);
    back.set("MV1", "temperature_limit_C", 99.0);
    back.addCase("Press", 1, {{"hottest_heater_outlet", 70.0}, {"hottest_tap", 83.0}});
    CHECK(si(only(back, "part_too_hot").what, 1) == 83);
}

TEST_CASE("pressure: two hundredths over the rating count, the hottest tube's rating and the most pressure are told",
          "[review]")
{
    Coach coach;
    coach.drawing.find(coach.id("PR1"))->kind = "hand_valve";
    coach.set("CW1", "pressure_Pa", 100 * us::kPsi);
    coach.set("CV1", "pressure_limit_Pa", 99 * us::kPsi);
    CHECK_FALSE(coach.finds("part_over_pressure"));
    coach.set("CV1", "pressure_limit_Pa", 97 * us::kPsi);
    const Finding part = only(coach, "part_over_pressure");
    CHECK(part.part == coach.id("CV1"));
    CHECK(part.severity == Severity::Danger);
    CHECK_THAT(si(part.what, 1), WithinRel(97 * us::kPsi, 1e-9));
    CHECK_THAT(si(part.what, 2), WithinRel(100 * us::kPsi, 0.01));  // same height
    coach.set("CV1", "pressure_limit_Pa", 0.0);  // not known
    CHECK_FALSE(coach.finds("part_over_pressure"));
    coach.set("CW1", "pressure_Pa", 110 * us::kPsi);
    const Finding tube = only(coach, "part_over_pressure");
    CHECK_THAT(si(tube.what, 0), WithinRel(110 * us::kPsi, 0.01));
    CHECK_THAT(si(tube.what, 2), WithinRel(100 * us::kPsi, 0.01));  // ASTM F876
    CHECK(document::kindOf(*coach.drawing.find(tube.part)).isPipe);
    CHECK(std::get<std::string>(tube.what.arguments.at(1)).find(", ") != std::string::npos);
}

TEST_CASE("volts: 14.4 on the charger and 10.5 when low, from both sides", "[review]")
{
    // Lead battery: common practice, no published source.
    Coach coach;
    const auto limits = [&](double least_V, double most_V) {
        coach.set("P1", "minimum_V", least_V);
        coach.set("P1", "maximum_V", most_V);
        return coach.found("part_volts_exceeded");
    };
    CHECK(limits(10.5, 14.4).empty());
    CHECK(limits(10.5, 14.3).at(0).severity == Severity::Caution);
    CHECK(si(limits(10.5, 14.3).at(0).what, 1) == 14.3);
    CHECK(si(limits(10.5, 14.3).at(0).what, 2) == 14.4);
    CHECK(limits(10.6, 14.4).at(0).severity == Severity::Note);
    CHECK(si(limits(10.6, 14.4).at(0).what, 1) == 10.6);
    CHECK(si(limits(10.6, 14.4).at(0).what, 2) == 10.5);
    CHECK(limits(10.6, 14.3).at(0).severity == Severity::Caution);
}

TEST_CASE("city water: above 60 psi and where it reaches a tap or a heater", "[review]")
{
    Coach coach;
    coach.drawing.find(coach.id("PR1"))->kind = "hand_valve";
    coach.set("CW1", "pressure_Pa", 60 * us::kPsi);
    CHECK_FALSE(coach.finds("regulator_missing"));
    coach.set("CW1", "pressure_Pa", 60.1 * us::kPsi);
    CHECK_THAT(si(only(coach, "regulator_missing").what, 0), WithinRel(60.1 * us::kPsi, 1e-9));
    CHECK_THAT(si(only(coach, "regulator_missing").why, 0), WithinRel(60 * us::kPsi, 1e-9));
    // Joined to nothing yet it reaches nothing.
    Coach alone;
    const PartId second = alone.add("city_inlet", "CW2");
    alone.set("CW2", "pressure_Pa", 90 * us::kPsi);
    CHECK_FALSE(alone.finds("regulator_missing"));
    CHECK(second != document::kNoPart);
}

TEST_CASE("the smallest fire: at the setting not yet, weaker at altitude, with its own figures", "[review]")
{
    // heat = flow x heat capacity x rise: 10 kW x 0.8 in 0.05 kg/s of 4.19 kJ/(kg K) rise 38.2 K.
    Coach coach;
    coach.prediction.loop.flow_m3s = 0.05 / 998.2;
    coach.prediction.loop.coldStart_C = 20;
    coach.set("WH1", "minimum_input_W", 10000.0);
    coach.set("WH1", "efficiency", 0.8);
    coach.set("WH1", "setpoint_C", 58.8);
    CHECK_FALSE(coach.finds("minimum_fire_too_strong"));
    coach.set("WH1", "setpoint_C", 57.6);
    const Finding found = only(coach, "minimum_fire_too_strong");
    CHECK(si(found.what, 2) == 20);
    CHECK_THAT(si(found.what, 3), WithinAbs(58.2, 0.5));
    CHECK(si(found.what, 4) == 57.6);
    // 4 % less per 1,000 ft above 2,000 ft (NFPA 54): at 3,000 ft 0.96 of it, 36.7 K.
    coach.drawing.job.altitude_m = 3000 * us::kFoot;
    CHECK_FALSE(coach.finds("minimum_fire_too_strong"));
    coach.set("WH1", "setpoint_C", 56.0);
    CHECK_THAT(si(only(coach, "minimum_fire_too_strong").what, 3), WithinAbs(56.7, 0.5));
    // A flow that does not light it is another rule's, and so is none.
    coach.set("WH1", "activation_flow_m3s", 0.051 / 998.2);
    CHECK_FALSE(coach.finds("minimum_fire_too_strong"));
    coach.set("WH1", "activation_flow_m3s", 0.05 / 998.2);
    CHECK(coach.finds("minimum_fire_too_strong"));
    coach.prediction.loop.flow_m3s = 0;
    CHECK_FALSE(coach.finds("minimum_fire_too_strong"));
}

TEST_CASE("wire: a tenth of the rated volts, warm", "[review]")
{
    // NEC chapter 9 table 8: AWG 16 stranded at 75 °C 4.99 ohm per 1,000 ft. 2 A over 60 ft there and back: 1.198 V.
    Coach coach;
    coach.set("P1", "wire_gauge", std::string("16"));
    coach.set("P1", "wire_length_m", 60 * us::kFoot);
    coach.set("P1", "current_A", 2.0);
    coach.set("P1", "maximum_V", 30.0);
    coach.set("P1", "rated_V", 12.2);
    CHECK_FALSE(coach.finds("wire_drop"));
    coach.set("P1", "rated_V", 11.8);
    const Finding found = only(coach, "wire_drop");
    CHECK_THAT(si(found.what, 1), WithinRel(1.198, 0.01));
    CHECK_THAT(si(found.what, 2), WithinRel(1.198 / 11.8, 0.01));
    CHECK(si(found.what, 3) == 11.8);
}

TEST_CASE("a clip-on is hopeful below 10 s; stop and limit sensors are told apart", "[review]")
{
    Coach coach;
    const PartId sensor = coach.add("temperature_sensor", "TE1");
    coach.set("TE1", "mounting", std::string("clipped"));
    coach.set("C1", "stop_sensor", std::to_string(sensor));
    coach.set("C1", "stop_by_temperature", true);
    coach.set("TE1", "lag_s", 10.0);
    CHECK(only(coach, "clipped_on_sensor").severity == Severity::Note);
    CHECK(only(coach, "clipped_on_sensor").what.text.starts_with("The stop's"));
    CHECK_FALSE(only(coach, "clipped_on_sensor").fix.has_value());
    coach.set("TE1", "lag_s", 9.9);
    CHECK(only(coach, "clipped_on_sensor").severity == Severity::Caution);
    coach.set("TE1", "lag_s", 20.0);
    coach.set("C1", "stop_by_temperature", false);
    CHECK_FALSE(coach.finds("clipped_on_sensor"));
    coach.set("C1", "refuse_when_warm", true);
    CHECK(coach.finds("clipped_on_sensor"));
    coach.set("C1", "refuse_when_warm", false);
    coach.set("C1", "limit_sensor", std::to_string(sensor));
    CHECK_FALSE(coach.finds("clipped_on_sensor"));
    coach.set("C1", "high_limit", true);
    CHECK(only(coach, "clipped_on_sensor").what.text.starts_with("The high limit's"));
    CHECK(si(only(coach, "clipped_on_sensor").what, 1) == 20);
    coach.set("C1", "stop_by_temperature", true);
    CHECK(coach.found("clipped_on_sensor").size() == 1);  // a sensor that does both is found once
}

TEST_CASE("a pump may start when the slowest valve of the loop is open", "[review]")
{
    Coach coach;
    coach.set("C1", "pump_after_valve", false);
    coach.set("C1", "pump_delay_s", 6.0);
    coach.set("MV1", "travel_s", 6.0);
    CHECK_FALSE(coach.finds("pump_dead_headed"));
    coach.set("MV1", "travel_s", 6.1);
    CHECK(si(only(coach, "pump_dead_headed").what, 0) == 6);
    CHECK(si(only(coach, "pump_dead_headed").what, 2) == 6.1);
    coach.set("MV1", "rest", std::string("open"));
    CHECK_FALSE(coach.finds("pump_dead_headed"));
    coach.set("MV1", "rest", std::string("closed"));
    coach.set("MV1", "travel_s", 5.0);
    const PartId second = coach.add("motor_valve", "MV2");
    coach.set("MV2", "travel_s", 9.0);
    CHECK_FALSE(coach.finds("pump_dead_headed"));  // it stands elsewhere
    coach.prediction.loop.returnPath.push_back(second);
    CHECK(std::get<std::string>(only(coach, "pump_dead_headed").what.arguments.at(1)) == "MV2");
}

TEST_CASE("a heater's word on a loop: unknown weighs more for a tankless one, forbidden for both", "[review]")
{
    Coach coach;
    CHECK(only(coach, "heater_recirculation_unknown").severity == Severity::Caution);
    coach.drawing.find(coach.id("WH1"))->kind = "storage_heater";
    CHECK(only(coach, "heater_recirculation_unknown").severity == Severity::Note);
    coach.set("WH1", "recirculation", std::string("not_allowed"));
    CHECK(only(coach, "heater_recirculation_unknown").severity == Severity::Caution);
    CHECK(only(coach, "heater_recirculation_unknown").remedy.text.starts_with("Do not loop"));
    coach.set("WH1", "recirculation", std::string("unknown"));
    CHECK(only(coach, "heater_recirculation_unknown").remedy.text.starts_with("Read its manual"));
}

TEST_CASE("a late sensor: five seconds in all and three kelvin over the stop, in cases it stopped itself", "[review]")
{
    const auto coach = [](double lag_s, double tap_C) {
        Coach one;
        const PartId sensor = one.add("temperature_sensor", "TE1");  // not in the return: no way of the water's
        one.set("C1", "stop_by_temperature", true);
        one.set("C1", "stop_temperature_C", 42.0);
        one.set("C1", "stop_sensor", std::to_string(sensor));
        one.set("TE1", "lag_s", lag_s);
        one.addCase("Press", 1, {{"hottest_tap", tap_C}}).events.push_back(event("stop_temperature"));
        return one;
    };
    CHECK_FALSE(coach(4.9, 50).finds("sensor_late"));
    const Finding late = only(coach(5, 45), "sensor_late");
    CHECK(si(late.what, 1) == 0);
    CHECK(si(late.what, 2) == 5);
    CHECK(si(late.what, 3) == 42);
    CHECK(si(late.what, 4) == 45);
    CHECK(si(late.why, 0) == 3);
    CHECK_FALSE(coach(20, 44.9).finds("sensor_late"));
    Coach other = coach(9, 50);
    other.prediction.cases[0].events.back().id = "stop_volume";
    CHECK_FALSE(other.finds("sensor_late"));
    Coach faulty = coach(9, 50);
    document::Action fault;
    fault.kind = ActionKind::StartFault;
    faulty.drawing.cases[0].actions.push_back(fault);
    CHECK_FALSE(faulty.finds("sensor_late"));
    Coach before = coach(9, 50);
    before.prediction.cases[0].view = document::View::Before;
    CHECK_FALSE(before.finds("sensor_late"));
    Coach off = coach(9, 50);
    off.set("C1", "stop_by_temperature", false);
    CHECK_FALSE(off.finds("sensor_late"));
    Coach worse = coach(9, 50);
    worse.addCase("Worse", 1, {{"hottest_tap", 52.0}}).events.push_back(event("stop_temperature"));
    worse.addCase("Better", 1, {{"hottest_tap", 51.0}}).events.push_back(event("stop_temperature"));
    CHECK(only(worse, "sensor_late").caseName == "Worse");
    CHECK(si(only(worse, "sensor_late").what, 4) == 52);
}

TEST_CASE("a shower gets what the heater is set to, or what it was seen to give", "[review]")
{
    Coach coach;
    coach.drawing.find(coach.id("F1"))->kind = "shower";
    coach.set("WH1", "setpoint_C", us::celsius(120));
    CHECK_FALSE(coach.finds("shower_without_mixing_valve"));
    coach.set("WH1", "setpoint_C", us::celsius(121));
    CHECK_THAT(si(only(coach, "shower_without_mixing_valve").what, 1), WithinAbs(us::celsius(121), 1e-9));
    CHECK(only(coach, "shower_without_mixing_valve").caseName.empty());
    coach.set("WH1", "setpoint_C", 45.0);
    coach.addCase("Press", 1, {{"hottest_heater_outlet", 52.0}});
    CHECK(si(only(coach, "shower_without_mixing_valve").what, 1) == 52);
    CHECK(only(coach, "shower_without_mixing_valve").caseName == "Press");
    coach.prediction.cases.back().hottest.front().part = coach.id("P1");  // seen at another heater
    CHECK_FALSE(coach.finds("shower_without_mixing_valve"));
}

TEST_CASE("lengths: more than half the hot way guessed, and the longest guess is named", "[review]")
{
    Coach coach;
    coach.set("WH1", "activation_flow_m3s", 2.84e-5, parts::Basis::DataSheet);
    const PartId first = coach.prediction.loop.hotPath.front();
    const PartId second = coach.add("pipe_run", "L80"), third = coach.add("pipe_run", "L81");
    coach.prediction.loop.hotPath.insert(coach.prediction.loop.hotPath.end(), {second, third});
    const auto lengths = [&](double a, parts::Basis of, double b, double c) {
        coach.drawing.find(first)->entries["length_m"] = {a, of};
        coach.drawing.find(second)->entries["length_m"] = {b, parts::Basis::Estimated};
        coach.drawing.find(third)->entries["length_m"] = {c, parts::Basis::Estimated};
        return coach.found("rests_on_estimates");
    };
    CHECK(lengths(4, parts::Basis::Measured, 3, 1).empty());  // half
    const auto more = lengths(4, parts::Basis::Measured, 3, 1.1);
    REQUIRE(more.size() == 1);
    CHECK(more[0].part == second);
    CHECK_THAT(si(more[0].what, 0), WithinAbs(4.1, 1e-9));
    CHECK_THAT(si(more[0].what, 1), WithinAbs(8.1, 1e-9));
    CHECK(std::get<std::string>(more[0].what.arguments.at(2)) == "L80");
    CHECK(lengths(4, parts::Basis::Measured, 3, 3.1).at(0).part == third);
    CHECK(lengths(4, parts::Basis::Estimated, 3, 3.1).at(0).part == first);
    coach.set("WH1", "activation_flow_m3s", 2.84e-5, parts::Basis::Estimated);
    CHECK(lengths(9, parts::Basis::Measured, 1, 1).at(0).part == coach.id("WH1"));
    coach.prediction.loop.exists = false;
    CHECK(lengths(9, parts::Basis::Measured, 1, 1).empty());
}

TEST_CASE("a drinking branch is warm from 77 °F on, in cases that press, and every such tap is named", "[review]")
{
    Coach coach(Coach::Return::ByColdLine);
    coach.set("F1", "drinking", true);
    coach.addCase("Press", 1, {{"hottest_heater_inlet", us::celsius(76.9)}});
    CHECK_FALSE(coach.finds("drinking_branch_warm"));
    coach.addCase("No press", 0, {{"hottest_heater_inlet", us::celsius(95)}});  // nothing came through the loop
    CHECK_FALSE(coach.finds("drinking_branch_warm"));
    coach.addCase("Warm", 1, {{"hottest_heater_inlet", us::celsius(77)}});
    const Finding found = only(coach, "drinking_branch_warm");
    CHECK(found.part == coach.id("F1"));
    CHECK_THAT(si(found.what, 0), WithinAbs(us::celsius(77), 1e-9));
    CHECK(std::get<std::string>(found.what.arguments.at(1)) == "F1");
    CHECK_THAT(si(found.why, 0), WithinAbs(us::celsius(77), 1e-9));
    CHECK_THAT(si(found.why, 1), WithinAbs(us::celsius(108), 1e-9));
}

TEST_CASE("a fuse: at what its wire may carry it is right; only fuses of the finished coach count", "[review]")
{
    Coach coach;
    const PartId fuse = coach.add("fuse", "FU1");
    coach.set("FU1", "wire_gauge", std::string("18"));
    coach.set("FU1", "rating_A", 6.0);
    CHECK_FALSE(coach.finds("fuse_above_wire"));
    coach.set("FU1", "rating_A", 6.1);
    const Finding found = only(coach, "fuse_above_wire");
    CHECK(si(found.what, 1) == 6.1);
    CHECK(si(found.what, 3) == 6);
    CHECK(found.what.arguments.at(2) == Argument(std::int64_t{18}));
    CHECK(found.source.find("551.10") != std::string::npos);  // from memory, and said so
    coach.set("FU1", "wire_gauge", std::string("14"));
    coach.set("FU1", "rating_A", 16.0);
    CHECK(only(coach, "fuse_above_wire").source.find("240.4(D)") != std::string::npos);
    coach.set("FU1", "wire_gauge", std::string("8"));  // look it up
    CHECK_FALSE(coach.finds("fuse_above_wire"));
    coach.set("FU1", "wire_gauge", std::string("14"));
    coach.drawing.find(fuse)->stage = document::Stage::Removed;
    CHECK_FALSE(coach.finds("fuse_above_wire"));
    // A 15 A fuse with AWG 14 of its own, before an AWG 18 branch: 6 A (NEC 551.10(E), from memory).
    Coach branch;
    const PartId before = branch.add("fuse", "FU2");
    branch.set("FU2", "wire_gauge", std::string("14"));
    branch.set("FU2", "rating_A", 15.0);
    CHECK_FALSE(branch.finds("fuse_above_wire"));
    branch.set("P1", "wire_gauge", std::string("18"));
    CHECK_FALSE(branch.finds("fuse_above_wire"));  // another fuse's branch
    branch.set("P1", "fuse", std::to_string(before));
    branch.set("MV1", "wire_gauge", std::string("16"));
    branch.set("MV1", "fuse", std::to_string(before));
    const Finding thin = only(branch, "fuse_above_wire");
    CHECK(thin.part == before);
    CHECK(thin.what.arguments.at(2) == Argument(std::int64_t{18}));
    CHECK(si(thin.what, 3) == 6);
    CHECK(thin.what.arguments.at(4) == Argument(std::string("P1")));
    branch.set("FU2", "rating_A", 6.0);
    CHECK_FALSE(branch.finds("fuse_above_wire"));
    branch.set("FU2", "rating_A", 15.0);
    branch.drawing.find(branch.id("P1"))->stage = document::Stage::Removed;
    CHECK(only(branch, "fuse_above_wire").what.arguments.at(4) == Argument(std::string("MV1")));
}

TEST_CASE("a blocked loop is silent where it runs, where none is drawn and where a check is the reason", "[review]")
{
    Coach coach;
    auto& loop = coach.prediction.loop;
    loop.flow_m3s = 1e-6;
    CHECK_FALSE(coach.finds("loop_blocked"));
    loop.flow_m3s = 0;
    CHECK(only(coach, "loop_blocked").part == coach.id("P1"));  // no part in the way is known
    CHECK(only(coach, "loop_blocked").what.text == "No water goes round the loop.");
    loop.blockedBy = coach.id("CV1");
    CHECK_FALSE(coach.finds("loop_blocked"));
    loop.blockedBy = coach.id("P1");
    loop.reason = "It does not turn.";
    CHECK(only(coach, "loop_blocked").why.text == "It does not turn.");
}

TEST_CASE("dead ends: what holds more than a fitting's worth is found with all its pieces", "[review]")
{
    // Inside 1/2 in PEX 0.475 in or 1.143e-4 m² (ASTM F876 sizes): 5e-5 m³ are 0.437 m.
    const auto stub = [](double first_m, double second_m) {
        Coach coach;
        const document::Part* pipe = coach.drawing.pipeAt(coach.id("T2"), "run_a");
        const PartId tee = coach.add("tee", "T7"), line = pipe->id;
        document::Part& cut = *coach.drawing.find(line);
        cut.ends[cut.ends[0].part == coach.id("T2") ? 0 : 1] = {tee, "run_a", {}};
        coach.pipe(tee, "run_b", coach.id("T2"), "run_a");
        const PartId valve = coach.add("hand_valve", "V9"), last = coach.add("hand_valve", "V8");
        const PartId one = coach.pipe(tee, "branch", valve, "inlet"), two = coach.pipe(valve, "outlet", last, "inlet");
        coach.drawing.find(one)->entries["length_m"] = {first_m, parts::Basis::Measured};
        coach.drawing.find(two)->entries["length_m"] = {second_m, parts::Basis::Measured};
        return coach;
    };
    CHECK_FALSE(stub(0.21, 0.21).finds("dead_end"));
    const Coach longer = stub(0.23, 0.23);
    const Finding found = only(longer, "dead_end");
    CHECK_THAT(si(found.what, 1), WithinRel(0.46 * 1.143e-4, 0.02));
    CHECK(std::get<std::string>(found.what.arguments.at(0)).find(", ") != std::string::npos);
    CHECK(only(stub(1, 1), "dead_end").severity == Severity::Caution);
}

TEST_CASE("an open port is a note, an optional one nothing, a loose pipe a caution", "[review]")
{
    Coach coach;
    const PartId valve = coach.add("hand_valve", "V9");
    const auto about = [&](PartId part) {
        std::vector<Finding> own;
        for (const Finding& finding : coach.found("open_end")) {
            if (finding.part == part) {
                own.push_back(finding);
            }
        }
        return own;
    };
    REQUIRE(about(valve).size() == 1);
    CHECK(about(valve)[0].severity == Severity::Note);
    const PartId loose = coach.pipe(valve, "inlet", document::kNoPart, "");
    REQUIRE(about(loose).size() == 1);
    CHECK(about(loose)[0].severity == Severity::Caution);
    std::swap(coach.drawing.find(loose)->ends[0], coach.drawing.find(loose)->ends[1]);
    CHECK(about(loose).size() == 1);
    // A pipe that is taken out leaves the port open.
    Coach gone;
    gone.drawing.find(gone.drawing.pipeAt(gone.id("F1"), "hot")->id)->stage = document::Stage::Removed;
    CHECK(std::ranges::any_of(gone.found("open_end"), [&](const Finding& one) { return one.part == gone.id("T3"); }));
}

TEST_CASE("only what wets the water is asked for a listing, added parts all in one note", "[review]")
{
    Coach coach;
    const Finding note = only(coach, "part_not_listed");
    const std::string tags = std::get<std::string>(note.what.arguments.at(0));
    CHECK(tags.find("P1") != std::string::npos);
    CHECK(tags.find("CV1") != std::string::npos);
    CHECK(tags.find("C1,") == std::string::npos);
    for (document::Part& part : coach.drawing.parts) {
        part.stage = part.tag == "P1" ? document::Stage::Added : document::Stage::Existing;
    }
    const Finding one = only(coach, "part_not_listed");  // what the coach came with is not asked about
    CHECK(std::get<std::string>(one.what.arguments.at(0)) == "P1");
    CHECK(one.part == coach.id("P1"));
}

TEST_CASE("one tap's flow: a tenth above what lights the heater is enough", "[review]")
{
    // At its rated pressure and alone on short tube a tap gives its rated flow (square root law, common practice);
    // the coach's own tube and heater take a little of it.
    Coach coach;
    coach.set("CW1", "pressure_Pa", 45 * us::kPsi);
    coach.set("F1", "rated_pressure_Pa", 45 * us::kPsi);
    coach.set("F1", "rated_flow_m3s", 0.50 * us::kGpm);
    const auto at = [&](double activation_gpm) {
        coach.set("WH1", "activation_flow_m3s", activation_gpm * us::kGpm);
        return coach.found("tap_flow_margin");
    };
    CHECK(at(0.40).empty());
    REQUIRE(at(0.48).size() == 1);
    CHECK(at(0.48)[0].severity == Severity::Note);
    CHECK(at(0.48)[0].part == coach.id("F1"));
    CHECK_THAT(si(at(0.48)[0].what, 1), WithinRel(0.50 * us::kGpm, 0.03));
    CHECK_THAT(si(at(0.48)[0].what, 3), WithinRel(0.48 * us::kGpm, 1e-9));
    CHECK(at(0.52)[0].severity == Severity::Caution);
}
