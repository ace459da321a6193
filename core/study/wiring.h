// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <stop_token>
#include <vector>

#include "study/prediction.h"
#include "study/wiring_net.h"

namespace tapward::study {

struct WiringOptions {
    int pressesPerDay = 6;       ///< for the daily energy; common practice, no published source
    std::stop_token stop = {};
};

/// One consumer while a run is on, on the drawing's own battery.
struct LoadAnswer {
    document::PartId part = document::kNoPart;
    Load::Kind kind = Load::Kind::Circulator;
    double volts = 0;               ///< at its terminals, cool wire: what it works on
    double current_A = 0;
    bool works = false;             ///< volts at or above its least
    double startVolts = 0;          ///< with every pump's inrush at once
    bool starts = false;            ///< startVolts at or above its least
    double lowVolts = 0;            ///< with the battery at 10.5 V
    bool worksLow = false;
    int gauge = 14;
    double length_m = 0;            ///< 0 = not known: then drop and gauges below say nothing
    double warmDrop_V = 0;          ///< own and shared wire out and back, 75 °C stranded copper, rated current
    double warmDropShare = 0;       ///< of 12 V
    std::optional<int> gaugeFor3Percent, gaugeFor10Percent;  ///< ABYC E-11 rule; nothing: thicker than AWG 2
    std::optional<int> gaugeForHeat;                         ///< nothing: thicker than AWG 10
    double perPress_J = 0, perPress_C = 0;
};

/// A fuse and what hangs on it.
struct BranchAnswer {
    document::PartId fuse = document::kNoPart;  ///< kNoPart: loads without a fuse drawn
    std::vector<document::PartId> loads;
    double rating_A = 0;
    double steady_A = 0;          ///< of its loads at their rated current, all on
    double other_A = 0;
    double inrush_A = 0;          ///< all pumps starting at once
    int thinnestGauge = 14;       ///< behind it, its loads' wires included
    std::optional<double> wireLimit_A;      ///< largest fuse for that wire; nothing: look it up
    bool fuseAboveWire = false;
    bool fuseBelowLoad = false;   ///< rating under 1.25 times what it carries
    double spare_A = 0;           ///< what the fuse (/1.25) and the socket leave; below zero: exceeded
    bool socketExceeded = false;
};

/// The branch with this index; nothing needs to be solved for it.
BranchAnswer branchAnswer(const WiringNet& wiring, int index);

/// The loop at one battery voltage, read at the posts.
struct VoltageAnswer {
    double battery_V = 0;
    std::vector<double> pump_V;                ///< per circulator, in id order
    std::optional<double> flow_m3s, margin;    ///< margin: over activation
    bool heaterWorks = true;                   ///< its board has volts enough
};

/// The 12 V side of the coach as it will be.
struct WiringStudy {
    double battery_V = 0, internal_ohm = 0, posts_V = 0, total_A = 0;
    std::vector<LoadAnswer> loads;             ///< in id order
    std::vector<BranchAnswer> branches;
    std::vector<VoltageAnswer> voltages;       ///< 10.5, 12.0, 13.2, 14.4 V
    double press_s = 0;                        ///< length of the run the energy is counted over
    Message pressNote;                         ///< where it comes from
    double perPress_J = 0, perPress_C = 0;     ///< taken from the battery
    int pressesPerDay = 0;
    double perDay_J = 0, perDay_C = 0;         ///< with what is drawn at rest
    double restPerDay_C = 0;
    std::optional<double> capacityShare;       ///< of the battery, a day
    std::vector<Message> cautions;             ///< what to see to, most serious first
};

/// Limits are yardsticks: the code in force for the coach (NEC 551/552, NFPA 1192, ANSI/RVIA LV) and the
/// makers' instructions govern; ABYC E-11 is a marine standard.
/// @return a Problem when the drawing's values make no model or the study was stopped.
Result<WiringStudy> wiringStudy(const document::Drawing& drawing, const WiringOptions& options = {});

}  // namespace tapward::study
