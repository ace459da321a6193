// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "parts/part_kind.h"

namespace tapward::parts {

/// Cartridge filter or strainer.
const PartKind& filter();

}  // namespace tapward::parts
