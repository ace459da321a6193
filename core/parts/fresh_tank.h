// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "parts/part_kind.h"

namespace tapward::parts {

/// Tank the coach carries its water in.
const PartKind& freshTank();

}  // namespace tapward::parts
