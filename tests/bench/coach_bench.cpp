// SPDX-License-Identifier: GPL-3.0-or-later
// What one answer costs on the full sample coach: the steady loop question and a 180 s case with a press.
// Times vary with the machine; the ratios (to real time, to one steady solve, per cell and step) are what
// to compare between versions.

#include <algorithm>
#include <chrono>
#include <vector>

#include <fmt/format.h>

#include "document/file.h"
#include "study/prediction.h"
#include "study/simulate.h"

using namespace tapward;

namespace {

/// Median of several timings, seconds.
template <class Work>
double secondsOf(Work work, int rounds)
{
    std::vector<double> taken;
    for (int i = 0; i < rounds; ++i) {
        const auto start = std::chrono::steady_clock::now();
        work();
        taken.push_back(std::chrono::duration<double>(std::chrono::steady_clock::now() - start).count());
    }
    std::nth_element(taken.begin(), taken.begin() + rounds / 2, taken.end());
    return taken[static_cast<std::size_t>(rounds) / 2];
}

}  // namespace

int main()
{
    const auto drawing = document::load(TAPWARD_SOURCE_DIR "/samples/long_hall_coach.tapward");
    if (!drawing) {
        fmt::print(stderr, "The sample could not be read.\n");
        return 2;
    }
    const auto plant = study::makePlant(*drawing, document::View::After);
    if (!plant) {
        return 2;
    }
    document::Case script = *drawing->findCase("One preheat run, cold");
    script.duration_s = 180;
    const study::LoopMap loop = study::findLoop(*drawing, *plant, script.start_C);

    network::Network network = plant->makeNetwork();
    study::setAtRest(*plant, network);
    study::runLoop(*plant, network, {12.6, 0});
    const double resolve_s = secondsOf(
        [&] {
            for (auto& element : network.elements(0)) {
                element.viscosity *= 1.0001;
            }
            network.solve();
        },
        2001);
    const double cold_s = secondsOf(
        [&] {
            network.forgetStart();
            network.solve();
        },
        501);
    fmt::print("coach: {} parts, {} links, {} junctions\n", drawing->parts.size(), plant->chains.size(),
               plant->junctions);
    fmt::print("steady solve: {:.1f} us warm, {:.1f} us from rest (ratio {:.1f})\n", 1e6 * resolve_s, 1e6 * cold_s,
               cold_s / resolve_s);

    for (const double cell_m : {0.60, 0.30, 0.15, 0.075}) {
        study::Options options;
        options.cell_m = cell_m;
        study::CaseResult result;
        const double case_s = secondsOf([&] { result = *study::simulate(*drawing, *plant, loop, script, options); }, 9);
        fmt::print("180 s case, cells of {:.3f} m: {:.2f} ms, {} cells, {} steps, {} solves; {:.0f} x real time; "
                   "{:.1f} ns per cell and step; "
                   "{:.0f} warm solves' worth\n",
                   cell_m, 1e3 * case_s, result.cells, result.steps, result.solves, script.duration_s / case_s,
                   1e9 * case_s / (static_cast<double>(result.cells) * result.steps), case_s / resolve_s);
    }
    const double all_s = secondsOf([&] { (void)study::predict(*drawing); }, 5);
    double simulated_s = 0;
    for (const document::Case& c : drawing->cases) {
        simulated_s += c.duration_s;
    }
    fmt::print("whole prediction: {} cases, {:.0f} s of coach time: {:.1f} ms, {:.0f} x real time\n",
               drawing->cases.size(), simulated_s, 1e3 * all_s, simulated_s / all_s);
    const double live_s = secondsOf([&] { (void)study::loopAnswer(*drawing); }, 51);
    fmt::print("loop answer while dragging: {:.2f} ms, {:.2f} of a 60 Hz frame\n", 1e3 * live_s, live_s * 60);
    return 0;
}
