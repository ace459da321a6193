// SPDX-License-Identifier: GPL-3.0-or-later
// What each part of a running loop does, and when: instants are those of the settings, to the millisecond.
#include <cmath>

#include "study/bench.h"
#include "study/trials.h"

using namespace tapward;
using document::ActionKind;
using test::integral;
using test::read;
using test::said;
using test::scalar;
using test::SmallCoach;
using test::times;
using Times = std::vector<double>;

namespace {

constexpr double kInstant_s = 2e-3;

void checkTimes(const study::CaseResult& result, const char* id, const Times& wanted, double within_s = kInstant_s)
{
    const Times found = times(result, id);
    CAPTURE(id, found);
    REQUIRE(found.size() == wanted.size());
    for (std::size_t i = 0; i < wanted.size(); ++i) {
        CHECK_THAT(found[i], WithinAbs(wanted[i], within_s));
    }
}

study::TrialResult tried(const SmallCoach& coach, study::Trial trial)
{
    const auto trials = study::Trials::make(coach.drawing, 1);
    REQUIRE(trials.has_value());
    auto results = trials->run(std::vector{std::move(trial)}, {});
    REQUIRE(results.has_value());
    return results->front();
}

/// The controller's settings as drawn.
study::ControlChange drawnControl(const SmallCoach& coach)
{
    const auto model =
        document::kindOf(*coach.drawing.findTag("C1")).model(document::values(*coach.drawing.findTag("C1")));
    return {coach.id("C1"), model->controller->spec};
}

}  // namespace

TEST_CASE("a run goes by the clock: press, valve open after its travel, longest run", "[study][running]")
{
    SmallCoach coach;
    coach.set("C1", "longest_run_s", 60.0);
    const auto result = coach.run(120, {coach.press(2)});
    checkTimes(result, "run_started", {2});
    checkTimes(result, "valve_open", {7});
    checkTimes(result, "stop_longest_run", {62});
    CHECK(std::abs(read(result, "loop_flow", 6)) < 1e-9);
    CHECK(read(result, "loop_flow", 30) > 2e-5);
    CHECK(std::abs(read(result, "loop_flow", 75)) < 1e-9);  // 5 s to shut
    CHECK(result.targetPart == coach.id("TE1"));            // the controller's stop sensor

    coach.set("C1", "longest_run_s", 0.0);
    const auto endless = coach.run(120, {coach.press(2)});
    CHECK(times(endless, "stop_longest_run").empty());
    CHECK(read(endless, "loop_flow", 120) > 2e-5);
}

TEST_CASE("time, button and volume end a run, each at its own instant and under its own name", "[study][running]")
{
    SmallCoach coach;
    coach.set("C1", "stop_by_time", true);
    coach.set("C1", "stop_time_s", 40.0);
    checkTimes(coach.run(80, {coach.press(2)}), "stop_time", {42});
    checkTimes(coach.run(80, {coach.press(2), coach.press(30)}), "stop_button", {30});
    coach.set("C1", "stop_by_time", false);

    // The meter reads nine tenths of the truth: a tenth of a ninth more than a litre has passed when it has counted
    // nine tenths of one. What passes below its cut-off while the pumps come to speed is not counted: under 1 %.
    coach.set("C1", "stop_by_volume", true);
    coach.set("C1", "stop_volume_m3", 0.9e-3);
    coach.set("FE1", "gain", 0.9);
    const auto result = coach.run(120, {coach.press(0)});
    REQUIRE(times(result, "stop_volume").size() == 1);
    CHECK_THAT(scalar(result, "stop_volume"), WithinRel(1e-3, 0.01));
    CHECK(said(result, "stop_volume").find("Run stopped by volume") == 0);
    const double stop_s = times(result, "stop_volume")[0];
    CHECK_THAT(integral(result, "loop_flow", 0, stop_s), WithinRel(1e-3, 0.08));  // written down to the second

    SmallCoach blind;  // nothing counts volume: such a stop never comes
    blind.set("C1", "stop_by_volume", true);
    blind.set("C1", "stop_volume_m3", 0.9e-3);
    blind.set("C1", "longest_run_s", 90.0);
    blind.set("C1", "flow_sensor", std::string());
    checkTimes(blind.run(120, {blind.press(2)}), "stop_longest_run", {92});
    blind.name("C1", "flow_sensor", "FE1");
    blind.set("FE1", "low_cut_off_m3s", 5e-4);  // more than flows here
    checkTimes(blind.run(120, {blind.press(2)}), "stop_longest_run", {92});
    blind.set("FE1", "low_cut_off_m3s", 0.0);
    checkTimes(blind.run(120, {blind.fault(0, "FE1", "dead"), blind.press(2)}), "stop_longest_run", {92});
    CHECK(times(blind.run(120, {blind.fault(0, "FE1", "dead"), blind.fault(1, "FE1", "dead", false), blind.press(2)}),
                "stop_volume")
              .size()
          == 1);
}

