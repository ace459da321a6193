// SPDX-License-Identifier: GPL-3.0-or-later
#include "parts/push_button.h"

#include "parts/common.h"

namespace tapward::parts {
namespace {

Result<PartModel> model(const Values& values)
{
    PartModel model;
    model.role = Role::Button;
    model.buttonFor = values.text("controller");
    return model;
}

std::vector<Material> materials(const Values& values) { return onePiece(values, "Push button"); }

}  // namespace

const PartKind& pushButton()
{
    static const PartKind kind{
        .id = "push_button",
        .title = "Push button",
        .tagLetter = "PB",
        .searchWords = "switch start press",
        .group = TrayGroup::Control,
        .fields = {nameField(), controllerField(), priceField()},
        .faults = {{"stuck", "stuck in", FaultEffect::ButtonStuck, 0}},
        .model = model,
        .materials = materials,
        .shownFields = {"name"},
    };
    return kind;
}

}  // namespace tapward::parts
