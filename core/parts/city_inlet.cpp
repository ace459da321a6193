// SPDX-License-Identifier: GPL-3.0-or-later
#include "parts/city_inlet.h"

#include "parts/common.h"

namespace tapward::parts {
namespace {

Result<PartModel> model(const Values& values)
{
    SupplyModel supply;
    supply.pressure_Pa = values.number("pressure_Pa");
    supply.temperature_C = values.number("temperature_C");
    network::SourceLaw law;
    law.pressure_Pa = supply.pressure_Pa;
    law.R = lossR(values);
    law.oneWay = true;

    PartModel model;
    model.role = Role::CitySupply;
    model.paths.push_back({Path::kOutside, 0, {law}, {}});
    model.supply = supply;
    return model;
}

std::vector<Material> materials(const Values& values) { return onePiece(values, "City water inlet"); }

}  // namespace

const PartKind& cityInlet()
{
    static const PartKind kind{
        .id = "city_inlet",
        .title = "City water inlet",
        .tagLetter = "CW",
        .searchWords = "campground hose supply mains",
        .group = TrayGroup::Supply,
        .ports = {{"outlet", "Outlet", Side::Right, 2, 0}},
        .fields = {nameField(),
                   {.key = "pressure_Pa",
                    .label = "Pressure, no flow",
                    .quantity = Quantity::Pressure,
                    .most = 2e6,
                    .initial = 50 * us::kPsi,
                    .source = "40..60 psi usual, published advice pages"},
                   {.key = "temperature_C",
                    .label = "Water temperature",
                    .quantity = Quantity::Temperature,
                    .least = 0.5,
                    .most = 60,
                    .initial = us::celsius(60),
                    .source = kCommonPractice},
                   lossField(5 * us::kPsi, "hose, screen and inlet check, not checked"),
                   lossFlowField(3 * us::kGpm),
                   priceField()},
        .faults = {{"check_leaks", "inlet check leaks: not simulated, the hose is taken as closed at its end",
                    FaultEffect::NotSimulated, 0}},
        .model = model,
        .materials = materials,
        .shownFields = {"pressure_Pa"},
        .caution = "60 psi is the usual working limit of coach plumbing; confirm it against the coach's papers.",
    };
    return kind;
}

}  // namespace tapward::parts
