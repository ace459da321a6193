// SPDX-License-Identifier: GPL-3.0-or-later
#include "canvas/heat_painter.h"

#include <QPainter>
#include <algorithm>
#include <cmath>

#include "canvas/canvas_text.h"
#include "canvas/shape_painter.h"
#include "canvas/temperature_scale.h"

namespace tapward::app {

namespace {

constexpr double kBand = 4.6;      // width of the coloured band, canvas units
constexpr double kStillFlow = 1e-7;  // m³/s, a tenth of a millilitre a second: drawn as standing

/// A place along the corners with the way the pipe runs there.
struct Spot {
    QPointF at, along;
};

Spot spotAt(const std::vector<QPointF>& corners, double distance)
{
    for (std::size_t i = 0; i + 1 < corners.size(); ++i) {
        const QPointF d = corners[i + 1] - corners[i];
        const double length = std::hypot(d.x(), d.y());
        if (length <= 0)
            continue;
        if (distance <= length || i + 2 == corners.size())
            return {corners[i] + d * std::min(1.0, distance / length), d / length};
        distance -= length;
    }
    return {corners.empty() ? QPointF() : corners.front(), {1, 0}};
}

double lengthOf(const std::vector<QPointF>& corners)
{
    double sum = 0;
    for (std::size_t i = 0; i + 1 < corners.size(); ++i)
        sum += std::hypot(corners[i + 1].x() - corners[i].x(), corners[i + 1].y() - corners[i].y());
    return sum;
}

void paintBand(QPainter& painter, const PipeShape& pipe, const HeatTrack& heat, double length)
{
    QPen pen;
    pen.setWidthF(kBand);
    pen.setCapStyle(Qt::FlatCap);
    double walked = 0;
    for (std::size_t i = 0; i + 1 < pipe.corners.size(); ++i) {
        const QPointF a = pipe.corners[i], b = pipe.corners[i + 1];
        const double piece = std::hypot(b.x() - a.x(), b.y() - a.y());
        if (piece <= 0)
            continue;
        const int steps = std::max(1, static_cast<int>(std::ceil(piece / 3.0)));
        for (int k = 0; k < steps; ++k) {
            const double from = static_cast<double>(k) / steps, to = static_cast<double>(k + 1) / steps;
            const double share = (walked + piece * (from + to) / 2) / length;
            const auto point = static_cast<std::size_t>(std::clamp(share * heat.points, 0.0, heat.points - 1.0));
            pen.setColor(temperatureColour(heat.celsius[point]));
            painter.setPen(pen);
            // A hair longer than its share, so that no seams show between the colours.
            painter.drawLine(a + (b - a) * from, a + (b - a) * std::min(1.0, to + 0.2 / piece));
        }
        walked += piece;
    }
}

void paintHatch(QPainter& painter, const PipeShape& pipe, const HeatTrack& heat, double length, const Theme& theme)
{
    for (double at = 4; at < length - 2; at += 7) {
        const auto point = static_cast<std::size_t>(std::clamp(at / length * heat.points, 0.0, heat.points - 1.0));
        const auto band = heatBand(heat.celsius[point]);
        if (band == HeatBand::Cool)
            continue;
        const Spot spot = spotAt(pipe.corners, at);
        const QPointF across(-spot.along.y(), spot.along.x());
        painter.setPen(QPen(theme.ink, 1.1));
        if (band == HeatBand::Scalding)  // strokes that stand out on both sides of the band
            painter.drawLine(spot.at - across * 5.5 - spot.along * 1.5, spot.at + across * 5.5 + spot.along * 1.5);
        else
            painter.drawLine(spot.at + across * 2.3, spot.at + across * 5.0);
    }
}

void paintNumber(QPainter& painter, const PipeShape& pipe, const HeatTrack& heat, double length, const PaintOptions& options)
{
    const double celsius = heat.celsius[static_cast<std::size_t>(heat.points / 2)];
    const QString text = QString::fromStdString(show({celsius, Quantity::Temperature}, options.units));
    const double size = options.labelSize * 0.95;
    const double width = textWidth(text, size) + 4;
    const Spot spot = spotAt(pipe.corners, length / 2);
    const bool level = std::abs(spot.along.y()) < 0.5;
    if (length < (level ? width + 12 : lineHeight(size) + 10))
        return;
    const QRectF box(spot.at.x() - width / 2, spot.at.y() - lineHeight(size) / 2, width, lineHeight(size));
    painter.setPen(QPen(options.theme.ink, 0.6));
    painter.setBrush(options.theme.paper);
    painter.drawRoundedRect(box, 2, 2);
    painter.setPen(options.theme.text);
    drawText(painter, {box.left() + 2, box.center().y() + 0.36 * size}, text, size);
}

}  // namespace

HeatTrack heatTrack(const PaintOptions& options, document::PartId pipe)
{
    const auto* snapshot = options.snapshot;
    if (snapshot == nullptr || snapshot->empty())
        return {};
    for (std::size_t i = 0; i < snapshot->tracks.size(); ++i) {
        const auto& track = snapshot->tracks[i];
        if (track.part != pipe || track.points <= 0)
            continue;
        const std::size_t moment = snapshot->momentAt(options.time_s);
        const auto first = moment * snapshot->stride + track.offset;
        const auto count = static_cast<std::size_t>(track.points);
        if (first + count > snapshot->celsius.size())
            return {};
        return {track.points, std::span(snapshot->celsius).subspan(first, count),
                snapshot->flow_m3s[moment * snapshot->tracks.size() + i]};
    }
    return {};
}

void paintHeat(QPainter& painter, const PipeShape& pipe, const HeatTrack& heat, const PaintOptions& options)
{
    const double length = lengthOf(pipe.corners);
    if (length <= 0)
        return;
    // A thin edge keeps dark water visible on a dark ground and light water on white.
    QPen edge(options.theme.ink, kBand + 1.6);
    edge.setCapStyle(Qt::FlatCap);
    edge.setJoinStyle(Qt::MiterJoin);
    painter.setPen(edge);
    painter.drawPolyline(QPolygonF(QList<QPointF>(pipe.corners.begin(), pipe.corners.end())));
    paintBand(painter, pipe, heat, length);
    paintHatch(painter, pipe, heat, length, options.theme);
    if (options.flowArrows && std::abs(heat.flow_m3s) > kStillFlow) {
        const double sign = heat.flow_m3s > 0 ? 1 : -1;
        for (double at = std::min(14.0, length / 2); at < length - 6; at += 60) {
            const Spot spot = spotAt(pipe.corners, at);
            painter.setPen(Qt::NoPen);
            paintArrow(painter, spot.at, spot.along * sign, 12, options.theme.paper);
            paintArrow(painter, spot.at, spot.along * sign, 9, options.theme.ink);
        }
    }
    paintNumber(painter, pipe, heat, length, options);
}

}  // namespace tapward::app
