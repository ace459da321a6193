// SPDX-License-Identifier: GPL-3.0-or-later
#include "study/wiring_net.h"

#include <algorithm>
#include <cmath>

#include "document/references.h"
#include "parts/battery.h"
#include "parts/wire_gauge.h"

namespace tapward::study {
namespace {

using document::PartId;

double outAndBack_ohm(double oneWay_m, int gauge) { return 2 * oneWay_m * parts::wireResistance_ohm_m(gauge); }

/// Where v + ohm * current(v) = from; current never falls with v.
template <class Current>
double behind(double from, double ohm, Current current)
{
    if (ohm <= 0 || from <= 0) {
        return std::max(from, 0.0);
    }
    double high = from, highGap = ohm * current(from);
    if (highGap <= 0) {
        return from;
    }
    // The current at the full volts is the largest there is: what it leaves lies below the answer, and near it.
    double low = from - highGap, lowGap = -1;
    if (low > 0) {
        lowGap = low + ohm * current(low) - from;
        if (lowGap >= 0) {
            return low;
        }
    } else {
        low = 0;
        lowGap = ohm * current(0.0) - from;
        if (lowGap >= 0) {
            return 0;
        }
    }
    // Regula falsi with the Illinois weighting: bracketed, so it cannot run away.
    for (int i = 0; i < 60 && high - low > 1e-10 * from; ++i) {
        const double middle = i % 8 == 7 ? 0.5 * (low + high) : low - lowGap * (high - low) / (highGap - lowGap);
        const double gap = middle + ohm * current(middle) - from;
        if (std::abs(gap) < 1e-10 * from) {
            return middle;
        }
        if (gap < 0) {
            low = middle;
            lowGap = gap;
            highGap *= 0.5;
        } else {
            high = middle;
            highGap = gap;
            lowGap *= 0.5;
        }
    }
    return 0.5 * (low + high);
}

/// What a working load draws with these volts at its terminals.
double drawn_A(const Load& load, const WiringNet::Draw& draw, double volts)
{
    if (!draw.on || volts <= 0) {
        return 0;
    }
    if (load.kind != Load::Kind::Circulator) {
        return load.current_A * draw.share;
    }
    const double speed = std::min(volts, load.maximumVolts) / load.ratedVolts;
    if (load.noFlow_A <= 0 || load.runOut_m3s <= 0) {
        return load.current_A * speed * speed * draw.share;
    }
    const double flow = std::clamp(draw.flow_m3s / (speed * load.runOut_m3s), 0.0, 1.0);
    return speed * speed * (load.noFlow_A + std::max(0.0, load.current_A - load.noFlow_A) * flow) * draw.share;
}

/// Where volts + wire * current(volts) = from, in closed form: the current is a square of the volts, a
/// straight line, or constant.
double atTerminals(const Load& load, const WiringNet::Draw& draw, double from)
{
    const double ohm = load.wire_ohm;
    if (from <= 0 || ohm <= 0) {
        return std::max(from, 0.0);
    }
    if (load.kind != Load::Kind::Circulator) {
        return std::max(0.0, from - ohm * load.current_A * draw.share);
    }
    const auto root = [&](double square, double line) {
        const double one = 1 + ohm * line;
        return 2 * from / (one + std::sqrt(one * one + 4 * ohm * square * from));
    };
    const double ratedSquare = draw.share / (load.ratedVolts * load.ratedVolts);
    double volts = root(load.current_A * ratedSquare, 0);
    if (load.noFlow_A > 0 && load.runOut_m3s > 0) {
        const double more_A = std::max(0.0, load.current_A - load.noFlow_A);
        const double flow = std::max(draw.flow_m3s, 0.0) / load.runOut_m3s;
        // The flow's part is capped at the run-out flow: the smaller of two currents, so the larger volts.
        volts = std::max(root((load.noFlow_A + more_A) * ratedSquare, 0),
                         root(load.noFlow_A * ratedSquare, more_A * flow * draw.share / load.ratedVolts));
    }
    return volts > load.maximumVolts ? std::max(load.maximumVolts, from - ohm * drawn_A(load, draw, load.maximumVolts))
                                     : volts;
}

}  // namespace

Supply batterySupply(const Plant& plant)
{
    for (const PlantPart& part : plant.parts) {
        if (part.model.battery) {
            return {part.model.battery->volts, part.model.battery->internal_ohm};
        }
    }
    return {parts::kBattery_V, 0};
}

double circulatorSpeed(const Load& pump, double volts)
{
    return volts < pump.minimumVolts || volts <= 0 ? 0 : std::min(volts, pump.maximumVolts) / pump.ratedVolts;
}

WiringNet::WiringNet(std::vector<Load> loads, std::vector<Branch> branches)
    : m_loads(std::move(loads)), m_branches(std::move(branches)), m_draws(m_loads.size()),
      m_drawsSolved(m_loads.size()), m_volts(m_loads.size()), m_currents(m_loads.size()), m_onBranch(m_branches.size())
{
    for (std::size_t i = 0; i < m_loads.size(); ++i) {
        m_onBranch[static_cast<std::size_t>(m_loads[i].branch)].push_back(i);
    }
}

WiringNet::WiringNet(const Plant& plant)
{
    std::vector<Load> loads;
    std::vector<Branch> branches;
    for (const PlantPart& part : plant.parts) {
        if (part.part->kind == "fuse") {
            const parts::Values values = document::values(*part.part);
            Branch branch;
            branch.fuse = part.id;
            branch.gauge = parts::wireGauge(values.text("wire_gauge"));
            branch.feed_m = values.number("feed_length_m");
            branch.feed_ohm = values.number("resistance_ohm") + outAndBack_ohm(branch.feed_m, branch.gauge);
            branch.rating_A = values.number("rating_A");
            branch.other_A = values.number("other_load_A");
            branch.socket_A = values.number("socket_rating_A");
            branches.push_back(branch);
        }
    }
    const std::size_t fuses = branches.size();
    const PlantPart* onlyController = nullptr;
    int controllers = 0;
    for (const PlantPart* part : plant.withRole(parts::Role::Controller)) {
        onlyController = part;
        ++controllers;
    }
    const auto contact_ohm = [&](const std::string& controller) {
        const PlantPart* box = controller.empty() ? (controllers == 1 ? onlyController : nullptr)
                                                  : plant.find(document::namedPart(controller));
        return box && box->model.controller ? document::values(*box->part).number("contact_ohm") : 0.0;
    };
    for (const PlantPart& part : plant.parts) {
        const parts::Values values = document::values(*part.part);
        Load load;
        load.part = part.id;
        double contact = 0;
        if (part.model.circulator) {
            const parts::CirculatorModel& pump = *part.model.circulator;
            load.kind = Load::Kind::Circulator;
            load.current_A = pump.current_A;
            load.noFlow_A = values.number("no_flow_current_A");
            load.start_A = values.number("start_current_A");
            load.ratedVolts = pump.ratedVolts;
            load.minimumVolts = pump.minimumVolts;
            load.maximumVolts = pump.maximumVolts;
            for (const network::Law& law : part.model.paths[0].laws) {
                if (const auto* impeller = std::get_if<network::PumpLaw>(&law)) {
                    load.runOut_m3s = impeller->curve->runOutFlow();
                }
            }
            contact = contact_ohm(pump.controller);
        } else if (part.model.motorValve) {
            load.kind = Load::Kind::Valve;
            load.current_A = load.start_A = part.model.motorValve->current_A;
            load.minimumVolts = part.model.motorValve->minimumVolts;
            contact = contact_ohm(part.model.motorValve->controller);
        } else if (part.model.controller) {
            load.kind = Load::Kind::Controller;
            load.current_A = load.start_A = values.number("current_A");
            load.rest_A = values.number("idle_current_A");
        } else if (part.model.tankless) {
            load.kind = Load::Kind::Heater;
            load.current_A = load.start_A = values.number("fan_current_A");
            load.rest_A = values.number("board_current_A");
            load.minimumVolts = part.model.tankless->minimumVolts;
        } else {
            continue;
        }
        load.length_m = values.number("wire_length_m");
        load.gauge = parts::wireGauge(values.text("wire_gauge"));
        load.wire_ohm = outAndBack_ohm(load.length_m, load.gauge) + contact;
        const PartId named = document::namedPart(values.text("fuse"));
        const auto fused = std::find_if(branches.begin(), branches.begin() + static_cast<std::ptrdiff_t>(fuses),
                                        [&](const Branch& branch) { return branch.fuse == named; });
        const bool known = named != document::kNoPart && fused != branches.begin() + static_cast<std::ptrdiff_t>(fuses);
        if (known) {
            load.branch = static_cast<int>(fused - branches.begin());
        } else if (named == document::kNoPart && fuses == 1 && load.kind != Load::Kind::Heater) {
            load.branch = 0;
        } else {
            load.branch = static_cast<int>(branches.size());
            Branch own;
            own.gauge = load.gauge;
            branches.push_back(own);
        }
        loads.push_back(load);
    }
    *this = WiringNet(std::move(loads), std::move(branches));
}

int WiringNet::indexOf(PartId part) const
{
    const auto at = std::find_if(m_loads.begin(), m_loads.end(), [&](const Load& load) { return load.part == part; });
    return at == m_loads.end() ? -1 : static_cast<int>(at - m_loads.begin());
}

double WiringNet::take(std::size_t load, double branchVolts, bool keep)
{
    const Load& one = m_loads[load];
    const Draw& draw = m_draws[load];
    const double volts = draw.on ? atTerminals(one, draw, branchVolts) : std::max(branchVolts, 0.0);
    double current = drawn_A(one, draw, volts);
    if (one.wire_ohm > 0) {
        current = std::min(current, std::max(branchVolts - volts, 0.0) / one.wire_ohm);  // all the wire can carry
    }
    if (keep) {
        m_volts[load] = volts;
        m_currents[load] = current;
    }
    return current;
}

double WiringNet::takeBranch(std::size_t branch, double postVolts, bool keep)
{
    const Branch& one = m_branches[branch];
    const auto all = [&](double volts, bool keepLoads) {
        double sum = volts > 0 ? one.other_A : 0;
        for (const std::size_t load : m_onBranch[branch]) {
            sum += take(load, volts, keepLoads);
        }
        return sum;
    };
    const double volts = behind(postVolts, one.feed_ohm, [&](double at) { return all(at, false); });
    return all(volts, keep);
}

double WiringNet::takeAll(double postVolts, bool keep)
{
    double sum = 0;
    for (std::size_t b = 0; b < m_branches.size(); ++b) {
        sum += takeBranch(b, postVolts, keep);
    }
    return sum;
}

void WiringNet::solve(const Supply& supply)
{
    if (m_solvedFor == supply && m_drawsSolved == m_draws) {
        return;
    }
    m_solvedFor = supply;
    m_drawsSolved = m_draws;  // same size: no allocation
    m_posts_V = behind(supply.volts, supply.internal_ohm, [&](double at) { return takeAll(at, false); });
    m_total_A = takeAll(m_posts_V, true);
}

double WiringNet::speed(int load) const
{
    return circulatorSpeed(m_loads[static_cast<std::size_t>(load)], volts(load));
}

}  // namespace tapward::study
