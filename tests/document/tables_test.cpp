// SPDX-License-Identifier: GPL-3.0-or-later
// Survey, stock list, clipboard and floor plan at the ends of their ranges, each cell and bound by itself.

#include <algorithm>

#include "document/base64.h"
#include "document/cell_block.h"
#include "document/curve_cells.h"
#include "document/floor_plan.h"
#include "document/stock.h"
#include "document/survey.h"
#include "document/survey_words.h"
#include "support/catch.h"

using namespace tapward;
using namespace tapward::document;
using namespace std::string_literals;

namespace {

/// City inlet CW1 (1), faucet F1 (2), pipe L1 (3) between them, valve V1 (4), note (5).
Drawing smallDrawing()
{
    Drawing drawing;
    apply(drawing, *placePart(drawing, "city_inlet", {0, 0}, Stage::Existing));
    apply(drawing, *placePart(drawing, "faucet", {20, 0}, Stage::Existing));
    apply(drawing, *connect(drawing, {1, "outlet", {}}, {2, "cold", {}}, Stage::Existing));
    apply(drawing, *placePart(drawing, "hand_valve", {40, 0}, Stage::Existing));
    apply(drawing, *placePart(drawing, "note", {60, 0}, Stage::Existing));
    return drawing;
}

std::size_t columnOf(SurveySheet sheet, std::string_view title)
{
    const auto& all = surveyColumns(sheet);
    const auto at = std::find_if(all.begin(), all.end(), [&](const SurveyColumn& one) { return one.title == title; });
    REQUIRE(at != all.end());
    return static_cast<std::size_t>(at - all.begin());
}

std::string cell(const Drawing& drawing, PartId id, SurveySheet sheet, std::string_view title,
                 UnitSystem units = UnitSystem::Metric)
{
    return surveyText(drawing, *drawing.find(id), surveyColumns(sheet)[columnOf(sheet, title)], units);
}

SurveyChange typed(const Drawing& drawing, SurveySheet sheet,
                   const std::vector<std::tuple<PartId, std::string_view, std::string>>& cells,
                   std::optional<parts::Basis> basis = {})
{
    std::vector<SurveyCell> all;
    for (const auto& [id, title, text] : cells) {
        all.push_back({id, columnOf(sheet, title), text});
    }
    return surveyChange(drawing, sheet, all, UnitSystem::Metric, basis);
}

const SurveySheet kRuns = SurveySheet::Runs, kHeights = SurveySheet::Heights;

std::string titleOf(const SurveyChange& change)
{
    return change.edit ? render(change.edit->title, UnitSystem::Metric) : "none";
}

}  // namespace

