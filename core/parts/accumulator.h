// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "parts/part_kind.h"

namespace tapward::parts {

/// Small vessel with air behind a bladder.
const PartKind& accumulator();

}  // namespace tapward::parts
