// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>

#include "review/rules/rules.h"
#include "review/scald.h"
#include "review/seen.h"

namespace tapward::review::rule {

void showerWithoutMixingValve(const Seen& seen, Findings& findings)
{
    const auto inTheWay = [](const study::PlantPart& part) {
        using parts::Role;
        const Role role = part.model.role;
        return role == Role::MixingValve || role == Role::Outlet || role == Role::Tankless
               || role == Role::StorageHeater;
    };
    const auto* atHeater = hottest(seen, {study::HeatPlace::HeaterOutlet});
    for (const study::PlantPart* shower : seen.after.withRole(parts::Role::Outlet)) {
        const auto& outlet = shower->model.outlet;
        if (!outlet || !outlet->shower || outlet->hotPath < 0) {
            continue;
        }
        const parts::Values values = document::values(*shower->part);
        if (values.kind().field("limits_temperature") && values.flag("limits_temperature")) {
            continue;  // its own valve does it
        }
        const Reach way = reach(seen.after, *shower, static_cast<std::size_t>(outlet->hotPath), inTheWay);
        for (const study::PlantPart* heater : heaters(seen.after)) {
            const int junction = outletJunction(seen.after, *heater);
            if (junction < 0 || !way.junctions.contains(junction)) {
                continue;
            }
            const double setting =
                heater->model.tankless ? heater->model.tankless->setpoint_C : heater->model.storage->setpoint_C;
            const bool seenHotter = atHeater && atHeater->hottest_C > setting && heater->id == atHeater->part;
            const double celsius = seenHotter ? atHeater->hottest_C : setting;
            if (celsius <= kScaldGuidance_C) {
                continue;
            }
            Finding finding;
            finding.severity = Severity::Caution;
            finding.what = {"{0} can send water of {1} to {2}, and no mixing valve stands between.",
                            {heater->part->tag,
                             seenHotter ? seen.heat(celsius) : Measure{celsius, Quantity::Temperature},
                             shower->part->tag}};
            finding.why = "Under a shower a person cannot step back in time.";
            finding.remedy = "Fit a shower valve that limits the temperature, or a mixing valve ahead of the shower.";
            finding.source = "ASSE 1016 / ASME A112.1016 / CSA B125.16";
            finding.part = shower->id;
            if (seenHotter) {
                shownBy(finding, *atHeater);
            }
            findings.push_back(std::move(finding));
            break;
        }
    }
}

}  // namespace tapward::review::rule
