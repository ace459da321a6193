// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "parts/part_kind.h"

namespace tapward::parts {

/// One-way valve.
const PartKind& checkValve();

}  // namespace tapward::parts
