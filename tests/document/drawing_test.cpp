// SPDX-License-Identifier: GPL-3.0-or-later
#include "document/drawing.h"

#include <random>
#include <rapidcheck.h>

#include "document/edit.h"
#include "document/ports.h"
#include "document/route.h"
#include "support/catch.h"
#include "support/random_drawing.h"

using namespace tapward;
using namespace tapward::document;

namespace {

Part symbol(const char* kind, Point at, int turn = 0, bool flipped = false)
{
    Part part;
    part.kind = kind;
    part.at = at;
    part.turn = turn;
    part.flipped = flipped;
    return part;
}

Point portOf(const Part& part, const char* port) { return portPlace(part, *kindOf(part).port(port)); }
parts::Side sideOf(const Part& part, const char* port) { return portSide(part, *kindOf(part).port(port)); }

Point unit(parts::Side side)
{
    return side == parts::Side::Left    ? Point{-1, 0}
           : side == parts::Side::Right ? Point{1, 0}
           : side == parts::Side::Top   ? Point{0, -1}
                                        : Point{0, 1};
}

}  // namespace

TEST_CASE("before shows what is there, after what will be", "[document]")
{
    CHECK(isPresent(Stage::Existing, View::Before));
    CHECK(isPresent(Stage::Existing, View::After));
    CHECK_FALSE(isPresent(Stage::Added, View::Before));
    CHECK(isPresent(Stage::Added, View::After));
    CHECK(isPresent(Stage::Removed, View::Before));
    CHECK_FALSE(isPresent(Stage::Removed, View::After));
    for (const Stage stage : {Stage::Existing, Stage::Added, Stage::Removed}) {
        CHECK(isPresent(stage, View::Both));
    }
}

TEST_CASE("a quarter turn takes the outlet from the right to the bottom", "[document]")
{
    // y grows downward, so clockwise goes right, down, left, up.
    const char* kind = "circulator";
    CHECK(portOf(symbol(kind, {10, 20}), "outlet") == Point{12, 20});
    CHECK(portOf(symbol(kind, {10, 20}, 1), "outlet") == Point{10, 22});
    CHECK(portOf(symbol(kind, {10, 20}, 2), "outlet") == Point{8, 20});
    CHECK(portOf(symbol(kind, {10, 20}, 3), "outlet") == Point{10, 18});
    CHECK(sideOf(symbol(kind, {}, 1), "outlet") == parts::Side::Bottom);
    CHECK(sideOf(symbol(kind, {}, 3), "outlet") == parts::Side::Top);
}

TEST_CASE("a flipped part is mirrored left to right before it is turned", "[document]")
{
    CHECK(portOf(symbol("circulator", {0, 0}, 0, true), "outlet") == Point{-2, 0});
    CHECK(portOf(symbol("tee", {0, 0}, 0, true), "branch") == Point{0, 1});
    CHECK(portOf(symbol("circulator", {0, 0}, 1, true), "outlet") == Point{0, -2});
    CHECK(sideOf(symbol("circulator", {}, 0, true), "outlet") == parts::Side::Left);
    CHECK(sideOf(symbol("tee", {}, 1, true), "branch") == parts::Side::Left);
}

TEST_CASE("ports stand on the side they face, however a part is turned", "[document]")
{
    const auto kind = GENERATE(from_range(parts::catalogue()));
    for (int turn = 0; turn < 4; ++turn) {
        for (const bool flipped : {false, true}) {
            const Part part = symbol(std::string(kind->id).c_str(), {5, 7}, turn, flipped);
            for (const parts::Port& port : kind->ports) {
                const Point place = portPlace(part, port);
                const Point out = unit(portSide(part, port));
                const bool across = turn % 2 == 1;
                const double reach =
                    out.x != 0 ? (across ? kind->height : kind->width) / 2 : (across ? kind->width : kind->height) / 2;
                CHECK((place.x - 5) * out.x + (place.y - 7) * out.y == reach);
            }
        }
    }
}

