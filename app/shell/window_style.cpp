// SPDX-License-Identifier: GPL-3.0-or-later
#include "shell/window_style.h"

#include <QIconEngine>
#include <QLabel>
#include <QPainter>
#include <QPointer>
#include <QStyleOption>

#include "look/spacing.h"

namespace tapward::app {

namespace {

/// An icon of a style, fetched at the first look at it.
class LaterIcon final : public QIconEngine {
public:
    LaterIcon(QStyle* style, QStyle::StandardPixmap which) : m_style(style), m_which(which) {}

    void paint(QPainter* painter, const QRect& rect, QIcon::Mode mode, QIcon::State state) override
    {
        icon().paint(painter, rect, Qt::AlignCenter, mode, state);
    }
    QPixmap pixmap(const QSize& size, QIcon::Mode mode, QIcon::State state) override
    {
        return icon().pixmap(size, mode, state);
    }
    QSize actualSize(const QSize& size, QIcon::Mode mode, QIcon::State state) override
    {
        return icon().actualSize(size, mode, state);
    }
    QIconEngine* clone() const override { return new LaterIcon(m_style, m_which); }

private:
    const QIcon& icon()
    {
        if (m_icon.isNull() && m_style)
            m_icon = m_style->standardIcon(m_which);
        return m_icon;
    }

    QPointer<QStyle> m_style;
    QStyle::StandardPixmap m_which;
    QIcon m_icon;
};

}  // namespace

void WindowStyle::polish(QWidget* widget)
{
    QProxyStyle::polish(widget);
    if (auto* label = qobject_cast<QLabel*>(widget); label && label->textFormat() == Qt::AutoText)
        label->setTextFormat(Qt::PlainText);
}

int WindowStyle::pixelMetric(PixelMetric metric, const QStyleOption* option, const QWidget* widget) const
{
    switch (metric) {
    case PM_LayoutLeftMargin:
    case PM_LayoutRightMargin:
    case PM_LayoutTopMargin:
    case PM_LayoutBottomMargin:
    case PM_LayoutHorizontalSpacing:
        return look::kNext;
    case PM_LayoutVerticalSpacing:
        return look::kNear;
    default:
        return QProxyStyle::pixelMetric(metric, option, widget);
    }
}

void WindowStyle::drawPrimitive(PrimitiveElement element, const QStyleOption* option, QPainter* painter,
                                const QWidget* widget) const
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

QIcon WindowStyle::standardIcon(StandardPixmap which, const QStyleOption* option, const QWidget* widget) const
{
    if (which == SP_ToolBarHorizontalExtensionButton)
        return QIcon(new LaterIcon(baseStyle(), which));
    return QProxyStyle::standardIcon(which, option, widget);
}

}  // namespace tapward::app
