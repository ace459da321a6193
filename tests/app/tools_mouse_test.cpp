// SPDX-License-Identifier: GPL-3.0-or-later
#include "document/file.h"
#include "tools_bench.h"

using namespace tapward;
using namespace tapward::app;
using namespace tapward::app::test;

TEST_CASE("a valve dropped on a pipe goes into it as one undo step", "[canvas]")
{
    Bench b;
    const auto left = b.place("circulator", -12, 0), right = b.place("circulator", 12, 0);
    const auto pipe = b.join(left, "outlet", right, "inlet");
    parts::Entry length{6.0, parts::Basis::Measured};
    REQUIRE_FALSE(b.session.perform(document::Edit{"Length", {document::SetField{pipe, "length_m", length}}}));
    const auto before = b.drawing();
    const int steps = b.session.undoStack().count();

    CHECK(b.dropKind("check_valve", b.pixel(0, 0.4), false));  // the preview alone changes nothing
    CHECK(b.canvas.hasPreview());
    CHECK(b.drawing() == before);
    CHECK(b.dropKind("check_valve", b.pixel(0, 0.4)));

    CHECK(b.count("check_valve") == 1);
    CHECK(b.count("pipe_run") == 2);
    const auto& valve = b.only("check_valve");
    const auto* in = b.drawing().pipeAt(valve.id, "inlet");
    const auto* out = b.drawing().pipeAt(valve.id, "outlet");
    REQUIRE(in != nullptr);
    REQUIRE(out != nullptr);
    CHECK_THAT(document::values(*in).number("length_m") + document::values(*out).number("length_m"),
               WithinAbs(6.0, 1e-12));
    CHECK(valve.stage == document::Stage::Added);
    CHECK(b.session.selection() == std::vector{valve.id});
    CHECK(b.session.undoStack().count() == steps + 1);
    b.session.undoStack().undo();
    CHECK(b.drawing().parts == before.parts);
}

TEST_CASE("a part dropped on an upright pipe turns to the pipe's direction", "[canvas]")
{
    Bench b;
    const auto top = b.place("circulator", 0, -12, 1), bottom = b.place("circulator", 0, 12, 1);
    b.join(top, "outlet", bottom, "inlet");
    REQUIRE(b.dropKind("check_valve", b.pixel(0, 0)));
    const auto& valve = b.only("check_valve");
    CHECK(valve.turn == 1);
    CHECK(b.drawing().pipeAt(valve.id, "inlet")->ends[0].part == top);
}

TEST_CASE("a drop that cannot go into the pipe is refused and says why", "[canvas]")
{
    Bench b;
    const auto left = b.place("circulator", -12, 0), right = b.place("circulator", 12, 0);
    b.join(left, "outlet", right, "inlet");
    const auto before = b.drawing();
    CHECK_FALSE(b.dropKind("faucet", b.pixel(0, 0)));
    CHECK(b.drawing() == before);
    CHECK_FALSE(b.canvas.hasPreview());
    CHECK(b.said.size() > 20);
}

TEST_CASE("a drain dropped on a pipe hangs on it by a tee, in one undo step", "[canvas]")
{
    Bench b;
    const auto left = b.place("circulator", -12, 0), right = b.place("circulator", 12, 0);
    b.join(left, "outlet", right, "inlet");
    const auto before = b.drawing();
    const int steps = b.session.undoStack().count();
    REQUIRE(b.dropKind("drain_valve", b.pixel(0, 0)));
    const auto& drain = b.only("drain_valve");
    CHECK(b.drawing().pipeAt(b.only("tee").id, "branch") == b.drawing().pipeAt(drain.id, "port"));
    CHECK(b.session.selection() == std::vector{drain.id});
    CHECK(b.session.undoStack().count() == steps + 1);
    b.session.undoStack().undo();
    CHECK(b.drawing().parts == before.parts);
}

