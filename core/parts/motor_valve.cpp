// SPDX-License-Identifier: GPL-3.0-or-later
#include "parts/motor_valve.h"

#include "parts/common.h"

namespace tapward::parts {
namespace {

Result<PartModel> model(const Values& values)
{
    MotorValveModel motor;
    motor.travel_s = values.number("travel_s");
    motor.restOpening = values.text("rest") == "open" ? 1 : 0;
    const std::string& onLoss = values.text("on_power_loss");
    motor.onPowerLoss = onLoss == "stays"   ? MotorValveModel::OnPowerLoss::Stays
                        : onLoss == "opens" ? MotorValveModel::OnPowerLoss::Opens
                                            : MotorValveModel::OnPowerLoss::Closes;
    motor.minimumVolts = values.number("minimum_V");
    motor.current_A = values.number("current_A");
    motor.controller = values.text("controller");

    network::ResistanceLaw law;
    law.R = coefficientR(values);
    law.opening = motor.restOpening;
    PartModel model = inLineModel(Role::MotorValve, law);
    model.motorValve = std::move(motor);
    setLimits(model, values);
    return model;
}

std::vector<Material> materials(const Values& values) { return onePiece(values, "Motorized ball valve, 12 V"); }

}  // namespace

const PartKind& motorValve()
{
    static const PartKind kind{
        .id = "motor_valve",
        .title = "Motorized ball valve",
        .tagLetter = "MV",
        .searchWords = "actuator loop valve electric",
        .group = TrayGroup::Valves,
        .ports = inLinePorts(),
        .fields = {nameField(),
                   coefficientField(8, "full bore 1/2 in, Cv 8..15, reduced bore 2..5, not checked"),
                   {.key = "travel_s",
                    .label = "Travel time",
                    .quantity = Quantity::Time,
                    .least = 0.1,
                    .most = 120,
                    .initial = 5.0,
                    .source = "3..15 s, published data sheets",
                    .help = "From shut to open."},
                   {.key = "rest",
                    .label = "At rest",
                    .type = FieldType::Choice,
                    .initial = std::string{"closed"},
                    .source = kCommonPractice,
                    .choices = {{"closed", "Closed"}, {"open", "Open"}},
                    .help = "Where it stands while no run is on."},
                   {.key = "on_power_loss",
                    .label = "On power loss",
                    .type = FieldType::Choice,
                    .initial = std::string{"closes"},
                    .source = "capacitor or spring return, data sheets",
                    .choices = {{"closes", "Closes"}, {"stays", "Stays"}, {"opens", "Opens"}}},
                   {.key = "minimum_V",
                    .label = "Least voltage",
                    .quantity = Quantity::Voltage,
                    .most = 48,
                    .initial = 9.0,
                    .source = kFromMemory},
                   {.key = "current_A",
                    .label = "Current while moving",
                    .quantity = Quantity::Current,
                    .most = 10,
                    .initial = 0.1,
                    .source = "60..100 mA while moving, published data sheet"},
                   controllerField(),
                   fuseField("Empty: the only fuse in the drawing."),
                   wireLengthField(),
                   wireGaugeField("18"),
                   temperatureLimitField(82.2),
                   pressureLimitField(),
                   drinkingWaterField(),
                   priceField()},
        .faults = {{"stuck_open", "stuck open", FaultEffect::HoldOpening, 1},
                   {"stuck_shut", "stuck shut", FaultEffect::HoldOpening, 0},
                   {"slow", "travels three times as long", FaultEffect::SlowTravel, 3},
                   {"always_on", "relay welded: stays driven open", FaultEffect::DriveAlwaysOn, 1}},
        .model = model,
        .materials = materials,
        .shownFields = {"rest"},
        .caution = "Fuse at the source end; keep splices dry; isolate the battery before work.",
        .inLine = {"inlet", "outlet"},
    };
    return kind;
}

}  // namespace tapward::parts
