// SPDX-License-Identifier: GPL-3.0-or-later
#include "study/faults.h"

#include <algorithm>

#include "document/file.h"
#include "study/fault_words.h"
#include "study/simulate.h"
#include "study/trade_coach.h"
#include "support/catch.h"

using namespace tapward;
using Catch::Matchers::WithinAbs;
using test::set;
using test::tradeCoach;

namespace {

const study::FaultRow& row(const study::FaultsStudy& study, document::PartId part, const char* fault)
{
    const auto at = std::find_if(study.rows.begin(), study.rows.end(), [&](const study::FaultRow& one) {
        return one.part == part && one.fault == fault && one.withPart == document::kNoPart;
    });
    REQUIRE(at != study.rows.end());
    return *at;
}

const study::FaultsStudy& coachStudy()
{
    static const document::Drawing drawing = tradeCoach();
    static const auto study = study::studyFaults(drawing);
    REQUIRE(study.has_value());
    return *study;
}

}  // namespace

TEST_CASE("every fault that a present part declares has its row, in words", "[study][faults]")
{
    const document::Drawing drawing = tradeCoach();
    const study::FaultsStudy& study = coachStudy();
    std::size_t declared = 0;
    for (const document::Part& part : drawing.parts) {
        for (const parts::Fault& fault : document::kindOf(part).faults) {
            ++declared;
            const study::FaultRow& found = row(study, part.id, std::string(fault.id).c_str());
            INFO(part.tag << " " << fault.id);
            CHECK_FALSE(found.consequence.empty());
            if (found.run) {
                CHECK_FALSE(found.who.empty());
                CHECK_FALSE(found.shows.empty());
                CHECK_FALSE(found.stops.empty());
                CHECK_FALSE(found.outlets.empty());
            }
        }
    }
    CHECK(declared > 40);
    CHECK(study.rows.size() == declared);
}

TEST_CASE("a fault that cannot be run says why", "[study][faults]")
{
    const document::Drawing drawing = tradeCoach();
    const study::FaultRow& limit = row(coachStudy(), drawing.findTag("C1")->id, "limit_fails");
    CHECK_FALSE(limit.run);  // no high limit is switched on in this coach
    CHECK_FALSE(limit.consequence.empty());
}

TEST_CASE("a failed main stop scalds at the tap and is told so", "[study][faults]")
{
    const document::Drawing drawing = tradeCoach();
    const study::FaultRow& stop = row(coachStudy(), drawing.findTag("C1")->id, "stop_fails");
    REQUIRE(stop.run);
    CHECK(stop.harm == study::Harm::User);
    CHECK(stop.hottest.outlets_C > study::kOutletLimit_C);
    REQUIRE(stop.change_K.has_value());
    CHECK(*stop.change_K > 0);
}

TEST_CASE("a fault's case is named in words when it opens", "[study][faults]")
{
    const document::Drawing drawing = tradeCoach();
    study::FaultRow stop = row(coachStudy(), drawing.findTag("C1")->id, "stop_fails");
    CHECK(study::caseTitle(drawing, stop).starts_with("C1 main stop never trips: "));
    stop.withPart = drawing.findTag("P1")->id;
    stop.withFault = "dead";
    stop.worst.name = "C1 stop_fails, P1 dead: Cold press";
    CHECK(study::caseTitle(drawing, stop) == "C1 main stop never trips, P1 does not turn: Cold press");
}

TEST_CASE("a dead pump or a heater without gas burns nobody", "[study][faults]")
{
    const document::Drawing drawing = tradeCoach();
    const study::FaultRow& gas = row(coachStudy(), drawing.findTag("WH1")->id, "no_gas");
    REQUIRE(gas.run);
    CHECK(gas.harm == study::Harm::Nobody);
    CHECK(*gas.hottest.heaterOutlet_C < 30);
}

TEST_CASE("the case that shows a fault worst, opened, shows its temperature", "[study][faults]")
{
    const document::Drawing drawing = tradeCoach();
    const auto trials = study::Trials::make(drawing);
    REQUIRE(trials.has_value());
    const study::FaultRow& stop = row(coachStudy(), drawing.findTag("C1")->id, "stop_fails");
    const auto shown = study::simulate(drawing, trials->plant(), trials->loop(), stop.worst, study::Options{});
    REQUIRE(shown.has_value());
    double outlets_C = -1e9;
    for (const study::PlaceHeat& heat : shown->hottest) {
        outlets_C = heat.place == study::HeatPlace::OutletHot ? std::max(outlets_C, heat.hottest_C) : outlets_C;
    }
    CHECK_THAT(outlets_C, WithinAbs(*stop.hottest.outlets_C, 0.5));
}

