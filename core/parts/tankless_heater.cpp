// SPDX-License-Identifier: GPL-3.0-or-later
#include "parts/tankless_heater.h"

#include "parts/common.h"
#include "water/water.h"

namespace tapward::parts {
namespace {

constexpr double kCopperHeat_J_kgK = 385;  // copper handbooks, from memory

Result<PartModel> model(const Values& values)
{
    heater::TanklessSpec spec;
    spec.setpoint_C = values.number("setpoint_C");
    spec.minimumVolts = values.number("minimum_V");
    spec.activationFlow_m3s = values.number("activation_flow_m3s");
    spec.holdFlow_m3s = values.number("hold_flow_m3s");
    spec.flowProof_s = values.number("flow_proof_s");
    spec.prePurge_s = values.number("pre_purge_s");
    spec.ignition_s = values.number("ignition_s");
    spec.minimumInput_W = values.number("minimum_input_W");
    spec.maximumInput_W = values.number("maximum_input_W");
    spec.efficiency = values.number("efficiency");
    spec.derate = values.text("altitude_derate") == "from_sea_level" ? heater::TanklessSpec::Derate::AboveSeaLevel
                                                                     : heater::TanklessSpec::Derate::Above2000ft;
    spec.outletLimit_C = values.number("outlet_limit_C");
    spec.outletHysteresis_K = values.number("outlet_limit_hysteresis_K");
    spec.inletLimit_C = values.number("inlet_limit_C");
    spec.inletHysteresis_K = values.number("inlet_limit_hysteresis_K");
    spec.ecoLimit_C = values.number("eco_limit_C");
    spec.ignitionTries = static_cast<int>(values.number("ignition_tries"));
    spec.retryPurge_s = values.number("retry_purge_s");
    spec.restartDelay_s = values.number("restart_delay_s");
    spec.postPurge_s = values.number("post_purge_s");
    spec.controlTime_s = values.number("control_time_s");
    spec.fireTravel_s = values.number("fire_travel_s");
    spec.sensorLag_s = values.number("sensor_lag_s");
    spec.shutsOffWhenTooHot = values.flag("shuts_off_when_too_hot");
    spec.tooHotAbove_K = values.number("too_hot_above_K");
    spec.tooHotFor_s = values.number("too_hot_for_s");
    spec.relightBelow_K = values.number("relight_below_K");
    spec.purgeLoss_W_K = values.number("purge_loss_W_K");
    if (spec.holdFlow_m3s > spec.activationFlow_m3s) {
        return problem({"The heater's hold flow, {0}, is above its activation flow, {1}.",
                        {Measure{spec.holdFlow_m3s, Quantity::Flow}, Measure{spec.activationFlow_m3s, Quantity::Flow}}},
                       "The flame goes out below the flow it was lit at; read both again.");
    }
    if (spec.minimumInput_W > spec.maximumInput_W) {
        return problem({"The heater's minimum fire, {0}, is above its maximum, {1}.",
                        {Measure{spec.minimumInput_W, Quantity::Power}, Measure{spec.maximumInput_W, Quantity::Power}}},
                       "Read both again from the rating plate.");
    }

    network::ResistanceLaw law;
    law.R = lossR(values);
    PartModel model = inLineModel(Role::Tankless, law);
    thermal::Stretch& exchanger = model.paths[0].body;
    exchanger.volume_m3 = values.number("exchanger_volume_m3");
    exchanger.body_J_K = values.number("exchanger_mass_kg") * kCopperHeat_J_kgK;
    exchanger.bodyFilm_W_K = values.number("exchanger_film_W_K");
    spec.exchanger_J_K = exchanger.volume_m3 * water::referenceVolumeHeat() + exchanger.body_J_K;
    exchanger.loss_W_K = values.number("standing_loss_W_K");
    exchanger.ambient = values.number("bay_C");
    exchanger.bodyBore_m = values.number("coil_bore_m");
    model.tankless = spec;
    setLimits(model, values);
    return model;
}

std::vector<Material> materials(const Values& values) { return onePiece(values, "Tankless gas heater"); }

Field seconds(std::string_view key, Text label, double initial, std::string_view source)
{
    return {.key = key, .label = label, .quantity = Quantity::Time, .most = 600, .initial = initial, .source = source};
}

}  // namespace

const PartKind& tanklessHeater()
{
    constexpr std::string_view lightUp =
        "light-up 3..6 s, 5 s trials with 15 s purge between, 3 tries: published manuals";
    static const PartKind kind{
        .id = "tankless_heater",
        .title = "Tankless heater",
        .tagLetter = "WH",
        .searchWords = "on-demand instantaneous gas propane water heater burner",
        .group = TrayGroup::Heating,
        .ports = {{"cold", "Cold in", Side::Left, -2, 0}, {"hot", "Hot out", Side::Right, 2, 0}},
        .fields =
            {
                nameField(),
                {.key = "setpoint_C",
                 .label = "Setpoint",
                 .quantity = Quantity::Temperature,
                 .least = 20,
                 .most = 90,
                 .initial = us::celsius(124),
                 .source = kCommonPractice},
                {.key = "activation_flow_m3s",
                 .label = "Activation flow",
                 .quantity = Quantity::Flow,
                 .least = 1e-6,
                 .most = 1e-3,
                 .initial = 0.45 * us::kGpm,
                 .source = "0.4..0.75 gpm, published data sheets",
                 .help = "Flow at which it decides to light."},
                {.key = "hold_flow_m3s",
                 .label = "Hold flow",
                 .quantity = Quantity::Flow,
                 .least = 0,
                 .most = 1e-3,
                 .initial = 0.35 * us::kGpm,
                 .source = "0.05..0.2 gpm below activation, not checked",
                 .help = "Below it the flame goes out."},
                {.key = "minimum_input_W",
                 .label = "Minimum fire (gas input)",
                 .quantity = Quantity::Power,
                 .least = 0,
                 .most = 100e3,
                 .initial = 15000 * us::kBtuPerHour,
                 .source = "13,000..20,000 Btu/h, published for home units"},
                {.key = "maximum_input_W",
                 .label = "Maximum fire (gas input)",
                 .quantity = Quantity::Power,
                 .least = 100,
                 .most = 200e3,
                 .initial = 60000 * us::kBtuPerHour,
                 .source = "40,000..60,000 Btu/h for coaches, not checked"},
                {.key = "efficiency",
                 .label = "Efficiency",
                 .quantity = Quantity::Percent,
                 .least = 0.5,
                 .most = 1,
                 .initial = 0.82,
                 .source = "0.78..0.85, not checked"},
                {.key = "altitude_derate",
                 .label = "Altitude derate",
                 .type = FieldType::Choice,
                 .initial = std::string{"from_2000_ft"},
                 .source = "NFPA 54 / ANSI Z223.1, both readings in use",
                 .choices = {{"from_2000_ft", "4 % per 1,000 ft, counted from 2,000 ft"},
                             {"from_sea_level", "4 % per 1,000 ft, counted from sea level"}},
                 .help = "Above 2,000 ft only; the maker's instructions override."},
                seconds("flow_proof_s", "Flow must stand", 1.0, kFromMemory),
                seconds("pre_purge_s", "Pre-purge", 1.5, lightUp),
                seconds("ignition_s", "Spark to flame", 1.5, lightUp),
                {.key = "ignition_tries",
                 .label = "Ignition tries",
                 .type = FieldType::Count,
                 .least = 1,
                 .most = 20,
                 .initial = 3.0,
                 .source = lightUp},
                seconds("retry_purge_s", "Purge between tries", 15, lightUp),
                seconds("restart_delay_s", "Shortest time out", 2, kFromMemory),
                seconds("post_purge_s", "Post-purge", 20, "5..60 s, not checked"),
                seconds("control_time_s", "Time constant of its control", 2, kFromMemory),
                seconds("fire_travel_s", "Gas valve, smallest to largest fire", 2, kFromMemory),
                seconds("sensor_lag_s", "Lag of its temperature sensors", 1.5, "1..5 s in water, not checked"),
                {.key = "outlet_limit_C",
                 .label = "Outlet limit",
                 .quantity = Quantity::Temperature,
                 .least = 40,
                 .most = 120,
                 .initial = 85.0,
                 .source = kFromMemory,
                 .help = "Burner off above it."},
                {.key = "outlet_limit_hysteresis_K",
                 .label = "... lights again this far below it",
                 .quantity = Quantity::TemperatureDifference,
                 .least = 0,
                 .most = 60,
                 .initial = 10.0,
                 .source = kFromMemory},
                {.key = "inlet_limit_C",
                 .label = "Inlet limit",
                 .quantity = Quantity::Temperature,
                 .least = 20,
                 .most = 120,
                 .initial = 99.0,
                 .source = kFromMemory,
                 .help = "Does not light on hotter water."},
                {.key = "inlet_limit_hysteresis_K",
                 .label = "... lights again with the inlet this far below it",
                 .quantity = Quantity::TemperatureDifference,
                 .least = 0,
                 .most = 60,
                 .initial = 5.0,
                 .source = kFromMemory},
                {.key = "eco_limit_C",
                 .label = "Over-temperature switch (ECO)",
                 .quantity = Quantity::Temperature,
                 .least = 50,
                 .most = 130,
                 .initial = 93.0,
                 .source = "170..200 °F, published for tank heaters, not checked for others"},
                {.key = "shuts_off_when_too_hot",
                 .label = "Shuts off when minimum fire is too hot",
                 .type = FieldType::Flag,
                 .initial = false,
                 .source = "read its manual"},
                {.key = "too_hot_above_K",
                 .label = "... this far above the setpoint",
                 .quantity = Quantity::TemperatureDifference,
                 .least = 1,
                 .most = 60,
                 .initial = 10.0,
                 .source = kFromMemory},
                seconds("too_hot_for_s", "... for this long", 3, kFromMemory),
                {.key = "relight_below_K",
                 .label = "... and lights again this far below the setpoint",
                 .quantity = Quantity::TemperatureDifference,
                 .least = 0,
                 .most = 60,
                 .initial = 0.0,
                 .source = kFromMemory},
                lossField(5.5 * us::kPsi, "3..8 psi at 2 gpm with the strainer in its inlet, not checked"),
                lossFlowField(2 * us::kGpm),
                {.key = "exchanger_volume_m3",
                 .label = "Water in the exchanger",
                 .quantity = Quantity::Volume,
                 .least = 1e-5,
                 .most = 0.02,
                 .initial = 0.1 * us::kGallon,
                 .source = "0.05..0.2 gal, not checked"},
                {.key = "exchanger_mass_kg",
                 .label = "Copper of the exchanger",
                 .quantity = Quantity::Mass,
                 .most = 50,
                 .initial = 5 * us::kPound,
                 .source = "2..6 lb, not checked; with its water the heat capacity of a measured home unit, by input"},
                {.key = "coil_bore_m",
                 .label = "Bore of the exchanger's coil",
                 .quantity = Quantity::Length,
                 .least = 0.004,
                 .most = 0.05,
                 .initial = 0.45 * us::kInch,
                 .source = "3/8 in copper tube, type M; which tube, not checked",
                 .help = "Sets how long the coil is and so how sharply hot water follows cold."},
                {.key = "exchanger_film_W_K",
                 .label = "Metal to water conductance (W/K)",
                 .most = 1e5,
                 .initial = 0.0,
                 .source = kFromMemory,
                 .help = "0: the metal follows the water at once."},
                {.key = "standing_loss_W_K",
                 .label = "Loss to the air (W/K)",
                 .most = 100,
                 .initial = 1.0,
                 .source = "3.6 W/K measured on a home unit, by input"},
                {.key = "purge_loss_W_K",
                 .label = "Loss to the fan's air while it purges (W/K)",
                 .most = 100,
                 .initial = 6.5,
                 .source = "about 3 °F in a post-purge, common practice",
                 .help = "0: none."},
                bayField(),
                {.key = "minimum_V",
                 .label = "Least voltage of its board",
                 .quantity = Quantity::Voltage,
                 .most = 48,
                 .initial = 10.5,
                 .source = "ignition boards about 10.5 V, published"},
                {.key = "fan_current_A",
                 .label = "Current with the fan on",
                 .quantity = Quantity::Current,
                 .most = 50,
                 .initial = 2.0,
                 .source = "1..4 A, not checked"},
                {.key = "board_current_A",
                 .label = "Current at rest",
                 .quantity = Quantity::Current,
                 .most = 20,
                 .initial = 0.05,
                 .source = kFromMemory,
                 .help = "Its board alone, all day."},
                fuseField("Empty: a branch of its own."),
                wireLengthField("From battery to its board; the current runs out and back."),
                wireGaugeField("14"),
                recirculationField(),
                temperatureLimitField(0),
                pressureLimitField(),
                drinkingWaterField(),
                priceField(),
            },
        .faults = {{"no_gas", "gas runs out", FaultEffect::GasFails, 0},
                   {"scaled", "exchanger scaled or strainer clogged", FaultEffect::Clogged, 4}},
        .model = model,
        .materials = materials,
        .shownFields = {"setpoint_C"},
        .caution = "Gas appliance: do not alter, bypass or jumper its switches. Recirculation may affect its warranty; "
                   "the maker's instructions come first.",
        .inLine = {"cold", "hot"},
    };
    return kind;
}

}  // namespace tapward::parts
