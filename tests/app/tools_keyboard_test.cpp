// SPDX-License-Identifier: GPL-3.0-or-later
#include <QAction>
#include <QClipboard>
#include <QLineEdit>
#include <set>

#include "tools/kind_picker.h"
#include "tools_bench.h"

using namespace tapward;
using namespace tapward::app;
using namespace tapward::app::test;

TEST_CASE("a run of Shift and arrow keys moves the part and is one undo step", "[canvas]")
{
    Bench b;
    const auto part = b.place("circulator", 0, 0);
    b.session.select({part});
    const auto before = b.drawing();
    const int steps = b.session.undoStack().count();
    for (int i = 0; i < 4; ++i)
        b.key(Qt::Key_Right, Qt::ShiftModifier);
    b.key(Qt::Key_Down, Qt::ShiftModifier);
    CHECK(b.drawing().find(part)->at == document::Point{4, 1});
    CHECK(b.session.undoStack().count() == steps + 1);
    b.session.undoStack().undo();
    CHECK(b.drawing() == before);
    b.session.undoStack().redo();
    CHECK(b.drawing().find(part)->at == document::Point{4, 1});
}

TEST_CASE("a second run of Shift and arrow keys on another part is its own undo step", "[canvas]")
{
    Bench b;
    const auto a = b.place("circulator", 0, 0), c = b.place("circulator", 10, 0);
    const int steps = b.session.undoStack().count();
    b.session.select({a});
    b.key(Qt::Key_Up, Qt::ShiftModifier);
    b.session.select({c});
    b.key(Qt::Key_Up, Qt::ShiftModifier);
    CHECK(b.session.undoStack().count() == steps + 2);
}

TEST_CASE("pasted parts have new tags, hang together and are not on top of the originals", "[canvas]")
{
    Bench b;
    const auto a = b.place("circulator", -8, 0), c = b.place("check_valve", 8, 0);
    const auto pipe = b.join(a, "outlet", c, "inlet");
    b.session.select({a, c, pipe});
    b.key(Qt::Key_C, Qt::ControlModifier);
    REQUIRE(QApplication::clipboard()->mimeData()->hasFormat(QLatin1String(kPartsMime)));
    CHECK(QApplication::clipboard()->text().contains(QString::fromStdString(b.drawing().find(a)->tag)));
    for (int i = 0; i < 3; ++i)
        b.key(Qt::Key_V, Qt::ControlModifier);
    CHECK(b.count("circulator") == 4);
    CHECK(b.count("pipe_run") == 4);
    std::set<std::string> tags;
    std::set<std::pair<double, double>> places;
    for (const auto& part : b.drawing().parts) {
        CHECK(tags.insert(part.tag).second);
        if (!document::kindOf(part).isPipe)
            CHECK(places.emplace(part.at.x, part.at.y).second);
        else
            CHECK((part.ends[0].part != document::kNoPart && part.ends[1].part != document::kNoPart));
    }
    CHECK(b.session.selection().size() == 3);
    b.session.undoStack().undo();
    CHECK(b.count("circulator") == 3);
}

TEST_CASE("cut and paste brings the part back; duplicate makes a second one", "[canvas]")
{
    Bench b;
    const auto a = b.place("circulator", 0, 0);
    b.session.select({a});
    b.key(Qt::Key_X, Qt::ControlModifier);
    CHECK(b.count("circulator") == 0);
    b.key(Qt::Key_V, Qt::ControlModifier | Qt::ShiftModifier);
    CHECK(b.only("circulator").at == document::Point{0, 0});
    b.key(Qt::Key_D, Qt::ControlModifier);
    CHECK(b.count("circulator") == 2);
}

TEST_CASE("a clipboard full of nonsense pastes nothing and says so", "[canvas]")
{
    Bench b;
    auto* data = new QMimeData;
    data->setData(QLatin1String(kPartsMime), "{\"parts\": [{\"kind\": 7");
    QApplication::clipboard()->setMimeData(data);
    b.key(Qt::Key_V, Qt::ControlModifier);
    CHECK(b.drawing().parts.empty());
    CHECK_FALSE(b.said.isEmpty());
}

