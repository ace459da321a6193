// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QComboBox>
#include <QWheelEvent>

namespace tapward::app {

/// A combo box that does not eat the wheel while somebody scrolls the panel it sits in, and that may be
/// narrower than its longest entry.
class QuietCombo : public QComboBox {
    Q_OBJECT
public:
    explicit QuietCombo(QWidget* parent = nullptr) : QComboBox(parent)
    {
        setFocusPolicy(Qt::StrongFocus);
        setSizeAdjustPolicy(QComboBox::AdjustToMinimumContentsLengthWithIcon);
        setMinimumContentsLength(9);
    }

protected:
    void wheelEvent(QWheelEvent* event) override
    {
        if (hasFocus())
            QComboBox::wheelEvent(event);
        else
            event->ignore();
    }
};

}  // namespace tapward::app
