// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>

#include "review/fix.h"
#include "review/rules/rules.h"
#include "review/seen.h"

namespace tapward::review::rule {
namespace {

/// Whether supply and taps still reach the heater without this part: then it is no part of the mains.
bool mainsStand(const Seen& seen, const study::PlantPart& part, int cold, int hot,
                const std::function<bool(const Pipes::Piece&)>& bars)
{
    const auto without = [&](const Pipes::Piece& piece) { return bars(piece) || piece.part->id == part.id; };
    if (!seen.pipes.reached(seen.pipes.supplies(), without)[static_cast<std::size_t>(cold)]) {
        return false;
    }
    const std::vector<char> hotSide = seen.pipes.reached({hot}, without);
    const auto at = [&](int place) { return place >= 0 && hotSide[static_cast<std::size_t>(place)] != 0; };
    return std::any_of(seen.pipes.pieces.begin(), seen.pipes.pieces.end(), [&](const Pipes::Piece& piece) {
        return piece.part->model.role == parts::Role::Outlet && (at(piece.u) || at(piece.v));
    });
}

}  // namespace

void crossoverOpen(const Seen& seen, Findings& findings)
{
    for (const study::PlantPart* heater : heaters(seen.after)) {
        const Pipes::Piece* own = seen.pipes.find(heater->id);
        const int hot = outletJunction(seen.after, *heater);
        if (!own || hot < 0 || own->u < 0 || own->v < 0) {
            continue;
        }
        // Between the two sides past the heater, as the valves stand and either way. Pumps are another rule's.
        const auto bars = [](const Pipes::Piece& piece) {
            using parts::Role;
            const Role role = piece.part->model.role;
            return piece.shut || role == Role::Tankless || role == Role::StorageHeater || role == Role::Circulator
                   || role == Role::MotorValve || role == Role::MixingValve || role == Role::Outlet;
        };
        const int cold = own->other(hot);
        const auto passes = [&](int from, int to, document::PartId without) {
            return seen.pipes.reached({from},
                                      [&](const Pipes::Piece& piece) {
                                          return bars(piece) || piece.part->id == without;
                                      })[static_cast<std::size_t>(to)]
                   != 0;
        };
        const bool intoHot = passes(cold, hot, document::kNoPart);
        const bool intoCold = passes(hot, cold, document::kNoPart);
        if (!intoHot && !intoCold) {
            continue;
        }
        const auto leaks = [&](document::PartId without) {
            return (intoHot && passes(cold, hot, without)) || (intoCold && passes(hot, cold, without));
        };
        // A valve that ends it by being shut.
        const study::PlantPart* valve = nullptr;
        for (const study::PlantPart* one : seen.after.withRole(parts::Role::HandValve)) {
            valve = !valve && !leaks(one->id) ? one : valve;
        }
        // What joins the two sides and nothing else: without it the way is barred. A check valve says which way it is.
        const study::LoopAnswer& loop = seen.prediction.loop;
        const study::PlantPart* joins = valve ? valve : seen.after.find(loop.bypass);
        for (const study::PlantPart& one : seen.after.parts) {
            const bool check = one.model.role == parts::Role::CheckValve;
            if ((check || (!joins && one.part->kind == "pipe_run")) && !leaks(one.id)
                && mainsStand(seen, one, cold, hot, bars)) {
                joins = check && !intoHot ? &one : joins ? joins : &one;
            }
        }
        Finding finding;
        finding.severity = Severity::Caution;
        const std::string tag = joins ? joins->part->tag : std::string();
        const std::string& heaterTag = heater->part->tag;
        const bool steals = intoHot && loop.bypass != document::kNoPart && loop.pumpFlow_m3s && loop.flow_m3s;
        if (steals) {
            finding.what = {
                "{0} lets {1} of the pumps' {2} back into the hot line past {3}; {4} go through it.",
                {tagOf(seen, joins ? joins->id : loop.bypass), Measure{loop.bypassFlow_m3s.value_or(0), Quantity::Flow},
                 Measure{*loop.pumpFlow_m3s, Quantity::Flow}, heaterTag, Measure{*loop.flow_m3s, Quantity::Flow}}};
        } else if (valve) {
            finding.what = {"{0} stands open and lets cold water past {1} into the hot line.", {tag, heaterTag}};
        } else if (!intoHot) {
            finding.what = joins ? Message("Hot water can pass from the hot line into the cold one through {0}.", {tag})
                                 : Message("Hot water can pass from the hot line into the cold one.");
        } else {
            finding.what = joins
                               ? Message("Cold water can pass {0} into the hot line through {1}.", {heaterTag, tag})
                               : Message("Cold water can pass {0} into the hot line through an open way.", {heaterTag});
        }
        finding.why = intoHot
                          ? Message("The tap stays lukewarm, and a tankless heater may not see enough flow to light.")
                          : Message("A cold tap draws warm water, and what the loop sends back may be hotter still.");
        finding.remedy =
            valve      ? Message("Shut {0}.", {tag})
            : !intoHot ? Message("Take the joint out.")
            : joins ? Message("Take {0} out, or put a check valve in it that lets no water into the hot line.", {tag})
                    : Message("Find where hot and cold are joined, and put a check valve there.");
        finding.source = kPractice;
        finding.part = joins ? joins->id : heater->id;
        if (valve) {
            finding.fix = setValue(seen.drawing, valve->id, "opening", 0.0, {"Shut {0}", {valve->part->tag}});
        }
        findings.push_back(std::move(finding));
    }
}

}  // namespace tapward::review::rule
