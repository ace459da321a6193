// SPDX-License-Identifier: GPL-3.0-or-later
// Panes that show results: they agree with each other and never show old figures as current.
#include <algorithm>
#include <cmath>
#include <map>
#include <QListWidget>
#include <QRegularExpression>
#include <QSignalSpy>
#include <QToolButton>
#include <QTreeWidget>
#include <set>

#include "look/theme.h"
#include "panels/answers_panel.h"
#include "panels/case_actions.h"
#include "panels/case_bar.h"
#include "panels/case_editor.h"
#include "panels/chart_view.h"
#include "panels/figures.h"
#include "panels/findings_panel.h"
#include "panels/outline_panel.h"
#include "panels/say.h"
#include "panels/survey_model.h"
#include "panels/time_bar.h"
#include "panels/value_edit.h"
#include "panels/warm_up_chart.h"
#include "panels_support.h"
#include "report/report.h"
#include "review/heat_weight.h"
#include "review/scald.h"

using namespace tapward;
using namespace tapward::app;
using namespace tapward::app::test;

TEST_CASE("answers are greyed from the edit until the new prediction is there", "[panels]")
{
    Session session;
    AnswersPanel panel(session);
    REQUIRE_FALSE(session.open(samplePath()));
    REQUIRE(waitForAnswer(session));
    CHECK_FALSE(panel.looksStale());
    const QString fresh = panel.asText();
    CHECK(fresh.contains(QStringLiteral("needs to light")));

    session.perform(document::Edit{Message("test"),
                                   {document::SetField{idOf(session, "WH1"), "activation_flow_m3s",
                                                       parts::Entry{6e-5, parts::Basis::DataSheet}}}});
    REQUIRE(session.isStale());
    CHECK(panel.looksStale());
    CHECK(panel.asText().startsWith(QStringLiteral("Recalculating")));
    REQUIRE(waitForAnswer(session));
    CHECK_FALSE(panel.looksStale());
    CHECK_FALSE(panel.asText().startsWith(QStringLiteral("Recalculating")));
    CHECK(panel.asText() != fresh);
}

TEST_CASE("a heater that asks for more than the loop gives is said not to light, in words", "[panels]")
{
    Session session;
    REQUIRE_FALSE(session.open(samplePath()));
    session.perform(document::Edit{Message("test"),
                                   {document::SetField{idOf(session, "WH1"), "activation_flow_m3s",
                                                       parts::Entry{6.3e-5, parts::Basis::DataSheet}}}});
    REQUIRE(waitForAnswer(session));
    const auto answers = collectAnswers(session);
    REQUIRE(answers.margin);
    REQUIRE(answers.margin->flow_m3s < 6.3e-5);
    CHECK(answers.margin->word == QStringLiteral("Does not light"));
    CHECK(answers.margin->weight == review::Severity::Danger);
}

TEST_CASE("a drawing just begun says once why it has no answers yet, and for what", "[panels]")
{
    Session session;
    REQUIRE_FALSE(
        session.perform(document::placePart(session.drawing(), "tankless_heater", {0, 0}, document::Stage::Existing)));
    REQUIRE(waitForAnswer(session));
    REQUIRE(session.prediction());
    std::set<QString> reasons;
    QString open;
    for (const auto& line : collectAnswers(session).lines)
        if (!line.has) {
            CAPTURE(line.label, line.note);
            CHECK(reasons.insert(line.note).second);
            open += line.label + QLatin1Char(' ');
        }
    CHECK_FALSE(reasons.contains(QString()));
    const auto all = report::keyAnswers(session.drawing(), *session.prediction(), *session.assessment());
    const auto lacking = std::ranges::count(all, false, &report::AnswerLine::has);
    CHECK(lacking > static_cast<std::ptrdiff_t>(2 * reasons.size()));
    for (const auto& line : all)
        if (!line.has)
            CHECK(open.contains(plain(line.label), Qt::CaseInsensitive));
}

