// SPDX-License-Identifier: GPL-3.0-or-later
#include "network/network.h"

#include <cmath>
#include <numbers>
#include <vector>

#include "base/units.h"
#include "support/catch.h"

using namespace tapward;
using namespace tapward::network;

namespace {

constexpr double kG = 9.81;  // the worked examples take 9.81
constexpr double kDensity = 998.2;

// A pipe of fixed friction factor, as in textbook networks, is a square-law resistance.
Element fixedPipe(double f, double length, double bore)
{
    return {ResistanceLaw{8 * f * length * kDensity / (std::numbers::pi * std::numbers::pi * std::pow(bore, 5))}};
}

Element heldPressure(double pascal) { return {SourceLaw{pascal, 0, 0, false, true}}; }
Element head(double metres) { return heldPressure(kDensity * kG * metres); }

Element squareLaw(double r) { return {ResistanceLaw{r}}; }

}  // namespace

TEST_CASE("Two pipes in series lose the sum", "[network][published]")
{
    // Engineering board review, hydraulics 15 (found; recomputed): 200 m x 200 mm + 150 m x 150 mm, f 0.020,
    // 0.050 m³/s: 10.70 m as printed, 10.7428 m computed.
    Network n;
    const int a = n.addJunction();
    const int first = n.addLink({kOutside, a, {head(10.7428), fixedPipe(0.020, 200, 0.2)}});
    const int second = n.addLink({a, kOutside, {fixedPipe(0.020, 150, 0.15)}});
    n.prepare();
    const Solution& s = n.solve();
    REQUIRE(s.outcome == Outcome::Solved);
    // the supply itself loses 100 Pa/(m³/s), 5 Pa of 1e5
    CHECK_THAT(s.flow_m3s[first], WithinRel(0.050, 5e-5));
    CHECK_THAT(s.flow_m3s[second], WithinRel(0.050, 5e-5));
}

TEST_CASE("Two like pipes share flow by the root of their lengths", "[network][published]")
{
    // Same source: lengths 100 m and 400 m, total 0.120 m³/s: 0.080 and 0.040.
    Network n;
    const int a = n.addJunction();
    const int b = n.addJunction();
    const int one = n.addLink({a, b, {fixedPipe(0.02, 100, 0.2)}});
    const int four = n.addLink({a, b, {fixedPipe(0.02, 400, 0.2)}});
    const double loss = std::get<ResistanceLaw>(fixedPipe(0.02, 100, 0.2).law).R * 0.080 * 0.080;
    n.addLink({kOutside, a, {heldPressure(loss)}});
    n.addLink({b, kOutside, {}});
    n.prepare();
    const Solution& s = n.solve();
    CHECK_THAT(s.flow_m3s[one] / s.flow_m3s[four], WithinRel(2.0, 1e-7));
    // the ends lose 100 Pa/(m³/s) each, 0.1 % of this pair
    CHECK_THAT(s.flow_m3s[one] + s.flow_m3s[four], WithinRel(0.120, 1e-3));
}

TEST_CASE("Three pipes in series between reservoirs carry the printed flow", "[network][published]")
{
    // Same source: 25 m, lengths 500/400/300 m, bores 300/250/200 mm, f .020/.022/.018: 0.100 m³/s printed.
    Network n;
    const int l =
        n.addLink({kOutside,
                   kOutside,
                   {head(25), fixedPipe(.020, 500, .3), fixedPipe(.022, 400, .25), fixedPipe(.018, 300, .2)}});
    n.prepare();
    CHECK_THAT(n.solve().flow_m3s[l], WithinRel(0.100424, 5e-5));
}

TEST_CASE("Three parallel legs between two pipes take the printed flows", "[network][published]")
{
    // Hydraulics course sheet (found; recomputed): 0.440 m³/s, f .02, 1000 m x .75; legs 600 x .30, 500 x .25,
    // 800 x .40; 1200 x .90. Legs 0.127, 0.088, 0.226 m³/s printed; loss 8.5505 m recomputed exactly.
    Network n;
    const int b = n.addJunction();
    const int c = n.addJunction();
    const int in = n.addLink({kOutside, b, {head(8.5505), fixedPipe(.02, 1000, .75)}});
    const int legs[] = {n.addLink({b, c, {fixedPipe(.02, 600, .30)}}), n.addLink({b, c, {fixedPipe(.02, 500, .25)}}),
                        n.addLink({b, c, {fixedPipe(.02, 800, .40)}})};
    n.addLink({c, kOutside, {fixedPipe(.02, 1200, .90)}});
    n.prepare();
    const Solution& s = n.solve();
    CHECK_THAT(s.flow_m3s[in], WithinRel(0.440, 5e-4));
    CHECK_THAT(s.flow_m3s[legs[0]], WithinRel(0.12672, 5e-4));
    CHECK_THAT(s.flow_m3s[legs[1]], WithinRel(0.08800, 5e-4));
    CHECK_THAT(s.flow_m3s[legs[2]], WithinRel(0.22528, 5e-4));
}

