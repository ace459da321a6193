// SPDX-License-Identifier: GPL-3.0-or-later
// What a case writes down and answers, held against its own curves and the drawing's lengths; presses by rule.
#include <cmath>

#include "study/bench.h"
#include "study/trials.h"

using namespace tapward;
using document::ActionKind;
using study::HeatPlace;
using test::integral;
using test::read;
using test::said;
using test::scalar;
using test::SmallCoach;
using test::times;
using test::why;

namespace {

std::vector<study::TrialResult> tried(const document::Drawing& drawing, const std::vector<study::Trial>& these,
                                      const study::Options& options = {})
{
    const auto trials = study::Trials::make(drawing, 1);
    REQUIRE(trials.has_value());
    auto results = trials->run(these, options);
    REQUIRE(results.has_value());
    return std::move(*results);
}

double most(const study::CaseResult& result, const char* id, double from_s, double to_s)
{
    double found = -1e9;
    for (std::size_t i = 0; i < result.time_s.size(); ++i) {
        if (result.time_s[i] >= from_s - 1e-6 && result.time_s[i] <= to_s + 1e-6) {
            found = std::max(found, result.find(id)->values[i]);
        }
    }
    return found;
}

const study::PlaceHeat* hottest(const study::CaseResult& result, HeatPlace place, document::PartId part)
{
    const study::PlaceHeat* found = nullptr;
    for (const study::PlaceHeat& heat : result.hottest) {
        if (heat.place == place && heat.part == part) {
            CHECK(found == nullptr);  // once each
            found = &heat;
        }
    }
    return found;
}

}  // namespace

