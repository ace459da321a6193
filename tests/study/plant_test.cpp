// SPDX-License-Identifier: GPL-3.0-or-later
// A drawing as chains, and the loop found in them: what is joined to what, which way, how high.
#include <cmath>
#include <map>
#include <numeric>

#include "study/bench.h"
#include "study/head_budget.h"
#include "study/loop_ways.h"
#include "study/simulate.h"

using namespace tapward;
using document::ActionKind;
using test::SmallCoach;

namespace {

study::Plant plantOf(const document::Drawing& drawing, document::View view = document::View::After)
{
    auto plant = study::makePlant(drawing, view);
    INFO((plant ? "" : render(plant.error().what, UnitSystem::Metric)));
    REQUIRE(plant.has_value());
    return std::move(*plant);
}

study::LoopMap loopOf(const document::Drawing& drawing, const study::Plant& plant)
{
    return study::findLoop(drawing, plant, 20);
}

std::string reason(const study::LoopAnswer& answer) { return render(answer.reason, UnitSystem::Metric); }

/// The chain a part's first path is in.
const study::Plant::Chain& chainOf(const study::Plant& plant, document::PartId part)
{
    const study::PlantPart* found = plant.find(part);
    REQUIRE(found);
    REQUIRE(found->places.at(0).link >= 0);
    return plant.chains[static_cast<std::size_t>(found->places[0].link)];
}

double rise(const study::Plant::Chain& chain)
{
    return std::accumulate(chain.elements.begin(), chain.elements.end(), 0.0,
                           [](double sum, const network::Element& element) { return sum + element.rise_m; });
}

bool has(const std::vector<document::PartId>& ids, document::PartId id)
{
    return std::find(ids.begin(), ids.end(), id) != ids.end();
}

void stage(document::Drawing& drawing, document::PartId id, document::Stage stage) { drawing.find(id)->stage = stage; }

}  // namespace

TEST_CASE("a coach with one loop is eight chains between five junctions", "[study][plant]")
{
    // Junctions: three tees, the heater's two ports. Chains: city - T1 - T3 - WH1 - T2, WH1 itself, T2 - F1 - outside,
    // T1 - F1 - outside, T2 - loop - T3.
    const SmallCoach coach;
    const auto plant = plantOf(coach.drawing);
    CHECK(plant.junctions == 5);
    CHECK(plant.chains.size() == 8);
    CHECK(plant.openEnds.empty());
    const study::PlantPart& heater = *plant.find(coach.id("WH1"));
    CHECK(chainOf(plant, coach.id("WH1")).partsInOrder == std::vector{coach.id("WH1")});
    CHECK(heater.hubJunction == -1);
    CHECK(heater.portJunction.at(0) >= 0);
    CHECK(heater.portJunction.at(1) >= 0);
    CHECK(heater.portJunction[0] != heater.portJunction[1]);
    for (const char* tee : {"T1", "T2", "T3"}) {
        CHECK(plant.find(coach.id(tee))->hubJunction >= 0);
        CHECK(plant.find(coach.id(tee))->portJunction == std::vector<int>{-1, -1, -1});  // inside chains
    }
    // The loop's chain runs from tee to tee over everything drawn in between, in order.
    const auto& loop = chainOf(plant, coach.id("MV1"));
    const int t2 = plant.find(coach.id("T2"))->hubJunction, t3 = plant.find(coach.id("T3"))->hubJunction;
    CHECK(((loop.from == t2 && loop.to == t3) || (loop.from == t3 && loop.to == t2)));
    std::vector<document::PartId> order;
    for (const document::PartId id : loop.partsInOrder) {
        if (const auto& kind = coach.drawing.find(id)->kind; kind != "pipe_run") {
            order.push_back(id);
        }
    }
    std::vector<document::PartId> drawn;
    for (const char* tag : {"T2", "TE1", "MV1", "P1", "FE1", "CV1", "T3"}) {
        drawn.push_back(coach.id(tag));
    }
    if (loop.from == t3) {
        std::reverse(drawn.begin(), drawn.end());
    }
    CHECK(order == drawn);
    // Every part that is drawn backward against its chain says so: pump and check point the same way.
    const auto reversed = [&](const char* tag) { return plant.find(coach.id(tag))->places[0].reversed; };
    CHECK(reversed("P1") == (loop.from == t3));
    CHECK(reversed("CV1") == (loop.from == t3));
    CHECK(plant.withRole(parts::Role::Circulator) == std::vector{plant.find(coach.id("P1"))});
    CHECK(plant.find(9999) == nullptr);
}

