// SPDX-License-Identifier: GPL-3.0-or-later
// What a heater's control must do, whatever it is made of.
#include <cmath>

#include "heater/rig.h"
#include "support/catch.h"

using namespace tapward;
using namespace tapward::heater;
using test::Rig;

namespace {

constexpr double kLpm = 1e-3 / 60;

/// A coach's usual heater, its control made for its exchanger.
TanklessSpec usual(const test::Exchanger& exchanger)
{
    TanklessSpec spec;
    spec.activationFlow_m3s = 1.4 * kLpm;
    spec.holdFlow_m3s = 1.2 * kLpm;
    spec.exchanger_J_K = exchanger.capacity_J_K();
    return spec;
}

double turnover_s(const test::Exchanger& exchanger, double flow)
{
    return exchanger.capacity_J_K() / (flow * water::referenceVolumeHeat());
}

/// Fire for the setpoint over the burner's ends: inside the range where 0..1.
double placeInRange(const TanklessSpec& spec, double flow, double inlet)
{
    const double wanted = flow * water::referenceVolumeHeat() * (spec.setpoint_C - inlet) / spec.efficiency;
    return (wanted - spec.minimumInput_W) / (spec.maximumInput_W - spec.minimumInput_W);
}

struct Spell {
    double longest_s = 0, worst_K = 0, now_s = 0, last_s = 0;
    /// Counts the time in which the outlet is off by more than one kelvin on this side.
    void see(double at_s, double off_K)
    {
        now_s = off_K > 1 ? now_s + at_s - last_s : 0;
        last_s = at_s;
        longest_s = std::max(longest_s, now_s);
        worst_K = std::max(worst_K, off_K);
    }
};

}  // namespace

TEST_CASE("inside the burner's range the outlet settles on the setpoint, and is not cold for long", "[heater][law]")
{
    const test::Exchanger exchanger = test::coil();
    const TanklessSpec spec = usual(exchanger);
    const double flow = GENERATE(1.5, 1.8, 2.5, 4.0, 6.0, 8.0, 10.0) * kLpm;
    const double inlet = GENERATE(5.0, 15.0, 25.0, 35.0, 45.0);
    const double place = placeInRange(spec, flow, inlet);
    if (place < 0 || place > 1)
        return;
    const double turnover = turnover_s(exchanger, flow);
    CAPTURE(flow / kLpm, inlet, place, turnover);
    Rig rig(spec, exchanger, inlet);
    rig.go(3.99, flow);
    Spell cold, hot;
    cold.last_s = hot.last_s = rig.now;
    rig.go(10 * turnover + 30, flow, [&](const Rig& r) {
        cold.see(r.now, spec.setpoint_C - r.outlet());
        hot.see(r.now, r.outlet() - spec.setpoint_C);
    });
    CHECK(cold.longest_s < 3 * turnover);
    CHECK(hot.worst_K < 3);  // where its sensors' lag shows
    const auto settled = rig.go(60, flow);
    CHECK_THAT(settled.first, WithinAbs(spec.setpoint_C, 0.5));
    CHECK_THAT(settled.second, WithinAbs(spec.setpoint_C, 0.5));
    std::printf(
        "flow %.1f inlet %.0f: theta %.1f cold %.1f s (%.2f turnovers) hot worst %.2f K %.1f s; settled %.3f %.3f\n",
        flow / kLpm, inlet, turnover, cold.longest_s, cold.longest_s / turnover, hot.worst_K, hot.longest_s,
        settled.first - spec.setpoint_C, settled.second - spec.setpoint_C);
}

TEST_CASE("a step of the flow or of the inlet is over within three turnovers", "[heater][law]")
{
    const test::Exchanger exchanger = test::coil();
    TanklessSpec spec = usual(exchanger);
    struct Step {
        double flow, inlet, toFlow, toInlet;
    };
    const auto step = GENERATE(Step{2, 15, 4, 15}, Step{4, 15, 2, 15}, Step{3, 10, 3, 25}, Step{3, 25, 3, 10},
                               Step{4, 20, 6, 20}, Step{7, 25, 4, 15});
    CAPTURE(step.flow, step.inlet, step.toFlow, step.toInlet);
    Rig rig(spec, exchanger, step.inlet);
    rig.go(200, step.flow * kLpm);
    CHECK_THAT(rig.outlet(), WithinAbs(spec.setpoint_C, 0.5));
    const double turnover = turnover_s(exchanger, step.toFlow * kLpm);
    rig.setInlet(step.toInlet);
    rig.go(3 * turnover, step.toFlow * kLpm);
    const auto range = rig.go(60, step.toFlow * kLpm);
    CHECK(range.first < spec.setpoint_C + 1);
    CHECK(range.second > spec.setpoint_C - 1);
}

TEST_CASE("the control time sets how long a step of the flow is felt", "[heater][law]")
{
    const test::Exchanger exchanger = test::coil();
    double before_s = 0, before_K = 0;
    for (const double control_s : {0.5, 2.0, 6.0, 15.0}) {
        CAPTURE(control_s);
        TanklessSpec spec = usual(exchanger);
        spec.controlTime_s = control_s;
        Rig rig(spec, exchanger, 15);
        rig.go(300, 2 * kLpm);
        Spell cold;
        cold.last_s = rig.now;
        rig.go(200, 5 * kLpm, [&](const Rig& r) { cold.see(r.now, spec.setpoint_C - r.outlet()); });
        CHECK(cold.longest_s > 1.2 * before_s);
        CHECK(cold.worst_K > before_K + 2);
        CHECK_THAT(rig.outlet(), WithinAbs(spec.setpoint_C, 0.5));
        before_s = cold.longest_s;
        before_K = cold.worst_K;
    }
}

TEST_CASE("half or twice the exchanger, a burner off by a tenth, a leaky jacket: the outlet still settles",
          "[heater][law]")
{
    test::Exchanger exchanger = test::coil();
    const double assumed = GENERATE(0.5, 1.0, 2.0);
    const double fire = GENERATE(0.9, 1.1);
    const double flow = GENERATE(1.8, 3.0, 6.0) * kLpm;
    const double lag = GENERATE(1.0, 3.0);
    exchanger.loss_W_K = 10;
    TanklessSpec spec = usual(exchanger);
    spec.exchanger_J_K *= assumed;
    spec.sensorLag_s = lag;
    spec.minimumInput_W = 2000;
    spec.maximumInput_W = 20000;
    CAPTURE(assumed, fire, flow / kLpm, lag);
    Rig rig(spec, exchanger, 20);
    rig.trueFire = fire;
    const auto warmUp = rig.go(250, flow);
    const auto settled = rig.go(60, flow);
    CHECK(warmUp.first < spec.setpoint_C + 10);
    CHECK_THAT(settled.first, WithinAbs(spec.setpoint_C, 0.5));
    CHECK_THAT(settled.second, WithinAbs(spec.setpoint_C, 0.5));
}
