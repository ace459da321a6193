// SPDX-License-Identifier: GPL-3.0-or-later
#include "study/safe_wait.h"

#include <algorithm>
#include <functional>

#include "study/trade_coach.h"
#include "support/catch.h"

using namespace tapward;
using study::WaitHeat;

namespace {

/// A coach made up by hand: what a wait leads to is a formula.
struct MadeUp {
    std::function<double(double)> outlets_C, coldEntry_C;
    double firstOutlets_C = 40, firstColdEntry_C = 30;
    double fineAdds_K = 0;  ///< what the reported resolution gives above the search's
    double longestAsked_s = 0;
    int asked = 0, fineAsked = 0;

    Result<std::vector<WaitHeat>> operator()(const std::vector<double>& waits_s, std::size_t presses, bool fine)
    {
        std::vector<WaitHeat> heats;
        for (const double wait_s : waits_s) {
            const double more_K = fine ? fineAdds_K : 0;
            heats.push_back(presses == 1 ? WaitHeat{firstOutlets_C, firstColdEntry_C}
                                         : WaitHeat{outlets_C(wait_s) + more_K, coldEntry_C(wait_s) + more_K});
            longestAsked_s = std::max(longestAsked_s, wait_s);
            ++asked;
            fineAsked += fine ? 1 : 0;
        }
        return heats;
    }
};

study::PressesOptions limits(double outlets_C, double coldEntry_C, double longest_s = 3600)
{
    study::PressesOptions options;
    options.outletLimit_C = outlets_C;
    options.coldEntryLimit_C = coldEntry_C;
    options.longestWait_s = longest_s;
    return options;
}

study::SafeWait answer(const study::PressesOptions& options, MadeUp& coach)
{
    const auto wait = study::safeWait(options, std::ref(coach));
    REQUIRE(wait.has_value());
    return *wait;
}

double falling(double from_C, double per_s, double wait_s) { return from_C - per_s * wait_s; }

}  // namespace

TEST_CASE("the shortest wait is found within ten seconds, and both limits need the longer one", "[study][presses]")
{
    // Outlets 60 - t/10: at 49 °C after 110 s. Cold entry 50 - t/20: at 40 °C after 200 s. As the first press, within
    // 1 K: 41 °C after 190 s at the outlets, 31 °C after 380 s in the cold line.
    MadeUp coach{[](double s) { return falling(60, 0.1, s); }, [](double s) { return falling(50, 0.05, s); }};
    const study::SafeWait wait = answer(limits(49, 40), coach);
    CHECK(wait.firstOutlets_C == 40);
    CHECK(wait.firstColdEntry_C == 30);
    REQUIRE(wait.outlets_s.has_value());
    REQUIRE(wait.coldEntry_s.has_value());
    REQUIRE(wait.asTheFirst_s.has_value());
    CHECK_THAT(*wait.outlets_s, WithinAbs(115, 5.01));
    CHECK_THAT(*wait.coldEntry_s, WithinAbs(205, 5.01));
    CHECK_THAT(*wait.asTheFirst_s, WithinAbs(385, 5.01));
    CHECK(wait.both_s == wait.coldEntry_s);
    CHECK(wait.outletsReason.empty());
    CHECK(wait.coldEntryReason.empty());
    CHECK(coach.fineAsked >= 4);  // the first press and each of three answers, as reported

    // The other way round: the outlets take longer.
    MadeUp other{[](double s) { return falling(50, 0.05, s); }, [](double s) { return falling(60, 0.1, s); }};
    const study::SafeWait swapped = answer(limits(40, 49), other);
    CHECK_THAT(*swapped.outlets_s, WithinAbs(205, 5.01));
    CHECK_THAT(*swapped.coldEntry_s, WithinAbs(115, 5.01));
    CHECK(swapped.both_s == swapped.outlets_s);
    // The first press' cold entry (30) is the harder one here too: 60 - t/10 at 31 °C after 290 s; the outlets are at
    // 41 °C after 180 s.
    CHECK_THAT(*swapped.asTheFirst_s, WithinAbs(295, 5.01));
}

