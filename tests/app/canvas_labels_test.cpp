// SPDX-License-Identifier: GPL-3.0-or-later
// Labels of whole coaches with every proposed loop: what the other painters draw tells whether a label is in the way.
#include <filesystem>
#include <QImage>
#include <QPainter>

#include "canvas/canvas_view.h"
#include "canvas/drawing_layout.h"
#include "canvas/paint_drawing.h"
#include "document/file.h"
#include "document/proposal.h"
#include "document/route.h"
#include "support/catch.h"

using namespace tapward;
using namespace tapward::app;
using document::Drawing;
using document::Place;

namespace {

std::vector<std::string> coaches()
{
    std::vector<std::string> files;
    for (const char* const folder : {"/resources/templates", "/samples"})
        for (const auto& entry : std::filesystem::directory_iterator(std::string(TAPWARD_SOURCE_DIR) + folder))
            if (entry.path().extension() == ".tapward")
                files.push_back(entry.path().string());
    std::ranges::sort(files);
    return files;
}

/// The hot pipe farthest to the right on which a proposal can begin, if there is one.
std::optional<Place> farHot(const Drawing& drawing)
{
    std::optional<Place> best;
    double farthest = -1e9;
    for (const auto& part : drawing.parts) {
        const Place place{part.id, 0.5, {}};
        if (!document::kindOf(part).isPipe || document::beginRefusal(drawing, place))
            continue;
        if (const double x = document::route(drawing, part).back().x; x > farthest) {
            farthest = x;
            best = place;
        }
    }
    return best;
}

/// All but the labels, and where it lies.
struct Picture {
    static constexpr double kScale = 2;
    QRectF ground;
    QImage image;

    Picture(const Drawing& drawing, PaintOptions options)
    {
        ground = drawingBounds(drawing, options).adjusted(-200, -200, 200, 200);
        options.labels = false;
        image = QImage((ground.size() * kScale).toSize(), QImage::Format_RGB32);
        image.fill(Qt::white);
        QPainter painter(&image);
        painter.scale(kScale, kScale);
        painter.translate(-ground.topLeft());
        paintDrawing(painter, drawing, options);
    }
    int inkIn(const QRectF& box) const
    {
        const QRectF at = box.translated(-ground.topLeft());
        int count = 0;
        for (int y = static_cast<int>(at.top() * kScale); y < at.bottom() * kScale; ++y)
            for (int x = static_cast<int>(at.left() * kScale); x < at.right() * kScale; ++x)
                count += qGray(image.pixel(x, y)) < 200;
        return count;
    }
};

/// Where the letters are: a line of text is empty at its top and bottom.
QRectF lettersOf(const LabelShape& label)
{
    return label.box.adjusted(0.5, 0.15 * label.size, -0.5, -0.05 * label.size);
}

void checkLabels(const Drawing& drawing)
{
    const Picture picture(drawing, {});
    // Letters keep their size on screen between limits, 6 to 15 on the canvas, and on paper, where a long coach is small.
    for (const double size : {7.5, 10.0, 12.5, 15.0, 21.0, 26.0})
        for (const auto units : {UnitSystem::Us, UnitSystem::Metric}) {
            CAPTURE(size, units == UnitSystem::Us);
            PaintOptions options;
            options.labelSize = size;
            options.units = units;
            const auto layout = layoutOf(drawing, options);
            REQUIRE(layout.labels.size() > layout.symbols.size() / 3);
            for (std::size_t i = 0; i < layout.labels.size(); ++i) {
                const QRectF letters = lettersOf(layout.labels[i]);
                CAPTURE(drawing.find(layout.labels[i].id)->tag);
                CHECK(picture.inkIn(letters) == 0);
                for (std::size_t k = i + 1; k < layout.labels.size(); ++k) {
                    CAPTURE(drawing.find(layout.labels[k].id)->tag);
                    CHECK_FALSE(letters.intersects(lettersOf(layout.labels[k])));
                }
            }
        }
}

}  // namespace

