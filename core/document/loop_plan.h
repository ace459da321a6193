// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "document/proposal.h"
#include "document/sheet.h"

// What a proposed loop is made of and how it is set out; private to this room.
namespace tapward::document {

// Roles others than the plan speak of.
inline constexpr std::string_view kHotTee = "hot_tee", kColdTee = "cold_tee", kInletTee = "inlet_tee",
                                  kStopSensor = "stop_sensor", kLimitSensor = "limit_sensor",
                                  kInletSensor = "inlet_sensor", kFlowSensor = "flow_sensor", kValve = "loop_valve",
                                  kController = "controller", kButton = "push_button", kFirstRun = "to_stop_sensor";

/// A symbol of the block, its place from the block's origin with the water entering from the left.
struct PlanItem {
    std::string role;
    std::string_view kind;
    Point at;
    int turn = 0;
    bool flipped = false;
    parts::Entries entries = {};
};
/// A pipe between two of them. An empty role at its start or end is the outside: where the loop begins or ends.
struct PlanRun {
    std::string role;
    std::string from, fromPort, to, toPort;
    double length_m = 0.15;
    int elbows = 0, couplings = 1;
    double extraK = 0;  ///< on the velocity head in the tube
};
struct Plan {
    std::vector<PlanItem> items;
    std::vector<PlanRun> runs;
    Box box;       ///< room it takes, labels included, from its origin
    Point in, out; ///< where the water comes and goes

    /// Left and right changed over.
    Plan mirrored() const;
};

/// What is known of the coach when the plan is made.
struct Survey {
    double hotLength_m = 0;   ///< tube from the heater to where the loop begins
    double hotVolume_m3 = 0;  ///< water in it
    bool sensorInBlock = false;  ///< no room for the inlet sensor at the heater: it stands at the end of the block
    bool inletSensed = true;
};
Plan planFor(Variant variant, const Survey& survey);

/// The role of the run that leads back, by return.
std::string_view returnRole(ReturnWay way);

}  // namespace tapward::document
