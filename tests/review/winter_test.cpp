// SPDX-License-Identifier: GPL-3.0-or-later
#include "review/winter.h"

#include <algorithm>

#include "review/coach.h"
#include "support/catch.h"

using namespace tapward;
using document::PartId;
using review::winterPlan;
using test::Coach;

namespace {

std::string said(const review::WinterPlan& plan)
{
    std::string all;
    for (const review::WinterStep& step : plan.steps) {
        all += render(step.text, UnitSystem::Us) + '\n';
    }
    return all;
}

bool has(const std::vector<PartId>& ids, PartId id) { return std::find(ids.begin(), ids.end(), id) != ids.end(); }

/// A line down from the tap's hot branch to a drain, by way of a part at another height.
struct Line {
    Coach coach;
    PartId upper, lower;
};
Line branchOver(double middle_m, double drain_m)
{
    Line line;
    Coach& coach = line.coach;
    const PartId tee = coach.add("tee", "T7"), middle = coach.add("hand_valve", "V7"),
                 drain = coach.add("drain_valve", "DV1");
    const document::Part* pipe = coach.drawing.pipeAt(coach.id("F1"), "hot");
    coach.drawing.find(pipe->id)->ends[1] = {tee, "run_a", {}};
    coach.pipe(tee, "run_b", coach.id("F1"), "hot");
    line.upper = coach.pipe(tee, "branch", middle, "inlet");
    line.lower = coach.pipe(middle, "outlet", drain, "port");
    coach.drawing.find(tee)->height_m = 0.5;
    coach.drawing.find(coach.id("F1"))->height_m = 1;
    coach.drawing.find(middle)->height_m = middle_m;
    coach.drawing.find(drain)->height_m = drain_m;
    return line;
}

}  // namespace

TEST_CASE("a line that falls all the way to a drain empties, one with a rise in it does not", "[review]")
{
    const Line falling = branchOver(0.3, 0.0);
    const auto empties = winterPlan(falling.coach.drawing).drained;
    CHECK(has(empties, falling.upper));
    CHECK(has(empties, falling.lower));

    const Line humped = branchOver(0.8, 0.0);
    const auto less = winterPlan(humped.coach.drawing).drained;
    CHECK(has(less, humped.lower));        // it falls from the hump
    CHECK_FALSE(has(less, humped.upper));  // it would have to climb over it

    const Line shut = [] {
        Line line = branchOver(0.3, 0.0);
        line.coach.set("V7", "opening", 0.0);
        return line;
    }();
    CHECK_FALSE(has(winterPlan(shut.coach.drawing).drained, shut.upper));
}

TEST_CASE("a pipe with water flowing through it to a tap is blown out", "[review]")
{
    Coach coach;
    coach.drawing.find(coach.id("F1"))->height_m = 1;
    const auto plan = winterPlan(coach.drawing);
    CHECK(has(plan.cleared, coach.drawing.pipeAt(coach.id("WH1"), "hot")->id));
    CHECK_FALSE(has(plan.drained, coach.drawing.pipeAt(coach.id("WH1"), "hot")->id));
}

TEST_CASE("what stays full is counted in volume and belongs to the loop's valve", "[review][published]")
{
    Coach coach;
    coach.drawing.find(coach.id("F1"))->height_m = 1;
    const PartId between = coach.drawing.pipeAt(coach.id("MV1"), "inlet")->id;
    const double before_m3 = winterPlan(coach.drawing).full.at(0).volume_m3;
    coach.drawing.find(between)->entries["length_m"] = {1 + 10 * us::kFoot, parts::Basis::Measured};
    const auto plan = winterPlan(coach.drawing);
    REQUIRE(plan.full.size() == 1);
    CHECK(has(plan.full[0].parts, between));
    CHECK(has(plan.full[0].valves, coach.id("MV1")));
    CHECK(plan.full[0].loopClearsIt);
    // Ten feet more of PEX 1/2 in: 1.18 fl oz a foot, 2009 International Plumbing Code, table E202.1.
    CHECK_THAT(plan.full[0].volume_m3 - before_m3, WithinRel(11.8 * us::kGallon / 128, 0.01));
}

