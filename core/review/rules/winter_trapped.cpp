// SPDX-License-Identifier: GPL-3.0-or-later
#include <string>

#include "review/rules/rules.h"
#include "review/seen.h"
#include "review/winter.h"

namespace tapward::review::rule {

void winterTrapped(const Seen& seen, Findings& findings)
{
    const auto tags = [&](const std::vector<document::PartId>& ids) { return tagsInRuns(seen.drawing, ids); };
    for (const WinterSegment& segment : winterPlan(seen.drawing, seen.after, seen.pipes).full) {
        Finding finding;
        finding.severity = Severity::Caution;
        finding.what = {"Freeze: {1} of water in {0} neither drains nor blows out with the valves as they stand.",
                        {tags(segment.parts), Measure{segment.volume_m3, Quantity::Volume}}};
        finding.why = "Water left in a frozen coach bursts tube, pumps and valves.";
        const auto pumps = tags(seen.prediction.loop.circulators);
        if (segment.loopClearsIt && !segment.valves.empty()) {
            finding.remedy = {"Open {0} and run {1} with antifreeze while winterizing.", {tags(segment.valves), pumps}};
        } else if (segment.loopClearsIt) {
            finding.remedy = {"Run {0} with antifreeze while winterizing.", {pumps}};
        } else if (segment.valvesClearIt && !segment.valves.empty()) {
            finding.remedy = {"Open {0} while winterizing.", {tags(segment.valves)}};
        } else {
            finding.remedy = {"Fit a low-point drain at {0}, or open a joint there each autumn.",
                              {tagOf(seen, segment.lowest)}};
        }
        finding.source = kPractice;
        finding.part = segment.parts.front();
        findings.push_back(std::move(finding));
    }
}

}  // namespace tapward::review::rule
