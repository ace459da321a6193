// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>

#include "review/fix.h"
#include "review/rules/rules.h"
#include "review/seen.h"

namespace tapward::review::rule {

void crossoverOpen(const Seen& seen, Findings& findings)
{
    for (const study::PlantPart* heater : heaters(seen.after)) {
        const Pipes::Piece* own = seen.pipes.find(heater->id);
        const int hot = outletJunction(seen.after, *heater);
        if (!own || hot < 0 || own->u < 0 || own->v < 0) {
            continue;
        }
        // From the cold side to the hot one past the heater, as the valves stand. Pumps are another rule's.
        const auto bars = [](const Pipes::Piece& piece) {
            using parts::Role;
            const Role role = piece.part->model.role;
            return piece.shut || role == Role::Tankless || role == Role::StorageHeater || role == Role::Circulator
                   || role == Role::MixingValve;
        };
        const int cold = own->other(hot);
        const auto leaks = [&](document::PartId without) {
            return seen.pipes.reached({cold},
                                      [&](const Pipes::Piece& piece) {
                                          return bars(piece) || piece.part->id == without;
                                      })[static_cast<std::size_t>(hot)]
                   != 0;
        };
        if (!leaks(document::kNoPart)) {
            continue;
        }
        // A valve that ends it by being shut.
        const study::PlantPart* valve = nullptr;
        for (const study::PlantPart* one : seen.after.withRole(parts::Role::HandValve)) {
            valve = !valve && !leaks(one->id) ? one : valve;
        }
        Finding finding;
        finding.severity = Severity::Caution;
        finding.what =
            valve ? Message("{0} stands open and lets cold water past {1} into the hot line.",
                            {valve->part->tag, heater->part->tag})
                  : Message("Cold water can pass {0} into the hot line through an open way.", {heater->part->tag});
        finding.why = "The tap stays lukewarm, and a tankless heater may not see enough flow to light.";
        finding.remedy = valve ? Message("Shut {0}.", {valve->part->tag})
                               : Message("Find where hot and cold are joined, and put a check valve there.");
        finding.source = kPractice;
        finding.part = valve ? valve->id : heater->id;
        if (valve) {
            finding.fix = setValue(seen.drawing, valve->id, "opening", 0.0, {"Shut {0}", {valve->part->tag}});
        }
        findings.push_back(std::move(finding));
    }
}

}  // namespace tapward::review::rule
