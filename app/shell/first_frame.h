// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <chrono>
#include <cstdio>
#include <cstdlib>
#include <QEvent>
#include <QTimer>
#include <QWidget>

namespace tapward::app {

/// For the benchmark of the start: as soon as the window has been painted once it writes the moment to the standard
/// output, in nanoseconds of the steady clock, and ends the program, saving nothing.
class QuitAtFirstFrame final : public QObject {
public:
    explicit QuitAtFirstFrame(QWidget& window) { window.installEventFilter(this); }

protected:
    bool eventFilter(QObject* watched, QEvent* event) override
    {
        if (event->type() == QEvent::Paint && !m_painted) {
            m_painted = true;
            QTimer::singleShot(0, [] {
                std::printf("%lld\n",
                            static_cast<long long>(
                                std::chrono::nanoseconds(std::chrono::steady_clock::now().time_since_epoch()).count()));
                std::fflush(stdout);
                std::_Exit(0);
            });
        }
        return QObject::eventFilter(watched, event);
    }

private:
    bool m_painted = false;
};

}  // namespace tapward::app
