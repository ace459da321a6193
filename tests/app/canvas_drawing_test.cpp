// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <QBuffer>
#include <QImage>
#include <QPainter>

#include "app/contrast.h"
#include "canvas/drawing_layout.h"
#include "canvas/floor_plan_painter.h"
#include "canvas/paint_drawing.h"
#include "canvas/pipe_use.h"
#include "canvas/temperature_scale.h"
#include "document/edit.h"
#include "document/floor_plan.h"
#include "support/catch.h"
#include "support/cost.h"

using namespace tapward;
using namespace tapward::app;
using document::Drawing;
using document::PartId;
using document::Stage;

namespace {

struct Sketch {
    Drawing drawing;

    void make(const Result<document::Edit>& edit)
    {
        REQUIRE(edit.has_value());
        REQUIRE_FALSE(document::refusal(drawing, *edit));
        document::apply(drawing, *edit);
    }
    PartId place(const char* kind, double x, double y, Stage stage = Stage::Existing, int turn = 0)
    {
        const PartId id = drawing.nextId;
        make(document::placePart(drawing, kind, {x, y}, stage, turn));
        return id;
    }
    PartId join(PartId a, const char* portA, PartId b, const char* portB, Stage stage = Stage::Existing)
    {
        const PartId id = drawing.nextId;
        make(document::connect(drawing, {a, portA, {}}, {b, portB, {}}, stage));
        return id;
    }
};

/// City water to a heater and a faucet, with a loop from the hot tee through a circulator and a check
/// valve back into the cold line.
struct Loop : Sketch {
    PartId city = place("city_inlet", -40, 20), coldTee = place("tee", -30, 20),
           heater = place("tankless_heater", -20, 0);
    PartId hotTee = place("tee", 10, 0), backTee = place("tee", 10, 20, Stage::Existing, 2),
           faucet = place("faucet", 30, -6);
    PartId pump = place("circulator", 10, 6, Stage::Added, 1), check = place("check_valve", 10, 13, Stage::Added, 1);
    PartId supply = join(city, "outlet", coldTee, "run_a");
    PartId feed = join(coldTee, "branch", heater, "cold");
    PartId hot = join(heater, "hot", hotTee, "run_a");
    PartId tapHot = join(hotTee, "run_b", faucet, "hot");
    PartId coldLine = join(coldTee, "run_b", backTee, "run_b");
    PartId tapCold = join(backTee, "run_a", faucet, "cold");
    PartId toPump = join(hotTee, "branch", pump, "inlet", Stage::Added);
    PartId toCheck = join(pump, "outlet", check, "inlet", Stage::Added);
    PartId back = join(check, "outlet", backTee, "branch", Stage::Added);
};

std::string pngOf(const QImage& picture)
{
    QByteArray bytes;
    QBuffer buffer(&bytes);
    REQUIRE(picture.save(&buffer, "png"));
    return bytes.toStdString();
}

/// A floor plan that is one colour all over.
PartId planOf(Sketch& sketch, Qt::GlobalColor colour)
{
    const PartId plan = sketch.place("floor_plan", 0, 0);
    QImage picture(40, 30, QImage::Format_RGB32);
    picture.fill(colour);
    sketch.make(document::setPlanPicture(sketch.drawing, plan, pngOf(picture), "plan"));
    return plan;
}

void setStrength(Sketch& sketch, PartId plan, double strength)
{
    sketch.make(document::Edit{"Strength",
                               {document::SetField{plan, "opacity", parts::Entry{strength, parts::Basis::Estimated}}}});
}

}  // namespace

TEST_CASE("pipes know whether they carry cold, hot or returning water, and which way", "[canvas]")
{
    const Loop loop;
    auto traces = tracePipes(loop.drawing);
    CHECK(traces[loop.supply].use == PipeUse::Cold);
    CHECK(traces[loop.feed].use == PipeUse::Cold);
    CHECK(traces[loop.coldLine].use == PipeUse::Cold);
    CHECK(traces[loop.tapCold].use == PipeUse::Cold);
    CHECK(traces[loop.hot].use == PipeUse::Hot);
    CHECK(traces[loop.tapHot].use == PipeUse::Hot);
    CHECK(traces[loop.toPump].use == PipeUse::Return);
    CHECK(traces[loop.toCheck].use == PipeUse::Return);
    CHECK(traces[loop.back].use == PipeUse::Return);
    for (const auto id : {loop.supply, loop.hot, loop.tapHot, loop.toPump, loop.toCheck, loop.back})
        CHECK(traces[id].direction == 1);
}

TEST_CASE("a pipe's own word on what it carries wins over the trace", "[canvas]")
{
    Loop loop;
    loop.make(
        document::Edit{"Carries", {document::SetField{loop.hot, "carries", parts::Entry{std::string("return"), {}}}}});
    CHECK(pipeUses(loop.drawing)[loop.hot] == PipeUse::Return);
}

