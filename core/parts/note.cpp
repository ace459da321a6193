// SPDX-License-Identifier: GPL-3.0-or-later
#include "parts/note.h"

#include "parts/common.h"

namespace tapward::parts {

const PartKind& note()
{
    static const PartKind kind{
        .id = "note",
        .title = "Note",
        .tagLetter = "N",
        .searchWords = "text label comment remark",
        .group = TrayGroup::Notes,
        .width = 8,
        .height = 2,
        .fields =
            {{.key = "text", .label = "Text", .type = FieldType::Text, .initial = std::string{}, .source = "you"}},
        .shownFields = {"text"},
    };
    return kind;
}

}  // namespace tapward::parts
