// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string_view>
#include <vector>

#include "study/presses.h"

namespace tapward::study {

/// Of each of these the hottest is told.
inline constexpr HeatPlace kHeatGroups[] = {HeatPlace::HeaterOutlet, HeatPlace::HeaterInlet, HeatPlace::OutletHot,
                                            HeatPlace::OutletCold};

/// One controller setting with a protection switched the other way.
struct ProtectionVariant {
    ProtectionEffect effect;
    std::vector<ControlChange> controls;
    std::optional<double> mixingSetpoint_C;
    bool adds = false;  ///< switches it on
};

/// @param wait_s  of a cool-down wait that is switched on
ProtectionVariant makeVariant(const Trials& trials, Protection protection, double wait_s);

/// Ids of the events by which this protection ends a run; none where it only refuses one.
std::vector<std::string_view> endsOf(Protection protection);

/// The script with every end of a run made by hand, at the very instant the control made it, for a control that
/// would not.
/// @param made  ids of the ends that are made by hand now
document::Case byHand(const TrialResult& result, const std::vector<std::string_view>& made);

/// Whether any place is hotter in `a` than in `b`.
bool hotter(const Hottest& a, const Hottest& b);

/// Where this result is hotter than the worst known of a place, it becomes the worst.
void raise(const document::Drawing& drawing, std::vector<WorstHeat>& worst, const TrialResult& result);

/// The scripts of the hottest of each group, each once.
std::vector<Trial> hottestScripts(const std::vector<WorstHeat>& worst);

}  // namespace tapward::study
