// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <chrono>
#include <mutex>
#include <string>
#include <unistd.h>

namespace tapward::app::batch {

/// Says on stderr how far a long study is and how long it may still take: in one line on a terminal, else now and then.
class Pace {
public:
    ~Pace();
    void tell(double share);  ///< 0..1, from any thread

private:
    using Clock = std::chrono::steady_clock;

    const bool m_terminal = isatty(STDERR_FILENO) == 1;
    const Clock::time_point m_begin = Clock::now();
    std::mutex m_mutex;
    double m_next_s = m_terminal ? 2 : 10;
    bool m_said = false;
};

}  // namespace tapward::app::batch
