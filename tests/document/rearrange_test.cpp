// SPDX-License-Identifier: GPL-3.0-or-later
#include "document/rearrange.h"

#include <cmath>

#include "document/file.h"
#include "support/catch.h"
#include "support/edits.h"
#include "support/random_drawing.h"

using namespace tapward;
using namespace tapward::document;
using test::make;
using test::number;
using test::place;

namespace {

PartId join(Drawing& drawing, PartId a, const char* portA, PartId b, const char* portB)
{
    const PartId id = drawing.nextId;
    make(drawing, connect(drawing, {a, portA, {}}, {b, portB, {}}, Stage::Existing));
    return id;
}

void setNumber(Drawing& drawing, PartId id, const char* key, double value)
{
    make(drawing, Edit{"Set", {SetField{id, key, parts::Entry{value, parts::Basis::Measured}}}});
}

}  // namespace

TEST_CASE("a part put into a pipe keeps what it is and divides the pipe's length and fittings", "[document]")
{
    Drawing drawing;
    const PartId left = place(drawing, "circulator", {-20, 0}), right = place(drawing, "check_valve", {20, 0});
    const PartId pipe = join(drawing, left, "outlet", right, "inlet");
    setNumber(drawing, pipe, "length_m", 4.2);
    setNumber(drawing, pipe, "elbows", 3);
    const PartId valve = place(drawing, "hand_valve", {3, 9}, 1);
    Part labelled = *drawing.find(valve);
    labelled.tag = "MINE";
    labelled.height_m = 0.4;
    make(drawing, Edit{"Tag", {ChangePart{labelled}}});
    const Drawing before = drawing;

    auto edit = putIntoPipe(drawing, valve, pipe, {5, 0.3}, 0.25);
    REQUIRE(edit.has_value());
    const Edit back = apply(drawing, std::move(*edit));
    const Part& put = *drawing.find(valve);
    CHECK(put.tag == "MINE");
    CHECK(put.height_m == 0.4);
    CHECK(put.at == Point{5, 0});
    CHECK(put.turn == 0);
    const Part* in = drawing.pipeAt(valve, kindOf(put).inLine[0]);
    const Part* out = drawing.pipeAt(valve, kindOf(put).inLine[1]);
    REQUIRE(in != nullptr);
    REQUIRE(out != nullptr);
    CHECK(in->ends[0].part == left);
    CHECK(out->ends[1].part == right);
    CHECK(number(drawing, in->id, "length_m") + number(drawing, out->id, "length_m") == 4.2);
    CHECK(number(drawing, in->id, "elbows") + number(drawing, out->id, "elbows") == 3);

    // It cannot be put into two pipes at once.
    CHECK_FALSE(putIntoPipe(drawing, valve, in->id, {0, 0}, 0.5).has_value());
    apply(drawing, back);
    CHECK(drawing == before);
}

TEST_CASE("a tank does not go into a pipe", "[document]")
{
    Drawing drawing;
    const PartId left = place(drawing, "circulator", {-20, 0}), right = place(drawing, "check_valve", {20, 0});
    const PartId pipe = join(drawing, left, "outlet", right, "inlet");
    const PartId tap = place(drawing, "faucet", {0, 9});
    CHECK_FALSE(putIntoPipe(drawing, tap, pipe, {0, 0}, 0.5).has_value());
    CHECK_FALSE(putIntoPipe(drawing, pipe, pipe, {0, 0}, 0.5).has_value());
}

TEST_CASE("a part taken out of its pipe leaves one whole pipe behind", "[document]")
{
    Drawing drawing;
    const PartId left = place(drawing, "circulator", {-20, 0}), valve = place(drawing, "hand_valve", {0, 0}),
                 right = place(drawing, "check_valve", {20, 0});
    const Part& put = *drawing.find(valve);
    const std::string in(kindOf(put).inLine[0]), out(kindOf(put).inLine[1]);
    const PartId a = join(drawing, left, "outlet", valve, in.c_str()),
                 b = join(drawing, valve, out.c_str(), right, "inlet");
    setNumber(drawing, a, "length_m", 1.5);
    setNumber(drawing, b, "length_m", 2.25);
    make(drawing, takeOutOfPipe(drawing, valve, 0, 6));
    CHECK(drawing.find(valve)->at == Point{0, 6});
    CHECK(drawing.pipeAt(valve, in) == nullptr);
    CHECK(drawing.pipeAt(valve, out) == nullptr);
    const Part* whole = drawing.pipeAt(left, "outlet");
    REQUIRE(whole != nullptr);
    CHECK(whole == drawing.pipeAt(right, "inlet"));
    CHECK(number(drawing, whole->id, "length_m") == 3.75);
    CHECK_FALSE(takeOutOfPipe(drawing, valve, 0, 6).has_value());
}

