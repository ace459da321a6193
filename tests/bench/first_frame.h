// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstdlib>
#include <QEvent>
#include <QTimer>
#include <QWidget>

namespace tapward::bench {

/// Ends the program as soon as the window has been painted once; what comes after the frame is not counted.
class QuitAtFirstFrame final : public QObject {
public:
    explicit QuitAtFirstFrame(QWidget& window) { window.installEventFilter(this); }

protected:
    bool eventFilter(QObject* watched, QEvent* event) override
    {
        if (event->type() == QEvent::Paint && !m_painted) {
            m_painted = true;
            QTimer::singleShot(0, [] { std::_Exit(0); });
        }
        return QObject::eventFilter(watched, event);
    }

private:
    bool m_painted = false;
};

}  // namespace tapward::bench
