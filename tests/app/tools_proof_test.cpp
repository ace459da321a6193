// SPDX-License-Identifier: GPL-3.0-or-later
// A small coach drawn by mouse and by keyboard alone, and a monkey at the canvas.
#include <cstring>
#include <QLineEdit>
#include <QMenu>

#include "document/file.h"
#include "support/random_drawing.h"
#include "tools/kind_picker.h"
#include "tools_bench.h"

using namespace tapward;
using namespace tapward::app;
using namespace tapward::app::test;

namespace {

/// Counts what a hand does: a click, a drag and a key are one each, a word typed is one per letter.
struct Hand {
    Bench& b;
    int gestures = 0;

    void key(Qt::Key key, Qt::KeyboardModifiers keys = Qt::NoModifier)
    {
        ++gestures;
        b.key(key, keys);
    }
    void insert(const char* letters)
    {
        key(Qt::Key_Insert);
        choose(letters);
    }
    /// In the list that is open: letters, then Enter.
    void choose(const char* letters)
    {
        gestures += static_cast<int>(std::strlen(letters)) + 1;
        b.chooseKind(letters);
    }
    void drop(const char* kind, const document::Point& at)
    {
        ++gestures;
        REQUIRE(b.dropKind(kind, b.pixel(at.x, at.y)));
    }
    void draw(PartId from, const char* portA, PartId to, const char* portB)
    {
        ++gestures;
        b.drag(b.portPixel(from, portA), b.portPixel(to, portB));
    }
};

PartId idOf(const Bench& b, const char* kind) { return b.only(kind).id; }

}  // namespace

TEST_CASE("a small coach drawn by keyboard only is the same document as the one drawn by mouse", "[canvas]")
{
    Bench keys;
    Hand typed{keys};
    typed.insert("city");
    typed.insert("tankl");  // joined to the inlet
    typed.insert("faucet");  // joined to the heater
    // The pipe from the inlet to the heater gets a tee, and from its branch cold water goes to the faucet.
    const auto supply = keys.drawing().pipeAt(idOf(keys, "city_inlet"), "outlet");
    REQUIRE(supply != nullptr);
    for (int i = 0; i < 20 && keys.session.selection() != std::vector{supply->id}; ++i)
        typed.key(Qt::Key_Tab);
    REQUIRE(keys.session.selection() == std::vector{supply->id});
    typed.insert("tee");
    typed.key(Qt::Key_C);
    typed.key(Qt::Key_Return);
    for (int i = 0; i < 10 && !keys.said.contains(QStringLiteral("Cold")); ++i)
        typed.key(Qt::Key_Tab);
    typed.key(Qt::Key_Return);
    REQUIRE(keys.count("pipe_run") == 4);
    const auto tap = idOf(keys, "faucet");
    REQUIRE(keys.drawing().pipeAt(tap, "cold") != nullptr);
    REQUIRE(keys.drawing().pipeAt(tap, "hot") != nullptr);

    Bench mouse;
    Hand moved{mouse};
    const auto placeOf = [&](const char* kind) { return keys.only(kind).at; };
    moved.drop("city_inlet", placeOf("city_inlet"));
    const auto joint = [&](const char* kind) {  // the pipe that came with the part
        const auto id = keys.only(kind).id;
        for (const auto& pipe : keys.drawing().parts)
            if (document::kindOf(pipe).isPipe && pipe.id == id + 1)
                return pipe.ends;
        FAIL("no pipe came with it");
        return std::array<document::PipeEnd, 2>{};
    };
    const auto dropJoined = [&](const char* kind) {
        moved.drop(kind, placeOf(kind));
        while (mouse.only(kind).turn != keys.only(kind).turn)
            moved.key(Qt::Key_R);
        const auto ends = joint(kind);
        moved.draw(ends[0].part, ends[0].port.c_str(), ends[1].part, ends[1].port.c_str());
    };
    // The tee came later and cut the supply: its far end is where the keyboard's pipe first went.
    moved.drop("tankless_heater", placeOf("tankless_heater"));
    const auto heater = idOf(mouse, "tankless_heater");
    while (mouse.only("tankless_heater").turn != keys.only("tankless_heater").turn)
        moved.key(Qt::Key_R);
    moved.draw(idOf(mouse, "city_inlet"), "outlet", heater, "cold");
    dropJoined("faucet");
    moved.drop("tee", placeOf("tee"));
    moved.draw(idOf(mouse, "tee"), "branch", idOf(mouse, "faucet"), "cold");
    CHECK(document::write(mouse.drawing()) == document::write(keys.drawing()));
    // What it takes; more would be a step back.
    CHECK(typed.gestures <= 50);
    CHECK(moved.gestures <= 10);

    // Every step can be taken back.
    for (Bench* b : {&keys, &mouse}) {
        while (b->session.undoStack().canUndo())
            b->session.undoStack().undo();
        CHECK(b->drawing().parts.empty());
    }
}

