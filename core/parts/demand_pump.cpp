// SPDX-License-Identifier: GPL-3.0-or-later
#include "parts/demand_pump.h"

#include <memory>
#include <utility>
#include <vector>

#include "network/pump_curve.h"
#include "parts/common.h"

namespace tapward::parts {
namespace {

constexpr double kWaterWeight_N_m3 = 998.2 * 9.80665;
/// A diaphragm pump still lifts a little past its switch: zero flow at 1.15 times cut-out, from memory.
constexpr double kStallShare = 1.15;

/// Flow falls in a straight line from the open flow to nothing at stall.
Curve straight(double openFlow_m3s, double cutOut_Pa)
{
    const double stall_Pa = kStallShare * cutOut_Pa;
    return {{0, stall_Pa}, {openFlow_m3s / 2, stall_Pa / 2}, {openFlow_m3s, 0}};
}

Result<PartModel> model(const Values& values)
{
    SupplyModel supply;
    supply.cutIn_Pa = values.number("cut_in_Pa");
    supply.cutOut_Pa = values.number("cut_out_Pa");
    supply.openFlow_m3s = values.number("open_flow_m3s");
    supply.current_A = values.number("current_A");
    supply.temperature_C = us::celsius(70);  // the tank's own is used when one is drawn
    if (supply.cutIn_Pa >= supply.cutOut_Pa) {
        return problem({"The demand pump's cut-in, {0}, is not below its cut-out, {1}.",
                        {Measure{supply.cutIn_Pa, Quantity::Pressure}, Measure{supply.cutOut_Pa, Quantity::Pressure}}},
                       "Read both again; cut-in is usually 15 to 20 psi lower.");
    }
    const Curve shown = values.isSet("curve") ? values.curve("curve") : straight(supply.openFlow_m3s, supply.cutOut_Pa);
    supply.openFlow_m3s = shown.back().x;
    std::vector<network::PumpCurve::Reading> readings;
    for (const CurvePoint& point : shown) {
        readings.push_back({point.x, point.y / kWaterWeight_N_m3});
    }
    auto curve = network::PumpCurve::fromReadings(std::move(readings));
    if (!curve) {
        return tl::unexpected(curve.error());
    }
    network::PumpLaw pump;
    pump.curve = std::make_shared<const network::PumpCurve>(std::move(*curve));
    pump.stoppedR = squareLaw(10 * us::kPsi, 1.0 * us::kGpm);
    network::CheckLaw valves;  // its own valves keep the pressure in the coach when it stands
    valves.crack_Pa = 2 * us::kPsi;

    PartModel model;
    model.role = Role::DemandPump;
    model.paths.push_back({0, 1, {pump, valves}, {}});
    model.supply = supply;
    setLimits(model, values);
    return model;
}

std::vector<Material> materials(const Values& values) { return onePiece(values, "Demand pump, 12 V"); }

}  // namespace

const PartKind& demandPump()
{
    static const PartKind kind{
        .id = "demand_pump",
        .title = "Demand pump",
        .tagLetter = "DP",
        .searchWords = "water pump diaphragm pressure switch 12 V",
        .group = TrayGroup::Supply,
        .ports = inLinePorts(),
        .fields = {nameField(),
                   {.key = "open_flow_m3s",
                    .label = "Open flow",
                    .quantity = Quantity::Flow,
                    .least = 1e-6,
                    .most = 1e-2,
                    .initial = 3.5 * us::kGpm,
                    .source = "3..5.5 gpm, published"},
                   {.key = "curve",
                    .label = "Pressure by flow",
                    .type = FieldType::Curve,
                    .quantity = Quantity::Pressure,
                    .most = 2e6,
                    .initial = straight(3.5 * us::kGpm, 55 * us::kPsi),
                    .source = "a straight line from the open flow to a little over the cut-out, not checked",
                    .curveX = Quantity::Flow,
                    .curveY = Quantity::Pressure,
                    .help =
                        "Readings of its data sheet at 12 V, flow rising. Until there are some: a straight line from "
                        "the open flow to a little over the cut-out."},
                   {.key = "cut_out_Pa",
                    .label = "Cut-out",
                    .quantity = Quantity::Pressure,
                    .least = 10e3,
                    .most = 1.5e6,
                    .initial = 55 * us::kPsi,
                    .source = "45..65 psi, published"},
                   {.key = "cut_in_Pa",
                    .label = "Cut-in",
                    .quantity = Quantity::Pressure,
                    .least = 0,
                    .most = 1.5e6,
                    .initial = 40 * us::kPsi,
                    .source = "15..20 psi below cut-out, published"},
                   {.key = "current_A",
                    .label = "Current",
                    .quantity = Quantity::Current,
                    .most = 50,
                    .initial = 7.0,
                    .source = "3..5 A light, 7..10 A at pressure, not checked"},
                   temperatureLimitField(60),
                   pressureLimitField(),
                   drinkingWaterField(),
                   priceField()},
        .faults = {{"dead", "does not run", FaultEffect::DriveShare, 0},
                   {"weak", "gives 60 % of its flow", FaultEffect::DriveShare, 0.6},
                   {"switch_welded", "pressure switch stays on", FaultEffect::DriveAlwaysOn, 1}},
        .model = model,
        .materials = materials,
        .shownFields = {"open_flow_m3s"},
        .caution = "Fuse at the source end; isolate the battery and relieve pressure before work.",
        .inLine = {"inlet", "outlet"},
    };
    return kind;
}

}  // namespace tapward::parts
