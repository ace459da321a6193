// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>
#include <utility>
#include <vector>

#include "base/message.h"
#include "document/drawing.h"

namespace tapward::report {

/// One table to fill in by hand. Texts that come from the drawing stand in their cells; the rest is empty.
struct BlankTable {
    std::string title;
    struct Column {
        std::string title;
        double share;            ///< of the width, relative to the other columns
        std::string unit = {};   ///< what to write in
    };
    std::vector<Column> columns;
    std::vector<std::vector<Message>> rows;
};

/// A sheet to take into the coach and fill in with a pencil: what to measure, cautions, and tables with the
/// drawing's tags when it has parts, else with empty lines. Lengths and the like ask for the reader's units.
struct BlankSurvey {
    std::string title;
    std::vector<std::pair<std::string, std::string>> header;  ///< label, text (may be empty: a line to write on)
    std::vector<std::string> measure;
    std::vector<std::string> cautions;
    std::vector<BlankTable> tables;
    std::vector<std::string> footnotes;
};
BlankSurvey blankSurvey(const document::Drawing& drawing, UnitSystem units);

}  // namespace tapward::report
