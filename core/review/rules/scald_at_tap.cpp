// SPDX-License-Identifier: GPL-3.0-or-later
#include "review/rules/rules.h"
#include "review/scald.h"
#include "review/seen.h"

namespace tapward::review::rule {

namespace {

/// The outlet whose water is that hot in the case; the loop's tap when it stands ready at the join.
document::PartId hottestOutlet(const Seen& seen, const Highest& hottest)
{
    const study::CaseResult* result = seen.prediction.find(hottest.caseName);
    document::PartId found = seen.prediction.loop.tap;
    double most_C = hottest.value - 1.0;  // the curve is recorded once a second and may miss the peak
    for (const study::Series& series : result ? result->series : std::vector<study::Series>{}) {
        if (series.id.compare(0, 4, "tap.") != 0) {
            continue;
        }
        for (const double celsius : series.values) {
            if (celsius > most_C) {
                most_C = celsius;
                found = series.part;
            }
        }
    }
    return found;
}

}  // namespace

void scaldAtTap(const Seen& seen, Findings& findings)
{
    const auto hottest = highest(seen, "hottest_tap");
    if (!hottest || hottest->value <= kScaldGuidance_C) {
        return;
    }
    Finding finding;
    finding.severity = Severity::Danger;
    finding.what = {"Water at a tap reaches {0}. Skin burns in about {1}; children and elders sooner.",
                    {Measure{hottest->value, Quantity::Temperature},
                     Measure{wholeBurnSeconds(hottest->value).value_or(0), Quantity::Time}}};
    finding.why = {"Above {0} the time in which a person can pull back gets short.",
                   {Measure{kScaldGuidance_C, Quantity::Temperature}}};
    finding.remedy =
        "Set the heater lower, end the run sooner, or fit a valve that limits the temperature at the outlet.";
    finding.source =
        "CPSC tap-water scald alert 5098; Moritz & Henriques (1947); hospital burn-prevention table: the lowest";
    finding.part = hottestOutlet(seen, *hottest);
    finding.caseName = hottest->caseName;
    findings.push_back(std::move(finding));
}

}  // namespace tapward::review::rule
