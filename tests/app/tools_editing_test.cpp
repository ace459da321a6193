// SPDX-License-Identifier: GPL-3.0-or-later
// Editing what is drawn already: pipe ends, parts put into pipes, where things come to rest, walking by keys.
#include <QAction>
#include <QClipboard>
#include <QContextMenuEvent>
#include <QLineEdit>
#include <QMenu>
#include <QTemporaryDir>
#include <set>

#include "tools/kind_picker.h"
#include "tools/pipe_gesture.h"
#include "tools_bench.h"

using namespace tapward;
using namespace tapward::app;
using namespace tapward::app::test;

TEST_CASE("a connected pipe end is dragged to another port, length and bends kept", "[canvas]")
{
    Bench b;
    const auto left = b.place("circulator", -14, 0), right = b.place("circulator", 14, 0),
               other = b.place("circulator", 14, 12);
    const auto pipe = b.join(left, "outlet", right, "inlet");
    auto bent = *b.drawing().find(pipe);
    bent.bends = {{0, 4}};
    bent.entries["length_m"] = {3.25, parts::Basis::Measured};
    REQUIRE_FALSE(b.session.perform(document::Edit{"Bend", {document::ChangePart{bent}}}));
    b.session.select({pipe});
    const auto before = b.drawing();
    const int steps = b.session.undoStack().count();

    b.drag(b.portPixel(right, "inlet") + QPoint(-4, 1), b.portPixel(other, "inlet") + QPoint(-3, 2));
    const auto* moved = b.drawing().find(pipe);
    CHECK(moved->ends[1] == document::PipeEnd{other, "inlet", {}});
    CHECK(moved->ends[0].part == left);
    CHECK(moved->bends == bent.bends);
    CHECK(document::values(*moved).number("length_m") == 3.25);
    CHECK(b.session.undoStack().count() == steps + 1);
    b.session.undoStack().undo();
    CHECK(b.drawing() == before);

    // Back where it came from, or given up: nothing to undo.
    b.session.select({pipe});
    b.drag(b.portPixel(right, "inlet") + QPoint(-4, 1), b.portPixel(right, "inlet") + QPoint(-9, 3));
    CHECK(b.session.undoStack().count() == steps + 1);
    CHECK(b.drawing() == before);
    b.drag(b.portPixel(right, "inlet") + QPoint(-4, 1), b.pixel(0, 16), {}, false);
    CHECK(b.canvas.hasPreview());
    b.key(Qt::Key_Escape);
    QTest::mouseRelease(b.view(), Qt::LeftButton, {}, b.pixel(0, 16));
    CHECK(b.drawing() == before);
}

TEST_CASE("a pipe end dragged onto another pipe makes a tee, onto its own pipe it is refused", "[canvas]")
{
    Bench b;
    const auto left = b.place("circulator", -14, 0), right = b.place("circulator", 14, 0);
    const auto top = b.place("circulator", -14, 14), bottom = b.place("circulator", 14, 14);
    const auto pipe = b.join(left, "outlet", right, "inlet");
    b.join(top, "outlet", bottom, "inlet");
    b.session.select({pipe});
    b.drag(b.portPixel(right, "inlet") + QPoint(-4, 0), b.pixel(4, 14.1));
    CHECK(b.count("tee") == 1);
    CHECK(b.count("pipe_run") == 3);
    CHECK(b.drawing().find(pipe)->ends[1].part == b.only("tee").id);
    CHECK(b.drawing().pipeAt(right, "inlet") == nullptr);
}

TEST_CASE("a placed part dropped on a pipe goes into it, one undo step, lengths divided", "[canvas]")
{
    Bench b;
    const auto left = b.place("circulator", -14, 0), right = b.place("circulator", 14, 0);
    const auto pipe = b.join(left, "outlet", right, "inlet");
    REQUIRE_FALSE(b.session.perform(
        document::Edit{"Length", {document::SetField{pipe, "length_m", parts::Entry{6.0, parts::Basis::Measured}}}}));
    const auto valve = b.place("check_valve", 0, 12, 1);
    const auto tag = b.drawing().find(valve)->tag;
    const auto before = b.drawing();
    const int steps = b.session.undoStack().count();
    b.drag(b.pixel(0, 12), b.pixel(2, 0.3));
    REQUIRE(b.drawing().pipeAt(valve, "inlet") != nullptr);
    REQUIRE(b.drawing().pipeAt(valve, "outlet") != nullptr);
    CHECK(b.drawing().find(valve)->tag == tag);
    CHECK(b.drawing().find(valve)->turn == 0);
    CHECK_THAT(document::values(*b.drawing().pipeAt(valve, "inlet")).number("length_m")
                   + document::values(*b.drawing().pipeAt(valve, "outlet")).number("length_m"),
               WithinAbs(6.0, 1e-12));
    CHECK(b.session.undoStack().count() == steps + 1);
    b.session.undoStack().undo();
    CHECK(b.drawing() == before);

    // In line it is moved with its pipes, not detached; taking it out is a command of its own.
    b.session.undoStack().redo();
    const auto joint = joints(b.drawing());
    b.drag(b.pixel(2, 0), b.pixel(2, 8));
    CHECK(joints(b.drawing()) == joint);
    b.session.select({valve});
    b.key(Qt::Key_O);
    CHECK(b.count("pipe_run") == 1);
    CHECK(b.drawing().pipeAt(valve, "inlet") == nullptr);
    CHECK(b.only("pipe_run").ends[1].part == right);
}

