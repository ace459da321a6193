// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>

#include "review/rules/rules.h"
#include "review/seen.h"
#include "study/cold_return.h"

namespace tapward::review::rule {

void filterOnReturn(const Seen& seen, Findings& findings)
{
    const study::LoopAnswer& loop = seen.prediction.loop;
    const study::ColdReturn way = coldReturn(seen.after, seen.prediction.loop);
    for (const study::PlantPart& part : seen.after.parts) {
        if (!document::kindOf(*part.part).field("cartridge")) {
            continue;
        }
        const bool onReturn =
            std::find(loop.returnPath.begin(), loop.returnPath.end(), part.id) != loop.returnPath.end();
        const bool onBranch = std::find(way.filters.begin(), way.filters.end(), part.id) != way.filters.end();
        if (!onReturn && !onBranch) {
            continue;
        }
        Finding finding;
        finding.severity = Severity::Caution;
        finding.what = onReturn ? Message("{0} stands in the return of the loop.", {part.part->tag})
                                : Message("{0} hangs on the cold line the loop returns by.", {part.part->tag});
        finding.why = onReturn ? Message("Warm water can release what a cartridge holds and shorten its life, and a "
                                         "clogging cartridge takes the loop's flow.")
                               : Message("Warm water reaches it after a run; it can release what a cartridge holds.");
        finding.remedy = onReturn ? Message("Move the filter out of the loop.")
                                  : Message("Feed the filter from the cold line ahead of the loop's return.");
        finding.source = kPractice;
        finding.part = part.id;
        findings.push_back(std::move(finding));
    }
}

}  // namespace tapward::review::rule
