// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <algorithm>
#include <QApplication>
#include <QDragEnterEvent>
#include <QDropEvent>
#include <QLineEdit>
#include <QMimeData>
#include <QSignalSpy>
#include <QTest>
#include <QWheelEvent>

#include "real_hand.h"
#include "session/mime_types.h"
#include "support/catch.h"
#include "tools/editing_canvas.h"
#include "tools/kind_picker.h"

namespace tapward::app::test {

using document::PartId;

/// A shown canvas on its own drawing; places in modules. What the hands do is sent as Qt's events to the viewport, or
/// in a real window by the X server.
struct Bench {
    Session session;
    EditingCanvas canvas{session};
    QString said;

    Bench()
    {
        session.setNewStage(document::Stage::Added);
        canvas.resize(900, 700);
        canvas.show();
        REQUIRE(QTest::qWaitForWindowExposed(&canvas));
        if (handsAreReal()) {
            canvas.move(0, 0);
            canvas.activateWindow();
            REQUIRE(QTest::qWaitForWindowActive(&canvas));
            QTest::qWait(100);
        }
        canvas.setZoom(1.0);
        canvas.centerOn(0, 0);
        canvas.setFocus();
        QObject::connect(&canvas, &CanvasView::message, &canvas, [this](const QString& text) {
            if (!text.isEmpty())
                said = text;
        });
    }

    const document::Drawing& drawing() const { return session.drawing(); }
    QWidget* view() { return canvas.viewport(); }
    QPoint pixel(double x, double y) const { return canvas.mapFromScene(QPointF(x * kModule, y * kModule)); }

    PartId place(const char* kind, double x, double y, int turn = 0)
    {
        REQUIRE_FALSE(session.perform(document::placePart(drawing(), kind, {x, y}, document::Stage::Existing, turn)));
        return session.lastAdded().front();
    }
    PartId join(PartId a, const char* portA, PartId b, const char* portB)
    {
        REQUIRE_FALSE(
            session.perform(document::connect(drawing(), {a, portA, {}}, {b, portB, {}}, document::Stage::Existing)));
        return session.lastAdded().front();
    }
    int count(std::string_view kind) const
    {
        return static_cast<int>(std::ranges::count(drawing().parts, kind, &document::Part::kind));
    }
    const document::Part& only(std::string_view kind) const
    {
        REQUIRE(count(kind) == 1);
        return *std::ranges::find(drawing().parts, kind, &document::Part::kind);
    }
    QPoint portPixel(PartId id, const char* port) const
    {
        const auto* part = drawing().find(id);
        return canvas.mapFromScene(toCanvas(document::portPlace(*part, *document::kindOf(*part).port(port))));
    }
    /// Press, move in steps, release, as a hand does.
    void drag(const QPoint& from, const QPoint& to, Qt::KeyboardModifiers keys = Qt::NoModifier, bool release = true)
    {
        if (handsAreReal() && !keys && release) {
            realDrag(view()->mapToGlobal(from), view()->mapToGlobal(to));
            return;
        }
        QTest::mouseMove(view(), from);
        QTest::mousePress(view(), Qt::LeftButton, keys, from);
        for (int i = 1; i <= 5; ++i) {
            QMouseEvent move(QEvent::MouseMove, QPointF(from + (to - from) * i / 5),
                             view()->mapToGlobal(from + (to - from) * i / 5), Qt::NoButton, Qt::LeftButton, keys);
            QApplication::sendEvent(view(), &move);
        }
        if (release)
            QTest::mouseRelease(view(), Qt::LeftButton, keys, to);
    }
    void wheel(const QPoint& at, int delta, Qt::KeyboardModifiers keys)
    {
        QWheelEvent event(at, view()->mapToGlobal(at), {}, {0, delta}, Qt::NoButton, keys, Qt::NoScrollPhase, false);
        QApplication::sendEvent(view(), &event);
    }
    /// What the window system sends while a part is dragged in from the tray. True when it was taken.
    bool dropKind(const char* kind, const QPoint& at, bool release = true)
    {
        if (handsAreReal() && release) {  // picked in the tray, then put down by a click; the drag has its own test
            const int steps = session.undoStack().count();
            canvas.startPlacing(QString::fromLatin1(kind));
            realClick(view()->mapToGlobal(at));
            return session.undoStack().count() > steps;
        }
        QMimeData data;
        data.setData(QLatin1String(kKindMime), kind);
        QDragEnterEvent enter(at, Qt::CopyAction, &data, Qt::LeftButton, Qt::NoModifier);
        QApplication::sendEvent(view(), &enter);
        REQUIRE(enter.isAccepted());
        QDragMoveEvent over(at, Qt::CopyAction, &data, Qt::LeftButton, Qt::NoModifier);
        QApplication::sendEvent(view(), &over);
        if (!release)
            return over.isAccepted();
        QDropEvent drop(at, Qt::CopyAction, &data, Qt::LeftButton, Qt::NoModifier);
        QApplication::sendEvent(view(), &drop);
        return drop.isAccepted();
    }
    void key(Qt::Key key, Qt::KeyboardModifiers keys = Qt::NoModifier, int times = 1)
    {
        if (handsAreReal() && times > 0)
            realKey(key, keys, times);
        else
            for (int i = 0; i < times; ++i)
                QTest::keyClick(&canvas, key, keys);
    }
    /// Letters and Enter in the part list that is open.
    void chooseKind(const char* letters)
    {
        auto* picker = canvas.findChild<KindPicker*>();
        REQUIRE(picker != nullptr);
        auto* search = picker->findChild<QLineEdit*>();
        if (handsAreReal()) {
            realWord(QString::fromLatin1(letters));
            realKey(Qt::Key_Return, Qt::NoModifier);
        } else {
            QTest::keyClicks(search, QString::fromLatin1(letters));
            QTest::keyClick(search, Qt::Key_Return);
        }
        QCoreApplication::sendPostedEvents(nullptr, QEvent::DeferredDelete);
        QCoreApplication::processEvents();
        canvas.activateWindow();
        canvas.setFocus();
        QCoreApplication::processEvents();
    }
};

/// Which port of which part every pipe end sits on: what must not change when things are only moved.
inline std::vector<std::array<std::pair<PartId, std::string>, 2>> joints(const document::Drawing& drawing)
{
    std::vector<std::array<std::pair<PartId, std::string>, 2>> result;
    for (const auto& part : drawing.parts)
        if (document::kindOf(part).isPipe)
            result.push_back({{{part.ends[0].part, part.ends[0].port}, {part.ends[1].part, part.ends[1].port}}});
    return result;
}

}  // namespace tapward::app::test