TEST_CASE("elements, stretches and places of a chain belong together", "[study][plant]")
{
    const SmallCoach coach;
    const auto plant = plantOf(coach.drawing);
    for (const study::Plant::Chain& chain : plant.chains) {
        CHECK(chain.elements.size() == chain.elementParts.size());
        CHECK(chain.stretches.size() == chain.stretchParts.size());
    }
    for (const study::PlantPart& part : plant.parts) {
        REQUIRE(part.places.size() == part.model.paths.size());
        for (std::size_t p = 0; p < part.places.size(); ++p) {
            const study::Place& place = part.places[p];
            REQUIRE(place.link >= 0);
            const study::Plant::Chain& chain = plant.chains[static_cast<std::size_t>(place.link)];
            for (int e = 0; e < place.elementCount; ++e) {
                CHECK(chain.elementParts.at(static_cast<std::size_t>(place.firstElement + e)) == part.id);
                CHECK(chain.elements.at(static_cast<std::size_t>(place.firstElement + e)).reversed == place.reversed);
            }
            const thermal::Stretch& body = part.model.paths[p].body;
            CHECK((place.stretch >= 0) == (body.length_m > 0 || body.volume_m3 > 0));
            if (place.stretch >= 0) {
                CHECK(chain.stretchParts.at(static_cast<std::size_t>(place.stretch)) == part.id);
                CHECK(place.stretchesBefore == place.stretch);
            }
        }
    }
    // A heater without water of its own beside it, a sensor without any: the field still has a drop to carry.
    const auto field = plant.makeField({.cell_m = 0.15, .wallLayers = 2});
    const int loop = plant.find(coach.id("MV1"))->places[0].link;
    // 0.5 m, 0.5 m and 3 m of tube and the pump's own 30 mL.
    CHECK_THAT(field.volume(loop), WithinRel(SmallCoach::held_m3(4) + 3e-5, 1e-9));
    test::Bench dry;
    const auto city = dry.add("city_inlet", "CW1"), valve = dry.add("hand_valve", "V1"), tap = dry.add("faucet", "F1");
    dry.set("F1", "serves", std::string("cold"));
    dry.pipe(city, "outlet", valve, "inlet");
    dry.pipe(valve, "outlet", tap, "cold");
    CHECK(plantOf(dry.drawing).makeField({.cell_m = 0.15, .wallLayers = 2}).volume(0) > 0);
    CHECK(plantOf(dry.drawing).chains.at(0).from == network::kOutside);
    CHECK(plantOf(dry.drawing).chains.at(0).to == network::kOutside);
}

TEST_CASE("a chain rises from the height of its first part to that of its last, whichever way a pipe is drawn",
          "[study][plant]")
{
    SmallCoach coach;
    const auto height = [&](const char* tag, double metres) { coach.drawing.find(coach.id(tag))->height_m = metres; };
    height("T1", 0.2);
    height("T2", 1.5);
    height("T3", 0.3);
    height("WH1", 0.8);
    height("P1", 2.5);
    height("F1", 0.9);
    for (const bool turned : {false, true}) {
        CAPTURE(turned);
        if (turned) {
            for (document::Part& part : coach.drawing.parts) {
                std::swap(part.ends[0], part.ends[1]);
            }
        }
        const auto plant = plantOf(coach.drawing);
        std::map<int, double> at{{plant.find(coach.id("T1"))->hubJunction, 0.2},
                                 {plant.find(coach.id("T2"))->hubJunction, 1.5},
                                 {plant.find(coach.id("T3"))->hubJunction, 0.3},
                                 {plant.find(coach.id("WH1"))->portJunction[0], 0.8},
                                 {plant.find(coach.id("WH1"))->portJunction[1], 0.8}};
        REQUIRE(at.size() == 5);
        for (const study::Plant::Chain& chain : plant.chains) {
            if (chain.from >= 0 && chain.to >= 0) {
                CHECK_THAT(rise(chain), WithinAbs(at.at(chain.to) - at.at(chain.from), 1e-12));
            } else if (has(chain.partsInOrder, coach.id("F1"))) {  // the tap opens where it stands
                const double inner = at.at(std::max(chain.from, chain.to));
                CHECK_THAT(rise(chain), WithinAbs(chain.to < 0 ? 0.9 - inner : inner - 0.9, 1e-12));
            }
        }
        // The pump stands highest: on the way from T2 to T3 water climbs 1 m to it and falls 2.2 m behind it.
        const auto& loop = chainOf(plant, coach.id("P1"));
        double up = 0, down = 0;
        for (const network::Element& element : loop.elements) {
            (element.rise_m > 0 ? up : down) += element.rise_m;
        }
        const bool along = loop.from == plant.find(coach.id("T2"))->hubJunction;
        CHECK(up >= (along ? 1.0 : 2.2) - 1e-12);
        CHECK(down <= (along ? -2.2 : -1.0) + 1e-12);
    }
}

