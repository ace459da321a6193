// SPDX-License-Identifier: GPL-3.0-or-later
#include "study/press_search.h"

#include <algorithm>
#include <cmath>
#include <set>

#include "study/safe_wait.h"
#include "study/trade_coach.h"
#include "support/catch.h"

using namespace tapward;
using document::ActionKind;
using study::HeatPlace;
using study::PressPoint;
using test::set;
using test::tradeCoach;

namespace {

/// The drawing made ready once and a search over it.
struct Ready {
    document::Drawing drawing;
    study::PressesOptions options;
    study::Trials trials;
    int counted = 0;

    Ready(document::Drawing coach, study::PressesOptions wanted)
        : drawing(std::move(coach)), options(std::move(wanted)), trials(make(drawing))
    {
    }
    static study::Trials make(const document::Drawing& drawing)
    {
        auto made = study::Trials::make(drawing);
        REQUIRE(made.has_value());
        return std::move(*made);
    }
    study::PressSearch search()
    {
        return {trials, options, {}, std::nullopt, [this](int cases) { counted += cases; }};
    }
};

study::PressesOptions two(int presses)
{
    study::PressesOptions options;
    options.mostPresses = presses;
    options.gaps_s = {0, 40};
    options.volts = {11, 14, "the test"};
    options.supply_C = {10, 25, "the test"};
    options.ambient_C = {12, 30, "the test"};
    return options;
}

template <class Wanted>
long count(const std::vector<PressPoint>& points, Wanted wanted)
{
    return std::count_if(points.begin(), points.end(), wanted);
}

}  // namespace

TEST_CASE("the plain point is the drawing's own day, pressed at the button without a gap", "[study][presses]")
{
    document::Drawing drawing = tradeCoach();
    document::Case before = drawing.cases[0];
    before.name = "Today";
    before.view = document::View::Before;
    before.start_C = 1;
    drawing.cases[0].supply_C = 17;
    drawing.cases[0].ambient_C = 33;
    drawing.cases.insert(drawing.cases.begin(), before);
    {
        Ready ready(drawing, two(4));
        const PressPoint plain = ready.search().plainPoint();
        CHECK(plain.volts == 12);  // the battery's
        CHECK(plain.supply_C == 17);
        CHECK(plain.ambient_C == 33);
        CHECK_FALSE(plain.pumpSupplies);
        CHECK(plain.plan.pressed == drawing.findTag("PB1")->id);
        CHECK(plain.plan.gaps_s == std::vector<double>{2, 0, 0, 0});
        CHECK(plain.plan.drawAt == document::kNoPart);
        CHECK(plain.plan.openAt == document::kNoPart);
        // As a case: the volts, the water, the bay, and the supply that is drawn.
        const study::Trial trial = ready.search().trial(plain);
        CHECK(trial.script.start_C == 17);
        CHECK(trial.script.supply_C == 17);
        CHECK(trial.script.ambient_C == 33);
        REQUIRE(trial.script.actions.size() == 2);
        CHECK(trial.script.actions[0].kind == ActionKind::SetVoltage);
        CHECK(trial.script.actions[0].value == 12);
        CHECK(trial.script.actions[1].kind == ActionKind::UseCity);
        CHECK(trial.script.actions[1].value == 1);
        CHECK(trial.script.actions[1].at_s == 0);
        REQUIRE(trial.plan.has_value());
        CHECK(trial.plan->gaps_s == plain.plan.gaps_s);
        PressPoint pumped = plain;
        pumped.pumpSupplies = true;
        CHECK(ready.search().trial(pumped).script.actions[1].kind == ActionKind::UsePump);
    }
    // Values a case leaves open are those of its start.
    drawing.cases[1].supply_C.reset();
    drawing.cases[1].ambient_C.reset();
    drawing.cases[1].start_C = 19;
    Ready ready(drawing, two(99));
    CHECK(ready.search().plainPoint().supply_C == 19);
    CHECK(ready.search().plainPoint().ambient_C == 19);
    CHECK(ready.search().plainPoint().plan.gaps_s.size() == 12);  // the most there are
    Ready none(drawing, two(0));
    CHECK(none.search().plainPoint().plan.gaps_s.size() == 1);
    // Without a button the controller is pressed.
    for (document::Part& part : drawing.parts) {
        part.stage = part.kind == "push_button" ? document::Stage::Removed : part.stage;
    }
    Ready boxed(drawing, two(2));
    CHECK(boxed.search().plainPoint().plan.pressed == drawing.findTag("C1")->id);
}

