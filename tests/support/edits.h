// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "document/edit.h"
#include "document/rearrange.h"
#include "support/catch.h"

namespace tapward::test {

/// The edit is possible, and is made.
inline void make(document::Drawing& drawing, Result<document::Edit> edit)
{
    if (!edit) {
        FAIL(render(edit.error().what, UnitSystem::Metric));
    }
    REQUIRE_FALSE(document::refusal(drawing, *edit));
    document::apply(drawing, std::move(*edit));
}

inline document::PartId place(document::Drawing& drawing, const char* kind, document::Point at, int turn = 0,
                              document::Stage stage = document::Stage::Existing)
{
    const document::PartId id = drawing.nextId;
    make(drawing, document::placePart(drawing, kind, at, stage, turn));
    return id;
}

inline double number(const document::Drawing& drawing, document::PartId id, const char* key)
{
    return document::values(*drawing.find(id)).number(key);
}

}  // namespace tapward::test
