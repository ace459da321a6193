// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "parts/part_kind.h"

namespace tapward::parts {

/// Outside shower or spray port.
const PartKind& outsideOutlet();

}  // namespace tapward::parts
