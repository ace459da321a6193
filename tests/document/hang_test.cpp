// SPDX-License-Identifier: GPL-3.0-or-later
// What has one port is hung on a pipe: a drain, an accumulator, a toilet.
#include <algorithm>

#include "document/edit.h"
#include "support/catch.h"

using namespace tapward;
using namespace tapward::document;

namespace {

/// City water to a tap, one straight pipe of 4 m, level or upright.
Drawing oneLine(bool upright)
{
    Drawing drawing;
    const auto add = [&](const char* kind, const char* tag, Point at, int turn) {
        Part& part = drawing.parts.emplace_back();
        part.id = drawing.nextId++;
        part.kind = kind;
        part.tag = tag;
        part.at = at;
        part.turn = turn;
        return part.id;
    };
    const auto from = add("hand_valve", "V1", {0, 0}, upright ? 1 : 0);
    const auto to = add("hand_valve", "V2", upright ? Point{0, 40} : Point{40, 0}, upright ? 1 : 0);
    const auto pipe = add("pipe_run", "L1", {}, 0);
    drawing.find(pipe)->ends = {PipeEnd{from, "outlet", {}}, PipeEnd{to, "inlet", {}}};
    drawing.find(pipe)->entries["length_m"] = {4.0, parts::Basis::Measured};
    return drawing;
}

}  // namespace

TEST_CASE("a part with one port hangs on the pipe it is dropped on, by a tee and a pipe of its own", "[document][hang]")
{
    for (const bool upright : {false, true}) {
        for (const char* kind : {"drain_valve", "accumulator", "toilet"}) {
            CAPTURE(upright, kind);
            const Drawing drawing = oneLine(upright);
            const auto edit = hangOnPipe(drawing, drawing.findTag("L1")->id, kind,
                                         upright ? Point{0, 20} : Point{20, 0}, 0.5, Stage::Added);
            REQUIRE(edit.has_value());
            Drawing hung = drawing;
            REQUIRE_FALSE(refusal(hung, *edit));
            const Edit back = apply(hung, *edit);
            const auto there = [&](const char* wanted) {
                return std::find_if(hung.parts.begin(), hung.parts.end(),
                                    [wanted](const Part& part) { return part.kind == wanted; });
            };
            const auto part = there(kind), tee = there("tee");
            REQUIRE(part != hung.parts.end());
            REQUIRE(tee != hung.parts.end());
            const Part* between = hung.pipeAt(part->id, kindOf(*part).ports[0].id);
            REQUIRE(between);
            CHECK(hung.pipeAt(tee->id, "branch") == between);
            // The pipe's length is divided, none is lost.
            const Part *first = hung.pipeAt(tee->id, "run_a"), *second = hung.pipeAt(tee->id, "run_b");
            REQUIRE(first);
            REQUIRE(second);
            CHECK(values(*first).number("length_m") + values(*second).number("length_m") == 4);
            // Tee's runs face along the pipe, each to its own half.
            const Point a = portPlace(*tee, *kindOf(*tee).port("run_a"));
            CHECK((upright ? a.y < tee->at.y : a.x < tee->at.x));
            // Beside the pipe, and its port faces the tee.
            CHECK((upright ? part->at.x != 0 && part->at.y == 20 : part->at.y != 0 && part->at.x == 20));
            CHECK((upright || part->turn == 0));  // upright where the pipe is level
            CHECK(between->stage == Stage::Added);
            apply(hung, back);
            CHECK(hung == drawing);
        }
    }
}

TEST_CASE("a part hangs on the free side, one that goes in line goes into it, others are refused in words",
          "[document][hang]")
{
    Drawing drawing = oneLine(false);
    const auto pipe = drawing.findTag("L1")->id;
    Part& note = drawing.parts.emplace_back();
    note.id = drawing.nextId++;
    note.kind = "faucet";
    note.tag = "F9";
    note.at = {20, 6};  // where a drain would hang
    const auto hung = [&](const char* kind) {
        Drawing now = drawing;
        const auto edit = hangOnPipe(drawing, pipe, kind, {20, 0}, 0.5, Stage::Existing);
        REQUIRE(edit.has_value());
        apply(now, *edit);
        return now;
    };
    const Drawing now = hung("drain_valve");
    const auto drain =
        std::find_if(now.parts.begin(), now.parts.end(), [](const Part& part) { return part.kind == "drain_valve"; });
    CHECK(drain->at.y < 0);
    const Drawing inLine = hung("check_valve");
    CHECK(std::none_of(inLine.parts.begin(), inLine.parts.end(), [](const Part& part) { return part.kind == "tee"; }));
    const auto refused = hangOnPipe(drawing, pipe, "faucet", {20, 0}, 0.5, Stage::Existing);
    REQUIRE_FALSE(refused.has_value());
    CHECK(refused.error().what.text == "{0} does not go into a line.");
    CHECK_FALSE(hangOnPipe(drawing, 999, "drain_valve", {20, 0}, 0.5, Stage::Existing).has_value());
}
