// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <algorithm>
#include <cmath>
#include <map>
#include <string>
#include <utility>
#include <vector>

#include "base/units.h"
#include "document/drawing.h"
#include "review/finding.h"
#include "study/prediction.h"
#include "support/catch.h"

namespace tapward::test {

/// An invented coach for the rules: city water, a tankless heater, a mixer tap and a loop with one pump.
///
///   CW1 - PR1 - T1 -------------- T2 - WH1 - L7 - T3 - F1 (hot)
///               |                 :                |
///               T4 - F1 (cold)    :                P1 - CV1 - MV1
///               :.................:.....................return
///
/// The return joins T2 (a line of its own) or T4 (by the cold line).
struct Coach {
    document::Drawing drawing;
    study::Prediction prediction;
    enum class Return { Own, ByColdLine };

    explicit Coach(Return way = Return::Own, bool check = true);

    document::PartId add(const std::string& kind, const std::string& tag);
    document::PartId pipe(document::PartId from, const std::string& fromPort, document::PartId to,
                          const std::string& toPort);
    document::PartId id(const std::string& tag) const;
    void set(const std::string& tag, const std::string& key, parts::Value value,
             parts::Basis basis = parts::Basis::Measured);

    /// A case of the coach as it will be, with its result: scalars in SI.
    study::CaseResult& addCase(const std::string& name, int presses,
                               std::vector<std::pair<std::string, double>> scalars = {});

