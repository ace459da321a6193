// SPDX-License-Identifier: GPL-3.0-or-later
#include "canvas/part_item.h"

#include "canvas/shape_painter.h"

namespace tapward::app {

PartItem::PartItem(const PaintOptions& options) : m_options(options)
{
    setZValue(2);
    setAcceptedMouseButtons(Qt::NoButton);  // the view's tool decides what a press means
}

void PartItem::show(const SymbolShape& symbol, const std::optional<LabelShape>& label)
{
    if (symbol == m_symbol && label == m_label)
        return;
    prepareGeometryChange();
    m_symbol = symbol;
    m_label = label;
    m_bounds = m_symbol.reach(m_options.labelSize).adjusted(-5, -5, 5, 5);
    if (!m_symbol.text.isEmpty() && m_symbol.lines.empty())
        m_bounds.adjust(0, 0, 0, 400);  // a note grows downward
    if (m_label)
        m_bounds |= m_label->box;
    update();
}

void PartItem::paint(QPainter* painter, const QStyleOptionGraphicsItem*, QWidget*)
{
    paintShape(*painter, m_symbol, m_options);
    if (m_label)
        paintLabel(*painter, *m_label, m_options);
}

}  // namespace tapward::app
