// SPDX-License-Identifier: GPL-3.0-or-later
#include <QApplication>
#include <QClipboard>
#include <QComboBox>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <set>

#include "panels/say.h"
#include "panels/survey_panel.h"
#include "panels/survey_table.h"
#include "panels_support.h"

using namespace tapward;
using namespace tapward::app;
using namespace tapward::app::test;
using document::SurveySheet;

namespace {

struct SurveyBench {
    SurveyBench() : panel(session), table(panel.table(SurveySheet::Runs))
    {
        REQUIRE_FALSE(session.open(samplePath()));
        panel.resize(1100, 420);
        panel.show();
    }
    int column(const char* title) const
    {
        const auto* model = table.model();
        for (int i = 0; i < model->columnCount(); ++i)
            if (model->headerData(i, Qt::Horizontal, SurveyModel::kTitleRole).toString() == QLatin1String(title))
                return i;
        return -1;
    }
    QModelIndex cell(const char* tag, const char* title) const
    {
        const auto* model = table.model();
        for (int row = 0; row < model->rowCount(); ++row)
            if (model->index(row, 0).data(Qt::EditRole).toString() == QLatin1String(tag))
                return model->index(row, column(title));
        return {};
    }
    /// Types as a person does: the first key opens the cell.
    void type(const QModelIndex& at, const QString& text, Qt::Key end = Qt::Key_Return)
    {
        table.setCurrentIndex(at);
        table.setFocus();
        QTest::keyClick(&table, text[0].toLatin1());
        QWidget* editor = table.findChild<QLineEdit*>();
        if (auto* combo = table.findChild<QComboBox*>())
            editor = combo;
        REQUIRE(editor);
        QTest::keyClicks(editor, text.mid(1));
        QTest::keyClick(editor, end);
        QCoreApplication::processEvents();  // Enter commits when the key has been dealt with
        QCoreApplication::sendPostedEvents(nullptr, QEvent::DeferredDelete);
    }
    double length(const char* tag) const
    {
        return document::values(*session.drawing().findTag(tag)).number("length_m");
    }
    QString complaint() const { return panel.findChild<QLabel*>(QStringLiteral("complaint"))->text(); }
    Session session;
    SurveyPanel panel;
    SurveyTable& table;
};

void setClipboard(const char* text) { QApplication::clipboard()->setText(QString::fromUtf8(text)); }

}  // namespace

TEST_CASE("typing over a length commits it as one undo step and Enter goes down", "[panels]")
{
    SurveyBench bench;
    const auto before = bytes(bench.session);
    const QModelIndex at = bench.cell("L1", "Real length");
    const int row = at.row();
    bench.type(at, QStringLiteral("2 ft 3 in"));
    // 27 in of 0.0254 m, NIST SP 811:2008
    CHECK_THAT(bench.length("L1"), WithinAbs(27 * 0.0254, 1e-12));
    CHECK(bench.session.undoStack().count() == 1);
    CHECK(bench.table.currentIndex().row() == row + 1);
    bench.session.undoStack().undo();
    CHECK(bytes(bench.session) == before);
    bench.type(bench.cell("L1", "Elbows"), QStringLiteral("7"), Qt::Key_Tab);
    CHECK(bench.table.currentIndex().column() == bench.column("Couplings"));
    CHECK(document::values(*bench.session.drawing().findTag("L1")).number("elbows") == 7);
}

TEST_CASE("a length that cannot be read stays in its cell with the reason, and can be put right", "[panels]")
{
    SurveyBench bench;
    const auto before = bytes(bench.session);
    const QModelIndex at = bench.cell("L1", "Real length");
    bench.type(at, QStringLiteral("12 fet"));
    CHECK(bytes(bench.session) == before);
    CHECK(at.data(Qt::EditRole).toString() == QStringLiteral("12 fet"));
    CHECK(at.data(Qt::DisplayRole).toString().startsWith(QChar(0x25B2)));
    CHECK_FALSE(at.data(Qt::AccessibleDescriptionRole).toString().isEmpty());
    CHECK(bench.complaint().contains(QStringLiteral("L1")));
    bench.type(at, QStringLiteral("12 ft"));
    CHECK_THAT(bench.length("L1"), WithinAbs(12 * 0.3048, 1e-12));
    CHECK(bench.table.survey().refusedCount() == 0);
    CHECK(bench.complaint().isEmpty());
}