TEST_CASE("a run's answers are those of its curves", "[study][answers]")
{
    SmallCoach coach;
    coach.set("C1", "longest_run_s", 60.0);
    auto script = coach.script(160, {coach.press(10), coach.press(90)});
    script.target_C = 30;
    const auto result = coach.run(script);
    REQUIRE(times(result, "stop_longest_run") == std::vector<double>{70, 150});

    // At the target: the sensor reads it at that time and the loop has moved that volume by then.
    const double at_s = 10 + scalar(result, "time_to_target"), volume_m3 = scalar(result, "volume_to_target");
    CHECK(read(result, "sensor.TE1", at_s) <= 30.01);
    CHECK(read(result, "sensor.TE1", at_s + 1) >= 30);
    CHECK(read(result, "pumped_volume", at_s) <= volume_m3 * (1 + 1e-9));
    CHECK(read(result, "pumped_volume", at_s + 1) >= volume_m3);
    CHECK_THAT(integral(result, "loop_flow", 0, at_s), WithinRel(volume_m3, 0.08));  // written down to the second
    CHECK_THAT(times(result, "target_reached").at(0), WithinAbs(at_s, 0.6));
    // The first rise is one kelvin above the start and comes before it.
    CHECK(scalar(result, "volume_to_first_rise") < volume_m3);
    CHECK_THAT(read(result, "sensor.TE1", times(result, "first_rise").at(0)), WithinAbs(21, 3));
    CHECK(read(result, "pumped_volume", times(result, "first_rise")[0])
          <= scalar(result, "volume_to_first_rise") * 1.3);
    // No warm water can be at the sensor before what stood in the way has passed: 4.5 m of tube.
    CHECK(scalar(result, "volume_to_first_rise") > SmallCoach::held_m3(4.5));
    CHECK_THAT(scalar(result, "purge_volume"), WithinRel(SmallCoach::held_m3(4.5), 1e-9));

    // The flow is the mean while the valve is open, from 15 s to 70 s.
    CHECK_THAT(scalar(result, "loop_flow"), WithinRel(integral(result, "loop_flow", 16, 70) / 54, 0.01));
    CHECK_THAT(scalar(result, "activation_flow"), WithinRel(0.3 * us::kGpm, 1e-12));
    CHECK_THAT(scalar(result, "flow_margin"), WithinRel(scalar(result, "loop_flow") / (0.3 * us::kGpm), 1e-9));

    // Each stop with what its sensor reads then (written down up to a second before) and what that run has pumped;
    // the last under its own name.
    CHECK_THAT(scalar(result, "sensor_at_stop_1"), WithinAbs(read(result, "sensor.TE1", 70), 1));
    CHECK_THAT(scalar(result, "sensor_at_stop_2"), WithinAbs(read(result, "sensor.TE1", 150), 1));
    CHECK(scalar(result, "sensor_at_stop") == scalar(result, "sensor_at_stop_2"));
    CHECK_THAT(scalar(result, "stop_volume"),
               WithinRel(read(result, "pumped_volume", 150) - read(result, "pumped_volume", 90), 0.02));
    CHECK_THAT(read(result, "pumped_volume", 70), WithinRel(integral(result, "loop_flow", 0, 70), 0.03));
    // Hottest of a run: until the next begins.
    CHECK_THAT(scalar(result, "hottest_sensor_1"), WithinAbs(most(result, "sensor.TE1", 10, 90), 0.3));
    CHECK_THAT(scalar(result, "hottest_sensor_2"), WithinAbs(most(result, "sensor.TE1", 91, 160), 0.3));
    CHECK_THAT(scalar(result, "hottest_heater_outlet_1"), WithinAbs(most(result, "heater_outlet", 10, 90), 0.5));
    CHECK_THAT(scalar(result, "hottest_heater_outlet_2"), WithinAbs(most(result, "heater_outlet", 91, 160), 0.5));
    CHECK_THAT(scalar(result, "hottest_heater_outlet"), WithinAbs(most(result, "heater_outlet", 0, 160), 0.5));
    CHECK_THAT(scalar(result, "hottest_heater_inlet"),
               WithinAbs(std::max(most(result, "heater_inlet", 16, 70), most(result, "heater_inlet", 96, 150)),
                         1));  // what enters
    CHECK(result.scalar("sensor_at_stop_3") == nullptr);

    // The places of the list, and when: the sensor's water, the heater's two ends, the tap by the join it hangs on.
    const auto* sensor = hottest(result, HeatPlace::Sensor, coach.id("TE1"));
    REQUIRE(sensor);
    CHECK_THAT(sensor->hottest_C, WithinAbs(most(result, "sensor.TE1", 0, 160), 1));
    CHECK(sensor->at_s > 90);  // the second run is the hotter
    const auto* outlet = hottest(result, HeatPlace::HeaterOutlet, coach.id("WH1"));
    REQUIRE(outlet);
    CHECK(outlet->hottest_C == scalar(result, "hottest_heater_outlet"));
    CHECK_THAT(read(result, "heater_outlet", outlet->at_s), WithinAbs(outlet->hottest_C, 1.5));  // up to 1 s before
    const auto* inlet = hottest(result, HeatPlace::HeaterInlet, coach.id("WH1"));
    REQUIRE(inlet);
    CHECK(inlet->hottest_C == scalar(result, "hottest_heater_inlet"));
    const auto* join = hottest(result, HeatPlace::Join, coach.id("T2"));
    const auto* tap = hottest(result, HeatPlace::OutletHot, coach.id("F1"));
    REQUIRE(join);
    REQUIRE(tap);
    CHECK(tap->hottest_C == join->hottest_C);  // the tap's hot branch leaves from the loop's tee
    CHECK(join->hottest_C < outlet->hottest_C);
    CHECK(join->hottest_C > sensor->hottest_C - 1);
    // Its cold branch leaves T1, where the loop's water never comes.
    const auto* cold = hottest(result, HeatPlace::OutletCold, coach.id("F1"));
    REQUIRE(cold);
    CHECK_THAT(cold->hottest_C, WithinAbs(20, 0.5));
    CHECK(result.hottest.size() == 7);  // two sensors, two ends, join, two sides of the tap

    CHECK(why(result, "wait") == "No tap was opened for hot water in this case.");
    CHECK(why(result, "hottest_cold_tap") == "No tap was opened on cold only in this case.");
    CHECK_THAT(scalar(result, "hottest_tap"), WithinAbs(join->hottest_C, 1e-9));  // no tap: what stands ready
    CHECK(scalar(result, "gas_energy") > 0);
}

