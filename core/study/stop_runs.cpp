// SPDX-License-Identifier: GPL-3.0-or-later
#include "study/stop_runs.h"

#include <algorithm>
#include <cmath>
#include <mutex>

#include "study/in_parallel.h"
#include "study/loop.h"
#include "study/simulate.h"

namespace tapward::study {
namespace {

constexpr double kPress_s = 1;

/// Nothing ends the run, nothing refuses it; the stop sensor shows the water itself, its lag comes later.
void letRun(document::Drawing& drawing)
{
    const LoopParts parts = loopParts(drawing);
    if (document::Part* box = drawing.find(parts.controller)) {
        const auto set = [&](const char* key, parts::Value value) {
            box->entries[key] = {std::move(value), parts::Basis::Measured};
        };
        for (const char* key : {"stop_by_volume", "stop_by_time", "stop_by_temperature", "refuse_when_warm",
                                "high_limit", "inlet_lockout"}) {
            set(key, false);
        }
        set("longest_run_s", 0.0);
        set("no_flow_s", 0.0);
    }
    if (document::Part* sensor = drawing.find(parts.stopSensor)) {
        sensor->entries["lag_s"] = {0.0, parts::Basis::Measured};
    }
}

double pathVolume(const Plant& plant, const std::vector<Hop>& way)
{
    double volume = 0;
    for (const Hop& hop : way) {
        for (const thermal::Stretch& stretch : plant.chains[static_cast<std::size_t>(hop.link)].stretches) {
            volume += stretch.length_m > 0 ? stretch.length_m * M_PI / 4 * stretch.bore_m * stretch.bore_m
                                           : stretch.volume_m3;
        }
    }
    return volume;
}

void neverFall(std::vector<double>& column)
{
    for (std::size_t i = 1; i < column.size(); ++i) {
        column[i] = std::isnan(column[i]) ? column[i - 1] : std::max(column[i], column[i - 1]);
    }
}

Result<StopRun> runSample(const StopQuestion& question, Sample sample, double cell_m, double step_s,
                          std::stop_token stop)
{
    const LoopParts parts = loopParts(*question.drawing);
    letRun(sample.drawing);
    const auto plant = makePlant(sample.drawing, document::View::After);
    if (!plant) {
        return tl::unexpected(plant.error());
    }
    const LoopMap map = findLoop(sample.drawing, *plant, sample.script.start_C);
    const double flow = map.answer.flow_m3s.value_or(0);
    const double held = pathVolume(*plant, map.hotWay);
    StopRun run;
    // Long enough for the water to pass the tap more than twice; water that never lights a heater is not run.
    constexpr double kLongest_s = 900;
    const double lasts = flow > 0 ? std::min(kLongest_s, 45 + 2.5 * held / flow) : 60;
    const bool hopeless = flow < 0.85 * map.answer.activationFlow_m3s.value_or(0);
    if (hopeless || map.tapJunction < 0 || flow <= 0) {
        for (const double t : {0.0, lasts}) {
            run.time_s.push_back(t);
            run.pumped_m3.push_back(flow * t);
        }
        run.tap_C = run.tapMost_C = run.enteringMost_C =
            run.outletMost_C = {sample.script.start_C, sample.script.start_C};
        run.reading_C = question.hasStopSensor ? run.tap_C : std::vector<double>{};
        run.sensed_m3 =
            question.hasFlowSensor ? std::vector<double>{0, flow * lasts * sample.sensorGain} : std::vector<double>{};
        return run;
    }
    sample.script.duration_s = kPress_s + lasts;
    Options options;
    options.cell_m = cell_m;
    options.step_s = step_s;
    options.stop = std::move(stop);
    options.loopJoin = true;
    const auto result = simulate(sample.drawing, *plant, map, sample.script, options);
    if (!result) {
        return tl::unexpected(result.error());
    }
    run.lit = map.answer.activationFlow_m3s ? false : true;  // a storage heater is hot already
    for (const Event& event : result->events) {
        run.lit = run.lit || event.id == "burner_lit";
    }
    const Series* pumped = result->find("pumped_volume");
    const Series* loop = result->find("loop_flow");
    const Series* join = result->find("loop_join");
    const Series* entry = result->find("cold_entry");
    const Series* outlet = result->find("heater_outlet");
    const document::Part* sensorPart = sample.drawing.find(parts.stopSensor);
    const Series* sensor = sensorPart ? result->find("sensor." + sensorPart->tag) : nullptr;
    const document::Part* meter = sample.drawing.find(parts.flowSensor);
    const double cutOff = meter ? document::values(*meter).number("low_cut_off_m3s") : 0;
    std::vector<double> water;
    double sensed = 0;
    for (std::size_t i = 0; i < result->time_s.size(); ++i) {
        const double t = result->time_s[i] - kPress_s;
        if (t < 0) {
            continue;
        }
        if (meter && !run.time_s.empty()) {
            const double passed = pumped->values[i] - pumped->values[i - 1];
            sensed += loop->values[i] * sample.sensorGain < cutOff ? 0 : passed * sample.sensorGain;
        }
        run.time_s.push_back(t);
        run.pumped_m3.push_back(pumped->values[i]);
        run.tap_C.push_back(join->values[i]);
        run.enteringMost_C.push_back(entry && loop->values[i] > 1e-7 ? entry->values[i]
                                                                     : std::nan(""));  // only what moves
        run.outletMost_C.push_back(outlet->values[i]);
        if (meter) {
            run.sensed_m3.push_back(sensed);
        }
        if (sensor) {
            water.push_back(sensor->values[i]);
        }
    }
    run.tapMost_C = run.tap_C;
    neverFall(run.tapMost_C);
    neverFall(run.enteringMost_C);
    neverFall(run.outletMost_C);
    run.reading_C = lagged(run.time_s, water, sample.sensorLag_s);
    neverFall(run.reading_C);
    return run;
}

/// The first moment a column that never falls is at `mark`, between moments in a straight line.
std::optional<double> reached(const StopRun& run, const std::vector<double>& column, double mark)
{
    const auto at = std::lower_bound(column.begin(), column.end(), mark);
    if (at == column.end()) {
        return std::nullopt;
    }
    const auto i = static_cast<std::size_t>(at - column.begin());
    if (i == 0 || column[i] <= column[i - 1]) {
        return run.time_s[i];
    }
    const double share = (mark - column[i - 1]) / (column[i] - column[i - 1]);
    return run.time_s[i - 1] + share * (run.time_s[i] - run.time_s[i - 1]);
}

}  // namespace

std::vector<double> lagged(const std::vector<double>& time_s, const std::vector<double>& water_C, double lag_s)
{
    std::vector<double> reading(water_C);
    const double lag = std::max(lag_s, 1e-3);
    for (std::size_t i = 1; i < water_C.size(); ++i) {
        const double dt = time_s[i] - time_s[i - 1];
        if (dt <= 0) {
            reading[i] = reading[i - 1];
            continue;
        }
        const double rate = (water_C[i] - water_C[i - 1]) / dt;
        reading[i] = water_C[i] - rate * lag + (reading[i - 1] - water_C[i - 1] + rate * lag) * std::exp(-dt / lag);
    }
    return reading;
}

Result<StopQuestion> stopQuestion(const document::Drawing& drawing, const StopOptions& options)
{
    StopQuestion question;
    question.drawing = &drawing;
    const document::Case* asked = nullptr;
    const document::Action* press = nullptr;
    for (const document::Case& one : drawing.cases) {
        const bool fits =
            options.caseName.empty() ? one.view == document::View::After && !asked : one.name == options.caseName;
        for (const document::Action& action : one.actions) {
            if (fits && action.kind == document::ActionKind::PressButton && (asked != &one || !press)) {
                asked = &one;
                press = &action;
            }
        }
    }
    if (!asked) {
        return problem("No case of the coach as it will be presses the button.",
                       "Make a case with one preheat run; its temperatures and target are used.");
    }
    const LoopParts parts = loopParts(drawing);
    if (parts.controller == document::kNoPart) {
        return problem("No controller is drawn, so nothing ends a run by itself.", "Place a controller.");
    }
    const LoopAnswer loop = loopAnswer(drawing);
    if (!loop.exists || loop.heater == document::kNoPart || loop.returnTee == document::kNoPart) {
        return problem(loop.reason.empty() ? Message("There is no loop in this view of the drawing.") : loop.reason,
                       "See what blocks the loop.");
    }
    question.script = *asked;
    question.script.targetPart = document::kNoPart;
    question.script.actions.clear();
    for (const document::Action& action : asked->actions) {
        using enum document::ActionKind;
        const bool prepares =
            action.kind == UseCity || action.kind == UsePump || action.kind == UseNothing || action.kind == SetValve;
        if (prepares && action.at_s <= press->at_s) {
            question.script.actions.push_back(action);
            question.script.actions.back().at_s = 0;
        }
    }
    question.script.actions.push_back(*press);
    question.script.actions.back().at_s = kPress_s;
    question.ranges = options.ranges ? *options.ranges : ranges(drawing, question.script);
    question.limits = options.limits;
    question.target_C = options.target_C.value_or(asked->target_C);
    question.hasFlowSensor = parts.flowSensor != document::kNoPart;
    question.hasStopSensor = parts.stopSensor != document::kNoPart;
    question.byColdLine = loop.coldEntry != document::kNoPart;
    for (const document::Part& part : drawing.parts) {
        if (!document::isPresent(part.stage, document::View::After)) {
            continue;
        }
        if (part.kind == "circulator") {
            const double limit = document::values(part).number("temperature_limit_C");
            if (limit > 0 && (question.pumpLimit_C <= 0 || limit < question.pumpLimit_C)) {
                question.pumpLimit_C = limit;
            }
        } else if (part.id == loop.heater && part.kind == "tankless_heater") {
            question.outletLimit_C = document::values(part).number("outlet_limit_C");
        }
    }
    return question;
}

Result<std::vector<StopRun>> stopRuns(const StopQuestion& question, const StopOptions& options, int samples,
                                      std::uint64_t seed, const std::function<void()>& oneDone)
{
    const std::vector<double> points = latinHypercube(question.ranges, samples, seed);
    const std::size_t width = question.ranges.size(), count = static_cast<std::size_t>(samples);
    std::vector<std::optional<Result<StopRun>>> slots(count);
    std::mutex told;
    inParallel(
        count,
        [&](std::size_t i) {
            if (options.stop.stop_requested()) {
                return;
            }
            slots[i] = runSample(question,
                                 withValues(*question.drawing, question.script, question.ranges,
                                            std::span(points).subspan(i * width, width)),
                                 options.cell_m, options.step_s, options.stop);
            const std::scoped_lock lock(told);
            oneDone();
        },
        options.threads);
    std::vector<StopRun> runs;
    runs.reserve(count);
    for (auto& slot : slots) {
        if (!slot) {
            return problem("The study was stopped.", "Start it again.");
        }
        if (!*slot) {
            return tl::unexpected(slot->error());
        }
        runs.push_back(std::move(**slot));
    }
    return runs;
}

Result<StopRun> nominalRun(const StopQuestion& question, double cell_m, double step_s, std::stop_token stop)
{
    return runSample(question, withValues(*question.drawing, question.script, {}, {}), cell_m, step_s, std::move(stop));
}

std::optional<double> stopTime(const StopRun& run, const StopChoice& choice)
{
    std::optional<double> first;
    const auto take = [&](std::optional<double> at) {
        if (at && (!first || *at < *first)) {
            first = at;
        }
    };
    if (choice.volume_m3 && !run.sensed_m3.empty()) {
        take(reached(run, run.sensed_m3, *choice.volume_m3));
    }
    if (choice.temperature_C && !run.reading_C.empty()) {
        take(reached(run, run.reading_C, *choice.temperature_C));
    }
    if (choice.time_s && *choice.time_s <= run.time_s.back()) {
        take(choice.time_s);
    }
    return first;
}

double valueAt(const StopRun& run, const std::vector<double>& column, double time_s)
{
    const auto after = std::upper_bound(run.time_s.begin(), run.time_s.end(), time_s);
    if (after == run.time_s.begin()) {
        return column.front();
    }
    if (after == run.time_s.end()) {
        return column.back();
    }
    const auto i = static_cast<std::size_t>(after - run.time_s.begin());
    const double share = (time_s - run.time_s[i - 1]) / (run.time_s[i] - run.time_s[i - 1]);
    return column[i - 1] + share * (column[i] - column[i - 1]);
}

}  // namespace tapward::study