TEST_CASE("each cell of the survey shows its own value", "[survey]")
{
    Drawing drawing = smallDrawing();
    Part& pipe = *drawing.find(3);
    pipe.entries["name"] = {std::string("hall"), parts::Basis::Measured};
    pipe.entries["tube"] = {std::string("pex_3_4"), parts::Basis::Measured};
    pipe.entries["length_m"] = {2.5, parts::Basis::DataSheet};
    pipe.entries["elbows"] = {3.0, parts::Basis::Measured};
    pipe.entries["couplings"] = {4.0, parts::Basis::Measured};
    pipe.entries["insulation_m"] = {0.009, parts::Basis::Measured};
    pipe.entries["bay_C"] = {11.0, parts::Basis::Measured};
    CHECK(cell(drawing, 3, kRuns, "Tag") == "L1");
    CHECK(cell(drawing, 3, kRuns, "Name") == "hall");
    CHECK(cell(drawing, 3, kRuns, "From") == "CW1 Outlet");
    CHECK(cell(drawing, 3, kRuns, "To") == "F1 Cold");
    CHECK(cell(drawing, 3, kRuns, "Tube") == "PEX 3/4 in");
    CHECK(cell(drawing, 3, kRuns, "Real length") == "2.5");
    CHECK(cell(drawing, 3, kRuns, "Basis of length") == "Data sheet");
    CHECK(cell(drawing, 3, kRuns, "Elbows") == "3");
    CHECK(cell(drawing, 3, kRuns, "Couplings") == "4");
    CHECK(cell(drawing, 3, kRuns, "Insulation") == "9");  // mm
    CHECK(cell(drawing, 3, kRuns, "Bay air") == "11");
    pipe.ends[1] = {};
    CHECK(cell(drawing, 3, kRuns, "To") == "–");
    Part& tap = *drawing.find(2);
    tap.height_m = 0.75;
    tap.entries["rated_flow_m3s"] = {1e-4, parts::Basis::Measured};
    tap.entries["rated_pressure_Pa"] = {300e3, parts::Basis::DataSheet};
    CHECK(cell(drawing, 2, kHeights, "Part") == "Faucet");
    CHECK(cell(drawing, 2, kHeights, "Height above floor") == "0.75");
    CHECK(cell(drawing, 2, kHeights, "Flow, fully open") == "6");  // L/min
    CHECK(cell(drawing, 2, kHeights, "... at pressure") == "300");  // kPa
    CHECK(cell(drawing, 2, kHeights, "Basis of flow") == "Measured");
    CHECK(cell(drawing, 4, kHeights, "Basis of flow").empty());
    CHECK(cell(drawing, 4, kHeights, "Flow, fully open").empty());

    const auto number = [&](PartId id, SurveySheet sheet, std::string_view title) {
        return surveyNumber(*drawing.find(id), surveyColumns(sheet)[columnOf(sheet, title)]);
    };
    CHECK(number(3, kRuns, "Real length") == 2.5);
    CHECK(number(3, kRuns, "Elbows") == 3);
    CHECK_FALSE(number(3, kRuns, "Tube"));
    CHECK_FALSE(number(3, kRuns, "Basis of length"));
    CHECK_FALSE(number(3, kRuns, "Tag"));
    CHECK(number(2, kHeights, "Height above floor") == 0.75);
    CHECK_FALSE(number(4, kHeights, "Flow, fully open"));
    const auto choices = [&](PartId id, SurveySheet sheet, std::string_view title) {
        return surveyChoices(*drawing.find(id), surveyColumns(sheet)[columnOf(sheet, title)]);
    };
    CHECK(choices(3, kRuns, "Basis of length") == std::vector<std::string>{"Measured", "Data sheet", "Estimated"});
    CHECK(choices(4, kHeights, "Basis of flow").empty());
    CHECK(choices(3, kRuns, "Real length").empty());
    CHECK(choices(3, kRuns, "Tube").size() > 3);
    CHECK(surveyRows(drawing, kRuns) == std::vector<PartId>{3});
    CHECK(surveyRows(drawing, kHeights) == std::vector<PartId>{1, 2, 4});  // a note has no ports
    for (const SurveyColumn& one : surveyColumns(kHeights)) {
        CHECK(one.readOnly() == (one.title == "Part"));
    }
    for (const SurveyColumn& one : surveyColumns(kRuns)) {
        CHECK(one.readOnly() == (one.title == "From" || one.title == "To"));
    }
}

TEST_CASE("a height inside a coach lies between five metres below its floor and ten above", "[survey]")
{
    CHECK_FALSE(heightRefusal(-5));
    CHECK_FALSE(heightRefusal(10));
    CHECK(heightRefusal(-5.001));
    CHECK(heightRefusal(10.001));
    Drawing drawing = smallDrawing();
    const auto set = typed(drawing, kHeights, {{4, "Height above floor", "1.5"}});
    REQUIRE(set.edit);
    CHECK(titleOf(set) == "Set Height above floor of V1");
    apply(drawing, *set.edit);
    CHECK(drawing.find(4)->height_m == 1.5);
    const auto back = typed(drawing, kHeights, {{4, "Height above floor", ""}});
    REQUIRE(back.edit);
    apply(drawing, *back.edit);
    CHECK(drawing.find(4)->height_m == 0);
    CHECK(typed(drawing, kHeights, {{4, "Height above floor", "high"}}).refused.size() == 1);
}

