// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <cmath>

#include "parts/wire_gauge.h"
#include "ring.h"
#include "study/wiring.h"
#include "support/catch.h"

using namespace tapward;
using study::Load;

namespace {

/// The ring on a 12 V battery with an internal resistance, a valve and a controller beside it.
test::Ring wired()
{
    test::Ring ring;
    ring.add("controller", "C1");
    ring.add("motor_valve", "MV1");
    ring.add("battery", "BT1");
    ring.set("BT1", "voltage_V", 12.4);
    ring.set("BT1", "internal_ohm", 0.1);
    ring.set("C1", "contact_ohm", 0.0);
    ring.set("C1", "current_A", 0.0);
    ring.set("C1", "idle_current_A", 0.0);
    ring.set("P1", "current_A", 1.5);
    ring.set("P1", "start_current_A", 4.5);
    ring.set("P1", "maximum_V", 20.0);
    ring.set("WH1", "fan_current_A", 2.0);
    return ring;
}

study::WiringStudy studied(const test::Ring& ring)
{
    const auto study = study::wiringStudy(ring.drawing);
    REQUIRE(study.has_value());
    return *study;
}

const study::LoadAnswer& answer(const study::WiringStudy& study, const test::Ring& ring, const char* tag)
{
    const auto at = std::find_if(study.loads.begin(), study.loads.end(), [&](const study::LoadAnswer& one) {
        return one.part == ring.drawing.findTag(tag)->id;
    });
    REQUIRE(at != study.loads.end());
    return *at;
}

std::vector<std::string> cautions(const study::WiringStudy& study, const char* words)
{
    std::vector<std::string> found;
    for (const Message& message : study.cautions) {
        const std::string text = render(message, UnitSystem::Us);
        if (text.find(words) != std::string::npos) {
            found.push_back(text);
        }
    }
    return found;
}

}  // namespace

TEST_CASE("volts running, starting and on a low battery close over the wires they pass", "[study][wiring]")
{
    test::Ring ring = wired();
    ring.set("P1", "wire_length_m", 10.0);
    ring.set("P1", "wire_gauge", std::string("16"));
    const double ohm = 2 * 10 * parts::wireResistance_ohm_m(16);
    const study::WiringStudy study = studied(ring);
    const study::LoadAnswer& pump = answer(study, ring, "P1");
    const auto pump_A = [](double volts, double share) { return 1.5 * share * std::pow(volts / 12, 2); };
    // Running: pump and heater on the battery's 12.4 V behind 0.1 ohm.
    const double all_A = pump_A(pump.volts, 1) + 2;
    CHECK_THAT(pump.current_A, WithinRel(pump_A(pump.volts, 1), 1e-6));
    CHECK_THAT(pump.volts, WithinAbs(12.4 - 0.1 * all_A - ohm * pump_A(pump.volts, 1), 1e-6));
    CHECK_THAT(study.total_A, WithinRel(all_A, 1e-6));
    CHECK_THAT(study.posts_V, WithinAbs(12.4 - 0.1 * all_A, 1e-6));
    CHECK(study.battery_V == 12.4);
    CHECK(study.internal_ohm == 0.1);
    CHECK(answer(study, ring, "WH1").current_A == 2);
    // Starting: three times the current.
    const double start_A = pump_A(pump.startVolts, 3);
    CHECK_THAT(pump.startVolts, WithinAbs(12.4 - 0.1 * (start_A + 2) - ohm * start_A, 1e-6));
    // On 10.5 V read at the posts.
    CHECK_THAT(pump.lowVolts, WithinAbs(10.5 - ohm * pump_A(pump.lowVolts, 1), 1e-6));
    CHECK_THAT(answer(study, ring, "WH1").lowVolts, WithinAbs(10.5, 1e-9));

    // Works, starts, works low: at the least volts it does, below it does not.
    const auto with = [&](double least_V) {
        ring.set("P1", "minimum_V", least_V);
        return answer(studied(ring), ring, "P1");
    };
    CHECK(with(pump.lowVolts - 1e-3).worksLow);
    CHECK_FALSE(with(pump.lowVolts + 1e-3).worksLow);
    REQUIRE(pump.lowVolts < pump.startVolts);
    REQUIRE(pump.startVolts < pump.volts);
    CHECK(with(pump.startVolts - 1e-3).starts);
    CHECK_FALSE(with(pump.startVolts + 1e-3).starts);
    CHECK(with(pump.startVolts + 1e-3).works);
    CHECK_FALSE(with(12.5).works);
}

