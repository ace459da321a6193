// SPDX-License-Identifier: GPL-3.0-or-later
// What a case answers once it is over.
#include <algorithm>
#include <cmath>

#include "study/simulation.h"

namespace tapward::study {
namespace {

using document::PartId;

std::optional<double> known(double value) { return std::isfinite(value) ? std::optional(value) : std::nullopt; }

}  // namespace

void Simulation::addScalar(std::string id, Message label, Quantity quantity, std::optional<double> value,
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
    add(HeatPlace::ColdEntry, m_loop.answer.coldEntry, m_coldEntry_C, m_coldEntry_s);
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
    if (m_failedToSettle) {
        addEvent("flows_not_settled",
                 Message("Some flows did not settle fully; the largest mass residual is {0} kg/s.",
                         {Measure{m_massResidual, Quantity::None}}),
                 document::kNoPart, Event::Weight::Caution);
    }
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
    if (loop.bypass != document::kNoPart) {
        const bool counted = ran && m_runs.front().flowTime_s > 0;
        addScalar("pumped_flow", "Flow of the pumps", Quantity::Flow,
                  counted ? m_runs.front().pumpedSum_m3 / m_runs.front().flowTime_s : loop.pumpFlow_m3s, noLoop,
                  Message("{0} lets part of it back past the heater.", {m_drawing.find(loop.bypass)->tag}));
    }
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
        const auto run = static_cast<std::int64_t>(r + 1);
        addScalar("sensor_at_stop_" + n, {"Sensor at stop {0}", {run}}, Quantity::Temperature,
                  known(m_runs[r].sensor_C), notStopped);
        addScalar("hottest_sensor_" + n, {"Hottest at the sensor, run {0}", {run}}, Quantity::Temperature,
                  known(m_runs[r].hottestSensor_C), Message("There is no temperature sensor."));
        addScalar("hottest_heater_outlet_" + n, {"Hottest heater outlet, run {0}", {run}}, Quantity::Temperature,
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
    std::stable_sort(m_result.events.begin(), m_result.events.end(),
                     [](const Event& a, const Event& b) { return a.t_s < b.t_s; });
}

}  // namespace tapward::study
