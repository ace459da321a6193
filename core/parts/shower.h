// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "parts/part_kind.h"

namespace tapward::parts {

/// Shower head with its mixing valve.
const PartKind& shower();

}  // namespace tapward::parts