TEST_CASE("the basis of a typed value is the one asked for, else the one it had, else estimated", "[survey]")
{
    using parts::Basis;
    Drawing drawing = smallDrawing();
    const auto after = [&](const std::string& text, std::optional<Basis> asked) {
        Drawing changed = drawing;
        const auto change = typed(changed, kRuns, {{3, "Real length", text}}, asked);
        if (!change.edit) {
            return std::string("unchanged");
        }
        apply(changed, *change.edit);
        return std::string(basisTitle(values(*changed.find(3)).basis("length_m")));
    };
    CHECK(after("4", {}) == "Estimated");
    CHECK(after("4", Basis::DataSheet) == "Data sheet");
    // Typed over with itself: nothing, unless a basis is asked for.
    CHECK(after("1", {}) == "unchanged");
    CHECK(after("1", Basis::Measured) == "Measured");
    drawing.find(3)->entries["length_m"] = {2.0, Basis::Measured};
    CHECK(after("4", {}) == "Measured");
    // A name has no basis to give.
    CHECK_FALSE(typed(drawing, kRuns, {{3, "Name", ""}}, Basis::Measured).edit);
    // A basis typed in the same block wins, wherever it stands.
    Drawing both = drawing;
    const auto change =
        typed(both, kRuns, {{3, "Basis of length", "estimated"}, {3, "Real length", "7"}}, Basis::DataSheet);
    REQUIRE(change.edit);
    CHECK(change.cells == 2);
    CHECK(titleOf(change) == "Set 2 survey cells");
    apply(both, *change.edit);
    CHECK(values(*both.find(3)).number("length_m") == 7);
    CHECK(values(*both.find(3)).basis("length_m") == Basis::Estimated);
    // A basis alone is given to the value that holds, a default too.
    Drawing fresh = smallDrawing();
    const auto alone = typed(fresh, kRuns, {{3, "Basis of length", "M"}});
    REQUIRE(alone.edit);
    apply(fresh, *alone.edit);
    CHECK(fresh.find(3)->entries.at("length_m") == parts::Entry{1.0, Basis::Measured});
    CHECK_FALSE(typed(fresh, kRuns, {{3, "Basis of length", ""}}).edit);
}

TEST_CASE("cells that cannot be typed into are refused, each with its own reason", "[survey]")
{
    const Drawing drawing = smallDrawing();
    const auto why = [&](SurveySheet sheet, PartId id, std::string_view title, const char* text) {
        const auto change = typed(drawing, sheet, {{id, title, text}});
        return change.refused.empty() ? std::string("taken") : change.refused[0].why.what.text;
    };
    CHECK(why(kRuns, 3, "From", "elsewhere") == "{0} is decided by the drawing.");
    CHECK(why(kRuns, 3, "From", "CW1 Outlet") == "taken");
    CHECK(why(kHeights, 4, "Flow, fully open", "3") == "A part of the kind {0} has no such value.");
    CHECK(why(kHeights, 4, "Flow, fully open", "") == "taken");
    CHECK(why(kHeights, 3, "Height above floor", "1") == "This row is not in the drawing any more.");  // a pipe
    CHECK(why(kRuns, 99, "Elbows", "1") == "This row is not in the drawing any more.");
    CHECK(surveyChange(drawing, kRuns, {{3, surveyColumns(kRuns).size(), "x"}}, UnitSystem::Us).refused.size() == 1);
    CHECK(why(kRuns, 3, "Basis of length", "guess") == "\"{0}\" is no basis.");
    CHECK(typed(drawing, kRuns, {{3, "Elbows", "400"}}).refused.at(0).why.where == "L1");
}

TEST_CASE("a tag and values of one part are set together; tags go where they become free", "[survey]")
{
    Drawing drawing = smallDrawing();
    const auto change = typed(drawing, kHeights, {{4, "Tag", "V9"}, {4, "Height above floor", "0.5"}});
    REQUIRE(change.edit);
    CHECK(change.cells == 2);
    apply(drawing, *change.edit);
    CHECK(drawing.find(4)->tag == "V9");
    CHECK(drawing.find(4)->height_m == 0.5);
    const auto one = typed(drawing, kHeights, {{4, "Tag", "V1"}});
    CHECK(titleOf(one) == "Set Tag of V9");
    CHECK_FALSE(typed(drawing, kHeights, {{4, "Tag", "V9"}}).edit);
    CHECK(typed(drawing, kHeights, {{4, "Tag", "F1"}}).refused.size() == 1);
    // F1 leaves its tag to V9, whichever is typed first.
    for (const bool first : {true, false}) {
        Drawing moved = drawing;
        std::vector<std::tuple<PartId, std::string_view, std::string>> cells{{4, "Tag", "F1"}, {2, "Tag", "F7"}};
        if (first) {
            std::swap(cells[0], cells[1]);
        }
        const auto both = typed(moved, kHeights, cells);
        REQUIRE(both.edit);
        apply(moved, *both.edit);
        CHECK(moved.find(4)->tag == "F1");
        CHECK(moved.find(2)->tag == "F7");
    }
}

TEST_CASE("loose runs hang four modules below everything, ten long and two apart", "[survey]")
{
    Drawing drawing;
    apply(drawing, *placePart(drawing, "hand_valve", {10, 20}, Stage::Existing));  // from 8 to 12, down to 22
    const auto edit = looseRuns(drawing, 2, Stage::Added);
    REQUIRE(edit);
    apply(drawing, *edit);
    REQUIRE(drawing.parts.size() == 3);
    CHECK(drawing.parts[1].ends[0].loose == Point{8, 26});
    CHECK(drawing.parts[1].ends[1].loose == Point{18, 26});
    CHECK(drawing.parts[2].ends[0].loose == Point{8, 28});
    CHECK(drawing.parts[2].stage == Stage::Added);
    CHECK_FALSE(looseRuns(drawing, 0, Stage::Added));
}

