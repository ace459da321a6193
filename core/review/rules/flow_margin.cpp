// SPDX-License-Identifier: GPL-3.0-or-later
#include "review/margin.h"
#include "review/rules/rules.h"
#include "review/seen.h"

namespace tapward::review::rule {

void flowMargin(const Seen& seen, Findings& findings)
{
    const study::LoopAnswer& loop = seen.prediction.loop;
    if (!loop.flow_m3s || !loop.activationFlow_m3s || *loop.flow_m3s <= 0) {
        return;
    }
    const double flow = *loop.flow_m3s;
    const double needed = *loop.activationFlow_m3s;
    Finding finding;
    finding.severity = Severity::Caution;
    finding.source = kPractice;
    finding.part = loop.heater;
    finding.remedy = "Ease the loop where its head goes (head budget), give the pumps thicker wire, or add a pump.";
    if (flow < needed) {
        finding.what = {"The loop's {0} is below the {1} at which {2} lights.",
                        {Measure{flow, Quantity::Flow}, Measure{needed, Quantity::Flow}, tagOf(seen, loop.heater)}};
        finding.why = "The pumps run, but the heater stays out and the tap stays cold.";
    } else if (flow < kSafeMargin * needed) {
        finding.what = {"The loop's {0} is only {1} above the {2} at which {3} lights.",
                        {Measure{flow, Quantity::Flow}, Measure{flow / needed - 1, Quantity::Percent},
                         Measure{needed, Quantity::Flow}, tagOf(seen, loop.heater)}};
        finding.why = "Lower volts, a clogging strainer or colder water may take the margin: it may not light, or "
                      "light and go out.";
    } else if (loop.flowLowVolts_m3s && *loop.flowLowVolts_m3s < needed) {
        finding.severity = Severity::Note;
        finding.what = {"On a low battery the loop falls to {0}, below the {1} at which {2} lights.",
                        {Measure{*loop.flowLowVolts_m3s, Quantity::Flow}, Measure{needed, Quantity::Flow},
                         tagOf(seen, loop.heater)}};
        finding.why = {"At {0} the pumps turn slower; a volt is worth more than most fittings.",
                       {Measure{study::kLowVolts, Quantity::Voltage}}};
    } else {
        return;
    }
    findings.push_back(std::move(finding));
}

}  // namespace tapward::review::rule
