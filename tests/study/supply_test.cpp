// SPDX-License-Identifier: GPL-3.0-or-later
// Taps, supplies and heaters of a case: pressures, flows and heat by laws that need no model.
#include <cmath>

#include "study/bench.h"
#include "study/trials.h"
#include "water/water.h"

using namespace tapward;
using document::ActionKind;
using test::integral;
using test::read;
using test::said;
using test::scalar;
using test::SmallCoach;
using test::times;

namespace {

/// Heat that water took up between two temperatures, W (IAPWS enthalpy; volume as at the lower one's density).
double heat_W(double flow_m3s, double from_C, double to_C)
{
    return flow_m3s * water::density(from_C) * (water::enthalpy(to_C) - water::enthalpy(from_C));
}

/// FT1 - DP1 - tee with AC1 - F1 cold: a coach on its own pump, without a hot line.
class PumpCoach : public test::Bench {
public:
    explicit PumpCoach(bool accumulator)
    {
        const auto tank = add("fresh_tank", "FT1"), pump = add("demand_pump", "DP1"), tap = add("faucet", "F1");
        set("F1", "serves", std::string("cold"));
        pipe(tank, "outlet", pump, "inlet", 1);
        const auto tee = add("tee", "T1");
        pipe(pump, "outlet", tee, "run_a", 1);
        pipe(tee, "run_b", tap, "cold", 1);
        if (accumulator) {
            const auto vessel = add("accumulator", "AC1");
            pipe(tee, "branch", vessel, "port", 0.1);
            set("AC1", "vessel_volume_m3", 2e-3);
            set("AC1", "precharge_Pa", 150e3);
        } else {
            const auto other = add("faucet", "F2");
            set("F2", "serves", std::string("cold"));
            pipe(tee, "branch", other, "cold", 1);
        }
        set("DP1", "cut_in_Pa", 200e3);
        set("DP1", "cut_out_Pa", 300e3);
    }
};

/// A storage heater with 60 °C in it, city water of 10 °C, and a tap with a mixing valve before its hot side.
class MixedCoach : public test::Bench {
public:
    MixedCoach()
    {
        const auto city = add("city_inlet", "CW1"), heater = add("storage_heater", "WH1");
        const auto valve = add("mixing_valve", "TMV1"), tap = add("faucet", "F1"), tee = add("tee", "T1");
        set("F1", "serves", std::string("hot"));
        pipe(city, "outlet", tee, "run_a", 1);
        pipe(tee, "run_b", heater, "cold", 1);
        pipe(heater, "hot", valve, "hot", 1);
        pipe(tee, "branch", valve, "cold", 1);
        pipe(valve, "mixed", tap, "hot", 1);
        set("TMV1", "setpoint_C", 40.0);
        set("WH1", "setpoint_C", 60.0);
    }
    document::Case draw(double duration_s) const
    {
        auto made = script(duration_s, {hot(2)});
        made.start_C = made.ambient_C.emplace(20);
        made.supply_C = 10;
        made.target_C = 35;
        return made;
    }
};

}  // namespace

TEST_CASE("a tap gives what the city's pressure pushes through its orifice, and nothing without a supply",
          "[study][running]")
{
    SmallCoach coach;
    coach.set("F1", "cap_flow_m3s", 0.0);  // no flow regulator
    const auto flow = [&](std::vector<document::Action> actions) {
        return read(coach.run(20, std::move(actions)), "tap_flow.F1", 19);
    };
    const double whole = flow({coach.cold(2)});
    CHECK(whole > 5e-5);
    CHECK(flow({coach.act(2, ActionKind::OpenOutlet, "F1", 0.5, 0)}) < 0.9 * whole);
    CHECK_THAT(flow({coach.act(2, ActionKind::OpenOutlet, "F1", 7, 0)}), WithinRel(whole, 1e-9));  // 1 is all there is
    CHECK(flow({coach.cold(2), coach.shut(10)}) == 0);
    CHECK(std::abs(flow({coach.cold(2), coach.act(10, ActionKind::UseNothing)})) < 1e-9);
    CHECK(std::abs(flow({coach.cold(2), coach.act(10, ActionKind::UsePump)})) < 1e-9);  // there is none
    CHECK_THAT(flow({coach.cold(2), coach.act(5, ActionKind::UseNothing), coach.act(10, ActionKind::UseCity)}),
               WithinRel(whole, 1e-6));
    CHECK(flow({coach.fault(0, "F1", "drips"), coach.fault(10, "F1", "drips", false)}) == 0);
    const auto drips = coach.run(20, {coach.fault(0, "F1", "drips")});
    CHECK(read(drips, "tap_flow.F1", 19) > 1e-7);
    CHECK(read(drips, "tap_flow.F1", 19) < 0.2 * whole);
    // Ten metres of water is 98 kPa less at the tap: by the square law of pipe and orifice, flows go with the root
    // of what is left of 345 kPa (50 psi), but for the turbulent pipes' somewhat lower power.
    coach.drawing.find(coach.id("F1"))->height_m = 10;
    CHECK_THAT(flow({coach.cold(2)}) / whole, WithinAbs(std::sqrt((344.7 - 97.9) / 344.7), 0.015));
}

