// SPDX-License-Identifier: GPL-3.0-or-later
#include <type_traits>
#include <variant>

#include "report/json_words.h"
#include "report/study_report.h"
#include "review/burn.h"

namespace tapward::report {
namespace {

const char* harmId(study::Harm harm)
{
    return harm == study::Harm::User ? "user" : harm == study::Harm::Drinking ? "drinking" : "nobody";
}

const char* actionId(document::ActionKind kind)
{
    using enum document::ActionKind;
    switch (kind) {
    case OpenOutlet:
        return "open_outlet";
    case CloseOutlet:
        return "close_outlet";
    case PressButton:
        return "press_button";
    case SetValve:
        return "set_valve";
    case UseCity:
        return "use_city";
    case UsePump:
        return "use_pump";
    case UseNothing:
        return "use_nothing";
    case SetVoltage:
        return "set_voltage";
    case StartFault:
        return "start_fault";
    case EndFault:
        return "end_fault";
    }
    return "";
}

Json scriptOf(const document::Drawing& drawing, const document::Case& script)
{
    Json out{{"name", script.name}, {"duration_s", script.duration_s}, {"start_C", script.start_C}};
    out["supply_C"] = number(script.supply_C);
    out["ambient_C"] = number(script.ambient_C);
    Json& actions = out["actions"] = Json::array();
    for (const document::Action& action : script.actions) {
        Json one{{"at_s", action.at_s}, {"do", actionId(action.kind)}};
        if (action.part != document::kNoPart) {
            one["part"] = tagJson(drawing, action.part);
        }
        if (action.kind == document::ActionKind::SetVoltage) {
            one["volts"] = action.value;
        }
        if (action.kind == document::ActionKind::OpenOutlet) {
            one["hot_share"] = action.second < 0 ? Json(nullptr) : Json(action.second);
        }
        if (!action.fault.empty()) {
            one["fault"] = action.fault;
        }
        actions.push_back(std::move(one));
    }
    return out;
}

Json hottestOf(const study::Hottest& hottest)
{
    return {{"outlets_C", number(hottest.outlets_C)},
            {"cold_outlets_C", number(hottest.coldOutlets_C)},
            {"heater_outlet_C", number(hottest.heaterOutlet_C)},
            {"heater_inlet_C", number(hottest.heaterInlet_C)}};
}

Json burnOf(double celsius)
{
    const review::BurnTime burn = review::burnTime(celsius);
    return {{"adult_s", number(burn.adult_s)}, {"child_s", number(burn.child_s)}, {"hazard", review::id(burn.hazard)}};
}

Json waitOf(const std::optional<study::SafeWait>& wait)
{
    if (!wait) {
        return nullptr;
    }
    return {{"outlets_s", number(wait->outlets_s)},
            {"outlets_reason", words(wait->outletsReason)},
            {"cold_entry_s", number(wait->coldEntry_s)},
            {"cold_entry_reason", words(wait->coldEntryReason)},
            {"both_s", number(wait->both_s)},
            {"as_the_first_s", number(wait->asTheFirst_s)},
            {"first_outlets_C", wait->firstOutlets_C},
            {"first_cold_entry_C", number(wait->firstColdEntry_C)}};
}

Json top(const char* kind, const document::Drawing& drawing, const std::string& fileName)
{
    return {{"format", "tapward-study"},
            {"version", 1},
            {"study", kind},
            {"file", fileName},
            {"sample_figures", drawing.job.sampleFigures},
            {"note", "Predicted from the drawing; not measured. Units are SI, temperatures degrees Celsius."}};
}

}  // namespace

const char* placeId(study::HeatPlace place)
{
    switch (place) {
    case study::HeatPlace::HeaterOutlet:
        return "heater_outlet";
    case study::HeatPlace::HeaterInlet:
        return "heater_inlet";
    case study::HeatPlace::Sensor:
        return "sensor";
    case study::HeatPlace::Join:
        return "return_entry";
    case study::HeatPlace::OutletHot:
        return "outlet_hot";
    case study::HeatPlace::OutletCold:
        return "outlet_cold";
    case study::HeatPlace::ColdEntry:
        return "cold_entry";
    }
    return "";
}

Json changeJson(const document::Drawing& drawing, const study::SafeChange& change)
{
    Json value;
    std::visit(
        [&](const auto& known) {
            using Known = std::decay_t<decltype(known)>;
            if constexpr (std::is_same_v<Known, bool> || std::is_same_v<Known, double>
                          || std::is_same_v<Known, std::string>) {
                value = known;
            }
        },
        change.value);
    return {{"part", tagJson(drawing, change.part)}, {"field", change.key}, {"value", value}};
}

std::string pressesJson(const document::Drawing& drawing, const study::PressesStudy& study, const std::string& fileName)
{
    Json out = top("presses", drawing, fileName);
    out["as_drawn"] = hottestOf(study.asDrawn);
    Json& worst = out["worst"] = Json::array();
    for (const study::WorstHeat& heat : study.worst) {
        worst.push_back({{"place", placeId(heat.place)},
                         {"part", tagJson(drawing, heat.part)},
                         {"hottest_C", heat.hottest_C},
                         {"at_s", heat.at_s},
                         {"presses", heat.presses},
                         {"burn", burnOf(heat.hottest_C)},
                         {"script", scriptOf(drawing, heat.script)}});
    }
    out["wait_worst_days"] = waitOf(study.wait);
    out["wait_as_drawn"] = waitOf(study.waitAsDrawn);
    Json& protections = out["protections"] = Json::array();
    for (const study::ProtectionEffect& effect : study.protections) {
        protections.push_back({{"id", study::id(effect.protection)},
                               {"on", effect.counted},
                               {"tried", effect.tried},
                               {"note", words(effect.note)},
                               {"switched", effect.tried ? hottestOf(effect.other) : Json(nullptr)}});
    }
    out["cases_simulated"] = study.cases;
    return out.dump(2) + '\n';
}

std::string safeSetJson(const document::Drawing& drawing, const study::SafeSet& set, const std::string& fileName)
{
    Json out = top("protections", drawing, fileName);
    out["keeps_as_drawn"] = set.keepsAsDrawn;
    Json& changes = out["changes"] = Json::array();
    for (const study::SafeChange& change : set.changes) {
        changes.push_back(changeJson(drawing, change));
    }
    out["with"] = hottestOf(set.with);
    out["entering_C"] = number(set.entering_C);
    out["reason"] = words(set.reason);
    out["sets_tried"] = set.tried;
    return out.dump(2) + '\n';
}

std::string faultsJson(const document::Drawing& drawing, const study::FaultsStudy& study, const std::string& fileName)
{
    Json out = top("faults", drawing, fileName);
    out["sound"] = hottestOf(study.sound);
    out["cases"] = study.cases;
    Json& rows = out["faults"] = Json::array();
    for (const study::FaultRow& row : study.rows) {
        Json one{{"part", tagJson(drawing, row.part)}, {"fault", row.fault}};
        if (row.withPart != document::kNoPart) {
            one["with_part"] = tagJson(drawing, row.withPart);
            one["with_fault"] = row.withFault;
        }
        one["run"] = row.run;
        one["consequence"] = words(row.consequence);
        if (row.run) {
            one["hottest"] = hottestOf(row.hottest);
            one["change_K"] = number(row.change_K);
            one["harm"] = harmId(row.harm);
            one["harms_sound_too"] = row.harmsSoundToo;
            one["at"] = tagJson(drawing, row.harmedAt);
            one["who"] = words(row.who);
            one["shows"] = words(row.shows);
            one["stops"] = words(row.stops);
            Json& outlets = one["outlets"] = Json::array();
            for (const study::PlaceHeat& heat : row.outlets) {
                outlets.push_back({{"place", placeId(heat.place)},
                                   {"part", tagJson(drawing, heat.part)},
                                   {"hottest_C", heat.hottest_C},
                                   {"burn", burnOf(heat.hottest_C)}});
            }
            one["script"] = scriptOf(drawing, row.worst);
        }
        rows.push_back(std::move(one));
    }
    out["cases_simulated"] = study.simulated;
    return out.dump(2) + '\n';
}

}  // namespace tapward::report
