// SPDX-License-Identifier: GPL-3.0-or-later
#include <cmath>

#include "report/json_words.h"
#include "report/stop_report.h"

namespace tapward::report {
namespace {

Json gauge(const std::optional<int>& value) { return value ? Json(*value) : Json(nullptr); }
Json document(const document::Drawing& drawing, const char* study, const std::string& fileName)
{
    Json out;
    out["format"] = "tapward-study";
    out["version"] = 1;
    out["study"] = study;
    out["file"] = fileName;
    out["sample_figures"] = drawing.job.sampleFigures;
    out["note"] = "Predicted from the drawing; not measured. Units are SI, temperatures degrees Celsius.";
    return out;
}

const char* idOf(study::StopKind kind)
{
    switch (kind) {
    case study::StopKind::Volume:
        return "volume";
    case study::StopKind::Time:
        return "time";
    case study::StopKind::Temperature:
        return "temperature";
    case study::StopKind::VolumeOrTemperature:
        break;
    }
    return "volume_or_temperature";
}

const char* idOf(study::PumpArrangement arrangement)
{
    switch (arrangement) {
    case study::PumpArrangement::One:
        return "one";
    case study::PumpArrangement::TwoInParallel:
        return "two_in_parallel";
    case study::PumpArrangement::TwoInSeries:
        break;
    }
    return "two_in_series";
}

Json choiceOf(const study::StopChoice& choice)
{
    Json out;
    out["kind"] = idOf(choice.kind);
    out["not_possible"] = words(choice.notPossible);
    out["volume_m3"] = number(choice.volume_m3);
    out["time_s"] = number(choice.time_s);
    out["temperature_C"] = number(choice.temperature_C);
    out["window"] = {number(choice.least), number(choice.most)};
    out["reaches"] = number(choice.reaches);
    out["keeps"] = number(choice.keeps);
    out["both"] = number(choice.both);
    out["both_error"] = number(choice.bothError);
    out["both_if_lit"] = number(choice.bothIfLit);
    out["comes_if_lit"] = number(choice.comes);
    out["tap_10_50_90_C"] = {number(choice.tapLow_C), number(choice.tapMiddle_C), number(choice.tapHigh_C)};
    out["worst_tap_C"] = number(choice.worstTap_C);
    out["worst_overshoot_K"] = number(choice.worstOvershoot_K);
    out["longest_run_s"] = number(choice.longestRun_s);
    return out;
}

Json bandOf(const study::Band& band, const char* x)
{
    Json out;
    out[x] = band.x;
    out["tap_10_C"] = band.low;
    out["tap_50_C"] = band.middle;
    out["tap_90_C"] = band.high;
    return out;
}

Json pointsOf(const std::vector<study::LoopPoint>& points)
{
    Json out = Json::array();
    for (const study::LoopPoint& point : points) {
        out.push_back({number(point.flow_m3s), number(point.head_m)});
    }
    return out;
}

}  // namespace

std::string stopJson(const document::Drawing& drawing, const study::StopStudy& study, const std::string& fileName)
{
    Json out = document(drawing, "stop", fileName);
    out["case"] = study.caseName;
    out["target_C"] = study.target_C;
    out["limits"] = {{"tap_C", study.limits.tap_C},
                     {"cold_entry_C", study.byColdLine ? Json(study.limits.coldEntry_C) : Json()},
                     {"heater_outlet_C", study.heaterOutletLimit_C > 0 ? Json(study.heaterOutletLimit_C) : Json()},
                     {"pump_C", study.pumpLimit_C > 0 ? Json(study.pumpLimit_C) : Json()}};
    out["samples"] = study.samples;
    out["heater_lights"] = study.lights;
    out["suggested"] = study.best() ? Json(idOf(study.best()->kind)) : Json(nullptr);
    out["reason"] = words(study.reason);
    out["possible_target_C"] = number(study.possibleTarget_C);
    Json& choices = out["choices"] = Json::array();
    for (const study::StopChoice& choice : study.choices) {
        choices.push_back(choiceOf(choice));
    }
    Json& inputs = out["inputs"] = Json::array();
    for (const study::Influence& influence : study.influences) {
        const study::Range& range = influence.range;
        inputs.push_back({{"id", range.id},
                          {"label", range.label.english()},
                          {"unit", siSymbol(range.quantity)},
                          {"least", range.least},
                          {"most", range.most},
                          {"source", range.source},
                          {"rank_coefficient", influence.coefficient}});
    }
    out["rank_fit"] = study.rankFit;
    out["confirmed"] = {{"samples", study.confirmed},
                        {"reaches", study.confirmedReaches},
                        {"keeps", study.confirmedKeeps},
                        {"both", study.confirmedBoth},
                        {"worst_tap_C", number(study.confirmedWorstTap_C)}};
    out["resolution_error_K"] = number(study.resolutionError_K);
    out["by_volume"] = bandOf(study.byVolume, "pumped_m3");
    out["by_time"] = bandOf(study.byTime, "time_s");
    return out.dump(2) + '\n';
}

std::string wiringJson(const document::Drawing& drawing, const study::WiringStudy& study,
                       const study::LoopCurves* curves, const study::HeadBudget* budget, const std::string& fileName)
{
    Json out = document(drawing, "wiring", fileName);
    out["battery"] = {{"open_V", study.battery_V},
                      {"internal_ohm", study.internal_ohm},
                      {"posts_V", study.posts_V},
                      {"current_A", study.total_A}};
    Json& loads = out["loads"] = Json::array();
    for (const study::LoadAnswer& load : study.loads) {
        loads.push_back({{"part", tagJson(drawing, load.part)},
                         {"kind", title(load.kind)},
                         {"volts_V", load.volts},
                         {"current_A", load.current_A},
                         {"works", load.works},
                         {"start_V", load.startVolts},
                         {"starts", load.starts},
                         {"low_battery_V", load.lowVolts},
                         {"works_low", load.worksLow},
                         {"wire_awg", load.gauge},
                         {"wire_m", load.length_m > 0 ? Json(load.length_m) : Json(nullptr)},
                         {"warm_drop_V", load.length_m > 0 ? Json(load.warmDrop_V) : Json(nullptr)},
                         {"awg_3_percent", gauge(load.gaugeFor3Percent)},
                         {"awg_10_percent", gauge(load.gaugeFor10Percent)},
                         {"awg_heat", gauge(load.gaugeForHeat)},
                         {"per_run_J", load.perPress_J},
                         {"per_run_C", load.perPress_C}});
    }
    Json& branches = out["branches"] = Json::array();
    for (const study::BranchAnswer& branch : study.branches) {
        Json on = Json::array();
        for (const document::PartId load : branch.loads) {
            on.push_back(tagJson(drawing, load));
        }
        const bool fused = branch.fuse != document::kNoPart;
        branches.push_back({{"fuse", tagJson(drawing, branch.fuse)},
                            {"loads", on},
                            {"rating_A", fused ? Json(branch.rating_A) : Json(nullptr)},
                            {"steady_A", branch.steady_A},
                            {"other_A", branch.other_A},
                            {"inrush_A", branch.inrush_A},
                            {"thinnest_awg", branch.thinnestGauge},
                            {"wire_limit_A", number(branch.wireLimit_A)},
                            {"spare_A", fused ? Json(branch.spare_A) : Json(nullptr)},
                            {"fuse_above_wire", branch.fuseAboveWire},
                            {"fuse_below_load", branch.fuseBelowLoad},
                            {"socket_exceeded", branch.socketExceeded}});
    }
    Json& voltages = out["voltages"] = Json::array();
    for (const study::VoltageAnswer& row : study.voltages) {
        voltages.push_back({{"battery_V", row.battery_V},
                            {"pump_V", row.pump_V},
                            {"flow_m3s", number(row.flow_m3s)},
                            {"flow_margin", number(row.margin)},
                            {"heater_works", row.heaterWorks}});
    }
    out["energy"] = {{"run_s", study.press_s},
                     {"run_J", study.perPress_J},
                     {"run_C", study.perPress_C},
                     {"runs_per_day", study.pressesPerDay},
                     {"day_J", study.perDay_J},
                     {"day_C", study.perDay_C},
                     {"rest_per_day_C", study.restPerDay_C},
                     {"battery_share_per_day", number(study.capacityShare)},
                     {"note", words(study.pressNote)}};
    out["loop_curves"] = nullptr;
    if (curves) {
        Json sets = Json::array();
        for (const study::PumpSet& set : curves->sets) {
            sets.push_back({{"arrangement", idOf(set.arrangement)},
                            {"battery_V", set.battery_V},
                            {"pump_V", set.pump_V},
                            {"working", set.working ? Json{number(set.working->flow_m3s), number(set.working->head_m)}
                                                    : Json(nullptr)},
                            {"heater_flow_m3s", set.heaterFlow_m3s},
                            {"lights", set.lights},
                            {"reason", words(set.reason)},
                            {"curve", pointsOf(set.curve)}});
        }
        out["loop_curves"] = {{"pump", tagJson(drawing, curves->pump)},
                              {"water_C", curves->water_C},
                              {"activation_flow_m3s", number(curves->activationFlow_m3s)},
                              {"hold_flow_m3s", number(curves->holdFlow_m3s)},
                              {"system", pointsOf(curves->system)},
                              {"sets", sets}};
    }
    out["head_budget"] = nullptr;
    if (budget) {
        Json items = Json::array();
        for (const study::HeadItem& item : budget->items) {
            items.push_back({{"part", tagJson(drawing, item.part)}, {"loss_Pa", item.loss_Pa}, {"share", item.share}});
        }
        out["head_budget"] = {{"flow_m3s", budget->flow_m3s},
                              {"pump_head_Pa", budget->pumpHead_Pa},
                              {"sum_Pa", budget->sum_Pa},
                              {"items", items}};
    }
    Json& cautions = out["cautions"] = Json::array();
    for (const Message& caution : study.cautions) {
        cautions.push_back(words(caution));
    }
    return out.dump(2) + '\n';
}

}  // namespace tapward::report
