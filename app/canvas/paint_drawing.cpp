// SPDX-License-Identifier: GPL-3.0-or-later
#include "canvas/paint_drawing.h"

#include <algorithm>
#include <array>
#include <QCoreApplication>
#include <QPainter>
#include <set>

#include "canvas/drawing_layout.h"
#include "canvas/heat_painter.h"
#include "canvas/shape_painter.h"
#include "look/kind_text.h"
#include "look/symbols.h"

namespace tapward::app {

namespace {

QString tr(const char* text) { return QCoreApplication::translate("tapward::app", text); }

QString useText(PipeUse use)
{
    switch (use) {
    case PipeUse::Cold:
        return tr("Cold water");
    case PipeUse::Hot:
        return tr("Hot water");
    case PipeUse::Return:
        return tr("Hot water return");
    case PipeUse::Plain:
        break;
    }
    return tr("Pipe, use not known");
}

void paintLineSample(QPainter& painter, const LegendEntry& entry, const Theme& theme)
{
    constexpr double half = 30;
    PipeShape pipe{.id = 1,
                   .stage = document::Stage::Existing,
                   .trace = {entry.use, 0},
                   .corners = {{-half, 0}, {half, 0}},
                   .path = {},
                   .hops = {},
                   .loose = {},
                   .over = {},
                   .under = {}};
    PaintOptions options;
    options.theme = theme;
    if (entry.sample == LegendEntry::Sample::AddedLine)
        pipe.stage = document::Stage::Added;
    if (entry.sample == LegendEntry::Sample::RemovedLine)
        pipe.stage = document::Stage::Removed;
    pipe.path.moveTo(-half, 0);
    if (entry.sample == LegendEntry::Sample::Crossing) {
        pipe.path.lineTo(-3.2, 0);
        pipe.path.arcTo(QRectF(-3.2, -3.2, 6.4, 6.4), 180, -180);
        pipe.hops.moveTo(-3.2, 0);
        pipe.hops.arcTo(QRectF(-3.2, -3.2, 6.4, 6.4), 180, -180);
    }
    pipe.path.lineTo(half, 0);
    paintPipe(painter, pipe, options);
    if (entry.sample == LegendEntry::Sample::Crossing || entry.sample == LegendEntry::Sample::Joined) {
        painter.setPen(QPen(theme.ink, 1.6));
        painter.drawLine(QPointF(0, entry.sample == LegendEntry::Sample::Joined ? 0 : -12), QPointF(0, 12));
    }
    if (entry.sample == LegendEntry::Sample::Joined) {
        painter.setPen(Qt::NoPen);
        painter.setBrush(theme.ink);
        painter.drawEllipse(QPointF(0, 0), 3, 3);
    }
}

}  // namespace

void paintDrawing(QPainter& painter, const document::Drawing& drawing, const PaintOptions& options)
{
    paintLayout(painter, layoutOf(drawing, options), options);
}

void paintLayout(QPainter& painter, const DrawingLayout& layout, const PaintOptions& options)
{
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    for (const auto& bridge : layout.bridges)
        paintBridge(painter, bridge, options);
    for (const auto& pipe : layout.pipes)
        paintPipe(painter, pipe, options);
    for (const auto& symbol : layout.symbols)
        paintShape(painter, symbol, options);
    for (const auto& label : layout.labels)
        paintLabel(painter, label, options);
    for (const auto& number : layout.numbers)
        paintNumber(painter, number, options);
    painter.restore();
}

QRectF drawingBounds(const document::Drawing& drawing, document::View view)
{
    PaintOptions options;
    options.view = view;
    return drawingBounds(drawing, options);
}

QRectF drawingBounds(const document::Drawing& drawing, const PaintOptions& options)
{
    return layoutOf(drawing, options).bounds;
}

std::vector<LegendEntry> legendEntries(const document::Drawing& drawing)
{
    using Sample = LegendEntry::Sample;
    std::vector<LegendEntry> entries;
    std::set<PipeUse> uses;
    std::set<std::string_view> kinds;
    bool added = false, removed = false, joined = false;
    for (const auto& [id, use] : pipeUses(drawing))
        if (drawing.find(id)->stage != document::Stage::Removed)
            uses.insert(use);
    for (const auto& part : drawing.parts) {
        added |= part.stage == document::Stage::Added;
        removed |= part.stage == document::Stage::Removed;
        if (!document::kindOf(part).isPipe)
            kinds.insert(document::kindOf(part).id);
    }
    bool crossing = false;
    for (const auto& pipe : layoutOf(drawing, {.labels = false}).pipes)
        crossing |= !pipe.over.empty();
    for (const auto use : {PipeUse::Cold, PipeUse::Hot, PipeUse::Return, PipeUse::Plain})
        if (uses.count(use) != 0)
            entries.push_back({Sample::PipeLine, {}, use, useText(use)});
    if (added)
        entries.push_back({Sample::AddedLine, {}, PipeUse::Plain, tr("Heavy: added by this job")});
    if (removed)
        entries.push_back({Sample::RemovedLine, {}, PipeUse::Plain, tr("Crossed out: taken out")});
    if (crossing)
        entries.push_back({Sample::Crossing, {}, PipeUse::Plain, tr("Pipes cross, not joined")});
    for (const auto* kind : parts::catalogue()) {
        if (kinds.count(kind->id) == 0)
            continue;
        if (kind->model == nullptr && kind->ports.empty())
            continue;  // words and wiring name themselves
        const bool join = kind->ports.size() == 3 && kind->width * kind->height <= 4;
        joined |= join;
        if (!join)
            entries.push_back({Sample::Symbol, std::string(kind->id), PipeUse::Plain, kindTitle(*kind)});
    }
    if (joined) {
        const auto firstSymbol = std::ranges::find(entries, Sample::Symbol, &LegendEntry::sample);
        entries.insert(firstSymbol, {Sample::Joined, {}, PipeUse::Plain, tr("Pipes joined")});
    }
    return entries;
}

void paintLegendSample(QPainter& painter, const LegendEntry& entry, const QRectF& box, const Theme& theme)
{
    const QRectF content = entry.sample == LegendEntry::Sample::Symbol ? symbolBox(entry.kind).adjusted(-2, -2, 2, 2)
                                                                       : QRectF(-31, -13, 62, 26);
    if (content.isEmpty() || box.isEmpty())
        return;
    const double scale = std::min(box.width() / content.width(), box.height() / content.height());
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    painter.translate(box.center());
    painter.scale(scale, scale);
    painter.translate(-content.center());
    if (entry.sample == LegendEntry::Sample::Symbol)
        paintSymbol(painter, entry.kind, {.ink = theme.ink, .paper = theme.paper});
    else
        paintLineSample(painter, entry, theme);
    painter.restore();
}

}  // namespace tapward::app