TEST_CASE("water hot enough to burn is shown with the time it takes", "[panels]")
{
    // Above the published tables' coolest point there is a time; 140 °F burns in seconds.
    CHECK(sayBurn(60).contains(QStringLiteral(" s ")));
    CHECK(sayBurn(30).contains(QStringLiteral("Below the published")));
    Session session;
    REQUIRE_FALSE(session.open(samplePath()));
    REQUIRE(waitForAnswer(session));
    bool any = false;
    for (const auto& line : collectAnswers(session).lines)
        if (line.weight == review::Severity::Danger) {
            any = true;
            CAPTURE(line.label, line.note);
            CHECK(line.note.contains(QStringLiteral("burn")));
        }
    CHECK(any);  // three presses in a row end above 120 °F in this sample
}

TEST_CASE("hot water weighs as much in the predictions as in the table of the hottest places", "[panels]")
{
    // A storage heater at 130 °F: nobody touches the water in its outlet, everybody that of the taps.
    Session session;
    REQUIRE_FALSE(session.open(QStringLiteral(TAPWARD_SOURCE_DIR "/samples/storage_coach.tapward")));
    REQUIRE(waitForAnswer(session));
    std::map<QString, std::optional<review::Severity>> weights;
    for (const auto& line : collectAnswers(session).lines)
        weights[line.id] = line.weight;
    const auto weighed = [&](std::initializer_list<study::HeatPlace> places) {
        const auto* hottest = session.assessment()->hottest(places);
        REQUIRE(hottest);
        return review::heatSeverity(hottest->place, hottest->hottest_C);
    };
    CHECK(weights["hottest_heater_outlet"] == weighed({study::HeatPlace::HeaterOutlet}));
    CHECK(weights["hottest_heater_outlet"] == review::Severity::Caution);
    CHECK(weights["hottest_tap"] == weighed({study::HeatPlace::OutletHot, study::HeatPlace::OutletCold}));
    CHECK(weights["hottest_tap"] == review::Severity::Danger);
    CHECK_FALSE(weights["purge_volume"].has_value());
}

TEST_CASE("slider, readout, chart and outline speak of the same second", "[panels]")
{
    Session session;
    REQUIRE_FALSE(session.open(samplePath()));
    session.setCaseName(QStringLiteral("One preheat run, cold"));
    REQUIRE(waitForAnswer(session));
    TimeBar bar(session);
    WarmUpChart chart(session);
    OutlinePanel outline(session);
    chart.resize(900, 300);
    bar.show();
    chart.show();
    const auto* result = session.currentCase();
    REQUIRE(result);
    REQUIRE_FALSE(result->noAnswer);
    for (int i = 0; i <= 20; ++i) {
        const int second = static_cast<int>(std::floor(result->duration_s * i / 20));
        bar.slider().setValue(second);
        CAPTURE(second);
        REQUIRE(session.time() == second);
        const auto at =
            std::upper_bound(result->time_s.begin(), result->time_s.end(), second + 1e-9) - result->time_s.begin() - 1;
        CHECK(chart.view().crosshair() == static_cast<std::size_t>(at));
        const double pumped = result->find("pumped_volume")->values[static_cast<std::size_t>(at)];
        const QString volume = sayMeasure(pumped, Quantity::Volume, session.units());
        CHECK(bar.readout().contains(volume));
        CHECK(chart.readout("pumped_volume") == volume);
        CHECK(bar.readout().contains(sayClock(second)));
    }
}

TEST_CASE("the slider goes by keys: arrows a second, Page ten, Home and End to the ends", "[panels]")
{
    Session session;
    REQUIRE_FALSE(session.open(samplePath()));
    REQUIRE(waitForAnswer(session));
    TimeBar bar(session);
    bar.show();
    auto* slider = &bar.slider();
    QTest::keyClick(slider, Qt::Key_Right);
    CHECK(session.time() == 1);
    QTest::keyClick(slider, Qt::Key_PageUp);
    CHECK(session.time() == 11);
    QTest::keyClick(slider, Qt::Key_Left);
    CHECK(session.time() == 10);
    QTest::keyClick(slider, Qt::Key_End);
    CHECK(session.time() == std::floor(session.currentCase()->duration_s));
    QTest::keyClick(slider, Qt::Key_Home);
    CHECK(session.time() == 0);
    CHECK_FALSE(bar.isPlaying());
    CHECK(slider->marks().size() == session.currentCase()->events.size());
}