TEST_CASE("two pumps side by side are both part of the return", "[canvas]")
{
    Sketch s;
    const auto heater = s.place("tankless_heater", 0, 0), split = s.place("tee", 20, 0), join = s.place("tee", 40, 0);
    const auto a = s.place("circulator", 30, 0), b = s.place("circulator", 30, 10), tap = s.place("tee", 10, 0);
    const auto faucet = s.place("faucet", 14, -10);
    s.join(heater, "hot", tap, "run_a");
    const auto toTap = s.join(tap, "branch", faucet, "hot");
    const auto line = s.join(tap, "run_b", split, "run_a");
    const auto a1 = s.join(split, "run_b", a, "inlet"), a2 = s.join(a, "outlet", join, "run_a");
    const auto b1 = s.join(split, "branch", b, "inlet"), b2 = s.join(join, "branch", b, "outlet");
    const auto home = s.join(join, "run_b", heater, "cold");
    auto traces = tracePipes(s.drawing);
    CHECK(traces[toTap].use == PipeUse::Hot);
    for (const auto id : {line, a1, a2, b1, b2, home})
        CHECK(traces[id].use == PipeUse::Return);
    CHECK(traces[b2].direction == -1);  // drawn from the tee to the pump, against the water
}

TEST_CASE("absent parts are left out, and a pipe through an absent part stays whole", "[canvas]")
{
    Loop loop;
    PaintOptions options;
    options.view = document::View::Before;
    const auto before = layoutOf(loop.drawing, options);
    CHECK(before.symbol(loop.pump) == nullptr);
    CHECK(before.pipe(loop.back) == nullptr);
    CHECK(before.symbol(loop.heater) != nullptr);
    CHECK(before.bridges.empty());
    // Put a valve that the job adds into the cold line: before the job the line runs straight on.
    const auto valve = loop.drawing.nextId;
    loop.make(document::splitPipe(loop.drawing, loop.coldLine, "hand_valve", {-10, 20}, 0.5, Stage::Added));
    const auto bridged = layoutOf(loop.drawing, options);
    REQUIRE(bridged.bridges.size() == 1);
    CHECK(loop.drawing.find(bridged.bridges.front().part)->kind == "hand_valve");
    CHECK(bridged.symbol(valve) == nullptr);
}

TEST_CASE("the bounds hold everything that is painted", "[canvas]")
{
    const Loop loop;
    PaintOptions options;
    const QRectF bounds = drawingBounds(loop.drawing, options);
    QImage image(bounds.adjusted(-20, -20, 20, 20).size().toSize(), QImage::Format_RGB32);
    image.fill(Qt::white);
    QPainter painter(&image);
    painter.translate(20 - bounds.left(), 20 - bounds.top());
    paintDrawing(painter, loop.drawing, options);
    painter.end();
    const QRect inside(19, 19, image.width() - 38, image.height() - 38);
    int outside = 0, inked = 0;
    for (int y = 0; y < image.height(); ++y)
        for (int x = 0; x < image.width(); ++x)
            if (image.pixel(x, y) != qRgb(255, 255, 255)) {
                ++inked;
                outside += !inside.contains(x, y);
            }
    CHECK(inked > 1000);
    CHECK(outside == 0);
}

TEST_CASE("the legend names what occurs and nothing else", "[canvas]")
{
    const Loop loop;
    const auto entries = legendEntries(loop.drawing);
    const auto has = [&](std::string_view kind) { return std::ranges::count(entries, kind, &LegendEntry::kind) == 1; };
    CHECK(has("circulator"));
    CHECK(has("tankless_heater"));
    CHECK_FALSE(has("toilet"));
    const auto lines = std::ranges::count(entries, LegendEntry::Sample::PipeLine, &LegendEntry::sample);
    CHECK(lines == 3);
    CHECK(std::ranges::count(entries, LegendEntry::Sample::AddedLine, &LegendEntry::sample) == 1);
    CHECK(std::ranges::count(entries, LegendEntry::Sample::RemovedLine, &LegendEntry::sample) == 0);
    CHECK(std::ranges::count(entries, LegendEntry::Sample::Joined, &LegendEntry::sample) == 1);
}

TEST_CASE("hotter water is always drawn lighter", "[canvas]")
{
    // Perceived lightness by the luma of Rec. ITU-R BT.601: 0.299 R + 0.587 G + 0.114 B.
    double last = -1;
    for (double celsius = kScaleCold_C; celsius <= kScaleHot_C; celsius += 1) {
        const QColor c = temperatureColour(celsius);
        const double luma = 0.299 * c.red() + 0.587 * c.green() + 0.114 * c.blue();
        CHECK(luma > last);
        last = luma;
    }
    CHECK(temperatureColour(0) == temperatureColour(kScaleCold_C));
    CHECK(temperatureColour(99) == temperatureColour(kScaleHot_C));
    CHECK(heatBand(49) == HeatBand::Scalding);
    CHECK(heatBand(48.8) == HeatBand::Warm);
    CHECK(heatBand(39.9) == HeatBand::Cool);
}

