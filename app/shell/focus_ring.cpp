// SPDX-License-Identifier: GPL-3.0-or-later
#include "shell/focus_ring.h"

#include <QAbstractSpinBox>
#include <QApplication>
#include <QComboBox>
#include <QGraphicsView>
#include <QLineEdit>
#include <QPainter>
#include <QProxyStyle>
#include <QStyleOption>

#include "shell/link_button.h"

namespace tapward::app {

namespace {

class RingStyle final : public QProxyStyle {
public:
    void drawControl(ControlElement element, const QStyleOption* option, QPainter* painter,
                     const QWidget* widget) const override
    {
        if (element == CE_FocusFrame && widget)
            paintFocusFrame(*widget, *painter);
        else
            QProxyStyle::drawControl(element, option, painter, widget);
    }
    int pixelMetric(PixelMetric metric, const QStyleOption* option, const QWidget* widget) const override
    {
        // Inside the widget: outside, its neighbours and the edge of what scrolls would cut it.
        const bool margin = metric == PM_FocusFrameHMargin || metric == PM_FocusFrameVMargin;
        return margin ? 0 : QProxyStyle::pixelMetric(metric, option, widget);
    }
    int styleHint(StyleHint hint, const QStyleOption* option, const QWidget* widget,
                  QStyleHintReturn* back) const override
    {
        if (hint == SH_FocusFrame_AboveWidget)
            return 1;
        return hint == SH_FocusFrame_Mask ? 0 : QProxyStyle::styleHint(hint, option, widget, back);
    }
};

/// The canvas and the chart draw their own, and fields to type into and boxes the style's.
bool wantsRing(const QWidget& widget)
{
    return !qobject_cast<const QGraphicsView*>(&widget) && !qobject_cast<const QLineEdit*>(&widget)
           && !qobject_cast<const QComboBox*>(&widget) && !qobject_cast<const QAbstractSpinBox*>(&widget);
}

}  // namespace

FocusRing::FocusRing() : m_style(std::make_unique<RingStyle>())
{
    connect(qApp, &QApplication::focusChanged, this, [this](QWidget*, QWidget* now) { follow(now); });
}

FocusRing::~FocusRing() { delete m_frame; }

void FocusRing::follow(QWidget* widget)
{
    const bool wanted = widget && !widget->isWindow() && wantsRing(*widget)
                        && widget->window()->testAttribute(Qt::WA_KeyboardFocusChange);
    if (!m_frame) {
        if (!wanted)
            return;
        m_frame = new QFocusFrame;  // anew when it went down with a dialog
        m_frame->setStyle(m_style.get());
    }
    m_frame->setWidget(wanted ? widget : nullptr);
}

}  // namespace tapward::app