TEST_CASE("Rough pipes in series, in parallel and between three reservoirs carry the printed flows",
          "[network][published]")
{
    // White, Fluid Mechanics, chapter 6, multiple-pipe examples (data and printed answers from memory, reproduced
    // with fluids 1.0.22 and scipy 1.10.1): 100 m/8 cm/.24 mm, 150 m/6 cm/.12 mm, 80 m/4 cm/.20 mm; density 1000,
    // kinematic viscosity 1.02e-6. They use Colebrook's factor, Churchill's is up to 1 % off it there.
    auto pipe = [](double length, double bore, double roughness) {
        Element e{PipeLaw{length, bore, roughness, 0}};
        e.density = 1000;
        e.viscosity = 1.02e-3;
        return e;
    };
    const Element one = pipe(100, .08, 2.4e-4), two = pipe(150, .06, 1.2e-4), three = pipe(80, .04, 2e-4);
    {
        Network n;
        n.addLink({kOutside, kOutside, {heldPressure(1000 * 9.81 * 20.2905), one, two, three}});
        n.prepare();
        CHECK_THAT(n.solve().flow_m3s[0] * 3600, WithinRel(10.22, 0.01));  // printed 10.2 m³/h
    }
    {
        Network n;
        const int a = n.addJunction();
        n.addLink({kOutside, a, {heldPressure(1000 * 9.81 * 20.3)}});
        for (const Element& e : {one, two, three})
            n.addLink({a, kOutside, {e}});
        n.prepare();
        const Solution& s = n.solve();
        CHECK_THAT(s.flow_m3s[1] * 3600, WithinRel(62.55, 0.01));  // printed 62.5, 25.9, 11.4
        CHECK_THAT(s.flow_m3s[2] * 3600, WithinRel(25.91, 0.01));
        CHECK_THAT(s.flow_m3s[3] * 3600, WithinRel(11.41, 0.01));
    }
    {
        Network n;
        const int j = n.addJunction();
        n.addLink({kOutside, j, {heldPressure(1000 * 9.81 * 20), one}});
        n.addLink({kOutside, j, {heldPressure(1000 * 9.81 * 100), two}});
        n.addLink({kOutside, j, {heldPressure(1000 * 9.81 * 40), three}});
        n.prepare();
        const Solution& s = n.solve();
        CHECK_THAT(s.pressure_Pa[j] / 9810, WithinRel(34.5408, 0.005));
        CHECK_THAT(s.flow_m3s[0], WithinRel(-0.01468, 0.01));
        CHECK_THAT(s.flow_m3s[1], WithinRel(0.0130583, 0.01));
        CHECK_THAT(s.flow_m3s[2], WithinRel(0.00162177, 0.02));
    }
}