TEST_CASE("a run without flow ends after the time set, whatever keeps the water still", "[study][running]")
{
    SmallCoach coach;
    coach.set("C1", "no_flow_s", 8.0);
    coach.set("C1", "longest_run_s", 60.0);
    checkTimes(coach.run(80, {coach.press(2)}), "stop_longest_run", {62});
    // The valve is open and the pump switched on at 7 s.
    checkTimes(coach.run(80, {coach.fault(0, "P1", "dead"), coach.press(2)}), "stop_no_flow", {15}, 0.6);
    checkTimes(coach.run(80, {coach.fault(0, "FE1", "dead"), coach.press(2)}), "stop_no_flow", {15}, 0.6);
    checkTimes(coach.run(80, {coach.fault(0, "CV1", "stuck_shut"), coach.press(2)}), "stop_no_flow", {15}, 0.6);
    // Without a meter the loop's own flow is looked at.
    coach.set("C1", "flow_sensor", std::string());
    checkTimes(coach.run(80, {coach.press(2)}), "stop_longest_run", {62});
}

TEST_CASE("the temperature stop, the inlet lockout and the high limit act at their sensors' marks", "[study][running]")
{
    const double within_K = 0.3;
    SmallCoach coach;
    coach.set("C1", "longest_run_s", 150.0);

    coach.set("C1", "stop_by_temperature", true);
    coach.set("C1", "stop_temperature_C", 38.0);
    const auto warm = coach.run(200, {coach.press(2)});
    REQUIRE(times(warm, "stop_temperature").size() == 1);
    CHECK_THAT(scalar(warm, "sensor_at_stop"), WithinAbs(38, within_K));
    CHECK(times(warm, "run_refused").empty());
    checkTimes(coach.run(200, {coach.fault(0, "TE1", "broken"), coach.press(2)}), "stop_longest_run", {152});
    checkTimes(coach.run(200, {coach.fault(0, "C1", "stop_fails"), coach.press(2)}), "stop_longest_run", {152});
    checkTimes(coach.run(200, {coach.fault(0, "TE1", "off_the_pipe"), coach.press(2)}), "stop_longest_run", {152});
    // Reading 5 K high it stops at 33 °C of water, reading 5 K low at 43.
    const auto high = coach.run(200, {coach.fault(0, "TE1", "reads_high"), coach.press(2)});
    const auto low = coach.run(200, {coach.fault(0, "TE1", "reads_low"), coach.press(2)});
    CHECK_THAT(scalar(high, "sensor_at_stop"), WithinAbs(38, within_K));
    CHECK_THAT(scalar(low, "sensor_at_stop"), WithinAbs(38, within_K));
    CHECK(times(high, "stop_temperature")[0] < times(warm, "stop_temperature")[0]);
    CHECK(times(low, "stop_temperature")[0] > times(warm, "stop_temperature")[0]);
    coach.set("C1", "stop_by_temperature", false);

    coach.set("C1", "inlet_lockout", true);
    coach.set("C1", "inlet_lockout_C", 25.0);
    checkTimes(coach.run(200, {coach.press(2)}), "stop_longest_run", {152});  // it has no sensor
    coach.name("C1", "inlet_sensor", "TE2");
    const auto locked = coach.run(200, {coach.press(2)});
    REQUIRE(times(locked, "stop_inlet_lockout").size() == 1);
    CHECK(times(locked, "stop_inlet_lockout")[0] < 150);
    CHECK_THAT(read(locked, "sensor.TE2", times(locked, "stop_inlet_lockout")[0]), WithinAbs(25, 1.5));
    const auto again = coach.run(200, {coach.press(2), coach.press(times(locked, "stop_inlet_lockout")[0] + 2)});
    CHECK(said(again, "run_refused").find("water to the heater is too warm") != std::string::npos);
    coach.set("C1", "inlet_lockout", false);

    coach.set("C1", "high_limit", true);
    coach.set("C1", "high_limit_C", 35.0);
    coach.name("C1", "limit_sensor", "TE1");
    const auto limited = coach.run(200, {coach.press(2)});
    REQUIRE(times(limited, "stop_high_limit").size() == 1);
    CHECK_THAT(scalar(limited, "sensor_at_stop"), WithinAbs(35, within_K));
    CHECK(times(limited, "limit_open").size() == 1);
    checkTimes(coach.run(200, {coach.fault(0, "C1", "limit_fails"), coach.press(2)}), "stop_longest_run", {152});
}

