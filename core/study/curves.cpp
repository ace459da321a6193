// SPDX-License-Identifier: GPL-3.0-or-later
#include "study/curves.h"

#include <algorithm>
#include <cmath>

#include "study/loop.h"
#include "water/water.h"

namespace tapward::study {
namespace {

using network::Element;

constexpr double kGravity = 9.80665;
constexpr double kNothing_m3s = 1e-9;

/// The drawing's network cut open at one circulator and its check valve, so that other sets can be put in.
class Cut {
public:
    Cut(const Plant& plant, const PlantPart& pump, double water_C)
        : m_plant(plant), m_pump(pump), m_water(water::at(water_C)), m_set(plant.makeNetwork())
    {
        setAtRest(plant, m_set);
        for (const PlantPart& part : plant.parts) {
            for (const Place& place : part.places) {
                for (int e = 0; place.link >= 0 && e < place.elementCount; ++e) {
                    auto& law = m_set.elements(place.link)[static_cast<std::size_t>(place.firstElement + e)].law;
                    if (auto* valve = std::get_if<network::ResistanceLaw>(&law); valve && part.model.motorValve) {
                        valve->opening = 1;
                    }
                }
            }
        }
        takeUnit();
        takeOutOthers();
    }

    double density() const { return m_water.density; }
    bool isForward() const { return !m_pump.places[0].reversed; }

    /// The unit's elements at these speeds, in the pump's own direction, pumps first.
    std::vector<Element> branch(int pumps, double speed) const
    {
        std::vector<Element> elements;
        for (int i = 0; i < pumps; ++i) {
            for (Element element : m_impeller) {
                std::get<network::PumpLaw>(element.law).speed = speed;
                element.rise_m = i == 0 ? element.rise_m : 0;
                elements.push_back(element);
            }
        }
        elements.insert(elements.end(), m_checks.begin(), m_checks.end());
        return elements;
    }

    struct Answer {
        double setFlow_m3s, heaterFlow_m3s;
    };
    /// The whole network with `branches` equal branches in the unit's place.
    Answer solve(const std::vector<Element>& unit, int branches, int heaterLink, bool heaterForward) const
    {
        network::Network network;
        for (int j = 0; j < m_plant.junctions + 2; ++j) {
            network.addJunction();
        }
        const int before = m_plant.junctions, after = m_plant.junctions + 1;
        const int cut = m_pump.places[0].link;
        for (int l = 0; l < static_cast<int>(m_plant.chains.size()); ++l) {
            const Plant::Chain& chain = m_plant.chains[static_cast<std::size_t>(l)];
            if (l == cut) {
                network.addLink({chain.from, before, m_before});
            } else {
                network.addLink({chain.from, chain.to, m_others[static_cast<std::size_t>(l)]});
            }
        }
        const int first = network.addLink({after, m_plant.chains[static_cast<std::size_t>(cut)].to, m_after}) + 1;
        for (int b = 0; b < branches; ++b) {
            network.addLink({before, after, unit});
        }
        network.prepare();
        const network::Solution& solution = network.solve();
        double flow = 0;
        for (int b = 0; b < branches; ++b) {
            flow += solution.flow_m3s[static_cast<std::size_t>(first + b)];
        }
        const double heater = solution.flow_m3s[static_cast<std::size_t>(heaterLink)];
        return {isForward() ? flow : -flow, heaterForward ? heater : -heater};
    }

    /// A source of fixed head in the unit's place.
    std::vector<Element> source(double head_m) const
    {
        network::SourceLaw law;
        law.pressure_Pa = head_m * m_water.density * kGravity;
        law.slope_Pa_per_m3s = 100;
        Element element = water({law});
        element.reversed = !isForward();
        element.rise_m = m_unitRise_m;
        return {element};
    }

private:
    Element water(network::Law law) const
    {
        Element element;
        element.law = std::move(law);
        element.density = m_water.density;
        element.viscosity = m_water.viscosity;
        return element;
    }

    /// Another circulator is drawn between the same two joins: the branch goes with the pump.
    bool hasTwin(int link) const
    {
        const Plant::Chain& own = m_plant.chains[static_cast<std::size_t>(link)];
        for (const PlantPart* other : m_plant.withRole(parts::Role::Circulator)) {
            const int there = other->places[0].link;
            if (there >= 0 && there != link) {
                const Plant::Chain& chain = m_plant.chains[static_cast<std::size_t>(there)];
                if ((chain.from == own.from && chain.to == own.to) || (chain.from == own.to && chain.to == own.from)) {
                    return true;
                }
            }
        }
        return false;
    }

