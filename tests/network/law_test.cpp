// SPDX-License-Identifier: GPL-3.0-or-later
#include "network/law.h"

#include <algorithm>
#include <cmath>

#include <rapidcheck.h>

#include "network/random_network.h"
#include "support/catch.h"

using namespace tapward::network;

TEST_CASE("Every law rises with flow at every setting, and its slope is that of the law", "[network]")
{
    CHECK(rc::check("any law", [] {
        const test::Draw draw = [](int low, int high) { return *rc::gen::inRange(low, high + 1); };
        const Law law = test::someLaw(draw);
        const double sign = draw(0, 1) ? 1 : -1;
        const double q = sign * std::pow(10.0, -9 + 0.1 * draw(0, 60));
        const LawValue here = evaluate(law, q, 990, 5e-4);
        RC_ASSERT(std::isfinite(here.loss));
        RC_ASSERT(here.slope > 0);
        const double d = 1e-4 * std::abs(q) + 1e-9;  // wide enough for the least slope to show beside 7e5 Pa
        const double above = evaluate(law, q + d, 990, 5e-4).loss;
        const double below = evaluate(law, q - d, 990, 5e-4).loss;
        RC_ASSERT(above > here.loss);
        RC_ASSERT(below < here.loss);
        // By the mean value theorem each difference quotient is a slope taken within its stretch.
        const double rounding = 1e-15 * (std::abs(here.loss) + 1e6) / d;
        auto slopeAt = [&](double flow) { return evaluate(law, flow, 990, 5e-4).slope; };
        for (double side : {-1.0, 1.0}) {
            const double quotient = (side > 0 ? above - here.loss : here.loss - below) / d;
            const auto [least, most] = std::minmax({here.slope, slopeAt(q + 0.5 * side * d), slopeAt(q + side * d)});
            RC_ASSERT(quotient <= most * 1.01 + rounding);
            RC_ASSERT(quotient >= least * 0.99 - rounding);
        }
    }));
}

TEST_CASE("A valve half open passes half the flow at the same pressure", "[network]")
{
    for (double cap : {0.0, 1e-4}) {
        const double full = evaluate(ResistanceLaw{1e11, 1.0, 0, cap}, 1.2e-4, 998.2, 1e-3).loss;
        CHECK_THAT(evaluate(ResistanceLaw{1e11, 0.5, 0, cap}, 0.6e-4, 998.2, 1e-3).loss, WithinRel(full, 1e-12));
    }
    // loss = R q|q|, met within 0.02 % at 0.1 gpm (6.3e-6 m³/s)
    CHECK_THAT(evaluate(ResistanceLaw{1e11}, 6.3e-6, 998.2, 1e-3).loss, WithinRel(1e11 * 6.3e-6 * 6.3e-6, 2e-4));
    CHECK_THAT(evaluate(ResistanceLaw{1e11}, -1e-4, 998.2, 1e-3).loss, WithinRel(-1e3, 1e-5));
}

TEST_CASE("A flow regulator holds its flow within 3 % up to 0.3 MPa", "[network]")
{
    const ResistanceLaw shower{3e13, 1, 0, 1e-4};  // 0.3 MPa at 1e-4 without the regulator
    const double below = evaluate(shower, 0.9e-4, 998.2, 1e-3).loss;
    CHECK_THAT(below, WithinRel(3e13 * 0.81e-8, 1e-4));
    CHECK(evaluate(ResistanceLaw{1e12, 1, 0, 1e-4}, 1.03e-4, 998.2, 1e-3).loss > 0.3e6);
}

TEST_CASE("A shut valve lets through its leak and no more", "[network]")
{
    CHECK(isShut(ResistanceLaw{1e11, 0}));
    CHECK(isShut(ResistanceLaw{1e11, 9e-4}));
    CHECK_FALSE(isShut(ResistanceLaw{1e11, 1e-2}));
    CHECK_FALSE(isShut(ResistanceLaw{1e11, 0, 1e-12}));
    CHECK_THAT(evaluate(ResistanceLaw{1e11, 0, 1e-12}, 1e-7, 998.2, 1e-3).loss, WithinRel(1e5, 1e-9));
    CHECK(isShut(CheckLaw{3447, 0, 0, CheckLaw::Condition::StuckShut}));
    CHECK(isShut(SourceLaw{3e5, 1e5, 0, true, false}));
    CHECK_FALSE(isShut(SourceLaw{3e5}));
}

TEST_CASE("A check valve opens at its cracking pressure and bars the way back", "[network]")
{
    const CheckLaw sound{3447, 1e11};
    CHECK_THAT(evaluate(sound, 1e-9, 998.2, 1e-3).loss, WithinRel(3447.0, 1e-4));
    CHECK_THAT(evaluate(sound, 1e-4, 998.2, 1e-3).loss, WithinRel(3447.0 + 1e3, 1e-4));
    CHECK(evaluate(sound, -1e-12, 998.2, 1e-3).loss < -1e5);
    CHECK(ways(sound).forward);
    CHECK_FALSE(ways(sound).backward);
    const CheckLaw leaky{3447, 1e11, 1e-12};
    CHECK(ways(leaky).backward);
    CHECK_THAT(evaluate(leaky, -1e-7, 998.2, 1e-3).loss, WithinRel(-1e5, 1e-9));
    const CheckLaw open{3447, 1e11, 0, CheckLaw::Condition::StuckOpen};
    CHECK(ways(open).backward);
    CHECK_THAT(evaluate(open, -1e-4, 998.2, 1e-3).loss, WithinRel(-1e3, 1e-4));
}

TEST_CASE("A source gives its pressure at rest and less the more it gives", "[network]")
{
    const SourceLaw city{3.5e5, 1e8, 1e10};
    CHECK(evaluate(city, 0, 998.2, 1e-3).loss == -3.5e5);
    CHECK_THAT(evaluate(city, 1e-4, 998.2, 1e-3).loss, WithinRel(-3.5e5 + 1e4 + 1e2, 1e-6));
    CHECK_FALSE(ways(city).backward);
    CHECK(ways(SourceLaw{3.5e5, 1e8, 0, false}).backward);
}

TEST_CASE("Resistances scale with the density of the water inside", "[network]")
{
    const double cold = evaluate(ResistanceLaw{1e11}, 1e-4, 998.2, 1e-3).loss;
    CHECK_THAT(evaluate(ResistanceLaw{1e11}, 1e-4, 965.3, 3e-4).loss, WithinRel(cold * 965.3 / 998.2, 1e-6));
}
