// SPDX-License-Identifier: GPL-3.0-or-later
// The safety pane: it shows what the core's studies answer, and never an old answer as a new one.
#include <QComboBox>
#include <QLabel>
#include <QProgressBar>
#include <QPushButton>
#include <QToolButton>

#include "panels/case_bar.h"
#include "panels/loop_chart.h"
#include "panels/question_list.h"
#include "panels/safety_panel.h"
#include "panels/safety_plot.h"
#include "panels/safety_protections.h"
#include "panels/safety_table.h"
#include "panels/safety_words.h"
#include "panels/safety_worst.h"
#include "panels/say.h"
#include "panels/stop_page.h"
#include "panels/wiring_page.h"
#include "panels_support.h"
#include "review/scald.h"

using namespace tapward;
using namespace tapward::app;
using namespace tapward::app::test;

namespace {

bool waitForLoop(SafetyPanel& panel)
{
    panel.runStudies();
    return QTest::qWaitFor([&] { return panel.worker().answers().loop != nullptr; }, 60000);
}

/// Everything the keyboard can reach now.
void checkControls(const SafetyPanel& panel)
{
    int met = 0;
    for (auto* widget : panel.findChildren<QWidget*>()) {
        // Bars, headers and corners are Qt's own parts of named widgets.
        if (!widget->isVisible() || !(widget->focusPolicy() & Qt::TabFocus) || widget->inherits("QTabBar")
            || widget->inherits("QHeaderView") || widget->inherits("QTableCornerButton"))
            continue;
        ++met;
        CAPTURE(widget->metaObject()->className(), widget->accessibleName());
        CHECK_FALSE(spokenName(widget).isEmpty());
        CHECK(widget->height() >= 24);
    }
    CHECK(met >= 2);
}

void setActivation(Session& session, double flow_m3s)
{
    session.perform(document::Edit{Message("test"),
                                   {document::SetField{idOf(session, "WH1"), "activation_flow_m3s",
                                                       parts::Entry{flow_m3s, parts::Basis::DataSheet}}}});
}

}  // namespace

TEST_CASE("a study that has not run has no tab", "[panels][safety]")
{
    Session session;
    StudyWorker studies(session);
    SafetyPanel panel(session, studies);
    REQUIRE_FALSE(session.open(samplePath()));
    CHECK(panel.titles().isEmpty());
    CHECK(panel.staleText().isEmpty());
}

TEST_CASE("the loop curve's table holds every pump set the core worked out, in its order", "[panels][safety]")
{
    Session session;
    StudyWorker studies(session);
    SafetyPanel panel(session, studies);
    REQUIRE_FALSE(session.open(samplePath()));
    REQUIRE(waitForLoop(panel));
    panel.worker().cancel();
    const auto curves = study::loopCurves(session.drawing());
    REQUIRE(curves.has_value());
    REQUIRE_FALSE(curves->sets.empty());
    auto& table = panel.loop().chart().table();
    REQUIRE(table.rowCount() == static_cast<int>(curves->sets.size()));
    std::size_t marks = 0;
    for (std::size_t i = 0; i < curves->sets.size(); ++i) {
        const auto& set = curves->sets[i];
        const int row = static_cast<int>(i);
        CHECK(table.item(row, 1)->text() == sayMeasure(set.battery_V, Quantity::Voltage, UnitSystem::Us));
        REQUIRE(set.working.has_value());
        CHECK(table.item(row, 4)->text() == sayMeasure(set.working->flow_m3s, Quantity::Flow, UnitSystem::Us));
        CHECK(table.item(row, 7)->text() == (set.lights ? QStringLiteral("Lights") : QStringLiteral("Does not light")));
        const auto& mark = panel.loop().chart().plot().content().marks.at(marks++);
        CHECK(mark.hollow == !set.lights);
        CHECK(mark.at.x() == toDisplay({set.working->flow_m3s, Quantity::Flow}, UnitSystem::Us));
    }
    session.setUnits(UnitSystem::Metric);
    CHECK(panel.loop().chart().table().item(0, 4)->text()
          == sayMeasure(curves->sets[0].working->flow_m3s, Quantity::Flow, UnitSystem::Metric));
}

