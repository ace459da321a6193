// SPDX-License-Identifier: GPL-3.0-or-later
#include "parts/dimension.h"

#include <string>

#include "parts/common.h"

namespace tapward::parts {

namespace {

/// Whatever stands somewhere in the coach: every kind with a symbol and ports, and what is wired.
const std::string& standing()
{
    static const std::string kinds = [] {
        std::string all;
        for (const std::string_view kind :
             {"tee",        "check_valve", "hand_valve",         "motor_valve",     "mixing_valve",   "drain_valve",
              "circulator", "flow_sensor", "temperature_sensor", "tankless_heater", "storage_heater", "faucet",
              "shower",     "toilet",      "outside_outlet",     "appliance",       "city_inlet",     "regulator",
              "fresh_tank", "demand_pump", "accumulator",        "filter",          "controller",     "push_button",
              "battery",    "fuse"}) {
            all.append(all.empty() ? "" : " ").append(kind);
        }
        return all;
    }();
    return kinds;
}

Field endField(std::string_view key, Text label)
{
    return {.key = key,
            .label = label,
            .type = FieldType::PartRef,
            .initial = std::string{},
            .source = "you",
            .refKinds = standing(),
            .help = "The dimension line follows this part."};
}

}  // namespace

const PartKind& dimension()
{
    static const PartKind kind{
        .id = "dimension",
        .title = "Dimension",
        .tagLetter = "DM",
        .searchWords = "length distance measure callout size",
        .group = TrayGroup::Notes,
        .width = 8,
        .height = 2,
        .fields =
            {
                nameField(),
                {.key = "length_m",
                 .label = "Length",
                 .quantity = Quantity::Length,
                 .most = 100,
                 .initial = 0.0,
                 .source = "none; 0 means not measured",
                 .help = "As measured in the coach; the drawing is not to scale.",
                 .unset = "not measured"},
                endField("from", "From part"),
                endField("to", "To part"),
                {.key = "width_modules",
                 .label = "Width on the drawing",
                 .least = 2,
                 .most = 4000,
                 .initial = 8.0,
                 .source = "the drawing",
                 .help = "In grid steps, at an end that follows no part."},
            },
    };
    return kind;
}

}  // namespace tapward::parts
