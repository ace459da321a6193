// SPDX-License-Identifier: GPL-3.0-or-later
#include "batch/pace.h"

#include <algorithm>
#include <cstdio>

#include <fmt/format.h>

#include "base/units.h"
#include "study/trials.h"

namespace tapward::app::batch {
namespace {

void say(const std::string& text)
{
    std::fwrite(text.data(), 1, text.size(), stderr);
    std::fflush(stderr);
}

}  // namespace

Pace::~Pace()
{
    if (m_said && m_terminal) {
        say("\r\033[K");
    }
}

void Pace::tell(double share)
{
    const std::lock_guard lock(m_mutex);
    const double elapsed_s = std::chrono::duration<double>(Clock::now() - m_begin).count();
    const auto left_s = tapward::study::secondsLeft(share, elapsed_s);
    if (elapsed_s < m_next_s || !left_s || share >= 1) {
        return;
    }
    m_next_s = elapsed_s + (m_terminal ? 1 : 20);
    m_said = true;
    say(fmt::format("{}tapward-batch: {:.0f} % done, about {} left{}", m_terminal ? "\r" : "", 100 * share,
                    show({std::max(*left_s, 1.0), Quantity::Time}, UnitSystem::Us), m_terminal ? "\033[K" : "\n"));
}

}  // namespace tapward::app::batch