TEST_CASE("a refused press says why", "[study][running]")
{
    SmallCoach coach;
    coach.set("C1", "longest_run_s", 60.0);
    coach.set("C1", "cool_down_wait_s", 100.0);
    const auto waits = coach.run(200, {coach.press(2), coach.press(161), coach.press(163)});  // 62 + 100
    checkTimes(waits, "run_refused", {161});
    CHECK(said(waits, "run_refused").find("wait since the last run") != std::string::npos);
    checkTimes(waits, "run_started", {2, 163});
    coach.set("C1", "cool_down_wait_s", 0.0);

    const auto dark = coach.run(20, {coach.act(1, ActionKind::SetVoltage, {}, 5.9), coach.press(2)});
    CHECK(said(dark, "run_refused").find("no power") != std::string::npos);
    CHECK(times(dark, "run_started").empty());
    CHECK(times(coach.run(20, {coach.act(1, ActionKind::SetVoltage, {}, 6.1), coach.press(2)}), "run_refused").empty());

    coach.set("C1", "refuse_when_warm", true);
    coach.set("C1", "stop_temperature_C", 30.0);
    const auto warm = coach.run(100, {coach.press(2), coach.press(90)});
    CHECK(said(warm, "run_refused").find("warm already") != std::string::npos);
    coach.set("C1", "refuse_when_warm", false);

    coach.set("C1", "high_limit", true);
    coach.set("C1", "high_limit_C", 35.0);
    coach.name("C1", "limit_sensor", "TE1");
    // A bay at 5 °C. The switch closes again 5 K below its mark: no press starts a run before the sensor is at 30.
    std::vector<document::Action> presses{coach.press(2)};
    for (double at_s = 100; at_s < 3600; at_s += 100) {
        presses.push_back(coach.press(at_s));
    }
    auto script = coach.script(3700, presses);
    script.ambient_C = 5;
    const auto cools = coach.run(script);
    CHECK(said(cools, "run_refused").find("high limit is open") != std::string::npos);
    const auto started = times(cools, "run_started");
    REQUIRE(started.size() >= 2);
    CHECK(read(cools, "sensor.TE1", started[1]) < 30.2);
    CHECK(read(cools, "sensor.TE1", started[1] - 100) > 29.8);
    CHECK(times(cools, "run_refused").size() >= 2);
}

