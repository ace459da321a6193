// SPDX-License-Identifier: GPL-3.0-or-later
// Gestures with their places and figures worked out by hand. Symbols here are 4 by 4 modules, in-line ports at
// (-2, 0) and (2, 0); a tee is 2 by 2 with its runs at (-1, 0) and (1, 0). x grows rightward, y downward.

#include <cmath>
#include <limits>

#include "document/dimension.h"
#include "document/edit.h"
#include "document/jug.h"
#include "document/rearrange.h"
#include "document/references.h"
#include "support/catch.h"
#include "support/edits.h"

using namespace tapward;
using namespace tapward::document;
using test::make;
using test::number;
using test::place;

namespace {

PartId pipe(Drawing& drawing, PipeEnd from, PipeEnd to)
{
    const PartId id = drawing.nextId;
    make(drawing, connect(drawing, std::move(from), std::move(to), Stage::Existing));
    return id;
}

PartId loosePipe(Drawing& drawing, std::vector<Point> corners)
{
    const PartId id = pipe(drawing, {kNoPart, {}, corners.front()}, {kNoPart, {}, corners.back()});
    drawing.find(id)->bends.assign(corners.begin() + 1, corners.end() - 1);
    return id;
}

void set(Drawing& drawing, PartId id, const char* key, parts::Value value, parts::Basis basis = parts::Basis::Measured)
{
    make(drawing, Edit{"Set", {SetField{id, key, parts::Entry{std::move(value), basis}}}});
}

Point at(const Drawing& drawing, PartId id) { return drawing.find(id)->at; }

std::string titleOf(const Result<Edit>& edit) { return edit ? render(edit->title, UnitSystem::Metric) : "refused"; }

}  // namespace

TEST_CASE("a part dropped beside a pipe stands on its line, on the grid along it, turned its way",
          "[document][gestures]")
{
    // Right, down, left, up: one pipe round three sides of a box, and its first side again on the way up.
    struct Drop {
        Point at;
        Point stands;
        int turn;
        std::size_t bendsBefore;
    };
    const std::vector<Point> corners{{0, 0.5}, {20, 0.5}, {20, 20.5}, {0, 20.5}, {0, 10}};
    for (const Drop& drop :
         {Drop{{7.4, 2}, {7, 0.5}, 0, 0}, Drop{{18.5, 9.6}, {20, 10}, 1, 1}, Drop{{7.4, 18}, {7, 20.5}, 2, 2},
          Drop{{1, 14.4}, {0, 14}, 3, 3}, Drop{{-5, 0}, {0, 0.5}, 0, 0}, Drop{{25, -3}, {20, 0.5}, 0, 0}}) {
        CAPTURE(drop.at.x, drop.at.y);
        Drawing drawing;
        const PartId id = loosePipe(drawing, corners);
        auto edit = splitPipe(drawing, id, "hand_valve", drop.at, 0.5, Stage::Added);
        CHECK(titleOf(edit) == "Put Hand valve into L1");
        make(drawing, std::move(edit));
        const Part& valve = *drawing.find(2);
        CHECK(valve.at == drop.stands);
        CHECK(valve.turn == drop.turn);
        CHECK(drawing.find(id)->bends.size() == drop.bendsBefore);
        CHECK(drawing.find(3)->bends.size() == 3 - drop.bendsBefore);
        CHECK(drawing.find(id)->ends[0].loose == corners.front());
        CHECK(drawing.find(id)->ends[1] == PipeEnd{2, "inlet", {}});
        CHECK(drawing.find(3)->ends[0] == PipeEnd{2, "outlet", {}});
        CHECK(drawing.find(3)->ends[1].loose == corners.back());
        CHECK(drawing.find(3)->tag == "L2");
        CHECK(drawing.find(3)->stage == Stage::Existing);
    }
}