TEST_CASE("a part brought near a free port that looks at it comes to rest there, joined", "[canvas]")
{
    Bench b;
    const auto pump = b.place("circulator", -10, 0);
    const QPoint port = b.portPixel(pump, "outlet");
    // Put down with its inlet a little beside the place two steps off the outlet.
    const QPointF goal = b.canvas.mapToScene(port) + QPointF(2 * kModule, 0);
    document::Part trial;
    trial.kind = "check_valve";
    const auto inlet = toCanvas(document::portPlace(trial, *document::kindOf(trial).port("inlet")));
    const QPoint at = b.canvas.mapFromScene(goal - inlet) + QPoint(4, 3);
    CHECK(b.dropKind("check_valve", at, false));
    CHECK(b.said.contains(QStringLiteral("join")));
    CHECK(b.dropKind("check_valve", at));
    const auto& valve = b.only("check_valve");
    CHECK(toCanvas(document::portPlace(valve, *document::kindOf(valve).port("inlet"))) == goal);
    const auto& pipe = b.only("pipe_run");
    CHECK(pipe.ends[0] == document::PipeEnd{pump, "outlet", {}});
    CHECK(pipe.ends[1] == document::PipeEnd{valve.id, "inlet", {}});
    b.session.undoStack().undo();
    CHECK(b.count("pipe_run") + b.count("check_valve") == 0);  // one step

    // Alt suspends it: the part lies where it was let go.
    QMimeData data;
    data.setData(QLatin1String(kKindMime), "check_valve");
    QDragEnterEvent enter(at, Qt::CopyAction, &data, Qt::LeftButton, Qt::AltModifier);
    QApplication::sendEvent(b.view(), &enter);
    QDropEvent drop(at, Qt::CopyAction, &data, Qt::LeftButton, Qt::AltModifier);
    QApplication::sendEvent(b.view(), &drop);
    CHECK(b.count("pipe_run") == 0);
    CHECK(toCanvas(b.only("check_valve").at) == b.canvas.mapToScene(at));
}

TEST_CASE("a moved part comes in line with one that is off the grid, and the line is shown", "[canvas]")
{
    Bench b;
    b.place("circulator", -12, 0.4);
    const auto part = b.place("circulator", 6, 9);
    b.drag(b.pixel(6, 9), b.pixel(6.2, 0.7), {}, false);
    const QImage shown = b.view()->grab().toImage();
    QTest::mouseRelease(b.view(), Qt::LeftButton, {}, b.pixel(6.2, 0.7));
    CHECK_THAT(b.drawing().find(part)->at.y, WithinAbs(0.4, 1e-9));
    CHECK(b.drawing().find(part)->at.x == 6);  // across it, the grid
    const QImage after = b.view()->grab().toImage();
    const QPoint between = b.pixel(-4, 0.4);
    int changed = 0;
    for (int x = -12; x <= 12; ++x)
        changed += shown.pixel(between + QPoint(x, 0)) != after.pixel(between + QPoint(x, 0));
    CHECK(changed > 3);
}

TEST_CASE("arrow keys go to the nearest part that way, Shift and arrows move it", "[canvas]")
{
    Bench b;
    const auto middle = b.place("circulator", 0, 0), right = b.place("circulator", 12, 1),
               far = b.place("circulator", 26, 0), below = b.place("circulator", 1, 12);
    b.session.select({middle});
    b.key(Qt::Key_Right);
    CHECK(b.session.selection() == std::vector{right});
    b.key(Qt::Key_Right);
    CHECK(b.session.selection() == std::vector{far});
    b.key(Qt::Key_Right);
    CHECK(b.session.selection() == std::vector{far});  // nothing further
    b.session.select({middle});
    b.key(Qt::Key_Down);
    CHECK(b.session.selection() == std::vector{below});
    CHECK(b.session.undoStack().count() == 4);  // nothing moved
    b.key(Qt::Key_Left, Qt::ShiftModifier);
    CHECK(b.drawing().find(below)->at == document::Point{0, 12});
    CHECK(b.session.isModified());
}

