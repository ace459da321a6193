// SPDX-License-Identifier: GPL-3.0-or-later
#include "study/wiring_net.h"

#include <cmath>

#include "parts/wire_gauge.h"
#include "ring.h"
#include "study/wiring.h"
#include "support/catch.h"

using namespace tapward;
using study::Branch;
using study::Load;
using study::WiringNet;

namespace {

Load load(Load::Kind kind, double current_A, double wire_ohm, int branch = 0)
{
    Load one;
    one.part = 1;
    one.kind = kind;
    one.current_A = current_A;
    one.wire_ohm = wire_ohm;
    one.branch = branch;
    return one;
}

WiringNet on(std::vector<Load> loads, std::vector<Branch> branches)
{
    WiringNet net(std::move(loads), std::move(branches));
    for (WiringNet::Draw& draw : net.draws()) {
        draw.on = true;
    }
    return net;
}

/// The net of a drawing of the finished job; the plant must outlive nothing here.
WiringNet netOf(const document::Drawing& drawing)
{
    const auto plant = study::makePlant(drawing, document::View::After);
    REQUIRE(plant.has_value());
    return WiringNet(*plant);
}

const Load& loadOf(const WiringNet& net, const document::Drawing& drawing, const char* tag)
{
    const int index = net.indexOf(drawing.findTag(tag)->id);
    REQUIRE(index >= 0);
    return net.loads()[static_cast<std::size_t>(index)];
}

}  // namespace

TEST_CASE("a circulator's speed follows its volts between its least and its highest", "[study][wiring]")
{
    Load pump;
    pump.ratedVolts = 12;
    pump.minimumVolts = 8;
    pump.maximumVolts = 14;
    CHECK(study::circulatorSpeed(pump, 7.99) == 0);
    CHECK_THAT(study::circulatorSpeed(pump, 8), WithinRel(8.0 / 12, 1e-12));
    CHECK_THAT(study::circulatorSpeed(pump, 13), WithinRel(13.0 / 12, 1e-12));
    CHECK_THAT(study::circulatorSpeed(pump, 15), WithinRel(14.0 / 12, 1e-12));  // its electronics hold it
    pump.minimumVolts = 0;
    CHECK(study::circulatorSpeed(pump, 0) == 0);
    CHECK(study::circulatorSpeed(pump, -1) == 0);
}

TEST_CASE("currents by hand: constant, square, held, started, switched off", "[study][wiring]")
{
    // A board of 2 A behind 0.5 ohm at 12 V: 1 V lost.
    WiringNet board = on({load(Load::Kind::Heater, 2, 0.5)}, std::vector<Branch>(1));
    board.solve({12, 0});
    CHECK_THAT(board.volts(0), WithinAbs(11, 1e-9));
    CHECK_THAT(board.current_A(0), WithinAbs(2, 1e-9));
    CHECK_THAT(board.total_A(), WithinAbs(2, 1e-9));
    CHECK_THAT(board.posts_V(), WithinAbs(12, 1e-9));
    // With half of it, or off, or the battery weaker: asked again.
    board.draws()[0].share = 0.5;
    board.solve({12, 0});
    CHECK_THAT(board.volts(0), WithinAbs(11.5, 1e-9));
    board.solve({11, 0.5});  // 1 A behind 0.5 + 0.5 ohm
    CHECK_THAT(board.volts(0), WithinAbs(10, 1e-8));
    CHECK_THAT(board.posts_V(), WithinAbs(10.5, 1e-8));
    board.draws()[0].on = false;
    board.solve({11, 0.5});
    CHECK_THAT(board.volts(0), WithinAbs(11, 1e-9));
    CHECK(board.current_A(0) == 0);

    // 1.2 A at 12 V, with the square of the volts, behind 1 ohm: v + 1.2 v²/144 = 12 (the root of
    // v² + 120 v - 1440 = 0 is -60 + sqrt 5040 = 10.99 V).
    const double volts = -60 + std::sqrt(5040.0);
    WiringNet pump = on({load(Load::Kind::Circulator, 1.2, 1)}, std::vector<Branch>(1));
    pump.solve({12, 0});
    CHECK_THAT(pump.volts(0), WithinAbs(volts, 1e-8));
    CHECK_THAT(pump.current_A(0), WithinAbs(12 - volts, 1e-8));
    // Starting at three times that: v² + 40 v - 480 = 0.
    pump.draws()[0].share = 3;
    pump.solve({12, 0});
    CHECK_THAT(pump.volts(0), WithinAbs(-20 + std::sqrt(880.0), 1e-8));
    // Held at 9 V by its electronics: (9/12)² x 1.2 A = 0.675 A, whatever more there is.
    Load held = load(Load::Kind::Circulator, 1.2, 1);
    held.maximumVolts = 9;
    WiringNet steady = on({held}, std::vector<Branch>(1));
    steady.solve({12, 0});
    CHECK_THAT(steady.current_A(0), WithinAbs(0.675, 1e-8));
    CHECK_THAT(steady.volts(0), WithinAbs(12 - 0.675, 1e-8));
    CHECK_THAT(steady.speed(0), WithinAbs(0.75, 1e-12));
}

