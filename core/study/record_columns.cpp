// SPDX-License-Identifier: GPL-3.0-or-later
// What a case writes down, laid out before it begins.
#include <algorithm>
#include <cmath>

#include "study/simulation.h"

namespace tapward::study {
namespace {

using document::PartId;

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
    const auto column = [&](std::string id, Message label, Quantity quantity, PartId part,
                            double (*read)(const Simulation&, std::size_t), std::size_t index) {
        m_columns.push_back({m_result.series.size(), read, index});
        m_result.series.push_back({std::move(id), std::move(label), quantity, part, {}});
    };
    if (m_loop.flowLink >= 0) {
        column(
            "loop_flow", "Loop flow", Quantity::Flow, document::kNoPart,
            [](const Simulation& s, std::size_t) { return s.m_loopFlow; }, 0);
        if (m_loop.answer.bypass != document::kNoPart) {
            column(
                "pumped_flow", "Flow of the pumps", Quantity::Flow, document::kNoPart,
                [](const Simulation& s, std::size_t) { return s.m_countedFlow; }, 0);
        }
        column(
            "pumped_volume", "Pumped volume", Quantity::Volume, document::kNoPart,
            [](const Simulation& s, std::size_t) { return s.m_pumped_m3; }, 0);
    }
    if (m_options.loopJoin && m_loop.tapJunction >= 0) {
        column(
            "loop_join", "Where the loop leaves the hot line", Quantity::Temperature, document::kNoPart,
            [](const Simulation& s, std::size_t) { return s.m_field.junctionTemperature(s.m_loop.tapJunction); }, 0);
    }
    if (m_options.loopJoin && m_loop.coldJunction >= 0) {
        column(
            "cold_entry", "Where the loop enters the cold line", Quantity::Temperature, document::kNoPart,
            [](const Simulation& s, std::size_t) { return s.m_field.junctionTemperature(s.m_loop.coldJunction); }, 0);
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
                "sensor." + part.tag, {"Sensor {0}", {part.tag}}, Quantity::Temperature, part.id,
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
                "tap." + part.tag, {"Tap {0}", {part.tag}}, Quantity::Temperature, part.id,
                [](const Simulation& s, std::size_t i) { return s.m_outlets[i].tap_C; }, o);
            column(
                "tap_flow." + part.tag, {"Flow {0}", {part.tag}}, Quantity::Flow, part.id,
                [](const Simulation& s, std::size_t i) { return s.m_outlets[i].flow_m3s; }, o);
        }
    }
    if (m_accumulator.present()) {
        column(
            "supply_pressure", "Supply pressure", Quantity::Pressure, m_accumulator.part->id,
            [](const Simulation& s, std::size_t) { return s.m_accumulator.pressure_Pa; }, 0);
    }
    if (m_options.snapshots) {
        prepareSnapshots();
    }
    boundRecord();
}

void Simulation::prepareSnapshots()
{
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
}

void Simulation::boundRecord()
{
    // Of all cases, also when only one was asked for: its curves are the same then.
    const std::size_t cases = std::max<std::size_t>(m_drawing.cases.size(), 1);
    Snapshot& snapshot = m_result.snapshot;
    m_snapshotEvery_s = snapshotInterval_s(m_case.duration_s, cases, snapshot.stride + snapshot.tracks.size(),
                                           m_options.snapshotEvery_s);
    m_bounds = recordBounds(m_case.duration_s, cases, m_columns.size());
    if (m_bounds.every_s == kRecordEvery_s) {
        m_bounds.every_s = m_options.recordEvery_s;
    }
    if (m_columns.size() > m_bounds.series) {
        addEvent("curves_left_out",
                 Message("So many taps are used that {0} of their curves are left out.",
                         {static_cast<std::int64_t>(m_columns.size() - m_bounds.series)}),
                 document::kNoPart);
        m_columns.resize(m_bounds.series);
        m_result.series.resize(m_bounds.series);
    }
    const auto expected = static_cast<std::size_t>(m_case.duration_s / m_bounds.every_s) + 64;
    m_result.time_s.reserve(expected);
    for (Series& series : m_result.series) {
        series.values.reserve(expected);
    }
    if (snapshot.tracks.empty()) {
        return;
    }
    const auto moments = static_cast<std::size_t>(m_case.duration_s / m_snapshotEvery_s) + 2;
    snapshot.time_s.reserve(moments);
    snapshot.celsius.reserve(moments * snapshot.stride);
    snapshot.flow_m3s.reserve(moments * snapshot.tracks.size());
}

}  // namespace tapward::study
