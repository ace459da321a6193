// SPDX-License-Identifier: GPL-3.0-or-later
// Pumps on system curves, alone, in series and in parallel, with and without check valves.

#include <cmath>
#include <functional>
#include <memory>
#include <vector>

#include "base/units.h"
#include "network/network.h"
#include "support/catch.h"

using namespace tapward;
using namespace tapward::network;

namespace {

constexpr double kWeight = 998.2 * 9.80665;  // Pa per m of water
constexpr double kLpm = 1e-3 / 60;

std::shared_ptr<const PumpCurve> curveOf(double shutOff_m, double fall, double unit)
{
    // H = shutOff - fall (Q/unit)², read at 64 flows up to where it gives out
    std::vector<PumpCurve::Reading> readings;
    const double last = std::sqrt(shutOff_m / fall);
    for (int i = 0; i < 64; ++i) {
        const double q = last * i / 63;
        readings.push_back({q * unit, std::max(0.0, shutOff_m - fall * q * q)});
    }
    return std::make_shared<const PumpCurve>(*PumpCurve::fromReadings(std::move(readings)));
}

Element systemCurve(double lift_m, double rise, double unit)
{
    Element e{ResistanceLaw{kWeight * rise / (unit * unit)}};
    e.rise_m = lift_m;
    return e;
}

enum class Joining { One, Series, Parallel };

// Flow through the system with one pump or two like ones.
double flowOf(std::shared_ptr<const PumpCurve> curve, Element system, Joining joining)
{
    Network n;
    const int a = n.addJunction();
    const Element pump{PumpLaw{curve, 1, 0}};
    if (joining == Joining::Series)
        n.addLink({kOutside, a, {pump, pump}});
    else
        n.addLink({kOutside, a, {pump}});
    if (joining == Joining::Parallel)
        n.addLink({kOutside, a, {pump}});
    const int load = n.addLink({a, kOutside, {system}});
    n.prepare();
    const Solution& s = n.solve();
    REQUIRE(s.outcome == Outcome::Solved);
    return s.flow_m3s[load];
}

}  // namespace

TEST_CASE("A pump works where its curve meets the system's", "[network][published]")
{
    // Cengel & Cimbala, chapter 14 problem (data found, answer by arithmetic): H = 7.46 - 0.0453 Q²,
    // system 3.52 + 0.0261 Q² (m; L/min): 7.428 L/min.
    CHECK_THAT(flowOf(curveOf(7.46, 0.0453, kLpm), systemCurve(3.52, 0.0261, kLpm), Joining::One) / kLpm,
               WithinRel(7.42849, 1e-4));

    // Textbook problem (data found, answers by arithmetic): h = 20 [1 - (Q/100)²], system 5 + 0.002 Q² (m;
    // L/min): one 61.237, two in series 76.376, two in parallel 77.460 L/min.
    const auto curve = curveOf(20, 20e-4, kLpm);
    const Element system = systemCurve(5, 0.002, kLpm);
    CHECK_THAT(flowOf(curve, system, Joining::One) / kLpm, WithinRel(61.237, 1e-4));
    CHECK_THAT(flowOf(curve, system, Joining::Series) / kLpm, WithinRel(76.376, 1e-4));
    CHECK_THAT(flowOf(curve, system, Joining::Parallel) / kLpm, WithinRel(77.460, 1e-4));
}

TEST_CASE("A 32 in pump works alone, in parallel and in series as printed", "[network][published]")
{
    // White, Fluid Mechanics, chapter 11 worked examples (curves and answers from memory, arithmetic reproduces
    // them): H = 490 - 0.26 Q² ft, system 120 + 1.335 Q² ft, Q in thousand gpm: 15.2, 16.3, 21.5 printed.
    const double unit = 1000 * us::kGpm;
    const auto curve = curveOf(490 * us::kFoot, 0.26 * us::kFoot, unit);
    const Element system = systemCurve(120 * us::kFoot, 1.335 * us::kFoot, unit);
    CHECK_THAT(flowOf(curve, system, Joining::One) / unit, WithinRel(15.231, 5e-4));
    CHECK_THAT(flowOf(curve, system, Joining::Parallel) / unit, WithinRel(16.257, 5e-4));
    CHECK_THAT(flowOf(curve, system, Joining::Series) / unit, WithinRel(21.532, 5e-4));
}

