// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>

#include "review/fix.h"
#include "review/rules/rules.h"
#include "review/seen.h"

namespace tapward::review::rule {

void pumpWithoutOwnCheck(const Seen& seen, Findings& findings)
{
    const auto pumps = seen.after.withRole(parts::Role::Circulator);
    const auto chainOf = [&](const study::PlantPart& part) {
        const int link = part.places.empty() ? -1 : part.places.front().link;
        return link < 0 ? nullptr : &seen.after.chains[static_cast<std::size_t>(link)];
    };
    for (const study::PlantPart* pump : pumps) {
        const auto* own = chainOf(*pump);
        if (!own || std::any_of(own->partsInOrder.begin(), own->partsInOrder.end(), [&](document::PartId id) {
                const study::PlantPart* part = seen.after.find(id);
                return part && part->model.role == parts::Role::CheckValve;
            })) {
            continue;
        }
        // Side by side: another pump's line leads between the same two joins.
        const auto beside = std::find_if(pumps.begin(), pumps.end(), [&](const study::PlantPart* other) {
            const auto* chain = chainOf(*other);
            return chain && chain != own && std::minmax(chain->from, chain->to) == std::minmax(own->from, own->to);
        });
        if (beside == pumps.end()) {
            continue;
        }
        Finding finding;
        finding.severity = Severity::Caution;
        finding.what = {"{0} stands beside {1} and has no check valve in its own line.",
                        {pump->part->tag, (*beside)->part->tag}};
        finding.why = "If it stops or is the weaker one, the other pump's water runs back through it instead of round "
                      "the loop.";
        finding.remedy = {"Put a check valve behind {0}, before the lines join.", {pump->part->tag}};
        finding.source = kPractice;
        finding.part = pump->id;
        const auto& kind = document::kindOf(*pump->part);
        if (const document::Part* behind = seen.drawing.pipeAt(pump->id, kind.inLine[1])) {
            finding.fix = putInto(seen.drawing, behind->id, "check_valve", behind->ends[1].part == pump->id,
                                  {"Add a check valve behind {0}", {pump->part->tag}});
        }
        findings.push_back(std::move(finding));
    }
}

}  // namespace tapward::review::rule
