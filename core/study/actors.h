// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <algorithm>
#include <cmath>
#include <limits>
#include <string>
#include <vector>

#include "control/run_control.h"
#include "heater/storage.h"
#include "heater/tankless.h"
#include "study/plant.h"

namespace tapward::study {

inline constexpr double kRecordEvery_s = 1;  ///< of the series, while water moves
/// Steps while a valve travels and while a pump spins up; they shrink with the others.
inline double travelStep_s(double step_s) { return std::min(0.25, 0.5 * step_s); }
inline double spinStep_s(double step_s) { return std::min(0.1, 0.2 * step_s); }
inline constexpr double kNan = std::numeric_limits<double>::quiet_NaN();

// What moves in a case. Plain state; simulation.h drives it.

inline void keepHottest(double& hottest_C, double& at_s, double celsius, double now_s)
{
    if (celsius > hottest_C) {
        hottest_C = celsius;
        at_s = now_s;
    }
}

/// The hotter of two, either of which may be not-a-number.
inline double hotter(double a, double b) { return std::isnan(a) ? b : std::isnan(b) ? a : std::max(a, b); }

struct OutletActor {
    const PlantPart* part;
    double opening = 0, hotShare = 1;  ///< as asked
    double held = -1;                  ///< fault: opening it stays at
    double flow_m3s = 0, tap_C = kNan; ///< now
    double drawn_m3 = 0;               ///< since it was opened
    double opened_s = kNan;
    double hottest_C = kNan;
    int hotJoin = -1, coldJoin = -1;   ///< junctions its branches leave from
    double hotReady_C = -1e9, coldReady_C = -1e9;  ///< hottest there ...
    double hotReady_s = 0, coldReady_s = 0;        ///< ... and when
    bool isOpen() const { return (held >= 0 ? held : opening) > 1e-3; }
};

struct ValveActor {  ///< motorized
    const PlantPart* part;
    double position = 0;
    double goal = 0;      ///< it travels there
    bool commanded = false;
    double held = -1;
    double slowness = 1;
    bool moves = false;   ///< its motor draws
    bool welded = false;  ///< fault: driven open always
    int controller = -1;
};

struct PumpActor {  ///< circulator
    const PlantPart* part;
    double speed = 0, target = 0;
    double share = 1;     ///< fault: of its speed
    bool on = false;      ///< switched on
    bool welded = false;  ///< fault: runs always
    int controller = -1;
};

struct SensorActor {
    const PlantPart* part;
    int run = -1;
    double fraction = 0;   ///< of the run's volume from its `from` end
    bool forward = true;
    double reading_C = kNan;
    double water_C = kNan; ///< at it, at the end of the last step
    double offset_K = 0;   ///< fault, on top of the model's
    bool frozen = false, failed = false;
    double hottest_C = kNan;
    double hottest_s = 0;
};

struct HeaterActor {
    const PlantPart* part;
    int link = -1, stretch = -1;
    bool forward = true;
    int inletJunction = -1, outletJunction = -1;
    heater::Tankless control;
    bool gasFails = false;
    heater::TanklessInputs seen{};  ///< at the start of the step
    double inlet_C = kNan, outlet_C = kNan;  ///< at the cold and at the hot port, whatever the flow's direction
    double hottestInlet_C = -1e9, hottestOutlet_C = -1e9;
    double hottestInlet_s = 0, hottestOutlet_s = 0;
};

struct StorageActor {
    const PlantPart* part;
    int link = -1, stretch = -1;
    bool forward = true;
    int inletJunction = -1, outletJunction = -1;
    heater::Storage control;
    double tank_C = kNan;   ///< where its thermostat is, at the start of the step ...
    bool powered = false;   ///< ... as its board sees it
    double inlet_C = kNan, outlet_C = kNan;
    double hottestInlet_C = -1e9, hottestOutlet_C = -1e9;
    double hottestInlet_s = 0, hottestOutlet_s = 0;
    bool gasFails = false;
};

struct ControlActor {
    const PlantPart* part;
    control::RunSpec spec;
    control::RunControl control{spec};
    int stopSensor = -1, limitSensor = -1, inletSensor = -1, flowSensor = -1;
    control::RunInputs before{};
    bool stopFails = false, limitFails = false, buttonStuck = false, welded = false;
    bool lockoutAtHeater = false, limitAtHeater = false;  ///< read the heater's own water
    /// The independent high limit is a switch in the feed of everything this controller drives: while it is
    /// open nothing turns, whatever a relay does.
    bool limitOpen = false;
    // the run in hand and those before
    double startTotal_m3 = 0, start_s = 0;
    double pumpedSensed_m3 = 0;  ///< what its flow sensor has counted, all runs
};

struct AccumulatorState {
    static constexpr double kAtmosphere_Pa = 101325;
    static constexpr double kTubing_m3_Pa = 5e-11;  ///< hoses and tubing; from memory

    const PlantPart* part = nullptr;
    Place place;
    double pressure_Pa = 0;        ///< gauge
    double compliance_m3_Pa = 0;   ///< constant, for tubing; 0 = gas law
    double volume_m3 = 0, precharge_Pa = 0;
    double water_m3 = 0;

    /// Isothermal gas behind the bladder (Boyle); below the pre-charge only the tubing gives.
    double waterAt(double pascal) const
    {
        if (volume_m3 <= 0) {
            return compliance_m3_Pa * pascal;
        }
        if (pascal <= precharge_Pa) {
            return kTubing_m3_Pa * (pascal - precharge_Pa);
        }
        return volume_m3 * (1 - (precharge_Pa + kAtmosphere_Pa) / (pascal + kAtmosphere_Pa));
    }
    double pressureAt(double water) const
    {
        if (volume_m3 <= 0) {
            return water / compliance_m3_Pa;
        }
        if (water <= 0) {
            return precharge_Pa + water / kTubing_m3_Pa;
        }
        return (precharge_Pa + kAtmosphere_Pa) / (1 - std::min(water / volume_m3, 0.98)) - kAtmosphere_Pa;
    }
    double complianceNow() const
    {
        const double step = 1000;
        return std::max((waterAt(pressure_Pa + step) - waterAt(pressure_Pa)) / step, kTubing_m3_Pa);
    }
    bool present() const { return place.link >= 0; }
};

struct MixingActor {
    const PlantPart* part;
    double hotShare = 0.5;
};

}  // namespace tapward::study