TEST_CASE("the shared wire's warm loss is added for all that hang on it", "[study][wiring]")
{
    // NEC (NFPA 70) chapter 9, table 8, 75 °C stranded: AWG 14 3.14 ohm, AWG 12 1.98 ohm per 1000 ft. Own wire 20 ft
    // out and back at 3 A: 0.3768 V. Shared 10 ft at 3 + 1 + 4 A: 0.3168 V.
    test::Ring ring = wired();
    ring.add("fuse", "FU1");
    ring.set("C1", "current_A", 1.0);
    ring.set("MV1", "current_A", 0.0);
    ring.set("P1", "current_A", 3.0);
    ring.set("P1", "wire_length_m", 20 * us::kFoot);
    ring.set("P1", "wire_gauge", std::string("14"));
    ring.set("FU1", "feed_length_m", 10 * us::kFoot);
    ring.set("FU1", "wire_gauge", std::string("12"));
    ring.set("FU1", "other_load_A", 4.0);
    const study::WiringStudy study = studied(ring);
    const study::LoadAnswer& pump = answer(study, ring, "P1");
    CHECK_THAT(pump.warmDrop_V, WithinRel(0.3768 + 0.3168, 0.01));
    CHECK_THAT(pump.warmDropShare, WithinRel((0.3768 + 0.3168) / 12, 0.01));
    CHECK_THAT(answer(study, ring, "C1").warmDrop_V, WithinRel(0.3168, 0.01));
    CHECK(answer(study, ring, "WH1").warmDrop_V == 0);  // not on that fuse, its wire not known
    CHECK(pump.gauge == 14);
    CHECK_THAT(pump.length_m, WithinRel(20 * us::kFoot, 1e-12));
    CHECK(pump.gaugeForHeat == 18);  // 3 A and a quarter are less than AWG 18's 6 A
    REQUIRE(study.branches.size() == 2);
    CHECK(study.branches[0].fuse == ring.drawing.findTag("FU1")->id);
    CHECK(study.branches[0].loads.size() == 3);
    CHECK(study.branches[1].loads == std::vector<document::PartId>{ring.drawing.findTag("WH1")->id});
}

TEST_CASE("a press' charge: pumps for the run, the valve there and back, the heater to the end of its purge",
          "[study][wiring]")
{
    test::Ring ring = wired();
    ring.set("BT1", "voltage_V", 12.0);
    ring.set("BT1", "internal_ohm", 0.0);
    ring.set("BT1", "capacity_C", 0.0);  // not known
    ring.set("MV1", "current_A", 0.2);
    ring.set("MV1", "travel_s", 6.0);
    ring.set("MV1", "wire_length_m", 0.0);
    ring.set("WH1", "post_purge_s", 30.0);
    ring.set("WH1", "board_current_A", 0.04);
    ring.set("C1", "current_A", 0.1);
    const study::WiringStudy study = studied(ring);
    CHECK(study.pressesPerDay == 6);
    CHECK_THAT(answer(study, ring, "MV1").perPress_C, WithinRel(2 * 6 * 0.2, 1e-9));
    CHECK_THAT(answer(study, ring, "MV1").perPress_J, WithinRel(2 * 6 * 0.2 * 12, 1e-9));
    CHECK_THAT(answer(study, ring, "P1").perPress_C, WithinRel(1.5 * 90, 1e-9));
    CHECK_THAT(answer(study, ring, "WH1").perPress_C, WithinRel(2.0 * (90 + 30), 1e-9));
    CHECK_THAT(study.perPress_C, WithinRel(2.4 + 135 + 240 + 9, 1e-9));
    CHECK_THAT(study.restPerDay_C, WithinRel(0.04 * 86400, 1e-9));
    CHECK_THAT(study.perDay_C, WithinRel(6 * 386.4 + 3456, 1e-9));
    CHECK_THAT(study.perDay_J, WithinRel(12 * (6 * 386.4 + 3456), 1e-9));
    CHECK_FALSE(study.capacityShare.has_value());
    // From a battery with losses the same charge is taken at its own volts.
    ring.set("BT1", "internal_ohm", 0.2);
    const study::WiringStudy weak = studied(ring);
    CHECK_THAT(weak.perPress_J, WithinRel(12 * weak.perPress_C, 1e-9));
    CHECK(answer(weak, ring, "WH1").perPress_J < 12 * answer(weak, ring, "WH1").perPress_C);
}

