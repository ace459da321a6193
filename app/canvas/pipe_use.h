// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <map>

#include "document/drawing.h"

namespace tapward::app {

/// What water a pipe carries, for its line style.
enum class PipeUse { Plain, Cold, Hot, Return };

/// Use and usual direction of one pipe.
struct PipeTrace {
    PipeUse use = PipeUse::Plain;
    int direction = 0;  ///< +1 from ends[0] to ends[1], -1 the other way, 0 unknown
};

/// What every pipe carries and which way, read from the drawing alone (no flow is computed).
///
/// Hot is traced from the heaters' outlets, cold from the supplies; neither passes a heater, a fixture,
/// a circulator, a motorized valve, or a check valve backward. On the way from a heater's outlet back
/// to its inlet, or into the fresh tank, that passes a circulator or motorized valve, what lies beyond the last tap and before
/// the cold line is the return. A pipe's own `carries` field overrules the trace.
std::map<document::PartId, PipeTrace> tracePipes(const document::Drawing& drawing);

/// Only the uses.
std::map<document::PartId, PipeUse> pipeUses(const document::Drawing& drawing);

}  // namespace tapward::app