TEST_CASE("a part that is not there is bridged where exactly two pipes meet it", "[study][plant]")
{
    SmallCoach coach;
    for (const char* tag : {"CV1"}) {
        stage(coach.drawing, coach.id(tag), document::Stage::Added);
    }
    const auto after = plantOf(coach.drawing);
    const auto before = plantOf(coach.drawing, document::View::Before);
    CHECK(before.find(coach.id("CV1")) == nullptr);
    CHECK(before.chains.size() == after.chains.size());
    CHECK(before.junctions == after.junctions);
    CHECK(before.openEnds.empty());
    CHECK(before.find(coach.id("FE1"))->places[0].link == before.find(coach.id("P1"))->places[0].link);

    // A tee that is taken out leaves three pipes with nothing at their ends: none is joined to another.
    stage(coach.drawing, coach.id("T1"), document::Stage::Removed);
    const auto without = plantOf(coach.drawing);
    CHECK(without.find(coach.id("T1")) == nullptr);
    CHECK(without.find(coach.id("CW1"))->places[0].link != without.find(coach.id("T3"))->places[0].link);
    // Outside - CW1 - cap, cap - T3, cap - F1 - outside are chains of their own: three capped ends more than junctions
    // of tees and heater.
    CHECK(without.junctions == 4 + 3);
}

TEST_CASE("ends that lead nowhere are listed, and a cap stands as high as the pipe's other end", "[study][plant]")
{
    SmallCoach coach;
    const auto tee = coach.add("tee", "T9", 2.0);
    const auto pipe = coach.pipe(tee, "run_a", document::kNoPart, "", 1);
    const auto plant = plantOf(coach.drawing);
    CHECK(plant.openEnds == std::vector{tee, pipe});  // the tee's two other ports, the pipe's loose end
    CHECK(rise(chainOf(plant, pipe)) == 0);
    CHECK(study::loopAnswer(coach.drawing).flow_m3s.value_or(0) > 0);  // it does not disturb the rest

    // An optional port, the tank's return, may stay open.
    test::Bench bench;
    const auto tank = bench.add("fresh_tank", "FT1"), tap = bench.add("faucet", "F1");
    bench.set("F1", "serves", std::string("cold"));
    bench.pipe(tank, "outlet", tap, "cold", 1);
    CHECK_FALSE(has(plantOf(bench.drawing).openEnds, tank));
}

TEST_CASE("a part whose values make no model is named", "[study][plant]")
{
    SmallCoach coach;
    coach.set("WH1", "minimum_input_W", 90e3);
    const auto plant = study::makePlant(coach.drawing, document::View::After);
    REQUIRE_FALSE(plant.has_value());
    CHECK(plant.error().where == "WH1");
    const auto prediction = study::predict(coach.drawing);
    REQUIRE_FALSE(prediction.has_value());
    CHECK(study::loopAnswer(coach.drawing).reason.text == plant.error().what.text);
}