TEST_CASE("Two pumps move the printed flows through a known system", "[network][published]")
{
    // Fluid-mechanics textbook problem (answers found; curves back-solved up to a common factor): 6.74 L/s
    // alone, 10.00 in parallel, 11.47 in series.
    const auto curve = curveOf(20, 0.08, 1e-3);
    const Element system = systemCurve(15, 0.03, 1e-3);
    CHECK_THAT(flowOf(curve, system, Joining::One) * 1e3, WithinRel(6.742, 1e-3));
    CHECK_THAT(flowOf(curve, system, Joining::Parallel) * 1e3, WithinRel(10.00, 1e-3));
    CHECK_THAT(flowOf(curve, system, Joining::Series) * 1e3, WithinRel(11.4708, 1e-3));
}

TEST_CASE("A pump of few readings works near where straight lines between them would put it", "[network][published]")
{
    // Engineering review problem 4.9.4 (data found; answers computed with straight lines between the readings,
    // scipy 1.10.1): 155.68, series 223.66, parallel 169.27 gpm. A smooth curve may bend 2 % away from them.
    std::vector<PumpCurve::Reading> readings;
    for (auto [gpm, feet] : {std::pair{0., 100.}, {110., 90.}, {180., 80.}, {250., 60.}, {300., 40.}, {340., 20.}})
        readings.push_back({gpm * us::kGpm, feet * us::kFoot});
    const auto curve = std::make_shared<const PumpCurve>(*PumpCurve::fromReadings(readings));
    const Element system = systemCurve(35 * us::kFoot, 0.002 * us::kFoot, us::kGpm);
    CHECK_THAT(flowOf(curve, system, Joining::One) / us::kGpm, WithinRel(155.68, 0.02));
    CHECK_THAT(flowOf(curve, system, Joining::Series) / us::kGpm, WithinRel(223.66, 0.02));
    CHECK_THAT(flowOf(curve, system, Joining::Parallel) / us::kGpm, WithinRel(169.27, 0.02));
}

TEST_CASE("A strong pump holds the weak one's check valve shut", "[network][published]")
{
    // Closed form: A 30 - 0.5 Q², B 20 - 0.5 Q², system 22 + 0.1 Q² (m; L/min): A 3.65148, B 0, head 23.3333.
    Network n;
    const int a = n.addJunction();
    const Element check{CheckLaw{0, 0}};
    const int strong = n.addLink({kOutside, a, {{PumpLaw{curveOf(30, 0.5, kLpm), 1, 0}}, check}});
    const int weak = n.addLink({kOutside, a, {{PumpLaw{curveOf(20, 0.5, kLpm), 1, 0}}, check}});
    const int load = n.addLink({a, kOutside, {systemCurve(22, 0.1, kLpm)}});
    n.prepare();
    {
        const Solution& s = n.solve();
        REQUIRE(s.outcome == Outcome::Solved);
        CHECK_THAT(s.flow_m3s[strong] / kLpm, WithinRel(3.65148, 2e-5));
        CHECK(s.flow_m3s[weak] == 0);
        CHECK_THAT(s.pressure_Pa[a] / kWeight, WithinRel(23.3333, 1e-5));
    }
    // Computed (scipy 1.10.1 brentq) for the lower system 5 + 0.1 Q²: A 5.721638, B 3.568912, 13.631432 m.
    n.elements(load)[0].rise_m = 5;
    const Solution& s = n.solve();
    REQUIRE(s.outcome == Outcome::Solved);
    CHECK_THAT(s.flow_m3s[strong] / kLpm, WithinRel(5.721638, 2e-5));
    CHECK_THAT(s.flow_m3s[weak] / kLpm, WithinRel(3.568912, 2e-5));
    CHECK_THAT(s.pressure_Pa[a] / kWeight, WithinRel(13.631432, 1e-5));
}

TEST_CASE("A check valve stands against reverse head", "[network][published]")
{
    // By definition: a loop with one check valve and 10 kPa against it carries nothing.
    Network n;
    const int a = n.addJunction(), b = n.addJunction();
    n.addLink({a, b, {{PipeLaw{5}}, {CheckLaw{0, 1e11}}}});
    const int back = n.addLink({a, b, {{PipeLaw{5}}, {SourceLaw{10e3, 0, 0, false, true}}}});
    n.prepare();
    const Solution& s = n.solve();
    REQUIRE(s.outcome == Outcome::Solved);
    CHECK(s.flow_m3s[0] == 0);
    CHECK(s.flow_m3s[back] == 0);
    // turned round, the same push drives it
    n.elements(0)[1].reversed = true;
    CHECK(n.solve().flow_m3s[0] < -1e-5);
}