TEST_CASE("a press lasts as long as the first run of the first case that has one", "[study][wiring]")
{
    test::Ring ring = wired();
    ring.drawing.find(ring.drawing.findTag("MV1")->id)->stage = document::Stage::Removed;
    ring.set("C1", "stop_by_volume", false);
    ring.set("C1", "stop_by_time", true);
    ring.set("C1", "stop_time_s", 20.0);
    document::Action press;
    press.at_s = 3;
    press.part = ring.drawing.findTag("C1")->id;
    document::Case plain;
    plain.name = "Nothing pressed";
    document::Case before = plain;
    before.name = "Today";
    before.view = document::View::Before;
    before.actions = {press};
    document::Case run = plain;
    run.name = "Press";
    run.duration_s = 40;
    run.actions = {press};
    document::Case later = run;
    later.name = "Later";
    ring.drawing.cases = {plain, before, run, later};
    const study::WiringStudy stopped = studied(ring);
    CHECK_THAT(stopped.press_s, WithinAbs(20, 0.6));  // the pumps may start a moment later
    CHECK(stopped.pressNote.arguments == std::vector<Argument>{std::string("Press")});
    // Not stopped within the case: from the press to its end.
    ring.set("C1", "stop_time_s", 120.0);
    const study::WiringStudy open = studied(ring);
    CHECK_THAT(open.press_s, WithinAbs(37, 0.6));
    CHECK(open.pressNote.text.find("not stopped") != std::string::npos);
}

TEST_CASE("at each of four voltages: the pumps' volts, the flow at the heater, and whether its board works",
          "[study][wiring]")
{
    test::Ring ring = wired();
    ring.set("WH1", "minimum_V", 11.0);
    ring.set("WH1", "activation_flow_m3s", 2e-5);
    ring.set("WH1", "hold_flow_m3s", 1.5e-5);
    const study::WiringStudy study = studied(ring);
    REQUIRE(study.voltages.size() == 4);
    const double volts[] = {10.5, 12.0, 13.2, 14.4};
    double flow = 0;
    for (std::size_t i = 0; i < 4; ++i) {
        CAPTURE(volts[i]);
        const study::VoltageAnswer& row = study.voltages[i];
        CHECK(row.battery_V == volts[i]);
        REQUIRE(row.pump_V.size() == 1);
        CHECK_THAT(row.pump_V[0], WithinAbs(volts[i], 1e-9));  // no length given: no loss, and read at the posts
        CHECK(row.heaterWorks == (volts[i] >= 11));
        REQUIRE(row.flow_m3s.has_value());
        CHECK(*row.flow_m3s > flow);
        flow = *row.flow_m3s;
        CHECK_THAT(row.margin.value_or(0), WithinRel(flow / 2e-5, 1e-9));
    }
}

