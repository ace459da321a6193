// SPDX-License-Identifier: GPL-3.0-or-later
#include "review/fix.h"
#include "review/rules/rules.h"
#include "review/seen.h"

namespace tapward::review::rule {

void clippedOnSensor(const Seen& seen, Findings& findings)
{
    // 10 to 40 s on plastic tube: from memory, measure with a step.
    constexpr double kLeastLag_s = 10, kUsualLag_s = 25;
    for (const study::PlantPart* controller : seen.after.withRole(parts::Role::Controller)) {
        const parts::ControllerModel& box = *controller->model.controller;
        for (const bool isLimit : {false, true}) {
            const study::PlantPart* sensor = partCalled(seen, isLimit ? box.limitSensor : box.stopSensor);
            const bool counts = isLimit ? box.spec.highLimit : box.spec.stopByTemperature || box.spec.refuseWhenWarm;
            if (!sensor || !sensor->model.sensor || !sensor->model.sensor->clippedOn || !counts) {
                continue;
            }
            const double lag_s = sensor->model.sensor->lag_s;
            const bool hopeful = lag_s < kLeastLag_s;
            Finding finding;
            finding.severity = hopeful ? Severity::Caution : Severity::Note;
            if (hopeful) {
                finding.what = {"{0} is clipped on the tube, yet its lag is given as {1}.",
                                {sensor->part->tag, Measure{lag_s, Quantity::Time}}};
            } else if (isLimit) {
                finding.what = {"The high limit's {0} is clipped on the tube and trails the water by {1}.",
                                {sensor->part->tag, Measure{lag_s, Quantity::Time}}};
            } else {
                finding.what = {"The stop's {0} is clipped on the tube and trails the water by {1}.",
                                {sensor->part->tag, Measure{lag_s, Quantity::Time}}};
            }
            finding.why = "On plastic tube such a sensor trails by 10 to 40 s and reads low: the run goes on while hot "
                          "water passes.";
            finding.remedy = "Put the sensor in the water, or measure its lag with a step and set the stop lower.";
            finding.source = kPractice;
            finding.part = sensor->id;
            if (hopeful) {
                finding.fix = setValue(seen.drawing, sensor->id, "lag_s", kUsualLag_s,
                                       {"Usual lag of a clip-on for {0}", {sensor->part->tag}});
            }
            findings.push_back(std::move(finding));
            break;  // one finding for a sensor that does both
        }
    }
}

}  // namespace tapward::review::rule