TEST_CASE("the CSV of the chart holds the figures of the chart", "[panels]")
{
    Session session;
    REQUIRE_FALSE(session.open(samplePath()));
    session.setCaseName(QStringLiteral("One preheat run, cold"));
    REQUIRE(waitForAnswer(session));
    WarmUpChart chart(session);
    const QStringList rows =
        QString::fromUtf8(chart.csv()).split(QRegularExpression(QStringLiteral("\r?\n")), Qt::SkipEmptyParts);
    const auto* result = session.currentCase();
    REQUIRE(result);
    CHECK(rows.size() == static_cast<qsizetype>(result->time_s.size()) + 1);
    CHECK(rows.value(0).split(QLatin1Char(',')).size() == static_cast<qsizetype>(result->series.size()) + 1);
}

TEST_CASE("a finding is jumped to: its part is selected and shown", "[panels]")
{
    Session session;
    FindingsPanel panel(session);
    REQUIRE_FALSE(session.open(samplePath()));
    REQUIRE(waitForAnswer(session));
    REQUIRE_FALSE(session.findings().empty());
    QSignalSpy jumps(&session, &Session::jumpTo);
    int withPart = 0;
    for (int i = 0; i < panel.openCount(); ++i) {
        panel.step(1);
        REQUIRE(panel.current() >= 0);
        const auto finding = session.findings()[static_cast<std::size_t>(panel.current())];
        CHECK_FALSE(finding.dismissed);
        if (finding.part == document::kNoPart)
            continue;
        ++withPart;
        CHECK(session.selection() == std::vector{finding.part});
        CHECK(jumps.back().front().value<document::PartId>() == finding.part);
    }
    CHECK(jumps.count() == withPart);
    CHECK(withPart > 0);
}

TEST_CASE("a finding set aside needs a reason, leaves the count, and is kept with the drawing", "[panels]")
{
    Session session;
    FindingsPanel panel(session);
    REQUIRE_FALSE(session.open(samplePath()));
    REQUIRE(waitForAnswer(session));
    panel.step(1);
    const int open = panel.openCount();
    const auto finding = session.findings()[static_cast<std::size_t>(panel.current())];
    panel.dismissCurrent(QStringLiteral("  "));
    CHECK(session.undoStack().count() == 0);
    panel.dismissCurrent(QStringLiteral("checked on the coach"));
    REQUIRE(session.undoStack().count() == 1);
    REQUIRE(waitForAnswer(session));
    CHECK(panel.openCount() == open - 1);
    const auto& kept = session.drawing().dismissals.back();
    CHECK(kept.rule == finding.rule);
    CHECK(kept.part == finding.part);
    CHECK(kept.reason == "checked on the coach");
    session.undoStack().undo();
    REQUIRE(waitForAnswer(session));
    CHECK(panel.openCount() == open);
}

TEST_CASE("a quick fix is one undo step with its own title, and takes its finding away", "[panels]")
{
    Session session;
    FindingsPanel panel(session);
    REQUIRE_FALSE(session.open(samplePath()));
    const auto& parts = session.drawing().parts;
    const auto valve =
        std::ranges::find(parts, std::string("motor_valve"), [](const document::Part& part) { return part.kind; });
    REQUIRE(valve != parts.end());
    const document::PartId id = valve->id;
    REQUIRE_FALSE(session.perform(
        {"Valve that stays", {document::SetField{id, "on_power_loss", parts::Entry{std::string("stays"), {}}}}}));
    REQUIRE(waitForAnswer(session));
    const auto found = [&] {
        return std::ranges::count(session.findings(), std::string("valve_power_loss_unsafe"), &review::Finding::rule);
    };
    REQUIRE(found() == 1);
    for (int i = 0; i < panel.openCount(); ++i) {
        panel.step(1);
        if (session.findings()[static_cast<std::size_t>(panel.current())].rule == "valve_power_loss_unsafe")
            break;
    }
    const int steps = session.undoStack().count();
    panel.fixCurrent();
    CHECK(session.undoStack().count() == steps + 1);
    CHECK(document::values(*session.drawing().find(id)).text("on_power_loss") == "closes");
    REQUIRE(waitForAnswer(session));
    CHECK(found() == 0);
    session.undoStack().undo();
    CHECK(document::values(*session.drawing().find(id)).text("on_power_loss") == "stays");
}