TEST_CASE("a case without a run, or without an end of it, says so in each answer", "[study][answers]")
{
    SmallCoach coach;
    const auto idle = coach.run(30, {});
    for (const char* id :
         {"volume_to_first_rise", "volume_to_target", "time_to_target", "sensor_at_stop", "stop_volume"}) {
        CHECK(why(idle, id) == "No run was started in this case.");
    }
    CHECK_THAT(scalar(idle, "loop_flow"), WithinRel(*study::loopAnswer(coach.drawing).flow_m3s, 1e-12));
    CHECK(why(idle, "hottest_tap") == "No tap was opened and no run was started in this case.");
    CHECK(why(idle, "hottest_heater_inlet") == "No water entered the heater in this case.");

    const auto running = coach.run(30, {coach.press(2)});
    for (const char* id : {"sensor_at_stop", "stop_volume", "sensor_at_stop_1"}) {
        CHECK(why(running, id) == "The run was not stopped within this case.");
    }
    auto script = coach.script(30, {coach.press(2)});
    script.target_C = 90;
    CHECK(why(coach.run(script), "volume_to_target") == "The temperature was not reached in this case.");
    script.targetPart = coach.id("F1");
    CHECK(why(coach.run(script), "volume_to_target").find("open tap") != std::string::npos);

    SmallCoach dry;
    for (const char* tag : {"P1", "WH1"}) {
        dry.drawing.find(dry.id(tag))->stage = document::Stage::Removed;
    }
    const auto cold = dry.run(30, {dry.cold(2)});
    CHECK(why(cold, "loop_flow") == "No circulator is drawn, so there is no loop to run.");
    CHECK(why(cold, "flow_margin") == "No circulator is drawn, so there is no loop to run.");
    CHECK(why(cold, "purge_volume") == "No water heater with both its pipes connected is drawn.");
    CHECK(why(cold, "hottest_heater_outlet") == "No water heater with both its pipes connected is drawn.");
    CHECK(cold.scalar("gas_energy") == nullptr);
}

TEST_CASE("a case is about the part it names, else the stop sensor, else the first sensor", "[study][answers]")
{
    SmallCoach coach;
    CHECK(coach.run(5, {}).targetPart == coach.id("TE1"));
    coach.set("C1", "stop_sensor", std::string());
    CHECK(coach.run(5, {}).targetPart == coach.id("TE2"));  // drawn first
    auto script = coach.script(60, {coach.press(2)});
    script.targetPart = coach.id("TE1");
    CHECK(coach.run(script).targetPart == coach.id("TE1"));
    CHECK_THAT(scalar(coach.run(script), "purge_volume"), WithinRel(SmallCoach::held_m3(4.5), 1e-9));
    script.targetPart = coach.id("FE1");  // measures no temperature
    CHECK_THAT(scalar(coach.run(script), "purge_volume"),
               WithinRel(SmallCoach::held_m3(4 + 4 + 1) + 3e-5, 1e-9));  // to TE2 then
    script.targetPart = coach.id("F1");
    CHECK(coach.run(script).targetPart == coach.id("F1"));
    CHECK_THAT(scalar(coach.run(script), "purge_volume"), WithinRel(SmallCoach::held_m3(4.5), 1e-9));
    coach.set("F1", "serves", std::string("cold"));
    CHECK(why(coach.run(script), "purge_volume") == "This outlet has no hot side.");
}

