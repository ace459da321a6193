// SPDX-License-Identifier: GPL-3.0-or-later
// What nobody has filled in is not shown as a figure; what comes next in a case; a line that is no limit here.
#include <QComboBox>
#include <QGridLayout>
#include <QLineEdit>
#include <QTest>

#include "panels/case_words.h"
#include "panels/chart_data.h"
#include "panels/field_editor.h"
#include "panels/say.h"
#include "panels/value_edit.h"
#include "panels_support.h"

using namespace tapward;
using namespace tapward::app;
using namespace tapward::app::test;
using document::ActionKind;

TEST_CASE("a rating that nobody knows reads 'not known', not 0 psi, Estimated; clearing the field gives that back",
          "[panels][unset]")
{
    Session session;
    REQUIRE_FALSE(session.open(samplePath()));
    const auto id = session.drawing().findTag("P1")->id;
    const auto& kind = document::kindOf(*session.drawing().find(id));
    const parts::Field* field = kind.field("pressure_limit_Pa");
    REQUIRE(field);
    CHECK(field->unset == "not known");
    QWidget pane;
    auto* grid = new QGridLayout(&pane);
    FieldEditor editor(session, kind, *field, *grid, &pane);
    editor.setParts({id});
    auto* value = pane.findChild<ValueEdit*>();
    REQUIRE(value);
    CHECK(value->text().isEmpty());
    CHECK(value->placeholderText() == QStringLiteral("not known"));
    value->setText(QStringLiteral("100"));
    Q_EMIT value->textEdited(value->text());
    QTest::keyClick(value, Qt::Key_Return);
    const auto stored = [&] { return document::values(*session.drawing().find(id)).number("pressure_limit_Pa"); };
    CHECK(stored() > 6e5);
    value->clear();
    Q_EMIT value->textEdited(value->text());
    QTest::keyClick(value, Qt::Key_Return);
    CHECK(stored() == 0);
    CHECK(value->text().isEmpty());
}

TEST_CASE("every kind's field that may be unset may be 0, and says in words what that is", "[panels][unset]")
{
    int found = 0;
    for (const parts::PartKind* kind : parts::catalogue())
        for (const parts::Field& field : kind->fields)
            if (!field.unset.empty()) {
                CAPTURE(std::string(kind->id), std::string(field.key));
                ++found;
                CHECK(field.least <= 0);
                CHECK(field.help.find("0 means") == std::string_view::npos);
                CHECK(field.help.find("0:") == std::string_view::npos);
            }
    CHECK(found > 30);
}

TEST_CASE("a new action closes what was opened, presses where there is a button, and opens a tap before there is one",
          "[panels][cases]")
{
    Session session;
    REQUIRE_FALSE(session.open(samplePath()));
    const document::Drawing& drawing = session.drawing();
    document::Case script;
    script.view = document::View::Before;
    CHECK(nextAction(drawing, script).kind == ActionKind::OpenOutlet);
    script.targetPart = drawing.findTag("F3")->id;
    CHECK(nextAction(drawing, script).part == script.targetPart);
    script.view = document::View::After;
    CHECK(nextAction(drawing, script).kind == ActionKind::PressButton);
    document::Action& open = script.actions.emplace_back();
    open.at_s = 5;
    open.kind = ActionKind::OpenOutlet;
    open.part = drawing.findTag("F1")->id;
    const auto shut = nextAction(drawing, script);
    CHECK(shut.kind == ActionKind::CloseOutlet);
    CHECK(shut.part == drawing.findTag("F1")->id);
    CHECK(shut.at_s > 5);
    CHECK(nextAction(document::Drawing{}, document::Case{}).kind == ActionKind::UseCity);
    // Choices name the place, not the kind, where it has a name.
    CHECK(sayWhere(*drawing.findTag("F3")).contains(QStringLiteral("Rear lavatory")));
    CHECK(sayWhere(*drawing.findTag("P1")) == sayPart(*drawing.findTag("P1")));
}

TEST_CASE("a loop that returns by a line of its own has no cold-line limit on its chart", "[panels][chart]")
{
    const study::CaseResult result;
    CHECK(chartLevels(result, UnitSystem::Us, true).size() == 3);
    const auto own = chartLevels(result, UnitSystem::Us, false);
    REQUIRE(own.size() == 2);
    for (const auto& level : own)
        CHECK_FALSE(level.text.contains(QStringLiteral("cold-line")));
}
