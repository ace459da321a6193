// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <memory>
#include <QFocusFrame>
#include <QPointer>
#include <QStyle>

namespace tapward::app {

/// A ring round what has the keyboard, in every window of the program: round a button, a list, a text or a row of tabs
/// styles show it hardly or not at all, in a dark palette even less. Once somebody moves by keyboard.
class FocusRing final : public QObject {
public:
    FocusRing();
    ~FocusRing() override;

private:
    void follow(QWidget* widget);

    std::unique_ptr<QStyle> m_style;
    QPointer<QFocusFrame> m_frame;  ///< a child of the window it is in
};

}  // namespace tapward::app
