// SPDX-License-Identifier: GPL-3.0-or-later
#include "study/protection_trials.h"

#include <algorithm>

#include "study/protections.h"

namespace tapward::study {
namespace {

const char* const kOff = "Without it.";

}  // namespace

ProtectionVariant makeVariant(const Trials& trials, Protection protection, double wait_s)
{
    ProtectionVariant variant;
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
        effect.tried_s = spec.coolDownWait_s = effect.counted ? 0 : wait_s;
        effect.note = variant.adds ? Message("With a wait of {0}.", {seconds(wait_s)}) : kOff;
        break;
    case Protection::LongestRun: {
        const double usual_s = 180;  // the controller's own default
        effect.counted = spec.longestRun_s > 0;
        variant.adds = !effect.counted;
        effect.tried_s = spec.longestRun_s = effect.counted ? 0 : usual_s;
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

std::vector<Trial> hottestScripts(const std::vector<WorstHeat>& worst)
{
    std::vector<Trial> plain;
    for (const HeatPlace group : kHeatGroups) {
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

}  // namespace tapward::study
