// SPDX-License-Identifier: GPL-3.0-or-later
#include "study/protections.h"

#include <algorithm>

#include "study/protection_trials.h"

namespace tapward::study {
namespace {

/// The variant's own search, its best points told with the reported resolution.
Result<std::vector<Trial>> bestTrials(const Trials& trials, const PressesOptions& options,
                                      const ProtectionVariant& variant, const std::vector<PressPoint>& seeds,
                                      const std::function<void(int)>& counted)
{
    PressSearch search(trials, options, variant.controls, variant.mixingSetpoint_C, counted);
    if (const auto problem = search.search(false, seeds)) {
        return tl::unexpected(*problem);
    }
    std::vector<Trial> planned;
    std::vector<PressPoint> points;
    for (const auto& group : kHeatGroups) {
        const PressBest* best = search.hottest({group});
        if (best && std::find(points.begin(), points.end(), best->point) == points.end()) {
            points.push_back(best->point);
            planned.push_back(search.trial(best->point));
        }
    }
    return planned;
}

Hottest hottestOf(const std::vector<TrialResult>& results)
{
    Hottest hottest;
    for (const TrialResult& result : results) {
        for (const PlaceHeat& heat : result.result.hottest) {
            take(hottest, heat);
        }
    }
    return hottest;
}

/// The same once more as plain scripts, so that no press that was refused puts a step in between.
std::vector<Trial> asScripts(const std::vector<TrialResult>& results, const std::vector<Trial>& trials)
{
    std::vector<Trial> plain = trials;
    for (std::size_t i = 0; i < plain.size(); ++i) {
        plain[i].script = results[i].asRun;
        plain[i].plan.reset();
    }
    return plain;
}

/// What the trials did with the protection on, as scripts of a hand at the button for settings without it.
std::vector<Trial> handTrials(const std::vector<TrialResult>& on, Protection protection, const ProtectionVariant* off)
{
    std::vector<Trial> hands;
    for (const TrialResult& result : on) {
        Trial trial;
        trial.script = byHand(result, endsOf(protection));
        if (off) {
            trial.controls = off->controls;
            trial.mixingSetpoint_C = off->mixingSetpoint_C;
        }
        hands.push_back(std::move(trial));
    }
    return hands;
}

}  // namespace

std::string_view id(Protection protection)
{
    using enum Protection;
    switch (protection) {
    case TemperatureStop:
        return "temperature_stop";
    case HighLimit:
        return "high_limit";
    case InletLockout:
        return "inlet_lockout";
    case WaitTimer:
        return "wait";
    case LongestRun:
        return "longest_run";
    case RefuseWhenWarm:
        return "refuse_when_warm";
    case MixingValve:
        return "mixing_valve";
    }
    return "";
}

Text title(Protection protection)
{
    using enum Protection;
    switch (protection) {
    case TemperatureStop:
        return "Temperature stop";
    case HighLimit:
        return "Independent high limit";
    case InletLockout:
        return "Inlet lockout";
    case WaitTimer:
        return "Cool-down wait";
    case LongestRun:
        return "Longest run";
    case RefuseWhenWarm:
        return "Refuse when already warm";
    case MixingValve:
        return "Mixing valve";
    }
    return "";
}

Result<std::vector<ProtectionEffect>> tryProtections(const Trials& trials, const PressesOptions& options,
                                                     const PressSearch& asDrawn, std::vector<WorstHeat>& worst,
                                                     const std::function<void(int)>& counted)
{
    Options fine = options.resolution;
    fine.stop = options.stop;
    // Seeds: what was worst as drawn is asked of every variant.
    std::vector<PressPoint> seeds;
    for (const HeatPlace group : kHeatGroups) {
        if (const PressBest* best = asDrawn.hottest({group})) {
            if (std::find(seeds.begin(), seeds.end(), best->point) == seeds.end()) {
                seeds.push_back(best->point);
            }
        }
    }
    const double tenMinutes_s = 600;
    std::vector<ProtectionVariant> variants;
    for (const Protection protection :
         {Protection::TemperatureStop, Protection::HighLimit, Protection::InletLockout, Protection::WaitTimer,
          Protection::LongestRun, Protection::RefuseWhenWarm, Protection::MixingValve}) {
        variants.push_back(makeVariant(trials, protection, tenMinutes_s));
    }
    // Those that are added come first: by hand, what they lead to may be hotter than all that was found as drawn,
    // and that in turn is asked of the variants without a protection.
    for (const bool adds : {true, false}) {
        for (ProtectionVariant& variant : variants) {
            if (!variant.effect.tried || variant.adds != adds) {
                continue;
            }
            const Protection protection = variant.effect.protection;
            auto planned = bestTrials(trials, options, variant, seeds, counted);
            if (!planned) {
                return tl::unexpected(planned.error());
            }
            if (!adds) {
                const auto drawn = trials.run(hottestScripts(worst), fine);
                if (!drawn) {
                    return tl::unexpected(drawn.error());
                }
                const auto hands = handTrials(*drawn, protection, &variant);
                planned->insert(planned->end(), hands.begin(), hands.end());
            }
            auto found = trials.run(*planned, fine);
            if (!found) {
                return tl::unexpected(found.error());
            }
            counted(static_cast<int>(planned->size()));
            variant.effect.other = hottestOf(*found);
            Hottest drawnSoFar;
            for (const WorstHeat& heat : worst) {
                take(drawnSoFar, {heat.place, heat.part, heat.hottest_C, heat.at_s});
            }
            if (!adds || !hotter(variant.effect.other, drawnSoFar)) {
                continue;
            }
            found = trials.run(asScripts(*found, *planned), fine);
            if (!found) {
                return tl::unexpected(found.error());
            }
            variant.effect.other = hottestOf(*found);
            const auto reached = trials.run(handTrials(*found, protection, nullptr), fine);
            if (!reached) {
                return tl::unexpected(reached.error());
            }
            for (const TrialResult& result : *reached) {
                raise(trials.drawing(), worst, result);
            }
        }
    }
    std::vector<ProtectionEffect> effects;
    for (ProtectionVariant& variant : variants) {
        effects.push_back(std::move(variant.effect));
    }
    return effects;
}

}  // namespace tapward::study