TEST_CASE("without heights nothing is taken to drain by itself", "[review]")
{
    Coach coach;
    coach.pipe(coach.add("drain_valve", "DV1"), "port", coach.add("hand_valve", "V7"), "inlet");
    const auto plan = winterPlan(coach.drawing);
    CHECK(plan.drained.empty());
    CHECK(said(plan).find("Note heights") != std::string::npos);
    REQUIRE_FALSE(plan.full.empty());  // the loop behind its shut valve
}

TEST_CASE("the steps name heater, taps, air, loop valve and pump in that order", "[review]")
{
    Coach coach;
    const std::string steps = said(winterPlan(coach.drawing));
    CAPTURE(steps);
    std::size_t at = 0;
    for (const char* words : {"Shut off gas and power to WH1", "Open every tap", "Blow air in at CW1",
                              "open MV1 and run P1", "half open", "sanitize"}) {
        CAPTURE(words);
        const std::size_t found = steps.find(words, at);
        CHECK(found != std::string::npos);
        at = found == std::string::npos ? at : found;
    }
    for (const review::WinterStep& step : winterPlan(coach.drawing).steps) {
        const std::string text = render(step.text, UnitSystem::Us);
        CAPTURE(text);
        for (const PartId part : step.parts) {  // a step's parts are those it names (runs are drawn together)
            const std::string& tag = coach.drawing.find(part)->tag;
            CHECK((text.find(tag) != std::string::npos || text.find('-') != std::string::npos));
        }
        for (const char* tag : {"WH1", "CW1", "P1", "MV1", "F1"}) {
            CHECK((text.find(tag) == std::string::npos || has(step.parts, coach.id(tag))));
        }
    }
    coach.add("filter", "FI1");
    CHECK(said(winterPlan(coach.drawing)).find("cartridge out of FI1") != std::string::npos);
    CHECK(winterPlan(document::Drawing{}).steps.empty());
}

TEST_CASE("tags are drawn together from three in a row on", "[review]")
{
    document::Drawing drawing;
    const auto tags = [&](const std::vector<std::string>& names) {
        std::vector<PartId> ids;
        drawing.parts.clear();
        for (const std::string& name : names) {
            document::Part part;
            part.id = static_cast<PartId>(drawing.parts.size() + 1);
            part.kind = "pipe_run";
            part.tag = name;
            drawing.parts.push_back(part);
            ids.push_back(part.id);
        }
        return review::tagsInRuns(drawing, ids);
    };
    CHECK(tags({}).empty());
    CHECK(tags({"L1"}) == "L1");
    CHECK(tags({"L1", "L2"}) == "L1, L2");
    CHECK(tags({"L1", "L2", "L3"}) == "L1-L3");
    CHECK(tags({"L3", "L1", "MV1", "L2", "L4"}) == "L1-L4, MV1");
    CHECK(tags({"L1", "L2", "L4", "L5", "L6"}) == "L1, L2, L4-L6");
    CHECK(tags({"L9", "L10", "L11"}) == "L9-L11");  // by number, not by letter
    CHECK(tags({"L1", "P2", "L3"}) == "L1, L3, P2");
    CHECK(tags({"Drain", "L1", "Tap"}) == "Drain, L1, Tap");
    CHECK(tags({"L1", "L2", "P3"}) == "L1, L2, P3");
    CHECK(tags({"L123456789", "L123456790", "L123456791"}) == "L123456789, L123456790, L123456791");
    CHECK(review::tagsInRuns(drawing, {99}) == "?");
}

