// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>

#include "review/cold_return.h"
#include "review/rules/rules.h"
#include "review/scald.h"
#include "review/seen.h"

namespace tapward::review::rule {

void inletLockout(const Seen& seen, Findings& findings)
{
    const auto inlet = highest(seen, "hottest_heater_inlet");
    if (!inlet || inlet->value <= kColdLineLimit_C) {
        return;
    }
    const ColdReturn way = coldReturn(seen);
    if (!way.byColdLine) {
        return;
    }
    for (const study::PlantPart* controller : seen.after.withRole(parts::Role::Controller)) {
        const control::RunSpec& spec = controller->model.controller->spec;
        if (spec.inletLockout && spec.inletLockout_C <= kColdLineLimit_C + 0.5) {
            continue;
        }
        Finding finding;
        finding.severity = Severity::Caution;
        finding.what = {"Water at {0} runs through the cold line, and {1} has no lockout on the heater's inlet.",
                        {Measure{inlet->value, Quantity::Temperature}, controller->part->tag}};
        finding.why = {"Water entering a cold line should stay at or below {0}.",
                       {Measure{kColdLineLimit_C, Quantity::Temperature}}};
        finding.remedy = {"Sense the water to the heater and end the run at {0} there, or return by a line of its own.",
                          {Measure{kColdLineLimit_C, Quantity::Temperature}}};
        finding.source = "IECC C404, demand recirculation: water entering the cold pipe not above 104 °F (40 °C)";
        finding.part = controller->id;
        finding.caseName = inlet->caseName;
        findings.push_back(std::move(finding));
    }
}

}  // namespace tapward::review::rule