TEST_CASE("lengths are divided by the share, counts to whole pieces, and each keeps its basis", "[document][gestures]")
{
    const auto divided = [](double share) {
        Drawing drawing;
        const PartId id = loosePipe(drawing, {{0, 0}, {20, 0}});
        set(drawing, id, "length_m", 8.0, parts::Basis::DataSheet);
        set(drawing, id, "elbows", 5.0);
        set(drawing, id, "extra_k", 2.0);
        make(drawing, splitPipe(drawing, id, "hand_valve", {10, 0}, share, Stage::Added));
        CHECK(drawing.find(3)->entries.at("length_m").basis == parts::Basis::DataSheet);
        CHECK(drawing.find(3)->entries.count("couplings") == 0);  // none counted, none to divide
        return std::vector<double>{number(drawing, id, "length_m"), number(drawing, 3, "length_m"),
                                   number(drawing, id, "elbows"),   number(drawing, 3, "elbows"),
                                   number(drawing, id, "extra_k"),  number(drawing, 3, "extra_k")};
    };
    // 5 elbows: 1.25 is one, 2.5 is three, 3.75 is four.
    CHECK(divided(0.25) == std::vector<double>{2, 6, 1, 4, 0.5, 1.5});
    CHECK(divided(0.5) == std::vector<double>{4, 4, 3, 2, 1, 1});
    CHECK(divided(0.75) == std::vector<double>{6, 2, 4, 1, 1.5, 0.5});
    CHECK(divided(-3) == std::vector<double>{0, 8, 0, 5, 0, 2});
    CHECK(divided(7) == std::vector<double>{8, 0, 5, 0, 2, 0});
    CHECK(divided(std::numeric_limits<double>::quiet_NaN()) == std::vector<double>{4, 4, 3, 2, 1, 1});
}

TEST_CASE("a part put into a pipe by hand is turned its way and unflipped, unless its ports are taken",
          "[document][gestures]")
{
    for (const char* taken : {"", "inlet", "outlet"}) {
        CAPTURE(taken);
        Drawing drawing;
        const PartId run = loosePipe(drawing, {{0, 0}, {20, 0}});
        const PartId valve = place(drawing, "hand_valve", {5, 20}, 2, Stage::Added);
        drawing.find(valve)->flipped = true;
        if (*taken != '\0') {
            pipe(drawing, {valve, taken, {}}, {kNoPart, {}, {9, 30}});
        }
        auto edit = putIntoPipe(drawing, valve, run, {4.2, 1}, 0.25);
        CHECK(edit.has_value() == (*taken == '\0'));
        if (!edit) {
            continue;
        }
        CHECK(titleOf(edit) == "Put V1 into L1");
        make(drawing, std::move(edit));
        CHECK(at(drawing, valve) == Point{4, 0});
        CHECK(drawing.find(valve)->turn == 0);
        CHECK_FALSE(drawing.find(valve)->flipped);
        CHECK(drawing.find(valve)->stage == Stage::Added);
        CHECK(number(drawing, run, "length_m") == 0.25);  // of one metre, the default
    }
    Drawing drawing;
    const PartId run = loosePipe(drawing, {{0, 0}, {20, 0}});
    const PartId tap = place(drawing, "faucet", {5, 20});
    CHECK_FALSE(putIntoPipe(drawing, tap, run, {4, 0}, 0.5));
    CHECK_FALSE(putIntoPipe(drawing, run, run, {4, 0}, 0.5));
    CHECK_FALSE(putIntoPipe(drawing, 99, run, {4, 0}, 0.5));
    CHECK_FALSE(putIntoPipe(drawing, tap, 99, {4, 0}, 0.5));
}

TEST_CASE("two pipes healed into one are as long as both, of the longer one's tube, known no better than the weaker",
          "[document][gestures]")
{
    for (const bool firstLonger : {true, false}) {
        Drawing drawing;
        const PartId valve = place(drawing, "hand_valve", {10, 0});
        const PartId one = pipe(drawing, {kNoPart, {}, {0, 0}}, {valve, "inlet", {}});
        const PartId two = pipe(drawing, {valve, "outlet", {}}, {kNoPart, {}, {20, 0}});
        set(drawing, one, "length_m", firstLonger ? 3.0 : 1.0, parts::Basis::Measured);
        set(drawing, two, "length_m", 2.0, parts::Basis::DataSheet);
        set(drawing, one, "tube", std::string("pex_3_4"));
        set(drawing, two, "tube", std::string("copper_l_1_2"));
        set(drawing, one, "elbows", 150.0);
        set(drawing, two, "elbows", 150.0);
        make(drawing, removeParts(drawing, {valve}, true));
        REQUIRE(drawing.parts.size() == 1);
        CHECK(number(drawing, one, "length_m") == (firstLonger ? 5 : 3));
        CHECK(drawing.find(one)->entries.at("length_m").basis == parts::Basis::DataSheet);
        CHECK(values(*drawing.find(one)).text("tube") == (firstLonger ? "pex_3_4" : "copper_l_1_2"));
        CHECK(number(drawing, one, "elbows") == 200);  // no more than the field may hold
        CHECK(drawing.find(one)->entries.count("couplings") == 0);
    }
}