TEST_CASE("words of a survey are read by their beginnings, sizes whole", "[survey]")
{
    using parts::Basis;
    CHECK(readBasis("m").value() == Basis::Measured);
    CHECK(readBasis("D").value() == Basis::DataSheet);
    CHECK(readBasis("data_sheet").value() == Basis::DataSheet);
    CHECK(readBasis("sheet").value() == Basis::DataSheet);
    CHECK(readBasis("est").value() == Basis::Estimated);
    CHECK_FALSE(readBasis("measuredly"));
    CHECK_FALSE(readBasis(""));
    CHECK_FALSE(readBasis("data est"));
    parts::Field field;
    field.label = "Tube";
    field.type = parts::FieldType::Choice;
    field.choices = {{"pex_1_2", "PEX 1/2 in"},       {"pex_3_4", "PEX 3/4 in"},   {"copper_1_2", "Copper 1/2 in"},
                     {"copper_3_4", "Copper 3/4 in"}, {"cpvc_3_4", "CPVC 3/4 in"}, {"cpvc_1", "CPVC 1 in"}};
    const auto read = [&](const char* text, const char* now = "pex_1_2") {
        const auto choice = readChoice(field, text, now);
        return choice ? *choice : render(choice.error().remedy, UnitSystem::Us);
    };
    CHECK(read("cpvc_1") == "cpvc_1");
    CHECK(read("Copper 3/4 in") == "copper_3_4");
    CHECK(read("copper (3/4\")") == "copper_3_4");
    CHECK(read("COP, 1/2") == "copper_1_2");
    CHECK(read("3/4") == "pex_3_4");                // of the material it is
    CHECK(read("3/4", "copper_1_2") == "copper_3_4");
    CHECK(read("1") == "cpvc_1");                   // one fits
    CHECK(read("pex") == "pex_1_2");  // as it is
    CHECK(read("pex", "copper_1_2") == "Write more of it: PEX 1/2 in, PEX 3/4 in.");
    CHECK(read("3/4", "none") == "Write more of it: PEX 3/4 in, Copper 3/4 in, CPVC 3/4 in.");
    CHECK(read("3") == "Choose one of: PEX 1/2 in, PEX 3/4 in, Copper 1/2 in, Copper 3/4 in, CPVC 3/4 in, CPVC 1 in.");
    CHECK(read("c") == "Write more of it: Copper 1/2 in, Copper 3/4 in, CPVC 3/4 in, CPVC 1 in.");
    field.choices.push_back({"lead_1", "Lead 1 in"});
    CHECK(read("x")
          == "Choose one of: PEX 1/2 in, PEX 3/4 in, Copper 1/2 in, Copper 3/4 in, CPVC 3/4 in, CPVC 1 in, ....");
}

TEST_CASE("a stock item is bounded at its ends", "[stock]")
{
    StockItem item;
    item.kind = "circulator";
    item.name = std::string(200, 'x');
    CHECK_FALSE(stockFlaw(item));
    item.name += 'x';
    CHECK(stockFlaw(item)->where == "/name");
    for (const char* bad : {"", "a\x1f", "\xff"}) {
        item.name = bad;
        CHECK(stockFlaw(item)->where == "/name");
    }
    item.name = "a b";
    item.rating = std::string(2000, 'x');
    item.note = std::string(2000, 'x');
    CHECK_FALSE(stockFlaw(item));
    item.rating += 'x';
    CHECK(stockFlaw(item)->where == "/rating");
    item.rating = "\xff";
    CHECK(stockFlaw(item)->where == "/rating");
    item.rating.clear();
    item.note += 'x';
    CHECK(stockFlaw(item)->where == "/note");
    item.note.clear();
    for (const char* ofPlace : {"name", "bay_C", "controller", "no_such"}) {
        item.fields = {{ofPlace, 1.0}};
        CHECK(stockFlaw(item));
    }
    item.fields = {{"price", 3.0}};
    CHECK_FALSE(stockFlaw(item));
    item.kind = "warp_core";
    CHECK(stockFlaw(item)->where == "/kind");

    StockList list;
    StockItem small;
    small.kind = "circulator";
    for (int i = 0; i < 5000; ++i) {
        small.name = std::to_string(i);
        list.items.push_back(small);
    }
    small.name = "one more";
    CHECK(putStock(list, small));
    CHECK(list.items.size() == 5000);
    small.name = "7";  // takes the place of the one that is there
    small.note = "new";
    CHECK_FALSE(putStock(list, small));
    CHECK(list.items.size() == 5000);
    CHECK(list.find("circulator", "7")->note == "new");
    CHECK(list.find("check_valve", "7") == nullptr);
    CHECK(removeStock(list, "circulator", "7"));
    CHECK_FALSE(removeStock(list, "circulator", "7"));
    CHECK_FALSE(removeStock(list, "check_valve", "8"));
    CHECK(list.items.size() == 4999);
    CHECK_FALSE(putStock(list, small));
    // Kinds this version does not know are merged once.
    StockList mine, theirs;
    mine.foreign = {"a"};
    theirs.foreign = {"a", "b"};
    CHECK(mergeStock(mine, theirs) == 0);
    CHECK(mine.foreign == std::vector<std::string>{"a", "b"});
}

