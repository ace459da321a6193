// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>

#include "document/json_text.h"
#include "parts/part_kind.h"

// Values of fields in JSON; private to this room.
namespace tapward::document {

/// Nothing when it is no value; `tooMany` says that it is a curve with more readings than allowed.
std::optional<parts::Value> readValue(const Json& json, std::size_t curvePoints, bool& tooMany);
Json valueJson(const parts::Value& value);
/// What the schema says about a value of this field; needs the definition "reading".
Json valueSchema(const parts::Field& field);

}  // namespace tapward::document
