// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>

namespace tapward::document {

/// JSON Schema (draft 2020-12) of the `.tapward` format, made from the same declarations the reader uses. The
/// published copy is resources/schema/tapward-1.schema.json; a test holds the two equal.
std::string schema();

}  // namespace tapward::document
