// SPDX-License-Identifier: GPL-3.0-or-later
#include "canvas/shape_painter.h"

#include <algorithm>
#include <cmath>
#include <initializer_list>
#include <QPainter>

#include "canvas/canvas_text.h"
#include "canvas/heat_painter.h"
#include "look/symbols.h"

namespace tapward::app {

namespace {

constexpr double kLine = 1.6;       // ordinary pipe and symbol line, canvas units
constexpr double kHeavyLine = 2.8;  // what the job adds

QColor useColour(PipeUse use, const Theme& theme)
{
    switch (use) {
    case PipeUse::Cold:
        return theme.cold;
    case PipeUse::Hot:
        return theme.hot;
    case PipeUse::Return:
        return theme.returning;
    case PipeUse::Plain:
        break;
    }
    return theme.ink;
}

void paintCross(QPainter& painter, const QPointF& at, double half)
{
    painter.drawLine(at - QPointF(half, half), at + QPointF(half, half));
    painter.drawLine(at - QPointF(half, -half), at + QPointF(half, -half));
}

struct Stretch {
    QPointF a, b;
    double length;
};

Stretch longest(const std::vector<QPointF>& corners)
{
    Stretch best{{}, {}, 0};
    for (std::size_t i = 0; i + 1 < corners.size(); ++i) {
        const QPointF d = corners[i + 1] - corners[i];
        const double length = std::hypot(d.x(), d.y());
        if (length > best.length)
            best = {corners[i], corners[i + 1], length};
    }
    return best;
}

void paintCrossesAlong(QPainter& painter, const std::vector<QPointF>& corners)
{
    for (std::size_t i = 0; i + 1 < corners.size(); ++i) {
        const QPointF d = corners[i + 1] - corners[i];
        const double length = std::hypot(d.x(), d.y());
        const int count = length < 18 ? 0 : std::max(1, static_cast<int>(length / 45));
        for (int k = 0; k < count; ++k)
            paintCross(painter, corners[i] + d * ((k + 0.5) / count), 3.2);
    }
}

/// How far along the piece an arrowhead is best seen: the middle, or beside it where pipes cross.
double arrowShare(const PipeShape& pipe, const Stretch& stretch)
{
    const auto gap = [&](double share) {
        const QPointF at = stretch.a + (stretch.b - stretch.a) * share;
        double least = 1e9;
        for (const auto* places : {&pipe.over, &pipe.under})
            for (const auto& place : *places)
                least = std::min(least, std::hypot(place.x() - at.x(), place.y() - at.y()));
        return least;
    };
    for (const double share : {0.5, 0.38, 0.62, 0.28, 0.72})
        if (gap(share) > 10)
            return share;
    return 0.5;
}

void paintLooseEnd(QPainter& painter, const QPointF& at, const Theme& theme)
{
    QPen pen(theme.caution, 1.4);
    painter.setPen(pen);
    painter.setBrush(theme.paper);
    painter.drawEllipse(at, 3.0, 3.0);
}

void paintNote(QPainter& painter, const SymbolShape& symbol, const PaintOptions& options)
{
    const QRectF box = symbol.box();
    const double size = options.labelSize;
    // Words wrap at the box; the note grows downward rather than shrink its letters.
    QStringList lines;
    for (const auto& paragraph : symbol.text.split(QLatin1Char('\n'))) {
        QString line;
        for (const auto& word : paragraph.split(QLatin1Char(' '))) {
            const QString longer = line.isEmpty() ? word : line + QLatin1Char(' ') + word;
            if (!line.isEmpty() && textWidth(longer, size) > box.width() - 4) {
                lines << line;
                line = word;
            } else {
                line = longer;
            }
        }
        lines << line;
    }
    painter.setPen(options.theme.text);
    for (qsizetype i = 0; i < lines.size(); ++i)
        drawText(painter, {box.left() + 2, box.top() + 2 + size + lineHeight(size) * static_cast<double>(i)}, lines[i],
                 size);
}

/// A thin line with oblique strokes at its ends (ISO 129-1 allows them for arrowheads), its text in a gap of it.
void paintDimension(QPainter& painter, const SymbolShape& symbol, const PaintOptions& options)
{
    const QColor ink = options.theme.quietText;
    painter.setPen(QPen(ink, 0.9));
    for (const auto& line : symbol.lines)
        if (!line.isNull())
            painter.drawLine(line);
    painter.setPen(QPen(ink, 1.4));
    for (std::size_t end = 1; end < symbol.lines.size(); ++end) {
        const QPointF at = symbol.lines[end].p2();
        painter.drawLine(at + QPointF(-3.5, 3.5), at + QPointF(3.5, -3.5));
    }
    const double size = options.labelSize, width = textWidth(symbol.text, size);
    const QRectF gap(symbol.at.x() - width / 2 - 3, symbol.at.y() - 0.65 * size, width + 6, 1.3 * size);
    painter.fillRect(gap, options.theme.paper);
    painter.setPen(options.theme.text);
    drawText(painter, {symbol.at.x() - width / 2, symbol.at.y() + 0.35 * size}, symbol.text, size);
}

}  // namespace

document::Stage drawnStage(document::Stage stage, document::View view)
{
    return view == document::View::Before ? document::Stage::Existing : stage;
}

QPen pipePen(PipeUse use, const Theme& theme, bool heavy)
{
    const double width = heavy ? kHeavyLine : kLine;
    QPen pen(useColour(use, theme), width);
    pen.setCapStyle(Qt::FlatCap);
    pen.setJoinStyle(Qt::MiterJoin);
    const int dots = use == PipeUse::Cold ? 1 : use == PipeUse::Hot ? 2 : use == PipeUse::Return ? 3 : 0;
    if (dots > 0) {
        // Canvas units: one long dash, then the dots, evenly spaced. A heavier line gets longer gaps.
        const double gap = heavy ? 3.6 : 2.8, dot = heavy ? 2.8 : 2.0;
        QList<qreal> pattern{16.0 / width, gap / width};
        for (int i = 0; i < dots; ++i)
            pattern << dot / width << gap / width;
        pen.setDashPattern(pattern);
    }
    return pen;
}

void paintArrow(QPainter& painter, const QPointF& at, const QPointF& direction, double size, const QColor& colour)
{
    const QPointF along = direction * size, across(-direction.y() * size * 0.55, direction.x() * size * 0.55);
    const QPointF back = at - along * 0.5;
    painter.setPen(Qt::NoPen);
    painter.setBrush(colour);
    painter.drawPolygon(QPolygonF{at + along * 0.5, back + across, back - across});
}

std::optional<Arrow> arrowOf(const PipeShape& pipe, document::View view)
{
    const Stretch stretch = longest(pipe.corners);
    if (pipe.trace.direction == 0 || stretch.length < 26)
        return std::nullopt;
    const QPointF way = (stretch.b - stretch.a) / stretch.length;
    return Arrow{.at = stretch.a + (stretch.b - stretch.a) * arrowShare(pipe, stretch),
                 .way = pipe.trace.direction < 0 ? -way : way,
                 .size = drawnStage(pipe.stage, view) == document::Stage::Added ? 8.5 : 7.0};
}

void paintPipe(QPainter& painter, const PipeShape& pipe, const PaintOptions& options)
{
    const auto stage = drawnStage(pipe.stage, options.view);
    painter.save();
    painter.setBrush(Qt::NoBrush);
    const HeatTrack heat = heatTrack(options, pipe.id);
    if (heat.points > 0) {
        paintHeat(painter, pipe, heat, options);
    } else if (stage == document::Stage::Removed) {
        QPen pen(options.theme.removed, kLine);
        pen.setDashPattern({4, 3});
        pen.setCapStyle(Qt::FlatCap);
        painter.setPen(pen);
        painter.drawPath(pipe.path);
        painter.setPen(QPen(options.theme.removed, 1.2));
        paintCrossesAlong(painter, pipe.corners);
    } else {
        const bool heavy = stage == document::Stage::Added;
        const QPen pen = pipePen(pipe.trace.use, options.theme, heavy);
        painter.setPen(pen);
        painter.drawPath(pipe.path);
        if (!pipe.hops.isEmpty()) {  // whole, or a gap of the pattern would hide them
            painter.setPen(QPen(pen.color(), pen.widthF()));
            painter.drawPath(pipe.hops);
        }
        if (const auto arrow = arrowOf(pipe, options.view); arrow && options.flowArrows)
            paintArrow(painter, arrow->at, arrow->way, arrow->size, pen.color());
    }
    for (std::size_t end = 0; end < 2; ++end)
        if (pipe.loose[end] && options.openPortMarks && !pipe.corners.empty())
            paintLooseEnd(painter, end == 0 ? pipe.corners.front() : pipe.corners.back(), options.theme);
    painter.restore();
}

void paintBridge(QPainter& painter, const BridgeShape& bridge, const PaintOptions& options)
{
    painter.save();
    painter.setPen(pipePen(bridge.use, options.theme, false));
    painter.drawPolyline(QPolygonF{bridge.a, bridge.middle, bridge.b});
    painter.restore();
}

void paintShape(QPainter& painter, const SymbolShape& symbol, const PaintOptions& options)
{
    const auto stage = drawnStage(symbol.stage, options.view);
    const bool removed = stage == document::Stage::Removed;
    painter.save();
    if (!symbol.lines.empty()) {
        paintDimension(painter, symbol, options);
    } else if (!symbol.text.isEmpty()) {
        paintNote(painter, symbol, options);
    } else {
        painter.translate(symbol.at);
        const auto paint = options.keptPictures ? paintSymbolOnScreen : paintSymbol;
        paint(painter, symbol.kind->id,
              {.ink = removed ? options.theme.removed : options.theme.ink,
               .paper = options.theme.paper,
               .weight = removed                           ? Weight::Dashed
                         : stage == document::Stage::Added ? Weight::Heavy
                                                           : Weight::Normal,
               .turn = symbol.turn,
               .flipped = symbol.flipped});
        painter.translate(-symbol.at);
    }
    if (removed) {
        const QRectF box = symbol.box();
        painter.setPen(QPen(options.theme.removed, 1.6));
        painter.drawLine(box.topLeft(), box.bottomRight());
        painter.drawLine(box.topRight(), box.bottomLeft());
    }
    if (options.openPortMarks) {
        for (const auto& port : symbol.openPorts)
            paintLooseEnd(painter, port, options.theme);
    }
    painter.restore();
}

void paintLabel(QPainter& painter, const LabelShape& label, const PaintOptions& options)
{
    const bool removed = drawnStage(label.stage, options.view) == document::Stage::Removed;
    painter.save();
    double y = label.box.top();
    const auto line = [&](const QString& text, bool bold) {
        const double spare = label.box.width() - textWidth(text, label.size, bold);
        const double x = label.align & Qt::AlignRight     ? label.box.left() + spare
                         : label.align & Qt::AlignHCenter ? label.box.left() + spare / 2
                                                          : label.box.left();
        drawText(painter, {x, y + 0.95 * label.size}, text, label.size, bold);
        y += lineHeight(label.size);
    };
    if (!label.tag.isEmpty()) {
        painter.setPen(removed ? options.theme.removed : options.theme.text);
        line(label.tag, true);
    }
    painter.setPen(removed ? options.theme.removed : options.theme.quietText);
    for (const auto& value : label.values)
        line(value, false);
    painter.restore();
}

}  // namespace tapward::app
