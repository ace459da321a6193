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
                              "open MV1 and run P1", "half open", "sanitise"}) {
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
