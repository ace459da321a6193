// SPDX-License-Identifier: GPL-3.0-or-later
#include "parts/circulator.h"

#include <cmath>
#include <memory>

#include "network/pump_curve.h"
#include "parts/common.h"
#include "parts/wire_gauge.h"

namespace tapward::parts {
namespace {

/// Between a parabola, the usual shape at one speed, and a straight line: the small motor of such a pump slows as the
/// flow loads it. H = Hmax (1 - Q/Qmax)(1 + Q/(2 Qmax)), the middle of the two: common practice, no published source.
Curve drooping(double shutOff_m, double runOut_m3s)
{
    Curve curve;
    constexpr int kReadings = 9;
    for (int i = 0; i < kReadings; ++i) {
        const double share = static_cast<double>(i) / (kReadings - 1);
        curve.push_back({share * runOut_m3s, shutOff_m * (1 - share) * (1 + 0.5 * share)});
    }
    return curve;
}

Result<PartModel> model(const Values& values)
{
    std::vector<network::PumpCurve::Reading> readings;
    for (const CurvePoint& point : values.curve("curve")) {
        readings.push_back({point.x, point.y});
    }
    auto curve = network::PumpCurve::fromReadings(std::move(readings));
    if (!curve) {
        return tl::unexpected(curve.error());
    }
    CirculatorModel pump;
    pump.ratedVolts = values.number("rated_V");
    pump.minimumVolts = values.number("minimum_V");
    pump.maximumVolts = values.number("maximum_V");
    if (pump.minimumVolts > pump.maximumVolts) {
        return problem({"The pump's least voltage, {0}, is above its highest, {1}.",
                        {Measure{pump.minimumVolts, Quantity::Voltage}, Measure{pump.maximumVolts, Quantity::Voltage}}},
                       "Read both again from the data sheet.");
    }
    pump.current_A = values.number("current_A");
    pump.spinUp_s = values.number("spin_up_s");
    pump.temperatureLimit_C = values.number("temperature_limit_C");
    pump.wireResistance_ohm =
        2 * values.number("wire_length_m") * wireResistance_ohm_m(wireGauge(values.text("wire_gauge")));
    pump.controller = values.text("controller");

    network::PumpLaw law;
    law.curve = std::make_shared<const network::PumpCurve>(std::move(*curve));
    law.stoppedR = squareLaw(values.number("stopped_loss_Pa"), values.number("stopped_flow_m3s"));
    PartModel model = inLineModel(Role::Circulator, law);
    model.paths[0].body.volume_m3 = values.number("volume_m3");
    model.paths[0].body.ambient = values.number("bay_C");
    model.circulator = std::move(pump);
    setLimits(model, values);
    return model;
}

std::vector<Material> materials(const Values& values)
{
    std::vector<Material> bought = onePiece(values, "Circulator pump, 12 V");
    if (const double length_m = values.number("wire_length_m"); length_m > 0) {
        bought.push_back({{"Copper wire, out and back, AWG {0}", {values.text("wire_gauge")}},
                          2 * length_m,
                          true,
                          values.number("wire_price_per_m")});
    }
    return bought;
}

}  // namespace

const PartKind& circulator()
{
    constexpr std::string_view sheet =
        "one published data sheet of a small 12 V circulator: 10.8 ft, 1.9 gpm, 1 A, 8..13.2 V";
    static const PartKind kind{
        .id = "circulator",
        .title = "Circulator pump",
        .tagLetter = "P",
        .searchWords = "loop recirculation centrifugal 12 V",
        .group = TrayGroup::MovingWater,
        .ports = inLinePorts(),
        .fields = {nameField(),
                   {.key = "curve",
                    .label = "Head by flow",
                    .type = FieldType::Curve,
                    .quantity = Quantity::Head,
                    .most = 1000,
                    .initial = drooping(10.8 * us::kFoot, 1.9 * us::kGpm),
                    .source = "its ends: one published data sheet, 10.8 ft and 1.9 gpm; the droop between them: common "
                              "practice, no published source",
                    .curveX = Quantity::Flow,
                    .curveY = Quantity::Head,
                    .help = "Readings at rated voltage, flow rising."},
                   {.key = "rated_V",
                    .label = "Rated voltage",
                    .quantity = Quantity::Voltage,
                    .least = 1,
                    .most = 60,
                    .initial = 12.0,
                    .source = sheet,
                    .help = "Voltage the readings were taken at."},
                   {.key = "minimum_V",
                    .label = "Least voltage to start",
                    .quantity = Quantity::Voltage,
                    .most = 60,
                    .initial = 8.0,
                    .source = sheet},
                   {.key = "maximum_V",
                    .label = "Highest voltage",
                    .quantity = Quantity::Voltage,
                    .least = 1,
                    .most = 60,
                    .initial = 15.0,
                    .source = kFromMemory},
                   {.key = "current_A",
                    .label = "Current",
                    .quantity = Quantity::Current,
                    .most = 50,
                    .initial = 1.0,
                    .source = sheet},
                   {.key = "no_flow_current_A",
                    .label = "Current against a shut valve",
                    .quantity = Quantity::Current,
                    .most = 50,
                    .initial = 0.0,
                    .source = "measure; 0 means not known, then the same at every flow",
                    .help = "A centrifugal pump draws less when less water passes.",
                    .unset = "not known"},
                   {.key = "start_current_A",
                    .label = "Current at the start",
                    .quantity = Quantity::Current,
                    .most = 200,
                    .initial = 2.0,
                    .source = "twice the running current with a soft start, 5..8 times with brushes, not checked",
                    .help = "For a part of a second; the fuse must bear it."},
                   {.key = "spin_up_s",
                    .label = "Time to speed",
                    .quantity = Quantity::Time,
                    .most = 30,
                    .initial = 0.5,
                    .source = kFromMemory},
                   {.key = "stopped_loss_Pa",
                    .label = "Loss through it stopped",
                    .quantity = Quantity::Pressure,
                    .least = 1,
                    .most = 1e6,
                    .initial = 1.0 * us::kPsi,
                    .source = kFromMemory,
                    .help = "Water passes a stopped impeller both ways; measure with the pump off."},
                   {.key = "stopped_flow_m3s",
                    .label = "... at flow",
                    .quantity = Quantity::Flow,
                    .least = 1e-6,
                    .most = 1e-2,
                    .initial = 1.0 * us::kGpm,
                    .source = kFromMemory},
                   {.key = "volume_m3",
                    .label = "Water in it",
                    .quantity = Quantity::Volume,
                    .most = 0.01,
                    .initial = 3e-5,
                    .source = kFromMemory},
                   temperatureLimitField(60),
                   pressureLimitField(),
                   drinkingWaterField(),
                   controllerField(),
                   fuseField("Empty: the only fuse in the drawing."),
                   wireLengthField(),
                   wireGaugeField("14"),
                   {.key = "wire_price_per_m",
                    .label = "Wire price per meter",
                    .quantity = Quantity::Money,
                    .most = 1e6,
                    .initial = 0.0,
                    .source = "none; 0 means not known",
                    .unset = "not known"},
                   bayField(),
                   priceField()},
        .faults = {{"dead", "does not turn", FaultEffect::DriveShare, 0},
                   {"weak", "turns at 80 % of its speed", FaultEffect::DriveShare, 0.8},
                   {"air_locked", "air-locked: turns and moves no water", FaultEffect::DriveShare, 0},
                   {"always_on", "relay welded: runs on", FaultEffect::DriveAlwaysOn, 1}},
        .model = model,
        .materials = materials,
        .shownFields = {"current_A"},
        .caution = "Use one listed for drinking water and rated for the hottest water it can meet. Fuse at the source "
                   "end; wire sized for drop and heat; isolate the battery before work.",
        .inLine = {"inlet", "outlet"},
    };
    return kind;
}

}  // namespace tapward::parts
