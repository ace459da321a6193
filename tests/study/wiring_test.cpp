// SPDX-License-Identifier: GPL-3.0-or-later
#include "study/wiring.h"

#include <algorithm>
#include <cmath>
#include <rapidcheck.h>

#include "document/file.h"
#include "parts/wire_gauge.h"
#include "ring.h"
#include "study/curves.h"
#include "support/catch.h"
#include "support/stored.h"

using namespace tapward;
using study::Load;
using study::WiringNet;
using test::stored;

namespace {

Load pump(double current_A, double wire_ohm)
{
    Load one;
    one.part = 1;
    one.current_A = current_A;
    one.wire_ohm = wire_ohm;
    one.minimumVolts = 8;
    return one;
}

double voltsAt(std::vector<Load> loads, std::vector<study::Branch> branches, study::Supply supply)
{
    WiringNet net(std::move(loads), std::move(branches));
    for (WiringNet::Draw& draw : net.draws()) {
        draw.on = true;
    }
    net.solve(supply);
    return net.volts(0);
}

}  // namespace

TEST_CASE("the drop over a warm wire is the one worked out from the code's table", "[study][wiring]")
{
    // V = 2 L I R with R of NEC (NFPA 70) chapter 9, table 8, 75 °C: plain arithmetic on published values.
    struct Row {
        double current_A, oneWay_ft;
        const char* gauge;
        double drop_V;
    };
    for (const Row& row : {Row{10, 20, "14", 1.256}, Row{10, 20, "12", 0.792}, Row{7.5, 25, "14", 1.1775},
                           Row{3, 30, "16", 0.8982}, Row{15, 12, "10", 0.4464}}) {
        test::Ring ring;
        ring.set("P1", "current_A", row.current_A);
        ring.set("P1", "wire_length_m", row.oneWay_ft * us::kFoot);
        ring.set("P1", "wire_gauge", std::string(row.gauge));
        const auto study = study::wiringStudy(ring.drawing);
        REQUIRE(study.has_value());
        const auto at = std::find_if(study->loads.begin(), study->loads.end(),
                                     [](const study::LoadAnswer& l) { return l.kind == Load::Kind::Circulator; });
        REQUIRE(at != study->loads.end());
        CAPTURE(row.gauge, row.current_A);
        CHECK_THAT(at->warmDrop_V, WithinRel(row.drop_V, 0.01));
        CHECK_THAT(at->warmDropShare, WithinRel(row.drop_V / 12, 0.01));
    }
}

TEST_CASE("the wire for three percent is the one in the published 12 V table", "[study][wiring]")
{
    // ABYC E-11 table IX, conductor for 3 % at 12 V, round trip in feet: published page.
    struct Cell {
        double current_A, roundTrip_ft;
        int gauge;
    };
    for (const Cell& cell : {Cell{5, 10, 18}, Cell{5, 30, 12}, Cell{5, 60, 10}, Cell{10, 20, 10}, Cell{15, 40, 6}}) {
        test::Ring ring;
        ring.set("P1", "current_A", cell.current_A);
        ring.set("P1", "wire_length_m", cell.roundTrip_ft / 2 * us::kFoot);
        const auto study = study::wiringStudy(ring.drawing);
        REQUIRE(study.has_value());
        for (const study::LoadAnswer& one : study->loads) {
            if (one.kind == Load::Kind::Circulator) {
                CAPTURE(cell.current_A, cell.roundTrip_ft);
                CHECK(one.gaugeFor3Percent == cell.gauge);
                CHECK(*one.gaugeFor10Percent >= cell.gauge);
            }
        }
    }
}