TEST_CASE("water at the limit keeps it, and no wait is needed where there is nothing to wait for", "[study][presses]")
{
    MadeUp coach{[](double) { return 49.0; }, [](double) { return 40.0; }};
    const study::SafeWait wait = answer(limits(49, 40), coach);
    CHECK(wait.outlets_s == 0);
    CHECK(wait.coldEntry_s == 0);
    CHECK(wait.both_s == 0);
    CHECK_FALSE(wait.asTheFirst_s.has_value());  // never within 1 K of 40 and 30 °C
    MadeUp within{[](double) { return 41.0; }, [](double) { return 31.0; }};
    CHECK(answer(limits(49, 40), within).asTheFirst_s == 0);
    MadeUp over{[](double) { return 41.0; }, [](double) { return 31.1; }};
    CHECK_FALSE(answer(limits(49, 40), over).asTheFirst_s.has_value());
    MadeUp outletsOver{[](double) { return 41.1; }, [](double) { return 31.0; }};
    CHECK_FALSE(answer(limits(49, 40), outletsOver).asTheFirst_s.has_value());
}

TEST_CASE("a wait counts only when every longer one keeps the limit too", "[study][presses]")
{
    // Cool at once and after 300 s, too hot from 60 to 300 s: heat that reaches the outlets late.
    MadeUp coach{[](double s) { return s >= 60 && s < 300 ? 55.0 : 45.0; }, [](double) { return 30.0; }};
    const study::SafeWait wait = answer(limits(49, 40), coach);
    REQUIRE(wait.outlets_s.has_value());
    CHECK_THAT(*wait.outlets_s, WithinAbs(305, 5.01));
}

TEST_CASE("what the search holds for enough is asked again as reported, and made longer until it is",
          "[study][presses]")
{
    // 60 - t/10 in the search, 2 K more as reported: 49 °C after 130 s. Steps of a tenth and 10 s.
    MadeUp coach{[](double s) { return falling(60, 0.1, s); }, [](double) { return 30.0; }};
    coach.fineAdds_K = 2;
    const study::SafeWait wait = answer(limits(49, 40), coach);
    REQUIRE(wait.outlets_s.has_value());
    CHECK(*wait.outlets_s >= 130);
    CHECK(*wait.outlets_s <= 130 * 1.1 + 11);
}

TEST_CASE("waits are not looked for beyond the longest, and none is said to be none", "[study][presses]")
{
    // 60 - t/100: 49 °C after 1,100 s.
    MadeUp slow{[](double s) { return falling(60, 0.01, s); }, [](double s) { return falling(50, 0.01, s); }};
    const study::SafeWait wait = answer(limits(49, 40, 600), slow);
    CHECK(slow.longestAsked_s == 600);
    CHECK_FALSE(wait.outlets_s.has_value());
    CHECK_FALSE(wait.coldEntry_s.has_value());
    CHECK_FALSE(wait.both_s.has_value());
    REQUIRE(wait.outletsReason.arguments.size() == 2);
    CHECK(wait.outletsReason.arguments[0] == Argument(Measure{600, Quantity::Time}));
    CHECK(wait.outletsReason.arguments[1] == Argument(Measure{49, Quantity::Temperature}));
    REQUIRE(wait.coldEntryReason.arguments.size() == 2);
    CHECK(wait.coldEntryReason.arguments[1] == Argument(Measure{40, Quantity::Temperature}));
    // The longest itself is tried.
    MadeUp just{[](double s) { return falling(60, 0.01, s); }, [](double s) { return falling(50, 0.01, s); }};
    const study::SafeWait found = answer(limits(49, 40, 1105), just);
    CHECK_THAT(found.outlets_s.value_or(0), WithinAbs(1102.5, 2.51));
    CHECK_THAT(found.coldEntry_s.value_or(0), WithinAbs(1005, 5.01));
}

