// SPDX-License-Identifier: GPL-3.0-or-later
// The main job in a real window under a real window manager, with the mouse of the X server: a part is
// dragged from the tray onto a pipe, the prediction changes, undo takes it back, the file survives.
#include <QTemporaryDir>
#include <QTest>
#include <QTreeWidget>
#include <QTreeWidgetItemIterator>

#include "canvas/paint_drawing.h"
#include "document/file.h"
#include "panels_support.h"
#include "real_hand.h"
#include "shell/main_window.h"
#include "support/catch.h"
#include "tools/editing_canvas.h"
#include "tray/tray.h"

using namespace tapward;
using namespace tapward::app;
using namespace tapward::app::test;

namespace {

double totalLength(const document::Drawing& drawing)
{
    double sum = 0;
    for (const document::Part& part : drawing.parts)
        if (document::kindOf(part).isPipe)
            sum += document::values(part).number("length_m");
    return sum;
}

}  // namespace

TEST_CASE("a part dragged from the tray onto a pipe splits it, changes the prediction, undoes and saves", "[window]")
{
    if (!handsAreReal()) {
        WARN("No X server: this test needs a real window (tests/run gives it one).");
        return;
    }
    QTemporaryDir folder;
    const QString path = folder.filePath(QStringLiteral("coach.tapward"));
    REQUIRE(QFile::copy(QStringLiteral(TAPWARD_SOURCE_DIR "/samples/long_hall_coach.tapward"), path));
    QFile(path).setPermissions(QFile::ReadOwner | QFile::WriteOwner);

    MainWindow window;
    window.resize(1380, 860);
    window.move(0, 0);
    window.show();
    REQUIRE(QTest::qWaitForWindowActive(&window));
    REQUIRE(window.openFile(path));
    REQUIRE(waitForAnswer(window.session()));
    QTest::qWait(300);

    const std::string before = document::write(window.session().drawing());
    const auto parts = window.session().drawing().parts.size();
    const double length_m = totalLength(window.session().drawing());
    const double flow = *window.session().prediction()->loop.flow_m3s;

    // Where the hand valve stands in the tray, and the middle of the hot line's last stretch.
    auto* tray = window.findChild<Tray*>();
    REQUIRE(tray);
    QTreeWidgetItem* valve = nullptr;
    for (QTreeWidgetItemIterator it(tray->list()); *it; ++it)
        if ((*it)->text(0) == QStringLiteral("Hand valve"))
            valve = *it;
    REQUIRE(valve);
    tray->list()->scrollToItem(valve);
    const QPoint from = tray->list()->viewport()->mapToGlobal(tray->list()->visualItemRect(valve).center());
    const document::Point t16 = window.session().drawing().findTag("T16")->at;
    const document::Point t31 = window.session().drawing().findTag("T31")->at;
    auto& view = window.canvas();
    const QPointF middle = QPointF((t16.x + t31.x) / 2, t16.y) * kModule;
    const QPoint to = view.viewport()->mapToGlobal(view.mapFromScene(middle));

    realDrag(from, to, 0.1);
    REQUIRE(QTest::qWaitFor([&] { return window.session().drawing().parts.size() == parts + 2; }, 10000));
    CHECK(window.session().isModified());
    CHECK(totalLength(window.session().drawing()) == Approx(length_m).epsilon(1e-12));
    REQUIRE(waitForAnswer(window.session()));
    CHECK(*window.session().prediction()->loop.flow_m3s < flow);

    // Save what was drawn, take it back, open what was saved.
    REQUIRE(window.save());
    const std::string after = document::write(window.session().drawing());
    CHECK(after != before);
    view.setFocus();
    QTest::keyClick(&window, Qt::Key_Z, Qt::ControlModifier);
    CHECK(document::write(window.session().drawing()) == before);
    REQUIRE(waitForAnswer(window.session()));
    CHECK(*window.session().prediction()->loop.flow_m3s == flow);
    QTest::keyClick(&window, Qt::Key_Z, Qt::ControlModifier | Qt::ShiftModifier);
    CHECK(document::write(window.session().drawing()) == after);

    Session again;
    REQUIRE_FALSE(again.open(path).has_value());
    CHECK(document::write(again.drawing()) == after);
}
