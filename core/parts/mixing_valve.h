// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "parts/part_kind.h"

namespace tapward::parts {

/// Thermostatic valve that blends hot and cold.
const PartKind& mixingValve();

}  // namespace tapward::parts