TEST_CASE("what named the second of two healed pipes names the joined one", "[document][gestures]")
{
    Drawing drawing;
    const PartId valve = place(drawing, "hand_valve", {10, 0});
    const PartId one = pipe(drawing, {kNoPart, {}, {0, 0}}, {valve, "inlet", {}});
    const PartId two = pipe(drawing, {valve, "outlet", {}}, {kNoPart, {}, {20, 0}});
    drawing.find(one)->unknown = {{"/a", "1"}};
    drawing.find(two)->unknown = {{"/a", "2"}, {"/b", "3"}};
    Case script;
    script.name = "Broken";
    script.targetPart = two;
    Action action;
    action.kind = ActionKind::StartFault;
    action.part = two;
    REQUIRE_FALSE(kindOf(*drawing.find(two)).faults.empty());
    action.fault = kindOf(*drawing.find(two)).faults[0].id;
    script.actions = {action};
    make(drawing, Edit{"Cases", {SetCases{{script}}}});
    make(drawing, Edit{"Seen", {SetDismissals{{{"a_rule", two, "seen", {}}, {"b_rule", one, "seen", {}}}}}});
    CHECK(refersTo(drawing, two));
    CHECK_FALSE(refersTo(drawing, valve));
    make(drawing, removeParts(drawing, {valve}, true));
    CHECK(drawing.cases[0].targetPart == one);
    REQUIRE(drawing.cases[0].actions.size() == 1);
    CHECK(drawing.cases[0].actions[0].part == one);
    REQUIRE(drawing.dismissals.size() == 2);
    CHECK(drawing.dismissals[0].part == one);
    CHECK(drawing.find(one)->unknown == Unknown{{"/a", "1"}, {"/b", "3"}});
    // Nobody inherits from a pipe that just goes.
    make(drawing, removeParts(drawing, {one}, true));
    CHECK(drawing.cases[0].targetPart == kNoPart);
    CHECK(drawing.cases[0].actions.empty());
    CHECK(drawing.dismissals.empty());
}

TEST_CASE("each of the ways something can name a part is seen", "[document][gestures]")
{
    Drawing drawing;
    const PartId sensor = place(drawing, "temperature_sensor", {0, 0});
    const PartId box = place(drawing, "controller", {0, 20});
    const PartId other = place(drawing, "temperature_sensor", {0, 40});
    CHECK_FALSE(refersTo(drawing, sensor));
    Drawing byField = drawing;
    set(byField, box, "stop_sensor", std::to_string(sensor));
    CHECK(refersTo(byField, sensor));
    CHECK_FALSE(refersTo(byField, other));
    CHECK(releaseReferences(byField, sensor, kNoPart).size() == 1);
    Drawing byTarget = drawing;
    byTarget.cases.resize(1);
    byTarget.cases[0].targetPart = sensor;
    CHECK(refersTo(byTarget, sensor));
    CHECK_FALSE(refersTo(byTarget, other));
    Drawing byAction = drawing;
    byAction.cases.resize(1);
    byAction.cases[0].actions.resize(2);
    byAction.cases[0].actions[1].part = sensor;
    CHECK(refersTo(byAction, sensor));
    CHECK_FALSE(refersTo(byAction, other));
    Drawing byDismissal = drawing;
    byDismissal.dismissals = {{"r", sensor, "", {}}};
    CHECK(refersTo(byDismissal, sensor));
    CHECK_FALSE(refersTo(byDismissal, other));
    CHECK(releaseReferences(drawing, sensor, kNoPart).empty());
}

TEST_CASE("a removed tee with three pipes takes them along, two of one pipe are no run to heal", "[document][gestures]")
{
    Drawing drawing;
    const PartId tee = place(drawing, "tee", {10, 0});
    pipe(drawing, {kNoPart, {}, {0, 0}}, {tee, "run_a", {}});
    pipe(drawing, {tee, "run_b", {}}, {kNoPart, {}, {20, 0}});
    pipe(drawing, {tee, "branch", {}}, {kNoPart, {}, {10, 9}});
    CHECK(titleOf(removeParts(drawing, {tee}, true)) == "Remove T1");
    make(drawing, removeParts(drawing, {tee}, true));
    CHECK(drawing.parts.empty());
    const PartId ring = place(drawing, "hand_valve", {0, 0});
    pipe(drawing, {ring, "inlet", {}}, {ring, "outlet", {}});
    CHECK_FALSE(takeOutOfPipe(drawing, ring, 0, 9));
    make(drawing, removeParts(drawing, {ring}, true));
    CHECK(drawing.parts.empty());
}

