// SPDX-License-Identifier: GPL-3.0-or-later
#include "parts/faucet.h"

#include "parts/common.h"
#include "parts/outlets.h"

namespace tapward::parts {
namespace {

Result<PartModel> model(const Values& values)
{
    auto model = outletModel(values);
    model->outlet->drinking = values.flag("drinking");
    return model;
}

std::vector<Material> materials(const Values& values) { return onePiece(values, "Faucet"); }

std::vector<Field> fields()
{
    std::vector<Field> all = outletFields(
        1.5 * us::kGpm, "kitchen 1.0..2.2, lavatory 0.5..1.5 gpm at rated pressure, published", 1.5 * us::kGpm, 1.0);
    all.push_back(servesField("hot_cold"));
    all.push_back(drinkingField(true));
    all.push_back(priceField());
    return all;
}

}  // namespace

const PartKind& faucet()
{
    static const PartKind kind{
        .id = "faucet",
        .title = "Faucet",
        .tagLetter = "F",
        .searchWords = "tap sink lavatory galley kitchen bath",
        .group = TrayGroup::Outlets,
        .ports = outletPorts(),
        .fields = fields(),
        .faults = {{"drips", "left running thin", FaultEffect::HoldOpening, 0.05}},
        .model = model,
        .materials = materials,
        .shownFields = {"name"},
        .caution = "Hot water can burn; children, elders and people with reduced feeling burn sooner.",
    };
    return kind;
}

}  // namespace tapward::parts
