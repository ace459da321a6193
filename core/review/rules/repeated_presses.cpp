// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>

#include "review/rules/rules.h"
#include "review/scald.h"
#include "review/seen.h"

namespace tapward::review::rule {

void repeatedPresses(const Seen& seen, Findings& findings)
{
    for (const study::PlantPart* controller : seen.after.withRole(parts::Role::Controller)) {
        const control::RunSpec& spec = controller->model.controller->spec;
        if (spec.coolDownWait_s > 0 || spec.refuseWhenWarm || spec.inletLockout) {
            return;
        }
    }
    // How far a lit heater may pass its setting before it counts as more than its usual trim.
    constexpr double kTrim_K = 3;
    double allowed_C = kScaldGuidance_C;
    for (const study::PlantPart* heater : heaters(seen.after)) {
        const auto& model = heater->model;
        allowed_C =
            std::max(allowed_C, kTrim_K + (model.tankless ? model.tankless->setpoint_C : model.storage->setpoint_C));
    }
    const auto heater = highest(seen, "hottest_heater_outlet", 2);
    const auto tap = highest(seen, "hottest_tap", 2);
    const bool tapScalds = tap && tap->value > kScaldGuidance_C;
    if (!tapScalds && !(heater && heater->value > allowed_C)) {
        return;
    }
    const Highest& worst = heater && (!tapScalds || heater->value > tap->value) ? *heater : *tap;
    Finding finding;
    finding.severity = tapScalds ? Severity::Danger : Severity::Caution;
    finding.what = {"Pressed again and again, the loop heats its own water to {0}. Skin burns in about {1}.",
                    {Measure{worst.value, Quantity::Temperature},
                     Measure{wholeBurnSeconds(worst.value).value_or(0), Quantity::Time}}};
    finding.why = "Each repeat starts with warmer water, and a lit heater adds at least its smallest fire: it can end "
                  "far above the setting.";
    finding.remedy =
        "Give the controller a wait between runs, a refusal when the line is warm, or a lockout on the heater's inlet.";
    finding.source = kPractice;
    const auto controllers = seen.after.withRole(parts::Role::Controller);
    finding.part = controllers.empty() ? document::kNoPart : controllers.front()->id;
    finding.caseName = worst.caseName;
    findings.push_back(std::move(finding));
}

}  // namespace tapward::review::rule