TEST_CASE("nothing selected, or nothing that is there, is nothing to remove", "[document][gestures]")
{
    Drawing drawing;
    loosePipe(drawing, {{0, 0}, {20, 0}});
    for (const std::vector<PartId>& none : {std::vector<PartId>{}, std::vector<PartId>{99}}) {
        const auto edit = removeParts(drawing, none, true);
        REQUIRE_FALSE(edit);
        CHECK(edit.error().what.text == "Nothing is selected.");
    }
}

TEST_CASE("a part is taken out of its pipe and moved aside", "[document][gestures]")
{
    Drawing drawing;
    const PartId run = loosePipe(drawing, {{0, 0}, {20, 0}});
    make(drawing, splitPipe(drawing, run, "hand_valve", {10, 0}, 0.5, Stage::Existing));
    CHECK(titleOf(takeOutOfPipe(drawing, 2, 3, 7)) == "Take V1 out of its pipe");
    CHECK_FALSE(takeOutOfPipe(drawing, run, 3, 7));
    make(drawing, takeOutOfPipe(drawing, 2, 3, 7));
    CHECK(at(drawing, 2) == Point{13, 7});
    CHECK(drawing.parts.size() == 2);
    CHECK(drawing.pipeAt(2, "inlet") == nullptr);
    CHECK(drawing.find(run)->ends[1].loose == Point{20, 0});
    CHECK_FALSE(takeOutOfPipe(drawing, 2, 3, 7));
}

TEST_CASE("a group turns about its middle and flips about its upright", "[document][gestures]")
{
    Drawing drawing;
    const PartId a = place(drawing, "hand_valve", {0, 0}), b = place(drawing, "hand_valve", {10, 4}, 1);
    const PartId run = pipe(drawing, {a, "outlet", {}}, {b, "inlet", {}});
    drawing.find(run)->bends = {{6, 1}};
    Drawing turned = drawing;
    // Middle (5, 2): a is (-5, -2) from it; a quarter clockwise takes (x, y) to (-y, x), (2, -5): (7, -3).
    make(turned, turnParts(turned, {a, b}, 1));
    CHECK(at(turned, a) == Point{7, -3});
    CHECK(at(turned, b) == Point{3, 7});
    CHECK(turned.find(a)->turn == 1);
    CHECK(turned.find(b)->turn == 2);
    CHECK(turned.find(run)->bends == std::vector<Point>{{6, 3}});  // (1, -1) becomes (1, 1)
    Drawing back = drawing;
    make(back, turnParts(back, {a, b}, -1));
    CHECK(at(back, a) == Point{3, 7});
    CHECK(back.find(a)->turn == 3);
    Drawing flipped = drawing;
    make(flipped, flipParts(flipped, {a, b}));
    CHECK(at(flipped, a) == Point{10, 0});
    CHECK(at(flipped, b) == Point{0, 4});
    CHECK(flipped.find(a)->flipped);
    CHECK(flipped.find(b)->turn == 3);  // a mirrored quarter is a quarter the other way
    CHECK(flipped.find(run)->bends == std::vector<Point>{{4, 1}});
    // One symbol, with its pipe selected or not, turns where it stands.
    Drawing one = drawing;
    make(one, turnParts(one, {b, run}, 1));
    CHECK(at(one, b) == Point{10, 4});
    CHECK(one.find(b)->turn == 2);
    CHECK(one.find(run)->bends == drawing.find(run)->bends);
    make(one, flipParts(one, {a}));
    CHECK(at(one, a) == Point{0, 0});
    CHECK(one.find(a)->flipped);
    CHECK(one.find(a)->turn == 0);
    // Loose pipes turn about their ends' middle, (2, 3).
    Drawing loose;
    const PartId free = loosePipe(loose, {{0, 0}, {4, 6}});
    make(loose, turnParts(loose, {free}, 2));
    CHECK(loose.find(free)->ends[0].loose == Point{4, 6});
    CHECK(loose.find(free)->ends[1].loose == Point{0, 0});
}

