// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace tapward::report {

/// One field as RFC 4180 asks: quoted where it holds a separator, a quote or a line break. A text that a spreadsheet
/// would run (document::readsAsFormula) gets an apostrophe before it; numbers stay numbers.
std::string csvField(std::string_view text);
/// Fields joined by commas, ended with CR LF.
std::string csvRow(const std::vector<std::string>& fields);

}  // namespace tapward::report