TEST_CASE("dragging from port to port draws a pipe between them", "[canvas]")
{
    Bench b;
    const auto left = b.place("circulator", -10, 0), right = b.place("circulator", 10, 4);
    b.drag(b.portPixel(left, "outlet") + QPoint(5, 3), b.portPixel(right, "inlet") + QPoint(-4, 4));
    const auto& pipe = b.only("pipe_run");
    CHECK(pipe.ends[0] == document::PipeEnd{left, "outlet", {}});
    CHECK(pipe.ends[1] == document::PipeEnd{right, "inlet", {}});
    for (const auto& shape : b.canvas.layoutShown().pipes)
        for (std::size_t i = 0; i + 1 < shape.corners.size(); ++i) {
            const QPointF d = shape.corners[i + 1] - shape.corners[i];
            CHECK((std::abs(d.x()) < 1e-6 || std::abs(d.y()) < 1e-6));
        }
}

TEST_CASE("two clicks connect as well as one drag", "[canvas]")
{
    Bench b;
    const auto left = b.place("circulator", -10, 0), right = b.place("circulator", 10, 4);
    QTest::mouseClick(b.view(), Qt::LeftButton, {}, b.portPixel(left, "outlet") + QPoint(3, 0));
    QTest::mouseMove(b.view(), b.pixel(0, 3));
    CHECK(b.count("pipe_run") == 0);
    QTest::mouseClick(b.view(), Qt::LeftButton, {}, b.portPixel(right, "inlet"));
    CHECK(b.only("pipe_run").ends[1].part == right);
}

TEST_CASE("a pipe ended on another pipe makes a tee, one ended nowhere hangs loose", "[canvas]")
{
    Bench b;
    const auto left = b.place("circulator", -12, 0), right = b.place("circulator", 12, 0),
               below = b.place("circulator", 0, 12, 3);
    b.join(left, "outlet", right, "inlet");
    const int steps = b.session.undoStack().count();
    b.drag(b.portPixel(below, "outlet") + QPoint(0, -4), b.pixel(0, 0.2));
    CHECK(b.session.undoStack().count() == steps + 1);
    const auto& tee = b.only("tee");
    CHECK(b.count("pipe_run") == 3);
    REQUIRE(b.drawing().pipeAt(tee.id, "branch") != nullptr);
    CHECK(b.drawing().pipeAt(tee.id, "branch")->ends[0].part == below);
    CHECK(document::portSide(tee, *document::kindOf(tee).port("branch")) == parts::Side::Bottom);

    b.drag(b.portPixel(below, "inlet") + QPoint(0, 4), b.pixel(8, 18));
    const auto* loose = b.drawing().pipeAt(below, "inlet");
    REQUIRE(loose != nullptr);
    CHECK(loose->ends[1].part == document::kNoPart);
    CHECK(loose->ends[1].loose == document::Point{8, 18});

    // And the loose end can be carried on: still one pipe.
    const auto end = b.place("faucet", 20, 20);
    const auto pipes = b.count("pipe_run");
    b.drag(b.pixel(8, 18), b.portPixel(end, "cold") + QPoint(0, 3));
    CHECK(b.count("pipe_run") == pipes);
    CHECK(b.drawing().pipeAt(end, "cold") == b.drawing().pipeAt(below, "inlet"));
}

TEST_CASE("a tee's branch turns to the side the new pipe comes from", "[canvas]")
{
    Bench b;
    const auto left = b.place("circulator", -12, 0), right = b.place("circulator", 12, 0),
               above = b.place("circulator", 0, -12, 1);
    b.join(left, "outlet", right, "inlet");
    b.drag(b.portPixel(above, "outlet") + QPoint(0, 4), b.pixel(0, 0));
    const auto& tee = b.only("tee");
    CHECK(document::portSide(tee, *document::kindOf(tee).port("branch")) == parts::Side::Top);
    CHECK(b.drawing().pipeAt(tee.id, "run_a") != nullptr);
    CHECK(b.drawing().pipeAt(tee.id, "run_b") != nullptr);
}