TEST_CASE("a moved group takes bends along only when both ends of their pipe go", "[document][gestures]")
{
    Drawing drawing;
    const PartId valve = place(drawing, "hand_valve", {0, 0});
    const PartId run = pipe(drawing, {valve, "outlet", {}}, {kNoPart, {}, {20, 5}});
    drawing.find(run)->bends = {{10, 0}};
    Drawing valveOnly = drawing;
    make(valveOnly, moveParts(valveOnly, {valve}, 1, 2));
    CHECK(at(valveOnly, valve) == Point{1, 2});
    CHECK(valveOnly.find(run)->ends[1].loose == Point{20, 5});
    CHECK(valveOnly.find(run)->bends == std::vector<Point>{{10, 0}});
    Drawing pipeOnly = drawing;
    make(pipeOnly, moveParts(pipeOnly, {run}, 1, 2));
    CHECK(at(pipeOnly, valve) == Point{0, 0});
    CHECK(pipeOnly.find(run)->ends[1].loose == Point{21, 7});
    CHECK(pipeOnly.find(run)->bends == std::vector<Point>{{10, 0}});
    Drawing both = drawing;
    make(both, moveParts(both, {valve, run}, 1, 2));
    CHECK(both.find(run)->bends == std::vector<Point>{{11, 2}});
    CHECK(titleOf(moveParts(drawing, {valve}, 1, 2)) == "Move V1");
    CHECK(titleOf(moveParts(drawing, {valve, run}, 1, 2)) == "Move 2 parts");
}

TEST_CASE("the stage is changed of those that have another", "[document][gestures]")
{
    Drawing drawing;
    const PartId a = place(drawing, "hand_valve", {0, 0}), b = place(drawing, "hand_valve", {10, 0}, 0, Stage::Added);
    const auto edit = setStage(drawing, {a, b}, Stage::Added);
    REQUIRE(edit);
    CHECK(edit->steps.size() == 1);
    make(drawing, edit);
    CHECK(drawing.find(a)->stage == Stage::Added);
    CHECK_FALSE(setStage(drawing, {a, b}, Stage::Added));
    CHECK_FALSE(setStage(drawing, {99}, Stage::Added));
}

TEST_CASE("pasted pipes and their bends move with the copy, and a copy plays no role", "[document][gestures]")
{
    Drawing drawing;
    const PartId valve = place(drawing, "hand_valve", {0, 0}, 1);
    drawing.find(valve)->mark = Mark{};
    const PartId run = pipe(drawing, {valve, "outlet", {}}, {kNoPart, {}, {20, 5}});
    drawing.find(run)->bends = {{10, 0}};
    const std::vector<Part> copied = drawing.parts;
    Drawing other;
    CHECK(titleOf(pasteParts(other, copied, 3, 4)) == "Paste 2 parts");
    make(other, pasteParts(other, copied, 3, 4));
    REQUIRE(other.parts.size() == 2);
    CHECK(other.parts[0].at == Point{3, 4});
    CHECK(other.parts[0].turn == 1);
    CHECK_FALSE(other.parts[0].mark);
    CHECK(other.parts[1].ends[0] == PipeEnd{1, "outlet", {}});
    CHECK(other.parts[1].ends[1].loose == Point{23, 9});
    CHECK(other.parts[1].bends == std::vector<Point>{{13, 4}});
    CHECK(titleOf(pasteParts(other, {copied[0]}, 0, 0)) == "Paste Hand valve");
}

TEST_CASE("each way of lining up goes to its own edge or middle", "[document][gestures]")
{
    // Valves reach 2 to each side of their place: edges at -2..2, 8..12 and 27..31; the tee 1 to each side.
    Drawing start;
    const PartId a = place(start, "hand_valve", {0, 0}), b = place(start, "hand_valve", {10, 7}),
                 c = place(start, "hand_valve", {29, -4}), t = place(start, "tee", {15, 20});
    struct Lined {
        Alignment alignment;
        std::array<Point, 4> stand;
    };
    for (const Lined& lined :
         {Lined{Alignment::Left, {{{0, 0}, {0, 7}, {0, -4}, {-1, 20}}}},
          Lined{Alignment::Right, {{{29, 0}, {29, 7}, {29, -4}, {30, 20}}}},
          Lined{Alignment::Top, {{{0, -4}, {10, -4}, {29, -4}, {15, -5}}}},
          Lined{Alignment::Bottom, {{{0, 19}, {10, 19}, {29, 19}, {15, 20}}}},
          // From -2 to 31 the middle is 14.5, on the grid 15; from -6 to 21 it is 7.5, on the grid 8.
          Lined{Alignment::Centre, {{{15, 0}, {15, 7}, {15, -4}, {15, 20}}}},
          Lined{Alignment::Middle, {{{0, 8}, {10, 8}, {29, 8}, {15, 8}}}}}) {
        CAPTURE(static_cast<int>(lined.alignment));
        Drawing drawing = start;
        make(drawing, alignParts(drawing, {a, b, c, t}, lined.alignment));
        CHECK(at(drawing, a) == lined.stand[0]);
        CHECK(at(drawing, b) == lined.stand[1]);
        CHECK(at(drawing, c) == lined.stand[2]);
        CHECK(at(drawing, t) == lined.stand[3]);
    }
    // A note is 8 by 2: turned it is 2 wide and 8 high.
    Drawing notes;
    const PartId level = place(notes, "note", {0, 0}), upright = place(notes, "note", {20, 0}, 1);
    make(notes, alignParts(notes, {level, upright}, Alignment::Left));  // edges at -4 and 19
    CHECK(at(notes, upright) == Point{-3, 0});
    make(notes, alignParts(notes, {level, upright}, Alignment::Top));  // edges at -1 and -4
    CHECK(at(notes, level) == Point{0, -3});
}

