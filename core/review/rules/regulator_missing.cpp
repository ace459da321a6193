// SPDX-License-Identifier: GPL-3.0-or-later
#include "review/rules/rules.h"
#include "review/seen.h"

namespace tapward::review::rule {

namespace {
constexpr double kMostPressure_Pa = 60 * us::kPsi;  // working advice for coach plumbing, published
}

void regulatorMissing(const Seen& seen, Findings& findings)
{
    for (const study::PlantPart* inlet : seen.after.withRole(parts::Role::CitySupply)) {
        if (!inlet->model.supply || inlet->model.supply->pressure_Pa <= kMostPressure_Pa) {
            continue;
        }
        const auto stops = [](const study::PlantPart& part) { return part.model.regulatedPressure_Pa.has_value(); };
        bool exposed = false;
        for (std::size_t path = 0; path < inlet->places.size(); ++path) {
            for (const document::PartId id : reach(seen.after, *inlet, path, stops).parts) {
                const study::PlantPart* part = seen.after.find(id);
                exposed =
                    exposed
                    || (part
                        && (part->model.role == parts::Role::Outlet || part->model.tankless || part->model.storage));
            }
        }
        if (!exposed) {
            continue;
        }
        Finding finding;
        finding.severity = Severity::Caution;
        finding.what = {"City water at {0} reaches the coach through {1} without a regulator.",
                        {Measure{inlet->model.supply->pressure_Pa, Quantity::Pressure}, inlet->part->tag}};
        finding.why = {"Coach plumbing is usually kept at or below {0}; check the coach's papers.",
                       {Measure{kMostPressure_Pa, Quantity::Pressure}}};
        finding.remedy = "Fit a pressure regulator at the inlet.";
        finding.source = "working advice of coach and plumbing makers, published page";
        finding.part = inlet->id;
        findings.push_back(std::move(finding));
    }
}

}  // namespace tapward::review::rule