TEST_CASE("answers are marked out of date by an edit of the coach, not by moving a symbol, and are current again "
          "when the edit is undone",
          "[panels][safety]")
{
    Session session;
    StudyWorker studies(session);
    SafetyPanel panel(session, studies);
    panel.show();
    REQUIRE_FALSE(session.open(samplePath()));
    REQUIRE(waitForLoop(panel));
    panel.worker().cancel();
    CHECK(panel.staleText().isEmpty());
    session.perform(document::moveParts(session.drawing(), {idOf(session, "WH1")}, 1, 0));
    CHECK(panel.staleText().isEmpty());
    setActivation(session, 6e-5);
    CHECK(panel.staleText().contains(QStringLiteral("Out of date")));
    CHECK(panel.loop().chart().plot().content().stale);
    session.undoStack().undo();
    CHECK(panel.staleText().isEmpty());
    CHECK_FALSE(panel.loop().chart().plot().content().stale);
}

TEST_CASE("another file takes the answers of the first one away", "[panels][safety]")
{
    Session session;
    StudyWorker studies(session);
    SafetyPanel panel(session, studies);
    REQUIRE_FALSE(session.open(samplePath()));
    REQUIRE(waitForLoop(panel));
    panel.worker().cancel();
    REQUIRE_FALSE(panel.titles().isEmpty());
    session.startNew({});
    CHECK(panel.titles().isEmpty());
}

TEST_CASE("a script is shown without entering the drawing, until it is kept", "[panels][safety]")
{
    Session session;
    StudyWorker studies(session);
    SafetyPanel panel(session, studies);
    CaseBar bar(session);
    auto* cases = bar.findChild<QComboBox*>();
    auto* keep = bar.findChild<QToolButton*>(QStringLiteral("keepCase"));
    REQUIRE(cases);
    REQUIRE(keep);
    REQUIRE_FALSE(session.open(samplePath()));
    REQUIRE(waitForAnswer(session));
    const auto before = bytes(session);
    const auto count = session.drawing().cases.size();
    CHECK(keep->isHidden());
    document::Case script = session.drawing().cases.front();
    script.duration_s += 7;
    panel.openScript(script, 5);
    const QString name = plain(script.name) + QStringLiteral(" (2)");
    CHECK(session.caseName() == name);
    REQUIRE(session.played());
    CHECK(session.drawing().cases.size() == count);
    CHECK(session.undoStack().count() == 0);
    CHECK_FALSE(session.isModified());
    REQUIRE(waitForAnswer(session));
    REQUIRE(session.currentCase());
    CHECK(session.currentCase()->duration_s == script.duration_s);
    CHECK_FALSE(session.currentCase()->snapshot.empty());
    CHECK(session.time() == 5);
    CHECK(session.showsMoment());
    CHECK(bytes(session) == before);
    CHECK(cases->currentText() == name + QStringLiteral(" (not kept)"));
    CHECK_FALSE(keep->isHidden());

    // An edit predicts it anew with the rest.
    session.perform(document::Edit{
        Message("test"),
        {document::SetField{idOf(session, "WH1"), "setpoint_C", parts::Entry{45.0, parts::Basis::Measured}}}});
    REQUIRE(waitForAnswer(session));
    CHECK(session.caseName() == name);
    REQUIRE(session.currentCase());
    CHECK(session.currentCase()->duration_s == script.duration_s);
    session.undoStack().undo();
    REQUIRE(waitForAnswer(session));

    // What the drawing has already is chosen there.
    document::Case known = session.drawing().cases.back();
    known.name = "by another name";
    panel.openScript(known, 6);
    CHECK_FALSE(session.played());
    CHECK(session.caseName() == plain(session.drawing().cases.back().name));
    CHECK(keep->isHidden());
    CHECK(cases->count() == static_cast<int>(count));

    panel.openScript(script, 5);
    REQUIRE(waitForAnswer(session));
    keep->click();
    CHECK_FALSE(session.played());
    CHECK(session.drawing().cases.size() == count + 1);
    CHECK(session.undoStack().count() == 1);
    CHECK(session.caseName() == name);
    CHECK(keep->isHidden());
    CHECK(cases->currentText() == name);
    session.undoStack().undo();
    CHECK(bytes(session) == before);
    CHECK(session.caseName() != name);
}

