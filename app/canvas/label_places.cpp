// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <cmath>
#include <cstdint>
#include <QLineF>
#include <span>
#include <unordered_map>
#include <utility>

#include "canvas/canvas_text.h"
#include "canvas/drawing_layout.h"

namespace tapward::app {

namespace {

constexpr double kGap = 3.0;

struct Size {
    double width, height;
};

Size labelSize(const LabelShape& label)
{
    double width = textWidth(label.tag, label.size, true);
    for (const auto& value : label.values)
        width = std::max(width, textWidth(value, label.size));
    const auto lines = label.values.size() + (label.tag.isEmpty() ? 0 : 1);
    return {width + 1, lineHeight(label.size) * static_cast<double>(lines)};
}

/// A text in short lines; a number stays with its unit.
QStringList broken(const QString& text, double size)
{
    if (text.isEmpty() || !text[0].isLetter())
        return {text};
    const QStringList words = text.split(QLatin1Char(' '), Qt::SkipEmptyParts);
    double widest = 6 * size;
    for (const auto& word : words)
        widest = std::max(widest, textWidth(word, size));
    QStringList lines;
    for (const auto& word : words) {
        const QString longer = lines.isEmpty() ? word : lines.back() + QLatin1Char(' ') + word;
        if (!lines.isEmpty() && textWidth(longer, size) <= widest)
            lines.back() = longer;
        else
            lines << word;
    }
    return lines;
}

/// What a label should keep clear of, with how much it hurts to cover it.
struct Obstacle {
    QRectF box;
    double weight;
};

/// The obstacles, filed by squares of the canvas, so that a label asks only those near it.
class Crowd {
public:
    void add(const QRectF& box, double weight)
    {
        const auto index = m_obstacles.size();
        m_obstacles.push_back({box, weight});
        m_asked.push_back(0);
        eachSquare(box, [&](std::int64_t square) { m_squares[square].push_back(index); });
    }

    /// What reaches into the area. Good until the next call.
    std::span<const Obstacle> in(const QRectF& area)
    {
        m_near.clear();
        ++m_question;
        eachSquare(area, [&](std::int64_t square) {
            const auto found = m_squares.find(square);
            if (found == m_squares.end())
                return;
            for (const auto index : found->second)
                if (std::exchange(m_asked[index], m_question) != m_question && m_obstacles[index].box.intersects(area))
                    m_near.push_back(m_obstacles[index]);
        });
        return m_near;
    }

    static constexpr double kSymbolWeight = 1.0, kPipeWeight = 3.0, kLabelWeight = 6.0;

private:
    static constexpr double kSquare = 64;

    template <class Visit>
    static void eachSquare(const QRectF& box, Visit visit)
    {
        const auto left = static_cast<std::int64_t>(std::floor(box.left() / kSquare));
        const auto right = static_cast<std::int64_t>(std::floor(box.right() / kSquare));
        const auto top = static_cast<std::int64_t>(std::floor(box.top() / kSquare));
        const auto bottom = static_cast<std::int64_t>(std::floor(box.bottom() / kSquare));
        for (auto y = top; y <= bottom; ++y)
            for (auto x = left; x <= right; ++x)
                visit(y * (std::int64_t{1} << 32) + x);
    }

