// SPDX-License-Identifier: GPL-3.0-or-later
#include "study/stop_choose.h"

#include "straight_runs.h"
#include "support/catch.h"

using namespace tapward;
using study::StopKind;
using test::question;
using test::run;

namespace {

/// 20 equal runs of 100 s and 4 L in which the tap warms from 20 to 60 °C: 10 K per litre, 0.4 K/s. The target of
/// 40.1 °C comes at 2.01 L or 50.25 s, the limit of 48.9 °C at 2.89 L or 72.25 s.
std::vector<study::StopRun> equalRuns() { return std::vector<study::StopRun>(20, run({})); }

study::StopQuestion asked()
{
    study::StopQuestion question = test::question();
    question.target_C = 40.1;
    return question;
}

std::array<study::StopChoice, 4> choices(double volume, double time, double temperature, double pair)
{
    std::array<study::StopChoice, 4> all;
    const double both[] = {volume, time, temperature, pair};
    for (std::size_t k = 0; k < 4; ++k) {
        all[k].kind = static_cast<StopKind>(k);
        all[k].both = both[k];
    }
    return all;
}

}  // namespace

TEST_CASE("one stop is put in the middle of the window between the target and the limit", "[study][stop]")
{
    const auto volume = study::bestOf(StopKind::Volume, asked(), equalRuns(), 0.95);
    REQUIRE(volume.notPossible.empty());
    CHECK(volume.kind == StopKind::Volume);
    const double step_m3 = 4e-3 / 160;
    CHECK_THAT(volume.least, WithinAbs(2.01e-3 + step_m3 / 2, step_m3 / 2));
    CHECK_THAT(volume.most, WithinAbs(2.89e-3 - step_m3 / 2, step_m3 / 2));
    CHECK_THAT(*volume.volume_m3, WithinAbs(2.45e-3, step_m3 / 2));
    CHECK_FALSE(volume.time_s.has_value());
    CHECK_FALSE(volume.temperature_C.has_value());
    CHECK(volume.both == 1);

    const auto time = study::bestOf(StopKind::Time, asked(), equalRuns(), 0.95);
    const double step_s = 100.0 / 160;
    REQUIRE(time.time_s.has_value());
    CHECK(time.kind == StopKind::Time);
    CHECK_THAT(*time.time_s, WithinAbs(61.25, step_s / 2));
    CHECK_THAT(time.least, WithinAbs(50.25 + step_s / 2, step_s / 2));
    CHECK_THAT(time.most, WithinAbs(72.25 - step_s / 2, step_s / 2));
    CHECK_FALSE(time.volume_m3.has_value());

    const auto temperature = study::bestOf(StopKind::Temperature, asked(), equalRuns(), 0.95);
    REQUIRE(temperature.temperature_C.has_value());
    CHECK(temperature.kind == StopKind::Temperature);
    CHECK_THAT(*temperature.temperature_C, WithinAbs(44.5, 0.2));
    CHECK_THAT(temperature.least, WithinAbs(40.2, 0.15));
    CHECK_THAT(temperature.most, WithinAbs(48.8, 0.15));
    CHECK_FALSE(temperature.volume_m3.has_value());
}

TEST_CASE("in a warm coach no stop is tried farther than five kelvin below the target", "[study][stop]")
{
    // The sensor reads low: 34.1 °C at the target of 40.1, so every reading from there to 40.2 would do.
    study::StopQuestion warm = asked();
    warm.script.start_C = 38;
    const std::vector<study::StopRun> low(20, run({.reading_C = 48}));
    const auto best = study::bestOf(StopKind::Temperature, warm, low, 0.95);
    REQUIRE(best.notPossible.empty());
    CHECK(best.least > 35.1);
    CHECK(best.least < 35.1 + 0.15);  // 160 steps up to 8 K above the limit of 48.9 °C
}

