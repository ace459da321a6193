// SPDX-License-Identifier: GPL-3.0-or-later
// The layouts one begins with: invented, existing plumbing only, and quiet until something is wrong.
#include <algorithm>
#include <cmath>
#include <filesystem>

#include "document/file.h"
#include "document/proposal.h"
#include "review/finding.h"
#include "study/prediction.h"
#include "support/catch.h"

using namespace tapward;
using namespace tapward::document;

namespace {

std::vector<std::string> templates()
{
    std::vector<std::string> files;
    for (const auto& entry : std::filesystem::directory_iterator(TAPWARD_SOURCE_DIR "/resources/templates")) {
        files.push_back(entry.path().string());
    }
    std::sort(files.begin(), files.end());
    return files;
}

/// A symbol's half width (or height) on the canvas.
double half(const Part& part, bool height)
{
    const auto& kind = kindOf(part);
    return ((part.turn % 2 != 0) == height ? kind.width : kind.height) / 2;
}

}  // namespace

TEST_CASE("every template is existing plumbing with estimated sample figures and the two standard cases", "[templates]")
{
    REQUIRE(templates().size() >= 4);
    for (const std::string& file : templates()) {
        CAPTURE(file);
        const auto drawing = load(file);
        REQUIRE(drawing);
        CHECK(drawing->job.sampleFigures);
        CHECK_FALSE(drawing->job.title.empty());
        for (const Part& part : drawing->parts) {
            CAPTURE(part.tag);
            CHECK(part.stage == Stage::Existing);
            CHECK_FALSE(part.mark);
            for (const auto& [key, entry] : part.entries) {
                CHECK(entry.basis == parts::Basis::Estimated);
            }
            if (kindOf(part).isPipe) {
                CHECK((part.ends[0].part != kNoPart && part.ends[1].part != kNoPart));
                CHECK(part.entries.contains("length_m"));
            }
            for (const Part& other : drawing->parts) {
                const bool symbols = !kindOf(part).isPipe && !kindOf(other).isPipe && part.id < other.id;
                CHECK_FALSE((symbols && std::abs(part.at.x - other.at.x) < half(part, false) + half(other, false)
                             && std::abs(part.at.y - other.at.y) < half(part, true) + half(other, true)));
            }
        }
        CHECK(drawing->findCase("Ordinary hot draw"));
        CHECK(drawing->findCase("Cold draw"));
        CHECK(write(*drawing) == write(*read(write(*drawing))));
    }
}

TEST_CASE("a template as it is raises no caution, and its hot draw gets warm", "[templates]")
{
    for (const std::string& file : templates()) {
        CAPTURE(file);
        const auto drawing = load(file);
        REQUIRE(drawing);
        const auto prediction = study::predict(*drawing);
        REQUIRE(prediction);
        for (const auto& one : prediction->cases) {
            CHECK_FALSE(one.noAnswer);
        }
        const auto* hot = prediction->find("Ordinary hot draw")->scalar("wait");
        REQUIRE(hot);
        REQUIRE(hot->value);
        CHECK(*hot->value > 5);  // there is a wait worth a loop
        CHECK(*hot->value < 200);
        for (const auto& finding : review::review(*drawing, *prediction, study::assess(*drawing, *prediction))) {
            CAPTURE(finding.rule, finding.what.text);
            // A storage heater behind the inlet's check valve has no room to expand: so such coaches are.
            if (finding.rule == "trapped_expansion") {
                CHECK(file.find("storage") != std::string::npos);
                continue;
            }
            CHECK(finding.severity == review::Severity::Note);
        }
    }
}

TEST_CASE("a loop proposed on a template raises neither a blocked loop nor an open end", "[templates][proposal]")
{
    for (const std::string& file : templates()) {
        const auto coach = load(file);
        REQUIRE(coach);
        Place hot;
        for (const Part& part : coach->parts) {
            if (kindOf(part).isPipe && !beginRefusal(*coach, {part.id, 0.5, {}})) {
                hot = {part.id, 0.5, {}};
            }
        }
        for (const Variant& variant : variants()) {
            if (variant.pumps == PumpSet::TwoInSeries) {
                continue;  // time: parallel has every part series has
            }
            CAPTURE(file, std::string(idOf(variant)));
            const auto cold = usualEnd(*coach, hot, variant.way);
            REQUIRE(cold);
            auto edit = propose(*coach, hot, *cold, variant);
            REQUIRE(edit);
            Drawing drawing = *coach;
            apply(drawing, std::move(*edit));
            study::Options quick;
            quick.cell_m = 0.6;
            const auto prediction = study::predict(drawing, quick);
            REQUIRE(prediction);
            for (const auto& finding : review::review(drawing, *prediction, study::assess(drawing, *prediction))) {
                const Part* part = drawing.find(finding.part);
                const bool loops = finding.rule == "loop_blocked" || finding.rule == "open_end"
                                   || finding.rule == "loop_without_check" || finding.rule == "single_stop"
                                   || finding.rule == "fuse_above_wire" || finding.rule == "wire_drop";
                CAPTURE(finding.rule, finding.what.text);
                CHECK_FALSE((loops && part && part->mark));
            }
        }
    }
}
