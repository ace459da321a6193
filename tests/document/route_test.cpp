// SPDX-License-Identifier: GPL-3.0-or-later
// Ways of pipes worked out by hand. A pipe leaves a port one module straight; a corner is worth three modules of
// detour; symbols not its own are kept half a module clear of, by a way one module from their edge.
#include "document/route.h"

#include "support/catch.h"

using namespace tapward;
using namespace tapward::document;

namespace {

using Points = std::vector<Point>;

/// Two hand valves (4 by 4, ports at (-2, 0) and (2, 0)) and a pipe from the outlet of the first to the second's inlet.
struct Joined {
    Drawing drawing;
    Joined(Point from, Point to, int turnFrom = 0, int turnTo = 0)
    {
        add("hand_valve", from).turn = turnFrom;
        add("hand_valve", to).turn = turnTo;
        add("pipe_run", {}).ends = {PipeEnd{1, "outlet", {}}, PipeEnd{2, "inlet", {}}};
    }
    Part& add(const char* kind, Point at)
    {
        Part part;
        part.id = drawing.nextId++;
        part.kind = kind;
        part.at = at;
        drawing.parts.push_back(part);
        return drawing.parts.back();
    }
    Points way() const { return route(drawing, drawing.parts[2]); }
    Points reversed()
    {
        std::swap(drawing.parts[2].ends[0], drawing.parts[2].ends[1]);
        return way();
    }
    Points through(const Points& bends)
    {
        drawing.parts[2].bends = bends;
        return way();
    }
};

Points loose(Point from, Point to)
{
    Drawing drawing;
    Part pipe;
    pipe.id = 1;
    pipe.kind = "pipe_run";
    pipe.ends = {PipeEnd{kNoPart, {}, from}, PipeEnd{kNoPart, {}, to}};
    drawing.parts = {pipe};
    return route(drawing, pipe);
}

}  // namespace

TEST_CASE("a way between two ports has the fewest corners that leave both straight", "[document][route]")
{
    // Facing each other off line: two corners, as near to the second port as its first module allows.
    CHECK(Joined({0, 0}, {20, 6}).way() == Points{{2, 0}, {17, 0}, {17, 6}, {18, 6}});
    CHECK(Joined({0, 0}, {20, -6}).way() == Points{{2, 0}, {17, 0}, {17, -6}, {18, -6}});
    // Nearer to each other than two first modules, in line: straight across.
    CHECK(Joined({0, 0}, {5.5, 0}).way() == Points{{2, 0}, {3.5, 0}});
    // The second turned a quarter: its inlet is on top at (20, 8), one corner.
    CHECK(Joined({0, 0}, {20, 10}, 0, 1).way() == Points{{2, 0}, {20, 0}, {20, 8}});
    // Turned three quarters: its inlet is below at (20, 12): two more corners and one module beyond it.
    CHECK(Joined({0, 0}, {20, 10}, 0, 3).way() == Points{{2, 0}, {3, 0}, {3, 13}, {20, 13}, {20, 12}});
}

TEST_CASE("ports that turn their backs are joined round both symbols, one module from them", "[document][route]")
{
    CHECK(Joined({0, 0}, {-20, 0}).way() == Points{{2, 0}, {3, 0}, {3, -3}, {-23, -3}, {-23, 0}, {-22, 0}});
    // Far enough apart in height the way goes between them, in the middle.
    CHECK(Joined({0, 0}, {-20, 20}).way() == Points{{2, 0}, {3, 0}, {3, 10}, {-23, 10}, {-23, 20}, {-22, 20}});
    // A valve's own outlet to its own inlet.
    Joined ring({0, 0}, {40, 0});
    ring.drawing.parts[2].ends = {PipeEnd{1, "outlet", {}}, PipeEnd{1, "inlet", {}}};
    CHECK(ring.way() == Points{{2, 0}, {3, 0}, {3, -3}, {-3, -3}, {-3, 0}, {-2, 0}});
}

