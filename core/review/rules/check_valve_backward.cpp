// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <set>

#include "review/fix.h"
#include "review/rules/rules.h"
#include "review/seen.h"

namespace tapward::review::rule {
namespace {

using Piece = Pipes::Piece;

/// In one line with a pump that pushes against it.
bool opposesPump(const study::Plant& plant, const study::PlantPart& check)
{
    const study::Place& place = check.places.front();
    const auto& order = plant.chains[static_cast<std::size_t>(place.link)].partsInOrder;
    return std::any_of(order.begin(), order.end(), [&](document::PartId id) {
        const study::PlantPart* part = plant.find(id);
        return part && part->model.role == parts::Role::Circulator && part->places.front().reversed != place.reversed;
    });
}

/// Outlets (by id and side) that water can reach when check valves hold, this one let through both ways.
std::set<std::pair<document::PartId, std::size_t>> outletsReached(const Pipes& pipes, document::PartId open)
{
    Pipes trial = pipes;
    for (Piece& piece : trial.pieces) {
        if (piece.part->id == open) {
            piece.uToV = piece.vToU = true;
        }
    }
    const auto seen = trial.reached(trial.supplies(),
                                    [](const Piece& piece) { return piece.part->model.role == parts::Role::Outlet; });
    std::set<std::pair<document::PartId, std::size_t>> reached;
    for (const Piece& piece : trial.pieces) {
        const int inside = piece.u == Pipes::kOutside ? piece.v : piece.u;
        if (piece.part->model.role == parts::Role::Outlet && inside != Pipes::kOutside
            && seen[static_cast<std::size_t>(inside)]) {
            reached.insert({piece.part->id, piece.path});
        }
    }
    return reached;
}

}  // namespace

void checkValveBackward(const Seen& seen, Findings& findings)
{
    const auto asDrawn = outletsReached(seen.pipes, document::kNoPart);
    for (const study::PlantPart* check : seen.after.withRole(parts::Role::CheckValve)) {
        if (check->places.empty() || check->places.front().link < 0) {
            continue;
        }
        const bool inLoop = (check->id == seen.prediction.loop.blockedBy && !seen.prediction.loop.headUsedUp)
                            || opposesPump(seen.after, *check);
        if (!inLoop && outletsReached(seen.pipes, check->id) == asDrawn) {
            continue;
        }
        Finding finding;
        finding.severity = Severity::Caution;
        finding.what = {"{0} faces against the water.", {check->part->tag}};
        finding.why = inLoop ? Message("The pump pushes it shut: nothing goes round that way.")
                             : Message("It keeps the supply from an outlet behind it.");
        finding.remedy = {"Turn {0} around: its arrow points the way the water goes.", {check->part->tag}};
        finding.source = kPractice;
        finding.part = check->id;
        finding.fix = turnAround(seen.drawing, check->id, {"Turn {0} around", {check->part->tag}});
        findings.push_back(std::move(finding));
    }
}

}  // namespace tapward::review::rule
