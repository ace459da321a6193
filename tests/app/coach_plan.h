// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <algorithm>
#include <array>
#include <set>
#include <string>
#include <utility>
#include <vector>

#include "document/file.h"
#include "support/catch.h"

namespace tapward::app::test {

using document::PartId;
using Joint = std::pair<PartId, std::string>;  // of the template

/// Pipes joined end to end through tees: what a hand draws in one go, because a pipe that ends on another makes
/// the tee itself.
struct Line {
    std::array<Joint, 2> ends;
    std::set<PartId> tees;  // it runs through
};

inline document::Drawing smallTrailer()
{
    auto coach = document::load(std::string(TAPWARD_SOURCE_DIR) + "/resources/templates/small_travel_trailer.tapward");
    REQUIRE(coach);
    return *coach;
}

inline bool isTee(const document::Drawing& drawing, PartId id) { return drawing.find(id)->kind == "tee"; }

inline std::vector<Line> linesOf(const document::Drawing& coach)
{
    std::vector<Line> lines;
    std::set<PartId> seen;
    for (const auto& first : coach.parts) {
        if (!document::kindOf(first).isPipe || !seen.insert(first.id).second)
            continue;
        Line line;
        for (const std::size_t way : {std::size_t{0}, std::size_t{1}}) {
            document::PipeEnd end = first.ends[way];
            while (isTee(coach, end.part) && end.port != "branch") {
                line.tees.insert(end.part);
                const auto* next = coach.pipeAt(end.part, end.port == "run_a" ? "run_b" : "run_a");
                REQUIRE(next != nullptr);
                seen.insert(next->id);
                end = next->ends[next->ends[0].part == end.part ? 1 : 0];
            }
            line.ends[way] = {end.part, end.port};
        }
        lines.push_back(line);
    }
    return lines;
}

}  // namespace tapward::app::test
