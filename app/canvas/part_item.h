// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <QGraphicsItem>

#include "canvas/drawing_layout.h"

namespace tapward::app {

/// A part's symbol and label in the scene. Shows what the layout says and knows nothing else.
class PartItem final : public QGraphicsItem {
public:
    /// `options` is the view's own and outlives the item.
    explicit PartItem(const PaintOptions& options);
    void show(const SymbolShape& symbol, const std::optional<LabelShape>& label);
    const SymbolShape& symbol() const { return m_symbol; }

    QRectF boundingRect() const override { return m_bounds; }
    void paint(QPainter* painter, const QStyleOptionGraphicsItem* option, QWidget* widget) override;

private:
    const PaintOptions& m_options;
    SymbolShape m_symbol;
    std::optional<LabelShape> m_label;
    QRectF m_bounds;
};

}  // namespace tapward::app
