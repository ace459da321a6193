// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <algorithm>
#include <stdexcept>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "document/drawing.h"
#include "study/prediction.h"
#include "support/catch.h"

/// Small drawings put together part by part, and what is read off their cases.
namespace tapward::test {

class Bench {
public:
    document::Drawing drawing;

    document::PartId add(const std::string& kind, const std::string& tag, double height_m = 0)
    {
        document::Part part;
        part.id = drawing.nextId++;
        part.kind = kind;
        part.tag = tag;
        part.height_m = height_m;
        drawing.parts.push_back(part);
        return part.id;
    }
    document::PartId pipe(document::PartId from, const std::string& fromPort, document::PartId to,
                          const std::string& toPort, double length_m = 0)
    {
        const document::PartId id = add("pipe_run", "L" + std::to_string(drawing.nextId));
        document::Part& part = *drawing.find(id);
        part.ends[0] = {from, fromPort, {}};
        part.ends[1] = {to, toPort, {}};
        part.entries["length_m"] = {length_m, parts::Basis::Measured};
        return id;
    }
    void set(std::string_view tag, const std::string& key, parts::Value value,
             parts::Basis basis = parts::Basis::Measured)
    {
        drawing.find(id(tag))->entries[key] = {std::move(value), basis};
    }
    /// Lets a part name another one, as "sensor of this controller".
    void name(std::string_view tag, const std::string& key, std::string_view other)
    {
        set(tag, key, std::to_string(id(other)));
    }
    document::PartId id(std::string_view tag) const
    {
        const document::Part* part = drawing.findTag(tag);
        if (!part) {
            throw std::invalid_argument("no part " + std::string(tag));
        }
        return part->id;
    }

    document::Action act(double at_s, document::ActionKind kind, std::string_view tag = {}, double value = 1,
                         double second = -1) const
    {
        document::Action action;
        action.at_s = at_s;
        action.kind = kind;
        action.part = tag.empty() ? document::kNoPart : id(tag);
        action.value = value;
        action.second = second;
        return action;
    }
    document::Action press(double at_s) const { return act(at_s, document::ActionKind::PressButton); }
    document::Action hot(double at_s, std::string_view tag = "F1") const
    {
        return act(at_s, document::ActionKind::OpenOutlet, tag, 1, 1);
    }
    document::Action cold(double at_s, std::string_view tag = "F1") const
    {
        return act(at_s, document::ActionKind::OpenOutlet, tag, 1, 0);
    }
    document::Action shut(double at_s, std::string_view tag = "F1") const
    {
        return act(at_s, document::ActionKind::CloseOutlet, tag);
    }
    document::Action fault(double at_s, std::string_view tag, const std::string& what, bool begins = true) const
    {
        auto action = act(at_s, begins ? document::ActionKind::StartFault : document::ActionKind::EndFault, tag);
        action.fault = what;
        return action;
    }

    /// All water and air at 20 °C at the start, supplies too.
    document::Case script(double duration_s, std::vector<document::Action> actions) const
    {
        document::Case script;
        script.name = "the case";
        script.duration_s = duration_s;
        script.start_C = 20;
        script.ambient_C = 20;
        script.supply_C = 20;
        script.actions = std::move(actions);
        return script;
    }
    study::CaseResult run(const document::Case& script, const study::Options& options = {})
    {
        drawing.cases = {script};
        const auto prediction = study::predict(drawing, options);
        INFO((prediction ? "" : render(prediction.error().what, UnitSystem::Metric)));
        REQUIRE(prediction.has_value());
        REQUIRE(prediction->cases.size() == 1);
        REQUIRE_FALSE(prediction->cases[0].noAnswer.has_value());
        return prediction->cases[0];
    }
    study::CaseResult run(double duration_s, std::vector<document::Action> actions)
    {
        return run(script(duration_s, std::move(actions)));
    }
};

/// The smallest coach with a loop that returns through the cold line; lengths are round figures:
///
///     CW1 -1 m- T1 -1 m- T3 -1 m- TE2 - WH1 -4 m- T2 -0.5 m- F1, its hot side
///               |        |                        |
///               3 m      3 m                      0.5 m
///               F1       CV1 - FE1 - P1 - MV1 - 0.5 m - TE1
///
/// Pipes of 1/2 in PEX, BT1 with 12 V at its posts, no wire, C1 without any stop but what a test sets, MV1 5 s
/// from shut to open, P1 at speed at once. Its heater lights at 0.3 gpm, less than the loop's flow.
class SmallCoach : public Bench {
public:
    static constexpr double kBore_m = 0.475 * 0.0254;  ///< 1/2 in PEX, ASTM F876 SDR 9
    static double held_m3(double length_m) { return length_m * 3.14159265358979 / 4 * kBore_m * kBore_m; }

