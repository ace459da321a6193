// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>

#include "review/pressure_rating.h"
#include "review/rules/rules.h"
#include "review/seen.h"
#include "review/steady.h"
#include "review/trapped.h"

namespace tapward::review::rule {

void trappedExpansion(const Seen& seen, Findings& findings)
{
    for (const ClosedSection& section : closedSections(seen)) {
        if (section.closedBy.empty()) {
            continue;  // only ends without a pipe: another rule's, while the coach is still being drawn
        }
        const double atRest_Pa = highestAtRest_Pa(seen.after, outletJunction(seen.after, *section.heater)).value_or(0);
        if (atRest_Pa + section.rise_Pa <= kTubeRating_Pa) {
            continue;  // plastic tube takes it up
        }
        std::string closed;
        for (const document::PartId id : section.closedBy) {
            closed += (closed.empty() ? "" : ", ") + tagOf(seen, id);
        }
        Finding finding;
        finding.severity = Severity::Caution;
        finding.what = {"Heated with every tap shut, {0} has no room for its water to grow: closed in by {1}.",
                        {section.heater->part->tag, closed}};
        finding.why = {"From {0} to {1} its {2} would raise the pressure by up to {3}, were it not for the relief "
                       "valve; air, hoses and seals take some of it.",
                       {Measure{section.from_C, Quantity::Temperature}, Measure{section.to_C, Quantity::Temperature},
                        Measure{section.heated_m3, Quantity::Volume}, Measure{section.rise_Pa, Quantity::Pressure}}};
        finding.remedy = "Fit an accumulator or expansion vessel on the cold line behind the last check valve; never "
                         "plug a relief valve that weeps.";
        finding.source = "thermal growth and compressibility of water, IAPWS-IF97; stretch of a thin-walled tube";
        finding.part = section.heater->id;
        findings.push_back(std::move(finding));
    }
}

}  // namespace tapward::review::rule
