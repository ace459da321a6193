// SPDX-License-Identifier: GPL-3.0-or-later
#include "review/rules/rules.h"
#include "review/seen.h"

namespace tapward::review::rule {

void heaterRecirculation(const Seen& seen, Findings& findings)
{
    if (seen.prediction.loop.circulators.empty()) {
        return;
    }
    const study::PlantPart* heater = seen.after.find(seen.prediction.loop.heater);
    if (!heater) {
        return;
    }
    const parts::Values values = document::values(*heater->part);
    if (!values.kind().field("recirculation") || values.text("recirculation") == "allowed") {
        return;
    }
    const bool forbidden = values.text("recirculation") == "not_allowed";
    Finding finding;
    // A storage heater meets warm water at its inlet every day; a tankless one may not be made for it.
    finding.severity = forbidden || heater->model.tankless ? Severity::Caution : Severity::Note;
    finding.what = forbidden ? Message("The maker of {0} does not allow a recirculation loop.", {heater->part->tag})
                             : Message("It is not known whether the maker of {0} allows a recirculation loop.",
                                       {heater->part->tag});
    finding.why = "A loop sends warm water into the heater; a heater not made for it may overheat, trip or lose its "
                  "warranty.";
    finding.remedy = forbidden ? Message("Do not loop this heater; ask its maker in writing, or take another one.")
                               : Message("Read its manual or ask its maker, and note the answer with the heater.");
    finding.source = "the heater's own manual governs";
    finding.part = heater->id;
    findings.push_back(std::move(finding));
}

}  // namespace tapward::review::rule