TEST_CASE("a white floor plan leaves the labels readable in the dark, and is still to be seen", "[canvas]")
{
    Sketch sketch;
    const PartId plan = planOf(sketch, Qt::white);
    const Theme theme = Theme::darkOne();
    for (const double strength : {0.05, 0.35, 1.0}) {
        CAPTURE(strength);
        setStrength(sketch, plan, strength);
        QImage image(20, 20, QImage::Format_RGB32);
        image.fill(theme.paper);
        QPainter painter(&image);
        painter.translate(-5, -5);
        paintFloorPlans(painter, sketch.drawing, theme, {});
        painter.end();
        const QColor ground = image.pixelColor(10, 10);
        CHECK(ground != theme.paper);
        // WCAG 2.2: 1.4.3 for letters, 1.4.11 for lines.
        CHECK(test::contrast(theme.text, ground) >= 4.5);
        CHECK(test::contrast(theme.quietText, ground) >= 4.5);
        for (const auto& line : {theme.ink, theme.cold, theme.hot, theme.returning})
            CHECK(test::contrast(line, ground) >= 3);
        if (strength >= 0.35)
            CHECK(test::contrast(theme.paper, ground) >= 1.4);  // our own measure of "to be seen"
    }
}

TEST_CASE("a black floor plan as strong as it gets leaves the labels readable on a light ground", "[canvas]")
{
    Sketch sketch;
    const PartId plan = planOf(sketch, Qt::black);
    setStrength(sketch, plan, 1.0);
    const Theme theme = Theme::light();
    LabelShape label;
    label.box = QRectF(10, 10, 20, 10);
    QImage image(60, 40, QImage::Format_RGB32);
    image.fill(theme.paper);
    QPainter painter(&image);
    paintFloorPlans(painter, sketch.drawing, theme, {label});
    painter.end();
    CHECK(image.pixelColor(50, 30) == QColor(Qt::black));
    // WCAG 2.2, 1.4.3
    CHECK(test::contrast(theme.text, image.pixelColor(20, 15)) >= 4.5);
    CHECK(test::contrast(theme.quietText, image.pixelColor(20, 15)) >= 4.5);
}

TEST_CASE("pictures are decoded up to a bound on all of them together; the rest say why they are not shown", "[canvas]")
{
    // Each within the bounds of one picture, a few kilobytes as PNG, 64 MB as pixels: a hundred would be 6.4 GB.
    QImage large(4000, 4000, QImage::Format_Mono);
    large.fill(0);
    const std::string png = pngOf(large);
    CHECK(png.size() < 20000);
    Sketch sketch;
    const PartId first = sketch.place("floor_plan", 0, 0);
    sketch.make(document::setPlanPicture(sketch.drawing, first, png, "plan"));
    const parts::Entry picture = sketch.drawing.find(first)->entries["picture"];
    for (int i = 1; i < 100; ++i)
        sketch.drawing.find(sketch.place("floor_plan", 0, 0))->entries["picture"] = picture;
    const long before_MB = spent::peakMemory_MB();
    QImage image(400, 400, QImage::Format_RGB32);
    image.fill(Theme::light().paper);
    QPainter painter(&image);
    paintFloorPlans(painter, sketch.drawing, Theme::light(), {});
    painter.end();
    if (!spent::sanitized())
        CHECK(spent::peakMemory_MB() - before_MB < 400);

    // One more is refused in words before it is in the drawing, and a small one for a large one is not.
    const PartId more = sketch.place("floor_plan", 0, 0);
    const auto refused = document::setPlanPicture(sketch.drawing, more, png, "one more");
    REQUIRE_FALSE(refused);
    CHECK_FALSE(refused.error().remedy.empty());
    Sketch few;
    for (int i = 0; i < 3; ++i)
        few.make(document::setPlanPicture(few.drawing, few.place("floor_plan", 0, 0), png, "plan"));
    CHECK_FALSE(document::setPlanPicture(few.drawing, few.place("floor_plan", 0, 0), png, "fourth"));

    // A picture too many is a frame with words: some ink, no ground.
    Sketch last;
    for (int i = 0; i < 4; ++i) {
        const PartId plan = last.place("floor_plan", 0, 0);
        last.drawing.find(plan)->entries["picture"] = picture;
        last.drawing.find(plan)->at = {i * 1000.0, 0};
    }
    image.fill(Theme::light().paper);
    painter.begin(&image);
    painter.translate(-3000 * kModule, 0);
    paintFloorPlans(painter, last.drawing, Theme::light(), {});
    painter.end();
    int ink = 0;
    for (int x = 0; x < image.width(); ++x)
        for (int y = 0; y < image.height(); ++y)
            ink += image.pixelColor(x, y) == Theme::light().paper ? 0 : 1;
    CHECK(ink > 100);
    CHECK(ink < image.width() * image.height() / 4);
}
