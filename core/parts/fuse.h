// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "parts/part_kind.h"

namespace tapward::parts {

/// Fuse at the source end of a 12 V branch.
const PartKind& fuse();

}  // namespace tapward::parts
