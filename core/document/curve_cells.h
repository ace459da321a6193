// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "document/cell_block.h"
#include "parts/part_kind.h"

namespace tapward::document {

/// A curve from two columns of a spreadsheet, in the reader's units (or with units of their own). A first row of
/// words is taken for headings; rows may come in any order and are sorted by the first column; empty rows go.
/// Errors (`where` is the row, from 1): fewer than two columns, a cell that is no number, readings a curve of this
/// field may not have.
Result<parts::Curve> readCurve(const CellBlock& block, const parts::PartKind& kind, const parts::Field& field,
                               UnitSystem units);

/// The readings as cells to copy out.
CellBlock curveCells(const parts::Curve& curve, const parts::Field& field, UnitSystem units);

}  // namespace tapward::document
