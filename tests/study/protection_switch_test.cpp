// SPDX-License-Identifier: GPL-3.0-or-later
#include "document/file.h"
#include "study/protection_switch.h"
#include "support/catch.h"

using namespace tapward;
using study::Protection;

namespace {

document::Drawing coach()
{
    auto drawing = document::load(TAPWARD_SOURCE_DIR "/samples/long_hall_coach.tapward");
    REQUIRE(drawing.has_value());
    return *drawing;
}

study::ProtectionEffect effect(Protection protection, bool counted, double tried_s = 0)
{
    study::ProtectionEffect one;
    one.protection = protection;
    one.counted = counted;
    one.tried_s = tried_s;
    return one;
}

const document::Part& controller(const document::Drawing& drawing)
{
    for (const auto& part : drawing.parts)
        if (part.kind == "controller")
            return part;
    throw std::runtime_error("no controller in the sample");
}

}  // namespace

TEST_CASE("a protection is switched by one setting of the controller and back to the same drawing", "[study]")
{
    auto drawing = coach();
    const auto before = drawing;
    const auto wait = study::switchProtection(drawing, effect(Protection::WaitTimer, false, 600));
    REQUIRE(wait.has_value());
    auto back = document::apply(drawing, *wait);
    CHECK(document::values(controller(drawing)).number("cool_down_wait_s") == 600);
    const auto off = study::switchProtection(drawing, effect(Protection::WaitTimer, true));
    REQUIRE(off.has_value());
    auto backOn = document::apply(drawing, *off);
    CHECK(document::values(controller(drawing)).number("cool_down_wait_s") == 0);
    document::apply(drawing, backOn);
    document::apply(drawing, back);
    CHECK(drawing == before);
}

TEST_CASE("a protection with its sensor is a tick in its own box", "[study]")
{
    auto drawing = coach();
    document::Part& box = *drawing.find(controller(drawing).id);
    const auto sensor = std::ranges::find(drawing.parts, "temperature_sensor", &document::Part::kind);
    REQUIRE(sensor != drawing.parts.end());
    for (const char* key : {"stop_sensor", "limit_sensor", "inlet_sensor"})
        box.entries[key] = {std::to_string(sensor->id), parts::Basis::Measured};
    for (const auto& [protection, key] : {std::pair{Protection::TemperatureStop, "stop_by_temperature"},
                                          {Protection::HighLimit, "high_limit"},
                                          {Protection::InletLockout, "inlet_lockout"},
                                          {Protection::RefuseWhenWarm, "refuse_when_warm"}}) {
        CAPTURE(key);
        for (const bool counted : {false, true}) {
            auto edit = study::switchProtection(drawing, effect(protection, counted));
            REQUIRE(edit.has_value());
            document::apply(drawing, *edit);
            CHECK(document::values(controller(drawing)).flag(key) == !counted);
        }
    }
}

TEST_CASE("a protection that needs a sensor or a part is not switched on without it, and says what to draw", "[study]")
{
    auto drawing = coach();
    for (auto& part : drawing.parts)
        if (part.kind == "controller")
            for (const char* key : {"stop_sensor", "limit_sensor", "inlet_sensor"})
                part.entries.erase(key);
    for (const auto protection :
         {Protection::TemperatureStop, Protection::HighLimit, Protection::InletLockout, Protection::RefuseWhenWarm}) {
        CAPTURE(study::id(protection));
        const auto on = study::switchProtection(drawing, effect(protection, false));
        REQUIRE_FALSE(on.has_value());
        CHECK_FALSE(on.error().remedy.empty());
        CHECK(study::switchProtection(drawing, effect(protection, true)).has_value());  // off needs nothing
    }
    CHECK_FALSE(study::switchProtection(drawing, effect(Protection::MixingValve, false)).has_value());
    CHECK_FALSE(study::switchProtection(document::Drawing{}, effect(Protection::LongestRun, true)).has_value());
}
