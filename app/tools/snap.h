// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <QLineF>
#include <vector>

#include "canvas/canvas_view.h"

namespace tapward::app {

/// Where a part being moved or put down comes to rest: first a port that fits another one, then in line with
/// other parts, then the grid.
struct Rest {
    QPointF at;                       ///< the part's middle, canvas units
    std::vector<QLineF> guides;       ///< lines to what it is in line with
    std::string port;                 ///< its port that would be joined ...
    std::optional<PortSpot> partner;  ///< ... to this port or loose end
};

/// @param part  as it would be; its `at` is where the hand holds it
/// @param ignore  parts that move along: nothing to rest on
Rest restFor(CanvasView& view, const document::Part& part, const std::vector<document::PartId>& ignore,
             Qt::KeyboardModifiers keys);

/// The gap left between two ports that are joined because one came near the other, in modules.
inline constexpr double kPortGap = 2.0;

}  // namespace tapward::app