TEST_CASE("the loop goes from the heater over the tee to pump and valve and back", "[study][loop]")
{
    SmallCoach coach;
    const auto plant = plantOf(coach.drawing);
    const auto map = loopOf(coach.drawing, plant);
    const study::LoopAnswer& loop = map.answer;
    CHECK(loop.exists);
    CHECK(loop.reason.empty());
    CHECK(loop.heater == coach.id("WH1"));
    CHECK(loop.tap == coach.id("F1"));
    CHECK(loop.returnTee == coach.id("T2"));
    CHECK(loop.circulators == std::vector{coach.id("P1")});
    CHECK(loop.coldStart_C == 20);
    CHECK(*loop.activationFlow_m3s == 0.3 * us::kGpm);
    CHECK(*loop.holdFlow_m3s == 0.2 * us::kGpm);
    CHECK_THAT(*loop.flowMargin, WithinRel(*loop.flow_m3s / (0.3 * us::kGpm), 1e-12));
    CHECK(*loop.flowLowVolts_m3s < *loop.flow_m3s);
    CHECK(*loop.flowHighVolts_m3s > *loop.flow_m3s);
    CHECK(map.tapJunction == plant.find(coach.id("T2"))->hubJunction);
    CHECK(map.flowLink == plant.find(coach.id("FE1"))->places[0].link);
    CHECK(map.flowForward == !plant.find(coach.id("FE1"))->places[0].reversed);
    // Hot way: the pipe from the heater and the tee. Return: the loop's chain, then the cold line to the heater.
    CHECK(map.hotWay.size() == 1);
    CHECK(map.returnWay.size() == 2);
    CHECK(loop.hotPath.back() == coach.id("T2"));
    CHECK_FALSE(has(loop.hotPath, coach.id("TE1")));
    const std::vector<document::PartId>& back = loop.returnPath;
    for (const char* tag : {"TE1", "MV1", "P1", "FE1", "CV1", "T3", "TE2"}) {
        CHECK(std::count(back.begin(), back.end(), coach.id(tag)) == 1);
    }
    const auto place = [&](const char* tag) {
        return std::find(back.begin(), back.end(), coach.id(tag)) - back.begin();
    };
    CHECK(place("TE1") < place("MV1"));
    CHECK(place("MV1") < place("P1"));
    CHECK(place("CV1") < place("T3"));
    CHECK(place("T3") < place("TE2"));
    CHECK_FALSE(has(back, coach.id("F1")));
    CHECK_FALSE(has(back, coach.id("CW1")));
    // A battery at 10.5 V and at 14.4 V gives what the loop is said to give there.
    coach.set("BT1", "voltage_V", 10.5);
    CHECK_THAT(*loopOf(coach.drawing, plantOf(coach.drawing)).answer.flow_m3s, WithinRel(*loop.flowLowVolts_m3s, 1e-6));
    coach.set("BT1", "voltage_V", 14.4);
    CHECK_THAT(*loopOf(coach.drawing, plantOf(coach.drawing)).answer.flow_m3s,
               WithinRel(*loop.flowHighVolts_m3s, 1e-6));
}

TEST_CASE("pipes drawn the other way round change nothing about the loop", "[study][loop]")
{
    SmallCoach coach;
    const auto plain = study::loopAnswer(coach.drawing);
    for (document::Part& part : coach.drawing.parts) {
        std::swap(part.ends[0], part.ends[1]);
    }
    const auto turned = study::loopAnswer(coach.drawing);
    CHECK_THAT(*turned.flow_m3s, WithinRel(*plain.flow_m3s, 1e-9));
    CHECK(turned.hotPath == plain.hotPath);
    CHECK(turned.returnPath == plain.returnPath);
    CHECK(turned.returnTee == plain.returnTee);
}

TEST_CASE("the tap a loop serves is the one with the least water between", "[study][loop]")
{
    SmallCoach coach;
    // A second tap on the hot line, its tee 1 m from the heater and 3 m from T2.
    const auto tee = coach.add("tee", "T4"), tap = coach.add("faucet", "F2");
    coach.set("F2", "serves", std::string("hot"));
    for (document::Part& part : coach.drawing.parts) {
        if (part.ends[0].part == coach.id("WH1") && part.ends[0].port == "hot") {
            part.ends[1] = {tee, "run_a", {}};
            part.entries["length_m"] = {1.0, parts::Basis::Measured};
        }
    }
    coach.pipe(tee, "run_b", coach.id("T2"), "run_a", 3);
    const auto branch = coach.pipe(tee, "branch", tap, "hot", 1);
    const auto towards = [&](double own_m, double other_m) {
        coach.drawing.find(branch)->entries["length_m"] = {other_m, parts::Basis::Measured};
        for (document::Part& part : coach.drawing.parts) {
            if (part.ends[1].part == coach.id("F1") && part.ends[1].port == "hot") {
                part.entries["length_m"] = {own_m, parts::Basis::Measured};
            }
        }
        return study::loopAnswer(coach.drawing).tap;
    };
    CHECK(towards(0.5, 1) == coach.id("F1"));
    CHECK(towards(3.9, 1) == coach.id("F1"));  // 3 + 1 m to F2
    CHECK(towards(4.1, 1) == coach.id("F2"));
    CHECK(towards(4.1, 1.2) == coach.id("F1"));
    // A tap with cold water only is none to be warmed.
    coach.set("F1", "serves", std::string("cold"));
    CHECK(towards(0.5, 10) == coach.id("F2"));
}

