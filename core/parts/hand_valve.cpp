// SPDX-License-Identifier: GPL-3.0-or-later
#include "parts/hand_valve.h"

#include "parts/common.h"

namespace tapward::parts {
namespace {

Result<PartModel> model(const Values& values)
{
    network::ResistanceLaw law;
    law.R = coefficientR(values);
    law.opening = values.number("opening");
    PartModel model = inLineModel(Role::HandValve, law);
    model.startingOpening = law.opening;
    return model;
}

std::vector<Material> materials(const Values& values) { return onePiece(values, "Ball valve, hand lever"); }

}  // namespace

const PartKind& handValve()
{
    static const PartKind kind{
        .id = "hand_valve",
        .title = "Hand valve",
        .tagLetter = "V",
        .searchWords = "ball stop shutoff bypass winterizing",
        .group = TrayGroup::Valves,
        .ports = inLinePorts(),
        .fields = {nameField(),
                   {.key = "opening",
                    .label = "Open",
                    .quantity = Quantity::Percent,
                    .most = 1,
                    .initial = 1.0,
                    .source = kCommonPractice,
                    .help = "How far it stands open when a case begins; 0 is shut."},
                   coefficientField(10, "full-bore ball valve 1/2 in, Cv 8..15, not checked"),
                   priceField()},
        .faults = {{"left_shut", "left shut", FaultEffect::HoldOpening, 0},
                   {"left_open", "left open", FaultEffect::HoldOpening, 1}},
        .model = model,
        .materials = materials,
        .shownFields = {"opening"},
        .inLine = {"inlet", "outlet"},
    };
    return kind;
}

}  // namespace tapward::parts
