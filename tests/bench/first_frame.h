// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QApplication>
#include <QEvent>
#include <QTimer>
#include <QWidget>

namespace tapward::bench {

/// Ends the program as soon as the window has been painted once.
class QuitAtFirstFrame final : public QObject {
public:
    explicit QuitAtFirstFrame(QWidget& window) { window.installEventFilter(this); }

protected:
    bool eventFilter(QObject* watched, QEvent* event) override
    {
        if (event->type() == QEvent::Paint && !m_painted) {
            m_painted = true;
            QTimer::singleShot(0, [] { QApplication::quit(); });
        }
        return QObject::eventFilter(watched, event);
    }

private:
    bool m_painted = false;
};

}  // namespace tapward::bench