TEST_CASE("the wiring net closes: volts lost on the way are currents times resistances", "[study][wiring]")
{
    std::vector<Load> loads{pump(1.4, 0.3), pump(1.0, 0.5), pump(2.0, 0.1)};
    loads[1].part = 2;
    loads[1].branch = 1;
    loads[2].part = 3;
    loads[2].kind = Load::Kind::Heater;
    std::vector<study::Branch> branches(2);
    branches[0].feed_ohm = 0.2;
    branches[0].other_A = 3;
    branches[1].feed_ohm = 0.05;
    WiringNet net(loads, branches);
    for (WiringNet::Draw& draw : net.draws()) {
        draw.on = true;
    }
    net.solve({12.8, 0.04});
    const double first_A = net.current_A(0) + net.current_A(2) + 3;
    CHECK_THAT(net.total_A(), WithinAbs(first_A + net.current_A(1), 1e-9));
    CHECK_THAT(net.posts_V(), WithinAbs(12.8 - 0.04 * net.total_A(), 1e-8));
    CHECK_THAT(net.volts(0), WithinAbs(net.posts_V() - 0.2 * first_A - 0.3 * net.current_A(0), 1e-8));
    CHECK_THAT(net.volts(1), WithinAbs(net.posts_V() - 0.55 * net.current_A(1), 1e-8));
    CHECK_THAT(net.volts(2), WithinAbs(net.posts_V() - 0.2 * first_A - 0.1 * 2.0, 1e-8));
    // Affinity laws (White, Fluid Mechanics, ch. 11): power with the cube of speed, so current with the square.
    CHECK_THAT(net.current_A(0), WithinAbs(1.4 * std::pow(net.volts(0) / 12, 2), 1e-8));
    CHECK_THAT(net.speed(0), WithinAbs(net.volts(0) / 12, 1e-12));
}

TEST_CASE("a pump's current lies between that at no flow and that at full flow", "[study][wiring]")
{
    Load one = pump(1.5, 0.4);
    one.noFlow_A = 0.8;
    one.runOut_m3s = 1e-4;
    double before = 0;
    for (const double flow : {0.0, 2e-5, 5e-5, 1e-4, 3e-4}) {
        WiringNet net({one}, std::vector<study::Branch>(1));
        net.draws()[0] = {true, flow, 1};
        net.solve({12, 0});
        const double speed = net.speed(0);
        const double share = std::clamp(flow / (speed * 1e-4), 0.0, 1.0);
        CHECK_THAT(net.current_A(0), WithinAbs(speed * speed * (0.8 + 0.7 * share), 1e-9));
        CHECK_THAT(net.volts(0), WithinAbs(12 - 0.4 * net.current_A(0), 1e-9));
        CHECK(net.current_A(0) >= before);
        before = net.current_A(0);
    }
}

TEST_CASE("neither more battery nor less resistance on its own way ever lowers the volts at a load", "[study][wiring]")
{
    CHECK(rc::check("monotone wiring", [] {
        const auto between = [](double least, double most) {
            return least + (most - least) * *rc::gen::inRange(0, 1001) / 1000.0;
        };
        std::vector<Load> loads;
        std::vector<study::Branch> branches(2);
        for (study::Branch& branch : branches) {
            branch.feed_ohm = between(0, 1);
            branch.other_A = between(0, 4);
        }
        for (int i = 0; i < 3; ++i) {
            Load one = pump(between(0, 4), between(0, 2));
            one.branch = *rc::gen::inRange(0, 2);
            one.kind = *rc::gen::inRange(0, 3) == 0 ? Load::Kind::Controller : Load::Kind::Circulator;
            one.maximumVolts = between(9, 16);
            loads.push_back(one);
        }
        const study::Supply supply{between(8, 15), between(0, 0.2)};
        const double volts = voltsAt(loads, branches, supply);
        RC_ASSERT(volts >= 0);
        RC_ASSERT(volts <= supply.volts + 1e-9);
        RC_ASSERT(voltsAt(loads, branches, {supply.volts + 0.5, supply.internal_ohm}) >= volts - 1e-7);
        std::vector<Load> thicker = loads;
        thicker[0].wire_ohm *= 0.5;
        RC_ASSERT(voltsAt(thicker, branches, supply) >= volts - 1e-7);
        std::vector<study::Branch> shorter = branches;
        shorter[static_cast<std::size_t>(loads[0].branch)].feed_ohm *= 0.5;
        RC_ASSERT(voltsAt(loads, shorter, supply) >= volts - 1e-7);
    }));
}

TEST_CASE("thicker or shorter wire to the pumps never gives less flow", "[study][wiring]")
{
    document::Drawing drawing = stored("tests/study/trade_ranges.tapward");
    double before = 0;
    for (const char* gauge : {"18", "16", "14", "12", "10", "8"}) {
        for (document::Part& part : drawing.parts) {
            if (part.kind == "circulator") {
                part.entries["wire_gauge"] = {std::string(gauge), parts::Basis::Measured};
            }
        }
        const study::LoopAnswer loop = study::loopAnswer(drawing);
        REQUIRE(loop.flow_m3s.has_value());
        CHECK(*loop.flow_m3s > before);
        before = *loop.flow_m3s;
    }
}

