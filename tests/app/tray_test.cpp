// SPDX-License-Identifier: GPL-3.0-or-later
#include <QLineEdit>
#include <QSignalSpy>
#include <QTest>
#include <QTreeWidget>
#include <set>

#include "look/kind_text.h"
#include "support/catch.h"
#include "tray/tray.h"

using namespace tapward;
using namespace tapward::app;

namespace {

std::vector<QTreeWidgetItem*> shownParts(const Tray& tray)
{
    std::vector<QTreeWidgetItem*> items;
    for (int g = 0; g < tray.list()->topLevelItemCount(); ++g) {
        auto* group = tray.list()->topLevelItem(g);
        for (int i = 0; i < group->childCount(); ++i)
            if (!group->isHidden() && !group->child(i)->isHidden())
                items.push_back(group->child(i));
    }
    return items;
}

}  // namespace

TEST_CASE("the tray lists every kind once with a name and a picture", "[tray]")
{
    const Tray tray;
    std::set<QString> names;
    const auto items = shownParts(tray);
    CHECK(items.size() == parts::catalogue().size());
    for (const auto* item : items) {
        CHECK(names.insert(item->text(0)).second);
        CHECK_FALSE(item->icon(0).isNull());
    }
    CHECK_FALSE(tray.list()->accessibleName().isEmpty());
    CHECK_FALSE(tray.search()->accessibleName().isEmpty());
}

TEST_CASE("searching narrows the tray and Enter picks the first match", "[tray]")
{
    Tray tray;
    QSignalSpy picked(&tray, &Tray::kindPicked);
    tray.show();
    REQUIRE(QTest::qWaitForWindowExposed(&tray));
    QTest::keyClicks(tray.search(), "check val");
    REQUIRE(shownParts(tray).size() == 1);
    QTest::keyClick(tray.search(), Qt::Key_Return);
    REQUIRE(picked.count() == 1);
    CHECK(picked.front().front().toString() == "check_valve");
    QTest::keyClick(tray.search(), Qt::Key_Escape);
    CHECK(shownParts(tray).size() == parts::catalogue().size());
    QTest::keyClicks(tray.search(), "zzz");
    CHECK(shownParts(tray).empty());
    QTest::keyClick(tray.search(), Qt::Key_Return);
    CHECK(picked.count() == 1);
}

TEST_CASE("the arrow keys go from the search field into the list and Enter picks there", "[tray]")
{
    Tray tray;
    QSignalSpy picked(&tray, &Tray::kindPicked);
    tray.resize(240, 700);
    tray.show();
    REQUIRE(QTest::qWaitForWindowExposed(&tray));
    tray.list()->setFocus();
    const auto items = shownParts(tray);
    tray.list()->setCurrentItem(items[2]);
    QTest::keyClick(tray.list(), Qt::Key_Return);
    REQUIRE(picked.count() == 1);
    CHECK(picked.front().front().toString().toStdString() == parts::catalogue()[2]->id);
    // One click takes the part in hand.
    const QPoint at = tray.list()->visualItemRect(items[3]).center();
    QTest::mouseClick(tray.list()->viewport(), Qt::LeftButton, {}, at);
    REQUIRE(picked.count() == 2);
    CHECK(picked.back().front().toString().toStdString() == parts::catalogue()[3]->id);
    // A heading is nothing to take.
    QTest::mouseClick(tray.list()->viewport(), Qt::LeftButton, {},
                      tray.list()->visualItemRect(tray.list()->topLevelItem(0)).center());
    CHECK(picked.count() == 2);
}

TEST_CASE("nothing is chosen in the tray before somebody chooses", "[tray]")
{
    Tray tray;
    QSignalSpy picked(&tray, &Tray::kindPicked);
    tray.show();
    REQUIRE(QTest::qWaitForWindowExposed(&tray));
    CHECK(tray.list()->currentItem() == nullptr);
    QTest::keyClick(tray.search(), Qt::Key_Return);
    CHECK(picked.count() == 0);
    QTest::keyClick(tray.search(), Qt::Key_Down);
    CHECK(tray.list()->currentItem() != nullptr);
}
