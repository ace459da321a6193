// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "parts/part_kind.h"

namespace tapward::parts {

/// Box that runs the preheat loop.
const PartKind& controller();

}  // namespace tapward::parts