TEST_CASE("the wiring study, the chart and the prediction agree on the loop's flow at one voltage", "[study][wiring]")
{
    const document::Drawing drawing = stored("samples/long_hall_coach.tapward");
    const auto study = study::wiringStudy(drawing);
    const auto curves = study::loopCurves(drawing);
    const study::LoopAnswer loop = study::loopAnswer(drawing);
    REQUIRE(study.has_value());
    REQUIRE(curves.has_value());
    REQUIRE(study->voltages.size() == 4);
    CHECK_THAT(*study->voltages[0].flow_m3s, WithinRel(*loop.flowLowVolts_m3s, 1e-6));
    CHECK_THAT(*study->voltages[3].flow_m3s, WithinRel(*loop.flowHighVolts_m3s, 1e-6));
    for (const study::VoltageAnswer& row : study->voltages) {
        const study::PumpSet* set = curves->find(study::PumpArrangement::TwoInParallel, row.battery_V);
        REQUIRE(set);
        REQUIRE(set->working.has_value());
        CHECK_THAT(set->heaterFlow_m3s, WithinRel(*row.flow_m3s, 2e-3));
    }
}

TEST_CASE("a run's amp hours are currents times times", "[study][wiring]")
{
    test::Ring ring;
    ring.add("controller", "C1");
    ring.add("battery", "BT1");
    ring.set("BT1", "voltage_V", 12.0);
    ring.set("BT1", "internal_ohm", 0.0);
    ring.set("BT1", "capacity_C", 100.0 * 3600);
    ring.set("C1", "contact_ohm", 0.0);
    ring.set("C1", "current_A", 0.2);
    ring.set("C1", "idle_current_A", 0.01);
    ring.set("P1", "current_A", 1.5);
    ring.set("WH1", "fan_current_A", 2.0);
    ring.set("WH1", "board_current_A", 0.05);
    ring.set("WH1", "post_purge_s", 20.0);
    study::WiringOptions options;
    options.pressesPerDay = 4;
    const auto study = study::wiringStudy(ring.drawing, options);
    REQUIRE(study.has_value());
    CHECK(study->press_s == 90);  // no case: assumed, and said so
    CHECK_FALSE(study->pressNote.empty());
    const double press_C = 1.5 * 90 + 0.2 * 90 + 2.0 * 110;
    CHECK_THAT(study->perPress_C, WithinRel(press_C, 1e-6));
    CHECK_THAT(study->perPress_J, WithinRel(press_C * 12, 1e-6));
    CHECK_THAT(study->perDay_C, WithinRel(4 * press_C + 0.06 * 86400, 1e-6));
    REQUIRE(study->capacityShare.has_value());
    CHECK_THAT(*study->capacityShare, WithinRel((4 * press_C + 0.06 * 86400) / 360000, 1e-6));
}

TEST_CASE("a fuse above its wire, a socket over its rating and a pump short of volts are each named", "[study][wiring]")
{
    test::Ring ring;
    ring.add("fuse", "FU1");
    ring.add("controller", "C1");
    ring.set("P1", "wire_length_m", 6.0);
    ring.set("P1", "wire_gauge", std::string("18"));
    ring.set("FU1", "rating_A", 5.0);
    const auto said = [&](const char* words) {
        const auto study = study::wiringStudy(ring.drawing);
        REQUIRE(study.has_value());
        return std::count_if(study->cautions.begin(), study->cautions.end(), [&](const Message& message) {
            return render(message, UnitSystem::Us).find(words) != std::string::npos;
        });
    };
    CHECK(said("above the") == 0);
    CHECK(said("socket") == 0);
    CHECK(said("quarter more") == 0);
    CHECK(said("too little") == 0);
    ring.set("FU1", "rating_A", 10.0);  // AWG 18: 6 A, NEC 551.10(E) and ANSI/RVIA LV, memory
    CHECK(said("above the") == 1);
    ring.set("FU1", "rating_A", 5.0);
    ring.set("FU1", "other_load_A", 4.0);
    ring.set("FU1", "socket_rating_A", 5.0);
    CHECK(said("socket") == 1);
    CHECK(said("quarter more") == 1);
    const auto study = study::wiringStudy(ring.drawing);
    CHECK(study->branches.front().spare_A < 0);
    ring.set("FU1", "other_load_A", 0.0);
    ring.set("P1", "minimum_V", 11.0);
    ring.set("P1", "wire_length_m", 60.0);
    CHECK(said("too little") >= 1);
}
