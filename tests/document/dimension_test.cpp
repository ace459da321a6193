// SPDX-License-Identifier: GPL-3.0-or-later
#include "document/dimension.h"
#include "document/file.h"
#include "support/catch.h"

using namespace tapward;
using namespace tapward::document;

namespace {

struct Two {
    Drawing drawing;
    PartId heater, tap, pipe;

    Two()
    {
        const auto put = [this](const char* kind, Point at) {
            apply(drawing, *placePart(drawing, kind, at, Stage::Existing));
            return drawing.parts.back().id;
        };
        heater = put("tankless_heater", {0, 0});
        tap = put("faucet", {30, -4});
        apply(drawing, *connect(drawing, {heater, "hot", {}}, {tap, "hot", {}}, Stage::Existing));
        pipe = drawing.parts.back().id;
        apply(drawing, Edit{{}, {SetField{pipe, "length_m", parts::Entry{7.5, parts::Basis::Measured}}}});
    }
    const Part& dimension(const std::vector<PartId>& selection)
    {
        auto edit = dimensionBetween(drawing, selection);
        REQUIRE(edit);
        apply(drawing, std::move(*edit));
        return drawing.parts.back();
    }
};

}  // namespace

TEST_CASE("a dimension along a pipe goes between its two parts and carries the pipe's length and basis", "[dimension]")
{
    Two two;
    REQUIRE(givesDimension(two.drawing, {two.pipe}));
    const Part& part = two.dimension({two.pipe});
    CHECK(part.kind == "dimension");
    CHECK(values(part).number("length_m") == 7.5);
    CHECK(values(part).basis("length_m") == parts::Basis::Measured);
    const auto line = dimensionLine(two.drawing, part);
    REQUIRE(line);
    CHECK(line->a.x == 0);
    CHECK(line->b.x == 30);
    CHECK(line->a.y == part.at.y);
    CHECK(line->b.y == part.at.y);
}

TEST_CASE("a dimension moves with its ends, and with neither end it stands on its own", "[dimension]")
{
    Two two;
    const PartId id = two.dimension({two.heater, two.tap}).id;
    apply(two.drawing, *moveParts(two.drawing, {two.tap}, 6, -10));
    auto line = dimensionLine(two.drawing, *two.drawing.find(id));
    REQUIRE(line);
    CHECK(line->b.x == 36);
    // Gone parts let go of it; undo brings both back.
    const Drawing before = two.drawing;
    auto back = apply(two.drawing, *removeParts(two.drawing, {two.heater, two.tap}, false));
    const Part& alone = *two.drawing.find(id);
    line = dimensionLine(two.drawing, alone);
    REQUIRE(line);
    CHECK(line->b.x - line->a.x == values(alone).number("width_modules"));
    apply(two.drawing, std::move(back));
    CHECK(two.drawing == before);
}

TEST_CASE("a dimension of parts above each other stands upright and is saved and read back", "[dimension]")
{
    Two two;
    apply(two.drawing, *moveParts(two.drawing, {two.tap}, -28, 40));
    const Part& part = two.dimension({two.heater, two.tap});
    CHECK(part.turn % 2 == 1);
    const auto line = dimensionLine(two.drawing, part);
    REQUIRE(line);
    CHECK(line->a.x == line->b.x);
    CHECK(line->a.y == 0);
    CHECK(line->b.y == 36);
    const auto again = read(write(two.drawing));
    REQUIRE(again);
    CHECK(*again == two.drawing);
}

TEST_CASE("a dimension is refused between anything but two parts, with what to select", "[dimension]")
{
    Two two;
    for (const std::vector<PartId>& wrong : {std::vector<PartId>{},
                                             {two.heater},
                                             {two.heater, two.pipe},
                                             {two.heater, two.heater},
                                             {two.heater, two.tap, two.pipe}}) {
        CHECK_FALSE(givesDimension(two.drawing, wrong));
        CHECK_FALSE(dimensionBetween(two.drawing, wrong));
    }
}
