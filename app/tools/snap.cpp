// SPDX-License-Identifier: GPL-3.0-or-later
#include "tools/snap.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include "tools/sides.h"

namespace tapward::app {

namespace {

using document::Part;
using document::PartId;

constexpr double kPortSnap = 12;  // pixels
constexpr double kLineSnap = 6;

struct Fit {
    QPointF shift;
    std::string port;
    PortSpot partner;
};

/// A free port of the part near a free port that looks at it, or near a loose pipe end.
std::optional<Fit> fitToPort(CanvasView& view, const Part& part, const std::vector<PartId>& ignore)
{
    const auto& drawing = view.session().drawing();
    const double reach = std::clamp(view.toUnits(kPortSnap), 6.0, 2.5 * kModule);
    std::optional<Fit> best;
    double least = reach;
    const auto others = view.hits().openPorts();
    for (const auto& port : document::kindOf(part).ports) {
        if (drawing.pipeAt(part.id, port.id) != nullptr)
            continue;
        const QPointF mine = toCanvas(document::portPlace(part, port));
        const Side side = document::portSide(part, port);
        for (const auto& other : others) {
            if (std::ranges::find(ignore, other.end.part) != ignore.end()
                || std::ranges::find(ignore, other.pipe) != ignore.end())
                continue;
            QPointF goal = other.at;
            if (const auto* owner = drawing.find(other.end.part)) {
                const Side facing = document::portSide(*owner, *document::kindOf(*owner).port(other.end.port));
                if (facing != opposite(side))
                    continue;
                goal += outward(facing) * kPortGap * kModule;
            }
            const double gap = std::hypot(goal.x() - mine.x(), goal.y() - mine.y());
            if (gap < least) {
                least = gap;
                best = Fit{goal - mine, std::string(port.id), other};
            }
        }
    }
    return best;
}

/// Lines of a symbol that others can be in line with: its middle and its ports that look along the line.
std::vector<double> linesOf(const Part& part, bool upright)
{
    std::vector<double> lines{upright ? part.at.x : part.at.y};
    for (const auto& port : document::kindOf(part).ports) {
        const Side side = document::portSide(part, port);
        if ((side == Side::Left || side == Side::Right) == upright)
            continue;
        const auto place = document::portPlace(part, port);
        lines.push_back(upright ? place.x : place.y);
    }
    return lines;
}

}  // namespace

Rest restFor(CanvasView& view, const Part& part, const std::vector<PartId>& ignore, Qt::KeyboardModifiers keys)
{
    const QPointF held = toCanvas(part.at);
    if (keys & Qt::AltModifier)
        return {held, {}, {}, {}};
    if (const auto fit = fitToPort(view, part, ignore))
        return {held + fit->shift, {}, fit->port, fit->partner};

    Rest rest{view.snapped(held, keys), {}, {}, {}};
    const double reach = view.toUnits(kLineSnap);
    const auto& drawing = view.session().drawing();
    const QRectF seen = view.mapToScene(view.viewport()->rect()).boundingRect();
    for (const bool upright : {true, false}) {
        const auto mine = linesOf(part, upright);
        double least = reach;
        std::optional<double> shift;
        for (const auto& symbol : view.layoutOfDrawing().symbols) {
            if (!seen.contains(symbol.at) || !symbol.text.isEmpty()
                || std::ranges::find(ignore, symbol.id) != ignore.end())
                continue;
            const Part* other = drawing.find(symbol.id);
            if (other == nullptr)
                continue;
            for (const double line : linesOf(*other, upright))
                for (const double own : mine)
                    if (const double gap = std::abs(line - own) * kModule; gap < least) {
                        least = gap;
                        shift = (line - own) * kModule;
                    }
        }
        if (shift && view.snaps())
            (upright ? rest.at.rx() : rest.at.ry()) = (upright ? held.x() : held.y()) + *shift;
    }
    // Shown for where it really comes to rest, however it came there.
    Part resting = part;
    resting.at = toDrawing(rest.at);
    for (const bool upright : {true, false}) {
        const SymbolShape* nearest = nullptr;
        double found = 0, least = std::numeric_limits<double>::infinity();
        for (const auto& symbol : view.layoutOfDrawing().symbols) {
            const Part* other = drawing.find(symbol.id);
            if (other == nullptr || !symbol.text.isEmpty() || !seen.contains(symbol.at)
                || std::ranges::find(ignore, symbol.id) != ignore.end())
                continue;
            for (const double line : linesOf(*other, upright))
                for (const double own : linesOf(resting, upright)) {
                    const double far = std::hypot(symbol.at.x() - rest.at.x(), symbol.at.y() - rest.at.y());
                    if (std::abs(line - own) < 1e-6 && far < least) {
                        least = far;
                        nearest = &symbol;
                        found = line * kModule;
                    }
                }
        }
        if (nearest != nullptr)
            rest.guides.push_back(upright ? QLineF(found, nearest->at.y(), found, rest.at.y())
                                          : QLineF(nearest->at.x(), found, rest.at.x(), found));
    }
    return rest;
}

}  // namespace tapward::app