TEST_CASE("what is asked beyond the wire brings the volts to nothing and the current to what the wire carries",
          "[study][wiring]")
{
    // 12 V over 10 ohm drives at most 1.2 A.
    WiringNet thin = on({load(Load::Kind::Controller, 5, 10)}, std::vector<Branch>(1));
    thin.solve({12, 0});
    CHECK_THAT(thin.volts(0), WithinAbs(0, 1e-9));
    CHECK(thin.current_A(0) <= 1.2 + 1e-9);
    std::vector<Branch> feed(1);
    feed[0].feed_ohm = 10;
    WiringNet shared = on({load(Load::Kind::Controller, 5, 0)}, feed);
    shared.solve({12, 0});
    CHECK_THAT(shared.volts(0), WithinAbs(0, 1e-6));
    WiringNet flat = on({load(Load::Kind::Circulator, 5, 1)}, feed);
    flat.solve({0, 0});
    CHECK(flat.volts(0) == 0);
    CHECK(flat.total_A() == 0);
}

TEST_CASE("another load on the fuse's wire takes from those behind it, not from those beside it", "[study][wiring]")
{
    std::vector<Branch> branches(2);
    branches[0].feed_ohm = 0.5;
    branches[0].other_A = 3;
    // 2 A and the others' 3 A over 0.5 ohm: 2.5 V. The other branch has all 12.
    WiringNet net = on({load(Load::Kind::Heater, 2, 0), load(Load::Kind::Heater, 4, 0.25, 1)}, branches);
    net.solve({12, 0});
    CHECK_THAT(net.volts(0), WithinAbs(9.5, 1e-8));
    CHECK_THAT(net.volts(1), WithinAbs(11, 1e-8));
    CHECK_THAT(net.total_A(), WithinAbs(9, 1e-8));
}

