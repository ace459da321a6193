// SPDX-License-Identifier: GPL-3.0-or-later
#include "panels/flow_layout.h"

#include <algorithm>

namespace tapward::app {

FlowLayout::~FlowLayout()
{
    for (QLayoutItem* item : m_items)
        delete item;
}

QLayoutItem* FlowLayout::itemAt(int index) const
{
    return index >= 0 && index < count() ? m_items[static_cast<std::size_t>(index)] : nullptr;
}

QLayoutItem* FlowLayout::takeAt(int index)
{
    QLayoutItem* item = itemAt(index);
    if (item)
        m_items.erase(m_items.begin() + index);
    return item;
}

QSize FlowLayout::sizeHint() const
{
    int width = 0, height = 0;
    for (const QLayoutItem* item : m_items) {
        width += item->sizeHint().width() + (width > 0 ? spacing() : 0);
        height = std::max(height, item->sizeHint().height());
    }
    const QMargins margins = contentsMargins();
    return QSize(width + margins.left() + margins.right(), height + margins.top() + margins.bottom());
}

QSize FlowLayout::minimumSize() const
{
    QSize least;
    for (const QLayoutItem* item : m_items)
        least = least.expandedTo(item->minimumSize());
    const QMargins margins = contentsMargins();
    return least + QSize(margins.left() + margins.right(), margins.top() + margins.bottom());
}

void FlowLayout::setGeometry(const QRect& rect)
{
    QLayout::setGeometry(rect);
    arrange(rect, true);
}

/// @return the height used
int FlowLayout::arrange(const QRect& rect, bool move) const
{
    const QRect room = rect.marginsRemoved(contentsMargins());
    int y = room.top();
    for (std::size_t from = 0; from < m_items.size();) {
        std::size_t to = from;
        int used = 0, height = 0, growing = 0;
        while (to < m_items.size()) {
            const QSize size = m_items[to]->sizeHint();
            const int wanted = used + (to > from ? spacing() : 0) + size.width();
            if (to > from && wanted > room.width())
                break;
            used = wanted;
            height = std::max(height, size.height());
            growing += m_items[to]->expandingDirections() & Qt::Horizontal ? 1 : 0;
            ++to;
        }
        const int spare = room.width() - used;
        int x = room.left();
        for (std::size_t i = from; i < to; ++i) {
            int width = m_items[i]->sizeHint().width();
            if (spare < 0 && to == from + 1)
                width = room.width();  // alone and too wide: it has to make do
            else if (growing > 0 && (m_items[i]->expandingDirections() & Qt::Horizontal))
                width = std::min(width + std::max(0, spare) / growing, m_items[i]->maximumSize().width());
            if (move) {
                const int own = std::min(height, m_items[i]->sizeHint().height());
                m_items[i]->setGeometry(QRect(x, y + (height - own) / 2, width, own));
            }
            x += width + spacing();
        }
        y += height + (to < m_items.size() ? spacing() : 0);
        from = to;
    }
    return y - rect.top() + contentsMargins().bottom();
}

}  // namespace tapward::app
