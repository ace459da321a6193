// SPDX-License-Identifier: GPL-3.0-or-later
#include "review/rules/rules.h"
#include "review/seen.h"

namespace tapward::review::rule {

void caseWithoutAnswer(const Seen& seen, Findings& findings)
{
    if (seen.drawing.parts.empty()) {
        return;  // just begun: nothing is wrong with it
    }
    for (const study::CaseResult& result : seen.prediction.cases) {
        if (!result.noAnswer) {
            continue;
        }
        const document::Part* part = seen.drawing.findTag(result.noAnswer->where);
        Finding finding;
        finding.severity = Severity::Caution;
        finding.what = result.noAnswer->what;
        finding.why = {"The case '{0}' cannot be run.", {result.name}};
        finding.remedy = result.noAnswer->remedy;
        finding.source = kPractice;
        finding.part = part ? part->id : document::kNoPart;
        finding.caseName = result.name;
        findings.push_back(std::move(finding));
    }
}

}  // namespace tapward::review::rule
