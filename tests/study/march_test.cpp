// SPDX-License-Identifier: GPL-3.0-or-later
// How a case is stepped through: not finer than it needs, and not coarser.
#include <cmath>

#include "document/file.h"
#include "study/prediction.h"
#include "study/trials.h"
#include "support/catch.h"

using namespace tapward;

namespace {

document::Drawing coach()
{
    auto drawing = document::load(TAPWARD_SOURCE_DIR "/samples/long_hall_coach.tapward");
    REQUIRE(drawing.has_value());
    return *drawing;
}

/// One press at 2 s.
study::Trial onePress(const document::Drawing& drawing, double duration_s)
{
    study::Trial trial;
    trial.script = *drawing.findCase("One preheat run, cold");
    trial.script.duration_s = duration_s;
    return trial;
}

}  // namespace

TEST_CASE("a relay that welds does not make a case march in milliseconds once the stop's volume is past", "[study]")
{
    const auto drawing = coach();
    const auto trials = study::Trials::make(drawing, 1);
    REQUIRE(trials.has_value());
    study::Trial trial = onePress(drawing, 300);
    document::Action weld;
    weld.kind = document::ActionKind::StartFault;
    weld.part = trials->plant().withRole(parts::Role::Controller).front()->id;
    weld.fault = "relay_welded";
    trial.script.actions.push_back(weld);
    const auto results = trials->run(std::vector{trial}, study::searchOptions());
    REQUIRE(results.has_value());
    // A step a second, and what valve travel, pumps and heater ask for besides.
    CHECK(results->front().result.steps < 600);
}

TEST_CASE("long steps and rare flow solutions in a cool-down change no temperature by a tenth of a kelvin", "[study]")
{
    const auto drawing = coach();
    const auto trials = study::Trials::make(drawing, 1);
    REQUIRE(trials.has_value());
    // Warm the loop, wait an hour, press again: what the second run meets shows how the wait was marched.
    study::Trial trial = onePress(drawing, 4000);
    document::Action again = trial.script.actions.front();
    for (const document::Action& action : trial.script.actions) {
        again = action.kind == document::ActionKind::PressButton ? action : again;
    }
    REQUIRE(again.kind == document::ActionKind::PressButton);
    again.at_s = 3800;
    trial.script.actions.push_back(again);
    // The same with something at every fifth second that changes nothing: no step is longer.
    study::Trial fine = trial;
    document::Action volts;
    volts.kind = document::ActionKind::SetVoltage;
    volts.value = 12.6;
    for (const document::Action& action : trial.script.actions) {
        volts = action.kind == document::ActionKind::SetVoltage ? action : volts;
    }
    trial.script.actions.insert(trial.script.actions.begin(), volts);
    for (double at_s = 0; at_s < 4000; at_s += 5) {
        volts.at_s = at_s;
        fine.script.actions.push_back(volts);
    }
    study::Options options;
    options.curves = false;
    const auto results = trials->run(std::vector{trial, fine}, options);
    REQUIRE(results.has_value());
    const study::CaseResult& quick = (*results)[0].result;
    const study::CaseResult& slow = (*results)[1].result;
    CHECK(quick.steps < 0.8 * slow.steps);
    CHECK(quick.solves < 0.6 * slow.solves);
    REQUIRE(quick.hottest.size() == slow.hottest.size());
    for (std::size_t i = 0; i < quick.hottest.size(); ++i) {
        CAPTURE(static_cast<int>(quick.hottest[i].place), quick.hottest[i].part);
        CHECK(std::abs(quick.hottest[i].hottest_C - slow.hottest[i].hottest_C) < 0.1);
    }
}
