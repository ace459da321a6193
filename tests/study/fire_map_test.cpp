// SPDX-License-Identifier: GPL-3.0-or-later
#include "study/fire_map.h"

#include <algorithm>
#include <cmath>

#include "document/file.h"
#include "ring.h"
#include "study/simulate.h"
#include "support/catch.h"

using namespace tapward;
using Catch::Matchers::WithinAbs;
using Catch::Matchers::WithinRel;

TEST_CASE("the least outlet of a lit burner follows the trade's heating identity", "[study][fire]")
{
    // BTU/h = 500 gpm rise(°F): 8.33 lb/gal times 60 min, water near room temperature. An identity of the trade.
    heater::TanklessSpec spec;
    spec.minimumInput_W = 15000 * us::kBtuPerHour;
    spec.efficiency = 0.8;
    const double outlet_C = study::leastOutlet_C(spec, 0.5 * us::kGpm, us::celsius(60));
    CHECK_THAT(us::fahrenheit(outlet_C), WithinAbs(60 + 15000 * 0.8 / (500 * 0.5), 0.5));
}

TEST_CASE("the fire map shows cold, lit and overheating water where the heater's data put them", "[study][fire]")
{
    const auto drawing = document::load(TAPWARD_SOURCE_DIR "/tests/study/trade_ranges.tapward");
    REQUIRE(drawing.has_value());
    const auto map = study::fireMap(*drawing);
    REQUIRE(map.has_value());
    heater::TanklessSpec spec;
    const document::Part* part = drawing->findTag("WH1");
    const parts::Values values = document::values(*part);
    spec.minimumInput_W = values.number("minimum_input_W");
    spec.efficiency = values.number("efficiency");
    int cold = 0, hot = 0, other = 0;
    for (std::size_t i = 0; i < map->inlet_C.size(); ++i) {
        for (std::size_t f = 0; f < map->flow_m3s.size(); ++f) {
            CAPTURE(map->flow_m3s[f] / us::kGpm, map->inlet_C[i], map->outlet_C[i * map->flow_m3s.size() + f]);
            const study::FireOutcome outcome = map->at(i, f);
            const double least_C = study::leastOutlet_C(spec, map->flow_m3s[f], map->inlet_C[i]);
            if (map->flow_m3s[f] < map->activationFlow_m3s) {
                CHECK(outcome == study::FireOutcome::DoesNotLight);
                ++cold;
            } else if (least_C > map->setpoint_C + 5 && least_C < map->heaterLimit_C - 5) {
                CHECK(outcome == study::FireOutcome::OverOutletLimit);
                ++hot;
            } else if (least_C < map->setpoint_C - 2 && map->inlet_C[i] > 20) {
                CHECK((outcome == study::FireOutcome::Holds || outcome == study::FireOutcome::OvershootsSetpoint));
                ++other;
            }
        }
    }
    CHECK(cold > 50);
    CHECK(hot > 20);
    CHECK(other > 50);
}

TEST_CASE("over three presses the loop's path climbs from cold water into overheating", "[study][fire]")
{
    const auto drawing = document::load(TAPWARD_SOURCE_DIR "/tests/study/trade_ranges.tapward");
    REQUIRE(drawing.has_value());
    const auto map = study::fireMap(*drawing);
    REQUIRE(map.has_value());
    REQUIRE(map->path.size() > 60);
    CHECK(map->path.front().press == 1);
    CHECK(map->path.back().press == 3);
    double hottest1_C = 0, hottest3_C = 0;
    for (const study::FirePathPoint& point : map->path) {
        (point.press == 1 ? hottest1_C : hottest3_C) =
            std::max(point.press == 1 ? hottest1_C : hottest3_C, point.inlet_C);
    }
    CHECK(hottest3_C > hottest1_C + 5);
}

