// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "parts/part_kind.h"

namespace tapward::parts {

/// Small centrifugal pump of a loop.
const PartKind& circulator();

}  // namespace tapward::parts