TEST_CASE("a block pasted from a spreadsheet is one undo step; its bad cells keep their texts", "[panels]")
{
    SurveyBench bench;
    const auto before = bytes(bench.session);
    const double second = bench.length("L2");
    bench.table.setCurrentIndex(bench.cell("L1", "Real length"));
    setClipboard("Real length\tBasis of length\tElbows\n5\tmeasured\t2\nlong\tMeasured\t1\n");
    bench.table.paste();
    CHECK(bench.session.undoStack().count() == 1);
    CHECK_THAT(bench.length("L1"), WithinAbs(5 * 0.3048, 1e-12));
    CHECK(bench.length("L2") == second);
    CHECK(bench.table.survey().refusedCount() == 1);
    CHECK(bench.cell("L2", "Real length").data(Qt::EditRole).toString() == QStringLiteral("long"));
    CHECK(document::values(*bench.session.drawing().findTag("L2")).number("elbows") == 1);
    bench.session.undoStack().undo();
    CHECK(bytes(bench.session) == before);
    named<QPushButton>(bench.panel, SurveyPanel::tr("Discard texts that were not taken"))->click();
    CHECK(bench.table.survey().refusedCount() == 0);
    CHECK(bench.complaint().isEmpty());
}

TEST_CASE("cells copied out and pasted back over themselves leave the file as it was", "[panels]")
{
    SurveyBench bench;
    const auto before = bytes(bench.session);
    bench.table.selectAll();
    bench.table.copy();
    CHECK(QApplication::clipboard()->text().count(QLatin1Char('\n')) == bench.table.model()->rowCount());
    for (const UnitSystem units : {UnitSystem::Us, UnitSystem::Metric}) {
        bench.session.setUnits(units);
        bench.table.selectAll();
        bench.table.copy();
        bench.table.paste();
        CHECK(bytes(bench.session) == before);
    }
    CHECK(bench.session.undoStack().count() == 0);
}

TEST_CASE("one copied value fills every selected cell in one step", "[panels]")
{
    SurveyBench bench;
    bench.table.setCurrentIndex(bench.cell("L1", "Bay air"));
    for (const char* tag : {"L1", "L2", "L3"})
        bench.table.selectionModel()->select(bench.cell(tag, "Bay air"), QItemSelectionModel::Select);
    setClipboard("50");
    QTest::keySequence(&bench.table, QKeySequence::Paste);
    for (const char* tag : {"L1", "L2", "L3"})
        CHECK_THAT(document::values(*bench.session.drawing().findTag(tag)).number("bay_C"), WithinAbs(10, 1e-9));
    CHECK(bench.session.undoStack().count() == 1);
}

TEST_CASE("cells that lie outside the table are named and nothing else is lost", "[panels]")
{
    SurveyBench bench;
    const int last = bench.table.model()->rowCount() - 1;
    bench.table.setCurrentIndex(bench.table.model()->index(last, bench.column("Bay air")));
    setClipboard("30\tfour\tfive\n");
    bench.table.paste();
    CHECK(bench.session.undoStack().count() == 1);
    CHECK(bench.complaint().contains(QStringLiteral("2 cell")));
    CHECK(bench.complaint().contains(QStringLiteral("four")));
}

