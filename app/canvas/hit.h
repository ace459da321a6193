// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "canvas/drawing_layout.h"

namespace tapward::app {

/// A port's place, or a pipe's loose end.
struct PortSpot {
    document::PipeEnd end;           ///< what a pipe attached here would hold; a loose end has no part
    document::PartId pipe = document::kNoPart;  ///< whose loose end it is
    int pipeEnd = 0;
    QPointF at;
    friend bool operator==(const PortSpot&, const PortSpot&) = default;
};

/// A place on a pipe.
struct PipeSpot {
    document::PartId pipe = document::kNoPart;
    std::size_t segment = 0;         ///< between corners[segment] and the next
    QPointF at;                      ///< the nearest place on it
    double share = 0;                ///< of the drawn length, from ends[0]
    bool level = true;
};

/// What is under a point. Distances in canvas units; callers turn pixels into them by the zoom.
class HitTest {
public:
    HitTest(const document::Drawing& drawing, const DrawingLayout& layout) : m_drawing(drawing), m_layout(layout) {}

    /// The topmost symbol there; a symbol smaller than `least` counts as that large, and then the nearest wins.
    document::PartId symbolAt(const QPointF& at, double least = 0, double slack = 0) const;
    document::PartId labelAt(const QPointF& at) const;
    std::optional<PipeSpot> pipeAt(const QPointF& at, double reach, document::PartId leftOut = document::kNoPart) const;
    /// The nearest free port or loose end within reach. The middle of a symbol belongs to its body, more of it where it is
    /// smaller than `least`, all where it is smaller than half of that; with a `least`, that of any symbol.
    std::optional<PortSpot> portAt(const QPointF& at, double reach, double least = 0) const;
    /// 0 or 1 when that end of the pipe is within reach, as portAt(); -1 when none is.
    int pipeEndAt(document::PartId pipe, const QPointF& at, double reach, double least = 0) const;
    std::vector<PortSpot> openPorts() const;
    /// Everything under the point, topmost first, for cycling with Tab.
    std::vector<document::PartId> allAt(const QPointF& at, double reach, double least = 0) const;
    std::vector<document::PartId> touching(const QRectF& band) const;
    /// A place on this pipe near `at`, on the grid along the pipe when `step` > 0.
    std::optional<PipeSpot> spotOn(document::PartId pipe, const QPointF& at, double step) const;

private:
    std::vector<PortSpot> looseEnds() const;
    bool inAnyBody(const QPointF& at, double least) const;
    bool inBody(const SymbolShape& symbol, const QPointF& at, double least) const;
    const document::Drawing& m_drawing;
    const DrawingLayout& m_layout;
};

}  // namespace tapward::app