TEST_CASE("hot and cold meet at a tap by their shares", "[study][running]")
{
    SmallCoach coach;
    auto script = coach.script(60, {coach.act(2, ActionKind::OpenOutlet, "F1", 1, 0.4)});
    script.start_C = 45;
    script.supply_C = 15;
    script.ambient_C = 45;
    // For the first seconds both sides give the coach's own water, 45 °C.
    const auto result = coach.run(script);
    CHECK_THAT(read(result, "tap.F1", 7), WithinAbs(45, 1));
    // On the cold side city water arrives after 3 + 1 m; then the tap is between the two.
    CHECK(read(result, "tap.F1", 59) < 44);
    CHECK(read(result, "tap.F1", 59) > 16);
    CHECK(std::isnan(read(result, "tap.F1", 1)));  // shut: there is no such water
    // Cold only: the hot side is shut.
    script.actions = {coach.cold(2)};
    const auto cold = coach.run(script);
    CHECK_THAT(scalar(cold, "hottest_cold_tap"), WithinAbs(45, 0.5));
    CHECK_THAT(read(cold, "tap.F1", 59), WithinAbs(15, 1));
    CHECK(times(cold, "flow_seen").empty());
    CHECK(test::why(cold, "wait") == "No tap was opened for hot water in this case.");
    // Without a share in the action the outlet's own counts: 1, hot only.
    script.actions = {coach.act(2, ActionKind::OpenOutlet, "F1")};
    CHECK(times(coach.run(script), "flow_seen").size() == 1);
    coach.set("F1", "hot_share", 0.0);
    CHECK(times(coach.run(script), "flow_seen").empty());
}

TEST_CASE("a regulator lets the coach see no more than its setting", "[study][running]")
{
    const auto flow = [](double city_Pa, double set_Pa, bool drawn) {
        test::Bench bench;
        const auto city = bench.add("city_inlet", "CW1"), tap = bench.add("faucet", "F1");
        bench.set("F1", "serves", std::string("cold"));
        bench.set("F1", "cap_flow_m3s", 0.0);
        bench.set("CW1", "pressure_Pa", city_Pa);
        if (drawn) {
            const auto regulator = bench.add("regulator", "PR1");
            bench.set("PR1", "set_pressure_Pa", set_Pa);
            bench.set("PR1", "loss_Pa", 1.0);  // as good as none
            bench.pipe(city, "outlet", regulator, "inlet", 1);
            bench.pipe(regulator, "outlet", tap, "cold", 1);
        } else {
            bench.pipe(city, "outlet", tap, "cold", 2);
        }
        return read(bench.run(10, {bench.cold(2)}), "tap_flow.F1", 9);
    };
    const double at300 = flow(300e3, 0, false);
    CHECK(flow(600e3, 0, false) > 1.3 * at300);
    CHECK_THAT(flow(600e3, 300e3, true), WithinRel(at300, 0.002));
    CHECK_THAT(flow(300e3, 400e3, true), WithinRel(at300, 0.002));  // it adds nothing
}

