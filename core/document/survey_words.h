// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>
#include <string_view>

#include "base/result.h"
#include "parts/part_kind.h"

// Words in a survey's cells; private to this room.
namespace tapward::document {

std::string_view basisTitle(parts::Basis basis);

/// The basis meant by "measured", "data sheet", "e".
Result<parts::Basis> readBasis(std::string_view typed);

/// The choice meant by its id, its title, or words of its title ("cop 3/4"). Words that fit several choices mean
/// the one whose title begins most like `now`, the choice in force: a size alone keeps the material.
/// @return the choice's id
Result<std::string> readChoice(const parts::Field& field, std::string_view typed, std::string_view now);

}  // namespace tapward::document
