// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "canvas/canvas_view.h"
#include "document/rearrange.h"

namespace tapward::app {

/// A long drawing laid in two rows and shown whole, as a step of its own, so that Undo takes back that alone.
/// @return why it stays as it is, or nothing
inline std::optional<Problem> layRows(CanvasView& view)
{
    auto problem = view.session().perform(document::layInTwoRows(view.session().drawing()));
    if (!problem)
        view.fitDrawing();
    return problem;
}

}  // namespace tapward::app
