// SPDX-License-Identifier: GPL-3.0-or-later
// Panes catch up one after another, in turns of their own, and only where they can be seen.
#include <QCoreApplication>
#include <QLabel>
#include <QListWidget>
#include <QTabWidget>
#include <QTreeWidget>

#include "panels/answers_panel.h"
#include "panels/catch_up.h"
#include "panels/chart_view.h"
#include "panels/findings_panel.h"
#include "panels/outline_panel.h"
#include "panels/say.h"
#include "panels/warm_up_chart.h"
#include "panels_support.h"

using namespace tapward;
using namespace tapward::app;
using namespace tapward::app::test;

namespace {

CatchUp& catchUpOf(const QWidget& pane) { return *pane.findChild<CatchUp*>(QString(), Qt::FindDirectChildrenOnly); }

void setLength(Session& session, const char* tag, double length_m)
{
    REQUIRE_FALSE(session.perform(document::Edit{
        Message("test"),
        {document::SetField{idOf(session, tag), "length_m", parts::Entry{length_m, parts::Basis::Measured}}}}));
}

}  // namespace

TEST_CASE("panes that are behind together are refreshed one a turn, so that input comes between", "[panels][catchup]")
{
    QWidget window;
    window.resize(300, 100);
    std::vector<int> done;
    std::vector<CatchUp*> panes;
    for (int i = 0; i < 3; ++i) {
        auto* pane = new QWidget(&window);
        pane->setGeometry(100 * i, 0, 100, 100);
        panes.push_back(new CatchUp(*pane, [&done, i] { done.push_back(i); }));
    }
    window.show();
    REQUIRE(QTest::qWaitForWindowExposed(&window));
    REQUIRE(done.empty());
    for (auto* pane : panes)
        for (int again = 0; again < 2; ++again)
            pane->later();
    CHECK(done.empty());  // not within the event that told
    std::size_t before = 0;
    while (done.size() < 3) {
        QCoreApplication::processEvents();
        CHECK(done.size() <= before + 1);
        before = done.size();
    }
    CHECK(done == std::vector{0, 1, 2});
    QTest::qWait(20);
    CHECK(done.size() == 3);  // told twice, refreshed once
    // One that goes while it waits keeps nobody else from a turn.
    for (auto* pane : panes)
        pane->later();
    delete panes.front();
    CHECK(QTest::qWaitFor([&] { return done.size() == 5; }));
    CHECK(done == std::vector{0, 1, 2, 1, 2});
}

TEST_CASE("a refresh may leave its rest to another turn; who reads the pane gets all of it", "[panels][catchup]")
{
    QWidget pane;
    int stage = 0;
    CatchUp* catchUp = nullptr;
    catchUp = new CatchUp(pane, [&] {
        if (++stage % 2 == 1)
            catchUp->later();
    });
    pane.show();
    REQUIRE(QTest::qWaitForWindowExposed(&pane));
    catchUp->later();
    while (stage == 0)
        QCoreApplication::processEvents();
    CHECK(stage == 1);
    CHECK(QTest::qWaitFor([&] { return stage == 2; }));
    catchUp->later();
    catchUp->now();
    CHECK(stage == 4);
}

TEST_CASE("a pane behind another one's tab computes nothing after an edit and is right when it is shown",
          "[panels][catchup]")
{
    Session session;
    REQUIRE_FALSE(session.open(samplePath()));
    REQUIRE(waitForAnswer(session));
    QTabWidget tabs;
    tabs.resize(700, 500);
    auto* answers = new AnswersPanel(session);
    auto* findings = new FindingsPanel(session);
    auto* outline = new OutlinePanel(session);
    auto* chart = new WarmUpChart(session);
    const std::vector<QWidget*> panes{answers, findings, outline, chart};
    tabs.addTab(new QWidget, QStringLiteral("other"));
    for (auto* pane : panes)
        tabs.addTab(pane, QStringLiteral("pane"));
    tabs.show();
    REQUIRE(QTest::qWaitForWindowExposed(&tabs));
    QTest::qWait(20);
    std::vector<int> refreshes;
    for (const auto* pane : panes)
        refreshes.push_back(catchUpOf(*pane).refreshes());
    setLength(session, "L1", 5.5);
    REQUIRE(waitForAnswer(session));
    QTest::qWait(50);
    for (std::size_t i = 0; i < panes.size(); ++i) {
        CAPTURE(i);
        CHECK(catchUpOf(*panes[i]).refreshes() == refreshes[i]);
        CHECK(catchUpOf(*panes[i]).isDue());
        tabs.setCurrentWidget(panes[i]);
        CHECK_FALSE(catchUpOf(*panes[i]).isDue());  // before it is painted
    }
    CHECK(answers->asText() == answersAsText(collectAnswers(session), false));
    CHECK(answers->accessibleDescription() == answers->asText());
    CHECK(findings->findChild<QListWidget*>()->count() == static_cast<int>(session.findings().size()));
    CHECK(findings->findChild<QListWidget*>()->isEnabled());
    CHECK(chart->view().content().result == session.currentCase());
}

