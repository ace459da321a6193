// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "document/drawing.h"

namespace tapward::app {

class CanvasView;

/// Makes every part of every canvas a child in the accessibility tree: name, role, state, place. Once is enough.
void installCanvasAccessibility();

/// Tells a screen reader that the keyboard is on this part now.
void tellFocus(CanvasView& view, document::PartId part);
/// Tells it that what is said of the part has changed: water has begun to run, a value is another one.
void tellChange(CanvasView& view, document::PartId part);

}  // namespace tapward::app