TEST_CASE("pipes that cross are not joined", "[canvas]")
{
    Bench b;
    const auto left = b.place("circulator", -12, 0), right = b.place("circulator", 12, 0);
    const auto top = b.place("circulator", 0, -12, 1), bottom = b.place("circulator", 0, 12, 1);
    b.join(left, "outlet", right, "inlet");
    const auto parts = b.drawing().parts.size();
    b.drag(b.portPixel(top, "outlet") + QPoint(0, 4), b.portPixel(bottom, "inlet") + QPoint(0, -4));
    CHECK(b.drawing().parts.size() == parts + 1);
    CHECK(b.count("tee") == 0);
    // The level pipe hops over the upright one.
    int hops = 0;
    for (const auto& pipe : b.canvas.layoutShown().pipes)
        for (int i = 0; i < pipe.path.elementCount(); ++i)
            hops += pipe.path.elementAt(i).isCurveTo();
    CHECK(hops > 0);
}

TEST_CASE("moving a part keeps its pipes and is one undo step", "[canvas]")
{
    Bench b;
    const auto left = b.place("circulator", -12, 0), middle = b.place("check_valve", 0, 0),
               right = b.place("circulator", 12, 0);
    b.join(left, "outlet", middle, "inlet");
    b.join(middle, "outlet", right, "inlet");
    const auto before = b.drawing();
    const int steps = b.session.undoStack().count();
    b.drag(b.pixel(0, 0), b.pixel(1.2, 5.3), {}, false);
    CHECK(b.canvas.hasPreview());
    CHECK(b.drawing() == before);
    QTest::mouseRelease(b.view(), Qt::LeftButton, {}, b.pixel(1.2, 5.3));
    CHECK(b.drawing().find(middle)->at == document::Point{1, 5});  // on the grid
    CHECK(joints(b.drawing()) == joints(before));
    CHECK(b.session.undoStack().count() == steps + 1);
    b.session.undoStack().undo();
    CHECK(b.drawing() == before);
}

TEST_CASE("Alt moves off the grid", "[canvas]")
{
    Bench b;
    const auto part = b.place("circulator", 0, 0);
    b.drag(b.pixel(0, 0), b.pixel(3.4, 0), Qt::AltModifier);
    CHECK_THAT(b.drawing().find(part)->at.x, WithinAbs(3.4, 0.06));
}

TEST_CASE("Escape gives up a move, a pipe and a rubber band", "[canvas]")
{
    Bench b;
    const auto left = b.place("circulator", -10, 0);
    b.place("circulator", 10, 0);
    const auto before = b.drawing();
    const int steps = b.session.undoStack().count();
    const auto from = GENERATE(0, 1, 2);
    const QPoint start = from == 0   ? b.pixel(-10, 0)
                         : from == 1 ? b.portPixel(left, "outlet") + QPoint(4, 0)
                                     : b.pixel(-16, -8);
    b.drag(start, b.pixel(4, 6), {}, false);
    b.key(Qt::Key_Escape);
    QTest::mouseRelease(b.view(), Qt::LeftButton, {}, b.pixel(4, 6));
    CHECK(b.drawing() == before);
    CHECK(b.session.undoStack().count() == steps);
    CHECK_FALSE(b.canvas.hasPreview());
}

TEST_CASE("a rubber band selects what it touches; Control toggles and Shift adds", "[canvas]")
{
    Bench b;
    const auto a = b.place("circulator", -10, 0), c = b.place("circulator", 0, 0), d = b.place("circulator", 10, 0);
    b.drag(b.pixel(-14, -6), b.pixel(-1, 1));
    CHECK(b.session.selection() == std::vector{a, c});
    QTest::mouseClick(b.view(), Qt::LeftButton, Qt::ShiftModifier, b.pixel(10, 0));
    CHECK(b.session.selection() == std::vector{a, c, d});
    QTest::mouseClick(b.view(), Qt::LeftButton, Qt::ControlModifier, b.pixel(0, 0));
    CHECK(b.session.selection() == std::vector{a, d});
    QTest::mouseClick(b.view(), Qt::LeftButton, {}, b.pixel(0, 12));
    CHECK(b.session.selection().empty());
}

