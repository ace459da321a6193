// SPDX-License-Identifier: GPL-3.0-or-later
#include "review/rules/rules.h"
#include "review/seen.h"

namespace tapward::review::rule {

void circulatorTooHot(const Seen& seen, Findings& findings)
{
    const auto hottest = highest(seen, "hottest_heater_outlet");
    if (!hottest) {
        return;
    }
    for (const study::PlantPart* pump : seen.after.withRole(parts::Role::Circulator)) {
        const double limit_C = pump->model.circulator->temperatureLimit_C;
        if (limit_C <= 0 || hottest->value <= limit_C) {
            continue;
        }
        Finding finding;
        finding.severity = Severity::Caution;
        finding.what = {"Water leaves the heater at up to {0}; {1} is rated for {2}.",
                        {Measure{hottest->value, Quantity::Temperature}, pump->part->tag,
                         Measure{limit_C, Quantity::Temperature}}};
        finding.why = "If the run goes on, the pump meets this water.";
        finding.remedy = "Take a hot-rated pump, set it on the cooler side, or end the run before the hot water reaches it.";
        finding.source = "the pump's own rating";
        finding.part = pump->id;
        finding.caseName = hottest->caseName;
        findings.push_back(std::move(finding));
    }
}

}  // namespace tapward::review::rule
