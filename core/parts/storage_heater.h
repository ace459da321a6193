// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "parts/part_kind.h"

namespace tapward::parts {

/// Heated tank with a thermostat.
const PartKind& storageHeater();

}  // namespace tapward::parts
