// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "parts/part_kind.h"

namespace tapward::parts {

/// Low-point drain.
const PartKind& drainValve();

}  // namespace tapward::parts
