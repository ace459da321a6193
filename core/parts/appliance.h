// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "parts/part_kind.h"

namespace tapward::parts {

/// Washer, ice maker, dishwasher or anything else that draws water.
const PartKind& appliance();

}  // namespace tapward::parts
