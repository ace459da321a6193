// SPDX-License-Identifier: GPL-3.0-or-later
#include "study/protections.h"

#include <algorithm>

namespace tapward::study {
namespace {

using document::PartId;

/// One controller setting with a protection switched the other way.
struct Variant {
    ProtectionEffect effect;
    std::vector<ControlChange> controls;
    std::optional<double> mixingSetpoint_C;
    bool adds = false;  ///< switches it on
};

const char* const kOff = "Without it.";
/// Of each of these the hottest is told.
constexpr HeatPlace kGroups[] = {HeatPlace::HeaterOutlet, HeatPlace::HeaterInlet, HeatPlace::OutletHot,
                                 HeatPlace::OutletCold};

Variant makeVariant(const Trials& trials, Protection protection, double wait_s)
{
    Variant variant;
    variant.effect.protection = protection;
    ProtectionEffect& effect = variant.effect;
    if (protection == Protection::MixingValve) {
        const bool drawn = !trials.plant().withRole(parts::Role::MixingValve).empty();
        effect.counted = drawn;
        if (!drawn) {
            effect.note = Message("No mixing valve is drawn.");
            return variant;
        }
        effect.tried = true;
        effect.note = Message("As if it passed hot water only.");
        variant.mixingSetpoint_C = 99;
        return variant;
    }
    const PlantPart& box = *trials.plant().withRole(parts::Role::Controller).front();
    const parts::ControllerModel& model = *box.model.controller;
    ControlChange change{box.id, model.spec, false, false};
    control::RunSpec& spec = change.spec;
    const auto celsius = [](double c) { return Measure{c, Quantity::Temperature}; };
    const auto seconds = [](double s) { return Measure{s, Quantity::Time}; };
    const bool hasStop = !model.stopSensor.empty(), hasLimit = !model.limitSensor.empty(),
               hasInlet = !model.inletSensor.empty();
    effect.tried = true;
    /// Switches `flag` the other way; a protection without its sensor is on paper only.
    const auto flip = [&](bool& flag, bool canAct) {
        effect.counted = flag && canAct;
        flag = !effect.counted;
        variant.adds = flag;
    };
    switch (protection) {
    case Protection::TemperatureStop:
        flip(spec.stopByTemperature, hasStop);
        if (variant.adds && !hasStop) {
            effect.tried = false;
            effect.note = Message("The controller has no stop sensor.");
        } else {
            effect.note = variant.adds ? Message("With a stop at {0}.", {celsius(spec.stopTemperature_C)}) : kOff;
        }
        break;
    case Protection::HighLimit:
        flip(spec.highLimit, hasLimit);
        change.limitAtStopSensor = variant.adds && !hasLimit;
        effect.note = !variant.adds ? kOff
                      : hasLimit    ? Message("With one at {0}.", {celsius(spec.highLimit_C)})
                      : hasStop     ? Message("With one at {0} beside the stop sensor.", {celsius(spec.highLimit_C)})
                                    : Message("With one at {0} at the heater's outlet.", {celsius(spec.highLimit_C)});
        break;
    case Protection::InletLockout:
        flip(spec.inletLockout, hasInlet);
        change.lockoutAtHeater = variant.adds && !hasInlet;
        effect.note = !variant.adds ? kOff
                      : hasInlet    ? Message("With one at {0}.", {celsius(spec.inletLockout_C)})
                                    : Message("With one at {0} and a sensor at the heater's inlet without lag.",
                                              {celsius(spec.inletLockout_C)});
        break;
    case Protection::WaitTimer:
        effect.counted = spec.coolDownWait_s > 0;
        variant.adds = !effect.counted;
        spec.coolDownWait_s = effect.counted ? 0 : wait_s;
        effect.note = variant.adds ? Message("With a wait of {0}.", {seconds(wait_s)}) : kOff;
        break;
    case Protection::LongestRun: {
        const double usual_s = 180;  // the controller's own default
        effect.counted = spec.longestRun_s > 0;
        variant.adds = !effect.counted;
        spec.longestRun_s = effect.counted ? 0 : usual_s;
        effect.note = variant.adds ? Message("With {0} at most.", {seconds(usual_s)}) : kOff;
        break;
    }
    case Protection::RefuseWhenWarm:
        flip(spec.refuseWhenWarm, hasStop);
        if (variant.adds && !hasStop) {
            effect.tried = false;
            effect.note = Message("The controller has no stop sensor.");
        } else {
            effect.note = variant.adds ? Message("Refusing at {0} or more.", {celsius(spec.stopTemperature_C)}) : kOff;
        }
        break;
    case Protection::MixingValve:
        break;
    }
    variant.controls.push_back(std::move(change));
    return variant;
}

/// The script with every end of a run made by hand, at the very instant the control made it, for a control that
/// would not.
/// @param made  ids of the ends that are made by hand now
document::Case byHand(const TrialResult& result, const std::vector<std::string_view>& made)
{
    document::Case script = result.asRun;
    document::PartId pressed = document::kNoPart;
    for (const document::Action& action : script.actions) {
        pressed = action.kind == document::ActionKind::PressButton ? action.part : pressed;
    }
    for (const Event& event : result.result.events) {
        if (std::find(made.begin(), made.end(), event.id) == made.end()) {
            continue;
        }
        // Before a press at the same instant: that one starts the next run.
        const auto later =
            std::find_if(script.actions.begin(), script.actions.end(),
                         [&](const document::Action& action) { return action.at_s >= event.t_s - 1e-9; });
        document::Action stop;
        stop.at_s = event.t_s;
        stop.kind = document::ActionKind::PressButton;
        stop.part = pressed;
        script.actions.insert(later, stop);
    }
    return script;
}

std::vector<std::string_view> endsOf(Protection protection)
{
    switch (protection) {
    case Protection::TemperatureStop:
        return {"stop_temperature"};
    case Protection::HighLimit:
        return {"stop_high_limit"};
    case Protection::InletLockout:
        return {"stop_inlet_lockout"};
    case Protection::LongestRun:
        return {"stop_longest_run"};
    case Protection::WaitTimer:
    case Protection::RefuseWhenWarm:
    case Protection::MixingValve:
        break;
    }
    return {};
}

bool hotter(const Hottest& a, const Hottest& b)
{
    // An empty optional is less than any value.
    return a.heaterOutlet_C > b.heaterOutlet_C || a.heaterInlet_C > b.heaterInlet_C || a.outlets_C > b.outlets_C
           || a.coldOutlets_C > b.coldOutlets_C;
}

void raise(const document::Drawing& drawing, std::vector<WorstHeat>& worst, const TrialResult& result)
{
    for (WorstHeat& heat : worst) {
        for (const PlaceHeat& place : result.result.hottest) {
            if (place.place == heat.place && place.part == heat.part && place.hottest_C > heat.hottest_C) {
                setWorst(drawing, heat, place, result);
            }
        }
    }
}

/// The variant's own search, its best points told with the reported resolution.
Result<std::vector<Trial>> bestTrials(const Trials& trials, const PressesOptions& options, const Variant& variant,
                                      const std::vector<PressPoint>& seeds, const std::function<void(int)>& counted)
{
    PressSearch search(trials, options, variant.controls, variant.mixingSetpoint_C, counted);
    if (const auto problem = search.search(false, seeds)) {
        return tl::unexpected(*problem);
    }
    std::vector<Trial> planned;
    std::vector<PressPoint> points;
    for (const auto& group : kGroups) {
        const PressBest* best = search.hottest({group});
        if (best && std::find(points.begin(), points.end(), best->point) == points.end()) {
            points.push_back(best->point);
            planned.push_back(search.trial(best->point));
        }
    }
    return planned;
}

/// The scripts of the hottest of each group as drawn, each once.
std::vector<Trial> hottestScripts(const std::vector<WorstHeat>& worst)
{
    std::vector<Trial> plain;
    for (const HeatPlace group : kGroups) {
        const WorstHeat* hottest = nullptr;
        for (const WorstHeat& heat : worst) {
            if (heat.place == group && (!hottest || heat.hottest_C > hottest->hottest_C)) {
                hottest = &heat;
            }
        }
        const bool known = !hottest || std::any_of(plain.begin(), plain.end(), [&](const Trial& other) {
            return other.script.actions == hottest->script.actions;
        });
        if (!known) {
            plain.push_back({hottest->script, std::nullopt, {}, std::nullopt});
        }
    }
    return plain;
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
std::vector<Trial> handTrials(const std::vector<TrialResult>& on, Protection protection, const Variant* off)
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

std::string_view title(Protection protection)
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
    for (const HeatPlace group : kGroups) {
        if (const PressBest* best = asDrawn.hottest({group})) {
            if (std::find(seeds.begin(), seeds.end(), best->point) == seeds.end()) {
                seeds.push_back(best->point);
            }
        }
    }
    const double tenMinutes_s = 600;
    std::vector<Variant> variants;
    for (const Protection protection :
         {Protection::TemperatureStop, Protection::HighLimit, Protection::InletLockout, Protection::WaitTimer,
          Protection::LongestRun, Protection::RefuseWhenWarm, Protection::MixingValve}) {
        variants.push_back(makeVariant(trials, protection, tenMinutes_s));
    }
    // Those that are added come first: by hand, what they lead to may be hotter than all that was found as drawn,
    // and that in turn is asked of the variants without a protection.
    for (const bool adds : {true, false}) {
        for (Variant& variant : variants) {
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
    for (Variant& variant : variants) {
        effects.push_back(std::move(variant.effect));
    }
    return effects;
}

}  // namespace tapward::study
