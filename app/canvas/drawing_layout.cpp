// SPDX-License-Identifier: GPL-3.0-or-later
#include "canvas/drawing_layout.h"

#include <algorithm>
#include <cmath>

#include "canvas/canvas_text.h"
#include "document/dimension.h"
#include "document/ports.h"
#include "session/message_text.h"

namespace tapward::app {

namespace {

using document::Drawing;
using document::Part;
using document::PartId;

constexpr double kHop = 3.2;  // radius of the half-round hop, canvas units

struct Crossing {
    double x;
    std::size_t under;  // index of the pipe below
};

struct Segment {
    std::size_t pipe;
    QPointF a, b;
    bool horizontal() const { return std::abs(a.y() - b.y()) < 0.01; }
    bool vertical() const { return std::abs(a.x() - b.x()) < 0.01; }
};

/// Where the horizontal piece is crossed by vertical pieces of other pipes, away from both pieces' ends, from left to
/// right. @param upright  sorted by x
std::vector<Crossing> crossings(const Segment& level, const std::vector<Segment>& upright)
{
    const double left = std::min(level.a.x(), level.b.x()) + kHop;
    const double right = std::max(level.a.x(), level.b.x()) - kHop;
    std::vector<Crossing> result;
    const auto xOf = [](const Segment& segment) { return segment.a.x(); };
    for (auto at = std::ranges::upper_bound(upright, left, {}, xOf); at != upright.end(); ++at) {
        const auto& other = *at;
        const double x = other.a.x();
        if (x >= right)
            break;
        if (other.pipe == level.pipe)
            continue;
        const double top = std::min(other.a.y(), other.b.y());
        const double bottom = std::max(other.a.y(), other.b.y());
        if (level.a.y() > top + 0.5 && level.a.y() < bottom - 0.5)
            result.push_back({x, other.pipe});
    }
    return result;
}

/// Level pieces hop over upright ones, so that a crossing never looks like a join.
void addHops(PipeShape& pipe, const Segment& level, std::vector<double> at)
{
    QPainterPath& path = pipe.path;
    const bool rightward = level.b.x() >= level.a.x();
    if (!rightward)
        std::reverse(at.begin(), at.end());
    const double sign = rightward ? 1 : -1;
    for (std::size_t i = 0; i < at.size();) {
        std::size_t last = i;
        while (last + 1 < at.size() && std::abs(at[last + 1] - at[last]) < 2.2 * kHop)
            ++last;
        const double from = at[i] - sign * kHop, to = at[last] + sign * kHop;
        path.lineTo(from, level.a.y());
        pipe.hops.moveTo(from, level.a.y());
        for (QPainterPath* one : {&path, &pipe.hops})
            one->arcTo(QRectF(std::min(from, to), level.a.y() - kHop, std::abs(to - from), 2 * kHop),
                       rightward ? 180 : 0, rightward ? -180 : 180);
        i = last + 1;
    }
    path.lineTo(level.b);
}

void buildPaths(std::vector<PipeShape>& pipes)
{
    std::vector<Segment> upright;
    for (std::size_t p = 0; p < pipes.size(); ++p)
        for (std::size_t i = 0; i + 1 < pipes[p].corners.size(); ++i) {
            const Segment segment{p, pipes[p].corners[i], pipes[p].corners[i + 1]};
            if (segment.vertical() && !segment.horizontal())
                upright.push_back(segment);
        }
    std::ranges::stable_sort(upright, {}, [](const Segment& segment) { return segment.a.x(); });
    for (std::size_t p = 0; p < pipes.size(); ++p) {
        auto& pipe = pipes[p];
        if (pipe.corners.empty())
            continue;
        pipe.path.moveTo(pipe.corners.front());
        for (std::size_t i = 0; i + 1 < pipe.corners.size(); ++i) {
            const Segment segment{p, pipe.corners[i], pipe.corners[i + 1]};
            if (segment.horizontal()) {
                std::vector<double> hops;
                for (const auto& [x, under] : crossings(segment, upright)) {
                    hops.push_back(x);
                    pipe.over.emplace_back(x, segment.a.y());
                    pipes[under].under.emplace_back(x, segment.a.y());
                }
                addHops(pipe, segment, std::move(hops));
            } else
                pipe.path.lineTo(segment.b);
        }
    }
}

/// "Faucet" stays as it is; a note shows its own words.
QString noteText(const Part& part, const parts::PartKind& kind)
{
    if (!kind.ports.empty() || kind.model != nullptr)
        return {};
    for (const auto& field : kind.fields)
        if (field.type == parts::FieldType::Text)
            return QString::fromStdString(document::values(part).text(field.key));
    return {};
}

/// "Tap to heater  12.5 ft"; a question mark until somebody measured it.
QString dimensionText(const Part& part, UnitSystem units)
{
    const auto values = document::values(part);
    QStringList words;
    if (const auto& name = values.text("name"); !name.empty())
        words << QString::fromStdString(name);
    if (const double length_m = values.number("length_m"); length_m > 0)
        words << QString::fromStdString(show({length_m, Quantity::Length}, units));
    return words.isEmpty() ? QStringLiteral("?") : words.join(QStringLiteral("  "));
}

void addBridge(const document::PipesAtPorts& pipeAt, const Part& absent, const std::map<PartId, PipeTrace>& traces,
               document::View view, DrawingLayout& layout)
{
    std::vector<QPointF> places;
    PipeUse use = PipeUse::Plain;
    for (const auto& port : document::kindOf(absent).ports) {
        const Part* pipe = pipeAt(absent.id, port.id);
        if (pipe == nullptr || !document::isPresent(pipe->stage, view))
            continue;
        places.push_back(toCanvas(document::portPlace(absent, port)));
        use = traces.at(pipe->id).use;
    }
    if (places.size() == 2)
        layout.bridges.push_back({absent.id, use, places[0], toCanvas(absent.at), places[1]});
}

}  // namespace

bool operator==(const PipeShape& a, const PipeShape& b)
{
    return a.id == b.id && a.stage == b.stage && a.trace.use == b.trace.use && a.trace.direction == b.trace.direction
           && a.corners == b.corners && a.loose == b.loose && a.path == b.path && a.under == b.under;
}

QRectF SymbolShape::box() const
{
    const bool lying = turn % 2 != 0;
    const double w = (lying ? kind->height : kind->width) * kModule;
    const double h = (lying ? kind->width : kind->height) * kModule;
    return {at.x() - w / 2, at.y() - h / 2, w, h};
}

QRectF SymbolShape::reach(double letters) const
{
    QRectF all = box();
    if (lines.empty())
        return all;
    for (const auto& line : lines)
        all |= QRectF(line.p1(), line.p2()).normalized().adjusted(-5, -5, 5, 5);
    const double half = textWidth(text, letters) / 2 + 4;
    return all | QRectF(at.x() - half, at.y() - letters, 2 * half, 2 * letters);
}

const PipeShape* DrawingLayout::pipe(PartId id) const
{
    const auto found = std::ranges::lower_bound(pipes, id, {}, &PipeShape::id);
    return found == pipes.end() || found->id != id ? nullptr : &*found;
}

const SymbolShape* DrawingLayout::symbol(PartId id) const
{
    const auto found = std::ranges::lower_bound(symbols, id, {}, &SymbolShape::id);
    return found == symbols.end() || found->id != id ? nullptr : &*found;
}

QPointF toCanvas(const document::Point& point) { return {point.x * kModule, point.y * kModule}; }

document::Point toDrawing(const QPointF& point) { return {point.x() / kModule, point.y() / kModule}; }

QStringList shownValues(const Part& part, UnitSystem units)
{
    QStringList result;
    const auto& kind = document::kindOf(part);
    const auto values = document::values(part);
    for (const auto key : kind.shownFields) {
        const auto* field = kind.field(key);
        if (field == nullptr)
            continue;
        switch (field->type) {
        case parts::FieldType::Number:
        case parts::FieldType::Count:
            result << QString::fromStdString(show({values.number(key), field->quantity}, units));
            break;
        case parts::FieldType::Choice:
            for (const auto& choice : field->choices)
                if (choice.id == values.text(key))
                    result << coreText(choice.title);
            break;
        case parts::FieldType::Flag:
            if (values.flag(key))
                result << coreText(field->label);
            break;
        case parts::FieldType::Text:
            if (const auto& text = values.text(key); !text.empty())
                result << QString::fromStdString(text);
            break;
        case parts::FieldType::PartRef:
        case parts::FieldType::Curve:
            break;
        }
    }
    return result;
}

DrawingLayout layoutOf(const Drawing& drawing, const PaintOptions& options, document::RouteMemory* routes)
{
    DrawingLayout layout;
    const auto traces = tracePipes(drawing);
    const document::Router router(drawing, routes);
    const document::PipesAtPorts pipeAt(drawing);
    for (const auto& part : drawing.parts) {
        const auto& kind = document::kindOf(part);
        if (!document::isPresent(part.stage, options.view)) {
            if (!kind.isPipe)
                addBridge(pipeAt, part, traces, options.view, layout);
            continue;
        }
        if (kind.isPipe) {
            PipeShape pipe{.id = part.id,
                           .stage = part.stage,
                           .trace = traces.at(part.id),
                           .corners = {},
                           .path = {},
                           .hops = {},
                           .loose = {},
                           .over = {},
                           .under = {}};
            for (const auto& corner : router.route(part))
                pipe.corners.push_back(toCanvas(corner));
            for (std::size_t end = 0; end < 2; ++end)
                pipe.loose[end] = part.ends[end].part == document::kNoPart;
            layout.pipes.push_back(std::move(pipe));
            continue;
        }
        SymbolShape symbol{.id = part.id,
                           .kind = &kind,
                           .stage = part.stage,
                           .at = toCanvas(part.at),
                           .turn = part.turn,
                           .flipped = part.flipped,
                           .openPorts = {},
                           .text = noteText(part, kind),
                           .lines = {}};
        if (const auto line = document::dimensionLine(drawing, part)) {
            symbol.text = dimensionText(part, options.units);
            symbol.lines.emplace_back(toCanvas(line->a), toCanvas(line->b));
            for (const auto& [from, to] : line->reach)
                symbol.lines.emplace_back(toCanvas(from), toCanvas(to));
        }
        for (const auto& port : kind.ports)
            if (!port.optional)
                if (const Part* pipe = pipeAt(part.id, port.id);
                    pipe == nullptr || !document::isPresent(pipe->stage, options.view))
                    symbol.openPorts.push_back(toCanvas(document::portPlace(part, port)));
        layout.symbols.push_back(std::move(symbol));
    }
    buildPaths(layout.pipes);
    relabel(drawing, options, layout);
    return layout;
}

void relabel(const Drawing& drawing, const PaintOptions& options, DrawingLayout& layout)
{
    layout.labels.clear();
    layout.numbers.clear();
    if (options.labels)
        placeLabels(drawing, options, layout);
    layout.bounds = {};
    for (const auto& pipe : layout.pipes)
        layout.bounds |= pipe.path.controlPointRect().adjusted(-5, -5, 5, 5);
    for (const auto& symbol : layout.symbols)
        layout.bounds |= symbol.reach(options.labelSize).adjusted(-4, -4, 4, 4);
    for (const auto& label : layout.labels)
        layout.bounds |= label.box;
}

}  // namespace tapward::app
