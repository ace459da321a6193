// SPDX-License-Identifier: GPL-3.0-or-later
#include "heater/tankless.h"

#include <cmath>
#include <vector>

#include "support/catch.h"
#include "support/units.h"

using namespace tapward;
using namespace tapward::heater;
using test::kGpm;
using Cause = TanklessCause;

namespace {

/// Runs a control by its events, in steps of at most `step`, and keeps what it told.
struct Bench {
    Tankless control;
    double now = 0, heat_J = 0;
    std::vector<TanklessChange> told;

    explicit Bench(const TanklessSpec& spec) : control(spec) {}
    void run(double seconds, const TanklessInputs& in, double step = 0.5)
    {
        const double end = now + seconds;
        while (now < end - 1e-9) {
            const double dt = std::min(step, end - now);
            const auto change = control.advance(now, dt, in);
            const double next = change ? change->at_s : now + dt;
            heat_J += control.meanPower_W() * (next - now);
            now = next;
            if (change)
                told.push_back(*change);
        }
    }
};

TanklessInputs drawing(double gpm, double inlet = 20, double outlet = 20)
{
    TanklessInputs in;
    in.flow_m3s = gpm * kGpm;
    in.inlet_C = inlet;
    in.outlet_C = outlet;
    in.exchanger_C = outlet;
    return in;
}

}  // namespace

TEST_CASE("gas input falls with altitude by either reading of the 4 per cent rule", "[heater][published]")
{
    struct Row {
        double feet, fromSeaLevel, above2000;
    };

    // NFPA 54 / ANSI Z223.1, altitude clause and table E.1.1(d), in the two readings found published: 4 % per
    // 1,000 ft above sea level once above 2,000 ft, or 4 % per 1,000 ft above 2,000 ft.
    const auto row =
        GENERATE(Row{0, 1, 1}, Row{1000, 1, 1}, Row{2000, 1, 1}, Row{3000, 0.88, 0.96}, Row{4000, 0.84, 0.92},
                 Row{5000, 0.80, 0.88}, Row{6000, 0.76, 0.84}, Row{7000, 0.72, 0.80}, Row{8000, 0.68, 0.76},
                 Row{9000, 0.64, 0.72}, Row{10000, 0.60, 0.68});
    CAPTURE(row.feet);
    CHECK_THAT(altitudeFactor(row.feet * 0.3048, TanklessSpec::Derate::AboveSeaLevel),
               WithinAbs(row.fromSeaLevel, 1e-9));
    CHECK_THAT(altitudeFactor(row.feet * 0.3048, TanklessSpec::Derate::Above2000ft), WithinAbs(row.above2000, 1e-9));
}

TEST_CASE("a heater lights after proof, purge and spark, each at its exact instant", "[heater]")
{
    const double step = GENERATE(0.5, 0.37, 0.05, 10.0);
    CAPTURE(step);
    Bench bench{TanklessSpec{}};
    bench.run(10, drawing(0.48), step);
    REQUIRE(bench.told.size() == 4);
    CHECK(bench.told[0].state == TanklessState::ProvingFlow);
    CHECK(bench.told[1].state == TanklessState::PrePurge);
    CHECK(bench.told[1].cause == Cause::FlowProved);
    CHECK_THAT(bench.told[1].at_s, WithinAbs(1.0, 1e-9));  // proof
    CHECK(bench.told[2].state == TanklessState::Igniting);
    CHECK_THAT(bench.told[2].at_s, WithinAbs(2.5, 1e-9));  // + purge
    CHECK(bench.told[3].state == TanklessState::Burning);
    CHECK(bench.told[3].cause == Cause::FlameProved);
    CHECK_THAT(bench.told[3].at_s, WithinAbs(4.0, 1e-9));  // + spark
    // Common figure for flow seen to flame: 2 to 6 s (memory).
    CHECK(bench.control.state() == TanklessState::Burning);
    CHECK(bench.control.deliveredPower_W() > 0);
    CHECK(bench.control.fanRuns());
}

TEST_CASE("time to the next event is never longer than the event", "[heater]")
{
    Tankless control{TanklessSpec{}};
    const TanklessInputs in = drawing(0.48);
    double now = 0;
    int changes = 0;
    for (int k = 0; k < 100 && now < 8; ++k) {
        const double dt = std::min(0.5, control.timeToNextEvent_s());
        const auto change = control.advance(now, dt, in);
        if (change) {
            ++changes;
            // With steps cut this way a timed change falls on the end of its step.
            if (change->state != TanklessState::ProvingFlow)
                CHECK_THAT(change->at_s, WithinAbs(now + dt, 1e-9));
        }
        now = change ? change->at_s : now + dt;
    }
    CHECK(changes == 4);
}

