// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QString>

class QPainter;
class QPointF;

namespace tapward::app {

/// Text on the drawing: `size` is the letter size in canvas units and need not be whole. UI thread only.
double textWidth(const QString& text, double size, bool bold = false);
void drawText(QPainter& painter, const QPointF& baseline, const QString& text, double size, bool bold = false);

/// Distance between lines, in the unit of `size`.
constexpr double lineHeight(double size) { return 1.22 * size; }

}  // namespace tapward::app