TEST_CASE("a stock file is read member by member, and written so", "[stock]")
{
    const auto list = readStock(R"({"format": "tapward-stock", "version": 1, "items": [
        {"name": "A", "kind": "circulator", "rating": "b", "note": "c", "fields": {"price": 5, "current_A": 1.5}},
        {"name": "Z", "kind": "check_valve"}]})");
    REQUIRE(list);
    REQUIRE(list->items.size() == 2);
    CHECK(list->items[0].name == "Z");
    const StockItem& pump = list->items[1];
    CHECK(pump.name == "A");
    CHECK(pump.kind == "circulator");
    CHECK(pump.rating == "b");
    CHECK(pump.note == "c");
    CHECK(pump.fields.size() == 2);
    CHECK(std::get<double>(pump.fields.at("price")) == 5);
    const std::string text = writeStock(*list);
    CHECK(text.find(R"({"name": "Z", "kind": "check_valve", "fields": {}})") != std::string::npos);
    CHECK(text.find(R"("rating": "b")") != std::string::npos);
    CHECK(text.find(R"("note": "c")") != std::string::npos);
    CHECK(text.find("\"version\": 1") != std::string::npos);
    const std::string head = R"({"format": "tapward-stock", "version": 1, "items": [)";
    CHECK(readStock(head + R"({"name": "A", "kind": "circulator", "fields": 3}]})").error().where == "/items/0/fields");
    CHECK(readStock(head + R"({"name": "A", "kind": "circulator", "fields": {"price": {}}}]})").error().where
          == "/items/0/fields/price");
    StockLimits few;
    few.items = 1;
    CHECK(readStock(head + R"({"name": "A", "kind": "circulator"}]})", few));
    CHECK_FALSE(readStock(head + R"({"name": "A", "kind": "circulator"}, {"name": "B", "kind": "circulator"}]})", few));
    CHECK_FALSE(readStock(R"({"format": "tapward-stock", "version": 0, "items": []})"));
    CHECK_FALSE(readStock(R"({"format": "tapward-stock", "items": []})"));
}

TEST_CASE("choosing from stock needs parts of its kind, and writes only what differs", "[stock]")
{
    Drawing drawing = smallDrawing();
    StockItem valve;
    valve.kind = "hand_valve";
    valve.name = "Ball";
    valve.fields = {{"price", 7.0}};
    const auto edit = chooseStock(drawing, {4}, valve);
    REQUIRE(edit);
    CHECK(render(edit->title, UnitSystem::Us) == "Choose Ball from stock");
    CHECK(edit->steps.size() == 1);
    drawing.find(4)->entries["price"] = {7.0, parts::Basis::Measured};  // the same price, known better or worse
    CHECK(chooseStock(drawing, {4}, valve));
    drawing.find(4)->entries["price"] = {7.0, parts::Basis::DataSheet};
    CHECK_FALSE(chooseStock(drawing, {4}, valve));
    CHECK(chooseStock(drawing, {1}, valve).error().where == "CW1");
    CHECK(chooseStock(drawing, {99}, valve).error().where.empty());
    CHECK_FALSE(chooseStock(drawing, {}, valve));
    valve.name.clear();
    CHECK_FALSE(chooseStock(drawing, {4}, valve));
}