TEST_CASE("selected rows and selected parts are the same", "[panels]")
{
    SurveyBench bench;
    bench.session.select({idOf(bench.session, "L2"), idOf(bench.session, "L3")});
    std::set<QString> shown;
    for (const auto& index : bench.table.selectionModel()->selectedIndexes())
        shown.insert(index.siblingAtColumn(0).data(Qt::EditRole).toString());
    CHECK(shown == std::set<QString>{QStringLiteral("L2"), QStringLiteral("L3")});
    bench.table.selectionModel()->setCurrentIndex(bench.cell("L1", "Real length"), QItemSelectionModel::ClearAndSelect);
    CHECK(bench.session.selection() == std::vector{idOf(bench.session, "L1")});
}

TEST_CASE("sorting by length goes by the number and filtering hides the other rows", "[panels]")
{
    SurveyBench bench;
    bench.table.sortByColumn(bench.column("Real length"), Qt::AscendingOrder);
    double before = -1;
    for (int row = 0; row < bench.table.model()->rowCount(); ++row) {
        const QString tag = bench.table.model()->index(row, 0).data(Qt::EditRole).toString();
        const double now = bench.length(tag.toStdString().c_str());
        CHECK(now >= before);
        before = now;
    }
    const int all = bench.table.model()->rowCount();
    auto* filter = named<QLineEdit>(bench.panel, SurveyPanel::tr("Filter the survey"));
    QTest::keyClicks(filter, QStringLiteral("WH1"));
    CHECK(bench.table.model()->rowCount() > 0);
    CHECK(bench.table.model()->rowCount() < all);
    filter->clear();
    CHECK(bench.table.model()->rowCount() == all);
}

TEST_CASE("values typed as measured carry that basis", "[panels]")
{
    SurveyBench bench;
    auto* basis = named<QComboBox>(bench.panel, SurveyPanel::tr("Typed values are"));
    basis->setCurrentIndex(basis->findData(static_cast<int>(parts::Basis::Measured)));
    bench.type(bench.cell("L1", "Insulation"), QStringLiteral("0.5"));
    CHECK(document::values(*bench.session.drawing().findTag("L1")).basis("insulation_m") == parts::Basis::Measured);
}

TEST_CASE("a cell's accessible text says which part and what", "[panels]")
{
    SurveyBench bench;
    const QString spoken = bench.cell("L1", "Real length").data(Qt::AccessibleTextRole).toString();
    CHECK(spoken.contains(QStringLiteral("L1")));
    CHECK(spoken.contains(QStringLiteral("Real length")));
    CHECK(spoken.contains(QStringLiteral("ft")));
}

TEST_CASE("rows pasted below the last one are new pipes with their values, in one undo step", "[panels]")
{
    SurveyBench b;
    const auto* model = b.table.model();
    const auto before = bytes(b.session);
    const int rows = model->rowCount();
    QApplication::clipboard()->setText(QStringLiteral("2.5\n3.5\n4.5"));
    b.table.setCurrentIndex(model->index(rows - 1, b.column("Real length")));
    b.table.paste();
    REQUIRE(model->rowCount() == rows + 2);
    std::vector<double> lengths;
    for (const auto id : b.session.lastAdded())
        CHECK(b.session.drawing().find(id)->ends[0].part == document::kNoPart);
    const auto& parts = b.session.drawing().parts;
    for (auto part = parts.end() - 2; part != parts.end(); ++part)
        lengths.push_back(document::values(*part).number("length_m") / 0.3048);
    CHECK_THAT(lengths[0], WithinRel(3.5, 1e-9));
    CHECK_THAT(lengths[1], WithinRel(4.5, 1e-9));
    b.session.undoStack().undo();
    CHECK(bytes(b.session) == before);
}

TEST_CASE("rows pasted into the survey of an empty drawing draw its pipes", "[panels]")
{
    SurveyBench b;
    b.session.startNew({});
    QApplication::clipboard()->setText(QStringLiteral("Tag\tName\nH1\tBath\nH2\tGalley"));
    b.table.paste();
    REQUIRE(b.session.drawing().parts.size() == 2);
    CHECK(b.session.drawing().findTag("H1") != nullptr);
    CHECK(document::values(*b.session.drawing().findTag("H2")).text("name") == "Galley");
    CHECK(b.session.undoStack().count() == 1);
}
