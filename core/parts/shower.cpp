// SPDX-License-Identifier: GPL-3.0-or-later
#include "parts/shower.h"

#include "parts/common.h"
#include "parts/outlets.h"

namespace tapward::parts {
namespace {

Result<PartModel> model(const Values& values)
{
    auto model = outletModel(values);
    model->outlet->shower = true;
    return model;
}

std::vector<Material> materials(const Values& values) { return onePiece(values, "Shower head and valve"); }

std::vector<Field> fields()
{
    std::vector<Field> all =
        outletFields(1.8 * us::kGpm, "coach shower heads 1.2..2.0 gpm, common practice", 1.8 * us::kGpm, 0.75);
    all.push_back(servesField("hot_cold"));
    all.push_back({.key = "limits_temperature",
                   .label = "Valve limits the temperature",
                   .type = FieldType::Flag,
                   .initial = false,
                   .source = "read its marking",
                   .help = "Compensates for changes and limits the maximum, as ASSE 1016 asks in buildings."});
    all.push_back(priceField());
    return all;
}

}  // namespace

const PartKind& shower()
{
    static const PartKind kind{
        .id = "shower",
        .title = "Shower",
        .tagLetter = "SH",
        .searchWords = "bath head trickle mixer",
        .group = TrayGroup::Outlets,
        .ports = outletPorts(),
        .fields = fields(),
        .faults = {{"trickle", "left on its trickle button", FaultEffect::HoldOpening, 0.1}},
        .model = model,
        .materials = materials,
        .shownFields = {"name"},
        .caution = "Hot water can burn; children, elders and people with reduced feeling burn sooner.",
    };
    return kind;
}

}  // namespace tapward::parts