TEST_CASE("a change of the control's settings for one trial reads the water where it says", "[study][running]")
{
    SmallCoach coach;
    study::Trial trial;
    trial.script = coach.script(200, {coach.press(2)});
    trial.controls = {drawnControl(coach)};
    trial.controls[0].spec.longestRun_s = 150;
    checkTimes(tried(coach, trial).result, "stop_longest_run", {152});
    trial.controls[0].controller = coach.id("PB1");  // not this controller's: it keeps what is drawn
    CHECK(times(tried(coach, trial).result, "stop_longest_run").empty());
    trial.controls[0].controller = coach.id("C1");

    // The lockout at the heater's own inlet; there is no sensor for it.
    trial.controls[0].spec.inletLockout = true;
    trial.controls[0].spec.inletLockout_C = 25;
    CHECK(times(tried(coach, trial).result, "stop_inlet_lockout").empty());
    trial.controls[0].lockoutAtHeater = true;
    const auto locked = tried(coach, trial).result;
    REQUIRE(times(locked, "stop_inlet_lockout").size() == 1);
    // The control sees it at the end of the step, at most half a second later.
    CHECK(read(locked, "heater_inlet", times(locked, "stop_inlet_lockout")[0] - 0.5) < 25);
    CHECK(read(locked, "heater_inlet", times(locked, "stop_inlet_lockout")[0] + 1) >= 25);
    trial.controls[0].spec.inletLockout = false;

    trial.controls[0].spec.highLimit = true;
    trial.controls[0].spec.highLimit_C = 35;
    CHECK(times(tried(coach, trial).result, "stop_high_limit").empty());
    trial.controls[0].limitAtStopSensor = true;
    const auto limited = tried(coach, trial).result;
    REQUIRE(times(limited, "stop_high_limit").size() == 1);
    CHECK_THAT(scalar(limited, "sensor_at_stop"), WithinAbs(35, 0.3));
    coach.set("C1", "stop_sensor", std::string());  // then at the heater's outlet, before the water is at TE1
    const auto atHeater = tried(coach, trial).result;
    REQUIRE(times(atHeater, "stop_high_limit").size() == 1);
    CHECK(times(atHeater, "stop_high_limit")[0] < times(limited, "stop_high_limit")[0] - 2);
}

TEST_CASE("a valve travels as long as it says, stands where it is held, and does on power loss what it is built for",
          "[study][running]")
{
    SmallCoach coach;
    checkTimes(coach.run(40, {coach.fault(0, "MV1", "slow"), coach.press(2)}), "valve_open", {17});  // 3 x 5 s
    checkTimes(coach.run(40, {coach.fault(0, "MV1", "slow"), coach.fault(1, "MV1", "slow", false), coach.press(2)}),
               "valve_open", {7});
    checkTimes(coach.run(40, {coach.fault(0, "MV1", "stuck_shut"), coach.press(2)}), "valve_open", {});
    // It is open before the press: pumps start at once.
    checkTimes(coach.run(40, {coach.fault(0, "MV1", "stuck_open"), coach.press(2)}), "valve_open", {});
    CHECK(read(coach.run(40, {coach.fault(0, "MV1", "stuck_open"), coach.press(2)}), "loop_flow", 6) > 2e-5);

    // With its check valve stuck open an open hot tap draws backward through the loop while the valve lets it.
    const auto backward = [&](std::vector<document::Action> actions) {
        actions.push_back(coach.fault(0, "CV1", "stuck_open"));
        actions.push_back(coach.hot(30));
        return read(coach.run(40, actions), "loop_flow", 39) < -1e-6;
    };
    CHECK_FALSE(backward({}));
    CHECK(backward({coach.fault(0, "MV1", "stuck_open")}));
    CHECK(backward({coach.fault(0, "MV1", "always_on")}));
    CHECK_FALSE(backward({coach.fault(0, "MV1", "always_on"), coach.fault(15, "MV1", "always_on", false)}));
    CHECK(backward({coach.fault(0, "C1", "relay_welded"), coach.fault(0, "P1", "dead")}));
    const auto cut = coach.fault(20, "BT1", "cut");
    for (const auto& [built, opensBefore, opensAfterRun] :
         {std::tuple("closes", false, false), std::tuple("stays", false, true), std::tuple("opens", true, true)}) {
        CAPTURE(built);
        coach.set("MV1", "on_power_loss", std::string(built));
        CHECK(backward({cut}) == opensBefore);
        CHECK(backward({coach.press(2), cut}) == opensAfterRun);
    }
    // Below its least voltage, 9, it is without power too.
    coach.set("MV1", "on_power_loss", std::string("opens"));
    CHECK(backward({coach.act(1, ActionKind::SetVoltage, {}, 8.9)}));
    CHECK_FALSE(backward({coach.act(1, ActionKind::SetVoltage, {}, 9.1)}));
}