TEST_CASE("what is to be seen to on the 12 V side is told with its parts and figures", "[study][wiring]")
{
    test::Ring ring = wired();
    ring.set("BT1", "internal_ohm", 0.0);
    ring.set("BT1", "voltage_V", 12.0);
    CHECK(cautions(studied(ring), "P1 has no fuse drawn").size() == 1);
    ring.add("fuse", "FU1");
    CHECK(cautions(studied(ring), "P1 has no fuse drawn").empty());
    ring.set("WH1", "fuse", std::to_string(ring.drawing.findTag("FU1")->id));
    CHECK(cautions(studied(ring), "no fuse drawn").empty());

    // AWG 14 may carry 15 A (NEC 240.4(D)).
    ring.set("FU1", "wire_gauge", std::string("14"));
    ring.set("FU1", "rating_A", 20.0);
    CHECK(cautions(studied(ring), "above the").at(0)
          == "FU1 is rated 20.00 A, above the 15.00 A that AWG 14 behind it may carry.");
    // 1.5 + 2 + valve 0.1 A, and 4 more.
    ring.set("FU1", "rating_A", 5.0);
    ring.set("FU1", "other_load_A", 4.0);
    ring.set("FU1", "socket_rating_A", 6.0);
    CHECK(cautions(studied(ring), "socket").at(0).find("7.60 A") != std::string::npos);
    CHECK(cautions(studied(ring), "quarter more").at(0).find("7.60 A") != std::string::npos);
    ring.set("FU1", "other_load_A", 0.0);
    ring.set("FU1", "rating_A", 10.0);
    CHECK(cautions(studied(ring), "socket").empty());

    // A pump that runs but does not start is told with the volts at the start; one that only fails on a low battery
    // with those and the battery's.
    ring.set("P1", "wire_length_m", 8.0);
    ring.set("P1", "wire_gauge", std::string("14"));
    ring.set("P1", "minimum_V", 10.45);
    const study::WiringStudy low = studied(ring);
    REQUIRE(answer(low, ring, "P1").starts);
    REQUIRE_FALSE(answer(low, ring, "P1").worksLow);
    CHECK(cautions(low, "P1 gets").at(0).find("too little") != std::string::npos);
    CHECK(cautions(low, "P1 gets").size() == 1);
    const double between_V = 0.5 * (answer(low, ring, "P1").volts + answer(low, ring, "P1").startVolts);
    ring.set("P1", "minimum_V", between_V);
    const study::WiringStudy stuck = studied(ring);
    const auto said = std::find_if(stuck.cautions.begin(), stuck.cautions.end(),
                                   [](const Message& one) { return one.text == "{0} gets {1}, too little to work."; });
    REQUIRE(said != stuck.cautions.end());
    CHECK_THAT(std::get<Measure>(said->arguments.at(1)).si, WithinAbs(answer(stuck, ring, "P1").startVolts, 1e-9));
    ring.set("P1", "minimum_V", 12.5);
    const study::WiringStudy dead = studied(ring);
    const auto told = std::find_if(dead.cautions.begin(), dead.cautions.end(),
                                   [](const Message& one) { return one.text == "{0} gets {1}, too little to work."; });
    REQUIRE(told != dead.cautions.end());
    CHECK_THAT(std::get<Measure>(told->arguments.at(1)).si, WithinAbs(answer(dead, ring, "P1").volts, 1e-9));

    // Over a tenth of 12 V, warm: NEC table 8, 1.5 A over AWG 18 stranded at 7.95 ohm per 1000 ft:
    // 1.19 V for 50 ft one way (9.9 %), 1.31 V for 55 ft (10.9 %).
    ring.set("P1", "minimum_V", 5.0);
    ring.set("P1", "wire_gauge", std::string("18"));
    ring.set("FU1", "feed_length_m", 0.0);
    ring.set("P1", "wire_length_m", 50 * us::kFoot);
    CHECK(cautions(studied(ring), "of 12 V").empty());
    ring.set("P1", "wire_length_m", 55 * us::kFoot);
    CHECK(cautions(studied(ring), "of 12 V").size() == 1);
}
