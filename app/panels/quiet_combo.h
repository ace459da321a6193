// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QComboBox>
#include <QString>
#include <QStyleOptionComboBox>
#include <QStylePainter>
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
        connect(this, &QComboBox::currentTextChanged, this, &QuietCombo::tellWhole);
    }

protected:
    void wheelEvent(QWheelEvent* event) override
    {
        if (hasFocus())
            QComboBox::wheelEvent(event);
        else
            event->ignore();
    }
    /// What does not fit ends in dots, or half a word would pass for the whole.
    void paintEvent(QPaintEvent* event) override
    {
        if (isEditable() || currentIndex() < 0)
            return QComboBox::paintEvent(event);
        QStylePainter painter(this);
        QStyleOptionComboBox option;
        initStyleOption(&option);
        const int room =
            style()->subControlRect(QStyle::CC_ComboBox, &option, QStyle::SC_ComboBoxEditField, this).width()
            - (option.currentIcon.isNull() ? 0 : option.iconSize.width() + 4) - 2;
        option.currentText = fontMetrics().elidedText(option.currentText, Qt::ElideRight, room);
        painter.drawComplexControl(QStyle::CC_ComboBox, option);
        painter.drawControl(QStyle::CE_ComboBoxLabel, option);
    }
    void showEvent(QShowEvent* event) override
    {
        QComboBox::showEvent(event);
        tellWhole();
    }

private:
    /// The tip ends with the entry, which may be longer than the box.
    void tellWhole()
    {
        if (toolTip() != m_tip)
            m_purpose = toolTip();
        m_tip = m_purpose.isEmpty() || currentText().isEmpty() ? m_purpose + currentText()
                                                               : m_purpose + QLatin1Char('\n') + currentText();
        setToolTip(m_tip);
    }

    QString m_purpose, m_tip;
};

}  // namespace tapward::app
