// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "parts/part_kind.h"

namespace tapward::parts {

/// Battery that feeds the loop.
const PartKind& battery();

}  // namespace tapward::parts