TEST_CASE("after a click Tab goes round among what lies under the pointer", "[canvas]")
{
    Bench b;
    const auto a = b.place("circulator", 0, 0), c = b.place("circulator", 1, 0);
    b.place("circulator", 20, 0);
    QTest::mouseClick(b.view(), Qt::LeftButton, {}, b.pixel(0.5, 0));
    CHECK(b.session.selection() == std::vector{c});
    b.key(Qt::Key_Tab);
    CHECK(b.session.selection() == std::vector{a});
    b.key(Qt::Key_Tab);
    CHECK(b.session.selection() == std::vector{c});
}

TEST_CASE("the clipboard also has a picture with the tags and plain text", "[canvas]")
{
    Bench b;
    const auto a = b.place("circulator", -8, 0), c = b.place("check_valve", 8, 0);
    const auto pipe = b.join(a, "outlet", c, "inlet");
    b.session.select({a, pipe});  // the pipe's other end is not copied
    b.key(Qt::Key_C, Qt::ControlModifier);
    const auto* data = QApplication::clipboard()->mimeData();
    REQUIRE(data->hasFormat(QStringLiteral("image/svg+xml")));
    const QString svg = QString::fromUtf8(data->data(QStringLiteral("image/svg+xml")));
    CHECK(svg.contains(QStringLiteral("<svg")));
    CHECK(svg.contains(QString::fromStdString(b.drawing().find(a)->tag)));
    CHECK_FALSE(svg.contains(QLatin1Char('>') + QString::fromStdString(b.drawing().find(c)->tag) + QLatin1Char('<')));
    CHECK(data->text().contains(QString::fromStdString(b.drawing().find(a)->tag)));
}

TEST_CASE("parts go from one file to another and get tags of their own", "[canvas]")
{
    Bench from;
    const auto a = from.place("circulator", 0, 0), c = from.place("check_valve", 10, 0);
    const auto pipe = from.join(a, "outlet", c, "inlet");
    from.session.select({a, c, pipe});
    from.key(Qt::Key_C, Qt::ControlModifier);
    Bench to;
    to.place("circulator", 0, 0);
    to.key(Qt::Key_V, Qt::ControlModifier | Qt::ShiftModifier);
    CHECK(to.count("circulator") == 2);
    CHECK(to.count("pipe_run") == 1);
    std::set<std::string> tags;
    for (const auto& part : to.drawing().parts)
        CHECK(tags.insert(part.tag).second);
    // The menu's paste lies beside the original, never on it.
    to.session.undoStack().undo();
    to.canvas.action(EditingCanvas::Command::PasteBeside)->trigger();
    std::set<std::pair<double, double>> places;
    for (const auto& part : to.drawing().parts)
        if (!document::kindOf(part).isPipe)
            CHECK(places.emplace(part.at.x, part.at.y).second);
}

TEST_CASE("a pipe ended on the empty canvas offers the part list and joins what is chosen", "[canvas]")
{
    Bench b;
    const auto pump = b.place("circulator", -10, 0);
    b.drag(b.portPixel(pump, "outlet") + QPoint(5, 0), b.pixel(6, 0));
    REQUIRE(QTest::qWaitFor([&] { return b.canvas.findChild<KindPicker*>() != nullptr; }, 2000));
    auto* picker = b.canvas.findChild<KindPicker*>();
    QTest::keyClicks(picker->findChild<QLineEdit*>(), "check");
    QTest::keyClick(picker->findChild<QLineEdit*>(), Qt::Key_Return);
    const auto& valve = b.only("check_valve");
    const auto& pipe = b.only("pipe_run");
    CHECK(pipe.ends[0].part == pump);
    CHECK(pipe.ends[1].part == valve.id);
    CHECK(b.session.selection() == std::vector{valve.id});
    // The same again, joined to it, by one key.
    QTest::qWait(10);
    b.key(Qt::Key_A);
    CHECK(b.count("check_valve") == 2);
    CHECK(b.count("pipe_run") == 2);
}

