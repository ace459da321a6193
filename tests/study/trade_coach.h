// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <utility>

#include "document/file.h"
#include "study/presses.h"
#include "support/catch.h"

/// A coach of trade figures, and what the studies' tests do with it.
namespace tapward::test {

inline document::Drawing tradeCoach()
{
    auto drawing = document::load(TAPWARD_SOURCE_DIR "/tests/study/trade_ranges.tapward");
    REQUIRE(drawing.has_value());
    return *drawing;
}

inline void set(document::Drawing& drawing, const char* tag, const char* key, parts::Value value)
{
    for (document::Part& part : drawing.parts) {
        if (part.tag == tag) {
            part.entries[key] = {std::move(value), parts::Basis::Estimated};
        }
    }
}

/// One day only, and nothing beside the presses themselves.
inline study::PressesOptions oneDay(const document::Drawing& drawing, double volts)
{
    study::PressesOptions options;
    options.volts = {volts, volts, "the test"};
    options.supply_C = {drawing.cases[0].start_C, drawing.cases[0].start_C, "the test"};
    options.ambient_C = options.supply_C;
    options.draws = false;
    options.safeWait = false;
    options.protections = false;
    return options;
}

}  // namespace tapward::test