TEST_CASE("a coach on its demand pump alone is searched on the pump", "[study][presses]")
{
    document::Drawing drawing = tradeCoach();
    document::Part pump;
    pump.id = drawing.nextId++;
    pump.kind = "demand_pump";
    pump.tag = "DP1";
    drawing.parts.push_back(pump);
    Ready both(drawing, two(2));
    CHECK_FALSE(both.search().plainPoint().pumpSupplies);
    for (document::Part& part : drawing.parts) {
        part.stage = part.kind == "city_inlet" ? document::Stage::Removed : part.stage;
    }
    Ready alone(drawing, two(2));
    const PressPoint plain = alone.search().plainPoint();
    CHECK(plain.pumpSupplies);
    CHECK(alone.search().trial(plain).script.actions[1].kind == ActionKind::UsePump);
    drawing.parts.back().stage = document::Stage::Removed;
    Ready neither(drawing, two(2));
    CHECK_FALSE(neither.search().plainPoint().pumpSupplies);
    CHECK(neither.search().trial(plain).script.actions.size() == 1);
}

TEST_CASE("two points are the same only when all of them is", "[study][presses]")
{
    PressPoint one;
    one.plan.gaps_s = {2, 0};
    CHECK(one == one);
    const auto differs = [&](auto change) {
        PressPoint other = one;
        change(other);
        return !(other == one);
    };
    CHECK(differs([](PressPoint& p) { p.volts += 1; }));
    CHECK(differs([](PressPoint& p) { p.supply_C += 1; }));
    CHECK(differs([](PressPoint& p) { p.ambient_C += 1; }));
    CHECK(differs([](PressPoint& p) { p.pumpSupplies = true; }));
    CHECK(differs([](PressPoint& p) { p.plan.gaps_s.back() = 1; }));
    CHECK(differs([](PressPoint& p) { p.plan.drawAt = 3; }));
    CHECK(differs([](PressPoint& p) { p.plan.drawHotShare = 0.5; }));
    CHECK(differs([](PressPoint& p) { p.plan.openAt = 3; }));
    CHECK(differs([](PressPoint& p) { p.plan.openHotShare = 0.5; }));
    CHECK(differs([](PressPoint& p) { p.plan.openFromPress = true; }));
    CHECK(differs([](PressPoint& p) { p.plan.openDelay_s = 5; }));
}

TEST_CASE("a point is cut to the presses it takes, and watched to the end of the last", "[study][presses]")
{
    study::PressBest best;
    best.point.plan.gaps_s = {2, 10, 20, 30};
    best.presses = 2;
    const PressPoint cut = study::PressSearch::trimmed(best);
    CHECK(cut.plan.gaps_s == std::vector<double>{2, 10});
    CHECK(cut.plan.settle_s >= 60);  // water standing between two runs is still watched
    best.presses = 4;
    CHECK(study::PressSearch::trimmed(best) == best.point);
    best.presses = 0;  // hottest before any press
    CHECK(study::PressSearch::trimmed(best) == best.point);
    best.presses = 2;
    best.point.plan.openAt = 8;  // an opening at the end needs all of them
    CHECK(study::PressSearch::trimmed(best) == best.point);
}

