// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string>
#include <string_view>

// Base 64 of RFC 4648, section 4, with padding; private to this room.
namespace tapward::document {

std::string toBase64(std::string_view bytes);

/// Nothing but the one canonical text is read back: no line ends, whole padding, unused bits zero. So every
/// picture has one text and a file's round trip is byte-identical.
std::optional<std::string> fromBase64(std::string_view text);

}  // namespace tapward::document
