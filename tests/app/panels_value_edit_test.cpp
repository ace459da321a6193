// SPDX-License-Identifier: GPL-3.0-or-later
#include "panels/value_edit.h"

#include <QSignalSpy>

#include "panels_support.h"

using namespace tapward;
using namespace tapward::app;
using namespace tapward::app::test;

namespace {

struct Field {
    explicit Field(Quantity quantity, UnitSystem units = UnitSystem::Us) : edit(quantity, units)
    {
        QObject::connect(&edit, &ValueEdit::committed, &edit, [this](double si) { got.push_back(si); });
        QObject::connect(&edit, &ValueEdit::complaint, &edit, [this](const QString& text) { complaint = text; });
        edit.show();
    }
    ValueEdit edit;
    std::vector<double> got;
    QString complaint;
};

}  // namespace

TEST_CASE("a rounded display is never read back as a value", "[panels]")
{
    Field field(Quantity::Length);
    const double exact = 1.23456789012345678;
    field.edit.setValue(exact);
    const QString shown = field.edit.text();
    CHECK(shown.toDouble() != exact / 0.3048);  // it is rounded indeed
    typeOver(&field.edit, shown);               // the same text typed again by hand is a new, rounded value ...
    QTest::keyClick(&field.edit, Qt::Key_Escape);
    CHECK(field.got.empty());
    QTest::keyClick(&field.edit, Qt::Key_Return);  // ... but Enter on the untouched display changes nothing
    CHECK(field.got.empty());
    CHECK(*field.edit.value() == exact);
}

TEST_CASE("feet, inches, sums and both decimal signs are understood", "[panels]")
{
    struct Row {
        const char* typed;
        Quantity quantity;
        double si;
    };
    // The international foot is 0.3048 m and the inch 0.0254 m exactly (NIST SP 811:2008, appendix B.8);
    // t/°C = (t/°F - 32) / 1.8 (same, appendix B.8); 0 °C is the ice point.
    const auto row = GENERATE(Row{"2 ft 3 in", Quantity::Length, 27 * 0.0254}, Row{"3*0.4 m", Quantity::Length, 1.2},
                              Row{"0,7 m", Quantity::Length, 0.7}, Row{"10", Quantity::Length, 3.048},
                              Row{"212", Quantity::Temperature, 100.0}, Row{"51 C", Quantity::Temperature, 51.0},
                              Row{"18", Quantity::TemperatureDifference, 10.0});
    CAPTURE(row.typed);
    Field field(row.quantity);
    field.edit.setValue(0.123);
    typeOver(&field.edit, QString::fromLatin1(row.typed));
    QTest::keyClick(&field.edit, Qt::Key_Return);
    REQUIRE(field.got.size() == 1);
    CHECK_THAT(field.got[0], WithinAbs(row.si, 1e-12));
}

TEST_CASE("Esc takes a half-typed value back", "[panels]")
{
    Field field(Quantity::Length);
    field.edit.setValue(3.048);
    typeOver(&field.edit, QStringLiteral("77"));
    CHECK(field.edit.isPending());
    QTest::keyClick(&field.edit, Qt::Key_Escape);
    CHECK(field.edit.text() == QStringLiteral("10"));
    CHECK_FALSE(field.edit.isPending());
    QTest::keyClick(&field.edit, Qt::Key_Return);
    CHECK(field.got.empty());
}

TEST_CASE("a value out of range stays in the field and is explained", "[panels]")
{
    Field field(Quantity::Length);
    field.edit.setValue(3.048);
    field.edit.setCheck([](double si) -> std::optional<Problem> {
        if (si <= 10)
            return std::nullopt;
        return Problem{Message("{0} is too long.", {Measure{si, Quantity::Length}}), Message("Type less."), {}};
    });
    typeOver(&field.edit, QStringLiteral("500"));
    QTest::keyClick(&field.edit, Qt::Key_Return);
    CHECK(field.got.empty());
    CHECK(field.edit.text() == QStringLiteral("500"));
    CHECK(field.complaint.contains(QStringLiteral("too long")));
    CHECK(field.complaint.contains(QStringLiteral("Type less")));
    typeOver(&field.edit, QStringLiteral("20"));
    CHECK(field.complaint.isEmpty());
    QTest::keyClick(&field.edit, Qt::Key_Return);
    REQUIRE(field.got.size() == 1);
    CHECK_THAT(field.got[0], WithinAbs(6.096, 1e-12));
}

TEST_CASE("words that are no number are kept and explained", "[panels]")
{
    Field field(Quantity::Flow);
    field.edit.setValue(3e-5);
    typeOver(&field.edit, QStringLiteral("plenty"));
    QTest::keyClick(&field.edit, Qt::Key_Return);
    CHECK(field.got.empty());
    CHECK(field.edit.text() == QStringLiteral("plenty"));
    CHECK_FALSE(field.complaint.isEmpty());
}

TEST_CASE("a half-typed value keeps its meaning through a hundred switches of units", "[panels]")
{
    Field field(Quantity::Temperature);
    field.edit.setValue(20);
    typeOver(&field.edit, QStringLiteral("104.37"));
    for (int i = 0; i < 100; ++i) {
        field.edit.setUnits(i % 2 == 0 ? UnitSystem::Metric : UnitSystem::Us);
        CHECK(field.edit.isPending());
    }
    QTest::keyClick(&field.edit, Qt::Key_Return);
    REQUIRE(field.got.size() == 1);
    CHECK_THAT(field.got[0], WithinAbs((104.37 - 32) / 1.8, 1e-12));
}

TEST_CASE("an emptied field that may be empty says so instead of complaining", "[panels]")
{
    Field field(Quantity::Temperature);
    field.edit.setMayBeEmpty(true, QStringLiteral("as drawn"));
    field.edit.setValue(20);
    QSignalSpy cleared(&field.edit, &ValueEdit::cleared);
    field.edit.setFocus();
    field.edit.selectAll();
    QTest::keyClick(&field.edit, Qt::Key_Delete);
    QTest::keyClick(&field.edit, Qt::Key_Return);
    CHECK(cleared.count() == 1);
    CHECK(field.complaint.isEmpty());
}