TEST_CASE("curves are written down each second while water moves, each fifth or so while it stands, and at both ends",
          "[study][answers]")
{
    SmallCoach coach;
    coach.set("C1", "longest_run_s", 20.0);
    auto script = coach.script(100.5, {coach.press(30)});
    const auto result = coach.run(script);
    CHECK(result.time_s.front() == 0);
    CHECK_THAT(result.time_s.back(), WithinAbs(100.5, 1e-9));
    std::size_t standing = 0, moving = 0;
    for (std::size_t i = 1; i < result.time_s.size(); ++i) {
        const double step_s = result.time_s[i] - result.time_s[i - 1];
        CHECK(step_s > 0);
        CHECK(step_s < 10);  // they follow the steps, of five seconds at most, and never cut one short
        standing += result.time_s[i] < 29 ? 1 : 0;
        moving += result.time_s[i] > 40.5 && result.time_s[i] < 49.5 ? 1 : 0;
    }
    CHECK(standing <= 7);  // at 5, 10, ... 25
    CHECK(moving >= 9);
    for (const study::Series& series : result.series) {
        CHECK(series.values.size() == result.time_s.size());
    }
    // Only taps that the case touches have curves; the supply's pressure only where a vessel or pump holds it.
    CHECK(result.find("tap.F1") == nullptr);
    CHECK(result.find("supply_pressure") == nullptr);
    CHECK(coach.run(5, {coach.hot(1)}).find("tap_flow.F1") != nullptr);
    study::Options options;
    CHECK(coach.run(script, options).find("loop_join") == nullptr);
    options.loopJoin = true;
    script.actions = {coach.press(2)};
    const auto joined = coach.run(script, options);
    REQUIRE(joined.find("loop_join"));
    CHECK(most(joined, "loop_join", 0, 100) > 25);
    options.curves = false;
    const auto bare = coach.run(script, options);
    CHECK(bare.series.empty());
    CHECK(bare.time_s.empty());
    CHECK(bare.hottest.size() == joined.hottest.size());
    CHECK(times(bare, "run_started") == times(joined, "run_started"));
}

TEST_CASE("a snapshot lies along each pipe as it is drawn", "[study][answers]")
{
    SmallCoach coach;
    document::PartId hotPipe = document::kNoPart;
    for (const document::Part& part : coach.drawing.parts) {
        if (part.ends[0].part == coach.id("WH1") && part.ends[0].port == "hot") {
            hotPipe = part.id;
        }
    }
    study::Options options;
    options.snapshots = true;
    options.snapshotEvery_s = 2;
    for (const bool turned : {false, true}) {
        if (turned) {
            std::swap(coach.drawing.find(hotPipe)->ends[0], coach.drawing.find(hotPipe)->ends[1]);
        }
        const auto result = coach.run(coach.script(60, {coach.press(2)}), options);
        const study::Snapshot& snapshot = result.snapshot;
        REQUIRE_FALSE(snapshot.empty());
        const auto at = std::find_if(snapshot.tracks.begin(), snapshot.tracks.end(),
                                     [&](const auto& track) { return track.part == hotPipe; });
        REQUIRE(at != snapshot.tracks.end());
        CHECK(at->points == 14);  // 4 m in points no further apart than 0.3 m
        CHECK(snapshot.celsius.size() == snapshot.time_s.size() * snapshot.stride);
        CHECK(snapshot.flow_m3s.size() == snapshot.time_s.size() * snapshot.tracks.size());
        for (std::size_t i = 1; i < snapshot.time_s.size(); ++i) {
            CHECK(snapshot.time_s[i] - snapshot.time_s[i - 1] > 2 - 1e-6);
            CHECK(snapshot.time_s[i] - snapshot.time_s[i - 1] < 5 + 1e-6);
        }
        // While the warm front is in the pipe its end at the heater is the warmer.
        bool seen = false;
        for (std::size_t m = 0; m < snapshot.time_s.size(); ++m) {
            const float* line = &snapshot.celsius[m * snapshot.stride + at->offset];
            const float heater = turned ? line[at->points - 1] : line[0];
            const float tee = turned ? line[0] : line[at->points - 1];
            const float flow =
                snapshot.flow_m3s[m * snapshot.tracks.size() + static_cast<std::size_t>(at - snapshot.tracks.begin())];
            if (snapshot.time_s[m] > 10) {
                CHECK((turned ? flow < -2e-5F : flow > 2e-5F));
            }
            CHECK(heater > tee - 12);
            seen = seen || heater > tee + 5;
        }
        CHECK(seen);
        CHECK(snapshot.momentAt(-1) == 0);
        CHECK(snapshot.momentAt(snapshot.time_s[3]) == 3);
        CHECK(snapshot.momentAt(snapshot.time_s[3] + 0.5) == 3);
        CHECK(snapshot.momentAt(1e9) == snapshot.time_s.size() - 1);
    }
    options.snapshotCase = "another";
    CHECK(coach.run(coach.script(10, {}), options).snapshot.empty());
    options.snapshotCase = "the case";
    CHECK_FALSE(coach.run(coach.script(10, {}), options).snapshot.empty());
}