TEST_CASE("a stop sensor that reads well beside the truth still gets a stop by what it reads", "[study][stop]")
{
    // It reads 7 K more, or 15 K less, than the tap when the water is in its window of 40.1 to 48.9 °C.
    for (const double end_C : {60 + 7 / 0.6, 60 - 15 / 0.6}) {
        std::vector<study::StopRun> runs(20, run({.reading_C = end_C}));
        const auto choice = study::bestOf(StopKind::Temperature, asked(), runs, 0.95);
        CAPTURE(end_C);
        REQUIRE(choice.notPossible.empty());
        // At a tap of 44.5 °C, the middle, 0.6125 of the way is made.
        CHECK_THAT(*choice.temperature_C, WithinAbs(20 + 0.6125 * (end_C - 20), 0.3));
        CHECK(choice.both == 1);
    }
}

TEST_CASE("a sample in twenty may break a limit or miss its stop, two may not", "[study][stop]")
{
    std::vector<study::StopRun> runs = equalRuns();
    const auto hot = run({.inlet_C = 400});  // over the inlet's limit at once
    runs[3] = hot;
    const auto one = study::bestOf(StopKind::Volume, asked(), runs, 0.95);
    CHECK(one.notPossible.empty());
    CHECK_THAT(one.both, WithinAbs(0.95, 1e-12));
    runs[4] = hot;
    const auto two = study::bestOf(StopKind::Volume, asked(), runs, 0.95);
    CHECK_FALSE(two.notPossible.empty());
    // The nearest is told: it keeps 90 % and reaches the target in all (a run too hot reaches it too).
    REQUIRE(two.notPossible.arguments.size() == 3);
    CHECK(two.notPossible.arguments[0] == Argument(Measure{0.95, Quantity::Percent}));
    CHECK(two.notPossible.arguments[1] == Argument(Measure{0.9, Quantity::Percent}));
    CHECK(two.notPossible.arguments[2] == Argument(Measure{1, Quantity::Percent}));

    // Sensors that count nothing: those runs never end.
    runs = equalRuns();
    runs[3] = run({.sensed_m3 = 0, .tap_C = 45});
    CHECK(study::bestOf(StopKind::Volume, asked(), runs, 0.95).notPossible.empty());
    runs[4] = runs[3];
    CHECK_FALSE(study::bestOf(StopKind::Volume, asked(), runs, 0.95).notPossible.empty());
    CHECK(study::bestOf(StopKind::Volume, asked(), runs, 0.90).notPossible.empty());
}

TEST_CASE("without a sensor, or without water that warms, there is no stop and it says why", "[study][stop]")
{
    study::StopQuestion blind = asked();
    blind.hasFlowSensor = false;
    CHECK_FALSE(study::bestOf(StopKind::Volume, blind, equalRuns(), 0.95).notPossible.empty());
    CHECK(study::bestOf(StopKind::Temperature, blind, equalRuns(), 0.95).notPossible.empty());
    CHECK(study::bestOf(StopKind::Time, blind, equalRuns(), 0.95).notPossible.empty());
    CHECK_FALSE(study::bestPair(blind, equalRuns(), 0.95).notPossible.empty());
    blind.hasFlowSensor = true;
    blind.hasStopSensor = false;
    CHECK_FALSE(study::bestOf(StopKind::Temperature, blind, equalRuns(), 0.95).notPossible.empty());
    CHECK(study::bestOf(StopKind::Volume, blind, equalRuns(), 0.95).notPossible.empty());
    CHECK_FALSE(study::bestPair(blind, equalRuns(), 0.95).notPossible.empty());

    const std::vector<study::StopRun> cool(20, run({.reading_C = 39, .tap_C = 39}));
    for (const StopKind kind : {StopKind::Volume, StopKind::Time}) {
        const auto none = study::bestOf(kind, asked(), cool, 0.95);
        CHECK(none.notPossible.text == "The target is reached in no sample.");
        CHECK(none.kind == kind);
    }
    CHECK_FALSE(study::bestPair(asked(), cool, 0.95).notPossible.empty());
}

