// SPDX-License-Identifier: GPL-3.0-or-later
// One case in time: how far it is from its converged answer, what it costs and where, and what a plain method costs
// at the same error. All times are processor time, the best of several, so that a busy machine matters less; the
// ratios are what to compare between machines.
//
//     tapward_case_bench [errors] [cost] [peer] [growth]        all of them without an argument
//     tapward_case_bench once                          the first case, ten times, for a profiler

#include <algorithm>
#include <cmath>
#include <ctime>
#include <limits>
#include <memory>
#include <string>
#include <string_view>
#include <tuple>
#include <utility>
#include <vector>

#include <fmt/format.h>

#include "document/file.h"
#include "peer.h"
#include "study/prediction.h"
#include "study/simulate.h"
#include "study/trials.h"

using namespace tapward;

namespace {

double processor_s()
{
    timespec now{};
    clock_gettime(CLOCK_THREAD_CPUTIME_ID, &now);
    return static_cast<double>(now.tv_sec) + 1e-9 * static_cast<double>(now.tv_nsec);
}

/// Least processor time of several rounds, s.
template <class Work>
double secondsOf(Work work, int rounds)
{
    double least = 1e9;
    for (int i = 0; i < rounds; ++i) {
        const double start = processor_s();
        work();
        least = std::min(least, processor_s() - start);
    }
    return least;
}

// --- errors -----------------------------------------------------------------------------------------------------

struct Coach {
    std::string name;
    document::Drawing drawing;
    document::Case script;
    study::Plant plant;
    study::LoopMap loop;
};

Coach* load(std::vector<std::unique_ptr<Coach>>& coaches, const char* file, const char* script, double duration_s)
{
    auto drawing = document::load(std::string(TAPWARD_SOURCE_DIR) + file);
    if (!drawing)
        return nullptr;
    auto coach = std::make_unique<Coach>();
    coach->drawing = std::move(*drawing);
    const document::Case* found = coach->drawing.findCase(script);
    coach->script = found ? *found : coach->drawing.cases.front();
    coach->script.duration_s = duration_s;
    coach->name = fmt::format("{}, '{}', {:.0f} s", std::string_view(file).substr(1), coach->script.name, duration_s);
    auto plant = study::makePlant(coach->drawing, coach->script.view);
    if (!plant)
        return nullptr;
    coach->plant = std::move(*plant);
    coach->loop = study::findLoop(coach->drawing, coach->plant, coach->script.start_C);
    return coaches.emplace_back(std::move(coach)).get();
}

std::vector<std::unique_ptr<Coach>> coaches()
{
    std::vector<std::unique_ptr<Coach>> all;
    load(all, "/samples/long_hall_coach.tapward", "One preheat run, cold", 180);
    load(all, "/samples/long_hall_coach.tapward", "Preheat, then the rear lavatory", 260);
    load(all, "/samples/storage_coach.tapward", "", 180);
    load(all, "/tests/study/trade_ranges.tapward", "", 180);
    return all;
}

study::CaseResult run(const Coach& coach, const study::Options& options)
{
    auto result = study::simulate(coach.drawing, coach.plant, coach.loop, coach.script, options);
    return result ? std::move(*result) : study::CaseResult{};
}

study::Options withGrid(double step_s, double cell_m, int layers)
{
    study::Options options;
    options.standingStep_s *= step_s / options.step_s;
    options.solveEvery_s *= std::min(1.0, step_s / options.step_s);
    options.step_s = step_s;
    options.cell_m = cell_m;
    options.wallLayers = layers;
    return options;
}

bool isTemperature(const study::Series& series)
{
    return series.quantity == Quantity::Temperature
           && (series.id.starts_with("sensor.") || series.id.starts_with("tap.") || series.id == "heater_inlet"
               || series.id == "heater_outlet");
}

struct Apart {
    double most_K = 0, mean_K = 0;
    std::string where;
    double at_s = 0;
};

/// Whether the loop's water begins to move or comes to rest within a second around this reading: what a heater's ports
/// show then is another place.
bool turns(const study::CaseResult& result, std::size_t at)
{
    const study::Series* flow = result.find("loop_flow");
    bool moves = false, stands = false;
    for (std::size_t i = at; flow && i-- > 0 && result.time_s[at] - result.time_s[i] < 0.5;)
        (std::abs(flow->values[i]) > 1e-7 ? moves : stands) = true;
    for (std::size_t i = at; flow && i < result.time_s.size() && result.time_s[i] - result.time_s[at] < 0.5; ++i)
        (std::abs(flow->values[i]) > 1e-7 ? moves : stands) = true;
    return moves && stands;
}

/// At every reading of one against the curves of the other, recorded more densely. A jump (water that begins to move
/// shows another place) is no curve: where the dense one leaps by a kelvin between readings nothing is compared.
Apart furthestApart(const study::CaseResult& coarse, const study::CaseResult& dense)
{
    Apart apart;
    double sum = 0;
    std::size_t count = 0;
    for (const study::Series& series : coarse.series) {
        const study::Series* truth = dense.find(series.id);
        if (!isTemperature(series) || !truth)
            continue;
        for (std::size_t i = 0; i < coarse.time_s.size(); ++i) {
            const double t = coarse.time_s[i];
            const auto after = std::lower_bound(dense.time_s.begin(), dense.time_s.end(), t - 1e-9);
            const auto k = static_cast<std::size_t>(after - dense.time_s.begin());
            if (k == 0 || k >= dense.time_s.size())
                continue;
            const double a = truth->values[k - 1], b = truth->values[k];
            const double gap = dense.time_s[k] - dense.time_s[k - 1];
            if (!(std::abs(b - a) < 1) || turns(dense, k))
                continue;
            const double w = gap > 0 ? (t - dense.time_s[k - 1]) / gap : 1;
            const double error = std::abs(series.values[i] - (a + w * (b - a)));
            if (std::isnan(error))
                continue;
            sum += error;
            ++count;
            if (error > apart.most_K)
                apart = {error, 0, series.id, t};
        }
    }
    apart.mean_K = count > 0 ? sum / static_cast<double>(count) : 0;
    return apart;
}

/// Largest difference of the loop's flow, as a share of the largest flow.
double flowApart(const study::CaseResult& coarse, const study::CaseResult& dense)
{
    const study::Series* ours = coarse.find("loop_flow");
    const study::Series* truth = dense.find("loop_flow");
    if (!ours || !truth)
        return 0;
    double largest = 0, apart = 0;
    for (const double flow : truth->values)
        largest = std::max(largest, std::abs(flow));
    for (std::size_t i = 0; i < coarse.time_s.size(); ++i) {
        const auto after = std::lower_bound(dense.time_s.begin(), dense.time_s.end(), coarse.time_s[i] - 1e-9);
        const auto k = static_cast<std::size_t>(after - dense.time_s.begin());
        if (k < 2 || k + 1 >= dense.time_s.size())
            continue;
        const double a = truth->values[k - 1], b = truth->values[k];
        // Not where a valve or a pump is on its way.
        if (std::abs(truth->values[k + 1] - truth->values[k - 2]) < 0.01 * largest)
            apart = std::max(apart, std::min(std::abs(ours->values[i] - a), std::abs(ours->values[i] - b)));
    }
    return largest > 0 ? apart / largest : 0;
}

void errors()
{
    fmt::print(
        "Errors at every sensor, open tap and heater port over a case, against its converged answer\n"
        "(steps of 0.03125 s, cells of 0.0375 m for the ladder of steps; cells of 0.01875 m, same steps, for all)\n");
    for (const auto& coach : coaches()) {
        fmt::print("\n{}\n", coach->name);
        const study::Options usual;
        const auto report = [&](const std::string& name, const study::Options& options,
                                const study::CaseResult& converged, Apart& before) {
            const study::CaseResult result = run(*coach, options);
            const Apart apart = furthestApart(result, converged);
            fmt::print("  {:34} {:8.4f} K most, {:8.5f} K mean ({} at {:.1f} s)", name, apart.most_K, apart.mean_K,
                       apart.where, apart.at_s);
            fmt::print(", flow {:.2f} %", 100 * flowApart(result, converged));
            if (before.most_K > 0)
                fmt::print(", order {:.2f}, of the mean {:.2f}", std::log2(before.most_K / apart.most_K),
                           std::log2(before.mean_K / apart.mean_K));
            fmt::print("\n");
            before = apart;
        };
        const double fine_s = 1.0 / 32;
        const auto dense = [&](double step_s, double cell_m, int layers) {
            study::Options options = withGrid(step_s, cell_m, layers);
            options.recordEvery_s = 1.0 / 16;
            return run(*coach, options);
        };
        const study::CaseResult converged = dense(fine_s, usual.cell_m / 8, usual.wallLayers);
        Apart none;
        report(fmt::format("default ({} s, {} m)", usual.step_s, usual.cell_m), usual, converged, none);
        none = {};
        report(
            "search (1 s, 0.45 m, 2 layers)",
            [] {
                study::Options options = study::searchOptions();
                options.curves = true;
                return options;
            }(),
            converged, none);
        none = {};
        {
            study::CaseResult layers = dense(2 * fine_s, usual.cell_m / 2, 8);
            report("4 for 8 wall layers", withGrid(2 * fine_s, usual.cell_m / 2, 4), layers, none);
        }
        Apart before;
        for (const double cell_m : {0.6, 0.3, 0.15, 0.075})
            report(fmt::format("cells of {} m, fine steps", cell_m), withGrid(fine_s, cell_m, usual.wallLayers),
                   converged, before);
        before = {};
        const study::CaseResult sameCells = dense(fine_s, usual.cell_m / 4, usual.wallLayers);
        for (const double step_s : {1.0, 0.5, 0.25, 0.125})
            report(fmt::format("steps of {} s, fine cells", step_s),
                   withGrid(step_s, usual.cell_m / 4, usual.wallLayers), sameCells, before);
    }
}

// --- cost -------------------------------------------------------------------------------------------------------

void cost()
{
    fmt::print("\nCost of one case\n");
    for (const auto& coach : coaches()) {
        fmt::print("{}\n", coach->name);
        const study::Options usual;
        for (const auto& [name, step_s, cell_m] :
             {std::tuple{"default", usual.step_s, usual.cell_m}, std::tuple{"0.3 m", usual.step_s, 0.3}}) {
            study::Options options = withGrid(step_s, cell_m, usual.wallLayers);
            study::CaseResult result;
            const double plain_s = secondsOf([&] { result = run(*coach, options); }, 15);
            options.curves = false;
            const double bare_s = secondsOf([&] { result = run(*coach, options); }, 15);
            options.curves = true;
            PhaseTimes best{1e9, 1e9, 1e9, 1e9, 1e9};  // each by the clock on the wall: its least of several
            double least = 1e9;
            for (int i = 0; i < 15; ++i) {
                PhaseTimes phases;
                options.phases = &phases;
                const double start = processor_s();
                result = run(*coach, options);
                least = std::min(least, processor_s() - start);
                for (const auto phase : {&PhaseTimes::solve, &PhaseTimes::exchange, &PhaseTimes::advection,
                                         &PhaseTimes::machines, &PhaseTimes::record})
                    best.*phase = std::min(best.*phase, phases.*phase);
            }
            const double layers = static_cast<double>(result.cells) * (usual.wallLayers + 1) * result.steps;
            fmt::print(
                "  {:8} {:6.2f} ms ({:.2f} without curves); {} cells, {} steps, {} solves; {:.2f} ns a cell-layer "
                "all in\n",
                name, 1e3 * plain_s, 1e3 * bare_s, result.cells, result.steps, result.solves, 1e9 * plain_s / layers);
            const double known = best.solve + best.exchange + best.advection + best.machines + best.record;
            fmt::print("           ns a cell-layer: solve {:.2f}, exchange {:.2f}, advection {:.2f}, machines {:.2f}, "
                       "record {:.2f}, set-up and rest {:.2f}\n",
                       1e9 * best.solve / layers, 1e9 * best.exchange / layers, 1e9 * best.advection / layers,
                       1e9 * best.machines / layers, 1e9 * best.record / layers, 1e9 * (least - known) / layers);
        }
    }
}

// --- peer -------------------------------------------------------------------------------------------------------

constexpr double kRing_s = 180, kRead_s = 0.5, kPlace = 0.6;
using Curve = std::vector<double>;  // coil outlet, tube at kPlace, coil inlet, each half second

bench::Ring theRing()
{
    bench::Ring ring;
    ring.tube.length_m = 24;
    return ring;
}

Curve byField(const bench::Ring& ring, double step_s, double cell_m, int layers, int* cells = nullptr)
{
    thermal::Stretch coil;
    coil.volume_m3 = ring.coilWater_m3;
    coil.body_J_K = ring.coilMetal_J_K;
    coil.bodyBore_m = ring.coilBore_m;
    thermal::Field field;
    const int inlet = field.addJunction(), outlet = field.addJunction();
    const int heater = field.addRun(inlet, outlet, {coil});
    const int line = field.addRun(outlet, inlet, {ring.tube});
    field.prepare({.cell_m = cell_m, .wallLayers = layers});
    field.fill(ring.start_C);
    if (cells)
        *cells = field.cellCount();
    const std::vector<double> flow(2, ring.flow_m3s);
    const int each = static_cast<int>(std::lround(kRead_s / step_s));
    Curve curve;
    curve.reserve(3 * static_cast<std::size_t>(kRing_s / kRead_s));
    for (int k = 0; k < static_cast<int>(kRing_s / kRead_s); ++k) {
        for (int i = 0; i < each; ++i) {
            const double t = (k * each + i) * step_s;
            field.setSource(heater, 0, t >= ring.lit_s - 1e-9 && t < ring.out_s - 1e-9 ? ring.heat_W : 0);
            field.step(step_s, flow);
        }
        curve.push_back(field.leavingTemperature(heater));
        curve.push_back(field.at(line, kPlace));
        curve.push_back(field.leavingTemperature(line));
    }
    return curve;
}

Curve byPeer(const bench::Ring& ring, double cell_m, int layers, int* cells = nullptr)
{
    bench::Peer peer(ring, cell_m, layers);
    if (cells)
        *cells = static_cast<int>(peer.cells());
    const int each = static_cast<int>(std::ceil(kRead_s / peer.stableStep_s()));
    const double step_s = kRead_s / each;
    Curve curve;
    curve.reserve(3 * static_cast<std::size_t>(kRing_s / kRead_s));
    for (int k = 0; k < static_cast<int>(kRing_s / kRead_s); ++k) {
        for (int i = 0; i < each; ++i) {
            const double t = k * kRead_s;  // it burns from one reading to another
            peer.step(step_s, t >= ring.lit_s - 1e-9 && t < ring.out_s - 1e-9 ? ring.heat_W : 0);
        }
        curve.push_back(peer.coilOutlet_C());
        curve.push_back(peer.at_C(kPlace));
        curve.push_back(peer.coilInlet_C());
    }
    return curve;
}

double most(const Curve& a, const Curve& b)
{
    double apart = 0;
    for (std::size_t i = 0; i < a.size(); ++i)
        apart = std::max(apart, std::abs(a[i] - b[i]));
    return apart;
}

/// Least time of those within this error; not-a-number where none is.
double timeAt(const std::vector<std::pair<double, double>>& ladder, double error_K)
{
    double best = std::numeric_limits<double>::quiet_NaN();
    for (std::size_t i = 0; i < ladder.size(); ++i) {
        const auto [error, time_s] = ladder[i];
        if (error <= error_K && !(time_s >= best))
            best = time_s;
    }
    return best;
}

void peer()
{
    const bench::Ring ring = theRing();
    fmt::print(
        "\nA ring of {} m of tube and a coil, {:.0f} s: Tapward's field and a plain third-order method of lines\n"
        "(each against its own converged answer; the peer's films are constants, which Tapward's are not)\n",
        ring.tube.length_m, kRing_s);
    using Ladder = std::vector<std::pair<double, double>>;
    Ladder ours, theirs;
    constexpr int kLayers = 4;
    const Curve converged = byField(ring, 1.0 / 64, 0.15 / 16, kLayers);
    const Curve theirConverged = byPeer(ring, 0.15 / 16, kLayers);
    fmt::print("  the two converged answers are {:.2f} K apart\n", most(converged, theirConverged));
    for (const double cell_m : {0.6, 0.4, 0.3, 0.2, 0.15, 0.1, 0.075, 0.05})
        for (const double step_s : {0.5, 0.25, 0.125, 0.0625}) {
            Curve curve;
            int cells = 0;
            const double time_s = secondsOf([&] { curve = byField(ring, step_s, cell_m, kLayers, &cells); }, 5);
            ours.emplace_back(most(curve, converged), time_s);
            if (step_s == 0.5 || cell_m == 0.05)
                fmt::print("  Tapward, {:.3f} m, {:.3f} s: {:.4f} K, {:.3f} ms, {:.2f} ns a cell-layer\n", cell_m,
                           step_s, ours.back().first, 1e3 * time_s,
                           1e9 * time_s / (cells * (kLayers + 1.0) * kRing_s / step_s));
        }
    for (const double cell_m : {0.6, 0.4, 0.3, 0.25, 0.2, 0.15, 0.125, 0.1, 0.075, 0.05}) {
        Curve curve;
        int cells = 0;
        const double time_s = secondsOf([&] { curve = byPeer(ring, cell_m, kLayers, &cells); }, 5);
        theirs.emplace_back(most(curve, theirConverged), time_s);
        fmt::print("  peer, {:.3f} m: {:.4f} K, {:.3f} ms\n", cell_m, theirs.back().first, 1e3 * time_s);
    }
    for (const double error_K : {0.15, 0.05, 0.02}) {
        const double us = timeAt(ours, error_K), them = timeAt(theirs, error_K);
        if (std::isnan(us) || std::isnan(them)) {
            fmt::print("  at {:.2f} K: not reached by {}\n", error_K,
                       !std::isnan(us)     ? "the peer"
                       : !std::isnan(them) ? "Tapward"
                                           : "either");
            continue;
        }
        fmt::print("  at {:.2f} K: Tapward {:.3f} ms, peer {:.3f} ms; {:.2f} times as fast (wanted 2)\n", error_K,
                   1e3 * us, 1e3 * them, them / us);
    }
}

// --- growth -----------------------------------------------------------------------------------------------------

/// So many lines side by side, each a supply, 16 pipes with hand valves between, and an outlet that is opened.
document::Drawing manyLines(int lines)
{
    constexpr int kPipes = 16;
    document::Drawing drawing;
    const auto add = [&](const char* kind) {
        document::Part part;
        part.id = drawing.nextId++;
        part.kind = kind;
        part.tag = fmt::format("P{}", part.id);
        drawing.parts.push_back(std::move(part));
        return drawing.parts.back().id;
    };
    document::Case script;
    script.name = "All open";
    script.duration_s = 20;
    for (int l = 0; l < lines; ++l) {
        document::PartId before = add("city_inlet");
        for (int k = 0; k < kPipes; ++k) {
            const bool last = k + 1 == kPipes;
            const document::PartId next = add(last ? "faucet" : "hand_valve");
            add("pipe_run");
            document::Part& part = drawing.parts.back();
            part.ends[0] = {before, "outlet", {}};
            part.ends[1] = {next, last ? "cold" : "inlet", {}};
            part.entries["length_m"] = {1.0 + 0.05 * k, parts::Basis::Measured};
            before = next;
        }
        document::Action open;
        open.kind = document::ActionKind::OpenOutlet;
        open.part = before;
        open.value = 1;
        open.second = 0;
        script.actions.push_back(open);
    }
    drawing.cases.push_back(std::move(script));
    return drawing;
}

void growth()
{
    fmt::print(
        "\nGrowth: lines of 16 pipes side by side, water moving in all, 20 s (wanted: an exponent of at most 1.1)\n");
    double before_s = 0, beforePlant_s = 0, beforePipes = 0;
    for (const int lines : {20, 200, 2000, 6250}) {
        const document::Drawing drawing = manyLines(lines);
        const double pipes = 16.0 * lines;
        study::Plant plant;
        const double plant_s = secondsOf([&] { plant = *study::makePlant(drawing, document::View::After); }, 1);
        const study::LoopMap loop = study::findLoop(drawing, plant, 20);
        study::Options options;
        options.curves = false;
        study::CaseResult result;
        const double taken_s = secondsOf(
            [&] {
                if (auto run = study::simulate(drawing, plant, loop, drawing.cases.front(), options))
                    result = std::move(*run);
            },
            1);
        fmt::print("  {:6.0f} pipes, {} cells, {} steps, {} solves: {:.3f} s, plant {:.3f} s", pipes, result.cells,
                   result.steps, result.solves, taken_s, plant_s);
        if (before_s > 0)
            fmt::print("; grow with size^{:.2f} and ^{:.2f}",
                       std::log(taken_s / before_s) / std::log(pipes / beforePipes),
                       std::log(plant_s / beforePlant_s) / std::log(pipes / beforePipes));
        fmt::print("\n");
        before_s = taken_s;
        beforePlant_s = plant_s;
        beforePipes = pipes;
    }
}

}  // namespace

int main(int argc, char** argv)
{
    const auto wanted = [&](std::string_view name) {
        return argc < 2 || std::find(argv + 1, argv + argc, name) != argv + argc;
    };
    if (coaches().size() != 4) {
        fmt::print(stderr, "The sample coaches could not be read.\n");
        return 2;
    }
    if (argc > 1 && std::string_view(argv[1]) == "once") {
        const auto all = coaches();
        for (int i = 0; i < 10; ++i)
            run(*all.front(), {});
        return 0;
    }
    if (wanted("cost"))
        cost();
    if (wanted("peer"))
        peer();
    if (wanted("growth"))
        growth();
    if (wanted("errors"))
        errors();
    return 0;
}
