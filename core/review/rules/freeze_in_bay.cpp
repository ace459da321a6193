// SPDX-License-Identifier: GPL-3.0-or-later
#include "review/rules/rules.h"
#include "review/seen.h"

namespace tapward::review::rule {

void freezeInBay(const Seen& seen, Findings& findings)
{
    constexpr double kFreezing_C = 0;
    const document::Case* coldest = nullptr;
    for (const document::Case& script : seen.drawing.cases) {
        if (script.ambient_C && *script.ambient_C <= kFreezing_C
            && (!coldest || *script.ambient_C < *coldest->ambient_C)) {
            coldest = &script;
        }
    }
    if (!coldest) {
        return;
    }
    Finding finding;
    finding.severity = Severity::Caution;
    finding.what = {"In case '{0}' the air around the pipes is at {1}: water that stands there freezes.",
                    {coldest->name, Measure{*coldest->ambient_C, Quantity::Temperature}}};
    finding.why = "Ice bursts tube, pumps and valves; what is predicted here is water.";
    finding.remedy = "Keep the bay above freezing, or winterize before such a day. A loop that runs now and then is no "
                     "protection: it stops with the battery.";
    finding.source = kPractice;
    finding.caseName = coldest->name;
    findings.push_back(std::move(finding));
}

}  // namespace tapward::review::rule
