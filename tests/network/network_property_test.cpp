// SPDX-License-Identifier: GPL-3.0-or-later
// What must hold for every network that can be drawn: 100 cases of six random networks each, with every
// law at every setting, then two more solves of each under other settings.

#include <cmath>
#include <vector>

#include <rapidcheck.h>

#include "network/random_network.h"
#include "support/catch.h"

using namespace tapward::network;

namespace {

void holds(const Solution& s)
{
    RC_ASSERT(s.outcome == Outcome::Solved);
    double largest = 0;
    for (double q : s.flow_m3s)
        largest = std::max(largest, std::abs(q));
    // 1e-9 kg/s; a bare supply short-circuited to the open air runs thousands of m³/s, where rounding is more
    const double mass = 1e-12 + 1e-14 * largest;
    RC_ASSERT(s.massResidual_kgs <= 1000 * mass * 1.000001);
    RC_ASSERT(s.energyResidual_Pa < 1e-3);
}

}  // namespace

TEST_CASE("Every network settles, in balance, with one-way parts kept to their way", "[network]")
{
    CHECK(rc::check("random networks", [] {
        const test::Draw draw = [](int low, int high) { return *rc::gen::inRange(low, high + 1); };
        for (int copy = 0; copy < 6; ++copy) {
            Network network = test::someNetwork(draw, 8, 16);
            for (int phase = 0; phase < 3; ++phase) {
                if (phase > 0)
                    test::changeSettings(draw, network);
                const Solution& s = network.solve();
                holds(s);
                for (int l = 0; l < network.linkCount(); ++l) {
                    const auto i = static_cast<std::size_t>(l);
                    const test::Barred barred = test::barred(network, l);
                    const double q = s.flow_m3s[i];
                    RC_ASSERT(!(q > 0 && barred.forward));
                    RC_ASSERT(!(q < 0 && barred.backward));
                }
            }
        }
    }));
}

TEST_CASE("Flows and pressures obey the public laws, and what is held shut is held by pressure", "[network]")
{
    CHECK(rc::check("laws", [] {
        const test::Draw draw = [](int low, int high) { return *rc::gen::inRange(low, high + 1); };
        std::vector<std::pair<int, int>> ends;
        Network network;
        const int junctions = draw(1, 7);
        for (int i = 0; i < junctions; ++i)
            network.addJunction();
        const int links = draw(1, 14);
        for (int l = 0; l < links; ++l) {
            Link link{draw(-1, junctions - 1), draw(-1, junctions - 1), {}};
            for (int e = draw(1, 3); e > 0; --e)
                link.elements.push_back(test::someElement(draw));
            ends.push_back({link.from, link.to});
            network.addLink(std::move(link));
        }
        network.prepare();
        const Solution& s = network.solve();
        auto pressure = [&](int i) { return i == kOutside ? 0.0 : s.pressure_Pa[static_cast<std::size_t>(i)]; };
        for (int l = 0; l < links; ++l) {
            const auto [from, to] = ends[static_cast<std::size_t>(l)];
            const double across = pressure(from) - pressure(to);
            if (std::isnan(across))
                continue;
            const double q = s.flow_m3s[static_cast<std::size_t>(l)];
            const test::Barred barred = test::barred(network, l);
            if (barred.forward && barred.backward)
                continue;
            const double loss = test::lossOf(network, l, q);
            // A flow of less than 1e-13 m³/s is reported as none; through a leak it has a loss of its own.
            const double none = 1e-13;
            const double slack = 1e-2 + 1e-9 * std::abs(across);
            if (q == 0 && barred.backward)
                RC_ASSERT(across <= test::lossOf(network, l, none) + slack);
            else if (q == 0 && barred.forward)
                RC_ASSERT(across >= test::lossOf(network, l, -none) - slack);
            else if (std::abs(q) > 1e-10)
                RC_ASSERT(std::abs(across - loss) <= slack);
        }
    }));
}

TEST_CASE("The answer does not depend on where the solve starts", "[network]")
{
    CHECK(rc::check("two starts", [] {
        const test::Draw draw = [](int low, int high) { return *rc::gen::inRange(low, high + 1); };
        Network network = test::someNetwork(draw, 8, 16);
        network.solve();
        test::changeSettings(draw, network);
        const Solution warm = network.solve();
        network.forgetStart();
        const Solution& cold = network.solve();
        for (std::size_t l = 0; l < warm.flow_m3s.size(); ++l)
            RC_ASSERT(std::abs(warm.flow_m3s[l] - cold.flow_m3s[l]) <= 1e-8 + 1e-6 * std::abs(cold.flow_m3s[l]));
        RC_ASSERT(warm.isolated == cold.isolated);
    }));
}

TEST_CASE("A junction is isolated when no open way leads there from the open air, whatever flows", "[network]")
{
    CHECK(rc::check("isolated", [] {
        const test::Draw draw = [](int low, int high) { return *rc::gen::inRange(low, high + 1); };
        for (int copy = 0; copy < 10; ++copy) {
            std::vector<std::pair<int, int>> ends;
            Network network = test::someNetwork(draw, 8, 16, &ends);
            for (int phase = 0; phase < 3; ++phase) {
                if (phase > 0)
                    test::changeSettings(draw, network);
                const Solution& s = network.solve();
                std::vector<std::uint8_t> isolated(s.isolated.size(), 1);
                const auto cut = [&](int i) { return i != kOutside && isolated[static_cast<std::size_t>(i)]; };
                for (std::size_t pass = 0; pass <= isolated.size(); ++pass)
                    for (int l = 0; l < network.linkCount(); ++l) {
                        const auto [from, to] = ends[static_cast<std::size_t>(l)];
                        const test::Barred barred = test::barred(network, l);
                        if (!barred.forward && !cut(from) && cut(to))
                            isolated[static_cast<std::size_t>(to)] = 0;
                        if (!barred.backward && !cut(to) && cut(from))
                            isolated[static_cast<std::size_t>(from)] = 0;
                    }
                RC_ASSERT(s.isolated == isolated);
            }
        }
    }));
}

TEST_CASE("Opening the valve of a one-loop network never lowers its flow", "[network]")
{
    CHECK(rc::check("openings", [] {
        const test::Draw draw = [](int low, int high) { return *rc::gen::inRange(low, high + 1); };
        Network network;
        const int a = network.addJunction();
        const auto curve = test::someCurve(draw);
        network.addLink({a,
                         a,
                         {{PumpLaw{curve, 1, 1e12}},
                          {PipeLaw{5}},
                          {CheckLaw{test::pick(draw, {0, 100, 3447}), 1e11}},
                          {ResistanceLaw{1e11, 0}}}});
        network.prepare();
        double before = -1;
        for (int step = 0; step <= 40; ++step) {
            std::get<ResistanceLaw>(network.elements(0)[3].law).opening = step / 40.0;
            const double flow = network.solve().flow_m3s[0];
            RC_ASSERT(flow >= before - 1e-11);
            before = flow;
        }
    }));
}

TEST_CASE("A network of hundreds of links settles too", "[network]")
{
    CHECK(rc::check("large networks", [] {
        const test::Draw draw = [](int low, int high) { return *rc::gen::inRange(low, high + 1); };
        if (draw(0, 9) != 0)
            return;
        Network network = test::someNetwork(draw, 120, 250);
        holds(network.solve());
        test::changeSettings(draw, network);
        holds(network.solve());
    }));
}
