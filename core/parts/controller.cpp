// SPDX-License-Identifier: GPL-3.0-or-later
#include "parts/controller.h"

#include "parts/common.h"

namespace tapward::parts {
namespace {

Result<PartModel> model(const Values& values)
{
    ControllerModel box;
    control::RunSpec& spec = box.spec;
    spec.stopByVolume = values.flag("stop_by_volume");
    spec.stopVolume_m3 = values.number("stop_volume_m3");
    spec.stopByTime = values.flag("stop_by_time");
    spec.stopTime_s = values.number("stop_time_s");
    spec.stopByTemperature = values.flag("stop_by_temperature");
    spec.stopTemperature_C = values.number("stop_temperature_C");
    spec.refuseWhenWarm = values.flag("refuse_when_warm");
    spec.highLimit = values.flag("high_limit");
    spec.highLimit_C = values.number("high_limit_C");
    spec.inletLockout = values.flag("inlet_lockout");
    spec.inletLockout_C = values.number("inlet_lockout_C");
    spec.coolDownWait_s = values.number("cool_down_wait_s");
    spec.longestRun_s = values.number("longest_run_s");
    spec.noFlow_s = values.number("no_flow_s");
    spec.noFlowBelow_m3s = values.number("no_flow_below_m3s");
    spec.pumpDelay_s = values.number("pump_delay_s");
    spec.pumpAfterValve = values.flag("pump_after_valve");
    box.stopSensor = values.text("stop_sensor");
    box.limitSensor = values.text("limit_sensor");
    box.inletSensor = values.text("inlet_sensor");
    box.flowSensor = values.text("flow_sensor");
    box.button = values.text("button");

    PartModel model;
    model.role = Role::Controller;
    model.controller = std::move(box);
    return model;
}

std::vector<Material> materials(const Values& values) { return onePiece(values, "Loop controller, 12 V"); }

Field seconds(std::string_view key, Text label, double initial, std::string_view help)
{
    return {.key = key,
            .label = label,
            .quantity = Quantity::Time,
            .most = 7200,
            .initial = initial,
            .source = kCommonPractice,
            .help = help};
}

Field flag(std::string_view key, Text label, bool initial, std::string_view help = {})
{
    return {.key = key,
            .label = label,
            .type = FieldType::Flag,
            .initial = initial,
            .source = kCommonPractice,
            .help = help};
}

Field temperature(std::string_view key, Text label, double initial)
{
    return {.key = key,
            .label = label,
            .quantity = Quantity::Temperature,
            .least = 5,
            .most = 95,
            .initial = initial,
            .source = kCommonPractice};
}

Field sensor(std::string_view key, Text label, std::string_view kinds, std::string_view help)
{
    return {.key = key,
            .label = label,
            .type = FieldType::PartRef,
            .initial = std::string{},
            .source = "the wiring",
            .refKinds = kinds,
            .help = help};
}

}  // namespace

const PartKind& controller()
{
    static const PartKind kind{
        .id = "controller",
        .title = "Controller",
        .tagLetter = "C",
        .searchWords = "box relay timer loop control",
        .group = TrayGroup::Control,
        .fields =
            {
                nameField(),
                flag("stop_by_volume", "Stop by volume", true),
                {.key = "stop_volume_m3",
                 .label = "Stop at",
                 .quantity = Quantity::Volume,
                 .least = 1e-5,
                 .most = 1,
                 .initial = 0.75 * us::kGallon,
                 .source = kCommonPractice,
                 .help = "Water pumped in one run."},
                flag("stop_by_time", "Stop by time", false),
                seconds("stop_time_s", "Stop after", 90, {}),
                flag("stop_by_temperature", "Stop by temperature", false),
                temperature("stop_temperature_C", "Stop sensor at", us::celsius(107)),
                flag("refuse_when_warm", "Refuse when already warm", false,
                     "The stop sensor already reads above its stop."),
                flag("high_limit", "Independent high limit", false,
                     "A device of its own that ends a run if the main stop fails."),
                temperature("high_limit_C", "High limit at", us::celsius(120)),
                flag("inlet_lockout", "Inlet lockout", false, "No run while water to the heater is too warm."),
                temperature("inlet_lockout_C", "Inlet lockout at", us::celsius(104)),
                seconds("cool_down_wait_s", "Cool-down wait", 0, "Shortest rest between runs."),
                seconds("longest_run_s", "Longest run", 180, "0: no longest run."),
                seconds("no_flow_s", "Stop without flow for", 0, "0: not watched."),
                {.key = "no_flow_below_m3s",
                 .label = "No flow is below",
                 .quantity = Quantity::Flow,
                 .most = 1e-3,
                 .initial = 0.1 * us::kGpm,
                 .source = kCommonPractice},
                flag("pump_after_valve", "Pumps wait for the valve", true,
                     "They start when it has finished its travel."),
                seconds("pump_delay_s", "Pump delay", 0,
                        "From the moment the valve began to open; when they do not wait for it."),
                sensor("stop_sensor", "Stop sensor", "temperature_sensor", "Empty: none."),
                sensor("limit_sensor", "High-limit sensor", "temperature_sensor",
                       "Empty: none. One of its own, or it is not independent."),
                sensor("inlet_sensor", "Heater-inlet sensor", "temperature_sensor", "Empty: none."),
                sensor("flow_sensor", "Flow sensor", "flow_sensor",
                       "Empty: none; the pumped volume is then taken as known exactly."),
                {.key = "current_A",
                 .label = "Own current in a run",
                 .quantity = Quantity::Current,
                 .most = 20,
                 .initial = 0.15,
                 .source = "a relay coil or two and the board, not checked",
                 .help = "Without the pumps and valves it switches."},
                {.key = "idle_current_A",
                 .label = "Own current at rest",
                 .quantity = Quantity::Current,
                 .most = 20,
                 .initial = 0.01,
                 .source = kFromMemory,
                 .help = "Drawn all day."},
                {.key = "contact_ohm",
                 .label = "Relay contact resistance",
                 .quantity = Quantity::Resistance,
                 .most = 10,
                 .initial = 0.03,
                 .source = "relay sheets promise at most 0.1 ohm when new, not checked",
                 .help = "In the way to each pump and valve it switches; worn contacts have more."},
                fuseField("Empty: the only fuse in the drawing."),
                wireLengthField(),
                wireGaugeField("18"),
                sensor("button", "Push button", "push_button", "Empty: the only one in the drawing."),
                priceField(),
            },
        .faults = {{"stop_fails", "main stop never trips", FaultEffect::StopFails, 0},
                   {"relay_welded", "output relay welded: valve and pumps stay on", FaultEffect::DriveAlwaysOn, 1},
                   {"limit_fails", "high limit never trips", FaultEffect::LimitFails, 0}},
        .model = model,
        .materials = materials,
        .shownFields = {"stop_volume_m3"},
        .caution = "Never rely on one stop: a separate high limit must end the run if the main stop, relay or sensor "
                   "fails. Fuse at the source end; isolate the battery before work.",
    };
    return kind;
}

}  // namespace tapward::parts
