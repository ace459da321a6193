// SPDX-License-Identifier: GPL-3.0-or-later
#include <QApplication>
#include <QClipboard>
#include <QTableWidget>

#include "panels/case_editor.h"
#include "panels/curve_editor.h"
#include "panels/details_panel.h"
#include "panels_support.h"

using namespace tapward;
using namespace tapward::app;
using namespace tapward::app::test;

namespace {

struct CurveBench {
    CurveBench() : panel(session)
    {
        REQUIRE_FALSE(session.open(samplePath()));
        panel.resize(420, 900);
        panel.show();
        session.select({idOf(session, "P1")});
        editor = panel.findChild<CurveEditor*>();
        REQUIRE(editor);
        table = editor->findChild<QTableWidget*>();
    }
    parts::Curve curve() const { return document::values(*session.drawing().findTag("P1")).curve("curve"); }
    Session session;
    DetailsPanel panel;
    CurveEditor* editor;
    QTableWidget* table;
};

}  // namespace

TEST_CASE("two pasted columns become the pump's curve in one undo step", "[panels]")
{
    CurveBench bench;
    const auto before = bytes(bench.session);
    QApplication::clipboard()->setText(QStringLiteral("gpm\tft\n0\t12\n1\t9\n2.5\t0\n"));
    bench.table->setFocus();
    QTest::keySequence(bench.table, QKeySequence::Paste);
    QTest::keyRelease(bench.table, Qt::Key_Control);
    REQUIRE(bench.curve().size() == 3);
    // 1 ft = 0.3048 m exactly, NIST SP 811:2008
    CHECK_THAT(bench.curve()[0].y, WithinRel(12 * 0.3048, 1e-12));
    CHECK(bench.session.undoStack().count() == 1);
    CHECK(bench.table->rowCount() == 3);
    bench.session.undoStack().undo();
    CHECK(bytes(bench.session) == before);
}

TEST_CASE("a pasted block that is no curve is refused in place and the curve stays", "[panels]")
{
    CurveBench bench;
    const auto before = bytes(bench.session);
    QString said;
    QObject::connect(bench.editor, &CurveEditor::complaint, [&](const QString& text) { said = text; });
    QApplication::clipboard()->setText(QStringLiteral("0\t1\n1\t5\n"));
    bench.editor->paste();
    CHECK_FALSE(said.isEmpty());
    CHECK(bytes(bench.session) == before);
}

TEST_CASE("readings are added and removed by keyboard", "[panels]")
{
    CurveBench bench;
    const std::size_t readings = bench.curve().size();
    bench.table->setFocus();
    bench.table->setCurrentCell(0, 0);
    QTest::keyClick(bench.table, Qt::Key_Insert);
    CHECK(bench.curve().size() == readings + 1);
    QTest::keyClick(bench.table, Qt::Key_Delete);
    CHECK(bench.curve().size() == readings);
}

TEST_CASE("every combo box of a case's actions is named for a screen reader", "[panels]")
{
    Session session;
    REQUIRE_FALSE(session.open(samplePath()));
    CaseEditor editor(session);
    editor.show();
    int named = 0;
    for (auto* table : editor.findChildren<QTableWidget*>())
        for (auto* combo : table->findChildren<QComboBox*>()) {
            CHECK_FALSE(spokenName(combo).isEmpty());
            ++named;
        }
    CHECK(named > 0);
}

TEST_CASE("parts of different kinds are set together where they have the same value", "[panels]")
{
    CurveBench bench;
    const auto before = bytes(bench.session);
    const auto pump = idOf(bench.session, "P1"), valve = idOf(bench.session, "CV1");
    bench.session.select({pump, valve});
    auto* price = named<QLineEdit>(bench.panel, QStringLiteral("Price each"));
    REQUIRE(price);
    typeOver(price, QStringLiteral("12"));
    QTest::keyClick(price, Qt::Key_Return);
    CHECK(document::values(*bench.session.drawing().find(pump)).number("price") == 12);
    CHECK(document::values(*bench.session.drawing().find(valve)).number("price") == 12);
    CHECK(bench.session.undoStack().count() == 1);
    bench.session.undoStack().undo();
    CHECK(bytes(bench.session) == before);
}