TEST_CASE("a free tag is the lowest number not taken", "[document]")
{
    Drawing drawing;
    const parts::PartKind& pump = *parts::find("circulator");
    CHECK(drawing.freeTag(pump) == "P1");
    for (const char* tag : {"P1", "P3"}) {
        Part part = symbol("circulator", {});
        part.id = drawing.nextId++;
        part.tag = tag;
        drawing.parts.push_back(part);
    }
    CHECK(drawing.freeTag(pump) == "P2");
    CHECK(drawing.findTag("P3") == drawing.find(2));
    CHECK(drawing.findTag("P2") == nullptr);
    CHECK(drawing.find(3) == nullptr);
}

TEST_CASE("the pipes at all ports looked up at once are those looked up one by one", "[document][property]")
{
    CHECK(rc::check("pipes at ports", [](std::uint64_t seed) {
        const Drawing drawing = test::randomDrawing(seed, {});
        const PipesAtPorts pipeAt(drawing);
        for (const Part& part : drawing.parts) {
            for (const parts::Port& port : kindOf(part).ports) {
                RC_ASSERT(pipeAt(part.id, port.id) == drawing.pipeAt(part.id, port.id));
            }
        }
        RC_ASSERT(pipeAt(kNoPart, "inlet") == nullptr);
    }));
}

TEST_CASE("a pipe between facing ports in line is straight", "[document]")
{
    Drawing drawing;
    drawing.parts = {symbol("circulator", {0, 0}), symbol("check_valve", {10, 0})};
    drawing.parts[0].id = 1;
    drawing.parts[1].id = 2;
    Part pipe = symbol("pipe_run", {});
    pipe.ends = {PipeEnd{1, "outlet", {}}, PipeEnd{2, "inlet", {}}};
    CHECK(route(drawing, pipe) == std::vector<Point>{{2, 0}, {8, 0}});
    drawing.parts[1].at = {10, 6};
    const auto points = route(drawing, pipe);
    REQUIRE(points.size() == 4);  // out, down, in
    CHECK(points.front() == Point{2, 0});
    CHECK(points.back() == Point{8, 6});
}

TEST_CASE("pipes run at right angles from port to port and leave their ports straight", "[document][property]")
{
    CHECK(rc::check("routes", [](std::uint64_t seed) {
        test::RandomOptions options;
        options.sense = seed % 2 == 0;
        const Drawing drawing = test::randomDrawing(seed, options);
        for (const Part& pipe : drawing.parts) {
            if (!kindOf(pipe).isPipe) {
                continue;
            }
            const auto points = route(drawing, pipe);
            RC_ASSERT(points.size() >= 2u);
            RC_ASSERT(points == route(drawing, pipe));
            for (std::size_t end = 0; end < 2; ++end) {
                const Point& first = end == 0 ? points.front() : points.back();
                const Point& second = end == 0 ? points[1] : points[points.size() - 2];
                const PipeEnd& to = pipe.ends[end];
                const Part* part = drawing.find(to.part);
                if (!part) {
                    RC_ASSERT(first == to.loose);
                    continue;
                }
                const parts::Port& port = *kindOf(*part).port(to.port);
                RC_ASSERT(first == portPlace(*part, port));
                const Point out = unit(portSide(*part, port));
                // At least one module straight out; the sideways part of the first stretch is nothing.
                RC_ASSERT((second.x - first.x) * out.x + (second.y - first.y) * out.y >= 1 - 1e-9);
                RC_ASSERT(std::abs((second.x - first.x) * out.y - (second.y - first.y) * out.x) < 1e-9);
            }
            for (std::size_t i = 1; i < points.size(); ++i) {
                RC_ASSERT(std::abs(points[i].x - points[i - 1].x) < 1e-9
                          || std::abs(points[i].y - points[i - 1].y) < 1e-9);
            }
            std::size_t at = 0;
            for (const Point& bend : pipe.bends) {  // hand-made bends are kept, in order
                while (at < points.size() && !(points[at] == bend)) {
                    ++at;
                }
                RC_ASSERT(at < points.size());
            }
        }
    }));
}