TEST_CASE("bends move with a pipe whose ends are lined up alike, and only then", "[document][gestures]")
{
    Drawing drawing;
    const PartId a = place(drawing, "hand_valve", {0, 5}), b = place(drawing, "hand_valve", {20, 5}),
                 c = place(drawing, "hand_valve", {40, 0});
    const PartId same = pipe(drawing, {a, "outlet", {}}, {b, "inlet", {}});
    const PartId other = pipe(drawing, {b, "outlet", {}}, {c, "inlet", {}});
    drawing.find(same)->bends = {{10, 8}};
    drawing.find(other)->bends = {{30, 8}};
    make(drawing, alignParts(drawing, {a, b, c}, Alignment::Top));
    CHECK(at(drawing, a) == Point{0, 0});
    CHECK(drawing.find(same)->bends == std::vector<Point>{{10, 3}});
    CHECK(drawing.find(other)->bends == std::vector<Point>{{30, 8}});
}

TEST_CASE("spread parts have equal gaps between their edges, in their order along the way", "[document][gestures]")
{
    // Upright: valves of 4 at 0 and 40 (edges 2 and 38), a tee of 2 and a valve of 4 between: gaps of (36 - 6) / 3 = 10.
    Drawing drawing;
    const PartId low = place(drawing, "hand_valve", {0, 40}), high = place(drawing, "hand_valve", {5, 0}),
                 tee = place(drawing, "tee", {1, 9}), valve = place(drawing, "hand_valve", {2, 11});
    make(drawing, distributeParts(drawing, {low, high, tee, valve}, false));
    CHECK(at(drawing, high) == Point{5, 0});
    CHECK(at(drawing, tee) == Point{1, 13});  // from 12 to 14
    CHECK(at(drawing, valve) == Point{2, 26});  // from 24 to 28
    CHECK(at(drawing, low) == Point{0, 40});
    // Gaps that are no whole modules: who was on the grid stays on it. (20 - 4) / 2 - 4 = 5.5 -> 2 + 5.5 + 2 = 9.5.
    Drawing odd;
    const PartId first = place(odd, "hand_valve", {0, 0}), middle = place(odd, "hand_valve", {8, 0}),
                 last = place(odd, "hand_valve", {19, 0});
    make(odd, distributeParts(odd, {first, middle, last}, true));
    const double stands = at(odd, middle).x;  // 9.5 wanted
    CHECK((stands == 9 || stands == 10));
    CHECK(at(odd, last).x == 19);
}

TEST_CASE("what is within two modules of a row comes into it, what is farther does not", "[document][gestures]")
{
    Drawing drawing;
    const PartId a = place(drawing, "hand_valve", {0, 0}), b = place(drawing, "hand_valve", {20, 2}),
                 c = place(drawing, "hand_valve", {40, 2.25});
    make(drawing, tidyParts(drawing, {a, b, c}));
    CHECK(at(drawing, a) == Point{0, 0});
    CHECK(at(drawing, b) == Point{20, 0});
    CHECK(at(drawing, c) == Point{40, 2});
    // Edge to edge is not on top of each other; nearer is.
    Drawing close;
    const PartId first = place(close, "hand_valve", {0, 0}), beside = place(close, "hand_valve", {4, 1});
    make(close, tidyParts(close, {first, beside}));
    CHECK(at(close, beside) == Point{4, 0});
    Drawing over;
    const PartId under = place(over, "hand_valve", {0, 0}), above = place(over, "hand_valve", {3.25, 1.25});
    make(over, tidyParts(over, {under, above}));
    CHECK(at(over, above) == Point{3, 1});
}

