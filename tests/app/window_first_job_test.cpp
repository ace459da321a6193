// SPDX-License-Identifier: GPL-3.0-or-later
// A new user's first job with the X server's own mouse and keyboard: the guide on the start page, a small trailer from
// nothing, a loop, another variant, the stop, the page. It counts the gestures and the seconds that are the machine's.
#include <cstdio>
#include <QApplication>
#include <QDialog>
#include <QElapsedTimer>
#include <QScrollArea>
#include <QTimer>
#include <QTreeWidget>
#include <QTreeWidgetItemIterator>

#include "canvas/pipe_use.h"
#include "document/proposal.h"
#include "panels/details_panel.h"
#include "panels/quiet_combo.h"
#include "panels/value_edit.h"
#include "panels_support.h"
#include "real_hand.h"
#include "shell/first_job.h"
#include "shell/link_button.h"
#include "shell/main_window.h"
#include "shell/start_page.h"
#include "tools/editing_canvas.h"
#include "tray/assembly_list.h"
#include "tray/tray.h"

using namespace tapward;
using namespace tapward::app;
using namespace tapward::app::test;
using document::PartId;

namespace {

struct NewUser {
    MainWindow window;
    int gestures = 0;
    QElapsedTimer clock;
    double waited_s = 0;  ///< for answers: the machine's

    QPoint onCanvas(double x, double y)
    {
        auto& canvas = window.canvas();
        return canvas.viewport()->mapToGlobal(canvas.mapFromScene(QPointF(x * kModule, y * kModule)));
    }
    QPoint port(PartId id, const char* name)
    {
        const auto* part = window.session().drawing().find(id);
        const auto place = document::portPlace(*part, *document::kindOf(*part).port(name));
        return onCanvas(place.x, place.y);
    }
    QPoint onPipe(PartId pipe, double share)
    {
        auto& canvas = window.canvas();
        const auto* shape = canvas.layoutOfDrawing().pipe(pipe);
        return canvas.viewport()->mapToGlobal(canvas.mapFromScene(shape->path.pointAtPercent(share)));
    }
    void click(const QPoint& at)
    {
        realClick(at);
        ++gestures;
    }
    void drag(const QPoint& from, const QPoint& to)
    {
        realDrag(from, to, 0.05);
        ++gestures;
    }
    void press(Qt::Key key, Qt::KeyboardModifiers keys)
    {
        realKey(key, keys);
        ++gestures;
    }
    void clickRow(QTreeWidget& list, const QString& text)
    {
        QTreeWidgetItem* found = nullptr;
        for (QTreeWidgetItemIterator it(&list); *it; ++it)
            if (found == nullptr && (*it)->text(0) == text)
                found = *it;
        CAPTURE(text);
        REQUIRE(found);
        list.scrollToItem(found);
        QTest::qWait(60);
        click(list.viewport()->mapToGlobal(list.visualItemRect(found).center()));
    }
    /// One click on the tray, one on the drawing.
    PartId put(const char* title, double x, double y)
    {
        const std::size_t before = window.session().drawing().parts.size();
        clickRow(*window.findChild<Tray*>()->list(), QString::fromLatin1(title));
        click(onCanvas(x, y));
        CAPTURE(title);
        REQUIRE(QTest::qWaitFor([&] { return window.session().drawing().parts.size() == before + 1; }, 3000));
        const PartId id = window.session().lastAdded().front();
        CHECK(window.session().drawing().find(id)->at == document::Point{x, y});
        CHECK(window.findChild<Tray*>()->list()->selectedItems().isEmpty());  // not in hand any more
        return id;
    }
    void answer()
    {
        QElapsedTimer since;
        since.start();
        REQUIRE(waitForAnswer(window.session()));
        waited_s += 1e-3 * static_cast<double>(since.elapsed());
    }
    int done() { return window.firstJob().doneCount(); }
    /// A value of the selected part, typed over what is there; its basis by the first letter.
    void type(const char* label, const char* text, const char* basis)
    {
        auto* edit = named<ValueEdit>(window.details(), QString::fromLatin1(label));
        REQUIRE(edit);
        const auto place = [&] { return edit->mapToGlobal(edit->rect().center()); };
        CAPTURE(label, place().x(), place().y(), edit->isVisible());
        for (QWidget* up = edit->parentWidget(); up != nullptr; up = up->parentWidget())
            if (auto* scroll = qobject_cast<QScrollArea*>(up);
                scroll
                && !scroll->viewport()->rect().contains(edit->mapTo(scroll->viewport(), edit->rect().center()))) {
                scroll->ensureWidgetVisible(edit, 0, 120);  // by the wheel
                ++gestures;
                QTest::qWait(100);
            }
        click(edit->mapToGlobal(edit->rect().center()));
        realKey(Qt::Key_A, Qt::ControlModifier);
        realWord(QString::fromLatin1(text));
        realKey(Qt::Key_Return, {});
        ++gestures;
        auto* combo =
            named<QuietCombo>(window.details(), QStringLiteral("Basis of %1").arg(QString::fromLatin1(label)));
        REQUIRE(combo);
        click(combo->mapToGlobal(combo->rect().center()));
        realWord(QString::fromLatin1(basis));
        realKey(Qt::Key_Return, {});
        ++gestures;
    }
};

}  // namespace

