// SPDX-License-Identifier: GPL-3.0-or-later
#include "study/record_bounds.h"

#include <rapidcheck.h>

#include "document/file.h"
#include "study/plant.h"
#include "study/prediction.h"
#include "study/work.h"
#include "support/catch.h"

using namespace tapward;
using namespace tapward::study;

namespace {

std::size_t numbersIn(const CaseResult& result)
{
    std::size_t all = 0;
    for (const Series& series : result.series) {
        all += series.values.size();
    }
    return all;
}

}  // namespace

TEST_CASE("an honest coach is written down at the usual intervals", "[study]")
{
    const RecordBounds bounds = recordBounds(7200, 6, 16);  // six cases of the longest a case may be
    CHECK(bounds.series == 16);
    CHECK(bounds.every_s == 1);
    CHECK(bounds.events > 4000);
    CHECK(snapshotInterval_s(7200, 6, 600, 1) == 1);
    CHECK(recordBounds(1, 1, 0).every_s == 1);
}

TEST_CASE("whatever the drawing, a prediction writes down no more than its budget", "[study][property]")
{
    CHECK(rc::check([] {
        const double duration_s = *rc::gen::inRange(1, 7201);
        const auto cases = static_cast<std::size_t>(*rc::gen::inRange(1, 201));
        const auto series = static_cast<std::size_t>(*rc::gen::inRange(0, 9000));
        const RecordBounds bounds = recordBounds(duration_s, cases, series);
        const double moments = duration_s / bounds.every_s + 1;
        // the first sixteen curves are kept whatever the rest
        RC_ASSERT(static_cast<double>(bounds.series * cases) * moments <= 1.1 * kMostRecorded);
        RC_ASSERT(bounds.series >= std::min<std::size_t>(series, 16));
        RC_ASSERT(bounds.events * cases <= kMostEventsTogether);
        const auto width = static_cast<std::size_t>(*rc::gen::inRange(1, 160'001));
        const double snapped = duration_s / snapshotInterval_s(duration_s, cases, width, 1) + 1;
        RC_ASSERT(static_cast<double>(width * cases) * snapped <= 1.1 * kMostSnapped || snapped < 3);
    }));
}

TEST_CASE("each of two hundred cases of two hours keeps to its share, alone or with the rest", "[study]")
{
    auto drawing = document::load(TAPWARD_SOURCE_DIR "/samples/long_hall_coach.tapward");
    REQUIRE(drawing);
    document::Case quiet = drawing->cases.front();
    quiet.actions.clear();
    quiet.duration_s = 7200;
    drawing->cases.clear();
    for (int i = 0; i < 200; ++i) {
        quiet.name = "Case " + std::to_string(i);
        drawing->cases.push_back(quiet);
    }
    Options options;
    options.onlyCase = "Case 7";
    options.snapshots = true;
    const auto prediction = predict(*drawing, options);
    REQUIRE(prediction);
    const CaseResult& result = prediction->cases.at(0);
    REQUIRE_FALSE(result.noAnswer);
    CHECK(numbersIn(result) > 1000);
    CHECK(numbersIn(result) * 200 <= kMostRecorded);
    CHECK(result.snapshot.celsius.size() * 200 <= kMostSnapped);
    CHECK(result.time_s.back() == 7200);
}

TEST_CASE("cases that cost too much together are left out in words before anything is run", "[study]")
{
    auto drawing = document::load(TAPWARD_SOURCE_DIR "/samples/long_hall_coach.tapward");
    REQUIRE(drawing);
    const auto plant = makePlant(*drawing, document::View::After);
    REQUIRE(plant);
    double own = 0;
    for (const document::Case& one : drawing->cases) {
        own += workOf(*plant, one, {});
    }
    CHECK(own < 0.05 * kMostWork);
    document::Case longest = drawing->cases.front();
    longest.duration_s = 7200;
    CHECK(workOf(*plant, longest, {}) < 0.1 * kMostWork);
    CHECK(200 * workOf(*plant, longest, {}) > kMostWork);

    Options fine;
    fine.step_s = 1e-4;  // as much work as a far larger coach
    const auto prediction = predict(*drawing, fine);
    REQUIRE(prediction);
    REQUIRE(prediction->cases.size() == drawing->cases.size());
    const CaseResult& last = prediction->cases.back();
    REQUIRE(last.noAnswer);
    CHECK_FALSE(last.noAnswer->remedy.empty());
    CHECK(last.name == drawing->cases.back().name);
}

TEST_CASE("a coach of endless tube has no more cells than one can hold", "[study]")
{
    auto drawing = document::load(TAPWARD_SOURCE_DIR "/samples/long_hall_coach.tapward");
    REQUIRE(drawing);
    const auto before = makePlant(*drawing, document::View::After);
    REQUIRE(before);
    CHECK(before->tubeLength_m() / 0.15 < 0.1 * kMostCells);
    for (document::Part& part : drawing->parts) {
        if (part.kind == "pipe_run") {
            part.entries["length_m"] = {200.0, parts::Basis::Estimated};
        }
    }
    const auto plant = makePlant(*drawing, document::View::After);
    REQUIRE(plant);
    CHECK(plant->tubeLength_m() / 0.15 > kMostCells);
    CHECK(plant->makeField({.cell_m = 0.15, .wallLayers = 1}).cellCount() < 1.1 * kMostCells);
}
