// SPDX-License-Identifier: GPL-3.0-or-later
#include "canvas/hit.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <QLineF>
#include <utility>

#include "document/ports.h"

namespace tapward::app {

namespace {

double distance(const QPointF& a, const QPointF& b) { return std::hypot(a.x() - b.x(), a.y() - b.y()); }

QPointF nearestOn(const QPointF& a, const QPointF& b, const QPointF& at)
{
    const QPointF d = b - a;
    const double square = QPointF::dotProduct(d, d);
    const double share = square > 0 ? std::clamp(QPointF::dotProduct(at - a, d) / square, 0.0, 1.0) : 0.0;
    return a + d * share;
}

double length(const std::vector<QPointF>& corners)
{
    double sum = 0;
    for (std::size_t i = 0; i + 1 < corners.size(); ++i)
        sum += distance(corners[i], corners[i + 1]);
    return sum;
}

/// The nearest place on the pipe; `gap` is how far away it is.
PipeSpot nearest(const PipeShape& pipe, const QPointF& at, double* gap)
{
    PipeSpot best;
    best.pipe = pipe.id;
    *gap = std::numeric_limits<double>::infinity();
    double walked = 0;
    const double total = length(pipe.corners);
    for (std::size_t i = 0; i + 1 < pipe.corners.size(); ++i) {
        const QPointF a = pipe.corners[i], b = pipe.corners[i + 1];
        const QPointF place = nearestOn(a, b, at);
        if (const double now = distance(place, at); now < *gap) {
            *gap = now;
            best.segment = i;
            best.at = place;
            best.share = total > 0 ? (walked + distance(a, place)) / total : 0.5;
            best.level = std::abs(a.y() - b.y()) < 0.01;
        }
        walked += distance(a, b);
    }
    return best;
}

/// The box, at least so large each way.
QRectF grown(const QRectF& box, double least)
{
    const double dx = std::max(0.0, (least - box.width()) / 2), dy = std::max(0.0, (least - box.height()) / 2);
    return box.adjusted(-dx, -dy, dx, dy);
}

}  // namespace

document::PartId HitTest::symbolAt(const QPointF& at, double least, double slack) const
{
    for (auto symbol = m_layout.symbols.rbegin(); symbol != m_layout.symbols.rend(); ++symbol)
        if (symbol->box().adjusted(-slack, -slack, slack, slack).contains(at))
            return symbol->id;
    document::PartId best = document::kNoPart;
    double bestGap = std::numeric_limits<double>::infinity();
    for (const auto& symbol : m_layout.symbols)
        if (const double gap = distance(symbol.at, at); gap < bestGap && grown(symbol.box(), least).contains(at)) {
            bestGap = gap;
            best = symbol.id;
        }
    return best;
}

document::PartId HitTest::labelAt(const QPointF& at) const
{
    for (const auto& label : m_layout.labels)
        if (label.box.contains(at))
            return label.id;
    return document::kNoPart;
}

std::optional<PipeSpot> HitTest::pipeAt(const QPointF& at, double reach, document::PartId leftOut) const
{
    std::optional<PipeSpot> best;
    double bestGap = reach;
    for (const auto& pipe : m_layout.pipes) {
        if (pipe.id == leftOut)
            continue;
        double gap = 0;
        const auto spot = nearest(pipe, at, &gap);
        if (gap <= bestGap) {
            bestGap = gap;
            best = spot;
        }
    }
    return best;
}

std::optional<PipeSpot> HitTest::spotOn(document::PartId id, const QPointF& at, double step) const
{
    const auto* pipe = m_layout.pipe(id);
    if (pipe == nullptr || pipe->corners.size() < 2)
        return std::nullopt;
    double gap = 0;
    auto spot = nearest(*pipe, at, &gap);
    if (step > 0) {
        const QPointF a = pipe->corners[spot.segment], b = pipe->corners[spot.segment + 1];
        QPointF snapped = spot.at;
        if (spot.level)
            snapped.setX(std::round(spot.at.x() / step) * step);
        else
            snapped.setY(std::round(spot.at.y() / step) * step);
        const QPointF kept = nearestOn(a, b, snapped);
        double moved = 0;
        const auto segment = spot.segment;
        spot = nearest(*pipe, kept, &moved);
        spot.segment = segment;
    }
    return spot;
}

std::vector<PortSpot> HitTest::openPorts() const
{
    std::vector<PortSpot> result;
    const document::PipesAtPorts pipeAt(m_drawing);
    for (const auto& symbol : m_layout.symbols) {
        const auto* part = m_drawing.find(symbol.id);
        for (const auto& port : symbol.kind->ports)
            if (pipeAt(symbol.id, port.id) == nullptr)
                result.push_back({{symbol.id, std::string(port.id), {}},
                                  document::kNoPart,
                                  0,
                                  toCanvas(document::portPlace(*part, port))});
    }
    for (auto& end : looseEnds())
        result.push_back(std::move(end));
    return result;
}

std::vector<PortSpot> HitTest::looseEnds() const
{
    std::vector<PortSpot> result;
    for (const auto& pipe : m_layout.pipes)
        for (int end = 0; end < 2; ++end)
            if (pipe.loose[static_cast<std::size_t>(end)] && !pipe.corners.empty()) {
                const QPointF at = end == 0 ? pipe.corners.front() : pipe.corners.back();
                result.push_back({{document::kNoPart, {}, toDrawing(at)}, pipe.id, end, at});
            }
    return result;
}

bool HitTest::inBody(const SymbolShape& symbol, const QPointF& at, double least) const
{
    const QRectF box = symbol.box();
    if (box.width() < least / 2 || box.height() < least / 2)
        return grown(box, least).contains(at);
    // The smaller it is the more of it is body: its ports are then taken from outside.
    const double edge = box.width() < least || box.height() < least ? 0.2 : 0.3;
    const double dx = box.width() * edge, dy = box.height() * edge;
    return box.adjusted(dx, dy, -dx, -dy).contains(at);
}

/// A symbol is taken by its body, whatever port or end is near: at small zoom those of its neighbours are, too.
bool HitTest::inAnyBody(const QPointF& at, double least) const
{
    return std::ranges::any_of(m_layout.symbols, [&](const SymbolShape& symbol) { return inBody(symbol, at, least); });
}

std::optional<PortSpot> HitTest::portAt(const QPointF& at, double reach, double least) const
{
    if (least > 0 && inAnyBody(at, least))
        return std::nullopt;
    std::optional<PortSpot> best;
    double bestGap = reach;
    const auto consider = [&](double gap, PortSpot spot) {
        if (const auto* symbol = m_layout.symbol(spot.end.part); symbol == nullptr || !inBody(*symbol, at, least)) {
            bestGap = gap;
            best = std::move(spot);
        }
    };
    for (const auto& symbol : m_layout.symbols) {
        const auto* part = m_drawing.find(symbol.id);
        for (const auto& port : symbol.kind->ports) {
            const QPointF place = toCanvas(document::portPlace(*part, port));
            if (const double gap = distance(place, at);
                gap <= bestGap && m_drawing.pipeAt(symbol.id, port.id) == nullptr)
                consider(gap, {{symbol.id, std::string(port.id), {}}, document::kNoPart, 0, place});
        }
    }
    for (const auto& end : looseEnds())
        if (const double gap = distance(end.at, at); gap <= bestGap)
            consider(gap, end);
    return best;
}

int HitTest::pipeEndAt(document::PartId id, const QPointF& at, double reach, double least) const
{
    const auto* pipe = m_layout.pipe(id);
    const auto* part = m_drawing.find(id);
    if (pipe == nullptr || part == nullptr || pipe->corners.empty() || (least > 0 && inAnyBody(at, least)))
        return -1;
    int best = -1;
    double bestGap = reach;
    for (int end = 0; end < 2; ++end) {
        const double gap = distance(end == 0 ? pipe->corners.front() : pipe->corners.back(), at);
        const auto* symbol = m_layout.symbol(part->ends[static_cast<std::size_t>(end)].part);
        if (gap <= bestGap && (symbol == nullptr || !inBody(*symbol, at, least))) {
            bestGap = gap;
            best = end;
        }
    }
    return best;
}

std::vector<document::PartId> HitTest::allAt(const QPointF& at, double reach, double least) const
{
    std::vector<document::PartId> result;
    for (auto symbol = m_layout.symbols.rbegin(); symbol != m_layout.symbols.rend(); ++symbol)
        if (grown(symbol->box(), least).contains(at))
            result.push_back(symbol->id);
    for (const auto& pipe : m_layout.pipes) {
        double gap = 0;
        nearest(pipe, at, &gap);
        if (gap <= reach)
            result.push_back(pipe.id);
    }
    return result;
}

std::vector<document::PartId> HitTest::touching(const QRectF& band) const
{
    std::vector<document::PartId> result;
    for (const auto& symbol : m_layout.symbols)
        if (symbol.box().intersects(band))
            result.push_back(symbol.id);
    for (const auto& pipe : m_layout.pipes)
        for (std::size_t i = 0; i + 1 < pipe.corners.size(); ++i)
            if (QRectF(pipe.corners[i], pipe.corners[i + 1])
                    .normalized()
                    .adjusted(-0.5, -0.5, 0.5, 0.5)
                    .intersects(band)) {
                result.push_back(pipe.id);
                break;
            }
    return result;
}

}  // namespace tapward::app
