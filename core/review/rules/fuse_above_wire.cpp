// SPDX-License-Identifier: GPL-3.0-or-later
#include <string>

#include "document/references.h"
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
        // The thinnest of what is drawn behind it: its own wire, and that of each load which names it.
        int gauge = parts::wireGauge(values.text("wire_gauge"));
        std::string load;
        for (const document::Part& other : seen.drawing.parts) {
            const parts::PartKind& loadKind = document::kindOf(other);
            if (other.id == part.id || !document::isPresent(other.stage, document::View::After)
                || !loadKind.field("fuse") || !loadKind.field("wire_gauge")) {
                continue;
            }
            const parts::Values loadValues = document::values(other);
            const int own = parts::wireGauge(loadValues.text("wire_gauge"));
            if (document::namedPart(loadValues.text("fuse")) == part.id && own > gauge) {
                gauge = own;
                load = other.tag;
            }
        }
        const double rating_A = values.number("rating_A");
        const auto most_A = largestFuse_A(gauge);
        if (!most_A || rating_A <= *most_A) {
            continue;
        }
        Finding finding;
        finding.severity = Severity::Danger;
        const Measure rating{rating_A, Quantity::Current}, most{*most_A, Quantity::Current};
        finding.what = load.empty() ? Message("{0} is rated {1}; AWG {2} wire behind it may carry {3}.",
                                              {part.tag, rating, std::int64_t{gauge}, most})
                                    : Message("{0} is rated {1}; the AWG {2} wire behind it to {4} may carry {3}.",
                                              {part.tag, rating, std::int64_t{gauge}, most, load});
        finding.why = "In a short circuit the wire gets hot before the fuse blows.";
        finding.remedy = {"Fit a fuse of {0} or less, or pull a thicker wire.", {Measure{*most_A, Quantity::Current}}};
        finding.source = gauge >= 16 ? "NEC 551.10(E) and ANSI/RVIA LV, not checked; the code in force decides"
                                     : "NEC 240.4(D); the code in force decides";
        finding.part = part.id;
        findings.push_back(std::move(finding));
    }
}

}  // namespace tapward::review::rule
