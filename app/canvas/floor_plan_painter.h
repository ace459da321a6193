// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <vector>

#include "document/drawing.h"

class QPainter;

namespace tapward::app {

struct LabelShape;
struct Theme;

/// Paints the pictures of the floor plans that are shown, dimmed, in canvas units; on a dark ground so much that a
/// white one leaves the labels readable; on a light ground, where strong lines are wanted for tracing, the labels get
/// paper under them instead. Screen only: pages and exports do without. A picture beyond the bounds of
/// document/picture.h, or damaged, is left out; one that has too many pixels together with those before it is not
/// decoded, its frame says so.
void paintFloorPlans(QPainter& painter, const document::Drawing& drawing, const Theme& theme,
                     const std::vector<LabelShape>& labels);

}  // namespace tapward::app