TEST_CASE("the search tries both ends of every day, each gap, and the draws on the worst days", "[study][presses]")
{
    document::Drawing drawing = tradeCoach();
    const document::PartId tap = drawing.findTag("F1")->id;
    Ready ready(drawing, two(2));
    study::PressSearch search = ready.search();
    REQUIRE_FALSE(search.search(true, {}).has_value());
    const auto& known = search.known();
    CHECK(ready.counted == static_cast<int>(known.size()));  // no point is run twice
    const PressPoint plain = search.plainPoint();
    CHECK(count(known, [&](const PressPoint& p) { return p == plain; }) == 1);
    for (const double volts : {11.0, 14.0}) {
        for (const double supply_C : {10.0, 25.0}) {
            CAPTURE(volts, supply_C);
            CHECK(count(known,
                        [&](const PressPoint& p) {
                            return p.volts == volts && p.supply_C == supply_C && p.ambient_C == 30
                                   && p.plan.gaps_s == std::vector<double>{2, 0};
                        })
                  >= 1);
        }
        // A gap may make another day the worst: both ends with it too.
        CHECK(count(known,
                    [&](const PressPoint& p) {
                        return p.volts == volts && p.supply_C == 25 && p.plan.gaps_s == std::vector<double>{2, 40};
                    })
              >= 1);
    }
    CHECK(count(known, [](const PressPoint& p) { return std::abs(p.volts - 12.5) < 1e-9; }) >= 1);
    // Draws between presses: hot at the loop's tap, cold at a tap with a cold side.
    CHECK(count(known, [&](const PressPoint& p) { return p.plan.drawAt == tap && p.plan.drawHotShare == 1; }) >= 1);
    CHECK(count(known, [&](const PressPoint& p) { return p.plan.drawAt == tap && p.plan.drawHotShare == 0; }) >= 1);
    // At the end the tap is really opened, hot and cold, after the run and in it.
    for (const double share : {1.0, 0.0}) {
        for (const bool fromPress : {false, true}) {
            CHECK(count(known,
                        [&](const PressPoint& p) {
                            return p.plan.openAt == tap && p.plan.openHotShare == share
                                   && p.plan.openFromPress == fromPress;
                        })
                  >= 1);
        }
    }
    // Opened in a run: at the moment that was hottest, counted from the press.
    CHECK(count(known, [](const PressPoint& p) { return p.plan.openFromPress && p.plan.openDelay_s > 0; }) >= 1);
    // Never outside the day, never a gap below nothing.
    for (const PressPoint& p : known) {
        CHECK(p.volts >= 11);
        CHECK(p.volts <= 14);
        CHECK(p.supply_C >= 10);
        CHECK(p.supply_C <= 25);
        CHECK_FALSE(p.pumpSupplies);
        CHECK(*std::min_element(p.plan.gaps_s.begin(), p.plan.gaps_s.end()) >= 0);
        CHECK(p.plan.gaps_s.front() == 2);
    }
    // It goes on around the best: volts between the grid's, gaps beside those asked for.
    CHECK(count(known,
                [](const PressPoint& p) {
                    const double steps = (p.volts - 11) / 0.75;
                    return p.volts != 12 && std::abs(steps - std::round(steps)) > 1e-6;
                })
          >= 2);
    std::set<double> gaps;
    for (const PressPoint& p : known) {
        gaps.insert(p.plan.gaps_s.back());
    }
    CHECK(gaps.size() > 3);

    // What is best of a place is what its point gives when it is run again.
    REQUIRE(search.hottest({HeatPlace::HeaterOutlet}) != nullptr);
    const study::PressBest& best = *search.hottest({HeatPlace::HeaterOutlet});
    const auto again = ready.trials.run(std::vector<study::Trial>{search.trial(best.point)}, study::searchOptions());
    REQUIRE(again.has_value());
    double hottest_C = 0, at_s = 0;
    for (const study::PlaceHeat& heat : again->front().result.hottest) {
        if (heat.place == HeatPlace::HeaterOutlet) {
            hottest_C = heat.hottest_C;
            at_s = heat.at_s;
        }
    }
    CHECK(hottest_C == best.hottest_C);
    // The last press before that moment, and how many there were.
    int presses = 0;
    double last_s = 0;
    for (const document::Action& action : again->front().asRun.actions) {
        if (action.kind == ActionKind::PressButton && action.at_s <= at_s && presses < again->front().presses) {
            ++presses;
            last_s = action.at_s;
        }
    }
    CHECK(best.presses == presses);
    CHECK_THAT(best.sincePress_s, WithinAbs(at_s - last_s, 0.2));
    // Of two places the hotter one; of none, none.
    const double inlet_C = search.hottest({HeatPlace::HeaterInlet})->hottest_C;
    CHECK(inlet_C < best.hottest_C);
    CHECK(search.hottest({HeatPlace::HeaterInlet, HeatPlace::HeaterOutlet})->hottest_C == best.hottest_C);
    CHECK(search.hottest({HeatPlace::HeaterOutlet, HeatPlace::HeaterInlet})->hottest_C == best.hottest_C);
    CHECK(search.hottest({}) == nullptr);

    // A wait is asked on the worst days, with the plain presses.
    const auto days = study::waitDays(search, true);
    REQUIRE_FALSE(days.empty());
    CHECK(days.size() <= 2);
    CHECK(days.front().volts == search.hottest({HeatPlace::OutletHot})->point.volts);
    CHECK(days.front().supply_C == search.hottest({HeatPlace::OutletHot})->point.supply_C);
    CHECK(days.front().ambient_C == search.hottest({HeatPlace::OutletHot})->point.ambient_C);
    CHECK(days.front().plan.openAt == document::kNoPart);
    const study::PressBest& entry = *search.hottest({HeatPlace::Join, HeatPlace::HeaterInlet});
    CHECK(days.back().volts == entry.point.volts);
    CHECK((days.size() == 1)
          == (entry.point.volts == days.front().volts && entry.point.supply_C == days.front().supply_C
              && entry.point.ambient_C == days.front().ambient_C));
    const auto drawn = study::waitDays(search, false);
    REQUIRE(drawn.size() == 1);
    CHECK(drawn.front() == plain);
}

