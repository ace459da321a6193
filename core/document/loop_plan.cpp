// SPDX-License-Identifier: GPL-3.0-or-later
#include "document/loop_plan.h"

#include <algorithm>
#include <cmath>

#include "base/units.h"

namespace tapward::document {
namespace {

parts::Entry estimated(parts::Value value) { return {std::move(value), parts::Basis::Estimated}; }

/// Settings a careful technician begins with; each is an estimate to be checked on the coach.
parts::Entries controllerEntries(const Variant& variant, const Survey& survey)
{
    // Tube walls take their share, so hot comes after well more than the water that stands in the way: 1.1 to 1.5 times
    // it, more at low flow; the heater's own water and what runs while it lights add about 0.3 gal. All from memory: the
    // temperature stop ends the run sooner, and the first runs show where to set it.
    const double stop_m3 = std::clamp(2 * survey.hotVolume_m3 + 0.3 * us::kGallon, 0.4 * us::kGallon, 5 * us::kGallon);
    // Twice the time that takes at 0.4 gpm, a low loop flow: common practice, no published source.
    const double longest_s = std::clamp(2 * stop_m3 / (0.4 * us::kGpm), 120.0, 900.0);
    parts::Entries entries;
    entries["stop_by_volume"] = estimated(true);
    entries["stop_volume_m3"] = estimated(std::round(stop_m3 * 1e5) / 1e5);
    entries["stop_by_temperature"] = estimated(true);
    // What passes the sensor enters the cold line next: 104 °F there (IECC C404, demand recirculation).
    const bool byColdLine = variant.way == ReturnWay::ColdLine;
    entries["stop_temperature_C"] = estimated(us::celsius(byColdLine ? 104 : 107));
    entries["refuse_when_warm"] = estimated(true);
    entries["high_limit"] = estimated(true);
    entries["high_limit_C"] = estimated(us::celsius(120));
    if (survey.inletSensed) {
        // IECC C404, demand recirculation: water entering the cold pipe not above 104 °F.
        entries["inlet_lockout"] = estimated(true);
        entries["inlet_lockout_C"] = estimated(us::celsius(104));
    }
    entries["cool_down_wait_s"] = estimated(300.0);
    entries["longest_run_s"] = estimated(std::round(longest_s));
    entries["no_flow_s"] = estimated(20.0);
    return entries;
}

parts::Entries named(const char* name) { return {{"name", estimated(std::string(name))}}; }

/// The demand pump drives a return into the tank: unthrottled it sends more through the heater than the fire can warm.
/// About 1 gpm at the pump's pressure (Cv 0.16); common practice, no published source, to be set on the coach.
parts::Entries throttleEntries()
{
    parts::Entries entries = named("Throttle, to be set");
    entries["flow_coefficient_m3s_sqrtPa"] = estimated(0.16 * us::kGpm / std::sqrt(us::kPsi));
    return entries;
}

/// From the battery to a sink at the other end of a coach of 30 ft; small pumps are wired with AWG 16 as a rule. Common
/// practice, no published source.
parts::Entries pumpEntries()
{
    return {{"wire_length_m", estimated(9.0)}, {"wire_gauge", estimated(std::string("16"))}};
}

/// Loss of a flexible connector on the velocity head in 1/2 in tube: bore 0.275 in (0.25 to 0.30), 12 in long; entry, exit
/// and friction are 3.1 velocity heads of its own, (0.475/0.275)^4 = 8.9 times as much on the tube's. Bore and length from
/// memory.
constexpr double kConnectorK = 27.6;

/// A coach's tube has an elbow about every five feet; common practice, no published source.
int usualElbows(double length_m) { return static_cast<int>(std::lround(length_m / (5 * us::kFoot))); }

}  // namespace

std::string_view returnRole(ReturnWay way)
{
    return way == ReturnWay::ColdLine ? "return_cold" : way == ReturnWay::OwnLine ? "return_own" : "return_tank";
}

Plan Plan::mirrored() const
{
    Plan plan = *this;
    for (PlanItem& item : plan.items) {
        item.at.x = -item.at.x;
        const parts::PartKind* kind = parts::find(item.kind);
        if (kind && !kind->ports.empty()) {
            item.flipped = !item.flipped;
            item.turn = (4 - item.turn) & 3;
        }
    }
    plan.box = {-box.right, box.top, -box.left, box.bottom};
    plan.in.x = -in.x;
    plan.out.x = -out.x;
    return plan;
}

Plan planFor(Variant variant, const Survey& survey)
{
    constexpr double kPitch = 8;  // modules from symbol to symbol: 4 of symbol, 4 for the pipe and its label
    Plan plan;
    const auto item = [&plan](std::string_view role, std::string_view kind, Point at, bool leftward = false,
                              parts::Entries entries = {}) {
        plan.items.push_back({std::string(role), kind, at, 0, leftward, std::move(entries)});
    };
    // A pump hangs on flexible connectors, for quiet and to come off again.
    const auto hose = [&plan] { plan.runs.back().extraK = kConnectorK; };
    const auto run = [&plan](std::string_view role, std::string_view from, std::string_view fromPort,
                             std::string_view to, std::string_view toPort, double length_m = 0.15, int elbows = 0) {
        plan.runs.push_back({std::string(role), std::string(from), std::string(fromPort), std::string(to),
                             std::string(toPort), length_m, elbows, 1, 0});
    };
    // Upper row, water to the right: what senses and what opens.
    item(kStopSensor, "temperature_sensor", {0, 0}, false, named("Stop sensor"));
    item(kLimitSensor, "temperature_sensor", {kPitch, 0}, false, named("High limit"));
    item(kValve, "motor_valve", {2 * kPitch, 0});
    item(kFlowSensor, "flow_sensor", {3 * kPitch, 0});
    run(kFirstRun, {}, {}, kStopSensor, "inlet", 0.3, 1);
    run("to_limit_sensor", kStopSensor, "outlet", kLimitSensor, "inlet");
    run("to_loop_valve", kLimitSensor, "outlet", kValve, "inlet");
    run("to_flow_sensor", kValve, "outlet", kFlowSensor, "inlet");

    // Lower rows, water to the left: what pumps, and back.
    const bool parallel = variant.pumps == PumpSet::TwoInParallel;
    const double row = kPitch;
    std::string last;
    std::string lastPort = "outlet";
    if (parallel) {
        plan.items.push_back({"split_tee", "tee", {4 * kPitch - 1, row}, 1, false, {}});
        item("pump_1", "circulator", {3 * kPitch, row}, true, pumpEntries());
        item("check_1", "check_valve", {2 * kPitch, row}, true);
        item("pump_2", "circulator", {3 * kPitch, 2 * row}, true, pumpEntries());
        item("check_2", "check_valve", {2 * kPitch, 2 * row}, true);
        item("join_tee", "tee", {kPitch + 1, row});
        run("to_split", kFlowSensor, "outlet", "split_tee", "run_a", 0.15, 1);
        run("to_pump_1", "split_tee", "branch", "pump_1", "inlet");
        hose();
        run("to_pump_2", "split_tee", "run_b", "pump_2", "inlet", 0.2, 1);
        hose();
        run("to_check_1", "pump_1", "outlet", "check_1", "inlet");
        hose();
        run("to_check_2", "pump_2", "outlet", "check_2", "inlet");
        hose();
        run("to_join_1", "check_1", "outlet", "join_tee", "run_b");
        run("to_join_2", "check_2", "outlet", "join_tee", "branch", 0.2, 1);
        last = "join_tee";
        lastPort = "run_a";
        plan.out = {kPitch, row};
    } else {
        const bool series = variant.pumps == PumpSet::TwoInSeries;
        item("pump_1", "circulator", {3 * kPitch, row}, true, pumpEntries());
        run("to_pump_1", kFlowSensor, "outlet", "pump_1", "inlet", 0.2, 2);
        hose();
        last = "pump_1";
        if (series) {
            item("pump_2", "circulator", {2 * kPitch, row}, true, pumpEntries());
            run("to_pump_2", "pump_1", "outlet", "pump_2", "inlet");
            hose();
            last = "pump_2";
        }
        const double at = (series ? 1 : 2) * kPitch;
        item("check_1", "check_valve", {at, row}, true);
        run("to_check_1", last, "outlet", "check_1", "inlet");
        hose();
        last = "check_1";
        plan.out = {at - 2, row};
    }
    if (variant.way == ReturnWay::Tank) {
        const double at = parallel ? 2 : plan.out.x + 2 - kPitch;
        item("throttle", "hand_valve", {at, row}, true, throttleEntries());
        run("to_throttle", last, lastPort, "throttle", "inlet");
        last = "throttle";
        lastPort = "outlet";
        plan.out = {at - 2, row};
    } else if (survey.sensorInBlock) {
        item(kInletSensor, "temperature_sensor", {0, row}, true, named("Heater inlet"));
        run("to_inlet_sensor", last, lastPort, kInletSensor, "inlet");
        last = kInletSensor;
        lastPort = "outlet";
        plan.out = {-2, row};
    }
    // A line of its own is as long as the hot way: the coach is that far.
    const double own_m = std::max(1.0, std::round(survey.hotLength_m * 10) / 10);
    const bool far = variant.way != ReturnWay::ColdLine;
    run(returnRole(variant.way), last, lastPort, {}, {}, far ? own_m : 0.5, far ? std::max(1, usualElbows(own_m)) : 1);

    const double electric = (parallel ? 3 : 2) * row;
    item(kController, "controller", {0, electric}, false, controllerEntries(variant, survey));
    item(kButton, "push_button", {kPitch, electric}, false, named("At the tap"));
    item("fuse", "fuse", {2 * kPitch, electric});
    plan.in = {-2, 0};
    plan.box = {-4, -4, 4 * kPitch + 1, electric + 4};
    return plan;
}

}  // namespace tapward::document