TEST_CASE("an accumulator gives by Boyle's law what lies between cut-out and cut-in", "[study][running][published]")
{
    PumpCoach coach(true);
    const auto result = coach.run(120, {coach.cold(0), coach.shut(60)});
    const auto on = times(result, "demand_pump_on");
    REQUIRE_FALSE(on.empty());
    // Air of 150 kPa gauge in 2 L, isothermal (Boyle): at 300 kPa it fills 2 (150 + 101.325) / (300 + 101.325) L, at
    // 200 kPa 2 (251.325) / (301.325): 0.4157 L come out in between.
    const double given_m3 = 2e-3 * 251.325 * (1 / 301.325 - 1 / 401.325);
    CHECK_THAT(given_m3, WithinAbs(0.4157e-3, 1e-7));
    CHECK_THAT(integral(result, "tap_flow.F1", 0, on[0]), WithinRel(given_m3, 0.02));
    CHECK_THAT(read(result, "supply_pressure", 0), WithinRel(300e3, 1e-6));
    CHECK(read(result, "supply_pressure", on[0]) > 199e3);
    CHECK(read(result, "supply_pressure", on[0]) < 225e3);  // written down up to a second before
    // Shut off, the pump fills it to its cut-out and stands.
    CHECK_FALSE(times(result, "demand_pump_off").empty());
    CHECK(times(result, "demand_pump_off").back() > 60);
    CHECK_THAT(read(result, "supply_pressure", 119), WithinAbs(300e3, 3e3));
    CHECK(said(result, "demand_pump_on") == "DP1 starts.");

    // Below its pre-charge there is no water in it: the tap runs dry with the pump dead.
    const double held_m3 = 2e-3 * (1 - 251.325 / 401.325);
    for (const auto& still : {coach.fault(0, "DP1", "dead"), coach.act(0, ActionKind::SetVoltage, {}, 8.9)}) {
        const auto dead = coach.run(120, {still, coach.cold(0), coach.shut(119)});  // below 9 V it stalls
        CHECK_THAT(test::drawn_m3(dead), WithinRel(held_m3, 0.02));
    }
}

TEST_CASE("a demand pump without a vessel holds its tap between cut-in and stall, and never stops when welded",
          "[study][running]")
{
    PumpCoach coach(false);
    const auto result = coach.run(30, {coach.cold(2), coach.shut(20)});
    CHECK(times(result, "demand_pump_on").size() >= 1);
    CHECK(read(result, "tap_flow.F1", 15) > 3e-5);
    for (double at_s = 3; at_s < 30; at_s += 1) {
        CHECK(read(result, "supply_pressure", at_s) > 190e3);
        CHECK(read(result, "supply_pressure", at_s) < 1.15 * 300e3);  // where a diaphragm pump stalls
    }
    // Off cut-in: the pump that is not asked for stands.
    CHECK(times(coach.run(30, {}), "demand_pump_on").empty());
    const auto welded = coach.run(30, {coach.fault(2, "DP1", "switch_welded")});
    CHECK(read(welded, "supply_pressure", 29) > 310e3);
    CHECK(times(coach.run(30, {coach.act(1, ActionKind::UseNothing), coach.cold(2)}), "demand_pump_on").empty());
}

TEST_CASE("a mixing valve gives its setpoint while the hot side can", "[study][running]")
{
    constexpr double kHolds_K = 4;  // such a valve is allowed about 7 °F either way: ASSE 1017, from memory
    MixedCoach coach;
    const auto mixed = coach.run(coach.draw(60));
    CHECK_THAT(read(mixed, "tap.F1", 50), WithinAbs(40, kHolds_K));
    coach.set("TMV1", "setpoint_C", 30.0);
    CHECK_THAT(read(coach.run(coach.draw(60)), "tap.F1", 50), WithinAbs(30, kHolds_K));

    const auto trials = study::Trials::make(coach.drawing, 1);
    REQUIRE(trials.has_value());
    study::Trial trial;
    trial.script = coach.draw(60);
    trial.mixingSetpoint_C = 45;
    const auto results = trials->run(std::vector{trial}, {});
    REQUIRE(results.has_value());
    CHECK_THAT(read(results->front().result, "tap.F1", 50), WithinAbs(45, kHolds_K));
}