TEST_CASE("a dragged pipe piece bends the pipe, and dragged back leaves no bend", "[canvas]")
{
    Bench b;
    const auto left = b.place("circulator", -14, 0), right = b.place("circulator", 14, 0);
    const auto pipe = b.join(left, "outlet", right, "inlet");
    b.drag(b.pixel(0, 0), b.pixel(0, 5));
    CHECK_FALSE(b.drawing().find(pipe)->bends.empty());
    const auto* shape = b.canvas.layoutShown().pipe(pipe);
    CHECK(shape->corners.size() == 6);
    b.drag(b.pixel(0, 5), b.pixel(0, 0));
    CHECK(b.drawing().find(pipe)->bends.empty());
    CHECK(b.canvas.layoutShown().pipe(pipe)->corners.size() == 2);
}

TEST_CASE("zooming by the wheel keeps the point under the pointer within a pixel", "[canvas]")
{
    Bench b;
    b.place("circulator", 7, 5);
    const QPoint at = b.pixel(7, 5) + QPoint(13, -7);
    const QPointF under = b.canvas.mapToScene(at);
    for (int i = 0; i < 8; ++i) {
        b.wheel(at, 120, Qt::ControlModifier);
        const QPointF now = b.canvas.viewportTransform().map(under);
        CAPTURE(i, now.x(), now.y());
        CHECK(std::hypot(now.x() - at.x(), now.y() - at.y()) < 1.0);
    }
    CHECK(b.canvas.zoom() > 3.9);
    for (int i = 0; i < 16; ++i)
        b.wheel(at, -120, Qt::ControlModifier);
    const QPointF now = b.canvas.viewportTransform().map(under);
    CHECK(std::hypot(now.x() - at.x(), now.y() - at.y()) < 1.0);
}

TEST_CASE("the view pans by wheel, middle button and held Space, even while a pipe is drawn", "[canvas]")
{
    Bench b;
    const auto part = b.place("circulator", 0, 0);
    const QPoint home = b.pixel(0, 0);
    b.wheel(home, 120, Qt::NoModifier);
    CHECK(b.pixel(0, 0).y() > home.y());
    b.wheel(home, -120, Qt::NoModifier);
    b.wheel(home, 120, Qt::ShiftModifier);
    CHECK(b.pixel(0, 0).x() > home.x());
    b.wheel(home, -120, Qt::ShiftModifier);

    QTest::mouseClick(b.view(), Qt::LeftButton, {}, b.portPixel(part, "outlet") + QPoint(3, 0));  // a pipe has begun
    QTest::mousePress(b.view(), Qt::MiddleButton, {}, QPoint(300, 300));
    QTest::mouseMove(b.view(), QPoint(340, 320));
    QTest::mouseRelease(b.view(), Qt::MiddleButton, {}, QPoint(340, 320));
    CHECK(b.pixel(0, 0) == home + QPoint(40, 20));
    QTest::mouseClick(b.view(), Qt::LeftButton, {}, b.pixel(10, 0));
    CHECK(b.only("pipe_run").ends[0].part == part);

    const QPoint moved = b.pixel(0, 0);
    QTest::keyPress(&b.canvas, Qt::Key_Space);
    QTest::mousePress(b.view(), Qt::LeftButton, {}, QPoint(300, 300));
    QTest::mouseMove(b.view(), QPoint(290, 310));
    QTest::mouseRelease(b.view(), Qt::LeftButton, {}, QPoint(290, 310));
    QTest::keyRelease(&b.canvas, Qt::Key_Space);
    CHECK(b.pixel(0, 0) == moved + QPoint(-10, 10));
}

TEST_CASE("a picked part is put down by a click, turned by R before", "[canvas]")
{
    Bench b;
    b.canvas.startPlacing(QStringLiteral("hand_valve"));
    QTest::mouseMove(b.view(), b.pixel(3, 3));
    b.key(Qt::Key_R);
    QTest::mouseClick(b.view(), Qt::LeftButton, {}, b.pixel(4.2, 3.1));
    const auto& valve = b.only("hand_valve");
    CHECK(valve.at == document::Point{4, 3});
    CHECK(valve.turn == 1);
    QTest::mouseClick(b.view(), Qt::LeftButton, {}, b.pixel(-8, -8));
    CHECK(b.count("hand_valve") == 1);  // one pick, one part
}

