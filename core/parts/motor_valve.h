// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "parts/part_kind.h"

namespace tapward::parts {

/// Ball valve turned by a motor.
const PartKind& motorValve();

}  // namespace tapward::parts
