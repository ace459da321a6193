// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>
#include <string_view>

#include <nlohmann/json.hpp>

#include "base/result.h"
#include "document/file.h"

// JSON text in and out for the file format; private to this room.
namespace tapward::document {

using Json = nlohmann::ordered_json;

/// Text from a stranger as a JSON tree. Refused, with a JSON pointer to the place: too many bytes, text that is
/// not UTF-8 or not JSON, nesting deeper than the limit, a key twice in one object, texts that are too long,
/// numbers too large to hold.
Result<Json> parseJson(std::string_view text, const Limits& limits);

/// Two-space indent; an object or array that is small and flat stays on one line. Numbers are the shortest that
/// read back exactly. Ends with a newline.
std::string prettyJson(const Json& json);
/// On one line, for keeping unknown keys.
std::string compactJson(const Json& json);
/// On one line without a blank between its pieces, and a newline at the end.
std::string tightJson(const Json& json);
/// prettyJson() where that is no longer than `most` bytes, else tightJson().
std::string fittingJson(const Json& json, std::size_t most);

/// Puts keys that were kept back where they were. One whose object is gone went with it.
void addUnknown(Json& object, const Unknown& unknown);

/// A number as JSON: whole numbers without a decimal point.
Json number(double value);

/// One step of a JSON pointer, escaped.
std::string pointerStep(std::string_view key);
/// The key of one step.
std::string unescapedStep(std::string_view step);

}  // namespace tapward::document
