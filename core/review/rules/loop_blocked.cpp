// SPDX-License-Identifier: GPL-3.0-or-later
#include "review/rules/rules.h"
#include "review/seen.h"

namespace tapward::review::rule {

void loopBlocked(const Seen& seen, Findings& findings)
{
    const study::LoopAnswer& loop = seen.prediction.loop;
    const bool runs = loop.flow_m3s && *loop.flow_m3s > 0;
    if (loop.circulators.empty() || runs || loop.bypass != document::kNoPart) {
        return;  // a coach without a loop needs none; a way past the heater is another rule's
    }
    const study::PlantPart* blocking = seen.after.find(loop.blockedBy);
    if (blocking && blocking->model.role == parts::Role::CheckValve && !loop.headUsedUp) {
        return;  // it faces backward: that rule says so
    }
    Finding finding;
    finding.severity = Severity::Caution;
    if (loop.headUsedUp) {
        finding.what = loop.reason;
        finding.why = "Without flow the heater does not light and the tap stays cold.";
        finding.remedy = "Fit a check valve that opens more easily, or pumps with more head: two in series add theirs.";
        finding.part = loop.blockedBy != document::kNoPart ? loop.blockedBy : loop.circulators.front();
    } else if (loop.blockedBy != document::kNoPart) {
        finding.what = {"No water goes round the loop: {0} blocks it.", {tagOf(seen, loop.blockedBy)}};
        finding.why = loop.reason;
        finding.remedy = {"Look at {0}: its direction, its setting and its supply.", {tagOf(seen, loop.blockedBy)}};
        finding.part = loop.blockedBy;
    } else {
        finding.what = loop.reason.empty() ? Message("No water goes round the loop.") : loop.reason;
        finding.why = "Without flow the heater does not light and the tap stays cold.";
        finding.remedy = "Follow the loop from the heater's outlet to its inlet and join what is missing.";
        finding.part = loop.circulators.front();
    }
    finding.source = kPractice;
    findings.push_back(std::move(finding));
}

}  // namespace tapward::review::rule
