// SPDX-License-Identifier: GPL-3.0-or-later
#include "study/curves.h"

#include <cmath>
#include <numeric>

#include "document/file.h"
#include "parts/wire_gauge.h"
#include "ring.h"
#include "study/head_budget.h"
#include "support/catch.h"
#include "support/stored.h"

using namespace tapward;
using study::PumpArrangement;
using test::stored;

namespace {

constexpr double kWeight_N_m3 = 998.2 * 9.80665;

/// A pump h = shutOff - fall Q², a loop h = still + rise Q²; metres and m³/s. The loop's standing head is the
/// cracking pressure of its check valve.
document::Drawing printedLoop(double shutOff_m, double fall, double still_m, double rise)
{
    test::Ring ring;
    parts::Curve curve;
    const double runOut = std::sqrt(shutOff_m / fall);
    for (int i = 0; i <= 60; ++i) {
        const double flow = runOut * i / 60;
        curve.push_back({flow, std::max(0.0, shutOff_m - fall * flow * flow)});
    }
    ring.set("P1", "curve", curve);
    ring.set("CV1", "crack_Pa", still_m * kWeight_N_m3);
    ring.set("WH1", "loss_flow_m3s", 1e-2);
    ring.set("WH1", "loss_Pa", rise * 1e-4 * kWeight_N_m3);
    return ring.drawing;
}

double flow(const study::LoopCurves& curves, PumpArrangement arrangement, double volts = 12)
{
    const study::PumpSet* set = curves.find(arrangement, volts);
    REQUIRE(set);
    INFO(render(set->reason, UnitSystem::Us));
    REQUIRE(set->working.has_value());
    return set->working->flow_m3s;
}

}  // namespace

TEST_CASE("one pump, two in parallel and two in series work at the printed points", "[study][curves]")
{
    // Textbook problem: pump 20 - 0.08 Q², system 15 + 0.03 Q² (m, L/s), answers 6.74, 10.00 and 11.47 L/s,
    // printed; its equations are known up to one common factor only, and half of them is used here.
    {
        const auto curves = study::loopCurves(printedLoop(10, 0.04e6, 7.5, 0.015e6));
        REQUIRE(curves.has_value());
        CHECK_THAT(flow(*curves, PumpArrangement::One), WithinRel(6.74e-3, 2e-3));
        CHECK_THAT(flow(*curves, PumpArrangement::TwoInParallel), WithinRel(10.00e-3, 2e-3));
        CHECK_THAT(flow(*curves, PumpArrangement::TwoInSeries), WithinRel(11.47e-3, 2e-3));
    }
    // Textbook problem: pump 20 [1 - (Q/100)²], system 5 + 0.002 Q² (m, L/min); the data are printed, the
    // answers 61.237, 77.460 and 76.376 L/min are plain arithmetic on them.
    {
        const auto curves = study::loopCurves(printedLoop(20, 20 * 3600e6 / 1e4, 5, 0.002 * 3600e6));
        REQUIRE(curves.has_value());
        CHECK_THAT(flow(*curves, PumpArrangement::One) * 60e3, WithinRel(61.237, 2e-3));
        CHECK_THAT(flow(*curves, PumpArrangement::TwoInParallel) * 60e3, WithinRel(77.460, 2e-3));
        CHECK_THAT(flow(*curves, PumpArrangement::TwoInSeries) * 60e3, WithinRel(76.376, 2e-3));
    }
}

TEST_CASE("where two curves cross on the chart is where the network works", "[study][curves]")
{
    const auto curves = study::loopCurves(stored("samples/long_hall_coach.tapward"));
    REQUIRE(curves.has_value());
    REQUIRE(curves->system.size() > 10);
    int crossings = 0;
    for (const study::PumpSet& set : curves->sets) {
        CAPTURE(static_cast<int>(set.arrangement), set.battery_V);
        REQUIRE(set.working.has_value());
        // Head of the loop at the working flow, between its neighbours.
        const auto above = std::find_if(curves->system.begin(), curves->system.end(),
                                        [&](const study::LoopPoint& p) { return p.flow_m3s >= set.working->flow_m3s; });
        REQUIRE(above != curves->system.begin());
        REQUIRE(above != curves->system.end());
        const study::LoopPoint &a = *(above - 1), &b = *above;
        const double share = (set.working->flow_m3s - a.flow_m3s) / (b.flow_m3s - a.flow_m3s);
        CHECK_THAT(a.head_m + share * (b.head_m - a.head_m), WithinRel(set.working->head_m, 0.01));
        // ... and of the set.
        const auto next = std::find_if(set.curve.begin(), set.curve.end(),
                                       [&](const study::LoopPoint& p) { return p.flow_m3s >= set.working->flow_m3s; });
        REQUIRE(next != set.curve.begin());
        REQUIRE(next != set.curve.end());
        const double at = (set.working->flow_m3s - (next - 1)->flow_m3s) / (next->flow_m3s - (next - 1)->flow_m3s);
        CHECK_THAT((next - 1)->head_m + at * (next->head_m - (next - 1)->head_m), WithinRel(set.working->head_m, 0.01));
        CHECK(set.lights == (set.heaterFlow_m3s >= *curves->activationFlow_m3s));
        ++crossings;
    }
    CHECK(crossings == 12);
}

