// SPDX-License-Identifier: GPL-3.0-or-later
#include "study/fire_map.h"

#include <algorithm>
#include <cmath>

#include "study/in_parallel.h"
#include "study/press_search.h"
#include "water/water.h"

namespace tapward::study {
namespace {

struct Cell {
    FireOutcome outcome = FireOutcome::DoesNotLight;
    double outlet_C = 0;
};

Cell holdAt(const heater::TanklessSpec& spec, double flow_m3s, double inlet_C, const FireMapOptions& options)
{
    constexpr double kStep_s = 0.25, kLast_s = 120, kMean_s = 30;
    heater::Tankless control(spec);
    heater::Coil exchanger(spec.exchanger_J_K);
    exchanger.fill(inlet_C);
    double outlet_C = inlet_C, sum = 0, weight = 0;
    bool lit = false, lockout = false, cycles = false;
    for (double t_s = 0; t_s < kLast_s - 1e-9; t_s += kStep_s) {
        const heater::TanklessInputs inputs{flow_m3s, inlet_C, outlet_C, outlet_C, 12.6, false};
        double at_s = t_s, heat_J = 0;
        for (int guard = 0; guard < 8 && at_s < t_s + kStep_s - 1e-12; ++guard) {
            const auto change = control.advance(at_s, t_s + kStep_s - at_s, inputs);
            const double until_s = change ? change->at_s : t_s + kStep_s;
            heat_J += control.meanPower_W() * (until_s - at_s);
            if (!change) {
                break;
            }
            using enum heater::TanklessState;
            cycles = cycles || (lit && (change->state == OverTemperature || change->state == RestartDelay));
            lit = lit || change->state == Burning;
            lockout = lockout || change->state == Lockout;
            at_s = change->at_s;
        }
        exchanger.pass(kStep_s, flow_m3s, inlet_C, heat_J / kStep_s);
        outlet_C = exchanger.outlet_C();
        if (t_s >= kLast_s - kMean_s) {
            sum += outlet_C;
            weight += 1;
        }
    }
    Cell cell{FireOutcome::Holds, sum / weight};
    if (lockout) {
        cell.outcome = FireOutcome::LocksOut;
    } else if (!lit) {
        cell.outcome = FireOutcome::DoesNotLight;
    } else if (cycles) {
        cell.outcome = FireOutcome::Cycles;
    } else if (cell.outlet_C > options.outletLimit_C && cell.outlet_C > spec.setpoint_C + options.overshoot_K) {
        cell.outcome = FireOutcome::OverOutletLimit;
    } else if (cell.outlet_C > spec.setpoint_C + options.overshoot_K) {
        cell.outcome = FireOutcome::OvershootsSetpoint;
    }
    return cell;
}

}  // namespace

std::string_view id(FireOutcome outcome)
{
    using enum FireOutcome;
    switch (outcome) {
    case DoesNotLight:
        return "does_not_light";
    case Holds:
        return "holds";
    case OvershootsSetpoint:
        return "overshoots";
    case OverOutletLimit:
        return "over_limit";
    case Cycles:
        return "cycles";
    case LocksOut:
        return "locks_out";
    }
    return "";
}

Text title(FireOutcome outcome)
{
    using enum FireOutcome;
    switch (outcome) {
    case DoesNotLight:
        return "Does not light";
    case Holds:
        return "Holds its setpoint";
    case OvershootsSetpoint:
        return "Overshoots its setpoint";
    case OverOutletLimit:
        return "Over the outlets' limit";
    case Cycles:
        return "Cycles on its own limit";
    case LocksOut:
        return "Locks out";
    }
    return "";
}

int rank(FireOutcome outcome) { return std::max(0, static_cast<int>(outcome) - static_cast<int>(FireOutcome::Holds)); }

FireOutcome FireMap::nearest(double flow, double inlet) const
{
    const auto index = [](const std::vector<double>& centres, double value) {
        const auto above = std::lower_bound(centres.begin(), centres.end(), value);
        if (above == centres.begin()) {
            return std::size_t{0};
        }
        const auto i = static_cast<std::size_t>(above - centres.begin());
        return i == centres.size() || value - centres[i - 1] < centres[i] - value ? i - 1 : i;
    };
    return at(index(inlet_C, inlet), index(flow_m3s, flow));
}

double leastOutlet_C(const heater::TanklessSpec& spec, double flow_m3s, double inlet_C)
{
    const double delivered_W =
        spec.minimumInput_W * spec.efficiency * heater::altitudeFactor(spec.altitude_m, spec.derate);
    return inlet_C + delivered_W / (flow_m3s * water::referenceVolumeHeat());
}

Result<FireMap> fireMap(const document::Drawing& drawing, const FireMapOptions& options)
{
    const auto trials = Trials::make(drawing);
    if (!trials) {
        return tl::unexpected(trials.error());
    }
    const auto heaters = trials->plant().withRole(parts::Role::Tankless);
    if (heaters.empty()) {
        return problem("No tankless heater is drawn, so there is no fire to map.",
                       "A storage heater holds its own temperature: nothing to do.");
    }
    heater::TanklessSpec spec = *heaters.front()->model.tankless;
    spec.altitude_m = drawing.job.altitude_m;
    FireMap map;
    map.heater = heaters.front()->id;
    map.activationFlow_m3s = spec.activationFlow_m3s;
    map.holdFlow_m3s = spec.holdFlow_m3s;
    map.setpoint_C = spec.setpoint_C;
    map.heaterLimit_C = spec.outletLimit_C;
    map.outletLimit_C = options.outletLimit_C;
    const LoopAnswer& loop = trials->loop().answer;

    const auto controllers = trials->plant().withRole(parts::Role::Controller);
    if (options.presses > 0 && loop.exists && !controllers.empty()) {
        const PressesOptions searched;
        const PressSearch points(*trials, searched, {}, std::nullopt, [](int) {});
        PressPoint point = points.plainPoint();
        point.plan.gaps_s.assign(static_cast<std::size_t>(std::min(options.presses, 12)), 20.0);
        point.plan.gaps_s.front() = 2;
        Options fine;
        fine.stop = options.stop;
        const auto run = simulate(drawing, trials->plant(), trials->loop(), points.trial(point), fine);
        if (!run) {
            return tl::unexpected(run.error());
        }
        const CaseResult& result = run->result;
        const Series* flow = result.find("loop_flow");
        const Series* inlet = result.find("heater_inlet");
        const Series* outlet = result.find("heater_outlet");
        for (std::size_t i = 0; flow && inlet && outlet && i < result.time_s.size(); ++i) {
            int press = 0;
            for (const Event& event : result.events) {
                press += event.id == "run_started" && event.t_s <= result.time_s[i] + 1e-9 ? 1 : 0;
            }
            if (press > 0 && flow->values[i] > 1e-7) {
                map.path.push_back({result.time_s[i], flow->values[i], inlet->values[i], outlet->values[i], press});
            }
        }
    }
    double most = options.mostFlow_m3s;
    if (most <= 0) {
        most = 2.5 * std::max(spec.activationFlow_m3s, loop.flow_m3s.value_or(0));
        for (const FirePathPoint& point : map.path) {
            most = std::max(most, 1.1 * point.flow_m3s);
        }
    }
    const int flows = std::clamp(options.flows, 2, 400), inlets = std::clamp(options.inlets, 2, 400);
    for (int f = 0; f < flows; ++f) {
        map.flow_m3s.push_back(most * (f + 0.5) / flows);
        const double rise_K = leastOutlet_C(spec, map.flow_m3s.back(), 0);
        map.setpointInlet_C.push_back(spec.setpoint_C - rise_K);
    }
    for (int i = 0; i < inlets; ++i) {
        map.inlet_C.push_back(options.leastInlet_C + (options.mostInlet_C - options.leastInlet_C) * (i + 0.5) / inlets);
    }
    const auto size = map.flow_m3s.size() * map.inlet_C.size();
    map.outcomes.resize(size);
    map.outlet_C.resize(size);
    inParallel(map.inlet_C.size(), [&](std::size_t i) {
        for (std::size_t f = 0; f < map.flow_m3s.size() && !options.stop.stop_requested(); ++f) {
            const Cell cell = holdAt(spec, map.flow_m3s[f], map.inlet_C[i], options);
            map.outcomes[i * map.flow_m3s.size() + f] = cell.outcome;
            map.outlet_C[i * map.flow_m3s.size() + f] = cell.outlet_C;
        }
    });
    if (options.stop.stop_requested()) {
        return problem("The map was stopped.", "Start it again.");
    }
    return map;
}

}  // namespace tapward::study
