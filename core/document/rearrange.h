// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <vector>

#include "document/edit.h"

// Gestures on parts that are already in the drawing; like those of edit.h none changes it.
namespace tapward::document {

/// A part that hangs on no pipe is put into this one: as splitPipe(), but the part keeps its id, tag, stage
/// and values. @return a Problem when the part does not go into a line or a pipe already ends on it
Result<Edit> putIntoPipe(const Drawing& drawing, PartId part, PartId pipe, Point at, double share);

/// The opposite: the two pipes of an in-line part become one again (lengths and fittings added), the part
/// stays, free, moved by (dx, dy). @return a Problem unless exactly two pipes end on it
Result<Edit> takeOutOfPipe(const Drawing& drawing, PartId part, double dx, double dy);

enum class Alignment { Left, Centre, Right, Top, Middle, Bottom };
/// Symbols moved until their edges or middles lie on one line: that of the outermost one, or the middle of
/// all. Pipes follow. @return a Problem for fewer than two symbols
Result<Edit> alignParts(const Drawing& drawing, const std::vector<PartId>& ids, Alignment alignment);

/// The gaps between symbols made equal between the two outermost ones. @return a Problem for fewer than three
Result<Edit> distributeParts(const Drawing& drawing, const std::vector<PartId>& ids, bool horizontally);

/// Symbols on whole modules, those nearly in one row or column exactly in it, and the pipes between them
/// routed anew. Takes the pipes' hand-made bends away. @return a Problem when all is tidy already
Result<Edit> tidyParts(const Drawing& drawing, const std::vector<PartId>& ids);

/// The right part of a long drawing turned back under the left one, so that it is half as wide: mirrored, with its labels and
/// bends; pipes from row to row are routed anew, real lengths and everything else stay.
/// @return a Problem for a drawing less than 3.5 times as wide as high, one on a floor plan, and one without a gap
/// between symbols in its middle third
Result<Edit> layInTwoRows(const Drawing& drawing);

}  // namespace tapward::document
