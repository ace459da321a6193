// SPDX-License-Identifier: GPL-3.0-or-later
#include "canvas/pipe_item.h"

#include "canvas/shape_painter.h"

namespace tapward::app {

PipeItem::PipeItem(const PaintOptions& options) : m_options(options)
{
    setZValue(1);
    setAcceptedMouseButtons(Qt::NoButton);
}

void PipeItem::show(const PipeShape& pipe, const std::optional<LabelShape>& label)
{
    if (pipe == m_pipe && label == m_label)
        return;
    prepareGeometryChange();
    m_pipe = pipe;
    m_label = label;
    // Room for arrowheads, crosses and the number on the pipe.
    m_bounds = m_pipe.path.controlPointRect().adjusted(-40, -12, 40, 12);
    if (m_label)
        m_bounds |= m_label->box;
    update();
}

void PipeItem::paint(QPainter* painter, const QStyleOptionGraphicsItem*, QWidget*)
{
    paintPipe(*painter, m_pipe, m_options);
    if (m_label)
        paintLabel(*painter, *m_label, m_options);
}

}  // namespace tapward::app
