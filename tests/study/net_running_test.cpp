// SPDX-License-Identifier: GPL-3.0-or-later
// Facts of a running loop that follow from what each thing is, whatever the figures.
#include <algorithm>
#include <cmath>
#include <map>

#include "study/bench.h"
#include "study/stop.h"
#include "study/stop_runs.h"

using namespace tapward;
using document::ActionKind;
using test::read;
using test::scalar;
using test::SmallCoach;
using test::times;

namespace {

/// Everything a case says, by name: events by their first instant and count, scalars, hottest places.
std::map<std::string, double> said(const SmallCoach& coach, const study::CaseResult& result)
{
    const auto tag = [&](document::PartId id) {
        const document::Part* part = coach.drawing.find(id);
        return ' ' + (part ? part->tag : std::string());
    };
    std::map<std::string, double> found;
    for (const study::Event& event : result.events) {
        const std::string key = "event " + event.id + tag(event.part);
        found.emplace(key + " first", event.t_s);
        found[key + " count"] += 1;
    }
    for (const study::Scalar& one : result.scalars) {
        if (one.id.find("residual") == std::string::npos) {
            found["scalar " + one.id] = one.value.value_or(-1e3);
        }
    }
    for (const study::PlaceHeat& heat : result.hottest) {
        found["hottest " + std::to_string(static_cast<int>(heat.place)) + tag(heat.part)] = heat.hottest_C;
    }
    return found;
}

/// The same drawing as if its parts had been drawn in this order.
void drawnInOrder(SmallCoach& coach, const std::vector<std::string>& tags)
{
    std::map<document::PartId, document::PartId> now{{document::kNoPart, document::kNoPart}};
    for (const std::string& tag : tags) {
        const auto next = static_cast<document::PartId>(now.size());
        now[coach.id(tag)] = next;
    }
    for (document::Part& part : coach.drawing.parts) {
        part.id = now.at(part.id);
        for (document::PipeEnd& end : part.ends) {
            end.part = now.at(end.part);
        }
        for (const char* key : {"flow_sensor", "stop_sensor", "limit_sensor", "inlet_sensor", "controller"}) {
            const auto entry = part.entries.find(key);
            if (entry != part.entries.end()) {
                const auto& named = std::get<std::string>(entry->second.value);
                entry->second.value = std::to_string(now.at(static_cast<document::PartId>(std::stol(named))));
            }
        }
    }
    std::sort(coach.drawing.parts.begin(), coach.drawing.parts.end(),
              [](const document::Part& a, const document::Part& b) { return a.id < b.id; });
}

}  // namespace

TEST_CASE("in which order the parts were drawn changes no answer", "[study][running]")
{
    SmallCoach coach;
    coach.set("C1", "high_limit", true);
    coach.set("C1", "high_limit_C", 45.0);
    coach.name("C1", "limit_sensor", "TE1");
    coach.set("C1", "inlet_lockout", true);
    coach.set("C1", "inlet_lockout_C", 35.0);
    coach.name("C1", "inlet_sensor", "TE2");
    coach.set("C1", "stop_by_volume", true);
    coach.set("C1", "stop_volume_m3", 1e-3);
    coach.set("C1", "no_flow_s", 5.0);
    const auto run = [&] {
        return said(coach, coach.run(230, {coach.press(2), coach.hot(70), coach.shut(100),
                                           coach.act(110, ActionKind::PressButton, "PB1"), coach.press(140),
                                           coach.fault(150, "FE1", "dead"), coach.press(190)}));
    };
    const auto before = run();
    CHECK(before.at("event run_started C1 count") >= 2);
    const auto checkSame = [&] {
        const auto now = run();
        REQUIRE(now.size() == before.size());
        for (auto left = before.begin(), right = now.begin(); left != before.end(); ++left, ++right) {
            CAPTURE(left->first);
            CHECK(left->first == right->first);
            // Within what a step leaves open: flows are found anew on change, and rounding shifts when that is.
            CHECK_THAT(left->second, WithinRel(right->second, 1e-3) || WithinAbs(right->second, 1e-6));
        }
    };
    std::vector<std::string> tags;
    for (const document::Part& part : coach.drawing.parts) {
        tags.push_back(part.tag);
    }
    // Each is the first of its kind once, so that who has the first place is told from who has none.
    for (const char* first : {"FE1", "TE1", "C1"}) {
        CAPTURE(first);
        std::rotate(tags.begin(), std::find(tags.begin(), tags.end(), first),
                    std::find(tags.begin(), tags.end(), first) + 1);
        drawnInOrder(coach, tags);
        checkSame();
    }
    std::reverse(tags.begin(), tags.end());
    drawnInOrder(coach, tags);
    checkSame();
}