TEST_CASE("the two pumps of the coach, taken apart and put together again, give the drawn flow", "[study][curves]")
{
    document::Drawing drawing = stored("samples/long_hall_coach.tapward");
    for (document::Part& part : drawing.parts) {
        if (part.kind == "battery") {
            part.entries["voltage_V"] = {13.2, parts::Basis::Measured};
            part.entries["internal_ohm"] = {0.0, parts::Basis::Measured};
        }
    }
    const auto curves = study::loopCurves(drawing);
    REQUIRE(curves.has_value());
    REQUIRE(curves->drawnFlow_m3s.has_value());
    CHECK_THAT(flow(*curves, PumpArrangement::TwoInParallel, 13.2), WithinRel(*curves->drawnFlow_m3s, 1e-3));
}

TEST_CASE("more volts never give less flow, and a second pump never less than one", "[study][curves]")
{
    for (const char* file :
         {"samples/long_hall_coach.tapward", "samples/storage_coach.tapward", "tests/study/trade_ranges.tapward"}) {
        const auto curves = study::loopCurves(stored(file));
        CAPTURE(file);
        REQUIRE(curves.has_value());
        for (const PumpArrangement arrangement :
             {PumpArrangement::One, PumpArrangement::TwoInParallel, PumpArrangement::TwoInSeries}) {
            double before = 0;
            for (const double volts : study::kStudyVolts) {
                const double here = flow(*curves, arrangement, volts);
                CHECK(here > before);
                CHECK(here >= flow(*curves, PumpArrangement::One, volts));
                before = here;
            }
        }
    }
}

TEST_CASE("the head budget sums to the head of the pump within one percent", "[study][curves]")
{
    for (const char* file :
         {"samples/long_hall_coach.tapward", "samples/storage_coach.tapward", "tests/study/trade_ranges.tapward"}) {
        const auto budget = study::headBudget(stored(file));
        CAPTURE(file);
        REQUIRE(budget.has_value());
        CHECK(budget->pumpHead_Pa > 0);
        CHECK_THAT(budget->gap(), WithinAbs(0, 0.01));
        double shares = 0;
        for (std::size_t i = 0; i < budget->items.size(); ++i) {
            shares += budget->items[i].share;
            CHECK((i == 0 || budget->items[i - 1].loss_Pa >= budget->items[i].loss_Pa));
        }
        CHECK_THAT(shares, WithinAbs(1, 1e-9));
    }
}

TEST_CASE("a drawing without a pump has no curves and says why", "[study][curves]")
{
    document::Drawing drawing = stored("samples/storage_coach.tapward");
    for (document::Part& part : drawing.parts) {
        if (part.kind == "circulator") {
            part.stage = document::Stage::Removed;
        }
    }
    const auto curves = study::loopCurves(drawing);
    REQUIRE_FALSE(curves.has_value());
    CHECK_FALSE(curves.error().what.empty());
}

