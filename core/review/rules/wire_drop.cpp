// SPDX-License-Identifier: GPL-3.0-or-later
#include "review/rules/rules.h"
#include "review/seen.h"
#include "review/wire.h"

namespace tapward::review::rule {

void wireDrop(const Seen& seen, Findings& findings)
{
    for (const study::PlantPart* pump : seen.after.withRole(parts::Role::Circulator)) {
        const parts::CirculatorModel& model = *pump->model.circulator;
        // The model has cool solid copper; a drop is checked on the warm side.
        const double drop_V = model.current_A * model.wireResistance_ohm * kWarmStranded;
        if (model.ratedVolts <= 0 || drop_V <= kOtherDrop * model.ratedVolts) {
            continue;
        }
        Finding finding;
        finding.severity = Severity::Caution;
        finding.what = {"The wire to {0}, warm, loses {1}: {2} of {3}.",
                        {pump->part->tag, Measure{drop_V, Quantity::Voltage},
                         Measure{drop_V / model.ratedVolts, Quantity::Percent},
                         Measure{model.ratedVolts, Quantity::Voltage}}};
        finding.why = "The pump turns slower and may not start on a low battery.";
        finding.remedy = "Take a thicker wire or a shorter way.";
        const parts::Values values = document::values(*pump->part);
        if (values.kind().field("wire_length_m")) {
            const auto gauge =
                minimumGauge(model.current_A, values.number("wire_length_m"), kOtherDrop, model.ratedVolts);
            const auto thick =
                minimumGauge(model.current_A, values.number("wire_length_m"), kCriticalDrop, model.ratedVolts);
            if (gauge && thick) {
                finding.remedy = {
                    "Take AWG {0} or thicker; AWG {1} keeps the loss under {2}.",
                    {std::int64_t{*gauge}, std::int64_t{*thick}, Measure{kCriticalDrop, Quantity::Percent}}};
            }
        }
        finding.source = "ABYC E-11 drop classes, used as a yardstick";
        finding.part = pump->id;
        findings.push_back(std::move(finding));
    }
}

}  // namespace tapward::review::rule
