// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "parts/part_kind.h"

namespace tapward::parts {

/// Free text on the drawing.
const PartKind& note();

}  // namespace tapward::parts