TEST_CASE("a run ends with the power, and a sound battery gives its volts back", "[study][running]")
{
    SmallCoach coach;
    checkTimes(coach.run(60, {coach.press(2), coach.fault(20, "BT1", "cut")}), "stop_power_lost", {20}, 0.6);
    checkTimes(coach.run(60, {coach.press(2), coach.act(20, ActionKind::SetVoltage, {}, 5)}), "stop_power_lost", {20},
               0.6);
    const auto low =
        coach.run(60, {coach.press(2), coach.fault(20, "BT1", "low"), coach.fault(40, "BT1", "low", false)});
    const auto set = coach.run(60, {coach.press(2), coach.act(20, ActionKind::SetVoltage, {}, 10.5)});
    CHECK(read(low, "loop_flow", 30) < 0.95 * read(low, "loop_flow", 19));
    CHECK_THAT(read(low, "loop_flow", 39), WithinRel(read(set, "loop_flow", 39), 1e-6));
    CHECK_THAT(read(low, "loop_flow", 59), WithinRel(read(coach.run(60, {coach.press(2)}), "loop_flow", 59), 0.02));
}

TEST_CASE("a pump's flow goes with its speed, and its speed with volts, share and spin-up", "[study][running]")
{
    // Losses grow with the square of the flow but for the pipes, a little less; speed and flow are then nearly
    // proportional (affinity laws: White, Fluid Mechanics, ch. 11).
    SmallCoach coach;
    coach.set("CV1", "crack_Pa", 0.0);
    const auto flow = [&](std::vector<document::Action> actions) {
        actions.push_back(coach.press(2));
        return read(coach.run(12, actions), "loop_flow", 11);
    };
    const double whole = flow({});
    CHECK_THAT(flow({coach.fault(0, "P1", "weak")}) / whole, WithinAbs(0.8, 0.03));
    CHECK_THAT(flow({coach.act(0, ActionKind::SetVoltage, {}, 9.6)}) / whole, WithinAbs(0.8, 0.03));
    CHECK(std::abs(flow({coach.fault(0, "P1", "dead")})) < 1e-9);
    CHECK(std::abs(flow({coach.fault(0, "P1", "air_locked")})) < 1e-9);
    CHECK_THAT(flow({coach.fault(0, "P1", "dead"), coach.fault(1, "P1", "dead", false)}), WithinRel(whole, 1e-9));
    CHECK_THAT(flow({coach.fault(0, "CV1", "leaks")}), WithinRel(whole, 1e-6));  // it leaks the other way only
    // Clogged to a tenth: the square law's resistance of that part is ten times as great.
    CHECK(flow({coach.fault(0, "WH1", "scaled")}) < 0.95 * whole);
    CHECK_THAT(flow({coach.fault(0, "WH1", "scaled"), coach.fault(1, "WH1", "scaled", false)}), WithinRel(whole, 1e-9));

    coach.set("P1", "minimum_V", 10.0);
    CHECK(std::abs(flow({coach.act(0, ActionKind::SetVoltage, {}, 9.6)})) < 1e-9);

    coach.set("P1", "spin_up_s", 4.0);  // from 5 s, when the valve is open
    const auto slow = coach.run(30, {coach.press(0), coach.press(20)});
    const double at_s = *(std::upper_bound(slow.time_s.begin(), slow.time_s.end(), 7.0) - 1);
    CHECK_THAT(read(slow, "loop_flow", at_s) / whole, WithinAbs((at_s - 5) / 4, 0.05));
    CHECK_THAT(read(slow, "loop_flow", 12) / whole, WithinAbs(1, 0.02));
    CHECK(read(slow, "loop_flow", 21) > 0.4 * whole);  // runs out as long, but for the valve that shuts
    CHECK(std::abs(read(slow, "loop_flow", 29)) < 1e-9);
}

