// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QPainter>
#include <QProxyStyle>
#include <QStyleOption>

namespace tapward::app {

/// The desktop's style, with an outline round tick boxes in a dark palette: some styles draw it darker than the
/// ground, so that a box without a tick is not to be seen.
class SeenTicks final : public QProxyStyle {
    Q_OBJECT
public:
    using QProxyStyle::QProxyStyle;

    void drawPrimitive(PrimitiveElement element, const QStyleOption* option, QPainter* painter,
                       const QWidget* widget) const override
    {
        QProxyStyle::drawPrimitive(element, option, painter, widget);
        if (element != PE_IndicatorCheckBox && element != PE_IndicatorItemViewItemCheck)
            return;
        const QPalette& palette = option->palette;
        const QColor ground = palette.color(QPalette::Base);
        if (ground.lightness() > palette.color(QPalette::Text).lightness())
            return;
        QColor ink = palette.color(option->state & State_Enabled ? QPalette::Active : QPalette::Disabled,
                                   option->state & State_Selected ? QPalette::HighlightedText : QPalette::Text);
        ink.setAlphaF(0.6F);
        painter->save();
        painter->setRenderHint(QPainter::Antialiasing, false);
        painter->setPen(QPen(ink, 1));
        painter->setBrush(Qt::NoBrush);
        painter->drawRect(option->rect.adjusted(0, 0, -1, -1));
        painter->restore();
    }
};

}  // namespace tapward::app
