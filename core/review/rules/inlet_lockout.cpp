// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>

#include "review/rules/rules.h"
#include "review/scald.h"
#include "review/seen.h"
#include "study/cold_return.h"

namespace tapward::review::rule {

void inletLockout(const Seen& seen, Findings& findings)
{
    const auto* entering = hottest(seen, {study::HeatPlace::ColdEntry});
    if (!entering || entering->hottest_C <= kColdLineLimit_C) {
        return;
    }
    const study::ColdReturn way = coldReturn(seen.after, seen.prediction.loop);
    if (!way.byColdLine) {
        return;
    }
    for (const study::PlantPart* controller : seen.after.withRole(parts::Role::Controller)) {
        const control::RunSpec& spec = controller->model.controller->spec;
        Finding finding;
        finding.severity = Severity::Caution;
        finding.what =
            spec.inletLockout
                ? Message("Water of {0} enters the cold line although {1} has a lockout on the heater's inlet, at {2}.",
                          {seen.heat(entering->hottest_C), controller->part->tag,
                           Measure{spec.inletLockout_C, Quantity::Temperature}})
                : Message("Water of {0} enters the cold line, and {1} has no lockout on the heater's inlet.",
                          {seen.heat(entering->hottest_C), controller->part->tag});
        finding.why = {"Water entering a cold line should stay at or below {0}.",
                       {Measure{kColdLineLimit_C, Quantity::Temperature}}};
        finding.remedy =
            spec.inletLockout
                ? Message("End the run sooner, at the tap's own sensor, or return by a line of its own.")
                : Message("Sense the water to the heater and end the run at {0} there, or return by a line of its own.",
                          {Measure{kColdLineLimit_C, Quantity::Temperature}});
        finding.source = "IECC C404, demand recirculation: water entering the cold pipe not above 104 °F (40 °C)";
        finding.part = controller->id;
        shownBy(finding, *entering);
        findings.push_back(std::move(finding));
    }
}

}  // namespace tapward::review::rule
