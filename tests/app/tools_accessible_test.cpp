// SPDX-License-Identifier: GPL-3.0-or-later
#include <QAccessible>
#include <set>

#include "tools_bench.h"

using namespace tapward;
using namespace tapward::app;
using namespace tapward::app::test;

TEST_CASE("every part is a child of the canvas with a name of its own, a role, a state and a place", "[canvas]")
{
    Bench b;
    REQUIRE_FALSE(b.session.open(QStringLiteral(TAPWARD_SOURCE_DIR "/samples/long_hall_coach.tapward")).has_value());
    b.canvas.fitDrawing();
    auto* canvas = QAccessible::queryAccessibleInterface(&b.canvas);
    REQUIRE(canvas != nullptr);
    CHECK(canvas->role() == QAccessible::Canvas);
    CHECK_FALSE(canvas->text(QAccessible::Name).isEmpty());
    REQUIRE(canvas->childCount() == static_cast<int>(b.drawing().parts.size()));
    std::set<QString> names;
    const QRect window(b.view()->mapToGlobal(QPoint(0, 0)), b.view()->size());
    for (int i = 0; i < canvas->childCount(); ++i) {
        auto* child = canvas->child(i);
        REQUIRE(child != nullptr);
        REQUIRE(child->isValid());
        const QString name = child->text(QAccessible::Name);
        CAPTURE(name.toStdString());
        CHECK_FALSE(name.isEmpty());
        CHECK(names.insert(name).second);
        CHECK(child->role() == QAccessible::Graphic);
        CHECK(child->parent() == canvas);
        CHECK(canvas->indexOfChild(child) == i);
        CHECK(child->state().focusable);
        CHECK_FALSE(child->state().selected);
        CHECK(window.intersects(child->rect()));
    }
}

TEST_CASE("a part's name tells its neighbours and whether water runs", "[canvas]")
{
    Bench b;
    const auto left = b.place("circulator", -12, 0), valve = b.place("check_valve", 0, 0),
               right = b.place("circulator", 12, 0);
    CHECK(b.canvas.spokenName(valve).contains(QStringLiteral("not connected")));
    b.join(left, "outlet", valve, "inlet");
    b.join(valve, "outlet", right, "inlet");
    const auto tag = [&](PartId id) { return QString::fromStdString(b.drawing().find(id)->tag); };
    const QString name = b.canvas.spokenName(valve);
    CHECK(name.contains(tag(valve)));
    CHECK(name.contains(QStringLiteral("between %1 and %2").arg(tag(left), tag(right))));
    CHECK_FALSE(name.contains(QStringLiteral("running")));  // nothing is known

    // With a prediction: the sample's pump while it runs.
    REQUIRE_FALSE(b.session.open(QStringLiteral(TAPWARD_SOURCE_DIR "/samples/long_hall_coach.tapward")).has_value());
    b.session.setCaseName(QStringLiteral("One preheat run, cold"));
    REQUIRE(QTest::qWaitFor([&] { return !b.session.isWorking(); }, 60000));
    b.session.setTime(30);
    const auto pump = std::ranges::find(b.drawing().parts, "circulator", &document::Part::kind)->id;
    CHECK(b.canvas.spokenName(pump).contains(QStringLiteral("running, ")));
    CHECK(b.canvas.spokenName(pump).contains(QStringLiteral("gpm")));
    // An edit makes it stale: then nothing is said of the flow.
    REQUIRE_FALSE(b.session.perform(document::moveParts(b.drawing(), {pump}, 0, 1)));
    CHECK_FALSE(b.canvas.spokenName(pump).contains(QStringLiteral("running")));
}

TEST_CASE("the part the keyboard is on is the focused child, and a part that is gone leaves none behind", "[canvas]")
{
    Bench b;
    const auto first = b.place("circulator", 0, 0), second = b.place("circulator", 12, 0);
    b.session.select({first});
    b.key(Qt::Key_Right);
    REQUIRE(b.session.selection() == std::vector{second});
    auto* canvas = QAccessible::queryAccessibleInterface(&b.canvas);
    const auto index = std::ranges::find(b.canvas.readingOrder(), second) - b.canvas.readingOrder().begin();
    auto* child = canvas->child(static_cast<int>(index));
    CHECK(child->state().selected);
    CHECK(child->state().focused == b.canvas.hasFocus());
    CHECK(canvas->focusChild() == (b.canvas.hasFocus() ? child : nullptr));
    const QPoint middle = child->rect().center();
    CHECK(canvas->childAt(middle.x(), middle.y()) == child);
    auto* action = child->actionInterface();
    REQUIRE(action != nullptr);
    canvas->child(static_cast<int>(1 - index))
        ->actionInterface()
        ->doAction(QAccessibleActionInterface::setFocusAction());
    CHECK(b.session.selection() == std::vector{first});

    b.session.select({second});
    b.key(Qt::Key_Delete);
    CHECK(canvas->childCount() == 1);
    CHECK(canvas->child(0)->text(QAccessible::Name).contains(QString::fromStdString(b.drawing().find(first)->tag)));
}