TEST_CASE("a first job by the guide, from the start page to the customer's page", "[window][firstjob]")
{
    if (!handsAreReal()) {
        WARN("No X server: this test needs a real window (tests/run gives it one).");
        return;
    }
    NewUser user;
    MainWindow& window = user.window;
    window.resize(1366, 768);
    window.move(0, 0);
    window.show();
    window.studyByItself();
    REQUIRE(QTest::qWaitForWindowActive(&window));
    user.clock.start();

    auto* link = named<LinkButton>(*window.findChild<StartPage*>(), QStringLiteral("First Job, Step by Step"));
    REQUIRE(link);
    user.click(link->mapToGlobal(link->rect().center()));
    REQUIRE(QTest::qWaitFor([&] { return window.firstJob().isVisible(); }, 5000));
    QTest::qWait(300);
    CHECK(user.done() == 0);
    CHECK(window.firstJob().stepTitle() == QStringLiteral("Heater"));

    auto& canvas = window.canvas();
    const QPointF middle = canvas.mapToScene(canvas.viewport()->rect().center());
    const double x = std::round(middle.x() / kModule / 2) * 2, y = std::round(middle.y() / kModule / 2) * 2;
    const PartId heater = user.put("Tankless heater", x - 6, y);
    CHECK(window.firstJob().stepTitle() == QStringLiteral("Water supply"));
    const PartId inlet = user.put("City water inlet", x - 24, y + 10);
    CHECK(window.firstJob().stepTitle() == QStringLiteral("Far tap"));
    const PartId faucet = user.put("Faucet", x + 24, y);
    CHECK(window.firstJob().stepTitle() == QStringLiteral("Pipes"));

    user.drag(user.port(inlet, "outlet"), user.port(heater, "cold"));
    const auto* feed = window.session().drawing().pipeAt(heater, "cold");
    REQUIRE(feed);
    const PartId feedPipe = feed->id;
    user.drag(user.port(heater, "hot"), user.port(faucet, "hot"));
    const auto* hot = window.session().drawing().pipeAt(faucet, "hot");
    REQUIRE(hot);
    const PartId hotPipe = hot->id;
    user.drag(user.port(faucet, "cold"), user.onPipe(feedPipe, 0.3));
    REQUIRE(window.session().drawing().pipeAt(faucet, "cold"));
    CHECK(window.firstJob().stepTitle() == QStringLiteral("Lengths"));
    CHECK(user.done() == 4);

    user.click(user.onPipe(hotPipe, 0.35));
    CHECK(window.session().selection() == std::vector{hotPipe});
    user.type("Length", "28 ft", "M");
    CHECK(window.session().drawing().find(hotPipe)->entries.at("length_m").basis == parts::Basis::Measured);
    CHECK(window.firstJob().stepTitle() == QStringLiteral("Loop"));

    user.clickRow(*window.findChild<Tray*>()->assemblies(), QStringLiteral("One circulator"));
    const PartId cold = window.session().drawing().pipeAt(faucet, "cold")->id;
    user.drag(user.onPipe(hotPipe, 0.8), user.onPipe(cold, 0.3));
    REQUIRE(QTest::qWaitFor([&] { return document::proposed(window.session().drawing()).has_value(); }, 10000));
    CHECK(window.firstJob().stepTitle() == QStringLiteral("Answers"));

    user.press(Qt::Key_3, Qt::AltModifier);
    user.answer();
    CHECK(window.area() == QStringLiteral("loop"));
    REQUIRE(window.session().prediction()->loop.flow_m3s);
    const double one = *window.session().prediction()->loop.flow_m3s;
    CHECK(window.firstJob().stepTitle() == QStringLiteral("Stop"));
    QAction* swap = nullptr;
    for (auto* action : window.findChildren<QAction*>())
        if (action->data().toString() == QStringLiteral("cold_line.two_parallel"))
            swap = action;
    REQUIRE(swap);
    swap->trigger();
    user.gestures += 3;  // the menu, the menu in it, the row
    user.answer();
    CHECK(*window.session().prediction()->loop.flow_m3s > one);

    user.press(Qt::Key_4, Qt::AltModifier);
    QElapsedTimer since;
    since.start();
    REQUIRE(QTest::qWaitFor([&] { return window.session().studying().isEmpty() && window.session().assessment(); },
                            120'000));
    user.waited_s += 1e-3 * static_cast<double>(since.elapsed());
    CHECK(window.firstJob().stepTitle() == QStringLiteral("Stop"));
    user.press(Qt::Key_3, Qt::AltModifier);
    QTest::qWait(200);
    const document::Part* box = nullptr;
    for (const auto& part : window.session().drawing().parts)
        if (part.kind == "controller")
            box = &part;
    REQUIRE(box);
    user.click(user.onCanvas(box->at.x, box->at.y));
    CHECK(window.session().selection() == std::vector{box->id});
    user.press(Qt::Key_Return, Qt::AltModifier);
    QTest::qWait(200);
    user.type("Stop at", "0.4 gal", "M");
    CHECK(window.firstJob().stepTitle() == QStringLiteral("Customer's page"));

    // The preview is a window of its own: looked at, and closed.
    QTimer closing;
    bool seen = false;
    QObject::connect(&closing, &QTimer::timeout, [&] {
        if (auto* dialog = qobject_cast<QDialog*>(QApplication::activeModalWidget())) {
            seen = true;
            dialog->close();
        }
    });
    closing.start(500);
    user.press(Qt::Key_P, Qt::ControlModifier | Qt::ShiftModifier);
    CHECK(QTest::qWaitFor([&] { return seen && window.firstJob().stepTitle().isEmpty(); }, 60'000));
    CHECK(user.done() == window.firstJob().stepCount());
    std::printf("first job: %d gestures, %.1f s of which %.1f s waiting for the machine\n", user.gestures,
                1e-3 * static_cast<double>(user.clock.elapsed()), user.waited_s);
    CHECK(user.gestures <= 40);
}