TEST_CASE("the studies run by themselves, are called off by an edit, and the session judges by them",
          "[panels][safety]")
{
    Session session;
    StudyWorker studies(session);
    SafetyPanel panel(session, studies);
    StudyWorker& worker = panel.worker();
    auto questions = worker.questions();
    questions.presses.mostPresses = 2;
    questions.presses.protections = false;
    questions.presses.safeWait = false;
    questions.presses.draws = false;
    questions.presses.gaps_s = {0};
    questions.stop.samples = 16;
    questions.stop.confirmations = 0;
    worker.setQuestions(questions);
    REQUIRE_FALSE(session.open(samplePath()));
    REQUIRE(waitForAnswer(session));
    REQUIRE(session.assessment());
    CHECK(session.assessment()->isAtLeast());
    QTest::qWait(300);
    CHECK_FALSE(worker.isRunning());  // only the program asks for it
    worker.setByItself(true);
    const auto isFull = [&] { return session.assessment() && !session.assessment()->isAtLeast(); };
    REQUIRE(QTest::qWaitFor([&] { return worker.isRunning(); }, 5000));
    CHECK_FALSE(session.studying().isEmpty());
    REQUIRE(QTest::qWaitFor(isFull, kPatience_ms));
    REQUIRE(session.assessment()->presses);
    const double before_C = session.assessment()->hottest({study::HeatPlace::HeaterOutlet})->hottest_C;
    CHECK(before_C >= session.assessment()->presses->find(study::HeatPlace::HeaterOutlet)->hottest_C);

    // What matters to the water makes it unknown at once, and the studies begin anew.
    session.perform(document::Edit{
        Message("test"),
        {document::SetField{idOf(session, "WH1"), "setpoint_C", parts::Entry{45.0, parts::Basis::Measured}}}});
    CHECK_FALSE(worker.isRunning());
    REQUIRE(waitForAnswer(session));
    CHECK(session.assessment()->isAtLeast());
    REQUIRE(QTest::qWaitFor(isFull, kPatience_ms));
    // What does not matter leaves it known.
    REQUIRE_FALSE(session.perform(document::moveParts(session.drawing(), {idOf(session, "PB1")}, 2, 0)));
    REQUIRE(waitForAnswer(session));
    CHECK_FALSE(session.assessment()->isAtLeast());
    // Called off by hand it stays so until the next change.
    session.undoStack().undo();
    session.undoStack().undo();
    REQUIRE(waitForAnswer(session));
    REQUIRE(QTest::qWaitFor([&] { return worker.isRunning(); }, 5000));
    worker.callOff();
    QTest::qWait(300);
    CHECK_FALSE(worker.isRunning());
    CHECK(session.assessment()->isAtLeast());
}

TEST_CASE("the protections needed are told and set in one undo step", "[panels][safety]")
{
    Session session;
    StudyWorker studies(session);
    SafetyPanel panel(session, studies);
    auto questions = panel.worker().questions();
    questions.presses.mostPresses = 2;
    questions.presses.protections = questions.presses.safeWait = questions.presses.draws = false;
    questions.presses.gaps_s = {0};
    questions.presses.volts = {12, 12, {}};
    questions.presses.supply_C = questions.presses.ambient_C = {18, 18, {}};
    questions.stop.samples = 16;
    questions.stop.confirmations = 0;
    panel.worker().setQuestions(questions);
    REQUIRE_FALSE(session.open(QStringLiteral(TAPWARD_SOURCE_DIR "/samples/storage_coach.tapward")));
    REQUIRE(waitForAnswer(session));
    const auto before = bytes(session);
    panel.runStudies();
    REQUIRE(
        QTest::qWaitFor([&] { return panel.worker().answers().safe && !panel.worker().isRunning(); }, kPatience_ms));
    auto& page = panel.protections();
    const auto& set = panel.worker().answers().safe->answer;
    REQUIRE(set);
    REQUIRE_FALSE(set->changes.empty());  // a heater set to 130 °F sends that to its taps
    CHECK(page.neededText().contains(QStringLiteral("115 °F")));
    CHECK_FALSE(page.applyButton().isHidden());
    REQUIRE(page.applyButton().isEnabled());
    page.applyButton().click();
    panel.worker().cancel();
    CHECK(session.undoStack().count() == 1);
    for (const auto& change : set->changes)
        CHECK(document::values(*std::as_const(session).drawing().find(change.part)).number("setpoint_C") < 48);
    CHECK_FALSE(panel.protections().applyButton().isEnabled());  // of an older drawing now
    session.undoStack().undo();
    CHECK(bytes(session) == before);
}

