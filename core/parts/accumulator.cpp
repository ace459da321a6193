// SPDX-License-Identifier: GPL-3.0-or-later
#include "parts/accumulator.h"

#include "parts/common.h"

namespace tapward::parts {
namespace {

constexpr double kAtmosphere_Pa = 101325;

Result<PartModel> model(const Values& values)
{
    SupplyModel vessel;
    vessel.volume_m3 = values.number("vessel_volume_m3");
    vessel.precharge_Pa = values.number("precharge_Pa");
    // Boyle's law: water held = V (1 - (p0 + pa)/(p + pa)); its slope, 100 kPa above the pre-charge.
    const double p0 = vessel.precharge_Pa + kAtmosphere_Pa;
    const double p = p0 + 100e3;
    vessel.compliance_m3_Pa = vessel.volume_m3 * p0 / (p * p);
    network::SourceLaw law;
    law.pressure_Pa = vessel.precharge_Pa;
    law.slope_Pa_per_m3s = 1e6;
    law.oneWay = false;

    PartModel model;
    model.role = Role::Accumulator;
    model.paths.push_back({Path::kOutside, 0, {law}, {}});
    model.supply = vessel;
    setLimits(model, values);
    return model;
}

std::vector<Material> materials(const Values& values) { return onePiece(values, "Accumulator"); }

}  // namespace

const PartKind& accumulator()
{
    static const PartKind kind{
        .id = "accumulator",
        .title = "Accumulator",
        .tagLetter = "AC",
        .searchWords = "expansion vessel bladder pressure tank",
        .group = TrayGroup::Supply,
        .ports = {{"port", "Port", Side::Bottom, 0, 2}},
        .fields = {nameField(),
                   {.key = "vessel_volume_m3",
                    .label = "Size",
                    .quantity = Quantity::Volume,
                    .least = 1e-5,
                    .most = 0.1,
                    .initial = 0.25 * us::kGallon,
                    .source = "0.2..1 gal, published"},
                   {.key = "precharge_Pa",
                    .label = "Pre-charge",
                    .quantity = Quantity::Pressure,
                    .most = 1e6,
                    .initial = 36 * us::kPsi,
                    .source = "2..5 psi below the pump's cut-in, published",
                    .help = "Air pressure with no water in it."},
                   temperatureLimitField(0),
                   pressureLimitField(),
                   drinkingWaterField(),
                   priceField()},
        .faults = {{"flat", "lost its air: not simulated, the pressure switch would chatter", FaultEffect::NotSimulated,
                    0}},
        .model = model,
        .materials = materials,
    };
    return kind;
}

}  // namespace tapward::parts
