// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "parts/part_kind.h"

namespace tapward::parts {

/// Gas heater that lights when water flows.
const PartKind& tanklessHeater();

}  // namespace tapward::parts
