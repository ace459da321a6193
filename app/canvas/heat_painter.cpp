// SPDX-License-Identifier: GPL-3.0-or-later
#include "canvas/heat_painter.h"

#include <algorithm>
#include <cmath>
#include <QLineF>
#include <QList>
#include <QPainter>
#include <QPainterPath>

#include "canvas/canvas_text.h"
#include "canvas/shape_painter.h"
#include "canvas/temperature_scale.h"
#include "review/scald.h"

namespace tapward::app {

namespace {

constexpr double kBand = 4.6;      // width of the coloured band, canvas units
constexpr double kGap = 5.5;       // half the gap where it passes over another pipe

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

/// A band is too wide to hop: the pipe on top of a crossing leaves a gap, so that nothing looks joined.
bool inGap(const PipeShape& pipe, const QPointF& at)
{
    for (const auto& place : pipe.over)
        if (std::abs(place.x() - at.x()) < kGap && std::abs(place.y() - at.y()) < 0.5)
            return true;
    return false;
}

/// The pipe's line with its gaps.
QPainterPath gappedPath(const PipeShape& pipe)
{
    QPainterPath path;
    if (pipe.corners.empty())
        return path;
    path.moveTo(pipe.corners.front());
    for (std::size_t i = 0; i + 1 < pipe.corners.size(); ++i) {
        const QPointF a = pipe.corners[i], b = pipe.corners[i + 1];
        std::vector<double> cuts;
        for (const auto& place : pipe.over)
            if (std::abs(place.y() - a.y()) < 0.5 && std::abs(a.y() - b.y()) < 0.01
                && (place.x() - a.x()) * (place.x() - b.x()) < 0)
                cuts.push_back(place.x());
        std::ranges::sort(cuts, [&](double x, double y) { return a.x() < b.x() ? x < y : x > y; });
        const double sign = a.x() < b.x() ? 1 : -1;
        for (const double x : cuts) {
            path.lineTo(x - sign * kGap, a.y());
            path.moveTo(x + sign * kGap, a.y());
        }
        path.lineTo(b);
    }
    return path;
}

/// The band piece by piece; neighbours of one colour are painted as one, and as rectangles, which need no stroker.
void paintBand(QPainter& painter, const PipeShape& pipe, const HeatTrack& heat, double length)
{
    double walked = 0;
    for (std::size_t i = 0; i + 1 < pipe.corners.size(); ++i) {
        const QPointF a = pipe.corners[i], b = pipe.corners[i + 1];
        const double piece = std::hypot(b.x() - a.x(), b.y() - a.y());
        if (piece <= 0)
            continue;
        const QPointF along = (b - a) / piece, across(std::abs(along.y()) * kBand / 2, std::abs(along.x()) * kBand / 2);
        const int steps = std::max(1, static_cast<int>(std::ceil(piece / 3.0)));
        QRgb colour = 0;  // of the run that is open; 0: none is
        double from = 0, to = 0;
        const auto close = [&] {
            if (colour == 0)
                return;
            // A hair longer than its share, so that no seams show between the colours.
            const QRectF line = QRectF(a + along * from, a + along * std::min(piece, to + 0.2)).normalized();
            painter.fillRect(line.adjusted(-across.x(), -across.y(), across.x(), across.y()), QColor(colour));
            colour = 0;
        };
        for (int k = 0; k < steps; ++k) {
            const double begin = piece * k / steps, end = piece * (k + 1) / steps, middle = (begin + end) / 2;
            const double share = (walked + middle) / length;
            const auto point = static_cast<std::size_t>(std::clamp(share * heat.points, 0.0, heat.points - 1.0));
            if (inGap(pipe, a + along * middle)) {
                close();
                continue;
            }
            const QRgb now = temperatureColour(heat.celsius[point]).rgb();
            if (now != colour) {
                close();
                colour = now;
                from = begin;
            }
            to = end;
        }
        close();
        walked += piece;
    }
}

void paintHatch(QPainter& painter, const PipeShape& pipe, const HeatTrack& heat, double length, const Theme& theme)
{
    QList<QLineF> strokes;
    for (double at = 4; at < length - 2; at += 7) {
        const auto point = static_cast<std::size_t>(std::clamp(at / length * heat.points, 0.0, heat.points - 1.0));
        const auto band = heatBand(heat.celsius[point]);
        if (band == HeatBand::Cool)
            continue;
        const Spot spot = spotAt(pipe.corners, at);
        if (inGap(pipe, spot.at))
            continue;
        const QPointF across(-spot.along.y(), spot.along.x());
        if (band == HeatBand::Scalding)  // strokes that stand out on both sides of the band
            strokes << QLineF(spot.at - across * 5.5 - spot.along * 1.5, spot.at + across * 5.5 + spot.along * 1.5);
        else
            strokes << QLineF(spot.at + across * 2.3, spot.at + across * 5.0);
    }
    if (strokes.isEmpty())
        return;
    painter.setPen(QPen(theme.ink, 1.1));
    painter.drawLines(strokes);
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
    painter.drawPath(gappedPath(pipe));
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
}

void paintNumber(QPainter& painter, const NumberShape& number, const PaintOptions& options)
{
    const HeatTrack heat = heatTrack(options, number.id);
    if (heat.points == 0)
        return;
    const auto point = static_cast<std::size_t>(std::clamp(number.share * heat.points, 0.0, heat.points - 1.0));
    const QString text = QString::fromStdString(show({heat.celsius[point], Quantity::Temperature}, options.units));
    const double width = textWidth(text, number.size);
    const QPointF middle = number.box.center();
    const QRectF box(middle.x() - width / 2 - 2, number.box.top(), width + 4, number.box.height());
    painter.save();
    painter.setPen(QPen(options.theme.ink, 0.6));
    painter.setBrush(options.theme.paper);
    painter.drawRoundedRect(box, 2, 2);
    painter.setPen(options.theme.text);
    drawText(painter, {middle.x() - width / 2, middle.y() + 0.36 * number.size}, text, number.size);
    painter.restore();
}

void paintTemperatureScale(QPainter& painter, const QRectF& box, const PaintOptions& options)
{
    const double size = box.height() * 0.36;
    const QRectF bar(box.left(), box.top(), box.width(), box.height() * 0.4);
    const int steps = 60;
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing, false);
    painter.setPen(Qt::NoPen);
    for (int i = 0; i < steps; ++i) {
        const double share = (i + 0.5) / steps;
        painter.setBrush(temperatureColour(kScaleCold_C + share * (kScaleHot_C - kScaleCold_C)));
        painter.drawRect(
            QRectF(bar.left() + bar.width() * i / steps, bar.top(), bar.width() / steps + 0.5, bar.height()));
    }
    painter.setRenderHint(QPainter::Antialiasing, true);
    painter.setBrush(Qt::NoBrush);
    painter.setPen(QPen(options.theme.ink, box.height() * 0.03));
    painter.drawRect(bar);
    painter.setPen(options.theme.text);
    for (const double celsius : {kScaleCold_C, review::kColdLineLimit_C, review::kScaldGuidance_C, kScaleHot_C}) {
        const double x = bar.left() + bar.width() * (celsius - kScaleCold_C) / (kScaleHot_C - kScaleCold_C);
        painter.drawLine(QPointF(x, bar.top()), QPointF(x, bar.bottom() + box.height() * 0.1));
        const QString text = QString::fromStdString(show({celsius, Quantity::Temperature}, options.units));
        const double width = textWidth(text, size);
        // The two limits lie close together: one number to the left of its mark, one to the right.
        const double left = celsius == kScaleCold_C               ? x
                            : celsius == kScaleHot_C              ? x - width
                            : celsius == review::kColdLineLimit_C ? x - width + size * 0.4
                                                                  : x - size * 0.2;
        drawText(painter, {left, box.bottom() - size * 0.15}, text, size);
    }
    painter.restore();
}

}  // namespace tapward::app
