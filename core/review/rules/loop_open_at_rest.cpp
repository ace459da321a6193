// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>

#include "review/fix.h"
#include "review/rules/rules.h"
#include "review/seen.h"
#include "study/cold_return.h"

namespace tapward::review::rule {

void loopOpenAtRest(const Seen& seen, Findings& findings)
{
    const study::LoopAnswer& loop = seen.prediction.loop;
    if (!loop.exists || loop.returnPath.empty() || !coldReturn(seen.after, seen.prediction.loop).byColdLine) {
        return;  // a line of its own leads to the heater only
    }
    const study::PlantPart* valve = nullptr;
    for (const document::PartId id : loop.returnPath) {
        const Pipes::Piece* piece = seen.pipes.find(id);
        if (piece && piece->shut) {
            return;
        }
        if (piece && piece->part->model.motorValve) {
            valve = piece->part;
        }
    }
    Finding finding;
    finding.severity = Severity::Caution;
    finding.what =
        valve ? Message("{0} stands open between runs, and the loop returns by the cold line.", {valve->part->tag})
              : Message("No valve shuts the loop between runs, and it returns by the cold line.");
    finding.why = "An open cold tap draws hot water through the stopped pumps; a check valve does not stop that, it "
                  "points the same way.";
    finding.remedy = valve ? Message("Let {0} rest closed and open for a run.", {valve->part->tag})
                           : Message("Put a motorized valve into the loop that rests closed.");
    finding.source = kPractice;
    finding.part = valve ? valve->id : loop.circulators.front();
    if (valve) {
        finding.fix = setValue(seen.drawing, valve->id, "rest", std::string("closed"),
                               {"Let {0} rest closed", {valve->part->tag}});
    }
    findings.push_back(std::move(finding));
}

}  // namespace tapward::review::rule
