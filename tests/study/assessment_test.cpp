// SPDX-License-Identifier: GPL-3.0-or-later
// What is known of a drawing: places, what shows them, and where the loop's water enters the cold line.
#include <algorithm>
#include <cmath>

#include "document/proposal.h"
#include "study/assessment.h"
#include "study/trade_coach.h"
#include "support/catch.h"

using namespace tapward;
using study::HeatPlace;

namespace {

/// A prediction of cases with one place each.
struct Known {
    document::Drawing drawing = test::tradeCoach();
    study::Prediction prediction;

    void add(const char* name, double celsius, int presses, bool faulty = false)
    {
        document::Case script;
        script.name = name;
        if (faulty) {
            document::Action fault;
            fault.kind = document::ActionKind::StartFault;
            script.actions.push_back(fault);
        }
        drawing.cases.push_back(script);
        study::CaseResult result;
        result.name = name;
        for (int i = 0; i < presses; ++i) {
            study::Event event;
            event.id = "run_started";
            event.t_s = 10.0 * i;
            result.events.push_back(event);
        }
        result.hottest.push_back({HeatPlace::OutletHot, drawing.findTag("F1")->id, celsius, 15});
        prediction.cases.push_back(std::move(result));
    }
};

std::shared_ptr<const study::PressesStudy> found(document::PartId part, double celsius)
{
    auto made = std::make_shared<study::PressesStudy>();
    made->worst.push_back({HeatPlace::OutletHot, part, celsius, 99, 4, {}});
    made->worst.push_back({HeatPlace::HeaterOutlet, 1, 70, 99, 4, {}});
    return made;
}

}  // namespace

TEST_CASE("a place is known by the hottest case that shows it, sound and broken apart", "[study][assessment]")
{
    Known known;
    known.add("mild", 40, 1);
    known.add("hot", 50, 3);
    known.add("warm", 45, 2);
    known.add("broken", 60, 1, true);
    const document::PartId tap = known.drawing.findTag("F1")->id;
    study::Assessment made = study::assess(known.drawing, known.prediction);
    REQUIRE(made.sound.size() == 1);
    REQUIRE(made.broken.size() == 1);
    const study::HotPlace* heat = made.hottest({HeatPlace::OutletHot});
    REQUIRE(heat);
    CHECK(heat->hottest_C == 50);
    CHECK(heat->script.name == "hot");
    CHECK(heat->presses == 2);  // the third was started after 15 s
    CHECK_FALSE(heat->searched);
    CHECK_FALSE(heat->faulty);
    CHECK(made.hottest({HeatPlace::OutletHot}, true)->hottest_C == 60);
    CHECK(made.hottest({HeatPlace::OutletHot}, true)->faulty);
    CHECK_FALSE(made.hottest({HeatPlace::Sensor}, true));
    CHECK(made.depth == study::Assessment::Depth::Drawn);
    CHECK_FALSE(made.searchable);  // this prediction has no loop
    CHECK_FALSE(made.isAtLeast());
    known.prediction.loop.exists = true;
    CHECK(study::assess(known.drawing, known.prediction).isAtLeast());

    // The search adds what is hotter and takes nothing away.
    made = study::assess(known.drawing, known.prediction, found(tap, 55), {}, nullptr, "No stop.");
    CHECK(made.depth == study::Assessment::Depth::Full);
    CHECK_FALSE(made.isAtLeast());
    CHECK(made.hottest({HeatPlace::OutletHot})->hottest_C == 55);
    CHECK(made.hottest({HeatPlace::OutletHot})->searched);
    CHECK(made.hottest({HeatPlace::OutletHot, HeatPlace::HeaterOutlet})->hottest_C == 70);
    CHECK(made.sound.front().hottest_C == 70);
    CHECK(made.noStop.text == "No stop.");
    made = study::assess(known.drawing, known.prediction, found(tap, 49), {}, nullptr, {});
    CHECK(made.hottest({HeatPlace::OutletHot})->hottest_C == 50);
    CHECK(made.hottest({HeatPlace::OutletHot}, false, tap)->script.name == "hot");
}

