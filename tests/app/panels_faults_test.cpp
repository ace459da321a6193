// SPDX-License-Identifier: GPL-3.0-or-later
// The fault table of the safety pane, on a small coach.
#include <algorithm>
#include <QComboBox>
#include <QSignalSpy>
#include <QToolButton>

#include "panels/question_list.h"
#include "panels/safety_faults.h"
#include "panels/safety_panel.h"
#include "panels/safety_table.h"
#include "panels/say.h"
#include "panels/time_bar.h"
#include "panels_support.h"
#include "review/fault_weight.h"
#include "study/fault_words.h"

using namespace tapward;
using namespace tapward::app;
using namespace tapward::app::test;

namespace {

const QString kCoach = QStringLiteral(TAPWARD_SOURCE_DIR "/tests/study/trade_ranges.tapward");

bool waitForFaults(SafetyPanel& panel)
{
    panel.worker().startFaults();
    return QTest::qWaitFor([&] { return !panel.worker().isRunning() && panel.worker().answers().faults; }, 120000);
}

int shownRows(const SafetyTable& table)
{
    int rows = 0;
    for (int row = 0; row < table.rowCount(); ++row)
        rows += table.isRowHidden(row) ? 0 : 1;
    return rows;
}

}  // namespace

TEST_CASE("every fault of the study has its row, worst first, and a click or Enter opens its case and plays it",
          "[panels][safety][faults]")
{
    Session session;
    StudyWorker studies(session);
    SafetyPanel panel(session, studies);
    TimeBar bar(session);
    QObject::connect(&panel, &SafetyPanel::readyToPlay, &bar, &TimeBar::play);
    panel.resize(1200, 500);
    panel.show();
    REQUIRE_FALSE(session.open(kCoach));
    REQUIRE(waitForFaults(panel));
    REQUIRE(panel.worker().answers().faults->answer);
    const study::FaultsStudy study = *panel.worker().answers().faults->answer;
    auto& page = panel.faults();
    auto& table = page.table();
    panel.questions().setCurrentPage(&page);
    REQUIRE(table.rowCount() == static_cast<int>(study.rows.size()));
    const auto us = UnitSystem::Us;
    int worse = 0, notRun = 0, least = 3;
    for (int i = 0; i < table.rowCount(); ++i) {
        CAPTURE(i);
        const auto* row = page.rowAt(i);
        REQUIRE(row);
        const auto severity = review::faultSeverity(*row);
        const int rank = severity ? static_cast<int>(*severity) : -1;
        CHECK(rank <= least);
        least = rank;
        worse += review::worseThanSound(*row) ? 1 : 0;
        notRun += row->run ? 0 : 1;
        CHECK(table.item(i, 1)->text().startsWith(sayTag(session.drawing(), row->part)));
        CHECK(table.item(i, 2)->text() == sayMessage(row->consequence, us));
        if (!row->run)
            continue;
        CHECK(table.item(i, 3)->text() == sayMeasure(*row->hottest.heaterOutlet_C, Quantity::Temperature, us));
        CHECK(table.item(i, 4)->text() == sayMeasure(*row->hottest.outlets_C, Quantity::Temperature, us));
        CHECK(table.item(i, 7)->text().startsWith(sayMessage(row->who, us)));
        CHECK(table.item(i, 8)->text() == sayMessage(row->shows, us));
        CHECK(table.item(i, 9)->text() == sayMessage(row->stops, us));
    }
    CHECK(worse >= 1);
    CHECK(notRun >= 1);
    page.filterBox().setCurrentIndex(1);
    CHECK(shownRows(table) == worse);
    page.filterBox().setCurrentIndex(2);
    CHECK(shownRows(table) == notRun);
    page.filterBox().setCurrentIndex(0);
    CHECK(shownRows(table) == table.rowCount());

    const auto before = bytes(session);
    QSignalSpy ready(&panel, &SafetyPanel::readyToPlay);
    const auto opens = [&](int row, const auto& how) {
        const study::FaultRow fault = *page.rowAt(row);
        how(row);
        CHECK(session.undoStack().count() == 0);
        REQUIRE(session.played());
        CHECK(session.selection() == std::vector{fault.part});
        CHECK(session.caseName() == plain(study::caseTitle(session.drawing(), fault)));
        const document::Case script = *session.played();
        CHECK(std::ranges::any_of(script.actions, [&](const document::Action& action) {
            return action.kind == document::ActionKind::StartFault && action.part == fault.part
                   && action.fault == fault.fault;
        }));
        CHECK(panel.staleText().isEmpty());
        ready.clear();
        REQUIRE(waitForAnswer(session));
        CHECK(ready.count() == 1);
        CHECK(bar.isPlaying());
        CHECK(session.showsMoment());
        bar.togglePlay();
        CHECK(bytes(session) == before);
    };
    opens(0, [&](int row) {
        table.chooseRow(row);
        QTest::keyClick(&table, Qt::Key_Return);
    });
    opens(1, [&](int row) {
        const QRect cell = table.visualItemRect(table.item(row, 1));
        QTest::mouseClick(table.viewport(), Qt::LeftButton, {}, cell.center());
    });
    // What was not run selects its part and opens nothing.
    const int idle = table.rowCount() - 1;
    REQUIRE_FALSE(page.rowAt(idle)->run);
    table.chooseRow(idle);
    QTest::keyClick(&table, Qt::Key_Return);
    CHECK(bytes(session) == before);
    CHECK(session.selection() == std::vector{page.rowAt(idle)->part});
}

TEST_CASE("asking for pairs runs the faults again with each fault beside a failed stop, and an edit marks them stale",
          "[panels][safety][faults]")
{
    Session session;
    StudyWorker studies(session);
    SafetyPanel panel(session, studies);
    panel.resize(1200, 500);
    panel.show();
    REQUIRE_FALSE(session.open(kCoach));
    REQUIRE(waitForFaults(panel));
    auto& page = panel.faults();
    panel.questions().setCurrentPage(&page);
    const int singles = page.table().rowCount();
    page.pairs().click();
    REQUIRE(panel.worker().isRunning());
    REQUIRE(QTest::qWaitFor([&] { return !panel.worker().isRunning(); }, kPatience_ms));
    REQUIRE(page.table().rowCount() > singles);
    int pairs = 0;
    for (int i = 0; page.rowAt(i); ++i) {
        const auto& row = *page.rowAt(i);
        if (row.withPart == document::kNoPart)
            continue;
        ++pairs;
        CHECK(page.table().item(i, 1)->text().contains(sayTag(session.drawing(), row.withPart)));
        CHECK(std::ranges::count(row.worst.actions, document::ActionKind::StartFault, &document::Action::kind) == 2);
    }
    CHECK(page.table().rowCount() == singles + pairs);
    CHECK(page.pairs().isChecked());

    session.perform(document::Edit{
        Message("test"),
        {document::SetField{idOf(session, "WH1"), "setpoint_C", parts::Entry{50.0, parts::Basis::Estimated}}}});
    CHECK_FALSE(panel.staleText().isEmpty());
    const auto cases = session.drawing().cases.size();
    page.table().chooseRow(0);
    QTest::keyClick(&page.table(), Qt::Key_Return);
    CHECK(session.drawing().cases.size() == cases);  // an old script may speak of parts that are gone
}
