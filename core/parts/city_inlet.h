// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "parts/part_kind.h"

namespace tapward::parts {

/// Where the campground hose comes in.
const PartKind& cityInlet();

}  // namespace tapward::parts
