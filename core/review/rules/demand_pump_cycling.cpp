// SPDX-License-Identifier: GPL-3.0-or-later
#include "review/rules/rules.h"
#include "review/seen.h"
#include "review/tap_flow.h"

namespace tapward::review::rule {

void demandPumpCycling(const Seen& seen, Findings& findings)
{
    for (const CyclingTap& tap : cyclingTaps(seen.after)) {
        Finding finding;
        finding.severity = Severity::Caution;
        finding.what = {"At {0} the demand pump's flow swings from {1} to {2}, across the {3} of {4}.",
                        {tap.outlet->part->tag, Measure{tap.least_m3s, Quantity::Flow},
                         Measure{tap.most_m3s, Quantity::Flow}, Measure{tap.activation_m3s, Quantity::Flow},
                         tap.heater->part->tag}};
        finding.why = "The heater lights as the pump fills up to its cut-out and goes out as the pressure falls to its "
                      "cut-in: warm and cold by turns.";
        finding.remedy = "Take an outlet that passes more, raise the pump's cut-in, or add an accumulator of a size "
                         "the pump's maker allows.";
        finding.source = kPractice;
        finding.part = tap.outlet->id;
        findings.push_back(std::move(finding));
    }
}

}  // namespace tapward::review::rule
