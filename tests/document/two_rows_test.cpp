// SPDX-License-Identifier: GPL-3.0-or-later
// Long drawings in two rows: only where things stand changes.
#include <algorithm>

#include "document/file.h"
#include "document/rearrange.h"
#include "document/route.h"
#include "support/catch.h"

using namespace tapward;
using document::Drawing;
using document::Part;

namespace {

/// City water, a pump, a heater and taps, one after the other in a line: `apart` modules from one to the next.
Drawing line(int taps, double apart = 12)
{
    Drawing drawing;
    const auto add = [&](const char* kind, const std::string& tag, double x, double y) {
        Part part;
        part.id = drawing.nextId++;
        part.kind = kind;
        part.tag = tag;
        part.at = {x, y};
        drawing.parts.push_back(part);
        return part.id;
    };
    const auto pipe = [&](document::PartId from, const char* fromPort, document::PartId to, const char* toPort) {
        Part& part = drawing.parts.emplace_back();
        part.id = drawing.nextId++;
        part.kind = "pipe_run";
        part.tag = "L" + std::to_string(part.id);
        part.ends = {document::PipeEnd{from, fromPort, {}}, document::PipeEnd{to, toPort, {}}};
        part.entries["length_m"] = {1.5, parts::Basis::Measured};
    };
    auto before = add("city_inlet", "CW1", 0, 0);
    const char* port = "outlet";
    for (int i = 1; i <= taps; ++i) {
        const auto tee = add("tee", "T" + std::to_string(i), apart * i, 0);
        const auto tap = add("faucet", "F" + std::to_string(i), apart * i, -8);
        pipe(before, port, tee, "run_a");
        pipe(tee, "branch", tap, "cold");
        before = tee;
        port = "run_b";
    }
    return drawing;
}

struct Span {
    double wide, high;
};
Span spanOf(const Drawing& drawing)
{
    double left = 1e9, right = -1e9, top = 1e9, bottom = -1e9;
    for (const Part& part : drawing.parts) {
        if (!kindOf(part).isPipe) {
            left = std::min(left, part.at.x);
            right = std::max(right, part.at.x);
            top = std::min(top, part.at.y);
            bottom = std::max(bottom, part.at.y);
        }
    }
    return {right - left, bottom - top};
}

}  // namespace

TEST_CASE("a long drawing in two rows is half as wide, and nothing but places has changed", "[document][rows]")
{
    const Drawing drawing = line(10);
    const auto edit = document::layInTwoRows(drawing);
    REQUIRE(edit.has_value());
    Drawing laid = drawing;
    REQUIRE_FALSE(document::refusal(laid, *edit));
    const document::Edit back = document::apply(laid, *edit);
    CHECK(spanOf(laid).wide < 0.65 * spanOf(drawing).wide);
    // The second row runs back under the first: the last tap stands below the first ones, right of nothing.
    CHECK(laid.findTag("F10")->at.y > laid.findTag("F1")->at.y + 12);
    CHECK(laid.findTag("F10")->at.x < laid.findTag("F6")->at.x);
    CHECK(laid.findTag("F4")->at == drawing.findTag("F4")->at);
    CHECK(laid.findTag("F10")->flipped != drawing.findTag("F10")->flipped);
    for (const Part& part : laid.parts) {
        Part placed = part;
        const Part& was = *drawing.find(part.id);
        placed.at = was.at;
        placed.turn = was.turn;
        placed.flipped = was.flipped;
        CHECK(placed == was);
    }
    document::apply(laid, back);
    CHECK(laid == drawing);
}

TEST_CASE("bends, labels and loose ends turn with their row, a pipe between the rows finds its way anew",
          "[document][rows]")
{
    Drawing drawing = line(10);
    drawing.parts.back().bends = {{121, -3}};  // in the right half
    drawing.find(drawing.findTag("F9")->id)->label = document::Point{3, -2};
    for (Part& part : drawing.parts) {
        // The one from T5 to T6 has a bend; it goes from row to row.
        if (kindOf(part).isPipe && part.ends[0].part == drawing.findTag("T5")->id && part.ends[0].port == "run_b") {
            part.bends = {{66, 2}};
        }
    }
    const auto edit = document::layInTwoRows(drawing);
    REQUIRE(edit.has_value());
    Drawing laid = drawing;
    document::apply(laid, *edit);
    const Part &tee = *laid.findTag("T10"), &was = *drawing.findTag("T10");
    const double cut = (tee.at.x + was.at.x) / 2, down = tee.at.y - was.at.y;
    CHECK(laid.parts.back().bends == std::vector<document::Point>{{2 * cut - 121, -3 + down}});
    CHECK(*laid.findTag("F9")->label == document::Point{-3, -2});
    int between = 0;
    for (const Part& part : laid.parts) {
        if (!kindOf(part).isPipe) {
            continue;
        }
        const bool first = laid.find(part.ends[0].part)->flipped, second = laid.find(part.ends[1].part)->flipped;
        if (first != second) {
            ++between;
            CHECK(part.bends.empty());
        }
    }
    CHECK(between == 1);
}

TEST_CASE("a short drawing, one on a floor plan and one without a gap stay in one row, and it is said why",
          "[document][rows]")
{
    CHECK(document::layInTwoRows(Drawing{}).error().what.text.find("not long enough") != std::string::npos);
    CHECK(document::layInTwoRows(line(2)).error().what.text.find("not long enough") != std::string::npos);
    Drawing planned = line(10);
    Part plan;
    plan.id = planned.nextId++;
    plan.kind = "floor_plan";
    plan.tag = "PL1";
    plan.at = {60, 0};
    planned.parts.push_back(plan);
    CHECK_FALSE(document::layInTwoRows(planned).has_value());
    CHECK(document::layInTwoRows(line(30, 4)).error().what.text.find("no gap") != std::string::npos);
    // In two rows already.
    Drawing once = line(10);
    document::apply(once, *document::layInTwoRows(once));
    CHECK_FALSE(document::layInTwoRows(once).has_value());
}