TEST_CASE("flow between hold and activation keeps a flame but does not start one", "[heater]")
{
    const double between = 0.40;  // gpm; activation 0.45, hold 0.35
    Bench cold{TanklessSpec{}};
    cold.run(20, drawing(between));
    CHECK(cold.told.empty());
    CHECK(cold.control.gasEnergy_J() == 0);

    Bench lit{TanklessSpec{}};
    lit.run(10, drawing(0.5));
    lit.run(20, drawing(between));
    CHECK(lit.control.state() == TanklessState::Burning);
    lit.run(0.5, drawing(0.34));
    CHECK(lit.told.back().state == TanklessState::RestartDelay);
    CHECK(lit.told.back().cause == Cause::FlowTooLow);
    CHECK_THAT(lit.told.back().at_s, WithinAbs(30 + kControlScan_s, 1e-9));
    CHECK(lit.control.deliveredPower_W() == 0);
    lit.run(20, drawing(between));
    CHECK(lit.control.state() == TanklessState::Idle);
}

TEST_CASE("a dip shorter than the control's scan does not put the flame out", "[heater]")
{
    Bench bench{TanklessSpec{}};
    bench.run(10, drawing(0.5));
    bench.run(0.06, drawing(0.1), 0.02);
    bench.run(0.2, drawing(0.5), 0.02);
    bench.run(0.06, drawing(0.1), 0.02);
    bench.run(0.2, drawing(0.5), 0.02);
    CHECK(bench.control.state() == TanklessState::Burning);
}

TEST_CASE("a flow that stops while it is being proved lights nothing", "[heater]")
{
    Bench bench{TanklessSpec{}};
    bench.run(0.8, drawing(0.5));
    bench.run(5, drawing(0.44));  // under activation again, over hold
    CHECK(bench.control.state() == TanklessState::Idle);
    CHECK(bench.told.back().cause == Cause::FlowTooLow);
    CHECK(bench.control.gasEnergy_J() == 0);
}

TEST_CASE("after the flame the heater waits before the next try and its fan runs on", "[heater]")
{
    TanklessSpec spec;
    Bench bench{spec};
    bench.run(10, drawing(0.5));
    bench.run(0.1, drawing(0));
    const double out = bench.told.back().at_s;
    bench.run(15, drawing(0.5));  // flow back at once
    // Rest, then the whole light-up again.
    CHECK(bench.told[bench.told.size() - 5].state == TanklessState::Idle);
    CHECK_THAT(bench.told[bench.told.size() - 5].at_s, WithinAbs(out + spec.restartDelay_s, 1e-9));
    CHECK(bench.told.back().state == TanklessState::Burning);
    CHECK_THAT(bench.told.back().at_s, WithinAbs(out + spec.restartDelay_s + 4, 1e-9));

    bench.run(0.1, drawing(0));
    const double last = bench.told.back().at_s;
    bench.run(last + spec.postPurge_s - 0.25 - bench.now, drawing(0));
    CHECK(bench.control.fanRuns());
    CHECK_THAT(bench.control.timeToNextEvent_s(), WithinAbs(0.25, 1e-9));
    bench.run(0.25, drawing(0));
    CHECK_FALSE(bench.control.fanRuns());
}

TEST_CASE("a burner that never lights is tried, purged and locked out", "[heater]")
{
    TanklessSpec spec;
    Bench bench{spec};
    TanklessInputs in = drawing(0.5);
    in.gasFails = true;
    bench.run(60, in);
    CHECK(bench.control.state() == TanklessState::Lockout);
    CHECK(bench.told.back().cause == Cause::IgnitionFailed);
    int tries = 0, purges = 0;
    for (const auto& change : bench.told) {
        tries += change.state == TanklessState::Igniting ? 1 : 0;
        purges += change.state == TanklessState::RetryPurge ? 1 : 0;
    }
    CHECK(tries == 3);
    CHECK(purges == 2);
    CHECK_THAT(bench.told.back().at_s, WithinAbs(1 + 1.5 + 3 * 1.5 + 2 * 15, 1e-9));
    // It stays out when the gas is back, until somebody resets it.
    bench.run(30, drawing(0.5));
    CHECK(bench.control.state() == TanklessState::Lockout);
    bench.control.reset();
    bench.run(10, drawing(0.5));
    CHECK(bench.control.state() == TanklessState::Burning);
}

