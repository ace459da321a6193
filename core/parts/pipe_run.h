// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "parts/part_kind.h"

namespace tapward::parts {

/// A run of tube between two ports, with its fittings.
const PartKind& pipeRun();

}  // namespace tapward::parts
