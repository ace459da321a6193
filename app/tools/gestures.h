// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>

#include "canvas/hit.h"
#include "document/edit.h"

namespace tapward::app {

/// Where a pipe starts or ends while it is drawn: a port, a loose end, a place on a pipe, or the empty canvas.
struct Anchor {
    std::optional<PortSpot> port;
    std::optional<PipeSpot> pipe;
    QPointF at;
    bool isEmpty() const { return !port && !pipe; }
};

/// A pipe between two anchors as one edit. A place on a pipe becomes a tee whose branch faces the other
/// anchor; a loose end is carried on, not doubled.
Result<document::Edit> connectAnchors(const document::Drawing& drawing, const Anchor& from, const Anchor& to,
                                      document::Stage stage);

/// One end of a pipe taken to another place: a port, a pipe (with a tee), a loose end, or the empty canvas.
/// The pipe's values and hand-made bends stay.
Result<document::Edit> moveEnd(const document::Drawing& drawing, document::PartId pipe, int end, const Anchor& to,
                               document::Stage stage);

/// What `placed` does, and the part's port joined to `partner` by a pipe; a loose end is carried on to it.
Result<document::Edit> joinedTo(const document::Drawing& drawing, Result<document::Edit> placed, document::PartId part,
                                const std::string& port, const PortSpot& partner, document::Stage stage);

/// A part of this kind put down at `at`: into the pipe of `target` if there is one, else by itself. Pipe
/// kinds become a short loose pipe.
Result<document::Edit> putDown(const document::Drawing& drawing, std::string_view kind, const QPointF& at,
                               const std::optional<PipeSpot>& target, document::Stage stage, int turn);

/// One straight piece of a pipe shifted sideways; bends that fall into line vanish, and a pipe that is
/// back on its own route has no hand-made bends left.
Result<document::Edit> shiftSegment(const document::Drawing& drawing, const PipeShape& pipe, std::size_t segment,
                                    double by);

/// Forgets the hand-made bends.
Result<document::Edit> rerouted(const document::Drawing& drawing, const std::vector<document::PartId>& ids);

/// A label moved to an offset from its part's centre; nullopt lets it find its own place again.
Result<document::Edit> labelMoved(const document::Drawing& drawing, document::PartId id,
                                  std::optional<document::Point> offset);

/// Both as one edit with the first one's title. The second must have been made for the drawing after the first.
document::Edit joined(document::Edit first, document::Edit second);

/// A new part on the loose end of a pipe, turned to it.
Result<document::Edit> putAtEnd(const document::Drawing& drawing, document::PartId pipe, int end, std::string_view kind,
                                document::Stage stage);

/// A part and the new kind beside it, joined by a pipe where both have a free port facing each other; on a
/// pipe with a loose end the new part goes there, on any other into its middle. For building without a mouse.
Result<document::Edit> putAfter(const document::Drawing& drawing, const DrawingLayout& layout, document::PartId after,
                                std::string_view kind, document::Stage stage);

}  // namespace tapward::app
