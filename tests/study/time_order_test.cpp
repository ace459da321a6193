// SPDX-License-Identifier: GPL-3.0-or-later
// How near a case comes to its own converged answer (fine steps, fine cells), and how seldom its flows must be found.
#include <algorithm>
#include <cmath>
#include <optional>

#include "study/prediction.h"
#include "study/simulate.h"
#include "study/trade_coach.h"
#include "support/catch.h"

using namespace tapward;

namespace {

struct Coach {
    document::Drawing drawing;
    document::Case script;
    study::Plant plant;
    study::LoopMap loop;

    Coach(document::Drawing made, const char* name, double duration_s) : drawing(std::move(made))
    {
        script = *drawing.findCase(name);
        script.duration_s = duration_s;
        plant = *study::makePlant(drawing, script.view);
        loop = study::findLoop(drawing, plant, script.start_C);
    }
    study::CaseResult run(const study::Options& options) const
    {
        auto result = study::simulate(drawing, plant, loop, script, options);
        REQUIRE(result.has_value());
        return std::move(*result);
    }
};

Coach longHall()
{
    auto drawing = document::load(TAPWARD_SOURCE_DIR "/samples/long_hall_coach.tapward");
    REQUIRE(drawing.has_value());
    return {std::move(*drawing), "One preheat run, cold", 95};
}

Coach trade() { return {test::tradeCoach(), "Three presses", 95}; }

study::Options finer(int times)
{
    study::Options options;
    options.step_s /= times;
    options.standingStep_s /= times;
    options.solveEvery_s /= times;
    options.cell_m /= std::min(times, 4);
    return options;
}

/// A curve between its readings; nothing before the first and after the last.
std::optional<double> readAt(const study::CaseResult& result, const study::Series& series, double t)
{
    const auto after = std::lower_bound(result.time_s.begin(), result.time_s.end(), t - 1e-9);
    const auto k = static_cast<std::size_t>(after - result.time_s.begin());
    if (k == 0 || k >= result.time_s.size()) {
        return std::nullopt;
    }
    const double w = (t - result.time_s[k - 1]) / (result.time_s[k] - result.time_s[k - 1]);
    return (1 - w) * series.values[k - 1] + w * series.values[k];
}

struct Apart {
    double most = 0, mean = 0;
};

/// Of the loop sensor and the heater's ports, at each reading of the first from a second after the start of the run.
Apart apart(const study::CaseResult& usual, const study::CaseResult& dense)
{
    Apart found;
    int count = 0;
    for (const study::Series& series : usual.series) {
        if (series.id != "heater_inlet" && series.id != "heater_outlet" && !series.id.starts_with("sensor.TE")) {
            continue;
        }
        const study::Series* truth = dense.find(series.id);
        REQUIRE(truth);
        for (std::size_t i = 0; i < usual.time_s.size(); ++i) {
            const auto value = readAt(dense, *truth, usual.time_s[i]);
            if (usual.time_s[i] < 12 || !value) {
                continue;
            }
            const double error = std::abs(series.values[i] - *value);
            found.most = std::max(found.most, error);
            found.mean += error;
            ++count;
        }
    }
    REQUIRE(count > 100);
    found.mean /= count;
    return found;
}

}  // namespace

TEST_CASE("a preheat run at the default resolution is near its converged answer", "[study][convergence]")
{
    const bool hall = GENERATE(true, false);
    CAPTURE(hall);
    const Coach coach = hall ? longHall() : trade();
    study::Options fine = finer(8);
    fine.recordEvery_s = 1.0 / 16;
    const study::CaseResult converged = coach.run(fine);
    const Apart usual = apart(coach.run({}), converged), half = apart(coach.run(finer(2)), converged);
    CAPTURE(usual.most, usual.mean, half.most, half.mean);
    CHECK(usual.mean < 0.03);
    CHECK(usual.most < 0.15);
    CHECK(half.mean < 0.75 * usual.mean);
}

TEST_CASE("flows are found when the water has changed, not by the clock, and are right within 0.2 %", "[study][flow]")
{
    const bool hall = GENERATE(true, false);
    CAPTURE(hall);
    const Coach coach = hall ? longHall() : trade();
    study::Options always;
    always.solveEvery_s = 1e-3;
    always.flowTolerance = 0;
    const study::CaseResult usual = coach.run({}), judge = coach.run(always);
    CAPTURE(usual.solves, judge.solves);
    CHECK(usual.solves < 0.5 * judge.solves);
    const study::Series *ours = usual.find("loop_flow"), *truth = judge.find("loop_flow");
    REQUIRE(ours);
    REQUIRE(truth);
    const double largest = *std::max_element(truth->values.begin(), truth->values.end());
    REQUIRE(largest > 2e-5);
    double worst = 0;
    for (std::size_t i = 0; i < usual.time_s.size(); ++i) {
        // From a second after the pumps start: in between they spin up, and readings are of other instants.
        if (const auto value = readAt(judge, *truth, usual.time_s[i]); value && usual.time_s[i] > 12) {
            worst = std::max(worst, std::abs(ours->values[i] - *value));
        }
    }
    CHECK(worst < 2e-3 * largest);
}
