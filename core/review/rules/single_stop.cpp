// SPDX-License-Identifier: GPL-3.0-or-later
#include "review/rules/rules.h"
#include "review/seen.h"

namespace tapward::review::rule {

void singleStop(const Seen& seen, Findings& findings)
{
    for (const study::PlantPart* controller : seen.after.withRole(parts::Role::Controller)) {
        if (controller->model.controller->spec.highLimit) {
            continue;
        }
        Finding finding;
        finding.severity = Severity::Caution;
        finding.what = {"{0} has no independent high limit.", {controller->part->tag}};
        finding.why = "If its stop, its relay or its sensor fails, nothing else ends the run.";
        finding.remedy = "Fit a separate high limit near the tap that cuts the pumps by itself.";
        finding.source = kPractice;
        finding.part = controller->id;
        findings.push_back(std::move(finding));
    }
}

}  // namespace tapward::review::rule
