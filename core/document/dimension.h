// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <array>
#include <optional>
#include <vector>

#include "document/edit.h"

// Dimensions: lengths as they were measured, written between two parts of the drawing.
namespace tapward::document {

/// How a dimension is drawn. An end follows the part it names; an end that names none stands half the width from
/// the dimension's own place. The line is level, or upright when the dimension is turned, and goes through its place.
struct DimensionLine {
    Point a, b;                                ///< the line, stretched to the text where that stands outside
    std::array<std::array<Point, 2>, 2> reach;  ///< from what is measured to the line; both points alike for a free end
};
/// Nothing for parts of another kind.
std::optional<DimensionLine> dimensionLine(const Drawing& drawing, const Part& part);

/// A dimension between two parts, or along a pipe between two parts with the pipe's length; beside what is drawn.
Result<Edit> dimensionBetween(const Drawing& drawing, const std::vector<PartId>& selection);
/// Whether dimensionBetween() would know its two ends.
bool givesDimension(const Drawing& drawing, const std::vector<PartId>& selection);

}  // namespace tapward::document