    void takeUnit()
    {
        m_others.resize(m_plant.chains.size());
        const int cut = m_pump.places[0].link;
        const bool wholeBranch = hasTwin(cut);
        for (int l = 0; l < static_cast<int>(m_plant.chains.size()); ++l) {
            const Plant::Chain& chain = m_plant.chains[static_cast<std::size_t>(l)];
            const auto elements = m_set.elements(l);
            bool passed = false;
            for (std::size_t e = 0; e < elements.size(); ++e) {
                Element element = elements[e];
                element.density = m_water.density;
                element.viscosity = m_water.viscosity;
                const PlantPart& part = *m_plant.find(chain.elementParts[e]);
                const bool isPump = part.id == m_pump.id;
                if (l != cut) {
                    m_others[static_cast<std::size_t>(l)].push_back(element);
                } else if (isPump && std::holds_alternative<network::PumpLaw>(element.law)) {
                    passed = true;
                    m_unitRise_m += element.rise_m;
                    m_impeller.push_back(element);
                } else if (wholeBranch || part.model.role == parts::Role::CheckValve) {
                    m_unitRise_m += element.rise_m;
                    m_checks.push_back(element);
                } else if (std::holds_alternative<network::PumpLaw>(element.law)) {
                    element.law = network::ResistanceLaw{};  // another pump in the same line
                    (passed ? m_after : m_before).push_back(element);
                } else {
                    (passed ? m_after : m_before).push_back(element);
                }
            }
        }
        for (auto* side : {&m_before, &m_after}) {
            if (side->empty()) {
                side->push_back(water(network::ResistanceLaw{}));
            }
        }
    }

    /// Circulators elsewhere: shut where the water has another way round, else replaced by plain tube.
    void takeOutOthers()
    {
        const int cut = m_pump.places[0].link;
        for (const PlantPart* other : m_plant.withRole(parts::Role::Circulator)) {
            if (other->id == m_pump.id || other->places[0].link < 0 || other->places[0].link == cut) {
                continue;
            }
            const Place& place = other->places[0];
            auto& elements = m_others[static_cast<std::size_t>(place.link)];
            for (const double opening : {0.0, 1.0}) {
                for (int e = 0; e < place.elementCount; ++e) {
                    network::ResistanceLaw law;
                    law.opening = opening;
                    elements[static_cast<std::size_t>(place.firstElement + e)].law = law;
                }
                if (opening == 0 && solve(branch(1, 1), 1, cut, true).setFlow_m3s > kNothing_m3s) {
                    break;
                }
            }
        }
    }

    const Plant& m_plant;
    const PlantPart& m_pump;
    water::Properties m_water;
    network::Network m_set;
    std::vector<std::vector<Element>> m_others;
    std::vector<Element> m_before, m_after, m_impeller, m_checks;
    double m_unitRise_m = 0;
};

/// The drawing's wiring with one or two of its circulator and no other.
WiringNet wiringFor(const Plant& plant, document::PartId pump, int pumps)
{
    const WiringNet drawn(plant);
    std::vector<Load> loads;
    for (const Load& load : drawn.loads()) {
        if (load.kind != Load::Kind::Circulator) {
            loads.push_back(load);
        }
        for (int i = 0; load.part == pump && i < pumps; ++i) {
            loads.push_back(load);
        }
    }
    std::vector<Branch> branches = drawn.branches();
    return {std::move(loads), std::move(branches)};
}

class Sets {
public:
    Sets(const Plant& plant, const LoopMap& map, const PlantPart& pump)
        : m_plant(plant), m_pump(pump), m_cut(plant, pump, map.answer.coldStart_C), m_answer(map.answer)
    {
        const PlantPart& heater = *plant.find(map.answer.heater);
        m_heaterLink = heater.places[0].link;
        m_heaterForward = !heater.places[0].reversed;
    }

