// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <vector>

#include "study/actors.h"
#include "study/loop.h"
#include "study/prediction.h"
#include "study/record_bounds.h"
#include "study/trial.h"

namespace tapward::study {

/// One case in time. Split over simulate.cpp (time), actor*.cpp (who does what), press_plan.cpp (presses by rule) and
/// record*.cpp (what it shows).
inline constexpr double kStill_m3s = 2e-7;  ///< below it water counts as standing: long steps will do

class Simulation {
public:
    Simulation(const document::Drawing& drawing, const Plant& plant, const LoopMap& loop, const document::Case& script,
               const Options& options, const Trial* trial = nullptr);
    Result<CaseResult> run();
    /// The script with the plan's presses and draws where they came. @pre run() was called
    document::Case asRun() const;
    int pressesMade() const { return m_plan.made; }

private:
    // simulate.cpp
    void solve();
    bool flowsAreOld() const;
    double drift_K() const;
    void learnFlows(bool warmed);
    void followWater(double dt_s);
    void readFlows();
    void refreshWater();
    void look();
    double nextStep() const;
    void advance(double dt_s);
    void startStep(double dt_s);
    void endStep(double dt_s);
    bool isMoving() const { return m_moving; }

    // actors.cpp, actor_*.cpp
    void makeActors();
    void applyAction(const document::Action& action);
    void applyFault(const document::Action& action, bool begins);
    void applySettings();
    void applySupply();
    void press(std::size_t controller);
    void moveActors(double dt_s);
    void readSensors(double dt_s);
    void lookAtHeaters();
    void runHeaters(double dt_s);
    void readHeaters();
    void tellTankless(const HeaterActor& heater, const heater::TanklessChange& change);
    void tellStorage(const StorageActor& heater, const heater::Storage::Change& change);
    void advanceControls(double dt_s);
    void advanceSupply(double dt_s);
    void switchDemandPump();
    control::RunInputs inputsOf(const ControlActor& controller) const;
    double volts() const;                      ///< at the battery's posts
    double voltsAt(const PlantPart& part) const;  ///< at a load of the wiring; the posts' for anything else
    void solveWiring();
    double flowOf(const PlantPart& part, int path = 0) const;  ///< in the path's own direction
    int sensorIndex(const std::string& partId) const;
    int controllerOf(const std::string& partId) const;
    const ControlChange* changeOf(document::PartId controller) const;
    double heaterWater(bool outlet) const;
    void watchLimit(ControlActor& actor);

    // press_plan.cpp
    void followPlan();
    double planDue_s() const;  ///< time of its next act; infinite when it waits for a run to end
    void planAct(document::ActionKind kind, document::PartId part, double opening, double hotShare);

    // record.cpp, record_*.cpp
    struct Leaving {
        double flow_m3s, celsius;  ///< mixed; not-a-number when nothing leaves
    };
    Leaving leaving(const OutletActor& outlet) const;
    void prepareRecord();
    void prepareSnapshots();
    void boundRecord();
    void record();
    void recordSoon();
    double recordEvery_s() const { return std::max(m_bounds.every_s, (m_moving ? 1 : 5) * m_options.recordEvery_s); }
    void addEvent(std::string id, Message what, document::PartId part, Event::Weight weight = Event::Weight::Info);
    void addEventAt(double t_s, std::string id, Message what, document::PartId part,
                    Event::Weight weight = Event::Weight::Info);
    void watchTargets(double dt_s);
    void runStarted(std::size_t controller);
    void runEnded(std::size_t controller, control::RunCause cause);
    void finish();
    void listHottest();
    double targetReading() const;
    void addScalar(std::string id, Message label, Quantity quantity, std::optional<double> value, Message reason,
                   Message note = {});

    const document::Drawing& m_drawing;
    const Plant& m_plant;
    const LoopMap& m_loop;
    const document::Case& m_case;
    const Options& m_options;
    const Trial* m_trial;