TEST_CASE("a block of cells is bounded at its ends", "[survey]")
{
    CellLimits small;
    small.bytes = 10;
    small.rows = 3;
    small.columns = 3;
    small.cellBytes = 4;
    CHECK(readCells("a\tb\tcccc\n", small));
    CHECK_FALSE(readCells("a\tb\tccccc\n", small));   // a cell too long
    CHECK_FALSE(readCells("aaaa\tbbbbb", small));
    CHECK(readCells("a\tb\tc", small));
    CHECK_FALSE(readCells("a\tb\tc\td", small));      // four columns
    CHECK(readCells("a\nb\nc\n", small));
    CHECK_FALSE(readCells("a\nb\nc\nd\n", small));    // four rows
    CHECK(readCells("aaaa\tbbbbb"s.substr(0, 9), small));
    CHECK(readCells("aa\tbb\tcc\nd", small));  // ten bytes
    CHECK_FALSE(readCells("aa\tbb\tcc\ndd", small));  // eleven
}

TEST_CASE("separators and quotes of a block of cells are told apart", "[survey]")
{
    using Block = CellBlock;
    CHECK(readCells("a;b,c").value() == Block{{"a", "b,c"}});
    CHECK(readCells("a\tb;c,d").value() == Block{{"a", "b;c,d"}});
    CHECK(readCells("\"a\tb\",c").value() == Block{{"a\tb", "c"}});  // a tab in quotes parts nothing
    CHECK(readCells("\"a;b\",c").value() == Block{{"a;b", "c"}});
    CHECK(readCells("+1,5\n\n2,25").value() == Block{{"+1,5"}, {""}, {"2,25"}});
    CHECK(readCells("1,\n2,5").value() == Block{{"1", ""}, {"2", "5"}});
    CHECK(readCells("a\rb\tc").value() == Block{{"a\rb", "c"}});
    CHECK(readCells("a\tb\r").value() == Block{{"a", "b"}});
    CHECK(readCells("\" a \"\t b ").value() == Block{{" a ", "b"}});
    CHECK(readCells("\"\"").value() == Block{});
    CHECK(readCells("").value() == Block{});
    CHECK(readCells("a\n \t \n").value() == Block{{"a"}});
    CHECK(writeCells({{"a,b"}, {"c"}}) == "\"a,b\"\nc\n");
    CHECK(writeCells({{"a\tb"}, {"c"}}) == "\"a\tb\"\nc\n");
    CHECK(readCells(writeCells({{"a\tb"}})).value() == Block{{"a\tb"}});
    CHECK(writeCells({{"a,b", "c\td"}}) == "a,b\t\"c\td\"\n");
    CHECK(writeCells({{"say \"x\""}}) == "\"say \"\"x\"\"\"\n");
}

TEST_CASE("a curve's headings are skipped once, empty rows always, and a bad cell is named", "[survey]")
{
    const parts::PartKind& kind = *parts::find("circulator");
    const parts::Field& field = *kind.field("curve");
    const auto read = [&](const CellBlock& block) { return readCurve(block, kind, field, UnitSystem::Metric); };
    const auto said = [&](const CellBlock& block) { return render(read(block).error().what, UnitSystem::Metric); };
    const auto curve = read({{"Flow", "Head"}, {"", ""}, {"0", "3", "more"}, {"6", "1"}});
    REQUIRE(curve);
    CHECK((*curve)[1].x == Approx(1e-4));  // 6 L/min
    CHECK((*curve)[1].y == 1);
    CHECK(said({{"0", "3"}, {"Flow", "Head"}}) == "Row 2: \"Flow\" is no number that fits here.");
    CHECK(said({{"0", "x"}, {"6", "1"}}) == "Row 1: \"x\" is no number that fits here.");
    CHECK(said({{"0", "3"}, {"6"}}) == "Row 2 has only one column.");
    CHECK(curveCells({{1e-4, 2.5}}, field, UnitSystem::Metric) == CellBlock{{"6", "2.5"}});
}

namespace {

std::string png(std::uint32_t width, std::uint32_t height)
{
    std::string bytes = "\x89PNG\r\n\x1a\n\0\0\0\x0dIHDR"s;
    for (const std::uint32_t side : {width, height}) {
        for (int shift = 24; shift >= 0; shift -= 8) {
            bytes += static_cast<char>(side >> shift & 255);
        }
    }
    return bytes + "\x08\x06\0\0\0"s;
}

/// Start, segments as given, then a frame header of 5 by 3 pixels.
std::string jpeg(const std::string& segments, const std::string& frame = "\xff\xc0"s)
{
    return "\xff\xd8"s + segments + frame + "\0\x08\x08\0\x03\0\x05"s;
}

}  // namespace

