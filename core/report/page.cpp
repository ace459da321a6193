// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>

#include "report/report.h"

namespace tapward::report {

PageContent page(const document::Drawing& drawing, const study::Prediction& prediction,
                 const study::Assessment& assessment, const std::vector<review::Finding>& findings)
{
    const document::Job& job = drawing.job;
    PageContent content;
    content.title = job.title.empty() ? Message("Hot-water preheat loop") : Message("{0}", {job.title});
    content.subtitle = job.sampleFigures ? "Sample figures: an invented coach" : "Predicted before installation";
    const auto row = [&](const char* label, const std::string& text) {
        if (!text.empty()) {
            content.titleBlock.emplace_back(label, text);
        }
    };
    row("Customer", job.customer);
    row("Coach", job.coach);
    row("Technician", job.technician);
    row("Date", job.date);
    row("Revision", job.revision);
    row("Notes", job.notes);
    content.answers = keyAnswers(drawing, prediction, assessment);
    content.cautions = review::cautionsBeside(findings, drawing, prediction, assessment);
    content.parts = partsList(drawing);

    content.footnotes.emplace_back(
        "All answers are predictions from the drawing and the values typed into it, not measurements.");
    content.footnotes.emplace_back("Standards named here are yardsticks, not a declaration of compliance. The person "
                                   "signing decides what applies.");
    if (std::any_of(findings.begin(), findings.end(), [](const review::Finding& finding) {
            return finding.rule == "rests_on_estimates" && !finding.dismissed;
        })) {
        content.footnotes.emplace_back(
            "Some inputs that weigh most are estimates; measured values may change the answers.");
    }
    if (!content.parts.lines.empty() && !content.parts.allPriced) {
        content.footnotes.emplace_back("The parts total leaves out lines without a price.");
    }
    if (job.sampleFigures) {
        content.footnotes.emplace_back("Sample figures: coach, people and prices are invented.");
    }
    return content;
}

}  // namespace tapward::report
