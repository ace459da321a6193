// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <cmath>

#include <fmt/format.h>

#include "study/simulation.h"

namespace tapward::study {
namespace {

using document::PartId;

constexpr double kRecordEvery_s = 1;
constexpr double kFirstRise_K = 1;

std::optional<double> known(double value) { return std::isfinite(value) ? std::optional(value) : std::nullopt; }

double hotter(double a, double b) { return std::isnan(a) ? b : std::isnan(b) ? a : std::max(a, b); }

const char* stopText(control::RunCause cause)
{
    using enum control::RunCause;
    switch (cause) {
    case VolumeReached:
        return "Run stopped by volume after {0}.";
    case TimeReached:
        return "Run stopped by time after {0}.";
    case TemperatureReached:
        return "Run stopped by temperature after {0}.";
    case HighLimit:
        return "Run ended by the high limit after {0}.";
    case InletTooWarm:
        return "Run ended after {0}: water to the heater is too warm.";
    case LongestRun:
        return "Run ended after {0}: longest run reached.";
    case NoFlow:
        return "Run ended after {0}: no flow seen.";
    case ButtonPressedAgain:
        return "Run stopped at the button after {0}.";
    case PowerLost:
        return "Run ended after {0}: power lost.";
    default:
        return "Run ended after {0}.";
    }
}

const char* stopId(control::RunCause cause)
{
    using enum control::RunCause;
    switch (cause) {
    case VolumeReached:
        return "stop_volume";
    case TimeReached:
        return "stop_time";
    case TemperatureReached:
        return "stop_temperature";
    case HighLimit:
        return "stop_high_limit";
    case InletTooWarm:
        return "stop_inlet_lockout";
    case LongestRun:
        return "stop_longest_run";
    case NoFlow:
        return "stop_no_flow";
    case ButtonPressedAgain:
        return "stop_button";
    default:
        return "stop_power_lost";
    }
}

}  // namespace

void Simulation::prepareRecord()
{
    m_result.name = m_case.name;
    m_result.view = m_case.view;
    m_result.duration_s = m_case.duration_s;
    m_result.target_C = m_target_C = m_case.target_C;
    m_result.cells = m_field.cellCount();
    if (!m_heaters.empty()) {
        m_result.heater = m_heaters[0].part->id;
    } else if (!m_storages.empty()) {
        m_result.heater = m_storages[0].part->id;
    }

    // What the case is about: the part it names, else the controller's stop sensor, else the first sensor.
    const auto sensorOf = [&](PartId id) {
        for (std::size_t s = 0; s < m_sensors.size(); ++s) {
            if (m_sensors[s].part->id == id && !m_sensors[s].part->model.sensor->measuresFlow) {
                return static_cast<int>(s);
            }
        }
        return -1;
    };
    m_targetSensor = sensorOf(m_case.targetPart);
    for (std::size_t o = 0; o < m_outlets.size(); ++o) {
        if (m_outlets[o].part->id == m_case.targetPart) {
            m_targetOutlet = static_cast<int>(o);
        }
    }
    for (std::size_t c = 0; c < m_controls.size() && m_targetSensor < 0; ++c) {
        m_targetSensor = m_controls[c].stopSensor;
    }
    for (std::size_t s = 0; s < m_sensors.size() && m_targetSensor < 0; ++s) {
        m_targetSensor = sensorOf(m_sensors[s].part->id);
    }
    m_waitOutlet = m_targetOutlet;
    m_result.targetPart = m_case.targetPart != document::kNoPart ? m_case.targetPart
                          : m_targetSensor >= 0                  ? m_sensors[m_targetSensor].part->id
                                                                 : document::kNoPart;
    m_targetStart_C = targetReading();

    if (!m_options.curves) {
        return;
    }
    const auto column = [&](std::string id, std::string label, Quantity quantity, PartId part,
                            double (*read)(const Simulation&, std::size_t), std::size_t index) {
        m_columns.push_back({m_result.series.size(), read, index});
        m_result.series.push_back({std::move(id), std::move(label), quantity, part, {}});
    };
    if (m_loop.flowLink >= 0) {
        column(
            "loop_flow", "Loop flow", Quantity::Flow, document::kNoPart,
            [](const Simulation& s, std::size_t) { return s.m_loopFlow; }, 0);
        column(
            "pumped_volume", "Pumped volume", Quantity::Volume, document::kNoPart,
            [](const Simulation& s, std::size_t) { return s.m_pumped_m3; }, 0);
    }
    if (m_options.loopJoin && m_loop.tapJunction >= 0) {
        column(
            "loop_join", "Where the loop leaves the hot line", Quantity::Temperature, document::kNoPart,
            [](const Simulation& s, std::size_t) { return s.m_field.junctionTemperature(s.m_loop.tapJunction); }, 0);
    }
    for (std::size_t h = 0; h < m_heaters.size(); ++h) {
        const std::string suffix = h == 0 ? "" : "." + m_heaters[h].part->part->tag;
        const PartId id = m_heaters[h].part->id;
        column(
            "heater_inlet" + suffix, "Heater inlet", Quantity::Temperature, id,
            [](const Simulation& s, std::size_t i) { return s.m_heaters[i].inlet_C; }, h);
        column(
            "heater_outlet" + suffix, "Heater outlet", Quantity::Temperature, id,
            [](const Simulation& s, std::size_t i) { return s.m_heaters[i].outlet_C; }, h);
        column(
            "fire" + suffix, "Burner fire", Quantity::Percent, id,
            [](const Simulation& s, std::size_t i) { return s.m_heaters[i].control.fireShare(); }, h);
    }
    for (std::size_t h = 0; h < m_storages.size(); ++h) {
        const std::string suffix = h == 0 && m_heaters.empty() ? "" : "." + m_storages[h].part->part->tag;
        const PartId id = m_storages[h].part->id;
        column(
            "heater_inlet" + suffix, "Heater inlet", Quantity::Temperature, id,
            [](const Simulation& s, std::size_t i) { return s.m_storages[i].inlet_C; }, h);
        column(
            "heater_outlet" + suffix, "Heater outlet", Quantity::Temperature, id,
            [](const Simulation& s, std::size_t i) { return s.m_storages[i].outlet_C; }, h);
        column(
            "fire" + suffix, "Burner fire", Quantity::Percent, id,
            [](const Simulation& s, std::size_t i) {
                return s.m_storages[i].control.deliveredPower_W() > 0 ? 1.0 : 0.0;
            },
            h);
    }
    for (std::size_t s = 0; s < m_sensors.size(); ++s) {
        const document::Part& part = *m_sensors[s].part->part;
        if (!m_sensors[s].part->model.sensor->measuresFlow) {
            column(
                "sensor." + part.tag, "Sensor " + part.tag, Quantity::Temperature, part.id,
                [](const Simulation& sim, std::size_t i) {
                    return sim.m_sensors[i].failed ? kNan : sim.m_sensors[i].reading_C;
                },
                s);
        }
    }
    // Only outlets that this case opens (or breaks) have curves; a coach has many that stay shut.
    for (std::size_t o = 0; o < m_outlets.size(); ++o) {
        const document::Part& part = *m_outlets[o].part->part;
        const bool used = std::any_of(m_case.actions.begin(), m_case.actions.end(),
                                      [&](const document::Action& action) { return action.part == part.id; });
        if (used) {
            column(
                "tap." + part.tag, "Tap " + part.tag, Quantity::Temperature, part.id,
                [](const Simulation& s, std::size_t i) { return s.m_outlets[i].tap_C; }, o);
            column(
                "tap_flow." + part.tag, "Flow " + part.tag, Quantity::Flow, part.id,
                [](const Simulation& s, std::size_t i) { return s.m_outlets[i].flow_m3s; }, o);
        }
    }
    if (m_accumulator.present()) {
        column(
            "supply_pressure", "Supply pressure", Quantity::Pressure, m_accumulator.part->id,
            [](const Simulation& s, std::size_t) { return s.m_accumulator.pressure_Pa; }, 0);
    }
    const auto expected = static_cast<std::size_t>(m_case.duration_s / kRecordEvery_s) + 64;
    m_result.time_s.reserve(expected);
    for (Series& series : m_result.series) {
        series.values.reserve(expected);
    }

    if (!m_options.snapshots) {
        return;
    }
    Snapshot& snapshot = m_result.snapshot;
    for (const PlantPart& part : m_plant.parts) {
        if (!document::kindOf(*part.part).isPipe || part.places[0].link < 0 || part.places[0].stretch < 0) {
            continue;
        }
        const Place& place = part.places[0];
        const double begin = m_field.stretchStart(place.link, place.stretch);
        const double end = m_field.stretchStart(place.link, place.stretch + 1);
        Snapshot::Track track;
        track.part = part.id;
        track.points = std::clamp(static_cast<int>(std::ceil(part.model.paths[0].body.length_m / 0.3)), 2, 40);
        track.offset = snapshot.stride;
        snapshot.stride += static_cast<std::size_t>(track.points);
        snapshot.tracks.push_back(track);
        m_tracks.push_back({place.link, place.reversed ? end : begin, place.reversed ? begin : end, !place.reversed});
    }
    const auto moments = static_cast<std::size_t>(m_case.duration_s / m_options.snapshotEvery_s) + 2;
    snapshot.time_s.reserve(moments);
    snapshot.celsius.reserve(moments * snapshot.stride);
    snapshot.flow_m3s.reserve(moments * snapshot.tracks.size());
}

double Simulation::targetReading() const
{
    if (m_targetOutlet >= 0) {
        return m_outlets[m_targetOutlet].tap_C;
    }
    if (m_targetSensor >= 0) {
        return m_sensors[m_targetSensor].reading_C;
    }
    return m_loop.tapJunction >= 0 ? m_field.junctionTemperature(m_loop.tapJunction) : kNan;
}

Simulation::Leaving Simulation::leaving(const OutletActor& outlet) const
{
    double heat = 0, flow = 0;
    for (const Place& place : outlet.part->places) {
        const double out = place.link < 0 ? 0 : place.reversed ? -m_flows[place.link] : m_flows[place.link];
        if (out > 0) {
            heat += out * m_field.outletTemperature(place.link);
            flow += out;
        }
    }
    return {flow, flow > 1e-8 ? heat / flow : kNan};
}

void Simulation::record()
{
    // Temperatures at open taps, as of the step just made.
    for (OutletActor& outlet : m_outlets) {
        outlet.tap_C = outlet.isOpen() ? leaving(outlet).celsius : kNan;
    }
    if (!m_options.curves) {
        return;
    }
    if (m_time < m_nextRecord - 1e-9 && m_time < m_case.duration_s - 1e-9) {
        return;
    }
    m_result.time_s.push_back(m_time);
    for (const Column& column : m_columns) {
        m_result.series[column.series].values.push_back(column.read(*this, column.index));
    }
    m_nextRecord = m_time + (m_moving ? kRecordEvery_s : 5 * kRecordEvery_s);

    if (m_options.snapshots && m_time >= m_nextSnapshot - 1e-9) {
        Snapshot& snapshot = m_result.snapshot;
        snapshot.time_s.push_back(m_time);
        for (std::size_t t = 0; t < m_tracks.size(); ++t) {
            const TrackPlace& place = m_tracks[t];
            const int points = snapshot.tracks[t].points;
            for (int i = 0; i < points; ++i) {
                const double share = (i + 0.5) / points;
                snapshot.celsius.push_back(
                    static_cast<float>(m_field.at(place.run, place.begin + share * (place.end - place.begin))));
            }
            const double flow = place.forward ? m_flows[place.run] : -m_flows[place.run];
            snapshot.flow_m3s.push_back(static_cast<float>(flow));
        }
        m_nextSnapshot = m_time + m_options.snapshotEvery_s;
    }
}

void Simulation::addEvent(std::string id, Message what, PartId part, Event::Weight weight)
{
    if (m_result.events.size() < 5000) {
        m_result.events.push_back({m_time, std::move(id), std::move(what), part, weight});
    }
}

void Simulation::runStarted(std::size_t controller)
{
    addEvent("run_started", Message("Button pressed: the run starts."), m_controls[controller].part->id);
    m_controls[controller].startTotal_m3 = m_pumped_m3;
    RunLog log{m_time, m_pumped_m3};
    m_runs.push_back(log);
    m_runningNow = true;
}

void Simulation::runEnded(std::size_t controller, control::RunCause cause)
{
    const double pumped = m_pumped_m3 - m_controls[controller].startTotal_m3;
    const bool protection = cause == control::RunCause::HighLimit || cause == control::RunCause::InletTooWarm;
    addEvent(stopId(cause), Message(stopText(cause), {Measure{pumped, Quantity::Volume}}),
             m_controls[controller].part->id, protection ? Event::Weight::Caution : Event::Weight::Info);
    if (!m_runs.empty() && m_runningNow) {
        RunLog& log = m_runs.back();
        log.end_s = m_time;
        log.pumped_m3 = pumped;
        log.sensor_C = m_targetSensor >= 0 ? m_sensors[m_targetSensor].reading_C : targetReading();
        log.cause = cause;
    }
    m_runningNow = false;
}

void Simulation::watchTargets(double dt_s)
{
    // Hottest water at open taps, at the join where the loop leaves the hot line, and in cold branches.
    for (OutletActor& outlet : m_outlets) {
        if (!outlet.isOpen() || outlet.flow_m3s <= 0) {
            continue;
        }
        const auto [flow, celsius] = leaving(outlet);
        if (std::isnan(celsius)) {
            continue;
        }
        const double before_C = outlet.tap_C;
        const double before_m3 = outlet.drawn_m3;
        outlet.tap_C = celsius;
        outlet.drawn_m3 += flow * dt_s;
        outlet.hottest_C = hotter(outlet.hottest_C, outlet.tap_C);
        m_hottestTap_C = hotter(m_hottestTap_C, outlet.tap_C);
        if (outlet.hotShare <= 0) {
            m_hottestCold_C = hotter(m_hottestCold_C, outlet.tap_C);
        }
        const bool waits = m_waitOutlet >= 0 && &outlet == &m_outlets[m_waitOutlet] && std::isnan(m_wait_s);
        if (waits && outlet.hotShare > 0 && outlet.tap_C >= m_target_C) {
            const double share = before_C < m_target_C ? (m_target_C - before_C) / (outlet.tap_C - before_C) : 1.0;
            m_wait_s = m_time - dt_s * (1 - share) - outlet.opened_s;
            m_wasted_m3 = before_m3 + share * flow * dt_s;
            addEvent("tap_warm",
                     Message("{0} is at {1} after {2} drawn.",
                             {outlet.part->part->tag, Measure{m_target_C, Quantity::Temperature},
                              Measure{m_wasted_m3, Quantity::Volume}}),
                     outlet.part->id);
        }
    }
    for (OutletActor& outlet : m_outlets) {
        if (outlet.hotJoin >= 0) {
            keepHottest(outlet.hotReady_C, outlet.hotReady_s, m_field.junctionTemperature(outlet.hotJoin), m_time);
        }
        if (outlet.coldJoin >= 0) {
            keepHottest(outlet.coldReady_C, outlet.coldReady_s, m_field.junctionTemperature(outlet.coldJoin), m_time);
        }
    }
    if (m_loop.tapJunction >= 0) {
        keepHottest(m_joinReady_C, m_joinReady_s, m_field.junctionTemperature(m_loop.tapJunction), m_time);
    }
    if (m_loop.tapJunction >= 0 && !m_runs.empty()) {
        m_hottestJoin_C = hotter(m_hottestJoin_C, m_field.junctionTemperature(m_loop.tapJunction));
    }
    if (m_runs.empty()) {
        return;
    }
    RunLog& log = m_runs.back();
    for (const HeaterActor& heater : m_heaters) {
        log.hottestOutlet_C = hotter(log.hottestOutlet_C, heater.outlet_C);
    }
    if (m_targetSensor >= 0) {
        log.hottestSensor_C = hotter(log.hottestSensor_C, m_sensors[m_targetSensor].reading_C);
    }
    if (m_runningNow && m_loopFlow > 0) {
        bool steady = true;
        for (const ValveActor& valve : m_valves) {
            steady = steady && (valve.controller < 0 || valve.position >= 1);
        }
        for (const PumpActor& pump : m_pumps) {
            steady = steady && (pump.controller < 0 || pump.speed == pump.target);
        }
        if (steady) {
            log.flowSum_m3 += m_loopFlow * dt_s;
            log.flowTime_s += dt_s;
        }
    }
    if (m_runs.size() > 1 || !m_runningNow || m_targetOutlet >= 0) {
        return;
    }
    // First run: when does the target place begin to warm, when is it warm.
    const double now_C = targetReading();
    const auto crossed = [&](double mark, double& volume, double* at_s) {
        if (!std::isnan(volume) || !(now_C >= mark)) {
            return false;
        }
        const double share = m_before_C < mark && now_C > m_before_C ? (mark - m_before_C) / (now_C - m_before_C) : 1.0;
        volume = m_beforePumped_m3 + share * (m_pumped_m3 - m_beforePumped_m3) - log.startTotal_m3;
        if (at_s) {
            *at_s = m_time - dt_s * (1 - share) - log.start_s;
        }
        return true;
    };
    if (crossed(m_targetStart_C + kFirstRise_K, m_firstRise_m3, nullptr)) {
        addEvent("first_rise",
                 Message("First rise at the sensor after {0} pumped.", {Measure{m_firstRise_m3, Quantity::Volume}}),
                 m_result.targetPart);
    }
    if (crossed(m_target_C, m_targetAt_m3, &m_targetAt_s)) {
        addEvent("target_reached",
                 Message("{0} reached after {1} pumped.",
                         {Measure{m_target_C, Quantity::Temperature}, Measure{m_targetAt_m3, Quantity::Volume}}),
                 m_result.targetPart);
    }
}

void Simulation::addScalar(std::string id, std::string label, Quantity quantity, std::optional<double> value,
                           Message reason, Message note)
{
    Scalar scalar;
    scalar.id = std::move(id);
    scalar.label = std::move(label);
    scalar.quantity = quantity;
    scalar.value = value;
    if (!value) {
        scalar.reason = std::move(reason);
    }
    scalar.note = std::move(note);
    m_result.scalars.push_back(std::move(scalar));
}

void Simulation::listHottest()
{
    const auto add = [&](HeatPlace place, PartId part, double celsius, double at_s) {
        if (celsius > -1e8) {
            m_result.hottest.push_back({place, part, celsius, at_s});
        }
    };
    for (const HeaterActor& heater : m_heaters) {
        add(HeatPlace::HeaterOutlet, heater.part->id, heater.hottestOutlet_C, heater.hottestOutlet_s);
        add(HeatPlace::HeaterInlet, heater.part->id, heater.hottestInlet_C, heater.hottestInlet_s);
    }
    for (const StorageActor& heater : m_storages) {
        add(HeatPlace::HeaterOutlet, heater.part->id, heater.hottestOutlet_C, heater.hottestOutlet_s);
        add(HeatPlace::HeaterInlet, heater.part->id, heater.hottestInlet_C, heater.hottestInlet_s);
    }
    for (const SensorActor& sensor : m_sensors) {
        if (!sensor.part->model.sensor->measuresFlow && std::isfinite(sensor.hottest_C)) {
            add(HeatPlace::Sensor, sensor.part->id, sensor.hottest_C, sensor.hottest_s);
        }
    }
    add(HeatPlace::Join, m_loop.answer.returnTee, m_joinReady_C, m_joinReady_s);
    for (const OutletActor& outlet : m_outlets) {
        add(HeatPlace::OutletHot, outlet.part->id, outlet.hotReady_C, outlet.hotReady_s);
        add(HeatPlace::OutletCold, outlet.part->id, outlet.coldReady_C, outlet.coldReady_s);
    }
}

void Simulation::finish()
{
    if (m_trial && m_trial->plan) {
        m_result.duration_s = m_time;
    }
    listHottest();
    if (!m_options.curves) {
        return;
    }
    const LoopAnswer& loop = m_loop.answer;
    const Message noLoop = loop.reason.empty() ? Message("There is no loop in this view of the drawing.") : loop.reason;
    const Message noRun("No run was started in this case.");
    const bool ran = !m_runs.empty();

    std::optional<double> flow = loop.flow_m3s;
    Message flowNote("Steady, at the case's starting temperature.");
    if (ran && m_runs.front().flowTime_s > 0) {
        flow = m_runs.front().flowSum_m3 / m_runs.front().flowTime_s;
        flowNote = Message("Mean over the first run with pumps at speed and the valve open.");
    }
    addScalar("loop_flow", "Loop flow", Quantity::Flow, flow, noLoop, flowNote);
    addScalar("activation_flow", "Activation flow", Quantity::Flow, loop.activationFlow_m3s,
              Message("No tankless heater is drawn; a storage heater needs no flow to heat."));
    std::optional<double> margin;
    if (flow && loop.activationFlow_m3s && *loop.activationFlow_m3s > 0) {
        margin = *flow / *loop.activationFlow_m3s;
    }
    addScalar("flow_margin", "Loop flow / activation flow", Quantity::None, margin,
              flow ? Message("No tankless heater is drawn; a storage heater needs no flow to heat.") : noLoop);

    // Purge volume along the way the water takes: with the loop, else with the tap open.
    std::optional<double> purge;
    Message purgeReason("No way leads from the heater to the place asked about.");
    const int heaterLink = !m_heaters.empty() ? m_heaters[0].link : !m_storages.empty() ? m_storages[0].link : -1;
    if (heaterLink >= 0) {
        const bool forward = !m_heaters.empty() ? m_heaters[0].forward : m_storages[0].forward;
        const Plant::Chain& chain = m_plant.chains[heaterLink];
        const int outlet = forward ? chain.to : chain.from;
        network::Network network = m_plant.makeNetwork();
        setAtRest(m_plant, network);
        int toLink = -1;
        double toFraction = 0;
        const int outletIndex = m_targetOutlet >= 0 ? m_targetOutlet : (!ran ? m_waitOutlet : -1);
        if (outletIndex >= 0) {
            const PlantPart& tap = *m_outlets[outletIndex].part;
            const int path = tap.model.outlet->hotPath;
            if (path >= 0) {
                const Place& place = tap.places[path];
                toLink = place.link;
                toFraction = place.reversed ? 0 : 1;
                const auto elements = network.elements(place.link);
                for (int e = 0; e < place.elementCount; ++e) {
                    if (auto* law = std::get_if<network::ResistanceLaw>(&elements[place.firstElement + e].law)) {
                        law->opening = 1;
                    }
                }
                for (const PlantPart& part : m_plant.parts) {
                    for (const Place& source : part.places) {
                        if (part.model.role == parts::Role::DemandPump && m_supply == document::ActionKind::UsePump
                            && source.link >= 0) {
                            const auto laws = network.elements(source.link);
                            for (int e = 0; e < source.elementCount; ++e) {
                                if (auto* law = std::get_if<network::PumpLaw>(&laws[source.firstElement + e].law)) {
                                    law->speed = 1;
                                }
                            }
                        }
                    }
                }
            } else {
                purgeReason = Message("This outlet has no hot side.");
            }
        } else if (m_targetSensor >= 0 && loop.exists) {
            runLoop(m_plant, network, batterySupply(m_plant));
            toLink = m_sensors[m_targetSensor].run;
            toFraction = m_sensors[m_targetSensor].fraction;
        }
        if (toLink >= 0) {
            const network::Solution& solution = network.solve();
            purge = volumeOnTheWay(m_plant, m_field, solution.flow_m3s, outlet, toLink, toFraction);
        }
    } else {
        purgeReason = Message("No water heater with both its pipes connected is drawn.");
    }
    addScalar("purge_volume", "Purge volume", Quantity::Volume, purge, purgeReason,
              Message("Water held between heater and tap on the hot way."));

    const Message notReached("The temperature was not reached in this case.");
    const bool sensed = m_targetOutlet < 0;
    addScalar("volume_to_first_rise", "Volume to first rise", Quantity::Volume, known(m_firstRise_m3),
              ran ? notReached : noRun);
    addScalar("volume_to_target", "Volume to target", Quantity::Volume, known(m_targetAt_m3),
              !ran     ? noRun
              : sensed ? notReached
                       : Message("This case asks about an open tap; see wait and wasted volume."));
    addScalar("time_to_target", "Time to target", Quantity::Time, known(m_targetAt_s),
              !ran     ? noRun
              : sensed ? notReached
                       : Message("This case asks about an open tap; see wait and wasted volume."));
    const Message notStopped("The run was not stopped within this case.");
    const RunLog* last = nullptr;
    for (const RunLog& log : m_runs) {
        last = std::isfinite(log.end_s) ? &log : last;
    }
    addScalar("sensor_at_stop", "Sensor at the last stop", Quantity::Temperature,
              last ? known(last->sensor_C) : std::nullopt, ran ? notStopped : noRun);
    addScalar("stop_volume", "Volume at the last stop", Quantity::Volume, last ? known(last->pumped_m3) : std::nullopt,
              ran ? notStopped : noRun);
    for (std::size_t r = 0; r < m_runs.size() && r < 12; ++r) {
        const auto n = std::to_string(r + 1);
        addScalar("sensor_at_stop_" + n, "Sensor at stop " + n, Quantity::Temperature, known(m_runs[r].sensor_C),
                  notStopped);
        addScalar("hottest_sensor_" + n, "Hottest at the sensor, run " + n, Quantity::Temperature,
                  known(m_runs[r].hottestSensor_C), Message("There is no temperature sensor."));
        addScalar("hottest_heater_outlet_" + n, "Hottest heater outlet, run " + n, Quantity::Temperature,
                  known(m_runs[r].hottestOutlet_C), Message("There is no tankless heater."));
    }

    double outletMax = kNan, inletMax = kNan;
    for (const HeaterActor& heater : m_heaters) {
        outletMax = hotter(outletMax, heater.hottestOutlet_C > -1e8 ? heater.hottestOutlet_C : kNan);
        inletMax = hotter(inletMax, heater.hottestInlet_C > -1e8 ? heater.hottestInlet_C : kNan);
    }
    for (const StorageActor& heater : m_storages) {
        outletMax = hotter(outletMax, heater.hottestOutlet_C > -1e8 ? heater.hottestOutlet_C : kNan);
        inletMax = hotter(inletMax, heater.hottestInlet_C > -1e8 ? heater.hottestInlet_C : kNan);
    }
    const Message noHeater("No water heater with both its pipes connected is drawn.");
    addScalar("hottest_heater_outlet", "Hottest heater outlet", Quantity::Temperature, known(outletMax), noHeater);
    addScalar("hottest_heater_inlet", "Hottest heater inlet", Quantity::Temperature, known(inletMax),
              std::isfinite(outletMax) ? Message("No water entered the heater in this case.") : noHeater);
    const bool drew = std::isfinite(m_hottestTap_C);
    addScalar(
        "hottest_tap", "Hottest water at a tap", Quantity::Temperature,
        known(drew ? hotter(m_hottestTap_C, m_hottestJoin_C) : m_hottestJoin_C),
        Message("No tap was opened and no run was started in this case."),
        drew ? Message()
             : Message(
                   "Water standing ready where the loop leaves the hot line; it reaches the tap when it is opened."));
    addScalar("hottest_cold_tap", "Hottest water at a cold tap", Quantity::Temperature, known(m_hottestCold_C),
              Message("No tap was opened on cold only in this case."));

    const Message noDraw("No tap was opened for hot water in this case.");
    Message stayedCold("The tap did not reach the target within this case.");
    // What the tubing gives when a tap opens without supply is less than a cup.
    constexpr double kCup_m3 = 1e-4;
    if (m_waitOutlet >= 0 && m_outlets[m_waitOutlet].drawn_m3 < kCup_m3) {
        const Message why = whyNoWater(m_plant, m_network, *m_outlets[m_waitOutlet].part);
        stayedCold = why.empty() ? Message("No water came while the tap was open: the supply has no pressure.") : why;
    }
    const bool asked = m_waitOutlet >= 0 && std::isfinite(m_outlets[m_waitOutlet].opened_s);
    addScalar("wasted_volume", "Water drawn before it is warm", Quantity::Volume, known(m_wasted_m3),
              asked ? stayedCold : noDraw);
    addScalar("wait", "Wait at the tap", Quantity::Time, known(m_wait_s), asked ? stayedCold : noDraw);

    double gas = 0;
    for (const HeaterActor& heater : m_heaters) {
        gas += heater.control.gasEnergy_J();
    }
    if (!m_heaters.empty()) {
        addScalar("gas_energy", "Gas burned", Quantity::Energy, gas, {},
                  Message("Input to the burner, over the case."));
    }

    addScalar("mass_residual", "Largest mass residual at a join, kg/s", Quantity::None, m_massResidual, {});
    const thermal::Field::Ledger ledger = m_field.ledger();
    const double passed = std::abs(ledger.in) + std::abs(ledger.out) + std::abs(ledger.sources) + std::abs(ledger.lost);
    addScalar("heat_residual", "Heat balance residual / heat passed", Quantity::None,
              std::abs(ledger.residual()) / std::max(passed, 1.0), {});
    if (m_failedToSettle) {
        addEvent("flows_not_settled",
                 Message("Some flows did not settle fully; the largest mass residual is {0} kg/s.",
                         {Measure{m_massResidual, Quantity::None}}),
                 document::kNoPart, Event::Weight::Caution);
    }
    std::stable_sort(m_result.events.begin(), m_result.events.end(),
                     [](const Event& a, const Event& b) { return a.t_s < b.t_s; });
}

}  // namespace tapward::study
