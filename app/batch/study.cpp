// SPDX-License-Identifier: GPL-3.0-or-later
#include "batch/study.h"

#include <algorithm>
#include <chrono>
#include <cstdio>
#include <mutex>
#include <string>
#include <unistd.h>

#include <fmt/format.h>

#include "report/stop_report.h"
#include "report/study_report.h"

namespace tapward::app::batch {
namespace {

/// Says on stderr how far a long study is and how long it may still take: in one line on a terminal, else now and then.
class Pace {
public:
    ~Pace()
    {
        if (m_said && m_terminal) {
            say("\r\033[K");
        }
    }

    void tell(double share)
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

private:
    using Clock = std::chrono::steady_clock;
    static void say(const std::string& text)
    {
        std::fwrite(text.data(), 1, text.size(), stderr);
        std::fflush(stderr);
    }

    const bool m_terminal = isatty(STDERR_FILENO) == 1;
    const Clock::time_point m_begin = Clock::now();
    std::mutex m_mutex;  // progress comes from any thread
    double m_next_s = m_terminal ? 2 : 10;
    bool m_said = false;
};

}  // namespace

Result<std::string> study(const document::Drawing& drawing, const StudyAsked& asked, const std::string& fileName,
                          UnitSystem units)
{
    Pace pace;
    if (asked.presses) {
        tapward::study::PressesOptions options;
        options.progress = [&pace](double share) { pace.tell(share); };
        const auto found = tapward::study::studyPresses(drawing, options);
        if (!found) {
            return tl::unexpected(found.error());
        }
        return asked.json ? report::pressesJson(drawing, *found, fileName)
                          : report::pressesText(drawing, *found, units);
    }
    if (asked.faults) {
        tapward::study::FaultsOptions options;
        options.pairs = asked.pairs;
        options.progress = [&pace](double share) { pace.tell(share); };
        const auto found = tapward::study::studyFaults(drawing, options);
        if (!found) {
            return tl::unexpected(found.error());
        }
        return asked.json ? report::faultsJson(drawing, *found, fileName) : report::faultsText(drawing, *found, units);
    }
    if (asked.stop) {
        tapward::study::StopOptions options;
        options.progress = [&pace](int done, int count) { pace.tell(count > 0 ? 1.0 * done / count : 0.0); };
        const auto found = tapward::study::suggestStop(drawing, options);
        if (!found) {
            return tl::unexpected(found.error());
        }
        return asked.json ? report::stopJson(drawing, *found, fileName) : report::stopText(drawing, *found, units);
    }
    if (asked.wiring) {
        const auto found = tapward::study::wiringStudy(drawing);
        if (!found) {
            return tl::unexpected(found.error());
        }
        const auto curves = tapward::study::loopCurves(drawing);
        const auto budget = tapward::study::headBudget(drawing);
        const auto* curvesOrNone = curves ? &*curves : nullptr;
        const auto* budgetOrNone = budget ? &*budget : nullptr;
        return asked.json ? report::wiringJson(drawing, *found, curvesOrNone, budgetOrNone, fileName)
                          : report::wiringText(drawing, *found, curvesOrNone, budgetOrNone, units);
    }
    return problem("No study was asked for.", "Say --presses, --faults, --stop or --wiring.");
}

}  // namespace tapward::app::batch
