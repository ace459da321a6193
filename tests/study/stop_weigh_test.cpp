// SPDX-License-Identifier: GPL-3.0-or-later
#include "study/stop_weigh.h"

#include <cmath>

#include "straight_runs.h"
#include "support/catch.h"

using namespace tapward;
using study::StopKind;
using test::question;
using test::run;

namespace {

study::StopChoice volumeStop(double m3)
{
    study::StopChoice choice;
    choice.volume_m3 = m3;
    return choice;
}

study::StopChoice timeStop(double s)
{
    study::StopChoice choice;
    choice.kind = StopKind::Time;
    choice.time_s = s;
    return choice;
}

}  // namespace

TEST_CASE("a run is held against the target and every limit, each on its own", "[study][stop]")
{
    // By definition: the target is reached at it; a limit is broken above it, and one that is not known (0) never.
    study::StopQuestion asked = question();
    asked.pumpLimit_C = 46;
    asked.outletLimit_C = 70;
    const auto judged = [&](double tap_C, double inlet_C, double outlet_C) {
        return study::judge(asked, tap_C, inlet_C, outlet_C);
    };
    CHECK(judged(40, 20, 20).reaches);
    CHECK_FALSE(judged(39.99, 20, 20).reaches);
    CHECK(judged(46, 40, 70).keeps);
    CHECK_FALSE(judged(46.01, 20, 20).keeps);  // the pump's
    CHECK_FALSE(judged(30, 40.01, 20).keeps);
    CHECK_FALSE(judged(30, 20, 70.01).keeps);
    asked.pumpLimit_C = 60;
    CHECK(judged(48.9, 20, 20).keeps);
    CHECK_FALSE(judged(48.91, 20, 20).keeps);  // the tap's
    asked.pumpLimit_C = asked.outletLimit_C = 0;
    CHECK(judged(45, 20, 90).keeps);
    CHECK(judged(45, std::nan(""), 20).keeps);  // no water entered the heater

    // The same on a run, half way along: 20 °C and half of what comes on top.
    asked.outletLimit_C = 70;
    const auto half = [&](double tap_C, double inlet_C, double outlet_C) {
        test::Straight end;
        end.tap_C = tap_C;
        end.inlet_C = inlet_C;
        end.outlet_C = outlet_C;
        return study::judge(asked, run(end), 50);
    };
    CHECK(half(60.1, 59.9, 119).keeps);
    CHECK(half(60.1, 59.9, 119).reaches);
    CHECK_FALSE(half(59.9, 20, 20).reaches);
    CHECK_FALSE(half(78, 20, 20).keeps);
    CHECK_FALSE(half(60.1, 60.1, 20).keeps);
    CHECK_FALSE(half(60.1, 20, 121).keeps);
}

TEST_CASE("shares, temperatures and the longest run of a stop are those counted by hand", "[study][stop]")
{
    // A volume stop at 1 L on four runs of 100 s:
    //   sensed at the end  1.25 L  stops at 80 s, tap 20 + 0.8 x 30 = 44: reaches, keeps
    //                      2 L     stops at 50 s, tap 20 + 0.5 x 80 = 60: reaches, too hot
    //                      0.8 L   never stops,   tap 38 at the end:      keeps
    //                      1.05 L  stops at 95 s, tap 20, burner out:     keeps
    const std::vector<study::StopRun> runs{
        run({.sensed_m3 = 1.25e-3, .tap_C = 50}), run({.sensed_m3 = 2e-3, .tap_C = 100}),
        run({.sensed_m3 = 0.8e-3, .tap_C = 38}), run({.sensed_m3 = 1e-3 / 0.95, .tap_C = 20, .lit = false})};
    study::StopChoice choice = volumeStop(1e-3);
    study::weigh(question(), runs, choice);
    CHECK(choice.reaches == 2.0 / 4);
    CHECK(choice.keeps == 3.0 / 4);
    CHECK(choice.both == 1.0 / 4);
    CHECK_THAT(choice.comes, WithinAbs(2.0 / 3, 1e-12));      // of the lit ones
    CHECK_THAT(choice.bothIfLit, WithinAbs(1.0 / 3, 1e-12));
    CHECK_THAT(choice.bothError, WithinAbs(std::sqrt(0.25 * 0.75 / 4), 1e-12));  // binomial
    CHECK_THAT(choice.longestRun_s, WithinAbs(80, 1e-9));
    // 20, 38, 44, 60: a tenth of the way is 0.3 of the first step, nine tenths 0.7 of the last.
    CHECK_THAT(choice.tapLow_C, WithinAbs(20 + 0.3 * 18, 1e-9));
    CHECK_THAT(choice.tapMiddle_C, WithinAbs(41, 1e-9));
    CHECK_THAT(choice.tapHigh_C, WithinAbs(44 + 0.7 * 16, 1e-9));
    CHECK_THAT(choice.worstTap_C, WithinAbs(60, 1e-9));
    CHECK_THAT(choice.worstOvershoot_K, WithinAbs(20, 1e-9));

    // Weighed again with a stop no run comes to: nothing of the first answer is left.
    choice.volume_m3 = 9e-3;
    study::weigh(question(), runs, choice);
    CHECK(choice.comes == 0);
    CHECK(choice.longestRun_s == 0);

    // None lights: no run is lit that would have to come to its stop.
    study::StopChoice cold = volumeStop(1e-3);
    study::weigh(question(), {runs[3]}, cold);
    CHECK(cold.comes == 1);
    CHECK(cold.bothIfLit == 0);
}