TEST_CASE("what keeps a loop from running is said, and named where a part does it", "[study][loop]")
{
    SmallCoach coach;
    const auto answer = [&] { return study::loopAnswer(coach.drawing); };
    coach.set("BT1", "voltage_V", 7.9);  // the pump starts at 8
    CHECK(answer().exists);
    CHECK(answer().flow_m3s.value_or(1) == 0);
    CHECK(answer().blockedBy == coach.id("P1"));
    CHECK(reason(answer()).find("P1 gets too little voltage to start (7.9 V") == 0);
    coach.set("BT1", "voltage_V", 12.0);

    coach.set("CV1", "crack_Pa", 60e3);  // the pump's shut-off head is 10.8 ft, 32 kPa
    CHECK(reason(answer()) == "CV1 opens at 60.0 kPa: the pumps do not give that much.");
    CHECK(answer().blockedBy == coach.id("CV1"));
    CHECK(answer().headUsedUp);
    CHECK(answer().exists);
    CHECK(answer().flow_m3s.value_or(1) == 0);
    coach.set("CV1", "crack_Pa", 0.0);

    const auto shut = coach.add("hand_valve", "V1");
    coach.set("V1", "opening", 0.0);
    for (document::Part& part : coach.drawing.parts) {
        if (part.ends[0].part == coach.id("CV1")) {
            part.ends[0] = {shut, "outlet", {}};
        }
    }
    coach.pipe(coach.id("CV1"), "outlet", shut, "inlet");
    CHECK(reason(answer()) == "V1 blocks the loop.");
    CHECK(answer().blockedBy == shut);
    CHECK(answer().flowMargin.value_or(1) == 0);
    coach.set("V1", "opening", 1.0);
    CHECK(answer().flow_m3s.value_or(0) > 0);

    // Turned round, the check valve is what blocks it.
    for (document::Part& part : coach.drawing.parts) {
        for (document::PipeEnd& end : part.ends) {
            if (end.part == coach.id("CV1")) {
                end.port = end.port == "inlet" ? "outlet" : "inlet";
            }
        }
    }
    CHECK(reason(answer()) == "CV1 blocks the loop.");

    // A gap after the pump: no way back.
    for (document::Part& part : coach.drawing.parts) {
        if (part.ends[0].part == shut) {
            part.ends[0] = {};
        }
    }
    CHECK(reason(answer()).find("No unbroken way leads from the heater through P1") == 0);
    CHECK_FALSE(answer().exists);

    stage(coach.drawing, coach.id("WH1"), document::Stage::Removed);
    CHECK(reason(answer()) == "No water heater with both its pipes connected is drawn.");
    stage(coach.drawing, coach.id("P1"), document::Stage::Removed);
    CHECK(reason(answer()) == "No circulator is drawn, so there is no loop to run.");
}

TEST_CASE("the cold start is the first case with a press, else the first case, else a mild day", "[study][loop]")
{
    SmallCoach coach;
    CHECK(study::coldStart(coach.drawing) == 21);  // the drawing has no cases yet
    auto first = coach.script(10, {coach.hot(2)}), second = coach.script(10, {coach.hot(1), coach.press(2)});
    first.start_C = 12;
    second.start_C = 8;
    coach.drawing.cases = {first};
    CHECK(study::coldStart(coach.drawing) == 12);
    coach.drawing.cases = {first, second};
    CHECK(study::coldStart(coach.drawing) == 8);
}

TEST_CASE("the head budget closes: what the pump gives is what the parts take, the biggest first", "[study][loop]")
{
    SmallCoach coach;
    coach.drawing.find(coach.id("P1"))->height_m = 2;  // heights cancel around a ring
    coach.drawing.find(coach.id("WH1"))->height_m = 1;
    const auto plant = plantOf(coach.drawing);
    const auto map = loopOf(coach.drawing, plant);
    const study::HeadBudget& budget = map.budget;
    CHECK(budget.pumpHead_Pa > 0);
    CHECK_THAT(budget.sum_Pa, WithinRel(budget.pumpHead_Pa, 1e-6));
    CHECK(std::abs(budget.gap()) < 1e-6);
    CHECK_THAT(budget.flow_m3s, WithinRel(*map.answer.flow_m3s, 1e-12));
    double shares = 0, sum = 0;
    for (const study::HeadItem& item : budget.items) {
        shares += item.share;
        sum += item.loss_Pa;
        CHECK(item.part != coach.id("P1"));
        CHECK_THAT(item.share * budget.sum_Pa, WithinRel(item.loss_Pa, 1e-9));
    }
    CHECK_THAT(shares, WithinRel(1, 1e-9));
    CHECK_THAT(sum, WithinRel(budget.sum_Pa, 1e-9));
    CHECK(std::is_sorted(budget.items.begin(), budget.items.end(),
                         [](const auto& a, const auto& b) { return a.loss_Pa > b.loss_Pa; }));
    // The heater's loss is the square law of its data: 5.5 psi at 2 gpm (plus 1 m of height going in and out: none).
    const auto heater = std::find_if(budget.items.begin(), budget.items.end(),
                                     [&](const auto& item) { return item.part == coach.id("WH1"); });
    REQUIRE(heater != budget.items.end());
    const double share = budget.flow_m3s / (2 * us::kGpm);
    CHECK_THAT(heater->loss_Pa, WithinRel(5.5 * us::kPsi * share * share, 0.01));
    const auto drawn = study::headBudget(coach.drawing);
    REQUIRE(drawn.has_value());
    CHECK(drawn->items.size() == budget.items.size());
    coach.set("BT1", "voltage_V", 7.0);
    const auto none = study::headBudget(coach.drawing);
    REQUIRE_FALSE(none.has_value());
    CHECK(render(none.error().what, UnitSystem::Metric).find("P1 gets too little voltage") == 0);
}

