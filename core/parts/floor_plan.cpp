// SPDX-License-Identifier: GPL-3.0-or-later
#include "parts/floor_plan.h"

#include "parts/common.h"

namespace tapward::parts {

const PartKind& floorPlan()
{
    static const PartKind kind{
        .id = "floor_plan",
        .title = "Floor plan",
        .tagLetter = "FP",
        .searchWords = "picture image backdrop trace scan photo layout",
        .group = TrayGroup::Notes,
        .width = 4,
        .height = 3,
        .fields =
            {
                nameField(),
                {.key = "picture",
                 .label = "Picture",
                 .type = FieldType::Text,
                 .most = 2'097'152,  // bytes of text: 1.5 MiB of picture
                 .initial = std::string{},
                 .source = "none",
                 .help = "PNG or JPEG as base 64 text (RFC 4648)."},
                {.key = "picture_width_m",
                 .label = "Real width of the picture",
                 .quantity = Quantity::Length,
                 .most = 100,
                 .initial = 0.0,
                 .source = "none; 0 means not scaled",
                 .help = "From its left edge to its right edge; scaling by two points sets it.",
                 .unset = "not scaled"},
                {.key = "width_modules",
                 .label = "Width on the drawing",
                 .least = 4,
                 .most = 4000,
                 .initial = 120.0,
                 .source = "the drawing",
                 .help = "In grid steps; the scale follows."},
                {.key = "opacity",
                 .label = "Strength",
                 .quantity = Quantity::Percent,
                 .least = 0.05,
                 .most = 1,
                 .initial = 0.35,
                 .source = "the drawing",
                 .help = "How strongly the picture shows behind the drawing."},
                {.key = "shown",
                 .label = "Show the picture",
                 .type = FieldType::Flag,
                 .initial = true,
                 .source = "you"},
            },
        .shownFields = {"name"},
    };
    return kind;
}

}  // namespace tapward::parts
