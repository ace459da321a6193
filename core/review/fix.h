// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string>

#include "document/edit.h"

namespace tapward::review {

// Quick fixes: each one undo step, or nothing where the drawing would refuse it.

/// One value of a part. The basis stays what it was, or is 'estimated' for a default.
std::optional<document::Edit> setValue(const document::Drawing& drawing, document::PartId part, const std::string& key,
                                       parts::Value value, Message title);

/// A part that goes into a line, turned to face the other way; its two pipes change ports.
std::optional<document::Edit> turnAround(const document::Drawing& drawing, document::PartId part, Message title);

/// A part of this kind put into a pipe in the middle of its drawn line, facing from ends[0] to ends[1], or
/// the other way.
std::optional<document::Edit> putInto(const document::Drawing& drawing, document::PartId pipe, const std::string& kind,
                                      bool reversed, Message title);

}  // namespace tapward::review