TEST_CASE("an independent high limit ends the run of a welded relay; failed as well, it does not", "[study][faults]")
{
    // A limit in the feed of valve and pumps: common practice, no published source.
    document::Drawing drawing = tradeCoach();
    set(drawing, "C1", "high_limit", true);
    set(drawing, "C1", "high_limit_C", 48.0);
    set(drawing, "C1", "limit_sensor", std::to_string(drawing.findTag("TE1")->id));
    document::Case script = drawing.cases[0];
    script.duration_s = 300;
    const document::PartId box = drawing.findTag("C1")->id;
    const auto fault = [&](const char* id) {
        document::Action action;
        action.kind = document::ActionKind::StartFault;
        action.part = box;
        action.fault = id;
        return action;
    };
    const auto hottestJoin = [&](std::vector<document::Action> actions) {
        script.actions = std::move(actions);
        const auto trials = study::Trials::make(drawing);
        REQUIRE(trials.has_value());
        const auto result = study::simulate(drawing, trials->plant(), trials->loop(), script, study::Options{});
        REQUIRE(result.has_value());
        for (const study::PlaceHeat& heat : result->hottest) {
            if (heat.place == study::HeatPlace::Join) {
                return heat.hottest_C;
            }
        }
        return -1e9;
    };
    const double limited_C = hottestJoin({fault("relay_welded")});
    const double open_C = hottestJoin({fault("relay_welded"), fault("limit_fails")});
    CHECK(limited_C >= 47);
    CHECK(limited_C < 58);
    CHECK(open_C > limited_C + 8);
}

TEST_CASE("each row's worst case starts its own fault, and rows of like faults are told alike", "[study][faults]")
{
    const document::Drawing drawing = tradeCoach();
    const study::FaultsStudy& study = coachStudy();
    CHECK(study.cases
          == std::vector<std::string>{"Cold press", "Three presses in a row", "Hot draw at each outlet in turn",
                                      "Cold draw at each outlet in turn"});
    CHECK(study.simulated > 4 + static_cast<int>(study.rows.size()));
    REQUIRE(study.sound.outlets_C.has_value());
    REQUIRE(study.sound.heaterOutlet_C.has_value());
    CHECK(*study.sound.heaterOutlet_C >= *study.sound.outlets_C - 0.1);
    int run = 0;
    for (const study::FaultRow& one : study.rows) {
        if (!one.run) {
            CHECK(one.worst.actions.empty());
            continue;
        }
        ++run;
        CAPTURE(one.part, one.fault);
        const auto& actions = one.worst.actions;
        const auto start = std::find_if(actions.begin(), actions.end(), [](const document::Action& action) {
            return action.kind == document::ActionKind::StartFault;
        });
        REQUIRE(start != actions.end());
        CHECK(start->part == one.part);
        CHECK(start->fault == one.fault);
        CHECK(one.worst.name.starts_with(drawing.find(one.part)->tag + " " + one.fault + ": "));
        // Against the sound coach: no more than the row's own hottest allows.
        if (one.change_K && one.hottest.heaterOutlet_C) {
            CHECK(*one.change_K >= *one.hottest.heaterOutlet_C - *study.sound.heaterOutlet_C - 1e-9);
        }
    }
    CHECK(run > 30);
    const study::FaultRow& dead = row(study, drawing.findTag("P1")->id, "dead");
    const study::FaultRow& locked = row(study, drawing.findTag("P1")->id, "air_locked");
    CHECK(dead.consequence.text == locked.consequence.text);
    CHECK(dead.hottest.heaterOutlet_C == locked.hottest.heaterOutlet_C);
    // One of two pumps is too weak to light this heater: the loop stays cold.
    CHECK(*dead.change_K < 0.5);
    // No gas: the heater gives nothing above what it was given.
    CHECK(*row(study, drawing.findTag("WH1")->id, "no_gas").change_K < -10);
    // The main stop failed: the longest run ends it, longer and hotter than by volume.
    const study::FaultRow& stop = row(study, drawing.findTag("C1")->id, "stop_fails");
    CHECK(stop.stops.text == "The longest run.");
    CHECK(*stop.change_K > 0.5);
}