TEST_CASE("tidying takes the bends of pipes between the chosen, not of those that lead away", "[document][gestures]")
{
    Drawing drawing;
    const PartId a = place(drawing, "hand_valve", {0, 0}), b = place(drawing, "hand_valve", {20, 0}),
                 c = place(drawing, "hand_valve", {40, 0});
    const PartId between = pipe(drawing, {a, "outlet", {}}, {b, "inlet", {}});
    const PartId away = pipe(drawing, {b, "outlet", {}}, {c, "inlet", {}});
    drawing.find(between)->bends = drawing.find(away)->bends = {{10, 8}};
    Drawing two = drawing;
    make(two, tidyParts(two, {a, b}));
    CHECK(two.find(between)->bends.empty());
    CHECK(two.find(away)->bends.size() == 1);
    Drawing named = drawing;
    make(named, tidyParts(named, {away}));
    CHECK(named.find(between)->bends.size() == 1);
    CHECK(named.find(away)->bends.empty());
    CHECK_FALSE(tidyParts(named, {away}));
}

TEST_CASE("a jug's bounds hold at their ends", "[document][jug]")
{
    // JugTry: 50 mL to 100 L, 1 s to 1 h.
    CHECK(jugFlow({{5e-5, 10}}));
    CHECK_FALSE(jugFlow({{4.999e-5, 10}}));
    CHECK(jugFlow({{0.1, 10}}));
    CHECK_FALSE(jugFlow({{0.1001, 10}}));
    CHECK(jugFlow({{1e-3, 1}}));
    CHECK_FALSE(jugFlow({{1e-3, 0.999}}));
    CHECK(jugFlow({{1e-3, 3600}}));
    CHECK_FALSE(jugFlow({{1e-3, 3600.1}}));
    CHECK(jugFlow({{1e-3, 10}, {1e-3, 11}, {1e-3, 12}})->tries == 3);
}

TEST_CASE("a jug's notes come in order of weight, each only when it holds", "[document][jug]")
{
    Drawing drawing;
    const PartId tap = place(drawing, "faucet", {0, 0});
    const auto notes = [&](double least, double most, std::optional<JugPressure> pressure) {
        JugFlow flow;
        flow.flow_m3s = (least + most) / 2;
        flow.least_m3s = least;
        flow.most_m3s = most;
        std::vector<std::string> said;
        for (const Message& note : jugNotes(drawing, tap, flow, pressure)) {
            said.push_back(note.text.substr(0, 8));
        }
        return said;
    };
    set(drawing, tap, "cap_flow_m3s", 1e-4);
    // (most - least) / mean: 0.0100 / 0.1 is just what is allowed, more is wide.
    CHECK(notes(0.95e-4, 1.049e-4, JugPressure{3e5}) == std::vector<std::string>{});
    CHECK(notes(0.94e-4, 1.05e-4, JugPressure{3e5}) == std::vector<std::string>{"The trie"});
    CHECK(notes(1e-4, 1e-4, {}) == std::vector<std::string>{"No press"});
    CHECK(notes(1.01e-4, 1.01e-4, JugPressure{3e5}) == std::vector<std::string>{"The flow"});
    CHECK(notes(1.0e-4, 1.4e-4, {}) == std::vector<std::string>{"The trie", "No press", "The flow"});
    set(drawing, tap, "cap_flow_m3s", 0.0);  // no regulator
    CHECK(notes(1.01e-4, 1.01e-4, JugPressure{3e5}).empty());
    const PartId valve = place(drawing, "hand_valve", {20, 0});
    JugFlow flow{1e-4, 1e-4, 1e-4, 0, 1};
    CHECK(jugNotes(drawing, valve, flow, {}).empty());
    CHECK(jugNotes(drawing, 99, flow, {}).empty());
}