namespace {

constexpr double kQuiet_m3s = 2.5e-5;  ///< the flow asked about below
constexpr double kInlet_C = 20;

/// The shortest loop, its heater set to 50 °C with a least fire that lifts kQuiet_m3s by this much.
test::Ring heaterRing(double rise_K)
{
    test::Ring ring;
    ring.set("WH1", "setpoint_C", 50.0);
    ring.set("WH1", "efficiency", 0.8);
    ring.set("WH1", "activation_flow_m3s", 2e-5);
    ring.set("WH1", "hold_flow_m3s", 1.5e-5);
    ring.set("WH1", "outlet_limit_C", 85.0);
    ring.set("WH1", "eco_limit_C", 93.0);
    ring.set("WH1", "maximum_input_W", 20000.0);
    // 4.186 kJ/(kg K) at 998 kg/m³: handbook water at 20 °C; per volume some 1 % less when it is hot.
    ring.set("WH1", "minimum_input_W", rise_K * kQuiet_m3s * 4186 * 998 / 0.8);
    return ring;
}

/// What becomes of kQuiet_m3s at kInlet_C: a map of four cells with that one at its upper corner.
study::FireMap cornerMap(const document::Drawing& drawing, double outletLimit_C = 60, double overshoot_K = 3)
{
    study::FireMapOptions options;
    options.flows = options.inlets = 2;
    options.mostFlow_m3s = kQuiet_m3s / 0.75;
    options.leastInlet_C = kInlet_C - 3;
    options.mostInlet_C = kInlet_C + 1;
    options.outletLimit_C = outletLimit_C;
    options.overshoot_K = overshoot_K;
    options.presses = 0;
    const auto map = study::fireMap(drawing, options);
    REQUIRE(map.has_value());
    CHECK_THAT(map->flow_m3s.at(1), WithinRel(kQuiet_m3s, 1e-9));
    CHECK_THAT(map->flow_m3s.at(0), WithinRel(kQuiet_m3s / 3, 1e-9));
    CHECK_THAT(map->inlet_C.at(1), WithinAbs(kInlet_C, 1e-9));
    CHECK_THAT(map->inlet_C.at(0), WithinAbs(kInlet_C - 2, 1e-9));
    return *map;
}

}  // namespace

TEST_CASE("each outcome comes where the heating identity puts it", "[study][fire]")
{
    using enum study::FireOutcome;
    const auto outcome = [](const test::Ring& ring, double outletLimit_C = 60, double overshoot_K = 3) {
        return cornerMap(ring.drawing, outletLimit_C, overshoot_K).at(1, 1);
    };
    // Least fire lifts 20 °C by 20 K: it modulates to its 50 °C.
    const study::FireMap held = cornerMap(heaterRing(20).drawing);
    CHECK(held.at(1, 1) == Holds);
    CHECK_THAT(held.outlet_C[1 * 2 + 1], WithinAbs(50, 1));
    // A third of the flow is below what it lights at: cold stays cold.
    CHECK(held.at(1, 0) == DoesNotLight);
    CHECK_THAT(held.outlet_C[1 * 2 + 0], WithinAbs(20, 1e-6));
    CHECK_THAT(held.outlet_C[0], WithinAbs(18, 1e-6));
    CHECK(held.activationFlow_m3s == 2e-5);
    CHECK(held.holdFlow_m3s == 1.5e-5);
    CHECK(held.setpoint_C == 50);
    CHECK(held.heaterLimit_C == 85);
    CHECK(held.outletLimit_C == 60);
    CHECK(held.path.empty());
    // By 32 K to 52 °C: within 3 K of the setpoint; by 35 K to 55: over it.
    CHECK(outcome(heaterRing(32)) == Holds);
    CHECK(outcome(heaterRing(32), 60, 1) == OvershootsSetpoint);
    const study::FireMap over = cornerMap(heaterRing(35).drawing);
    CHECK(over.at(1, 1) == OvershootsSetpoint);
    CHECK_THAT(over.outlet_C[3], WithinAbs(55, 0.6));
    CHECK(outcome(heaterRing(35), 60, 7) == Holds);
    // By 45 K to 65: over the outlets' limit of 60, not over one of 70. A setpoint above the limit is no overshoot.
    CHECK(outcome(heaterRing(45)) == OverOutletLimit);
    CHECK(outcome(heaterRing(45), 70) == OvershootsSetpoint);
    CHECK(outcome(heaterRing(20), 45) == Holds);
    // By 70 K to 90: its own limit of 85 puts it out, and it lights again.
    CHECK(outcome(heaterRing(70)) == Cycles);
    // The over-temperature switch opens first.
    test::Ring eco = heaterRing(70);
    eco.set("WH1", "eco_limit_C", 75.0);
    CHECK(outcome(eco) == LocksOut);
    CHECK(study::rank(DoesNotLight) == 0);
    CHECK(study::rank(Holds) == 0);
    CHECK(study::rank(OvershootsSetpoint) > 0);
    CHECK(study::rank(OverOutletLimit) > study::rank(OvershootsSetpoint));
    CHECK(study::rank(Cycles) > study::rank(OverOutletLimit));
    CHECK(study::rank(LocksOut) > study::rank(Cycles));
}