TEST_CASE("a storage heater begins at its setpoint or at what the case says, and heats when it has cooled",
          "[study][running]")
{
    MixedCoach coach;
    coach.set("TMV1", "setpoint_C", 70.0);  // all hot
    auto script = coach.draw(60);
    script.actions = {};
    const auto full = coach.run(script);
    CHECK_THAT(read(full, "heater_outlet", 0), WithinAbs(60, 1e-6));
    CHECK(times(full, "burner_lit").empty());  // it stands at its setpoint
    script.actions = {coach.hot(2)};
    script.storedHeater_C = 35;
    script.duration_s = 600;
    const auto cool = coach.run(script);
    CHECK_THAT(read(cool, "heater_outlet", 0), WithinAbs(35, 1e-6));
    CHECK(times(cool, "burner_lit").size() == 1);
    CHECK(read(cool, "fire", 300) == 1);
    CHECK(cool.heater == coach.id("WH1"));
    script.actions.push_back(coach.fault(0, "WH1", "no_gas"));
    const auto cold = coach.run(script);
    CHECK(times(cold, "burner_lit").empty());
    CHECK(read(cold, "fire", 300) == 0);
    // It heats to its setpoint and is satisfied: 22.7 L by 25 K at 12,000 Btu/h x 0.75 = 2.64 kW take 900 s.
    script.actions = {};
    script.duration_s = 1500;
    const auto heats = coach.run(script);
    REQUIRE(times(heats, "burner_out").size() == 1);
    CHECK_THAT(times(heats, "burner_out")[0], WithinRel(900, 0.05));
    CHECK(said(heats, "burner_out") == "WH1 is up to temperature.");
}

TEST_CASE("a storage heater of one layer is the mixed tank, of twenty it gives most of its water hot",
          "[study][running]")
{
    test::Bench coach;
    const auto city = coach.add("city_inlet", "CW1"), heater = coach.add("storage_heater", "WH1");
    const auto tap = coach.add("faucet", "F1");
    coach.pipe(city, "outlet", heater, "cold", 1);
    coach.pipe(heater, "hot", tap, "hot", 1);
    constexpr double kTank_m3 = 20e-3;
    coach.set("WH1", "tank_volume_m3", kTank_m3);
    coach.set("WH1", "burner_input_W", 0.0);
    coach.set("WH1", "standing_loss_W_K", 0.0);
    const auto drawn = [&](double layers, bool flipped) {
        coach.set("WH1", "layers", layers);
        document::Part& pipe = *coach.drawing.find(coach.drawing.pipeAt(heater, "cold")->id);
        if (flipped != (pipe.ends[0].part == heater))
            std::swap(pipe.ends[0], pipe.ends[1]);
        auto script = coach.script(300, {coach.hot(2)});
        script.start_C = script.ambient_C.emplace(10);
        script.supply_C = 10;
        script.storedHeater_C = 60;
        return coach.run(script);
    };
    const auto mixed = drawn(1, false), upright = drawn(20, false);
    for (const double at_s : {60.0, 120.0, 200.0}) {
        const double turnovers = integral(mixed, "tap_flow.F1", 2, at_s) / kTank_m3;
        CAPTURE(at_s, turnovers);
        // The exact mixed tank.
        CHECK_THAT(read(mixed, "heater_outlet", at_s), WithinAbs(10 + 50 * std::exp(-turnovers), 0.6));
    }
    // Some 70 % of an upright tank near the setpoint: common practice, no published source.
    double at_s = 2;
    while (integral(upright, "tap_flow.F1", 2, at_s) < 0.7 * kTank_m3)
        at_s += 1;
    CHECK(read(upright, "heater_outlet", at_s) > 54);
    CHECK(read(mixed, "heater_outlet", at_s) < 36);
    // Which way its pipes were drawn is nothing to it.
    const auto turned = drawn(20, true);
    CHECK_THAT(read(turned, "heater_outlet", at_s), WithinAbs(read(upright, "heater_outlet", at_s), 1e-6));
}