TEST_CASE("the outline names every part, its joints and its stage, and selecting there selects", "[panels]")
{
    Session session;
    REQUIRE_FALSE(session.open(samplePath()));
    OutlinePanel outline(session);
    const auto& drawing = session.drawing();
    REQUIRE(outline.tree().topLevelItemCount() == static_cast<int>(drawing.parts.size()));
    std::set<int> seen;
    for (int i = 0; i < outline.tree().topLevelItemCount(); ++i) {
        const auto* item = outline.tree().topLevelItem(i);
        const auto* part = drawing.find(item->data(0, Qt::UserRole).toInt());
        REQUIRE(part);
        seen.insert(part->id);
        CHECK(item->text(0).startsWith(plain(part->tag)));
        const auto& kind = document::kindOf(*part);
        CHECK(item->childCount() == (kind.isPipe ? 2 : static_cast<int>(kind.ports.size())));
    }
    CHECK(seen.size() == drawing.parts.size());
    outline.tree().topLevelItem(5)->setSelected(true);
    CHECK(session.selection()
          == std::vector<document::PartId>{outline.tree().topLevelItem(5)->data(0, Qt::UserRole).toInt()});
}

TEST_CASE("cases are edited beside the drawing, each change one undo step back to the same bytes", "[panels]")
{
    Session session;
    REQUIRE_FALSE(session.open(samplePath()));
    const auto before = bytes(session);
    CaseEditor editor(session);
    editor.show();
    const auto count = session.drawing().cases.size();
    editor.addCase();
    REQUIRE(session.drawing().cases.size() == count + 1);
    editor.addAction();
    const auto actions = session.drawing().cases.back().actions.size();
    CHECK(actions == session.drawing().cases.front().actions.size() + 1);
    auto* name = named<QLineEdit>(editor, QStringLiteral("Name of the case"));
    REQUIRE(name);
    typeOver(name, QStringLiteral("Fourth press"));
    QTest::keyClick(name, Qt::Key_Return);
    CHECK(session.drawing().cases.back().name == "Fourth press");
    CHECK(session.caseName() == QStringLiteral("Fourth press"));
    CHECK(editor.isVisible());
    while (session.undoStack().canUndo())
        session.undoStack().undo();
    CHECK(bytes(session) == before);
}

TEST_CASE("the form of an action asks what that action takes, and the keyboard stays in it through a change",
          "[panels]")
{
    Session session;
    REQUIRE_FALSE(session.open(samplePath()));
    document::Case one;
    const auto action = [&](document::ActionKind kind, const char* tag) {
        document::Action made;
        made.kind = kind;
        made.part = tag ? idOf(session, tag) : document::kNoPart;
        made.value = kind == document::ActionKind::SetVoltage ? 11.5 : 1;
        made.fault = kind == document::ActionKind::StartFault ? "weak" : "";
        one.actions.push_back(made);
    };
    action(document::ActionKind::OpenOutlet, "F1");
    action(document::ActionKind::PressButton, nullptr);
    action(document::ActionKind::SetVoltage, "BT1");
    action(document::ActionKind::StartFault, "P1");
    CaseActions table(session);
    table.show();
    table.showCase(&one);
    const auto asked = [&](int row) {
        QStringList words;
        for (const auto* label : table.cellWidget(row, 3)->findChildren<QLabel*>())
            if (!label->isHidden())  // one is there for a screen reader alone
                words << label->text();
        return words.join(QLatin1Char(' '));
    };
    CHECK(asked(0) == QStringLiteral("Opening % Hot share %"));
    CHECK(asked(1).isEmpty());
    CHECK(asked(2) == QStringLiteral("Voltage V"));
    CHECK(asked(3) == QStringLiteral("Fault"));
    for (const char* name : {"Opening of action 1", "Hot share of action 1", "Voltage of action 3"})
        CHECK(named<ValueEdit>(table, QString::fromLatin1(name)));
    table.activateWindow();
    REQUIRE(QTest::qWaitForWindowActive(&table));
    named<ValueEdit>(table, QStringLiteral("Hot share of action 1"))->setFocus();
    REQUIRE(table.isAncestorOf(QApplication::focusWidget()));
    one.actions.front().second = 0.5;
    table.showCase(&one);
    const auto* share = named<ValueEdit>(*table.cellWidget(0, 3), QStringLiteral("Hot share of action 1"));
    REQUIRE(share);
    CHECK(share->text() == QStringLiteral("50"));
    CHECK(share->hasFocus());
}