TEST_CASE("a picture is bounded at its ends", "[floorplan]")
{
    CHECK(pictureInfo(png(kMostPictureSide_px, 1)));
    CHECK(pictureInfo(png(1, kMostPictureSide_px)));
    CHECK_FALSE(pictureInfo(png(kMostPictureSide_px + 1, 1)));
    CHECK_FALSE(pictureInfo(png(1, kMostPictureSide_px + 1)));
    const auto rows = static_cast<std::uint32_t>(kMostPicturePixels / 5000);
    CHECK(pictureInfo(png(5000, rows)));
    CHECK_FALSE(pictureInfo(png(5000, rows + 1)));
    CHECK(pictureInfo(png(4, 3)).value().format == PictureFormat::Png);
    CHECK(pictureInfo(png(4, 3).substr(0, 24)));
    CHECK_FALSE(pictureInfo(png(4, 3).substr(0, 23)));
    CHECK_FALSE(pictureInfo(png(4, 0)));
    const std::string most = png(4, 3) + std::string(kMostPictureBytes - png(4, 3).size(), 'x');
    CHECK(pictureInfo(most));
    CHECK_FALSE(pictureInfo(most + 'x'));
}

TEST_CASE("a JPEG's frame header is found behind any segments and only there", "[floorplan]")
{
    // ISO/IEC 10918-1, table B.1: SOF0..15 but for C4, C8 and CC; D0..D8 and 01 stand alone; lengths count themselves.
    const std::string segment = "\xff\xe0\0\x04xx"s;
    const auto size = [](const std::string& bytes) {
        const auto info = pictureInfo(bytes);
        return info ? std::pair(info->width_px, info->height_px) : std::pair(0, 0);
    };
    CHECK(size(jpeg(segment)) == std::pair(5, 3));
    CHECK(size(jpeg("\xff\xff\xe0\0\x04xx"s)) == std::pair(5, 3));  // a fill byte
    CHECK(size(jpeg(segment + "\xff\x01"s)) == std::pair(5, 3));
    CHECK(size(jpeg(segment + "\xff\xd0\xff\xd7\xff\xd8"s)) == std::pair(5, 3));
    CHECK(size(jpeg(segment + "\xff\xc4\0\x04xx"s)) == std::pair(5, 3));
    CHECK(size(jpeg(segment + "\xff\xc8\0\x04xx"s)) == std::pair(5, 3));
    CHECK(size(jpeg(segment + "\xff\xcc\0\x04xx"s)) == std::pair(5, 3));
    CHECK(size(jpeg(segment + "\xff\xe1\0\x02"s)) == std::pair(5, 3));  // an empty segment
    CHECK(size(jpeg(segment, "\xff\xcf"s)) == std::pair(5, 3));
    CHECK(size(jpeg(segment, "\xff\xc1"s)) == std::pair(5, 3));
    CHECK(size(jpeg(segment + "\xff\xd9"s)) == std::pair(0, 0));  // the end
    CHECK(size(jpeg(segment + "\xff\xda\0\x02"s)) == std::pair(0, 0));
    CHECK(size(jpeg(segment + "\xff\xe1\0\x01"s)) == std::pair(0, 0));
    CHECK(size(jpeg(segment + "x"s)) == std::pair(0, 0));
    CHECK(size("\xff\xd8"s + segment + "\xff\xc0\0\x07\x08\0\x03\0\x05"s) == std::pair(0, 0));  // too short to be one
    CHECK(size(jpeg(segment).substr(0, jpeg(segment).size() - 1)) == std::pair(0, 0));
}

