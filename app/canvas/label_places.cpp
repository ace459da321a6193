// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <QLineF>
#include <span>
#include <utility>

#include "canvas/canvas_text.h"
#include "canvas/drawing_layout.h"
#include "canvas/label_crowd.h"

namespace tapward::app {

namespace {

constexpr double kGap = 3.0, kTight = 1.0;
constexpr double kBlank = 0.12;  // of a line's letter size: empty at its top

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

struct Candidate {
    QRectF box;
    Qt::Alignment align;
    double bias;  // habit: above first, then below, then the sides
};

/// The places around one symbol: as many as there are, and on the stack, since a crowd asks for them over and over.
struct Places {
    std::array<Candidate, 18> all;
    std::size_t count = 0;
    void add(const Candidate& one) { all[count++] = one; }
    operator std::span<const Candidate>() const { return {all.data(), count}; }  // NOLINT(google-explicit-constructor)
};

/// Places beside a symbol, or farther off by `away`.
Places around(const QRectF& symbol, const Size& size, double blank, double away)
{
    const auto [w, h] = size;
    const double cx = symbol.center().x(), cy = symbol.center().y(), gap = kGap + away;
    const double above = symbol.top() - gap - h, below = symbol.bottom() + gap - blank;
    const double right = symbol.right() + gap, left = symbol.left() - gap - w;
    Places places;
    const auto add = [&](double x, double y, Qt::Alignment align, double bias) {
        places.add({{x, y, w, h}, align, bias + 2 * away});
    };
    add(cx - w / 2, above, Qt::AlignHCenter, 0);
    add(cx - w / 2, below, Qt::AlignHCenter, 1);
    add(right, cy - h / 2, Qt::AlignLeft, 2);
    add(left, cy - h / 2, Qt::AlignRight, 3);
    add(right, above, Qt::AlignLeft, 4);
    add(right, below, Qt::AlignLeft, 4);
    add(left, above, Qt::AlignRight, 5);
    add(left, below, Qt::AlignRight, 5);
    for (const double y : {above, below}) {
        add(cx + kGap, y, Qt::AlignLeft, 2.5);
        add(cx - kGap - w, y, Qt::AlignRight, 2.5);
        // Over one half of the symbol, so that it still reads as its own.
        add(symbol.left(), y, Qt::AlignLeft, 3);
        add(symbol.right() - w, y, Qt::AlignRight, 3);
    }
    if (away == 0) {
        add(cx - w / 2, above + kGap - kTight, Qt::AlignHCenter, 4);
        add(cx - w / 2, below + kTight - kGap, Qt::AlignHCenter, 5);
    }
    return places;
}

/// Places along a pipe, beside its straight pieces that are long enough.
std::vector<Candidate> along(const PipeShape& pipe, const Size& size)
{
    std::vector<Candidate> result;
    const auto [w, h] = size;
    const double clear = pipe.stage == document::Stage::Added ? 5.0 : 4.0;  // of its arrowhead
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
                result.push_back({{at.x() - w / 2, middle.y() - clear - h, w, h}, Qt::AlignHCenter, off});
                result.push_back({{at.x() - w / 2, middle.y() + clear + 0.5, w, h}, Qt::AlignHCenter, off + 1});
            } else {
                result.push_back({{middle.x() + 6.0, at.y() - h / 2, w, h}, Qt::AlignLeft, off + 1});
                result.push_back({{middle.x() - 6.0 - w, at.y() - h / 2, w, h}, Qt::AlignRight, off + 2});
            }
        }
    }
    return result;
}

/// A label farther off than usual must not be taken for another part's: no pipe between, no other symbol as near.
double mistaken(std::span<const Obstacle> obstacles, const QRectF& box, const QRectF& symbol)
{
    const double away = std::max({symbol.left() - box.right(), box.left() - symbol.right(), symbol.top() - box.bottom(),
                                  box.top() - symbol.bottom()});
    if (away <= kGap + 1)
        return 0;
    const QRectF between =
        box.united(symbol) & box.adjusted(-away, -away, away, away) & symbol.adjusted(-away, -away, away, away);
    const QRectF near = box.adjusted(1 - away, 1 - away, away - 1, away - 1);
    double sum = 0;
    for (const auto& obstacle : obstacles) {
        if ((obstacle.weight == Crowd::kPipeWeight && !between.isEmpty() && overlap(obstacle.box, between))
            || (obstacle.weight == Crowd::kSymbolWeight && overlap(obstacle.box, near)))
            sum += 30;
    }
    return sum;
}

const Candidate* best(std::span<const Candidate> candidates, double blank, Crowd& crowd, const QRectF* symbol,
                      double* cost)
{
    QRectF area;
    for (const auto& candidate : candidates)
        area |= candidate.box;
    if (symbol != nullptr)
        area |= *symbol;
    const auto near = crowd.in(area);
    const Candidate* result = nullptr;
    for (const auto& candidate : candidates) {
        if (result != nullptr && candidate.bias >= *cost)
            continue;
        const QRectF box = candidate.box.adjusted(0, blank, 0, 0);
        const double most = result == nullptr ? std::numeric_limits<double>::infinity() : *cost - candidate.bias;
        double now = candidate.bias + covered(near, box, nullptr, most);
        if (result != nullptr && now >= *cost)
            continue;  // before it is asked what else speaks against it
        if (symbol != nullptr)
            now += mistaken(near, box, *symbol);
        if (result == nullptr || now < *cost) {
            result = &candidate;
            *cost = now;
        }
    }
    return result;
}