TEST_CASE("the water on the way to a place is that of the tube in between", "[study][loop]")
{
    SmallCoach coach;
    const auto plant = plantOf(coach.drawing);
    const auto field = plant.makeField({.cell_m = 0.15, .wallLayers = 2});
    auto network = plant.makeNetwork();
    study::setAtRest(plant, network);
    study::setWater(network, 20);
    const auto& solution = study::runLoop(plant, network, study::batterySupply(plant));
    const int start = plant.find(coach.id("WH1"))->portJunction[1];
    const auto volume = [&](document::PartId part, double share) {
        const study::Place& place = plant.find(part)->places[0];
        return study::volumeOnTheWay(plant, field, solution.flow_m3s, start, place.link,
                                     place.reversed ? 1 - share : share);
    };
    // Along the loop: 4 m to T2, then 1 m of tube, pump (30 mL), 3 m to T3, 1 m to the heater. Shares are of volume.
    const double loop_m3 = SmallCoach::held_m3(4) + 3e-5;
    CHECK_THAT(*volume(coach.id("P1"), 0), WithinRel(SmallCoach::held_m3(4), 1e-9));
    CHECK_THAT(*volume(coach.id("P1"), 0.25), WithinRel(SmallCoach::held_m3(4) + 0.25 * loop_m3, 1e-9));
    CHECK_THAT(*volume(coach.id("P1"), 1), WithinRel(SmallCoach::held_m3(4) + loop_m3, 1e-9));
    CHECK_THAT(*volume(coach.id("TE2"), 1), WithinRel(SmallCoach::held_m3(4 + 1) + loop_m3, 1e-9));
    // A link without flow is walked only where it is the one asked about.
    const auto& tap = *plant.find(coach.id("F1"));
    const study::Place& hot = tap.places[static_cast<std::size_t>(tap.model.outlet->hotPath)];
    CHECK_THAT(*study::volumeOnTheWay(plant, field, solution.flow_m3s, start, hot.link, hot.reversed ? 0 : 1),
               WithinRel(SmallCoach::held_m3(4.5), 1e-9));
    const std::vector<double> still(plant.chains.size(), 0.0);
    CHECK_FALSE(study::volumeOnTheWay(plant, field, still, start, hot.link, 1).has_value());
}

TEST_CASE("a way is the shortest in chains, and not over the one left out", "[study][loop]")
{
    const SmallCoach coach;
    const auto plant = plantOf(coach.drawing);
    const auto junction = [&](const char* tag) { return plant.find(coach.id(tag))->hubJunction; };
    const int heater = plant.find(coach.id("WH1"))->places[0].link;
    const int loop = plant.find(coach.id("P1"))->places[0].link;
    // T1 to T2: over T3 and the loop, two chains; without the loop over T3, cold side, heater, hot side: four.
    const auto shortest = study::anyWay(plant, junction("T1"), junction("T2"));
    const auto around = study::anyWay(plant, junction("T1"), junction("T2"), {loop});
    CHECK(shortest.size() == 2);
    CHECK(around.size() == 4);
    for (const auto& way : {shortest, around}) {
        int at = junction("T1");
        for (const study::Hop& hop : way) {
            const auto& chain = plant.chains[static_cast<std::size_t>(hop.link)];
            CHECK(study::startJunction(chain, hop.forward) == at);
            at = study::endJunction(chain, hop.forward);
        }
        CHECK(at == junction("T2"));
    }
    CHECK(around[2].link == heater);
    CHECK(study::anyWay(plant, junction("T1"), junction("T1")).empty());
}

