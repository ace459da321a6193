// SPDX-License-Identifier: GPL-3.0-or-later
#include "study/trials.h"

#include <algorithm>
#include <numeric>
#include <utility>

#include "study/in_parallel.h"

namespace tapward::study {

std::optional<double> secondsLeft(double share, double elapsed_s)
{
    constexpr double kLeastShare = 0.02, kLeast_s = 2;
    if (!(share >= kLeastShare) || elapsed_s < kLeast_s) {
        return std::nullopt;
    }
    return elapsed_s * (1 - std::min(share, 1.0)) / share;
}

Result<Trials> Trials::make(const document::Drawing& drawing, unsigned hands)
{
    auto plant = makePlant(drawing, document::View::After);
    if (!plant) {
        return tl::unexpected(plant.error());
    }
    if (plant->chains.empty()) {
        return problem("Nothing in this drawing holds water.",
                       "Draw at least a supply, a heater and a tap, joined by pipes.");
    }
    Trials trials;
    trials.m_drawing = &drawing;
    trials.m_plant = std::make_shared<const Plant>(std::move(*plant));
    trials.m_loop = std::make_shared<const LoopMap>(findLoop(drawing, *trials.m_plant, coldStart(drawing)));
    trials.m_hands = hands;
    return trials;
}

Result<std::vector<TrialResult>> Trials::run(std::span<const Trial> trials, const Options& options) const
{
    std::vector<std::optional<Result<TrialResult>>> slots(trials.size());
    // The longest first, so that nobody waits at the end for one that was begun last.
    std::vector<std::size_t> order(trials.size());
    std::iota(order.begin(), order.end(), std::size_t{0});
    std::stable_sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
        return trials[a].script.duration_s > trials[b].script.duration_s;
    });
    inParallel(
        trials.size(),
        [&](std::size_t next) {
            const std::size_t i = order[next];
            if (options.stop.stop_requested()) {  // not even made ready: a large coach takes a while to be
                slots[i] = problem("The prediction was stopped.", "Start it again.");
                return;
            }
            slots[i] = simulate(*m_drawing, *m_plant, *m_loop, trials[i], options);
        },
        m_hands);
    std::vector<TrialResult> results;
    results.reserve(slots.size());
    for (auto& slot : slots) {
        if (!*slot) {
            return tl::unexpected(slot->error());
        }
        results.push_back(std::move(**slot));
    }
    return results;
}

Options searchOptions()
{
    Options options;
    options.cell_m = 0.45;
    options.wallLayers = 2;
    options.step_s = 1;
    options.solveEvery_s = 3;
    options.curves = false;
    return options;
}

}  // namespace tapward::study
