// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "parts/part_kind.h"

namespace tapward::parts {

/// Pressure regulator in the supply.
const PartKind& regulator();

}  // namespace tapward::parts
