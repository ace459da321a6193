// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "parts/part_kind.h"

namespace tapward::parts {

/// Valve turned by hand.
const PartKind& handValve();

}  // namespace tapward::parts