TEST_CASE("the safety table sorts by value, tells which row was given, and copies what is seen", "[panels][safety]")
{
    SafetyTable table(QStringLiteral("Test"));
    const auto us = UnitSystem::Us;
    table.fill({QStringLiteral("Name"), QStringLiteral("Hottest"), QStringLiteral("How bad")},
               {{QStringLiteral("b"), SafetyCell::measure(9, Quantity::Voltage, us),
                 SafetyCell::severity(review::Severity::Note)},
                {QStringLiteral("a"), SafetyCell::measure(10, Quantity::Voltage, us),
                 SafetyCell::severity(review::Severity::Danger)},
                {QStringLiteral("c"), SafetyCell::measure({}, Quantity::Voltage, us),
                 SafetyCell::severity(review::Severity::Caution)}});
    CHECK(table.item(0, 0)->text() == QStringLiteral("b"));
    table.sortItems(1, Qt::DescendingOrder);  // as numbers: 10 above 9, nothing known last
    CHECK(table.item(0, 0)->text() == QStringLiteral("a"));
    CHECK(table.item(2, 0)->text() == QStringLiteral("c"));
    table.sortItems(2, Qt::AscendingOrder);
    CHECK(table.item(0, 2)->text() == QStringLiteral("Danger"));
    table.chooseRow(0);
    CHECK(table.item(table.currentRow(), 0)->text() == QStringLiteral("b"));
    table.hideRows({false, true, false});
    CHECK_FALSE(table.asText().contains(QStringLiteral("10")));
    CHECK(table.asText().split(QLatin1Char('\n')).size() == 3);
    int opened = -1;
    QObject::connect(&table, &SafetyTable::rowOpened, [&](int row) { opened = row; });
    QTest::keyClick(&table, Qt::Key_Return);
    CHECK(opened == 0);
}

TEST_CASE("every control of the safety pane has a name and is big enough to hit", "[panels][safety]")
{
    Session session;
    StudyWorker studies(session);
    SafetyPanel panel(session, studies);
    REQUIRE_FALSE(session.open(samplePath()));
    REQUIRE(waitForLoop(panel));
    panel.worker().cancel();
    panel.resize(900, 400);
    panel.show();
    for (int tab = 0; tab < panel.titles().size(); ++tab) {
        panel.questions().setCurrentIndex(tab);
        QApplication::processEvents();
        checkControls(panel);
    }
}

namespace {

/// One day and two presses: a study of seconds.
study::PressesOptions smallStudy()
{
    study::PressesOptions options;
    options.mostPresses = 2;
    options.gaps_s = {0};
    options.volts = {12.6, 12.6, "the test"};
    options.supply_C = {15, 15, "the test"};
    options.ambient_C = {15, 15, "the test"};
    options.draws = false;
    options.safeWait = false;
    options.resolution.cell_m = 0.4;
    return options;
}

bool waitForPresses(SafetyPanel& panel, const study::PressesOptions& options)
{
    StudyQuestions questions;
    questions.presses = options;
    panel.worker().setQuestions(std::move(questions));
    panel.runStudies();
    return QTest::qWaitFor([&] { return panel.worker().answers().presses != nullptr; }, 240000);
}

}  // namespace

