// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>

#include "review/rules/rules.h"
#include "review/seen.h"

namespace tapward::review::rule {

void pumpSucksDry(const Seen& seen, Findings& findings)
{
    using parts::Role;
    const auto isTank = [](const study::PlantPart& part) { return part.model.role == Role::FreshTank; };
    const auto found = [&](const Reach& way, const std::function<bool(const study::PlantPart&)>& wanted) {
        return std::any_of(way.parts.begin(), way.parts.end(), [&](document::PartId id) {
            const study::PlantPart* part = seen.after.find(id);
            return part && wanted(*part);
        });
    };
    for (const study::PlantPart& pump : seen.after.parts) {
        const Role role = pump.model.role;
        if ((role != Role::DemandPump && role != Role::Circulator) || pump.places.empty()
            || pump.places.front().link < 0) {
            continue;
        }
        const bool demand = role == Role::DemandPump;
        // Where its water can come from: a demand pump lifts from the tank, a circulator only pushes round what
        // a supply has filled.
        const Reach way = reach(seen.after, pump, 0, [&](const study::PlantPart& part) {
            return part.model.role == Role::Outlet || (demand && part.model.role == Role::CitySupply);
        });
        const bool wet = demand ? found(way, isTank) : found(way, [](const study::PlantPart& part) {
            return part.model.role == Role::CitySupply || part.model.role == Role::DemandPump;
        });
        if (wet) {
            continue;
        }
        Finding finding;
        finding.severity = Severity::Caution;
        finding.what = demand ? Message("{0} draws from no tank: it runs dry.", {pump.part->tag})
                              : Message("No pressure supply fills {0}: it runs in air.", {pump.part->tag});
        finding.why = demand
                          ? Message("It never reaches its cut-out and runs on until it burns out.")
                          : Message("A small circulator cannot draw itself full, and dry running kills it in minutes.");
        finding.remedy = demand ? Message("Join its inlet to the fresh tank.")
                                : Message("Join its line to the coach's pressurized water, below any trapped air.");
        finding.source = kPractice;
        finding.part = pump.id;
        findings.push_back(std::move(finding));
    }
}

}  // namespace tapward::review::rule