TEST_CASE("the loop's water enters the cold line at the join where the return meets it", "[study][assessment]")
{
    // In the trade's coach: behind the pumps, at the fixture's cold side; hotter than what the heater gets back, never
    // hotter than what left the hot line.
    const document::Drawing drawing = test::tradeCoach();
    const auto prediction = study::predict(drawing);
    REQUIRE(prediction);
    REQUIRE(prediction->loop.coldEntry != document::kNoPart);
    CHECK(prediction->loop.coldEntry != prediction->loop.returnTee);
    CHECK(drawing.find(prediction->loop.coldEntry)->kind == "tee");
    const study::Assessment known = study::assess(drawing, *prediction);
    const study::HotPlace* entering = known.hottest({HeatPlace::ColdEntry});
    const study::HotPlace* leaving = known.hottest({HeatPlace::Join});
    const study::HotPlace* back = known.hottest({HeatPlace::HeaterInlet});
    REQUIRE(entering);
    REQUIRE(leaving);
    REQUIRE(back);
    CHECK(entering->part == prediction->loop.coldEntry);
    CHECK(entering->hottest_C <= leaving->hottest_C + 0.1);
    CHECK(entering->hottest_C >= back->hottest_C - 0.1);
    CHECK(entering->hottest_C > 30);
}

TEST_CASE("a return by a line of its own enters no cold line, and no limit of it is held", "[study][assessment]")
{
    auto loaded = document::load(TAPWARD_SOURCE_DIR "/samples/storage_coach.tapward");
    REQUIRE(loaded);
    const auto prediction = study::predict(*loaded);
    REQUIRE(prediction);
    REQUIRE(prediction->loop.exists);
    CHECK(prediction->loop.coldEntry == document::kNoPart);
    CHECK_FALSE(study::assess(*loaded, *prediction).hottest({HeatPlace::ColdEntry}));
    study::StopOptions options;
    options.samples = 16;
    options.confirmations = 0;
    options.limits.coldEntry_C = -10;  // nothing could keep it
    const auto stop = study::suggestStop(*loaded, options);
    REQUIRE(stop);
    CHECK_FALSE(stop->byColdLine);
    CHECK(stop->best());
}

TEST_CASE("nothing is said to stand at a loop's ends that was never run", "[study][assessment]")
{
    document::Drawing drawing = test::tradeCoach();
    for (document::Case& script : drawing.cases) {
        std::erase_if(script.actions,
                      [](const document::Action& action) { return action.kind == document::ActionKind::PressButton; });
    }
    const auto prediction = study::predict(drawing);
    REQUIRE(prediction);
    const study::Assessment known = study::assess(drawing, *prediction);
    CHECK_FALSE(known.hottest({HeatPlace::ColdEntry}, true));
    CHECK_FALSE(known.hottest({HeatPlace::Join}, true));
}

TEST_CASE("a battery at 10.5 V leaves the heater without its volts, and the loop says so", "[study][assessment]")
{
    // Ignition boards stop at about 10.5 V; the pumps' current through shared wire takes some of what the battery has.
    document::Drawing drawing = test::tradeCoach();
    document::Part& heater = *drawing.find(drawing.findTag("WH1")->id);
    for (const auto& [open_V, lights] : {std::pair{12.6, true}, {10.2, false}}) {
        document::Drawing one = drawing;
        for (document::Part& part : one.parts) {
            if (part.kind == "battery") {
                part.entries["voltage_V"] = {open_V, parts::Basis::Measured};
            }
        }
        const study::LoopAnswer answer = study::loopAnswer(one);
        REQUIRE(answer.heaterVolts);
        REQUIRE(answer.heaterLeastVolts);
        CHECK(*answer.heaterLeastVolts == document::values(heater).number("minimum_V"));
        CHECK((*answer.heaterVolts >= *answer.heaterLeastVolts) == lights);
    }
}