TEST_CASE("a dimension's line and leaders stand where its ends say", "[document][dimension]")
{
    Drawing drawing;
    const PartId from = place(drawing, "hand_valve", {0, 0}), to = place(drawing, "hand_valve", {30, 4});
    const PartId id = place(drawing, "dimension", {12, 10});
    const auto line = [&] { return *dimensionLine(drawing, *drawing.find(id)); };
    set(drawing, id, "width_modules", 10.0);
    // Free: half of ten to each side, no leaders.
    CHECK(line().a == Point{7, 10});
    CHECK(line().b == Point{17, 10});
    CHECK(line().reach[0] == std::array<Point, 2>{{{7, 10}, {7, 10}}});
    set(drawing, id, "from", std::to_string(from));
    set(drawing, id, "to", std::to_string(to));
    CHECK(line().a == Point{0, 10});
    CHECK(line().b == Point{30, 10});
    // A leader starts one and a half modules clear of the middle of what it measures.
    CHECK(line().reach[0] == std::array<Point, 2>{{{0, 1.5}, {0, 10}}});
    CHECK(line().reach[1] == std::array<Point, 2>{{{30, 5.5}, {30, 10}}});
    drawing.find(id)->at = {40, -10};  // beyond and above
    CHECK(line().a == Point{0, -10});
    CHECK(line().b == Point{40, -10});
    CHECK(line().reach[1] == std::array<Point, 2>{{{30, 2.5}, {30, -10}}});
    drawing.find(id)->at = {12, 1.5};  // no nearer than that: no leader
    CHECK(line().reach[0] == std::array<Point, 2>{{{0, 1.5}, {0, 1.5}}});
    drawing.find(id)->at = {12, 10};
    drawing.find(id)->turn = 1;  // upright, through x = 12
    CHECK(line().a == Point{12, 0});
    CHECK(line().b == Point{12, 10});
    CHECK(line().reach[0] == std::array<Point, 2>{{{1.5, 0}, {12, 0}}});
    CHECK(line().reach[1] == std::array<Point, 2>{{{28.5, 4}, {12, 4}}});
    CHECK_FALSE(dimensionLine(drawing, *drawing.find(from)));
}

TEST_CASE("a new dimension stands four modules below its parts in the middle, above when that is taken",
          "[document][dimension]")
{
    Drawing drawing;
    const PartId from = place(drawing, "hand_valve", {0, 0}), to = place(drawing, "hand_valve", {30, 4});
    const auto placed = [&] {
        auto edit = dimensionBetween(drawing, {from, to});
        REQUIRE(edit);
        CHECK(titleOf(edit) == "Dimension from V1 to V2");
        const Part part = std::get<AddPart>(edit->steps.front()).part;
        CHECK(values(part).text("from") == std::to_string(from));
        CHECK(values(part).text("to") == std::to_string(to));
        return part;
    };
    CHECK(placed().at == Point{15, 8});
    CHECK(placed().turn == 0);
    // Another pipe along there: six below, where it is clear of by more than a module and a half.
    const Drawing bare = drawing;
    pipe(drawing, {kNoPart, {}, {-20, 8}}, {kNoPart, {}, {60, 8}});
    CHECK(placed().at == Point{15, 10});
    drawing = bare;
    drawing.find(to)->at = {30, 30};  // as far across as down: level
    CHECK(placed().turn == 0);
    drawing.find(to)->at = {30, 31};
    CHECK(placed().turn == 1);
}

TEST_CASE("a new pipe that would lie on another one goes a way of its own", "[document][gestures]")
{
    // Hot and cold of a tap hang down side by side. The heater's hot port and the tee on the cold line lie to the left
    // of both, so that the usual ways of both pipes take the row under the tap.
    Drawing drawing;
    const PartId heater = place(drawing, "tankless_heater", {0, 0}), tap = place(drawing, "faucet", {30, 0});
    PartId tee = kNoPart;
    for (int turn = 0; turn < 4; ++turn) {
        Drawing tried = drawing;
        tee = place(tried, "tee", {-9, 10}, turn);
        if (portSide(*tried.find(tee), *kindOf(*tried.find(tee)).port("branch")) == parts::Side::Top) {
            drawing = tried;
            break;
        }
    }
    const PartId hot = pipe(drawing, {heater, "hot", {}}, {tap, "hot", {}});
    CHECK(drawing.find(hot)->bends.empty());
    const PartId cold = pipe(drawing, {tap, "cold", {}}, {tee, "branch", {}});
    const auto shared = [&] {
        double sum = 0;
        const auto a = route(drawing, *drawing.find(hot)), b = route(drawing, *drawing.find(cold));
        for (std::size_t i = 1; i < a.size(); ++i)
            for (std::size_t k = 1; k < b.size(); ++k)
                if (a[i].y == a[i - 1].y && b[k].y == b[k - 1].y && a[i].y == b[k].y)
                    sum += std::max(0.0, std::min(std::max(a[i].x, a[i - 1].x), std::max(b[k].x, b[k - 1].x))
                                             - std::max(std::min(a[i].x, a[i - 1].x), std::min(b[k].x, b[k - 1].x)));
        return sum;
    };
    CHECK(shared() == 0);
    drawing.find(cold)->bends.clear();
    CHECK(shared() > 20);  // what it would have been
}