TEST_CASE("the second try may light", "[heater]")
{
    Bench bench{TanklessSpec{}};
    TanklessInputs in = drawing(0.5);
    in.gasFails = true;
    bench.run(6, in);
    CHECK(bench.control.ignitionFailures() == 1);
    bench.run(20, drawing(0.5));
    CHECK(bench.control.state() == TanklessState::Burning);
}

TEST_CASE("the fire keeps between its smallest and its largest at any altitude", "[heater]")
{
    TanklessSpec spec;
    spec.altitude_m = GENERATE(0.0, 1524.0);
    const double factor = altitudeFactor(spec.altitude_m, spec.derate);
    Bench low{spec};
    low.run(10, drawing(0.5, 50, 60));
    CHECK_THAT(low.control.deliveredPower_W(), WithinRel(4400 * 0.82 * factor, 1e-12));
    CHECK_THAT(low.control.gasInput_W(), WithinRel(4400 * factor, 1e-12));
    CHECK_THAT(low.control.fireShare(), WithinRel(0.25, 1e-12));
    Bench high{spec};
    high.run(44, drawing(3, 5, 15));
    CHECK_THAT(high.control.deliveredPower_W(), WithinRel(17600 * 0.82 * factor, 1e-6));
    CHECK_THAT(high.control.fireShare(), WithinRel(1.0, 1e-6));
    // It lights at its smallest fire and goes to the largest with its control time, 2 s: what is missing of 40 s at
    // the largest is the range times that.
    CHECK_THAT(high.control.gasEnergy_J(), WithinRel((17600 * 40 - (17600 - 4400) * 2) * factor, 1e-6));
}

TEST_CASE("the fire goes no faster than its gas valve", "[heater]")
{
    TanklessSpec spec;
    spec.fireTravel_s = 8;
    const double step = GENERATE(0.5, 0.03, 6.0);
    CAPTURE(step);
    Bench bench{spec};
    bench.run(4, drawing(3, 5, 15));  // lit
    REQUIRE(bench.control.state() == TanklessState::Burning);
    const double least = 4400 * 0.82, most = 17600 * 0.82;
    CHECK_THAT(bench.control.deliveredPower_W(), WithinRel(least, 1e-9));
    // An eighth of the range a second, until what is left goes with the control time: 2 s of it are a quarter.
    bench.run(3, drawing(3, 5, 15), step);
    CHECK_THAT(bench.control.deliveredPower_W(), WithinRel(least + 3.0 / 8 * (most - least), 1e-9));
    bench.run(3, drawing(3, 5, 15), step);
    CHECK_THAT(bench.control.deliveredPower_W(), WithinRel(most - 0.25 * (most - least), 1e-9));
    bench.run(2, drawing(3, 5, 15), step);
    CHECK_THAT(bench.control.deliveredPower_W(), WithinRel(most - 0.25 * std::exp(-1.0) * (most - least), 1e-9));
    // Down again: the same way back.
    bench.run(30, drawing(3, 5, 15), step);
    bench.run(3, drawing(3, 51, 51), 3);
    CHECK(bench.control.deliveredPower_W() >= most - 3.0 / 8 * (most - least) - 1e-3);  // it was still a hair below
    CHECK_THAT(bench.control.gasEnergy_J(), WithinRel(bench.heat_J / 0.82, 1e-9));
}

