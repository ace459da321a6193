// SPDX-License-Identifier: GPL-3.0-or-later
// The drawing in words and in order, for screen readers and for walking by keyboard.
#include <algorithm>
#include <cmath>
#include <QCoreApplication>
#include <set>
#include <utility>

#include "canvas/canvas_view.h"
#include "canvas/heat_painter.h"
#include "document/ports.h"
#include "look/kind_text.h"
#include "session/message_text.h"

namespace tapward::app {

namespace {

QString tagOf(const document::Drawing& drawing, document::PartId id)
{
    const auto* part = drawing.find(id);
    return part != nullptr ? toText(part->tag) : CanvasView::tr("a loose end");
}

/// The water in or beside the part at the moment shown; nothing where none is known.
std::optional<double> flowAt(const document::Drawing& drawing, const document::Part& part, const PaintOptions& options)
{
    const auto inPipe = [&](document::PartId id) -> std::optional<double> {
        const auto heat = heatTrack(options, id);
        return heat.points > 0 ? std::optional(std::abs(heat.flow_m3s)) : std::nullopt;
    };
    if (document::kindOf(part).isPipe)
        return inPipe(part.id);
    std::optional<double> most;
    for (const auto& port : document::kindOf(part).ports)
        if (const auto* pipe = drawing.pipeAt(part.id, port.id))
            if (const auto flow = inPipe(pipe->id); flow && (!most || *flow > *most))
                most = flow;
    return most;
}

QString neighbours(const document::Drawing& drawing, const document::Part& part)
{
    if (document::kindOf(part).isPipe)
        return CanvasView::tr("from %1 to %2")
            .arg(tagOf(drawing, part.ends[0].part), tagOf(drawing, part.ends[1].part));
    QStringList tags;
    for (const auto& port : document::kindOf(part).ports)
        if (const auto* pipe = drawing.pipeAt(part.id, port.id)) {
            const bool first = pipe->ends[0].part == part.id && pipe->ends[0].port == port.id;
            tags << tagOf(drawing, pipe->ends[first ? 1 : 0].part);
        }
    if (tags.size() == 2)
        return CanvasView::tr("between %1 and %2").arg(tags[0], tags[1]);
    if (!tags.isEmpty())
        return CanvasView::tr("joined to %1").arg(tags.join(QStringLiteral(", ")));
    return document::kindOf(part).ports.empty() ? QString() : CanvasView::tr("not connected");
}

}  // namespace

QString CanvasView::spokenName(document::PartId id) const
{
    const auto* part = shown().find(id);
    if (part == nullptr)
        return {};
    QStringList words{tr("%1 %2").arg(kindTitle(document::kindOf(*part)), toText(part->tag))};
    if (const QString between = neighbours(shown(), *part); !between.isEmpty())
        words << between;
    if (const auto flow = flowAt(shown(), *part, m_options))
        words << (*flow > kStillFlow
                      ? tr("running, %1")
                            .arg(QString::fromStdString(tapward::show({*flow, Quantity::Flow}, m_options.units)))
                      : tr("no flow"));
    return words.join(QStringLiteral(", "));
}

QString CanvasView::spokenDetails(document::PartId id) const
{
    const auto* part = shown().find(id);
    if (part == nullptr)
        return {};
    const auto& kind = document::kindOf(*part);
    QStringList words = shownValues(*part, m_options.units);
    if (!kind.isPipe)
        for (const auto& port : kind.ports) {
            const auto* pipe = shown().pipeAt(id, port.id);
            words << (pipe != nullptr ? tr("%1 to %2").arg(coreText(port.title), toText(pipe->tag))
                                      : tr("%1 not connected").arg(coreText(port.title)));
        }
    if (part->stage == document::Stage::Added)
        words << tr("added");
    if (part->stage == document::Stage::Removed)
        words << tr("removed");
    return words.join(QStringLiteral(", "));
}

const std::vector<document::PartId>& CanvasView::readingOrder() const
{
    if (m_readingOrder.empty())
        m_readingOrder = makeReadingOrder();
    return m_readingOrder;
}

std::vector<document::PartId> CanvasView::makeReadingOrder() const
{
    // From each part on along its pipes, depth first, starting where the drawing starts at the left top:
    // close to the way the water goes, and stable.
    const auto& drawing = shown();
    std::vector<const SymbolShape*> starts;
    std::set<document::PartId> there;
    for (const auto& symbol : m_layout.symbols) {
        starts.push_back(&symbol);
        there.insert(symbol.id);
    }
    for (const auto& pipe : m_layout.pipes)
        there.insert(pipe.id);
    std::ranges::stable_sort(starts, [](const SymbolShape* a, const SymbolShape* b) {
        return std::pair(a->at.x(), a->at.y()) < std::pair(b->at.x(), b->at.y());
    });
    const document::PipesAtPorts pipeAt(drawing);
    std::vector<document::PartId> order;
    std::set<document::PartId> seen;
    for (const auto* start : starts) {
        std::vector<document::PartId> open{start->id};
        while (!open.empty()) {
            const auto id = open.back();
            open.pop_back();
            const auto* part = drawing.find(id);
            if (part == nullptr || there.count(id) == 0 || !seen.insert(id).second)
                continue;
            order.push_back(id);
            const auto& kind = document::kindOf(*part);
            if (kind.isPipe) {
                for (auto end = part->ends.rbegin(); end != part->ends.rend(); ++end)
                    if (end->part != document::kNoPart)
                        open.push_back(end->part);
                continue;
            }
            for (auto port = kind.ports.rbegin(); port != kind.ports.rend(); ++port)
                if (const auto* pipe = pipeAt(id, port->id))
                    open.push_back(pipe->id);
        }
    }
    for (const auto& pipe : m_layout.pipes)
        if (seen.insert(pipe.id).second)
            order.push_back(pipe.id);
    return order;
}

}  // namespace tapward::app