TEST_CASE("5,000 random events leave a whole drawing, and undo leads back to the start", "[canvas]")
{
    Bench b;
    REQUIRE_FALSE(b.session.open(QStringLiteral(TAPWARD_SOURCE_DIR "/samples/storage_coach.tapward")).has_value());
    b.canvas.fitDrawing();
    const std::string start = document::write(b.drawing());
    tapward::test::Random random(20260);
    const std::vector<Qt::Key> keys{
        Qt::Key_Left,  Qt::Key_Right, Qt::Key_Up,        Qt::Key_Down, Qt::Key_Tab,    Qt::Key_Return, Qt::Key_Escape,
        Qt::Key_Space, Qt::Key_R,     Qt::Key_F,         Qt::Key_C,    Qt::Key_Delete, Qt::Key_D,      Qt::Key_X,
        Qt::Key_V,     Qt::Key_A,     Qt::Key_Backspace, Qt::Key_O,    Qt::Key_T,      Qt::Key_Insert, Qt::Key_Plus};
    const std::vector<Qt::KeyboardModifiers> modifiers{Qt::NoModifier,
                                                       Qt::NoModifier,
                                                       Qt::NoModifier,
                                                       Qt::ShiftModifier,
                                                       Qt::AltModifier,
                                                       Qt::ControlModifier,
                                                       Qt::ControlModifier | Qt::ShiftModifier};
    QPoint at(400, 300);
    bool down = false;
    const auto mouse = [&](QEvent::Type type, Qt::MouseButton button) {
        const auto held = down ? Qt::LeftButton : Qt::NoButton;
        QMouseEvent event(type, QPointF(at), QPointF(b.view()->mapToGlobal(at)), button,
                          type == QEvent::MouseButtonPress ? button : held, random.pick(modifiers));
        QApplication::sendEvent(b.view(), &event);
    };
    const auto wander = [&] {
        // Mostly near things, sometimes anywhere.
        if (!b.drawing().parts.empty() && random.chance(0.6)) {
            const QRectF box = b.canvas.boxOf(random.pick(b.drawing().parts).id);
            const QPoint there = b.canvas.mapFromScene(box.center());
            if (b.view()->rect().contains(there)) {
                at = there + QPoint(random.below(60) - 30, random.below(60) - 30);
                return;
            }
        }
        at = QPoint(random.below(b.view()->width()), random.below(b.view()->height()));
    };
    for (int i = 0; i < 5000; ++i) {
        CAPTURE(i);
        switch (random.below(12)) {
        case 0:
        case 1:
            if (!down) {
                wander();
                down = true;
                mouse(QEvent::MouseButtonPress, Qt::LeftButton);
            }
            break;
        case 2:
        case 3:
        case 4:
            wander();
            mouse(QEvent::MouseMove, Qt::NoButton);
            break;
        case 5:
        case 6:
            if (std::exchange(down, false))
                mouse(QEvent::MouseButtonRelease, Qt::LeftButton);
            break;
        case 7:
            mouse(QEvent::MouseButtonDblClick, Qt::LeftButton);
            down = true;
            break;
        case 8:
            b.wheel(at, random.chance(0.5) ? 120 : -120, random.pick(modifiers));
            break;
        case 9:
            if (random.chance(0.2))
                b.canvas.startPlacing(QString::fromUtf8(random.pick(parts::catalogue())->id.data()));
            else if (random.chance(0.2))
                (void)b.dropKind(random.pick(parts::catalogue())->id.data(), at, random.chance(0.7));
            else if (random.chance(0.2))
                random.chance(0.6) ? b.session.undoStack().undo() : b.session.undoStack().redo();
            else if (random.chance(0.1))
                b.session.setView(static_cast<document::View>(random.below(3)));
            else if (random.chance(0.1))
                b.canvas.fitDrawing();
            break;
        default:
            b.key(random.pick(keys), random.pick(modifiers));
        }
        if (auto* popup = QApplication::activePopupWidget()) {
            if (auto* search = popup->findChild<QLineEdit*>(); search != nullptr && random.chance(0.7))
                QTest::keyClick(search, Qt::Key_Return);
            else
                popup->close();
        }
        while (b.drawing().parts.size() > 110 && b.session.undoStack().canUndo())
            b.session.undoStack().undo();  // not ever larger
        if (i % 50 == 0) {
            QCoreApplication::processEvents();
            QCoreApplication::sendPostedEvents(nullptr, QEvent::DeferredDelete);
        }
    }
    b.canvas.cancelTool();
    const std::string end = document::write(b.drawing());
    const auto again = document::read(end);
    REQUIRE(again.has_value());
    CHECK(document::write(*again) == end);
    CHECK(b.session.undoStack().count() > 50);
    while (b.session.undoStack().canUndo())
        b.session.undoStack().undo();
    CHECK(document::write(b.drawing()) == start);
}
