// SPDX-License-Identifier: GPL-3.0-or-later
#include "study/presses.h"

#include <algorithm>

#include "study/trade_coach.h"
#include "support/catch.h"

using namespace tapward;
using study::HeatPlace;
using study::Protection;
using test::set;
using test::tradeCoach;

namespace {

study::PressesOptions quick(const document::Drawing& drawing)
{
    study::PressesOptions options = test::oneDay(drawing, 12);
    options.mostPresses = 2;
    options.gaps_s = {0};
    options.resolution = study::searchOptions();
    return options;
}

const study::ProtectionEffect& effect(const study::PressesStudy& study, Protection protection)
{
    const auto at = std::find_if(study.protections.begin(), study.protections.end(),
                                 [&](const study::ProtectionEffect& one) { return one.protection == protection; });
    REQUIRE(at != study.protections.end());
    return *at;
}

}  // namespace

TEST_CASE("every protection is tried the other way and told beside the coach as drawn", "[study][presses]")
{
    document::Drawing drawing = tradeCoach();
    set(drawing, "C1", "stop_by_volume", false);  // nothing but the longest run ends a run
    set(drawing, "C1", "longest_run_s", 90.0);
    set(drawing, "C1", "stop_temperature_C", 36.0);
    study::PressesOptions options = quick(drawing);
    options.protections = true;
    double last = -1;
    options.progress = [&](double share) {
        CHECK(share >= last);
        CHECK(share <= 1);
        last = share;
    };
    const auto study = study::studyPresses(drawing, options);
    REQUIRE(study.has_value());
    CHECK(last == 1);
    CHECK(study->cases > 10);
    CHECK_FALSE(study->wait.has_value());
    CHECK_FALSE(study->waitAsDrawn.has_value());
    REQUIRE(study->protections.size() == 7);
    for (std::size_t k = 0; k < 7; ++k) {
        CHECK(study->protections[k].protection == static_cast<Protection>(k));  // in their order
    }
    for (const Protection protection : {Protection::TemperatureStop, Protection::HighLimit, Protection::InletLockout,
                                        Protection::WaitTimer, Protection::LongestRun, Protection::RefuseWhenWarm}) {
        CAPTURE(study::id(protection));
        const study::ProtectionEffect& one = effect(*study, protection);
        CHECK(one.tried);
        CHECK(one.counted == (protection == Protection::LongestRun));
        REQUIRE(one.other.heaterOutlet_C.has_value());
        REQUIRE(one.other.outlets_C.has_value());
        REQUIRE(one.other.heaterInlet_C.has_value());
        REQUIRE(one.other.coldOutlets_C.has_value());
    }
    CHECK_FALSE(effect(*study, Protection::MixingValve).tried);
    CHECK_FALSE(effect(*study, Protection::MixingValve).other.outlets_C.has_value());
    // A stop at 36 °C, seconds after the hot water has come, keeps the tap cooler than a run of 90 s; without the
    // longest run nothing ends one for ten minutes, and the loop's own water comes back hot.
    CHECK(*effect(*study, Protection::TemperatureStop).other.outlets_C < *study->asDrawn.outlets_C - 1);
    CHECK(*effect(*study, Protection::LongestRun).other.heaterInlet_C > *study->asDrawn.heaterInlet_C + 3);
    // A refusal or a wait leaves the first run as it is.
    CHECK(*effect(*study, Protection::RefuseWhenWarm).other.outlets_C <= *study->asDrawn.outlets_C + 0.05);

    // As drawn: the hottest of each group among the worst, which come hottest first.
    double outlet_C = -1e9;
    for (std::size_t i = 0; i < study->worst.size(); ++i) {
        CHECK((i == 0 || study->worst[i - 1].hottest_C >= study->worst[i].hottest_C));
        if (study->worst[i].place == HeatPlace::OutletHot) {
            outlet_C = std::max(outlet_C, study->worst[i].hottest_C);
        }
    }
    CHECK(study->asDrawn.outlets_C == outlet_C);
    const study::WorstHeat* heater = study->find(HeatPlace::HeaterOutlet);
    REQUIRE(heater);
    CHECK(study->asDrawn.heaterOutlet_C == heater->hottest_C);
    CHECK(study->find(HeatPlace::HeaterOutlet, heater->part) == heater);
    CHECK(study->find(HeatPlace::HeaterOutlet, 9999) == nullptr);
}

TEST_CASE("two worst places are the ones their own scripts show, whichever run they came from", "[study][presses]")
{
    const document::Drawing drawing = tradeCoach();
    const auto study = study::studyPresses(drawing, quick(drawing));
    REQUIRE(study.has_value());
    CHECK(study->protections.empty());
    const auto trials = study::Trials::make(drawing);
    REQUIRE(trials.has_value());
    for (const HeatPlace place : {HeatPlace::HeaterOutlet, HeatPlace::OutletHot, HeatPlace::HeaterInlet}) {
        const study::WorstHeat* heat = study->find(place);
        REQUIRE(heat);
        const auto shown = trials->run(std::vector<study::Trial>{{heat->script, std::nullopt, {}, std::nullopt}},
                                       study::searchOptions());
        REQUIRE(shown.has_value());
        double hottest_C = -1e9;
        for (const study::PlaceHeat& one : shown->front().result.hottest) {
            hottest_C = one.place == place && one.part == heat->part ? one.hottest_C : hottest_C;
        }
        CHECK_THAT(hottest_C, WithinAbs(heat->hottest_C, 0.05));
        CHECK(heat->script.duration_s >= heat->at_s);
        CHECK(heat->presses >= 1);
        CHECK(heat->presses <= 2);
    }
}

TEST_CASE("without a controller or a loop there is nothing to press, and it says so", "[study][presses]")
{
    document::Drawing drawing = tradeCoach();
    const auto without = [&](const char* kind) {
        document::Drawing less = drawing;
        for (document::Part& part : less.parts) {
            part.stage = part.kind == kind ? document::Stage::Removed : part.stage;
        }
        const auto study = study::studyPresses(less, quick(drawing));
        return study ? std::string() : study.error().what.text;
    };
    CHECK(without("controller").starts_with("No controller"));
    CHECK_FALSE(without("circulator").empty());
    CHECK_FALSE(study::studyPresses(document::Drawing{}, quick(drawing)).has_value());
}

TEST_CASE("people touch water at an outlet, hot or cold, and nowhere else", "[study][presses]")
{
    CHECK(study::isOutlet(HeatPlace::OutletHot));
    CHECK(study::isOutlet(HeatPlace::OutletCold));
    for (const HeatPlace place :
         {HeatPlace::HeaterOutlet, HeatPlace::HeaterInlet, HeatPlace::Sensor, HeatPlace::Join}) {
        CHECK_FALSE(study::isOutlet(place));
    }
}
