// SPDX-License-Identifier: GPL-3.0-or-later
// What a plan of presses does, and when.
#include <algorithm>
#include <string>

#include "study/trade_coach.h"
#include "study/trials.h"
#include "support/catch.h"

using namespace tapward;
using document::ActionKind;

namespace {

/// When the plan did this for the first time; NaN when never.
double timeOf(const document::Case& script, ActionKind kind)
{
    for (const document::Action& action : script.actions) {
        if (action.kind == kind) {
            return action.at_s;
        }
    }
    return std::nan("");
}

}  // namespace

TEST_CASE("at the end an outlet is opened just so long after the press, or after the run has ended", "[study][presses]")
{
    // A run of 20 s by the clock; then the water stands and steps are seconds long: the opening waits for none.
    document::Drawing drawing = test::tradeCoach();
    document::Part& box = *std::find_if(drawing.parts.begin(), drawing.parts.end(),
                                        [](const document::Part& part) { return part.kind == "controller"; });
    for (const char* key : {"stop_by_volume", "stop_by_temperature"}) {
        box.entries[key] = {false, parts::Basis::Measured};
    }
    box.entries["stop_by_time"] = {true, parts::Basis::Measured};
    box.entries["stop_time_s"] = {20.0, parts::Basis::Measured};
    const auto trials = study::Trials::make(drawing);
    REQUIRE(trials.has_value());
    for (const bool fromPress : {true, false}) {
        study::Trial trial;
        trial.script = drawing.cases.front();
        trial.script.actions.clear();
        trial.script.duration_s = 600;
        study::PressPlan plan;
        plan.gaps_s = {2};
        plan.openAt = drawing.findTag("F1")->id;
        plan.openFromPress = fromPress;
        plan.openDelay_s = 57.3;
        plan.openFor_s = 11.7;
        trial.plan = plan;
        const auto results = trials->run(std::vector{trial}, study::Options{});
        REQUIRE(results.has_value());
        const study::TrialResult& one = results->front();
        double ended_s = 0;
        for (const study::Event& event : one.result.events) {
            ended_s = event.id == "stop_time" ? event.t_s : ended_s;
        }
        const double pressed_s = timeOf(one.asRun, ActionKind::PressButton);
        CHECK(pressed_s == 2);
        REQUIRE(ended_s > pressed_s + 15);
        CAPTURE(fromPress, ended_s);
        const double opened_s = timeOf(one.asRun, ActionKind::OpenOutlet);
        CHECK_THAT(opened_s, WithinAbs((fromPress ? pressed_s : ended_s) + 57.3, 1e-3));
        CHECK_THAT(timeOf(one.asRun, ActionKind::CloseOutlet), WithinAbs(opened_s + 11.7, 1e-3));
    }
}

TEST_CASE("a check valve that leaks lets water back, one that is sound does not", "[study][running]")
{
    // The loop's valve stands open and its pumps do not run: a cold tap draws back through the loop what the check lets.
    document::Drawing drawing = test::tradeCoach();
    document::Case script = drawing.cases.front();
    script.actions.clear();
    script.duration_s = 30;
    const auto act = [&](double at_s, ActionKind kind, const char* tag) -> document::Action& {
        document::Action action;
        action.at_s = at_s;
        action.kind = kind;
        action.part = tag ? drawing.findTag(tag)->id : document::kNoPart;
        script.actions.push_back(action);
        return script.actions.back();
    };
    act(0, ActionKind::UseCity, nullptr);
    act(0, ActionKind::StartFault, "MV1").fault = "stuck_open";
    document::Action& open = act(2, ActionKind::OpenOutlet, "F1");
    open.value = 1;
    open.second = 1;  // hot: the cold line pushes the wrong way through the loop
    const auto least = [&](bool leaks) {
        document::Drawing one = drawing;
        one.cases = {script};
        if (leaks) {
            for (const document::Part& part : drawing.parts) {
                if (part.kind == "check_valve" && part.stage == document::Stage::Added) {
                    document::Action fault;
                    fault.kind = ActionKind::StartFault;
                    fault.part = part.id;
                    fault.fault = "leaks";
                    one.cases[0].actions.insert(one.cases[0].actions.begin(), fault);
                }
            }
        }
        const auto prediction = study::predict(one);
        REQUIRE(prediction);
        REQUIRE_FALSE(prediction->cases[0].noAnswer);
        const study::Series* flow = prediction->cases[0].find("loop_flow");
        REQUIRE(flow);
        return *std::min_element(flow->values.begin(), flow->values.end());
    };
    CHECK(least(false) > -1e-7);
    CHECK(least(true) < -1e-7);
}
