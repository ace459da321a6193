// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <algorithm>
#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

#include "document/drawing.h"

namespace tapward::report {

/// A way as people follow it: a join that it enters and leaves counts once.
inline std::vector<document::PartId> withoutRepeats(std::vector<document::PartId> way)
{
    way.erase(std::unique(way.begin(), way.end()), way.end());
    return way;
}

/// Letters a terminal shows, near enough: UTF-8 code points.
inline std::size_t codePoints(std::string_view text)
{
    return static_cast<std::size_t>(
        std::count_if(text.begin(), text.end(), [](char c) { return (static_cast<unsigned char>(c) & 0xC0) != 0x80; }));
}

/// A title over a block of a text answer, underlined.
inline std::string heading(const std::string& text)
{
    return '\n' + text + '\n' + std::string(codePoints(text), '-') + '\n';
}

/// Empty for no part.
inline std::string tagOf(const document::Drawing& drawing, document::PartId id)
{
    const document::Part* part = drawing.find(id);
    return part ? part->tag : std::string();
}

}  // namespace tapward::report
