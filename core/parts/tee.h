// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "parts/part_kind.h"

namespace tapward::parts {

/// A joint of three tube ends.
const PartKind& tee();

}  // namespace tapward::parts
