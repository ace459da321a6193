// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "study/stop_weigh.h"

/// Presses made up by hand: everything rises in a straight line from the press to the end of the run.
namespace tapward::test {

struct Straight {
    double end_s = 100;
    double pumped_m3 = 4e-3, sensed_m3 = 4e-3;  ///< at the end, from nothing
    double reading_C = 60, tap_C = 60, inlet_C = 20, outlet_C = 20;  ///< at the end, from 20 °C
    bool lit = true;
};

inline study::StopRun run(const Straight& end)
{
    study::StopRun run;
    run.lit = end.lit;
    run.time_s = {0, end.end_s};
    run.pumped_m3 = {0, end.pumped_m3};
    run.sensed_m3 = {0, end.sensed_m3};
    run.reading_C = {20, end.reading_C};
    run.tap_C = run.tapMost_C = {20, end.tap_C};
    run.enteringMost_C = {20, end.inlet_C};
    run.outletMost_C = {20, end.outlet_C};
    return run;
}

/// Target 40 °C, the tap at most 48.9 °C, the inlet at most 40 °C, nothing known of pumps and heater.
inline study::StopQuestion question()
{
    study::StopQuestion question;
    question.script.start_C = 20;
    question.target_C = 40;
    question.limits = {48.9, 40};
    question.hasFlowSensor = question.hasStopSensor = true;
    return question;
}

}  // namespace tapward::test