TEST_CASE("limits put the burner out and let it light again after cooling", "[heater]")
{
    TanklessSpec spec;
    spec.outletHysteresis_K = GENERATE(10.0, 4.0);
    Bench bench{spec};
    bench.run(10, drawing(0.5));
    bench.run(1, drawing(0.5, 40, 85.5));
    CHECK(bench.told.back().state == TanklessState::OverTemperature);
    CHECK(bench.told.back().cause == Cause::OutletLimit);
    CHECK_THAT(bench.told.back().at_s, WithinAbs(10 + kControlScan_s, 1e-9));
    bench.run(5, drawing(0.5, 40, 86 - spec.outletHysteresis_K));  // not yet so far below
    CHECK(bench.control.state() == TanklessState::OverTemperature);
    bench.run(10, drawing(0.5, 40, 84 - spec.outletHysteresis_K));
    CHECK(bench.control.state() == TanklessState::Burning);

    spec.inletLimit_C = 60;
    spec.inletHysteresis_K = GENERATE(5.0, 12.0);
    Bench inlet{spec};
    inlet.run(3, drawing(0.5, 61, 61));
    CHECK(inlet.told.back().state == TanklessState::OverTemperature);
    CHECK(inlet.told.back().cause == Cause::InletLimit);
    CHECK(inlet.control.gasEnergy_J() == 0);
    inlet.run(10, drawing(0.5, 61 - spec.inletHysteresis_K, 40));
    CHECK(inlet.control.state() == TanklessState::OverTemperature);
    inlet.run(10, drawing(0.5, 59 - spec.inletHysteresis_K, 61));
    CHECK(inlet.control.state() == TanklessState::Burning);
}

TEST_CASE("the over-temperature switch locks the heater out", "[heater]")
{
    Bench bench{TanklessSpec{}};
    bench.run(10, drawing(0.5));
    TanklessInputs hot = drawing(0.5, 40, 80);
    hot.exchanger_C = 93.5;
    bench.run(1, hot);
    CHECK(bench.control.state() == TanklessState::Lockout);
    CHECK(bench.told.back().cause == Cause::EcoOpen);
    CHECK(bench.control.deliveredPower_W() == 0);
    bench.run(60, drawing(0.5));
    CHECK(bench.control.state() == TanklessState::Lockout);
}

TEST_CASE("without enough volts the heater does nothing", "[heater]")
{
    TanklessInputs in = drawing(0.5);
    in.volts = 10;
    Bench dead{TanklessSpec{}};
    dead.run(10, in);
    CHECK(dead.told.empty());
    Bench dying{TanklessSpec{}};
    dying.run(10, drawing(0.5));
    dying.run(5, in);
    CHECK(dying.control.state() == TanklessState::Idle);
    CHECK(dying.told.back().cause == Cause::NoPower);
    CHECK_FALSE(dying.control.fanRuns());
    dying.run(10, drawing(0.5));
    CHECK(dying.control.state() == TanklessState::Burning);
}

TEST_CASE("a control that stops when too hot at minimum fire does so once it stands, and lights again where set",
          "[heater]")
{
    TanklessSpec spec;
    spec.shutsOffWhenTooHot = true;
    spec.tooHotFor_s = GENERATE(3.0, 8.0, 0.0);
    spec.relightBelow_K = GENERATE(0.0, 6.0);
    const double stands_s = std::max(spec.tooHotFor_s, kControlScan_s);
    CAPTURE(spec.tooHotFor_s, spec.relightBelow_K);
    Bench bench{spec};
    bench.run(10, drawing(0.5, 40, 55));
    CHECK(bench.control.state() == TanklessState::Burning);
    bench.run(stands_s - 0.05, drawing(0.5, 40, spec.setpoint_C + 10.5));
    bench.run(0.2, drawing(0.5, 40, spec.setpoint_C + 9.5));  // a peak shorter than that is let pass
    CHECK(bench.control.state() == TanklessState::Burning);
    const double from = bench.now;
    bench.run(stands_s + 1, drawing(0.5, 40, spec.setpoint_C + 10.5));
    CHECK(bench.told.back().cause == Cause::TooHotAtMinimumFire);
    CHECK_THAT(bench.told.back().at_s, WithinAbs(from + stands_s, 1e-9));
    bench.run(3, drawing(0.5, 40, spec.setpoint_C - spec.relightBelow_K + 1));
    CHECK(bench.control.state() == TanklessState::OverTemperature);
    bench.run(10, drawing(0.5, 40, spec.setpoint_C - spec.relightBelow_K - 0.1));
    CHECK(bench.control.state() == TanklessState::Burning);
    // Above its smallest fire it has somewhere to go.
    Bench strong{spec};
    strong.run(30, drawing(2, 5, 40));
    CHECK(strong.control.fireShare() > 0.5);
    strong.control.look(drawing(2, 5, spec.setpoint_C + 10.5));
    CHECK(strong.control.timeToNextEvent_s() > 3 * kControlScan_s);
    // The usual control burns on at minimum fire.
    Bench usual{TanklessSpec{}};
    usual.run(10, drawing(0.5, 40, 55));
    usual.run(20, drawing(0.5, 40, 80));
    CHECK(usual.control.state() == TanklessState::Burning);
}

