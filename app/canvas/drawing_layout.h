// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <map>
#include <QLineF>
#include <QPainterPath>
#include <QPointF>
#include <QRectF>
#include <QStringList>
#include <QTransform>
#include <vector>

#include "canvas/paint_drawing.h"
#include "canvas/pipe_use.h"
#include "document/drawing.h"
#include "document/route.h"

namespace tapward::app {

/// A pipe as it lies on the canvas.
struct PipeShape {
    document::PartId id = document::kNoPart;
    document::Stage stage = document::Stage::Existing;
    PipeTrace trace;
    std::vector<QPointF> corners;    ///< ends included
    QPainterPath path;               ///< with hops where it passes over another pipe
    QPainterPath hops;               ///< those alone
    std::array<bool, 2> loose{};     ///< an end that hangs free
    std::vector<QPointF> over;       ///< where it passes over another pipe
    std::vector<QPointF> under;      ///< where another one passes over it
    friend bool operator==(const PipeShape& a, const PipeShape& b);
};

/// A part's symbol as it stands on the canvas.
struct SymbolShape {
    document::PartId id = document::kNoPart;
    const parts::PartKind* kind = nullptr;
    document::Stage stage = document::Stage::Existing;
    QPointF at;
    int turn = 0;
    bool flipped = false;
    std::vector<QPointF> openPorts;  ///< ports that miss a pipe
    QString text;                    ///< of a note: what it says, drawn inside; of a dimension: what it measures
    std::vector<QLineF> lines;       ///< of a dimension: the line, then what leads to its two ends
    QRectF box() const;              ///< turned symbol box on the canvas
    QRectF reach(double letters) const;  ///< with the lines and their text, letters of this size
    friend bool operator==(const SymbolShape&, const SymbolShape&) = default;
};

/// Tag and values beside a part, or along a pipe.
struct LabelShape {
    document::PartId id = document::kNoPart;
    document::Stage stage = document::Stage::Existing;
    QString tag;
    QStringList values;
    QRectF box;                      ///< canvas units
    Qt::Alignment align = Qt::AlignLeft;
    double size = 9;                 ///< letter size in canvas units
    friend bool operator==(const LabelShape&, const LabelShape&) = default;
};

/// Where a pipe's temperature is written while the drawing shows a moment.
struct NumberShape {
    document::PartId id = document::kNoPart;
    double share = 0.5;              ///< along the pipe, from ends[0]
    QRectF box;                      ///< wide enough for any water temperature
    double size = 9;
    friend bool operator==(const NumberShape&, const NumberShape&) = default;
};

/// The join through an absent part with two present pipes.
struct BridgeShape {
    document::PartId part = document::kNoPart;
    PipeUse use = PipeUse::Plain;
    QPointF a, middle, b;
    friend bool operator==(const BridgeShape&, const BridgeShape&) = default;
};

/// Where everything is, for one view. Items, print and hit testing all read it.
struct DrawingLayout {
    std::vector<PipeShape> pipes;      ///< by id
    std::vector<SymbolShape> symbols;  ///< by id
    std::vector<LabelShape> labels;
    std::vector<BridgeShape> bridges;
    std::vector<NumberShape> numbers;  ///< only with a snapshot
    QRectF bounds;

    const PipeShape* pipe(document::PartId id) const;
    const SymbolShape* symbol(document::PartId id) const;
};

/// @param routes  the ways found for the drawing before it changed, if it is laid out again and again
DrawingLayout layoutOf(const document::Drawing& drawing, const PaintOptions& options,
                       document::RouteMemory* routes = nullptr);

/// The same drawing in the same view and units with other letters, or with or without a snapshot.
void relabel(const document::Drawing& drawing, const PaintOptions& options, DrawingLayout& layout);

QPointF toCanvas(const document::Point& point);
document::Point toDrawing(const QPointF& point);

/// The values a kind shows beside its symbol, in the reader's units.
QStringList shownValues(const document::Part& part, UnitSystem units);

/// Free sides for the labels: hand-placed ones stay, the others go where they cover least.
/// With a snapshot the pipes get numbers instead of labels.
void placeLabels(const document::Drawing& drawing, const PaintOptions& options, DrawingLayout& layout);

}  // namespace tapward::app
