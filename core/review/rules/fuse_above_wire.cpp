// SPDX-License-Identifier: GPL-3.0-or-later
#include "parts/wire_gauge.h"
#include "review/rules/rules.h"
#include "review/seen.h"
#include "review/wire.h"

namespace tapward::review::rule {

void fuseAboveWire(const Seen& seen, Findings& findings)
{
    for (const document::Part& part : seen.drawing.parts) {
        const parts::PartKind& kind = document::kindOf(part);
        if (!document::isPresent(part.stage, document::View::After) || !kind.field("rating_A")
            || !kind.field("wire_gauge")) {
            continue;
        }
        const parts::Values values = document::values(part);
        const int gauge = parts::wireGauge(values.text("wire_gauge"));
        const double rating_A = values.number("rating_A");
        const auto most_A = largestFuse_A(gauge);
        if (!most_A || rating_A <= *most_A) {
            continue;
        }
        Finding finding;
        finding.severity = Severity::Danger;
        finding.what = {
            "{0} is rated {1}; AWG {2} wire behind it may carry {3}.",
            {part.tag, Measure{rating_A, Quantity::Current}, std::int64_t{gauge}, Measure{*most_A, Quantity::Current}}};
        finding.why = "In a short circuit the wire gets hot before the fuse blows.";
        finding.remedy = {"Fit a fuse of {0} or less, or pull a thicker wire.", {Measure{*most_A, Quantity::Current}}};
        finding.source = gauge >= 16 ? "NEC 551.10(E) and ANSI/RVIA LV, from memory; the code in force decides"
                                     : "NEC 240.4(D); the code in force decides";
        finding.part = part.id;
        findings.push_back(std::move(finding));
    }
}

}  // namespace tapward::review::rule