TEST_CASE("a set's curve is its pumps' head less the checks', by the affinity laws", "[study][curves]")
{
    // Pump 10 - 0.04 Q² (m, L/s) rated at 12 V, a check valve that takes 2 m to open and nothing more. At a share s of
    // its speed: heads with s², flows with s (White, Fluid Mechanics, ch. 11).
    document::Drawing drawing = printedLoop(10, 0.04e6, 2, 0.015e6);
    for (document::Part& part : drawing.parts) {
        if (part.tag == "P1") {
            part.entries["maximum_V"] = {60.0, parts::Basis::Measured};
        }
    }
    const auto curves = study::loopCurves(drawing);
    REQUIRE(curves.has_value());
    CHECK(curves->pump == drawing.findTag("P1")->id);
    REQUIRE(curves->sets.size() == 12);
    const double shutOff_m = 10;
    for (const double volts : study::kStudyVolts) {
        const double s = volts / 12;
        const auto first = [&](PumpArrangement arrangement) {
            const study::PumpSet* set = curves->find(arrangement, volts);
            REQUIRE(set);
            CHECK_THAT(set->pump_V, WithinAbs(volts, 1e-9));  // no wire is drawn
            CHECK_THAT(set->speed, WithinAbs(s, 1e-9));
            REQUIRE(set->curve.size() > 10);
            CHECK(set->curve.front().flow_m3s == 0);
            for (const study::LoopPoint& point : set->curve) {
                const int rows = arrangement == PumpArrangement::TwoInSeries ? 2 : 1;
                const double each = point.flow_m3s / (arrangement == PumpArrangement::TwoInParallel ? 2 : 1);
                const double wanted = rows * (s * s * shutOff_m - 0.04e6 * each * each) - 2;
                CHECK_THAT(point.head_m, WithinAbs(wanted, 0.02 * shutOff_m));
            }
            return set->curve.front().head_m;
        };
        CHECK_THAT(first(PumpArrangement::One), WithinAbs(s * s * 10 - 2, 0.02));
        CHECK_THAT(first(PumpArrangement::TwoInParallel), WithinAbs(s * s * 10 - 2, 0.02));
        CHECK_THAT(first(PumpArrangement::TwoInSeries), WithinAbs(2 * s * s * 10 - 2, 0.03));
        // It ends where the head does.
        CHECK(curves->find(PumpArrangement::One, volts)->curve.back().head_m < 0.5);
    }
    // The rest of the loop takes 0.015 Q² from nothing on.
    CHECK(curves->system.front().flow_m3s == 0);
    CHECK(curves->system.front().head_m == 0);
    for (const study::LoopPoint& point : curves->system) {
        CHECK_THAT(point.head_m, WithinAbs(0.015e6 * point.flow_m3s * point.flow_m3s, 0.01 * point.head_m + 0.01));
    }
    // Up to the most head there is: two in series at 14.4 V, 2 x 14.4 - 2.
    CHECK_THAT(curves->system.back().head_m, WithinRel(26.8, 0.01));
    CHECK(curves->find(PumpArrangement::One, 11) == nullptr);
}

TEST_CASE("a pump short of volts, a check valve it cannot open and a flow too small are each told", "[study][curves]")
{
    test::Ring ring;
    ring.drawing = printedLoop(10, 0.04e6, 2, 0.015e6);
    ring.set("P1", "minimum_V", 12.1);
    ring.set("P1", "maximum_V", 60.0);
    {
        const auto curves = study::loopCurves(ring.drawing);
        REQUIRE(curves.has_value());
        const study::PumpSet& low = *curves->find(PumpArrangement::One, 12);
        CHECK(low.speed == 0);
        CHECK(low.pump_V == 12);
        CHECK(low.curve.empty());
        CHECK_FALSE(low.working.has_value());
        CHECK_FALSE(low.lights);
        CHECK(low.reason.arguments == std::vector<Argument>{std::string("P1"), Measure{12, Quantity::Voltage}});
        CHECK(curves->find(PumpArrangement::One, 13.2)->working.has_value());
        CHECK(curves->find(PumpArrangement::One, 13.2)->reason.empty());
    }
    // 8.5 m to open: at 10.5 V a pump of 10 m has 7.66 m, two in series 15.3 m.
    ring.set("P1", "minimum_V", 6.0);
    ring.set("CV1", "crack_Pa", 8.5 * kWeight_N_m3);
    {
        const auto curves = study::loopCurves(ring.drawing);
        REQUIRE(curves.has_value());
        for (const PumpArrangement arrangement : {PumpArrangement::One, PumpArrangement::TwoInParallel}) {
            CHECK_FALSE(curves->find(arrangement, 10.5)->working.has_value());
            CHECK_FALSE(curves->find(arrangement, 10.5)->reason.empty());
            CHECK(curves->find(arrangement, 10.5)->heaterFlow_m3s == 0);
            CHECK(curves->find(arrangement, 12)->working.has_value());
        }
        CHECK(curves->find(PumpArrangement::TwoInSeries, 10.5)->working.has_value());
    }
    // Whether the heater lights is told by the flow through it: all of the loop's here.
    test::Ring small;
    const auto before = study::loopCurves(small.drawing);
    REQUIRE(before.has_value());
    const double low_m3s = flow(*before, PumpArrangement::One, 10.5),
                 high_m3s = flow(*before, PumpArrangement::One, 12);
    CHECK_THAT(before->find(PumpArrangement::One, 12)->heaterFlow_m3s, WithinRel(high_m3s, 1e-6));
    small.set("WH1", "activation_flow_m3s", 0.5 * (low_m3s + high_m3s));
    small.set("WH1", "hold_flow_m3s", 0.4 * high_m3s);
    const auto after = study::loopCurves(small.drawing);
    REQUIRE(after.has_value());
    CHECK(after->find(PumpArrangement::One, 12)->lights);
    CHECK_FALSE(after->find(PumpArrangement::One, 10.5)->lights);
    CHECK_THAT(after->activationFlow_m3s.value_or(0), WithinRel(0.5 * (low_m3s + high_m3s), 1e-9));
    CHECK_THAT(after->holdFlow_m3s.value_or(0), WithinRel(0.4 * high_m3s, 1e-9));
}

