// SPDX-License-Identifier: GPL-3.0-or-later
#include "parts/toilet.h"

#include "parts/common.h"
#include "parts/outlets.h"

namespace tapward::parts {
namespace {

Result<PartModel> model(const Values& values) { return outletModel(values, -1, 0); }

std::vector<Material> materials(const Values& values) { return onePiece(values, "Toilet"); }

std::vector<Field> fields()
{
    std::vector<Field> all = outletFields(2.0 * us::kGpm, kFromMemory, 0, 0);
    std::erase_if(all, [](const Field& field) { return field.key == "hot_share"; });
    all.push_back(priceField());
    return all;
}

}  // namespace

const PartKind& toilet()
{
    static const PartKind kind{
        .id = "toilet",
        .title = "Toilet",
        .tagLetter = "WC",
        .searchWords = "flush bath",
        .group = TrayGroup::Outlets,
        .ports = {{"cold", "Cold", Side::Bottom, 0, 2}},
        .fields = fields(),
        .faults = {{"runs", "valve does not close", FaultEffect::HoldOpening, 0.1}},
        .model = model,
        .materials = materials,
        .shownFields = {"name"},
    };
    return kind;
}

}  // namespace tapward::parts
