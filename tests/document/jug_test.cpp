// SPDX-License-Identifier: GPL-3.0-or-later
#include "document/jug.h"

#include "document/file.h"
#include "support/catch.h"

using namespace tapward;
using namespace tapward::document;

namespace {

Drawing kitchen()
{
    Drawing drawing;
    apply(drawing, *placePart(drawing, "faucet", {0, 0}, Stage::Existing));
    apply(drawing, *placePart(drawing, "check_valve", {10, 0}, Stage::Existing));
    return drawing;
}

}  // namespace

TEST_CASE("a gallon in a minute is a gallon a minute", "[jug]")
{
    // 1 US gallon = 3.785411784e-3 m3 exactly, NIST SP 811:2008
    const auto flow = jugFlow({{3.785411784e-3, 60}});
    REQUIRE(flow);
    CHECK_THAT(flow->flow_m3s, WithinRel(3.785411784e-3 / 60, 1e-12));
    CHECK(flow->deviation_m3s == 0);
    CHECK(flow->tries == 1);
}

TEST_CASE("tries are averaged by their flows and their scatter is told", "[jug]")
{
    // 2, 4 and 6 L/min: mean 4, sample standard deviation 2 (ISO 3534-1 definition, n - 1), by hand
    const double perMinute = 1e-3 / 60;
    const auto flow = jugFlow({{2e-3, 60}, {2e-3, 30}, {6e-3, 60}});
    REQUIRE(flow);
    CHECK_THAT(flow->flow_m3s, WithinRel(4 * perMinute, 1e-12));
    CHECK_THAT(flow->deviation_m3s, WithinRel(2 * perMinute, 1e-12));
    CHECK_THAT(flow->least_m3s, WithinRel(2 * perMinute, 1e-12));
    CHECK_THAT(flow->most_m3s, WithinRel(6 * perMinute, 1e-12));
    CHECK_THAT(flow->spread(), WithinRel(1.0, 1e-12));
}

TEST_CASE("no try, no time or an impossible jug is refused and the try named", "[jug]")
{
    CHECK_FALSE(jugFlow({}));
    for (const JugTry bad : {JugTry{1e-3, 0}, JugTry{0, 10}, JugTry{5, 10}, JugTry{1e-3, 1e9}, JugTry{NAN, 10}}) {
        const auto flow = jugFlow({{1e-3, 10}, bad});
        REQUIRE_FALSE(flow);
        CHECK(flow.error().where == "2");
    }
}

TEST_CASE("the measured flow goes into the part as measured, with the pressure noted, in one step", "[jug]")
{
    Drawing drawing = kitchen();
    const std::string before = write(drawing);
    const auto flow = jugFlow({{1e-3, 20}});
    auto edit = setJugFlow(drawing, 1, *flow, JugPressure{300e3});
    REQUIRE(edit);
    const Edit back = apply(drawing, *edit);
    const auto held = values(*drawing.find(1));
    CHECK_THAT(held.number("rated_flow_m3s"), WithinRel(5e-5, 1e-12));
    CHECK(held.basis("rated_flow_m3s") == parts::Basis::Measured);
    CHECK(held.number("rated_pressure_Pa") == 300e3);
    CHECK(held.basis("rated_pressure_Pa") == parts::Basis::Measured);
    apply(drawing, back);
    CHECK(write(drawing) == before);

    edit = setJugFlow(drawing, 1, *flow, std::nullopt);
    REQUIRE(edit);
    apply(drawing, *edit);
    CHECK_FALSE(values(*drawing.find(1)).isSet("rated_pressure_Pa"));
    edit = setJugFlow(drawing, 1, *flow, JugPressure{200e3, ActionKind::UsePump});  // reckoned, not read
    REQUIRE(edit);
    Drawing reckoned = drawing;
    apply(reckoned, *edit);
    CHECK(values(*reckoned.find(1)).basis("rated_pressure_Pa") == parts::Basis::Estimated);
    CHECK_FALSE(setJugFlow(drawing, 2, *flow, std::nullopt));
    CHECK_FALSE(setJugFlow(drawing, 99, *flow, std::nullopt));
    CHECK_FALSE(setJugFlow(drawing, 1, *flow, JugPressure{-5.0}));
}

TEST_CASE("a wide spread, a missing pressure and a regulator below the flow are said", "[jug]")
{
    Drawing drawing = kitchen();
    const auto steady = jugFlow({{1e-3, 20}, {1e-3, 20.5}});
    CHECK(jugNotes(drawing, 1, *steady, JugPressure{300e3}).empty());
    CHECK(jugNotes(drawing, 1, *steady, std::nullopt).size() == 1);
    CHECK(jugNotes(drawing, 1, *steady, JugPressure{200e3, ActionKind::UsePump}).size() == 1);
    // 6 L in 20 s is 4.8 gpm, far above the faucet's own regulator
    const auto wild = jugFlow({{6e-3, 20}, {6e-3, 30}});
    CHECK(jugNotes(drawing, 1, *wild, std::nullopt).size() == 3);
}
