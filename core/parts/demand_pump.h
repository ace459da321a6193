// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "parts/part_kind.h"

namespace tapward::parts {

/// Diaphragm pump with a pressure switch.
const PartKind& demandPump();

}  // namespace tapward::parts