TEST_CASE("a hand valve is at most open and at least shut, and half open between them", "[study][running]")
{
    SmallCoach coach;
    const auto valve = coach.add("hand_valve", "V1");
    // Between the check valve and the tee of the return.
    for (document::Part& part : coach.drawing.parts) {
        if (part.ends[0].part == coach.id("CV1")) {
            part.ends[0] = {valve, "outlet", {}};
        }
    }
    coach.pipe(coach.id("CV1"), "outlet", valve, "inlet");
    const auto flow = [&](double opening) {
        return read(coach.run(20, {coach.act(1, ActionKind::SetValve, "V1", opening), coach.press(2)}), "loop_flow",
                    19);
    };
    const double open = flow(1);
    REQUIRE(open > 2e-5);
    CHECK_THAT(flow(3), WithinRel(open, 1e-9));
    CHECK(std::abs(flow(0)) < 1e-9);
    CHECK(std::abs(flow(-1)) < 1e-9);
    CHECK(flow(0.1) < open);
    CHECK(flow(0.1) > 1e-7);
}

TEST_CASE("a valve works from its least volts on, and one that opens without power is no more than open",
          "[study][running]")
{
    SmallCoach coach;
    coach.set("MV1", "minimum_V", 9.0);
    coach.set("MV1", "on_power_loss", std::string("stays"));
    coach.set("MV1", "current_A", 0.0);
    coach.set("P1", "minimum_V", 6.0);
    const auto flow = [&](double volts) {
        return read(coach.run(20, {coach.act(1, ActionKind::SetVoltage, {}, volts), coach.press(2)}), "loop_flow", 19);
    };
    CHECK(flow(9.0) > 1e-5);
    CHECK(std::abs(flow(8.99)) < 1e-9);
    // Pump welded on, valve open: by command at 9 V, by itself just below.
    const auto welded = [&](double volts, bool press) {
        auto actions = std::vector{coach.act(1, ActionKind::SetVoltage, {}, volts), coach.fault(1, "P1", "always_on")};
        if (press) {
            actions.push_back(coach.press(2));
        }
        return read(coach.run(20, actions), "loop_flow", 19);
    };
    coach.set("MV1", "on_power_loss", std::string("opens"));
    const double commanded = welded(9.0001, true);
    CHECK(commanded > 1e-5);
    CHECK(std::abs(welded(9.0001, false)) < 1e-9);
    CHECK_THAT(welded(8.9999, false), WithinRel(commanded, 1e-3));
}

TEST_CASE("a pump draws from the battery while it is switched on and turns, no sooner and not when dead",
          "[study][running]")
{
    // 12 V behind 2 ohm: an ampere takes 2 V of it, and the valve wants 11 V. Built to open without power, it lets an
    // open hot tap draw through the loop too, whose check valve is stuck open.
    SmallCoach coach;
    coach.set("BT1", "internal_ohm", 2.0);
    coach.set("P1", "current_A", 1.5);
    coach.set("MV1", "minimum_V", 11.0);
    coach.set("MV1", "current_A", 0.0);
    coach.set("C1", "current_A", 0.0);
    coach.set("WH1", "fan_current_A", 0.0);  // nor does anything else draw
    coach.set("WH1", "board_current_A", 0.0);
    const auto drawn = [&](std::vector<document::Action> actions) {
        actions.push_back(coach.fault(0, "CV1", "stuck_open"));
        actions.push_back(coach.hot(30));
        return read(coach.run(40, actions), "tap_flow.F1", 40);  // its end is always written down
    };
    const double alone = drawn({coach.fault(0, "MV1", "stuck_shut")});  // nothing passes through the loop
    const auto opened = [&](const std::vector<document::Action>& actions) {
        return std::abs(drawn(actions) / alone - 1) > 1e-3;
    };
    coach.set("MV1", "on_power_loss", std::string("opens"));
    CHECK_FALSE(opened({}));  // switched off it draws nothing
    CHECK(opened({coach.fault(1, "P1", "always_on")}));  // welded it draws, and the valve opens
    CHECK_FALSE(opened({coach.fault(1, "P1", "always_on"), coach.fault(2, "P1", "dead")}));
}

