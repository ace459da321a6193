// SPDX-License-Identifier: GPL-3.0-or-later
#include "parts/appliance.h"

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

std::vector<Material> materials(const Values& values)
{
    const std::string& name = values.text("name");
    return onePiece(values, name.empty() ? Message("Appliance") : Message("{0}", {name}));
}

std::vector<Field> fields()
{
    std::vector<Field> all = outletFields(1.5 * us::kGpm, kFromMemory, 0, 0.5);
    all.push_back(servesField("hot_cold"));
    all.push_back(drinkingField(false));
    all.push_back(priceField());
    return all;
}

}  // namespace

const PartKind& appliance()
{
    static const PartKind kind{
        .id = "appliance",
        .title = "Appliance",
        .tagLetter = "A",
        .searchWords = "washer washing machine ice maker dishwasher refrigerator",
        .group = TrayGroup::Outlets,
        .ports = outletPorts(),
        .fields = fields(),
        .faults = {{"leaks", "inlet valve leaks", FaultEffect::HoldOpening, 0.02}},
        .model = model,
        .materials = materials,
        .shownFields = {"name"},
    };
    return kind;
}

}  // namespace tapward::parts
