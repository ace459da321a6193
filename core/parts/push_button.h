// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "parts/part_kind.h"

namespace tapward::parts {

/// Button that starts a run.
const PartKind& pushButton();

}  // namespace tapward::parts
