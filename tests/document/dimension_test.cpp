// SPDX-License-Identifier: GPL-3.0-or-later
#include "document/dimension.h"
#include "document/file.h"
#include "document/route.h"
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

TEST_CASE("the words of a dimension stand clear of symbols, pipes and other dimensions", "[dimension]")
{
    auto drawing = load(std::string(TAPWARD_SOURCE_DIR) + "/samples/long_hall_coach.tapward");
    REQUIRE(drawing);
    std::vector<PartId> made;
    const auto id = [&](const char* tag) { return drawing->findTag(tag)->id; };
    for (const auto& [from, to] : {std::pair{"WH1", "F3"},
                                   {"V2", "F1"},
                                   {"F1", "F2"},
                                   {"A1", "OS1"},
                                   {"CW1", "WH1"},
                                   {"DP1", "WH1"},
                                   {"DV1", "DV2"},
                                   {"P1", "CV1"},
                                   {"F3", "P2"}}) {
        auto edit = dimensionBetween(*drawing, {id(from), id(to)});
        REQUIRE(edit);
        apply(*drawing, std::move(*edit));
        made.push_back(drawing->parts.back().id);
    }
    struct Room {
        double left, top, right, bottom;
        bool meets(const Room& o) const { return left < o.right && o.left < right && top < o.bottom && o.top < bottom; }
    };
    const auto span = [](const Point& a, const Point& b) {
        return Room{std::min(a.x, b.x) - 0.1, std::min(a.y, b.y) - 0.1, std::max(a.x, b.x) + 0.1,
                    std::max(a.y, b.y) + 0.1};
    };
    for (const PartId one : made) {
        const Part& part = *drawing->find(one);
        const auto line = dimensionLine(*drawing, part);
        REQUIRE(line);
        const Room words{part.at.x - 4, part.at.y - 1, part.at.x + 4, part.at.y + 1};
        CAPTURE(values(part).text("from"), values(part).text("to"), part.at.x, part.at.y);
        for (const Part& other : drawing->parts) {
            CAPTURE(other.tag);
            if (other.kind == "dimension") {
                const auto theirs = dimensionLine(*drawing, other);
                if (other.id == one)
                    continue;
                CHECK_FALSE(words.meets(span(theirs->a, theirs->b)));
                for (const auto& [begin, end] : theirs->reach)
                    CHECK_FALSE(words.meets(span(begin, end)));
            } else if (kindOf(other).isPipe) {
                const auto way = route(*drawing, other);
                for (std::size_t i = 0; i + 1 < way.size(); ++i)
                    CHECK_FALSE(words.meets(span(way[i], way[i + 1])));
            } else {
                const double half = kindOf(other).width / 2;
                CHECK_FALSE(words.meets({other.at.x - half, other.at.y - half, other.at.x + half, other.at.y + half}));
            }
        }
    }
}
