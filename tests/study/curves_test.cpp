// SPDX-License-Identifier: GPL-3.0-or-later
#include "study/curves.h"

#include <cmath>
#include <numeric>

#include "document/file.h"
#include "ring.h"
#include "study/head_budget.h"
#include "support/catch.h"

using namespace tapward;
using study::PumpArrangement;

namespace {

constexpr double kWeight_N_m3 = 998.2 * 9.80665;

document::Drawing load(const char* name)
{
    auto drawing = document::load(std::string(TAPWARD_SOURCE_DIR "/") + name);
    REQUIRE(drawing.has_value());
    return *drawing;
}

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
    const auto curves = study::loopCurves(load("samples/long_hall_coach.tapward"));
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
    document::Drawing drawing = load("samples/long_hall_coach.tapward");
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
        const auto curves = study::loopCurves(load(file));
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
        const auto budget = study::headBudget(load(file));
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
    document::Drawing drawing = load("samples/storage_coach.tapward");
    for (document::Part& part : drawing.parts) {
        if (part.kind == "circulator") {
            part.stage = document::Stage::Removed;
        }
    }
    const auto curves = study::loopCurves(drawing);
    REQUIRE_FALSE(curves.has_value());
    CHECK_FALSE(curves.error().what.empty());
}
