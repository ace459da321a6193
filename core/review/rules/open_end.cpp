// SPDX-License-Identifier: GPL-3.0-or-later
#include "review/rules/rules.h"
#include "review/seen.h"

namespace tapward::review::rule {
namespace {

/// The first port that should hold a pipe and does not; nullptr when all do.
const parts::Port* openPort(const Seen& seen, const study::PlantPart& part)
{
    for (const parts::Port& port : document::kindOf(*part.part).ports) {
        const document::Part* pipe = seen.drawing.pipeAt(part.id, port.id);
        if (!port.optional && !(pipe && document::isPresent(pipe->stage, document::View::After))) {
            return &port;
        }
    }
    return nullptr;
}

bool hasLooseEnd(const document::Part& pipe)
{
    return pipe.ends[0].part == document::kNoPart || pipe.ends[1].part == document::kNoPart;
}

}  // namespace

void openEnd(const Seen& seen, Findings& findings)
{
    for (const study::PlantPart& part : seen.after.parts) {
        Finding finding;
        if (document::kindOf(*part.part).isPipe) {
            if (!hasLooseEnd(*part.part)) {
                continue;
            }
            finding.severity = Severity::Caution;
            finding.what = {"An end of {0} is joined to nothing.", {part.part->tag}};
        } else {
            const parts::Port* port = openPort(seen, part);
            if (!port) {
                continue;
            }
            finding.severity = Severity::Note;
            finding.what = {"{0} has no pipe at its port '{1}'.", {part.part->tag, port->title}};
        }
        finding.why = "It is taken as capped: no water passes there.";
        finding.remedy = "Join it, cap it, or take it away.";
        finding.source = kPractice;
        finding.part = part.id;
        findings.push_back(std::move(finding));
    }
}

}  // namespace tapward::review::rule
