// SPDX-License-Identifier: GPL-3.0-or-later
#include "heater/tankless.h"

#include <cmath>
#include <vector>

#include "support/catch.h"

using namespace tapward::heater;
using State = TanklessState;
using Cause = TanklessCause;

namespace {

constexpr double kGpm = 3.785411784e-3 / 60.0;

/// Runs a control by its events, in steps of at most `step`, and keeps what it told.
struct Bench {
    Tankless control;
    double now = 0;
    std::vector<TanklessChange> told;

    explicit Bench(const TanklessSpec& spec) : control(spec) {}
    void run(double seconds, const TanklessInputs& in, double step = 0.5)
    {
        const double end = now + seconds;
        while (now < end - 1e-9) {
            const double dt = std::min(step, end - now);
            const auto change = control.advance(now, dt, in);
            now = change ? change->at_s : now + dt;
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
    CHECK(bench.told[0].state == State::ProvingFlow);
    CHECK(bench.told[1].state == State::PrePurge);
    CHECK(bench.told[1].cause == Cause::FlowProved);
    CHECK_THAT(bench.told[1].at_s, WithinAbs(1.0, 1e-9));  // proof
    CHECK(bench.told[2].state == State::Igniting);
    CHECK_THAT(bench.told[2].at_s, WithinAbs(2.5, 1e-9));  // + purge
    CHECK(bench.told[3].state == State::Burning);
    CHECK(bench.told[3].cause == Cause::FlameProved);
    CHECK_THAT(bench.told[3].at_s, WithinAbs(4.0, 1e-9));  // + spark
    // Common figure for flow seen to flame: 2 to 6 s (memory).
    CHECK(bench.control.state() == State::Burning);
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
            if (change->state != State::ProvingFlow)
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
    CHECK(lit.control.state() == State::Burning);
    lit.run(0.5, drawing(0.34));
    CHECK(lit.told.back().state == State::RestartDelay);
    CHECK(lit.told.back().cause == Cause::FlowTooLow);
    CHECK_THAT(lit.told.back().at_s, WithinAbs(30 + kControlScan_s, 1e-9));
    CHECK(lit.control.deliveredPower_W() == 0);
    lit.run(20, drawing(between));
    CHECK(lit.control.state() == State::Idle);
}

TEST_CASE("a dip shorter than the control's scan does not put the flame out", "[heater]")
{
    Bench bench{TanklessSpec{}};
    bench.run(10, drawing(0.5));
    bench.run(0.06, drawing(0.1), 0.02);
    bench.run(0.2, drawing(0.5), 0.02);
    bench.run(0.06, drawing(0.1), 0.02);
    bench.run(0.2, drawing(0.5), 0.02);
    CHECK(bench.control.state() == State::Burning);
}

TEST_CASE("a flow that stops while it is being proved lights nothing", "[heater]")
{
    Bench bench{TanklessSpec{}};
    bench.run(0.8, drawing(0.5));
    bench.run(5, drawing(0.44));  // under activation again, over hold
    CHECK(bench.control.state() == State::Idle);
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
    CHECK(bench.told[bench.told.size() - 5].state == State::Idle);
    CHECK_THAT(bench.told[bench.told.size() - 5].at_s, WithinAbs(out + spec.restartDelay_s, 1e-9));
    CHECK(bench.told.back().state == State::Burning);
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
    CHECK(bench.control.state() == State::Lockout);
    CHECK(bench.told.back().cause == Cause::IgnitionFailed);
    int tries = 0, purges = 0;
    for (const auto& change : bench.told) {
        tries += change.state == State::Igniting ? 1 : 0;
        purges += change.state == State::RetryPurge ? 1 : 0;
    }
    CHECK(tries == 3);
    CHECK(purges == 2);
    CHECK_THAT(bench.told.back().at_s, WithinAbs(1 + 1.5 + 3 * 1.5 + 2 * 15, 1e-9));
    // It stays out when the gas is back, until somebody resets it.
    bench.run(30, drawing(0.5));
    CHECK(bench.control.state() == State::Lockout);
    bench.control.reset();
    bench.run(10, drawing(0.5));
    CHECK(bench.control.state() == State::Burning);
}

TEST_CASE("the second try may light", "[heater]")
{
    Bench bench{TanklessSpec{}};
    TanklessInputs in = drawing(0.5);
    in.gasFails = true;
    bench.run(6, in);
    CHECK(bench.control.ignitionFailures() == 1);
    bench.run(20, drawing(0.5));
    CHECK(bench.control.state() == State::Burning);
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
    high.run(10, drawing(3, 5, 15));
    CHECK_THAT(high.control.deliveredPower_W(), WithinRel(17600 * 0.82 * factor, 1e-12));
    CHECK_THAT(high.control.fireShare(), WithinRel(1.0, 1e-12));
    CHECK_THAT(high.control.gasEnergy_J(), WithinRel(17600 * factor * 6, 1e-9));
}

TEST_CASE("limits put the burner out and let it light again after cooling", "[heater]")
{
    TanklessSpec spec;
    Bench bench{spec};
    bench.run(10, drawing(0.5));
    bench.run(1, drawing(0.5, 40, 85.5));
    CHECK(bench.told.back().state == State::OverTemperature);
    CHECK(bench.told.back().cause == Cause::OutletLimit);
    CHECK_THAT(bench.told.back().at_s, WithinAbs(10 + kControlScan_s, 1e-9));
    bench.run(5, drawing(0.5, 40, 76));  // not yet 10 K below
    CHECK(bench.control.state() == State::OverTemperature);
    bench.run(10, drawing(0.5, 40, 74));
    CHECK(bench.control.state() == State::Burning);

    spec.inletLimit_C = 60;
    Bench inlet{spec};
    inlet.run(3, drawing(0.5, 61, 61));
    CHECK(inlet.told.back().state == State::OverTemperature);
    CHECK(inlet.told.back().cause == Cause::InletLimit);
    CHECK(inlet.control.gasEnergy_J() == 0);
    inlet.run(10, drawing(0.5, 54, 61));
    CHECK(inlet.control.state() == State::Burning);
}

TEST_CASE("the over-temperature switch locks the heater out", "[heater]")
{
    Bench bench{TanklessSpec{}};
    bench.run(10, drawing(0.5));
    TanklessInputs hot = drawing(0.5, 40, 80);
    hot.exchanger_C = 93.5;
    bench.run(1, hot);
    CHECK(bench.control.state() == State::Lockout);
    CHECK(bench.told.back().cause == Cause::EcoOpen);
    CHECK(bench.control.deliveredPower_W() == 0);
    bench.run(60, drawing(0.5));
    CHECK(bench.control.state() == State::Lockout);
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
    CHECK(dying.control.state() == State::Idle);
    CHECK(dying.told.back().cause == Cause::NoPower);
    CHECK_FALSE(dying.control.fanRuns());
    dying.run(10, drawing(0.5));
    CHECK(dying.control.state() == State::Burning);
}

TEST_CASE("a control that stops when too hot at minimum fire lights again at its setpoint", "[heater]")
{
    TanklessSpec spec;
    spec.shutsOffWhenTooHot = true;
    Bench bench{spec};
    bench.run(10, drawing(0.5, 40, 55));
    CHECK(bench.control.state() == State::Burning);
    bench.run(1, drawing(0.5, 40, spec.setpoint_C + 10.5));
    CHECK(bench.told.back().cause == Cause::TooHotAtMinimumFire);
    bench.run(3, drawing(0.5, 40, spec.setpoint_C + 1));
    CHECK(bench.control.state() == State::OverTemperature);
    bench.run(10, drawing(0.5, 40, spec.setpoint_C - 0.1));
    CHECK(bench.control.state() == State::Burning);
    // The usual control burns on at minimum fire.
    Bench usual{TanklessSpec{}};
    usual.run(10, drawing(0.5, 40, 55));
    usual.run(20, drawing(0.5, 40, 80));
    CHECK(usual.control.state() == State::Burning);
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
