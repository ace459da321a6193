// SPDX-License-Identifier: GPL-3.0-or-later
#include <string>

#include "review/rules/rules.h"
#include "review/seen.h"

namespace tapward::review::rule {
namespace {

/// A protection of the controller by its field, and the sensor it hangs on.
struct Leaning {
    const char* field;
    bool on;
    const std::string& sensor;
};

}  // namespace

void protectionWithoutSensor(const Seen& seen, Findings& findings)
{
    for (const study::PlantPart* controller : seen.after.withRole(parts::Role::Controller)) {
        const parts::ControllerModel& box = *controller->model.controller;
        const control::RunSpec& spec = box.spec;
        std::vector<Text> blind;
        for (const Leaning& one : {Leaning{"high_limit", spec.highLimit, box.limitSensor},
                                   Leaning{"stop_by_temperature", spec.stopByTemperature, box.stopSensor},
                                   Leaning{"stop_by_volume", spec.stopByVolume, box.flowSensor},
                                   Leaning{"refuse_when_warm", spec.refuseWhenWarm, box.stopSensor},
                                   Leaning{"inlet_lockout", spec.inletLockout, box.inletSensor}}) {
            if (one.on && !partCalled(seen, one.sensor)) {
                blind.push_back(document::kindOf(*controller->part).field(one.field)->label);
            }
        }
        if (blind.empty()) {
            continue;
        }
        Finding finding;
        finding.severity = Severity::Caution;
        finding.what = {"{0} has these switched on without a sensor for them: {1}.", {controller->part->tag, blind}};
        finding.why = "Without its sensor none of them ever acts; they count for nothing here.";
        finding.remedy = {"Name the sensor in {0}, or switch it off.", {controller->part->tag}};
        finding.source = kPractice;
        finding.part = controller->id;
        findings.push_back(std::move(finding));
    }
}

}  // namespace tapward::review::rule