TEST_CASE("what is welded runs without a press, and the independent limit still cuts it off", "[study][running]")
{
    SmallCoach coach;
    const auto flow = [&](std::vector<document::Action> actions, double at_s) {
        return read(coach.run(at_s, actions), "loop_flow", at_s);
    };
    CHECK(std::abs(flow({coach.fault(2, "P1", "always_on")}, 20)) < 1e-9);  // the valve is shut
    CHECK(std::abs(flow({coach.fault(2, "MV1", "always_on")}, 20)) < 1e-9);
    CHECK(flow({coach.fault(2, "P1", "always_on"), coach.fault(2, "MV1", "always_on")}, 20) > 2e-5);
    CHECK(flow({coach.fault(2, "C1", "relay_welded")}, 20) > 2e-5);
    CHECK(std::abs(flow({coach.fault(2, "C1", "relay_welded"), coach.fault(10, "C1", "relay_welded", false)}, 20))
          < 1e-9);

    coach.set("C1", "high_limit", true);
    coach.set("C1", "high_limit_C", 35.0);
    coach.name("C1", "limit_sensor", "TE1");
    const auto result = coach.run(300, {coach.fault(2, "C1", "relay_welded")});
    const auto open = times(result, "limit_open");
    REQUIRE(open.size() == 1);
    CHECK(std::abs(read(result, "loop_flow", open[0] + 10)) < 1e-9);
    CHECK(std::abs(read(result, "loop_flow", 300)) < 1e-9);
    CHECK(read(result, "loop_flow", open[0] - 2) > 2e-5);
    // Both its stop and its limit out of order: nothing cuts it off.
    const auto both = coach.run(300, {coach.fault(2, "C1", "relay_welded"), coach.fault(2, "C1", "limit_fails")});
    CHECK(times(both, "limit_open").empty());
    CHECK(read(both, "loop_flow", 300) > 2e-5);
    // A welded relay leaves the main stop without effect: it is no longer what ends the run.
    coach.set("C1", "high_limit", false);
    coach.set("C1", "stop_by_time", true);
    coach.set("C1", "stop_time_s", 30.0);
    CHECK(times(coach.run(60, {coach.fault(0, "C1", "relay_welded"), coach.press(2)}), "stop_time").empty());
}

TEST_CASE("a button stuck in starts the next run as soon as one ends, without a word about refusals",
          "[study][running]")
{
    SmallCoach coach;
    coach.set("C1", "longest_run_s", 20.0);
    for (const char* stuck : {"named", "the only one"}) {
        CAPTURE(stuck);
        const auto result = coach.run(70, {coach.fault(3, "PB1", "stuck")});
        checkTimes(result, "run_started", {3, 23, 43, 63}, 0.1);
        coach.name("PB1", "controller", "C1");
    }
    checkTimes(coach.run(70, {coach.fault(3, "PB1", "stuck"), coach.fault(30, "PB1", "stuck", false)}), "run_started",
               {3, 23}, 0.1);
    coach.set("C1", "cool_down_wait_s", 15.0);
    const auto waits = coach.run(70, {coach.fault(3, "PB1", "stuck")});
    CHECK(times(waits, "run_refused").empty());
    CHECK(times(waits, "run_started").size() == 2);
}

