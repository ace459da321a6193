// SPDX-License-Identifier: GPL-3.0-or-later
#include "parts/flow_sensor.h"

#include "parts/common.h"

namespace tapward::parts {
namespace {

Result<PartModel> model(const Values& values)
{
    network::ResistanceLaw law;
    law.R = lossR(values);
    PartModel model = inLineModel(Role::FlowSensor, law);
    SensorModel sensor;
    sensor.measuresFlow = true;
    sensor.lag_s = 0;
    sensor.lowCutOff_m3s = values.number("low_cut_off_m3s");
    sensor.gain = values.number("gain");
    model.sensor = sensor;
    setLimits(model, values);
    return model;
}

std::vector<Material> materials(const Values& values) { return onePiece(values, "Flow sensor"); }

}  // namespace

const PartKind& flowSensor()
{
    static const PartKind kind{
        .id = "flow_sensor",
        .title = "Flow sensor",
        .tagLetter = "FE",
        .searchWords = "meter turbine hall pulses counter",
        .group = TrayGroup::Sensing,
        .ports = inLinePorts(),
        .fields = {nameField(),
                   lossField(0.5 * us::kPsi, "0.2..1 psi at 2 gpm, not checked"),
                   lossFlowField(2 * us::kGpm),
                   {.key = "low_cut_off_m3s",
                    .label = "Reads nothing below",
                    .quantity = Quantity::Flow,
                    .most = 1e-3,
                    .initial = 0.13 * us::kGpm,
                    .source = "0.13 gpm in a published data sheet, up to 0.26 not checked"},
                   {.key = "gain",
                    .label = "Reads this share of the truth",
                    .quantity = Quantity::Percent,
                    .least = 0.5,
                    .most = 2,
                    .initial = 1.0,
                    .source = "1 % claimed, 10 % often met, not checked: calibrate by bucket"},
                   {.key = "pulses_per_m3",
                    .label = "Pulses per cubic meter",
                    .least = 1,
                    .most = 1e8,
                    .initial = 450e3,
                    .source = "450 pulses/L, 1/2 in hall turbine, published data sheet"},
                   temperatureLimitField(0),
                   pressureLimitField(),
                   drinkingWaterField(),
                   priceField()},
        .faults = {{"dead", "gives no pulses", FaultEffect::FlowSensorDead, 0},
                   {"clogged", "turbine clogged", FaultEffect::Clogged, 10}},
        .model = model,
        .materials = materials,
        .inLine = {"inlet", "outlet"},
    };
    return kind;
}

}  // namespace tapward::parts
