// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>

#include "review/rules/rules.h"
#include "review/scald.h"
#include "review/seen.h"

namespace tapward::review::rule {

namespace {

const study::HotPlace* repeated(const study::HotPlace* heat) { return heat && heat->presses > 1 ? heat : nullptr; }

}  // namespace

void repeatedPresses(const Seen& seen, Findings& findings)
{
    // How far a lit heater may pass its setting before it counts as more than its usual trim.
    constexpr double kTrim_K = 3;
    double allowed_C = kScaldGuidance_C;
    for (const study::PlantPart* heater : heaters(seen.after)) {
        const auto& model = heater->model;
        allowed_C =
            std::max(allowed_C, kTrim_K + (model.tankless ? model.tankless->setpoint_C : model.storage->setpoint_C));
    }
    const auto* heater = repeated(hottest(seen, {study::HeatPlace::HeaterOutlet}));
    const auto* tap = repeated(hottest(seen, {study::HeatPlace::OutletHot, study::HeatPlace::OutletCold}));
    const bool tapScalds = tap && tap->hottest_C > kScaldGuidance_C;
    if (!tapScalds && !(heater && heater->hottest_C > allowed_C)) {
        return;
    }
    const study::HotPlace& worst = heater && (!tapScalds || heater->hottest_C > tap->hottest_C) ? *heater : *tap;
    Finding finding;
    finding.severity = tapScalds ? Severity::Danger : Severity::Caution;
    finding.what = {
        "Pressed again and again, the loop heats its own water to {0}. Skin burns in about {1}.",
        {seen.heat(worst.hottest_C), Measure{wholeBurnSeconds(worst.hottest_C).value_or(0), Quantity::Time}}};
    finding.why = "Each repeat starts with warmer water, and a lit heater adds at least its smallest fire: it can end "
                  "far above the setting.";
    finding.remedy = "Give the controller a long enough wait between runs, a refusal when the line is warm, or a "
                     "lockout on the heater's inlet.";
    finding.source = kPractice;
    const auto controllers = seen.after.withRole(parts::Role::Controller);
    finding.part = controllers.empty() ? document::kNoPart : controllers.front()->id;
    shownBy(finding, worst);
    findings.push_back(std::move(finding));
}

}  // namespace tapward::review::rule