    PumpSet at(PumpArrangement arrangement, double volts)
    {
        PumpSet set;
        set.arrangement = arrangement;
        set.battery_V = volts;
        const int pumps = arrangement == PumpArrangement::One ? 1 : 2;
        const int branches = arrangement == PumpArrangement::TwoInParallel ? 2 : 1;
        WiringNet wiring = wiringFor(m_plant, m_pump.id, pumps);
        const int load = wiring.indexOf(m_pump.id);
        const auto speedAt = [&](double flowPerPump) {
            for (std::size_t i = 0; i < wiring.loads().size(); ++i) {
                wiring.draws()[i].on = wiring.loads()[i].kind != Load::Kind::Valve;
                wiring.draws()[i].flow_m3s = flowPerPump;
            }
            wiring.solve({volts, 0});
            return wiring.speed(load);
        };
        set.speed = speedAt(0);
        set.pump_V = wiring.volts(load);
        if (set.speed <= 0) {
            set.reason = {"{0} gets too little voltage to start ({1} at the battery).",
                          {m_pump.part->tag, Measure{volts, Quantity::Voltage}}};
            return set;
        }
        const double runOut = wiring.loads()[static_cast<std::size_t>(load)].runOut_m3s * set.speed * branches;
        constexpr int kPoints = 33;
        for (int i = 0; i < kPoints; ++i) {
            const double flow = runOut * i / (kPoints - 1);
            const double speed = speedAt(flow / branches);
            double loss = 0;
            for (const Element& element : m_cut.branch(pumps / branches, speed)) {
                loss +=
                    network::evaluate(element.law, std::max(flow / branches, 1e-12), element.density, element.viscosity)
                        .loss;
            }
            set.curve.push_back({flow, -loss / (m_cut.density() * kGravity)});
            if (set.curve.back().head_m < 0) {
                break;
            }
        }
        Cut::Answer found{};
        for (int round = 0; round < 30; ++round) {
            found = m_cut.solve(m_cut.branch(pumps / branches, set.speed), branches, m_heaterLink, m_heaterForward);
            const double speed = speedAt(found.setFlow_m3s / branches);
            const bool settled = std::abs(speed - set.speed) < 1e-10;
            set.speed = speed;
            if (settled) {
                break;
            }
        }
        set.pump_V = wiring.volts(load);
        set.heaterFlow_m3s = std::max(0.0, found.heaterFlow_m3s);
        set.lights = found.heaterFlow_m3s >= m_answer.activationFlow_m3s.value_or(kNothing_m3s);
        if (found.setFlow_m3s <= kNothing_m3s) {
            set.reason = "The pumps' head is used up before water moves: check valves hold it back.";
            return set;
        }
        double loss = 0;
        for (const Element& element : m_cut.branch(pumps / branches, set.speed)) {
            loss +=
                network::evaluate(element.law, found.setFlow_m3s / branches, element.density, element.viscosity).loss;
        }
        set.working = LoopPoint{found.setFlow_m3s, -loss / (m_cut.density() * kGravity)};
        return set;
    }

    /// Head the rest of the loop takes, up to this head.
    std::vector<LoopPoint> system(double most_m)
    {
        std::vector<LoopPoint> points;
        constexpr int kPoints = 40;
        for (int i = 0; i <= kPoints; ++i) {
            const double share = static_cast<double>(i) / kPoints;
            const double head_m = most_m * share * share;  // even steps of flow, about
            const double flow = m_cut.solve(m_cut.source(head_m), 1, m_heaterLink, m_heaterForward).setFlow_m3s;
            const LoopPoint point{flow > kNothing_m3s ? flow : 0, head_m};
            if (!points.empty() && points.back().flow_m3s == 0 && point.flow_m3s == 0) {
                points.back() = point;
            } else {
                points.push_back(point);
            }
        }
        return points;
    }

private:
    const Plant& m_plant;
    const PlantPart& m_pump;
    Cut m_cut;
    const LoopAnswer& m_answer;
    int m_heaterLink = -1;
    bool m_heaterForward = true;
};

/// The first circulator with a place on the loop's way.
const PlantPart* drivingPump(const Plant& plant, const LoopMap& map)
{
    for (const auto* way : {&map.returnWay, &map.hotWay}) {
        for (const Hop& hop : *way) {
            for (const document::PartId id : plant.chains[static_cast<std::size_t>(hop.link)].partsInOrder) {
                if (plant.find(id)->model.circulator) {
                    return plant.find(id);
                }
            }
        }
    }
    for (const PlantPart* pump : plant.withRole(parts::Role::Circulator)) {
        if (pump->places[0].link >= 0) {
            return pump;
        }
    }
    return nullptr;
}

}  // namespace

const PumpSet* LoopCurves::find(PumpArrangement arrangement, double battery_V) const
{
    const auto at = std::find_if(sets.begin(), sets.end(), [&](const PumpSet& set) {
        return set.arrangement == arrangement && std::abs(set.battery_V - battery_V) < 1e-9;
    });
    return at == sets.end() ? nullptr : &*at;
}

Result<LoopCurves> loopCurves(const document::Drawing& drawing)
{
    const auto plant = makePlant(drawing, document::View::After);
    if (!plant) {
        return tl::unexpected(plant.error());
    }
    const LoopMap map = findLoop(drawing, *plant, coldStart(drawing));
    const PlantPart* pump = drivingPump(*plant, map);
    if (!map.answer.exists || !pump || map.answer.heater == document::kNoPart) {
        return problem(map.answer.reason, "Draw the loop from the heater through a pump and back.");
    }
    LoopCurves curves;
    curves.pump = pump->id;
    curves.water_C = map.answer.coldStart_C;
    curves.activationFlow_m3s = map.answer.activationFlow_m3s;
    curves.holdFlow_m3s = map.answer.holdFlow_m3s;
    curves.drawnFlow_m3s = map.answer.flow_m3s;
    Sets sets(*plant, map, *pump);
    double most_m = 0;
    for (const PumpArrangement arrangement :
         {PumpArrangement::One, PumpArrangement::TwoInParallel, PumpArrangement::TwoInSeries}) {
        for (const double volts : kStudyVolts) {
            curves.sets.push_back(sets.at(arrangement, volts));
            for (const LoopPoint& point : curves.sets.back().curve) {
                most_m = std::max(most_m, point.head_m);
            }
        }
    }
    curves.system = sets.system(most_m);
    return curves;
}

}  // namespace tapward::study
