// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>

#include "study/stop.h"
#include "study/trade_coach.h"
#include "support/catch.h"

using namespace tapward;
using study::StopKind;
using test::set;
using test::tradeCoach;

namespace {

study::StopChoice choiceOf(std::optional<double> volume_m3, std::optional<double> time_s,
                           std::optional<double> temperature_C, double longest_s)
{
    study::StopChoice choice;
    choice.volume_m3 = volume_m3;
    choice.time_s = time_s;
    choice.temperature_C = temperature_C;
    choice.longestRun_s = longest_s;
    return choice;
}

}  // namespace

TEST_CASE("a stop is put into the controller with its values, inside its fields, the others switched off",
          "[study][stop]")
{
    document::Drawing drawing = tradeCoach();
    set(drawing, "C1", "longest_run_s", 180.0);
    set(drawing, "C1", "stop_by_time", true);
    const auto box = [](const document::Drawing& now) { return document::values(*now.findTag("C1")); };
    const document::Drawing volume = study::withStop(drawing, choiceOf(2e-3, {}, {}, 100));
    CHECK(box(volume).flag("stop_by_volume"));
    CHECK_FALSE(box(volume).flag("stop_by_time"));
    CHECK_FALSE(box(volume).flag("stop_by_temperature"));
    CHECK(box(volume).number("stop_volume_m3") == 2e-3);
    CHECK(box(volume).number("longest_run_s") == 180);  // long enough
    const document::Drawing time = study::withStop(drawing, choiceOf({}, 75, {}, 75));
    CHECK_FALSE(box(time).flag("stop_by_volume"));
    CHECK(box(time).flag("stop_by_time"));
    CHECK(box(time).number("stop_time_s") == 75);
    const document::Drawing warm = study::withStop(drawing, choiceOf(3e-3, {}, 43, 240.5));
    CHECK(box(warm).flag("stop_by_volume"));
    CHECK(box(warm).flag("stop_by_temperature"));
    CHECK(box(warm).number("stop_temperature_C") == 43);
    CHECK(box(warm).number("stop_volume_m3") == 3e-3);
    // The run timer must be above the longest run: a tenth more, in whole seconds. None stays none.
    CHECK(box(warm).number("longest_run_s") == 265);  // 1.1 x 240.5 = 264.55
    set(drawing, "C1", "longest_run_s", 0.0);
    CHECK(box(study::withStop(drawing, choiceOf(3e-3, {}, 43, 240.5))).number("longest_run_s") == 0);
    set(drawing, "C1", "longest_run_s", 180.0);
    CHECK(box(study::withStop(drawing, choiceOf(1e-9, 9e9, 200, 9e9))).number("stop_volume_m3") == 1e-5);
    CHECK(box(study::withStop(drawing, choiceOf(9, 9e9, 200, 9e9))).number("stop_volume_m3") == 1);
    CHECK(box(study::withStop(drawing, choiceOf(9, 9e9, 200, 9e9))).number("stop_time_s") == 7200);
    CHECK(box(study::withStop(drawing, choiceOf(9, 9e9, 200, 9e9))).number("stop_temperature_C") == 95);
    CHECK(box(study::withStop(drawing, choiceOf(9, -1, -20, 9e9))).number("stop_temperature_C") == 5);
    CHECK(box(study::withStop(drawing, choiceOf(9, -1, -20, 9e9))).number("stop_time_s") == 0);
    CHECK(box(study::withStop(drawing, choiceOf(9, 9e9, 200, 9e9))).number("longest_run_s") == 7200);
    // Without a controller there is nothing to set.
    for (document::Part& part : drawing.parts) {
        part.stage = part.kind == "controller" ? document::Stage::Removed : part.stage;
    }
    CHECK(study::withStop(drawing, choiceOf(2e-3, {}, {}, 100)) == drawing);
}

TEST_CASE("with nothing in doubt the suggestion does what it says when it is run itself", "[study][stop]")
{
    // Every sample is the drawing itself, so shares are none or all; the stop lies between target and limits.
    document::Drawing drawing = tradeCoach();
    study::StopOptions options;
    options.samples = 1;  // 16 at least
    options.confirmations = 2;
    options.ranges = std::vector<study::Range>();
    options.threads = 2;
    int last = 0, all = 0;
    options.progress = [&](int done, int of) {
        last = done;
        all = of;
    };
    const auto study = study::suggestStop(drawing, options);
    REQUIRE(study.has_value());
    CHECK(study->samples == 16);
    CHECK(last == 18);
    CHECK(all == 18);
    CHECK(study->caseName == drawing.cases[0].name);
    CHECK(study->target_C == drawing.cases[0].target_C);
    CHECK(study->limits.tap_C == study::kOutletLimit_C);
    CHECK(study->heaterOutletLimit_C == document::values(*drawing.findTag("WH1")).number("outlet_limit_C"));
    CHECK(study->pumpLimit_C == document::values(*drawing.findTag("P1")).number("temperature_limit_C"));
    CHECK(study->lights == 1);
    for (std::size_t k = 0; k < 4; ++k) {
        CHECK(study->choices[k].kind == static_cast<StopKind>(k));
        CHECK(study->choices[k].both == 1);
    }
    REQUIRE(study->best());
    CHECK(study->best()->kind == StopKind::VolumeOrTemperature);
    CHECK(study->confirmed == 2);
    CHECK(study->confirmedReaches == 1);
    CHECK(study->confirmedKeeps == 1);
    CHECK(study->confirmedBoth == 1);
    CHECK(study->confirmedWorstTap_C >= study->target_C);
    CHECK(study->confirmedWorstTap_C <= 48.9);
    CHECK(study->influences.empty());

    // Where the pump is rated for less than the target needs, no stop keeps every limit, and none is suggested.
    set(drawing, "P1", "temperature_limit_C", study->target_C - 3);
    options.confirmations = 0;
    const auto none = study::suggestStop(drawing, options);
    REQUIRE(none.has_value());
    CHECK_FALSE(none->best());
    CHECK(none->reason.text == "{0} at the tap is above the {1} the pumps are rated for.");
    CHECK(none->reason.arguments[0] == Argument(Measure{study->target_C, Quantity::Temperature}));
    CHECK(none->reason.arguments[1] == Argument(Measure{study->target_C - 3, Quantity::Temperature}));
    REQUIRE(none->possibleTarget_C);  // half a kelvin below the rating at most
    CHECK(*none->possibleTarget_C <= study->target_C - 3);
    CHECK(*none->possibleTarget_C > study->target_C - 4.5);
    CHECK(none->confirmed == 0);
    CHECK(none->lights == 1);
    for (const study::StopChoice& choice : none->choices) {
        CHECK_FALSE(choice.notPossible.empty());
    }
}
