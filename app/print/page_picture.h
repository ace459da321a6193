// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QSizeF>
#include <vector>

#include "canvas/drawing_layout.h"
#include "canvas/paint_drawing.h"

class QPainter;
class QRectF;

namespace tapward::app::print {

/// The drawing fitted into a place on the page, its letters never under 7 pt.
class Picture {
public:
    /// @param plain  the drawing laid out by plainLayout() @param space  room on the page in tenths of a point
    Picture(const document::Drawing& drawing, const DrawingLayout& plain, UnitSystem units, QSizeF space);
    /// Everything but the letters, which depend on the space: the same for every picture of a drawing.
    static DrawingLayout plainLayout(const document::Drawing& drawing, UnitSystem units);

    bool empty() const { return m_layout.bounds.isNull(); }
    double pointsPerModule() const { return m_scale; }
    /// False where the parts are so many and so small that letters would only hide them.
    bool hasLabels() const { return m_options.labels; }
    QSizeF size() const;  ///< what it takes of the space
    void paint(QPainter& painter, QPointF topLeft) const;

private:
    PaintOptions m_options;
    DrawingLayout m_layout;
    double m_scale = 0;   // points per module
};

/// Samples and names of the lines and symbols used, in rows.
class Legend {
public:
    Legend(const document::Drawing& drawing, double width);
    double height() const { return m_height; }
    void paint(QPainter& painter, QPointF topLeft) const;

private:
    struct Item {
        LegendEntry entry;
        QPointF at;
    };
    std::vector<Item> m_items;
    double m_height = 0;
    double m_firstColumn = 0;
};

}  // namespace tapward::app::print
