// SPDX-License-Identifier: GPL-3.0-or-later
#include "study/safe_wait.h"

#include <algorithm>
#include <cmath>
#include <map>

namespace tapward::study {
namespace {

constexpr double kWithin_s = 10;
constexpr double kAsTheFirst_K = 1;

}  // namespace

Result<SafeWait> safeWait(const PressesOptions& options, const HeatAfterWaits& heatAfter)
{
    SafeWait wait;
    const auto first = heatAfter({0}, 1, true);
    if (!first) {
        return tl::unexpected(first.error());
    }
    wait.firstOutlets_C = first->front().outlets_C;
    wait.firstColdEntry_C = first->front().coldEntry_C;

    constexpr std::size_t kPresses = 3;
    std::vector<double> grid{0, 30, 60, 120, 240, 480, 900, 1500, 2400};
    std::erase_if(grid, [&](double wait_s) { return wait_s >= options.longestWait_s; });
    grid.push_back(options.longestWait_s);
    const auto coarseHeats = heatAfter(grid, kPresses, false);
    if (!coarseHeats) {
        return tl::unexpected(coarseHeats.error());
    }
    std::map<double, WaitHeat> known;
    for (std::size_t i = 0; i < grid.size(); ++i) {
        known[grid[i]] = (*coarseHeats)[i];
    }

    std::optional<Problem> stopped;
    /// Shortest wait from which on every longer one tried keeps `holds` too.
    const auto shortest = [&](const std::function<bool(const WaitHeat&)>& holds) -> std::optional<double> {
        std::optional<double> good;
        double bad = -1;
        for (auto at = known.rbegin(); at != known.rend(); ++at) {
            if (!holds(at->second)) {
                bad = at->first;
                break;
            }
            good = at->first;
        }
        if (!good) {
            return std::nullopt;
        }
        while (bad >= 0 && *good - bad > kWithin_s) {
            const double middle = std::round(0.5 * (*good + bad));
            const auto heat = heatAfter({middle}, kPresses, false);
            if (!heat) {
                stopped = heat.error();
                return std::nullopt;
            }
            known[middle] = heat->front();
            (holds(heat->front()) ? *good : bad) = middle;
        }
        // Confirmed as reported; the search's cells may have been a little kind.
        for (double wait_s = *good; wait_s <= options.longestWait_s; wait_s = std::ceil(wait_s * 1.1 + 10)) {
            const auto heat = heatAfter({wait_s}, kPresses, true);
            if (!heat) {
                stopped = heat.error();
                return std::nullopt;
            }
            if (holds(heat->front())) {
                return wait_s;
            }
        }
        return std::nullopt;
    };
    const auto celsius = [](double c) { return Measure{c, Quantity::Temperature}; };
    const Measure longest{options.longestWait_s, Quantity::Time};
    if (wait.firstOutlets_C > options.outletLimit_C) {
        wait.outletsReason = Message("One press alone brings {0} to an outlet, above {1}: no wait helps.",
                                     {celsius(wait.firstOutlets_C), celsius(options.outletLimit_C)});
    } else {
        wait.outlets_s = shortest([&](const WaitHeat& heat) { return heat.outlets_C <= options.outletLimit_C; });
        if (!wait.outlets_s) {
            wait.outletsReason = Message("No wait up to {0} keeps every outlet at {1} or below.",
                                         {longest, celsius(options.outletLimit_C)});
        }
    }
    const bool byColdLine = wait.firstColdEntry_C > kNoColdEntry_C;
    if (!byColdLine) {
        wait.firstColdEntry_C = std::nan("");
        wait.coldEntry_s = 0;
        wait.coldEntryReason = "The loop returns by a line of its own: no cold outlet draws its water.";
    } else if (wait.firstColdEntry_C > options.coldEntryLimit_C) {
        wait.coldEntryReason = Message("One press alone sends {0} into the cold line, above {1}: no wait helps.",
                                       {celsius(wait.firstColdEntry_C), celsius(options.coldEntryLimit_C)});
    } else {
        wait.coldEntry_s = shortest([&](const WaitHeat& heat) { return heat.coldEntry_C <= options.coldEntryLimit_C; });
        if (!wait.coldEntry_s) {
            wait.coldEntryReason = Message("No wait up to {0} keeps water entering the cold line at {1} or below.",
                                           {longest, celsius(options.coldEntryLimit_C)});
        }
    }
    wait.asTheFirst_s = shortest([&](const WaitHeat& heat) {
        return heat.outlets_C <= wait.firstOutlets_C + kAsTheFirst_K
               && (!byColdLine || heat.coldEntry_C <= wait.firstColdEntry_C + kAsTheFirst_K);
    });
    if (stopped) {
        return tl::unexpected(*stopped);
    }
    if (wait.outlets_s && wait.coldEntry_s) {
        wait.both_s = std::max(*wait.outlets_s, *wait.coldEntry_s);
    }
    return wait;
}

std::vector<PressPoint> waitDays(const PressSearch& found, bool worst)
{
    using enum HeatPlace;
    if (!worst) {
        return {found.plainPoint()};
    }
    std::vector<PressPoint> days;
    for (const auto& group : std::vector<std::vector<HeatPlace>>{{OutletHot}, {ColdEntry, HeaterInlet}}) {
        if (const PressBest* best = found.hottest(group)) {
            PressPoint day = found.plainPoint();
            day.volts = best->point.volts;
            day.supply_C = best->point.supply_C;
            day.ambient_C = best->point.ambient_C;
            if (std::find(days.begin(), days.end(), day) == days.end()) {
                days.push_back(day);
            }
        }
    }
    return days;
}

Result<SafeWait> findSafeWait(const Trials& trials, const PressesOptions& options, const PressSearch& found,
                              bool worstDays, const std::function<void(int)>& counted)
{
    const std::vector<PressPoint> days = waitDays(found, worstDays);
    Options fine = options.resolution;
    fine.curves = false;
    fine.stop = options.stop;
    Options coarse = searchOptions();
    coarse.stop = options.stop;
    return safeWait(
        options,
        [&](const std::vector<double>& waits, std::size_t presses, bool asReported) -> Result<std::vector<WaitHeat>> {
            std::vector<Trial> planned;
            for (const double wait_s : waits) {
                for (const PressPoint& day : days) {
                    PressPoint point = day;
                    point.plan.gaps_s.assign(presses, wait_s);
                    point.plan.gaps_s.front() = 2;
                    planned.push_back(found.trial(point));
                }
            }
            const auto results = trials.run(planned, asReported ? fine : coarse);
            if (!results) {
                return tl::unexpected(results.error());
            }
            counted(static_cast<int>(planned.size()));
            std::vector<WaitHeat> heats(waits.size());
            for (std::size_t i = 0; i < results->size(); ++i) {
                WaitHeat& heat = heats[i / days.size()];
                for (const PlaceHeat& place : (*results)[i].result.hottest) {
                    if (place.place == HeatPlace::OutletHot) {
                        heat.outlets_C = std::max(heat.outlets_C, place.hottest_C);
                    } else if (place.place == HeatPlace::ColdEntry) {
                        heat.coldEntry_C = std::max(heat.coldEntry_C, place.hottest_C);
                    }
                }
            }
            return heats;
        });
}

}  // namespace tapward::study
