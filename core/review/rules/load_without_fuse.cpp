// SPDX-License-Identifier: GPL-3.0-or-later
#include "review/rules/rules.h"
#include "review/seen.h"
#include "study/wiring_net.h"

namespace tapward::review::rule {

void loadWithoutFuse(const Seen& seen, Findings& findings)
{
    const study::WiringNet wiring(seen.after);
    for (const study::Load& load : wiring.loads()) {
        const document::Part* part = seen.drawing.find(load.part);
        // What the coach came with has its fuse in a panel that nobody draws.
        if (wiring.branches()[static_cast<std::size_t>(load.branch)].fuse != document::kNoPart || !part
            || part->stage != document::Stage::Added) {
            continue;
        }
        Finding finding;
        finding.severity = Severity::Caution;
        finding.what = {"{0} is added without a fuse.", {part->tag}};
        finding.why = "In a short circuit the battery can set an unfused wire on fire.";
        finding.remedy = {"Draw the fuse at the source end, not above what the wire may carry, and name it in the "
                          "details of {0}.",
                          {part->tag}};
        finding.source = "NEC 551.10(E) and ANSI/RVIA LV, not checked; the code in force decides";
        finding.part = part->id;
        findings.push_back(std::move(finding));
    }
}

}  // namespace tapward::review::rule
