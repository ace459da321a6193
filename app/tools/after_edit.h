// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "document/edit.h"

namespace tapward::app {

/// The drawing as it is once the edit is made. @pre the edit is not refused
inline document::Drawing after(const document::Drawing& drawing, const document::Edit& edit)
{
    document::Drawing copy = drawing;
    document::apply(copy, edit);
    return copy;
}

/// The new symbol in `now` that was not in `before`, if there is one.
inline const document::Part* newSymbol(const document::Drawing& before, const document::Drawing& now)
{
    for (const auto& part : now.parts)
        if (part.id >= before.nextId && !document::kindOf(part).isPipe)
            return &part;
    return nullptr;
}

}  // namespace tapward::app
