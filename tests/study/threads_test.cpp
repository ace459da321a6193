// SPDX-License-Identifier: GPL-3.0-or-later
// What the studies do on several threads, in a program of its own where the thread sanitizer watches.
#include "study/faults.h"
#include "study/presses.h"
#include "study/stop.h"
#include "study/trade_coach.h"
#include "study/trials.h"
#include "support/catch.h"

using namespace tapward;
using test::oneDay;
using test::tradeCoach;

namespace {

bool same(const study::StopChoice& a, const study::StopChoice& b)
{
    return a.volume_m3 == b.volume_m3 && a.time_s == b.time_s && a.temperature_C == b.temperature_C && a.both == b.both
           && a.keeps == b.keeps && a.worstTap_C == b.worstTap_C && a.least == b.least && a.most == b.most;
}

}  // namespace

TEST_CASE("trials run on one thread and on two to the same figures, in order", "[study][threads]")
{
    const document::Drawing drawing = tradeCoach();
    std::vector<study::Trial> planned;
    for (int i = 0; i < 3; ++i) {
        for (const document::Case& script : drawing.cases) {
            study::Trial trial;
            trial.script = script;
            trial.script.start_C = 5 + 10 * i;
            planned.push_back(trial);
        }
    }
    const auto one = study::Trials::make(drawing, 1);
    const auto two = study::Trials::make(drawing, 2);
    REQUIRE(one.has_value());
    REQUIRE(two.has_value());
    const auto alone = one->run(planned, study::searchOptions());
    const auto beside = two->run(planned, study::searchOptions());
    REQUIRE(alone.has_value());
    REQUIRE(beside.has_value());
    REQUIRE(alone->size() == planned.size());
    REQUIRE(beside->size() == planned.size());
    for (std::size_t i = 0; i < planned.size(); ++i) {
        const study::CaseResult& a = (*alone)[i].result;
        const study::CaseResult& b = (*beside)[i].result;
        CHECK(a.name == planned[i].script.name);
        CHECK(b.name == planned[i].script.name);
        CHECK(a.steps == b.steps);
        REQUIRE(a.hottest.size() == b.hottest.size());
        for (std::size_t k = 0; k < a.hottest.size(); ++k) {
            CHECK(a.hottest[k].hottest_C == b.hottest[k].hottest_C);
        }
    }
}

TEST_CASE("the same search gives the same answer on one thread and on two", "[study][presses][threads]")
{
    const document::Drawing drawing = tradeCoach();
    study::PressesOptions options = oneDay(drawing, 12.6);
    options.mostPresses = 3;
    options.volts = {11, 13.5, "the test"};
    options.hands = 1;
    const auto one = study::studyPresses(drawing, options);
    options.hands = 2;
    const auto two = study::studyPresses(drawing, options);
    REQUIRE(one.has_value());
    REQUIRE(two.has_value());
    REQUIRE(one->worst.size() == two->worst.size());
    for (std::size_t i = 0; i < one->worst.size(); ++i) {
        CHECK(one->worst[i].hottest_C == two->worst[i].hottest_C);
        CHECK(one->worst[i].script == two->worst[i].script);
    }
    CHECK(one->cases == two->cases);
}

TEST_CASE("every fault has the same answer on one thread and on two", "[study][faults][threads]")
{
    const document::Drawing drawing = tradeCoach();
    study::FaultsOptions options;
    options.resolution = study::searchOptions();
    options.hands = 1;
    const auto one = study::studyFaults(drawing, options);
    options.hands = 2;
    const auto two = study::studyFaults(drawing, options);
    REQUIRE(one.has_value());
    REQUIRE(two.has_value());
    CHECK(one->simulated == two->simulated);
    REQUIRE(one->rows.size() == two->rows.size());
    REQUIRE(one->rows.size() > 40);
    for (std::size_t i = 0; i < one->rows.size(); ++i) {
        INFO(one->rows[i].fault << " of part " << one->rows[i].part);
        CHECK(one->rows[i].part == two->rows[i].part);
        CHECK(one->rows[i].fault == two->rows[i].fault);
        CHECK(one->rows[i].harm == two->rows[i].harm);
        CHECK(one->rows[i].change_K == two->rows[i].change_K);
        CHECK(one->rows[i].worst == two->rows[i].worst);
    }
}

TEST_CASE("one thread and two give the same suggestion to the last bit", "[study][stop][threads]")
{
    const document::Drawing drawing = tradeCoach();
    study::StopOptions options;
    options.samples = 32;
    options.confirmations = 4;
    options.threads = 1;
    int told = 0;
    options.progress = [&](int done, int all) {
        CHECK(all == 36);
        CHECK(done == ++told);
    };
    const auto one = study::suggestStop(drawing, options);
    CHECK(told == 36);
    options.threads = 2;
    options.progress = {};
    const auto two = study::suggestStop(drawing, options);
    REQUIRE(one.has_value());
    REQUIRE(two.has_value());
    for (std::size_t i = 0; i < 4; ++i) {
        CHECK(same(one->choices[i], two->choices[i]));
    }
    CHECK(one->suggested == two->suggested);
    CHECK(one->byVolume.middle == two->byVolume.middle);
    CHECK(one->rankFit == two->rankFit);
    CHECK(one->confirmedBoth == two->confirmedBoth);
    CHECK(one->confirmedWorstTap_C == two->confirmedWorstTap_C);
    // The samples' coarser cells move the water at the tap by less than a degree.
    CHECK(std::abs(one->resolutionError_K) < 0.6);
}