TEST_CASE("a tap without water is told what holds it back", "[study][loop]")
{
    SmallCoach coach;
    const auto told = [&](std::vector<document::Action> actions) {
        actions.push_back(coach.hot(5));
        return test::why(coach.run(20, std::move(actions)), "wait");
    };
    CHECK(told({coach.act(1, ActionKind::UseNothing)}) == "No water comes: CW1 lets none through.");
    const auto valve = coach.add("hand_valve", "V1");
    for (document::Part& part : coach.drawing.parts) {
        if (part.ends[1].part == coach.id("T2") && part.ends[1].port == "run_a") {
            part.ends[1] = {valve, "inlet", {}};
        }
    }
    coach.pipe(valve, "outlet", coach.id("T2"), "run_a");
    CHECK(told({coach.act(1, ActionKind::SetValve, "V1", 0)}) == "No water comes: V1 lets none through.");
    CHECK(told({}) == "The tap did not reach the target within this case.");  // it did run
    CHECK(told({coach.act(1, ActionKind::SetValve, "V1", 0), coach.act(2, ActionKind::SetValve, "V1", 1)})
          == "The tap did not reach the target within this case.");
    CHECK(told({coach.fault(1, "V1", "left_shut")}) == "No water comes: V1 lets none through.");
    CHECK(told({coach.fault(1, "V1", "left_shut"), coach.fault(2, "V1", "left_shut", false)})
          == "The tap did not reach the target within this case.");
    stage(coach.drawing, coach.id("CW1"), document::Stage::Removed);
    CHECK(told({}) == "No water comes: no supply is drawn.");
    coach.add("city_inlet", "CW2");
    CHECK(told({}) == "No water comes: no supply is joined to this outlet.");
}

TEST_CASE("a loop that empties into the fresh tank is fed by the coach's pump, city water or not", "[study][loop]")
{
    // FT1 - DP1 - T1 - WH1 - T2 - F1; T2 - MV1 - P1 - FT1's return; CW1 at T1.
    test::Bench bench;
    const auto tank = bench.add("fresh_tank", "FT1"), demand = bench.add("demand_pump", "DP1");
    const auto t1 = bench.add("tee", "T1"), t2 = bench.add("tee", "T2"), t3 = bench.add("tee", "T3");
    const auto heater = bench.add("tankless_heater", "WH1"), tap = bench.add("faucet", "F1");
    const auto city = bench.add("city_inlet", "CW1");
    const auto valve = bench.add("motor_valve", "MV1"), pump = bench.add("circulator", "P1");
    bench.add("battery", "BT1");
    bench.add("controller", "C1");
    bench.pipe(tank, "outlet", demand, "inlet", 0.5);
    bench.pipe(demand, "outlet", t1, "run_a", 0.5);
    bench.pipe(city, "outlet", t1, "branch", 0.5);
    bench.pipe(t1, "run_b", t3, "run_a", 1);
    bench.pipe(t3, "branch", tap, "cold", 1);
    bench.pipe(t3, "run_b", heater, "cold", 1);
    bench.pipe(heater, "hot", t2, "run_a", 4);
    bench.pipe(t2, "run_b", tap, "hot", 0.5);
    bench.pipe(t2, "branch", valve, "inlet", 0.5);
    bench.pipe(valve, "outlet", pump, "inlet", 0.5);
    const auto back = bench.pipe(pump, "outlet", tank, "return", 4);
    const auto plant = plantOf(bench.drawing);
    const auto map = loopOf(bench.drawing, plant);
    REQUIRE(map.answer.exists);
    CHECK(map.answer.tap == tap);
    CHECK(map.answer.returnTee == t2);
    CHECK(has(map.answer.returnPath, back));
    auto network = plant.makeNetwork();
    study::setAtRest(plant, network);
    study::setWater(network, 20);
    const auto& solution = study::runLoop(plant, network, study::batterySupply(plant));
    const auto flow = [&](document::PartId part) {
        const study::Place& place = plant.find(part)->places[0];
        return (place.reversed ? -1 : 1) * solution.flow_m3s[static_cast<std::size_t>(place.link)];
    };
    CHECK_THAT(flow(demand), WithinRel(flow(pump), 1e-6));
    CHECK(flow(pump) > 1e-5);
    CHECK(std::abs(flow(city)) < 1e-9);
    CHECK_THAT(*map.answer.flow_m3s, WithinRel(flow(heater), 1e-9));
}