TEST_CASE("The five-pipe network of two loops has the printed flows and pressures", "[network][published]")
{
    // White, Fluid Mechanics, problem on the five-pipe horizontal network (answers from memory, diameters
    // reconstructed from them, scipy 1.10.1): f .025, AB 4000 ft/8 in, AC 3000/6, BC 5000/9, BD 3000/3, CD 4000/8;
    // 120 psig at A; 2 ft³/s through. 62.4 lbf/ft³ = 999.55 kg/m³.
    auto pipe = [](double feet, double inches) {
        Element e = fixedPipe(0.025, feet * us::kFoot, inches * us::kInch);
        std::get<ResistanceLaw>(e.law).R *= 62.4 * us::kPound / std::pow(us::kFoot, 3) / kDensity;
        return e;
    };
    Network n;
    const int a = n.addJunction(), b = n.addJunction(), c = n.addJunction(), d = n.addJunction();
    const int ab = n.addLink({a, b, {pipe(4000, 8)}});
    const int ac = n.addLink({a, c, {pipe(3000, 6)}});
    const int bc = n.addLink({b, c, {pipe(5000, 9)}});
    const int bd = n.addLink({b, d, {pipe(3000, 3)}});
    const int cd = n.addLink({c, d, {pipe(4000, 8)}});
    n.addLink({kOutside, a, {heldPressure(120 * us::kPsi)}});
    n.addLink({kOutside, d, {heldPressure(522192)}});
    n.prepare();
    const Solution& s = n.solve();
    REQUIRE(s.outcome == Outcome::Solved);
    const double cubicFoot = std::pow(us::kFoot, 3);
    // The pressures at A and D are held behind 100 Pa/(m³/s), which costs a few Pa of 3e5: 5e-5 of flow.
    CHECK_THAT(s.flow_m3s[ab] / cubicFoot, WithinRel(1.1870, 2e-4));  // printed 1.19
    CHECK_THAT(s.flow_m3s[ac] / cubicFoot, WithinRel(0.8130, 2e-4));  // 0.81
    CHECK_THAT(s.flow_m3s[bc] / cubicFoot, WithinRel(0.9899, 2e-4));  // 0.99
    CHECK_THAT(s.flow_m3s[bd] / cubicFoot, WithinRel(0.1971, 3e-4));  // 0.20
    CHECK_THAT(s.flow_m3s[cd] / cubicFoot, WithinRel(1.8029, 2e-4));  // 1.80
    CHECK_THAT(s.pressure_Pa[b] / us::kPsi, WithinAbs(108.32, 0.02));  // printed 108
    CHECK_THAT(s.pressure_Pa[c] / us::kPsi, WithinAbs(102.68, 0.02));  // printed 103
}

TEST_CASE("A balanced bridge carries nothing across", "[network][published]")
{
    // Closed form: rAB/rAC = rBD/rCD; h = r Q|Q|, 1, 4, bridge 3, 2, 8; 10 through: 20/3 and 10/3.
    const double unit = 1e6;
    Network n;
    const int a = n.addJunction(), b = n.addJunction(), c = n.addJunction(), d = n.addJunction();
    const int ab = n.addLink({a, b, {squareLaw(1 * unit)}});
    const int ac = n.addLink({a, c, {squareLaw(4 * unit)}});
    const int bc = n.addLink({b, c, {squareLaw(3 * unit)}});
    n.addLink({b, d, {squareLaw(2 * unit)}});
    n.addLink({c, d, {squareLaw(8 * unit)}});
    const double drive = 3 * unit * (400.0 / 9);  // (1 + 2) (20/3)²
    n.addLink({kOutside, a, {heldPressure(drive)}});
    n.addLink({d, kOutside, {}});
    n.prepare();
    const Solution& s = n.solve();
    CHECK(std::abs(s.flow_m3s[bc]) < 1e-8);
    CHECK_THAT(s.flow_m3s[ab] / s.flow_m3s[ac], WithinRel(2.0, 1e-8));
    CHECK_THAT(s.flow_m3s[ab], WithinRel(20.0 / 3, 1e-5));  // the ends lose 100 Pa/(m³/s) of 1.3e8 Pa
}

TEST_CASE("An unbalanced bridge meets its closed form", "[network][published]")
{
    // Closed form, point symmetric: r 1, 5, bridge 1, 5, 1; 10 through: 20/3, 10/3 and 10/3 across, since
    // (20/3)² + (10/3)² = 5 (10/3)².
    const double unit = 1e6;
    Network n;
    const int a = n.addJunction(), b = n.addJunction(), c = n.addJunction(), d = n.addJunction();
    const int ab = n.addLink({a, b, {squareLaw(1 * unit)}});
    const int ac = n.addLink({a, c, {squareLaw(5 * unit)}});
    const int bc = n.addLink({b, c, {squareLaw(1 * unit)}});
    const int bd = n.addLink({b, d, {squareLaw(5 * unit)}});
    const int cd = n.addLink({c, d, {squareLaw(1 * unit)}});
    n.addLink({kOutside, a, {heldPressure(unit * (400.0 / 9 + 5 * 100.0 / 9))}});
    n.addLink({d, kOutside, {}});
    n.prepare();
    const Solution& s = n.solve();
    const double through = s.flow_m3s[ab] + s.flow_m3s[ac];
    CHECK_THAT(through, WithinRel(10.0, 1e-5));
    CHECK_THAT(s.flow_m3s[ab] / through, WithinAbs(2.0 / 3, 1e-8));
    CHECK_THAT(s.flow_m3s[cd] / through, WithinAbs(2.0 / 3, 1e-8));
    CHECK_THAT(s.flow_m3s[bd] / through, WithinAbs(1.0 / 3, 1e-8));
    CHECK_THAT(s.flow_m3s[bc] / through, WithinAbs(1.0 / 3, 1e-8));
}