TEST_CASE("the hottest water is shown as the core found it, in its order, and a row opens its script in one undo step",
          "[panels][safety]")
{
    Session session;
    StudyWorker studies(session);
    SafetyPanel panel(session, studies);
    REQUIRE_FALSE(session.open(samplePath()));
    auto options = smallStudy();
    options.protections = false;
    REQUIRE(waitForPresses(panel, options));
    panel.worker().cancel();
    const auto study = study::studyPresses(session.drawing(), options);
    REQUIRE(study.has_value());
    REQUIRE(study->worst.size() >= 3);
    auto& table = panel.worst().table();
    REQUIRE(table.rowCount() == static_cast<int>(study->worst.size()));
    for (int row = 0; row < table.rowCount(); ++row) {
        const auto& heat = study->worst[static_cast<std::size_t>(row)];
        CAPTURE(row);
        CHECK(table.item(row, 1)->text().startsWith(sayTag(session.drawing(), heat.part)));
        CHECK(table.item(row, 2)->text() == sayMeasure(heat.hottest_C, Quantity::Temperature, UnitSystem::Us));
        if (study::isOutlet(heat.place))
            CHECK((table.item(row, 0)->text() == QStringLiteral("Danger"))
                  == (heat.hottest_C > review::kScaldGuidance_C));
    }
    CHECK(panel.titles().front() == QStringLiteral("Hottest Water"));
    CHECK(panel.questions().currentIndex() == 0);  // though others were finished before
    panel.questions().setCurrentIndex(1);
    session.setUnits(UnitSystem::Metric);
    session.setUnits(UnitSystem::Us);
    CHECK(panel.questions().currentIndex() == 1);  // and what the person picks stays
    panel.questions().setCurrentIndex(0);

    const auto before = bytes(session);
    table.chooseRow(0);
    QTest::keyClick(&table, Qt::Key_Return);
    CHECK(session.undoStack().count() == 0);
    CHECK(session.caseName() == plain(study->worst[0].script.name));
    CHECK(panel.staleText().isEmpty());  // a script opened from an answer leaves the answer current
    REQUIRE(waitForAnswer(session));
    CHECK(session.time() == std::min(study->worst[0].at_s, session.currentCase()->duration_s));
    CHECK(bytes(session) == before);
}

TEST_CASE("switching a protection changes the drawing in one undo step that goes back to the same bytes",
          "[panels][safety]")
{
    Session session;
    StudyWorker studies(session);
    SafetyPanel panel(session, studies);
    panel.show();
    REQUIRE_FALSE(session.open(samplePath()));
    REQUIRE(waitForPresses(panel, smallStudy()));
    panel.worker().cancel();
    const auto before = bytes(session);
    const auto study = *panel.worker().answers().presses->answer;
    REQUIRE_FALSE(study.protections.empty());
    auto& page = panel.protections();
    panel.questions().setCurrentPage(&page);
    int switched = 0;
    for (std::size_t i = 0; i < study.protections.size(); ++i) {
        CAPTURE(study::id(study.protections[i].protection));
        CHECK((page.table().item(static_cast<int>(i), 1)->text() == QStringLiteral("On"))
              == study.protections[i].counted);
        page.table().chooseRow(static_cast<int>(i));
        if (!page.switchButton().isEnabled())
            continue;
        ++switched;
        QTest::mouseClick(&page.switchButton(), Qt::LeftButton);
        panel.worker().cancel();  // it asks again by itself
        CHECK(session.undoStack().index() == 1);
        CHECK(bytes(session) != before);
        CHECK_FALSE(panel.staleText().isEmpty());
        CHECK_FALSE(page.switchButton().isEnabled());
        session.undoStack().undo();
        CHECK(bytes(session) == before);
        CHECK(panel.staleText().isEmpty());
    }
    CHECK(switched >= 3);
}

TEST_CASE("cancel gives the window back at once and leaves the older answer", "[panels][safety]")
{
    Session session;
    StudyWorker studies(session);
    SafetyPanel panel(session, studies);
    panel.show();
    REQUIRE_FALSE(session.open(samplePath()));
    for (const int after_ms : {30, 400, 1100}) {
        CAPTURE(after_ms);
        panel.runStudies();
        REQUIRE(panel.worker().isRunning());
        QTest::qWait(after_ms);
        if (!panel.worker().isRunning())
            break;  // a machine so fast has nothing to cancel
        auto* cancel = panel.findChild<QProgressBar*>();
        REQUIRE(cancel->isVisible());
        QElapsedTimer clock;
        clock.start();
        panel.worker().cancel();
        QApplication::processEvents();
        CHECK(clock.elapsed() < 200);
        CHECK_FALSE(panel.worker().isRunning());
        CHECK_FALSE(cancel->isVisible());
    }
    QTest::qWait(300);
    CHECK(panel.worker().answers().presses == nullptr);  // nothing of what was dropped comes in later
}