TEST_CASE("draws between presses are tried without a gap and with the middle one", "[study][presses]")
{
    document::Drawing drawing = tradeCoach();
    const document::PartId tap = drawing.findTag("F1")->id;
    study::PressesOptions options = two(2);
    options.gaps_s = {0, 31, 62, 93};
    Ready ready(drawing, options);
    study::PressSearch search = ready.search();
    REQUIRE_FALSE(search.search(true, {}).has_value());
    for (const double gap : options.gaps_s) {
        CAPTURE(gap);
        const auto tried = count(search.known(), [&](const PressPoint& p) {
            return p.plan.drawAt == tap && p.plan.gaps_s == std::vector<double>{2, gap};
        });
        CHECK((tried > 0) == (gap == 0 || gap == 62));
    }
}

TEST_CASE("a quick search keeps to the presses: fewer days, no draws, its seeds first", "[study][presses]")
{
    Ready ready(tradeCoach(), two(2));
    study::PressSearch search = ready.search();
    PressPoint seed = search.plainPoint();
    seed.volts = 13.3;
    seed.plan.gaps_s = {2, 7};
    REQUIRE_FALSE(search.search(false, {seed}).has_value());
    const auto& known = search.known();
    CHECK(known.front() == seed);
    CHECK(count(known,
                [](const PressPoint& p) {
                    return p.plan.drawAt != document::kNoPart || p.plan.openAt != document::kNoPart;
                })
          == 0);
    for (const double volts : {11.0, 12.5, 14.0}) {
        CHECK(count(known, [&](const PressPoint& p) { return p.volts == volts && p.supply_C == 25; }) >= 1);
    }
    CHECK(count(known, [](const PressPoint& p) { return p.supply_C == 10; }) == 0);
    CHECK(count(known, [](const PressPoint& p) { return p.plan.gaps_s.back() == 40; }) >= 1);
    CHECK(known.size() < 10);
}

TEST_CASE("draws are left out where they are not asked for", "[study][presses]")
{
    study::PressesOptions options = two(2);
    options.draws = false;
    options.volts = {12, 12, "the test"};
    options.gaps_s = {0};
    Ready ready(tradeCoach(), options);
    study::PressSearch search = ready.search();
    REQUIRE_FALSE(search.search(true, {}).has_value());
    CHECK(count(search.known(),
                [](const PressPoint& p) {
                    return p.plan.drawAt != document::kNoPart || p.plan.openAt != document::kNoPart;
                })
          == 0);
}
