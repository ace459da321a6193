// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string_view>

#include "base/result.h"
#include "document/drawing.h"

// What makes a document whole. The file reader and every edit hold to the same rules, so what can be drawn
// can be saved and opened again. `where` in the answers is the JSON pointer from the thing checked.
namespace tapward::document {

/// Highest id a part may have; ids above would run out.
inline constexpr PartId kMostId = 1'000'000'000;
/// The next id where that one is taken: there is none left, and no part can be added.
inline constexpr PartId kMostNextId = kMostId + 1;
/// Canvas places lie within this many modules of the origin.
inline constexpr double kMostModules = 100'000;

bool isUtf8(std::string_view text);

/// A part on its own and against the parts it names (ends, references). Not: ids, tags, ports taken twice.
std::optional<Problem> partFlaw(const Drawing& drawing, const Part& part);
/// One value of a part, reference to another part included.
std::optional<Problem> fieldFlaw(const Drawing& drawing, const parts::PartKind& kind, std::string_view key,
                                 const parts::Value& value);
/// All cases, names twice included; `where` begins with the case's index: "/2/actions/0/part".
std::optional<Problem> casesFlaw(const Drawing& drawing, const std::vector<Case>& cases);
std::optional<Problem> dismissalsFlaw(const Drawing& drawing, const std::vector<Dismissal>& dismissals);
std::optional<Problem> jobFlaw(const Job& job);

}  // namespace tapward::document