TEST_CASE("a run ends at the first of its stops, between moments in a straight line", "[study][stop]")
{
    // 4 L and 20 to 60 °C in 100 s: 1 L at 25 s, 40 °C at 50 s.
    const study::StopRun straight = run({});
    study::StopChoice choice = volumeStop(1e-3);
    REQUIRE(study::stopTime(straight, choice).has_value());
    CHECK_THAT(*study::stopTime(straight, choice), WithinAbs(25, 1e-9));
    choice.temperature_C = 40;
    CHECK_THAT(*study::stopTime(straight, choice), WithinAbs(25, 1e-9));
    choice.temperature_C = 24;
    CHECK_THAT(*study::stopTime(straight, choice), WithinAbs(10, 1e-9));
    choice.time_s = 7;
    CHECK_THAT(*study::stopTime(straight, choice), WithinAbs(7, 1e-9));
    choice.time_s = 70;
    CHECK_THAT(*study::stopTime(straight, choice), WithinAbs(10, 1e-9));
    // Already there at the press; there at the very end; beyond it.
    choice.temperature_C = 15;
    CHECK(study::stopTime(straight, choice) == 0);
    CHECK(study::stopTime(straight, timeStop(100)) == 100);
    CHECK_FALSE(study::stopTime(straight, timeStop(100.5)).has_value());
    CHECK_THAT(study::stopTime(straight, volumeStop(4e-3)).value_or(-1), WithinAbs(100, 1e-9));
    CHECK_FALSE(study::stopTime(straight, volumeStop(4.1e-3)).has_value());
    // Without its sensor a stop never comes.
    study::StopRun blind = straight;
    blind.sensed_m3.clear();
    blind.reading_C.clear();
    study::StopChoice both = volumeStop(1e-3);
    both.temperature_C = 24;
    CHECK_FALSE(study::stopTime(blind, both).has_value());
}

TEST_CASE("a column is read between two moments and held at its ends", "[study][stop]")
{
    study::StopRun bent = run({});
    bent.time_s = {10, 20, 40};
    const std::vector<double> column{1, 3, 11};
    CHECK(study::valueAt(bent, column, 5) == 1);
    CHECK(study::valueAt(bent, column, 10) == 1);
    CHECK_THAT(study::valueAt(bent, column, 15), WithinAbs(2, 1e-12));
    CHECK(study::valueAt(bent, column, 20) == 3);
    CHECK_THAT(study::valueAt(bent, column, 35), WithinAbs(9, 1e-12));  // three quarters of the way from 3 to 11
    CHECK(study::valueAt(bent, column, 40) == 11);
    CHECK(study::valueAt(bent, column, 99) == 11);
}

TEST_CASE("a quantile lies between neighbours in a straight line", "[study][stop]")
{
    std::vector<double> values{3, 1, 2, 5};
    CHECK(study::quantile(values, 0) == 1);
    CHECK_THAT(study::quantile(values, 0.5), WithinAbs(2.5, 1e-12));
    CHECK_THAT(study::quantile(values, 0.9), WithinAbs(3 + 0.7 * 2, 1e-12));  // 2.7 of 3 steps
    CHECK(study::quantile(values, 1) == 5);
    std::vector<double> alone{7};
    CHECK(study::quantile(alone, 0.9) == 7);
}