TEST_CASE("at altitude the least fire is weaker, in the line and in the map", "[study][fire]")
{
    // 4 % less per 1,000 ft above 2,000 ft, counted from there (NFPA 54 / ANSI Z223.1): 2,500 m are 8,202 ft, so
    // 0.752 of the fire. 60 K of rise become 45.1 K.
    test::Ring ring = heaterRing(60);
    ring.set("WH1", "altitude_derate", std::string("from_2000_ft"));
    const study::FireMap low = cornerMap(ring.drawing);
    CHECK_THAT(low.outlet_C[3], WithinAbs(80, 0.9));
    CHECK_THAT(low.setpointInlet_C.at(1), WithinAbs(50 - 60, 0.9));
    CHECK_THAT(low.setpointInlet_C.at(0), WithinAbs(50 - 180, 2.7));  // a third of the flow, three times the rise
    ring.drawing.job.altitude_m = 2500;
    const study::FireMap high = cornerMap(ring.drawing);
    CHECK_THAT(high.outlet_C[3], WithinAbs(20 + 45.1, 0.7));
    CHECK_THAT(high.setpointInlet_C.at(1), WithinAbs(50 - 45.1, 0.7));
    heater::TanklessSpec spec;
    spec.minimumInput_W = 6000;
    spec.efficiency = 0.8;
    const double sea_K = study::leastOutlet_C(spec, kQuiet_m3s, 15) - 15;
    spec.altitude_m = 2500;
    CHECK_THAT(study::leastOutlet_C(spec, kQuiet_m3s, 15) - 15, WithinRel(0.752 * sea_K, 1e-3));
}

TEST_CASE("the cell nearest to some water is told", "[study][fire]")
{
    using enum study::FireOutcome;
    study::FireMap map;
    map.flow_m3s = {1e-5, 2e-5, 4e-5};
    map.inlet_C = {10, 20};
    map.outcomes = {DoesNotLight, Holds, OvershootsSetpoint, OverOutletLimit, Cycles, LocksOut};
    CHECK(map.at(1, 0) == OverOutletLimit);
    CHECK(map.at(0, 2) == OvershootsSetpoint);
    CHECK(map.nearest(0, 0) == DoesNotLight);
    CHECK(map.nearest(1.4e-5, 14) == DoesNotLight);
    CHECK(map.nearest(1.6e-5, 14) == Holds);
    CHECK(map.nearest(2e-5, 20) == Cycles);
    CHECK(map.nearest(2.9e-5, 16) == Cycles);
    CHECK(map.nearest(3.1e-5, 14) == OvershootsSetpoint);
    CHECK(map.nearest(9e-5, 90) == LocksOut);
    CHECK(map.nearest(1e-5, 90) == OverOutletLimit);
}

TEST_CASE("outcomes have ids that stay and titles of their own", "[study][fire]")
{
    using enum study::FireOutcome;
    CHECK(study::id(DoesNotLight) == "does_not_light");
    CHECK(study::id(Holds) == "holds");
    CHECK(study::id(OvershootsSetpoint) == "overshoots");
    CHECK(study::id(OverOutletLimit) == "over_limit");
    CHECK(study::id(Cycles) == "cycles");
    CHECK(study::id(LocksOut) == "locks_out");
    CHECK(study::title(DoesNotLight) == "Does not light");
    CHECK(study::title(Holds) == "Holds its setpoint");
    CHECK(study::title(OvershootsSetpoint) == "Overshoots its setpoint");
    CHECK(study::title(OverOutletLimit) == "Over the outlets' limit");
    CHECK(study::title(Cycles) == "Cycles on its own limit");
    CHECK(study::title(LocksOut) == "Locks out");
}

TEST_CASE("the map reaches past the flow it lights at and past the loop's own", "[study][fire]")
{
    // By design: two and a half times the larger of both, in equal cells from nothing.
    test::Ring ring = heaterRing(20);
    study::FireMapOptions options;
    options.flows = 5;
    options.inlets = 2;
    options.presses = 0;
    const study::LoopAnswer loop = study::loopAnswer(ring.drawing);
    REQUIRE(loop.flow_m3s.has_value());
    for (const double lights_m3s : {2 * *loop.flow_m3s, 0.5 * *loop.flow_m3s}) {
        ring.set("WH1", "activation_flow_m3s", lights_m3s);
        const auto map = study::fireMap(ring.drawing, options);
        REQUIRE(map.has_value());
        const double most = 2.5 * std::max(lights_m3s, *loop.flow_m3s);
        CHECK_THAT(map->flow_m3s.front(), WithinRel(most * 0.1, 1e-6));
        CHECK_THAT(map->flow_m3s.back(), WithinRel(most * 0.9, 1e-6));
        CHECK(map->heater == ring.drawing.findTag("WH1")->id);
    }
    std::stop_source stop;
    stop.request_stop();
    options.stop = stop.get_token();
    CHECK_FALSE(study::fireMap(ring.drawing, options).has_value());
    options.stop = {};
    ring.drawing.find(ring.drawing.findTag("WH1")->id)->kind = "storage_heater";
    const auto none = study::fireMap(ring.drawing, options);
    REQUIRE_FALSE(none.has_value());
    CHECK(none.error().what.text.starts_with("No tankless heater"));
}