TEST_CASE("one press that breaks a limit alone is told: no wait helps, but the other limit has its wait",
          "[study][presses]")
{
    MadeUp coach{[](double s) { return falling(70, 0.1, s); }, [](double s) { return falling(50, 0.05, s); }};
    coach.firstOutlets_C = 52;
    const study::SafeWait wait = answer(limits(49, 40), coach);
    CHECK_FALSE(wait.outlets_s.has_value());
    REQUIRE(wait.outletsReason.arguments.size() == 2);
    CHECK(wait.outletsReason.arguments[0] == Argument(Measure{52, Quantity::Temperature}));
    CHECK(wait.outletsReason.arguments[1] == Argument(Measure{49, Quantity::Temperature}));
    CHECK_THAT(wait.coldEntry_s.value_or(0), WithinAbs(205, 5.01));
    CHECK_FALSE(wait.both_s.has_value());
    // As the first: 53 °C after 170 s, 31 °C after 380 s.
    CHECK_THAT(wait.asTheFirst_s.value_or(0), WithinAbs(385, 5.01));

    MadeUp cold{[](double s) { return falling(60, 0.1, s); }, [](double s) { return falling(50, 0.05, s); }};
    cold.firstColdEntry_C = 41;
    const study::SafeWait other = answer(limits(49, 40), cold);
    CHECK_FALSE(other.coldEntry_s.has_value());
    REQUIRE(other.coldEntryReason.arguments.size() == 2);
    CHECK(other.coldEntryReason.arguments[0] == Argument(Measure{41, Quantity::Temperature}));
    CHECK(other.coldEntryReason.arguments[1] == Argument(Measure{40, Quantity::Temperature}));
    CHECK_THAT(other.outlets_s.value_or(0), WithinAbs(115, 5.01));
    CHECK_FALSE(other.both_s.has_value());

    // At the limit one press breaks nothing.
    MadeUp at{[](double) { return 45.0; }, [](double) { return 35.0; }};
    at.firstOutlets_C = 49;
    at.firstColdEntry_C = 40;
    CHECK(answer(limits(49, 40), at).both_s == 0);
}

TEST_CASE("a search for a wait that is stopped says so, whenever that is", "[study][presses]")
{
    for (int last = 0; last < 14; ++last) {
        int asked = 0;
        MadeUp coach{[](double s) { return falling(60, 0.1, s); }, [](double s) { return falling(50, 0.05, s); }};
        const auto wait = study::safeWait(
            limits(49, 40),
            [&](const std::vector<double>& waits_s, std::size_t presses, bool fine) -> Result<std::vector<WaitHeat>> {
                if (asked++ == last) {
                    return problem("Stopped.", "Start again.");
                }
                return coach(waits_s, presses, fine);
            });
        CAPTURE(last);
        CHECK_FALSE(wait.has_value());
    }
}

TEST_CASE("three presses with a wait, run on the coach, are told by outlet and by what enters the cold line",
          "[study][presses]")
{
    // What is told of one press on the day as drawn is what running that press shows.
    const document::Drawing drawing = test::tradeCoach();
    study::PressesOptions options = test::oneDay(drawing, 12);
    options.longestWait_s = 20;
    options.outletLimit_C = options.coldEntryLimit_C = 20;  // one press breaks them: no waits are looked for
    const auto trials = study::Trials::make(drawing);
    REQUIRE(trials.has_value());
    const study::PressSearch points(*trials, options, {}, std::nullopt, [](int) {});
    int counted = 0;
    const auto wait = study::findSafeWait(*trials, options, points, false, [&](int cases) { counted += cases; });
    REQUIRE(wait.has_value());
    CHECK(counted >= 3);  // one press, and three after each of two waits
    study::PressPoint once = points.plainPoint();
    once.plan.gaps_s = {2};
    study::Options fine = options.resolution;
    fine.curves = false;
    const auto shown = trials->run(std::vector<study::Trial>{points.trial(once)}, fine);
    REQUIRE(shown.has_value());
    double outlets_C = -1e9, entering_C = -1e9;
    for (const study::PlaceHeat& heat : shown->front().result.hottest) {
        double& known_C = heat.place == study::HeatPlace::OutletHot ? outlets_C : entering_C;
        if (heat.place == study::HeatPlace::OutletHot || heat.place == study::HeatPlace::ColdEntry) {
            known_C = std::max(known_C, heat.hottest_C);
        }
    }
    CHECK_THAT(wait->firstOutlets_C, WithinAbs(outlets_C, 1e-9));
    CHECK_THAT(wait->firstColdEntry_C, WithinAbs(entering_C, 1e-9));
    CHECK(wait->firstOutlets_C > 30);
}

TEST_CASE("a wait that is called off runs nothing more", "[study][presses]")
{
    const document::Drawing drawing = test::tradeCoach();
    std::stop_source stop;
    study::PressesOptions options = test::oneDay(drawing, 12);
    options.stop = stop.get_token();
    const auto trials = study::Trials::make(drawing);
    REQUIRE(trials.has_value());
    const study::PressSearch points(*trials, options, {}, std::nullopt, [](int) {});
    int told = 0;
    const auto wait = study::findSafeWait(*trials, options, points, false, [&](int) {
        ++told;  // the first press as reported; the coarse ones come next
        stop.request_stop();
    });
    CHECK_FALSE(wait.has_value());
    CHECK(told == 1);
}
