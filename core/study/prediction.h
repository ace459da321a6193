// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <limits>
#include <map>
#include <optional>
#include <stop_token>
#include <string>
#include <vector>

#include "base/message.h"
#include "base/phase_times.h"
#include "base/result.h"
#include "document/drawing.h"

namespace tapward::study {

/// One answer. When it does not exist, `value` is empty and `reason` says why; never a 0 in its place.
struct Scalar {
    std::string id;           ///< "loop_flow"; stable, used in JSON
    Message label;            ///< "Loop flow", "Sensor at stop {0}"
    Quantity quantity = Quantity::None;
    std::optional<double> value;  ///< SI, °C
    Message reason;
    Message note;             ///< basis or caveat shown under it; may be empty
};

/// Something that happened.
struct Event {
    double t_s = 0;
    std::string id;           ///< "run_started", "burner_lit", "stop_volume", ... stable
    Message what;             ///< "Run stopped: {0} pumped"
    document::PartId part = document::kNoPart;
    enum class Weight { Info, Caution, Danger } weight = Weight::Info;
};

/// One recorded quantity over the case's time grid.
struct Series {
    std::string id;           ///< "loop_flow", "pumped_volume", "heater_inlet", "heater_outlet", "fire",
                              ///< "sensor.<tag>", "tap.<tag>", "tap_flow.<tag>", "supply_pressure"
    Message label;            ///< "Sensor {0}"
    Quantity quantity = Quantity::None;
    document::PartId part = document::kNoPart;
    std::vector<double> values;  ///< NaN where it does not exist (closed tap)
};

/// Temperatures and flows along the pipes, for colouring the drawing at a moment.
struct Snapshot {
    /// One per part that holds water along a line (pipes first of all).
    struct Track {
        document::PartId part = document::kNoPart;
        int points = 0;          ///< equally spaced in volume from ends[0] to ends[1]
        std::size_t offset = 0;  ///< into a moment's `celsius`
    };
    std::vector<Track> tracks;
    std::vector<double> time_s;
    std::vector<float> celsius;   ///< moment-major: [moment * stride + track.offset + point]
    std::vector<float> flow_m3s;  ///< [moment * tracks.size() + track], positive ends[0] -> ends[1]
    std::size_t stride = 0;       ///< points over all tracks
    bool empty() const { return time_s.empty(); }
    std::size_t momentAt(double t_s) const;  ///< index of the last moment at or before t_s
};

/// Where water is felt or let through, for "how hot does it get".
enum class HeatPlace {
    HeaterOutlet,
    HeaterInlet,
    Sensor,
    Join,       ///< where the loop leaves the hot line
    OutletHot,
    OutletCold,
    ColdEntry   ///< where the loop's water enters a line that cold outlets draw from
};

/// Hottest water at one place over a case. At an outlet: the water at the join its branch leaves from, that
/// is what it would give if it were opened then (and gives when it is open). Water standing in the branch
/// itself came through the join.
struct PlaceHeat {
    HeatPlace place = HeatPlace::HeaterOutlet;
    document::PartId part = document::kNoPart;  ///< heater, sensor, tee of the join or outlet
    double hottest_C = 0;
    double at_s = 0;
};

struct CaseResult {
    std::string name;
    document::View view = document::View::After;
    double duration_s = 0;
    double target_C = 0;
    document::PartId heater = document::kNoPart, targetPart = document::kNoPart;
    std::vector<Scalar> scalars;
    std::vector<Event> events;
    std::vector<double> time_s;
    std::vector<Series> series;
    std::vector<PlaceHeat> hottest;  ///< every place that exists, in a fixed order
    Snapshot snapshot;            ///< empty unless asked for
    std::optional<Problem> noAnswer;  ///< why the case could not be run at all; then the rest is empty
    // cost, for the benchmark and `--json`
    int cells = 0, steps = 0, solves = 0;

