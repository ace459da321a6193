// SPDX-License-Identifier: GPL-3.0-or-later
// What can be drawn can be saved and opened again: the reader's limits hold for edits and for writing.
#include <algorithm>
#include <ctime>
#include <filesystem>
#include <fstream>

#include <fmt/format.h>
#include <rapidcheck.h>

#include "document/check.h"
#include "document/edit.h"
#include "document/file.h"
#include "document/floor_plan.h"
#include "document/stock.h"
#include "document/written_size.h"
#include "support/catch.h"
#include "support/random_drawing.h"

using namespace tapward;
using namespace tapward::document;
using namespace std::string_literals;

namespace {

/// So many bytes with the header of a small PNG: nothing decodes it here.
std::string picture(std::size_t bytes)
{
    std::string png = "\x89PNG\r\n\x1a\n\0\0\0\x0dIHDR\0\0\x02\x58\0\0\x01\x2c\x08\x06\0\0\0"s;
    png.resize(bytes, '\x5a');
    return png;
}

/// Does what the edit door does.
std::optional<Problem> perform(Drawing& drawing, Edit edit)
{
    auto why = refusal(drawing, edit);
    if (!why) {
        apply(drawing, std::move(edit));
    }
    return why;
}

std::optional<Problem> perform(Drawing& drawing, Result<Edit> edit)
{
    return edit ? perform(drawing, std::move(*edit)) : std::optional(edit.error());
}

Drawing withPlans(int count, std::size_t pictureBytes)
{
    Drawing drawing;
    for (int i = 0; i < count; ++i) {
        REQUIRE_FALSE(perform(drawing, placePart(drawing, "floor_plan", {20.0 * i, 0}, Stage::Existing)));
        REQUIRE_FALSE(perform(drawing, setPlanPicture(drawing, i + 1, picture(pictureBytes), "plan")));
    }
    return drawing;
}

Drawing withKeys(int count)
{
    std::string text = R"({"format":"tapward","version":1,"parts":[{"id":1,"kind":"tee","tag":"T1","at":[0,0],)"
                       R"("odd":{"a/b~":[1,2.5,"x"]},"fields":{)";
    for (int i = 0; i < count; ++i) {
        text += fmt::format("{}\"f{}\":0", i ? "," : "", i);
    }
    text += "}}]";
    for (int i = 0; i < count; ++i) {
        text += fmt::format(",\"k{}\":{}", i, i);
    }
    text += ",\"deep\":{";
    for (int i = 0; i < count; ++i) {
        text += fmt::format("{}\"d{}\":0", i ? "," : "", i);
    }
    auto drawing = read(text + "}}");
    REQUIRE(drawing);
    return std::move(*drawing);
}

/// Lists in lists: a line each when indented, so that the file grows tenfold.
std::string nested(std::size_t about)
{
    std::string text = R"({"format":"tapward","version":1,"parts":[],"deep":[)";
    const std::string one = "[[[[[[[[[[[[0]]]]]]]]]]]]";
    while (text.size() < about) {
        text += one + ",";
    }
    return text + one + "]}";
}

/// Of the processor: what else runs on the machine does not count.
double seconds(auto&& work)
{
    const std::clock_t start = std::clock();
    work();
    return static_cast<double>(std::clock() - start) / CLOCKS_PER_SEC;
}

}  // namespace

