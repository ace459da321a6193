// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "document/drawing.h"

class QPainter;

namespace tapward::app {

/// Paints the pictures of the floor plans that are shown, dimmed, in canvas units. Screen only: pages and exports
/// do without. A picture beyond the bounds of document/picture.h, or damaged, is left out.
void paintFloorPlans(QPainter& painter, const document::Drawing& drawing);

}  // namespace tapward::app
