// SPDX-License-Identifier: GPL-3.0-or-later
#include "parts/fuse.h"

#include "parts/common.h"
#include "parts/wire_gauge.h"

namespace tapward::parts {
namespace {

std::vector<Material> materials(const Values& values) { return onePiece(values, "Fuse and holder"); }

}  // namespace

const PartKind& fuse()
{
    static const PartKind kind{
        .id = "fuse",
        .title = "Fuse",
        .tagLetter = "FU",
        .searchWords = "overcurrent breaker protection",
        .group = TrayGroup::Electric,
        .fields = {nameField(),
                   {.key = "rating_A",
                    .label = "Rating",
                    .quantity = Quantity::Current,
                    .least = 0.1,
                    .most = 200,
                    .initial = 5.0,
                    .source = "at least 1.25 times the load, no more than the wire allows, from memory"},
                   {.key = "wire_gauge",
                    .label = "Thinnest wire behind it",
                    .type = FieldType::Choice,
                    .initial = std::string{"14"},
                    .source = "look",
                    .choices = wireGaugeChoices()},
                   priceField()},
        .faults = {{"blown", "blown", FaultEffect::PowerCut, 0}},
        .materials = materials,
        .shownFields = {"rating_A"},
        .caution = "Fuse at the source end; wire sized for drop and heat; the codes in force decide.",
    };
    return kind;
}

}  // namespace tapward::parts