TEST_CASE("a pump's volts on the chart close over its own wire and the fuse it shares with its twin", "[study][curves]")
{
    test::Ring ring;
    const auto fuse = ring.add("fuse", "FU1");
    ring.set("FU1", "feed_length_m", 5.0);
    ring.set("FU1", "wire_gauge", std::string("14"));
    ring.set("FU1", "resistance_ohm", 0.0);
    ring.set("P1", "fuse", std::to_string(fuse));
    ring.set("P1", "wire_length_m", 8.0);
    ring.set("P1", "wire_gauge", std::string("16"));
    ring.set("P1", "current_A", 2.0);
    ring.set("P1", "maximum_V", 60.0);
    const double own_ohm = 2 * 8 * parts::wireResistance_ohm_m(16), feed_ohm = 2 * 5 * parts::wireResistance_ohm_m(14);
    const auto curves = study::loopCurves(ring.drawing);
    REQUIRE(curves.has_value());
    for (const double volts : study::kStudyVolts) {
        for (const auto& [arrangement, pumps] : {std::pair{PumpArrangement::One, 1},
                                                 {PumpArrangement::TwoInParallel, 2},
                                                 {PumpArrangement::TwoInSeries, 2}}) {
            const study::PumpSet& set = *curves->find(arrangement, volts);
            const double each_A = 2 * std::pow(set.pump_V / 12, 2);
            CHECK_THAT(set.pump_V, WithinAbs(volts - own_ohm * each_A - feed_ohm * pumps * each_A, 1e-6));
            CHECK_THAT(set.speed, WithinAbs(set.pump_V / 12, 1e-9));
        }
    }
}

TEST_CASE("the current follows the flow: a pump at its working point has the volts of that flow", "[study][curves]")
{
    test::Ring ring;
    ring.set("P1", "wire_length_m", 10.0);
    ring.set("P1", "wire_gauge", std::string("18"));
    ring.set("P1", "current_A", 3.0);
    ring.set("P1", "no_flow_current_A", 1.0);
    ring.set("P1", "maximum_V", 60.0);
    ring.set("P1", "curve", parts::Curve{{0, 3}, {0.5e-4, 2.25}, {1e-4, 0}});
    const double ohm = 2 * 10 * parts::wireResistance_ohm_m(18);
    const auto curves = study::loopCurves(ring.drawing);
    REQUIRE(curves.has_value());
    for (const auto& [arrangement, branches] :
         {std::pair{PumpArrangement::One, 1}, {PumpArrangement::TwoInParallel, 2}, {PumpArrangement::TwoInSeries, 1}}) {
        const study::PumpSet& set = *curves->find(arrangement, 12);
        REQUIRE(set.working.has_value());
        const double s = set.pump_V / 12, each_m3s = set.working->flow_m3s / branches;
        // I = s² (I0 + (I1 - I0) q / (s Q)), the flow's part at most that at run-out.
        const double current_A = s * s * (1 + 2 * std::min(1.0, each_m3s / (s * 1e-4)));
        CHECK_THAT(set.pump_V, WithinAbs(12 - ohm * current_A, 1e-5));
    }
}
