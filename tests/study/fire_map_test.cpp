// SPDX-License-Identifier: GPL-3.0-or-later
#include "study/fire_map.h"

#include "document/file.h"
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
