// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <QGraphicsItem>

#include "canvas/drawing_layout.h"

namespace tapward::app {

/// A pipe in the scene, with its label.
class PipeItem final : public QGraphicsItem {
public:
    explicit PipeItem(const PaintOptions& options);
    void show(const PipeShape& pipe, const std::optional<LabelShape>& label);

    QRectF boundingRect() const override { return m_bounds; }
    void paint(QPainter* painter, const QStyleOptionGraphicsItem* option, QWidget* widget) override;

private:
    const PaintOptions& m_options;
    PipeShape m_pipe;
    std::optional<LabelShape> m_label;
    QRectF m_bounds;
};

}  // namespace tapward::app
