// SPDX-License-Identifier: GPL-3.0-or-later
#include "parts/mixing_valve.h"

#include "parts/common.h"

namespace tapward::parts {
namespace {

Result<PartModel> model(const Values& values)
{
    PartModel model;
    model.role = Role::MixingValve;
    MixingValveModel mixing;
    mixing.setpoint_C = values.number("setpoint_C");
    mixing.hotPath = 0;
    mixing.coldPath = 1;
    // One leg fully open and the way out together lose what the coefficient says: half each.
    network::ResistanceLaw half;
    half.R = coefficientR(values) / 2;
    network::CheckLaw check;
    check.crack_Pa = values.number("crack_Pa");
    for (const int leg : {0, 1}) {
        Path path{leg, Path::kHub, {half}, {}};  // the opening is set on the first law
        if (values.flag("checks")) {
            path.laws.push_back(check);
        }
        model.paths.push_back(std::move(path));
    }
    model.paths.push_back({Path::kHub, 2, {half}, {}});
    model.mixing = mixing;
    setLimits(model, values);
    return model;
}

std::vector<Material> materials(const Values& values) { return onePiece(values, "Thermostatic mixing valve"); }

}  // namespace

const PartKind& mixingValve()
{
    static const PartKind kind{
        .id = "mixing_valve",
        .title = "Mixing valve",
        .tagLetter = "TMV",
        .searchWords = "thermostatic anti-scald tempering",
        .group = TrayGroup::Valves,
        .ports = {{"hot", "Hot in", Side::Left, -2, 0},
                  {"cold", "Cold in", Side::Bottom, 0, 2},
                  {"mixed", "Mixed out", Side::Right, 2, 0}},
        .fields = {nameField(),
                   {.key = "setpoint_C",
                    .label = "Set to",
                    .quantity = Quantity::Temperature,
                    .least = 20,
                    .most = 70,
                    .initial = us::celsius(110),
                    .source = kCommonPractice},
                   coefficientField(2, kFromMemory),
                   {.key = "checks",
                    .label = "Check valves in both inlets",
                    .type = FieldType::Flag,
                    .initial = true,
                    .source = kFromMemory},
                   {.key = "crack_Pa",
                    .label = "Their cracking pressure",
                    .quantity = Quantity::Pressure,
                    .most = 50e3,
                    .initial = 0.2 * us::kPsi,
                    .source = kFromMemory},
                   temperatureLimitField(82.2),
                   pressureLimitField(),
                   drinkingWaterField(),
                   priceField()},
        .faults = {{"stuck", "thermostat stuck: not simulated, it gives its setpoint or what comes in",
                    FaultEffect::NotSimulated, 0}},
        .model = model,
        .materials = materials,
        .shownFields = {"setpoint_C"},
        .caution = "Mixing at the source is control, not scald protection at the tap (ASSE 1017, 1070).",
        .inLine = {"hot", "mixed"},
    };
    return kind;
}

}  // namespace tapward::parts
