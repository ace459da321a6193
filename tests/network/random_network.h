// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cmath>
#include <cstddef>
#include <functional>
#include <memory>
#include <span>
#include <utility>
#include <vector>

#include "network/network.h"

namespace tapward::network::test {

/// Draws an integer from low to high, both included.
using Draw = std::function<int(int low, int high)>;

inline double pick(const Draw& draw, std::initializer_list<double> values)
{
    return *(values.begin() + draw(0, static_cast<int>(values.size()) - 1));
}

inline std::shared_ptr<const PumpCurve> someCurve(const Draw& draw)
{
    const double head = pick(draw, {0.5, 3, 30});
    const double flow = pick(draw, {5e-5, 3e-4, 2e-3});
    std::vector<PumpCurve::Reading> readings{{0, head}};
    for (int i = 1; i <= draw(1, 5); ++i)
        readings.push_back({flow * i, readings.back().head_m * 0.25 * draw(0, 4)});
    return std::make_shared<const PumpCurve>(*PumpCurve::fromReadings(readings));
}

/// Any law at any setting, the senseless ones included.
inline Law someLaw(const Draw& draw)
{
    switch (draw(0, 7)) {
    case 0:
    case 1:
        return PipeLaw{pick(draw, {0, 1e-6, 0.1, 3, 40, 1000}), pick(draw, {0.002, 0.009, 0.012065, 0.022}),
                       pick(draw, {0, 1.5e-6, 1e-4}), pick(draw, {0, 0.5, 12, 300})};
    case 2:
        return ResistanceLaw{pick(draw, {0, 1, 1e9, 1e11, 1e15}), pick(draw, {0, 1e-4, 1e-3, 0.05, 0.5, 1}),
                             pick(draw, {0, 0, 1e-20, 1e-13, 1e-9}), pick(draw, {0, 0, 1e-5, 1.4e-4})};
    case 3:
    case 4:
        return CheckLaw{pick(draw, {0, 100, 3447}), pick(draw, {0, 1e9, 1e11}), pick(draw, {0, 0, 0, 1e-12}),
                        pick(draw, {0, 0, 0, 0, 1, 2}) == 0 ? CheckLaw::Condition::Sound
                        : draw(0, 1) == 0                   ? CheckLaw::Condition::StuckOpen
                                                            : CheckLaw::Condition::StuckShut};
    case 5:
    case 6:
        return PumpLaw{draw(0, 9) == 0 ? nullptr : someCurve(draw), pick(draw, {0, 0.01, 0.4, 0.9, 1, 1.2}),
                       pick(draw, {0, 1e10, 1e12})};
    default:
        return SourceLaw{pick(draw, {0, -5e4, 1e5, 3e5, 7e5}), pick(draw, {0, 1e5, 1e8}), pick(draw, {0, 1e10}),
                         draw(0, 2) != 0, draw(0, 4) != 0};
    }
}

inline Element someElement(const Draw& draw)
{
    Element e;
    e.law = someLaw(draw);
    e.rise_m = pick(draw, {0, 0, 0, 1, -1, 0.3});
    e.density = pick(draw, {998.2, 960, 999.9});
    e.viscosity = pick(draw, {1e-3, 3e-4, 1.7e-3});
    e.reversed = draw(0, 2) == 0;
    return e;
}

/// Any graph: self loops, parallel links, parts without a way out, links from the outside to itself.
inline Network someNetwork(const Draw& draw, int mostJunctions, int mostLinks,
                           std::vector<std::pair<int, int>>* ends = nullptr)
{
    Network network;
    const int junctions = draw(0, mostJunctions);
    for (int i = 0; i < junctions; ++i)
        network.addJunction();
    const int links = draw(0, mostLinks);
    for (int l = 0; l < links; ++l) {
        Link link;
        link.from = draw(-1, junctions - 1);
        link.to = draw(-1, junctions - 1);
        const int elements = draw(0, 3);
        for (int e = 0; e < elements; ++e)
            link.elements.push_back(someElement(draw));
        if (ends)
            ends->push_back({link.from, link.to});
        network.addLink(std::move(link));
    }
    network.prepare();
    return network;
}

/// New settings of the same parts, as a running case makes them.
inline void changeSettings(const Draw& draw, Network& network)
{
    for (int l = 0; l < network.linkCount(); ++l)
        for (Element& e : network.elements(l)) {
            e.viscosity = pick(draw, {1e-3, 3e-4, 1.7e-3});
            if (auto* valve = std::get_if<ResistanceLaw>(&e.law))
                valve->opening = pick(draw, {0, 0.3, 1});
            if (auto* pump = std::get_if<PumpLaw>(&e.law))
                pump->speed = pick(draw, {0, 0.7, 1});
            if (auto* source = std::get_if<SourceLaw>(&e.law))
                source->connected = draw(0, 1) == 0;
            if (auto* check = std::get_if<CheckLaw>(&e.law))
                check->condition = draw(0, 4) == 0 ? CheckLaw::Condition::StuckOpen : CheckLaw::Condition::Sound;
        }
}

struct Barred {
    bool forward = false;
    bool backward = false;
};

inline Barred barred(const Network& network, int link)
{
    Barred b;
    for (const Element& e : network.elements(link)) {
        const Ways w = ways(e.law);
        b.forward = b.forward || !(e.reversed ? w.backward : w.forward);
        b.backward = b.backward || !(e.reversed ? w.forward : w.backward);
    }
    return b;
}

/// Loss of the whole link by the public law, hydrostatic part included.
inline double lossOf(const Network& network, int link, double flow)
{
    double loss = network.elements(link).empty() ? 100 * flow : 0;
    for (const Element& e : network.elements(link)) {
        const double own = e.reversed ? -evaluate(e.law, -flow, e.density, e.viscosity).loss
                                      : evaluate(e.law, flow, e.density, e.viscosity).loss;
        loss += own + 9.80665 * e.density * e.rise_m;
    }
    return loss;
}

}  // namespace tapward::network::test
