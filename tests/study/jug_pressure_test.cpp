// SPDX-License-Identifier: GPL-3.0-or-later
// A flow measured with jug and stopwatch, no gauge read: the drawing then gives what was measured.
#include "study/jug_pressure.h"

#include "study/trailer.h"
#include "support/units.h"

using namespace tapward;
using test::kGpm;
using namespace tapward::document;

namespace {

/// What the outlet gives, alone and fully open, some time after it was opened.
double givenBy(const Drawing& drawing, const char* tag, ActionKind supply, double hotShare)
{
    Case script = test::draws(drawing, supply, {{tag, 1, 100, 1, hotShare}});
    script.view = View::Before;
    const study::CaseResult result = test::runCase(drawing, script);
    const study::Series* curve = result.find(std::string("tap_flow.") + tag);
    REQUIRE(curve);
    std::size_t i = 0;
    while (result.time_s[i] < 60)
        ++i;
    return curve->values[i];
}

}  // namespace

TEST_CASE("an outlet whose flow was measured without a gauge gives that flow", "[study][jug]")
{
    const auto supply = GENERATE(ActionKind::UseCity, ActionKind::UsePump);
    const double gpm = GENERATE(0.7, 1.36);
    CAPTURE(supply == ActionKind::UsePump, gpm);
    Drawing drawing = test::trailer();
    const PartId tap = drawing.findTag("F1")->id;
    const auto flow = jugFlow({{gpm * kGpm * 60, 60}});
    REQUIRE(flow);
    const auto pressure = study::jugPressure(drawing, tap, flow->flow_m3s, supply);
    REQUIRE(pressure);
    CHECK(pressure->basis() == parts::Basis::Estimated);
    // Without it, it is the flow at the 60 psi that taps are rated at, which no coach has at a tap.
    auto asWas = setJugFlow(drawing, tap, *flow, std::nullopt);
    REQUIRE(asWas);
    Drawing before = drawing;
    apply(before, *asWas);
    CHECK(givenBy(before, "F1", supply, 0) < 0.95 * gpm * kGpm);

    auto edit = setJugFlow(drawing, tap, *flow, *pressure);
    REQUIRE(edit);
    apply(drawing, *edit);
    CHECK_THAT(givenBy(drawing, "F1", supply, 0), WithinRel(gpm * kGpm, 0.01));
}

TEST_CASE("more than the drawing can pass is said, with the most it passes", "[study][jug]")
{
    const Drawing drawing = test::trailer();
    const PartId tap = drawing.findTag("F1")->id;
    const auto pressure = study::jugPressure(drawing, tap, 40 * kGpm, ActionKind::UsePump);
    REQUIRE_FALSE(pressure);
    CHECK(pressure.error().what.text.ends_with("from the demand pump."));
    const auto& most = std::get<Measure>(pressure.error().what.arguments.at(1));
    CHECK(most.si > 0.5 * kGpm);
    CHECK(most.si < 40 * kGpm);
    CHECK_FALSE(study::jugPressure(drawing, drawing.findTag("DP1")->id, kGpm, ActionKind::UsePump));
    CHECK_FALSE(study::jugPressure(drawing, tap, 0, ActionKind::UsePump));
}

TEST_CASE("only supplies that are drawn are offered", "[study][jug]")
{
    Drawing drawing = test::trailer();
    const PartId tap = drawing.findTag("F1")->id;
    CHECK(study::jugSupplies(drawing, tap) == std::vector{ActionKind::UseCity, ActionKind::UsePump});
    drawing.find(drawing.findTag("DP1")->id)->stage = Stage::Added;  // not there when it was measured
    CHECK(study::jugSupplies(drawing, tap) == std::vector{ActionKind::UseCity});
}