    std::vector<Obstacle> m_obstacles, m_near;
    std::unordered_map<std::int64_t, std::vector<std::size_t>> m_squares;
    std::vector<int> m_asked;  // the last question that saw each obstacle
    int m_question = 0;
};

/// How much of these the box would cover, and how badly. `onPipe`: a place on its own pipe, which does not count.
double covered(std::span<const Obstacle> obstacles, const QRectF& box, const QPointF* onPipe = nullptr)
{
    double sum = 0;
    bool own = onPipe != nullptr;
    for (const auto& obstacle : obstacles) {
        const double width = std::min(box.right(), obstacle.box.right()) - std::max(box.left(), obstacle.box.left());
        const double height = std::min(box.bottom(), obstacle.box.bottom()) - std::max(box.top(), obstacle.box.top());
        if (width <= 0 || height <= 0)
            continue;
        // Of two pipes that cross here only one is its own; as obstacles they are alike.
        if (own && obstacle.weight == Crowd::kPipeWeight && obstacle.box.contains(*onPipe)) {
            own = false;
            continue;
        }
        sum += obstacle.weight * (2 + width * height);
    }
    return sum;
}

struct Candidate {
    QRectF box;
    Qt::Alignment align;
    double bias;  // habit: above first, then below, then the sides
};

std::vector<Candidate> around(const QRectF& symbol, const Size& size)
{
    const auto [w, h] = size;
    const double cx = symbol.center().x(), cy = symbol.center().y();
    const double above = symbol.top() - kGap - h, below = symbol.bottom() + kGap;
    const double right = symbol.right() + kGap, left = symbol.left() - kGap - w;
    return {{{cx - w / 2, above, w, h}, Qt::AlignHCenter, 0},
            {{cx - w / 2, below, w, h}, Qt::AlignHCenter, 1},
            {{right, cy - h / 2, w, h}, Qt::AlignLeft, 2},
            {{left, cy - h / 2, w, h}, Qt::AlignRight, 3},
            {{right, above, w, h}, Qt::AlignLeft, 4},
            {{right, below, w, h}, Qt::AlignLeft, 4},
            {{left, above, w, h}, Qt::AlignRight, 5},
            {{left, below, w, h}, Qt::AlignRight, 5},
            {{cx + kGap, above, w, h}, Qt::AlignLeft, 2.5},
            {{cx + kGap, below, w, h}, Qt::AlignLeft, 2.5},
            {{cx - kGap - w, above, w, h}, Qt::AlignRight, 2.5},
            {{cx - kGap - w, below, w, h}, Qt::AlignRight, 2.5}};
}

/// Places along a pipe, beside its straight pieces that are long enough.
std::vector<Candidate> along(const PipeShape& pipe, const Size& size)
{
    std::vector<Candidate> result;
    const auto [w, h] = size;
    for (std::size_t i = 0; i + 1 < pipe.corners.size(); ++i) {
        const QPointF a = pipe.corners[i], b = pipe.corners[i + 1], middle = (a + b) / 2;
        const double length = std::abs(a.x() - b.x()) + std::abs(a.y() - b.y());
        const bool level = std::abs(a.y() - b.y()) < 0.01;
        if (length < (level ? w : h) + 8)
            continue;
        const double bias = 400 / length;
        for (const double share : {0.5, 0.25, 0.75}) {
            const QPointF at = a + (b - a) * share;
            const double off = bias + (share == 0.5 ? 0 : 2);
            if (level) {
                result.push_back({{at.x() - w / 2, middle.y() - 4.0 - h, w, h}, Qt::AlignHCenter, off});
                result.push_back({{at.x() - w / 2, middle.y() + 4.5, w, h}, Qt::AlignHCenter, off + 1});
            } else {
                result.push_back({{middle.x() + 6.0, at.y() - h / 2, w, h}, Qt::AlignLeft, off + 1});
                result.push_back({{middle.x() - 6.0 - w, at.y() - h / 2, w, h}, Qt::AlignRight, off + 2});
            }
        }
    }
    return result;
}

const Candidate* best(const std::vector<Candidate>& candidates, Crowd& crowd, double* cost)
{
    QRectF area;
    for (const auto& candidate : candidates)
        area |= candidate.box;
    const auto near = crowd.in(area);
    const Candidate* result = nullptr;
    for (const auto& candidate : candidates) {
        if (result != nullptr && candidate.bias >= *cost)
            continue;
        const double now = candidate.bias + covered(near, candidate.box);
        if (result == nullptr || now < *cost) {
            result = &candidate;
            *cost = now;
        }
    }
    return result;
}

Crowd crowdOf(const DrawingLayout& layout)
{
    Crowd crowd;
    for (const auto& symbol : layout.symbols) {
        crowd.add(symbol.box().adjusted(1, 1, -1, -1), Crowd::kSymbolWeight);
        for (const auto& line : symbol.lines)
            crowd.add(QRectF(line.p1(), line.p2()).normalized().adjusted(-1.6, -1.6, 1.6, 1.6), Crowd::kPipeWeight);
    }
    for (const auto& pipe : layout.pipes)
        for (std::size_t i = 0; i + 1 < pipe.corners.size(); ++i)
            crowd.add(QRectF(pipe.corners[i], pipe.corners[i + 1]).normalized().adjusted(-1.6, -1.6, 1.6, 1.6),
                      Crowd::kPipeWeight);
    return crowd;
}

/// Numbers sit on their pipes, away from each other, from symbols and from crossings.
void placeNumbers(const PaintOptions& options, DrawingLayout& layout, Crowd& crowd)
{
    const double size = options.labelSize * 0.95;
    const QString widest = options.units == UnitSystem::Us ? QStringLiteral("188 °F") : QStringLiteral("88.8 °C");
    const double w = textWidth(widest, size) + 4, h = lineHeight(size);
    for (const auto& pipe : layout.pipes) {
        double total = 0;
        for (std::size_t i = 0; i + 1 < pipe.corners.size(); ++i)
            total += QLineF(pipe.corners[i], pipe.corners[i + 1]).length();
        const NumberShape* kept = nullptr;
        NumberShape best{.id = pipe.id, .share = 0.5, .box = {}, .size = size};
        double least = 0;
        double walked = 0;
        for (std::size_t i = 0; i + 1 < pipe.corners.size(); ++i) {
            const QPointF a = pipe.corners[i], b = pipe.corners[i + 1];
            const double length = QLineF(a, b).length();
            const bool level = std::abs(a.y() - b.y()) < 0.01;
            if (length >= (level ? w : h) + 10) {
                const auto near = crowd.in(QRectF(a, b).normalized().adjusted(-w / 2, -h / 2, w / 2, h / 2));
                for (const double along : {0.5, 0.35, 0.65, 0.22, 0.78}) {
                    const QPointF at = a + (b - a) * along;
                    const QRectF box(at.x() - w / 2, at.y() - h / 2, w, h);
                    // Its own pipe lies under it and is meant to.
                    const double cost = std::abs(along - 0.5) * 4 + 200 / length + covered(near, box, &at);
                    if (kept == nullptr || cost < least) {
                        least = cost;
                        best.share = total > 0 ? (walked + along * length) / total : 0.5;
                        best.box = box;
                        kept = &best;
                    }
                }
            }
            walked += length;
        }
        if (kept == nullptr)
            continue;
        crowd.add(best.box, Crowd::kLabelWeight);
        layout.numbers.push_back(best);
    }
}

}  // namespace

void placeLabels(const document::Drawing& drawing, const PaintOptions& options, DrawingLayout& layout)
{
    auto crowd = crowdOf(layout);
    const auto add = [&](LabelShape label) {
        const double apart = 0.6 * label.size;  // so that two labels side by side do not read as one line
        crowd.add(label.box.adjusted(-apart, 0, apart, 0), Crowd::kLabelWeight);
        layout.labels.push_back(std::move(label));
    };
    std::vector<LabelShape> open;
    for (const auto& symbol : layout.symbols) {
        if (!symbol.text.isEmpty())
            continue;
        const auto* part = drawing.find(symbol.id);
        LabelShape label{.id = symbol.id,
                         .stage = symbol.stage,
                         .tag = QString::fromStdString(part->tag),
                         .values = shownValues(*part, options.units),
                         .box = {},
                         .size = options.labelSize};
        // A join is too common to be named on the drawing; its tag is in the lists.
        if (symbol.kind->width * symbol.kind->height <= 4 && symbol.kind->shownFields.empty() && !part->label)
            continue;
        if (part->label) {
            const auto [w, h] = labelSize(label);
            const QPointF middle = symbol.at + toCanvas(*part->label);
            label.box = {middle.x() - w / 2, middle.y() - h / 2, w, h};
            label.align = Qt::AlignHCenter;
            add(std::move(label));
        } else {
            open.push_back(std::move(label));
        }
    }
    for (auto& label : open) {
        // As it is; else with its words below each other; else, in a crowd, the tag alone.
        LabelShape narrow = label, bare = label;
        narrow.values.clear();
        for (const auto& value : label.values)
            narrow.values += broken(value, label.size);
        bare.values.clear();
        LabelShape* kept = nullptr;
        double least = 0;
        const QRectF symbol = layout.symbol(label.id)->box();
        const double wide = labelSize(label).width > 1.8 * symbol.width() ? 7 : 0;  // would reach over its neighbours
        for (const auto& [shape, bias] : {std::pair{&label, wide}, std::pair{&narrow, 6.0}, std::pair{&bare, 40.0}}) {
            double cost = 0;
            const auto candidates = around(symbol, labelSize(*shape));
            const auto* place = best(candidates, crowd, &cost);
            if (kept == nullptr || cost + bias < least) {
                least = cost + bias;
                shape->box = place->box;
                shape->align = place->align;
                kept = shape;
            }
        }
        add(std::move(*kept));
    }
    if (options.snapshot != nullptr) {
        placeNumbers(options, layout, crowd);
        return;
    }
    for (const auto& pipe : layout.pipes) {
        const auto* part = drawing.find(pipe.id);
        LabelShape label{
            .id = pipe.id, .stage = pipe.stage, .tag = {}, .values = {}, .box = {}, .size = options.labelSize * 0.9};
        label.values << (QStringList{QString::fromStdString(part->tag)} + shownValues(*part, options.units))
                            .join(QStringLiteral("  "));
        const auto size = labelSize(label);
        if (part->label) {
            const QPointF middle = pipe.path.pointAtPercent(0.5) + toCanvas(*part->label);
            label.box = {middle.x() - size.width / 2, middle.y() - size.height / 2, size.width, size.height};
            label.align = Qt::AlignHCenter;
            add(std::move(label));
            continue;
        }
        double cost = 0;
        const auto candidates = along(pipe, size);
        const auto* place = best(candidates, crowd, &cost);
        if (place == nullptr || cost > place->bias)
            continue;  // no free place: better no length than an unreadable one
        label.box = place->box;
        label.align = place->align;
        add(std::move(label));
    }
}

}  // namespace tapward::app