TEST_CASE("a press reaches the button's own controller, one named directly, or the only one", "[study][running]")
{
    SmallCoach coach;
    checkTimes(coach.run(10, {coach.act(2, ActionKind::PressButton, "PB1")}), "run_started", {2});
    checkTimes(coach.run(10, {coach.act(2, ActionKind::PressButton, "C1")}), "run_started", {2});
    coach.add("controller", "C2");  // now nobody is the only one
    checkTimes(coach.run(10, {coach.press(2)}), "run_started", {});
    CHECK(said(coach.run(10, {coach.press(2)}), "action_without_part").find("no controller answers")
          != std::string::npos);
    checkTimes(coach.run(10, {coach.act(2, ActionKind::PressButton, "PB1")}), "run_started", {});
    coach.name("PB1", "controller", "C2");
    const auto result = coach.run(10, {coach.act(2, ActionKind::PressButton, "PB1")});
    REQUIRE(times(result, "run_started").size() == 1);
    CHECK(result.events[0].part == coach.id("C2"));
    // C2 switches nothing: pump and valve belong to C1.
    coach.name("MV1", "controller", "C1");
    coach.name("P1", "controller", "C1");
    CHECK(std::abs(read(coach.run(20, {coach.act(2, ActionKind::PressButton, "PB1")}), "loop_flow", 20)) < 1e-9);
    CHECK(read(coach.run(20, {coach.act(2, ActionKind::PressButton, "C1")}), "loop_flow", 20) > 2e-5);
}

TEST_CASE("a sensor lags its water by a first-order law, and a fault changes what it reads, not the water",
          "[study][running]")
{
    SmallCoach coach;
    coach.set("TE1", "lag_s", 0.0);
    study::Options closely;
    closely.recordEvery_s = 0.1;
    const auto sharp = coach.run(coach.script(60, {coach.press(2)}), closely);
    coach.set("TE1", "lag_s", 10.0);
    const auto slow = coach.run(coach.script(60, {coach.press(2)}), closely);
    // lag dr/dt = water - r, integrated from the start: lag (r - 20) = sum of (water - r) over time.
    const auto area = [](const study::CaseResult& result, double until_s) {  // by the trapezium rule
        const auto& values = result.find("sensor.TE1")->values;
        double sum = 0;
        for (std::size_t i = 1; i < values.size() && result.time_s[i - 1] < until_s; ++i) {
            const double whole_s = result.time_s[i] - result.time_s[i - 1];
            const double part_s = std::min(whole_s, until_s - result.time_s[i - 1]);  // the last may end between two
            const double end = values[i - 1] + part_s / whole_s * (values[i] - values[i - 1]);
            sum += part_s * 0.5 * (values[i - 1] + end);
        }
        return sum;
    };
    for (const double until_s : {30.0, 45.0, 60.0}) {
        CHECK_THAT(20 + (area(sharp, until_s) - area(slow, until_s)) / 10,
                   WithinAbs(read(slow, "sensor.TE1", until_s), 0.3));
    }
    CHECK(read(slow, "sensor.TE1", 60) > 25);  // or nothing was seen

    coach.set("TE1", "lag_s", 2.0);
    const auto reads = [&](const char* what, double at_s) {
        return read(coach.run(80, {coach.fault(0, "TE1", what), coach.fault(40, "TE1", what, false)}), "sensor.TE1",
                    at_s);
    };
    CHECK_THAT(reads("reads_low", 39), WithinAbs(15, 0.01));  // standing water of 20 °C
    CHECK_THAT(reads("reads_high", 39), WithinAbs(25, 0.01));
    CHECK_THAT(reads("shorted", 39), WithinAbs(170, 0.01));
    CHECK_THAT(reads("reads_low", 80), WithinAbs(20, 0.01));
    CHECK(std::isnan(reads("broken", 39)));
    CHECK_THAT(reads("broken", 80), WithinAbs(20, 0.01));
    coach.set("TE1", "offset_K", -3.0);
    CHECK_THAT(reads("reads_low", 39), WithinAbs(12, 0.01));
    const auto off = coach.run(80, {coach.fault(0, "TE1", "reads_high")});
    for (const study::PlaceHeat& heat : off.hottest) {
        if (heat.part == coach.id("TE1")) {
            CHECK_THAT(heat.hottest_C, WithinAbs(20, 0.01));
        }
    }
    coach.set("TE1", "offset_K", 0.0);
    const auto frozen = coach.run(60, {coach.fault(0, "TE1", "off_the_pipe"), coach.press(2)});
    CHECK(read(frozen, "sensor.TE1", 60) == 20);
}