TEST_CASE("a picture too many is refused when it is chosen, in words, and what is there can be saved", "[limits]")
{
    constexpr std::size_t kPicture = 1'500'000;
    Drawing drawing = withPlans(4, kPicture);
    REQUIRE_FALSE(perform(drawing, placePart(drawing, "floor_plan", {100, 0}, Stage::Existing)));
    const auto fifth = setPlanPicture(drawing, 5, picture(kPicture), "plan");
    REQUIRE_FALSE(fifth);
    CHECK(render(fifth.error().what, UnitSystem::Us).find("8388608") != std::string::npos);
    CHECK_FALSE(fifth.error().remedy.empty());
    CHECK(setPlanPicture(drawing, 5, picture(100'000), "plan"));  // a smaller one fits
    const auto again = read(write(drawing));
    REQUIRE(again);
    CHECK(*again == drawing);
}

TEST_CASE("neither copies nor one long text after the other get past the limit", "[limits]")
{
    Drawing drawing = withPlans(3, 1'500'000);
    REQUIRE_FALSE(perform(drawing, pasteParts(drawing, {drawing.parts[0]}, 5, 5)));
    CHECK(perform(drawing, pasteParts(drawing, {drawing.parts[0]}, 10, 10)));
    CHECK(perform(drawing, pasteParts(drawing, drawing.parts, 10, 10)));  // several steps

    // 200 cases may stand in a drawing, 2,000 actions in each: more than a file holds.
    Drawing busy;
    REQUIRE_FALSE(perform(busy, placePart(busy, "faucet", {0, 0}, Stage::Existing)));
    Case one;
    for (int i = 0; i < 2000; ++i) {
        one.actions.push_back({i * 1.0009765625, ActionKind::OpenOutlet, 1, 0.333333333333, 0.666666666666, {}, {}});
    }
    std::optional<Problem> why;
    for (int i = 0; i < 200 && !why; i += 10) {
        std::vector<Case> cases = busy.cases;
        for (int k = 0; k < 10; ++k) {
            one.name = "case " + std::to_string(i + k);
            cases.push_back(one);
        }
        why = perform(busy, Edit{"Add a case", {SetCases{std::move(cases)}}});
    }
    REQUIRE(why);
    CHECK(busy.cases.size() > 20);
    CHECK(read(write(busy)));

    // Every reason may be long, and there may be as many as parts.
    Drawing argued;
    why.reset();
    for (std::size_t count = 100; count <= 4000 && !why; count += 100) {
        why = perform(
            argued,
            Edit{"Set aside",
                 {SetDismissals{std::vector<Dismissal>(count, {"rule", kNoPart, std::string(8192, '"'), {}})}}});
    }
    REQUIRE(why);
    CHECK(read(write(argued)));
}

TEST_CASE("keys of a newer version that grow when indented are written on one line, and open again", "[limits]")
{
    const auto drawing = read(nested(700'000));
    REQUIRE(drawing);
    const std::string once = write(*drawing);
    CHECK(once.size() <= Limits{}.bytes);
    const auto again = read(once);
    REQUIRE(again);
    CHECK(*again == *drawing);
    CHECK(write(*again) == once);
    // Room is left for drawing on.
    Drawing drawn = *drawing;
    CHECK_FALSE(perform(drawn, placePart(drawn, "circulator", {0, 0}, Stage::Added)));
    CHECK(writeReadable(drawn));
}

TEST_CASE("a drawing that came too long to be saved may shrink, not grow, and its file stays", "[limits]")
{
    // As short as can be in the file it came from, and longer in any that is written.
    std::string text =
        R"({"format":"tapward","version":1,"parts":[{"id":1,"kind":"tee","tag":"T1","at":[0,0]}],"deep":[1)";
    while (text.size() < Limits{}.bytes - 100) {
        text += ",9e9";
    }
    auto drawing = read(text + "]}");
    REQUIRE(drawing);
    namespace fs = std::filesystem;
    const fs::path path = fs::temp_directory_path() / "tapward_limits_test.tapward";
    std::ofstream(path) << "what was there";
    const auto saved = save(*drawing, path.string());
    REQUIRE_FALSE(saved);
    CHECK_FALSE(saved.error().remedy.empty());
    std::ifstream in(path);
    CHECK(std::string(std::istreambuf_iterator<char>(in), {}) == "what was there");
    in.close();
    fs::remove(path);

    CHECK_FALSE(placePart(*drawing, "circulator", {0, 0}, Stage::Added));
    CHECK(removeParts(*drawing, {1}, false));
}

TEST_CASE("the last part number leaves a drawing that can be opened", "[limits]")
{
    for (const char* rest : {"", R"(, "next_id": 1000000000)"}) {
        auto drawing = read(fmt::format(
            R"({{"format": "tapward", "version": 1, "parts": [{{"id": {}, "kind": "tee", "tag": "T1", "at": [0, 0]}}]{}}})",
            *rest ? kMostId - 1 : kMostId, rest));
        REQUIRE(drawing);
        int placed = 0;
        while (!perform(*drawing, placePart(*drawing, "tee", {9.0 * placed, 9}, Stage::Added))) {
            REQUIRE(++placed < 3);
            CHECK(read(write(*drawing)));
        }
        CHECK(placed == (*rest ? 1 : 0));
        const auto again = read(write(*drawing));
        REQUIRE(again);
        CHECK(*again == *drawing);
    }
}

TEST_CASE("the quick estimate is never short of the file and seldom twice as long", "[limits][property]")
{
    CHECK(rc::check("estimate", [](std::uint64_t seed) {
        Drawing drawing = test::randomDrawing(seed);
        drawing.job.notes = std::string(seed % 50, '\x01') + "\"\\\x7f\n\xc3\xa9";
        drawing.unknown.emplace("/a~1b\"", R"([1, {"x": "y"}])");
        const std::size_t most = mostBytes(drawing), tight = tightBytes(drawing);
        RC_ASSERT(most >= tight);
        RC_ASSERT(most <= 3 * tight + 1500);
    }));
}

TEST_CASE("the estimate after a step is that of the drawing it makes", "[limits]")
{
    Drawing drawing = test::randomDrawing(11);
    const Drawing other = test::randomDrawing(12);
    drawing.parts.front().entries["name"] = {std::string("Name"), parts::Basis::Measured};
    Part added = drawing.parts.front();
    added.id = drawing.nextId;
    added.tag = "New";
    Part changed = drawing.parts.back();
    changed.tag = "A longer tag";
    Job job = drawing.job;
    job.notes = "Some notes";
    const PartId first = drawing.parts.front().id;
    for (const Step& step :
         std::vector<Step>{AddPart{added}, RemovePart{first}, ChangePart{changed},
                           SetField{first, "name", parts::Entry{std::string("Longer"), parts::Basis::Measured}},
                           SetField{first, "name", std::nullopt}, SetJob{job}, SetCases{other.cases},
                           SetDismissals{{{"rule", kNoPart, "reason", {}}}}}) {
        CAPTURE(step.index());
        Drawing after = drawing;
        const std::size_t told = mostBytes(drawing, step);
        apply(after, Edit{"x", {step}});
        CHECK(told == mostBytes(after));
    }
}

TEST_CASE("an edit of a drawing near the limit is judged without writing its pictures", "[limits]")
{
    Drawing drawing = withPlans(4, 1'500'000);
    const Edit move = *moveParts(drawing, {1}, 3, 3);
    const double judged = seconds([&] {
        for (int i = 0; i < 20; ++i) {
            CHECK_FALSE(refusal(drawing, move));
        }
    });
    const double written = seconds([&] {
        for (int i = 0; i < 20; ++i) {
            CHECK_FALSE(write(drawing).empty());
        }
    });
    CAPTURE(judged, written);
    CHECK(judged < 0.5 * written);
}

TEST_CASE("writing takes time in proportion to the keys that are kept", "[limits]")
{
    const Drawing few = withKeys(2'000), many = withKeys(40'000);
    const auto time = [](const Drawing& drawing) {
        double best = 1e9;
        for (int i = 0; i < 3; ++i) {
            best = std::min(best, seconds([&drawing] { (void)write(drawing); }));
        }
        return best;
    };
    const double small = time(few), large = time(many);
    CAPTURE(small, large);
    CHECK(large < 20 * small * 4);  // 400 times where every key looked at every other
    const auto again = read(write(many));
    REQUIRE(again);
    CHECK(*again == many);
}

TEST_CASE("a stock list is not saved where it could not be opened again", "[limits][stock]")
{
    // A picture is no text of a list.
    Drawing drawing = withPlans(1, 100'000);
    StockList list;
    CHECK(putStock(list, stockItem(drawing.parts[0], "Plan")));
    // Kinds of a newer version count among the items, as they do for the reader.
    for (std::size_t i = 0; i <= StockLimits{}.items; ++i) {
        list.foreign.push_back(fmt::format(R"({{"name": "N{}", "kind": "new_kind"}})", i));
    }
    const auto text = writeReadableStock(list);
    REQUIRE_FALSE(text);
    CHECK_FALSE(text.error().remedy.empty());
    list.foreign.pop_back();
    CHECK(writeReadableStock(list));
}