    SmallCoach()
    {
        const auto city = add("city_inlet", "CW1"), heater = add("tankless_heater", "WH1"), tap = add("faucet", "F1");
        const auto t1 = add("tee", "T1"), t2 = add("tee", "T2"), t3 = add("tee", "T3");
        const auto inlet = add("temperature_sensor", "TE2");
        pipe(city, "outlet", t1, "run_a", 1);
        pipe(t1, "run_b", t3, "run_a", 1);
        pipe(t1, "branch", tap, "cold", 3);
        pipe(t3, "run_b", inlet, "inlet", 1);
        pipe(inlet, "outlet", heater, "cold");
        pipe(heater, "hot", t2, "run_a", 4);
        pipe(t2, "run_b", tap, "hot", 0.5);
        const auto sensor = add("temperature_sensor", "TE1"), valve = add("motor_valve", "MV1");
        const auto pump = add("circulator", "P1"), meter = add("flow_sensor", "FE1"), check = add("check_valve", "CV1");
        pipe(t2, "branch", sensor, "inlet", 0.5);
        pipe(sensor, "outlet", valve, "inlet", 0.5);
        pipe(valve, "outlet", pump, "inlet");
        pipe(pump, "outlet", meter, "inlet");
        pipe(meter, "outlet", check, "inlet");
        pipe(check, "outlet", t3, "branch", 3);
        add("battery", "BT1");
        add("controller", "C1");
        add("push_button", "PB1");
        set("BT1", "voltage_V", 12.0);
        set("BT1", "internal_ohm", 0.0);
        set("C1", "contact_ohm", 0.0);
        set("C1", "stop_by_volume", false);
        set("C1", "longest_run_s", 0.0);
        name("C1", "flow_sensor", "FE1");
        name("C1", "stop_sensor", "TE1");
        set("P1", "spin_up_s", 0.0);
        set("WH1", "activation_flow_m3s", 0.3 * us::kGpm);
        set("WH1", "hold_flow_m3s", 0.2 * us::kGpm);
        for (const char* sensorTag : {"TE1", "TE2"}) {
            set(sensorTag, "lag_s", 0.2);
        }
    }
};

/// When events of this kind happened.
inline std::vector<double> times(const study::CaseResult& result, std::string_view id)
{
    std::vector<double> found;
    for (const study::Event& event : result.events) {
        if (event.id == id) {
            found.push_back(event.t_s);
        }
    }
    return found;
}
/// What the first event of this kind says; empty without one.
inline std::string said(const study::CaseResult& result, std::string_view id)
{
    const auto at = std::find_if(result.events.begin(), result.events.end(),
                                 [&](const study::Event& event) { return event.id == id; });
    return at == result.events.end() ? std::string() : render(at->what, UnitSystem::Metric);
}
/// A series at a time: its last value written down until then.
inline double read(const study::CaseResult& result, std::string_view id, double t_s)
{
    const study::Series* series = result.find(id);
    INFO(id << " at " << t_s);
    REQUIRE(series);
    const auto after = std::upper_bound(result.time_s.begin(), result.time_s.end(), t_s + 1e-6);
    REQUIRE(after != result.time_s.begin());
    return series->values[static_cast<std::size_t>(after - result.time_s.begin()) - 1];
}
/// A series between two times, each value held until the next is written down.
inline double integral(const study::CaseResult& result, std::string_view id, double from_s, double to_s)
{
    const study::Series& series = *result.find(id);
    double sum = 0;
    for (std::size_t i = 1; i < series.values.size(); ++i) {
        const double begin = std::clamp(result.time_s[i - 1], from_s, to_s);
        const double end = std::clamp(result.time_s[i], from_s, to_s);
        sum += (end - begin) * series.values[i - 1];
    }
    return sum;
}
/// What the last tap to be closed had drawn.
inline double drawn_m3(const study::CaseResult& result)
{
    double found = -1;
    for (const study::Event& event : result.events) {
        found = event.id == "tap_closed" ? std::get<Measure>(event.what.arguments.at(1)).si : found;
    }
    return found;
}
inline double scalar(const study::CaseResult& result, std::string_view id)
{
    const study::Scalar* found = result.scalar(id);
    INFO(id << (found ? ": " + render(found->reason, UnitSystem::Metric) : ""));
    REQUIRE(found);
    REQUIRE(found->value.has_value());
    return *found->value;
}
/// Why there is no such answer; empty when there is one.
inline std::string why(const study::CaseResult& result, std::string_view id)
{
    const study::Scalar* found = result.scalar(id);
    REQUIRE(found);
    return found->value ? std::string() : render(found->reason, UnitSystem::Metric);
}

}  // namespace tapward::test
