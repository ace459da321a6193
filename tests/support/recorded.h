// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>
#include <vector>

#include <nlohmann/json.hpp>

// Answers written down as lines "what it is: value unit", and their comparison with lines written down earlier.
namespace tapward::test {

using Lines = std::vector<std::string>;

/// A number with its unit as a line shows it, with digits enough for its tolerance: "52.341 °C", "0.0026123 m3".
std::string written(double value, const std::string& unit);

/// Every leaf of a document as a line under its path. An element of a list is called by its tag, name or id where
/// it has one, so that a new element moves no line; a number takes its unit from its key ("hottest_C") or from the
/// "unit" beside it. @param leaveOut  members that are no answers, at any depth
Lines flattened(const nlohmann::ordered_json& document, const std::vector<std::string>& leaveOut);

/// Whether two lines say the same: words exactly, numbers within the tolerance of the unit behind them. A number
/// that was rounded for reading may also be off by one in its last place. Whole numbers without a unit are exact.
bool sameWithin(const std::string& before, const std::string& now);

/// What differs, in words, one entry a line of the answer: "KEY\n  was  ...\n  now  ...". Lines are matched by
/// what stands before their first ": ".
Lines differences(const Lines& before, const Lines& now);

}  // namespace tapward::test