TEST_CASE("a drawing's wiring is its wires, contacts and fuses, each load on the fuse it names", "[study][wiring]")
{
    test::Ring ring;
    const auto box = ring.add("controller", "C1");
    ring.add("motor_valve", "MV1");
    const auto fuse = ring.add("fuse", "FU1");
    ring.set("C1", "contact_ohm", 0.07);
    ring.set("P1", "wire_length_m", 5.0);
    ring.set("P1", "wire_gauge", std::string("16"));
    ring.set("P1", "current_A", 1.4);
    ring.set("P1", "no_flow_current_A", 0.6);
    ring.set("P1", "start_current_A", 3.5);
    ring.set("P1", "rated_V", 13.0);
    ring.set("P1", "minimum_V", 7.0);
    ring.set("P1", "maximum_V", 14.0);
    ring.set("P1", "curve", parts::Curve{{0, 3}, {1e-4, 0}});
    ring.set("MV1", "wire_length_m", 4.0);
    ring.set("MV1", "wire_gauge", std::string("18"));
    ring.set("MV1", "current_A", 0.09);
    ring.set("MV1", "minimum_V", 9.5);
    ring.set("C1", "wire_length_m", 3.0);
    ring.set("C1", "current_A", 0.2);
    ring.set("C1", "idle_current_A", 0.02);
    ring.set("WH1", "wire_length_m", 2.0);
    ring.set("WH1", "wire_gauge", std::string("12"));
    ring.set("WH1", "fan_current_A", 2.5);
    ring.set("WH1", "board_current_A", 0.04);
    ring.set("WH1", "minimum_V", 10.4);
    ring.set("FU1", "rating_A", 7.5);
    ring.set("FU1", "wire_gauge", std::string("10"));
    ring.set("FU1", "resistance_ohm", 0.02);
    ring.set("FU1", "feed_length_m", 6.0);
    ring.set("FU1", "other_load_A", 1.5);
    ring.set("FU1", "socket_rating_A", 8.0);
    // Solid copper at 20 °C, out and back; ASTM B258 areas are held by the parts' own tests.
    const auto wire = [](double oneWay_m, int gauge) { return 2 * oneWay_m * parts::wireResistance_ohm_m(gauge); };
    {
        const WiringNet net = netOf(ring.drawing);
        REQUIRE(net.loads().size() == 4);
        const Load& pump = loadOf(net, ring.drawing, "P1");
        CHECK(pump.kind == Load::Kind::Circulator);
        CHECK(pump.current_A == 1.4);
        CHECK(pump.noFlow_A == 0.6);
        CHECK(pump.start_A == 3.5);
        CHECK(pump.rest_A == 0);
        CHECK(pump.ratedVolts == 13);
        CHECK(pump.minimumVolts == 7);
        CHECK(pump.maximumVolts == 14);
        CHECK_THAT(pump.runOut_m3s, WithinRel(1e-4, 1e-6));
        CHECK(pump.length_m == 5);
        CHECK(pump.gauge == 16);
        CHECK_THAT(pump.wire_ohm, WithinRel(wire(5, 16) + 0.07, 1e-9));  // the contact is in its way
        const Load& valve = loadOf(net, ring.drawing, "MV1");
        CHECK(valve.kind == Load::Kind::Valve);
        CHECK(valve.current_A == 0.09);
        CHECK(valve.start_A == 0.09);
        CHECK(valve.minimumVolts == 9.5);
        CHECK_THAT(valve.wire_ohm, WithinRel(wire(4, 18) + 0.07, 1e-9));
        const Load& controller = loadOf(net, ring.drawing, "C1");
        CHECK(controller.kind == Load::Kind::Controller);
        CHECK(controller.current_A == 0.2);
        CHECK(controller.rest_A == 0.02);
        CHECK_THAT(controller.wire_ohm, WithinRel(wire(3, 18), 1e-9));
        const Load& heater = loadOf(net, ring.drawing, "WH1");
        CHECK(heater.kind == Load::Kind::Heater);
        CHECK(heater.current_A == 2.5);
        CHECK(heater.rest_A == 0.04);
        CHECK(heater.minimumVolts == 10.4);
        CHECK_THAT(heater.wire_ohm, WithinRel(wire(2, 12), 1e-9));
        // The only fuse carries what the job adds; a heater has its own in the panel.
        const Branch& fused = net.branches()[0];
        CHECK(fused.fuse == fuse);
        CHECK(fused.rating_A == 7.5);
        CHECK(fused.other_A == 1.5);
        CHECK(fused.socket_A == 8);
        CHECK(fused.feed_m == 6);
        CHECK(fused.gauge == 10);
        CHECK_THAT(fused.feed_ohm, WithinRel(wire(6, 10) + 0.02, 1e-9));
        CHECK(pump.branch == 0);
        CHECK(valve.branch == 0);
        CHECK(controller.branch == 0);
        CHECK(heater.branch != 0);
        CHECK(net.branches()[static_cast<std::size_t>(heater.branch)].fuse == document::kNoPart);
        CHECK(net.branches()[static_cast<std::size_t>(heater.branch)].feed_ohm == 0);
        CHECK(net.branches()[static_cast<std::size_t>(heater.branch)].gauge == 12);
        CHECK(net.indexOf(fuse) == -1);
    }
    // Two fuses: each load on the one it names; one that names none has none.
    const auto second = ring.add("fuse", "FU2");
    ring.set("P1", "fuse", std::to_string(second));
    ring.set("MV1", "fuse", std::to_string(fuse));
    ring.set("WH1", "fuse", std::to_string(second));
    {
        const WiringNet net = netOf(ring.drawing);
        const auto fuseOf = [&](const char* tag) {
            return net.branches()[static_cast<std::size_t>(loadOf(net, ring.drawing, tag).branch)].fuse;
        };
        CHECK(fuseOf("P1") == second);
        CHECK(fuseOf("MV1") == fuse);
        CHECK(fuseOf("WH1") == second);
        CHECK(fuseOf("C1") == document::kNoPart);
        CHECK(net.branches().size() == 3);
    }
    // Two controllers: a contact counts only where it is said whose it is.
    ring.add("controller", "C2");
    ring.set("C2", "contact_ohm", 0.5);
    CHECK_THAT(loadOf(netOf(ring.drawing), ring.drawing, "P1").wire_ohm, WithinRel(wire(5, 16), 1e-9));
    ring.set("P1", "controller", std::to_string(ring.drawing.findTag("C2")->id));
    ring.set("MV1", "controller", std::to_string(box));
    CHECK_THAT(loadOf(netOf(ring.drawing), ring.drawing, "P1").wire_ohm, WithinRel(wire(5, 16) + 0.5, 1e-9));
    CHECK_THAT(loadOf(netOf(ring.drawing), ring.drawing, "MV1").wire_ohm, WithinRel(wire(4, 18) + 0.07, 1e-9));
}

