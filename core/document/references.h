// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string_view>
#include <vector>

#include "document/edit.h"

// Who names a part other than by a pipe end: controllers, cases, dismissed findings.
namespace tapward::document {

/// The part that an entry names (a field of type PartRef holds its number in decimal); kNoPart for none or a text that
/// is no whole number.
PartId namedPart(std::string_view entry);

bool refersTo(const Drawing& drawing, PartId id);

/// Steps after which nothing refers to `id`; what can go over to `heir` does (kNoPart: nothing can).
std::vector<Step> releaseReferences(const Drawing& drawing, PartId id, PartId heir);

}  // namespace tapward::document
