// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "parts/part_kind.h"

namespace tapward::parts {

/// Mixing tap of a sink or lavatory.
const PartKind& faucet();

}  // namespace tapward::parts