TEST_CASE("the battery feeds with what it has behind its own resistance; without one the usual volts are",
          "[study][wiring]")
{
    test::Ring ring;
    const auto supply = [&] {
        const auto plant = study::makePlant(ring.drawing, document::View::After);
        REQUIRE(plant.has_value());
        return study::batterySupply(*plant);
    };
    // Three quarters full, off the charger, lights and fans on: common practice, no published source.
    CHECK(supply() == study::Supply{12.2, 0});
    ring.add("battery", "BT1");
    ring.set("BT1", "voltage_V", 12.7);
    ring.set("BT1", "internal_ohm", 0.03);
    CHECK(supply() == study::Supply{12.7, 0.03});
}

TEST_CASE("a fuse's branch adds up to what it carries and what is left", "[study][wiring]")
{
    Load one = load(Load::Kind::Circulator, 2, 0), two = load(Load::Kind::Circulator, 1, 0),
         other = load(Load::Kind::Heater, 9, 0, 1);
    one.part = 11;
    two.part = 12;
    one.start_A = 5;
    two.start_A = 0.5;  // less than it runs on: that counts
    one.gauge = 16;
    one.length_m = 3;
    two.gauge = 18;
    two.length_m = 0;  // not known: says nothing
    std::vector<Branch> branches(2);
    branches[0].fuse = 7;
    branches[0].rating_A = 7.5;
    branches[0].other_A = 3;
    branches[0].gauge = 14;
    const auto answer = [&] { return study::branchAnswer(WiringNet({one, two, other}, branches), 0); };
    study::BranchAnswer fused = answer();
    CHECK(fused.fuse == 7);
    CHECK(fused.loads == std::vector<document::PartId>{11, 12});
    CHECK(fused.rating_A == 7.5);
    CHECK(fused.steady_A == 3);
    CHECK(fused.other_A == 3);
    CHECK(fused.inrush_A == 5 + 1 + 3);
    CHECK(fused.thinnestGauge == 16);
    CHECK(fused.wireLimit_A == 8);  // AWG 16: NEC 551.10(E) and ANSI/RVIA LV, memory
    CHECK_FALSE(fused.fuseAboveWire);
    // A quarter more than the 6 A it carries is 7.5 A.
    CHECK_FALSE(fused.fuseBelowLoad);
    CHECK_THAT(fused.spare_A, WithinAbs(0, 1e-12));
    branches[0].rating_A = 7.4;
    CHECK(answer().fuseBelowLoad);
    CHECK_THAT(answer().spare_A, WithinAbs(7.4 / 1.25 - 6, 1e-12));
    branches[0].rating_A = 8;
    CHECK_FALSE(answer().fuseAboveWire);
    branches[0].rating_A = 8.1;
    CHECK(answer().fuseAboveWire);
    branches[0].rating_A = 10;  // 8 A after the quarter
    CHECK_THAT(answer().spare_A, WithinAbs(2, 1e-12));
    branches[0].socket_A = 7;  // the smaller of both
    CHECK_THAT(answer().spare_A, WithinAbs(1, 1e-12));
    CHECK_FALSE(answer().socketExceeded);
    branches[0].socket_A = 6;
    CHECK_FALSE(answer().socketExceeded);
    branches[0].socket_A = 5.9;
    CHECK(answer().socketExceeded);
    CHECK_THAT(answer().spare_A, WithinAbs(-0.1, 1e-12));
    branches[0].socket_A = 20;
    CHECK_THAT(answer().spare_A, WithinAbs(2, 1e-12));
    two.length_m = 1;
    CHECK(answer().thinnestGauge == 18);
    // Without a fuse there is nothing to hold against it.
    branches[0].fuse = document::kNoPart;
    branches[0].socket_A = 1;
    CHECK_FALSE((answer().fuseAboveWire || answer().fuseBelowLoad || answer().socketExceeded));
    CHECK(answer().spare_A == 0);
    CHECK(answer().steady_A == 3);
}