TEST_CASE("a prediction answers the cases asked for, each in its own view", "[study][answers]")
{
    SmallCoach coach;
    auto one = coach.script(20, {coach.press(2)}), two = coach.script(30, {coach.hot(2)});
    one.name = "one";
    two.name = "two";
    two.view = document::View::Before;
    coach.drawing.find(coach.id("P1"))->stage = document::Stage::Added;
    coach.drawing.cases = {one, two};
    auto all = study::predict(coach.drawing);
    REQUIRE(all.has_value());
    REQUIRE(all->cases.size() == 2);
    CHECK(all->cases[0].name == "one");
    CHECK(all->cases[1].view == document::View::Before);
    CHECK(all->find("two") == &all->cases[1]);
    CHECK(all->find("three") == nullptr);
    CHECK(all->cases[0].find("loop_flow") != nullptr);
    CHECK(all->cases[1].find("loop_flow") == nullptr);  // no pump yet
    CHECK_THAT(*all->loop.purgeVolume_m3, WithinRel(SmallCoach::held_m3(4.5), 1e-9));

    study::Options options;
    options.onlyCase = "two";
    const auto only = study::predict(coach.drawing, options);
    REQUIRE(only.has_value());
    REQUIRE(only->cases.size() == 1);
    CHECK(only->cases[0].name == "two");
    CHECK_FALSE(only->loop.purgeVolume_m3.has_value());  // 'before' tells nothing of the loop
    options.onlyCase = "three";
    const auto none = study::predict(coach.drawing, options);
    REQUIRE_FALSE(none.has_value());
    CHECK(render(none.error().what, UnitSystem::Metric) == "There is no case called three.");

    // A view that makes no model is an answer of its own; the other case stands.
    coach.set("P1", "minimum_V", 9.0);
    const auto heater = coach.add("tankless_heater", "WH9");
    coach.drawing.find(heater)->stage = document::Stage::Removed;
    coach.set("WH9", "minimum_input_W", 90e3);
    const auto broken = study::predict(coach.drawing);
    REQUIRE(broken.has_value());
    CHECK_FALSE(broken->cases[0].noAnswer.has_value());
    REQUIRE(broken->cases[1].noAnswer.has_value());
    CHECK(broken->cases[1].noAnswer->where == "WH9");
    CHECK(broken->cases[1].name == "two");
    CHECK(broken->cases[1].duration_s == 30);
    CHECK(broken->cases[1].target_C == two.target_C);
    CHECK(broken->cases[1].view == document::View::Before);

    document::Drawing empty;
    empty.cases = {one};
    const auto nothing = study::predict(empty);
    REQUIRE(nothing.has_value());
    CHECK(nothing->cases.at(0).noAnswer.has_value());
    CHECK_FALSE(study::Trials::make(empty).has_value());
}

