// SPDX-License-Identifier: GPL-3.0-or-later
#include <string>

#include "review/rules/rules.h"
#include "review/seen.h"

namespace tapward::review::rule {

void partNotListed(const Seen& seen, Findings& findings)
{
    std::string unknown;
    document::PartId first = document::kNoPart;
    for (const study::PlantPart& part : seen.after.parts) {
        const parts::Values values = document::values(*part.part);
        if (!values.kind().field("drinking_water")) {
            continue;
        }
        const std::string& listing = values.text("drinking_water");
        if (listing == "not_listed") {
            Finding finding;
            finding.severity = Severity::Danger;
            finding.what = {"{0} has no drinking-water listing.", {part.part->tag}};
            finding.why = "What it gives off ends in water people drink and wash in.";
            finding.remedy = "Take a part listed for drinking water, lead-free.";
            finding.source = "NSF/ANSI/CAN 61 and 372";
            finding.part = part.id;
            findings.push_back(std::move(finding));
        } else if (listing == "unknown" && part.part->stage == document::Stage::Added) {
            unknown += (unknown.empty() ? "" : ", ") + part.part->tag;
            first = first == document::kNoPart ? part.id : first;
        }
    }
    if (first == document::kNoPart) {
        return;
    }
    Finding finding;  // one note for all that the job adds
    finding.severity = Severity::Note;
    finding.what = {"It is not noted whether these added parts are listed for drinking water: {0}.", {unknown}};
    finding.why = "What wetted parts give off ends in water people drink and wash in.";
    finding.remedy = "Read the marking on each and note it with the part.";
    finding.source = "NSF/ANSI/CAN 61 and 372";
    finding.part = first;
    findings.push_back(std::move(finding));
}

}  // namespace tapward::review::rule
