// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QSizeF>
#include <vector>

#include "canvas/paint_drawing.h"

class QPainter;
class QRectF;

namespace tapward::app::print {

/// The drawing fitted into a place on the page, its letters never under 7 pt.
class Picture {
public:
    /// @param space  room on the page in tenths of a point
    Picture(const document::Drawing& drawing, UnitSystem units, QSizeF space);

    bool empty() const { return m_bounds.isNull(); }
    double pointsPerModule() const { return m_scale; }
    QSizeF size() const;  ///< what it takes of the space
    void paint(QPainter& painter, QPointF topLeft) const;

private:
    const document::Drawing& m_drawing;
    PaintOptions m_options;
    QRectF m_bounds;      // canvas units
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
