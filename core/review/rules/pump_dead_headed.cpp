// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>

#include "review/fix.h"
#include "review/rules/rules.h"
#include "review/seen.h"

namespace tapward::review::rule {

void pumpDeadHeaded(const Seen& seen, Findings& findings)
{
    const auto& path = seen.prediction.loop.returnPath;
    for (const study::PlantPart* controller : seen.after.withRole(parts::Role::Controller)) {
        const control::RunSpec& spec = controller->model.controller->spec;
        const study::PlantPart* slowest = nullptr;
        for (const study::PlantPart* valve : seen.after.withRole(parts::Role::MotorValve)) {
            const parts::MotorValveModel& model = *valve->model.motorValve;
            const bool inLoop = std::find(path.begin(), path.end(), valve->id) != path.end();
            if (inLoop && model.restOpening <= 0
                && (!slowest || model.travel_s > slowest->model.motorValve->travel_s)) {
                slowest = valve;
            }
        }
        if (spec.pumpAfterValve || !slowest || spec.pumpDelay_s >= slowest->model.motorValve->travel_s) {
            continue;
        }
        Finding finding;
        finding.severity = Severity::Note;
        finding.what = {"The pumps start {0} after {1} begins to open; it takes {2}.",
                        {Measure{spec.pumpDelay_s, Quantity::Time}, slowest->part->tag,
                         Measure{slowest->model.motorValve->travel_s, Quantity::Time}}};
        finding.why = "Until it is open they push against a shut valve; should it stick, they stay dead-headed and "
                      "heat their own water.";
        finding.remedy = "Let the pumps wait until the valve has finished its travel.";
        finding.source = kPractice;
        finding.part = controller->id;
        finding.fix = setValue(seen.drawing, controller->id, "pump_after_valve", true,
                               {"Let the pumps of {0} wait for the valve", {controller->part->tag}});
        findings.push_back(std::move(finding));
    }
}

}  // namespace tapward::review::rule