TEST_CASE("a look is enough to know how soon the control will act", "[heater]")
{
    Bench lit{TanklessSpec{}};
    lit.run(30, drawing(0.5));
    CHECK(std::isinf(lit.control.timeToNextEvent_s()));
    lit.control.look(drawing(0));
    CHECK_THAT(lit.control.timeToNextEvent_s(), WithinAbs(kControlScan_s, 1e-12));
    lit.control.look(drawing(0.5));  // it was nothing
    CHECK(std::isinf(lit.control.timeToNextEvent_s()));
    TanklessInputs weak = drawing(0.5);
    weak.volts = 9;
    lit.control.look(weak);
    CHECK_THAT(lit.control.timeToNextEvent_s(), WithinAbs(kControlScan_s, 1e-12));

    Tankless idle{TanklessSpec{}};
    idle.look(drawing(0.44));
    CHECK(std::isinf(idle.timeToNextEvent_s()));
    idle.look(drawing(0.46));
    CHECK_THAT(idle.timeToNextEvent_s(), WithinAbs(kControlScan_s, 1e-12));
}

TEST_CASE("a temperature on its way to a mark is met there", "[heater]")
{
    struct Way {
        double inlet0, inlet1, outlet0, outlet1, body0, body1, seconds;
    };

    // Limits at 85 °C out, 60 in, 93 for the switch; a second lies between the two looks.
    const auto way = GENERATE(Way{20, 20, 60, 65, 20, 20, 4}, Way{40, 44, 50, 50, 20, 20, 4},
                              Way{20, 20, 50, 50, 78, 83, 2}, Way{20, 20, 65, 60, 20, 20, 1e300});
    CAPTURE(way.seconds, way.outlet1);
    TanklessSpec spec;
    spec.inletLimit_C = 60;
    Bench bench{spec};
    TanklessInputs in = drawing(0.5, way.inlet0, way.outlet0);
    in.exchanger_C = way.body0;
    bench.run(30, in);
    REQUIRE(bench.control.state() == TanklessState::Burning);
    bench.control.look(in);
    bench.run(1, in, 1);
    in.inlet_C = way.inlet1;
    in.outlet_C = way.outlet1;
    in.exchanger_C = way.body1;
    bench.control.look(in);
    if (way.seconds < 1e6)
        CHECK_THAT(bench.control.timeToNextEvent_s(), WithinAbs(way.seconds, 1e-9));
    else
        CHECK(std::isinf(bench.control.timeToNextEvent_s()));
}

TEST_CASE("a heater that cools knows when it will have", "[heater]")
{
    TanklessSpec spec;
    spec.postPurge_s = 0;
    Bench bench{spec};
    bench.run(10, drawing(0.5));
    bench.run(1, drawing(0.5, 40, 86));
    REQUIRE(bench.control.state() == TanklessState::OverTemperature);
    bench.run(1, drawing(0.5, 40, 84), 1);
    bench.control.look(drawing(0.5, 40, 83));  // one kelvin a second, eight to go
    CHECK_THAT(bench.control.timeToNextEvent_s(), WithinAbs(8, 1e-9));
}

TEST_CASE("the fan that blows without a flame is told apart", "[heater]")
{
    TanklessSpec spec;
    Bench bench{spec};
    CHECK_FALSE(bench.control.purges());
    bench.run(2, drawing(0.5));
    CHECK(bench.control.state() == TanklessState::PrePurge);
    CHECK(bench.control.purges());
    bench.run(8, drawing(0.5));
    CHECK(bench.control.fanRuns());
    CHECK_FALSE(bench.control.purges());
    bench.run(1, drawing(0));
    CHECK(bench.control.purges());
    bench.run(spec.postPurge_s, drawing(0));
    CHECK_FALSE(bench.control.purges());
}

TEST_CASE("the mean power of an advance is what was delivered in it", "[heater]")
{
    Tankless control{TanklessSpec{}};
    const TanklessInputs in = drawing(0.5);
    double now = 0, heat = 0;
    while (now < 12) {
        const auto change = control.advance(now, 0.37, in);
        const double next = change ? change->at_s : now + 0.37;
        heat += control.meanPower_W() * (next - now);
        now = next;
    }
    CHECK_THAT(heat, WithinRel(control.gasEnergy_J() * 0.82, 1e-9));
    CHECK(heat > 1e4);
}
