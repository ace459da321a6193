// SPDX-License-Identifier: GPL-3.0-or-later
#include <cmath>

#include "report/json_words.h"
#include "report/report.h"
#include "report/text.h"

namespace tapward::report {
namespace {

Json scalarOf(std::optional<double> value, Quantity quantity, const Message& label, const Message& reason)
{
    Json out;
    const bool has = value && std::isfinite(*value);
    out["value"] = has ? Json(*value) : Json(nullptr);
    out["unit"] = siSymbol(quantity);
    out["label"] = inEnglish(label);
    if (!has) {
        out["reason"] = reason.empty() ? "Not computed." : render(reason, UnitSystem::Metric);
    }
    return out;
}

Json tagsOf(const document::Drawing& drawing, const std::vector<document::PartId>& ids)
{
    Json out = Json::array();
    for (const document::PartId id : ids) {
        out.push_back(tagJson(drawing, id));
    }
    return out;
}

Json loopOf(const document::Drawing& drawing, const study::LoopAnswer& loop)
{
    Json out;
    out["exists"] = loop.exists;
    out["reason"] = loop.reason.empty() ? Json(nullptr) : Json(render(loop.reason, UnitSystem::Metric));
    out["blocked_by"] = tagJson(drawing, loop.blockedBy);
    out["circulators"] = tagsOf(drawing, loop.circulators);
    out["heater"] = tagJson(drawing, loop.heater);
    out["tap"] = tagJson(drawing, loop.tap);
    out["return_tee"] = tagJson(drawing, loop.returnTee);
    out["cold_start_C"] = number(loop.coldStart_C);
    const Message noFlow = loop.reason.empty() ? Message("No loop is drawn.") : loop.reason;
    const Message noHeater = "No heater that lights by flow is drawn.";
    Json& scalars = out["scalars"] = Json::object();
    scalars["loop_flow"] = scalarOf(loop.flow_m3s, Quantity::Flow, "Loop flow", noFlow);
    if (loop.bypass != document::kNoPart) {
        out["bypass"] = tagOf(drawing, loop.bypass);
        scalars["pumped_flow"] = scalarOf(loop.pumpFlow_m3s, Quantity::Flow, "Flow of the pumps", noFlow);
        scalars["meter_flow"] =
            scalarOf(loop.meterFlow_m3s, Quantity::Flow, "Flow at the meter", "No flow sensor is drawn.");
        scalars["bypass_flow"] = scalarOf(loop.bypassFlow_m3s, Quantity::Flow, "Flow past the heater", noFlow);
    }
    scalars["activation_flow"] = scalarOf(loop.activationFlow_m3s, Quantity::Flow, "Activation flow", noHeater);
    scalars["hold_flow"] = scalarOf(loop.holdFlow_m3s, Quantity::Flow, "Hold flow", noHeater);
    scalars["flow_margin"] =
        scalarOf(loop.flowMargin, Quantity::None, "Loop flow / activation flow", loop.flow_m3s ? noHeater : noFlow);
    scalars["loop_flow_10_5_V"] = scalarOf(loop.flowLowVolts_m3s, Quantity::Flow, "Loop flow at 10.5 V", noFlow);
    scalars["loop_flow_14_4_V"] = scalarOf(loop.flowHighVolts_m3s, Quantity::Flow, "Loop flow at 14.4 V", noFlow);
    scalars["purge_volume"] = scalarOf(loop.purgeVolume_m3, Quantity::Volume, "Purge volume", noFlow);
    out["hot_path"] = tagsOf(drawing, withoutRepeats(loop.hotPath));
    out["return_path"] = tagsOf(drawing, withoutRepeats(loop.returnPath));
    Json& budget = out["head_budget"] = Json::array();
    for (const study::HeadItem& item : loop.headBudget) {
        budget.push_back(
            {{"part", tagJson(drawing, item.part)}, {"loss_Pa", number(item.loss_Pa)}, {"share", number(item.share)}});
    }
    return out;
}

Json caseOf(const document::Drawing& drawing, const study::CaseResult& result)
{
    Json out;
    out["name"] = result.name;
    if (result.noAnswer) {
        out["no_answer"] = {{"what", render(result.noAnswer->what, UnitSystem::Metric)},
                            {"remedy", render(result.noAnswer->remedy, UnitSystem::Metric)}};
    }
    Json& scalars = out["scalars"] = Json::object();
    for (const study::Scalar& scalar : result.scalars) {
        scalars[scalar.id] = scalarOf(scalar.value, scalar.quantity, scalar.label, scalar.reason);
    }
    Json& events = out["events"] = Json::array();
    for (const study::Event& event : result.events) {
        events.push_back({{"t_s", number(event.t_s)},
                          {"what", render(event.what, UnitSystem::Metric)},
                          {"part", tagJson(drawing, event.part)}});
    }
    const auto column = [](const std::vector<double>& values) {
        Json list = Json::array();
        for (const double value : values) {
            list.push_back(number(value));
        }
        return list;
    };
    Json& series = out["series"] = Json::object();
    series["time_s"] = column(result.time_s);
    for (const study::Series& one : result.series) {
        series[one.id] = column(one.values);
    }
    return out;
}

}  // namespace

std::string predictionJson(const document::Drawing& drawing, const study::Prediction& prediction,
                           const std::string& fileName)
{
    Json out;
    out["format"] = "tapward-prediction";
    out["version"] = 1;
    out["file"] = fileName;
    out["loop"] = loopOf(drawing, prediction.loop);
    Json& cases = out["cases"] = Json::array();
    for (const study::CaseResult& result : prediction.cases) {
        cases.push_back(caseOf(drawing, result));
    }
    // A file name may hold any bytes; they must not make the document unreadable.
    return out.dump(1, ' ', false, Json::error_handler_t::replace) + '\n';
}

}  // namespace tapward::report
