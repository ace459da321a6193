// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <QPen>

#include "canvas/drawing_layout.h"

class QPainter;

namespace tapward::app {

// What canvas items and paper both call; every shape in canvas units.
void paintPipe(QPainter& painter, const PipeShape& pipe, const PaintOptions& options);
void paintBridge(QPainter& painter, const BridgeShape& bridge, const PaintOptions& options);
void paintShape(QPainter& painter, const SymbolShape& symbol, const PaintOptions& options);
void paintLabel(QPainter& painter, const LabelShape& label, const PaintOptions& options);

/// Dash with one dot = cold, two = hot, three = return; solid where nothing is known.
/// Basis: the one- and two-dot lines of ANSI Y32.4; three dots follow that family.
QPen pipePen(PipeUse use, const Theme& theme, bool heavy);

/// A filled arrowhead with its middle at `at`, pointing along `direction` (a unit vector).
void paintArrow(QPainter& painter, const QPointF& at, const QPointF& direction, double size, const QColor& colour);

/// A pipe's own arrowhead, which says where the water goes. Nothing on a short pipe.
struct Arrow {
    QPointF at, way;
    double size;
};
std::optional<Arrow> arrowOf(const PipeShape& pipe, document::View view);

/// How a stage is drawn in a view: before the job everything is plain.
document::Stage drawnStage(document::Stage stage, document::View view);

}  // namespace tapward::app