TEST_CASE("a seen pane greys in a turn after the edit and is refreshed once for two fast edits", "[panels][catchup]")
{
    Session session;
    REQUIRE_FALSE(session.open(samplePath()));
    REQUIRE(waitForAnswer(session));
    AnswersPanel panel(session);
    panel.resize(400, 800);
    panel.show();
    REQUIRE(QTest::qWaitForWindowExposed(&panel));
    QTest::qWait(20);
    const int before = catchUpOf(panel).refreshes();
    setLength(session, "L1", 5.5);
    setLength(session, "L1", 6.5);
    CHECK(catchUpOf(panel).refreshes() == before);
    QCoreApplication::processEvents();
    QCoreApplication::processEvents();
    CHECK(catchUpOf(panel).refreshes() == before + 1);  // grey; the two predictions take longer than that
    REQUIRE(waitForAnswer(session));
    CHECK(QTest::qWaitFor([&] { return !catchUpOf(panel).isDue(); }));
    QTest::qWait(20);
    CHECK(catchUpOf(panel).refreshes() == before + 2);
    // What its rows say is what was asked for, also where rows were used again.
    QStringList said;
    for (const auto* label : panel.findChildren<QLabel*>())
        if (label->isVisible())
            said << label->text();
    for (const auto& line : collectAnswers(session).lines) {
        CAPTURE(line.id);
        CHECK(said.contains(line.figure));
        CHECK((line.note.isEmpty() || said.contains(line.note)));
    }
}

TEST_CASE("rows of the predictions that come and go leave the same pane as one made anew", "[panels][catchup]")
{
    Session session;
    AnswersPanel panel(session);
    panel.resize(420, 900);
    panel.show();
    const auto labels = [](const AnswersPanel& one) {
        QStringList texts;
        for (const auto* label : one.findChildren<QLabel*>())
            if (!label->isHidden())
                texts << label->text();
        texts.sort();
        return texts;
    };
    const auto compare = [&] {
        REQUIRE(waitForAnswer(session));
        QTest::qWait(20);
        AnswersPanel fresh(session);
        fresh.resize(panel.size());
        fresh.show();
        // Layouts come to rest in turns of the event loop, which a slow machine takes longer for.
        CHECK(QTest::qWaitFor([&] { return panel.grab().toImage() == fresh.grab().toImage(); }));
        CHECK(labels(panel) == labels(fresh));
    };
    REQUIRE_FALSE(session.open(samplePath()));
    compare();
    // A heater that asks for more than the loop gives; then the loop's pump goes; then all is undone.
    REQUIRE_FALSE(session.perform(document::Edit{Message("test"),
                                                 {document::SetField{idOf(session, "WH1"), "activation_flow_m3s",
                                                                     parts::Entry{6.3e-5, parts::Basis::DataSheet}}}}));
    compare();
    session.setUnits(UnitSystem::Metric);
    compare();
    session.undoStack().undo();
    compare();
    session.startNew({});
    compare();
    REQUIRE_FALSE(session.open(samplePath()));
    compare();
}

TEST_CASE("a finding that is fixed while the list is behind is the one that was chosen", "[panels][catchup]")
{
    Session session;
    FindingsPanel panel(session);
    REQUIRE_FALSE(session.open(samplePath()));
    REQUIRE(waitForAnswer(session));
    panel.step(1);
    const auto chosen = session.findings()[static_cast<std::size_t>(panel.current())];
    setLength(session, "L1", 9.5);
    REQUIRE(waitForAnswer(session));
    CHECK(catchUpOf(panel).isDue());
    panel.dismissCurrent(QStringLiteral("seen on the coach"));
    const auto& kept = session.drawing().dismissals.back();
    CHECK(kept.rule == chosen.rule);
    CHECK(kept.part == chosen.part);
}

TEST_CASE("the outline keeps its rows through an edit and shows the new figures", "[panels][catchup]")
{
    Session session;
    REQUIRE_FALSE(session.open(samplePath()));
    OutlinePanel panel(session);
    const auto* first = panel.tree().topLevelItem(0);
    const auto rowOf = [&](document::PartId id) -> QTreeWidgetItem* {
        for (int i = 0; i < panel.tree().topLevelItemCount(); ++i)
            if (panel.tree().topLevelItem(i)->data(0, Qt::UserRole).toInt() == id)
                return panel.tree().topLevelItem(i);
        return nullptr;
    };
    const auto id = idOf(session, "L1");
    rowOf(id)->setExpanded(true);
    auto part = *session.drawing().find(id);
    part.tag = "renamed";
    part.stage = document::Stage::Removed;
    REQUIRE_FALSE(session.perform(document::Edit{Message("test"), {document::ChangePart{part}}}));
    CHECK(rowOf(id)->text(0).startsWith(QStringLiteral("renamed")));
    CHECK(rowOf(id)->text(3) == sayStage(document::Stage::Removed));
    CHECK(rowOf(id)->isExpanded());
    CHECK(panel.tree().topLevelItem(0) == first);
    REQUIRE(waitForAnswer(session));
    session.setTime(30);
    int withFlow = 0;
    for (int i = 0; i < panel.tree().topLevelItemCount(); ++i)
        withFlow += panel.tree().topLevelItem(i)->text(1).isEmpty() ? 0 : 1;
    CHECK(withFlow > 0);
    // Another file may use the same numbers for other kinds of part.
    document::Drawing other;
    auto edit = document::placePart(other, "circulator", {0, 0}, document::Stage::Existing);
    REQUIRE(edit);
    document::apply(other, *edit);
    session.startNew(other);
    REQUIRE(panel.tree().topLevelItemCount() == 1);
    CHECK(panel.tree().topLevelItem(0)->childCount()
          == static_cast<int>(document::kindOf(other.parts.front()).ports.size()));
}