    const Scalar* scalar(std::string_view id) const;
    const Series* find(std::string_view id) const;
};

/// Hottest water at one outlet over a case, for the cautions.
struct OutletHeat {
    document::PartId part;
    double hottest_C;
};

/// Where the pump's head goes, element by element around the loop at its steady flow.
struct HeadItem {
    document::PartId part;
    double loss_Pa;
    double share;   ///< of the sum
};

/// Battery voltages the loop is asked at beside the drawn one: the ignition boards' floor and charging. Common
/// practice, no published source.
inline constexpr double kLowVolts = 10.5, kChargingVolts = 14.4;

/// What the loop does at rest temperature with its pumps on and valve open, apart from any case.
struct LoopAnswer {
    bool exists = false;          ///< a loop with a circulator is drawn
    Message reason;               ///< why not, or what blocks it
    document::PartId blockedBy = document::kNoPart;
    bool headUsedUp = false;  ///< blockedBy is a check valve that takes more to open than the pumps give
    std::vector<document::PartId> circulators;
    document::PartId heater = document::kNoPart, tap = document::kNoPart, returnTee = document::kNoPart;
    /// The join by which the loop's water enters a line that cold outlets draw from; none with a return of its own.
    document::PartId coldEntry = document::kNoPart;
    std::optional<double> flow_m3s, activationFlow_m3s, holdFlow_m3s, flowMargin;  ///< `flow_m3s` is the heater's
    /// What the pumps move and what the control's flow sensor sees; the heater's flow again where no water goes past it.
    std::optional<double> pumpFlow_m3s, meterFlow_m3s;
    document::PartId bypass = document::kNoPart;  ///< lets pumped water back into the hot line past the heater
    std::optional<double> bypassFlow_m3s;
    std::optional<double> flowLowVolts_m3s;  ///< at kLowVolts
    std::optional<double> flowHighVolts_m3s;  ///< at kChargingVolts
    /// At the heater's board while the pumps run on the drawn battery, and the least it works with; none where no wire is
    /// drawn to it or it needs none.
    std::optional<double> heaterVolts, heaterLeastVolts;
    double coldStart_C = 0;
    std::optional<double> purgeVolume_m3;  ///< water heater outlet -> tap along the loop's way
    std::vector<document::PartId> hotPath, returnPath;
    std::vector<HeadItem> headBudget;  ///< biggest first
};

struct Prediction {
    LoopAnswer loop;
    std::vector<CaseResult> cases;  ///< as in the drawing (or the one asked for)
    const CaseResult* find(std::string_view name) const;
};

struct Options {
    std::string onlyCase;  ///< empty = all
    bool snapshots = false;
    std::string snapshotCase;  ///< with snapshots: only this case keeps them; empty = every case
    double snapshotEvery_s = 1.0;
    double step_s = 0.5;  ///< longest step while water moves
    double standingStep_s = 5;  ///< ... while it stands; three times that once it has stood for a minute
    double cell_m = 0.15;  ///< a preheat run is 0.01 K on average and 0.1 K at most from its converged answer; a sharp
        ///< front that comes to a tap just opened is off by more for a second (bench/case_bench)
    int wallLayers = 4;
    double solveEvery_s = 1;  ///< between events flows are found again no sooner, ...
    double flowTolerance = 5e-4;  ///< ... and not before the water's warmth should have changed one by this share
    double recordEvery_s = 1;  ///< of the curves, while water moves; five times that while it stands
    bool curves = true;  ///< false: no series, events and scalars only (searches)
    bool loopJoin = false;  ///< also record "loop_join", the water where the loop leaves the hot line
    PhaseTimes* phases = nullptr;  ///< adds up where the time goes; for one case at a time
    std::stop_token stop = {};  ///< checked every few steps; a stopped prediction is a Problem
};

/// The one question: everything for this drawing. Same drawing + same options = same bytes out.
/// @return a Problem only when stopped or when the drawing has nothing to predict (no heater, no cases);
/// cases that cannot run say so in `noAnswer`.
Result<Prediction> predict(const document::Drawing& drawing, const Options& options = {});

/// Only the steady loop answer (fast: under a millisecond), for while a part is being dragged.
LoopAnswer loopAnswer(const document::Drawing& drawing);

}  // namespace tapward::study
