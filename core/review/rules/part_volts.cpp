// SPDX-License-Identifier: GPL-3.0-or-later
#include "review/rules/rules.h"
#include "review/seen.h"

namespace tapward::review::rule {

void partVolts(const Seen& seen, Findings& findings)
{
    constexpr double kCharging_V = 14.4, kLow_V = 10.5;  // lead battery charging and spent: common practice
    for (const study::PlantPart& part : seen.after.parts) {
        const parts::Values values = document::values(*part.part);
        const auto limit = [&](const char* key) { return values.kind().field(key) ? values.number(key) : 0.0; };
        const double most_V = limit("maximum_V"), least_V = limit("minimum_V");
        const bool over = most_V > 0 && most_V < kCharging_V;
        const bool under = least_V > kLow_V;
        if (!over && !under) {
            continue;
        }
        Finding finding;
        finding.severity = over ? Severity::Caution : Severity::Note;
        finding.what =
            over
                ? Message("{0} is rated up to {1}; a charging battery has {2}.",
                          {part.part->tag, Measure{most_V, Quantity::Voltage}, Measure{kCharging_V, Quantity::Voltage}})
                : Message("{0} needs {1}; a low battery has {2}.",
                          {part.part->tag, Measure{least_V, Quantity::Voltage}, Measure{kLow_V, Quantity::Voltage}});
        finding.why = over ? Message("Over its rating a motor or board runs hot and fails early.")
                           : Message("On a low battery it stops, and with it the loop.");
        finding.remedy = over ? Message("Take one rated for the charging voltage, or feed it through a regulator.")
                              : Message("Keep the battery up, or take one that works at fewer volts.");
        finding.source = "the part's own rating; battery voltages common practice, no published source";
        finding.part = part.id;
        findings.push_back(std::move(finding));
    }
}

}  // namespace tapward::review::rule