TEST_CASE("no label covers a pipe, an arrow, a symbol or another label, in any coach with any proposed loop",
          "[canvas]")
{
    int loops = 0;
    for (const auto& file : coaches()) {
        CAPTURE(file);
        const auto drawing = document::load(file);
        REQUIRE(drawing);
        checkLabels(*drawing);
        const auto hot = farHot(*drawing);
        if (!hot)
            continue;  // it has its loop
        for (const auto& variant : document::variants()) {
            CAPTURE(std::string(document::idOf(variant)));
            const auto cold = document::usualEnd(*drawing, *hot, variant.way);
            REQUIRE(cold);
            auto edit = document::propose(*drawing, *hot, *cold, variant);
            REQUIRE(edit);
            Drawing looped = *drawing;
            document::apply(looped, std::move(*edit));
            checkLabels(looped);
            ++loops;
        }
    }
    CHECK(loops >= 36);
}

TEST_CASE("a label stays beside its own symbol, and its tag is never left out", "[canvas]")
{
    for (const auto& file : coaches()) {
        const auto drawing = document::load(file);
        REQUIRE(drawing);
        const auto layout = layoutOf(*drawing, {});
        for (const auto& symbol : layout.symbols) {
            if (symbol.kind->shownFields.empty() || !symbol.text.isEmpty())
                continue;
            CAPTURE(file, drawing->find(symbol.id)->tag);
            const auto label = std::ranges::find(layout.labels, symbol.id, &LabelShape::id);
            REQUIRE(label != layout.labels.end());
            CHECK(label->tag.toStdString() == drawing->find(symbol.id)->tag);
            CHECK(label->box.intersects(symbol.box().adjusted(-25, -25, 25, 25)));
        }
    }
}

TEST_CASE("a long coach opens with letters one can read, and stays fitted until somebody zooms", "[canvas]")
{
    // About 11 pixels for a tag, 10 for a pipe's value: a size read at arm's length; our choice.
    for (const auto& file : coaches()) {
        CAPTURE(file);
        Session session;
        REQUIRE_FALSE(session.open(QString::fromStdString(file)));
        CanvasView canvas(session);
        canvas.resize(790, 330);  // what a window of 1366 x 768 leaves
        canvas.show();
        canvas.fitDrawing();
        const double small = canvas.zoom();
        REQUIRE_FALSE(canvas.layoutShown().labels.empty());
        std::size_t tags = 0;
        for (const auto& label : canvas.layoutShown().labels) {
            CHECK(label.size * small > 9.6);
            tags += label.tag.isEmpty() ? 0 : 1;
        }
        CHECK(tags > canvas.layoutShown().symbols.size() / 3);
        const auto isWhole = [&] {
            return canvas.viewportTransform()
                .inverted()
                .mapRect(QRectF(canvas.viewport()->rect()))
                .contains(canvas.layoutShown().bounds);
        };
        canvas.resize(1200, 700);
        CHECK(canvas.zoom() > small);
        CHECK(isWhole());
        canvas.resize(790, 330);
        CHECK(isWhole());
        canvas.zoomIn();
        const double mine = canvas.zoom();
        canvas.resize(1200, 700);
        CHECK(canvas.zoom() == mine);
    }
}

TEST_CASE("a label without room is left out where that is asked for, and stands on something where not", "[canvas]")
{
    // Letters four times as high as a symbol, side by side: no coach has room for all its tags.
    const auto drawing = document::load(TAPWARD_SOURCE_DIR "/samples/long_hall_coach.tapward");
    REQUIRE(drawing);
    PaintOptions options;
    options.labelSize = 60;
    const auto all = layoutOf(*drawing, options);
    options.hideCrowded = true;
    const auto some = layoutOf(*drawing, options);
    CHECK(some.labels.size() < all.labels.size());
    REQUIRE_FALSE(some.labels.empty());
    for (std::size_t i = 0; i < some.labels.size(); ++i)
        for (std::size_t k = i + 1; k < some.labels.size(); ++k)
            CHECK_FALSE(lettersOf(some.labels[i]).intersects(lettersOf(some.labels[k])));
}