TEST_CASE("aligned parts share one edge or middle, pipes stay attached", "[document]")
{
    Drawing drawing;
    const PartId a = place(drawing, "circulator", {0, 0}), b = place(drawing, "tankless_heater", {14, 3}),
                 c = place(drawing, "check_valve", {30, -5});
    const PartId pipe = join(drawing, a, "outlet", c, "inlet");
    const std::vector<PartId> ids{a, b, c, pipe};
    const auto half = [&](PartId id) { return kindOf(*drawing.find(id)).height / 2; };

    make(drawing, alignParts(drawing, ids, Alignment::Top));
    CHECK(drawing.find(a)->at.y - half(a) == drawing.find(b)->at.y - half(b));
    CHECK(drawing.find(c)->at.y - half(c) == drawing.find(b)->at.y - half(b));
    CHECK(drawing.find(a)->at.x == 0);  // only across
    make(drawing, moveParts(drawing, {a}, 0, 7));
    make(drawing, alignParts(drawing, ids, Alignment::Middle));
    CHECK(drawing.find(a)->at.y == drawing.find(b)->at.y);
    CHECK(drawing.find(a)->at.y == drawing.find(c)->at.y);
    make(drawing, alignParts(drawing, ids, Alignment::Centre));
    CHECK(drawing.find(a)->at.x == drawing.find(c)->at.x);
    CHECK(drawing.find(pipe)->ends[0].part == a);
    CHECK_FALSE(alignParts(drawing, {a, pipe}, Alignment::Left).has_value());
}

TEST_CASE("spread parts have equal gaps to within a grid step and the outer ones stay", "[document]")
{
    Drawing drawing;
    std::vector<PartId> ids;
    for (const double x : {0.0, 5.0, 9.0, 60.0})
        ids.push_back(place(drawing, "circulator", {x, 0}));
    make(drawing, distributeParts(drawing, ids, true));
    CHECK(drawing.find(ids[0])->at.x == 0);
    CHECK(drawing.find(ids[3])->at.x == 60);
    CHECK(drawing.find(ids[1])->at.x == 20);
    CHECK(drawing.find(ids[2])->at.x == 40);
    CHECK_FALSE(distributeParts(drawing, {ids[0], ids[1]}, false).has_value());
}

TEST_CASE("tidied parts stand on the grid, in rows where they nearly did, and never on each other", "[document]")
{
    Drawing drawing;
    const PartId a = place(drawing, "circulator", {0.3, 0.2}), b = place(drawing, "check_valve", {20, 1.4}),
                 c = place(drawing, "hand_valve", {40.2, -0.6}), d = place(drawing, "circulator", {1.6, 1.1});
    const PartId pipe = join(drawing, a, "outlet", b, "inlet");
    Part bent = *drawing.find(pipe);
    bent.bends = {{10, 5}};
    make(drawing, Edit{"Bend", {ChangePart{bent}}});
    const std::vector<PartId> ids{a, b, c, d};
    make(drawing, tidyParts(drawing, ids));
    for (const PartId id : ids) {
        const Point at = drawing.find(id)->at;
        CHECK(at.x == std::round(at.x));
        CHECK(at.y == std::round(at.y));
    }
    CHECK(drawing.find(a)->at.y == drawing.find(b)->at.y);
    CHECK(drawing.find(b)->at.y == drawing.find(c)->at.y);
    CHECK_FALSE(drawing.find(a)->at == drawing.find(d)->at);
    CHECK(drawing.find(pipe)->bends.empty());
    CHECK_FALSE(tidyParts(drawing, {b, c}).has_value());
}

TEST_CASE("500 random edits undone and redone give the same bytes at both ends", "[document]")
{
    for (const std::uint64_t seed : {1u, 2u, 3u}) {
        test::RandomOptions options;
        options.sense = seed != 2;
        Drawing drawing = test::randomDrawing(seed, options);
        const std::string first = write(drawing);
        test::Random random(seed * 7919);
        std::vector<Edit> undo;
        while (undo.size() < 500) {
            Result<Edit> edit = test::randomEdit(random, drawing);
            if (random.chance(0.3)) {
                std::vector<PartId> ids;
                for (const Part& part : drawing.parts)
                    if (random.chance(0.2))
                        ids.push_back(part.id);
                const PartId one = ids.empty() ? kNoPart : random.pick(ids);
                const PartId other = ids.empty() ? kNoPart : random.pick(ids);
                Result<Edit> more = tl::unexpected(Problem{});
                switch (random.below(5)) {
                case 0:
                    more = alignParts(drawing, ids, static_cast<Alignment>(random.below(6)));
                    break;
                case 1:
                    more = distributeParts(drawing, ids, random.chance(0.5));
                    break;
                case 2:
                    more = tidyParts(drawing, ids);
                    break;
                case 3:
                    more = takeOutOfPipe(drawing, one, 2, 5);
                    break;
                default:
                    more = putIntoPipe(drawing, one, other, {1, 1}, random.unit());
                }
                edit = std::move(more);
            }
            if (!edit || refusal(drawing, *edit))
                continue;
            undo.push_back(apply(drawing, std::move(*edit)));
        }
        const std::string last = write(drawing);
        CHECK(last != first);
        std::vector<Edit> redo;
        for (; !undo.empty(); undo.pop_back()) {
            REQUIRE_FALSE(refusal(drawing, undo.back()).has_value());
            redo.push_back(apply(drawing, std::move(undo.back())));
        }
        CHECK(write(drawing) == first);
        for (; !redo.empty(); redo.pop_back()) {
            REQUIRE_FALSE(refusal(drawing, redo.back()).has_value());
            apply(drawing, std::move(redo.back()));
        }
        CHECK(write(drawing) == last);
    }
}