TEST_CASE("of the stops that do as well within one sample in a hundred the middle one is taken", "[study][stop]")
{
    // 200 runs; in one of them the tap is 2 K hotter at 2.4 L than in the rest, so it leaves the window sooner. That
    // one sample (0.5 %) is no reason to narrow the window; three (1.5 %) are.
    std::vector<study::StopRun> runs(200, run({}));
    const auto hotter = run({.tap_C = 68});  // 48.9 °C at 28.9/48 of 4 L = 2.408 L
    runs[0] = hotter;
    CHECK_THAT(study::bestOf(StopKind::Volume, asked(), runs, 0.95).most, WithinAbs(2.875e-3, 1.3e-5));
    runs[1] = runs[2] = hotter;
    CHECK_THAT(study::bestOf(StopKind::Volume, asked(), runs, 0.95).most, WithinAbs(2.4e-3, 1.3e-5));
}

TEST_CASE("a temperature stop gets the smallest volume behind it that leaves three steps of room", "[study][stop]")
{
    const auto pair = study::bestPair(asked(), equalRuns(), 0.95);
    REQUIRE(pair.notPossible.empty());
    CHECK(pair.kind == StopKind::VolumeOrTemperature);
    CHECK(pair.both == 1);
    // Temperatures 40.1 to 48.9 °C do alone; 60 volumes to 4 L: the first at or above 2.01 L is the 31st, three up
    // the 34th.
    CHECK_THAT(*pair.temperature_C, WithinAbs(44.5, 0.73));  // 48 temperatures: steps of 0.73 K
    CHECK_THAT(*pair.volume_m3, WithinAbs(34 * 4e-3 / 60, 1e-9));
    CHECK_THAT(pair.least, WithinAbs(31 * 4e-3 / 60, 1e-9));
    CHECK_THAT(pair.most, WithinAbs(4e-3, 1e-9));
}

TEST_CASE("where the temperature cannot do alone the volume does, inside its own window", "[study][stop]")
{
    // The stop sensor fell off in every tenth run: it never reads more than 20 °C, and no temperature ends those.
    std::vector<study::StopRun> runs = equalRuns();
    runs[5] = runs[15] = run({.reading_C = 20});
    const auto alone = study::bestOf(StopKind::Temperature, asked(), runs, 0.95);
    CHECK_FALSE(alone.notPossible.empty());
    const auto pair = study::bestPair(asked(), runs, 0.95);
    REQUIRE(pair.notPossible.empty());
    CHECK(pair.both == 1);
    CHECK(pair.comes == 1);
    CHECK(*pair.temperature_C >= 40.1);
    CHECK(*pair.volume_m3 >= 2.01e-3);
    CHECK(*pair.volume_m3 <= 2.89e-3);
    CHECK_THAT(pair.least, WithinAbs(31 * 4e-3 / 60, 1e-9));  // first at or above 2.01 L
    CHECK_THAT(pair.most, WithinAbs(43 * 4e-3 / 60, 1e-9));  // last at or below 2.89 L
}

TEST_CASE("two means are suggested before one that does as well, time last", "[study][stop]")
{
    CHECK(study::suggestedOf(choices(0.9, 0.9, 0.9, 0.9)) == static_cast<int>(StopKind::VolumeOrTemperature));
    CHECK(study::suggestedOf(choices(0.909, 0.9, 0.9, 0.9)) == static_cast<int>(StopKind::VolumeOrTemperature));
    CHECK(study::suggestedOf(choices(0.93, 0.9, 0.9, 0.9)) == static_cast<int>(StopKind::Volume));
    CHECK(study::suggestedOf(choices(0.9, 0.9, 0.93, 0.9)) == static_cast<int>(StopKind::Temperature));
    CHECK(study::suggestedOf(choices(0.9, 0.93, 0.9, 0.9)) == static_cast<int>(StopKind::Time));
    CHECK(study::suggestedOf(choices(0.93, 0.935, 0.935, 0.9)) == static_cast<int>(StopKind::Volume));
    CHECK(study::suggestedOf(choices(0, 0.935, 0.93, 0)) == static_cast<int>(StopKind::Temperature));
    auto some = choices(0.5, 0.7, 0.99, 0.99);
    some[2].notPossible = some[3].notPossible = "No such stop.";
    CHECK(study::suggestedOf(some) == static_cast<int>(StopKind::Time));
    some[0].notPossible = some[1].notPossible = "No such stop.";
    CHECK(study::suggestedOf(some) == -1);
}
