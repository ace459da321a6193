// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "parts/part_kind.h"

namespace tapward::parts {

/// A picture of the coach's floor plan, dimmed behind the drawing, for tracing pipes over it. The picture itself
/// is in the drawing: a drawing names no other file, so one from a stranger cannot reach for any.
const PartKind& floorPlan();

}  // namespace tapward::parts
