// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string>
#include <variant>
#include <vector>

#include "control/run_control.h"
#include "heater/storage.h"
#include "heater/tankless.h"
#include "network/law.h"
#include "thermal/run.h"

namespace tapward::parts {

/// What a fault does, in terms the simulation knows for every kind.
enum class FaultEffect {
    HoldOpening,      ///< valve or outlet stays at amount (0..1)
    SlowTravel,       ///< travel time times amount
    CheckStuckOpen,
    CheckStuckShut,
    CheckLeaks,       ///< backward leak = amount m³/(s Pa)
    DriveShare,       ///< pump turns at amount of its speed (0 dead)
    DriveAlwaysOn,    ///< pump or valve relay welded
    SensorOffset,     ///< amount K
    SensorFrozen,     ///< keeps its first reading (off the pipe: reads the bay)
    SensorFails,      ///< no reading at all
    FlowSensorDead,
    StopFails,        ///< the controller's main stop never trips
    LimitFails,       ///< the independent high limit never trips
    ButtonStuck,
    Clogged,          ///< resistance times amount
    GasFails,
    PowerCut,
    LowVoltage,       ///< amount V at the battery
    NotSimulated      ///< listed with its reason, not run
};

/// A path of water through a part, between two of its ports, its hub, or the outside.
struct Path {
    static constexpr int kHub = -1;      ///< the part's inner junction (tee, mixer)
    static constexpr int kOutside = -2;  ///< the open air / the supply
    int from;                            ///< port index, kHub or kOutside
    int to;
    std::vector<network::Law> laws;      ///< in series, in the direction from -> to
    thermal::Stretch body;               ///< volume_m3 may be 0
};

/// What an actor setting of a path means to the running case.
enum class Role {
    None,
    Outlet,         ///< fixture: paths in order hot, cold (or the only one); opened by draws
    HandValve,      ///< opened / shut by a case action
    MotorValve,
    Circulator,
    CheckValve,
    FlowSensor,
    TemperatureSensor,
    Tankless,
    StorageHeater,
    CitySupply,
    DemandPump,
    FreshTank,
    Accumulator,
    MixingValve,
    Controller,
    Button,
    Battery
};

struct OutletModel {
    double ratedFlow_m3s = 0;
    double ratedPressure_Pa = 0;
    double defaultHotShare = 1;   ///< 0 cold .. 1 hot, for mixers; 1 where only hot, 0 where only cold
    int hotPath = -1;             ///< index in paths, -1 none
    int coldPath = -1;
    bool drinking = false;
    bool shower = false;
};

struct MotorValveModel {
    double travel_s = 5;
    double restOpening = 0;
    enum class OnPowerLoss { Stays, Closes, Opens } onPowerLoss = OnPowerLoss::Closes;
    double minimumVolts = 9;
    double current_A = 0.1;       ///< while moving
    std::string controller;       ///< part id; empty = the only controller
};

struct CirculatorModel {
    double ratedVolts = 12;
    double minimumVolts = 8;      ///< does not start below
    double maximumVolts = 15;
    double current_A = 1;
    double spinUp_s = 0.5;
    double temperatureLimit_C = 60;
    double wireResistance_ohm = 0;  ///< out and back from battery to pump
    std::string controller;
};

struct SensorModel {
    double lag_s = 2;             ///< first-order lag, water to reading
    double offset_K = 0;
    bool clippedOn = false;
    bool measuresFlow = false;
    double lowCutOff_m3s = 0;     ///< flow sensor reads 0 below
    double gain = 1;              ///< flow sensor error factor
};

struct SupplyModel {
    double pressure_Pa = 0;       ///< static (city) ...
    double temperature_C = 15;
    // demand pump:
    double cutIn_Pa = 0, cutOut_Pa = 0;
    double openFlow_m3s = 0;      ///< flow at zero pressure
    double current_A = 7;
    double compliance_m3_Pa = 0;  ///< accumulator + tubing, volume per Pa near working pressure
    double volume_m3 = 0;         ///< tank or accumulator volume
    double precharge_Pa = 0;
};

struct MixingValveModel {
    double setpoint_C = 43;
    int hotPath = -1, coldPath = -1;
};

struct BatteryModel {
    double volts = 12.6;
    double internal_ohm = 0.02;
    double capacity_C = 0;
};

/// Which sensors and actors a controller uses; part ids, empty = none / the only one.
struct ControllerModel {
    control::RunSpec spec;
    std::string stopSensor, limitSensor, inletSensor, flowSensor, button;
};

/// What a part gives the model of the coach.
struct PartModel {
    std::vector<Path> paths;
    Role role = Role::None;
    std::optional<OutletModel> outlet;
    std::optional<MotorValveModel> motorValve;
    std::optional<CirculatorModel> circulator;
    std::optional<SensorModel> sensor;
    std::optional<heater::TanklessSpec> tankless;
    std::optional<heater::StorageSpec> storage;
    std::optional<SupplyModel> supply;
    std::optional<MixingValveModel> mixing;
    std::optional<ControllerModel> controller;
    std::optional<BatteryModel> battery;
    std::string buttonFor;        ///< Button: controller part id, empty = the only one
    double startingOpening = 1;   ///< hand valves
    double roleTemperatureLimit_C = 0;  ///< rating of the part's wetted parts, 0 = unknown
    double rolePressureLimit_Pa = 0;
    std::optional<double> regulatedPressure_Pa;  ///< an in-line regulator clips the city supply behind it
};

}  // namespace tapward::parts