TEST_CASE("ways remembered while parts move are the ways found anew, and only what is near is found anew",
          "[document][property]")
{
    CHECK(rc::check("remembered routes", [](std::uint64_t seed) {
        Drawing drawing = test::randomDrawing(seed, {});
        RouteMemory memory;
        std::mt19937_64 dice(seed);
        for (int round = 0; round < 3; ++round) {
            const auto routed = [&] {
                std::vector<std::vector<Point>> found;
                const Router router(drawing, &memory);
                for (const Part& pipe : drawing.parts) {
                    if (kindOf(pipe).isPipe) {
                        found.push_back(router.route(pipe));
                    }
                }
                return found;
            };
            const auto first = routed();
            const Router anew(drawing);
            std::size_t at = 0;
            for (const Part& pipe : drawing.parts) {
                if (kindOf(pipe).isPipe) {
                    RC_ASSERT(first[at++] == anew.route(pipe));
                }
            }
            RC_ASSERT(routed() == first);
            RC_ASSERT(memory.answered() == 0u);  // nothing changed: every way is known
            Part& moved = drawing.parts[dice() % drawing.parts.size()];
            moved.at.x += static_cast<double>(dice() % 41) - 20;
            moved.at.y += static_cast<double>(dice() % 41) - 20;
            moved.turn = static_cast<int>(dice() % 4);
        }
    }));

    // Two pairs far from each other: moving a part of one leaves the other's pipe alone.
    Drawing drawing;
    drawing.parts = {symbol("circulator", {0, 0}),    symbol("check_valve", {20, 7}), symbol("circulator", {200, 0}),
                     symbol("check_valve", {220, 7}), symbol("pipe_run", {}),         symbol("pipe_run", {})};
    for (std::size_t i = 0; i < drawing.parts.size(); ++i) {
        drawing.parts[i].id = static_cast<PartId>(i) + 1;
    }
    drawing.parts[4].ends = {PipeEnd{1, "outlet", {}}, PipeEnd{2, "inlet", {}}};
    drawing.parts[5].ends = {PipeEnd{3, "outlet", {}}, PipeEnd{4, "inlet", {}}};
    RouteMemory memory;
    const auto routed = [&] {
        const Router router(drawing, &memory);
        (void)router.route(drawing.parts[4]);
        (void)router.route(drawing.parts[5]);
        return memory.answered();
    };
    CHECK(routed() == 2);
    CHECK(routed() == 0);
    drawing.parts[0].at.y += 3;
    CHECK(routed() == 1);
}

TEST_CASE("a pipe goes round a symbol that stands in its way, and straight again when it is gone", "[document]")
{
    Drawing drawing;
    drawing.parts = {symbol("circulator", {0, 0}), symbol("check_valve", {30, 0}), symbol("hand_valve", {15, 0})};
    for (std::size_t i = 0; i < drawing.parts.size(); ++i)
        drawing.parts[i].id = static_cast<PartId>(i) + 1;
    Part pipe = symbol("pipe_run", {});
    pipe.ends = {PipeEnd{1, "outlet", {}}, PipeEnd{2, "inlet", {}}};
    const auto touches = [&](const std::vector<Point>& points) {
        for (std::size_t i = 1; i < points.size(); ++i) {
            const Part& valve = drawing.parts[2];
            const double left = std::min(points[i - 1].x, points[i].x), right = std::max(points[i - 1].x, points[i].x);
            const double top = std::min(points[i - 1].y, points[i].y), bottom = std::max(points[i - 1].y, points[i].y);
            const auto& kind = kindOf(valve);
            if (right > valve.at.x - kind.width / 2 && left < valve.at.x + kind.width / 2
                && bottom > valve.at.y - kind.height / 2 && top < valve.at.y + kind.height / 2) {
                return true;
            }
        }
        return false;
    };
    const auto around = route(drawing, pipe);
    CHECK_FALSE(touches(around));
    CHECK(around.front() == Point{2, 0});
    CHECK(around.back() == Point{28, 0});
    for (std::size_t i = 1; i < around.size(); ++i)
        CHECK((around[i].x == around[i - 1].x || around[i].y == around[i - 1].y));

    // Two more close the way above and below: still nothing is run through.
    drawing.parts.push_back(symbol("hand_valve", {12, 4}));
    drawing.parts.push_back(symbol("hand_valve", {18, -4}));
    drawing.parts[3].id = 4;
    drawing.parts[4].id = 5;
    CHECK_FALSE(touches(route(drawing, pipe)));

    // Hand-made bends are kept even when a symbol stands on them.
    pipe.bends = {{8, 0}, {20, 0}};
    CHECK(touches(route(drawing, pipe)));
    pipe.bends.clear();
    drawing.parts.resize(2);
    CHECK(route(drawing, pipe).size() == 2);
}
