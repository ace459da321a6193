// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <stop_token>
#include <string_view>
#include <vector>

#include "study/trials.h"

namespace tapward::study {

inline constexpr double kOutletLimit_C = 48.888888888888886;  ///< 120 °F, scald guidance (ASSE 1070; US CPSC)
inline constexpr double kColdEntryLimit_C = 40.0;  ///< 104 °F entering the cold line (IECC C404, demand recirculation)

/// What is not known beforehand about the day of use.
struct DayRange {
    double least;
    double most;
    std::string_view basis;
};

struct PressesOptions {
    int mostPresses = 6;  ///< 1..12
    std::vector<double> gaps_s{0, 30, 120, 600};  ///< between a run's end and the next press; refined from there
    DayRange volts{kLowVolts, kChargingVolts,
                   "ignition boards' floor to charging voltage: common practice, no published source"};
    DayRange supply_C{4.4, 29.4, "40 to 85 °F: common practice, no published source"};
    DayRange ambient_C{4.4, 43.3, "40 to 110 °F in the bay: common practice, no published source"};
    double outletLimit_C = kOutletLimit_C;
    double coldEntryLimit_C = kColdEntryLimit_C;  ///< where the loop returns by the cold line
    double longestWait_s = 3600;  ///< waits beyond it count as none
    bool draws = true;  ///< search over draws between presses and open the outlets at the end
    bool safeWait = true;  ///< answer the cool-down wait
    bool protections = true;  ///< switch each protection the other way
    Options resolution = {};  ///< of what is reported; the search itself is coarser
    unsigned hands = 0;  ///< threads, 0 = all cores
    std::stop_token stop = {};
    Progress progress = {};
};

/// The hottest the control allows at one place.
struct WorstHeat {
    HeatPlace place = HeatPlace::HeaterOutlet;
    document::PartId part = document::kNoPart;
    double hottest_C = 0;
    double at_s = 0;  ///< in `script`
    int presses = 0;  ///< started runs it takes
    document::Case script;  ///< opens as a case of the drawing and shows exactly hottest_C
};

struct SafeWait {
    /// Shortest wait from a run's end to the next press after which repeated presses keep the limit, within
    /// 10 s; empty when none up to the longest does, with the reason.
    std::optional<double> outlets_s;
    Message outletsReason;
    /// Where the loop returns by a line of its own, 0, and the reason says so.
    std::optional<double> coldEntry_s;
    Message coldEntryReason;
    /// Both limits kept.
    std::optional<double> both_s;
    /// After this wait a press gets no hotter than the first one (within 1 K): what a wait can do at all.
    std::optional<double> asTheFirst_s;
    double firstOutlets_C = 0;  ///< hottest hot outlet after one press alone, same day
    /// Hottest water entering the cold line in one press alone; not a number where the loop returns by its own line.
    double firstColdEntry_C = 0;
};

enum class Protection { TemperatureStop, HighLimit, InletLockout, WaitTimer, LongestRun, RefuseWhenWarm, MixingValve };
std::string_view id(Protection protection);  ///< "high_limit"; stable, used in JSON
Text title(Protection protection);  ///< "Independent high limit"

/// What people meet: the hottest of each group of places; empty where there is no such place.
struct Hottest {
    std::optional<double> heaterOutlet_C, heaterInlet_C, outlets_C, coldOutlets_C;
};

/// One protection switched the other way, everything else as drawn.
struct ProtectionEffect {
    Protection protection{};
    bool counted = false;  ///< switched on in the drawing and able to act
    bool tried = false;  ///< `other` holds what the opposite gives
    Message note;  ///< what was tried ("off", "on at {0}, ...") or why it could not be
    double tried_s = 0;  ///< the time that was tried, of a protection that is one; else 0
    Hottest other;
};

struct PressesStudy {
    std::vector<WorstHeat> worst;  ///< hottest first
    Hottest asDrawn;
    std::optional<SafeWait> wait;  ///< on the worst days of the ranges
    std::optional<SafeWait> waitAsDrawn;  ///< on the day of the drawing's first case with the loop
    std::vector<ProtectionEffect> protections;
    int cases = 0;  ///< simulated, for the benchmark
    const WorstHeat* find(HeatPlace place, document::PartId part = document::kNoPart) const;
};

/// Searches presses, gaps, draws, supply, ambient and voltage for the hottest water at every place: a grid,
/// then moves around the best of it; then every outlet is really opened after and in the worst run. A run
/// that nothing ends is stopped by hand after ten minutes. Same drawing + same options = same answer.
///
/// Law: switching a protection of the run control on never raises an answer, within 0.05 K. Each of them only ends a
/// run or refuses one, which somebody at the button could do at the same instants; the answer without it has also run
/// every winning script of the answer with it, its ends made by hand. The mixing valve is no such protection: it
/// changes the flow through the heater, which no hand does, so nothing is promised of it and its effect is told as
/// it comes.
/// @return a Problem when there is no controller to press, no loop, or when stopped.
Result<PressesStudy> studyPresses(const document::Drawing& drawing, const PressesOptions& options = {});

/// Runs that were started up to then; presses that stop a run are none of these.
int runsStarted(const CaseResult& result, double until_s);

/// Whether people touch water there.
bool isOutlet(HeatPlace place);

}  // namespace tapward::study