TEST_CASE("Water standing in a column weighs on its foot, and warm water rises in a loop", "[network]")
{
    {
        Network n;
        const int foot = n.addJunction();
        Element up{PipeLaw{2}};
        up.rise_m = 2;
        n.addLink({foot, kOutside, {up}});
        n.addLink({foot, kOutside, {{ResistanceLaw{1e11, 0}}}});
        n.prepare();
        const Solution& s = n.solve();
        CHECK(s.flow_m3s[0] == 0);
        CHECK_THAT(s.pressure_Pa[foot], WithinRel(998.2 * 9.80665 * 2, 1e-9));
    }
    // A loop of two 2 m legs of 12.065 mm bore, 50 C in one and 20 C in the other: the weights differ by
    // 9.80665 * 2 * (998.2 - 988.1) = 198.1 Pa, laminar loss 128 mu L / (pi D⁴) per flow in each.
    Network n;
    const int low = n.addJunction(), high = n.addJunction();
    Element warm{PipeLaw{2}};
    warm.rise_m = 2;
    warm.density = 988.1;
    warm.viscosity = 5e-3;  // thick enough to stay laminar, so that the answer is closed
    Element cold{PipeLaw{2}};
    cold.rise_m = 2;
    cold.viscosity = 5e-3;
    const int rising = n.addLink({low, high, {warm}});
    const int falling = n.addLink({low, high, {cold}});
    n.prepare();
    const Solution& s = n.solve();
    const double perFlow = 2 * 128 * 5e-3 * 2 / (std::numbers::pi * std::pow(0.012065, 4));
    CHECK_THAT(s.flow_m3s[rising], WithinRel(9.80665 * 2 * (998.2 - 988.1) / perFlow, 1e-6));
    CHECK_THAT(s.flow_m3s[falling], WithinRel(-s.flow_m3s[rising], 1e-9));
    CHECK(s.isolated[low] == 1);
    CHECK(std::isnan(s.pressure_Pa[low]));
}

TEST_CASE("What only has ways out is isolated, wherever the solve starts", "[network]")
{
    // Three one-way links out of `low`: through a supply the wrong way round, up a column, and a way that comes and
    // goes. What pushes at them is of different strength, yet nothing can come in.
    Network n;
    const int low = n.addJunction(), beside = n.addJunction();
    n.addLink({low, beside, {}});
    Element pushing{SourceLaw{-5e4, 0}}, valve{ResistanceLaw{0, 0.001}}, pipe{PipeLaw{0, 0.002, 0, 0}};
    pushing.reversed = valve.reversed = pipe.reversed = true;
    n.addLink({kOutside, low, {pipe, valve, pushing}});
    Element column{CheckLaw{0, 0, 0}};
    column.rise_m = 1;
    n.addLink({low, kOutside, {column}});
    Element supply{SourceLaw{1e5, 0}};
    supply.rise_m = 1;
    supply.reversed = true;
    supply.density = 999.9;
    const int back = n.addLink({kOutside, low, {supply}});
    Element feed{SourceLaw{1e5, 1e5}};
    std::get<SourceLaw>(feed.law).connected = false;
    const int in = n.addLink({kOutside, low, {feed}});
    n.prepare();
    const std::vector<std::uint8_t> both{1, 1}, none{0, 0};
    const auto connect = [&](int link, bool connected) {
        std::get<SourceLaw>(n.elements(link)[0].law).connected = connected;
    };
    connect(back, false);
    CHECK(n.solve().isolated == both);
    connect(back, true);
    CHECK(n.solve().isolated == both);
    n.forgetStart();
    CHECK(n.solve().isolated == both);
    connect(in, true);
    const Solution& fed = n.solve();
    CHECK(fed.isolated == none);
    CHECK(fed.flow_m3s[static_cast<std::size_t>(in)] > 1e-3);
    connect(in, false);  // what flowed has no way in any more
    const Solution& cut = n.solve();
    CHECK(cut.isolated == both);
    for (const double flow : cut.flow_m3s)
        CHECK(flow == 0);
}