    network::Network m_network;
    thermal::Field m_field;
    std::vector<double> m_flows;        ///< of the step in hand
    // Between two solutions the flows follow the water as it warms.
    std::vector<double> m_solvedFlows;
    std::vector<double> m_flowSlope;    ///< m³/s per kelvin of drift
    std::vector<double> m_weight;       ///< of each chain in the drift: its tubes' share
    double m_driftAllowed_K = 0.5;
    double m_drift_K = 0, m_driftRate_K_s = 0, m_driftAt_s = 0;  ///< at the start of the last step
    std::vector<double> m_solvedMean_C;  ///< of each chain at the last solution
    std::vector<double> m_stretchMean_C;  ///< of the chain in hand
    double m_time = 0;
    double m_solvedAt = -1;
    double m_stillSince_s = 0;
    bool m_dirty = true;
    bool m_acted = false;  ///< something was set from outside since the machines last looked
    bool m_moving = false;
    bool m_failedToSettle = false;
    double m_massResidual = 0;
    Supply m_power;
    WiringNet m_wiring;
    bool m_wired = false;  ///< solved for the draws it has ...
    Supply m_wiredTo;      ///< ... and this supply
    bool m_powerCut = false;
    double m_lowVolts = kNan;
    document::ActionKind m_supply = document::ActionKind::UseCity;

    std::vector<OutletActor> m_outlets;
    std::vector<ValveActor> m_valves;
    std::vector<PumpActor> m_pumps;
    std::vector<SensorActor> m_sensors;
    std::vector<HeaterActor> m_heaters;
    std::vector<StorageActor> m_storages;
    std::vector<ControlActor> m_controls;
    std::vector<MixingActor> m_mixers;
    AccumulatorState m_accumulator;
    const PlantPart* m_demandPump = nullptr;
    bool m_demandPumpOn = false;
    double m_demandPumpShare = 1;     ///< fault
    bool m_demandPumpWelded = false;  ///< fault
    int m_demandPumpStarts = 0;
    std::vector<const document::Action*> m_actions;  ///< by time
    std::size_t m_nextAction = 0;

    struct PlanState {
        int controller = -1;
        int made = 0;               ///< presses accepted
        bool running = false;
        bool done = false;
        double nextTry_s = 0, pressed_s = 0, ended_s = 0;
        double drawUntil_s = -1;    ///< the draw between presses is open until then
        enum class Last { Waits, Open, Over } last = Last::Waits;
        double lastOpened_s = 0;
        std::vector<document::Action> actions;
    } m_plan;

    // record
    CaseResult m_result;
    struct Column {
        std::size_t series;
        double (*read)(const Simulation&, std::size_t);
        std::size_t index;
    };
    std::vector<Column> m_columns;
    RecordBounds m_bounds;
    double m_snapshotEvery_s = 1;
    double m_nextRecord = 0;
    double m_nextSnapshot = 0;
    struct TrackPlace {
        int run;
        double begin, end;  ///< volume fractions at the track's first and last end, in the part's direction
        bool forward;
    };
    std::vector<TrackPlace> m_tracks;
    double m_loopFlow = kNan;     ///< through the heater
    double m_countedFlow = kNan;  ///< of the pumps, where it is counted: they differ where water goes past the heater
    double m_pumped_m3 = 0;

    // what the case is about
    int m_targetSensor = -1;
    int m_targetOutlet = -1;
    double m_targetStart_C = kNan;
    double m_target_C = 0;
    struct RunLog {
        double start_s, startTotal_m3;
        double end_s = kNan, pumped_m3 = kNan, sensor_C = kNan, hottestOutlet_C = kNan, hottestSensor_C = kNan;
        double flowSum_m3 = 0, pumpedSum_m3 = 0, flowTime_s = 0;
        control::RunCause cause{};
    };
    std::vector<RunLog> m_runs;
    bool m_runningNow = false;
    double m_firstRise_m3 = kNan, m_targetAt_m3 = kNan, m_targetAt_s = kNan;
    double m_before_C = kNan;  ///< target reading at the start of the step
    double m_beforePumped_m3 = 0;
    double m_wait_s = kNan, m_wasted_m3 = kNan;
    double m_hottestTap_C = kNan, m_hottestJoin_C = kNan, m_hottestCold_C = kNan;
    double m_joinReady_C = -1e9, m_joinReady_s = 0;
    double m_coldEntry_C = -1e9, m_coldEntry_s = 0;
    int m_waitOutlet = -1;
};

}  // namespace tapward::study