std::size_t addTo(Crowd& crowd, const LabelShape& label)
{
    // So that two labels side by side do not read as one line, nor one above the other as one label.
    const double apart = 0.6 * label.size, above = (0.25 - kBlank) * label.size, below = 0.25 * label.size;
    return crowd.add(label.box.adjusted(-apart, -above, apart, below), Crowd::kLabelWeight);
}

/// Puts the label beside its symbol: as it is; else with its words below each other; else, in a crowd, the tag alone.
/// @return whether it covers nothing there
bool settle(LabelShape& label, const QRectF& symbol, Crowd& crowd)
{
    LabelShape narrow = label, bare = label;
    narrow.values.clear();
    for (const auto& value : label.values)
        narrow.values += broken(value, label.size);
    bare.values.clear();
    const LabelShape* kept = nullptr;
    const double blank = kBlank * label.size;
    double least = 0;
    struct Shape {
        LabelShape* label;
        Size size;
        double bias;
    };
    const Size whole = labelSize(label);
    const double wide = whole.width > 1.8 * symbol.width() ? 7 : 0;  // would reach over its neighbours
    const std::array shapes{Shape{&label, whole, wide}, Shape{&narrow, labelSize(narrow), 6.0},
                            Shape{&bare, labelSize(bare), 40.0}};
    for (const double away : {0.0, 5.0, 12.0, 20.0})
        for (const auto& [shape, size, bias] : shapes) {
            if (kept != nullptr && least <= bias + 2 * away)
                continue;
            double cost = 0;
            const Places candidates = around(symbol, size, blank, away);
            const auto* place = best(candidates, blank, crowd, &symbol, &cost);
            if (kept == nullptr || cost + bias < least) {
                least = cost + bias;
                shape->box = place->box;
                shape->align = place->align;
                kept = shape;
            }
        }
    if (kept != &label)
        label = *kept;
    const QRectF letters = label.box.adjusted(0, blank, 0, 0);
    return covered(crowd.in(letters), letters) == 0;
}

/// One after the other; where that leaves labels on top of something, first all tags and then what has room of the
/// values: on paper, where letters are large, a value must not take the last place of a neighbour's tag.
std::vector<LabelShape> placedBySymbols(const std::vector<LabelShape>& open, const DrawingLayout& layout,
                                        const PaintOptions& options, Crowd& crowd)
{
    const auto symbolOf = [&](const LabelShape& label) { return inkOf(*layout.symbol(label.id)); };
    auto placed = open;
    const auto withRoom = [&](std::vector<LabelShape> labels, std::span<const std::size_t> crowded) {
        if (options.hideCrowded)
            for (const auto i : crowded)
                labels[i].tag.clear();
        std::erase_if(labels, [](const LabelShape& label) { return label.tag.isEmpty(); });
        return labels;
    };
    std::vector<std::size_t> order, easy;  // those that found no room first, then the others
    for (std::size_t i = 0; i < placed.size(); ++i) {
        (settle(placed[i], symbolOf(placed[i]), crowd) ? easy : order).push_back(i);
        addTo(crowd, placed[i]);
    }
    if (order.empty())
        return placed;
    const std::vector<std::size_t> covering = order;
    for (const auto i : easy)  // g++ 14 sees an overflow in insert()
        order.push_back(i);
    Crowd again(layout, options);
    for (const auto& label : layout.labels)
        addTo(again, label);
    std::vector<std::size_t> tags(open.size());
    for (const auto i : order) {
        LabelShape tag = open[i];
        tag.values.clear();
        settle(tag, symbolOf(tag), again);
        tags[i] = addTo(again, tag);
    }
    auto second = open;
    std::vector<std::size_t> stillCovering;
    for (const auto i : order) {
        again.remove(tags[i]);
        if (!settle(second[i], symbolOf(second[i]), again))
            stillCovering.push_back(i);
        addTo(again, second[i]);
    }
    if (stillCovering.size() >= covering.size())
        return withRoom(std::move(placed), covering);
    crowd = std::move(again);
    return withRoom(std::move(second), stillCovering);
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
    Crowd crowd(layout, options);
    const auto add = [&](LabelShape label) {
        addTo(crowd, label);
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
    for (auto& label : placedBySymbols(open, layout, options, crowd))
        layout.labels.push_back(std::move(label));
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
        const auto* place = best(candidates, kBlank * label.size, crowd, nullptr, &cost);
        if (place == nullptr || cost > place->bias)
            continue;  // no free place: better no length than an unreadable one
        label.box = place->box;
        label.align = place->align;
        add(std::move(label));
    }
}

}  // namespace tapward::app