TEST_CASE("a floor plan covers its picture's ground, turned with it, and holds its edges", "[floorplan]")
{
    Drawing drawing;
    apply(drawing, *placePart(drawing, "floor_plan", {10, 20}, Stage::Existing));
    CHECK_FALSE(planArea(*drawing.find(1)));
    CHECK_FALSE(scalePlan(drawing, 1, {0, 0}, {9, 0}, 1));
    apply(drawing, *setPlanPicture(drawing, 1, png(600, 300), "plan"));
    CHECK(values(*drawing.find(1)).text("name") == "plan");
    drawing.find(1)->entries["width_modules"] = {40.0, parts::Basis::Estimated};
    const auto area = [&](int turn) {
        drawing.find(1)->turn = turn;
        const PlanArea one = *planArea(*drawing.find(1));
        return std::vector<double>{one.left, one.top, one.right, one.bottom};
    };
    // 40 by 20 modules from (10, 20): right and down, down and left, left and up, up and right.
    CHECK(area(0) == std::vector<double>{10, 20, 50, 40});
    CHECK(area(1) == std::vector<double>{-10, 20, 10, 60});
    CHECK(area(2) == std::vector<double>{-30, 0, 10, 20});
    CHECK(area(3) == std::vector<double>{10, -20, 30, 20});
    const PlanArea ground{0, 0, 4, 2};
    CHECK(ground.holds({0, 0}));
    CHECK(ground.holds({4, 2}));
    CHECK_FALSE(ground.holds({4.1, 1}));
    CHECK_FALSE(ground.holds({-0.1, 1}));
    CHECK_FALSE(ground.holds({1, 2.1}));
    CHECK_FALSE(ground.holds({1, -0.1}));
    drawing.find(1)->turn = 0;
    CHECK(scalePlan(drawing, 1, {0, 0}, {0.5, 0}, 1));
    CHECK_FALSE(scalePlan(drawing, 1, {0, 0}, {0.49, 0}, 1));
    CHECK(scalePlan(drawing, 1, {0, 0}, {9, 0}, 0.05));
    CHECK_FALSE(scalePlan(drawing, 1, {0, 0}, {9, 0}, 0.049));
    CHECK(scalePlan(drawing, 1, {0, 0}, {20, 0}, 50));
    CHECK_FALSE(scalePlan(drawing, 1, {0, 0}, {20, 0}, 50.1));
    apply(drawing, *scalePlan(drawing, 1, {0, 0}, {10, 0}, 2));
    CHECK_THAT(*metresPerModule(*drawing.find(1)), WithinAbs(0.2, 1e-12));
    // Another picture wants another scale; a name given by hand stays.
    apply(drawing, *setPlanPicture(drawing, 1, png(300, 300), "other"));
    CHECK_FALSE(metresPerModule(*drawing.find(1)));
    CHECK(values(*drawing.find(1)).text("name") == "plan");
    CHECK(planPicture(*drawing.find(1)) == png(300, 300));
    CHECK_FALSE(pictureFlaw(""));
    CHECK_FALSE(pictureFlaw(toBase64(png(3, 3))));
    CHECK(pictureFlaw("*"));
    CHECK(pictureFlaw(toBase64("no picture")));
}

TEST_CASE("a traced length is better left when measured or from papers, and is told only when it differs",
          "[floorplan]")
{
    Drawing drawing;
    apply(drawing, *placePart(drawing, "floor_plan", {0, 0}, Stage::Existing));
    apply(drawing, *setPlanPicture(drawing, 1, png(600, 300), "plan"));
    drawing.find(1)->entries["width_modules"] = {100.0, parts::Basis::Estimated};
    apply(drawing, *scalePlan(drawing, 1, {0, 0}, {10, 0}, 1));  // 0.1 m a module
    apply(drawing, *placePart(drawing, "hand_valve", {10, 10}, Stage::Existing));
    drawing.find(2)->height_m = 0.75;
    apply(drawing, *connect(drawing, {2, "outlet", {}}, {kNoPart, {}, {32, 10}}, Stage::Existing));
    const auto one = [&] {
        const auto traced = tracedLengths(drawing);
        return traced.empty() ? TracedLength{} : traced[0];
    };
    // From 12 to 32 without a rise: the other end is loose, so its height is not known.
    CHECK_THAT(one().traced_m, WithinAbs(2.0, 1e-9));
    CHECK(one().now_m == 1);  // the default
    CHECK(one().pipe == 3);
    CHECK_FALSE(one().better);
    for (const auto& [basis, better] :
         {std::pair{parts::Basis::Estimated, false}, {parts::Basis::DataSheet, true}, {parts::Basis::Measured, true}}) {
        drawing.find(3)->entries["length_m"] = {2.5, basis};
        CHECK(one().better == better);
    }
    CHECK(tracedLengths(drawing, {2}).empty());
    drawing.find(3)->entries["length_m"] = {2.0, parts::Basis::Measured};
    CHECK(tracedLengths(drawing).empty());
    // A rise counts whichever end is higher.
    apply(drawing, *placePart(drawing, "hand_valve", {34, 10}, Stage::Existing));
    drawing.find(3)->ends[1] = {4, "inlet", {}};
    CHECK_THAT(one().traced_m, WithinAbs(2.75, 1e-9));
    std::swap(drawing.find(3)->ends[0], drawing.find(3)->ends[1]);
    CHECK_THAT(one().traced_m, WithinAbs(2.75, 1e-9));
}
