// SPDX-License-Identifier: GPL-3.0-or-later
#include "parts/fuse.h"

#include "parts/common.h"
#include "parts/wire_gauge.h"

namespace tapward::parts {
namespace {

Result<PartModel> model(const Values&) { return PartModel{}; }

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
                    .source = "at least 1.25 times the load, no more than the wire allows, not checked"},
                   {.key = "wire_gauge",
                    .label = "Thinnest wire behind it",
                    .type = FieldType::Choice,
                    .initial = std::string{"14"},
                    .source = "look",
                    .choices = wireGaugeChoices()},
                   {.key = "resistance_ohm",
                    .label = "Resistance with its holder",
                    .quantity = Quantity::Resistance,
                    .most = 1,
                    .initial = 0.015,
                    .source = "a 5 A blade fuse, not checked"},
                   {.key = "feed_length_m",
                    .label = "Shared wire, one way",
                    .quantity = Quantity::Length,
                    .most = 100,
                    .initial = 0.0,
                    .source = "measure from battery to where the loads part",
                    .help = "Of the gauge above. 0: every load's own wire is counted from the battery."},
                   {.key = "other_load_A",
                    .label = "Other loads on it",
                    .quantity = Quantity::Current,
                    .most = 200,
                    .initial = 0.0,
                    .source = "clamp meter, everything on",
                    .help = "What this branch carries already: lights, fans, sockets."},
                   {.key = "socket_rating_A",
                    .label = "Socket or plug rating",
                    .quantity = Quantity::Current,
                    .most = 200,
                    .initial = 0.0,
                    .source = "stamped on it",
                    .help = "Where the loop is plugged into a 12 V socket; 0: there is none."},
                   priceField()},
        .faults = {{"blown", "blown", FaultEffect::PowerCut, 0}},
        .model = model,
        .materials = materials,
        .shownFields = {"rating_A"},
        .caution = "Fuse at the source end; wire sized for drop and heat; the codes in force decide.",
    };
    return kind;
}

}  // namespace tapward::parts