TEST_CASE("a label moved by hand stays there", "[canvas]")
{
    Bench b;
    const auto part = b.place("circulator", 0, 0);
    const auto& labels = b.canvas.layoutShown().labels;
    const auto label = std::ranges::find(labels, part, &LabelShape::id);
    REQUIRE(label != labels.end());
    const QPoint at = b.canvas.mapFromScene(label->box.center());
    b.drag(at, at + QPoint(60, -40));
    REQUIRE(b.drawing().find(part)->label.has_value());
    const auto now = std::ranges::find(b.canvas.layoutShown().labels, part, &LabelShape::id);
    const QPointF moved = b.canvas.viewportTransform().map(now->box.center()) - QPointF(at);
    CHECK_THAT(moved.x(), WithinAbs(60, 1.5));
    CHECK_THAT(moved.y(), WithinAbs(-40, 1.5));
}

TEST_CASE("asked for from far away and near by, every part of a coach comes into view and is selected", "[tools]")
{
    Bench b;
    const auto coach = document::load(TAPWARD_SOURCE_DIR "/samples/long_hall_coach.tapward");
    REQUIRE(coach);
    b.session.startNew(*coach);
    for (const auto& part : coach->parts)
        for (const double zoom : {0.3, 4.0}) {
            INFO(part.tag << " at " << zoom);
            b.canvas.setZoom(zoom);
            b.canvas.centerOn(-3000, 2500);
            b.session.requestJump(part.id);
            const auto* pipe = b.canvas.layoutShown().pipe(part.id);
            const auto* symbol = b.canvas.layoutShown().symbol(part.id);
            REQUIRE((pipe || symbol));
            const QPointF at = pipe ? pipe->path.pointAtPercent(0.5) : symbol->at;
            const QRect middle = b.view()->rect().adjusted(b.view()->width() / 4, b.view()->height() / 4,
                                                           -b.view()->width() / 4, -b.view()->height() / 4);
            CHECK(middle.contains(b.canvas.mapFromScene(at)));
            CHECK(b.canvas.zoom() >= 0.8);  // large enough to be read
            CHECK(b.session.selection() == std::vector{part.id});
        }
}

TEST_CASE("an empty drawing has room for a coach, and its first part is not blown up", "[canvas]")
{
    Bench b;
    b.canvas.resize(900, 540);
    b.session.startNew({});
    b.canvas.fitDrawing();
    CHECK(b.canvas.zoom() == 1.0);
    b.place("tankless_heater", 0, 0);
    b.canvas.resize(880, 500);  // a pane's text was broken otherwise
    CHECK(b.canvas.zoom() == 1.0);
    b.canvas.fitDrawing();  // asked for
    CHECK(b.canvas.zoom() > 1.5);
    b.canvas.resize(860, 500);
    CHECK(b.canvas.zoom() > 1.5);
}

TEST_CASE("a click on a symbol takes the symbol at every zoom, whatever is chosen and however short its pipes",
          "[canvas]")
{
    Bench b;
    b.canvas.resize(1300, 700);
    REQUIRE_FALSE(b.session.open(QStringLiteral(TAPWARD_SOURCE_DIR "/samples/long_hall_coach.tapward")));
    for (const double zoom : {0.35, 0.48, 1.0}) {
        for (const auto& part : b.drawing().parts) {
            const auto& kind = document::kindOf(part);
            if (kind.isPipe || part.kind == "tee" || part.kind == "note")
                continue;
            // The pipe at its first port is chosen: its ends are at hand too.
            const auto* pipe = kind.ports.empty() ? nullptr : b.drawing().pipeAt(part.id, kind.ports.front().id);
            b.canvas.setZoom(zoom);
            b.canvas.centerOn(part.at.x * kModule, part.at.y * kModule);
            // In the middle; where it is small, anywhere well within.
            const double off = zoom < 0.5 ? 0.2 * kind.width : 0;
            for (const double dx : {0.0, -off, off}) {
                b.session.select(pipe != nullptr ? std::vector{pipe->id} : std::vector<PartId>{});
                QTest::mouseClick(b.view(), Qt::LeftButton, {}, b.pixel(part.at.x + dx, part.at.y));
                CAPTURE(part.tag, zoom, dx);
                CHECK(b.session.selection() == std::vector{part.id});
            }
        }
    }
}
