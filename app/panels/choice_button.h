// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QPainter>
#include <QToolButton>

#include "look/theme.h"

namespace tapward::app {

/// A button of a switch. The chosen one has a bar along its foot, because some styles hardly darken a
/// checked button and in a dark palette not at all.
class ChoiceButton final : public QToolButton {
    Q_OBJECT
public:
    using QToolButton::QToolButton;

protected:
    void paintEvent(QPaintEvent* event) override
    {
        QToolButton::paintEvent(event);
        if (!isChecked())
            return;
        QPainter painter(this);
        const auto group = isEnabled() ? QPalette::Active : QPalette::Disabled;
        painter.setPen(QPen(palette().color(group, QPalette::ButtonText), 1));
        painter.drawRect(rect().adjusted(0, 0, -1, -1));
        painter.fillRect(QRect(0, height() - 4, width(), 4),
                         isEnabled() ? Theme::of(palette()).note : palette().color(group, QPalette::ButtonText));
    }
};

}  // namespace tapward::app
