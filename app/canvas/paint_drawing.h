// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QColor>
#include <QFont>
#include <QRectF>
#include <QString>
#include <string>
#include <vector>

#include "canvas/pipe_use.h"
#include "document/drawing.h"
#include "look/theme.h"
#include "study/prediction.h"

class QPainter;

namespace tapward::app {

struct DrawingLayout;

/// How the drawing is shown. The same choices serve the canvas, paper, SVG and PNG.
struct PaintOptions {
    document::View view = document::View::Both;
    UnitSystem units = UnitSystem::Us;
    Theme theme = Theme::light();    ///< paper and exports always use the light one
    bool labels = true;              ///< tags and shown values beside the symbols
    double labelSize = 9.0;          ///< label letter size in canvas units (pixel size of the font)
    bool hideCrowded = false;        ///< leave out a label that has no room, rather than have it cover another
    bool openPortMarks = false;      ///< hollow marks on ports without a pipe: screen yes, paper on request
    bool keptPictures = false;       ///< symbols from pictures kept between frames: for the canvas only
    const study::Snapshot* snapshot = nullptr;  ///< with it pipes are coloured by temperature at time_s
    double time_s = 0;
    bool flowArrows = true;  ///< arrowheads from the snapshot's flow, else along ends[0] -> ends[1] of hot/return/cold
};

/// Paints the whole drawing as vectors, without a scene. The painter must already be set up so that
/// one module (grid step) is kModule units, x right, y down, in the same place as document::Point * kModule;
/// use drawingBounds() to fit it: painter.translate/scale first. Nothing is painted behind the drawing.
void paintDrawing(QPainter& painter, const document::Drawing& drawing, const PaintOptions& options);
/// The same from a layout made before, with these options.
void paintLayout(QPainter& painter, const DrawingLayout& layout, const PaintOptions& options);

/// The bar of colours with the limits marked, for beside a drawing coloured by temperature.
void paintTemperatureScale(QPainter& painter, const QRectF& box, const PaintOptions& options);

/// Canvas units per module.
inline constexpr double kModule = 10.0;

/// What paintDrawing() covers, in canvas units, labels and line widths included; a null rectangle for
/// nothing to show.
QRectF drawingBounds(const document::Drawing& drawing, document::View view);
QRectF drawingBounds(const document::Drawing& drawing, const PaintOptions& options);

/// One line of the legend: a line style or a symbol that occurs in the drawing.
struct LegendEntry {
    enum class Sample { Symbol, PipeLine, AddedLine, RemovedLine, Crossing, Joined } sample = Sample::Symbol;
    std::string kind;  ///< Symbol: the kind's id
    PipeUse use = PipeUse::Plain;  ///< PipeLine
    QString text;  ///< "Circulator pump", "Hot water pipe"
};

/// The styles and symbols used in this drawing, lines first, then symbols in tray order.
std::vector<LegendEntry> legendEntries(const document::Drawing& drawing);

/// Paints the sample of one legend line, fitted into `box` (painter units; about 3:2 looks best).
/// The text is left to the caller.
void paintLegendSample(QPainter& painter, const LegendEntry& entry, const QRectF& box,
                       const Theme& theme = Theme::light());

}  // namespace tapward::app
