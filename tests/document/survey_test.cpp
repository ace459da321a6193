// SPDX-License-Identifier: GPL-3.0-or-later
#include "document/survey.h"

#include "document/file.h"
#include "support/catch.h"

using namespace tapward;
using namespace tapward::document;

namespace {

Drawing coach()
{
    auto drawing = load(std::string(TAPWARD_SOURCE_DIR) + "/samples/long_hall_coach.tapward");
    REQUIRE(drawing);
    return *drawing;
}

std::size_t column(SurveySheet sheet, std::string_view title)
{
    const auto& all = surveyColumns(sheet);
    for (std::size_t i = 0; i < all.size(); ++i)
        if (all[i].title == title)
            return i;
    FAIL("no such column");
    return 0;
}

std::size_t run(std::string_view title) { return column(SurveySheet::Runs, title); }
PartId id(const Drawing& drawing, const char* tag) { return drawing.findTag(tag)->id; }

SurveyChange type(const Drawing& drawing, const char* tag, std::string_view title, std::string text,
                  std::optional<parts::Basis> basis = {})
{
    return surveyChange(drawing, SurveySheet::Runs, {{id(drawing, tag), run(title), std::move(text)}}, UnitSystem::Us,
                        basis);
}

double length(const Drawing& drawing, const char* tag) { return values(*drawing.findTag(tag)).number("length_m"); }

}  // namespace

TEST_CASE("every pipe has a row among the runs and every other part with ports among the heights", "[survey]")
{
    const Drawing drawing = coach();
    const auto runs = surveyRows(drawing, SurveySheet::Runs), heights = surveyRows(drawing, SurveySheet::Heights);
    REQUIRE_FALSE(runs.empty());
    for (const Part& part : drawing.parts) {
        const bool isRun = std::find(runs.begin(), runs.end(), part.id) != runs.end();
        const bool isHigh = std::find(heights.begin(), heights.end(), part.id) != heights.end();
        CHECK(isRun == (part.kind == "pipe_run"));
        CHECK(isHigh == (part.kind != "pipe_run" && !kindOf(part).ports.empty()));
    }
}

TEST_CASE("typing every cell's own text over it changes nothing, in both units", "[survey]")
{
    const Drawing drawing = coach();
    for (const UnitSystem units : {UnitSystem::Us, UnitSystem::Metric})
        for (const SurveySheet sheet : {SurveySheet::Runs, SurveySheet::Heights}) {
            std::vector<SurveyCell> cells;
            for (const PartId part : surveyRows(drawing, sheet))
                for (std::size_t c = 0; c < surveyColumns(sheet).size(); ++c)
                    cells.push_back(
                        {part, c, surveyText(drawing, *drawing.find(part), surveyColumns(sheet)[c], units)});
            const auto change = surveyChange(drawing, sheet, cells, units);
            CHECK_FALSE(change.edit);
            CHECK(change.refused.empty());
        }
}

TEST_CASE("a typed length is read with its own unit and keeps its basis", "[survey]")
{
    Drawing drawing = coach();
    const auto basis = values(*drawing.findTag("L1")).basis("length_m");
    auto change = type(drawing, "L1", "Real length", "2 ft 3 in");
    REQUIRE(change.edit);
    CHECK(change.cells == 1);
    const std::string before = write(drawing);
    const Edit back = apply(drawing, *change.edit);
    // 27 in of 0.0254 m, NIST SP 811:2008
    CHECK_THAT(length(drawing, "L1"), WithinAbs(27 * 0.0254, 1e-12));
    CHECK(values(*drawing.findTag("L1")).basis("length_m") == basis);
    apply(drawing, back);
    CHECK(write(drawing) == before);

    change = type(drawing, "L1", "Real length", "3*0.4 m", parts::Basis::Measured);
    REQUIRE(change.edit);
    apply(drawing, *change.edit);
    CHECK_THAT(length(drawing, "L1"), WithinAbs(1.2, 1e-12));
    CHECK(values(*drawing.findTag("L1")).basis("length_m") == parts::Basis::Measured);
}

TEST_CASE("good cells of a block are one step, bad ones are named with the reason", "[survey]")
{
    Drawing drawing = coach();
    const auto change = surveyChange(drawing, SurveySheet::Runs,
                                     {{id(drawing, "L1"), run("Real length"), "4"},
                                      {id(drawing, "L1"), run("Basis of length"), "data"},
                                      {id(drawing, "L2"), run("Real length"), "nine yards of it"},
                                      {id(drawing, "L2"), run("Elbows"), "2.5"},
                                      {id(drawing, "L2"), run("Insulation"), "-1"},
                                      {id(drawing, "L2"), run("From"), "somewhere else"},
                                      {id(drawing, "L2"), run("Couplings"), "3"}},
                                     UnitSystem::Us);
    REQUIRE(change.edit);
    CHECK(change.cells == 3);
    REQUIRE(change.refused.size() == 4);
    for (const auto& refusal : change.refused) {
        CHECK(refusal.cell.part == id(drawing, "L2"));
        CHECK_FALSE(refusal.why.what.empty());
        CHECK_FALSE(refusal.why.remedy.empty());
    }
    CHECK(change.refused[0].cell.typed == "nine yards of it");
    const double untouched = length(drawing, "L2");
    apply(drawing, *change.edit);
    CHECK_THAT(length(drawing, "L1"), WithinAbs(4 * 0.3048, 1e-12));
    CHECK(values(*drawing.findTag("L1")).basis("length_m") == parts::Basis::DataSheet);
    CHECK(length(drawing, "L2") == untouched);
    CHECK(values(*drawing.findTag("L2")).number("couplings") == 3);
}