TEST_CASE("an unknown fault and an action on what is not there are said, and change nothing", "[study][running]")
{
    SmallCoach coach;
    CHECK(said(coach.run(5, {coach.fault(1, "P1", "sings")}), "fault_unknown") == "P1 has no fault called sings.");
    CHECK(said(coach.run(5, {coach.hot(1, "P1")}), "action_without_part").find("P1") == 0);
    CHECK(said(coach.run(5, {coach.fault(1, "CV1", "backward")}), "fault_not_run") != "");
    CHECK(said(coach.run(5, {coach.fault(1, "P1", "dead")}), "fault") == "Fault: P1 does not turn.");
    CHECK(said(coach.run(5, {coach.fault(1, "P1", "dead", false)}), "fault_ended")
          == "P1 is sound again (was does not turn).");
}

TEST_CASE("each end of a run has words of its own, with what was pumped", "[study][running]")
{
    SmallCoach coach;
    const auto ended = [&](const char* id, std::vector<document::Action> actions) {
        actions.push_back(coach.press(2));
        const auto result = coach.run(60, std::move(actions));
        const auto at = std::find_if(result.events.begin(), result.events.end(),
                                     [&](const study::Event& event) { return event.id == id; });
        REQUIRE(at != result.events.end());
        CHECK(at->part == coach.id("C1"));
        CHECK_THAT(std::get<Measure>(at->what.arguments.at(0)).si,
                   WithinAbs(integral(result, "loop_flow", 0, at->t_s), 1e-4));
        CHECK((at->weight == study::Event::Weight::Caution)
              == (std::string(id) == "stop_high_limit" || std::string(id) == "stop_inlet_lockout"));
        return at->what.text;
    };
    CHECK(ended("stop_button", {coach.press(30)}) == "Run stopped at the button after {0}.");
    CHECK(ended("stop_power_lost", {coach.fault(30, "BT1", "cut")}) == "Run ended after {0}: power lost.");
    coach.set("C1", "longest_run_s", 40.0);
    CHECK(ended("stop_longest_run", {}) == "Run ended after {0}: longest run reached.");
    coach.set("C1", "stop_by_time", true);
    coach.set("C1", "stop_time_s", 35.0);
    CHECK(ended("stop_time", {}) == "Run stopped by time after {0}.");
    coach.set("C1", "stop_by_temperature", true);
    coach.set("C1", "stop_temperature_C", 30.0);
    CHECK(ended("stop_temperature", {}) == "Run stopped by temperature after {0}.");
    coach.set("C1", "high_limit", true);
    coach.set("C1", "high_limit_C", 28.0);
    coach.name("C1", "limit_sensor", "TE1");
    CHECK(ended("stop_high_limit", {}) == "Run ended by the high limit after {0}.");
    coach.set("C1", "inlet_lockout", true);
    coach.set("C1", "inlet_lockout_C", 20.5);
    coach.name("C1", "inlet_sensor", "TE2");
    CHECK(ended("stop_inlet_lockout", {coach.fault(6, "TE2", "reads_high")})
          == "Run ended after {0}: water to the heater is too warm.");
    coach.set("C1", "inlet_lockout", false);
    coach.set("C1", "no_flow_s", 5.0);
    CHECK(ended("stop_no_flow", {coach.fault(0, "P1", "dead")}) == "Run ended after {0}: no flow seen.");
    coach.set("C1", "stop_by_volume", true);
    coach.set("C1", "stop_volume_m3", 1e-4);
    CHECK(ended("stop_volume", {}) == "Run stopped by volume after {0}.");
}