TEST_CASE("what the burner burns is what the water gains, and altitude takes its share", "[study][running][published]")
{
    SmallCoach coach;
    const auto draw = [&](double duration_s) {
        auto script = coach.script(duration_s, {coach.hot(2)});
        script.start_C = 5;
        script.supply_C = 5;
        script.ambient_C = 5;
        return coach.run(script);
    };
    coach.set("WH1", "setpoint_C", 85.0);  // more than it can: full fire
    coach.set("WH1", "eco_limit_C", 120.0);
    coach.set("WH1", "outlet_limit_C", 110.0);
    const auto rise = [&] {
        const auto result = draw(240);
        CHECK_THAT(read(result, "fire", 239), WithinRel(1, 1e-6));
        return heat_W(read(result, "tap_flow.F1", 239), read(result, "heater_inlet", 239),
                      read(result, "heater_outlet", 239));
    };
    // 60,000 Btu/h at 82 %: 14.42 kW into the water. Its own loss to the air is below 50 W.
    const double atSea_W = rise();
    CHECK_THAT(atSea_W, WithinRel(60000 * us::kBtuPerHour * 0.82, 0.015));
    CHECK_THAT(scalar(draw(240), "gas_energy") - scalar(draw(180), "gas_energy"),
               WithinRel(60 * 60000 * us::kBtuPerHour, 0.01));
    // NFPA 54 / ANSI Z223.1: 4 % off for every 1,000 ft, counted here from 2,000 ft: at 10,000 ft 32 % off.
    coach.drawing.job.altitude_m = 3048;
    CHECK_THAT(rise() / atSea_W, WithinAbs(0.68, 0.01));
}

TEST_CASE("without gas the heater tries, locks out and warms nothing", "[study][running]")
{
    SmallCoach coach;
    const auto result = coach.run(120, {coach.fault(0, "WH1", "no_gas"), coach.hot(2)});
    CHECK(times(result, "flow_seen").size() == 1);
    CHECK(times(result, "burner_lit").empty());
    CHECK(times(result, "ignition").size() == 3);  // its tries, as set
    CHECK(times(result, "ignition_failed").size() == 2);
    CHECK(times(result, "heater_lockout").size() == 1);
    CHECK(said(result, "heater_lockout") == "WH1 locked out: ignition failed.");
    CHECK_THAT(scalar(result, "hottest_heater_outlet"), WithinAbs(20, 0.01));
    CHECK(scalar(result, "gas_energy") == 0);
    CHECK(times(coach.run(120, {coach.fault(0, "WH1", "no_gas"), coach.fault(1, "WH1", "no_gas", false), coach.hot(2)}),
                "burner_lit")
              .size()
          == 1);
    // A board below its least voltage does nothing.
    const auto dark = coach.run(60, {coach.act(0, ActionKind::SetVoltage, {}, 10), coach.hot(2)});
    CHECK(times(dark, "burner_lit").empty());
    const auto out = coach.run(60, {coach.hot(2), coach.fault(30, "BT1", "cut")});
    CHECK(times(out, "burner_lit").size() == 1);
    CHECK(said(out, "heater_idle").find("no power") != std::string::npos);
    CHECK(read(out, "fire", 40) == 0);
}

TEST_CASE("a wait is the way's water at the tap's flow, and what is drawn is counted", "[study][running]")
{
    SmallCoach coach;
    auto script = coach.script(120, {coach.hot(2), coach.shut(100)});
    script.target_C = 40;
    script.start_C = script.ambient_C.emplace(20);
    script.supply_C = 20;
    const auto result = coach.run(script);
    const double wasted_m3 = scalar(result, "wasted_volume"), wait_s = scalar(result, "wait");
    CHECK(read(result, "tap.F1", 2 + wait_s) <= 40.01);
    CHECK(read(result, "tap.F1", 3 + wait_s) >= 40);
    CHECK_THAT(integral(result, "tap_flow.F1", 0, 2 + wait_s), WithinRel(wasted_m3, 0.03));
    CHECK_THAT(wasted_m3, WithinRel(read(result, "tap_flow.F1", 10) * wait_s, 0.01));  // a steady flow from 2 s
    // The cold water between heater and tap has to go first, and that of the exchanger, 0.1 gal.
    CHECK(wasted_m3 > SmallCoach::held_m3(4.5));
    CHECK_THAT(scalar(result, "purge_volume"), WithinRel(SmallCoach::held_m3(4.5), 1e-9));
    // What the tap's closing says it drew is what flowed.
    CHECK_THAT(test::drawn_m3(result), WithinRel(integral(result, "tap_flow.F1", 0, 100), 0.02));
    CHECK(times(result, "tap_warm").size() == 1);
    for (const study::Event& event : result.events) {
        if (event.id == "tap_warm") {  // the tap, how warm, what it took
            CHECK(event.what.arguments
                  == std::vector<Argument>{std::string("F1"), Measure{40, Quantity::Temperature},
                                           Measure{wasted_m3, Quantity::Volume}});
        }
    }
    CHECK_THAT(times(result, "tap_warm")[0], WithinAbs(2 + wait_s, 0.6));
    // Opened a second time it counts anew.
    script.actions = {coach.hot(2), coach.shut(12), coach.hot(15)};  // the warm water is on its way already
    const auto twice = coach.run(script);
    CHECK(scalar(twice, "wait") < wait_s);
    CHECK(scalar(twice, "wasted_volume") < wasted_m3);
    script.actions = {coach.hot(2), coach.shut(4)};
    CHECK(test::why(coach.run(script), "wait") == "The tap did not reach the target within this case.");
}