TEST_CASE("a wait is said in whole steps that are never shorter than it is", "[panels][safety]")
{
    CHECK(sayWait(42.3) == QStringLiteral("43 s"));
    CHECK(sayWait(60) == QStringLiteral("1 min"));
    CHECK(sayWait(61) == QStringLiteral("1.5 min"));
    CHECK(sayWait(3600) == QStringLiteral("1 h 0 min"));
    CHECK(sayWait(3601) == QStringLiteral("1 h 0.5 min"));
    // 140 °F: the lower of the published tables says under 5 s for adults (hospital table), 3 s in flowing
    // water (Moritz & Henriques 1947). A child has less; no time is invented.
    CHECK(sayBurnAdult(60) == QStringLiteral("about 3 s"));
    CHECK(sayBurnChild(60) == QStringLiteral("less than 3 s"));
    CHECK(sayBurnAdult(40) == QStringLiteral("below the published times"));
}

TEST_CASE("stops, bands, ranking and the 12 V tables show the core's answers, and a stop is set in one undo step",
          "[panels][safety]")
{
    Session session;
    StudyWorker studies(session);
    SafetyPanel panel(session, studies);
    panel.show();
    REQUIRE_FALSE(session.open(samplePath()));
    StudyQuestions questions;
    questions.presses = smallStudy();
    questions.presses.protections = false;
    questions.stop.samples = 16;
    questions.stop.confirmations = 0;
    panel.worker().setQuestions(questions);
    panel.runStudies();
    REQUIRE(QTest::qWaitFor([&] { return !panel.worker().isRunning(); }, kPatience_ms));
    const auto& answers = panel.worker().answers();
    REQUIRE(answers.stop);
    REQUIRE(answers.stop->answer);
    const study::StopStudy& study = *answers.stop->answer;
    const auto us = UnitSystem::Us;
    auto& table = panel.stop().table();
    REQUIRE(table.rowCount() == 4);
    for (int row = 0; row < 4; ++row) {
        const auto& choice = study.choices[static_cast<std::size_t>(row)];
        CHECK(table.item(row, 1)->text() == sayStop(choice, us));
        if (choice.notPossible.empty())
            CHECK(table.item(row, 2)->text() == sayMeasure(choice.both, Quantity::Percent, us));
    }
    // the band's table has the figures of the picture
    auto& bands = panel.bands().chart();
    REQUIRE(bands.plot().content().lines.size() == 3);
    CHECK(bands.table().rowCount() == bands.plot().content().lines[1].points.size());
    CHECK(bands.table().rowCount() > 10);
    // the longest bar is on top, and is the one to measure first
    REQUIRE_FALSE(study.influences.empty());
    const auto& ranking = panel.ranking().chart().plot().content();
    CHECK(ranking.rowNames.back() == say(study.influences.front().range.label));
    CHECK(panel.ranking().chart().table().item(0, 0)->text() == say(study.influences.front().range.label));
    CHECK(ranking.areas.front().outline[1].x() == study.influences.front().coefficient);

    REQUIRE(answers.wiring);
    REQUIRE(answers.wiring->answer);
    const auto& wiring = *answers.wiring->answer;
    REQUIRE(panel.wiring().loads().rowCount() == static_cast<int>(wiring.loads.size()));
    REQUIRE(panel.wiring().branches().rowCount() == static_cast<int>(wiring.branches.size()));
    CHECK(panel.wiring().loads().rowCount() > 0);
    for (int row = 0; row < panel.wiring().loads().rowCount(); ++row)
        CHECK(panel.wiring().loads().item(row, 2)->text()
              == sayMeasure(wiring.loads[static_cast<std::size_t>(row)].volts, Quantity::Voltage, us));

    const auto before = bytes(session);
    panel.questions().setCurrentPage(&panel.stop());
    int set = 0;
    for (int row = 0; row < 4; ++row) {
        table.chooseRow(row);
        if (!panel.stop().useButton().isEnabled())
            continue;
        QTest::mouseClick(&panel.stop().useButton(), Qt::LeftButton);
        if (bytes(session) == before)
            continue;  // the drawing has this stop already
        ++set;
        CHECK(session.undoStack().index() == 1);
        session.undoStack().undo();
        CHECK(bytes(session) == before);
    }
    CHECK(set > 0);

    panel.resize(1100, 420);
    for (int tab = 0; tab < panel.titles().size(); ++tab) {
        panel.questions().setCurrentIndex(tab);
        QApplication::processEvents();
        checkControls(panel);
    }
    CHECK(panel.titles().size() >= 6);
}