TEST_CASE("every target is 24 pixels across or more, at any zoom, and a small body is not stolen by its port",
          "[canvas]")
{
    Bench b;
    const auto pump = b.place("circulator", 0, 0), other = b.place("circulator", 60, 0);
    const auto pipe = b.join(pump, "outlet", other, "inlet");
    for (const double zoom : {0.15, 0.3, 0.6, 1.0, 2.0, 4.0}) {
        CAPTURE(zoom);
        b.canvas.setZoom(zoom);
        b.canvas.centerOn(0, 0);
        const auto hits = b.canvas.hits();
        const auto at = [&](const QPoint& pixel) { return b.canvas.mapToScene(pixel); };
        const double least = b.canvas.toUnits(kLeastTarget);
        const QPoint middle = b.pixel(0, 0);
        for (const QPoint& off : {QPoint(-11, 0), QPoint(11, 0), QPoint(0, 11), QPoint(0, -11)})
            CHECK(hits.symbolAt(at(middle + off), least) == pump);
        CHECK_FALSE(hits.portAt(at(middle), b.canvas.toUnits(kPortReach), least));
        const QPoint onPipe = b.pixel(30, 0);
        for (const int off : {-11, 11})
            CHECK(hits.pipeAt(at(onPipe + QPoint(0, off)), b.canvas.toUnits(kPipeReach))->pipe == pipe);
        if (zoom >= 1)
            for (const QPoint& off : {QPoint(-11, 0), QPoint(0, 11), QPoint(0, -11)})
                CHECK(hits.portAt(at(b.portPixel(pump, "inlet") + off), b.canvas.toUnits(kPortReach), least));
    }
}

TEST_CASE("a drag held at the edge scrolls the view", "[canvas]")
{
    Bench b;
    const auto part = b.place("circulator", 0, 0);
    const QPoint home = b.pixel(0, 0);
    b.drag(home, QPoint(b.view()->width() - 4, home.y()), {}, false);
    REQUIRE(QTest::qWaitFor([&] { return b.pixel(0, 0).x() < home.x() - 40; }, 3000));
    QTest::mouseRelease(b.view(), Qt::LeftButton, {}, QPoint(b.view()->width() - 4, home.y()));
    CHECK(b.drawing().find(part)->at.x > 40);
    const QPoint now = b.pixel(0, 0);
    QTest::qWait(80);
    CHECK(b.pixel(0, 0) == now);
}

TEST_CASE("the Menu key opens the commands of the selected part, each with its keys", "[canvas]")
{
    Bench b;
    const auto part = b.place("circulator", 0, 0);
    b.session.select({part});
    QContextMenuEvent event(QContextMenuEvent::Keyboard, QPoint(5, 5), b.canvas.mapToGlobal(QPoint(5, 5)));
    QApplication::sendEvent(b.view(), &event);
    auto* menu = b.canvas.findChild<QMenu*>();
    REQUIRE(menu != nullptr);
    CHECK(menu->actions().contains(b.canvas.action(EditingCanvas::Command::Delete)));
    CHECK(menu->actions().contains(b.canvas.action(EditingCanvas::Command::TakeOut)));
    menu->close();
}

TEST_CASE("moving each part of a sample five steps leaves every joint as it was", "[canvas]")
{
    Bench b;
    REQUIRE_FALSE(b.session.open(QStringLiteral(TAPWARD_SOURCE_DIR "/samples/storage_coach.tapward")).has_value());
    const auto before = joints(b.drawing());
    std::vector<PartId> ids;
    for (const auto& part : b.drawing().parts)
        if (!document::kindOf(part).isPipe)
            ids.push_back(part.id);
    for (const auto id : ids) {
        b.session.select({id});
        for (int i = 0; i < 5; ++i)
            b.key(i % 2 ? Qt::Key_Down : Qt::Key_Right, Qt::ShiftModifier);
        CHECK(joints(b.drawing()) == before);
    }
}

TEST_CASE("hand-made bends survive moving an end, saving and opening", "[canvas]")
{
    Bench b;
    const auto left = b.place("circulator", -14, 0), right = b.place("circulator", 14, 0);
    const auto pipe = b.join(left, "outlet", right, "inlet");
    b.drag(b.pixel(0, 0), b.pixel(0, 5));
    const auto bends = b.drawing().find(pipe)->bends;
    REQUIRE_FALSE(bends.empty());
    b.session.select({right});
    for (int i = 0; i < 3; ++i)
        b.key(Qt::Key_Right, Qt::ShiftModifier);
    CHECK(b.drawing().find(pipe)->bends == bends);
    QTemporaryDir folder;
    REQUIRE_FALSE(b.session.save(folder.filePath(QStringLiteral("bent.tapward"))).has_value());
    Session again;
    REQUIRE_FALSE(again.open(folder.filePath(QStringLiteral("bent.tapward"))).has_value());
    CHECK(again.drawing().find(pipe)->bends == bends);
    b.session.select({pipe});
    b.canvas.action(EditingCanvas::Command::Reroute)->trigger();
    CHECK(b.drawing().find(pipe)->bends.empty());
}