TEST_CASE("a heater lights by its own times, one after the other", "[study][running]")
{
    SmallCoach coach;
    coach.set("WH1", "flow_proof_s", 2.0);
    coach.set("WH1", "pre_purge_s", 6.0);
    coach.set("WH1", "ignition_s", 4.0);
    coach.set("WH1", "ignition_tries", 2.0);
    coach.set("WH1", "retry_purge_s", 9.0);
    const auto lit = coach.run(60, {coach.hot(5)});
    const double seen_s = times(lit, "flow_seen").at(0);
    CHECK_THAT(seen_s, WithinAbs(5, 0.6));
    CHECK_THAT(times(lit, "pre_purge").at(0) - seen_s, WithinAbs(2, 0.6));  // seen within a step
    CHECK_THAT(times(lit, "ignition").at(0) - times(lit, "pre_purge")[0], WithinAbs(6, 0.1));
    CHECK_THAT(times(lit, "burner_lit").at(0) - times(lit, "ignition")[0], WithinAbs(4, 0.1));
    CHECK(said(lit, "flow_seen") == "WH1 sees enough flow.");
    const auto dry = coach.run(90, {coach.fault(0, "WH1", "no_gas"), coach.hot(5)});
    REQUIRE(times(dry, "ignition").size() == 2);
    CHECK_THAT(times(dry, "ignition")[1] - times(dry, "ignition_failed").at(0), WithinAbs(9, 0.1));
    CHECK(times(dry, "heater_lockout").at(0) > times(dry, "ignition")[1]);
    // Shut again the flame goes out for want of flow.
    const auto out = coach.run(60, {coach.hot(5), coach.shut(40)});
    CHECK(times(out, "burner_out").at(0) >= 40);
    CHECK(times(out, "burner_out")[0] < 45.1);  // looked at once in a step, and standing water's are long
    CHECK(said(out, "burner_out") == "WH1 went out: flow too low.");
}

TEST_CASE("water and air are as warm as the drawing says, unless the case says otherwise", "[study][running]")
{
    SmallCoach coach;
    coach.set("CW1", "temperature_C", 12.0);
    auto script = coach.script(120, {coach.cold(2)});
    script.supply_C = std::nullopt;
    CHECK_THAT(read(coach.run(script), "tap.F1", 119), WithinAbs(12, 0.3));
    script.supply_C = 25;
    CHECK_THAT(read(coach.run(script), "tap.F1", 119), WithinAbs(25, 0.3));

    PumpCoach pumped(true);
    pumped.set("FT1", "temperature_C", 14.0);
    auto drawn = pumped.script(120, {pumped.cold(2)});
    drawn.supply_C = std::nullopt;
    CHECK_THAT(read(pumped.run(drawn), "tap.F1", 119), WithinAbs(14, 0.5));

    // Standing water goes to the air round its pipe.
    for (document::Part& part : coach.drawing.parts) {
        if (part.kind == "pipe_run") {
            part.entries["bay_C"] = {30.0, parts::Basis::Measured};
        }
    }
    auto stands = coach.script(7200, {});
    stands.start_C = 45;
    stands.ambient_C = std::nullopt;
    CHECK_THAT(read(coach.run(stands), "sensor.TE1", 7200), WithinAbs(30, 1));
    stands.ambient_C = 8;
    CHECK_THAT(read(coach.run(stands), "sensor.TE1", 7200), WithinAbs(8, 1));
}

