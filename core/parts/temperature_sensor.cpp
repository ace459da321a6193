// SPDX-License-Identifier: GPL-3.0-or-later
#include "parts/temperature_sensor.h"

#include "parts/common.h"

namespace tapward::parts {
namespace {

Result<PartModel> model(const Values& values)
{
    PartModel model;
    model.role = Role::TemperatureSensor;
    model.paths.push_back({0, 1, {}, {}});  // a place on the line, no loss and no water of its own
    SensorModel sensor;
    sensor.clippedOn = values.text("mounting") == "clipped";
    sensor.lag_s = values.number("lag_s");
    sensor.offset_K = values.number("offset_K");
    model.sensor = sensor;
    return model;
}

std::vector<Material> materials(const Values& values)
{
    return onePiece(values, values.text("mounting") == "clipped" ? "Temperature sensor, clip-on"
                                                                 : "Temperature sensor, in the water");
}

}  // namespace

const PartKind& temperatureSensor()
{
    static const PartKind kind{
        .id = "temperature_sensor",
        .title = "Temperature sensor",
        .tagLetter = "TE",
        .searchWords = "thermometer thermistor probe limit switch",
        .group = TrayGroup::Sensing,
        .ports = inLinePorts(),
        .fields = {nameField(),
                   {.key = "mounting",
                    .label = "Mounting",
                    .type = FieldType::Choice,
                    .initial = std::string{"well"},
                    .source = kCommonPractice,
                    .choices = {{"well", "In the water"}, {"clipped", "Clipped on the tube"}}},
                   {.key = "lag_s",
                    .label = "Lag",
                    .quantity = Quantity::Time,
                    .most = 300,
                    .initial = 2.0,
                    .source = "in water 1..5 s, clipped on PEX 10..40 s, not checked: measure with a step",
                    .help = "Time to show 63 % of a sudden change."},
                   {.key = "offset_K",
                    .label = "Reads off by",
                    .quantity = Quantity::TemperatureDifference,
                    .least = -50,
                    .most = 50,
                    .initial = 0.0,
                    .source = "calibrate in a glass of water",
                    .help = "Clipped on, it reads low."},
                   priceField()},
        .faults = {{"reads_low", "reads low", FaultEffect::SensorOffset, -5},
                   {"reads_high", "reads high", FaultEffect::SensorOffset, 5},
                   {"off_the_pipe", "came off the pipe", FaultEffect::SensorFrozen, 0},
                   {"broken", "open: gives no reading", FaultEffect::SensorFails, 0},
                   // A thermistor's controller takes a short for very hot (common practice, no published source).
                   {"shorted", "shorted: reads far too hot", FaultEffect::SensorOffset, 150}},
        .model = model,
        .materials = materials,
        .shownFields = {"mounting"},
        .inLine = {"inlet", "outlet"},
    };
    return kind;
}

}  // namespace tapward::parts
