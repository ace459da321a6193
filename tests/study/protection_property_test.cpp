// SPDX-License-Identifier: GPL-3.0-or-later
#include <rapidcheck.h>

#include "document/file.h"
#include "study/presses.h"
#include "study/trade_coach.h"
#include "support/catch.h"

using namespace tapward;
using test::oneDay;
using test::set;
using test::tradeCoach;

TEST_CASE("switching a protection on never raises a worst temperature", "[study][presses][property]")
{
    // Whatever the run control's protections do, a hand at the button can do at the same instants, and the answer
    // without one has also run that. What is left is a timer that ends a step where a hand does not: seen to make
    // 0.004 K. (The mixing valve is none of them: this coach has none.)
    constexpr double kSteps_K = 0.05;
    // A coach takes half a second; none is shrunk, for a smaller one would take a whole search again.
    constexpr int kCoaches = 10;
    int coaches = 0;
    CHECK(rc::check("on is never hotter than off", [&coaches] {
        if (++coaches > kCoaches) {
            return;
        }
        document::Drawing drawing = tradeCoach();
        const auto pick = [](double least, double most) {
            return least + (most - least) * *rc::gen::inRange(0, 101) / 100.0;
        };
        set(drawing, "C1", "stop_volume_m3", pick(0.4, 2) * us::kGallon);
        set(drawing, "C1", "longest_run_s", *rc::gen::arbitrary<bool>() ? pick(30, 200) : 0.0);
        set(drawing, "C1", "cool_down_wait_s", *rc::gen::arbitrary<bool>() ? pick(30, 900) : 0.0);
        set(drawing, "C1", "stop_by_temperature", *rc::gen::arbitrary<bool>());
        set(drawing, "C1", "stop_temperature_C", pick(35, 60));
        set(drawing, "C1", "refuse_when_warm", *rc::gen::arbitrary<bool>());
        set(drawing, "C1", "high_limit", *rc::gen::arbitrary<bool>());
        set(drawing, "C1", "limit_sensor", std::to_string(drawing.findTag("TE1")->id));
        set(drawing, "C1", "high_limit_C", pick(40, 70));
        set(drawing, "C1", "inlet_lockout_C", pick(30, 60));
        study::PressesOptions options = oneDay(drawing, pick(11, 14));
        options.mostPresses = 3;
        options.gaps_s = {0, 60};
        options.protections = true;
        options.resolution = study::searchOptions();
        const auto study = study::studyPresses(drawing, options);
        RC_ASSERT(study.has_value());
        for (const study::ProtectionEffect& effect : study->protections) {
            if (!effect.tried) {
                continue;
            }
            const study::Hottest& on = effect.counted ? study->asDrawn : effect.other;
            const study::Hottest& off = effect.counted ? effect.other : study->asDrawn;
            RC_LOG() << study::title(effect.protection).english() << " counted " << effect.counted << " outlet "
                     << *on.heaterOutlet_C << " / " << *off.heaterOutlet_C << " outlets " << *on.outlets_C << " / "
                     << *off.outlets_C << " cold " << *on.coldOutlets_C << " / " << *off.coldOutlets_C << "\n";
            RC_ASSERT(*on.heaterOutlet_C <= *off.heaterOutlet_C + kSteps_K);
            RC_ASSERT(*on.outlets_C <= *off.outlets_C + kSteps_K);
            RC_ASSERT(*on.heaterInlet_C <= *off.heaterInlet_C + kSteps_K);
            RC_ASSERT(*on.coldOutlets_C <= *off.coldOutlets_C + kSteps_K);
        }
    }));
}