    /// What its cases tell of how hot it gets.
    study::Assessment drawn() const { return study::assess(drawing, prediction); }
    std::vector<review::Finding> found(const std::string& rule) const;
    bool finds(const std::string& rule) const { return !found(rule).empty(); }
};

inline Coach::Coach(Return way, bool check)
{
    const document::PartId city = add("city_inlet", "CW1");
    const document::PartId regulator = add("regulator", "PR1");
    const document::PartId trunk = add("tee", "T1");
    const document::PartId heaterJoin = way == Return::Own ? add("tee", "T2") : document::kNoPart;
    const document::PartId heater = add("tankless_heater", "WH1");
    const document::PartId tapJoin = add("tee", "T3");
    const document::PartId coldJoin = way == Return::ByColdLine ? add("tee", "T4") : document::kNoPart;
    const document::PartId tap = add("faucet", "F1");
    const document::PartId pump = add("circulator", "P1");
    const document::PartId valve = add("motor_valve", "MV1");
    add("controller", "C1");
    add("push_button", "PB1");

    pipe(city, "outlet", regulator, "inlet");
    pipe(regulator, "outlet", trunk, "run_a");
    std::vector<document::PartId> cold;
    if (way == Return::Own) {
        cold.push_back(pipe(trunk, "run_b", heaterJoin, "run_a"));
        cold.push_back(pipe(heaterJoin, "run_b", heater, "cold"));
        pipe(trunk, "branch", tap, "cold");
    } else {
        cold.push_back(pipe(trunk, "run_b", heater, "cold"));
        cold.push_back(pipe(trunk, "branch", coldJoin, "run_a"));
        pipe(coldJoin, "run_b", tap, "cold");
    }
    const document::PartId hot = pipe(heater, "hot", tapJoin, "run_a");
    pipe(tapJoin, "run_b", tap, "hot");
    document::PartId last = pump;
    study::LoopAnswer& loop = prediction.loop;
    loop.returnPath = {tapJoin, pipe(tapJoin, "branch", pump, "inlet"), pump};
    if (check) {
        const document::PartId checkValve = add("check_valve", "CV1");
        loop.returnPath.push_back(pipe(last, "outlet", checkValve, "inlet"));
        loop.returnPath.push_back(checkValve);
        last = checkValve;
    }
    loop.returnPath.push_back(pipe(last, "outlet", valve, "inlet"));
    loop.returnPath.push_back(valve);
    if (way == Return::Own) {
        loop.returnPath.insert(loop.returnPath.end(),
                               {pipe(valve, "outlet", heaterJoin, "branch"), heaterJoin, heaterJoin, cold[1]});
    } else {
        loop.returnPath.insert(loop.returnPath.end(), {pipe(valve, "outlet", coldJoin, "branch"), coldJoin, coldJoin,
                                                       cold[1], trunk, trunk, cold[0]});
    }
    loop.hotPath = {hot, tapJoin};
    loop.exists = true;
    loop.circulators = {pump};
    loop.heater = heater;
    loop.tap = tap;
    loop.returnTee = tapJoin;
    loop.coldStart_C = 20;
    loop.flow_m3s = 0.60 * us::kGpm;
    loop.activationFlow_m3s = 0.45 * us::kGpm;
    loop.holdFlow_m3s = 0.35 * us::kGpm;
    loop.flowMargin = *loop.flow_m3s / *loop.activationFlow_m3s;
    loop.flowLowVolts_m3s = 0.50 * us::kGpm;
    loop.flowHighVolts_m3s = 0.70 * us::kGpm;
}

inline document::PartId Coach::add(const std::string& kind, const std::string& tag)
{
    document::Part part;
    part.id = drawing.nextId++;
    part.kind = kind;
    part.tag = tag;
    part.stage = document::Stage::Added;
    drawing.parts.push_back(part);
    return part.id;
}

inline document::PartId Coach::pipe(document::PartId from, const std::string& fromPort, document::PartId to,
                                    const std::string& toPort)
{
    const document::PartId made = add("pipe_run", "L" + std::to_string(drawing.nextId));
    document::Part& part = drawing.parts.back();
    part.ends = {document::PipeEnd{from, fromPort, {}}, document::PipeEnd{to, toPort, {}}};
    return made;
}

inline document::PartId Coach::id(const std::string& tag) const
{
    const document::Part* part = drawing.findTag(tag);
    return part ? part->id : document::kNoPart;
}

inline void Coach::set(const std::string& tag, const std::string& key, parts::Value value, parts::Basis basis)
{
    drawing.find(id(tag))->entries[key] = {std::move(value), basis};
}

inline study::CaseResult& Coach::addCase(const std::string& name, int presses,
                                         std::vector<std::pair<std::string, double>> scalars)
{
    document::Case script;
    script.name = name;
    for (int press = 0; press < presses; ++press) {
        document::Action action;
        action.at_s = 1.0 + 60.0 * press;
        action.kind = document::ActionKind::PressButton;
        action.part = id("PB1");
        script.actions.push_back(action);
    }
    drawing.cases.push_back(script);
    study::CaseResult result;
    result.name = name;
    result.duration_s = 180;
    result.target_C = script.target_C;
    for (int press = 0; press < presses; ++press) {
        result.events.push_back({1.0 + 60.0 * press, "run_started", {}, id("C1")});
    }
    for (auto& [scalarId, value] : scalars) {
        // Where the simulation would have seen it.
        using enum study::HeatPlace;
        if (scalarId == "hottest_tap") {
            result.hottest.push_back({OutletHot, prediction.loop.tap, value, result.duration_s});
            if (presses > 0) {
                result.hottest.push_back({Join, prediction.loop.returnTee, value, result.duration_s});
            }
        } else if (scalarId == "hottest_heater_outlet") {
            result.hottest.push_back({HeaterOutlet, prediction.loop.heater, value, result.duration_s});
        } else if (scalarId == "hottest_heater_inlet") {
            result.hottest.push_back({HeaterInlet, prediction.loop.heater, value, result.duration_s});
            if (presses > 0 && id("T4") != document::kNoPart) {
                result.hottest.push_back({ColdEntry, id("T4"), value, result.duration_s});
            }
        }
        study::Scalar scalar;
        scalar.id = scalarId;
        scalar.label = scalarId;
        scalar.quantity = Quantity::Temperature;
        scalar.value = value;
        result.scalars.push_back(std::move(scalar));
    }
    prediction.cases.push_back(std::move(result));
    return prediction.cases.back();
}

/// What holds of every finding, whichever rule makes it and whichever test asks for it.
inline void checkWhole(const review::Finding& finding, const document::Drawing& drawing)
{
    INFO(finding.rule << ": " << finding.what.text);
    CHECK_FALSE(finding.source.empty());
    const document::Part* part = drawing.find(finding.part);
    CHECK((part || finding.part == document::kNoPart));
    for (const Message* message : {&finding.what, &finding.why, &finding.remedy}) {
        CHECK_FALSE(message->text.empty());
        // Every argument has its place in the text, and every place its argument.
        std::size_t places = 0;
        for (std::size_t k = 0; k < 10; ++k) {
            places += message->text.find('{' + std::to_string(k) + '}') != std::string::npos ? 1 : 0;
            CHECK((k < message->arguments.size())
                  == (message->text.find('{' + std::to_string(k) + '}') != std::string::npos));
        }
        CHECK(places == message->arguments.size());
    }
    // D: people are scalded, a part bursts or burns; C: it harms or fails; N: to be known.
    static const std::map<std::string, std::string> severities{
        {"scald_at_tap", "D"},       {"cold_outlet_warm", "DC"},   {"repeated_presses_unprotected", "DC"},
        {"fuse_above_wire", "D"},    {"part_over_pressure", "D"},  {"part_too_hot", "DC"},
        {"part_not_listed", "DN"},   {"circulator_too_hot", "CN"}, {"clipped_on_sensor", "CN"},
        {"flow_margin_thin", "CN"},  {"open_end", "CN"},           {"heater_recirculation_unknown", "CN"},
        {"pump_dead_headed", "N"},   {"tap_flow_margin", "CN"},    {"part_volts_exceeded", "CN"},
        {"rests_on_estimates", "N"},
    };
    const auto severity = severities.find(finding.rule);
    CHECK((severity == severities.end() ? std::string("C") : severity->second)
              .find("NCD"[static_cast<int>(finding.severity)])
          != std::string::npos);
    // What stands where in the sentence. t: the part it jumps to, s: another name, q: a figure.
    static const std::map<std::string, std::vector<std::string>> places{
        {"branch_overloaded", {"tqq"}},
        {"cold_outlet_warm", {"tq"}},
        {"dead_end", {"tq"}},
        {"inlet_lockout_missing", {"qt", "qtq"}},
        {"open_end", {"t", "tw"}},
        {"part_over_pressure", {"tqq", "qtq"}},
        {"part_too_hot", {"tqq"}},
        {"protection_without_sensor", {"tw"}},
        {"pump_without_own_check", {"ts"}},
        {"regulator_missing", {"qt"}},
        {"shower_without_mixing_valve", {"sqt"}},
        {"tank_overfills", {"st"}},
        {"winter_trapped", {"tq"}},
        {"wire_drop", {"tqqq"}},
    };
    std::string kinds;
    for (const Argument& argument : finding.what.arguments) {
        if (const auto* name = std::get_if<std::string>(&argument)) {
            CHECK_FALSE(name->empty());
            kinds += part && name->find(part->tag) != std::string::npos ? 't' : 's';
        } else if (const auto* figure = std::get_if<Measure>(&argument)) {
            CHECK(std::isfinite(figure->si));
            kinds += 'q';
        } else if (std::holds_alternative<std::int64_t>(argument)) {
            kinds += 'n';
        } else {
            kinds += 'w';  // words of ours
        }
    }
    if (const auto known = places.find(finding.rule); known != places.end()) {
        CAPTURE(kinds);
        CHECK(std::find(known->second.begin(), known->second.end(), kinds) != known->second.end());
    }
    // What is above its rating is more than it.
    for (std::size_t k = 0; k < finding.what.arguments.size(); ++k) {
        const auto* rated = std::get_if<Measure>(&finding.what.arguments[k]);
        for (const Argument& argument : finding.what.arguments) {
            const auto* other = std::get_if<Measure>(&argument);
            if (rated && other && other != rated && other->quantity == rated->quantity
                && finding.what.text.find("rated for {" + std::to_string(k) + '}') != std::string::npos) {
                CHECK(other->si > rated->si);
            }
        }
    }
}

inline std::vector<review::Finding> Coach::found(const std::string& rule) const
{
    std::vector<review::Finding> all;
    for (review::Finding& finding : review::review(drawing, prediction, drawn())) {
        if (finding.rule == rule) {
            checkWhole(finding, drawing);
            all.push_back(std::move(finding));
        }
    }
    return all;
}

}  // namespace tapward::test
