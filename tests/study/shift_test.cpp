// SPDX-License-Identifier: GPL-3.0-or-later
// Moving a whole case in time changes nothing but the clock.
#include <cmath>
#include <rapidcheck.h>

#include "document/proposal.h"
#include "study/trailer.h"
#include "support/stored.h"

using namespace tapward;
using test::stored;
using namespace tapward::document;

namespace {

/// The coach with a proposed loop, begun on the first hot pipe that has room for it.
Drawing withLoop(Drawing drawing, Variant variant)
{
    for (const Part& part : drawing.parts) {
        const document::Place hot{part.id, 0.5, {}};
        if (!kindOf(part).isPipe || beginRefusal(drawing, hot)) {
            continue;
        }
        const auto cold = usualEnd(drawing, hot, variant.way);
        if (!cold) {
            continue;
        }
        if (auto edit = propose(drawing, hot, *cold, variant)) {
            apply(drawing, std::move(*edit));
            return drawing;
        }
    }
    FAIL("no room for a loop");
    return drawing;
}

/// Both supplies, presses and draws at odd times, everything at rest and as warm as the bay until the first of them.
Case odd(const Drawing& drawing)
{
    const auto seconds = [](int least, int most) { return *rc::gen::inRange(least * 100, most * 100) / 100.0; };
    std::vector<PartId> taps, buttons;
    bool pump = false, city = false;
    for (const Part& part : drawing.parts) {
        if (part.stage == Stage::Removed) {
            continue;
        }
        if (part.kind == "faucet" || part.kind == "shower") {
            taps.push_back(part.id);
        } else if (part.kind == "push_button") {
            buttons.push_back(part.id);
        }
        pump = pump || part.kind == "demand_pump";
        city = city || part.kind == "city_inlet";
    }
    Case script;
    script.name = "Odd times";
    script.start_C = 18;
    script.ambient_C = 18;
    script.target_C = 30;
    const auto act = [&script](double at_s, ActionKind kind, PartId part) -> Action& {
        Action action;
        action.at_s = at_s;
        action.kind = kind;
        action.part = part;
        script.actions.push_back(action);
        return script.actions.back();
    };
    double at_s = seconds(1, 3);
    if (pump && (!city || *rc::gen::arbitrary<bool>())) {
        act(at_s, ActionKind::UsePump, kNoPart);
    }
    const int acts = *rc::gen::inRange(1, 4);
    for (int i = 0; i < acts; ++i) {
        at_s += seconds(1, 20);
        if (!buttons.empty() && *rc::gen::arbitrary<bool>()) {
            act(at_s, ActionKind::PressButton, buttons.front());
            at_s += seconds(5, 60);
        } else {
            const PartId tap = *rc::gen::elementOf(taps);
            Action& open = act(at_s, ActionKind::OpenOutlet, tap);
            open.value = seconds(0, 1) * 0.7 + 0.3;
            open.second = 1;  // hot only
            at_s += seconds(4, 40);
            act(at_s, ActionKind::CloseOutlet, tap);
        }
    }
    script.duration_s = at_s + 30;
    return script;
}

}  // namespace

TEST_CASE("moving a whole case in time changes nothing but the clock", "[study][property]")
{
    const Drawing motorhome = stored("resources/templates/motorhome_rear_bath.tapward");
    const std::vector<Drawing> drawings{
        stored("resources/templates/small_travel_trailer.tapward"),
        motorhome,
        stored("samples/long_hall_coach.tapward"),
        stored("tests/study/trade_coach.tapward"),
        withLoop(motorhome, {ReturnWay::Tank, PumpSet::One}),
        withLoop(motorhome, {ReturnWay::OwnLine, PumpSet::TwoInParallel}),
    };
    CHECK(rc::check("the same, later", [&drawings] {
        const Drawing& drawing =
            drawings[static_cast<std::size_t>(*rc::gen::inRange(0, static_cast<int>(drawings.size())))];
        const Case script = odd(drawing);
        const double shift_s = *rc::gen::inRange(1, 1000) / 100.0;
        Case later = script;
        later.duration_s += shift_s;
        for (Action& action : later.actions) {
            action.at_s += shift_s;
        }
        const study::CaseResult a = test::runCase(drawing, script), b = test::runCase(drawing, later);
        RC_LOG() << drawing.job.title << ", " << shift_s << " s later\n";
        RC_ASSERT(a.noAnswer.has_value() == b.noAnswer.has_value());
        RC_ASSERT(a.scalars.size() == b.scalars.size());
        for (std::size_t i = 0; i < a.scalars.size(); ++i) {
            const study::Scalar &one = a.scalars[i], &other = b.scalars[i];
            RC_LOG() << one.id << ": " << one.value.value_or(-1) << " and " << other.value.value_or(-1) << '\n';
            RC_ASSERT(one.value.has_value() == other.value.has_value());
            if (!one.value || one.id.ends_with("residual")) {
                continue;
            }
            const double apart = std::abs(*one.value - *other.value);
            RC_ASSERT(apart <= (one.quantity == Quantity::Temperature ? 0.05
                                : one.quantity == Quantity::Time      ? 0.02
                                                                      : 0.002 * std::abs(*one.value)));
        }
        RC_ASSERT(a.events.size() == b.events.size());
        for (std::size_t i = 0; i < a.events.size(); ++i) {
            RC_LOG() << a.events[i].id << " at " << a.events[i].t_s << " and " << b.events[i].id << " at "
                     << b.events[i].t_s << '\n';
            RC_ASSERT(a.events[i].id == b.events[i].id);
            RC_ASSERT(std::abs(a.events[i].t_s + shift_s - b.events[i].t_s) <= 0.02);
        }
        RC_ASSERT(a.hottest.size() == b.hottest.size());
        for (std::size_t i = 0; i < a.hottest.size(); ++i) {
            RC_ASSERT(std::abs(a.hottest[i].hottest_C - b.hottest[i].hottest_C) <= 0.05);
        }
    }));
}

TEST_CASE("a crossing is told at the instant it happens, not at the end of a step", "[study]")
{
    const study::CaseResult result =
        test::runCase(stored("tests/study/trade_coach.tapward"), stored("tests/study/trade_coach.tapward").cases[0]);
    const auto at = [&](const char* id) {
        for (const study::Event& event : result.events) {
            if (event.id == id) {
                return event.t_s;
            }
        }
        FAIL(id);
        return 0.0;
    };
    CHECK_THAT(at("target_reached") - at("run_started"), WithinAbs(*result.scalar("time_to_target")->value, 1e-9));
    CHECK(at("first_rise") < at("target_reached"));
}
