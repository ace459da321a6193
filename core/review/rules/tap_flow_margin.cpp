// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <cmath>

#include "review/margin.h"
#include "review/rules/rules.h"
#include "review/seen.h"
#include "review/tap_flow.h"

namespace tapward::review::rule {

void tapFlowMargin(const Seen& seen, Findings& findings)
{
    for (const TapFlow& tap : tapFlows(seen.after)) {
        if (tap.throughHeater_m3s >= kSafeMargin * tap.activation_m3s) {
            continue;
        }
        Finding finding;
        const bool out = tap.throughHeater_m3s < tap.activation_m3s;
        finding.severity = out ? Severity::Caution : Severity::Note;
        finding.what =
            tap.supply == Supply::City
                ? Message("On city water {0}, fully open on hot, draws {1} through {2}, which lights at {3}.",
                          {tap.outlet->part->tag, Measure{tap.throughHeater_m3s, Quantity::Flow}, tap.heater->part->tag,
                           Measure{tap.activation_m3s, Quantity::Flow}})
                : Message("On the demand pump {0}, fully open on hot, draws {1} through {2}, which lights at {3}.",
                          {tap.outlet->part->tag, Measure{tap.throughHeater_m3s, Quantity::Flow}, tap.heater->part->tag,
                           Measure{tap.activation_m3s, Quantity::Flow}});
        finding.why = out ? Message("The heater stays out and the water stays cold, however long it runs.")
                          : Message("Half shut, or at a lower pressure, it may not light, or light and go out.");
        finding.remedy = "Take an outlet or head that passes more, or open a second tap; check the strainers.";
        finding.source = kPractice;
        finding.part = tap.outlet->id;
        findings.push_back(std::move(finding));
    }
}

}  // namespace tapward::review::rule