TEST_CASE("flow and current of a loop settle together", "[study][loop]")
{
    SmallCoach coach;
    coach.set("BT1", "internal_ohm", 0.3);
    coach.set("P1", "no_flow_current_A", 0.3);
    const auto plant = plantOf(coach.drawing);
    auto network = plant.makeNetwork();
    study::setAtRest(plant, network);
    study::setWater(network, 20);
    study::WiringNet wiring;
    const auto& solution = study::runLoop(plant, network, study::batterySupply(plant), &wiring);
    const study::Place& pump = plant.find(coach.id("P1"))->places[0];
    const double flow = (pump.reversed ? -1 : 1) * solution.flow_m3s[static_cast<std::size_t>(pump.link)];
    const int load = wiring.indexOf(coach.id("P1"));
    REQUIRE(load >= 0);
    CHECK(flow > 2e-5);
    CHECK_THAT(std::abs(network.solve().flow_m3s[static_cast<std::size_t>(pump.link)]), WithinRel(flow, 1e-6));
    CHECK_THAT(wiring.draws()[static_cast<std::size_t>(load)].flow_m3s, WithinRel(flow, 1e-6));
    const auto elements = network.elements(pump.link);
    for (int e = 0; e < pump.elementCount; ++e) {
        const auto* law = std::get_if<network::PumpLaw>(&elements[static_cast<std::size_t>(pump.firstElement + e)].law);
        if (law) {
            CHECK_THAT(law->speed, WithinRel(wiring.speed(load), 1e-9));
        }
    }
    CHECK(wiring.speed(load) < 1 - 0.3 * 0.3 / 12);  // 12 V less what 0.3 A lose in 0.3 ohm, at the least
    // A valve draws only while it moves: it is no load of the running loop.
    CHECK_FALSE(wiring.draws()[static_cast<std::size_t>(wiring.indexOf(coach.id("MV1")))].on);
}

TEST_CASE("cold water, two and a half times as thick, moves more slowly through the same loop", "[study][loop]")
{
    // 1.52 mPa s at 5 °C, 0.65 at 40 (IAPWS): a friction factor a fifth larger in turbulent flow (Blasius). With 60 m of
    // tube to the tap it is the tube that decides.
    SmallCoach coach;
    for (document::Part& part : coach.drawing.parts) {
        if (part.ends[1].part == coach.id("T2") && part.ends[1].port == "run_a") {
            part.entries["length_m"] = {60.0, parts::Basis::Measured};
        }
    }
    const auto plant = plantOf(coach.drawing);
    const auto flow = [&](double celsius) { return *study::findLoop(coach.drawing, plant, celsius).answer.flow_m3s; };
    CHECK(flow(5) < 0.97 * flow(40));
    CHECK(flow(5) > 0.8 * flow(40));
}

TEST_CASE("a loop's flow is read where all of it passes, at its meter for choice", "[study][loop]")
{
    // A second pump beside the first, each in a chain of its own between two tees.
    SmallCoach coach;
    const auto t5 = coach.add("tee", "T5"), t6 = coach.add("tee", "T6"), pump = coach.add("circulator", "P2");
    for (document::Part& part : coach.drawing.parts) {
        if (part.ends[1].part == coach.id("P1")) {
            part.ends[1] = {t5, "run_a", {}};  // from MV1
        } else if (part.ends[0].part == coach.id("P1")) {
            part.ends[0] = {t6, "run_b", {}};  // to FE1
        }
    }
    coach.pipe(t5, "run_b", coach.id("P1"), "inlet", 0.2);
    coach.pipe(coach.id("P1"), "outlet", t6, "run_a", 0.2);
    coach.pipe(t5, "branch", pump, "inlet", 0.2);
    coach.pipe(pump, "outlet", t6, "branch", 0.2);
    const double alone = *study::loopAnswer(SmallCoach().drawing).flow_m3s;
    const auto flowPart = [&](const char* tag) {
        const auto plant = plantOf(coach.drawing);
        const auto map = loopOf(coach.drawing, plant);
        REQUIRE(map.answer.exists);
        CHECK(map.answer.circulators.size() == 2);
        CHECK(*map.answer.flow_m3s > 1.05 * alone);
        return map.flowLink == plant.find(coach.id(tag))->places[0].link;
    };
    CHECK(flowPart("FE1"));
    stage(coach.drawing, coach.id("FE1"), document::Stage::Removed);
    CHECK(flowPart("MV1"));  // without a meter at the valve
    stage(coach.drawing, coach.id("MV1"), document::Stage::Removed);
    CHECK(flowPart("CV1"));
    // Its budget counts one of the two ways, and closes on it.
    const auto plant = plantOf(coach.drawing);
    const auto map = loopOf(coach.drawing, plant);
    CHECK(std::abs(map.budget.gap()) < 1e-6);
}
