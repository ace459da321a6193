// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "parts/part_kind.h"

namespace tapward::parts {

/// Toilet filled from the cold line.
const PartKind& toilet();

}  // namespace tapward::parts
