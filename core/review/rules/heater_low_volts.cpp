// SPDX-License-Identifier: GPL-3.0-or-later
#include "review/rules/rules.h"
#include "review/seen.h"

namespace tapward::review::rule {

void heaterLowVolts(const Seen& seen, Findings& findings)
{
    const study::LoopAnswer& loop = seen.prediction.loop;
    if (!loop.heaterVolts || !loop.heaterLeastVolts || *loop.heaterVolts >= *loop.heaterLeastVolts) {
        return;
    }
    Finding finding;
    finding.severity = Severity::Caution;
    finding.what = {"{0} gets {1} while the pumps run and needs {2}: it will not light.",
                    {tagOf(seen, loop.heater), Measure{*loop.heaterVolts, Quantity::Voltage},
                     Measure{*loop.heaterLeastVolts, Quantity::Voltage}}};
    finding.why = "Below its least voltage the heater's board does nothing, whatever the flow.";
    finding.remedy =
        "Charge the battery, pull thicker or shorter wire to the heater, or feed the pumps by a wire of their "
        "own.";
    finding.source = "ignition boards stop at about 10.5 V: makers' sheets, not checked";
    finding.part = loop.heater;
    findings.push_back(std::move(finding));
}

}  // namespace tapward::review::rule