TEST_CASE("a size alone keeps the material, words of another material change it", "[survey]")
{
    Drawing drawing = coach();
    const auto tube = [&] { return values(*drawing.findTag("L1")).text("tube"); };
    for (const auto& [typed, wanted] :
         std::vector<std::pair<std::string, std::string>>{{"3/4", "pex_3_4"},
                                                          {"copper L 1/2 in", "copper_l_1_2"},
                                                          {"3/4\"", "copper_l_3_4"},
                                                          {"PEX 3/8", "pex_3_8"},
                                                          {"pex_1_2", "pex_1_2"}}) {
        const auto change = type(drawing, "L1", "Tube", typed);
        CAPTURE(typed);
        REQUIRE(change.edit);
        apply(drawing, *change.edit);
        CHECK(tube() == wanted);
    }
    const auto lead = type(drawing, "L1", "Tube", "lead 1/2");
    CHECK_FALSE(lead.edit);
    REQUIRE(lead.refused.size() == 1);
}

TEST_CASE("two tags can be swapped only over a free one; a tag given twice is refused", "[survey]")
{
    Drawing drawing = coach();
    const PartId one = id(drawing, "L1"), two = id(drawing, "L2");
    auto change = surveyChange(drawing, SurveySheet::Runs, {{one, 0, "L2"}, {two, 0, "LX"}}, UnitSystem::Us);
    REQUIRE(change.edit);
    CHECK(change.refused.empty());
    apply(drawing, *change.edit);
    CHECK(drawing.find(one)->tag == "L2");
    CHECK(drawing.find(two)->tag == "LX");
    change = surveyChange(drawing, SurveySheet::Runs, {{two, 0, "L3"}}, UnitSystem::Us);
    CHECK_FALSE(change.edit);
    CHECK(change.refused.size() == 1);
}

TEST_CASE("a height outside any coach is refused, one inside it is set", "[survey]")
{
    Drawing drawing = coach();
    const PartId pump = id(drawing, "P1");
    const std::size_t height = column(SurveySheet::Heights, "Height above floor");
    auto change = surveyChange(drawing, SurveySheet::Heights, {{pump, height, "40"}}, UnitSystem::Us);
    CHECK(change.refused.size() == 1);
    change = surveyChange(drawing, SurveySheet::Heights, {{pump, height, "45 cm"}}, UnitSystem::Us);
    REQUIRE(change.edit);
    apply(drawing, *change.edit);
    CHECK_THAT(drawing.find(pump)->height_m, WithinAbs(0.45, 1e-12));
    change = surveyChange(drawing, SurveySheet::Heights,
                          {{pump, column(SurveySheet::Heights, "Flow, fully open"), "2"}}, UnitSystem::Us);
    CHECK(change.refused.size() == 1);
}

TEST_CASE("an emptied cell takes the default back", "[survey]")
{
    Drawing drawing = coach();
    const auto change = type(drawing, "L1", "Real length", "");
    REQUIRE(change.edit);
    apply(drawing, *change.edit);
    CHECK_FALSE(values(*drawing.findTag("L1")).isSet("length_m"));
}

TEST_CASE("pipes for rows below the survey's end hang loose below everything drawn, in one step", "[survey]")
{
    const auto coach = load(std::string(TAPWARD_SOURCE_DIR) + "/samples/storage_coach.tapward");
    REQUIRE(coach);
    Drawing drawing = *coach;
    auto edit = looseRuns(drawing, 3, Stage::Existing);
    REQUIRE(edit);
    const std::size_t before = surveyRows(drawing, SurveySheet::Runs).size();
    auto back = apply(drawing, std::move(*edit));
    const auto rows = surveyRows(drawing, SurveySheet::Runs);
    REQUIRE(rows.size() == before + 3);
    for (std::size_t i = before; i < rows.size(); ++i)
        for (const PipeEnd& end : drawing.find(rows[i])->ends) {
            CHECK(end.part == kNoPart);
            for (const Part& part : coach->parts)
                CHECK((kindOf(part).isPipe || part.at.y < end.loose.y));
        }
    apply(drawing, std::move(back));
    CHECK(drawing == *coach);
}

TEST_CASE("a pipe's end on a tee is told by what hangs on the tee, for tees have no tag on the drawing",
          "[document][survey]")
{
    document::Drawing drawing;
    const auto add = [&](const char* kind, const char* tag) {
        document::Part& part = drawing.parts.emplace_back();
        part.id = drawing.nextId++;
        part.kind = kind;
        part.tag = tag;
        return part.id;
    };
    const auto pipe = [&](document::PipeEnd from, document::PipeEnd to) {
        const auto id = add("pipe_run", ("L" + std::to_string(drawing.nextId)).c_str());
        drawing.find(id)->ends = {std::move(from), std::move(to)};
        return id;
    };
    const auto city = add("city_inlet", "CW1"), tap = add("faucet", "F1"), first = add("tee", "T1"),
               second = add("tee", "T2");
    const auto main = pipe({city, "outlet", {}}, {first, "run_a", {}});
    pipe({first, "branch", {}}, {tap, "cold", {}});
    const auto between = pipe({first, "run_b", {}}, {second, "branch", {}});
    const auto words = [&](document::PartId id, std::size_t end) {
        return render(document::surveyEnd(drawing, drawing.find(id)->ends[end]), UnitSystem::Us);
    };
    CHECK(words(main, 0) == "CW1 Outlet");
    CHECK(words(main, 1) == "Tee to F1 Cold");
    CHECK(words(between, 0) == "Tee to F1 Cold");
    CHECK(words(between, 1).find("T2") == 0);  // a tee on a tee keeps its own tag
    drawing.find(between)->ends[1] = {};
    CHECK(words(between, 1) == "–");
}
