// SPDX-License-Identifier: GPL-3.0-or-later
#include "study/presses.h"

#include <algorithm>
#include <cmath>

#include "document/file.h"
#include "study/press_search.h"
#include "study/simulate.h"
#include "study/trade_coach.h"
#include "support/catch.h"

using namespace tapward;
using Catch::Matchers::WithinAbs;
using test::oneDay;
using test::set;
using test::tradeCoach;

namespace {

/// The twin: a high limit of its own sensor's place, a lockout at the heater and a wait.
document::Drawing protectedTwin(document::Drawing drawing)
{
    const std::string sensor = std::to_string(drawing.findTag("TE1")->id);
    set(drawing, "C1", "high_limit", true);
    set(drawing, "C1", "high_limit_C", us::celsius(112));
    set(drawing, "C1", "limit_sensor", sensor);
    set(drawing, "C1", "stop_by_temperature", true);
    set(drawing, "C1", "stop_temperature_C", us::celsius(100));
    set(drawing, "C1", "refuse_when_warm", true);
    set(drawing, "C1", "cool_down_wait_s", 1800.0);
    return drawing;
}

double value(const study::PressesStudy& study, study::HeatPlace place)
{
    const study::WorstHeat* heat = study.find(place);
    REQUIRE(heat);
    return heat->hottest_C;
}

}  // namespace

TEST_CASE("three presses of the trade's coach are found at least as hot as the trade sees them", "[study][presses]")
{
    // Third press at once: 142 °F at the sensor, heater outlet 151 to 167 °F. Common practice, no published source.
    const document::Drawing drawing = tradeCoach();
    study::PressesOptions options = oneDay(drawing, 12);
    options.mostPresses = 3;
    const auto study = study::studyPresses(drawing, options);
    REQUIRE(study.has_value());
    CHECK(us::fahrenheit(value(*study, study::HeatPlace::Sensor)) >= 142 - 4);
    CHECK(us::fahrenheit(value(*study, study::HeatPlace::HeaterOutlet)) >= 151);
    CHECK(us::fahrenheit(value(*study, study::HeatPlace::HeaterOutlet)) <= 167 + 3);
    CHECK(study->find(study::HeatPlace::HeaterOutlet)->presses == 3);
}

TEST_CASE("the script of a worst place, opened as a case, shows the temperature that was reported", "[study][presses]")
{
    const document::Drawing drawing = tradeCoach();
    study::PressesOptions options;
    options.mostPresses = 3;
    options.safeWait = false;
    options.protections = false;
    const auto study = study::studyPresses(drawing, options);
    REQUIRE(study.has_value());
    REQUIRE(study->worst.size() >= 5);
    const auto trials = study::Trials::make(drawing);
    REQUIRE(trials.has_value());
    for (const study::WorstHeat& heat : study->worst) {
        const auto shown = study::simulate(drawing, trials->plant(), trials->loop(), heat.script, study::Options{});
        REQUIRE(shown.has_value());
        const auto at = std::find_if(shown->hottest.begin(), shown->hottest.end(), [&](const study::PlaceHeat& place) {
            return place.place == heat.place && place.part == heat.part;
        });
        REQUIRE(at != shown->hottest.end());
        INFO(heat.script.name);
        CHECK_THAT(at->hottest_C, WithinAbs(heat.hottest_C, 0.05));
    }
}

