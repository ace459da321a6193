// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "parts/part_kind.h"

namespace tapward::parts {

/// A length written on the drawing between two parts; says nothing to the water.
const PartKind& dimension();

}  // namespace tapward::parts