TEST_CASE("Senseless drawings have answers too", "[network]")
{
    SECTION("nothing at all")
    {
        Network n;
        n.prepare();
        CHECK(n.solve().outcome == Outcome::Solved);
    }
    SECTION("everything shut, a supply on")
    {
        Network n;
        const int a = n.addJunction();
        const int b = n.addJunction();
        n.addLink({kOutside, a, {{SourceLaw{3e5}}}});
        n.addLink({a, b, {{PipeLaw{3}}}});
        n.addLink({b, kOutside, {{PipeLaw{1}}, {ResistanceLaw{1e11, 0}}}});
        n.prepare();
        const Solution& s = n.solve();
        REQUIRE(s.outcome == Outcome::Solved);
        for (double q : s.flow_m3s)
            CHECK(q == 0);
        CHECK_THAT(s.pressure_Pa[b], WithinRel(3e5, 1e-9));
        CHECK(s.isolated[b] == 0);
    }
    SECTION("no supply, nothing moves and nothing is known")
    {
        Network n;
        const int a = n.addJunction();
        const int b = n.addJunction();
        n.addLink({a, b, {{PipeLaw{3}}}});
        n.addLink({a, b, {{PipeLaw{1}}}});
        n.addJunction();  // joined to nothing
        n.prepare();
        const Solution& s = n.solve();
        REQUIRE(s.outcome == Outcome::Solved);
        CHECK(s.flow_m3s[0] == 0);
        CHECK(s.isolated == std::vector<std::uint8_t>{1, 1, 1});
    }
    SECTION("a link from the outside to itself, and one from a junction to itself")
    {
        Network n;
        const int a = n.addJunction();
        const int spill = n.addLink({kOutside, kOutside, {heldPressure(1e5), squareLaw(1e13)}});
        const int ring = n.addLink({a, a, {{PipeLaw{1}}}});
        const int zero = n.addLink({a, kOutside, {{PipeLaw{0, 0.012, 0, 0}}}});
        n.prepare();
        const Solution& s = n.solve();
        CHECK_THAT(s.flow_m3s[spill], WithinRel(1e-4, 1e-4));
        CHECK(s.flow_m3s[ring] == 0);
        CHECK(s.flow_m3s[zero] == 0);
        CHECK(s.pressure_Pa[a] == 0);
    }
}

TEST_CASE("The losses of a link's elements add up to its pressure difference", "[network]")
{
    Network n;
    const int a = n.addJunction();
    n.addLink({kOutside, a, {{SourceLaw{3e5}}, {PipeLaw{4}}, {CheckLaw{}}}});
    n.addLink({a, kOutside, {{PipeLaw{2}}, {ResistanceLaw{3e13}}}});
    n.addLink({kOutside, a, {{PipeLaw{4}}, {CheckLaw{}}}});
    n.prepare();
    const Solution& s = n.solve();
    std::vector<double> losses(3);
    n.elementLosses(0, losses);
    CHECK_THAT(losses[0] + losses[1] + losses[2], WithinAbs(-s.pressure_Pa[a], 1e-3));
    CHECK_THAT(losses[1], WithinRel(evaluate(PipeLaw{4}, s.flow_m3s[0], 998.2, 1e-3).loss, 1e-9));
    // the check that holds against the supply takes all of it
    CHECK(s.flow_m3s[2] == 0);
    n.elementLosses(2, losses);
    CHECK(losses[0] == 0);
    CHECK_THAT(losses[1], WithinRel(-s.pressure_Pa[a], 1e-9));
}

TEST_CASE("A slightly warmer coach is solved again in one or two steps", "[network]")
{
    Network n;
    std::vector<int> at;
    for (int i = 0; i < 20; ++i)
        at.push_back(n.addJunction());
    n.addLink({kOutside, at[0], {{SourceLaw{3.5e5, 1e8}}}});
    for (int i = 0; i < 19; ++i)
        n.addLink({at[i], at[i + 1], {{PipeLaw{1.5, 0.012065, 1.5e-6, 6}}}});
    for (int i = 0; i < 20; ++i)
        n.addLink({at[i], kOutside, {{ResistanceLaw{3e13, i % 3 == 0 ? 1.0 : 0.0}}}});
    n.prepare();
    n.solve();
    double viscosity = 1e-3;
    for (int step = 0; step < 50; ++step) {
        viscosity *= 0.99;
        for (int l = 0; l < n.linkCount(); ++l)
            for (Element& e : n.elements(l))
                e.viscosity = viscosity;
        const Solution& s = n.solve();
        CHECK(s.outcome == Outcome::Solved);
        CHECK(s.iterations <= 2);
    }
}
