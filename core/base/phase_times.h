// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <chrono>

namespace tapward {

/// Where the time of a case goes, s; for benchmarks. Nobody looks at a clock unless asked to.
struct PhaseTimes {
    double solve = 0;      ///< flows, with the water's properties
    double exchange = 0;   ///< water, wall and bay
    double advection = 0;  ///< water on its way, dispersion and mixing
    double machines = 0;   ///< heaters, controls, valves, pumps, sensors, and the choice of a step
    double record = 0;     ///< curves, events and answers
};

/// Adds the time it lives to one phase; does nothing without phases.
class PhaseTimer {
public:
    PhaseTimer(PhaseTimes* phases, double PhaseTimes::* phase) : m_phases(phases), m_phase(phase)
    {
        if (m_phases)
            m_start = Clock::now();
    }
    ~PhaseTimer()
    {
        if (m_phases)
            m_phases->*m_phase += std::chrono::duration<double>(Clock::now() - m_start).count();
    }
    PhaseTimer(const PhaseTimer&) = delete;
    PhaseTimer& operator=(const PhaseTimer&) = delete;

private:
    using Clock = std::chrono::steady_clock;
    PhaseTimes* m_phases;
    double PhaseTimes::* m_phase;
    Clock::time_point m_start{};
};

}  // namespace tapward
