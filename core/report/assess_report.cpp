// SPDX-License-Identifier: GPL-3.0-or-later
#include "report/assess_report.h"

#include <algorithm>
#include <vector>

#include <fmt/format.h>

#include "report/json_words.h"
#include "report/report.h"
#include "report/study_report.h"
#include "report/text.h"
#include "review/burn.h"
#include "review/heat_weight.h"

namespace tapward::report {
namespace {

const char* severityId(review::Severity severity)
{
    switch (severity) {
    case review::Severity::Danger:
        return "danger";
    case review::Severity::Caution:
        return "caution";
    case review::Severity::Note:
        break;
    }
    return "note";
}

Json placesOf(const document::Drawing& drawing, const std::vector<study::HotPlace>& places)
{
    Json out = Json::array();
    for (const study::HotPlace& heat : places) {
        out.push_back({{"place", placeId(heat.place)},
                       {"part", tagJson(drawing, heat.part)},
                       {"hottest_C", heat.hottest_C},
                       {"limit_C", review::yardstick_C(heat.place)},
                       {"severity", severityId(review::heatSeverity(heat.place, heat.hottest_C))},
                       {"burn_adult_s", number(review::burnTime(heat.hottest_C).adult_s)},
                       {"presses", heat.presses},
                       {"searched", heat.searched},
                       {"shown_by", heat.script.name}});
    }
    return out;
}

std::string placesText(const document::Drawing& drawing, const std::vector<study::HotPlace>& places, UnitSystem units)
{
    struct PlaceRow {
        std::string where, hottest, held, by;
    };
    std::vector<PlaceRow> rows;
    PlaceRow widest;
    const auto wider = [](std::string& so, const std::string& far) {
        so = codePoints(far) > codePoints(so) ? far : so;
    };
    for (const study::HotPlace& heat : places) {
        const double limit_C = review::yardstick_C(heat.place);
        rows.push_back(
            {placeName(drawing, heat.place, heat.part), show({heat.hottest_C, Quantity::Temperature}, units),
             (heat.hottest_C > limit_C ? "over " : "within ") + show({limit_C, Quantity::Temperature}, units),
             (heat.searched ? "found by the search: " : "case: ") + heat.script.name});
        wider(widest.where, rows.back().where);
        wider(widest.hottest, rows.back().hottest);
        wider(widest.held, rows.back().held);
    }
    const auto room = [](const std::string& text, const std::string& in) {
        return std::string(codePoints(in) - codePoints(text), ' ');
    };
    std::string out;
    for (const PlaceRow& row : rows) {
        out +=
            fmt::format("  {}{}  {}{}  {}{}  {}\n", row.where, room(row.where, widest.where),
                        room(row.hottest, widest.hottest), row.hottest, row.held, room(row.held, widest.held), row.by);
    }
    return out;
}

}  // namespace

std::string assessText(const document::Drawing& drawing, const study::Prediction& prediction,
                       const study::Assessment& assessment, const Result<study::SafeSet>& needed, UnitSystem units)
{
    std::string out = answersText(drawing, prediction, assessment, units);
    out += heading("How hot it gets, nothing broken");
    out += assessment.sound.empty() ? "  No case shows the finished coach.\n"
                                    : placesText(drawing, assessment.sound, units);
    if (!assessment.broken.empty()) {
        out += heading("With the faults of the drawing's own cases");
        out += placesText(drawing, assessment.broken, units);
    }
    if (!assessment.noPresses.empty()) {
        out += "  Nothing was searched: " + render(assessment.noPresses, units) + '\n';
    }
    out += heading("Protections needed");
    out += needed ? neededText(*needed, units) : "  " + render(needed.error().what, units) + '\n';
    out += "\nHot water can burn; children, elders and people with reduced feeling burn sooner. Never rely on one\n"
           "stop. The heater maker's instructions, local codes and licensed practice come first.\n";
    return out;
}

std::string assessJson(const document::Drawing& drawing, const study::Prediction& prediction,
                       const study::Assessment& assessment, const Result<study::SafeSet>& needed,
                       const std::string& fileName)
{
    Json out;
    out["format"] = "tapward-assessment";
    out["version"] = 1;
    out["file"] = fileName;
    out["sample_figures"] = drawing.job.sampleFigures;
    out["note"] = "Predicted from the drawing; not measured. Units are SI, temperatures degrees Celsius.";
    out["complete"] = !assessment.isAtLeast();
    Json& answers = out["answers"] = Json::array();
    for (const AnswerLine& line : keyAnswers(drawing, prediction, assessment)) {
        answers.push_back({{"id", line.id},
                           {"label", line.label.english()},
                           {"value", line.has ? number(line.value.si) : Json(nullptr)},
                           {"unit", line.has ? Json(siSymbol(line.value.quantity)) : Json(nullptr)},
                           {"at_least", line.atLeast},
                           {"note", words(line.has ? line.note : line.reason)}});
    }
    out["places"] = placesOf(drawing, assessment.sound);
    out["places_with_faults"] = placesOf(drawing, assessment.broken);
    Json& protections = out["protections"] = Json::object();
    protections["keeps_as_drawn"] = needed ? Json(needed->keepsAsDrawn) : Json(nullptr);
    Json& changes = protections["changes"] = Json::array();
    if (needed) {
        for (const study::SafeChange& change : needed->changes) {
            changes.push_back(changeJson(drawing, change));
        }
    }
    protections["reason"] = words(needed ? needed->reason : needed.error().what);
    return out.dump(1, ' ', false, Json::error_handler_t::replace) + '\n';
}

}  // namespace tapward::report
