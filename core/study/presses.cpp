// SPDX-License-Identifier: GPL-3.0-or-later
#include "study/presses.h"

#include <algorithm>
#include <cmath>
#include <iterator>
#include <span>

#include <fmt/format.h>

#include "study/press_search.h"
#include "study/protections.h"
#include "study/safe_wait.h"

namespace tapward::study {

bool isOutlet(HeatPlace place) { return place == HeatPlace::OutletHot || place == HeatPlace::OutletCold; }

const WorstHeat* PressesStudy::find(HeatPlace place, document::PartId part) const
{
    const auto at = std::find_if(worst.begin(), worst.end(), [&](const WorstHeat& heat) {
        return heat.place == place && (part == document::kNoPart || heat.part == part);
    });
    return at == worst.end() ? nullptr : &*at;
}

int runsStarted(const CaseResult& result, double until_s)
{
    return static_cast<int>(std::count_if(result.events.begin(), result.events.end(), [&](const Event& event) {
        return event.id == "run_started" && event.t_s <= until_s + 1e-6;
    }));
}

void take(Hottest& into, const PlaceHeat& heat)
{
    const auto keep = [&](std::optional<double>& hottest) {
        hottest = std::max(hottest.value_or(heat.hottest_C), heat.hottest_C);
    };
    switch (heat.place) {
    case HeatPlace::HeaterOutlet:
        keep(into.heaterOutlet_C);
        break;
    case HeatPlace::HeaterInlet:
        keep(into.heaterInlet_C);
        break;
    case HeatPlace::OutletHot:
        keep(into.outlets_C);
        break;
    case HeatPlace::OutletCold:
        keep(into.coldOutlets_C);
        break;
    case HeatPlace::Sensor:
    case HeatPlace::Join:
    case HeatPlace::ColdEntry:
        break;
    }
}

namespace {

/// What comes after the hottest moment goes, except the outlet's own opening, which shows it.
void cutAfter(document::Case& script, const PlaceKey& key, double at_s)
{
    constexpr double kAfter_s = 30;
    double end_s = at_s + kAfter_s;
    std::erase_if(script.actions, [&](const document::Action& action) {
        const bool own = isOutlet(key.place) && action.part == key.part;
        if (own) {
            end_s = std::max(end_s, action.at_s + kAfter_s / 3);
        }
        return action.at_s > at_s + 1e-6 && !own;
    });
    script.duration_s = std::clamp(std::ceil(end_s), 1.0, script.duration_s);
}

/// A name for a script that says where and how.
std::string scriptName(const document::Drawing& drawing, const PlaceKey& key, int presses)
{
    const document::Part* part = drawing.find(key.part);
    const std::string tag = part ? part->tag : std::string("the loop");
    const char* where = "";
    switch (key.place) {
    case HeatPlace::HeaterOutlet:
        where = " outlet";
        break;
    case HeatPlace::HeaterInlet:
        where = " inlet";
        break;
    case HeatPlace::OutletHot:
        where = " hot";
        break;
    case HeatPlace::OutletCold:
        where = " cold";
        break;
    case HeatPlace::Sensor:
    case HeatPlace::Join:
    case HeatPlace::ColdEntry:
        break;
    }
    return fmt::format("Hottest at {}{}: {} {}", tag, where, presses, presses == 1 ? "press" : "presses");
}

constexpr double kLost_K = 1;  // less hot than the search saw it by this: the run went another way

/// The search's best points run again as they will be reported, every place read from every run.
Result<std::vector<WorstHeat>> confirm(const Trials& trials, const PressSearch& search, const PressesOptions& options)
{
    std::vector<PlaceKey> keys;
    std::vector<PressPoint> points;
    const auto add = [&points](PressPoint point) {
        if (std::find(points.begin(), points.end(), point) == points.end()) {
            points.push_back(std::move(point));
        }
    };
    for (const auto& [key, best] : search.best()) {
        keys.push_back(key);
        add(PressSearch::trimmed(best));
    }
    for (const PressBest& best : search.withoutOpening()) {
        add(PressSearch::trimmed(best));
    }
    Options fine = options.resolution;  // with curves: whoever opens the script gets the same steps
    fine.stop = options.stop;
    const auto runAll = [&](std::span<const PressPoint> some) {
        std::vector<Trial> planned;
        for (const PressPoint& point : some) {
            planned.push_back(search.trial(point));
        }
        return trials.run(planned, fine);
    };
    auto found = runAll(points);
    if (!found) {
        return tl::unexpected(found.error());
    }
    // A run that a sensor's last tenth of a degree decides may go another way in finer cells: it is looked for near by.
    const std::size_t first = points.size();
    for (const HeatPlace place : {HeatPlace::HeaterOutlet, HeatPlace::OutletHot}) {
        double reported_C = -1e9;
        for (const TrialResult& result : *found) {
            for (const PlaceHeat& heat : result.result.hottest) {
                reported_C = heat.place == place ? std::max(reported_C, heat.hottest_C) : reported_C;
            }
        }
        const PressBest* best = search.hottest({place});
        if (!best || best->hottest_C < reported_C + kLost_K || best->point.plan.gaps_s.size() < 2) {
            continue;
        }
        for (const double later_s : {2.0, 5.0, 10.0, 20.0, 40.0, 80.0, 160.0}) {
            PressPoint point = best->point;
            point.plan.gaps_s.back() += later_s;
            add(point);
        }
    }
    if (points.size() > first) {
        auto more = runAll(std::span(points).subspan(first));
        if (!more) {
            return tl::unexpected(more.error());
        }
        std::move(more->begin(), more->end(), std::back_inserter(*found));
    }
    // Once more as plain scripts: what is reported is what opening the case shows.
    std::vector<Trial> plain;
    for (const TrialResult& result : *found) {
        Trial trial;
        trial.script = result.asRun;
        plain.push_back(std::move(trial));
    }
    const auto shown = trials.run(plain, fine);
    if (!shown) {
        return tl::unexpected(shown.error());
    }
    std::vector<WorstHeat> worst;
    for (const PlaceKey& key : keys) {
        WorstHeat heat{key.place, key.part, -1e9, 0, 0, {}};
        for (const TrialResult& result : *shown) {
            for (const PlaceHeat& place : result.result.hottest) {
                if (place.place == key.place && place.part == key.part && place.hottest_C > heat.hottest_C) {
                    setWorst(trials.drawing(), heat, place, result);
                }
            }
        }
        worst.push_back(std::move(heat));
    }
    return worst;
}

}  // namespace

void setWorst(const document::Drawing& drawing, WorstHeat& heat, const PlaceHeat& found, const TrialResult& result)
{
    const PlaceKey key{heat.place, heat.part};
    heat.hottest_C = found.hottest_C;
    heat.at_s = found.at_s;
    heat.script = result.asRun;
    cutAfter(heat.script, key, heat.at_s);
    heat.presses = runsStarted(result.result, heat.at_s);
    heat.script.name = scriptName(drawing, key, heat.presses);
    heat.script.target_C = kOutletLimit_C;
    if (isOutlet(heat.place) || heat.place == HeatPlace::Sensor) {
        heat.script.targetPart = heat.part;
    }
}

Result<PressesStudy> studyPresses(const document::Drawing& drawing, const PressesOptions& options)
{
    const auto trials = Trials::make(drawing, options.hands);
    if (!trials) {
        return tl::unexpected(trials.error());
    }
    if (trials->plant().withRole(parts::Role::Controller).empty()) {
        return problem("No controller is drawn, so there is no run to repeat.",
                       "Draw the loop's controller and its push button.");
    }
    if (!trials->loop().answer.exists) {
        return problem(trials->loop().answer.reason, "Join pumps, valve and pipes to a loop through the heater.");
    }
    PressesStudy study;
    // About what a full study takes; only for the progress shown.
    const double expected = 440 + (options.protections ? 110 : 0) + (options.safeWait ? 30 : 0);
    const auto counted = [&](int cases) {
        study.cases += cases;
        if (options.progress) {
            options.progress(std::min(0.99, study.cases / expected));
        }
    };

    PressSearch search(*trials, options, {}, std::nullopt, counted);
    if (const auto problem = search.search(true, {})) {
        return tl::unexpected(*problem);
    }
    auto worst = confirm(*trials, search, options);
    if (!worst) {
        return tl::unexpected(worst.error());
    }
    study.worst = std::move(*worst);
    if (options.protections) {
        auto effects = tryProtections(*trials, options, search, study.worst, counted);
        if (!effects) {
            return tl::unexpected(effects.error());
        }
        study.protections = std::move(*effects);
    }
    for (const WorstHeat& heat : study.worst) {
        take(study.asDrawn, {heat.place, heat.part, heat.hottest_C, heat.at_s});
    }
    if (options.safeWait) {
        auto wait = findSafeWait(*trials, options, search, true, counted);
        auto ordinary = wait ? findSafeWait(*trials, options, search, false, counted) : wait;
        if (!ordinary) {
            return tl::unexpected(ordinary.error());
        }
        study.wait = std::move(*wait);
        study.waitAsDrawn = std::move(*ordinary);
    }
    std::stable_sort(study.worst.begin(), study.worst.end(),
                     [](const WorstHeat& a, const WorstHeat& b) { return a.hottest_C > b.hottest_C; });
    if (options.progress) {
        options.progress(1);
    }
    return study;
}

}  // namespace tapward::study