TEST_CASE("a symbol in the way is gone round one module from its edge, one beside the way is left alone",
          "[document][route]")
{
    Joined blocked({0, 0}, {30, 0});
    blocked.add("check_valve", {15, 0});
    CHECK(blocked.way() == Points{{2, 0}, {3, 0}, {3, -3}, {27, -3}, {27, 0}, {28, 0}});
    CHECK(blocked.reversed() == Points{{28, 0}, {27, 0}, {27, -3}, {3, -3}, {3, 0}, {2, 0}});
    // Its edge at y = 0.5 is half a module clear of the pipe, at 0.4 it is not.
    Joined clear({0, 0}, {30, 0});
    clear.add("check_valve", {15, 2.5});
    CHECK(clear.way().size() == 2);
    clear.drawing.parts[3].at.y = 2.4;
    CHECK(clear.way().size() == 6);
    clear.drawing.parts[3].at.y = -2.5;
    CHECK(clear.way().size() == 2);
    clear.drawing.parts[3].at.y = -2.4;
    CHECK(clear.way().size() == 6);
    // Two symbols close together are rounded as one; three modules between them let nothing by.
    Joined wall({0, 0}, {30, 0});
    wall.add("check_valve", {15, 0});
    wall.add("check_valve", {15, -4});
    CHECK(wall.way() == Points{{2, 0}, {3, 0}, {3, 3}, {27, 3}, {27, 0}, {28, 0}});
}

TEST_CASE("bends are kept, and a pipe steps to the next one in the direction it was not going", "[document][route]")
{
    Joined bent({0, 0}, {30, 8});
    CHECK(bent.through({{10, 0}, {10, 8}}) == Points{{2, 0}, {10, 0}, {10, 8}, {28, 8}});
    // A step that is not straight: level before, so upright first.
    CHECK(bent.through({{10, 0}, {14, 8}}) == Points{{2, 0}, {10, 0}, {10, 8}, {14, 8}, {28, 8}});
    // Upright before, so level first.
    CHECK(bent.through({{10, 0}, {10, 4}, {20, 8}}) == Points{{2, 0}, {10, 0}, {10, 4}, {20, 4}, {20, 8}, {28, 8}});
    // A bend beside the port is gone to as any pipe goes.
    CHECK(bent.through({{10, 3}}) == Points{{2, 0}, {10, 0}, {10, 3}, {10, 8}, {28, 8}});
    // One nearer than the first module is not straight ahead; the way to it leaves the port a module first.
    CHECK(bent.through({{3, 0}, {3, 8}}) == Points{{2, 0}, {3, 0}, {3, 8}, {28, 8}});
    // Straight ahead of the port a bend is gone to straight, whatever stands between; and so into the second port.
    bent.add("check_valve", {12, 0});
    CHECK(bent.through({{20, 0}, {20, 8}}) == Points{{2, 0}, {20, 0}, {20, 8}, {28, 8}});
    bent.drawing.parts[3].at = {23, 8};
    CHECK(bent.through({{10, 0}, {10, 8}}) == Points{{2, 0}, {10, 0}, {10, 8}, {28, 8}});
    bent.drawing.parts.pop_back();
    // A bend in the middle of a straight stretch stays a corner; a repeated one goes.
    CHECK(bent.through({{10, 0}, {12, 0}, {12, 0}, {12, 8}}) == Points{{2, 0}, {10, 0}, {12, 0}, {12, 8}, {28, 8}});
}

TEST_CASE("loose pipes go level first, straight when they can, and never have less than two points",
          "[document][route]")
{
    CHECK(loose({0, 0}, {10, 5}) == Points{{0, 0}, {10, 0}, {10, 5}});
    CHECK(loose({0, 0}, {10, 0}) == Points{{0, 0}, {10, 0}});
    CHECK(loose({0, 0}, {0, -7}) == Points{{0, 0}, {0, -7}});
    CHECK(loose({3, 3}, {3, 3}) == Points{{3, 3}, {3, 3}});
}