TEST_CASE("deleting an in-line part joins its pipes; Shift+Delete takes them along", "[canvas]")
{
    Bench b;
    const auto left = b.place("circulator", -12, 0), middle = b.place("check_valve", 0, 0),
               right = b.place("circulator", 12, 0);
    b.join(left, "outlet", middle, "inlet");
    b.join(middle, "outlet", right, "inlet");
    b.session.select({middle});
    b.key(Qt::Key_Delete);
    CHECK(b.only("pipe_run").ends[1].part == right);
    b.session.undoStack().undo();
    CHECK(b.count("pipe_run") == 2);
    CHECK(b.session.selection() == std::vector{middle});  // the selection comes back with it
    b.key(Qt::Key_Delete, Qt::ShiftModifier);
    CHECK(b.count("pipe_run") == 0);
}

TEST_CASE("R turns, F mirrors, Control+A selects all, Escape clears", "[canvas]")
{
    Bench b;
    const auto a = b.place("circulator", 0, 0);
    b.place("circulator", 10, 0);
    b.session.select({a});
    b.key(Qt::Key_R);
    CHECK(b.drawing().find(a)->turn == 1);
    b.key(Qt::Key_R, Qt::ShiftModifier);
    CHECK(b.drawing().find(a)->turn == 0);
    b.key(Qt::Key_F);
    CHECK(b.drawing().find(a)->flipped);
    b.key(Qt::Key_A, Qt::ControlModifier);
    CHECK(b.session.selection().size() == 2);
    b.key(Qt::Key_Escape);
    CHECK(b.session.selection().empty());
}

TEST_CASE("a small loop can be drawn without a mouse", "[canvas]")
{
    Bench b;
    b.key(Qt::Key_Insert);
    auto* picker = b.canvas.findChild<KindPicker*>();
    REQUIRE(picker != nullptr);
    QTest::keyClicks(picker->findChild<QLineEdit*>(), "circul");
    QTest::keyClick(picker->findChild<QLineEdit*>(), Qt::Key_Return);
    const auto pump = b.only("circulator").id;
    CHECK(b.session.selection() == std::vector{pump});

    // After the focused part, already joined to it.
    b.canvas.insertKind(QStringLiteral("check_valve"));
    CHECK(b.count("pipe_run") == 1);
    const auto valve = b.only("check_valve").id;
    CHECK(b.session.selection() == std::vector{valve});
    const auto& joined = b.only("pipe_run");
    CHECK((joined.ends[0].part == pump || joined.ends[1].part == pump));

    // C: from the valve's free port to the pump's free port.
    b.canvas.setFocus();
    b.key(Qt::Key_C);
    b.key(Qt::Key_Return);
    b.key(Qt::Key_Tab);
    b.key(Qt::Key_Return);
    CHECK(b.count("pipe_run") == 2);
    for (const auto& part : b.drawing().parts)
        for (const auto& port : document::kindOf(part).ports)
            CHECK(b.drawing().pipeAt(part.id, port.id) != nullptr);
}

TEST_CASE("Tab walks through every part once and then leaves the canvas", "[canvas]")
{
    QWidget window;
    Session session;
    EditingCanvas canvas(session, &window);
    QLineEdit next(&window);
    canvas.setGeometry(0, 0, 400, 300);
    next.setGeometry(0, 310, 100, 25);
    window.show();
    REQUIRE(QTest::qWaitForWindowExposed(&window));
    canvas.setFocus();
    for (const double x : {0.0, 8.0, 16.0})
        REQUIRE_FALSE(
            session.perform(document::placePart(session.drawing(), "circulator", {x, 0}, document::Stage::Added)));
    std::set<PartId> seen;
    for (int i = 0; i < 3; ++i) {
        QTest::keyClick(&canvas, Qt::Key_Tab);
        REQUIRE(session.selection().size() == 1);
        CHECK(seen.insert(session.selection().front()).second);
        CHECK_FALSE(canvas.accessibleDescription().isEmpty());
    }
    QTest::keyClick(&canvas, Qt::Key_Tab);
    CHECK(session.selection().empty());
    CHECK_FALSE(canvas.hasFocus());
}

TEST_CASE("every command of the canvas has a text and no shortcut is used twice", "[canvas]")
{
    Bench b;
    std::set<QString> keys;
    for (const auto* action : b.canvas.actions()) {
        CHECK_FALSE(action->text().isEmpty());
        for (const auto& key : action->shortcuts()) {
            CAPTURE(key.toString().toStdString());
            CHECK(keys.insert(key.toString()).second);
        }
    }
}
