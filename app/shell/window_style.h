// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QProxyStyle>

namespace tapward::app {

/// The desktop's style, but for four things. Layouts that say nothing of their own keep the distances of the one grid. A label shows its text as it is, where Qt guesses whether it is mark-up and
/// would read the pictures a stranger's tag may name: every label is polished before it is measured or painted, the one
/// in a tool tip or a message box too; one that sets a text format of its own keeps it. Tick boxes in a dark palette have
/// an outline, as some styles draw it darker than the ground, so that a box without a tick is not to be seen. And a menu
/// bar's sign for menus that found no room is read when it is painted, not with the window, where reading it loads every
/// picture format Qt knows.
class WindowStyle final : public QProxyStyle {
    Q_OBJECT
public:
    using QProxyStyle::QProxyStyle;

    using QProxyStyle::polish;
    void polish(QWidget* widget) override;
    int pixelMetric(PixelMetric metric, const QStyleOption* option, const QWidget* widget) const override;
    void drawPrimitive(PrimitiveElement element, const QStyleOption* option, QPainter* painter,
                       const QWidget* widget) const override;
    QIcon standardIcon(StandardPixmap which, const QStyleOption* option, const QWidget* widget) const override;
};

}  // namespace tapward::app
