// SPDX-License-Identifier: GPL-3.0-or-later
#include "review/rules/rules.h"
#include "review/seen.h"

namespace tapward::review::rule {

void outletWithoutSupply(const Seen& seen, Findings& findings)
{
    const auto isSupply = [](const study::PlantPart& part) {
        return part.model.role == parts::Role::CitySupply || part.model.role == parts::Role::DemandPump;
    };
    const auto stops = [&](const study::PlantPart& part) {
        return isSupply(part) || part.model.role == parts::Role::Outlet;
    };
    for (const study::PlantPart* outlet : seen.after.withRole(parts::Role::Outlet)) {
        bool supplied = false;
        for (std::size_t path = 0; path < outlet->places.size(); ++path) {
            const Reach way = reach(seen.after, *outlet, path, stops);
            for (const document::PartId id : way.parts) {
                const study::PlantPart* part = seen.after.find(id);
                supplied = supplied || (part && isSupply(*part));
            }
        }
        if (supplied) {
            continue;
        }
        Finding finding;
        finding.severity = Severity::Caution;
        finding.what = {"No water supply reaches {0}.", {outlet->part->tag}};
        finding.why = "Opened, it gives nothing, and every answer about it stays empty.";
        finding.remedy = "Join its pipe to the city inlet or to the demand pump.";
        finding.source = kPractice;
        finding.part = outlet->id;
        findings.push_back(std::move(finding));
    }
}

}  // namespace tapward::review::rule
