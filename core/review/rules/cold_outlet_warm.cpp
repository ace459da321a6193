// SPDX-License-Identifier: GPL-3.0-or-later
#include <string>

#include "review/rules/rules.h"
#include "review/scald.h"
#include "review/seen.h"

namespace tapward::review::rule {

void coldOutletWarm(const Seen& seen, Findings& findings)
{
    // One finding for those that people drink from and one for the rest, each with its hottest.
    for (const bool drinking : {true, false}) {
        const study::HotPlace* worst = nullptr;
        std::string tags;
        for (const study::PlantPart* outlet : seen.after.withRole(parts::Role::Outlet)) {
            const study::HotPlace* heat = hottest(seen, {study::HeatPlace::OutletCold}, outlet->id);
            if (!heat || heat->hottest_C <= kColdLineLimit_C || !outlet->model.outlet
                || outlet->model.outlet->drinking != drinking) {
                continue;
            }
            tags += (tags.empty() ? "" : ", ") + outlet->part->tag;
            worst = !worst || heat->hottest_C > worst->hottest_C ? heat : worst;
        }
        if (!worst) {
            continue;
        }
        Finding finding;
        finding.severity = worst->hottest_C > kScaldGuidance_C ? Severity::Danger : Severity::Caution;
        finding.what = drinking ? Message("Cold water at {0} reaches {1}, and people drink from it.",
                                          {tags, seen.heat(worst->hottest_C)})
                                : Message("Cold water at {0} reaches {1}.", {tags, seen.heat(worst->hottest_C)});
        finding.why = worst->faulty ? Message("With this fault the cold line draws hot water; nobody expects it there.")
                                    : Message("The loop leaves warm water in the cold line; nobody expects it there.");
        finding.remedy = "Return the water by a line of its own, add a check valve, or keep the run short enough that "
                         "the line stays cool.";
        finding.source = "IECC C404, demand recirculation: water entering the cold pipe not above 104 °F (40 °C)";
        finding.part = worst->part;
        shownBy(finding, *worst);
        findings.push_back(std::move(finding));
    }
}

}  // namespace tapward::review::rule
