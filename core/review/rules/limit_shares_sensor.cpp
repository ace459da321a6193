// SPDX-License-Identifier: GPL-3.0-or-later
#include "review/rules/rules.h"
#include "review/seen.h"

namespace tapward::review::rule {

void limitSharesSensor(const Seen& seen, Findings& findings)
{
    for (const study::PlantPart* controller : seen.after.withRole(parts::Role::Controller)) {
        const parts::ControllerModel& box = *controller->model.controller;
        const study::PlantPart* sensor = partCalled(seen, box.limitSensor);
        if (!box.spec.highLimit || !sensor || box.limitSensor != box.stopSensor) {
            continue;
        }
        Finding finding;
        finding.severity = Severity::Caution;
        finding.what = {"The high limit of {0} reads the same sensor as its stop, {1}.",
                        {controller->part->tag, sensor->part->tag}};
        finding.why = "If that sensor reads low or comes off, the stop and the limit fail together.";
        finding.remedy = "Give the high limit a sensor of its own, near the tap.";
        finding.source = kPractice;
        finding.part = controller->id;
        findings.push_back(std::move(finding));
    }
}

}  // namespace tapward::review::rule
