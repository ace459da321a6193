// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <map>

#include "document/drawing.h"

namespace tapward::app {

/// What water a pipe carries, for its line style.
enum class PipeUse { Plain, Cold, Hot, Return };

/// The use of every pipe. A pipe's own `carries` field wins. Otherwise the drawing is traced: hot from
/// every heater's outlet, cold from every supply and from the heaters' inlets, neither passing through a
/// heater, nor backward through a check valve, nor through a circulator or motorized valve. What lies
/// on the loop beyond the last tap and before the cold line is the return. Plain where nothing is known.
std::map<document::PartId, PipeUse> pipeUses(const document::Drawing& drawing);

}  // namespace tapward::app