TEST_CASE("presses by rule come a gap after each run's end, with a draw in between and a tap opened at the end",
          "[study][answers][plan]")
{
    SmallCoach coach;
    coach.set("C1", "longest_run_s", 20.0);
    study::Trial trial;
    trial.script = coach.script(7200, {});
    study::PressPlan plan;
    plan.gaps_s = {3, 40, 10};
    plan.settle_s = 7;
    trial.plan = plan;
    const auto plain = tried(coach.drawing, {trial}).front();
    // 3; its run ends at 23, 40 later 63; ends at 83, 10 later 93; ends at 113, watched 7 s more.
    CHECK(plain.presses == 3);
    REQUIRE(times(plain.result, "run_started").size() == 3);
    for (const auto& [index, at_s] : {std::pair{0, 3.0}, std::pair{1, 63.0}, std::pair{2, 93.0}}) {
        CHECK_THAT(times(plain.result, "run_started")[static_cast<std::size_t>(index)], WithinAbs(at_s, 0.01));
    }
    CHECK_THAT(plain.result.duration_s, WithinAbs(120, 0.01));
    CHECK(plain.asRun.duration_s == 120);
    CHECK(plain.asRun.actions.size() == 3);

    plan.drawAt = coach.id("F1");
    plan.drawFor_s = 12;
    plan.drawHotShare = 0;
    plan.openAt = coach.id("F1");
    plan.openHotShare = 1;
    plan.openDelay_s = 5;
    plan.openFor_s = 11;
    trial.plan = plan;
    const auto draws = tried(coach.drawing, {trial}).front();
    // Draws at 23 to 35 and at 83 to 95 (a press does not wait for them); the last opening 5 s after 113.
    const std::vector<double> opened{23, 83, 118}, closed{35, 95, 129};
    REQUIRE(times(draws.result, "tap_opened").size() == 3);
    REQUIRE(times(draws.result, "tap_closed").size() == 3);
    for (std::size_t i = 0; i < 3; ++i) {
        CHECK_THAT(times(draws.result, "tap_opened")[i], WithinAbs(opened[i], 0.01));
        CHECK_THAT(times(draws.result, "tap_closed")[i], WithinAbs(closed[i], 0.01));
    }
    CHECK_THAT(draws.result.duration_s, WithinAbs(129, 0.01));  // longer than 113 + 7
    for (const document::Action& action : draws.asRun.actions) {
        if (action.kind == ActionKind::OpenOutlet) {
            CHECK(action.second == (action.at_s < 100 ? 0 : 1));
            CHECK(action.value == 1);
        }
    }
    // The script as it was run gives the same case again.
    study::Trial again;
    again.script = draws.asRun;
    const auto replay = tried(coach.drawing, {again}).front();
    CHECK(replay.presses == 0);
    REQUIRE(replay.result.hottest.size() == draws.result.hottest.size());
    for (std::size_t i = 0; i < replay.result.hottest.size(); ++i) {
        CHECK_THAT(replay.result.hottest[i].hottest_C, WithinAbs(draws.result.hottest[i].hottest_C, 1e-6));
    }

    // From the press on, not from the run's end: 5 s after 93.
    trial.plan->openFromPress = true;
    const auto early = tried(coach.drawing, {trial}).front();
    CHECK_THAT(times(early.result, "tap_opened").back(), WithinAbs(98, 0.01));
    CHECK_THAT(times(early.result, "tap_closed").back(), WithinAbs(109, 0.01));
    CHECK_THAT(early.result.duration_s, WithinAbs(120, 0.01));  // the last run ends at 113, then 7 s
}

