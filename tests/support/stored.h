// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>

#include "document/file.h"
#include "support/catch.h"

namespace tapward::test {

/// The drawing kept under this path of the sources.
inline document::Drawing stored(const std::string& path)
{
    auto drawing = document::load(std::string(TAPWARD_SOURCE_DIR "/") + path);
    INFO(path << ": " << (drawing ? "" : render(drawing.error().what, UnitSystem::Us)));
    REQUIRE(drawing.has_value());
    return *drawing;
}

}  // namespace tapward::test
