// SPDX-License-Identifier: GPL-3.0-or-later
#include "parts/battery.h"

#include "parts/common.h"

namespace tapward::parts {
namespace {

Result<PartModel> model(const Values& values)
{
    PartModel model;
    model.role = Role::Battery;
    model.battery =
        BatteryModel{values.number("voltage_V"), values.number("internal_ohm"), values.number("capacity_C")};
    return model;
}

std::vector<Material> materials(const Values& values) { return onePiece(values, "Battery, 12 V"); }

}  // namespace

const PartKind& battery()
{
    static const PartKind kind{
        .id = "battery",
        .title = "Battery",
        .tagLetter = "BT",
        .searchWords = "12 V house bank power",
        .group = TrayGroup::Electric,
        .fields = {nameField(),
                   {.key = "voltage_V",
                    .label = "Voltage, no load",
                    .quantity = Quantity::Voltage,
                    .most = 60,
                    .initial = kBattery_V,
                    .source =
                        "half to fully charged, off the charger, lights and fans on: 11.8..12.6 V, common practice, "
                        "no published source"},
                   {.key = "internal_ohm",
                    .label = "Internal resistance",
                    .quantity = Quantity::Resistance,
                    .most = 10,
                    .initial = 0.02,
                    .source = kFromMemory},
                   {.key = "capacity_C",
                    .label = "Capacity",
                    .quantity = Quantity::Charge,
                    .most = 1e8,
                    .initial = 100.0 * 3600,
                    .source = "rating plate",
                    .unset = "not known"},
                   priceField()},
        .faults = {{"low", "down to 10.5 V", FaultEffect::LowVoltage, 10.5},
                   {"cut", "power cut", FaultEffect::PowerCut, 0}},
        .model = model,
        .materials = materials,
        .shownFields = {"voltage_V"},
        .caution = "Isolate the battery before work; fuse every branch at the source end.",
    };
    return kind;
}

}  // namespace tapward::parts