TEST_CASE("a sensor with a lag trails a ramp by its lag times the rate", "[study][stop]")
{
    // First order, water rising by 2 K/s from rest: reading = water - 2 lag (1 - exp(-t / lag)), a textbook answer.
    const double lag_s = 4;
    std::vector<double> time_s, water_C;
    for (const double t : {0.0, 1.0, 1.5, 4.0, 9.0, 60.0}) {
        time_s.push_back(t);
        water_C.push_back(20 + 2 * t);
    }
    const std::vector<double> reading_C = study::lagged(time_s, water_C, lag_s);
    REQUIRE(reading_C.size() == time_s.size());
    for (std::size_t i = 0; i < time_s.size(); ++i) {
        CHECK_THAT(reading_C[i], WithinAbs(water_C[i] - 2 * lag_s * (1 - std::exp(-time_s[i] / lag_s)), 1e-9));
    }
    // Two moments at one time: nothing has passed. No lag: the water itself.
    const std::vector<double> twice_C = study::lagged({0, 0, 4}, {20, 60, 60}, lag_s);
    CHECK(twice_C[1] == 20);
    CHECK_THAT(twice_C[2], WithinAbs(60 - 40 * std::exp(-1), 1e-9));
    CHECK_THAT(study::lagged({0, 1}, {20, 60}, 0)[1], WithinAbs(60, 0.1));
}

TEST_CASE("ranks are regressed as on paper, equals sharing theirs", "[study][stop]")
{
    // Ranks of {1, 1, 2, 2} are -1, -1, 1, 1 and those of {1, 2, 3, 4} -3, -1, 1, 3 (over sqrt 5): 8/4/sqrt 5.
    const study::RankFit tied = study::rankRegression({{1, 1, 2, 2}}, {1, 2, 3, 4});
    CHECK_THAT(tied.coefficients[0], WithinAbs(2 / std::sqrt(5.0), 1e-9));
    CHECK_THAT(tied.rSquared, WithinAbs(0.8, 1e-9));

    // Spearman's 1 - 6 sum d² / (n (n² - 1)): 0.6 between the columns, 0.8 and 0 with y. Normal equations of two:
    // b1 = (0.8 - 0.6 x 0) / (1 - 0.36), b2 = (0 - 0.6 x 0.8) / (1 - 0.36), R² = 0.8 b1 + 0 b2.
    const study::RankFit two = study::rankRegression({{1, 2, 3, 4}, {2, 1, 4, 3}}, {1, 3, 2, 4});
    CHECK_THAT(two.coefficients[0], WithinAbs(1.25, 1e-9));
    CHECK_THAT(two.coefficients[1], WithinAbs(-0.75, 1e-9));
    CHECK_THAT(two.rSquared, WithinAbs(1, 1e-9));

    // What is y's own column explains all of it, whatever stands beside it in any order; what never changes nothing.
    const std::vector<double> y{5, 3, 6, 1, 2, 4, 7}, near{4, 3, 7, 1, 2, 5, 6}, other{1, 2, 4, 3, 6, 5, 7},
        same(7, 2.0);
    const std::vector<std::vector<double>> columns{near, other, y, same};
    for (const auto& order : {std::vector<std::size_t>{0, 1, 2, 3}, {3, 2, 1, 0}, {1, 3, 0, 2}, {2, 0, 3, 1}}) {
        std::vector<std::vector<double>> placed;
        for (const std::size_t c : order) {
            placed.push_back(columns[c]);
        }
        const study::RankFit fit = study::rankRegression(placed, y);
        for (std::size_t k = 0; k < order.size(); ++k) {
            CAPTURE(k, order[k]);
            CHECK_THAT(fit.coefficients[k], WithinAbs(order[k] == 2 ? 1 : 0, 1e-9));
        }
        CHECK_THAT(fit.rSquared, WithinAbs(1, 1e-9));
    }
}

