// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>

#include "review/rules/rules.h"
#include "review/seen.h"

namespace tapward::review::rule {

namespace {

bool isEstimated(const document::Part& part, std::string_view key)
{
    const parts::Values values = document::values(part);
    return values.kind().field(key) && values.basis(key) == parts::Basis::Estimated;
}

/// Most of the hot way by length is a guess.
void hotPathLengths(const Seen& seen, Findings& findings)
{
    double all_m = 0, guessed_m = 0, longest_m = 0;
    document::PartId longest = document::kNoPart;
    for (const document::PartId id : seen.prediction.loop.hotPath) {
        const document::Part* pipe = seen.drawing.find(id);
        if (!pipe || !document::kindOf(*pipe).isPipe || !document::kindOf(*pipe).field("length_m")) {
            continue;
        }
        const double length_m = document::values(*pipe).number("length_m");
        all_m += length_m;
        if (isEstimated(*pipe, "length_m")) {
            guessed_m += length_m;
            if (length_m > longest_m) {
                longest_m = length_m;
                longest = id;
            }
        }
    }
    if (longest == document::kNoPart || guessed_m <= 0.5 * all_m) {
        return;
    }
    Finding finding;
    finding.severity = Severity::Note;
    finding.what = {
        "Measure this first: {0} of the {1} between heater and tap are estimated, the longest piece is {2}.",
        {Measure{guessed_m, Quantity::Length}, Measure{all_m, Quantity::Length}, tagOf(seen, longest)}};
    finding.why = "The volume to pump, the time and the stop follow these lengths directly.";
    finding.remedy = "Trace the pipe and type the lengths as measured.";
    finding.source = kPractice;
    finding.part = longest;
    findings.push_back(std::move(finding));
}

void activationFlow(const Seen& seen, Findings& findings)
{
    const study::LoopAnswer& loop = seen.prediction.loop;
    const document::Part* heater = seen.drawing.find(loop.heater);
    if (!heater || !loop.activationFlow_m3s || !loop.exists || !isEstimated(*heater, "activation_flow_m3s")) {
        return;
    }
    Finding finding;
    finding.severity = Severity::Note;
    finding.what = {"Measure this first: the flow at which {0} lights, {1}, is estimated.",
                    {heater->tag, Measure{*loop.activationFlow_m3s, Quantity::Flow}}};
    finding.why = "Whether the loop lights the heater hangs on this number.";
    finding.remedy = "Take it from the heater's data sheet, or open a tap slowly into a bucket and note the flow at "
                     "which it lights.";
    finding.source = kPractice;
    finding.part = heater->id;
    findings.push_back(std::move(finding));
}

}  // namespace

void restsOnEstimates(const Seen& seen, Findings& findings)
{
    activationFlow(seen, findings);
    hotPathLengths(seen, findings);
}

}  // namespace tapward::review::rule
