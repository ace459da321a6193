// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <algorithm>
#include <string>
#include <vector>

#include "report/report.h"
#include "support/catch.h"

namespace tapward::test {

inline bool says(const std::string& text, const std::string& words) { return text.find(words) != std::string::npos; }

/// The answer of this id, which is there.
inline const report::AnswerLine& line(const std::vector<report::AnswerLine>& lines, const std::string& id)
{
    const auto at = std::find_if(lines.begin(), lines.end(), [&](const auto& one) { return one.id == id; });
    REQUIRE(at != lines.end());
    return *at;
}

}  // namespace tapward::test