TEST_CASE("the bands run to the middle sample's end and hold each sample where it is then", "[study][stop]")
{
    // 1, 2 and 3 L in 100 s, the tap from 20 to 30, 40 and 50 °C; the chart ends at the middle one's 2 L.
    const std::vector<study::StopRun> runs{run({.pumped_m3 = 1e-3, .tap_C = 30}), run({.pumped_m3 = 2e-3, .tap_C = 40}),
                                           run({.end_s = 160, .pumped_m3 = 3e-3, .tap_C = 50})};
    study::StopStudy study;
    study::addBands(question(), runs, study);
    const study::Band& volume = study.byVolume;
    REQUIRE(volume.x.size() > 10);
    CHECK(volume.x.front() == 0);
    CHECK_THAT(volume.x.back(), WithinRel(2e-3, 1e-12));
    CHECK_THAT(volume.x[volume.x.size() / 2], WithinRel(1e-3, 1e-12));
    CHECK_THAT(volume.low.front(), WithinAbs(20, 1e-12));
    CHECK_THAT(volume.high.front(), WithinAbs(20, 1e-12));
    // At 1 L: at its end 30, half way 30, a third of the way 30.
    CHECK_THAT(volume.middle[volume.x.size() / 2], WithinAbs(30, 1e-9));
    CHECK_THAT(volume.low[volume.x.size() / 2], WithinAbs(30, 1e-9));
    // At 2 L: 30 (ended before), 40 and 40; a tenth of two steps is a fifth of the first.
    CHECK_THAT(volume.low.back(), WithinAbs(32, 1e-9));
    CHECK_THAT(volume.middle.back(), WithinAbs(40, 1e-9));
    CHECK_THAT(volume.high.back(), WithinAbs(40, 1e-9));
    // By time, to 100 s: 30, 40 and 20 + 30 x 100/160 = 38.75.
    const study::Band& time = study.byTime;
    CHECK_THAT(time.x.back(), WithinRel(100.0, 1e-12));
    CHECK_THAT(time.low.back(), WithinAbs(30 + 0.2 * 8.75, 1e-9));
    CHECK_THAT(time.middle.back(), WithinAbs(38.75, 1e-9));
    CHECK_THAT(time.high.back(), WithinAbs(38.75 + 0.8 * 1.25, 1e-9));
}

TEST_CASE("an influence is that of its own open range, on the water when the suggested stop comes", "[study][stop]")
{
    // The first range sets the tap at the end, the third the tap at 50 s; the second is not open.
    study::StopQuestion asked = question();
    asked.ranges.resize(3);
    asked.ranges[0].id = "first";
    asked.ranges[2].id = "third";
    for (const std::size_t r : {0u, 2u}) {
        asked.ranges[r].least = 0;
        asked.ranges[r].most = 10;
    }
    std::vector<double> points;
    std::vector<study::StopRun> runs;
    for (int i = 0; i < 11; ++i) {
        const double first = i, third = (i * 4) % 11;
        points.insert(points.end(), {first, 1.0, third});
        study::StopRun one = run({});
        one.time_s = {0, 50, 100};
        one.pumped_m3 = one.sensed_m3 = {0, 1e-3, 2e-3};
        one.tap_C = one.tapMost_C = {20, 40 - third, 60 + first};
        one.reading_C = one.enteringMost_C = one.outletMost_C = {20, 20, 20};
        runs.push_back(one);
    }
    study::StopStudy study;
    study::addInfluences(asked, runs, points, study);  // no stop is suggested: how warm it gets at all
    REQUIRE(study.influences.size() == 2);
    CHECK(study.influences[0].range.id == "first");
    CHECK_THAT(study.influences[0].coefficient, WithinAbs(1, 1e-9));
    CHECK_THAT(study.influences[1].coefficient, WithinAbs(0, 1e-9));
    CHECK_THAT(study.rankFit, WithinAbs(1, 1e-9));

    study::StopStudy stopped;
    stopped.suggested = static_cast<int>(StopKind::Time);
    stopped.choices[static_cast<std::size_t>(StopKind::Time)] = timeStop(50);
    study::addInfluences(asked, runs, points, stopped);
    CHECK(stopped.influences[0].range.id == "third");
    CHECK_THAT(stopped.influences[0].coefficient, WithinAbs(-1, 1e-9));  // as far from zero as 1
}

TEST_CASE("a bare stop leaves the stops and takes off what else would end or refuse a run", "[study][stop]")
{
    document::Drawing drawing;
    document::Part box;
    box.id = drawing.nextId++;
    box.kind = "controller";
    box.tag = "C1";
    for (const char* key :
         {"refuse_when_warm", "high_limit", "inlet_lockout", "stop_by_volume", "stop_by_temperature"}) {
        box.entries[key] = {true, parts::Basis::Measured};
    }
    box.entries["longest_run_s"] = {180.0, parts::Basis::Measured};
    box.entries["no_flow_s"] = {8.0, parts::Basis::Measured};
    drawing.parts.push_back(box);
    study::bareStop(drawing);
    const parts::Values left = document::values(drawing.parts.front());
    for (const char* key : {"refuse_when_warm", "high_limit", "inlet_lockout"}) {
        CHECK_FALSE(left.flag(key));
    }
    CHECK(left.number("longest_run_s") == 0);  // 0 = none
    CHECK(left.number("no_flow_s") == 0);
    CHECK(left.flag("stop_by_volume"));
    CHECK(left.flag("stop_by_temperature"));
}
