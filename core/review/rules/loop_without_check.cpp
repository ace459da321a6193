// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>

#include "review/rules/rules.h"
#include "review/seen.h"

namespace tapward::review::rule {

void loopWithoutCheck(const Seen& seen, Findings& findings)
{
    const study::LoopAnswer& loop = seen.prediction.loop;
    if (!loop.exists || loop.returnPath.empty()) {
        return;
    }
    const auto isCheck = [&](document::PartId id) {
        const study::PlantPart* part = seen.after.find(id);
        return part && part->model.role == parts::Role::CheckValve;
    };
    if (std::any_of(loop.returnPath.begin(), loop.returnPath.end(), isCheck)) {
        return;
    }
    Finding finding;
    finding.severity = Severity::Caution;
    finding.what = "No check valve stands in the return of the loop.";
    finding.why = "Through a stopped pump water runs both ways: an open tap can draw cold water into the hot line, or "
                  "hot into the cold.";
    finding.remedy = "Put a check valve in the return, its arrow toward the heater's inlet.";
    finding.source = kPractice;
    finding.part = loop.circulators.empty() ? loop.returnTee : loop.circulators.front();
    findings.push_back(std::move(finding));
}

}  // namespace tapward::review::rule
