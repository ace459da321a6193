// SPDX-License-Identifier: GPL-3.0-or-later
#include "study/simulate.h"

#include <algorithm>
#include <cmath>

#include "study/simulation.h"
#include "water/water.h"

namespace tapward::study {
namespace {

constexpr double kStandingAsk_s = 5;
// Water that has stood for a while only cools, by less than 0.05 K/s; the exchange is exact for any step, so that all
// a long step misses are the films (thermal/warmth.cpp holds them to 2 and 3 K).
constexpr double kQuietAfter_s = 60;
constexpr double kQuietSteps = 3;  // as long as the standing ones
constexpr double kOldest_s = 15;  // of flows while water moves
// Standing water is asked again whether it moves when a chain has changed by this much: over two metres of height
// that is a push of 4 Pa, which moves no more than what counts as standing. And after a minute.
constexpr double kAskAgain_K = 0.5;
constexpr double kAskAgain_s = 60;
constexpr double kShortestStep_s = 1e-3;

}  // namespace

Simulation::Simulation(const document::Drawing& drawing, const Plant& plant, const LoopMap& loop,
                       const document::Case& script, const Options& options, const Trial* trial)
    : m_drawing(drawing), m_plant(plant), m_loop(loop), m_case(script), m_options(options), m_trial(trial),
      m_network(plant.makeNetwork()),
      m_field(plant.makeField(thermal::Grid{.cell_m = options.cell_m, .wallLayers = options.wallLayers})),
      m_flows(plant.chains.size(), 0.0), m_solvedFlows(plant.chains.size(), 0.0), m_flowSlope(plant.chains.size(), 0.0),
      m_weight(plant.chains.size(), 0.0), m_solvedMean_C(plant.chains.size(), script.start_C)
{
    m_field.timeInto(options.phases);
    m_field.fill(script.start_C);
    for (std::size_t l = 0; l < plant.chains.size(); ++l) {
        for (const thermal::Stretch& stretch : plant.chains[l].stretches) {
            m_weight[l] += stretch.length_m;
        }
    }
    for (const document::Action& action : script.actions) {
        m_actions.push_back(&action);
    }
    std::stable_sort(m_actions.begin(), m_actions.end(),
                     [](const document::Action* a, const document::Action* b) { return a->at_s < b->at_s; });
    makeActors();
    prepareRecord();
}

Result<CaseResult> Simulation::run()
{
    int steps = 0;
    for (;;) {
        while (m_nextAction < m_actions.size() && m_actions[m_nextAction]->at_s <= m_time + 1e-9) {
            applyAction(*m_actions[m_nextAction++]);
        }
        if (m_trial && m_trial->plan) {
            followPlan();
        }
        for (std::size_t c = 0; c < m_controls.size(); ++c) {
            if (m_controls[c].buttonStuck && m_controls[c].control.state() == control::RunState::Idle) {
                press(c);
            }
        }
        if (m_acted) {
            // Valves and pumps see what was set before the flows are reckoned with them.
            m_acted = false;
            moveActors(0);
            switchDemandPump();
            recordSoon();
        }
        if (m_dirty || flowsAreOld()) {
            solve();
        }
        look();
        record();
        if (m_time >= m_case.duration_s - 1e-9 || m_plan.done) {
            break;
        }
        if ((++steps & 15) == 0 && m_options.stop.stop_requested()) {
            return problem("The prediction was stopped.", "Start it again.", m_case.name);
        }
        advance(nextStep());
    }
    m_result.steps = steps;
    finish();
    return std::move(m_result);
}

bool Simulation::flowsAreOld() const
{
    const double since_s = m_time - m_solvedAt + 1e-9;
    if (m_moving) {
        return since_s >= kOldest_s
               || (since_s >= m_options.solveEvery_s
                   && (m_options.flowTolerance <= 0 || std::abs(drift_K()) > m_driftAllowed_K));
    }
    if (since_s < kStandingAsk_s || since_s >= kAskAgain_s) {
        return since_s >= kAskAgain_s;
    }
    for (std::size_t l = 0; l < m_solvedMean_C.size(); ++l) {
        if (std::abs(m_field.roughMean(static_cast<int>(l)) - m_solvedMean_C[l]) > kAskAgain_K) {
            return true;
        }
    }
    return false;
}

void Simulation::refreshWater()
{
    for (std::size_t l = 0; l < m_plant.chains.size(); ++l) {
        const int link = static_cast<int>(l);
        const Plant::Chain& chain = m_plant.chains[l];
        const auto elements = m_network.elements(link);
        // Elements without water of their own (a valve's loss) take the link's mean.
        m_solvedMean_C[l] = m_field.roughMean(link);
        const water::Properties mean = water::at(m_solvedMean_C[l]);
        for (network::Element& element : elements) {
            element.density = mean.density;
            element.viscosity = mean.viscosity;
        }
        if (chain.stretches.size() < 2) {
            continue;
        }
        m_stretchMean_C.resize(chain.stretches.size());
        m_field.roughMeans(link, m_stretchMean_C);
        std::size_t e = 0;
        for (std::size_t k = 0; k < chain.stretches.size(); ++k) {
            while (e < elements.size() && chain.elementParts[e] != chain.stretchParts[k]) {
                ++e;
            }
            if (e == elements.size()) {
                break;
            }
            const water::Properties own = water::at(m_stretchMean_C[k]);
            elements[e].density = own.density;
            elements[e].viscosity = own.viscosity;
        }
    }
}

void Simulation::solve()
{
    const PhaseTimer timer(m_options.phases, &PhaseTimes::solve);
    applySettings();
    m_drift_K = drift_K();
    refreshWater();
    const network::Solution& solution = m_network.solve();
    ++m_result.solves;
    // Nothing but the water's warmth has changed since the last solution.
    const bool warmed = !m_dirty && m_moving;
    std::copy(solution.flow_m3s.begin(), solution.flow_m3s.end(), m_flows.begin());
    m_massResidual = std::max(m_massResidual, solution.massResidual_kgs);
    m_failedToSettle = m_failedToSettle || solution.outcome != network::Outcome::Solved;
    m_solvedAt = m_time;
    m_dirty = false;
    learnFlows(warmed);
    double most = 0;
    for (const double flow : m_flows) {
        most = std::max(most, std::abs(flow));
    }
    const bool moved = m_moving;
    m_moving = most > kStill_m3s;
    m_stillSince_s = moved && !m_moving ? m_time : m_stillSince_s;
    if (moved != m_moving) {
        recordSoon();
    }
    readFlows();
}

void Simulation::readFlows()
{
    if (m_loop.flowLink >= 0) {
        const double flow = m_flows[m_loop.flowLink];
        m_loopFlow = m_loop.flowForward ? flow : -flow;
    }
    if (m_loop.countLink >= 0) {
        const double flow = m_flows[m_loop.countLink];
        m_countedFlow = m_loop.countForward ? flow : -flow;
    }
    for (OutletActor& outlet : m_outlets) {
        outlet.flow_m3s = 0;
        for (std::size_t p = 0; p < outlet.part->places.size(); ++p) {
            outlet.flow_m3s += flowOf(*outlet.part, static_cast<int>(p));
        }
    }
}

/// How much the water in moving tubes has warmed since the last solution, K, as a mean over their length.
double Simulation::drift_K() const
{
    double sum = 0, weights = 0;
    for (std::size_t l = 0; l < m_weight.size(); ++l) {
        if (std::abs(m_solvedFlows[l]) > kStill_m3s) {
            weights += m_weight[l];
            sum += m_weight[l] * (m_field.roughMean(static_cast<int>(l)) - m_solvedMean_C[l]);
        }
    }
    return weights > 0 ? sum / weights : 0;
}

/// Takes over the flows just found, and what they tell of how flows follow the water's warmth.
/// @param warmed  nothing else has changed since the solution before
void Simulation::learnFlows(bool warmed)
{
    constexpr double kLeastDrift_K = 0.02, kLeastAllowed_K = 0.05, kMostAllowed_K = 4;
    double most = 0, off = 0;
    bool sameWays = true;
    for (std::size_t l = 0; l < m_flows.size(); ++l) {
        most = std::max(most, std::abs(m_flows[l]));
        sameWays = sameWays && m_flows[l] * m_solvedFlows[l] >= 0 && (m_flows[l] == 0) == (m_solvedFlows[l] == 0);
    }
    const bool tells = warmed && sameWays && std::abs(m_drift_K) > kLeastDrift_K;
    for (std::size_t l = 0; l < m_flows.size(); ++l) {
        const double expected = m_solvedFlows[l] + m_flowSlope[l] * m_drift_K;
        if (std::abs(m_flows[l]) > 0.1 * most) {
            off = std::max(off, std::abs(m_flows[l] - expected) / std::abs(m_flows[l]));
        }
        m_flowSlope[l] = tells ? (m_flows[l] - m_solvedFlows[l]) / m_drift_K : warmed && sameWays ? m_flowSlope[l] : 0;
        m_solvedFlows[l] = m_flows[l];
    }
    if (tells && off > 0) {
        m_driftAllowed_K = std::clamp(m_driftAllowed_K * std::clamp(m_options.flowTolerance / off, 0.5, 2.0),
                                      kLeastAllowed_K, kMostAllowed_K);
    } else if (!warmed) {
        m_driftAllowed_K = kLeastAllowed_K;
        m_driftRate_K_s = 0;
    }
    m_drift_K = 0;
    m_driftAt_s = m_time;
}

/// Flows for the middle of the step that begins now. They balance, being sums of flows that do.
void Simulation::followWater(double dt_s)
{
    if (!m_moving) {
        return;
    }
    const double now_K = drift_K();
    if (m_time > m_driftAt_s) {
        m_driftRate_K_s = (now_K - m_drift_K) / (m_time - m_driftAt_s);
    }
    m_drift_K = now_K;
    m_driftAt_s = m_time;
    const double middle_K = now_K + 0.5 * dt_s * m_driftRate_K_s;
    for (std::size_t l = 0; l < m_flows.size(); ++l) {
        m_flows[l] = m_solvedFlows[l] + m_flowSlope[l] * middle_K;
    }
    readFlows();
}

/// Whoever acts on the flows sees them before a step is chosen, so that none outruns what one is about to do.
void Simulation::look()
{
    const PhaseTimer timer(m_options.phases, &PhaseTimes::machines);
    lookAtHeaters();
    for (ControlActor& actor : m_controls) {
        if (actor.control.state() != control::RunState::Idle) {
            actor.control.look(m_time, inputsOf(actor));
        }
    }
}

double Simulation::nextStep() const
{
    const PhaseTimer timer(m_options.phases, &PhaseTimes::machines);
    const bool quiet = m_time - m_stillSince_s >= kQuietAfter_s && m_storages.empty();
    double dt = m_moving ? m_options.step_s : m_options.standingStep_s * (quiet ? kQuietSteps : 1);
    if (m_options.curves && !m_moving) {
        dt = std::min(dt, recordEvery_s());  // as long as that, not up to it: the clock has no say
    }
    // A time that is the step but for its rounding is the step: what is reckoned once for a step holds for it.
    const auto limit = [&dt](double seconds) {
        if (seconds > 1e-9 && seconds < dt - 1e-9) {
            dt = seconds;
        }
    };
    limit(m_case.duration_s - m_time);
    if (m_trial && m_trial->plan) {
        limit(planDue_s() - m_time);
    }
    if (m_nextAction < m_actions.size()) {
        limit(m_actions[m_nextAction]->at_s - m_time);
    }
    for (const ValveActor& valve : m_valves) {
        const double goal = valve.held >= 0 ? valve.held : (valve.commanded ? 1.0 : 0.0);
        if (valve.position != goal) {
            limit(travelStep_s(m_options.step_s));
            limit(std::abs(goal - valve.position) * valve.part->model.motorValve->travel_s * valve.slowness);
        }
    }
    for (const PumpActor& pump : m_pumps) {
        if (pump.speed != pump.target) {
            limit(spinStep_s(m_options.step_s));
        }
    }
    for (const HeaterActor& heater : m_heaters) {
        limit(std::max(heater.control.timeToNextEvent_s(), kShortestStep_s));
    }
    for (const StorageActor& heater : m_storages) {
        limit(std::max(heater.control.timeToNextEvent_s(), kShortestStep_s));
    }
    for (const ControlActor& actor : m_controls) {
        limit(actor.control.timeToNextEvent_s(m_time));
        if (actor.control.state() == control::RunState::Idle) {
            continue;
        }
        const control::RunInputs now = inputsOf(actor);
        if (const auto total = actor.control.stopAtTotal_m3(); total && !now.stopFails && now.flow_m3s > 1e-9) {
            limit(std::max((*total - now.pumped_m3) / now.flow_m3s, kShortestStep_s));
        }
        // A temperature stop is met by shortening the step as its sensor closes in on the mark; also where the stop is
        // switched off: then switching it on changes what the control does and nothing else.
        const auto closeIn = [&](int sensor, double mark) {
            if (sensor < 0) {
                return;
            }
            const SensorActor& s = m_sensors[sensor];
            const parts::SensorModel& model = *s.part->model.sensor;
            const double felt_C = m_field.at(s.run, s.fraction) + model.offset_K + s.offset_K;
            const double rate = (felt_C - s.reading_C) / std::max(model.lag_s, 0.1);
            if (s.reading_C < mark && rate > 0) {
                limit(std::max(0.5 * (mark - s.reading_C) / rate, 0.02));
            }
        };
        const control::RunSpec& spec = actor.spec;
        closeIn(actor.stopSensor, spec.stopTemperature_C);
        closeIn(actor.limitSensor, spec.highLimit_C);
        closeIn(actor.inletSensor, spec.inletLockout_C);
    }
    if (m_accumulator.present()) {
        const Place& place = m_accumulator.place;
        const double out = place.reversed ? -m_flows[place.link] : m_flows[place.link];
        if (std::abs(out) > 1e-8) {
            limit(travelStep_s(m_options.step_s));
            // Up to the switch point that lies ahead, exactly.
            if (m_demandPump && m_supply == document::ActionKind::UsePump) {
                const double mark =
                    m_demandPumpOn ? m_demandPump->model.supply->cutOut_Pa : m_demandPump->model.supply->cutIn_Pa;
                const double toGo = (m_accumulator.water_m3 - m_accumulator.waterAt(mark)) / out;
                if (toGo > 0) {
                    limit(std::max(toGo, kShortestStep_s));
                }
            }
        }
    }
    return std::max(dt, kShortestStep_s);
}

void Simulation::advance(double dt_s)
{
    followWater(dt_s);
    startStep(dt_s);
    m_field.step(dt_s, m_flows);
    endStep(dt_s);
}

void Simulation::startStep(double dt_s)
{
    const PhaseTimer timer(m_options.phases, &PhaseTimes::machines);
    m_before_C = targetReading();
    m_beforePumped_m3 = m_pumped_m3;
    for (ControlActor& actor : m_controls) {
        actor.before = inputsOf(actor);
    }

    m_time += dt_s;
    runHeaters(dt_s);
}

void Simulation::endStep(double dt_s)
{
    const PhaseTimer timer(m_options.phases, &PhaseTimes::machines);
    if (m_countedFlow > 0) {
        m_pumped_m3 += m_countedFlow * dt_s;
    }
    readSensors(dt_s);
    readHeaters();
    moveActors(dt_s);
    advanceSupply(dt_s);
    watchTargets(dt_s);
    advanceControls(dt_s);
}

Result<CaseResult> simulate(const document::Drawing& drawing, const Plant& plant, const LoopMap& loop,
                            const document::Case& script, const Options& options)
{
    return Simulation(drawing, plant, loop, script, options).run();
}

Result<TrialResult> simulate(const document::Drawing& drawing, const Plant& plant, const LoopMap& loop,
                             const Trial& trial, const Options& options)
{
    Simulation simulation(drawing, plant, loop, trial.script, options, &trial);
    auto result = simulation.run();
    if (!result) {
        return tl::unexpected(result.error());
    }
    return TrialResult{std::move(*result), simulation.asRun(), simulation.pressesMade()};
}

}  // namespace tapward::study
