// SPDX-License-Identifier: GPL-3.0-or-later
#include "parts/storage_heater.h"

#include <algorithm>
#include <cmath>

#include "parts/common.h"

namespace tapward::parts {
namespace {

constexpr double kLeastLayer_m3 = 0.5e-3;
/// Along a tank's height, water (0.63) and what its shell carries beside it, W/(m K); from memory.
constexpr double kUpConductivity = 1.3;

Result<PartModel> model(const Values& values)
{
    heater::StorageSpec spec;
    spec.setpoint_C = values.number("setpoint_C");
    spec.differential_K = values.number("differential_K");
    spec.burnerInput_W = values.number("burner_input_W");
    spec.efficiency = values.number("efficiency");
    spec.element_W = values.number("element_W");
    spec.ecoLimit_C = values.number("eco_limit_C");
    spec.ignition_s = values.number("ignition_s");

    network::ResistanceLaw law;
    law.R = lossR(values);
    PartModel model = inLineModel(Role::StorageHeater, law);
    thermal::Stretch& tank = model.paths[0].body;
    tank.volume_m3 = values.number("tank_volume_m3");
    tank.loss_W_K = values.number("standing_loss_W_K");
    tank.ambient = values.number("bay_C");
    tank.bodyCells = static_cast<int>(
        std::clamp(values.number("layers"), 1.0, std::max(1.0, std::floor(tank.volume_m3 / kLeastLayer_m3))));
    tank.layerLink_W_K = kUpConductivity * tank.bodyCells * std::cbrt(tank.volume_m3);  // of a tank as high as wide
    model.storage = spec;
    setLimits(model, values);
    return model;
}

std::vector<Material> materials(const Values& values) { return onePiece(values, "Storage water heater"); }

}  // namespace

const PartKind& storageHeater()
{
    static const PartKind kind{
        .id = "storage_heater",
        .title = "Storage heater",
        .tagLetter = "HWT",
        .searchWords = "tank water heater thermostat element gas electric",
        .group = TrayGroup::Heating,
        .ports = {{"cold", "Cold in", Side::Left, -2, 0}, {"hot", "Hot out", Side::Right, 2, 0}},
        .fields =
            {
                nameField(),
                {.key = "tank_volume_m3",
                 .label = "Tank",
                 .quantity = Quantity::Volume,
                 .least = 1e-3,
                 .most = 0.5,
                 .initial = 6 * us::kGallon,
                 .source = "6, 10 (12, 16) gal, published"},
                {.key = "layers",
                 .label = "Layers of water",
                 .type = FieldType::Count,
                 .least = 1,
                 .most = 30,
                 .initial = 6.0,
                 .source = kCommonPractice,
                 .help =
                     "Hot water lies on what comes in cold below. 1: mixed throughout; about 6: a lying coach tank; "
                     "20: an upright one, which gives some 70 % of its water near the setpoint."},
                {.key = "setpoint_C",
                 .label = "Thermostat",
                 .quantity = Quantity::Temperature,
                 .least = 20,
                 .most = 90,
                 .initial = us::celsius(130),
                 .source = "120..140 °F, published"},
                {.key = "differential_K",
                 .label = "Lights again below by",
                 .quantity = Quantity::TemperatureDifference,
                 .least = 0.5,
                 .most = 30,
                 .initial = 5.5,
                 .source = kFromMemory},
                {.key = "burner_input_W",
                 .label = "Burner (gas input)",
                 .quantity = Quantity::Power,
                 .most = 100e3,
                 .initial = 12000 * us::kBtuPerHour,
                 .source = kFromMemory,
                 .help = "0: no burner."},
                {.key = "efficiency",
                 .label = "Burner efficiency",
                 .quantity = Quantity::Percent,
                 .least = 0.3,
                 .most = 1,
                 .initial = 0.75,
                 .source = kFromMemory},
                {.key = "element_W",
                 .label = "Electric element",
                 .quantity = Quantity::ElectricPower,
                 .most = 10e3,
                 .initial = 0.0,
                 .source = "rating plate",
                 .help = "0: no element."},
                {.key = "ignition_s",
                 .label = "Time to light",
                 .quantity = Quantity::Time,
                 .most = 600,
                 .initial = 5.0,
                 .source = kFromMemory},
                {.key = "eco_limit_C",
                 .label = "Over-temperature switch (ECO)",
                 .quantity = Quantity::Temperature,
                 .least = 50,
                 .most = 130,
                 .initial = us::celsius(190),
                 .source = "about 190 °F, published"},
                lossField(0.5 * us::kPsi, kFromMemory),
                lossFlowField(2 * us::kGpm),
                {.key = "standing_loss_W_K",
                 .label = "Loss to the air (W/K)",
                 .most = 100,
                 .initial = 1.5,
                 .source = kFromMemory},
                bayField(),
                recirculationField(),
                temperatureLimitField(0),
                pressureLimitField(),
                drinkingWaterField(),
                priceField(),
            },
        .faults = {{"no_gas", "gas runs out", FaultEffect::GasFails, 0}},
        .model = model,
        .materials = materials,
        .shownFields = {"tank_volume_m3", "setpoint_C"},
        .caution =
            "Gas or mains appliance: do not alter its switches or its relief valve; the maker's instructions and "
            "local codes come first.",
        .inLine = {"cold", "hot"},
    };
    return kind;
}

}  // namespace tapward::parts