TEST_CASE("A check valve opens exactly when the push passes its cracking pressure", "[network]")
{
    for (double push : {0.0, 1000.0, 3446.9, 3447.0, 3447.1, 4000.0}) {
        CAPTURE(push);
        Network n;
        const int a = n.addJunction();
        n.addLink({kOutside, a, {{SourceLaw{push, 0, 0, false, true}}}});
        n.addLink({a, kOutside, {{PipeLaw{5}}, {CheckLaw{3447, 1e11}}}});
        n.prepare();
        const Solution& s = n.solve();
        REQUIRE(s.outcome == Outcome::Solved);
        if (push <= 3447)
            CHECK(s.flow_m3s[1] <= 1e-12);
        else
            CHECK(s.flow_m3s[1] > 1e-9);
        CHECK(s.flow_m3s[1] >= 0);
        CHECK_THAT(s.pressure_Pa[a], WithinAbs(push, 1e-2));
    }
}

TEST_CASE("Two pumps driven against each other rest or run as the stronger one will", "[network]")
{
    const auto strong = curveOf(30, 0.5, kLpm);
    const auto weak = curveOf(20, 0.5, kLpm);
    Network n;
    Element against{PumpLaw{weak, 1, 1e12}};
    against.reversed = true;
    n.addLink({kOutside, kOutside, {{PumpLaw{strong, 1, 1e12}}, against, {PipeLaw{3}}}});
    n.prepare();
    const Solution& s = n.solve();
    REQUIRE(s.outcome == Outcome::Solved);
    CHECK(s.flow_m3s[0] > 0);
    // like pumps stand still
    std::get<PumpLaw>(n.elements(0)[1].law).curve = strong;
    CHECK_THAT(n.solve().flow_m3s[0], WithinAbs(0, 1e-10));  // the solver's flow tolerance
}

TEST_CASE("A ring of check valves with a pump in it opens all round, without any fixed pressure", "[network]")
{
    const auto curve = curveOf(3, 0.05, kLpm);
    Network n;
    const int a = n.addJunction(), b = n.addJunction(), c = n.addJunction();
    const Element check{CheckLaw{1000, 1e11}};
    n.addLink({a, b, {check, {PumpLaw{curve, 0, 1e12}}}});
    n.addLink({b, c, {check, {PipeLaw{4}}}});
    n.addLink({c, a, {check, {PipeLaw{4}}}});
    n.prepare();
    {
        const Solution& s = n.solve();
        for (double q : s.flow_m3s)
            CHECK(q == 0);
    }
    std::get<PumpLaw>(n.elements(0)[1].law).speed = 1;
    {
        const Solution& s = n.solve();
        REQUIRE(s.outcome == Outcome::Solved);
        CHECK(s.flow_m3s[0] > 1e-5);
        CHECK_THAT(s.flow_m3s[1], WithinRel(s.flow_m3s[0], 1e-9));
    }
    // with one of them turned about, nothing can go round
    n.elements(2)[0].reversed = true;
    const Solution& s = n.solve();
    REQUIRE(s.outcome == Outcome::Solved);
    for (double q : s.flow_m3s)
        CHECK(q == 0);
}

TEST_CASE("At rest a supply shows through its check valve, whatever ran before", "[network]")
{
    Network n;
    const int a = n.addJunction();
    n.addLink({kOutside, a, {{SourceLaw{3e5, 1e8}}}});
    n.addLink({kOutside, a, {{SourceLaw{2e5, 1e8}}}});
    const int tap = n.addLink({a, kOutside, {{ResistanceLaw{3e13, 1}}}});
    n.prepare();
    auto opening = [&](double share) { std::get<ResistanceLaw>(n.elements(tap)[0].law).opening = share; };
    for (double share : {1.0, 0.0, 0.5, 0.0}) {
        opening(share);
        const Solution& s = n.solve();
        REQUIRE(s.outcome == Outcome::Solved);
        CHECK(s.flow_m3s[1] == 0);
        if (share == 0) {
            CHECK(s.isolated[a] == 0);
            CHECK_THAT(s.pressure_Pa[a], WithinAbs(3e5, 1e-3));
        }
    }
    // a pressure pushed up by the higher supply falls back to the lower one when the higher is cut off
    std::get<SourceLaw>(n.elements(0)[0].law).connected = false;
    CHECK_THAT(n.solve().pressure_Pa[a], WithinAbs(2e5, 1e-3));
}