TEST_CASE("a vessel begins at the pressure of what feeds the coach", "[study][running]")
{
    test::Bench bench;
    const auto city = bench.add("city_inlet", "CW1"), tap = bench.add("faucet", "F1");
    const auto regulator = bench.add("regulator", "PR1"), vessel = bench.add("accumulator", "AC1");
    const auto tee = bench.add("tee", "T1");
    bench.set("F1", "serves", std::string("cold"));
    bench.set("CW1", "pressure_Pa", 400e3);
    bench.set("AC1", "precharge_Pa", 150e3);
    bench.set("PR1", "set_pressure_Pa", 600e3);
    bench.pipe(city, "outlet", regulator, "inlet", 1);
    bench.pipe(regulator, "outlet", tee, "run_a", 1);
    bench.pipe(tee, "run_b", tap, "cold", 1);
    bench.pipe(tee, "branch", vessel, "port", 1);
    const auto start = [&] { return read(bench.run(10, {}), "supply_pressure", 0); };
    CHECK_THAT(start(), WithinRel(400e3, 1e-9));
    bench.set("PR1", "set_pressure_Pa", 250e3);
    CHECK_THAT(start(), WithinRel(250e3, 1e-9));
    // Drawn from and shut again, it is filled to the regulator's pressure, not to the city's.
    const auto result = bench.run(60, {bench.cold(2), bench.shut(20)});
    CHECK(read(result, "supply_pressure", 19) < 245e3);
    CHECK_THAT(read(result, "supply_pressure", 59), WithinAbs(250e3, 3e3));
}

TEST_CASE("warm water under cold rises by itself where the way is open, and not where it lies on top",
          "[study][running]")
{
    // The loop's tees 3 m over the heater, or as far under it; a run leaves 4 m of hot line warm. At 50 K the columns
    // differ by about 10 kg/m³ (IAPWS), 300 Pa over 3 m: enough for some millilitres a second.
    for (const double height_m : {3.0, -3.0}) {
        SmallCoach coach;
        coach.set("CV1", "crack_Pa", 0.0);
        for (const char* tag : {"T2", "TE1", "MV1", "P1", "FE1", "CV1"}) {
            coach.drawing.find(coach.id(tag))->height_m = height_m;
        }
        coach.set("C1", "longest_run_s", 40.0);
        const auto result = coach.run(120, {coach.fault(0, "MV1", "stuck_open"), coach.press(2)});
        REQUIRE(times(result, "stop_longest_run").size() == 1);
        CAPTURE(height_m, read(result, "loop_flow", 60));
        if (height_m > 0) {
            CHECK(read(result, "loop_flow", 60) > 1e-6);
        } else {
            CHECK(std::abs(read(result, "loop_flow", 60)) < 1e-6);
        }
    }
}

TEST_CASE("on the coach's own pump the water on the way to the tap is known as well", "[study][running]")
{
    test::Bench bench;
    const auto tank = bench.add("fresh_tank", "FT1"), pump = bench.add("demand_pump", "DP1");
    const auto heater = bench.add("tankless_heater", "WH1"), tap = bench.add("faucet", "F1");
    bench.set("F1", "serves", std::string("hot"));
    bench.pipe(tank, "outlet", pump, "inlet", 1);
    bench.pipe(pump, "outlet", heater, "cold", 2);
    bench.pipe(heater, "hot", tap, "hot", 6);
    const auto result = bench.run(60, {bench.hot(2)});
    CHECK_THAT(scalar(result, "purge_volume"), WithinRel(SmallCoach::held_m3(6), 1e-9));
    CHECK(times(result, "burner_lit").size() == 1);
    CHECK_THAT(scalar(result, "hottest_heater_inlet"), WithinAbs(20, 0.5));
}

TEST_CASE("the time that is left is reckoned from what the share done has taken", "[study]")
{
    CHECK(study::secondsLeft(0.25, 10) == 30);
    CHECK(study::secondsLeft(1, 10) == 0);
    CHECK_FALSE(study::secondsLeft(0.01, 100));  // too early to tell
    CHECK_FALSE(study::secondsLeft(0.5, 1));
}