TEST_CASE("the case bar and the switch of units follow the session and the session follows them", "[panels]")
{
    Session session;
    REQUIRE_FALSE(session.open(samplePath()));
    CaseBar bar(session);
    bar.show();
    UnitsSwitch units(session);
    units.show();
    auto* metric = named<QToolButton>(units, QStringLiteral("Units: Metric"));
    REQUIRE(metric);
    QTest::mouseClick(metric, Qt::LeftButton);
    CHECK(session.units() == UnitSystem::Metric);
    session.setUnits(UnitSystem::Us);
    CHECK(named<QToolButton>(units, QStringLiteral("Units: US"))->isChecked());
    auto* before = named<QToolButton>(bar, QStringLiteral("Show: Before"));
    REQUIRE(before);
    QTest::mouseClick(before, Qt::LeftButton);
    CHECK(session.view() == document::View::Before);
    session.setView(document::View::After);
    CHECK(named<QToolButton>(bar, QStringLiteral("Show: After"))->isChecked());
}

TEST_CASE("units of the predictions begin at one edge, lighter than their figures", "[panels]")
{
    Session session;
    REQUIRE_FALSE(session.open(samplePath()));
    AnswersPanel panel(session);
    panel.resize(340, 900);
    panel.show();
    REQUIRE(waitForAnswer(session));
    panel.looksStale();  // catches up
    QCoreApplication::processEvents();
    std::set<int> edges;
    int units = 0;
    for (const auto* label : panel.findChildren<QuietLabel*>())
        if (label->isVisible() && (label->text() == "gal" || label->text() == "s" || label->text() == "gpm")) {
            edges.insert(label->mapTo(&panel, QPoint()).x());
            ++units;
            CHECK(label->palette().color(QPalette::WindowText) == Theme::of(panel.palette()).quietText);
        }
    CHECK(units >= 5);
    CHECK(edges.size() == 1);
    // The text that is copied and read aloud has figure and unit as ever.
    CHECK(panel.asText().contains(QRegularExpression(QStringLiteral("Purge volume: [0-9.]+ gal"))));
}

TEST_CASE("numbers of a column are padded to their decimal points for painting, and only there", "[panels]")
{
    CHECK(alignedByPoint(QStringLiteral("16"), 2) == QStringLiteral("16\u2008\u2007\u2007"));
    CHECK(alignedByPoint(QStringLiteral("1.5"), 2) == QStringLiteral("1.5\u2007"));
    CHECK(alignedByPoint(QStringLiteral("0.25"), 2) == QStringLiteral("0.25"));
    CHECK(alignedByPoint(QStringLiteral("16"), 0) == QStringLiteral("16"));
    Session session;
    REQUIRE_FALSE(session.open(samplePath()));
    SurveyModel model(session, document::SurveySheet::Runs);
    int column = -1;
    for (int i = 0; i < model.columnCount(); ++i)
        if (model.headerData(i, Qt::Horizontal, SurveyModel::kTitleRole).toString() == "Real length")
            column = i;
    REQUIRE(column >= 0);
    const QModelIndex first = model.index(0, column);
    CHECK(first.data(SurveyModel::kDecimalsRole).toInt() == 1);
    REQUIRE(model.setData(first, QStringLiteral("1.125"), Qt::EditRole));
    CHECK(first.data(SurveyModel::kDecimalsRole).toInt() >= 2);
    CHECK_FALSE(first.data(Qt::DisplayRole).toString().contains(QChar(0x2007)));
}
