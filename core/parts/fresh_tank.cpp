// SPDX-License-Identifier: GPL-3.0-or-later
#include "parts/fresh_tank.h"

#include "parts/common.h"

namespace tapward::parts {
namespace {

Result<PartModel> model(const Values& values)
{
    SupplyModel supply;
    supply.temperature_C = values.number("temperature_C");
    supply.volume_m3 = values.number("tank_volume_m3");
    network::SourceLaw level;  // open to the air
    level.pressure_Pa = 0;
    level.oneWay = false;
    network::ResistanceLaw mouth;  // return to tank falls in at the top
    mouth.R = squareLaw(0.5 * us::kPsi, 5 * us::kGpm);

    PartModel model;
    model.role = Role::FreshTank;
    model.paths.push_back({Path::kOutside, 0, {level}, {}});
    model.paths.push_back({1, Path::kOutside, {mouth}, {}});
    model.supply = supply;
    return model;
}

std::vector<Material> materials(const Values& values) { return onePiece(values, "Fresh water tank"); }

}  // namespace

const PartKind& freshTank()
{
    static const PartKind kind{
        .id = "fresh_tank",
        .title = "Fresh tank",
        .tagLetter = "FT",
        .searchWords = "fresh water holding supply",
        .group = TrayGroup::Supply,
        .ports = {{"outlet", "Outlet", Side::Right, 2, 1}, {"return", "Return to tank", Side::Top, -1, -2, true}},
        .fields = {nameField(),
                   {.key = "tank_volume_m3",
                    .label = "Tank",
                    .quantity = Quantity::Volume,
                    .least = 1e-3,
                    .most = 2,
                    .initial = 50 * us::kGallon,
                    .source = "20..100 gal, published"},
                   {.key = "temperature_C",
                    .label = "Water temperature",
                    .quantity = Quantity::Temperature,
                    .least = 0.5,
                    .most = 60,
                    .initial = us::celsius(70),
                    .source = kCommonPractice},
                   priceField()},
        .faults = {{"empty", "runs empty: not simulated, the level is not tracked", FaultEffect::NotSimulated, 0}},
        .model = model,
        .materials = materials,
        .shownFields = {"tank_volume_m3"},
    };
    return kind;
}

}  // namespace tapward::parts