TEST_CASE("the search finds nothing cooler than trying every pair of gaps in steps of 6 s", "[study][presses]")
{
    const document::Drawing drawing = tradeCoach();
    study::PressesOptions options = oneDay(drawing, 12);
    options.mostPresses = 3;
    const auto study = study::studyPresses(drawing, options);
    REQUIRE(study.has_value());

    const auto trials = study::Trials::make(drawing);
    REQUIRE(trials.has_value());
    const study::PressSearch points(*trials, options, {}, std::nullopt, [](int) {});
    std::vector<study::Trial> all;
    for (double second = 0; second <= 48; second += 6) {
        for (double third = 0; third <= 48; third += 6) {
            study::PressPoint point = points.plainPoint();
            point.volts = 12;
            point.ambient_C = point.supply_C;
            point.plan.gaps_s = {2, second, third};
            all.push_back(points.trial(point));
        }
    }
    study::Options fine;
    fine.curves = false;
    const auto results = trials->run(all, fine);
    REQUIRE(results.has_value());
    for (const study::WorstHeat& heat : study->worst) {
        double brute_C = -1e9;
        for (const study::TrialResult& result : *results) {
            for (const study::PlaceHeat& place : result.result.hottest) {
                brute_C =
                    place.place == heat.place && place.part == heat.part ? std::max(brute_C, place.hottest_C) : brute_C;
            }
        }
        INFO(heat.script.name);
        CHECK(heat.hottest_C >= brute_C - 0.15);  // a tenth of a kelvin: the error of the cells
    }
}

TEST_CASE("a coach whose third press scalds and its twin with high limit, refusal and wait that does not",
          "[study][presses]")
{
    const document::Drawing drawing = tradeCoach();
    study::PressesOptions options = oneDay(drawing, 12);
    options.mostPresses = 3;
    const auto open = study::studyPresses(drawing, options);
    const auto safe = study::studyPresses(protectedTwin(drawing), options);
    REQUIRE(open.has_value());
    REQUIRE(safe.has_value());
    CHECK(us::fahrenheit(*open->asDrawn.outlets_C) > 140);  // a serious burn within 6 s: US CPSC document 5098
    CHECK(*safe->asDrawn.outlets_C < study::kOutletLimit_C);
}

TEST_CASE("a search that is stopped says so", "[study][presses]")
{
    std::stop_source stop;
    stop.request_stop();
    study::PressesOptions options;
    options.stop = stop.get_token();
    const auto study = study::studyPresses(tradeCoach(), options);
    REQUIRE_FALSE(study.has_value());
    CHECK_FALSE(study.error().what.empty());
}

TEST_CASE("after the wait that was found, three presses keep the outlets' limit", "[study][presses]")
{
    document::Drawing drawing = tradeCoach();
    drawing.cases[0].start_C = 10;
    drawing.cases[0].ambient_C = 10;
    study::PressesOptions options = oneDay(drawing, 12);
    options.mostPresses = 3;
    options.safeWait = true;
    options.longestWait_s = 3600;
    options.coldEntryLimit_C = 60;  // asks about the outlets only
    const auto study = study::studyPresses(drawing, options);
    REQUIRE(study.has_value());
    REQUIRE(study->wait.has_value());
    CHECK(us::fahrenheit(study->wait->firstOutlets_C) < 120);
    REQUIRE(study->wait->outlets_s.has_value());
    CHECK(*study->wait->outlets_s > 30);

    const auto trials = study::Trials::make(drawing);
    REQUIRE(trials.has_value());
    const study::PressSearch points(*trials, options, {}, std::nullopt, [](int) {});
    for (const double share : {1.0, 0.7}) {
        study::PressPoint point = points.plainPoint();
        point.volts = 12;
        point.ambient_C = point.supply_C = 10;
        point.plan.gaps_s = {2, share * *study->wait->outlets_s, share * *study->wait->outlets_s};
        const auto results = trials->run(std::vector<study::Trial>{points.trial(point)}, study::Options{});
        REQUIRE(results.has_value());
        double outlets_C = -1e9;
        for (const study::PlaceHeat& place : results->front().result.hottest) {
            outlets_C = place.place == study::HeatPlace::OutletHot ? std::max(outlets_C, place.hottest_C) : outlets_C;
        }
        CAPTURE(share, *study->wait->outlets_s, outlets_C);
        CHECK((outlets_C <= study::kOutletLimit_C) == (share == 1.0));
    }
}