TEST_CASE("a plan's steps say who is emptied how, by what was drawn", "[review]")
{
    Coach coach;
    coach.drawing.find(coach.id("F1"))->height_m = 1;
    // No drain, heights known: every tap opened, then what empties; 30 psi of air (common practice).
    std::string steps = said(winterPlan(coach.drawing));
    CHECK(steps.find("No low-point drain is drawn") != std::string::npos);
    CHECK(steps.find("Note heights") == std::string::npos);
    CHECK(steps.find("at no more than 30") != std::string::npos);
    CHECK(steps.find("antifreeze made for") == std::string::npos);  // no demand pump
    CHECK(steps.find("for 120 s") != std::string::npos);
    CHECK(steps.find("Only this clears") != std::string::npos);
    CHECK(steps.find("Still full then") == std::string::npos);
    CHECK(winterPlan(coach.drawing).heightsKnown);

    // A demand pump draws antifreeze; a tank is drained, city air is not blown where there is none.
    Coach pumped = coach;
    pumped.drawing.find(pumped.id("CW1"))->kind = "fresh_tank";
    pumped.drawing.find(pumped.id("PR1"))->kind = "demand_pump";
    steps = said(winterPlan(pumped.drawing));
    CHECK(steps.find("Empty CW1 by its own drain") != std::string::npos);
    CHECK(steps.find("Blow air") == std::string::npos);
    CHECK(steps.find("draw antifreeze made for drinking-water lines with PR1") != std::string::npos);

    // Without the loop's valve its pump runs alone.
    Coach plain = coach;
    plain.drawing.find(plain.id("MV1"))->kind = "check_valve";
    steps = said(winterPlan(plain.drawing));
    CHECK(steps.find("run P1 for 120 s so that") != std::string::npos);
    CHECK(steps.find("open MV1") == std::string::npos);

    // A line behind a shut hand valve: opened it clears, and the step says which.
    Line shut = branchOver(0.3, 0.0);
    shut.coach.set("V7", "opening", 0.0);
    const auto plan = winterPlan(shut.coach.drawing);
    CHECK(plan.drains == std::vector<PartId>{shut.coach.id("DV1")});
    CHECK(said(plan).find("Open the low-point drains DV1") != std::string::npos);
    CHECK(said(plan).find("Open V7 and do it again") != std::string::npos);
    const auto held = std::find_if(plan.full.begin(), plan.full.end(),
                                   [&](const review::WinterSegment& one) { return has(one.parts, shut.upper); });
    REQUIRE(held != plan.full.end());
    CHECK(held->valvesClearIt);
    CHECK_FALSE(held->loopClearsIt);
    CHECK(held->valves == std::vector<PartId>{shut.coach.id("V7")});
}

TEST_CASE("a pipe no water can leave is told as full, where a drain would do most", "[review]")
{
    // A stub down from the trunk to a cap, a metre below everything else.
    Coach coach;
    coach.drawing.find(coach.id("F1"))->height_m = 1;
    const PartId tee = coach.add("tee", "T7"), valve = coach.add("hand_valve", "V9");
    document::Part& cut = *coach.drawing.find(coach.drawing.pipeAt(coach.id("T2"), "run_a")->id);
    cut.ends[cut.ends[0].part == coach.id("T2") ? 0 : 1] = {tee, "run_a", {}};
    coach.pipe(tee, "run_b", coach.id("T2"), "run_a");
    const PartId stub = coach.pipe(tee, "branch", valve, "inlet");
    coach.drawing.find(stub)->entries["length_m"] = {2.0, parts::Basis::Measured};
    coach.drawing.find(valve)->height_m = -1;
    const auto plan = winterPlan(coach.drawing);
    const auto held = std::find_if(plan.full.begin(), plan.full.end(),
                                   [&](const review::WinterSegment& one) { return has(one.parts, stub); });
    REQUIRE(held != plan.full.end());
    CHECK_FALSE(held->loopClearsIt);
    CHECK_FALSE(held->valvesClearIt);
    CHECK(held->lowest == stub);
    // 2 m of PEX 1/2 in at 1.18 fl oz a foot: 2009 International Plumbing Code, table E202.1.
    CHECK_THAT(held->volume_m3, WithinRel(2 / us::kFoot * 1.18 * us::kGallon / 128, 0.05));
    CHECK(said(plan).find("Still full then") != std::string::npos);
    const auto found = coach.found("winter_trapped");
    CHECK(std::any_of(found.begin(), found.end(), [&](const review::Finding& one) {
        return one.remedy.text.starts_with("Fit a low-point drain")
               && std::get<std::string>(one.remedy.arguments.at(0)) == coach.drawing.find(stub)->tag;
    }));
    // 0.1 m of it holds drops.
    coach.drawing.find(stub)->entries["length_m"] = {0.1, parts::Basis::Measured};
    const auto drops = winterPlan(coach.drawing);
    CHECK(std::none_of(drops.full.begin(), drops.full.end(),
                       [&](const review::WinterSegment& one) { return has(one.parts, stub); }));
}
