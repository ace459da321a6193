// SPDX-License-Identifier: GPL-3.0-or-later
#include "parts/drain_valve.h"

#include "parts/common.h"

namespace tapward::parts {
namespace {

Result<PartModel> model(const Values& values)
{
    network::ResistanceLaw law;
    law.R = coefficientR(values);
    law.opening = 0;
    PartModel model;
    model.role = Role::HandValve;
    model.startingOpening = 0;
    model.paths.push_back({0, Path::kOutside, {law}, {}});
    return model;
}

std::vector<Material> materials(const Values& values) { return onePiece(values, "Low-point drain valve"); }

}  // namespace

const PartKind& drainValve()
{
    static const PartKind kind{
        .id = "drain_valve",
        .title = "Low-point drain",
        .tagLetter = "DV",
        .searchWords = "winterizing drain bleed vent",
        .group = TrayGroup::Valves,
        .ports = {{"port", "Port", Side::Top, 0, -2}},
        .fields = {nameField(), coefficientField(4, kFromMemory), priceField()},
        .faults = {{"left_open", "left open", FaultEffect::HoldOpening, 1}},
        .model = model,
        .materials = materials,
    };
    return kind;
}

}  // namespace tapward::parts
