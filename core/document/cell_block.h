// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "base/result.h"

namespace tapward::document {

/// Cells as a spreadsheet gives and takes them: rows of texts, not necessarily of one length.
using CellBlock = std::vector<std::vector<std::string>>;

/// Bounds on what a clipboard may bring.
struct CellLimits {
    std::size_t bytes = 2u << 20;
    std::size_t rows = 5000;
    std::size_t columns = 256;
    std::size_t cellBytes = 8192;
};

/// Reads a block copied from a spreadsheet: columns parted by tabs, or CSV (comma or semicolon) when there is no
/// tab; quotes as in RFC 4180, so a quoted cell may hold separators and line ends. Lines such as "0,7" that are
/// nothing but numbers with a decimal comma are one column. Blanks around unquoted cells go; empty lines at the
/// end go. Errors: too large, not UTF-8, a quote that is never closed.
Result<CellBlock> readCells(std::string_view text, const CellLimits& limits = {});

/// Whether a spreadsheet would run the text as a formula: it begins with = + - @ or a blank control character and is no
/// number (a unit may follow it).
bool readsAsFormula(std::string_view text);

/// The block as tab separated text with quotes where needed: readCells(writeCells(b)) is b but for blanks around
/// cells and empty last rows. A cell that would be run as a formula gets an apostrophe before it, which readCells()
/// takes off again.
std::string writeCells(const CellBlock& block);

}  // namespace tapward::document
