// SPDX-License-Identifier: GPL-3.0-or-later
#include "review/rules/rules.h"
#include "review/scald.h"
#include "review/seen.h"

namespace tapward::review::rule {

void scaldAtTap(const Seen& seen, Findings& findings)
{
    using enum study::HeatPlace;
    const auto* heat = hottest(seen, {OutletHot, OutletCold});
    if (!heat || heat->hottest_C <= kScaldGuidance_C) {
        return;
    }
    Finding finding;
    finding.severity = Severity::Danger;
    finding.what = {"Water at {0} reaches {1}. Skin burns in about {2}; children and elders sooner.",
                    {tagOf(seen, heat->part), seen.heat(heat->hottest_C),
                     Measure{wholeBurnSeconds(heat->hottest_C).value_or(0), Quantity::Time}}};
    finding.why = {"Above {0} the time in which a person can pull back gets short.",
                   {Measure{kScaldGuidance_C, Quantity::Temperature}}};
    finding.remedy =
        "Set the heater lower, end the run sooner, or fit a valve that limits the temperature at the outlet.";
    finding.source =
        "CPSC tap-water scald alert 5098; Moritz & Henriques (1947); hospital burn-prevention table: the lowest";
    finding.part = heat->part;
    shownBy(finding, *heat);
    findings.push_back(std::move(finding));
}

}  // namespace tapward::review::rule