TEST_CASE("a refused press is tried again, and a run that nothing ends is stopped at the button",
          "[study][answers][plan]")
{
    SmallCoach coach;
    coach.set("C1", "longest_run_s", 20.0);
    coach.set("C1", "cool_down_wait_s", 33.0);
    study::Trial trial;
    trial.script = coach.script(7200, {});
    trial.plan.emplace();
    trial.plan->gaps_s = {0, 0};
    trial.plan->retry_s = 6;
    trial.plan->settle_s = 5;
    const auto result = tried(coach.drawing, {trial}).front();
    // Ends at 20; tried at 20, 26, ... 50, refused until 53; at 56 it starts.
    REQUIRE(times(result.result, "run_started").size() == 2);
    CHECK_THAT(times(result.result, "run_started")[1], WithinAbs(56, 0.01));
    CHECK(times(result.result, "run_refused").size() == 6);
    CHECK(result.presses == 2);

    coach.set("C1", "cool_down_wait_s", 0.0);
    coach.set("C1", "longest_run_s", 0.0);
    trial.plan->gaps_s = {2};
    trial.plan->mostRun_s = 45;
    const auto endless = tried(coach.drawing, {trial}).front();
    CHECK(times(endless.result, "stop_button").size() == 1);
    CHECK_THAT(times(endless.result, "stop_button")[0], WithinAbs(47, 0.01));
    CHECK_THAT(endless.result.duration_s, WithinAbs(52, 0.2));
    CHECK(endless.asRun.actions.size() == 2);

    trial.plan->gaps_s = {};
    CHECK(tried(coach.drawing, {trial}).front().presses == 0);
    CHECK_THAT(tried(coach.drawing, {trial}).front().result.duration_s, WithinAbs(5, 0.01));  // watched, no more
    trial.plan->gaps_s = {2};
    trial.plan->pressed = coach.id("PB1");
    CHECK(tried(coach.drawing, {trial}).front().presses == 1);
    trial.plan->pressed = coach.id("C1");
    CHECK(tried(coach.drawing, {trial}).front().presses == 1);
    coach.add("controller", "C2");
    trial.plan->pressed = document::kNoPart;
    CHECK(tried(coach.drawing, {trial}).front().presses == 0);  // which of two?
}

TEST_CASE("trials come back in their order whatever the number of hands, and stop when told", "[study][answers]")
{
    SmallCoach coach;
    std::vector<study::Trial> these;
    for (const double end_s : {30.0, 10.0, 20.0, 40.0}) {
        study::Trial trial;
        trial.script = coach.script(end_s, {coach.press(2)});
        trial.script.view = document::View::Before;  // a study is about the finished job
        these.push_back(trial);
    }
    for (const unsigned hands : {1U, 3U}) {
        const auto trials = study::Trials::make(coach.drawing, hands);
        REQUIRE(trials.has_value());
        CHECK(trials->hands() == hands);
        CHECK(&trials->drawing() == &coach.drawing);
        CHECK(trials->loop().answer.exists);
        const auto results = trials->run(these, {});
        REQUIRE(results.has_value());
        REQUIRE(results->size() == 4);
        for (std::size_t i = 0; i < 4; ++i) {
            CHECK((*results)[i].result.duration_s == these[i].script.duration_s);
        }
    }
    study::Options stopped;
    std::stop_source source;
    stopped.stop = source.get_token();
    source.request_stop();
    CHECK_FALSE(study::Trials::make(coach.drawing, 1)->run(these, stopped).has_value());
    // Searches take coarser cells, longer steps and no curves.
    const study::Options search = study::searchOptions(), usual;
    CHECK(search.cell_m > usual.cell_m);
    CHECK(search.step_s > usual.step_s);
    CHECK(search.solveEvery_s > usual.solveEvery_s);
    CHECK(search.wallLayers < usual.wallLayers);
    CHECK_FALSE(search.curves);
}

TEST_CASE("without a sensor a case is about the join where the loop leaves the hot line", "[study][answers]")
{
    SmallCoach coach;
    for (const char* tag : {"TE1", "TE2"}) {
        coach.drawing.find(coach.id(tag))->stage = document::Stage::Removed;
    }
    coach.set("C1", "longest_run_s", 60.0);
    study::Options options;
    options.loopJoin = true;
    auto script = coach.script(100, {coach.press(2)});
    script.target_C = 30;
    const auto result = coach.run(script, options);
    CHECK(result.targetPart == document::kNoPart);
    const double at_s = 2 + scalar(result, "time_to_target");
    CHECK(read(result, "loop_join", at_s) <= 30.01);
    CHECK(read(result, "loop_join", at_s + 1) >= 30);
    CHECK(scalar(result, "volume_to_first_rise") > SmallCoach::held_m3(4));
    CHECK_THAT(scalar(result, "sensor_at_stop"), WithinAbs(read(result, "loop_join", 62), 1.5));
    CHECK(why(result, "hottest_sensor_1") == "There is no temperature sensor.");
}
