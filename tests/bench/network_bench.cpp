// SPDX-License-Identifier: GPL-3.0-or-later
// How long the flows of a coach take, and how that grows with the size of the network.
//
// One coach: a supply, a heater, a hot and a cold line of eight pipes each with an outlet at every joint,
// and two small circulators with check valves that return the hot line's end to the heater: 37 links.
// Larger ones are chains of such coaches on one cold line. Figures are printed, not judged.

#include <cmath>
#include <ctime>
#include <memory>
#include <vector>

#include <fmt/format.h>

#include "network/network.h"

using namespace tapward::network;

namespace {

constexpr int kPipes = 8;

PipeLaw pipe(double length_m) { return {length_m, 0.012065, 1.5e-6, 6.0}; }

struct Size {
    Network network;
    std::vector<int> outlets;
};

Size build(int coaches)
{
    const auto curve = std::make_shared<const PumpCurve>(
        *PumpCurve::fromReadings({{0, 3.0}, {5e-5, 2.6}, {1e-4, 1.8}, {1.5e-4, 0.8}, {1.8e-4, 0}}));
    Size s;
    int before = kOutside;
    for (int k = 0; k < coaches; ++k) {
        std::vector<int> cold, hot;
        for (int i = 0; i <= kPipes; ++i) {
            cold.push_back(s.network.addJunction());
            hot.push_back(s.network.addJunction());
        }
        if (before == kOutside)
            s.network.addLink({kOutside, cold[0], {{SourceLaw{3.5e5, 1e8, 0, true, true}}}});
        else
            s.network.addLink({before, cold[0], {{pipe(2)}}});
        before = cold.back();
        s.network.addLink({cold[0], hot[0], {{pipe(1)}, {ResistanceLaw{2e12}}, {pipe(1)}}});
        for (std::size_t i = 0; i < kPipes; ++i) {
            s.network.addLink({cold[i], cold[i + 1], {{pipe(1 + 0.1 * static_cast<double>(i))}}});
            s.network.addLink({hot[i], hot[i + 1], {{pipe(1 + 0.2 * static_cast<double>(i))}}});
            s.outlets.push_back(s.network.addLink({cold[i + 1], kOutside, {{pipe(0.5)}, {ResistanceLaw{3e13, 0}}}}));
            s.outlets.push_back(s.network.addLink({hot[i + 1], kOutside, {{pipe(0.5)}, {ResistanceLaw{3e13, 0}}}}));
        }
        for (int p = 0; p < 2; ++p)
            s.network.addLink({hot.back(),
                               cold[0],
                               {{pipe(8)}, {PumpLaw{curve, 1, 1e12}}, {CheckLaw{1000, 1e11}}, {ResistanceLaw{1e11}}}});
    }
    s.network.prepare();
    return s;
}

void warmUp(Network& network, double share)
{
    for (int l = 0; l < network.linkCount(); ++l)
        for (Element& e : network.elements(l))
            e.viscosity = 1e-3 * (1 - share * (1 + 0.3 * std::sin(l)));
}

// Processor time, so that a busy machine matters less.
template <class F>
double microseconds(int repeats, F&& work)
{
    const std::clock_t start = std::clock();
    for (int i = 0; i < repeats; ++i)
        work(i);
    return 1e6 * static_cast<double>(std::clock() - start) / CLOCKS_PER_SEC / repeats;
}

}  // namespace

int main()
{
    fmt::print("coaches  links  slightly warmer (us, steps)  outlet opened, shut (us, steps)  from rest (us, steps)  "
               "us per link\n");
    double before = 0;
    for (int coaches : {1, 10, 100, 1000}) {
        Size s = build(coaches);
        Network& network = s.network;
        const int repeats = 2000 / coaches + 5;
        int bad = 0;
        double steps = 0;
        auto solve = [&] {
            const Solution& r = network.solve();
            bad += r.outcome != Outcome::Solved;
            steps += r.iterations;
        };
        solve();
        steps = 0;
        const double warm = microseconds(repeats, [&](int i) {
            warmUp(network, 0.5 * (i % 200) / 200);
            solve();
        });
        const double warmSteps = steps / repeats;
        steps = 0;
        const double turned = microseconds(repeats, [&](int i) {
            Element& outlet = network.elements(s.outlets[static_cast<std::size_t>(i / 2) % s.outlets.size()]).back();
            std::get<ResistanceLaw>(outlet.law).opening = i % 2 == 0;
            solve();
        });
        const double turnedSteps = steps / repeats;
        steps = 0;
        const double rest = microseconds(repeats, [&](int) {
            network.forgetStart();
            solve();
        });
        fmt::print("{:7}  {:5}  {:16.1f} {:10.1f}  {:20.1f} {:10.1f}  {:12.1f} {:8.1f}  {:11.3f}", coaches,
                   network.linkCount(), warm, warmSteps, turned, turnedSteps, rest, steps / repeats,
                   warm / network.linkCount());
        if (before > 0)
            fmt::print("  grows with size^{:.2f}", std::log10(warm / before));
        if (bad)
            fmt::print("  {} NOT SETTLED", bad);
        fmt::print("\n");
        before = warm;
    }
}
