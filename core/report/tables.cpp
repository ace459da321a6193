// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <cmath>

#include <fmt/format.h>

#include "report/csv.h"
#include "report/report.h"
#include "report/text.h"
#include "review/winter.h"

namespace tapward::report {
namespace {

/// A residual such as 3e-12 would read as 0 in a readout: never a 0 in the place of a small number.
std::string readout(Measure measure, UnitSystem units)
{
    if (measure.quantity == Quantity::None && measure.si != 0 && std::abs(measure.si) < 0.01) {
        return fmt::format("{:.1e}", measure.si);
    }
    return show(measure, units);
}

struct Row {
    std::string label, value, note;
};

std::string aligned(const std::vector<Row>& rows)
{
    std::size_t label = 0, value = 0;
    for (const Row& row : rows) {
        label = std::max(label, codePoints(row.label));
        value = std::max(value, codePoints(row.value));
    }
    std::string out;
    for (const Row& row : rows) {
        out += "  " + row.label;
        out.append(label - codePoints(row.label) + 2, ' ');
        out.append(value - codePoints(row.value), ' ');
        out += row.value;
        if (!row.note.empty()) {
            out += "  " + row.note;
        }
        out += '\n';
    }
    return out;
}

std::string joined(const document::Drawing& drawing, const std::vector<document::PartId>& ids)
{
    std::string out;
    for (const document::PartId id : ids) {
        const std::string tag = tagOf(drawing, id);
        if (!tag.empty()) {
            out += (out.empty() ? "" : " ") + tag;
        }
    }
    return out;
}

const char* word(review::Severity severity)
{
    switch (severity) {
    case review::Severity::Danger:
        return "DANGER";
    case review::Severity::Caution:
        return "Caution";
    case review::Severity::Note:
        break;
    }
    return "Note";
}

}  // namespace

std::string answersText(const document::Drawing& drawing, const study::Prediction& prediction,
                        const study::Assessment& assessment, UnitSystem units)
{
    std::string out = drawing.job.title.empty() ? "Prediction" : drawing.job.title;
    out += "\nPredicted from the drawing; not measured.";
    out += drawing.job.sampleFigures ? " Sample figures: an invented coach.\n" : "\n";

    out += heading("Answers");
    std::vector<Row> rows;
    for (const AnswerLine& answer : keyAnswers(drawing, prediction, assessment)) {
        const std::string value = answer.has ? readout(answer.value, units) : "-";
        const Message& note = answer.has ? answer.note : answer.reason;
        rows.push_back({std::string(answer.label), answer.atLeast ? "at least " + value : value,
                        note.empty() ? std::string() : render(note, units)});
    }
    return out + aligned(rows);
}

std::string table(const document::Drawing& drawing, const study::Prediction& prediction,
                  const study::Assessment& assessment, UnitSystem units)
{
    const auto message = [&](const Message& text) { return text.empty() ? std::string() : render(text, units); };
    std::string out = answersText(drawing, prediction, assessment, units);
    std::vector<Row> rows;
    const study::LoopAnswer& loop = prediction.loop;
    if (loop.exists) {
        out += heading("Loop");
        rows.clear();
        if (loop.flowLowVolts_m3s) {
            rows.push_back({"Flow at 10.5 V", readout({*loop.flowLowVolts_m3s, Quantity::Flow}, units), ""});
        }
        if (loop.flowHighVolts_m3s) {
            rows.push_back({"Flow at 14.4 V", readout({*loop.flowHighVolts_m3s, Quantity::Flow}, units), ""});
        }
        for (std::size_t i = 0; i < loop.headBudget.size() && i < 6; ++i) {
            const study::HeadItem& item = loop.headBudget[i];
            rows.push_back({fmt::format("Head lost in {}", tagOf(drawing, item.part)),
                            readout({item.loss_Pa, Quantity::Pressure}, units),
                            show({item.share, Quantity::Percent}, units)});
        }
        out += aligned(rows);
        if (!loop.hotPath.empty()) {
            out += "  Hot way: " + joined(drawing, withoutRepeats(loop.hotPath)) + '\n';
            out += "  Return:  " + joined(drawing, withoutRepeats(loop.returnPath)) + '\n';
        }
    }

    for (const study::CaseResult& result : prediction.cases) {
        out += heading(fmt::format("Case '{}' ({}, {})", result.name,
                                   result.view == document::View::Before ? "before" : "after",
                                   show({result.duration_s, Quantity::Time}, units)));
        if (result.noAnswer) {
            out += "  No answer: " + message(result.noAnswer->what) + ' ' + message(result.noAnswer->remedy) + '\n';
            continue;
        }
        rows.clear();
        for (const study::Scalar& scalar : result.scalars) {
            rows.push_back({inEnglish(scalar.label),
                            scalar.value ? readout({*scalar.value, scalar.quantity}, units) : "-",
                            message(scalar.value ? scalar.note : scalar.reason)});
        }
        out += aligned(rows);
        rows.clear();
        for (const study::Event& event : result.events) {
            rows.push_back({fmt::format("{:8.1f} s", event.t_s), "", message(event.what)});
        }
        if (!rows.empty()) {
            out += "  Events\n" + aligned(rows);
        }
    }
    return out;
}

std::string seriesCsv(const study::CaseResult& result, UnitSystem units)
{
    const auto head = [&](const std::string& label, Quantity quantity) {
        const std::string_view symbol = displayUnit(quantity, units).symbol;
        return symbol.empty() ? label : fmt::format("{} ({})", label, symbol);
    };
    std::vector<std::string> fields{head("Time", Quantity::Time)};
    for (const study::Series& series : result.series) {
        fields.push_back(head(inEnglish(series.label), series.quantity));
    }
    std::string out = csvRow(fields);
    for (std::size_t i = 0; i < result.time_s.size(); ++i) {
        fields.assign(1, fmt::format("{:.3f}", result.time_s[i]));
        for (const study::Series& series : result.series) {
            const double si = i < series.values.size() ? series.values[i] : std::nan("");
            const DisplayUnit unit = displayUnit(series.quantity, units);
            fields.push_back(std::isfinite(si)
                                 ? fmt::format("{:.{}f}", si * unit.scale + unit.offset, unit.decimals + 2)
                                 : std::string());
        }
        out += csvRow(fields);
    }
    return out;
}

std::string findingsText(const document::Drawing& drawing, const std::vector<review::Finding>& findings,
                         UnitSystem units)
{
    std::string out;
    for (const review::Finding& finding : findings) {
        const std::string tag = tagOf(drawing, finding.part);
        out += fmt::format("{}{}{}{}: {}\n", finding.dismissed ? "(set aside) " : "", word(finding.severity),
                           tag.empty() ? "" : " ", tag, render(finding.what, units));
        if (!finding.caseName.empty()) {
            out += fmt::format("    {}: {}\n", finding.script ? "Found by the search" : "In case", finding.caseName);
        }
        out += fmt::format("    Why: {}\n    Do: {}\n    From: {}\n", render(finding.why, units),
                           render(finding.remedy, units), finding.source);
        if (finding.dismissed) {
            out += fmt::format("    Set aside because: {}\n", finding.dismissReason);
        }
    }
    return out.empty() ? "Nothing found.\n" : out;
}

std::string winterText(const document::Drawing& drawing, UnitSystem units)
{
    const review::WinterPlan plan = review::winterPlan(drawing);
    if (plan.steps.empty()) {
        return {};
    }
    std::string out = heading("Winterizing, as drawn");
    for (std::size_t i = 0; i < plan.steps.size(); ++i) {
        out += fmt::format("{:3}. {}\n", i + 1, render(plan.steps[i].text, units));
    }
    return out;
}

std::string cautionsText(const document::Drawing& drawing, const study::Prediction& prediction,
                         const study::Assessment& assessment, const std::vector<review::Finding>& findings,
                         UnitSystem units)
{
    std::string out = heading("Cautions");
    for (const Message& caution : review::cautionsBeside(findings, drawing, prediction, assessment)) {
        out += "  " + render(caution, units) + '\n';
    }
    return out;
}

}  // namespace tapward::report
