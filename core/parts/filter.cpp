// SPDX-License-Identifier: GPL-3.0-or-later
#include "parts/filter.h"

#include "parts/common.h"

namespace tapward::parts {
namespace {

Result<PartModel> model(const Values& values)
{
    network::ResistanceLaw law;
    law.R = lossR(values);
    PartModel model = inLineModel(Role::None, law);
    model.paths[0].body.volume_m3 = values.number("volume_m3");
    model.paths[0].body.ambient = values.number("bay_C");
    setLimits(model, values);
    return model;
}

std::vector<Material> materials(const Values& values) { return onePiece(values, "Water filter"); }

}  // namespace

const PartKind& filter()
{
    static const PartKind kind{
        .id = "filter",
        .title = "Filter",
        .tagLetter = "FI",
        .searchWords = "strainer cartridge canister drinking water",
        .group = TrayGroup::Supply,
        .ports = inLinePorts(),
        .fields =
            {nameField(),
             {.key = "cartridge",
              .label = "Cartridge",
              .type = FieldType::Choice,
              .initial = std::string{"unknown"},
              .source = "look",
              .choices = {{"unknown", "Not known"}, {"sediment", "Sediment"}, {"carbon", "Carbon"}, {"other", "Other"}},
              .help = "What it holds back, warm water can set free again."},
             lossField(2 * us::kPsi, kFromMemory),
             lossFlowField(1 * us::kGpm),
             {.key = "volume_m3",
              .label = "Water in it",
              .quantity = Quantity::Volume,
              .most = 0.05,
              .initial = 0.3 * us::kGallon,
              .source = kFromMemory},
             bayField(),
             temperatureLimitField(us::celsius(100)),
             pressureLimitField(),
             drinkingWaterField(),
             priceField()},
        .faults = {{"clogged", "clogged", FaultEffect::Clogged, 10}},
        .model = model,
        .materials = materials,
        .caution = "Cartridges are rated for cold water; warm water can release what they hold.",
        .inLine = {"inlet", "outlet"},
    };
    return kind;
}

}  // namespace tapward::parts