TEST_CASE("the first twelve runs of a case have answers of their own, and the last stop is the last of all",
          "[study][running]")
{
    SmallCoach coach;
    coach.set("C1", "stop_by_time", true);
    coach.set("C1", "stop_time_s", 10.0);
    std::vector<document::Action> presses;
    for (int run = 0; run < 13; ++run) {
        presses.push_back(coach.press(2 + 20 * run));
    }
    const auto result = coach.run(270, presses);
    REQUIRE(times(result, "run_started").size() == 13);
    CHECK_THAT(scalar(result, "sensor_at_stop_1"), WithinAbs(20, 0.1));  // nothing warm has come so far yet
    CHECK(scalar(result, "sensor_at_stop_12") > 22);
    CHECK(result.scalar("sensor_at_stop_13") == nullptr);
    CHECK(scalar(result, "sensor_at_stop") != scalar(result, "sensor_at_stop_12"));
    CHECK_THAT(scalar(result, "sensor_at_stop"), WithinAbs(read(result, "sensor.TE1", 252), 0.5));
}

TEST_CASE("water enters a storage heater as cold as the supply and leaves it as warm as it stands", "[study][running]")
{
    test::Bench coach;
    const auto city = coach.add("city_inlet", "CW1"), heater = coach.add("storage_heater", "WH1");
    const auto tap = coach.add("faucet", "F1");
    coach.pipe(city, "outlet", heater, "cold", 2);
    coach.pipe(heater, "hot", tap, "hot", 2);
    coach.set("WH1", "layers", 1.0);
    auto script = coach.script(90, {coach.hot(2)});
    script.supply_C = 10;
    script.storedHeater_C = 60;
    const auto result = coach.run(script);
    CHECK_THAT(read(result, "heater_outlet", 2), WithinAbs(60, 0.1));
    CHECK_THAT(read(result, "heater_inlet", 90), WithinAbs(10, 0.5));  // 2 m of pipe are through in seconds
    CHECK(read(result, "heater_outlet", 90) < 59);
    CHECK_THAT(scalar(result, "hottest_heater_outlet"), WithinAbs(60, 0.1));
    CHECK(scalar(result, "hottest_heater_inlet") < 20.5);  // what stood in the pipe
    CHECK(scalar(result, "hottest_heater_inlet") > 10.5);
}

TEST_CASE("each pipe with water in it is coloured, and no other", "[study][running]")
{
    SmallCoach coach;
    coach.add("pipe_run", "L99");  // loose: its water stands
    coach.set("L99", "length_m", 1.0);
    study::Options options;
    options.snapshots = true;
    const auto result = coach.run(coach.script(10, {coach.press(2)}), options);
    std::size_t points = 0;
    for (const document::Part& part : coach.drawing.parts) {
        if (part.kind != "pipe_run") {
            continue;
        }
        const auto tracks = std::count_if(result.snapshot.tracks.begin(), result.snapshot.tracks.end(),
                                          [&](const auto& track) { return track.part == part.id; });
        const bool wet = std::get<double>(part.entries.at("length_m").value) > 0;
        CAPTURE(part.tag);
        CHECK(tracks == (wet ? 1 : 0));
    }
    for (const auto& track : result.snapshot.tracks) {
        CHECK(track.offset == points);
        points += static_cast<std::size_t>(track.points);
    }
    CHECK(result.snapshot.stride == points);
}

TEST_CASE("a run let go on is long enough for the loop's water to pass the tap twice, and not longer than it needs",
          "[study][stop]")
{
    SmallCoach coach;
    coach.drawing.cases = {coach.script(60, {coach.press(2)})};
    const auto question = study::stopQuestion(coach.drawing, {});
    REQUIRE(question.has_value());
    const auto run = study::nominalRun(*question, 0.3, 1, {});
    REQUIRE(run.has_value());
    const auto loop = study::loopAnswer(coach.drawing);
    const double once_s = SmallCoach::held_m3(4) / loop.flow_m3s.value();  // heater to the tee: 4 m
    CHECK(run->time_s.back() > 2 * once_s);
    CHECK(run->time_s.back() < 4 * once_s + 60);  // with the valve's travel and the light-up
}

TEST_CASE("a suggestion that nobody confirmed has no shares, one run once is kept or not", "[study][stop]")
{
    SmallCoach coach;
    coach.drawing.cases = {coach.script(60, {coach.press(2)})};
    study::StopOptions options;
    options.samples = 16;
    options.target_C = 35;
    options.cell_m = 1;
    for (const int confirmations : {0, 1}) {
        options.confirmations = confirmations;
        const auto study = study::suggestStop(coach.drawing, options);
        REQUIRE(study.has_value());
        REQUIRE(study->best());
        CHECK(study->confirmed == confirmations);
        for (const double share : {study->confirmedReaches, study->confirmedKeeps, study->confirmedBoth}) {
            CHECK((share == 0 || (confirmations == 1 && share == 1)));
        }
        CHECK(study->confirmedBoth == study->confirmedReaches * study->confirmedKeeps);
        CHECK((study->confirmedWorstTap_C > 20) == (confirmations == 1));
    }
}
